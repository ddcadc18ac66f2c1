//! Does what the study counts with hold a vehicle that is taken up by posts that are off in height?
//!
//! Checked against the mechanics themselves: a rigid body on four springs at its wheels and on pads that
//! push and never pull, each as much too high or too low as posts make it, comes to rest where its
//! springs hold the least energy.

use glam::{DMat3, DVec2, DVec3};

use super::*;
use crate::solids::test_bay::test_bay;

/// Where the body comes to rest: its rise at the plan's origin, and per length along x and y. The dual
/// is climbed pad by pad (Hildreth's method for quadratic programs).
fn at_rest_on(wheels: [DVec2; 4], pads: [DVec2; 4], heights: [f64; 4]) -> DVec3 {
    let row = |at: DVec2| DVec3::new(1.0, at.x, at.y);
    let stiffness = wheels.map(row).into_iter().fold(DMat3::ZERO, |sum, row| {
        sum + DMat3::from_cols(row * row.x, row * row.y, row * row.z)
    });
    let gives = stiffness.inverse();
    let rows = pads.map(row);
    let mut force = [0.0_f64; 4];
    let mut moved = DVec3::ZERO;
    for _ in 0..4000 {
        for i in 0..4 {
            let way = gives * rows[i];
            let short = (heights[i] - rows[i].dot(moved)) / rows[i].dot(way);
            let more = (force[i] + short).max(0.0) - force[i];
            force[i] += more;
            moved += way * more;
        }
    }
    for (row, height) in rows.iter().zip(heights) {
        assert!(row.dot(moved) > height - 1e-6, "a pad in the vehicle");
    }
    moved
}

/// Each of four to its end or in between.
fn patterns() -> Vec<[f64; 4]> {
    let mut found: Vec<[f64; 4]> = (0..16_u8)
        .map(|bits| [0, 1, 2, 3].map(|i| if bits >> i & 1 == 1 { 1.0 } else { -1.0 }))
        .collect();
    found.extend([
        [0.0; 4],
        [1.0, 0.0, -1.0, 0.3],
        [-0.4, 1.0, 0.2, -1.0],
        [0.0, -1.0, 1.0, 0.5],
    ]);
    found
}

#[test]
fn a_vehicle_taken_up_by_posts_off_in_height_stays_in_what_is_counted() {
    let bay = test_bay();
    let rest = attitude::at_rest(&bay, ParkingError::default()).unwrap();
    let touch = attitude::contact(&bay, ParkingError::default())
        .unwrap()
        .touch_m;
    let pads = Corner::ALL.map(|corner| {
        let index = vehicle::lift_point_at(corner, bay.parking.facing);
        vehicle::lift_point_m(&bay.vehicle, index).truncate()
    });
    let wheels = [0, 1, 2, 3].map(|wheel| vehicle::wheel_middle_m(&bay.vehicle, wheel).truncate());
    let mut touched = 0;
    for up_m in [0.004, 0.012, 0.03] {
        let off = Uncertainty {
            posts_m: DVec3::Z * up_m,
            ..Uncertainty::NONE
        };
        let found = movers(&bay, &off).unwrap();
        let from = found.phases.first_touch_m - 0.005;
        let until = found.phases.carry_m + 0.03;
        for step in 0..=24 {
            let travel = from.max(0.0) + (until - from) * f64::from(step) / 24.0;
            for pattern in patterns() {
                let heights = [0, 1, 2, 3].map(|i| travel - touch[i] + up_m * pattern[i]);
                let moved = at_rest_on(wheels, pads, heights);
                touched += usize::from(moved.length() > 1e-6);
                for part in vehicle::parts(&bay)
                    .iter()
                    .filter(|part| part.wheel.is_none())
                {
                    let corners = outline_corners(&part.solid.shape, &part.solid.bay_from_solid);
                    let places = corners.into_iter().map(|corner| {
                        rest.point(corner).z + moved.dot(DVec3::new(1.0, corner.x, corner.y))
                    });
                    let (low, high) = places.fold((f64::INFINITY, f64::NEG_INFINITY), |far, z| {
                        (far.0.min(z), far.1.max(z))
                    });
                    let counted = found.moving.iter().filter(|one| {
                        found.solids[one.solid].name == part.solid.name
                            && (one.from..=one.to).contains(&travel)
                    });
                    let (lowest, highest) =
                        counted.fold((f64::INFINITY, f64::NEG_INFINITY), |far, one| {
                            let up = if one.climbs { travel } else { 0.0 };
                            (
                                far.0.min(one.body.low().z + up),
                                far.1.max(one.body.high().z + up),
                            )
                        });
                    assert!(
                        low >= lowest - 1e-6 && high <= highest + 1e-6,
                        "{} at {travel}, {pattern:?} of {up_m}: {low} {high} in {lowest} {highest}",
                        part.solid.name
                    );
                }
            }
        }
    }
    assert!(touched > 500, "{touched}");
}

/// A vehicle on its tyres does not stand on the lift, whatever the posts are off in height; what is on
/// its way to it is.
#[test]
fn posts_off_in_height_count_from_the_first_touch() {
    let bay = test_bay();
    let with = |up_m: f64| {
        let off = Uncertainty {
            posts_m: DVec3::Z * up_m,
            ..Uncertainty::worst(&bay)
        };
        (movers(&bay, &off).unwrap(), off)
    };
    let ((level, _), (off, uncertainty)) = (with(0.0), with(0.01));
    assert!(off.phases.first_touch_m < level.phases.first_touch_m + 1e-12);
    assert!(off.phases.carry_m > level.phases.carry_m + 0.0099);
    for (one, other) in level.standing.iter().zip(&off.standing) {
        assert_eq!(one.body.low(), other.body.low());
        assert_eq!(one.body.high(), other.body.high());
    }
    let lowest = |of: &Movers, climbs: bool| {
        let mut found = vec![f64::INFINITY; of.solids.len()];
        for one in of.moving.iter().filter(|one| one.climbs == climbs) {
            found[one.solid] = found[one.solid].min(one.body.low().z);
        }
        found
    };
    // Once it is carried, and of the lift itself, all of it counts.
    for (before, after) in lowest(&level, true).iter().zip(lowest(&off, true)) {
        assert!(after <= before - 0.0099, "{before} {after}");
    }
    assert!(uncertainty.posts_to_carried().z > 0.0199);
    // On the way from its tyres to the pads no part is lower for it than its levers make it, counted
    // once.
    let levers = support_levers(&bay).unwrap();
    for part in vehicle::parts(&bay)
        .iter()
        .filter(|part| part.wheel.is_none())
    {
        let at = |of: &Movers| of.solids.iter().position(|one| one.name == part.solid.name);
        let (Some(one), Some(other)) = (at(&level), at(&off)) else {
            panic!("{}", part.solid.name);
        };
        let corners = outline_corners(&part.solid.shape, &part.solid.bay_from_solid);
        let weight = corners
            .iter()
            .map(|corner| levers.weight_sum(corner.truncate()))
            .fold(1.0, f64::max);
        let by = lowest(&level, false)[one] - lowest(&off, false)[other];
        assert!(
            by <= 0.01 * weight + 1e-9,
            "{}: {by} {weight}",
            part.solid.name
        );
    }
}

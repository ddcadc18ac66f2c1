//! Does what the study counts with hold a vehicle that is taken up by posts that are off in height?
//!
//! Checked against the mechanics themselves: a rigid body on four springs at its wheels and on pads that
//! push and never pull, each as much too high or too low as posts make it, comes to rest where its
//! springs hold the least energy.

use glam::{DMat3, DVec2, DVec3};

use super::*;
use crate::clearance::part_levers::outline_corners;
use crate::solids::test_bay::test_bay;
use crate::units::Length;

/// Where the body comes to rest on springs of which those of each axle give as much: its rise at the plan's
/// origin, and per length along x and y. The dual is climbed pad by pad (Hildreth's method for quadratic programs).
fn at_rest_on(wheels: [DVec2; 4], gives: [f64; 2], pads: [DVec2; 4], heights: [f64; 4]) -> DVec3 {
    let row = |at: DVec2| DVec3::new(1.0, at.x, at.y);
    let rows = wheels.map(row).into_iter().enumerate();
    let stiffness = rows.fold(DMat3::ZERO, |sum, (wheel, row)| {
        let of_one = DMat3::from_cols(row * row.x, row * row.y, row * row.z);
        sum + of_one * (1.0 / gives[wheel / 2])
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

/// The same for what was measured: pads' tops and lift points, at any height of each, on springs of
/// which those under one axle are harder, over pads that stand level or one end higher.
#[test]
fn a_vehicle_taken_up_by_pads_off_in_height_stays_in_what_is_counted() {
    let mut touched = 0;
    for (front_m, gives) in [(0.0, 1.0), (0.0, 4.0), (0.02, 1.0), (-0.015, 0.3)] {
        let mut bay = test_bay();
        for raise in &mut bay.parking.pad_raise[..2] {
            *raise += Length::metres(front_m);
        }
        for (pad_top_m, vehicle_m) in [(0.004, 0.006), (0.0, 0.012), (0.02, 0.0)] {
            let off = Uncertainty {
                pad_top_m,
                vehicle_m,
                ..Uncertainty::NONE
            };
            touched += in_what_is_counted(&bay, &off, pad_top_m + vehicle_m, [1.0, gives]);
        }
    }
    assert!(touched > 2000, "{touched}");
}

#[test]
fn a_vehicle_taken_up_by_posts_off_in_height_stays_in_what_is_counted() {
    let bay = test_bay();
    let mut touched = 0;
    for up_m in [0.004, 0.012, 0.03] {
        let off = Uncertainty {
            posts_m: DVec3::Z * up_m,
            ..Uncertainty::NONE
        };
        touched += in_what_is_counted(&bay, &off, up_m, [1.0; 2]);
    }
    assert!(touched > 500, "{touched}");
}

/// Corners, and places between them and those that are nearer to the front or the rear.
fn along(corners: &[DVec3]) -> Vec<DVec3> {
    let ends = corners.iter().map(|corner| corner.y);
    let (rear, front) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |far, y| {
        (far.0.min(y), far.1.max(y))
    });
    let stations = (0..=8).map(|step| rear + (front - rear) * f64::from(step) / 8.0);
    let is_box = corners
        .iter()
        .all(|corner| (corner.y - rear).abs() < 1e-9 || (corner.y - front).abs() < 1e-9);
    if !is_box {
        return corners.to_vec();
    }
    stations
        .flat_map(|y| {
            corners
                .iter()
                .map(move |corner| DVec3::new(corner.x, y, corner.z))
        })
        .collect()
}

/// Looks at a vehicle on the springs of its axles, which give as much, as pads come up that are off as far;
/// how often they had moved it.
fn in_what_is_counted(bay: &Bay, off: &Uncertainty, up_m: f64, gives: [f64; 2]) -> usize {
    let rest = attitude::at_rest(bay, ParkingError::default()).unwrap();
    let touch = attitude::contact(bay, ParkingError::default())
        .unwrap()
        .touch_m;
    let pads = Corner::ALL.map(|corner| {
        let index = vehicle::lift_point_at(corner, bay.parking.facing);
        vehicle::lift_point_m(&bay.vehicle, index).truncate()
    });
    let wheels = [0, 1, 2, 3].map(|wheel| vehicle::wheel_middle_m(&bay.vehicle, wheel).truncate());
    let mut touched = 0;
    {
        let found = movers(bay, off).unwrap();
        let from = found.phases.first_touch_m - 0.005;
        let until = found.phases.carry_m + 0.03;
        for step in 0..=24 {
            let travel = from.max(0.0) + (until - from) * f64::from(step) / 24.0;
            for pattern in patterns() {
                let heights = [0, 1, 2, 3].map(|i| travel - touch[i] + up_m * pattern[i]);
                let moved = at_rest_on(wheels, gives, pads, heights);
                touched += usize::from(moved.length() > 1e-6);
                for part in vehicle::parts(bay)
                    .iter()
                    .filter(|part| part.wheel.is_none())
                {
                    let corners = outline_corners(&part.solid.shape, &part.solid.bay_from_solid);
                    let counted: Vec<&Moving> = found
                        .moving
                        .iter()
                        .filter(|one| {
                            found.solids[one.solid].name == part.solid.name
                                && (one.from..=one.to).contains(&travel)
                        })
                        .collect();
                    // Everywhere along it: a long part may be counted length by length.
                    for place in along(&corners) {
                        let at = rest.point(place);
                        let z = at.z + moved.dot(DVec3::new(1.0, place.x, place.y));
                        let over = counted.iter().filter(|one| {
                            one.body.low().y - 1e-6 <= at.y && at.y <= one.body.high().y + 1e-6
                        });
                        let (lowest, highest) =
                            over.fold((f64::INFINITY, f64::NEG_INFINITY), |far, one| {
                                let up = if one.climbs { travel } else { 0.0 };
                                (
                                    far.0.min(one.body.low().z + up),
                                    far.1.max(one.body.high().z + up),
                                )
                            });
                        assert!(
                            z >= lowest - 1e-6 && z <= highest + 1e-6,
                            "{} at {travel}, {pattern:?} of {up_m}: {z} in {lowest} {highest}",
                            part.solid.name
                        );
                    }
                }
            }
        }
    }
    touched
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

/// Springs that the front pads relieve may hold the tail above the rear pads until its tyres are off.
#[test]
fn with_pads_set_unevenly_all_carry_only_once_every_tyre_is_off() {
    let mut bay = test_bay();
    let level = movers(&bay, &Uncertainty::worst(&bay)).unwrap().phases;
    let off = level.lift_off_last_m[0].max(level.lift_off_last_m[1]);
    assert!(level.carry_m < off - 0.05);
    for raise in &mut bay.parking.pad_raise[..2] {
        *raise += Length::metres(0.03);
    }
    let uneven = movers(&bay, &Uncertainty::worst(&bay)).unwrap().phases;
    let off = uneven.lift_off_last_m[0].max(uneven.lift_off_last_m[1]);
    assert!((uneven.carry_m - off).abs() < 1e-12);
}

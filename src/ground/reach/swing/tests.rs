//! Ways in, against hand-made obstacles and against arms posed along the way.

use glam::DVec3;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use super::super::order::orders;
use super::super::tool::touches;
use super::*;
use crate::bay::{Aim, Bay};
use crate::clearance::body::Body;
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::test_bay::test_bay;
use crate::solids::{ParkingError, Role, Solid, attitude, vehicle};
use crate::units::{Angle, Length};

/// The test bay with arms that clear their columns when they stand along them.
fn clear_bay() -> Bay {
    let mut bay = test_bay();
    for arm in &mut bay.lift.arms {
        arm.pivot_inward = Length::inches(10.5);
    }
    bay
}

fn found(bay: &Bay, uncertainty: &Uncertainty, extra: Option<Thing>) -> SwingIn {
    let mut room = Room::new(bay, uncertainty).unwrap();
    room.about.extend(extra);
    swing_in(&room, &mut Solver::new())
}

/// An upright rod 20 mm across, as far from the front left arm's pivot and at such a swing.
fn rod(bay: &Bay, distance_m: f64, swing_rad: f64) -> Thing {
    let at = arms::pad_m(bay, Corner::FrontLeft, swing_rad, distance_m);
    let rod = Solid::bar(
        "rod",
        Role::Obstacle(0),
        at.extend(0.0),
        at.extend(0.5),
        0.010,
    );
    Thing {
        body: Body::exact(&rod),
        name: "rod".into(),
    }
}

/// The reach of the front left arm: wanted at 53 deg and 1.0 m or so, parked at 90 deg.
fn wanted(bay: &Bay) -> arms::ArmReach {
    arms::reach(bay, Corner::FrontLeft, ParkingError::default()).unwrap()
}

#[test]
fn the_test_bays_arms_swing_in_at_their_shortest_in_any_order() {
    let bay = clear_bay();
    for uncertainty in [Uncertainty::NONE, Uncertainty::worst(&bay)] {
        let SwingIn::Found { ways, order, .. } = found(&bay, &uncertainty, None) else {
            panic!("nothing is in the way");
        };
        assert_eq!((ways, order), ([Way::InThenOut; 4], None));
    }
}

#[test]
fn an_arm_that_scrapes_its_column_on_the_way_is_seen() {
    // Half a width behind its pivot the arm's side lies on the column's face.
    let found = found(&test_bay(), &Uncertainty::NONE, None);
    let SwingIn::NotFound { meets, .. } = found else {
        panic!("{found:?}");
    };
    assert_eq!(meets, "lift/post left");
}

#[test]
fn a_rod_near_the_pivot_leaves_no_way() {
    let bay = clear_bay();
    let arm = wanted(&bay);
    let parked = arms::parked_swing(&bay, Corner::FrontLeft);
    assert!(parked > arm.swing_rad + 0.3);
    let between = 0.5 * (parked + arm.swing_rad);
    let rod = rod(&bay, 0.4, between);
    let SwingIn::NotFound {
        corner,
        meets,
        as_parked,
    } = found(&bay, &Uncertainty::NONE, Some(rod))
    else {
        panic!("the arm can't pass the rod");
    };
    assert_eq!(
        (corner, meets.as_str(), as_parked),
        (Corner::FrontLeft, "rod", false)
    );
}

#[test]
fn a_rod_out_on_the_way_is_passed_short() {
    let bay = clear_bay();
    let arm = wanted(&bay);
    let parked = arms::parked_swing(&bay, Corner::FrontLeft);
    let between = 0.5 * (parked + arm.swing_rad);
    let shortest = bay.lift.arms[0].shortest.m();
    assert!(arm.reach_m > shortest + 0.15, "{arm:?}");
    let SwingIn::Found { ways, .. } = found(
        &bay,
        &Uncertainty::NONE,
        Some(rod(&bay, arm.reach_m, between)),
    ) else {
        panic!("the short arm passes inside of the rod");
    };
    assert_eq!(ways[0], Way::InThenOut);
}

#[test]
fn a_rod_beside_the_place_is_passed_drawn_out() {
    // The pad's place lies just behind a rod that the short arm's pad runs into at its end: the
    // arm goes in drawn out, its pad outside of the rod, only where the beam does not sweep it.
    let mut bay = clear_bay();
    let arm = wanted(&bay);
    // An arm whose pad is far wider than its beam, so that the short pad meets what the beam of
    // the drawn-out arm just misses on the far side of its place.
    bay.lift.pad.diameter = Length::mm(400.0);
    let shortest = bay.lift.arms[0].shortest.m();
    let rod = rod(&bay, shortest, arm.swing_rad - 0.28);
    match found(&bay, &Uncertainty::NONE, Some(rod)) {
        SwingIn::Found { ways, .. } => assert_ne!(ways[0], Way::InThenOut),
        SwingIn::NotFound { meets, .. } => panic!("drawn out it passes: {meets}"),
    }
}

#[test]
fn what_is_not_a_number_is_in_the_way() {
    let bay = clear_bay();
    let mut broken = rod(&bay, 0.4, 1.2);
    broken.body = broken.body.moved(DVec3::splat(f64::NAN));
    let found = found(&bay, &Uncertainty::NONE, Some(broken));
    assert!(matches!(found, SwingIn::NotFound { .. }));
}

#[test]
fn an_order_is_found_where_only_one_does() {
    let way = |of_parked: [bool; 4], of_placed: [bool; 4]| {
        vec![Clear {
            way: Way::InThenOut,
            of_parked,
            of_placed,
        }]
    };
    let all = [true; 4];
    // The rear left arm goes in only while the front left one is still parked.
    let not_placed = [false, true, true, true];
    let open = [
        way(all, all),
        way(all, all),
        way(all, not_placed),
        way(all, all),
    ];
    let (_, order) = plan(&open).unwrap();
    let order = order.unwrap();
    let position = |corner| order.iter().position(|&one| one == corner).unwrap();
    assert!(position(Corner::RearLeft) < position(Corner::FrontLeft));
    // Where it passes it neither parked nor placed there is none.
    let open = [
        way(all, all),
        way(all, all),
        way(not_placed, not_placed),
        way(all, all),
    ];
    assert_eq!(plan(&open), None);
    assert_eq!(orders().len(), 24);
}

/// Poses an arm along its way and asks whether it touches the vehicle: exact solids, by sampling,
/// to catch a sweep that covers too little.
fn touches_on_the_way(bay: &Bay, error: ParkingError, ways: &[Way; 4]) -> Option<String> {
    let rest = attitude::at_rest(bay, error).unwrap();
    let solids = vehicle::posed(bay, rest, [0.0; 2]);
    let bodies: Vec<(String, Body)> = solids
        .iter()
        .filter(|solid| solid.bounds().0.z < 0.5)
        .map(|solid| (solid.name.clone(), Body::exact(solid)))
        .collect();
    let mut solver = Solver::new();
    for corner in Corner::ALL {
        let arm = arms::reach(bay, corner, error).unwrap();
        let parked = (
            arms::parked_swing(bay, corner),
            bay.lift.arms[corner.index()].shortest.m(),
        );
        let placed = (arm.swing_rad, arm.reach_m);
        let half = 0.5 * (parked.1 + placed.1);
        let stops = match ways[corner.index()] {
            Way::InThenOut => vec![parked, (placed.0, parked.1), placed],
            Way::OutThenIn => vec![parked, (parked.0, placed.1), placed],
            Way::HalfOut => vec![parked, (parked.0, half), (placed.0, half), placed],
            Way::Past(swing) => vec![parked, (swing, parked.1), (swing, placed.1), placed],
        };
        for leg in stops.windows(2) {
            for step in 0..=60 {
                let share = f64::from(step) / 60.0;
                let swing = leg[0].0 + (leg[1].0 - leg[0].0) * share;
                let reach = leg[0].1 + (leg[1].1 - leg[0].1) * share;
                for solid in arms::arm_and_pad_down(bay, corner, swing, reach) {
                    let body = Body::exact(&solid);
                    for (name, part) in &bodies {
                        if touches(&body, part, &mut solver) {
                            return Some(format!("{} and {name} at {swing}", solid.name));
                        }
                    }
                }
            }
        }
    }
    None
}

#[test]
fn a_way_that_is_found_touches_nothing_wherever_it_is_looked_at() {
    let mut runner = TestRunner::deterministic();
    let draw = (
        (-20.0..20.0_f64, -3.0..3.0_f64, 1.0..9.0_f64, -6.0..8.0_f64),
        (20.0..60.0_f64, 20.0..40.0_f64, 8.0..14.0_f64, any::<bool>()),
    );
    let mut ways_found = 0;
    for _ in 0..60 {
        let ((aim, across, underside, pivot_away), (overhang, shortest, tyre, exact)) =
            draw.new_tree(&mut runner).unwrap().current();
        let mut bay = clear_bay();
        for arm in &mut bay.lift.arms {
            arm.underside = Length::inches(underside);
            arm.pivot_away = Length::inches(pivot_away);
            arm.shortest = Length::inches(shortest);
            arm.longest = Length::inches(70.0);
            arm.swing_min = Angle::degrees(-60.0);
        }
        bay.parking.aim = Aim::LiftPoints(Length::inches(aim));
        bay.parking.across = Length::inches(across);
        bay.vehicle.front_overhang = Length::inches(overhang);
        bay.vehicle.tyre_width = Length::inches(tyre);
        let uncertainty = if exact {
            Uncertainty::NONE
        } else {
            Uncertainty::worst(&bay)
        };
        if let SwingIn::Found { ways, .. } = found(&bay, &uncertainty, None) {
            ways_found += 1;
            let met = touches_on_the_way(&bay, ParkingError::default(), &ways);
            assert_eq!(met, None, "{bay:?}");
        }
    }
    assert!(ways_found > 10 && ways_found < 60, "{ways_found}");
}

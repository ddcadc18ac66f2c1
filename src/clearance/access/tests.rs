use glam::DVec3;

use super::*;
use crate::bay::{Bay, Facing, OpeningKind, OpeningPart, Side};
use crate::clearance::body::Body;
use crate::clearance::gap::{Separation, Solver};
use crate::clearance::opening::{Hinge, THICKNESS_M};
use crate::clearance::{Study, study};
use crate::solids::test_bay::test_bay;
use crate::solids::{ParkingError, Shape, attitude, posts};
use crate::units::{Angle, Length};

const INCH: f64 = 0.0254;

fn front_door(kind: OpeningKind, name: &str) -> OpeningPart {
    OpeningPart {
        name: name.into(),
        kind,
        hinge: Length::inches(66.0),
        hinge_height: Length::inches(20.0),
        length: Length::inches(44.0),
        width: Length::inches(50.0),
        shut: Angle::ZERO,
        opens: Angle::degrees(65.0),
    }
}

/// The test bay with two front doors.
fn bay() -> Bay {
    let mut bay = test_bay();
    bay.vehicle.opening_parts = vec![
        front_door(OpeningKind::DoorLeft, "left front door"),
        front_door(OpeningKind::DoorRight, "right front door"),
    ];
    bay
}

/// The same with nothing uncertain.
fn exact() -> Bay {
    let mut bay = bay();
    bay.parking.repeat_along = Length::ZERO;
    bay.parking.repeat_across = Length::ZERO;
    bay.parking.repeat_yaw = Angle::ZERO;
    bay.policy.measured_garage = Length::ZERO;
    bay.policy.measured_lift = Length::ZERO;
    bay.policy.measured_vehicle = Length::ZERO;
    bay
}

fn found(bay: &Bay) -> Study {
    study(bay).unwrap()
}

#[test]
fn a_door_meets_the_carriage_where_plane_geometry_says() {
    // The balance point lies 38 + 145 * 2200 / 5200 = 99.346 in behind the bumper and on the post
    // line, the hinge 66 in: 33.346 in ahead. The carriage's far edge is 5 in behind the line and
    // its inner face 54 in from the middle, 14 in from the body's side at 40 in.
    let along = (38.0 + 145.0 * 2200.0 / 5200.0 - 66.0 + 5.0) * INCH;
    let out = 14.0 * INCH;
    // The door's outer face lies half its thickness outside the line from the hinge: the corner
    // is met where out * cos a - along * sin a = half the thickness.
    let reach = out.hypot(along);
    let met = out.atan2(along) - (THICKNESS_M * 0.5 / reach).asin();
    let study = found(&exact());
    for (door, carriage) in study.access.doors.iter().zip(["left", "right"]) {
        let angle = door.down.angle_rad;
        // The search stops within 5 mm of it, on the sound side.
        assert!(angle <= met && angle > met - 0.006 / along, "{angle} {met}");
        let name = format!("lift/carriage {carriage}");
        assert_eq!(door.down.meets.as_deref(), Some(name.as_str()));
        let gap = 44.0 * INCH * angle.sin() - THICKNESS_M * 0.5 * angle.cos();
        assert!((door.down.gap_m - gap).abs() < 1e-12);
    }
}

#[test]
fn opened_as_far_as_told_no_door_touches_anywhere_in_the_parking_box() {
    let bay = bay();
    let study = found(&bay);
    let mut solver = Solver::new();
    let lift: Vec<Body> = posts::posts(&bay)
        .iter()
        .chain(&posts::carriages(&bay))
        .map(Body::exact)
        .collect();
    for door in &study.access.doors {
        let part = &bay.vehicle.opening_parts[door.part];
        let hinge = Hinge::new(part, bay.vehicle.body_width.m());
        for step in 0..27 {
            let share = |unit: i32| f64::from(step / unit % 3 - 1);
            let error = ParkingError {
                across_m: share(1) * bay.parking.repeat_across.m(),
                along_m: share(3) * bay.parking.repeat_along.m(),
                yaw_rad: share(9) * bay.parking.repeat_yaw.rad(),
            };
            let rest = attitude::at_rest(&bay, error).unwrap();
            let pose = rest.after(hinge.pose(door.down.angle_rad));
            let panel = Body::of(&hinge.shape(), &[pose], DVec3::ZERO);
            for thing in &lift {
                assert!(
                    matches!(solver.gap(&panel, DVec3::ZERO, thing), Separation::Apart(_)),
                    "{} {error:?}",
                    door.name
                );
            }
        }
        assert!(matches!(hinge.shape(), Shape::Box { .. }));
    }
}

#[test]
fn at_waist_height_the_carriage_has_climbed_along() {
    let study = found(&exact());
    for door in &study.access.doors {
        let (lock, swing) = door.at_waist.as_ref().unwrap();
        assert!(study.locks[lock - 1].state == LockState::Clear);
        assert!(swing.meets.as_deref().unwrap().starts_with("lift/carriage"));
    }
    // So do the doors of the list of things that open, which keep the margin beside a post too.
    for (part, door) in study.opening_parts.iter().zip(&study.access.doors) {
        let (lock, swing) = door.at_waist.as_ref().unwrap();
        assert!(part.at_locks_rad[lock - 1] < swing.angle_rad);
    }
}

#[test]
fn only_the_drivers_door_is_asked_about_where_his_side_is_known() {
    let mut bay = bay();
    let doors = found(&bay).access.doors;
    assert_eq!(shift::asked(&bay, &doors), [0, 1]);
    bay.vehicle.driver = Some(Side::Right);
    assert_eq!(shift::asked(&bay, &doors), [1]);
}

#[test]
fn a_shift_that_is_told_holds_in_a_study_of_its_own() {
    let mut bay = bay();
    bay.vehicle.mirrors = None;
    // Shorter doors, so that a shift does it.
    for part in &mut bay.vehicle.opening_parts {
        part.length = Length::inches(40.0);
    }
    // Set the arms clear of their own columns, so that nothing is short as parked.
    bay.lift.carriage.proud = Length::inches(5.0);
    for arm in &mut bay.lift.arms {
        arm.pivot_inward = Length::inches(10.25);
        arm.longest += Length::inches(16.0);
        arm.shortest = Length::inches(16.0);
    }
    // Nor does the balance end at the 12 in of this lift.
    if let Some(window) = &mut bay.lift.cg_window {
        window.front = Length::inches(18.0);
    }
    // The widest body that a shift does it for.
    let widths = (0..16).map(|step| 74.0 - 0.5 * f64::from(step));
    let found_for = |inches: f64| {
        let mut bay = bay.clone();
        bay.vehicle.body_width = Length::inches(inches);
        let study = found(&bay);
        let shift = study.access.shift.clone().filter(|shift| shift.enough)?;
        Some((bay, study, shift))
    };
    let (mut bay, study, shift) = widths.into_iter().find_map(found_for).unwrap();
    let crate::bay::Aim::CentreOfGravity(offset) = bay.parking.aim else {
        panic!("it aims at the centre of gravity");
    };
    bay.parking.aim = crate::bay::Aim::CentreOfGravity(offset + Length::metres(shift.along_m));
    let moved = found(&bay);
    assert_eq!(moved.access.shift, None);
    for (before, after) in study.access.doors.iter().zip(&moved.access.doors) {
        assert!(before.down.gap_m < LEAVE_M && after.down.gap_m >= LEAVE_M);
        assert!(after.down.gap_m >= shift.swing.gap_m - 1e-9);
    }
    assert!(moved.arms.iter().all(|arm| arm.worst_shortfall_m <= 0.0));
    assert_eq!(moved.highest_clear_lock, shift.highest_clear_lock);
    assert_eq!(
        shift.without_loss,
        moved.highest_clear_lock >= study.highest_clear_lock
    );
}

#[test]
fn ways_of_the_test_bay_by_hand() {
    let study = found(&exact());
    let width = |kind: WayKind| {
        let way = study.access.ways.iter().find(|way| way.kind == kind);
        way.unwrap().width_m / INCH
    };
    let close = |found: f64, expected: f64| {
        assert!((found - expected).abs() < 1e-6, "{found} is not {expected}");
    };
    for side in [Side::Left, Side::Right] {
        // Half the room, 144 in, less half the width over the mirrors, 48 in.
        close(width(WayKind::BesideVehicle(side)), 96.0);
    }
    // Mirrors are ahead of the posts: 6 in at most from their middle at 72 in, 24 in ahead of the
    // line; body side at 40 in to the carriage at 54 in.
    close(width(WayKind::VehicleToPost(Side::Left)), 14.0);
    close(width(WayKind::BetweenPosts), 108.0);
    // Column's outer face at 58 + 12 in, the power unit 10 in more on the right.
    close(width(WayKind::BehindPost(Side::Left)), 144.0 - 70.0);
    close(width(WayKind::BehindPost(Side::Right)), 144.0 - 80.0);
    // The nose is 99.346 in ahead of the post line at 168 in; the back wall is at 336 in.
    let nose = 38.0 + 145.0 * 2200.0 / 5200.0;
    close(width(WayKind::Back), 336.0 - 168.0 - nose);
}

#[test]
fn turned_round_is_what_the_other_facing_finds() {
    for post_line in [120.0, 130.0, 140.0, 168.0, 190.0] {
        let mut bay = bay();
        bay.lift.post_line = Length::inches(post_line);
        let turned = found(&bay).access.turned.unwrap();
        bay.parking.facing = Facing::TailIn;
        let other = found(&bay).access;
        let shuts = other.shut.unwrap().meets.is_none();
        // Boxes may deny what the bodies grant, never the other way round.
        assert!(shuts || !turned.shuts, "post line at {post_line} in");
        let back = other.ways.iter().find(|way| way.kind == WayKind::Back);
        assert!(turned.to_back_m <= back.unwrap().width_m + 1e-6);
    }
}

#[test]
fn a_vehicle_that_stands_in_the_doorway_keeps_the_door_from_shutting() {
    let mut bay = bay();
    assert_eq!(found(&bay).access.shut.unwrap().meets, None);
    bay.lift.post_line = Length::inches(120.0);
    let meets = found(&bay).access.shut.unwrap().meets.unwrap();
    assert!(meets.1.starts_with("door/"), "{meets:?}");
    bay.garage.door = crate::bay::Door::None;
    bay.garage.opener = crate::bay::Opener::None;
    assert_eq!(found(&bay).access.shut, None);
}

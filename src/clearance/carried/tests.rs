//! What is told apart over the whole parking box is apart in every place of it, one place at a time.

use super::super::reach::miss_plan_m;
use super::*;
use crate::bay::{LowPart, UnitSystem};
use crate::bayfile::presets::{EmbeddedOnly, lifts, vehicles};
use crate::solids::ParkingError;
use crate::solids::test_bay::test_bay;
use crate::starter::starter;
use crate::units::{Angle, Length};

fn bays() -> Vec<Bay> {
    let mut bays = Vec::new();
    for (index, lift) in lifts().iter().enumerate() {
        for vehicle in vehicles().iter().skip(index % 3).step_by(3) {
            let made = starter(lift.name, vehicle.name, UnitSystem::Metric).unwrap();
            let read = crate::bayfile::read("bay.ron", made.text.as_bytes(), &EmbeddedOnly);
            bays.push(read.unwrap().bay);
        }
    }
    bays
}

/// The pairs that touch in one place, nothing kept from another.
fn touching_at(bay: &Bay, uncertainty: &Uncertainty, place: ParkingError) -> Vec<ContactFinding> {
    let parts: Vec<Part> = vehicle::parts(bay).into_iter().map(Part::new).collect();
    let mut solver = Solver::new();
    let points = Points::new(bay, &parts, &mut solver);
    let allowed = Allowed::new(bay, parts.len(), uncertainty).unwrap();
    let mut look = Look {
        bay,
        uncertainty,
        allowed: &allowed,
        parts: &parts,
        points: &points,
        partings: Partings::new(parts.len()),
        solver: &mut solver,
    };
    let found = look.touching(Piece::at(place), &Pairs::all(parts.len()));
    by_name(bay, &parts, &found.unwrap())
}

/// Places spread over the box in which the vehicle may stand: a sequence of low discrepancy (the
/// fractional parts of multiples of powers of the root of x^4 = x + 1).
fn places(uncertainty: &Uncertainty, count: usize) -> Vec<ParkingError> {
    let miss = miss_plan_m(uncertainty);
    let parking = uncertainty.parking;
    let at = |number: usize, step: f64| {
        let share = (0.5 + step * (number + 1) as f64).fract();
        2.0 * share - 1.0
    };
    (0..count)
        .map(|number| ParkingError {
            across_m: (parking.across_m + miss.x) * at(number, 0.819_172_513_4),
            along_m: (parking.along_m + miss.y) * at(number, 0.671_043_606_7),
            yaw_rad: parking.yaw_rad * at(number, 0.549_700_477_9),
        })
        .collect()
}

fn has(found: &[ContactFinding], one: &ContactFinding) -> bool {
    found.contains(one)
}

/// Places in which something is met, and others in which nothing is.
fn vary(number: usize, bay: &mut Bay) {
    match number % 5 {
        0 => {}
        1 => bay.parking.across = Length::metres(-0.4),
        2 => bay.parking.yaw = Angle::degrees(8.0),
        3 => {
            for arm in &mut bay.lift.arms {
                arm.tooth = Some(Angle::degrees(5.0));
                arm.underside += Length::metres(0.04);
            }
        }
        _ => {
            for arm in &mut bay.lift.arms {
                arm.underside += Length::metres(0.08);
            }
        }
    }
}

#[test]
fn what_touches_in_any_place_is_told() {
    let (mut touching, mut clear, mut looked) = (0, 0, 0);
    for (number, mut bay) in bays().into_iter().enumerate().step_by(2) {
        vary(number / 2, &mut bay);
        bay.lift.side_mismatch = Length::metres(0.02);
        let uncertainty = Uncertainty::worst(&bay);
        let Ok(found) = carried(&bay, &uncertainty, &mut Solver::new()) else {
            continue;
        };
        for place in places(&uncertainty, 24) {
            for one in touching_at(&bay, &uncertainty, place) {
                looked += 1;
                assert!(has(&found, &one), "bay {number}, {place:?}: {one:?}");
            }
        }
        touching += found.len();
        clear += usize::from(found.is_empty());
    }
    assert!(
        touching > 20 && clear > 2 && looked > 200,
        "{touching} touch, {clear} bays clear, {looked} looked at"
    );
}

/// A low cross member, thin, that reaches out beside an arm with coarse teeth: the arm strikes it at the
/// farther of two teeth only, for a vehicle between the middle and the corners of the parking box.
#[test]
fn what_an_arm_strikes_between_the_corners_of_the_box_is_told() {
    let (mut between, mut told, mut apart) = (0, 0, 0);
    for number in 0..140 {
        let mut bay = test_bay();
        let points = bay.vehicle.lift_points;
        for arm in &mut bay.lift.arms {
            arm.tooth = Some(Angle::degrees(4.0));
        }
        let lowest = bay.lift.arms.iter().map(|arm| arm.underside.m());
        let height = lowest.fold(f64::INFINITY, f64::min) + 0.05;
        let from = points[0].station + Length::metres(0.005 * f64::from(number) - 0.2);
        bay.vehicle.underbody.clear();
        bay.vehicle.underbody.push(LowPart {
            name: "bracket".into(),
            from,
            to: from + Length::metres(0.02),
            half_width: points[0].half_spacing + Length::metres(0.15),
            height: Length::metres(height),
            hangs_with: None,
        });
        let uncertainty = Uncertainty::worst(&bay);
        let found = carried(&bay, &uncertainty, &mut Solver::new()).unwrap();
        told += found.len();
        apart += usize::from(found.is_empty());
        let mut corners = vec![ParkingError::default()];
        corners.extend(uncertainty.parking_corners());
        let at = |places: Vec<ParkingError>| {
            let touching = places
                .into_iter()
                .flat_map(|place| touching_at(&bay, &uncertainty, place));
            touching.collect::<Vec<_>>()
        };
        let at_corners = at(corners);
        for one in &at_corners {
            assert!(has(&found, one), "{number}: {one:?}");
        }
        if found.iter().all(|one| has(&at_corners, one)) {
            continue;
        }
        let all_over = at(places(&uncertainty, 200));
        for one in &all_over {
            assert!(has(&found, one), "{number}: {one:?}");
        }
        between += usize::from(all_over.iter().any(|one| !has(&at_corners, one)));
    }
    assert!(
        between > 2 && told > 10 && apart > 2,
        "{between} only between the corners, {told} told, {apart} apart"
    );
}

/// What is told to touch does, or comes within some millimetres of it: what a piece adds goes as it is cut.
#[test]
fn what_is_told_to_touch_comes_as_near() {
    let mut checked = 0;
    for (number, mut bay) in bays().into_iter().enumerate().step_by(5) {
        vary(number / 5, &mut bay);
        let uncertainty = Uncertainty::worst(&bay);
        let Ok(found) = carried(&bay, &uncertainty, &mut Solver::new()) else {
            continue;
        };
        let nearer = Uncertainty {
            vehicle_m: uncertainty.vehicle_m + 0.012,
            ..uncertainty
        };
        let mut left = found.clone();
        for place in places(&uncertainty, 300) {
            if left.is_empty() {
                break;
            }
            let there = touching_at(&bay, &nearer, place);
            left.retain(|one| !has(&there, one));
        }
        assert!(left.is_empty(), "bay {number}: {left:?}");
        checked += found.len();
    }
    assert!(checked > 5, "{checked}");
}

/// A tray over all four lift points, or ending just short of them, at a height under the ground clearance
/// of the points: the pads meet it before they come to their points.
#[test]
fn a_part_that_hangs_lower_than_the_points_in_it_is_met() {
    let pads_told = |half_width: f64, lower: f64| {
        let mut bay = test_bay();
        let points = bay.vehicle.lift_points;
        let height = points
            .iter()
            .map(|point| point.height)
            .fold(Length::metres(9.0), Length::min);
        let across = points
            .iter()
            .map(|point| point.half_spacing)
            .fold(Length::ZERO, Length::max);
        bay.vehicle.underbody.clear();
        bay.vehicle.underbody.push(LowPart {
            name: "tray".into(),
            from: points[0].station - Length::metres(0.6),
            to: points[2].station + Length::metres(0.6),
            half_width: across + Length::metres(half_width),
            height: height - Length::metres(lower),
            hangs_with: None,
        });
        let found = carried(&bay, &Uncertainty::worst(&bay), &mut Solver::new()).unwrap();
        let is_pad = |one: &&ContactFinding| {
            one.vehicle == "vehicle/underbody tray" && one.part.starts_with("lift/pad")
        };
        found.iter().filter(is_pad).count()
    };
    for lower in [0.0015, 0.01, 0.06] {
        assert_eq!(pads_told(0.15, lower), 4, "{lower}");
    }
    assert_eq!(pads_told(-0.009, 0.06), 4, "its edge is over the pads");
    assert_eq!(pads_told(0.15, 0.0), 0, "its underside is what they carry");
}

/// A part that hangs lower than the points in front of them, as far off as a pad may stand at a tooth.
#[test]
fn a_lower_part_beside_the_point_is_met_by_a_pad_at_its_tooth() {
    let told = |clear: f64, lower: f64| {
        let mut bay = test_bay();
        for arm in &mut bay.lift.arms {
            arm.tooth = Some(Angle::degrees(3.0));
        }
        let points = bay.vehicle.lift_points;
        let from = points[0].station + bay.lift.pad.diameter * 0.5 + Length::metres(clear);
        bay.vehicle.underbody.clear();
        bay.vehicle.underbody.push(LowPart {
            name: "bracket".into(),
            from,
            to: from + Length::metres(0.03),
            half_width: points[0].half_spacing + Length::metres(0.1),
            height: points[0].height - Length::metres(lower),
            hangs_with: None,
        });
        let found = carried(&bay, &Uncertainty::worst(&bay), &mut Solver::new()).unwrap();
        let is_pad = |one: &ContactFinding| {
            one.vehicle == "vehicle/underbody bracket" && one.part.starts_with("lift/pad front")
        };
        found.iter().any(is_pad)
    };
    for lower in [0.002, 0.007, 0.02] {
        assert!(told(0.002, lower), "{lower}");
    }
    assert!(
        told(0.002, 0.0),
        "as high as the points: it may be lower, both were measured"
    );
    assert!(!told(0.002, -0.02), "higher, whatever was off");
    assert!(!told(0.4, 0.007), "far off");
}

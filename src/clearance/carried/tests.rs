//! What is taken to be far is far, measured one pair at a time.

use super::near::kind;
use super::*;
use crate::bay::{LowPart, UnitSystem};
use crate::bayfile::presets::{EmbeddedOnly, lifts, vehicles};
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

fn is_apart(solver: &mut Solver, one: &Body, other: &Body) -> bool {
    match solver.gap(one, DVec3::ZERO, other) {
        Separation::Meet => false,
        Separation::Apart(gap) => gap.lower > 0.0,
    }
}

fn body_in(scene: &Scene<'_>, index: usize) -> Body {
    let part = LiftPart {
        scene,
        index,
        under_own_pad: false,
    };
    part.body().clone()
}

#[test]
fn what_is_told_apart_for_every_place_is_apart_in_each() {
    let mut solver = Solver::default();
    let (mut far, mut near) = (0, 0);
    for bay in bays() {
        let uncertainty = Uncertainty::worst(&bay);
        let parts: Vec<Part> = vehicle::parts(&bay).into_iter().map(Part::new).collect();
        let parked: Vec<Parked> = uncertainty
            .parking_corners()
            .into_iter()
            .map(|place| Parked::new(&bay, place).unwrap())
            .collect();
        let scenes: Vec<Scene<'_>> = parked
            .iter()
            .zip(
                [None, Some(Side::Left), Some(Side::Right)]
                    .into_iter()
                    .cycle(),
            )
            .map(|(parked, lead)| Scene::new(&bay, &parts, parked, lead, &uncertainty).unwrap())
            .collect();
        let may_meet = MayMeet::new(&bay, &parts, &scenes);
        for scene in scenes.iter().step_by(3) {
            let climb = DVec3::Z * scene.longest_climb_m();
            for (index, (solid, _)) in scene.parked.lift.iter().enumerate() {
                let body = &body_in(scene, index);
                let climbing = body.swept(climb);
                for (number, part) in parts.iter().enumerate() {
                    if may_meet.vehicle(number, kind(solid.role)) {
                        near += 1;
                        continue;
                    }
                    far += 1;
                    let posed = |pose: Pose| {
                        let own = &part.part.solid;
                        Body::of(&own.shape, &[pose.after(own.bay_from_solid)], DVec3::ZERO)
                    };
                    let standing = posed(scene.parked.rest);
                    assert!(
                        is_apart(&mut solver, &climbing, &standing),
                        "{}",
                        solid.name
                    );
                    for attitude in &scene.attitudes {
                        let hangs = Pose::at(DVec3::Z * -part.droop_m(&bay));
                        let raised = posed(attitude.bay_from_vehicle_at_zero.after(hangs));
                        assert!(is_apart(&mut solver, body, &raised), "{}", solid.name);
                    }
                }
                for (other_index, (other, _)) in scene.parked.lift.iter().enumerate() {
                    if parked::are_strangers(solid.role, other.role)
                        && !may_meet.each_other(kind(solid.role), kind(other.role))
                    {
                        let other_body = &body_in(scene, other_index);
                        assert!(is_apart(&mut solver, body, other_body), "{}", other.name);
                    }
                }
            }
        }
    }
    assert!(far > near && near > 1000, "{far} far, {near} near");
}

/// Contacts with every pair looked at in every place, nothing kept from one for the next.
fn one_at_a_time(bay: &Bay) -> Vec<ContactFinding> {
    let uncertainty = Uncertainty::worst(bay);
    let parts: Vec<Part> = vehicle::parts(bay).into_iter().map(Part::new).collect();
    let mut places = vec![ParkingError::default()];
    places.extend(uncertainty.parking_corners());
    let mut solver = Solver::new();
    let mut found = Vec::new();
    for place in places {
        let parked = Parked::new(bay, place).unwrap();
        for lead in [None, Some(Side::Left), Some(Side::Right)] {
            let scene = Scene::new(bay, &parts, &parked, lead, &uncertainty).unwrap();
            let known = || Known {
                may_meet: MayMeet::anything(parts.len()),
                partings: Partings::new(parts.len()),
            };
            scene.touching(bay, &known(), &mut solver, &mut found);
            scene.touching_each_other(&known(), &mut solver, &mut found);
        }
    }
    found.sort_by(|a, b| (&a.part, &a.vehicle).cmp(&(&b.part, &b.vehicle)));
    found
}

#[test]
fn what_is_kept_from_one_place_for_the_next_changes_nothing() {
    let (mut touching, mut clear) = (0, 0);
    for (number, mut bay) in bays().into_iter().enumerate().step_by(2) {
        // Places in which something is met, and others in which nothing is.
        match number / 2 % 4 {
            0 => {}
            1 => bay.parking.across = Length::metres(-0.4),
            2 => bay.parking.yaw = Angle::degrees(8.0),
            _ => {
                for arm in &mut bay.lift.arms {
                    arm.underside += Length::metres(0.08);
                }
            }
        }
        bay.lift.side_mismatch = Length::metres(0.02);
        let uncertainty = Uncertainty::worst(&bay);
        let Ok(found) = carried(&bay, &uncertainty, &mut Solver::new()) else {
            continue;
        };
        assert_eq!(found, one_at_a_time(&bay), "bay {number}");
        touching += found.len();
        clear += usize::from(found.is_empty());
    }
    assert!(
        touching > 20 && clear > 2,
        "{touching} touch, {clear} bays clear"
    );
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

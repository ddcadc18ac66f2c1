//! What is taken to be far is far, measured one pair at a time.

use super::*;
use crate::bay::UnitSystem;
use crate::bayfile::presets::{EmbeddedOnly, lifts, vehicles};
use crate::starter::starter;

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
                let body = &scene.lift_part(index).body;
                let climbing = body.swept(climb);
                for (number, part) in parts.iter().enumerate() {
                    if may_meet.vehicle(number, solid.role) {
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
                        && !may_meet.each_other(solid.role, other.role)
                    {
                        let other_body = &scene.lift_part(other_index).body;
                        assert!(is_apart(&mut solver, body, other_body), "{}", other.name);
                    }
                }
            }
        }
    }
    assert!(far > near && near > 1000, "{far} far, {near} near");
}

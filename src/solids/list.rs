//! Every solid of a bay at one door state and one carriage travel, each where it then is.

use glam::DVec3;

use super::attitude::{self, Attitude, StanceError};
use super::{
    DoorTravel, ParkingError, Pose, Solid, arms, door, obstacles, opener, posts, shell, vehicle,
};
use crate::bay::{Bay, Corner};

pub use super::export::{SolidExport, export};

/// Every solid of the bay, posed for a door state and a carriage travel in metres, the vehicle
/// parked where it is wanted. The order is fixed: room, door, lift, vehicle.
///
/// Where the body can stand on the pads in more than one way, the first is shown; the study
/// checks them all. Between the first touch of a pad and the last, the body is shown part of the
/// way from one attitude to the other.
///
/// # Errors
/// When it cannot be said how the vehicle stands, see [`StanceError`].
pub fn solids(bay: &Bay, door: DoorTravel, travel_m: f64) -> Result<Vec<Solid>, StanceError> {
    let mut solids = shell::shell(bay);
    solids.extend(obstacles::obstacles(bay));
    solids.extend(door::door(bay, door));
    solids.extend(opener::opener(bay, door));
    solids.extend(posts::posts(bay));

    let mut moving = posts::carriages(bay);
    for corner in Corner::ALL {
        let reach = arms::reach(bay, corner, ParkingError::default())?;
        moving.extend(arms::arm_and_pad(
            bay,
            corner,
            reach.swing_rad,
            reach.reach_m,
        ));
    }
    let climb = DVec3::Z * travel_m;
    solids.extend(moving.into_iter().map(|mut solid| {
        solid.bay_from_solid = solid.bay_from_solid.moved(climb);
        solid
    }));

    let (pose, droop_m) = vehicle_at(bay, travel_m)?;
    solids.extend(vehicle::posed(bay, pose, droop_m));
    Ok(solids)
}

/// The vehicle's pose at a travel, and how far the wheels of each axle then hang below ride
/// height, metres.
fn vehicle_at(bay: &Bay, travel_m: f64) -> Result<(Pose, [f64; 2]), StanceError> {
    let rest = attitude::at_rest(bay, ParkingError::default())?;
    let contact = attitude::contact(bay, ParkingError::default())?;
    if travel_m < contact.first_touch_m {
        return Ok((rest, [0.0; 2]));
    }
    let attitudes = attitude::attitudes(bay, ParkingError::default(), [0.0; 4])?;
    let Some(on_pads) = attitudes.first() else {
        return Err(StanceError::LiftPointsInLine);
    };
    let raised = |travel: f64| on_pads.bay_from_vehicle_at_zero.moved(DVec3::Z * travel);
    if travel_m < contact.carry_m {
        let share = (travel_m - contact.first_touch_m) / (contact.carry_m - contact.first_touch_m);
        let pose = between(bay, rest, raised(contact.carry_m), share);
        // The whole turn's share of the droop, so that the tyres stay near the floor.
        let droop = droop_at(bay, on_pads, contact.carry_m).map(|droop| droop * share);
        return Ok((pose, droop));
    }
    Ok((raised(travel_m), droop_at(bay, on_pads, travel_m)))
}

/// How far the wheels hang on the pads: until an axle's first wheel leaves the floor as far as
/// that wheel needs to reach it (negative for a spring pressed in), then by all their droop.
fn droop_at(bay: &Bay, on_pads: &Attitude, travel_m: f64) -> [f64; 2] {
    std::array::from_fn(|axle| {
        let droop = bay.vehicle.droop[axle].m();
        let to_go = on_pads.lift_off_m[axle] - travel_m;
        droop - to_go.max(0.0)
    })
}

/// A share of the way from one pose to another, turning about the middle of the lift points.
fn between(bay: &Bay, from: Pose, to: Pose, share: f64) -> Pose {
    let middle = (0..4)
        .map(|index| vehicle::lift_point_m(&bay.vehicle, index))
        .sum::<DVec3>()
        / 4.0;
    let rotation = from.rotation.slerp(to.rotation, share);
    let place = from.point(middle).lerp(to.point(middle), share);
    Pose::new(rotation, place - rotation * middle)
}

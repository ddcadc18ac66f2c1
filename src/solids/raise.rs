//! Where is the vehicle drawn at each travel: at rest, turning onto the pads, or carried?

use glam::DVec3;

use super::attitude::{self, Attitude, Contact, StanceError};
use super::{ParkingError, Pose, vehicle};
use crate::bay::Bay;

/// Where the vehicle is at a travel: its pose in the bay, and how far the wheels of each axle
/// (front, rear) hang below ride height, metres; negative for a spring pressed in.
pub type Place = (Pose, [f64; 2]);

/// The vehicle on its way up, parked where it is wanted: worked out once per bay, asked often.
///
/// Where the body can stand on the pads in more than one way, the first is shown. Between the
/// first touch of a pad and the last, the body is shown part of the way from one attitude to the
/// other.
#[derive(Debug, Clone)]
pub struct Raise {
    rest: Pose,
    contact: Contact,
    on_pads: Attitude,
    /// Droop of each axle, metres.
    droop_m: [f64; 2],
    /// Middle of the lift points, vehicle frame.
    turning_middle: DVec3,
}

impl Raise {
    /// The vehicle of this bay.
    ///
    /// # Errors
    /// When it cannot be said how the vehicle stands, see [`StanceError`].
    pub fn new(bay: &Bay) -> Result<Self, StanceError> {
        let rest = attitude::at_rest(bay, ParkingError::default())?;
        let contact = attitude::contact(bay, ParkingError::default())?;
        Self::after_rest(bay, rest, contact)
    }

    fn after_rest(bay: &Bay, rest: Pose, contact: Contact) -> Result<Self, StanceError> {
        let attitudes = attitude::attitudes(bay, ParkingError::default(), [0.0; 4])?;
        let Some(on_pads) = attitudes.into_iter().next() else {
            return Err(StanceError::LiftPointsInLine);
        };
        let lift_points = (0..4).map(|index| vehicle::lift_point_m(&bay.vehicle, index));
        Ok(Self {
            rest,
            contact,
            on_pads,
            droop_m: bay.vehicle.droop.map(|droop| droop.m()),
            turning_middle: lift_points.sum::<DVec3>() / 4.0,
        })
    }

    /// Where the vehicle is at a travel, metres.
    #[must_use]
    pub fn at(&self, travel_m: f64) -> Place {
        let Contact {
            first_touch_m,
            carry_m,
            ..
        } = self.contact;
        if travel_m < first_touch_m {
            return (self.rest, [0.0; 2]);
        }
        if travel_m < carry_m {
            let share = (travel_m - first_touch_m) / (carry_m - first_touch_m);
            // The whole turn's share of the droop, so that the tyres stay near the floor.
            let droop = self.droop_at(carry_m).map(|droop| droop * share);
            return (self.turned(self.raised(carry_m), share), droop);
        }
        (self.raised(travel_m), self.droop_at(travel_m))
    }

    fn raised(&self, travel_m: f64) -> Pose {
        self.on_pads
            .bay_from_vehicle_at_zero
            .moved(DVec3::Z * travel_m)
    }

    /// How far the wheels hang on the pads: until an axle's first wheel leaves the floor as far
    /// as that wheel needs to reach it, then by all their droop.
    fn droop_at(&self, travel_m: f64) -> [f64; 2] {
        std::array::from_fn(|axle| {
            let to_go = self.on_pads.lift_off_m[axle] - travel_m;
            self.droop_m[axle] - to_go.max(0.0)
        })
    }

    /// A share of the way from rest to another pose, turning about the middle of the lift points.
    fn turned(&self, to: Pose, share: f64) -> Pose {
        let middle = self.turning_middle;
        let rotation = self.rest.rotation.slerp(to.rotation, share);
        let place = self.rest.point(middle).lerp(to.point(middle), share);
        Pose::new(rotation, place - rotation * middle)
    }
}

/// The same for one travel only: a vehicle that can't be set on the pads can still be shown at
/// rest.
///
/// # Errors
/// When it cannot be said how the vehicle stands at this travel, see [`StanceError`].
pub(super) fn vehicle_at(bay: &Bay, travel_m: f64) -> Result<Place, StanceError> {
    let rest = attitude::at_rest(bay, ParkingError::default())?;
    let contact = attitude::contact(bay, ParkingError::default())?;
    if travel_m < contact.first_touch_m {
        return Ok((rest, [0.0; 2]));
    }
    Ok(Raise::after_rest(bay, rest, contact)?.at(travel_m))
}

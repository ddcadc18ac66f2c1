//! One place of the vehicle, its parts, and the lift's parts as they are wanted for it.

use glam::DVec3;

use super::super::arm_bodies::resting_swings;
use super::super::body::Body;
use super::super::movers::MoverError;
use crate::bay::{Bay, Corner, Side};
use crate::solids::{ParkingError, Pose, Role, Solid, arms, attitude, posts, vehicle};

/// A vehicle part with a ball about it, vehicle frame: most parts are told far from every arm by
/// that alone.
pub(super) struct Part {
    pub(super) part: vehicle::VehiclePart,
    pub(super) middle: DVec3,
    pub(super) radius: f64,
    pub(super) lowest: f64,
}

impl Part {
    pub(super) fn new(part: vehicle::VehiclePart) -> Self {
        let (low, high) = part.solid.bounds();
        Self {
            middle: (low + high) * 0.5,
            radius: (high - low).length() * 0.5,
            lowest: low.z,
            part,
        }
    }

    /// How far it hangs once the vehicle is carried.
    pub(super) fn droop_m(&self, bay: &Bay) -> f64 {
        self.part
            .wheel
            .map_or(0.0, |axle| bay.vehicle.droop[axle].m())
    }

    /// Whether the ball about the part, posed, comes near the box about a climbing lift part.
    pub(super) fn may_meet(
        &self,
        pose: Pose,
        reach: f64,
        (low, high): (DVec3, DVec3),
        climb: f64,
    ) -> bool {
        let middle = pose.point(self.middle);
        let reach = DVec3::splat(self.radius + reach);
        let high = high + DVec3::Z * climb;
        // Asked this way round, what is no number is not apart.
        !((middle + reach).cmplt(low).any() || (middle - reach).cmpgt(high).any())
    }
}

/// One place of the vehicle, and the lift's parts as they are wanted for it.
pub(super) struct Parked {
    pub(super) place: ParkingError,
    pub(super) rest: Pose,
    pub(super) contact: attitude::Contact,
    /// Carriages, arms and pads at travel 0, each as it is.
    pub(super) lift: Vec<(Solid, Body)>,
}

impl Parked {
    pub(super) fn new(bay: &Bay, place: ParkingError) -> Result<Self, MoverError> {
        let rest = attitude::at_rest(bay, place)?;
        let mut solids = posts::carriages(bay);
        for corner in Corner::ALL {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            let point = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
            let reach = arms::reach_to(bay, corner, point.truncate());
            for swing in resting_swings(&reach) {
                solids.extend(arms::arm_and_pad(bay, corner, swing, reach.reach_m));
            }
        }
        let with_body = |solid: Solid| {
            let body = Body::exact(&solid);
            (solid, body)
        };
        Ok(Self {
            place,
            rest,
            contact: attitude::contact(bay, place)?,
            lift: solids.into_iter().map(with_body).collect(),
        })
    }
}

/// The side and, where it has one, the corner of a lift part.
pub(super) fn side_of(role: Role) -> Option<(Side, Option<Corner>)> {
    match role {
        Role::Carriage(side) => Some((side, None)),
        Role::Arm(corner) | Role::Pad(corner) => Some((corner.side(), Some(corner))),
        _ => None,
    }
}

/// Whether two lift parts belong to different arms, or to different sides.
pub(super) fn are_strangers(one: Role, other: Role) -> bool {
    match (side_of(one), side_of(other)) {
        (Some((_, Some(a))), Some((_, Some(b)))) => a != b,
        (Some((a, None)), Some((b, _))) | (Some((a, _)), Some((b, None))) => a != b,
        _ => false,
    }
}

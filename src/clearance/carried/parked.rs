//! One place of the vehicle, its parts, and the lift's parts as they are wanted for it.

use std::ops::Range;

use glam::DVec3;

use super::super::arm_bodies::resting_swings;
use super::super::body::{Body, higher, lower};
use super::super::movers::MoverError;
use super::near::{KINDS, kind};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{ParkingError, Pose, Role, Solid, arms, attitude, posts, vehicle};

/// A vehicle part with a box about it, vehicle frame: most parts are told far from every arm by that
/// alone.
pub(super) struct Part {
    pub(super) part: vehicle::VehiclePart,
    pub(super) lowest: f64,
    middle: DVec3,
    half: DVec3,
}

impl Part {
    pub(super) fn new(part: vehicle::VehiclePart) -> Self {
        let (low, high) = part.solid.bounds();
        Self {
            middle: (low + high) * 0.5,
            half: (high - low) * 0.5,
            lowest: low.z,
            part,
        }
    }

    /// The box about it, vehicle frame.
    pub(super) fn about_itself(&self) -> About {
        About {
            low: self.middle - self.half,
            high: self.middle + self.half,
        }
    }

    /// How far it hangs once the vehicle is carried.
    pub(super) fn droop_m(&self, bay: &Bay) -> f64 {
        self.part
            .wheel
            .map_or(0.0, |axle| bay.vehicle.droop[axle].m())
    }

    /// The box about the part as posed and hanging `droop` lower: a little larger, so that rounding
    /// leaves nothing outside. A turned box reaches along each axis as far as its own half sides do
    /// together.
    pub(super) fn about(&self, pose: Pose, droop: f64) -> About {
        const ROUNDING_M: f64 = 1e-9;
        let axes = glam::DMat3::from_quat(pose.rotation);
        let reach = axes.x_axis.abs() * self.half.x
            + axes.y_axis.abs() * self.half.y
            + axes.z_axis.abs() * self.half.z
            + DVec3::splat(ROUNDING_M);
        let middle = pose.point(self.middle);
        // It hangs along the vehicle's own upright, which may lean.
        let hangs = axes.z_axis * droop;
        About {
            low: lower(middle, middle - hangs) - reach,
            high: higher(middle, middle - hangs) + reach,
        }
    }
}

/// A box; what is no number is near to everything.
#[derive(Debug, Clone, Copy)]
pub(super) struct About {
    pub(super) low: DVec3,
    pub(super) high: DVec3,
}

impl About {
    /// A box about nothing.
    pub(super) const NOTHING: Self = Self {
        low: DVec3::INFINITY,
        high: DVec3::NEG_INFINITY,
    };

    /// The box about both.
    pub(super) fn and(self, other: Self) -> Self {
        Self {
            low: lower(self.low, other.low),
            high: higher(self.high, other.high),
        }
    }

    /// The box about the way up from here.
    pub(super) fn climbing(self, climb: f64) -> Self {
        Self {
            high: self.high + DVec3::Z * climb,
            ..self
        }
    }

    /// Asked this way round, what is no number is not apart.
    pub(super) fn meets(self, other: Self) -> bool {
        !(self.high.cmplt(other.low).any() || self.low.cmpgt(other.high).any())
    }
}

/// One place of the vehicle, and the lift's parts as they are wanted for it.
pub(super) struct Parked {
    pub(super) rest: Pose,
    pub(super) contact: attitude::Contact,
    /// Carriages, arms and pads at travel 0, each as it is, kind by kind.
    pub(super) lift: Vec<(Solid, Body)>,
    /// Which of them are of each kind.
    pub(super) of_kind: [Range<usize>; KINDS],
}

impl Parked {
    pub(super) fn new(bay: &Bay, place: ParkingError) -> Result<Self, MoverError> {
        let rest = attitude::at_rest(bay, place)?;
        let mut solids = posts::carriages(bay);
        for corner in Corner::ALL {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            let point = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
            let reach = arms::reach_to(bay, corner, point.truncate());
            let (arms, pads): (Vec<Solid>, Vec<Solid>) = resting_swings(&reach)
                .into_iter()
                .map(|swing| arms::arm_and_pad(bay, corner, swing, reach.reach_m).into())
                .unzip();
            solids.extend(arms);
            solids.extend(pads);
        }
        debug_assert!(solids.is_sorted_by_key(|solid| kind(solid.role)));
        let of_kind = std::array::from_fn(|of| {
            let from = solids.partition_point(|solid| kind(solid.role) < of);
            from..solids.partition_point(|solid| kind(solid.role) <= of)
        });
        let with_body = |solid: Solid| {
            let body = Body::exact(&solid);
            (solid, body)
        };
        Ok(Self {
            rest,
            of_kind,
            contact: attitude::contact_from(bay, rest)?,
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

//! A vehicle part, or a length of it, and what its bodies are made from.

use glam::DVec3;

use super::attitudes::Attitudes;
use super::chord_bulge_m;
use crate::bay::Bay;
use crate::clearance::body::Body;
use crate::clearance::part_levers::{BodyLevers, outline_corners};
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::vehicle::VehiclePart;
use crate::solids::{Pose, Shape};

/// What a vehicle part's bodies are made from.
pub(super) struct PartContext<'a> {
    pub(super) uncertainty: &'a Uncertainty,
    pub(super) attitudes: &'a Attitudes,
    /// The vehicle on its tyres in the parking box: the hull over these, widened by that.
    pub(super) rest_poses: &'a [Pose],
    pub(super) parked_m: DVec3,
    pub(super) levers: &'a BodyLevers,
    /// How much more any pad may raise its lift point until all carry, for what was measured.
    pub(super) rise_more_m: f64,
    pub(super) first_touch_m: f64,
    pub(super) carry_m: f64,
    pub(super) lift_off_m: [f64; 2],
    /// Travel from which no spring can hold a corner above its pad.
    pub(super) springs_until_m: f64,
    /// How far the floor under the tyres may be off.
    pub(super) floor_m: f64,
    /// Where the turns of yaw and roll are centred, vehicle frame.
    pub(super) turning_middle: DVec3,
}

impl PartContext<'_> {
    /// A part, or a length of it, with the vehicle on its tyres.
    pub(super) fn at_rest(&self, part: &VehiclePart) -> Body {
        let poses: Vec<Pose> = self
            .rest_poses
            .iter()
            .map(|pose| pose.after(part.solid.bay_from_solid))
            .collect();
        // A floor that is off under one tyre tips the body; twice the doubt bounds it up to as far
        // beyond the tyres as they stand apart.
        let spread = self.uncertainty.standing_vehicle_spread()
            + self.uncertainty.wheel_spread(part.wheel)
            + self.parked_m
            + self.yaw_bulge(self.reach_m(part))
            + DVec3::splat(2.0 * self.floor_m);
        Body::of(&part.solid.shape, &poses, spread)
    }

    /// No turn takes any of it round a greater radius.
    pub(super) fn reach_m(&self, part: &VehiclePart) -> f64 {
        part_reach_m(
            &part.solid.shape,
            &part.solid.bay_from_solid,
            self.turning_middle,
        )
    }

    /// The parking box's yaw corners are chords of the turn between them.
    pub(super) fn yaw_bulge(&self, reach_m: f64) -> DVec3 {
        let bulge = chord_bulge_m(reach_m, 2.0 * self.uncertainty.parking.yaw_rad);
        DVec3::new(bulge, bulge, 0.0)
    }
}

/// A part as it hangs once its wheel does.
pub(super) fn hanging(bay: &Bay, part: &VehiclePart) -> Pose {
    let droop = part.wheel.map_or(0.0, |axle| bay.vehicle.droop[axle].m());
    part.solid.bay_from_solid.moved(DVec3::Z * -droop)
}

/// A low part longer than this is looked at length by length, metres: what may be off at the pads moves
/// its far end, beyond them, by much more than what is over the lift.
const LENGTH_M: f64 = 1.2;

/// A long part that hangs under the body in its lengths; none of any other.
pub(super) fn lengths(bay: &Bay, part: &VehiclePart) -> Vec<VehiclePart> {
    let Shape::Box { half } = part.solid.shape else {
        return Vec::new();
    };
    let from_part = part.solid.bay_from_solid;
    let is_low = from_part.translation.z + half.z <= bay.vehicle.sill.m() + 1e-9;
    let count = (2.0 * half.y / LENGTH_M).ceil();
    if part.is_body || part.wheel.is_some() || !is_low || !(2.0..50.0).contains(&count) {
        return Vec::new();
    }
    let half = DVec3::new(half.x, half.y / count, half.z);
    let along = from_part.rotation * DVec3::Y * half.y;
    (0..count as usize)
        .map(|number| {
            let mut length = part.clone();
            length.solid.shape = Shape::Box { half };
            let steps = 2.0 * number as f64 + 1.0 - count;
            length.solid.bay_from_solid = from_part.moved(along * steps);
            length
        })
        .collect()
}

/// A radius that bounds every turn of the part: the axes of yaw and roll pass within a metre of
/// `middle` (the place that is lined up), on any vehicle that fits between two posts.
fn part_reach_m(shape: &Shape, vehicle_from_solid: &Pose, middle: DVec3) -> f64 {
    1.0 + outline_corners(shape, vehicle_from_solid)
        .into_iter()
        .map(|corner| (corner - middle).length())
        .fold(0.0, f64::max)
}

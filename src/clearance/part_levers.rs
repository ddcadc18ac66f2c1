//! How errors at the supports move one part of the vehicle.

use glam::{DVec2, DVec3};

use super::uncertainty::{SupportLevers, Uncertainty};
use crate::bay::{Bay, Corner};
use crate::solids::{Pose, Shape, vehicle};

/// How far each support's height may be off: the lift point's and the pad's.
pub(crate) fn support_m(uncertainty: &Uncertainty) -> f64 {
    uncertainty.vehicle_m + uncertainty.lift_m + uncertainty.posts_m.z
}

/// What errors at the supports do to every part alike.
pub(super) struct BodyLevers {
    levers: Option<SupportLevers>,
    loose_m: f64,
    /// The tilt that a ± at every support can add.
    tilt: DVec2,
    /// Each pad's share of the turn until all carry.
    rise: [f64; 4],
    /// The tilt that support heights anywhere in it can make.
    turn: DVec2,
}

impl BodyLevers {
    /// `rise` is each pad's share of the turn until all carry, without what posts are off in height.
    pub(super) fn new(
        levers: Option<SupportLevers>,
        uncertainty: &Uncertainty,
        rise: [f64; 4],
    ) -> Self {
        let loose_m = uncertainty.loose_pad_m;
        let of = |tilt: &dyn Fn(&SupportLevers) -> DVec2| levers.as_ref().map_or(DVec2::ZERO, tilt);
        Self {
            tilt: of(&|levers| levers.most_tilt(support_m(uncertainty), loose_m)),
            turn: of(&|levers| levers.most_turn(rise)),
            levers,
            loose_m,
            rise,
        }
    }
}

/// How errors at the supports move one part: the worst over its corners.
pub(super) struct PartLevers<'a> {
    body: &'a BodyLevers,
    weight: f64,
    twist_m: f64,
    above_m: f64,
    corners: Vec<DVec2>,
}

impl<'a> PartLevers<'a> {
    pub(super) fn new(part: &vehicle::VehiclePart, body: &'a BodyLevers) -> Self {
        let corners = outline_corners(&part.solid.shape, &part.solid.bay_from_solid);
        // Most stand one over another.
        let mut plans: Vec<DVec2> = Vec::with_capacity(corners.len());
        for corner in &corners {
            let plan = corner.truncate();
            if !plans.contains(&plan) {
                plans.push(plan);
            }
        }
        let mut levers = Self {
            body,
            weight: 1.0,
            twist_m: 0.0,
            above_m: 0.0,
            corners: plans,
        };
        if let Some(supports) = &body.levers {
            for corner in &corners {
                levers.above_m = levers.above_m.max(corner.z.abs());
            }
            for &plan in &levers.corners {
                levers.weight = levers.weight.max(supports.weight_sum(plan));
                levers.twist_m = levers.twist_m.max(supports.twist_shift(plan, body.loose_m));
            }
        }
        levers
    }

    pub(super) fn climbing_spread(&self, uncertainty: &Uncertainty) -> DVec3 {
        let measured = 1.5 * uncertainty.vehicle_m;
        let place = uncertainty.set_spread();
        DVec3::new(
            measured + place.x + self.body.tilt.x * self.above_m,
            measured + place.y + self.body.tilt.y * self.above_m,
            uncertainty.vehicle_m
                + uncertainty.lift_m
                + self.weight * support_m(uncertainty)
                + self.twist_m,
        )
    }

    /// What a ± of `each_m` at every support can do to the part.
    pub(super) fn off_at_supports(&self, each_m: f64) -> DVec3 {
        let levers = self.body.levers.as_ref();
        let tilt = levers.map_or(DVec2::ZERO, |levers| levers.most_tilt(each_m, 0.0));
        DVec3::new(
            tilt.x * self.above_m,
            tilt.y * self.above_m,
            self.weight * each_m,
        )
    }

    /// What support heights anywhere between rest and carried can do to the part.
    pub(super) fn turning_spread(&self) -> DVec3 {
        let rise = self.body.rise;
        let Some(levers) = &self.body.levers else {
            return DVec3::splat(rise.iter().fold(0.0, |a, &b| a.max(b)));
        };
        let up = self
            .corners
            .iter()
            .map(|&corner| levers.most_shift(corner, rise))
            .fold(0.0, f64::max);
        let tilt = self.body.turn;
        DVec3::new(tilt.x * self.above_m, tilt.y * self.above_m, up)
    }
}

/// The lift points' plan places in the vehicle frame, in lift corner order, as levers.
pub(super) fn support_levers(bay: &Bay) -> Option<SupportLevers> {
    let points = Corner::ALL.map(|corner| {
        let index = vehicle::lift_point_at(corner, bay.parking.facing);
        vehicle::lift_point_m(&bay.vehicle, index).truncate()
    });
    SupportLevers::new(points)
}

/// Corners of the part (of the box about it, for a cylinder), vehicle frame.
pub(super) fn outline_corners(shape: &Shape, vehicle_from_solid: &Pose) -> Vec<DVec3> {
    let corners = match shape {
        Shape::Cylinder {
            radius,
            half_height,
        } => Shape::Box {
            half: DVec3::new(*radius, *radius, *half_height),
        }
        .corners(),
        other => other.corners(),
    };
    corners
        .into_iter()
        .map(|corner| vehicle_from_solid.point(corner))
        .collect()
}

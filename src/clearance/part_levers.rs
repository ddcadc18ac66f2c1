//! How errors at the supports move one part of the vehicle.

use glam::{DVec2, DVec3};

use super::body::Body;
use super::uncertainty::{SupportLevers, Uncertainty, turning_bulge_m};
use crate::bay::{Bay, Corner};
use crate::solids::{Pose, Role, Shape, vehicle};

/// How far each support's height may be off: the lift point's, the pad's, and its post's.
pub(crate) fn support_m(uncertainty: &Uncertainty) -> f64 {
    uncertainty.vehicle_m + uncertainty.pad_top_m + uncertainty.posts_m.z
}

/// What errors at the supports do to every part alike.
pub(super) struct BodyLevers {
    levers: Option<SupportLevers>,
    loose_m: f64,
    /// See [`Uncertainty::askew`]: the tilts below are along the bay's axes.
    askew: f64,
    /// The tilt that a ± at every support can add.
    tilt: DVec2,
    /// Each pad's share of the turn until all carry.
    rise: [f64; 4],
    /// The tilt that support heights anywhere in it can make.
    turn: DVec2,
}

impl BodyLevers {
    /// `rise` is each pad's share of the turn until all carry, without what posts are off in height; it may
    /// be as much as `more_m` more for what was measured.
    pub(super) fn new(
        levers: Option<SupportLevers>,
        uncertainty: &Uncertainty,
        rise: [f64; 4],
        more_m: f64,
    ) -> Self {
        let loose_m = uncertainty.loose_pad_m;
        let of = |tilt: &dyn Fn(&SupportLevers) -> DVec2| {
            let tilt = levers.as_ref().map_or(DVec2::ZERO, tilt);
            uncertainty.in_plan(tilt)
        };
        Self {
            tilt: of(&|levers| levers.most_tilt(support_m(uncertainty), loose_m)),
            turn: of(&|levers| levers.most_turn(rise.map(|rise| rise + more_m))),
            levers,
            loose_m,
            askew: uncertainty.askew,
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
    /// Of a wheel, and of what sinks with one.
    axle: Option<usize>,
    /// It hangs by the droop of its axle, which is a measure more.
    sinks: bool,
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
            axle: part.wheel,
            sinks: part.wheel.is_some() && !matches!(part.solid.role, Role::Wheel(_)),
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
        let measured = uncertainty.vehicle_spread() + uncertainty.wheel_spread(self.axle);
        let plan = measured + uncertainty.set_spread();
        let tilt = self.body.tilt * self.above_m;
        let droop = if self.sinks {
            uncertainty.vehicle_m
        } else {
            0.0
        };
        let up = uncertainty.vehicle_m
            + droop
            + uncertainty.lift_m
            + self.weight * support_m(uncertainty)
            + self.twist_m;
        (plan.truncate() + tilt).extend(up)
    }

    /// What a ± of `each_m` at every support can do to the part.
    pub(super) fn off_at_supports(&self, each_m: f64) -> DVec3 {
        let levers = self.body.levers.as_ref();
        let tilt = levers.map_or(DVec2::ZERO, |levers| levers.most_tilt(each_m, 0.0));
        let tilt = tilt + DVec2::new(tilt.y, tilt.x) * self.body.askew;
        DVec3::new(
            tilt.x * self.above_m,
            tilt.y * self.above_m,
            self.weight * each_m,
        )
    }

    /// Where supports may put the part that each stand up to their share of the turn, and as much `more_m`,
    /// above where a body has them. No turn takes any of the part round a greater radius than `reach_m`.
    pub(super) fn turning(&self, more_m: f64, reach_m: f64) -> Turned {
        let rise = self.body.rise.map(|rise| rise + more_m);
        let Some(levers) = &self.body.levers else {
            let most = rise.into_iter().fold(0.0, f64::max);
            return Turned {
                up_m: 0.0,
                spread: DVec3::splat(most),
            };
        };
        let each = self.corners.iter();
        let [down, up] = each
            .map(|&corner| levers.shift_range(corner, rise))
            .fold([0.0; 2], |[most_down, most_up], [down, up]| {
                [f64::max(most_down, down), f64::max(most_up, up)]
            });
        let tilt = self.body.turn * self.above_m;
        // Heights are planes over the supports' places but for what the turn bends.
        let bulge = turning_bulge_m(self.body.turn.length(), reach_m);
        Turned {
            up_m: 0.5 * (up - down),
            spread: tilt.extend(0.5 * (up + down)) + DVec3::splat(bulge),
        }
    }
}

/// Where a part may be turned to from where a body has it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Turned {
    up_m: f64,
    spread: DVec3,
}

impl Turned {
    /// A body that covers all of that.
    pub(super) fn of(self, body: &Body) -> Body {
        body.moved(DVec3::Z * self.up_m).widened(self.spread)
    }
}

/// The lift points' plan places in the vehicle frame, in lift corner order, as levers.
pub(crate) fn support_levers(bay: &Bay) -> Option<SupportLevers> {
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

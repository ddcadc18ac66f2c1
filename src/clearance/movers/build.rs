//! The phases of each solid, put together one by one.

use glam::{DVec2, DVec3};

use super::Moving;
use super::part::{PartContext, hanging, lengths};
use crate::bay::Bay;
use crate::clearance::body::Body;
use crate::clearance::leaning::{Drift, Touch, stretches};
use crate::clearance::part_levers::PartLevers;
use crate::clearance::uncertainty::{Uncertainty, turning_bulge_m};
use crate::solids::vehicle::VehiclePart;
use crate::solids::{Pose, Role, Solid};

pub(super) struct Build {
    pub(super) top: f64,
    pub(super) uncertainty: Uncertainty,
    pub(super) touch: Touch,
    /// How many phases there are.
    pub(super) phases: usize,
    pub(super) solids: Vec<Solid>,
    pub(super) climbing_solids: Vec<Solid>,
    pub(super) moving: Vec<Moving>,
    pub(super) standing: Vec<Moving>,
}

impl Build {
    pub(super) fn lift_part(&mut self, solid: Solid, body: Body) {
        let role = solid.role;
        self.climbing_solids.push(solid.clone());
        self.solids.push(solid);
        self.push_climb(body, role, 0.0, self.top);
    }

    pub(super) fn vehicle_part(
        &mut self,
        bay: &Bay,
        part: &VehiclePart,
        rest: Pose,
        first: Pose,
        context: &PartContext<'_>,
    ) {
        let role = part.solid.role;
        let from_part = part.solid.bay_from_solid;
        self.solids.push(Solid {
            bay_from_solid: rest.after(from_part),
            ..part.solid.clone()
        });
        self.climbing_solids.push(Solid {
            bay_from_solid: first.after(hanging(bay, part)),
            ..part.solid.clone()
        });
        let rest_body = context.at_rest(part);
        self.standing.push(Moving {
            body: rest_body.clone(),
            solid: self.solids.len() - 1,
            role,
            from: 0.0,
            to: 0.0,
            climbs: false,
            phase: self.phases,
        });
        self.phases += 1;
        let at_rest_until = context.first_touch_m;
        if at_rest_until > 0.0 {
            self.push(rest_body.clone(), role, 0.0, at_rest_until, false);
        }
        let lengths = lengths(bay, part);
        for length in &lengths {
            self.raised(bay, length, &context.at_rest(length), context);
        }
        if lengths.is_empty() {
            self.raised(bay, part, &rest_body, context);
        }
    }

    /// A vehicle part, or a length of it, from the first touch on.
    fn raised(
        &mut self,
        bay: &Bay,
        part: &VehiclePart,
        rest_body: &Body,
        context: &PartContext<'_>,
    ) {
        let role = part.solid.role;
        let shape = &part.solid.shape;
        let hanging = hanging(bay, part);
        let reach = context.reach_m(part);
        let wheel = part.wheel;
        let levers = PartLevers::new(part, context.levers);
        let measured = levers.climbing_spread(context.uncertainty);
        // What may move a hanging wheel up or down moves the travel at which it leaves the floor;
        // between the earliest and the latest it may stand or hang.
        let stands_until = wheel.map_or(context.first_touch_m, |axle| {
            context.attitudes.lift_off_last_m[axle] + measured.z
        });
        let at_rest_until = context.first_touch_m;

        let parking = context.uncertainty.parking;
        let spread = measured + context.yaw_bulge(reach);
        let climbing: Vec<Body> = context
            .attitudes
            .groups
            .iter()
            .map(|group| {
                let poses: Vec<Pose> = group.yawed.iter().map(|pose| pose.after(hanging)).collect();
                let bulge = turning_bulge_m(group.angle, reach);
                let parked = DVec3::new(parking.across_m, parking.along_m, 0.0);
                Body::of(shape, &poses, spread + parked + DVec3::splat(bulge))
            })
            .collect();

        let sinks = wheel.is_some() && !matches!(role, Role::Wheel(_));
        let climbs_from = wheel.map_or(context.carry_m, |axle| {
            // What sinks with the wheels is held up by them: it is never lower than on the tyres.
            let earliest = if sinks {
                stands_until
            } else {
                context.lift_off_m[axle] - measured.z
            };
            earliest.max(context.first_touch_m)
        });
        let top = self.top.max(climbs_from);
        // Where columns that lean have taken the body by then.
        let (leaning, touch) = (self.uncertainty.leaning, self.touch);
        let taken = |until: f64| leaning.map(|of| of.vehicle([0.0, until], touch));
        let mut climbs_exactly_from = climbs_from;
        if wheel.is_some() && stands_until > at_rest_until {
            // The body turns over the standing tyre and takes it along sideways.
            let sideways = climbing.iter().fold(DVec3::ZERO, |most, body| {
                most.max(rest_body.low() - body.low())
                    .max(body.high() - rest_body.high())
            });
            let taken = taken(stands_until).map_or(DVec2::ZERO, Drift::most);
            let sideways = sideways.truncate() + taken;
            let mut body = rest_body.clone().widened(sideways.extend(0.0));
            if sinks {
                // It may have been lifted off for a while, and stands at most as high as then.
                let up = climbing
                    .iter()
                    .map(|body| body.moved(DVec3::Z * climbs_from));
                body = Body::hull(std::iter::once(body).chain(up).collect());
            }
            self.push(body, role, at_rest_until, stands_until, false);
        }
        if wheel.is_none() && context.carry_m > context.first_touch_m {
            // Some pads carry and others not yet: each lift point stands somewhere between where it is
            // with the vehicle on its tyres and where its pad has it once all carry.
            let mut starts = vec![rest_body.clone()];
            // All carry from where the lowest of them must: until then the posts' heights raise each lift
            // point by something from nothing to twice their ±, and never hold it below where it stands.
            let posts_up_m = context.uncertainty.posts_m.z;
            if posts_up_m != 0.0 {
                let on_pads = rest_body.moved(DVec3::Z * posts_up_m);
                starts.push(on_pads.widened(levers.off_at_supports(posts_up_m)));
            }
            let mut ways = vec![
                levers
                    .turning(context.rise_more_m, reach)
                    .of(&Body::hull(starts)),
            ];
            ways.extend(
                climbing
                    .iter()
                    .map(|body| body.moved(DVec3::Z * context.carry_m)),
            );
            let turned = Body::hull(ways);
            let body = match taken(context.carry_m) {
                Some(way) => way.of(&turned),
                None => turned,
            };
            self.push(body, role, context.first_touch_m, context.carry_m, false);
            // Until every tyre is off the floor a spring may still hold a corner above its pad, by
            // no more than the turn has moved it.
            let springs_until = context.springs_until_m.clamp(climbs_from, top);
            if springs_until > climbs_from {
                let held = levers.turning(0.0, reach);
                for body in &climbing {
                    self.push_climb(held.of(body), role, climbs_from, springs_until);
                }
                climbs_exactly_from = springs_until;
            }
        }
        for body in climbing {
            self.push_climb(body, role, climbs_exactly_from, top);
        }
    }

    /// A climb, in stretches where the columns lean.
    fn push_climb(&mut self, body: Body, role: Role, from: f64, to: f64) {
        let Some(leaning) = self.uncertainty.leaning else {
            self.push(body, role, from, to, true);
            return;
        };
        let heights = [body.low().z, body.high().z];
        for travels in stretches(from, to, self.top) {
            let way = match role {
                Role::Carriage(side) => leaning.carriage(side, heights, travels),
                Role::Arm(corner) | Role::Pad(corner) => {
                    leaning.arm(corner.side(), heights, travels, self.touch)
                }
                _ => leaning.vehicle(travels, self.touch),
            };
            self.push_in(way.of(&body), role, travels, true);
        }
        self.phases += 1;
    }

    fn push(&mut self, body: Body, role: Role, from: f64, to: f64, climbs: bool) {
        self.push_in(body, role, [from, to], climbs);
        self.phases += 1;
    }

    fn push_in(&mut self, body: Body, role: Role, [from, to]: [f64; 2], climbs: bool) {
        self.moving.push(Moving {
            body,
            solid: self.solids.len() - 1,
            role,
            from,
            to,
            climbs,
            phase: self.phases,
        });
    }
}

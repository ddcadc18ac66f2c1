//! What does an arm cover while it is turned about its pivot, and what does it meet?

use glam::{DVec2, DVec3};

use super::scene::{Sweep, Thing};
use crate::bay::{Bay, Corner};
use crate::clearance::body::Body;
use crate::clearance::gap::{Separation, Solver, plainly_apart};
use crate::clearance::movers::chord_bulge_m;
use crate::solids::{Pose, Role, Shape, arms};

/// Sweeps are halved until they are this fine, radians.
const FINEST_RAD: f64 = std::f64::consts::PI / 180.0;

/// A sweep wider than this is looked at in its halves only, radians: what covers all of it reaches so far
/// past the arm that it meets much which the arm does not.
const COARSE_RAD: f64 = std::f64::consts::PI / 6.0;

/// An arm and its pad, to be turned about the arm's pivot.
pub(super) struct Tool {
    pivot: DVec3,
    /// Swing at which the shapes below are posed.
    posed_at: f64,
    /// The way it turns when the swing grows.
    turn: f64,
    beam: (Shape, Pose),
    pad: (Shape, [Pose; 2]),
    /// No point of either is farther from the pivot in plan.
    radius: f64,
    spread: DVec3,
}

impl Tool {
    pub(super) fn new(bay: &Bay, corner: Corner, sweep: Sweep, spread: DVec3) -> Self {
        let posed_at = sweep.swings[0];
        let [beam, pad_far] = arms::arm_and_pad_down(bay, corner, posed_at, sweep.far);
        let [_, pad_near] = arms::arm_and_pad_down(bay, corner, posed_at, sweep.near);
        debug_assert!(matches!(pad_far.role, Role::Pad(_)));
        let arm = &bay.lift.arms[corner.index()];
        Self {
            pivot: arms::pivot_m(bay, corner).extend(0.0),
            posed_at,
            turn: arms::turn_of_swing(corner),
            beam: (beam.shape, beam.bay_from_solid),
            pad: (
                pad_far.shape,
                [pad_near.bay_from_solid, pad_far.bay_from_solid],
            ),
            radius: sweep.far + arm.section_width.m() + bay.lift.pad.diameter.m(),
            spread,
        }
    }

    fn at(&self, swing: f64, pose: Pose) -> Pose {
        let angle = self.turn * (swing - self.posed_at);
        let turned = glam::DQuat::from_rotation_z(angle);
        Pose::new(
            turned * pose.rotation,
            self.pivot + turned * (pose.translation - self.pivot),
        )
    }

    /// What arm and pad cover between two swings: never less than that.
    pub(super) fn bodies(&self, from: f64, to: f64) -> [Body; 2] {
        let bulge = chord_bulge_m(self.radius, to - from);
        let spread = self.spread + DVec3::new(bulge, bulge, 0.0);
        let (beam, pose) = &self.beam;
        let (pad, [near, far]) = &self.pad;
        let at = |swing, pose: &Pose| self.at(swing, *pose);
        if to > from {
            [
                Body::of(beam, &[at(from, pose), at(to, pose)], spread),
                Body::of(
                    pad,
                    &[at(from, near), at(from, far), at(to, near), at(to, far)],
                    spread,
                ),
            ]
        } else {
            [
                Body::of(beam, &[at(from, pose)], spread),
                Body::of(pad, &[at(from, near), at(from, far)], spread),
            ]
        }
    }

    /// Which of the things the arm may meet at any swing at all, by the boxes about them.
    pub(super) fn near(&self, things: &[&Thing]) -> Vec<usize> {
        let bodies = self.bodies(self.posed_at, self.posed_at);
        let all = |of: fn(&Body) -> DVec3| bodies.each_ref().map(of);
        let ([beam_low, pad_low], [beam_high, pad_high]) = (all(Body::low), all(Body::high));
        let around = DVec2::splat(self.radius) + self.spread.truncate();
        let middle = self.pivot.truncate();
        let low = (middle - around).extend(beam_low.z.min(pad_low.z));
        let high = (middle + around).extend(beam_high.z.max(pad_high.z));
        let numbered = things.iter().enumerate();
        numbered
            .filter(|(_, thing)| boxes_touch([low, high], [thing.body.low(), thing.body.high()]))
            .map(|(index, _)| index)
            .collect()
    }

    /// Looks at the whole way at once, and at its halves where that meets something.
    pub(super) fn first_met(
        &self,
        from: f64,
        to: f64,
        things: &[&Thing],
        among: &[usize],
        solver: &mut Solver,
    ) -> Option<usize> {
        let middle = 0.5 * (from + to);
        if to - from > COARSE_RAD && !among.is_empty() {
            return self
                .first_met(from, middle, things, among, solver)
                .or_else(|| self.first_met(middle, to, things, among, solver));
        }
        let bodies = self.bodies(from, to);
        let met: Vec<usize> = among
            .iter()
            .copied()
            .filter(|&index| {
                bodies
                    .iter()
                    .any(|body| touches(body, &things[index].body, solver))
            })
            .collect();
        let first = *met.first()?;
        if to - from <= FINEST_RAD {
            return Some(first);
        }
        self.first_met(from, middle, things, &met, solver)
            .or_else(|| self.first_met(middle, to, things, &met, solver))
    }
}

/// Whether two boxes touch, each by its lowest and its highest corner.
fn boxes_touch([low, high]: [DVec3; 2], [other_low, other_high]: [DVec3; 2]) -> bool {
    // Asked this way round, what is no number is not apart.
    !(low.cmpgt(other_high).any() || other_low.cmpgt(high).any())
}

/// Whether two bodies touch, or could not be told from touching.
pub(super) fn touches(one: &Body, other: &Body, solver: &mut Solver) -> bool {
    boxes_touch([one.low(), one.high()], [other.low(), other.high()])
        && !plainly_apart(one, DVec3::ZERO, other)
        && match solver.gap(one, DVec3::ZERO, other) {
            Separation::Meet => true,
            Separation::Apart(gap) => gap.lower.is_nan() || gap.lower <= 0.0,
        }
}

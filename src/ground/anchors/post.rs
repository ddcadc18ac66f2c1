//! Where does a post stand on the slab, and what do its anchors get?
//!
//! In the units of the codes: inches, pounds-force, psi; places in plan along the bay's axes.

use glam::DVec2;

use super::line::Line;
use crate::bay::{Bay, Side};
use crate::ground::post_base::PostBase;
use crate::ground::slab::{PlateSlab, SlabMap, anchors_m};
use crate::units::{M_PER_INCH, N_PER_POUND_FORCE, PA_PER_PSI};

/// What a post's anchors get, lbf, in their order.
#[derive(Debug, Clone, PartialEq)]
pub struct Forces {
    /// Pulls that act together: the post turning inward and to the front, inward and to the rear.
    pub pulls_lbf: [Vec<f64>; 2],
    /// Sideways forces.
    pub sideways_lbf: Vec<f64>,
}

/// One post's anchors and the slab that they stand in.
#[derive(Debug, Clone, PartialEq)]
pub struct Post {
    /// Where its anchors stand in plan, inches.
    pub at_in: Vec<[f64; 2]>,
    /// What each gets, without any load factor; none when it could not be worked out.
    pub forces: Option<Forces>,
    /// Least thickness of the slab there, inches.
    pub thickness_in: Option<f64>,
    /// The thinnest reading within reach, inches, however few there are.
    pub thinnest_in: Option<f64>,
    /// Strength of its concrete, psi.
    pub fc_psi: Option<f64>,
    /// Edges, joints, cracks and drains, in plan.
    pub lines: Vec<Line>,
    /// Places where the slab was read, in plan, inches.
    pub read_in: Vec<[f64; 2]>,
    /// True when someone looked for joints and cracks.
    pub lines_known: bool,
    /// How far off the place of an anchor may be from that of a line, inches: each is measured or
    /// set out from the room.
    pub measured_in: f64,
}

impl Post {
    /// One post's anchors and slab in the code's units.
    #[must_use]
    pub fn of(
        bay: &Bay,
        map: &SlabMap,
        side: Side,
        slab: &PlateSlab,
        base: Option<&PostBase>,
    ) -> Self {
        let line = |from, to| Line {
            from_in: plan_in(from),
            to_in: plan_in(to),
        };
        let corners = map.outline.iter();
        let next = map.outline.iter().cycle().skip(1);
        let around = corners.zip(next).map(|(a, b)| line(*a, *b));
        let inside = map.lines.iter().map(|one| line(one.ends[0], one.ends[1]));
        Self {
            at_in: anchors_m(bay, map, side).into_iter().map(plan_in).collect(),
            forces: base.map(|base| Forces {
                pulls_lbf: [0, 1].map(|case: usize| {
                    let pulls = base.pulls_together_n[case].iter();
                    pulls.map(|n| n / N_PER_POUND_FORCE).collect()
                }),
                sideways_lbf: base
                    .anchors
                    .iter()
                    .map(|one| one.shear_n / N_PER_POUND_FORCE)
                    .collect(),
            }),
            thickness_in: slab.least_thickness_m.map(|m| m / M_PER_INCH),
            thinnest_in: least(
                slab.least_thickness_m,
                map.plate(side)
                    .thinnest
                    .map(|k| map.readings[k].thickness_m),
            )
            .map(|m| m / M_PER_INCH),
            fc_psi: slab.strength_pa.map(|pa| pa / PA_PER_PSI),
            lines: around.chain(inside).collect(),
            read_in: map.readings.iter().map(|one| plan_in(one.at_m)).collect(),
            lines_known: slab.lines_listed,
            measured_in: bay.policy.measured_garage.in_inches()
                + bay.policy.measured_lift.in_inches(),
        }
    }
}

/// The lesser of two that may not be known.
fn least(one: Option<f64>, other: Option<f64>) -> Option<f64> {
    one.into_iter().chain(other).min_by(f64::total_cmp)
}

/// A place in plan, inches.
pub(in crate::ground) fn plan_in(at_m: DVec2) -> [f64; 2] {
    [at_m.x / M_PER_INCH, at_m.y / M_PER_INCH]
}

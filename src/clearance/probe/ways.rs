//! Which pairs can come near each other, and between which travels each is short or touches?
//!
//! Worked out once per bay. Within a phase of the raise the distance of two convex bodies is a
//! convex function of the travel, so the travels at which a margin is short are one interval. Its
//! start is found by the search that the study uses, in the same window: what the study calls a
//! breach is the start of an interval here, to the last bit.

use std::ops::Range;

use glam::DVec3;

use crate::bay::Policy;
use crate::clearance::boxes::{box_gap, plan_gap, short_window};
use crate::clearance::climb::{Climb, First, first_below, last_below};
use crate::clearance::gap::Solver;
use crate::clearance::movers::Moving;
use crate::clearance::pair_table::climb_of;
use crate::clearance::pairs::rule;
use crate::clearance::prepare::FixedSet;
use crate::clearance::study::LeftOut;
use crate::clearance::sweep::{Fixed, NEAR_M};
use crate::solids::Role;

/// An interval of travel, metres, both ends in it.
pub(super) type Interval = [f64; 2];

/// One phase of a moving solid against one fixed body.
#[derive(Debug, Clone)]
pub(super) struct Way {
    /// Index into the movers' list.
    pub(super) moving: usize,
    /// Index into the group's list.
    pub(super) fixed: usize,
    /// Distance between the plan boxes.
    pub(super) plan_m: f64,
    /// Where the margin is short, or not decided.
    pub(super) short: Option<Interval>,
    /// Where they touch, or where that is not decided.
    pub(super) touch: Option<Interval>,
}

/// What a pair's fixed side is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Against {
    /// One solid, by its index into the group's list.
    One(usize),
    /// Everything of the door that moves while it runs, by its envelope.
    RunningDoor,
    /// Everything of the opener that moves with it, by its envelope.
    RunningOpener,
}

/// A moving solid and what it may meet, over all phases.
#[derive(Debug, Clone)]
pub(super) struct Pair {
    /// Index into the movers' solids.
    pub(super) solid: usize,
    pub(super) against: Against,
    pub(super) margin_m: f64,
    /// Reported as tight as parked and left out of the rise.
    pub(super) as_parked: bool,
    pub(super) first_breach_m: Option<f64>,
    pub(super) first_touch_m: Option<f64>,
    /// Where its ways lie in [`Ways::ways`].
    pub(super) ways: Range<usize>,
}

/// Every pair of one group that can come near.
#[derive(Debug, Clone, Default)]
pub(super) struct Ways {
    pub(super) pairs: Vec<Pair>,
    pub(super) ways: Vec<Way>,
}

impl Ways {
    /// The pairs of one group. `moves` says of a fixed solid whether it only stands for something
    /// that moves.
    pub(super) fn new(
        moving: &[Moving],
        group: usize,
        set: &FixedSet,
        moves: &dyn Fn(usize) -> bool,
        policy: &Policy,
        left_out: &LeftOut,
        solver: &mut Solver,
    ) -> Self {
        let mut found: Vec<(usize, Against, f64, bool, Way)> = Vec::new();
        for (i, mover) in moving.iter().enumerate() {
            for (j, thing) in set.bodies.iter().enumerate() {
                let Some(rule) = rule(mover.role, thing.role, policy) else {
                    continue;
                };
                let plan = plan_gap(mover, thing, DVec3::Z);
                let apart = box_gap(mover, thing, plan, mover.from, mover.to, DVec3::Z);
                if apart > rule.margin_m + NEAR_M {
                    continue;
                }
                let against = match thing.role {
                    _ if !moves(thing.solid) => Against::One(j),
                    Role::Opener => Against::RunningOpener,
                    _ => Against::RunningDoor,
                };
                let (short, touch) = short_and_touch(mover, thing, rule.margin_m, plan, solver);
                let way = Way {
                    moving: i,
                    fixed: j,
                    plan_m: plan,
                    short,
                    touch,
                };
                let as_parked = left_out.contains(&(mover.solid, group, thing.solid));
                found.push((mover.solid, against, rule.margin_m, as_parked, way));
            }
        }
        found.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then(a.2.total_cmp(&b.2)));
        let mut all = Self::default();
        for (solid, against, margin_m, as_parked, way) in found {
            let same = all.pairs.last().is_some_and(|pair| {
                (pair.solid, pair.against) == (solid, against)
                    && pair.margin_m.total_cmp(&margin_m).is_eq()
                    && pair.as_parked == as_parked
            });
            if !same {
                all.pairs.push(Pair {
                    solid,
                    against,
                    margin_m,
                    as_parked,
                    first_breach_m: None,
                    first_touch_m: None,
                    ways: all.ways.len()..all.ways.len(),
                });
            }
            if let Some(pair) = all.pairs.last_mut() {
                pair.ways.end += 1;
                keep_first(&mut pair.first_breach_m, way.short);
                keep_first(&mut pair.first_touch_m, way.touch);
            }
            all.ways.push(way);
        }
        all
    }
}

fn keep_first(first: &mut Option<f64>, interval: Option<Interval>) {
    if let Some([start, _]) = interval {
        *first = Some(first.map_or(start, |known: f64| known.min(start)));
    }
}

/// Where in its phase a pair is short of its margin, and where it touches.
fn short_and_touch(
    mover: &Moving,
    thing: &Fixed,
    margin_m: f64,
    plan_m: f64,
    solver: &mut Solver,
) -> (Option<Interval>, Option<Interval>) {
    let (from, to) = short_window(mover, thing, margin_m, plan_m, DVec3::Z);
    if from > to {
        return (None, None);
    }
    let window = Climb {
        from,
        to,
        ..climb_of(mover)
    };
    let short = interval(mover, thing, margin_m, window, solver);
    // Boxes that stay apart in plan say that nothing touches.
    let touch = if short.is_some() && plan_m <= 0.0 {
        interval(mover, thing, 0.0, window, solver)
    } else {
        None
    };
    (short, touch)
}

/// Where in the window the pair is nearer than `margin_m`. What could not be decided counts, up to
/// the end of the window.
fn interval(
    mover: &Moving,
    thing: &Fixed,
    margin_m: f64,
    window: Climb,
    solver: &mut Solver,
) -> Option<Interval> {
    let start = match first_below(solver, &mover.body, &thing.body, margin_m, window) {
        First::Never => return None,
        First::At(start) => start,
        First::Undecided(start) => return Some([start, window.to]),
    };
    if !mover.climbs {
        return Some([mover.from, mover.to]);
    }
    let end = match last_below(solver, &mover.body, &thing.body, margin_m, window) {
        First::Never => window.to,
        First::At(end) | First::Undecided(end) => end.max(start),
    };
    Some([start, end])
}

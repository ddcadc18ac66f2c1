//! What the boxes about a pair say of it: cheap, and never optimistic.

use glam::DVec3;

use super::movers::Moving;
use super::sweep::Fixed;

/// Distance between the plan boxes about a pair over the mover's phase.
#[inline]
pub(super) fn plan_gap(mover: &Moving, thing: &Fixed, up: DVec3) -> f64 {
    let (low, high) = plan_box(mover, up);
    let x = (low.x - thing.body.high().x).max(thing.body.low().x - high.x);
    let y = (low.y - thing.body.high().y).max(thing.body.low().y - high.y);
    let (x, y) = (x.max(0.0), y.max(0.0));
    (x * x + y * y).sqrt()
}

/// The plan box about everything the mover covers in its phase.
#[inline]
pub(super) fn plan_box(mover: &Moving, up: DVec3) -> (DVec3, DVec3) {
    let (low, high) = (mover.body.low(), mover.body.high());
    if !mover.climbs || (up.x == 0.0 && up.y == 0.0) {
        return (low, high);
    }
    let (start, end) = (up * mover.from, up * mover.to);
    ((low + start).min(low + end), (high + start).max(high + end))
}

/// The part of the mover's phase in which the boxes about the pair are nearer than the margin.
#[inline]
pub(super) fn short_window(
    mover: &Moving,
    thing: &Fixed,
    margin: f64,
    plan: f64,
    up: DVec3,
) -> (f64, f64) {
    const EMPTY: (f64, f64) = (f64::INFINITY, f64::NEG_INFINITY);
    if plan > margin {
        return EMPTY;
    }
    // A little more than the margin, so that rounding can't cut a breach off the window.
    let reach = margin + 1e-6;
    let (low, high) = (mover.body.low().z, mover.body.high().z);
    if !mover.climbs || up.z <= 1e-6 {
        let apart = (thing.body.low().z - high).max(low - thing.body.high().z);
        return if !mover.climbs && apart > reach {
            EMPTY
        } else {
            (mover.from, mover.to)
        };
    }
    let start = (thing.body.low().z - reach - high) / up.z;
    let end = (thing.body.high().z + reach - low) / up.z;
    let (from, to) = (mover.from.max(start), mover.to.min(end));
    if from > to { EMPTY } else { (from, to) }
}

/// Height between the boxes about a pair, at its least between two travels.
#[inline]
fn upright_gap(mover: &Moving, thing: &Fixed, from: f64, to: f64, up: DVec3) -> f64 {
    let (rise_from, rise_to) = if mover.climbs {
        (from * up.z, to * up.z)
    } else {
        (0.0, 0.0)
    };
    let above = thing.body.low().z - (mover.body.high().z + rise_to);
    let below = mover.body.low().z + rise_from - thing.body.high().z;
    above.max(below).max(0.0)
}

/// Whether the boxes about a pair come as near as `reach_m` in the mover's phase along each axis. What is
/// no number does.
#[inline]
pub(super) fn is_ever_near(reach_m: f64, mover: &Moving, thing: &Fixed, up: DVec3) -> bool {
    let (low, high) = plan_box(mover, up);
    let apart = (low - thing.body.high()).max(thing.body.low() - high);
    let is_beside = apart.x > reach_m || apart.y > reach_m;
    !(is_beside || upright_gap(mover, thing, mover.from, mover.to, up) > reach_m)
}

/// A lower bound on the distance of a pair between two travels, from the boxes about it.
#[inline]
pub(super) fn box_gap(
    mover: &Moving,
    thing: &Fixed,
    plan: f64,
    from: f64,
    to: f64,
    up: DVec3,
) -> f64 {
    let upright = upright_gap(mover, thing, from, to, up);
    (plan * plan + upright * upright).sqrt()
}

/// Whether the boxes about a pair stay at least `limit` apart between two travels: the question of
/// the inner loop, without a root.
#[inline]
pub(super) fn is_box_gap_at_least(
    limit: f64,
    mover: &Moving,
    thing: &Fixed,
    plan: f64,
    from: f64,
    to: f64,
    up: DVec3,
) -> bool {
    let upright = upright_gap(mover, thing, from, to, up);
    limit <= 0.0 || plan * plan + upright * upright >= limit * limit
}

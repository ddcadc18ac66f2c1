//! Which pairs are short of their margin as parked, and come no nearer on the way up?

use glam::DVec3;

use super::body::Body;
use super::climb::{Climb, First, first_below, least_gap};
use super::findings::PairFinding;
use super::gap::{Separation, UNDECIDED_M};
use super::movers::{Movers, Moving};
use super::pair_table::{PairTable, climb_of, first_short};
use super::pairs::rule;
use super::prepare::Prepared;
use super::study::{LeftOut, group_list};
use super::sweep::{Fixed, Workspace};
use crate::bay::Bay;
use crate::solids::Layer;

/// Slack below which a pair counts as coming no nearer: what two distances may differ by for want
/// of being decided.
const NO_NEARER_M: f64 = UNDECIDED_M;

/// Pairs short of their margin as parked that come no nearer on the way up.
pub(super) struct ParkedShort {
    pub(super) findings: Vec<PairFinding>,
    pub(super) left_out: LeftOut,
}

/// Finds the pairs that are short at travel 0 and come no nearer, judged on the solids exactly as
/// written (the uncertainty widens the raised body more than the standing one). A pair that is
/// only short as parked but may touch on the way up is left to the rise all the same.
///
/// Only the groups in `counted` are looked at: the door states that count. A pair short as parked
/// in another state (the running door, say) bars that state, and is left to its sweep.
pub(super) fn parked_short(
    bay: &Bay,
    prepared: &Prepared,
    nominal: &Prepared,
    counted: &[usize],
    space: &mut Workspace,
) -> ParkedShort {
    let groups = group_list(prepared);
    let nominal_groups = group_list(nominal);
    let nothing_left_out = Vec::new();
    let table = PairTable {
        bay,
        prepared,
        nominal,
        groups: &groups,
        left_out: &nothing_left_out,
    };
    let mut found = ParkedShort {
        findings: Vec::new(),
        left_out: Vec::new(),
    };
    for &group in counted {
        for (index, thing) in groups[group].bodies.iter().enumerate() {
            for mover in as_parked(&prepared.movers) {
                let Some(rule) = rule(mover.role, thing.role, &bay.policy) else {
                    continue;
                };
                let at_rest = Climb {
                    up: DVec3::ZERO,
                    from: 0.0,
                    to: 0.0,
                };
                if apart_now(mover, thing) > rule.margin_m
                    || first_below(
                        space.solver(),
                        &mover.body,
                        &thing.body,
                        rule.margin_m,
                        at_rest,
                    ) == First::Never
                    || found.left_out.contains(&(mover.solid, group, thing.solid))
                {
                    continue;
                }
                let exact = &nominal_groups[group].bodies[index].body;
                let touches_now =
                    first_below(space.solver(), &mover.body, &thing.body, 0.0, at_rest)
                        != First::Never;
                let mut touches_later = || {
                    table
                        .phases(mover.solid)
                        .any(|phase| first_short(phase, thing, 0.0, space).is_some())
                };
                if (touches_now || !touches_later())
                    && comes_no_nearer(&nominal.movers, mover.solid, exact, space)
                {
                    found.left_out.push((mover.solid, group, thing.solid));
                    let mut finding = table.pair(group, mover.solid, index, rule.margin_m, space);
                    finding.points_m = table.points(group, mover.solid, index, 0.0, space);
                    finding.overlap_m = (finding.clearance_m <= 0.0)
                        .then(|| space.solver().depth(&mover.body, DVec3::ZERO, &thing.body))
                        .flatten();
                    found.findings.push(finding);
                }
            }
        }
    }
    found
}

/// Everything as it is with the vehicle on its tyres and the carriages down.
pub(super) fn as_parked(movers: &Movers) -> impl Iterator<Item = &Moving> {
    let lift = movers
        .moving
        .iter()
        .filter(|mover| mover.role.layer() == Layer::MovingLift);
    movers.standing.iter().chain(lift)
}

pub(super) fn apart_now(mover: &Moving, thing: &Fixed) -> f64 {
    (mover.body.low() - thing.body.high())
        .max(thing.body.low() - mover.body.high())
        .max(DVec3::ZERO)
        .length()
}

fn comes_no_nearer(movers: &Movers, solid: usize, fixed: &Body, space: &mut Workspace) -> bool {
    let mut at_start = f64::INFINITY;
    let mut least = f64::INFINITY;
    for mover in as_parked(movers).filter(|mover| mover.solid == solid) {
        at_start = match space.solver().gap(&mover.body, DVec3::ZERO, fixed) {
            Separation::Meet => 0.0,
            Separation::Apart(gap) => at_start.min(gap.upper),
        };
    }
    for mover in movers.moving.iter().filter(|mover| mover.solid == solid) {
        least = least.min(least_gap(space.solver(), &mover.body, fixed, climb_of(mover)).lower());
    }
    least >= at_start - NO_NEARER_M
}

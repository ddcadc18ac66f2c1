//! Which pairs are short of their margin as parked, and come no nearer on the way up?

use glam::DVec3;

use super::body::Body;
use super::climb::{Climb, First, first_below, least_gap};
use super::findings::PairFinding;
use super::gap::{Separation, UNDECIDED_M};
use super::movers::{Movers, Moving};
use super::pair_table::{PairTable, climb_of, first_short};
use super::pairs::{Family, rule, widest_margin_m};
use super::prepare::{Nominal, Prepared};
use super::study::{LeftOut, group_list};
use super::sweep::{Fixed, Workspace};
use crate::bay::{Bay, PostsOff};
use crate::solids::{Layer, Role};

/// Slack below which a pair counts as coming no nearer: what two distances may differ by for want
/// of being decided.
const NO_NEARER_M: f64 = UNDECIDED_M;

/// Pairs short of their margin as parked that come no nearer on the way up.
pub(super) struct ParkedShort {
    pub(super) findings: Vec<PairFinding>,
    /// Those of them that the rise need not look at.
    pub(super) left_out: LeftOut,
}

/// Finds the pairs that are short at travel 0 and come no nearer, judged on the solids exactly as
/// written (the uncertainty widens the raised body more than the standing one). A pair that is
/// only short as parked but may touch on the way up is left to the rise all the same. So is a pair
/// that overlaps as written and that the rise can run into: no distance tells that a roof in the
/// ceiling is driven deeper. It is told as parked, and counts on the way up.
///
/// Only the groups in `counted` are looked at: the door states that count. A pair short as parked
/// in another state (the running door, say) bars that state, and is left to its sweep.
pub(super) fn parked_short(
    bay: &Bay,
    prepared: &Prepared,
    nominal: &Nominal<'_>,
    counted: &[usize],
    space: &mut Workspace,
) -> ParkedShort {
    let groups = group_list(prepared);
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
    found.left_out = on_one_post(bay, prepared);
    let mut told: LeftOut = found.left_out.clone();
    let widest_m = widest_margin_m(&bay.policy);
    for &group in counted {
        for (index, thing) in groups[group].bodies.iter().enumerate() {
            for mover in as_parked(&prepared.movers) {
                let apart_m = apart_now(mover, thing);
                if apart_m > widest_m {
                    continue;
                }
                let Some(rule) = rule(mover.role, thing.role, &bay.policy) else {
                    continue;
                };
                let at_rest = Climb {
                    up: DVec3::ZERO,
                    from: 0.0,
                    to: 0.0,
                };
                if apart_m > rule.margin_m
                    || first_below(
                        space.solver(),
                        &mover.body,
                        &thing.body,
                        rule.margin_m,
                        at_rest,
                    ) == First::Never
                    || told.contains(&(mover.solid, group, thing.solid))
                {
                    continue;
                }
                let touches_now =
                    first_below(space.solver(), &mover.body, &thing.body, 0.0, at_rest)
                        != First::Never;
                let mut touches_later = || {
                    table
                        .phases(mover.solid)
                        .any(|phase| first_short(phase, thing, 0.0, space).is_some())
                };
                if !touches_now && touches_later() {
                    continue;
                }
                // Where it is not there the pair is left to the rise, which it bars.
                let Some(nominal) = nominal.get() else {
                    continue;
                };
                let exact = &group_list(nominal)[group].bodies[index].body;
                let from_now_on = way_from_here(&nominal.movers, mover.solid, exact, space);
                let deeper = from_now_on == FromHere::Overlaps && rule.family != Family::Beside;
                if from_now_on != FromHere::Nearer {
                    told.push((mover.solid, group, thing.solid));
                    if !deeper {
                        found.left_out.push((mover.solid, group, thing.solid));
                    }
                    let mut finding = table.pair(group, mover.solid, index, rule.margin_m, space);
                    finding.points_m = table.points(group, mover.solid, index, 0.0, space);
                    finding.overlap_m = (finding.clearance_m <= 0.0)
                        .then(|| overlap_m(mover, thing, space))
                        .flatten();
                    found.findings.push(finding);
                }
            }
        }
    }
    found
}

/// Where posts are known to be off ([`crate::bay::PostsOff`]): the pairs of one post and what it
/// carries or has beside it. They are off together, not each on its own: that ± says nothing of them,
/// and whoever sets it studies them without it.
fn on_one_post(bay: &Bay, prepared: &Prepared) -> LeftOut {
    if bay.lift.posts_off == PostsOff::default() {
        return Vec::new();
    }
    let mut pairs = Vec::new();
    for (group, listed) in group_list(prepared).into_iter().enumerate() {
        for thing in listed.bodies.iter() {
            let (Role::Post(side) | Role::BasePlate(side) | Role::PowerUnit(side)) = thing.role
            else {
                continue;
            };
            for mover in as_parked(&prepared.movers) {
                let own = match mover.role {
                    Role::Arm(corner) | Role::Pad(corner) => corner.side() == side,
                    Role::Carriage(of) => of == side,
                    _ => false,
                };
                if own && !pairs.contains(&(mover.solid, group, thing.solid)) {
                    pairs.push((mover.solid, group, thing.solid));
                }
            }
        }
    }
    pairs
}

/// Everything as it is with the vehicle on its tyres and the carriages down.
pub(super) fn as_parked(movers: &Movers) -> impl Iterator<Item = &Moving> {
    // Along columns that lean a lift part is elsewhere higher up.
    let lift = movers
        .moving
        .iter()
        .filter(|mover| mover.role.layer() == Layer::MovingLift && mover.from <= 0.0);
    movers.standing.iter().chain(lift)
}

/// How deep two solids overlap as parked. Out of a wall the only way is back into the room: the
/// shortest way out of what stands far in it would be its outer side.
fn overlap_m(mover: &Moving, thing: &Fixed, space: &mut Workspace) -> Option<f64> {
    if thing.role != Role::Wall {
        return space.solver().depth(&mover.body, DVec3::ZERO, &thing.body);
    }
    let (low, high) = (thing.body.low(), thing.body.high());
    // The back wall lies across the bay, its room side toward the door; the vehicle is in the room,
    // so a side wall's room side is the nearer to the middle of the room.
    let depth = if high.y - low.y < high.x - low.x {
        mover.body.high().y - low.y
    } else if low.x + high.x > 0.0 {
        mover.body.high().x - low.x
    } else {
        high.x - mover.body.low().x
    };
    Some(depth.max(0.0)).filter(|depth| depth.is_finite())
}

pub(super) fn apart_now(mover: &Moving, thing: &Fixed) -> f64 {
    (mover.body.low() - thing.body.high())
        .max(thing.body.low() - mover.body.high())
        .max(DVec3::ZERO)
        .length()
}

/// What the way up does to a pair, on the solids as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum FromHere {
    /// They come nearer than they are as parked.
    Nearer,
    /// They never come nearer.
    NoNearer,
    /// They overlap as parked: whether they overlap deeper on the way is not told by a distance.
    Overlaps,
}

fn way_from_here(movers: &Movers, solid: usize, fixed: &Body, space: &mut Workspace) -> FromHere {
    let mut at_start = f64::INFINITY;
    for mover in as_parked(movers).filter(|mover| mover.solid == solid) {
        match space.solver().gap(&mover.body, DVec3::ZERO, fixed) {
            Separation::Meet => return FromHere::Overlaps,
            Separation::Apart(gap) => at_start = at_start.min(gap.upper),
        }
    }
    let mut least = f64::INFINITY;
    for mover in movers.moving.iter().filter(|mover| mover.solid == solid) {
        least = least.min(least_gap(space.solver(), &mover.body, fixed, climb_of(mover)).lower());
    }
    if least >= at_start - NO_NEARER_M {
        FromHere::NoNearer
    } else {
        FromHere::Nearer
    }
}

#[cfg(test)]
mod tests {
    use crate::clearance::study;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    /// The deepest that anything stands in the back wall of a room so deep.
    fn in_the_wall(depth_m: f64) -> f64 {
        let mut bay = test_bay();
        bay.garage.depth = Length::metres(depth_m);
        study(&bay)
            .unwrap()
            .tight_as_parked
            .iter()
            .filter(|pair| pair.fixed == "shell/wall back")
            .filter_map(|pair| pair.overlap_m)
            .fold(0.0, f64::max)
    }

    #[test]
    fn a_vehicle_that_stands_through_the_ceiling_clears_no_lock() {
        let mut bay = test_bay();
        let top_m = bay
            .vehicle
            .roof
            .iter()
            .map(|station| station.height.m())
            .fold(0.0, f64::max);
        bay.garage.ceiling = crate::bay::Ceiling::Flat {
            height: Length::metres(top_m - 0.05),
        };
        let found = study(&bay).unwrap();
        assert!(
            found
                .tight_as_parked
                .iter()
                .any(|pair| pair.fixed == "shell/ceiling")
        );
        assert_eq!(found.highest_clear_lock, None);
    }

    #[test]
    fn what_stands_far_in_a_wall_is_short_by_the_way_back_into_the_room() {
        // The wall is 150 mm thick; its outer side is no way out.
        let far = (50..100)
            .map(|tenths| f64::from(tenths) * 0.1)
            .find(|&depth| in_the_wall(depth) < 0.15);
        let depth = far.unwrap() - 0.1;
        let (shallow, deep) = (in_the_wall(depth), in_the_wall(depth - 0.2));
        assert!(shallow >= 0.15, "{shallow}");
        assert!((deep - shallow - 0.2).abs() < 1e-6, "{deep} {shallow}");
    }
}

//! Pairs looked up again for the report: names, depths, first touches, nearest points.

use glam::DVec3;

use super::body::Body;
use super::boxes::{box_gap, plan_gap, short_window};
use super::climb::{Climb, First, first_below, least_gap};
use super::findings::PairFinding;
use super::gap::Separation;
use super::movers::{Movers, Moving};
use super::pairs::{Family, rule};
use super::parked::{apart_now, as_parked};
use super::prepare::{FixedSet, Nominal, Prepared};
use super::study::{LeftOut, state_of};
use super::sweep::{Breach, Fixed, NEAR_M, Near, WIDEST_MARGIN_M, Workspace};
use crate::bay::Bay;
use crate::solids::{Layer, Role, Solid, shell};

/// Pairs listed in the table at most.
const MOST_PAIRS: usize = 24;

/// What the study was made from, for looking pairs up again.
pub(super) struct PairTable<'a> {
    pub(super) bay: &'a Bay,
    pub(super) prepared: &'a Prepared,
    pub(super) nominal: &'a Nominal<'a>,
    pub(super) groups: &'a [&'a FixedSet; 4],
    pub(super) left_out: &'a LeftOut,
}

/// Lowest points of the vehicle on the pads, extrapolated to travel 0, above the highest floor
/// under it, and its highest.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lows {
    pub(super) body_m: f64,
    pub(super) tyre_m: f64,
    /// Highest point of the body, above the floor at the post line.
    pub(super) top_m: f64,
}

/// The first touch of a pair.
pub(super) struct Touch {
    pub(super) travel_m: f64,
    pub(super) moving: String,
    pub(super) fixed: String,
    pub(super) fixed_role: Role,
}

impl PairTable<'_> {
    /// Names of a pair by its indices.
    pub(super) fn names(&self, group: usize, moving: usize, fixed: usize) -> (String, String) {
        let set = self.groups[group];
        let mover = &self.prepared.movers.moving[moving];
        (
            self.prepared.movers.solids[mover.solid].name.clone(),
            set.solids[set.bodies[fixed].solid].name.clone(),
        )
    }

    /// How far the climb to `top_m` goes past the first touch of a pair that meets. (How deep
    /// two solids overlap by the shortest way out would mislead: a roof far through a thin ceiling
    /// is nearer to its upper side.)
    pub(super) fn climb_past_touch(
        &self,
        group: usize,
        near: &Near,
        top_m: f64,
        space: &mut Workspace,
    ) -> Option<f64> {
        let mover = &self.prepared.movers.moving[near.moving];
        let thing = &self.groups[group].bodies[near.fixed];
        if !mover.climbs {
            return None;
        }
        let phase = mover.phase;
        self.prepared
            .movers
            .moving
            .iter()
            .filter(|one| one.phase == phase)
            .filter_map(|one| first_short(one, thing, 0.0, space))
            .min_by(f64::total_cmp)
            .map(|touch| (top_m - touch).max(0.0))
    }

    /// A breach as a finding: over all phases of the two solids.
    pub(super) fn finding(
        &self,
        group: usize,
        breach: &Breach,
        space: &mut Workspace,
    ) -> PairFinding {
        let solid = self.prepared.movers.moving[breach.moving].solid;
        let mut finding = self.pair(group, solid, breach.fixed, breach.margin_m, space);
        // The sweep's own answer stands: the pair is looked up again only for what goes with it.
        finding.first_breach_m = Some(
            finding
                .first_breach_m
                .map_or(breach.travel_m, |found| found.min(breach.travel_m)),
        );
        finding.points_m = self.points(group, solid, breach.fixed, breach.travel_m, space);
        finding
    }

    /// One pair of solids over every phase of the moving one.
    pub(super) fn pair(
        &self,
        group: usize,
        solid: usize,
        fixed: usize,
        margin_m: f64,
        space: &mut Workspace,
    ) -> PairFinding {
        let set = self.groups[group];
        let thing = &set.bodies[fixed];
        let mut clearance_m = f64::INFINITY;
        let mut first_breach_m: Option<f64> = None;
        let mut first_touch_m: Option<f64> = None;
        for mover in self.phases(solid) {
            if Bound::of(mover, thing).gap_m >= clearance_m {
                continue;
            }
            let least = least_gap(space.solver(), &mover.body, &thing.body, climb_of(mover));
            clearance_m = clearance_m.min(least.lower().max(0.0));
        }
        for (margin, first) in [(margin_m, &mut first_breach_m), (0.0, &mut first_touch_m)] {
            for mover in self.phases(solid) {
                if let Some(travel) = first_short(mover, thing, margin, space) {
                    *first = Some(first.map_or(travel, |known: f64| known.min(travel)));
                }
            }
        }
        PairFinding {
            moving: self.prepared.movers.solids[solid].name.clone(),
            fixed: set.solids[thing.solid].name.clone(),
            door: state_of(group),
            margin_m,
            clearance_m,
            overlap_m: None,
            first_breach_m,
            first_touch_m,
            points_m: None,
        }
    }

    /// Nearest points of the nominal solids at a travel; none when they meet there, or where the
    /// nominal bay is not there.
    pub(super) fn points(
        &self,
        group: usize,
        solid: usize,
        fixed: usize,
        travel_m: f64,
        space: &mut Workspace,
    ) -> Option<(DVec3, DVec3)> {
        let set = self.groups[group];
        let moving = nominal_at(&self.nominal.get()?.movers, solid, travel_m);
        let body = Body::exact(&set.solids[set.bodies[fixed].solid]);
        match space
            .solver()
            .gap(&Body::exact(&moving), DVec3::ZERO, &body)
        {
            Separation::Apart(gap) => Some((gap.on_moving, gap.on_fixed)),
            Separation::Meet => None,
        }
    }

    pub(super) fn phases(&self, solid: usize) -> impl Iterator<Item = &Moving> {
        self.prepared
            .movers
            .moving
            .iter()
            .filter(move |mover| mover.solid == solid)
    }

    /// Every pair whose boxes come near, each named once: (group, solid, fixed index, margin,
    /// family).
    fn near_list(&self, groups: &[usize]) -> Vec<(usize, usize, usize, f64, Family)> {
        let mut list = Vec::new();
        for &group in groups {
            for (index, thing) in self.groups[group].bodies.iter().enumerate() {
                for mover in &self.prepared.movers.moving {
                    // Cheap first: most pairs are far apart in plan.
                    if mover.body.low().x - thing.body.high().x > WIDEST_MARGIN_M + NEAR_M
                        || thing.body.low().x - mover.body.high().x > WIDEST_MARGIN_M + NEAR_M
                        || mover.body.low().y - thing.body.high().y > WIDEST_MARGIN_M + NEAR_M
                        || thing.body.low().y - mover.body.high().y > WIDEST_MARGIN_M + NEAR_M
                    {
                        continue;
                    }
                    let Some(rule) = rule(mover.role, thing.role, &self.bay.policy) else {
                        continue;
                    };
                    let key = (group, mover.solid, index, rule.margin_m, rule.family);
                    if Bound::of(mover, thing).gap_m <= rule.margin_m + NEAR_M
                        && list.last() != Some(&key)
                        && !self.left_out.contains(&(mover.solid, group, thing.solid))
                    {
                        list.push(key);
                    }
                }
            }
        }
        list.sort_by_key(|&(group, solid, index, _, _)| (group, solid, index));
        list.dedup_by_key(|&mut (group, solid, index, _, _)| (group, solid, index));
        list
    }

    /// The pairs with the least room over their margin on the whole way up: first what comes
    /// short, in the order of travel, then by room.
    pub(super) fn near_pairs(&self, groups: &[usize], space: &mut Workspace) -> Vec<PairFinding> {
        let mut list: Vec<(f64, bool, _)> = self
            .near_list(groups)
            .into_iter()
            .map(|key| {
                let (group, solid, fixed, margin, _) = key;
                let thing = &self.groups[group].bodies[fixed];
                let mut room = f64::INFINITY;
                let mut may_be_short = false;
                for mover in self.phases(solid) {
                    let bound = Bound::of(mover, thing);
                    room = room.min(bound.gap_m - margin);
                    may_be_short |= bound.gap_m <= margin;
                }
                (room, may_be_short, key)
            })
            .collect();
        // By the room that the boxes leave: once enough pairs with less room are known, the rest
        // can't come among them.
        list.sort_by(|a, b| b.1.cmp(&a.1).then(a.0.total_cmp(&b.0)));
        let mut pairs: Vec<PairFinding> = Vec::new();
        for (room, may_be_short, (group, solid, fixed, margin, _)) in list {
            let enough = pairs
                .iter()
                .filter(|pair| pair.clearance_m - pair.margin_m <= room)
                .count()
                >= MOST_PAIRS;
            if !may_be_short && enough {
                break;
            }
            let pair = self.pair(group, solid, fixed, margin, space);
            if pair.clearance_m <= pair.margin_m + NEAR_M {
                pairs.push(pair);
            }
        }
        pairs.sort_by(|a, b| {
            let key = |pair: &PairFinding| pair.first_breach_m.unwrap_or(f64::INFINITY);
            key(a)
                .total_cmp(&key(b))
                .then_with(|| (a.clearance_m - a.margin_m).total_cmp(&(b.clearance_m - b.margin_m)))
        });
        pairs.truncate(MOST_PAIRS);
        pairs
    }

    /// The first touch of every pair that touches on the way up.
    pub(super) fn first_touches(&self, groups: &[usize], space: &mut Workspace) -> Vec<Touch> {
        let mut touches = Vec::new();
        for (group, solid, fixed, _, _) in self.near_list(groups) {
            let set = self.groups[group];
            let thing = &set.bodies[fixed];
            let first = self
                .phases(solid)
                .filter_map(|mover| first_short(mover, thing, 0.0, space))
                .min_by(f64::total_cmp);
            if let Some(travel_m) = first {
                touches.push(Touch {
                    travel_m,
                    moving: self.prepared.movers.solids[solid].name.clone(),
                    fixed: set.solids[thing.solid].name.clone(),
                    fixed_role: thing.role,
                });
            }
        }
        touches
    }

    /// Whether the door may be run with the vehicle on its tyres and the carriages down.
    pub(super) fn may_run_when_down(&self, space: &mut Workspace) -> bool {
        self.short_when_down(3, space).is_none()
    }

    /// With the vehicle on its tyres and the carriages down: the first pair that is short of its
    /// margin against a group of fixed solids (moving, fixed); none when every margin holds.
    pub(super) fn short_when_down(
        &self,
        group: usize,
        space: &mut Workspace,
    ) -> Option<(usize, usize)> {
        for mover in as_parked(&self.prepared.movers) {
            for thing in &self.groups[group].bodies {
                let Some(rule) = rule(mover.role, thing.role, &self.bay.policy) else {
                    continue;
                };
                if apart_now(mover, thing) > rule.margin_m {
                    continue;
                }
                let holds = match space.solver().gap(&mover.body, DVec3::ZERO, &thing.body) {
                    Separation::Meet => false,
                    Separation::Apart(gap) => gap.lower > rule.margin_m,
                };
                if !holds {
                    return Some((mover.solid, thing.solid));
                }
            }
        }
        None
    }

    /// The vehicle's lowest and highest places at each of these travels, lowest first, extrapolated to
    /// travel 0: of every way in which it may stand from there on.
    pub(super) fn lows(&self, travels_m: &[f64]) -> Vec<Lows> {
        let mut known: Option<(usize, Lows)> = None;
        let each = travels_m.iter().map(|&travel_m| {
            // A phase that is over says nothing of what is higher.
            let left = self.climbing_from(travel_m).count();
            let lows = match known {
                Some((of, lows)) if of == left => lows,
                _ => self.lows_from(travel_m),
            };
            known = Some((left, lows));
            lows
        });
        each.collect()
    }

    /// The vehicle's phases that are not over at a travel. At the top of the travel the last still counts,
    /// whatever rounding makes of its end: nothing there would be no bound at all.
    fn climbing_from(&self, travel_m: f64) -> impl Iterator<Item = &Moving> {
        const ROUNDING_M: f64 = 1e-6;
        let of_vehicle = |mover: &&Moving| mover.climbs && mover.role.layer() == Layer::Vehicle;
        let moving = self.prepared.movers.moving.iter().filter(of_vehicle);
        let top = moving
            .clone()
            .map(|mover| mover.to)
            .fold(0.0, f64::max)
            .min(travel_m);
        moving.filter(move |mover| mover.to >= top - ROUNDING_M)
    }

    /// Lowest points of body and tyres on the pads, extrapolated to travel 0, above the highest
    /// floor under the vehicle: people stand on the floor, not on the post line.
    fn lows_from(&self, travel_m: f64) -> Lows {
        let mut lows = Lows {
            body_m: f64::INFINITY,
            tyre_m: f64::INFINITY,
            top_m: f64::NEG_INFINITY,
        };
        let climbing = || self.climbing_from(travel_m);
        // Every uncertainty is in the bodies, so these are bounds.
        for mover in climbing() {
            let low = mover.body.low().z;
            match mover.role {
                Role::Body | Role::Mirror => {
                    lows.body_m = lows.body_m.min(low);
                    lows.top_m = lows.top_m.max(mover.body.high().z);
                }
                Role::Wheel(_) => lows.tyre_m = lows.tyre_m.min(low),
                _ => {}
            }
        }
        let low = climbing().fold(DVec3::INFINITY, |low, mover| low.min(mover.body.low()));
        let high = climbing().fold(DVec3::NEG_INFINITY, |high, mover| {
            high.max(mover.body.high())
        });
        if low.is_finite() && high.is_finite() {
            let (_, floor) = shell::floor_level_range_m(self.bay, [low.x, low.y], [high.x, high.y]);
            lows.body_m -= floor.max(0.0);
            lows.tyre_m -= floor.max(0.0);
        }
        lows
    }

    /// The widest spread of any body part, for parts that are posed on their own.
    pub(super) fn body_spread(&self) -> DVec3 {
        let exact = |movers: &Movers, solid: usize| {
            movers
                .moving
                .iter()
                .filter(|mover| mover.climbs && mover.solid == solid)
                .map(|mover| (mover.body.low(), mover.body.high()))
                .reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))
        };
        let Some(nominal) = self.nominal.get() else {
            return DVec3::INFINITY;
        };
        let mut spread = DVec3::ZERO;
        for (index, solid) in self.prepared.movers.solids.iter().enumerate() {
            if solid.role != Role::Body {
                continue;
            }
            if let (Some(wide), Some(tight)) = (
                exact(&self.prepared.movers, index),
                exact(&nominal.movers, index),
            ) {
                spread = spread.max(tight.0 - wide.0).max(wide.1 - tight.1);
            }
        }
        spread
    }
}

/// The climb of a mover over its whole phase.
pub(super) fn climb_of(mover: &Moving) -> Climb {
    Climb {
        up: if mover.climbs { DVec3::Z } else { DVec3::ZERO },
        from: mover.from,
        to: mover.to,
    }
}

/// What the boxes about a pair say of it over the mover's phase.
struct Bound {
    /// A lower bound on the distance.
    gap_m: f64,
}

impl Bound {
    fn of(mover: &Moving, thing: &Fixed) -> Self {
        let plan = plan_gap(mover, thing, DVec3::Z);
        Self {
            gap_m: box_gap(mover, thing, plan, mover.from, mover.to, DVec3::Z),
        }
    }
}

/// The first travel of the mover's phase at which the pair is nearer than `margin`; an undecided
/// one counts.
pub(super) fn first_short(
    mover: &Moving,
    thing: &Fixed,
    margin: f64,
    space: &mut Workspace,
) -> Option<f64> {
    let plan = plan_gap(mover, thing, DVec3::Z);
    let (from, to) = short_window(mover, thing, margin, plan, DVec3::Z);
    if from > to {
        return None;
    }
    let climb = Climb {
        from,
        to,
        ..climb_of(mover)
    };
    match first_below(space.solver(), &mover.body, &thing.body, margin, climb) {
        First::Never => None,
        First::At(travel) | First::Undecided(travel) => Some(travel),
    }
}

/// A moving solid, nominal, where it is at a travel.
fn nominal_at(movers: &Movers, solid: usize, travel_m: f64) -> Solid {
    let rests = movers
        .moving
        .iter()
        .any(|mover| mover.solid == solid && !mover.climbs && travel_m < mover.to);
    let source = if rests {
        &movers.solids[solid]
    } else {
        &movers.climbing_solids[solid]
    };
    let mut posed = source.clone();
    if !rests {
        posed.bay_from_solid = posed.bay_from_solid.moved(DVec3::Z * travel_m);
    }
    posed
}

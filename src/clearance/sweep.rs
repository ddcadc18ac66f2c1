//! The moving bodies against one group of fixed bodies on the whole way up.
//!
//! One sweep answers, for one group (the room, the door in one state): where a margin is first
//! short, at which locks something touches, and how near the nearest pair is at each lock. The
//! groups' answers are put together in [`super::locks`].
//!
//! Most pairs never come near each other in plan and cost a few comparisons. The others are
//! searched in the window of travel in which the boxes about them could meet. Once the workspace
//! has grown to its size, a sweep allocates nothing.

use glam::DVec3;

use super::body::Body;
use super::boxes::{is_box_gap_at_least, is_ever_near, plan_box, short_window};
use super::climb::{Climb, First, Least, first_below, last_below, least_gap_from};
use super::gap::{Gap, Solver};
use super::movers::Moving;
use super::pairs::{Family, Rule};
use crate::solids::Role;

/// Pairs whose plan outlines stay farther apart than their margin plus this (metres) are not
/// listed as near at any lock. They can't be short of their margin either way.
pub const NEAR_M: f64 = 0.5;

/// The widest margin that may be asked, metres. The bay file allows no wider one.
pub const WIDEST_MARGIN_M: f64 = 2.0;

/// A fixed body.
#[derive(Debug, Clone)]
pub struct Fixed {
    /// The solid with its uncertainty added.
    pub body: Body,
    /// Index into the study's list of fixed solids.
    pub solid: usize,
    /// What it is.
    pub role: Role,
}

/// Where the locks are and how far the carriage climbs past each.
#[derive(Debug, Clone)]
pub struct LockWindows {
    /// `[s_k, s_k + o]` for each lock, lowest first.
    pub windows: Vec<[f64; 2]>,
}

/// A pair and the travel at which it comes short.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Breach {
    /// Travel of the first breach, certified clear before.
    pub travel_m: f64,
    /// Index into the moving list.
    pub moving: usize,
    /// Index into the group's fixed list.
    pub fixed: usize,
    /// How the pair matters.
    pub family: Family,
    /// The margin asked, metres.
    pub margin_m: f64,
}

/// The pair with the least room over its margin at a lock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Near {
    /// The least distance in the lock's window, certified, metres; 0 when they meet.
    pub distance_m: f64,
    /// The margin asked, metres.
    pub margin_m: f64,
    /// Travel at which it is least.
    pub travel_m: f64,
    /// Index into the moving list.
    pub moving: usize,
    /// Index into the group's fixed list.
    pub fixed: usize,
}

impl Near {
    fn spare(&self) -> f64 {
        self.distance_m - self.margin_m
    }
}

/// What one sweep found.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Swept {
    /// The first pair that comes short of its margin.
    pub first: Option<Breach>,
    /// The first travel from which a pair could not be decided.
    pub undecided: Option<Breach>,
    /// For each lock, a pair that touches there.
    pub touching: Vec<Option<Breach>>,
    /// For each lock, the pair with the least room over its margin, among pairs of the family
    /// [`Family::Over`] and [`Family::Bar`].
    pub near: Vec<Option<Near>>,
}

/// A pair whose boxes come near enough to look at.
#[derive(Debug, Clone, Copy)]
struct Candidate {
    moving: u32,
    fixed: u32,
    rule: Rule,
    /// Distance between the plan boxes.
    plan: f64,
    /// Window of travel in which the pair can be short of its margin; empty when `from > to`.
    from: f64,
    to: f64,
}

/// Scratch space for any number of sweeps.
#[derive(Default)]
pub struct Workspace {
    solver: Solver,
    candidates: Vec<Candidate>,
    /// Answer of the last sweep.
    pub swept: Swept,
}

impl Workspace {
    /// Scratch space for any number of sweeps.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The distance solver, for single queries.
    pub fn solver(&mut self) -> &mut Solver {
        &mut self.solver
    }

    /// Sweeps `moving` past `fixed`. `rule` says what is asked of a pair by index; `skip` names
    /// pairs that are reported elsewhere. The answer is left in [`Workspace::swept`].
    pub fn sweep(
        &mut self,
        moving: &[Moving],
        fixed: &[Fixed],
        locks: &LockWindows,
        up: DVec3,
        rule: &dyn Fn(&Moving, &Fixed) -> Option<Rule>,
    ) {
        self.start(moving, fixed, locks, up, rule, |_, _| true);
        self.find_first(moving, fixed, up);
        self.find_touching(moving, fixed, locks, up);
        self.find_near(moving, fixed, locks, up);
    }

    /// The same, only as far as which locks are clear depends on it: where a margin is first short
    /// and where a pair is first undecided. What touches at a lock and what is near there is not
    /// looked for. `rule` asks for no wider margin than `widest_m`.
    pub fn sweep_first(
        &mut self,
        moving: &[Moving],
        fixed: &[Fixed],
        locks: &LockWindows,
        up: DVec3,
        widest_m: f64,
        rule: &dyn Fn(&Moving, &Fixed) -> Option<Rule>,
    ) {
        // A little more than the margin, as in `short_window`.
        let reach_m = widest_m + 1e-5;
        let may_be_short = |mover: &Moving, thing: &Fixed| is_ever_near(reach_m, mover, thing, up);
        self.start(moving, fixed, locks, up, rule, may_be_short);
        self.find_first(moving, fixed, up);
    }

    /// An empty answer, and the pairs that are worth a look among those that may matter.
    fn start(
        &mut self,
        moving: &[Moving],
        fixed: &[Fixed],
        locks: &LockWindows,
        up: DVec3,
        rule: &dyn Fn(&Moving, &Fixed) -> Option<Rule>,
        may_matter: impl Fn(&Moving, &Fixed) -> bool,
    ) {
        let swept = &mut self.swept;
        swept.first = None;
        swept.undecided = None;
        swept.touching.clear();
        swept.touching.resize(locks.windows.len(), None);
        swept.near.clear();
        swept.near.resize(locks.windows.len(), None);
        self.candidates.clear();
        for (i, mover) in moving.iter().enumerate() {
            for (j, thing) in fixed.iter().enumerate() {
                if may_matter(mover, thing)
                    && let Some(candidate) = candidate(i, mover, j, thing, up, rule)
                {
                    self.candidates.push(candidate);
                }
            }
        }
    }

    fn find_first(&mut self, moving: &[Moving], fixed: &[Fixed], up: DVec3) {
        // The pair that can meet earliest goes first: its breach shortens the rest of the search.
        let earliest = self
            .candidates
            .iter()
            .enumerate()
            .filter(|(_, candidate)| candidate.from <= candidate.to)
            .min_by(|a, b| a.1.from.total_cmp(&b.1.from))
            .map(|(index, _)| index);
        let Some(earliest) = earliest else {
            return;
        };
        self.candidates.swap(0, earliest);
        for candidate in &self.candidates {
            let best = self
                .swept
                .first
                .map_or(f64::INFINITY, |breach| breach.travel_m);
            if candidate.from > candidate.to || candidate.from >= best {
                continue;
            }
            let margin = candidate.rule.margin_m;
            let breach = |travel_m| Breach {
                travel_m,
                moving: candidate.moving as usize,
                fixed: candidate.fixed as usize,
                family: candidate.rule.family,
                margin_m: margin,
            };
            match search(&mut self.solver, candidate, moving, fixed, margin, up) {
                First::At(travel) if travel < best => self.swept.first = Some(breach(travel)),
                First::Never | First::At(_) => {}
                First::Undecided(travel) => {
                    let sooner = self
                        .swept
                        .undecided
                        .is_none_or(|known| travel < known.travel_m);
                    if sooner {
                        self.swept.undecided = Some(breach(travel));
                    }
                }
            }
        }
        // What limits the rise is also the nearest pair at most locks: look at it first there.
        if let Some(first) = self.swept.first
            && let Some(index) = self.candidates.iter().position(|candidate| {
                candidate.moving as usize == first.moving && candidate.fixed as usize == first.fixed
            })
        {
            self.candidates.swap(0, index);
        }
    }

    fn find_touching(
        &mut self,
        moving: &[Moving],
        fixed: &[Fixed],
        locks: &LockWindows,
        up: DVec3,
    ) {
        let Some(first) = self.swept.first else {
            return;
        };
        // Nothing touches before the first breach.
        let open = locks
            .windows
            .iter()
            .filter(|window| window[1] >= first.travel_m)
            .count();
        let mut left = open;
        for candidate in &self.candidates {
            if left == 0 {
                break;
            }
            if candidate.from > candidate.to || candidate.plan > 0.0 {
                continue;
            }
            let undecided_lock =
                locks
                    .windows
                    .iter()
                    .zip(&self.swept.touching)
                    .any(|(window, touching)| {
                        touching.is_none()
                            && window[1] >= candidate.from
                            && window[0] <= candidate.to
                            && window[1] >= first.travel_m
                    });
            if !undecided_lock {
                continue;
            }
            let Some((start, end)) = touch_window(&mut self.solver, candidate, moving, fixed, up)
            else {
                continue;
            };
            for (window, touching) in locks.windows.iter().zip(&mut self.swept.touching) {
                if touching.is_none() && window[1] >= start && window[0] <= end {
                    left = left.saturating_sub(1);
                    *touching = Some(Breach {
                        travel_m: start,
                        moving: candidate.moving as usize,
                        fixed: candidate.fixed as usize,
                        family: candidate.rule.family,
                        margin_m: 0.0,
                    });
                }
            }
        }
    }

    fn find_near(&mut self, moving: &[Moving], fixed: &[Fixed], locks: &LockWindows, up: DVec3) {
        for candidate in &self.candidates {
            if candidate.rule.family == Family::Beside {
                continue;
            }
            let mover = &moving[candidate.moving as usize];
            let thing = &fixed[candidate.fixed as usize];
            let margin = candidate.rule.margin_m;
            // The last gap found for this pair: along its normal the gap is a straight line in
            // the travel that never lies above the distance, so it bounds the other locks too.
            let mut known: Option<(Gap, f64)> = None;
            for (window, near) in locks.windows.iter().zip(&mut self.swept.near) {
                let from = window[0].max(mover.from);
                let to = window[1].min(mover.to);
                if from > to {
                    continue;
                }
                // Farther than this it is not the nearest here. A pair that touches has no spare,
                // and nothing can be nearer than that.
                let limit = near.map_or(f64::INFINITY, |near| near.spare()) + margin;
                if is_box_gap_at_least(limit, mover, thing, candidate.plan, from, to, up) {
                    continue;
                }
                if let Some((gap, travel)) = known
                    && mover.climbs
                {
                    let rate = gap.normal.dot(up);
                    let line = |at: f64| gap.lower - (at - travel) * rate;
                    if line(from).min(line(to)) >= limit {
                        continue;
                    }
                }
                let climb = travel_of(mover, up, from, to);
                let toward = known.map(|(gap, _)| gap.normal);
                let least =
                    least_gap_from(&mut self.solver, &mover.body, &thing.body, climb, toward);
                let travel_m = match least {
                    Least::Meet(travel) => travel,
                    Least::Gap(gap, travel) => {
                        known = Some((gap, travel));
                        travel
                    }
                };
                let found = Near {
                    distance_m: least.lower().max(0.0),
                    margin_m: margin,
                    travel_m,
                    moving: candidate.moving as usize,
                    fixed: candidate.fixed as usize,
                };
                if found.distance_m < limit {
                    *near = Some(found);
                }
            }
        }
    }
}

/// The climb of a mover between two travels; a standing one does not move.
fn travel_of(mover: &Moving, up: DVec3, from: f64, to: f64) -> Climb {
    Climb {
        up: if mover.climbs { up } else { DVec3::ZERO },
        from,
        to,
    }
}

/// The first travel at which a pair is nearer than `margin`, in the pair's window.
fn search(
    solver: &mut Solver,
    candidate: &Candidate,
    moving: &[Moving],
    fixed: &[Fixed],
    margin: f64,
    up: DVec3,
) -> First {
    let mover = &moving[candidate.moving as usize];
    let thing = &fixed[candidate.fixed as usize];
    let climb = travel_of(mover, up, candidate.from, candidate.to);
    first_below(solver, &mover.body, &thing.body, margin, climb)
}

/// Between which travels a pair touches; an undecided end counts as touching.
fn touch_window(
    solver: &mut Solver,
    candidate: &Candidate,
    moving: &[Moving],
    fixed: &[Fixed],
    up: DVec3,
) -> Option<(f64, f64)> {
    let start = match search(solver, candidate, moving, fixed, 0.0, up) {
        First::Never => return None,
        First::At(travel) | First::Undecided(travel) => travel,
    };
    let mover = &moving[candidate.moving as usize];
    if !mover.climbs {
        return Some((mover.from, mover.to));
    }
    let thing = &fixed[candidate.fixed as usize];
    let climb = travel_of(mover, up, candidate.from, candidate.to);
    let end = match last_below(solver, &mover.body, &thing.body, 0.0, climb) {
        First::Never => start,
        First::At(travel) | First::Undecided(travel) => travel.max(start),
    };
    Some((start, end))
}

/// A pair worth looking at, or none when the boxes about it stay apart.
#[inline]
fn candidate(
    i: usize,
    mover: &Moving,
    j: usize,
    thing: &Fixed,
    up: DVec3,
    rule: &dyn Fn(&Moving, &Fixed) -> Option<Rule>,
) -> Option<Candidate> {
    let (low, high) = plan_box(mover, up);
    let x = (low.x - thing.body.high().x).max(thing.body.low().x - high.x);
    let y = (low.y - thing.body.high().y).max(thing.body.low().y - high.y);
    // Cheap test first: no margin is wider than that.
    if x > WIDEST_MARGIN_M + NEAR_M || y > WIDEST_MARGIN_M + NEAR_M {
        return None;
    }
    let rule = rule(mover, thing)?;
    let (x, y) = (x.max(0.0), y.max(0.0));
    let plan = (x * x + y * y).sqrt();
    if plan > rule.margin_m + NEAR_M {
        return None;
    }
    let (from, to) = short_window(mover, thing, rule.margin_m, plan, up);
    Some(Candidate {
        moving: i as u32,
        fixed: j as u32,
        rule,
        plan,
        from,
        to,
    })
}

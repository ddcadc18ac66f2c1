//! Which reading does not fit the others, and of which can't that be said?
//!
//! Data snooping after W. Baarda, "A testing procedure for use in geodetic networks", Netherlands
//! Geodetic Commission 1968: the residual over its own standard deviation against 3.29, which one
//! good reading in a thousand goes past (from memory). The worst is left out, and the rest is fitted
//! again, until none goes past it. One by one that can be led astray by two slips of one kind, as of a
//! corner that was marked wrong: where it leaves out two or more, the two without which the rest fits best
//! are told, if there are two such, and any other two without which it fits as well are as suspect. Where it
//! leaves out one, any other two without which all fits much better are.
//!
//! The same tape pulled again is one reading, the mean of both: a slip in what was marked or hooked to
//! comes back with it, so that it checks nothing. The room's dimensions in the bay file are readings
//! too, with the room's ±.

use super::adjust::{Adjusted, NotFixed, Observed, Row, adjust};
use super::places::{OF_POSTS, Planned, WALLS};
use super::plumb::repeated;
use super::reliability::{common, slips, unchecked};
use super::{COVERAGE, WEAK_M};
use crate::bay::{Mark, Measured, Over};

/// Past this, a standardised residual is no chance.
const CRITICAL: f64 = 3.29;

/// A reading whose standardised residual comes this near to the worst one is as suspect.
const AS_SUSPECT: f64 = 0.98;

/// Two that leave this much more of the weighted sum of squares are no worse an explanation: what one
/// reading adds to it by chance in one of twenty (chi-square of one degree of freedom, any handbook).
const NO_WORSE: f64 = 3.84;

/// The least ± of the room that is weighed, metres: none at all would have no weight.
const ROOM_FROM_M: f64 = 1e-5;

/// How a reading goes with the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// It fits.
    Fits,
    /// Nothing else checks it: a slip would not show.
    Unchecked,
    /// It does not fit.
    Misfit,
    /// It fits or not as another does: one of them is wrong, and these readings can't say which.
    Suspect,
    /// The same was read again, and differs by more than the ± of both.
    Differs,
}

impl State {
    /// True while it contradicts another reading.
    #[must_use]
    pub const fn is_open(self) -> bool {
        matches!(self, Self::Misfit | Self::Suspect | Self::Differs)
    }
}

/// One reading beside the others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Checked {
    /// What was read, metres.
    pub reading_m: f64,
    /// Its ±.
    pub tolerance_m: f64,
    /// What the posts, as they stand by the other readings, make of it.
    pub fitted_m: f64,
    /// What it is by the plan.
    pub planned_m: f64,
    /// Its standardised residual, where it is checked: of a reading left out, when it was. Of one that
    /// was repeated, of the mean.
    pub standardised: Option<f64>,
    /// Its redundancy number.
    pub checked: f64,
    /// How it goes with the others.
    pub state: State,
    /// True when the fit is without it.
    pub left_out: bool,
    /// True when the same was read again: it counts once.
    pub again: bool,
}

/// A wall of the room beside the readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// How far it stands off the bay file by the readings, along +x or +y.
    pub off_m: f64,
    /// As of a reading: where it is checked.
    pub standardised: Option<f64>,
    /// Its redundancy number.
    pub checked: f64,
    /// How its place in the bay file goes with the readings.
    pub state: State,
    /// True when a reading was taken to it.
    pub used: bool,
}

/// The adjustment of what fits, and every reading.
pub(super) struct Found {
    pub(super) adjusted: Adjusted,
    pub(super) readings: Vec<Checked>,
    /// Left, right, back.
    pub(super) walls: [Wall; 3],
    /// How far a slip that may not show can move the unknowns, for each reading.
    pub(super) slips: Vec<Vec<f64>>,
    /// What one standard deviation of all tapes together, off alike, does to the unknowns.
    pub(super) common: Vec<f64>,
    /// What each metre of a slip that nothing checks does, beside its place in the file's list.
    pub(super) unchecked: Vec<(Option<usize>, Vec<f64>)>,
}

/// One observation: readings of the same, or a wall by the bay file.
struct One {
    /// Places in the file's list; none of a wall.
    tape: Vec<usize>,
    observed: Observed,
    /// Readings of the same that differ.
    differs: bool,
}

/// How one observation goes with the others.
struct Judged {
    standardised: Option<f64>,
    checked: f64,
    state: State,
    left_out: bool,
}

/// True for the same pair of marks, either way round, or the same wall and mark.
pub(super) fn same(a: Over, b: Over) -> bool {
    match (a, b) {
        (Over::Between(a, b), Over::Between(c, d)) => (a, b) == (c, d) || (a, b) == (d, c),
        (a, b) => a == b,
    }
}

/// True for a reading taken to a wall, or to the corner that it makes with the door wall.
fn to_wall(over: Over, wall: usize) -> bool {
    let at = |mark: Mark| match mark {
        Mark::A => wall == 0,
        Mark::B => wall == 1,
        _ => false,
    };
    match over {
        Over::Between(from, to) => at(from) || at(to),
        Over::Wall(from, _) => from == WALLS[wall],
    }
}

/// Tape readings, those of the same put together, then the three walls.
fn observations(planned: &Planned, measured: &Measured) -> Vec<One> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (i, taken) in measured.tape.iter().enumerate() {
        let known = groups.iter_mut().find(|group| {
            let first = group.first().and_then(|&at| measured.tape.get(at));
            first.is_some_and(|first| same(first.over, taken.over))
        });
        match known {
            Some(group) => group.push(i),
            None => groups.push(vec![i]),
        }
    }
    let together = |tape: Vec<usize>| {
        let read: Vec<(f64, f64)> = tape
            .iter()
            .map(|&i| &measured.tape[i])
            .map(|taken| (taken.reading.m(), taken.tolerance.m()))
            .collect();
        let (value, best, differs) = repeated(&read)?;
        let sigma = best / COVERAGE;
        Some(One {
            tape,
            observed: Observed { value, sigma },
            differs,
        })
    };
    let mut all: Vec<One> = groups.into_iter().filter_map(together).collect();
    all.extend(WALLS.map(|_| One {
        tape: Vec::new(),
        observed: Observed {
            value: 0.0,
            sigma: planned.room_m.max(ROOM_FROM_M) / COVERAGE,
        },
        differs: false,
    }));
    all
}

pub(super) fn fit(planned: &Planned, measured: &Measured) -> Result<Found, NotFixed> {
    let all = observations(planned, measured);
    let tapes = all.len() - WALLS.len();
    let start: Vec<f64> = planned.start().into_iter().chain([0.0; 3]).collect();
    let row = |i: usize, unknowns: &[f64]| match all[i].tape.first() {
        Some(&at) => planned.row(measured.tape[at].over, unknowns),
        None => {
            let wall = OF_POSTS + i - tapes;
            let mut slopes = vec![0.0; unknowns.len()];
            slopes[wall] = 1.0;
            Row {
                computed: unknowns[wall],
                slopes,
            }
        }
    };
    let observed = |kept: &[usize]| kept.iter().map(|&i| all[i].observed).collect::<Vec<_>>();
    let rows = |kept: &[usize], unknowns: &[f64]| {
        kept.iter().map(|&i| row(i, unknowns)).collect::<Vec<Row>>()
    };
    let fit_of = |kept: &[usize]| {
        adjust(&start, &observed(kept), WEAK_M, |unknowns| {
            rows(kept, unknowns)
        })
    };
    let mut kept: Vec<usize> = (0..all.len()).collect();
    let mut adjusted = fit_of(&kept)?;
    let mut told: Vec<(usize, f64, f64)> = Vec::new();
    let mut suspects: Vec<usize> = Vec::new();
    while let Some((at, worst)) = worst(&adjusted) {
        let near = |w: Option<f64>| w.is_some_and(|w| w.abs() >= AS_SUSPECT * worst.abs());
        suspects.extend(
            (0..kept.len())
                .filter(|&i| i != at && near(adjusted.residuals[i].standardised))
                .map(|i| kept[i]),
        );
        let mut without = kept.clone();
        let out = without.remove(at);
        told.push((out, worst, adjusted.residuals[at].checked));
        // Where the rest no longer fixes the posts, the fit stays as it is and the reading is told.
        let Ok(fewer) = fit_of(&without) else { break };
        kept = without;
        adjusted = fewer;
    }
    if let [(out, ..)] = told[..]
        && kept.len() < all.len()
    {
        let most = adjusted.squares - NO_WORSE;
        suspects.extend(better_pairs(all.len(), out, most, &fit_of));
    }
    if told.len() > 1
        && let Some(pairs) = fitting_pairs(all.len(), &fit_of)
    {
        let without =
            |out: &[usize]| -> Vec<usize> { (0..all.len()).filter(|i| !out.contains(i)).collect() };
        let [a, b] = pairs.best;
        kept = without(&[a, b]);
        adjusted = fit_of(&kept)?;
        told = [[a, b], [b, a]]
            .into_iter()
            .map(|[one, other]| {
                // Against the others, without the one that is wrong beside it.
                let beside = without(&[other]);
                let fit = fit_of(&beside).ok();
                let at = beside.iter().position(|&i| i == one);
                let residual = fit.zip(at).map(|(fit, at)| fit.residuals[at]);
                let w = residual.and_then(|one| one.standardised);
                (
                    one,
                    w.unwrap_or(CRITICAL),
                    residual.map_or(0.0, |one| one.checked),
                )
            })
            .collect();
        suspects = pairs.as_good;
    }
    let judge = |i: usize| {
        let out = told.iter().find(|(at, ..)| *at == i);
        let inside = kept.iter().position(|&at| at == i);
        let residual = inside.map(|at| adjusted.residuals[at]);
        let (standardised, checked) = match (out, residual) {
            (Some((_, w, share)), _) => (Some(*w), *share),
            (None, Some(residual)) => (residual.standardised, residual.checked),
            (None, None) => (None, 0.0),
        };
        let state = if out.is_some() {
            State::Misfit
        } else if all[i].differs {
            State::Differs
        } else if suspects.contains(&i) {
            State::Suspect
        } else if standardised.is_none() {
            State::Unchecked
        } else {
            State::Fits
        };
        Judged {
            standardised,
            checked,
            state,
            left_out: inside.is_none(),
        }
    };
    let judged: Vec<Judged> = (0..all.len()).map(judge).collect();
    let readings = measured.tape.iter().enumerate().map(|(i, taken)| {
        let of = all.iter().position(|one| one.tape.contains(&i));
        let at = of.unwrap_or_default();
        let one = &judged[at];
        Checked {
            reading_m: taken.reading.m(),
            tolerance_m: taken.tolerance.m(),
            fitted_m: planned.row(taken.over, &adjusted.unknowns).computed,
            planned_m: planned.row(taken.over, &start).computed,
            standardised: one.standardised,
            checked: one.checked,
            state: one.state,
            left_out: one.left_out,
            again: all[at].tape.len() > 1,
        }
    });
    let walls = [0, 1, 2].map(|wall| Wall {
        off_m: adjusted.unknowns[OF_POSTS + wall],
        standardised: judged[tapes + wall].standardised,
        checked: judged[tapes + wall].checked,
        state: judged[tapes + wall].state,
        used: measured.tape.iter().any(|taken| to_wall(taken.over, wall)),
    });
    let last = rows(&kept, &adjusted.unknowns);
    Ok(Found {
        readings: readings.collect(),
        walls,
        slips: slips(&adjusted, &last, &observed(&kept)),
        common: common(&adjusted, &last, &observed(&kept), |at| {
            let tape = all[kept[at]].tape.first();
            tape.map_or(0.0, |&tape| measured.tape[tape].tolerance.m() / COVERAGE)
        }),
        unchecked: unchecked(&adjusted, &last, &observed(&kept))
            .into_iter()
            .map(|(at, moves)| (all[kept[at]].tape.first().copied(), moves))
            .collect(),
        adjusted,
    })
}

/// Two observations without which all others fit.
struct Pairs {
    /// Those without which they fit best.
    best: [usize; 2],
    /// What stands in others that are no worse an explanation.
    as_good: Vec<usize>,
}

/// The most observations of which every two are tried: beyond, it would take seconds.
const TRIED: usize = 60;

/// The two of so many without which all others fit; none where there are no such two.
fn fitting_pairs(
    of: usize,
    fit_of: &impl Fn(&[usize]) -> Result<Adjusted, NotFixed>,
) -> Option<Pairs> {
    if of > TRIED {
        return None;
    }
    let mut fitting: Vec<([usize; 2], f64)> = fitting(of, fit_of).collect();
    fitting.sort_by(|one, other| one.1.total_cmp(&other.1));
    let (&(best, least), others) = fitting.split_first()?;
    let as_good = others
        .iter()
        .filter(|(_, squares)| *squares <= least + NO_WORSE);
    let as_good = as_good
        .flat_map(|(pair, _)| *pair)
        .filter(|one| !best.contains(one));
    Some(Pairs {
        best,
        as_good: as_good.collect(),
    })
}

/// What stands in two others without which all fits so much better than without one alone that they are as
/// likely to be wrong: `most` is what may be left of the weighted sum of squares.
fn better_pairs(
    of: usize,
    told: usize,
    most: f64,
    fit_of: &impl Fn(&[usize]) -> Result<Adjusted, NotFixed>,
) -> Vec<usize> {
    if of > TRIED {
        return Vec::new();
    }
    fitting(of, fit_of)
        .filter(|(pair, squares)| !pair.contains(&told) && *squares <= most)
        .flat_map(|(pair, _)| pair)
        .collect()
}

/// Every two of so many without which all others fit, and what is left of the weighted sum of squares.
fn fitting(
    of: usize,
    fit_of: &impl Fn(&[usize]) -> Result<Adjusted, NotFixed>,
) -> impl Iterator<Item = ([usize; 2], f64)> {
    let pairs = (0..of).flat_map(move |a| (a + 1..of).map(move |b| [a, b]));
    pairs.filter_map(move |pair| {
        let kept: Vec<usize> = (0..of).filter(|i| !pair.contains(i)).collect();
        let fit = fit_of(&kept).ok()?;
        worst(&fit).is_none().then_some((pair, fit.squares))
    })
}

/// The reading that fits worst, if that is no chance.
fn worst(adjusted: &Adjusted) -> Option<(usize, f64)> {
    adjusted
        .residuals
        .iter()
        .enumerate()
        .filter_map(|(at, residual)| Some((at, residual.standardised?)))
        .max_by(|one, other| one.1.abs().total_cmp(&other.1.abs()))
        .filter(|(_, w)| w.abs() > CRITICAL)
}

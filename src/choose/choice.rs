//! Which combination to take, and why?
//!
//! Lift, change and garage are chosen; the vehicles are what they are chosen for. First counts how
//! many of the vehicles get a safe lock at all; then how high the worst of them goes, differences
//! below [`AS_HIGH_M`] left out; then the price: of two of which the one lacks nothing that
//! the other has, or lacks no more than the other, the one of which less is known to be paid. What these don't part
//! is equal, or can't be parted while a price is open.

use super::bill::{Bill, Line};
use super::cell::Cell;
use super::matrix::Matrix;
use crate::bayfile::options::{Money, Pick, Work};

/// Heights under the body that differ by less are as good as each other: the width of two fingers.
pub const AS_HIGH_M: f64 = 0.025;

/// One lift with one change in one garage, for every vehicle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// Which options; the vehicle is the first.
    pub pick: Pick,
    /// How many of the vehicles get a safe lock.
    pub served: usize,
    /// Of how many.
    pub of: usize,
    /// The least height under the body over the vehicles that get a safe lock, metres; none where
    /// none does.
    pub underbody_m: Option<f64>,
    /// The vehicle that this is.
    pub lowest: usize,
    /// The dearest bill over the vehicles that could be studied; none where a price is missing in
    /// one of them.
    pub total: Option<Money>,
    /// What it costs at least: the most that is known of one of those bills.
    pub at_least: Money,
    /// What is open in those bills, work by work: the worst of them.
    pub open: [Open; 7],
}

impl Candidate {
    /// True where the other costs less: for certain where nothing of it is open, and as far as
    /// prices are known where all that is open of it is as open here. What is surely to be paid there
    /// and may not be needed here is not.
    #[must_use]
    pub fn is_dearer_than(&self, other: &Self) -> bool {
        let works = || self.open.iter().zip(&other.open);
        // As much is known to be paid, and some work beside it that there is nothing left to pay for.
        let is_needed_here =
            |(here, there): (&Open, &Open)| *here == Open::Price && *there == Open::Nothing;
        let is_more = other.at_least < self.at_least
            || other.at_least == self.at_least && works().any(is_needed_here);
        is_more && works().all(|(here, there)| there <= here)
    }

    /// The work of which something is open.
    pub fn open_work(&self) -> impl Iterator<Item = Work> + '_ {
        let of = |work: &Work| self.open[*work as usize] > Open::Nothing;
        Work::ALL.into_iter().filter(of)
    }
}

/// What is not known of the price of one kind of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Open {
    /// It is priced, or not needed.
    Nothing,
    /// Whether it is needed is not known.
    Need,
    /// It is needed, and has no price.
    Price,
}

/// What parts the chosen from the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Because {
    /// It is the only one.
    Only,
    /// It serves more vehicles.
    Served,
    /// It goes higher.
    Higher,
    /// It costs less.
    Cheaper,
}

/// The choice.
#[derive(Debug, Clone, PartialEq)]
pub enum Choice {
    /// No combination gives any vehicle a safe lock.
    None,
    /// One is the best, and what parts it from the next best.
    One {
        /// The best.
        best: Candidate,
        /// The best of those that it was parted from last.
        next: Option<Candidate>,
        /// By what.
        because: Because,
    },
    /// Several are equal in all that is compared.
    Equal {
        /// All of them, in the order of the file.
        best: Vec<Candidate>,
        /// True where a missing price is what keeps them from being parted.
        price_is_missing: bool,
    },
}

/// Every lift with every change in every garage, in the order of the cells.
#[must_use]
pub fn candidates(matrix: &Matrix) -> Vec<Candidate> {
    matrix
        .cells
        .chunk_by(|a, b| group(a) == group(b))
        .filter_map(candidate)
        .collect()
}

const fn group(cell: &Cell) -> (usize, usize, usize) {
    (cell.pick.garage, cell.pick.change, cell.pick.lift)
}

fn candidate(cells: &[Cell]) -> Option<Candidate> {
    let first = cells.first()?;
    let heights = cells.iter().filter_map(|cell| {
        let height = cell.found()?.underbody_m()?;
        Some((cell.pick.vehicle, height))
    });
    let served = heights.clone().count();
    let lowest = heights.min_by(|a, b| a.1.total_cmp(&b.1));
    // A vehicle that could not be studied says nothing of the price for the others.
    let bills = || {
        cells
            .iter()
            .filter_map(Cell::found)
            .map(|found| &found.bill)
    };
    let totals: Option<Vec<Money>> = bills().map(Bill::total).collect();
    Some(Candidate {
        pick: first.pick,
        served,
        of: cells.len(),
        underbody_m: lowest.map(|(_, height)| height),
        lowest: lowest.map_or(0, |(vehicle, _)| vehicle),
        total: totals.and_then(|totals| totals.into_iter().max()),
        at_least: bills().map(Bill::known).max().unwrap_or_default(),
        open: Work::ALL.map(|work| {
            let of = |bill: &Bill| match bill.of(work) {
                Line::Missing => Open::Price,
                Line::NotKnown => Open::Need,
                Line::Priced(_) | Line::NotNeeded => Open::Nothing,
            };
            bills().map(of).max().unwrap_or(Open::Nothing)
        }),
    })
}

/// The choice among the combinations.
#[must_use]
pub fn choice(matrix: &Matrix) -> Choice {
    among(candidates(matrix))
}

/// The choice among some of them.
#[must_use]
pub fn among(all: Vec<Candidate>) -> Choice {
    let most = all.iter().map(|one| one.served).max().unwrap_or(0);
    if most == 0 {
        return Choice::None;
    }
    let (serving, fewer) = parted(all, |one| one.served == most);
    let highest = serving
        .iter()
        .filter_map(|one| one.underbody_m)
        .fold(f64::NEG_INFINITY, f64::max);
    let (high, lower) = parted(serving, |one| {
        one.underbody_m
            .is_some_and(|height| height >= highest - AS_HIGH_M)
    });
    let all_high = high.clone();
    let (cheapest, dearer) = parted(high, |one| {
        !all_high.iter().any(|other| one.is_dearer_than(other))
    });
    let complete = cheapest.iter().all(|one| one.total.is_some());
    let [best] = cheapest.as_slice() else {
        return Choice::Equal {
            price_is_missing: !complete,
            best: cheapest,
        };
    };
    let (because, parted_from) = if !dearer.is_empty() {
        (Because::Cheaper, dearer)
    } else if !lower.is_empty() {
        (Because::Higher, lower)
    } else if !fewer.is_empty() {
        (Because::Served, fewer)
    } else {
        (Because::Only, Vec::new())
    };
    Choice::One {
        best: *best,
        next: next(&parted_from, because),
        because,
    }
}

fn parted(
    all: Vec<Candidate>,
    keeps: impl FnMut(&Candidate) -> bool,
) -> (Vec<Candidate>, Vec<Candidate>) {
    all.into_iter().partition(keeps)
}

/// The best of those left behind, by what they were left behind for; the first of equals.
fn next(behind: &[Candidate], because: Because) -> Option<Candidate> {
    let mut best: Option<&Candidate> = None;
    for one in behind {
        let is_better = best.is_none_or(|best| match because {
            Because::Cheaper | Because::Only => one.at_least < best.at_least,
            Because::Higher => one.underbody_m > best.underbody_m,
            Because::Served => {
                (one.served, one.underbody_m.unwrap_or(0.0))
                    > (best.served, best.underbody_m.unwrap_or(0.0))
            }
        });
        if is_better {
            best = Some(one);
        }
    }
    best.copied()
}

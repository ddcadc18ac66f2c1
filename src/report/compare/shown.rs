//! Which rows are shown, and in which order?

use crate::bayfile::options::{List, Options};
use crate::choose::{Cell, Matrix};
use crate::ground::Standing;
use crate::units::{Length, parse_length};

use super::words::named;

/// In which order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sort {
    /// As the file lists them.
    #[default]
    File,
    /// The highest safe lock first, by how far the carriage goes up to it: lifts count other steps.
    Lock,
    /// The most height under the body first.
    Underbody,
    /// The least known cost first.
    Cost,
    /// The least use of a rating first.
    Load,
    /// The widest way first.
    Walking,
}

/// Which rows.
#[derive(Debug, Clone, PartialEq)]
pub enum Filter {
    /// With a safe lock.
    Safe,
    /// With full rise.
    FullRise,
    /// Where everything about the slab is shown to hold: what is not known is no pass.
    SlabHolds,
    /// Where nothing about the slab stops; much of it may not be known.
    SlabNotStopped,
    /// Where an option of this list has this in its name.
    Named(List, String),
    /// With at least this height under the body on the highest safe lock.
    Underbody(Length),
    /// That cost at most this, with no price missing.
    Cost(f64),
}

/// Why a filter can't be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FilterError;

impl std::str::FromStr for Filter {
    type Err = FilterError;

    fn from_str(text: &str) -> Result<Self, FilterError> {
        let text = text.trim();
        match text {
            "safe" => return Ok(Self::Safe),
            "full-rise" => return Ok(Self::FullRise),
            "slab-holds" => return Ok(Self::SlabHolds),
            "slab-not-stopped" => return Ok(Self::SlabNotStopped),
            _ => {}
        }
        if let Some((key, most)) = text.split_once("<=") {
            let plain: String = most.chars().filter(|c| !matches!(c, ',' | ' ')).collect();
            // What stands before the number is the currency.
            let plain = plain.trim_start_matches(|c: char| !c.is_ascii_digit() && c != '-');
            let cost = plain.parse::<f64>().ok().filter(|cost| cost.is_finite());
            let cost = cost.filter(|_| key.trim() == "cost");
            return cost.map(Self::Cost).ok_or(FilterError);
        }
        if let Some((key, height)) = text.split_once(">=") {
            let height = parse_length(height.trim()).ok();
            let height = height.filter(|_| key.trim() == "underbody");
            return height.map(Self::Underbody).ok_or(FilterError);
        }
        let (key, name) = text.split_once('=').ok_or(FilterError)?;
        let list = match key.trim() {
            "lift" => List::Lifts,
            "vehicle" => List::Vehicles,
            "change" => List::Changes,
            "garage" => List::Garages,
            _ => return Err(FilterError),
        };
        Ok(Self::Named(list, name.trim().to_lowercase()))
    }
}

impl Filter {
    fn keeps(&self, options: &Options, cell: &Cell) -> bool {
        if let Self::Named(list, part) = self {
            let name = named(options, cell.pick, *list);
            return name.is_some_and(|name| name.to_lowercase().contains(part));
        }
        let Some(found) = cell.found() else {
            return false;
        };
        match self {
            Self::Safe => found.verdict.highest_safe_lock.is_some(),
            Self::FullRise => found.verdict.full_rise,
            Self::SlabNotStopped => found.slab() != Standing::Stops,
            Self::SlabHolds => found.slab() == Standing::Passes,
            Self::Underbody(least) => found.underbody_m().is_some_and(|m| m >= least.m()),
            Self::Cost(most) => found.bill.total().is_some_and(|sum| sum.number() <= *most),
            Self::Named(..) => true,
        }
    }
}

/// Notes on what the filters leave out that a person may not expect, and on names that nothing has.
#[must_use]
pub fn notes(matrix: &Matrix, filters: &[Filter]) -> Vec<String> {
    let found = || matrix.cells.iter().filter_map(Cell::found);
    let mut notes = Vec::new();
    for filter in filters {
        let left_out = |n: usize, why: &str| {
            (n > 0).then(|| {
                let rows = if n == 1 { "row is" } else { "rows are" };
                format!("{n} {rows} left out by the filter {why}")
            })
        };
        notes.extend(match filter {
            Filter::SlabHolds => left_out(
                found()
                    .filter(|f| matches!(f.slab(), Standing::Unknown | Standing::Noted))
                    .count(),
                "as their slab is not known in full, not as it stops (slab-not-stopped keeps them)",
            ),
            Filter::Cost(most) => left_out(
                found()
                    .filter(|f| f.bill.total().is_none() && f.bill.known().number() <= *most)
                    .count(),
                "on the cost as a price is missing or not known to be needed",
            ),
            _ => None,
        });
    }
    notes
}

/// What a filter names that no option of its list has.
#[must_use]
pub fn unknown_name(options: &Options, filters: &[Filter]) -> Option<(List, String, Vec<String>)> {
    filters.iter().find_map(|filter| {
        let Filter::Named(list, part) = filter else {
            return None;
        };
        let names: Vec<String> = options
            .list(*list)
            .iter()
            .map(|choice| choice.name.clone())
            .filter(|name| !name.is_empty())
            .collect();
        let is_there = names.iter().any(|name| name.to_lowercase().contains(part));
        (!is_there).then(|| (*list, part.clone(), names))
    })
}

/// The rows to show. Rows that are alike in what they are sorted by keep the order of the file.
#[must_use]
pub fn shown<'a>(
    options: &Options,
    matrix: &'a Matrix,
    sort: Sort,
    filters: &[Filter],
) -> Vec<&'a Cell> {
    let mut cells: Vec<&Cell> = matrix
        .cells
        .iter()
        .filter(|cell| filters.iter().all(|filter| filter.keeps(options, cell)))
        .collect();
    // Smaller comes first; what is not known last.
    let key = |cell: &Cell| -> f64 {
        let found = cell.found();
        let key = match sort {
            Sort::File => Some(0.0),
            Sort::Lock => found.and_then(|found| {
                let lock = found.verdict.highest_safe_lock?;
                let found = found.verdict.locks.iter().find(|one| one.lock == lock)?;
                Some(-found.travel_m)
            }),
            Sort::Underbody => found.and_then(|f| f.underbody_m()).map(|height| -height),
            Sort::Cost => found.map(|f| f.bill.known().number()),
            Sort::Load => found.and_then(|f| f.load_use()),
            Sort::Walking => found.and_then(|f| f.walking()).map(|way| -way.width_m),
        };
        key.unwrap_or(f64::INFINITY)
    };
    // Of the same known sum what is known in full comes first.
    let is_open = |cell: &Cell| {
        sort == Sort::Cost
            && cell
                .found()
                .is_none_or(|found| found.bill.total().is_none())
    };
    cells.sort_by(|a, b| {
        let by_key = key(a).total_cmp(&key(b));
        by_key.then_with(|| is_open(a).cmp(&is_open(b)))
    });
    cells
}

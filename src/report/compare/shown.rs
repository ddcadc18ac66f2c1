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
    /// The highest safe lock first.
    Lock,
    /// The most height under the body first.
    Underbody,
    /// The cheapest first; what lacks a price comes last.
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
    /// Where the slab does not stop.
    SlabHolds,
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
            _ => {}
        }
        if let Some(height) = text.strip_prefix("underbody>=") {
            return parse_length(height)
                .map(Self::Underbody)
                .map_err(|_| FilterError);
        }
        if let Some(cost) = text.strip_prefix("cost<=") {
            let cost = cost.parse::<f64>().ok().filter(|cost| cost.is_finite());
            return cost.map(Self::Cost).ok_or(FilterError);
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
            Self::SlabHolds => found.slab() == Standing::Passes,
            Self::Underbody(least) => found.underbody_m().is_some_and(|m| m >= least.m()),
            Self::Cost(most) => found.bill.total().is_some_and(|sum| sum.number() <= *most),
            Self::Named(..) => true,
        }
    }
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
            #[allow(clippy::cast_precision_loss)] // a few dozen locks
            Sort::Lock => {
                found.and_then(|f| f.verdict.highest_safe_lock.map(|lock| -(lock as f64)))
            }
            Sort::Underbody => found.and_then(|f| f.underbody_m()).map(|height| -height),
            Sort::Cost => found.and_then(|f| f.bill.total()).map(|sum| sum.number()),
            Sort::Load => found.and_then(|f| f.load_use()),
            Sort::Walking => found.and_then(|f| f.walking()).map(|way| -way.width_m),
        };
        key.unwrap_or(f64::INFINITY)
    };
    cells.sort_by(|a, b| key(a).total_cmp(&key(b)));
    cells
}

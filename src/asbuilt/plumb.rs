//! How do the posts lean by what was read of them?

use super::COVERAGE;
use super::places::SIDES;
use crate::bay::{Bay, Measured, Plumb};
use crate::diagnostics::{Diagnostic, Severity};
use crate::units::{Rounding, both};

/// A lean in one direction: rise of the top off the foot over the height, positive toward +x or +y.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lean {
    /// Its slope: the weighted mean where it was read more than once.
    pub slope: f64,
    /// One standard deviation of the slope: of the best reading, since the same line read again need
    /// not be better.
    pub sd: f64,
    /// How often it was read.
    pub reads: usize,
    /// True when two readings of it differ by more than their \u{b1} together.
    pub clash: bool,
}

/// The leans of the posts: left then right, each across and along.
#[must_use]
pub fn leans(measured: &Measured) -> [[Option<Lean>; 2]; 2] {
    SIDES.map(|side| {
        [true, false].map(|across| {
            let read: Vec<(f64, f64)> = measured
                .plumb
                .iter()
                .filter(|one| one.side == side && one.toward.is_across() == across)
                .map(slope)
                .collect();
            mean(&read)
        })
    })
}

/// Slope and its ±.
fn slope(read: &Plumb) -> (f64, f64) {
    let over = read.over.m();
    (
        read.toward.sign() * read.out.m() / over,
        read.tolerance.m() / over,
    )
}

fn mean(read: &[(f64, f64)]) -> Option<Lean> {
    let (value, best, clash) = repeated(read)?;
    Some(Lean {
        slope: value,
        sd: best / COVERAGE,
        reads: read.len(),
        clash,
    })
}

/// The same thing read more than once, as value and ±: its weighted mean, the best ±, and whether two
/// of them differ by more than their ± together. None of no readings.
pub(super) fn repeated(read: &[(f64, f64)]) -> Option<(f64, f64, bool)> {
    let (&(_, first), rest) = read.split_first()?;
    let best = rest.iter().fold(first, |best, one| best.min(one.1));
    let (mut sum, mut weights) = (0.0, 0.0);
    for (value, within) in read {
        let weight = 1.0 / (within * within);
        sum += weight * value;
        weights += weight;
    }
    let clash = read.iter().enumerate().any(|(i, a)| {
        // A hair for what was converted to metres.
        read[..i]
            .iter()
            .any(|b| (a.0 - b.0).abs() > a.1 + b.1 + 1e-9)
    });
    Some((sum / weights, best, clash))
}

/// Readings over more than there is of the column.
pub(super) fn longer_than_the_column(bay: &Bay, measured: &Measured) -> Vec<Diagnostic> {
    let (high, units) = (bay.lift.column.height, bay.units);
    let faults = measured
        .plumb
        .iter()
        .filter(|one| one.over.m() > high.m() + 1e-6);
    faults
        .map(|one| Diagnostic {
            severity: Severity::Error,
            message: format!(
                "a column of {} can't be plumbed over {}",
                both(high, units, Rounding::Nearest),
                both(one.over, units, Rounding::Nearest)
            ),
            place: one.over_place.clone(),
            help: Some(
                "write the height between the two ends of the reading, and check its unit; a reading \
                 over too great a height makes the lean look small"
                    .into(),
            ),
        })
        .collect()
}

//! Which reading does not fit the others, and of which can't that be said?
//!
//! Data snooping after W. Baarda, "A testing procedure for use in geodetic networks", Netherlands
//! Geodetic Commission 1968: the residual over its own standard deviation against 3.29, which one
//! good reading in a thousand goes past (from memory). The worst is left out, and the rest is fitted
//! again, until none goes past it.

use super::adjust::{Adjusted, NotFixed, Observed, adjust};
use super::places::Planned;
use super::{COVERAGE, WEAK_M};
use crate::bay::Measured;

/// Past this, a standardised residual is no chance.
const CRITICAL: f64 = 3.29;

/// A reading whose standardised residual comes this near to the worst one is as suspect.
const AS_SUSPECT: f64 = 0.98;

/// How a reading goes with the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// It fits.
    Fits,
    /// Nothing else checks it: a slip would not show.
    Unchecked,
    /// It does not fit; it was left out.
    Misfit,
    /// It fits or not as another does: one of them is wrong, and these readings can't say which.
    Suspect,
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
    /// Its standardised residual, where it is checked: of a reading left out, when it was.
    pub standardised: Option<f64>,
    /// Its redundancy number.
    pub checked: f64,
    /// How it goes with the others.
    pub state: State,
}

/// The adjustment of what fits, and every reading.
pub(super) struct Found {
    pub(super) adjusted: Adjusted,
    pub(super) readings: Vec<Checked>,
}

pub(super) fn fit(planned: &Planned, measured: &Measured) -> Result<Found, NotFixed> {
    let all: Vec<Observed> = measured
        .tape
        .iter()
        .map(|taken| Observed {
            value: taken.reading.m(),
            sigma: taken.tolerance.m() / COVERAGE,
        })
        .collect();
    let fit_of = |kept: &[usize]| {
        let observed: Vec<Observed> = kept.iter().map(|&i| all[i]).collect();
        adjust(&planned.start(), &observed, WEAK_M, |unknowns| {
            kept.iter()
                .map(|&i| planned.row(measured.tape[i].over, unknowns))
                .collect()
        })
    };
    let mut kept: Vec<usize> = (0..all.len()).collect();
    let mut adjusted = fit_of(&kept)?;
    let mut left_out: Vec<(usize, f64, f64)> = Vec::new();
    let mut suspects: Vec<usize> = Vec::new();
    while let Some((at, worst)) = worst(&adjusted) {
        let near = |w: Option<f64>| w.is_some_and(|w| w.abs() >= AS_SUSPECT * worst.abs());
        let alike: Vec<usize> = (0..kept.len())
            .filter(|&i| i != at && near(adjusted.residuals[i].standardised))
            .map(|i| kept[i])
            .collect();
        let mut without = kept.clone();
        let out = without.remove(at);
        // Where the rest no longer fixes the posts, the fit stays as it is and the reading is told.
        let Ok(fewer) = fit_of(&without) else {
            left_out.push((out, worst, adjusted.residuals[at].checked));
            suspects.extend(alike);
            break;
        };
        left_out.push((out, worst, adjusted.residuals[at].checked));
        suspects.extend(alike);
        kept = without;
        adjusted = fewer;
    }
    let readings = measured
        .tape
        .iter()
        .enumerate()
        .map(|(i, taken)| {
            let out = left_out.iter().find(|(at, ..)| *at == i);
            let inside = kept.iter().position(|&at| at == i);
            let residual = inside.map(|at| adjusted.residuals[at]);
            let (standardised, checked) = match (out, residual) {
                (Some((_, w, share)), _) => (Some(*w), *share),
                (None, Some(residual)) => (residual.standardised, residual.checked),
                (None, None) => (None, 0.0),
            };
            Checked {
                reading_m: taken.reading.m(),
                tolerance_m: taken.tolerance.m(),
                fitted_m: planned.row(taken.over, &adjusted.unknowns).computed,
                planned_m: planned.row(taken.over, &planned.start()).computed,
                standardised,
                checked,
                state: if out.is_some() {
                    State::Misfit
                } else if suspects.contains(&i) {
                    State::Suspect
                } else if standardised.is_none() {
                    State::Unchecked
                } else {
                    State::Fits
                },
            }
        })
        .collect();
    Ok(Found { adjusted, readings })
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

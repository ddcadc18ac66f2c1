//! What comes of every combination?

use std::collections::{HashMap, HashSet};
use std::sync::Arc;

use rayon::prelude::*;

use super::bill::bill;
use super::cell::{Cell, Found, Outcome};
use super::inverse::inverse;
use crate::bay::Bay;
use crate::bayfile::Read;
use crate::bayfile::options::{Options, Pick};
use crate::bayfile::presets::PresetSource;
use crate::clearance::{Fixtures, verdict_on};
use crate::diagnostics::{Diagnostic, Source};
use crate::ground::Date;

/// What is asked of every combination.
#[derive(Debug, Clone, Copy, Default)]
pub struct Asked {
    /// The day that ages are counted to.
    pub on: Option<Date>,
    /// Also how high the ceiling would have to be, and how tall the vehicle may be.
    pub inverse: bool,
}

/// Every combination, in the order of [`Options::picks`].
#[derive(Debug)]
pub struct Matrix {
    /// The combinations.
    pub cells: Vec<Cell>,
    /// Every text that went in beside the file of options: bay files, then presets, each once.
    pub texts: Vec<Arc<Source>>,
}

/// A combination with the bay that it makes, or what is wrong in it.
pub type Made = (Pick, Result<Read, Vec<Diagnostic>>);

/// The bays of every combination, read on all cores, in the order of [`Options::picks`].
#[must_use]
pub fn bays(options: &Options, presets: &(dyn PresetSource + Sync)) -> Vec<Made> {
    options
        .picks()
        .into_par_iter()
        .map(|pick| (pick, options.bay(pick, presets)))
        .collect()
}

/// Every text once, in the order in which the combinations meet it.
fn texts(options: &Options, made: &[Made]) -> Vec<Arc<Source>> {
    let mut texts: Vec<Arc<Source>> = options.sources.iter().skip(1).cloned().collect();
    let mut seen: HashSet<Arc<Source>> = options.sources.iter().cloned().collect();
    let read = made.iter().filter_map(|(_, read)| read.as_ref().ok());
    for source in read.flat_map(|read| &read.sources) {
        if seen.insert(source.clone()) {
            texts.push(source.clone());
        }
    }
    texts
}

/// Studies every combination on all cores. The same file gives the same cells on every run, each
/// the same as its bay gives alone.
///
/// `tick` is called after each combination, from any thread.
#[must_use]
pub fn matrix(
    options: &Options,
    presets: &(dyn PresetSource + Sync),
    asked: Asked,
    tick: &(dyn Fn() + Sync),
) -> Matrix {
    let made = bays(options, presets);
    let texts = texts(options, &made);
    let cells = studies(options, made, asked, tick);
    Matrix { cells, texts }
}

/// The studies of bays that were read, on all cores, in their order.
#[must_use]
pub fn studies(
    options: &Options,
    made: Vec<Made>,
    asked: Asked,
    tick: &(dyn Fn() + Sync),
) -> Vec<Cell> {
    // What does not hang on the vehicle is made once for each lift with a change in a garage: for
    // its first bay, and used for every bay that has the same lift in the same room.
    let group = |pick: Pick| (pick.garage, pick.change, pick.lift);
    let mut firsts: Vec<(Pick, &Bay)> = Vec::new();
    for (pick, read) in &made {
        if let Ok(read) = read
            && firsts
                .last()
                .is_none_or(|(last, _)| group(*last) != group(*pick))
        {
            firsts.push((*pick, &read.bay));
        }
    }
    let fixtures: HashMap<_, Fixtures> = firsts
        .into_par_iter()
        .map(|(pick, bay)| (group(pick), Fixtures::new(bay)))
        .collect();
    made.into_par_iter()
        .map(|(pick, read)| {
            let outcome = match read {
                Ok(read) => studied(options, pick, read.bay, fixtures.get(&group(pick)), asked),
                Err(faults) => Outcome::Broken(faults),
            };
            tick();
            Cell { pick, outcome }
        })
        .collect()
}

fn studied(
    options: &Options,
    pick: Pick,
    bay: Bay,
    fixtures: Option<&Fixtures>,
    asked: Asked,
) -> Outcome {
    let verdict = match fixtures {
        Some(fixtures) => fixtures.verdict(&bay, asked.on),
        None => verdict_on(&bay, asked.on),
    };
    let verdict = match verdict {
        Ok(verdict) => verdict,
        Err(error) => return Outcome::NotStudied(error.to_string()),
    };
    let bill = bill(options, pick, &bay, &verdict);
    // Of a bay that is not measured through no ceiling and no roof does.
    let is_told = asked.inverse && verdict.not_measured().is_empty();
    let inverse = is_told.then(|| inverse(&bay, &verdict));
    Outcome::Found(Box::new(Found {
        bay,
        verdict,
        bill,
        inverse,
    }))
}

impl Matrix {
    /// Every fault, each told once, in the order of the cells.
    #[must_use]
    pub fn faults(&self) -> Vec<&Diagnostic> {
        let mut told: Vec<&Diagnostic> = Vec::new();
        for cell in &self.cells {
            if let Outcome::Broken(faults) = &cell.outcome {
                for fault in faults {
                    if !told.contains(&fault) {
                        told.push(fault);
                    }
                }
            }
        }
        told
    }
}

//! The comparison for a program.

use schemars::{JsonSchema, Schema, schema_for};
use serde::Serialize;

use super::Comparison;
use super::says::says;
use super::words::{broken, limited_by, named, show, slab};
use crate::bayfile::options::{List, Work};
use crate::choose::bill::Line;
use crate::choose::choice::{Choice, choice};
use crate::choose::inverse::Anyway;
use crate::choose::{Arms, Cell, Found, Outcome};
use crate::clearance::Limit;
use crate::report::CAUTIONS;
use crate::report::reasons::reasons;

pub(super) use crate::report::json::number::{down, up};

/// The version of the layout.
pub(super) const SCHEMA_VERSION: u32 = 1;

/// The comparison of `bayrise compare --format json`. Lengths are metres, rounded to six decimals
/// against the vehicle; null stands for what is not known or has no price.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CompareReport {
    /// The version of this layout: 1.
    pub schema_version: u32,
    /// What the comparison is called.
    pub title: String,
    /// Sixteen hex digits that stand for the texts that went in.
    pub input_fingerprint: String,
    /// The day that ages are counted to: the comparison holds for none before it. Null where nothing
    /// that is said hangs on a day.
    pub ages_counted_to: Option<String>,
    /// The choice and why, in words.
    pub says: String,
    /// The combinations that are chosen, the vehicle left out; several where they are equal.
    pub chosen: Vec<ChosenReport>,
    /// What stands before amounts of money.
    pub currency: String,
    /// The combinations shown.
    pub cells: Vec<CellReport>,
    /// Faults in options, each once.
    pub faults: Vec<FaultReport>,
    /// What governs and what must be minded.
    pub cautions: Vec<String>,
}

/// A chosen combination.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ChosenReport {
    /// The garage; null where none is listed.
    pub garage: Option<String>,
    /// The change; likewise.
    pub change: Option<String>,
    /// The lift; likewise.
    pub lift: Option<String>,
    /// How many of the vehicles get a safe lock.
    pub vehicles_served: usize,
    /// What it costs in all; null where a price is missing.
    pub price_in_all: Option<f64>,
}

/// One combination.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CellReport {
    /// The garage; null where none is listed.
    pub garage: Option<String>,
    /// The change; likewise.
    pub change: Option<String>,
    /// The lift; likewise.
    pub lift: Option<String>,
    /// The vehicle; likewise.
    pub vehicle: Option<String>,
    /// studied, broken, `not_studied`.
    pub outcome: &'static str,
    /// Why it was not studied, or what is wrong in it.
    pub why: Option<String>,
    /// The faults of a broken one.
    pub faults: Vec<FaultReport>,
    /// What was found; null unless it was studied.
    pub found: Option<FoundReport>,
}

/// What was found of a combination.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FoundReport {
    /// The highest safe lock.
    pub highest_safe_lock: Option<usize>,
    /// The highest clear lock.
    pub highest_clear_lock: Option<usize>,
    /// How many locks there are.
    pub locks: usize,
    /// Height under the body on the highest safe lock.
    pub underbody_m: Option<f64>,
    /// True when the highest lock that can be released is safe.
    pub full_rise: bool,
    /// What limits the rise; where no lock is safe, why.
    pub limited_by: String,
    /// The same as one word of `check`'s report: pair, bar, travel, withheld, undecided.
    pub limit: &'static str,
    /// Why no lock is called safe, reason by reason.
    pub withheld: Vec<String>,
    /// What of the bay is not measured; empty where nothing is listed. While anything is, nothing here
    /// passes.
    pub not_measured: Vec<String>,
    /// reach, short, stop, `not_known`.
    pub arms: &'static str,
    /// What the worst arm falls short.
    pub arms_short_m: Option<f64>,
    /// The largest share of a rating that is used.
    pub load_use: Option<f64>,
    /// holds, not known, stop.
    pub slab: String,
    /// The wider way along the vehicle on its tyres.
    pub walking_m: Option<f64>,
    /// What it costs; null where the file gives no price.
    pub cost: Option<CostReport>,
    /// The answers the other way round; null where they were not asked for.
    pub inverse: Option<InverseReport>,
}

/// What a combination costs.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CostReport {
    /// Work by work.
    pub lines: Vec<LineReport>,
    /// The sum of what is priced.
    pub known: f64,
    /// The sum; null where something is missing.
    pub in_all: Option<f64>,
}

/// One kind of work.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LineReport {
    /// Which.
    pub work: &'static str,
    /// priced, missing, `not_known`, `not_needed`.
    pub state: &'static str,
    /// The price.
    pub price: Option<f64>,
}

/// The answers the other way round.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct InverseReport {
    /// The least flat ceiling for full rise.
    pub full_rise_ceiling_m: Option<f64>,
    /// The tallest roof over the highest lift point for full rise.
    pub full_rise_roof_m: Option<f64>,
    /// The least flat ceiling for each lock, lowest first.
    pub ceiling_m: Vec<Option<f64>>,
    /// The tallest roof for each lock.
    pub roof_m: Vec<Option<f64>>,
    /// What no ceiling cures: `does_not_stand` (every ceiling is null), withheld (the vehicle can't
    /// be driven in or is tight as parked); null where there is nothing.
    pub whatever_ceiling: Option<&'static str>,
    /// What no roof cures; likewise.
    pub whatever_roof: Option<&'static str>,
}

/// A fault.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FaultReport {
    /// The file.
    pub file: Option<String>,
    /// The line, from 1.
    pub line: Option<usize>,
    /// The column, from 1.
    pub column: Option<usize>,
    /// What is wrong.
    pub message: String,
    /// What to write instead.
    pub help: Option<String>,
}

/// The JSON Schema of [`CompareReport`].
#[must_use]
pub fn schema() -> Schema {
    schema_for!(CompareReport)
}

impl CompareReport {
    /// From a finished comparison.
    #[must_use]
    pub fn new(comparison: &Comparison<'_>) -> Self {
        let (options, matrix) = (comparison.options, comparison.matrix);
        let chosen = match choice(matrix) {
            Choice::None => Vec::new(),
            Choice::One { best, .. } => vec![best],
            Choice::Equal { best, .. } => best,
        };
        Self {
            schema_version: SCHEMA_VERSION,
            title: options.title.clone(),
            input_fingerprint: comparison.fingerprint.into(),
            ages_counted_to: comparison.day.counts.then(|| comparison.day.on.to_string()),
            says: says(options, matrix),
            chosen: chosen
                .iter()
                .map(|one| ChosenReport {
                    garage: named(options, one.pick, List::Garages),
                    change: named(options, one.pick, List::Changes),
                    lift: named(options, one.pick, List::Lifts),
                    vehicles_served: one.served,
                    price_in_all: one.total.map(|total| total.number()),
                })
                .collect(),
            currency: options.currency.clone(),
            cells: comparison
                .shown
                .iter()
                .map(|one| cell(comparison, one))
                .collect(),
            faults: matrix.faults().into_iter().map(fault).collect(),
            cautions: CAUTIONS.map(Into::into).into(),
        }
    }
}

fn fault(fault: &crate::diagnostics::Diagnostic) -> FaultReport {
    let at = fault.place.as_ref().map(|place| place.line_column());
    FaultReport {
        file: fault.place.as_ref().map(|place| place.source.name.clone()),
        line: at.map(|(line, _)| line),
        column: at.map(|(_, column)| column),
        message: fault.message.clone(),
        help: fault.help.clone(),
    }
}

fn cell(comparison: &Comparison<'_>, cell: &Cell) -> CellReport {
    let options = comparison.options;
    let (outcome, why) = match &cell.outcome {
        Outcome::Found(_) => ("studied", None),
        Outcome::Broken(faults) => ("broken", Some(broken(faults))),
        Outcome::NotStudied(why) => ("not_studied", Some(why.clone())),
    };
    let faults = match &cell.outcome {
        Outcome::Broken(faults) => faults.iter().map(fault).collect(),
        _ => Vec::new(),
    };
    CellReport {
        garage: named(options, cell.pick, List::Garages),
        change: named(options, cell.pick, List::Changes),
        lift: named(options, cell.pick, List::Lifts),
        vehicle: named(options, cell.pick, List::Vehicles),
        outcome,
        why,
        faults,
        found: cell.found().map(found),
    }
}

fn found(found: &Found) -> FoundReport {
    let verdict = &found.verdict;
    let (arms, short) = match found.arms() {
        Arms::Reach => ("reach", None),
        Arms::Short(short) => ("short", up(short)),
        Arms::Stopped => ("stop", None),
        Arms::NotKnown => ("not_known", None),
    };
    let all = |values: &[Option<f64>], round: fn(f64) -> Option<f64>| {
        values.iter().map(|value| value.and_then(round)).collect()
    };
    FoundReport {
        highest_safe_lock: verdict.highest_safe_lock,
        highest_clear_lock: verdict.highest_clear_lock,
        locks: verdict.locks.len(),
        underbody_m: found.underbody_m().and_then(down),
        full_rise: verdict.full_rise,
        limited_by: limited_by(found),
        limit: match verdict.limit {
            Limit::Pair(_) => "pair",
            Limit::Bar(_) => "bar",
            Limit::Travel { .. } => "travel",
            Limit::Withheld => "withheld",
            Limit::Undecided(_) => "undecided",
        },
        withheld: reasons(&verdict.withheld, show(found))
            .into_iter()
            .map(|reason| reason.says)
            .collect(),
        not_measured: verdict.not_measured().to_vec(),
        arms,
        arms_short_m: short,
        load_use: found.load_use().and_then(up),
        slab: slab(&found.slab()).to_lowercase(),
        walking_m: found.walking().and_then(|way| down(way.width_m)),
        cost: (!found.bill.is_unasked).then(|| cost(found)),
        inverse: found.inverse.as_ref().map(|inverse| InverseReport {
            full_rise_ceiling_m: inverse.full_rise_ceiling_m().and_then(up),
            full_rise_roof_m: inverse.full_rise_roof_m().and_then(down),
            ceiling_m: all(&inverse.ceiling_m, up),
            roof_m: all(&inverse.roof_m, down),
            whatever_ceiling: anyway(inverse.whatever_ceiling),
            whatever_roof: anyway(inverse.whatever_roof),
        }),
    }
}

const fn anyway(of: Anyway) -> Option<&'static str> {
    if of.does_not_stand {
        Some("does_not_stand")
    } else if of.withheld {
        Some("withheld")
    } else {
        None
    }
}

fn cost(found: &Found) -> CostReport {
    let bill = &found.bill;
    CostReport {
        lines: Work::ALL
            .into_iter()
            .map(|work| {
                let (state, price) = match bill.of(work) {
                    Line::Priced(amount) => ("priced", Some(amount.number())),
                    Line::Missing => ("missing", None),
                    Line::NotKnown => ("not_known", None),
                    Line::NotNeeded => ("not_needed", None),
                };
                LineReport {
                    work: work.field(),
                    state,
                    price,
                }
            })
            .collect(),
        known: bill.known().number(),
        in_all: bill.total().map(|total| total.number()),
    }
}

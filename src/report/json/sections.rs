//! The sections of the JSON report: loads, slab, anchors, doors, power.

use schemars::JsonSchema;
use serde::Serialize;

use super::number::{down, nearest, up};
use super::words::{BoundWord, StandingWord, TopicWord};
use crate::ground::{Bound, Figure, Quantity, Section, Standing};
use crate::report::Show;
use crate::report::section::said;
use crate::units::Rounding;

/// One topic beside clearance.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionReport {
    /// What it is about.
    pub topic: TopicWord,
    /// The worst of its figures.
    pub standing: StandingWord,
    /// The plain sentence.
    pub says: String,
    /// Who governs, where this is a screening and no design; null for plain arithmetic.
    pub governs: Option<String>,
    /// The figures it stands on.
    pub figures: Vec<FigureReport>,
    /// What else must be minded.
    pub notes: Vec<String>,
}

/// One figure.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FigureReport {
    /// Its name, unique in its section.
    pub id: String,
    /// What it is.
    pub what: String,
    /// What was found, a number in `unit`; null where it is none or not known.
    pub value: Option<f64>,
    /// What was found, where it is no number: words, or a day as year-month-day.
    pub text: Option<String>,
    /// The SI unit of value and limit; null for plain numbers and words.
    pub unit: Option<String>,
    /// Which side of the limit it must lie on; null where nothing is asked.
    pub bound: Option<BoundWord>,
    /// What is asked, in `unit`.
    pub limit: Option<f64>,
    /// What is asked, where it is no number.
    pub limit_text: Option<String>,
    /// How it stands.
    pub standing: StandingWord,
    /// Document, edition and section, or whose word it is.
    pub source: Option<String>,
    /// What else must be known of it.
    pub note: Option<String>,
    /// What would cure a stop, or how to get what is not known.
    pub cure: Option<String>,
}

pub(super) fn section(section: &Section, show: Show) -> SectionReport {
    SectionReport {
        topic: section.topic.into(),
        standing: section.standing().into(),
        says: said(&section.lead, show),
        governs: section.governs.map(Into::into),
        figures: section.figures.iter().map(|f| figure(f, show)).collect(),
        notes: section.notes.iter().map(|note| said(note, show)).collect(),
    }
}

fn figure(figure: &Figure, show: Show) -> FigureReport {
    let (found, asked) = match &figure.limit {
        Some((Bound::AtMost, _)) => (Rounding::Up, Rounding::Down),
        Some((Bound::AtLeast, _)) => (Rounding::Down, Rounding::Up),
        None => (figure.rounding, Rounding::Nearest),
    };
    let limit = figure.limit.as_ref().map(|(_, limit)| limit);
    let (value, text) = parts(figure.found.as_ref(), found);
    let (limit_value, limit_text) = parts(limit, asked);
    let unit = figure.found.as_ref().or(limit).and_then(Quantity::unit);
    FigureReport {
        id: figure.id.clone().into_owned(),
        what: figure.what.clone().into_owned(),
        value,
        text,
        unit: unit.map(Into::into),
        bound: figure.limit.as_ref().map(|(bound, _)| (*bound).into()),
        limit: limit_value,
        limit_text,
        standing: figure.standing.into(),
        source: figure.source.clone().map(Into::into),
        note: figure.note.as_ref().map(|note| said(note, show)),
        cure: match figure.standing {
            Standing::Unknown | Standing::Stops => figure.cure.clone().map(Into::into),
            Standing::Noted | Standing::Passes => None,
        },
    }
}

/// The number, or the words, of a quantity.
fn parts(quantity: Option<&Quantity>, rounding: Rounding) -> (Option<f64>, Option<String>) {
    match quantity {
        None => (None, None),
        Some(Quantity::Words(words)) => (None, Some(words.clone())),
        Some(Quantity::Day(day)) => (None, Some(day.to_string())),
        Some(quantity) => {
            let round = match rounding {
                Rounding::Nearest => nearest,
                Rounding::Down => down,
                Rounding::Up => up,
            };
            (quantity.number().and_then(round), None)
        }
    }
}

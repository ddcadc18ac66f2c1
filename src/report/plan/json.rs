//! The page before buying, for a program.

use serde::Serialize;

use super::text::summary;
use super::{Item, Plan, State};
use crate::report::{CAUTIONS, Report};

/// The version of the layout.
pub const SCHEMA_VERSION: u32 = 1;

/// The page of `bayrise plan --format json`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanReport {
    /// The version of this layout: 1.
    pub schema_version: u32,
    /// What the bay is called.
    pub title: String,
    /// Sixteen hex digits that stand for the texts that went in.
    pub input_fingerprint: String,
    /// The day that ages are counted to: the page holds for none before it. Null where nothing that is
    /// said hangs on a day.
    pub ages_counted_to: Option<String>,
    /// The sentence on top.
    pub says: String,
    /// True when nothing stops and nothing is unknown.
    pub is_go: bool,
    /// What of the file is not measured; while anything is, no item is a go and every figure is as
    /// filed.
    pub not_measured: Vec<String>,
    /// In the order a person meets them.
    pub items: Vec<ItemReport>,
    /// What governs and what must be minded.
    pub cautions: Vec<String>,
}

/// One line of the page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ItemReport {
    /// Where it belongs.
    pub step: &'static str,
    /// go, stop, unknown or noted.
    pub state: &'static str,
    /// What it is.
    pub what: String,
    /// Its figure.
    pub figure: String,
    /// Where it comes from.
    pub source: String,
    /// What to do.
    pub to_do: String,
}

impl PlanReport {
    /// From a finished page.
    #[must_use]
    pub fn new(report: &Report<'_>, plan: &Plan) -> Self {
        Self {
            schema_version: SCHEMA_VERSION,
            title: report.bay.title.clone(),
            input_fingerprint: report.fingerprint.into(),
            ages_counted_to: report.counted_to(),
            says: summary(plan),
            is_go: plan.is_go(),
            not_measured: plan.not_measured.clone(),
            items: plan.items.iter().map(item).collect(),
            cautions: CAUTIONS.map(Into::into).into(),
        }
    }
}

fn item(item: &Item) -> ItemReport {
    ItemReport {
        step: item.step.heading(),
        state: match item.state {
            State::Go => "go",
            State::Stop => "stop",
            State::Unknown => "unknown",
            State::Noted => "noted",
        },
        what: item.what.clone(),
        figure: item.figure.clone(),
        source: item.source.clone(),
        to_do: item.to_do.clone(),
    }
}

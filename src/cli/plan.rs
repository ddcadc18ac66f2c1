//! `bayrise plan`: what is go, stop or still not known before buying.

use std::path::PathBuf;

use super::arguments::Format;
use super::check::to_json;
use super::load::load;
use super::terminal::{look, print};
use super::{Exit, Failure};
use crate::clearance::study_on;
use crate::ground::Date;
use crate::report::Report;
use crate::report::plan::{Plan, json::PlanReport, render};

/// What `plan` is to do.
#[derive(Debug)]
pub(super) struct PlanOptions {
    pub(super) file: PathBuf,
    pub(super) format: Format,
    /// The day that ages are counted to.
    pub(super) on: Date,
}

pub(super) fn run(options: &PlanOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    let study = study_on(&loaded.bay, Some(options.on)).map_err(|error| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    })?;
    let report = Report {
        bay: &loaded.bay,
        study: &study,
        warnings: &loaded.warnings,
        needs: &[],
        fingerprint: &loaded.fingerprint,
    };
    let plan = Plan::new(&report);
    let shown = match options.format {
        Format::Text => render(&report, &plan, look()),
        Format::Json => to_json(&PlanReport::new(&report, &plan))?,
    };
    print(&shown)?;
    Ok(if plan.is_go() { Exit::Met } else { Exit::Unmet })
}

//! `bayrise plan`: what is go, stop or still not known before buying.

use std::path::PathBuf;

use super::arguments::Format;
use super::check::to_json;
use super::files::can_be_written;
use super::load::load;
use super::options::Day;
use super::sheets::write;
use super::terminal::{look, print};
use super::{Exit, Failure};
use crate::clearance::study_on;
use crate::drawing::pages::PageFormat;
use crate::drawing::plan_page::plan_page;
use crate::drawing::sheet::Paper;
use crate::report::Report;
use crate::report::plan::{Plan, json::PlanReport, render};

/// What `plan` is to do.
#[derive(Debug)]
pub(super) struct PlanOptions {
    pub(super) file: PathBuf,
    pub(super) format: Format,
    /// The printed page, and how it is written.
    pub(super) page: Option<(PathBuf, PageFormat)>,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

pub(super) fn run(options: &PlanOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    let study = study_on(&loaded.bay, Some(options.day.on)).map_err(|error| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    })?;
    let day = options.day.of(&loaded.bay);
    let report = Report {
        bay: &loaded.bay,
        study: &study,
        warnings: &loaded.warnings,
        needs: &[],
        fingerprint: &loaded.fingerprint(Some(day)),
        day: Some(day),
    };
    let plan = Plan::new(&report);
    let shown = match options.format {
        Format::Text => render(&report, &plan, look()),
        Format::Json => to_json(&PlanReport::new(&report, &plan))?,
    };
    if let Some((out, format)) = &options.page {
        can_be_written(out, &loaded.inputs)?;
        let paper = Paper::usual(loaded.bay.units);
        let page = plan_page(&report, &plan, paper).ok_or_else(|| {
            Failure::new(
                format!("--page: no room for all of it on one {} page", paper.name()),
                "shorten what has long names in the bay file; the text has it all",
            )
        })?;
        write(out, &loaded.inputs, *format, &loaded.bay.title, &[page])?;
    }
    print(&shown)?;
    Ok(if plan.is_go() { Exit::Met } else { Exit::Unmet })
}

//! `bayrise report`: the page for a customer, in one file.

use std::path::PathBuf;

use super::files::{can_be_written, replace};
use super::load::{Loaded, load};
use super::options::Day;
use super::sheets::{not_studied, wrote};
use super::terminal::print;
use super::{Exit, Failure};
use crate::clearance::Probe;
use crate::drawing::page::{PageOrder, page};
use crate::report::{Report, Sayings};

/// What `report` is to do.
#[derive(Debug)]
pub(super) struct ReportOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

pub(super) fn run(options: &ReportOptions) -> Result<Exit, Failure> {
    print(&written(options, &load(&options.file)?)?)?;
    Ok(Exit::Met)
}

/// Writes it; what is said of it comes back.
pub(super) fn written(options: &ReportOptions, loaded: &Loaded) -> Result<String, Failure> {
    can_be_written(&options.out, &loaded.inputs)?;
    let failed = |error: &dyn std::fmt::Display| not_studied(&options.file, error);
    let (study, mut probe) =
        Probe::with_study_on(&loaded.bay, Some(options.day.on)).map_err(|error| failed(&error))?;
    let day = options.day.of(&loaded.bay);
    let order = PageOrder {
        report: Report {
            bay: &loaded.bay,
            study: &study,
            warnings: &loaded.warnings,
            needs: &[],
            fingerprint: &loaded.fingerprint(Some(day)),
            day: Some(day),
        },
        day,
        sources: &loaded.sources,
    };
    let text = page(&order, &mut probe).map_err(|error| failed(&error))?;
    replace(&options.out, text.as_bytes())?;
    let said = Sayings::of(&loaded.bay, &study).safe_lock();
    Ok(wrote(&options.out, &format!("a page to hand on, {said}")))
}

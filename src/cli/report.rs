//! `bayrise report`: the page for a customer, in one file.

use std::path::{Path, PathBuf};

use super::files::{can_be_written, replace};
use super::load::load;
use super::terminal::print;
use super::{Exit, Failure};
use crate::clearance::Probe;
use crate::drawing::page::{PageOrder, page};
use crate::ground::Date;
use crate::report::{Report, Sayings};

/// What `report` is to do.
#[derive(Debug)]
pub(super) struct ReportOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    /// The day that ages are counted to.
    pub(super) on: Date,
}

pub(super) fn run(options: &ReportOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    can_be_written(&options.out)?;
    let failed = |error: String| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    };
    let (study, mut probe) = Probe::with_study_on(&loaded.bay, Some(options.on))
        .map_err(|error| failed(error.to_string()))?;
    let order = PageOrder {
        report: Report {
            bay: &loaded.bay,
            study: &study,
            warnings: &loaded.warnings,
            needs: &[],
            fingerprint: &loaded.fingerprint,
        },
        on: options.on,
        sources: &loaded.sources,
    };
    let text = page(&order, &mut probe).map_err(|error| failed(error.to_string()))?;
    replace(&options.out, text.as_bytes())?;
    let said = Sayings::of(&loaded.bay, &study).safe_lock();
    print(&wrote(&options.out, &format!("a page to hand on, {said}")))?;
    Ok(Exit::Met)
}

/// What was written where, on a line.
pub(super) fn wrote(path: &Path, what: &str) -> String {
    let name = path.display().to_string();
    let name: String = name.chars().filter(|c| !c.is_control()).collect();
    format!("{name}: {what}\n")
}

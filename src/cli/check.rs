//! `bayrise check`: study a bay and print the report.

use std::path::PathBuf;

use super::arguments::Format;
use super::load::load;
use super::options::CheckOptions;
use super::terminal::{look, note, print};
use super::{Exit, Failure};
use crate::clearance::study;
use crate::report::{NeedFinding, Report, json, judge, text};

pub(super) fn run(options: &CheckOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    let study = study(&loaded.bay).map_err(|error| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    })?;
    let needs: Vec<NeedFinding> = options
        .needs
        .iter()
        .map(|need| judge(&study, *need))
        .collect();
    let report = Report {
        bay: &loaded.bay,
        study: &study,
        warnings: &loaded.warnings,
        needs: &needs,
        fingerprint: &loaded.fingerprint,
    };
    let shown = match options.format {
        Format::Text => text::render(&report, look()),
        Format::Json => to_json(&json::CheckReport::new(&report))?,
    };
    print(&shown)?;
    let met = study.highest_safe_lock.is_some() && needs.iter().all(NeedFinding::is_met);
    Ok(if met { Exit::Met } else { Exit::Unmet })
}

/// A bay file without a command. The window is not part of this build, so the verdict is all.
pub(super) fn in_place_of_window(file: PathBuf) -> Result<Exit, Failure> {
    let exit = run(&CheckOptions {
        file,
        format: Format::Text,
        needs: Vec::new(),
    })?;
    note("This build has no window: the text above is the full verdict.");
    Ok(exit)
}

/// A value as indented JSON with a line break at its end.
pub(super) fn to_json(value: &impl serde::Serialize) -> Result<String, Failure> {
    serde_json::to_string_pretty(value)
        .map(|text| text + "\n")
        .map_err(|error| Failure::new(format!("the answer can't be written as JSON: {error}"), ""))
}

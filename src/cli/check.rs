//! `bayrise check`: study a bay and print the report.

use std::path::PathBuf;

use indicatif::{ProgressBar, ProgressStyle};

use super::arguments::Format;
use super::load::{Loaded, load};
use super::options::{CheckOptions, Day, Sample};
use super::terminal::{look, note, print};
use super::{Exit, Failure, picture};
use crate::bay::Bay;
use crate::clearance::estimate::{Estimate, estimate};
use crate::clearance::{StudyError, study_on};
use crate::report::{NeedFinding, Report, Warning, json, judge, text};

pub(super) fn run(options: &CheckOptions) -> Result<Exit, Failure> {
    report(options).map(|(exit, _)| exit)
}

/// Prints the report; what it is of comes back.
fn report(options: &CheckOptions) -> Result<(Exit, Loaded), Failure> {
    let loaded = load(&options.file)?;
    let failed = |error: StudyError| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    };
    let mut study = study_on(&loaded.bay, Some(options.day.on)).map_err(failed)?;
    let mut warnings = loaded.warnings.clone();
    if options.sample.is_some() && !study.not_measured().is_empty() {
        warnings.push(no_sample());
    } else if let Some(sample) = options.sample {
        study.estimate = Some(sampled(&loaded.bay, sample).map_err(failed)?);
    }
    let needs: Vec<NeedFinding> = options
        .needs
        .iter()
        .map(|need| judge(&study, *need))
        .collect();
    let day = options.day.of(&loaded.bay);
    let report = Report {
        bay: &loaded.bay,
        study: &study,
        warnings: &warnings,
        needs: &needs,
        fingerprint: &loaded.fingerprint(Some(day)),
        day: Some(day),
    };
    let shown = match options.format {
        Format::Text => text::render(&report, look()),
        Format::Json => to_json(&json::CheckReport::new(&report))?,
    };
    // Before anything is printed: a picture that can't be written is bad input.
    let drawn = match &options.picture {
        Some(picture) => Some((picture, picture::draw(picture, &loaded)?)),
        None => None,
    };
    print(&shown)?;
    match drawn {
        // The report goes to programs as well, so this does not go with it.
        Some((picture, Ok(said))) => {
            note(&picture::written(picture));
            said.iter().for_each(|text| note(text));
        }
        Some((_, Err(fault))) => return Ok((picture::without(fault), loaded)),
        None => {}
    }
    let met = study.highest_safe_lock.is_some() && needs.iter().all(NeedFinding::is_met);
    Ok((if met { Exit::Met } else { Exit::Unmet }, loaded))
}

/// How often a lock is clear in a room that nobody measured is no answer.
fn no_sample() -> Warning {
    Warning {
        place: None,
        message: "--sample: no worlds were drawn, as the file lists things that are not measured"
            .into(),
        help: Some("measure them and take each out of `not_measured`".into()),
    }
}

/// Samples worth a progress bar: fewer are done within a second.
const SHOWN_FROM: usize = 500;

/// The sampled estimate, with its progress shown on a terminal.
fn sampled(bay: &Bay, sample: Sample) -> Result<Estimate, StudyError> {
    let bar = if sample.count >= SHOWN_FROM {
        ProgressBar::new(sample.count as u64)
    } else {
        ProgressBar::hidden()
    };
    if let Ok(style) = ProgressStyle::with_template("sampling {bar:40} {pos}/{len}, {eta} left") {
        bar.set_style(style);
    }
    let estimate = estimate(bay, sample.count, sample.seed, &mut || bar.inc(1));
    bar.finish_and_clear();
    estimate
}

/// The verdict for people, and no more asked of it; what it is of comes back.
pub(super) fn plainly(file: PathBuf) -> Result<(Exit, Loaded), Failure> {
    report(&CheckOptions {
        file,
        format: Format::Text,
        needs: Vec::new(),
        sample: None,
        day: Day::today(),
        picture: None,
    })
}

/// A value as indented JSON with a line break at its end.
pub(super) fn to_json(value: &impl serde::Serialize) -> Result<String, Failure> {
    serde_json::to_string_pretty(value)
        .map(|text| text + "\n")
        .map_err(|error| Failure::new(format!("the answer can't be written as JSON: {error}"), ""))
}

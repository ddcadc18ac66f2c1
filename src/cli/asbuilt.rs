//! `bayrise asbuilt`: where the posts stand by tape readings, and the study again.

use std::cmp::Ordering;
use std::path::PathBuf;

use super::arguments::Format;
use super::check::to_json;
use super::files::readings_file;
use super::load::{Loaded, load};
use super::options::Day;
use super::terminal::{look, print, show_faults};
use super::{Exit, Failure};
use crate::asbuilt::{as_built, findings};
use crate::bayfile::measured;
use crate::clearance::{Study, study_on};
use crate::diagnostics::Diagnostic;
use crate::report::asbuilt::json::AsBuiltJson;
use crate::report::asbuilt::{AsBuiltReport, render};
use crate::report::fingerprint;
use crate::report::text::Look;

/// What `asbuilt` is to do.
#[derive(Debug)]
pub(super) struct AsBuiltOptions {
    pub(super) file: PathBuf,
    pub(super) readings: PathBuf,
    pub(super) format: Format,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

/// What is said of the readings.
pub(super) struct Said {
    /// In the wanted format.
    pub(super) text: String,
    /// Whether a lock is called safe.
    pub(super) is_safe: bool,
    /// What is remarked on in the readings.
    pub(super) warnings: Vec<Diagnostic>,
}

pub(super) fn run(options: &AsBuiltOptions) -> Result<Exit, Failure> {
    let said = said(options, &load(&options.file)?, look())?;
    print(&said.text)?;
    if !said.warnings.is_empty() {
        show_faults(&said.warnings);
    }
    Ok(if said.is_safe { Exit::Met } else { Exit::Unmet })
}

/// Reads the readings and studies the bay with the posts where they stand.
pub(super) fn said(options: &AsBuiltOptions, loaded: &Loaded, look: Look) -> Result<Said, Failure> {
    let bytes = readings_file(&options.readings)?;
    let name = options.readings.to_string_lossy();
    let read = measured::read(&name, &bytes).map_err(Failure::Faults)?;
    let built = as_built(&loaded.bay, &read.measured).map_err(Failure::Faults)?;
    let studied = |bay| study_on(bay, Some(options.day.on));
    let both = studied(&built.standing.bay).and_then(|off| {
        let alone = studied(&built.standing.one_post)?;
        Ok(worse(off, alone))
    });
    let study = both.map_err(|error| {
        Failure::new(
            format!(
                "{}, with the posts where {name} has them: {error}",
                options.file.display()
            ),
            "without it nothing can be said of the rise: correct the bay file or the readings",
        )
    })?;
    let findings = findings(&loaded.bay, &read.measured, &built);
    let day = options.day.of(&loaded.bay);
    let report = AsBuiltReport {
        planned: &loaded.bay,
        measured: &read.measured,
        built: &built,
        findings: &findings,
        study: &study,
        fingerprint: &loaded.fingerprint(Some(day)),
        day,
        readings_fingerprint: &fingerprint(std::iter::once(bytes.as_slice()), None),
    };
    let shown = match options.format {
        Format::Text => render(&report, look),
        Format::Json => to_json(&AsBuiltJson::new(&report))?,
    };
    Ok(Said {
        text: shown,
        is_safe: report.safe_lock().is_some(),
        warnings: read.warnings,
    })
}

/// The study that shows less to be safe: fewer locks, else the lower mark never to climb above; the
/// first where they show the same. What the other one withholds, or does not know, is withheld and not
/// known too.
fn worse(one: Study, other: Study) -> Study {
    let shows = |study: &Study| (study.highest_safe_lock, study.highest_clear_lock);
    let never_above = |study: &Study| {
        let marks = study.marks.as_ref();
        marks
            .and_then(|marks| marks.never_above_m)
            .unwrap_or(f64::INFINITY)
    };
    let is_worse = match shows(&other).cmp(&shows(&one)) {
        Ordering::Less => true,
        Ordering::Equal => never_above(&other) < never_above(&one),
        Ordering::Greater => false,
    };
    let (mut worse, beside) = if is_worse { (other, one) } else { (one, other) };
    for reason in beside.withheld {
        if !worse.withheld.contains(&reason) {
            worse.withheld.push(reason);
        }
    }
    for unknown in beside.unknown {
        if !worse.unknown.contains(&unknown) {
            worse.unknown.push(unknown);
        }
    }
    worse
}

//! `bayrise compare`: many bays side by side.

use std::path::{Path, PathBuf};
use std::time::Duration;

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use super::check::to_json;
use super::files::{Once, bay_file};
use super::options::Day;
use super::terminal::{look, note as tell, print, show_faults};
use super::{Exit, Failure};
use crate::bayfile::options::{self, Options};
use crate::choose::{Asked, Matrix, matrix};
use crate::ground::ForDay;
use crate::report::compare::{
    CompareReport, Comparison, Filter, Sort, csv, notes, render, shown, unknown_name,
};
use crate::report::fingerprint;

/// How a comparison is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Written {
    Text,
    Json,
    Csv,
}

/// What `compare` is to do.
#[derive(Debug)]
pub(super) struct CompareOptions {
    pub(super) file: PathBuf,
    pub(super) format: Written,
    pub(super) sort: Sort,
    pub(super) filters: Vec<Filter>,
    /// Also the answers the other way round.
    pub(super) inverse: bool,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

pub(super) fn run(asked: &CompareOptions) -> Result<Exit, Failure> {
    let bytes = bay_file(&asked.file)?;
    let how = Asked {
        on: Some(asked.day.on),
        inverse: asked.inverse,
    };
    let (read, matrix) = compared(&asked.file, &bytes, how)?;
    if let Some((list, name, names)) = unknown_name(&read, &asked.filters) {
        return Err(Failure::new(
            format!(
                "--filter: no entry of `{}` has {name:?} in its name",
                list.field()
            ),
            if names.is_empty() {
                format!("the file has no `{}`: leave the filter out", list.field())
            } else {
                format!("write part of one of these: {}", names.join(", "))
            },
        ));
    }
    let texts = matrix.texts.iter().map(|source| source.text.as_bytes());
    let day = day_of(&matrix, asked.day);
    let texts = std::iter::once(bytes.as_slice()).chain(texts);
    let fingerprint = fingerprint(texts, day.decides());
    let comparison = Comparison {
        options: &read,
        matrix: &matrix,
        shown: &shown(&read, &matrix, asked.sort, &asked.filters),
        fingerprint: &fingerprint,
        day,
    };
    let text = match asked.format {
        Written::Text => render(&comparison, look()),
        Written::Csv => csv(&comparison),
        Written::Json => to_json(&CompareReport::new(&comparison))?,
    };
    print(&text)?;
    for note in notes(&matrix, &asked.filters) {
        tell(&format!("note: {note}"));
    }
    let faults: Vec<_> = read
        .warnings
        .iter()
        .chain(matrix.faults())
        .cloned()
        .collect();
    if !faults.is_empty() {
        show_faults(&faults);
    }
    let mut found = matrix.cells.iter().filter_map(|cell| cell.found());
    Ok(
        if found.any(|found| found.verdict.highest_safe_lock.is_some()) {
            Exit::Met
        } else {
            Exit::Unmet
        },
    )
}

/// What the day has to do with any of the combinations.
fn day_of(matrix: &Matrix, day: Day) -> ForDay {
    let mut all = ForDay {
        on: day.on,
        counts: false,
        decides: false,
        asked: day.asked,
    };
    for cell in &matrix.cells {
        let Some(found) = cell.found().filter(|_| !all.decides) else {
            continue;
        };
        let one = day.of(&found.bay);
        all.counts |= one.counts;
        all.decides |= one.decides;
    }
    all
}

/// Reads a file of options and studies every combination.
pub(super) fn compared(
    file: &Path,
    bytes: &[u8],
    how: Asked,
) -> Result<(Options, Matrix), Failure> {
    let files = Once::of(file);
    let read = options::read(&file.to_string_lossy(), bytes, &files).map_err(Failure::Faults)?;
    let bar = progress(read.picks().len());
    let matrix = matrix(&read, &files, how, &|| bar.inc(1));
    bar.finish_and_clear();
    if matrix.cells.iter().all(|cell| cell.found().is_none()) {
        return Err(nothing(file, &matrix));
    }
    Ok((read, matrix))
}

/// Not one combination could be studied.
fn nothing(file: &Path, matrix: &Matrix) -> Failure {
    let faults: Vec<_> = matrix.faults().into_iter().cloned().collect();
    if !faults.is_empty() {
        return Failure::Faults(faults);
    }
    let why = matrix.cells.iter().find_map(|cell| match &cell.outcome {
        crate::choose::Outcome::NotStudied(why) => Some(why.as_str()),
        _ => None,
    });
    Failure::new(
        format!(
            "{}: no combination could be studied: {}",
            file.display(),
            why.unwrap_or("there is none")
        ),
        "correct the bay file or the options",
    )
}

/// A bar that comes up when the work takes longer than a second.
fn progress(cells: usize) -> ProgressBar {
    let bar = ProgressBar::with_draw_target(Some(cells as u64), ProgressDrawTarget::hidden());
    if let Ok(style) = ProgressStyle::with_template("comparing {bar:40} {pos}/{len}, {eta} left") {
        bar.set_style(style);
    }
    let late = bar.downgrade();
    std::thread::spawn(move || {
        std::thread::sleep(Duration::from_secs(1));
        if let Some(bar) = late.upgrade()
            && !bar.is_finished()
        {
            bar.set_draw_target(ProgressDrawTarget::stderr());
        }
    });
    bar
}

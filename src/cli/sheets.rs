//! What commands that write pages share: the study, the files, and what is said of them.

use std::path::{Path, PathBuf};

use super::Failure;
use super::files::{can_be_written, replace};
use super::layout::numbered;
use super::terminal::print;
use crate::bay::Bay;
use crate::clearance::{Study, study_on};
use crate::drawing::pages::{PageFormat, Unwritten};
use crate::drawing::sheet::Sheet;
use crate::ground::Date;
use crate::report::{counted, on_one_line};

/// The endings of pages, for who named another.
pub(super) const ENDINGS: &str =
    "name a .pdf, or a .svg or .png file (its pages after the first get a number)";

/// The format of pages, by the ending of their file.
pub(super) fn format_of(out: &Path) -> Result<PageFormat, Failure> {
    let ending = out.extension().map(|ending| ending.to_string_lossy());
    let format = ending.and_then(|ending| PageFormat::of_ending(&ending));
    format.ok_or_else(|| {
        Failure::new(
            format!("{}: no kind of page has this ending", out.display()),
            ENDINGS,
        )
    })
}

/// The study of a bay that was read from this file.
pub(super) fn studied(file: &Path, bay: &Bay, on: Date) -> Result<Study, Failure> {
    study_on(bay, Some(on)).map_err(|error| {
        Failure::new(
            format!("{}: {error}", file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    })
}

/// Writes pages, each file in one step and none before all of them can be, and says which.
pub(super) fn write_pages(
    out: &Path,
    format: PageFormat,
    title: &str,
    pages: &[Sheet],
) -> Result<(), Failure> {
    let bytes = format.written(title, pages).map_err(|Unwritten| {
        Failure::new(
            "the pages can't be written: their font can't be read",
            "this is a fault of the program: please report it",
        )
    })?;
    let files: Vec<(PathBuf, Vec<u8>)> = bytes
        .into_iter()
        .enumerate()
        .map(|(index, bytes)| (numbered(out, index + 1), bytes))
        .collect();
    for (path, _) in &files {
        can_be_written(path)?;
    }
    let mut said = String::new();
    for (index, (path, bytes)) in files.iter().enumerate() {
        replace(path, bytes)?;
        let what = match format {
            PageFormat::Pdf => counted(pages.len(), "page"),
            PageFormat::Svg | PageFormat::Png => pages
                .get(index)
                .map_or_else(String::new, |p| p.name.clone()),
        };
        said += &format!("{}: {what}\n", on_one_line(&path.display().to_string()));
    }
    print(&said)
}

//! What commands that write pages share: the format, the paper, the study, and all files or none.

use std::path::{Path, PathBuf};

use super::arguments::PaperName;
use super::files::{can_be_written, replace_all};
use super::inputs::Input;
use super::terminal::note;
use super::{Failure, load::Loaded};
use crate::clearance::{Study, study_on};
use crate::drawing::pages::{PageFormat, Unwritten};
use crate::drawing::sheet::font::unlettered;
use crate::drawing::sheet::{Paper, Sheet};
use crate::ground::Date;
use crate::report::{counted, on_one_line};

/// The format of pages, by the ending of their file; one of those that are allowed.
pub(super) fn format_of(out: &Path, allowed: &[PageFormat]) -> Result<PageFormat, Failure> {
    let ending = out.extension().map(|ending| ending.to_string_lossy());
    let format = ending.and_then(|ending| PageFormat::of_ending(&ending));
    format.filter(|one| allowed.contains(one)).ok_or_else(|| {
        let endings: Vec<String> = allowed
            .iter()
            .map(|one| format!(".{}", one.ending()))
            .collect();
        let several = allowed.iter().any(|one| one.is_a_file_a_page());
        Failure::new(
            format!("{}: no kind of page has this ending", out.display()),
            format!(
                "name a file with the ending {}{}",
                endings.join(" or "),
                if several {
                    "; of .svg and .png each page after the first is a file with a number"
                } else {
                    ""
                }
            ),
        )
    })
}

/// The paper with this name on the command line.
pub(super) const fn paper(name: PaperName) -> Paper {
    match name {
        PaperName::Letter => Paper::Letter,
        PaperName::A4 => Paper::A4,
        PaperName::A3 => Paper::A3,
    }
}

/// The study of a bay that was read from this file.
pub(super) fn studied(file: &Path, loaded: &Loaded, on: Date) -> Result<Study, Failure> {
    study_on(&loaded.bay, Some(on)).map_err(|error| not_studied(file, &error))
}

/// What is said where a bay can't be studied at all.
pub(super) fn not_studied(file: &Path, error: &dyn std::fmt::Display) -> Failure {
    Failure::new(
        format!("{}: {error}", file.display()),
        "without it nothing can be said of the rise: correct it in the bay file",
    )
}

/// Writes pages into a file, or into a file each, all of them or none, and none over an input; what
/// is said of them comes back.
pub(super) fn write(
    out: &Path,
    inputs: &[Input],
    format: PageFormat,
    title: &str,
    pages: &[Sheet],
) -> Result<String, Failure> {
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
        can_be_written(path, inputs)?;
    }
    replace_all(&files)?;
    let texts = pages.iter().flat_map(Sheet::texts);
    let lacking = unlettered(texts.map(|text| text.says.as_str()));
    if !lacking.is_empty() {
        note(&format!(
            "note: the pages' font has no letters for {}: each stands there as its code point, such \
             as U+{:04X}",
            on_one_line(&lacking),
            lacking.chars().next().map_or(0, u32::from)
        ));
    }
    let mut said = String::new();
    for (index, (path, _)) in files.iter().enumerate() {
        let what = match pages.get(index) {
            Some(page) if format.is_a_file_a_page() => page.name.clone(),
            _ => counted(pages.len(), "page"),
        };
        said += &wrote(path, &what);
    }
    if format.is_a_file_a_page() {
        said += &stale(out, files.len());
    }
    Ok(said)
}

/// Files that have the names of further pages: those of an earlier, longer set carry marks that no
/// longer hold, but whether they are that only the person can tell. So each is named, and none is
/// removed.
fn stale(out: &Path, pages: usize) -> String {
    let left: Vec<String> = (pages + 1..)
        .map(|page| numbered(out, page))
        .take_while(|path| path.exists())
        .map(|path| on_one_line(&path.display().to_string()))
        .collect();
    if left.is_empty() {
        return String::new();
    }
    format!(
        "NOT OF THIS SET, of an earlier, longer one: {}: throw them away, what they say may no \
         longer hold\n",
        left.join(", ")
    )
}

/// What was written where, on a line.
pub(super) fn wrote(path: &Path, what: &str) -> String {
    format!("{}: {what}\n", on_one_line(&path.display().to_string()))
}

/// The file of a page: the first has the name as given, the others a number before its ending.
fn numbered(out: &Path, page: usize) -> PathBuf {
    if page == 1 {
        return out.into();
    }
    let stem = out.file_stem().unwrap_or_default().to_string_lossy();
    let ending = out.extension().unwrap_or_default().to_string_lossy();
    out.with_file_name(format!("{stem}-{page}.{ending}"))
}

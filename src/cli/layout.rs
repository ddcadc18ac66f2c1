//! `bayrise layout`: the sheets for the floor, as drawings to scale.

use std::path::{Path, PathBuf};

use super::files::{can_be_written, replace};
use super::load::load;
use super::terminal::print;
use super::{Exit, Failure};
use crate::clearance::study_on;
use crate::drawing::dxf::dxf;
use crate::drawing::layout::{LayoutError, Order, layout};
use crate::drawing::pdf::pdf;
use crate::drawing::sheet::{Paper, Sheet};
use crate::drawing::svg::svg;
use crate::ground::Date;
use crate::report::counted;

/// What `layout` is to do.
#[derive(Debug)]
pub(super) struct LayoutOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    pub(super) format: Format,
    /// None: that of the file's units.
    pub(super) paper: Option<Paper>,
    /// The day that ages are counted to.
    pub(super) on: Date,
}

/// How drawings are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Format {
    /// One file, for programs that draw.
    Dxf,
    /// One file, for a printer.
    Pdf,
    /// A file a page.
    Svg,
}

impl Format {
    /// By the ending of the file.
    pub(super) fn of(out: &Path) -> Option<Self> {
        let ending = out.extension()?.to_string_lossy().to_lowercase();
        match ending.as_str() {
            "dxf" => Some(Self::Dxf),
            "pdf" => Some(Self::Pdf),
            "svg" => Some(Self::Svg),
            _ => None,
        }
    }
}

/// The endings that are known, for who named another.
pub(super) const ENDINGS: &str =
    "name a .pdf, .svg (its pages after the first get a number) or .dxf file";

pub(super) fn run(options: &LayoutOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    can_be_written(&options.out)?;
    let failed = |error: String| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    };
    let study =
        study_on(&loaded.bay, Some(options.on)).map_err(|error| failed(error.to_string()))?;
    let paper = options.paper.unwrap_or(Paper::usual(loaded.bay.units));
    let pages = layout(&Order {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint,
        on: options.on,
        paper,
    });
    let pages = pages.map_err(|error| match error {
        LayoutError::Stance(error) => failed(error.to_string()),
        LayoutError::TooSmall(page) => Failure::new(
            format!("--paper {}: no room for all of \"{page}\"", paper.name()),
            "take a larger paper: `--paper a3`",
        ),
    })?;
    let mut said = String::new();
    for (path, bytes, what) in files(options, &pages, &loaded.bay.title)? {
        can_be_written(&path)?;
        replace(&path, &bytes)?;
        let name = path.display().to_string();
        let name: String = name.chars().filter(|c| !c.is_control()).collect();
        said += &format!("{name}: {what}\n");
    }
    print(&said)?;
    Ok(Exit::Met)
}

fn files(
    options: &LayoutOptions,
    pages: &[Sheet],
    title: &str,
) -> Result<Vec<(PathBuf, Vec<u8>, String)>, Failure> {
    let whole = |bytes: Vec<u8>| vec![(options.out.clone(), bytes, counted(pages.len(), "page"))];
    Ok(match options.format {
        Format::Dxf => whole(dxf(pages).into_bytes()),
        Format::Pdf => whole(pdf(title, pages).ok_or_else(|| {
            Failure::new("the drawing can't be written: its font can't be read", "")
        })?),
        Format::Svg => pages
            .iter()
            .enumerate()
            .map(|(index, page)| {
                let path = numbered(&options.out, index + 1);
                (path, svg(page).into_bytes(), page.name.clone())
            })
            .collect(),
    })
}

/// The file of a page: the first has the name as given, the others a number before its ending.
pub(super) fn numbered(out: &Path, page: usize) -> PathBuf {
    if page == 1 {
        return out.into();
    }
    let stem = out.file_stem().unwrap_or_default().to_string_lossy();
    let ending = out.extension().unwrap_or_default().to_string_lossy();
    out.with_file_name(format!("{stem}-{page}.{ending}"))
}

//! `bayrise layout`: the sheets for the floor, as drawings to scale.

use std::path::PathBuf;

use super::drawn::{Drawn, write};
use super::files::can_be_written;
use super::load::load;
use super::terminal::print;
use super::{Exit, Failure};
use crate::clearance::study_on;
use crate::drawing::layout::{LayoutError, Order, Part, full_size, layout};
use crate::drawing::sheet::Paper;
use crate::ground::Date;

/// What `layout` is to do.
#[derive(Debug)]
pub(super) struct LayoutOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    pub(super) format: Drawn,
    /// None: that of the file's units.
    pub(super) paper: Option<Paper>,
    /// In full size over many pages; none: to scale.
    pub(super) full_size: Option<Part>,
    /// The day that ages are counted to.
    pub(super) on: Date,
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
    let order = Order {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint,
        on: options.on,
        paper,
    };
    let pages = match options.full_size {
        Some(part) => full_size(&order, part),
        None => layout(&order),
    };
    let pages = pages.map_err(|error| match error {
        LayoutError::Stance(error) => failed(error.to_string()),
        LayoutError::TooSmall(page) => Failure::new(
            format!("--paper {}: no room for all of \"{page}\"", paper.name()),
            "take a larger paper: `--paper a3`",
        ),
    })?;
    print(&write(
        &options.out,
        options.format,
        &loaded.bay.title,
        &pages,
    )?)?;
    Ok(Exit::Met)
}

//! `bayrise record`: the commissioning sheet and the yearly log.

use std::path::PathBuf;

use super::files::can_be_written;
use super::load::{Loaded, load};
use super::options::Day;
use super::sheets::{studied, write};
use super::terminal::print;
use super::{Exit, Failure};
use crate::drawing::pages::PageFormat;
use crate::drawing::record::{Order, TooSmall, record};
use crate::drawing::sheet::Paper;

/// What `record` is to do.
#[derive(Debug)]
pub(super) struct RecordOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    pub(super) format: PageFormat,
    /// None: that of the file's units.
    pub(super) paper: Option<Paper>,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

/// What it can be written as.
pub(super) const FORMATS: [PageFormat; 3] = [PageFormat::Pdf, PageFormat::Svg, PageFormat::Png];

pub(super) fn run(options: &RecordOptions) -> Result<Exit, Failure> {
    print(&written(options, &load(&options.file)?)?)?;
    Ok(Exit::Met)
}

/// Writes it; what is said of it comes back.
pub(super) fn written(options: &RecordOptions, loaded: &Loaded) -> Result<String, Failure> {
    can_be_written(&options.out, &loaded.inputs)?;
    let study = studied(&options.file, loaded, options.day.on)?;
    let day = options.day.of(&loaded.bay);
    let paper = options.paper.unwrap_or(Paper::usual(loaded.bay.units));
    let pages = record(&Order {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint(Some(day)),
        day,
        paper,
    });
    let pages = pages.map_err(|TooSmall(page)| {
        Failure::new(
            format!("--paper {}: no room for all of \"{page}\"", paper.name()),
            "take a larger paper: `--paper a3`",
        )
    })?;
    write(
        &options.out,
        &loaded.inputs,
        options.format,
        &loaded.bay.title,
        &pages,
    )
}

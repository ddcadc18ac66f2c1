//! `bayrise record`: the commissioning sheet and the yearly log.

use std::path::PathBuf;

use super::files::can_be_written;
use super::load::load;
use super::sheets::{studied, write_pages};
use super::{Exit, Failure};
use crate::drawing::pages::PageFormat;
use crate::drawing::record::{Order, TooSmall, record};
use crate::drawing::sheet::Paper;
use crate::ground::Date;

/// What `record` is to do.
#[derive(Debug)]
pub(super) struct RecordOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    pub(super) format: PageFormat,
    /// None: that of the file's units.
    pub(super) paper: Option<Paper>,
    /// The day that ages are counted to.
    pub(super) on: Date,
}

pub(super) fn run(options: &RecordOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    can_be_written(&options.out)?;
    let study = studied(&options.file, &loaded.bay, options.on)?;
    let paper = options.paper.unwrap_or(Paper::usual(loaded.bay.units));
    let pages = record(&Order {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint,
        on: options.on,
        paper,
    });
    let pages = pages.map_err(|TooSmall(page)| {
        Failure::new(
            format!("--paper {}: no room for all of \"{page}\"", paper.name()),
            "take a larger paper: `--paper a3`",
        )
    })?;
    write_pages(&options.out, options.format, &loaded.bay.title, &pages)?;
    Ok(Exit::Met)
}

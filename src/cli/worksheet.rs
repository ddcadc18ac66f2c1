//! `bayrise worksheet`: the form to measure by.

use std::path::PathBuf;

use super::files::can_be_written;
use super::sheets::write;
use super::terminal::print;
use super::{Exit, Failure};
use crate::drawing::pages::PageFormat;
use crate::drawing::sheet::Paper;
use crate::drawing::worksheet::{TITLE, worksheet};

/// What `worksheet` is to do.
#[derive(Debug)]
pub(super) struct WorksheetOptions {
    pub(super) out: PathBuf,
    pub(super) format: PageFormat,
    pub(super) paper: Paper,
}

/// What it can be written as.
pub(super) const FORMATS: [PageFormat; 3] = [PageFormat::Pdf, PageFormat::Svg, PageFormat::Png];

pub(super) fn run(options: &WorksheetOptions) -> Result<Exit, Failure> {
    print(&written(options)?)?;
    Ok(Exit::Met)
}

/// Writes it; what is said of it comes back.
pub(super) fn written(options: &WorksheetOptions) -> Result<String, Failure> {
    can_be_written(&options.out, &[])?;
    let pages = worksheet(options.paper);
    write(&options.out, &[], options.format, TITLE, &pages)
}

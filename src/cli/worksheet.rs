//! `bayrise worksheet`: the form to measure by.

use std::path::PathBuf;

use super::drawn::{Drawn, write};
use super::files::can_be_written;
use super::terminal::print;
use super::{Exit, Failure};
use crate::drawing::sheet::Paper;
use crate::drawing::worksheet::{TITLE, worksheet};

/// What `worksheet` is to do.
#[derive(Debug)]
pub(super) struct WorksheetOptions {
    pub(super) out: PathBuf,
    pub(super) drawn: Drawn,
    pub(super) paper: Paper,
}

pub(super) fn run(options: &WorksheetOptions) -> Result<Exit, Failure> {
    can_be_written(&options.out)?;
    let pages = worksheet(options.paper);
    print(&write(&options.out, options.drawn, TITLE, &pages)?)?;
    Ok(Exit::Met)
}

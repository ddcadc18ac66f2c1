//! `bayrise view`, and a bay file without a command: the verdict, then the window.

use std::path::Path;

use super::load::{Loaded, load};
use super::terminal::note;
use super::{Exit, Failure, check, picture};
use crate::viewer::{self, Fault};

/// The window on a bay.
pub(super) fn run(file: &Path) -> Result<Exit, Failure> {
    // A file that can't be used is said first, display or not.
    let loaded = load(file)?;
    Ok(match open(file, loaded)? {
        Ok(()) => Exit::Met,
        Err(fault) => picture::without(fault),
    })
}

/// The verdict on standard output, then the window where there can be one. How the program ends
/// is the verdict's alone.
pub(super) fn after_verdict(file: &Path) -> Result<Exit, Failure> {
    let (exit, loaded) = check::plainly(file.into())?;
    viewer::trace("the verdict is printed");
    if let Err(fault) = open(file, loaded)? {
        note(&format!(
            "The text above is the full verdict; no window is opened: {}.",
            fault.what
        ));
    }
    Ok(exit)
}

/// The window shows the text that the verdict is of; what was written to the file since then is for
/// it to notice.
fn open(file: &Path, loaded: Loaded) -> Result<Result<(), Fault>, Failure> {
    if let Some(fault) = viewer::no_window() {
        return Ok(Err(fault));
    }
    let text = String::from_utf8(loaded.bytes).map_err(|_| {
        Failure::new(
            format!("{} is no text", file.display()),
            "name a bay file, as in `bayrise view my-bay.ron`",
        )
    })?;
    Ok(viewer::open(file, text))
}

//! `bayrise view`, and a bay file without a command: the verdict, then the window.

use std::path::Path;
#[cfg(feature = "viewer")]
use std::sync::Arc;

use super::compare::compared;
#[cfg(feature = "viewer")]
use super::files::Folder;
use super::files::bay_file;
use super::load::{Loaded, of_bytes};
use super::terminal::note;
use super::{Exit, Failure, check, picture};
use crate::bayfile::options;
use crate::choose::Asked;
#[cfg(feature = "viewer")]
use crate::panels::Compared;
use crate::viewer::{self, Fault};

/// The window on a bay, with another beside it where one is named.
pub(super) fn run(file: &Path, beside: Option<&Path>) -> Result<Exit, Failure> {
    let bytes = bay_file(file)?;
    // A file that can't be used is said first, display or not.
    let outcome = match (options::is_one(&bytes), beside) {
        (true, Some(_)) => {
            return Err(Failure::new(
                format!("{} lists what is to be compared", file.display()),
                "name two bay files, or open the list alone and press `beside` in its table",
            ));
        }
        (true, None) => open_compared(file, &bytes)?,
        (false, None) => open(file, of_bytes(file, bytes)?)?,
        (false, Some(other)) => {
            let this = of_bytes(file, bytes)?;
            let other_bay = of_bytes(other, bay_file(other)?)?;
            open_both(file, this, other, other_bay)?
        }
    };
    Ok(match outcome {
        Ok(()) => Exit::Met,
        Err(fault) => picture::without(fault),
    })
}

/// The window on the bay file that options are for, with the table of what was compared over it.
#[cfg(feature = "viewer")]
fn open_compared(file: &Path, bytes: &[u8]) -> Result<Result<(), Fault>, Failure> {
    let on = viewer::today();
    let (options, matrix) = compared(
        file,
        bytes,
        Asked {
            on: Some(on),
            inverse: false,
        },
    )?;
    if let Some(fault) = viewer::no_window() {
        return Ok(Err(fault));
    }
    let base = options
        .sources
        .get(1)
        .map(|source| (source.name.clone(), source.text.to_string()));
    let Some((name, text)) = base else {
        return Err(Failure::new(
            format!("{} names no bay file", file.display()),
            "write `base: \"my-bay.ron\"` into it",
        ));
    };
    let presets = Arc::new(Folder::of(file));
    let own = std::path::absolute(file).unwrap_or_else(|_| file.into());
    // Presets of the program's own lie in no file.
    let compared = Compared::new(options, matrix, presets).of_file(&own, Path::is_file);
    Ok(viewer::open_compared(
        &file.with_file_name(name),
        text,
        compared,
    ))
}

/// The same where there is no window.
#[cfg(not(feature = "viewer"))]
fn open_compared(file: &Path, bytes: &[u8]) -> Result<Result<(), Fault>, Failure> {
    let on = viewer::today();
    compared(
        file,
        bytes,
        Asked {
            on: Some(on),
            inverse: false,
        },
    )?;
    Ok(viewer::no_window().map_or(Ok(()), Err))
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
    Ok(viewer::open(file, text(file, loaded)?))
}

/// Two bays side by side.
fn open_both(
    file: &Path,
    loaded: Loaded,
    other: &Path,
    other_loaded: Loaded,
) -> Result<Result<(), Fault>, Failure> {
    if let Some(fault) = viewer::no_window() {
        return Ok(Err(fault));
    }
    let beside = (other.to_path_buf(), text(other, other_loaded)?);
    Ok(viewer::open_beside(file, text(file, loaded)?, beside))
}

fn text(file: &Path, loaded: Loaded) -> Result<String, Failure> {
    String::from_utf8(loaded.bytes).map_err(|_| {
        Failure::new(
            format!("{} is no text", file.display()),
            "name a bay file, as in `bayrise view my-bay.ron`",
        )
    })
}

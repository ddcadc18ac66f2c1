//! What is answered where the program was built without an engine?

use std::path::{Path, PathBuf};

use super::Fault;
use super::order::{Made, PictureError, PictureOrder};

/// Why no window can be opened.
#[must_use]
pub fn no_window() -> Option<Fault> {
    Some(Fault {
        what: "this build of the program has none".into(),
        help: "build it with its default features; `bayrise check` prints the full verdict".into(),
    })
}

/// Opens the window on a bay file.
///
/// # Errors
/// Always.
pub fn open(_file: &Path, _text: String) -> Result<(), Fault> {
    no_window().map_or(Ok(()), Err)
}

/// Opens the window on two bay files.
///
/// # Errors
/// Always.
pub fn open_beside(file: &Path, text: String, _other: (PathBuf, String)) -> Result<(), Fault> {
    open(file, text)
}

/// Notes when something was reached; only the window has anything to note.
pub fn trace(_what: &str) {}

/// Makes a picture.
///
/// # Errors
/// Always.
pub fn picture(
    _order: PictureOrder,
    _progress: &mut dyn FnMut(usize, usize),
) -> Result<Made, PictureError> {
    Err(PictureError::Fault(Fault {
        what: "this build of the program draws no pictures".into(),
        help: "build it with its default features; `bayrise check` prints the full verdict".into(),
    }))
}

/// Makes a picture of two bays.
///
/// # Errors
/// Always.
pub fn beside(
    [order, _]: [PictureOrder; 2],
    progress: &mut dyn FnMut(usize, usize),
) -> Result<Made, PictureError> {
    picture(order, progress)
}

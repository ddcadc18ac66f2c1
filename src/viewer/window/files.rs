//! How are bay files read and written for the window?

use std::path::Path;
use std::sync::Arc;

use crate::cli::files::{self, Folder};
use crate::panels::document::Presets;

/// The text of a bay file.
///
/// # Errors
/// In words for people.
pub(super) fn read(path: &Path) -> Result<String, String> {
    let bytes = files::bay_file(path).map_err(|failure| failure.what().to_owned())?;
    String::from_utf8(bytes).map_err(|_| format!("{} is no text", path.display()))
}

/// What lies at a path, whatever it is; none when nothing does.
pub(super) fn lies_at(path: &Path) -> Option<Result<String, String>> {
    path.symlink_metadata().is_ok().then(|| read(path))
}

/// Writes a bay file in one step.
///
/// # Errors
/// In words for people, with what to do.
pub(super) fn write(path: &Path, text: &str) -> Result<(), String> {
    files::overwrite(path, text).map_err(|failure| failure.said())
}

/// The presets beside a bay file.
pub(super) fn presets(path: &Path) -> Presets {
    Arc::new(Folder::of(path))
}

//! How are bay files read and written for the window?

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use crate::bayfile::presets::{PresetError, PresetSource};
use crate::cli::files::{self, Folder};

/// The text of a bay file.
///
/// # Errors
/// In words for people.
pub(super) fn read(path: &Path) -> Result<String, String> {
    let bytes = files::bay_file(path).map_err(|failure| failure.what().to_owned())?;
    String::from_utf8(bytes).map_err(|_| format!("{} is no text", path.display()))
}

/// Writes a bay file in one step.
///
/// # Errors
/// In words for people.
pub(super) fn write(path: &Path, text: &str) -> Result<(), String> {
    files::overwrite(path, text).map_err(|failure| failure.what().to_owned())
}

/// The presets beside a bay file; it remembers which were asked for, there or not.
pub(super) struct Presets {
    folder: Folder,
    beside: PathBuf,
    asked: Mutex<BTreeSet<PathBuf>>,
}

/// The presets beside a bay file.
pub(super) fn presets(path: &Path) -> Arc<Presets> {
    Arc::new(Presets {
        folder: Folder::of(path),
        beside: path.parent().unwrap_or(path).to_path_buf(),
        asked: Mutex::default(),
    })
}

impl Presets {
    /// Every file that was asked for.
    pub(super) fn asked(&self) -> BTreeSet<PathBuf> {
        let asked = self.asked.lock();
        asked.unwrap_or_else(PoisonError::into_inner).clone()
    }
}

impl PresetSource for Presets {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let mut asked = self.asked.lock().unwrap_or_else(PoisonError::into_inner);
        asked.insert(self.beside.join(path));
        drop(asked);
        self.folder.load(path)
    }
}

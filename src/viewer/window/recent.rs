//! Which files were opened before?
//!
//! A short list in the person's folder of settings. It is a convenience: what goes wrong with it is
//! told once and changes nothing else.

use std::ffi::OsString;
use std::path::{Path, PathBuf};

use crate::cli::files;

/// Where the list is; none when the person has no folder for it. `variable` gives a variable of
/// the environment.
pub(super) fn place(variable: impl Fn(&str) -> Option<OsString>) -> Option<PathBuf> {
    let folder = |name: &str| {
        variable(name)
            .map(PathBuf::from)
            .filter(|p| p.is_absolute())
    };
    let settings = folder("XDG_CONFIG_HOME")
        .or_else(|| folder("APPDATA"))
        .or_else(|| folder("HOME").map(|home| home.join(".config")))?;
    Some(settings.join("bayrise").join("recent.json"))
}

/// The list; empty when there is none.
pub(super) fn read(place: &Path) -> Vec<PathBuf> {
    files::bay_file(place)
        .ok()
        .and_then(|bytes| serde_json::from_slice(&bytes).ok())
        .unwrap_or_default()
}

/// Writes the list.
///
/// # Errors
/// In words, when it can't be written.
pub(super) fn write(place: &Path, list: &[PathBuf]) -> Result<(), String> {
    let text = serde_json::to_string_pretty(list).map_err(|error| error.to_string())?;
    if let Some(folder) = place.parent() {
        std::fs::create_dir_all(folder).map_err(|error| error.to_string())?;
    }
    files::overwrite(place, &text).map_err(|failure| failure.what().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_survives() {
        let folder = tempfile::tempdir().unwrap();
        let home = folder.path().as_os_str().to_owned();
        let place = place(|name| (name == "HOME").then(|| home.clone())).unwrap();
        assert_eq!(read(&place), Vec::<PathBuf>::new());
        let list = vec![PathBuf::from("/a/b.ron"), PathBuf::from("/c.ron")];
        write(&place, &list).unwrap();
        assert_eq!(read(&place), list);
        std::fs::write(&place, "broken").unwrap();
        assert_eq!(read(&place), Vec::<PathBuf>::new());
    }

    #[test]
    fn without_a_home_there_is_no_list() {
        assert_eq!(place(|_| None), None);
        assert_eq!(place(|_| Some("relative".into())), None);
    }
}

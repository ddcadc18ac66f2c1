//! Where does this window keep what is not saved, and what did one leave behind that crashed?
//!
//! Beside a bay file there are numbered places for unsaved text. A window takes the first one that
//! no other window holds and that holds nothing; what it finds in places that nobody holds was left
//! by a crash and is offered. Who holds a place is told by a locked file in the folder for such
//! things, since a lock goes with the program, however that ends.

use std::fs::{File, TryLockError};
use std::path::{Path, PathBuf};

use sha2::{Digest as _, Sha256};

use crate::cli::files;
use crate::panels::document::{autosave_path, is_worth_offering};

/// Places tried for one bay file.
const MOST: u32 = 32;

/// A place that this window holds.
#[derive(Debug)]
pub(super) struct Place {
    /// The hidden file for the text.
    pub(super) kept: PathBuf,
    /// Locked for as long as it is open; none where the system can't lock.
    lock: Option<(PathBuf, File)>,
}

impl Place {
    /// Takes the place with this number, if no other window holds it.
    fn take(file: &Path, number: u32) -> Option<Self> {
        let mut kept = autosave_path(file).into_os_string();
        if number > 1 {
            kept.push(format!("-{number}"));
        }
        let kept = PathBuf::from(kept);
        let sign = lock_path(&kept);
        let open = File::options()
            .create(true)
            .write(true)
            .truncate(false)
            .open(&sign);
        let lock = match open.map(|lock| (lock.try_lock(), lock)) {
            Ok((Ok(()), lock)) => Some((sign, lock)),
            Ok((Err(TryLockError::WouldBlock), _)) => return None,
            // Without locks two windows can't be told apart; one at a time keeps its text.
            Ok((Err(TryLockError::Error(_)), _)) | Err(_) => None,
        };
        Some(Self { kept, lock })
    }

    /// What lies in it.
    fn text(&self) -> Option<String> {
        let bytes = files::bay_file(&self.kept).ok()?;
        String::from_utf8(bytes).ok()
    }

    /// The file that shows that it is held.
    pub(super) fn sign(&self) -> Option<&Path> {
        self.lock.as_ref().map(|(sign, _)| sign.as_path())
    }
}

impl Drop for Place {
    fn drop(&mut self) {
        if let Some((sign, lock)) = self.lock.take() {
            // Away first, then free: who waits for it makes a new one.
            let _ = std::fs::remove_file(sign);
            drop(lock);
        }
    }
}

/// What was left by a crash, and its place.
#[derive(Debug)]
pub(super) struct Left {
    pub(super) place: Place,
    pub(super) text: String,
}

/// A place for unsaved text of a bay file, and the first that a crash left, where that says
/// something else than `text`.
pub(super) fn find(file: &Path, text: Option<&str>) -> (Option<Place>, Option<Left>) {
    let mut left = None;
    for number in 1..=MOST {
        let Some(place) = Place::take(file, number) else {
            continue;
        };
        match place.text() {
            None => return (Some(place), left),
            Some(found) if is_worth_offering(&found, text.unwrap_or_default()) => {
                left.get_or_insert(Left { place, text: found });
            }
            Some(_) => {
                // It would only be looked at again and again.
                let _ = std::fs::remove_file(&place.kept);
                return (Some(place), left);
            }
        }
    }
    (None, left)
}

/// Where a file is locked for a place. Names of files may be long; a number for them is not.
fn lock_path(kept: &Path) -> PathBuf {
    let folder = std::env::var_os("XDG_RUNTIME_DIR")
        .map(PathBuf::from)
        .filter(|folder| folder.is_dir())
        .unwrap_or_else(std::env::temp_dir);
    let name = Sha256::digest(kept.as_os_str().as_encoded_bytes());
    let name: String = name
        .iter()
        .take(8)
        .map(|byte| format!("{byte:02x}"))
        .collect();
    folder.join(format!("bayrise-{name}.lock"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_windows_keep_in_two_places_and_what_is_left_is_offered() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("bay.ron");
        let (one, left) = find(&file, Some("saved"));
        let one = one.unwrap();
        assert_eq!(one.kept, autosave_path(&file));
        assert!(left.is_none());
        let (two, left) = find(&file, Some("saved"));
        let two = two.unwrap();
        assert!(left.is_none() && two.kept != one.kept);
        std::fs::write(&one.kept, "of one").unwrap();
        std::fs::write(&two.kept, "of two").unwrap();

        // The first goes down; the second still holds its own.
        let kept_one = one.kept.clone();
        drop(one);
        let (three, left) = find(&file, Some("saved"));
        let (three, left) = (three.unwrap(), left.unwrap());
        assert_eq!(
            (left.text.as_str(), &left.place.kept),
            ("of one", &kept_one)
        );
        assert!(three.kept != two.kept && three.kept != kept_one);
        assert!(kept_one.exists(), "kept until it is answered");

        // What says the same as the file is no offer, and goes away.
        drop((left, two, three));
        std::fs::write(&kept_one, "saved").unwrap();
        let (place, left) = find(&file, Some("saved"));
        assert_eq!(place.unwrap().kept, kept_one);
        assert!(left.is_none() && !kept_one.exists());
    }

    #[test]
    fn a_place_given_back_leaves_no_sign() {
        let folder = tempfile::tempdir().unwrap();
        let (place, _) = find(&folder.path().join("bay.ron"), None);
        let place = place.unwrap();
        let sign = place.sign().map(Path::to_path_buf);
        assert!(sign.as_ref().is_some_and(|sign| sign.exists()));
        drop(place);
        assert!(!sign.unwrap().exists());
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    }
}

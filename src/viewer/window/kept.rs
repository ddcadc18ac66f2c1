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
    /// Takes a place, if no other window holds it.
    fn take(kept: PathBuf) -> Option<Self> {
        let sign = lock_path(&kept);
        let open = File::options()
            .create(true)
            .write(true)
            .truncate(false)
            .open(&sign);
        let lock = match open.map(|lock| (lock.try_lock(), lock)) {
            // A sign that its last holder took away just now shows nothing any more.
            Ok((Ok(()), lock)) if !lies_there(&lock, &sign) => return None,
            Ok((Ok(()), lock)) => Some((sign, lock)),
            Ok((Err(TryLockError::WouldBlock), _)) => return None,
            // Another person's sign.
            Err(_) if sign.exists() => return None,
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

/// The hidden file of the place with this number.
fn numbered(file: &Path, number: u32) -> PathBuf {
    let mut kept = autosave_path(file).into_os_string();
    if number > 1 {
        kept.push(format!("-{number}"));
    }
    kept.into()
}

/// A place for unsaved text of a bay file, and all that crashes left, the newest first, where that
/// says something else than `text`. No place where all are taken.
pub(super) fn find(file: &Path, text: Option<&str>) -> (Option<Place>, Vec<Left>) {
    let (mut free, mut left) = (None, Vec::new());
    for number in 1..=MOST {
        let kept = numbered(file, number);
        let changed = std::fs::metadata(&kept).and_then(|known| known.modified());
        if changed.is_err() && free.is_some() {
            continue;
        }
        let Some(place) = Place::take(kept) else {
            continue;
        };
        match place.text() {
            Some(found) if is_worth_offering(&found, text.unwrap_or_default()) => {
                left.push((changed.ok(), Left { place, text: found }));
            }
            Some(_) => {
                // It would only be looked at again and again.
                let _ = std::fs::remove_file(&place.kept);
                free.get_or_insert(place);
            }
            // What can't be read is somebody's all the same.
            None if place.kept.symlink_metadata().is_ok() => {}
            None => {
                free.get_or_insert(place);
            }
        }
    }
    left.sort_by_key(|(changed, _)| std::cmp::Reverse(*changed));
    (free, left.into_iter().map(|(_, left)| left).collect())
}

/// True while the open file is the one that has this name.
#[cfg(unix)]
fn lies_there(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let known = |known: std::fs::Metadata| (known.dev(), known.ino());
    match (file.metadata(), std::fs::metadata(path)) {
        (Ok(file), Ok(path)) => known(file) == known(path),
        _ => false,
    }
}

/// True while the open file is the one that has this name: elsewhere an open file keeps its name.
#[cfg(not(unix))]
fn lies_there(_file: &File, _path: &Path) -> bool {
    true
}

/// Where a file is locked for a place. Names of files may be long; a number for them is not. By
/// whatever links the folder was reached, it is one folder.
fn lock_path(kept: &Path) -> PathBuf {
    let true_name = || Some(kept.parent()?.canonicalize().ok()?.join(kept.file_name()?));
    let true_name = true_name().unwrap_or_else(|| kept.into());
    let folder = std::env::var_os("XDG_RUNTIME_DIR")
        .map(PathBuf::from)
        .filter(|folder| folder.is_dir())
        .unwrap_or_else(std::env::temp_dir);
    let name = Sha256::digest(true_name.as_os_str().as_encoded_bytes());
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
        assert!(left.is_empty());
        let (two, left) = find(&file, Some("saved"));
        let two = two.unwrap();
        assert!(left.is_empty() && two.kept != one.kept);
        std::fs::write(&one.kept, "of one").unwrap();
        std::fs::write(&two.kept, "of two").unwrap();

        // The first goes down; the second still holds its own.
        let kept_one = one.kept.clone();
        drop(one);
        let (three, left) = find(&file, Some("saved"));
        let three = three.unwrap();
        assert_eq!(left.len(), 1);
        assert_eq!(
            (left[0].text.as_str(), &left[0].place.kept),
            ("of one", &kept_one)
        );
        assert!(three.kept != two.kept && three.kept != kept_one);
        assert!(kept_one.exists(), "kept until it is answered");

        // What says the same as the file is no offer, and goes away.
        drop((left, two, three));
        std::fs::write(&kept_one, "saved").unwrap();
        let (place, _) = find(&file, Some("saved"));
        assert_eq!(place.unwrap().kept, kept_one);
        assert!(!kept_one.exists());
    }

    #[test]
    fn whatever_is_left_is_offered_the_newest_first_and_behind_gaps() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("bay.ron");
        for (number, age_s) in [(2, 20), (5, 10), (7, 30)] {
            let kept = File::create(numbered(&file, number)).unwrap();
            std::io::Write::write_all(&mut &kept, number.to_string().as_bytes()).unwrap();
            let at = std::time::SystemTime::now() - std::time::Duration::from_secs(age_s);
            kept.set_modified(at).unwrap();
        }
        let (place, left) = find(&file, Some("saved"));
        assert_eq!(place.unwrap().kept, numbered(&file, 1));
        let texts: Vec<&str> = left.iter().map(|left| left.text.as_str()).collect();
        assert_eq!(texts, ["5", "2", "7"]);
    }

    #[cfg(unix)]
    #[test]
    fn a_folder_is_one_folder_by_whatever_name() {
        let folder = tempfile::tempdir().unwrap();
        let (real, link) = (folder.path().join("real"), folder.path().join("link"));
        std::fs::create_dir(&real).unwrap();
        std::os::unix::fs::symlink(&real, &link).unwrap();
        let (one, _) = find(&real.join("bay.ron"), None);
        let (two, _) = find(&link.join("bay.ron"), None);
        assert_ne!(one.unwrap().kept.file_name(), two.unwrap().kept.file_name());
    }

    #[test]
    fn what_can_not_be_read_is_not_written_over() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("bay.ron");
        std::fs::write(autosave_path(&file), [0xff, 0xfe]).unwrap();
        let (place, left) = find(&file, None);
        assert_eq!(place.unwrap().kept, numbered(&file, 2));
        assert!(left.is_empty());
        assert!(autosave_path(&file).exists());
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

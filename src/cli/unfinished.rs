//! Which temporary files are not finished yet, and what becomes of them when the program is ended?
//!
//! A file is written beside its place and put there in one step. Where an interrupt or a request to end
//! comes in between, what lies beside goes away first; a set of files that is being put in its places
//! is put there in full.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, Once, PoisonError};

/// Held by whoever must not be cut short, and by whoever ends the program.
static GATE: Mutex<()> = Mutex::new(());
static UNFINISHED: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());
static WATCHED: Once = Once::new();

/// The exit status of a program that an interrupt ended.
const INTERRUPTED: i32 = 130;

/// While what comes back is held no interrupt and no request to end ends the program.
pub(super) fn hold() -> MutexGuard<'static, ()> {
    WATCHED.call_once(|| {
        // In the window its own handler is there before, and takes these away too. Where none can be
        // set the program is ended all the same.
        let _ = ctrlc::set_handler(|| {
            let _shut = taken_away();
            std::process::exit(INTERRUPTED);
        });
    });
    GATE.lock().unwrap_or_else(PoisonError::into_inner)
}

fn list() -> MutexGuard<'static, Vec<PathBuf>> {
    UNFINISHED.lock().unwrap_or_else(PoisonError::into_inner)
}

/// A temporary file is there.
pub(super) fn began(path: &Path) {
    list().push(path.to_path_buf());
}

/// A temporary file is in its place, or away.
pub(super) fn ended(path: &Path) {
    list().retain(|one| one != path);
}

/// Takes every unfinished file away; none is begun while what comes back is held.
fn taken_away() -> MutexGuard<'static, ()> {
    let gate = GATE.lock().unwrap_or_else(PoisonError::into_inner);
    for path in list().drain(..) {
        // One that was put in its place meanwhile is not there any more.
        drop(fs::remove_file(path));
    }
    gate
}

/// Takes every unfinished file away, for whoever ends the program next: none is begun after it.
#[cfg_attr(not(feature = "viewer"), allow(dead_code))] // the window's
pub(crate) fn take_away() {
    std::mem::forget(taken_away());
}

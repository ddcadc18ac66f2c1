//! Did someone else change the open file, or a preset that it asks for?
//!
//! Folders are watched and not files, since most programs save by putting a new file in the old
//! one's place.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use notify::{RecommendedWatcher, RecursiveMode, Watcher as _};

use super::files;
use super::mail::{Mail, Post};

/// Silence after which a file that is being written counts as written.
const SETTLED: Duration = Duration::from_millis(150);
/// A file that is not there for so long after a change is gone, not being replaced.
const GONE: Duration = Duration::from_millis(700);

/// What was changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Noticed {
    Bay,
    Preset,
}

/// Watches one bay file and its presets until it is dropped.
pub(super) struct Watch {
    // Dropped, it closes the channel, which ends the thread.
    watcher: RecommendedWatcher,
    folders: BTreeSet<PathBuf>,
    presets: Arc<Mutex<BTreeSet<PathBuf>>>,
}

impl Watch {
    /// Watches a file; what it holds after each change is sent by mail.
    ///
    /// # Errors
    /// In words, when the system can't watch it.
    pub(super) fn start(file: &Path, post: Post) -> Result<Self, String> {
        let file = std::path::absolute(file).map_err(|error| error.to_string())?;
        let name = file.file_name().map(ToOwned::to_owned);
        let folder = file.parent().map(Path::to_path_buf).unwrap_or_default();
        let presets = Arc::new(Mutex::new(BTreeSet::<PathBuf>::new()));
        let (known, home) = (Arc::clone(&presets), folder.clone());
        let (notice, changes) = mpsc::channel();
        let watcher = notify::recommended_watcher(move |event: notify::Result<notify::Event>| {
            let Ok(event) = event else { return };
            if event.kind.is_access() {
                return;
            }
            let known = known.lock().unwrap_or_else(PoisonError::into_inner);
            for path in &event.paths {
                if path.file_name() == name.as_deref() && path.parent() == Some(&*home) {
                    let _ = notice.send(Noticed::Bay);
                } else if known.iter().any(|preset| concerns(path, preset)) {
                    let _ = notice.send(Noticed::Preset);
                }
            }
        })
        .map_err(|error| error.to_string())?;
        let mut watch = Self {
            watcher,
            folders: BTreeSet::new(),
            presets,
        };
        watch.look_into(folder)?;
        std::thread::spawn(move || report(&file, &changes, &post));
        Ok(watch)
    }

    /// Watches these presets too.
    ///
    /// # Errors
    /// In words, when the system can't watch one of their folders.
    pub(super) fn also(&mut self, presets: BTreeSet<PathBuf>) -> Result<(), String> {
        let folders: BTreeSet<PathBuf> = presets
            .iter()
            .filter_map(|preset| preset.parent())
            // A preset may be asked for where there is no folder yet.
            .filter_map(|folder| folder.ancestors().find(|folder| folder.is_dir()))
            .map(Path::to_path_buf)
            .collect();
        *self.presets.lock().unwrap_or_else(PoisonError::into_inner) = presets;
        for folder in folders {
            self.look_into(folder)?;
        }
        Ok(())
    }

    fn look_into(&mut self, folder: PathBuf) -> Result<(), String> {
        if !self.folders.contains(&folder) {
            self.watcher
                .watch(&folder, RecursiveMode::NonRecursive)
                .map_err(|error| error.to_string())?;
            self.folders.insert(folder);
        }
        Ok(())
    }
}

/// A change of a preset itself, or of a folder on the way to it.
fn concerns(changed: &Path, preset: &Path) -> bool {
    preset.starts_with(changed)
}

fn report(file: &Path, changes: &mpsc::Receiver<Noticed>, post: &Post) {
    while let Ok(first) = changes.recv() {
        let mut noticed = vec![first];
        let mut wait = SETTLED;
        loop {
            match changes.recv_timeout(wait) {
                Ok(next) => noticed.push(next),
                // Between taking the old file away and putting the new one there is a moment.
                Err(RecvTimeoutError::Timeout) if !file.exists() && wait < GONE => wait = GONE,
                Err(RecvTimeoutError::Timeout) => break,
                Err(RecvTimeoutError::Disconnected) => return,
            }
        }
        if noticed.contains(&Noticed::Preset) {
            post.send(Mail::PresetChanged);
        }
        if noticed.contains(&Noticed::Bay) {
            // Half a text is told when it is whole again.
            match files::read(file) {
                Ok(text) => post.send(Mail::OnDisk(file.into(), text)),
                Err(_) if !file.exists() => post.send(Mail::Gone(file.into())),
                Err(_) => {}
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_preset_and_the_way_to_it_concern_the_bay() {
        let preset = Path::new("/bays/lifts/mine.ron");
        assert!(concerns(preset, preset));
        assert!(concerns(Path::new("/bays/lifts"), preset));
        assert!(!concerns(Path::new("/bays/lifts/other.ron"), preset));
        assert!(!concerns(Path::new("/bays/mine.ron"), preset));
    }
}

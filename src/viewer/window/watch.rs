//! Did someone else change the open file?
//!
//! The folder is watched and not the file, since most programs save by putting a new file in the
//! old one's place.

use std::path::Path;
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::Duration;

use notify::{RecommendedWatcher, RecursiveMode, Watcher as _};

use super::files;
use super::mail::{Mail, Post};

/// Silence after which a file that is being written counts as written.
const SETTLED: Duration = Duration::from_millis(150);

/// Watches one file until it is dropped.
pub(super) struct Watch {
    // Dropped, it closes the channel, which ends the thread.
    _watcher: RecommendedWatcher,
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
        let (noticed, changes) = mpsc::channel();
        let mut watcher =
            notify::recommended_watcher(move |event: notify::Result<notify::Event>| {
                let concerns = event.is_ok_and(|event| {
                    !event.kind.is_access()
                        && event.paths.iter().any(|p| p.file_name() == name.as_deref())
                });
                if concerns {
                    let _ = noticed.send(());
                }
            })
            .map_err(|error| error.to_string())?;
        watcher
            .watch(&folder, RecursiveMode::NonRecursive)
            .map_err(|error| error.to_string())?;
        std::thread::spawn(move || report(&file, &changes, &post));
        Ok(Self { _watcher: watcher })
    }
}

fn report(file: &Path, changes: &mpsc::Receiver<()>, post: &Post) {
    while changes.recv().is_ok() {
        loop {
            match changes.recv_timeout(SETTLED) {
                Ok(()) => {}
                Err(RecvTimeoutError::Timeout) => break,
                Err(RecvTimeoutError::Disconnected) => return,
            }
        }
        // A file that is gone for now, or half a text, is told when it is whole again.
        if let Ok(text) = files::read(file) {
            post.send(Mail::OnDisk(file.into(), text));
        }
    }
}

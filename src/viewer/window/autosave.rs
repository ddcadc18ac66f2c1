//! What is left of unsaved changes when the program is torn down?
//!
//! While the open file has unsaved changes, its text is kept in a hidden file beside it, written in
//! one step and at most every few seconds by a thread of its own. Saving and leaving in order take
//! the file away; one that is found when a file is opened is offered.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use crate::cli::files;
use crate::panels::document::{autosave_path, is_worth_offering};

/// Shortest time between two writes.
const EVERY: Duration = Duration::from_secs(3);

/// What an autosave beside a file holds, when it is worth offering.
pub(super) fn found(file: &Path, text: &str) -> Option<String> {
    let kept = autosave_path(file);
    let bytes = files::bay_file(&kept).ok()?;
    let found = String::from_utf8(bytes).ok()?;
    if !is_worth_offering(&found, text) {
        // It would only be looked at again and again.
        let _ = std::fs::remove_file(kept);
        return None;
    }
    Some(found)
}

/// The text that would be lost if the program ended now; shared with whoever has to end it.
#[derive(Debug, Clone, Default)]
pub(super) struct Rescue(Arc<Mutex<Option<(PathBuf, String)>>>);

impl Rescue {
    fn hold(&self, unsaved: Option<(PathBuf, String)>) {
        if let Ok(mut held) = self.0.lock() {
            *held = unsaved;
        }
    }

    /// Writes it beside the file; returns where.
    pub(super) fn write(&self) -> Option<PathBuf> {
        // Whoever holds the lock while the program dies is not waited for.
        let held = self.0.try_lock().ok()?;
        let (path, text) = held.as_ref()?;
        files::overwrite(path, text).ok().map(|()| path.clone())
    }
}

enum Order {
    Keep(PathBuf, String),
    Forget(PathBuf),
}

/// Keeps unsaved text beside its file.
#[derive(Debug)]
pub(super) struct Keeper {
    orders: Option<mpsc::Sender<Order>>,
    thread: Option<JoinHandle<()>>,
    rescue: Rescue,
}

impl Keeper {
    /// Starts the thread. `complain` is told once when nothing can be kept.
    pub(super) fn start(rescue: Rescue, complain: impl FnOnce(String) + Send + 'static) -> Self {
        let (orders, inbox) = mpsc::channel();
        Self {
            orders: Some(orders),
            thread: Some(std::thread::spawn(move || work(&inbox, complain))),
            rescue,
        }
    }

    /// Keeps this text of this file.
    pub(super) fn keep(&self, file: &Path, text: &str) {
        let kept = autosave_path(file);
        self.rescue.hold(Some((kept.clone(), text.into())));
        self.order(Order::Keep(kept, text.into()));
    }

    /// Nothing of this file is unsaved.
    pub(super) fn forget(&self, file: &Path) {
        self.rescue.hold(None);
        self.order(Order::Forget(autosave_path(file)));
    }

    /// Writes what is unsaved now and lets go of it; returns where it went.
    pub(super) fn leave(&self) -> Option<PathBuf> {
        let kept = self.rescue.write();
        self.rescue.hold(None);
        kept
    }

    fn order(&self, order: Order) {
        if let Some(orders) = &self.orders {
            // The thread ends only with this sender.
            let _ = orders.send(order);
        }
    }
}

impl Drop for Keeper {
    /// Waits until what was ordered is done.
    fn drop(&mut self) {
        self.orders = None;
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn work(inbox: &mpsc::Receiver<Order>, complain: impl FnOnce(String)) {
    let mut complain = Some(complain);
    let mut waiting: Option<(PathBuf, String)> = None;
    let mut written: Option<Instant> = None;
    loop {
        let due = written.map_or(Duration::ZERO, |at| EVERY.saturating_sub(at.elapsed()));
        let order = match &waiting {
            Some(_) => inbox.recv_timeout(due),
            None => inbox.recv().map_err(|_| RecvTimeoutError::Disconnected),
        };
        match order {
            Ok(Order::Keep(path, text)) => waiting = Some((path, text)),
            Ok(Order::Forget(path)) => {
                waiting = None;
                // Most often there is none.
                let _ = std::fs::remove_file(path);
            }
            Err(RecvTimeoutError::Timeout) => {
                if let Some((path, text)) = waiting.take() {
                    written = Some(Instant::now());
                    if let (Err(failure), true) =
                        (files::overwrite(&path, &text), complain.is_some())
                        && let Some(complain) = complain.take()
                    {
                        complain(format!("no autosave can be kept: {}", failure.what()));
                    }
                }
            }
            Err(RecvTimeoutError::Disconnected) => return,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn keeper() -> (Keeper, Rescue) {
        let rescue = Rescue::default();
        (Keeper::start(rescue.clone(), |why| panic!("{why}")), rescue)
    }

    fn wait_for(path: &Path, text: Option<&str>) {
        let start = Instant::now();
        while std::fs::read_to_string(path).ok().as_deref() != text {
            assert!(
                start.elapsed() < Duration::from_secs(10),
                "{}",
                path.display()
            );
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    #[test]
    fn unsaved_text_is_kept_and_forgotten_and_at_last_nothing_lies_about() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("bay.ron");
        let kept = autosave_path(&file);
        let (keeper, _) = keeper();
        keeper.keep(&file, "one");
        wait_for(&kept, Some("one"));
        keeper.keep(&file, "two");
        keeper.forget(&file);
        drop(keeper);
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    }

    #[test]
    fn what_was_not_written_yet_is_rescued() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("bay.ron");
        let (keeper, rescue) = keeper();
        keeper.keep(&file, "one");
        wait_for(&autosave_path(&file), Some("one"));
        keeper.keep(&file, "two");
        assert_eq!(rescue.write(), Some(autosave_path(&file)));
        assert_eq!(found(&file, "one").as_deref(), Some("two"));
        keeper.forget(&file);
        assert_eq!(rescue.write(), None);
    }

    #[test]
    fn an_autosave_that_holds_the_same_is_no_offer() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("bay.ron");
        let kept = autosave_path(&file);
        assert_eq!(found(&file, "x"), None);
        std::fs::write(&kept, "y").unwrap();
        assert_eq!(found(&file, "x").as_deref(), Some("y"));
        assert!(kept.exists(), "kept until it is answered");
        assert_eq!(found(&file, "y"), None);
        assert!(!kept.exists());
    }
}

//! What is left of unsaved changes when the program is torn down?
//!
//! While the open file has unsaved changes, its text is kept in a hidden file beside it, written in
//! one step and at most every few seconds by a thread of its own. Saving and leaving in order take
//! the file away.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use crate::cli::files;

/// Shortest time between two writes.
const EVERY: Duration = Duration::from_secs(3);

/// The text that would be lost if the program ended now, and the signs that would lie about; shared
/// with whoever has to end it.
#[derive(Debug, Clone, Default)]
pub(super) struct Rescue(Arc<Mutex<Held>>);

#[derive(Debug, Default)]
struct Held {
    unsaved: Option<(PathBuf, String)>,
    signs: Vec<PathBuf>,
}

impl Rescue {
    fn hold(&self, unsaved: Option<(PathBuf, String)>) {
        if let Ok(mut held) = self.0.lock() {
            held.unsaved = unsaved;
        }
    }

    fn let_go_of(&self, kept: &Path) {
        if let Ok(mut held) = self.0.lock() {
            held.unsaved.take_if(|(path, _)| path == kept);
        }
    }

    /// These show that places are held, and go with the program.
    pub(super) fn take_along(&self, signs: Vec<PathBuf>) {
        if let Ok(mut held) = self.0.lock() {
            held.signs = signs;
        }
    }

    /// Writes the text beside the file; returns where. The program ends after this.
    pub(super) fn write(&self) -> Option<PathBuf> {
        // Whoever holds the lock while the program dies is not waited for.
        let held = self.0.try_lock().ok()?;
        for sign in &held.signs {
            let _ = std::fs::remove_file(sign);
        }
        let (path, text) = held.unsaved.as_ref()?;
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

    /// Keeps this text in this place.
    pub(super) fn keep(&self, kept: &Path, text: &str) {
        self.rescue.hold(Some((kept.into(), text.into())));
        self.order(Order::Keep(kept.into(), text.into()));
    }

    /// Nothing is unsaved that is kept there.
    pub(super) fn forget(&self, kept: &Path) {
        self.rescue.let_go_of(kept);
        self.order(Order::Forget(kept.into()));
    }

    /// These show that places are held, and go with the program.
    pub(super) fn take_along(&self, signs: Vec<PathBuf>) {
        self.rescue.take_along(signs);
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
                waiting = waiting.filter(|(waits, _)| *waits != path);
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
                        complain(format!(
                            "What is not saved can't be kept in case of a crash: {}.",
                            failure.said()
                        ));
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
        let kept = folder.path().join(".bay.ron.kept");
        let (keeper, _) = keeper();
        keeper.keep(&kept, "one");
        wait_for(&kept, Some("one"));
        keeper.keep(&kept, "two");
        keeper.forget(&kept);
        drop(keeper);
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    }

    #[test]
    fn what_was_not_written_yet_is_rescued() {
        let folder = tempfile::tempdir().unwrap();
        let kept = folder.path().join(".bay.ron.kept");
        let sign = folder.path().join("held");
        std::fs::write(&sign, "").unwrap();
        let (keeper, rescue) = keeper();
        keeper.take_along(vec![sign.clone()]);
        keeper.keep(&kept, "one");
        wait_for(&kept, Some("one"));
        keeper.keep(&kept, "two");
        assert_eq!(rescue.write(), Some(kept.clone()));
        assert_eq!(std::fs::read_to_string(&kept).unwrap(), "two");
        assert!(!sign.exists());
        keeper.forget(&kept);
        assert_eq!(rescue.write(), None);
    }
}

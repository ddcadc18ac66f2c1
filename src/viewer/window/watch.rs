//! Did someone else change the open file, or a preset that it asks for?
//!
//! Folders are watched and not files, since most programs save by putting a new file in the old
//! one's place. What the watch notices is only a reason to look: whether anything changed is for
//! whoever knows what was read to say.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::Duration;

use notify::{RecommendedWatcher, RecursiveMode, Watcher as _};

use super::files;
use super::mail::{Mail, Post};
use super::ways::{Plan, Ways};

/// Silence after which a file that is being written counts as written.
const SETTLED: Duration = Duration::from_millis(150);
/// A file that is not there for so long after a change is gone, not being replaced.
const GONE: Duration = Duration::from_millis(700);

/// What is to be looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Noticed {
    Bay,
    Preset,
}

/// Watches one bay file and its presets until it is dropped.
pub(super) struct Watch {
    // Dropped, it closes the channel, which ends the thread.
    _watcher: Option<RecommendedWatcher>,
    notice: mpsc::Sender<Noticed>,
    plan: Plan,
}

impl Watch {
    /// Watches a file and its presets; what there is after each change is sent by mail, and once at
    /// the start, since anything may have changed between reading and watching. The second value
    /// says what the system can't watch: that is looked at only when someone asks.
    pub(super) fn start(
        file: &Path,
        presets: &BTreeSet<PathBuf>,
        post: Post,
    ) -> (Self, Option<String>) {
        let (notice, noticed) = mpsc::channel();
        let (bay, presets) = ways(file, presets);
        let plan = Plan::of([&bay, &presets]);
        let (watcher, trouble) = match watcher(bay, presets, &plan, notice.clone()) {
            Ok((watcher, trouble)) => (Some(watcher), trouble),
            Err(why) => (None, Some(why)),
        };
        let file = file.to_path_buf();
        std::thread::spawn(move || report(&file, &noticed, &post));
        let watch = Self {
            _watcher: watcher,
            notice,
            plan,
        };
        watch.look();
        (watch, trouble)
    }

    /// True while the right folders are watched: presets come and go with the text, and a folder may
    /// have been put in another's place.
    pub(super) fn is_right(&self, file: &Path, presets: &BTreeSet<PathBuf>) -> bool {
        let (bay, presets) = ways(file, presets);
        self.plan == Plan::of([&bay, &presets])
    }

    /// Looks at the files, whatever was noticed.
    pub(super) fn look(&self) {
        // The thread ends only with this watch.
        let _ = self.notice.send(Noticed::Bay);
        let _ = self.notice.send(Noticed::Preset);
    }
}

/// The ways to the bay file and those to its presets.
fn ways(file: &Path, presets: &BTreeSet<PathBuf>) -> (Ways, Ways) {
    let presets = presets.iter().map(PathBuf::as_path);
    (Ways::to([file], file), Ways::to(presets, file))
}

/// The system's watch over the folders; with it, why some of them can't be watched.
fn watcher(
    bay: Ways,
    presets: Ways,
    plan: &Plan,
    notice: mpsc::Sender<Noticed>,
) -> Result<(RecommendedWatcher, Option<String>), String> {
    let mut watcher = notify::recommended_watcher(move |event: notify::Result<notify::Event>| {
        for noticed in noticed(event, &bay, &presets) {
            let _ = notice.send(noticed);
        }
    })
    .map_err(|error| error.to_string())?;
    let mut trouble = None;
    for folder in plan.folders() {
        if let Err(error) = watcher.watch(folder, RecursiveMode::NonRecursive) {
            trouble = Some(error.to_string());
        }
    }
    Ok((watcher, trouble))
}

/// What an event is about. One that got lost on the way may have been about anything.
fn noticed(event: notify::Result<notify::Event>, bay: &Ways, presets: &Ways) -> Vec<Noticed> {
    let event = match event {
        Ok(event) if !event.need_rescan() => event,
        _ => return vec![Noticed::Bay, Noticed::Preset],
    };
    if event.kind.is_access() {
        return Vec::new();
    }
    let concerns = |ways: &Ways| event.paths.iter().any(|changed| ways.lead_over(changed));
    let mut noticed = Vec::new();
    if concerns(bay) {
        noticed.push(Noticed::Bay);
    }
    if concerns(presets) {
        noticed.push(Noticed::Preset);
    }
    noticed
}

fn report(file: &Path, noticed: &mpsc::Receiver<Noticed>, post: &Post) {
    while let Ok(first) = noticed.recv() {
        let mut all = vec![first];
        let mut wait = SETTLED;
        let bay = loop {
            match noticed.recv_timeout(wait) {
                Ok(next) => all.push(next),
                Err(RecvTimeoutError::Timeout) => match files::read(file) {
                    Ok(text) => break Ok(text),
                    // Between taking the old file away and putting the new one there is a moment,
                    // and half a text may be none.
                    Err(_) if wait < GONE => wait = GONE,
                    Err(why) => break Err(why),
                },
                Err(RecvTimeoutError::Disconnected) => return,
            }
        };
        if all.contains(&Noticed::Preset) {
            post.send(Mail::PresetNoticed);
        }
        if all.contains(&Noticed::Bay) {
            post.send(match bay {
                Ok(text) => Mail::OnDisk(file.into(), text),
                Err(why) => Mail::Gone(file.into(), why),
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use notify::event::{AccessKind, Event, EventKind, Flag, ModifyKind};

    fn told(kind: EventKind, changed: &Path) -> Vec<Noticed> {
        let folder = changed.parent().unwrap();
        let [file, preset] = ["bay.ron", "own.ron"].map(|name| folder.join(name));
        let (bay, presets) = ways(&file, &BTreeSet::from([preset]));
        noticed(
            Ok(Event::new(kind).add_path(changed.into())),
            &bay,
            &presets,
        )
    }

    #[test]
    fn what_is_read_is_looked_at_when_it_changes() {
        let folder = tempfile::tempdir().unwrap();
        let home = folder.path().canonicalize().unwrap();
        let changed = EventKind::Modify(ModifyKind::Any);
        assert_eq!(told(changed, &home.join("bay.ron")), [Noticed::Bay]);
        assert_eq!(told(changed, &home.join("own.ron")), [Noticed::Preset]);
        assert_eq!(told(changed, &home.join("other.ron")), []);
        let read = EventKind::Access(AccessKind::Any);
        assert_eq!(told(read, &home.join("bay.ron")), []);
    }

    #[test]
    fn where_events_were_lost_everything_is_looked_at() {
        let none = Ways::default();
        let lost = Event::new(EventKind::Other).set_flag(Flag::Rescan);
        assert_eq!(noticed(Ok(lost), &none, &none).len(), 2);
        let failed = notify::Error::generic("out of memory");
        assert_eq!(noticed(Err(failed), &none, &none).len(), 2);
    }
}

//! Who studies the bay while the person goes on?
//!
//! A bay that is studied within a frame's share is studied at once, so that what is shown is never
//! behind. A longer study runs in a thread; the desk greys the old verdict until it is there.

use std::time::{Duration, Instant};

use bevy::ecs::resource::Resource;

use super::mail::{Mail, Post};
use crate::panels::Desk;
use crate::panels::job::Done;

/// What a study may take of a frame.
const AT_ONCE: Duration = Duration::from_millis(2);

/// The studies.
#[derive(Debug, Resource)]
pub(super) struct Studies {
    post: Post,
    running: bool,
    last: Duration,
}

impl Studies {
    /// `last` is what the study of the opened file took.
    pub(super) fn new(post: Post, last: Duration) -> Self {
        Self {
            post,
            running: false,
            last,
        }
    }

    /// Whether what is on the desk may need a study that has not been asked for.
    pub(super) fn wants(&self, desk: &Desk) -> bool {
        !self.running && desk.wants_study()
    }

    /// Sees to it that what is on the desk gets studied: one at a time, the newest next. Returns
    /// whether a study was finished at once.
    pub(super) fn advance(&mut self, desk: &mut Desk) -> bool {
        if self.running {
            return false;
        }
        let Some(job) = desk.job() else { return false };
        if self.last <= AT_ONCE {
            let start = Instant::now();
            desk.take(job.run());
            self.last = start.elapsed();
            return true;
        }
        self.running = true;
        let post = self.post.clone();
        std::thread::spawn(move || {
            let start = Instant::now();
            let done = job.run();
            post.send(Mail::Studied(Box::new(done), start.elapsed()));
        });
        false
    }

    /// A study came back from its thread.
    pub(super) fn finished(&mut self, desk: &mut Desk, done: Done, took: Duration) {
        self.running = false;
        self.last = took;
        desk.take(done);
    }
}

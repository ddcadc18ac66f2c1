//! What becomes of the file of the bay beside the open one?
//!
//! It is read again when another program changes it; it is never written here.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::super::mail::Post;
use super::super::watch::Watch;
use super::tell;
use crate::panels::Desk;

/// The watch over its file.
#[derive(Default)]
pub(super) struct Neighbour {
    watch: Option<Watch>,
    /// What is watched: the file and its presets.
    watched: Option<(PathBuf, BTreeSet<PathBuf>)>,
}

impl Neighbour {
    /// Watches what is beside the open bay, as far as it lies in a file.
    pub(super) fn keep(&mut self, desk: &Desk, post: &Post) {
        let wanted = desk.beside.as_ref().and_then(|beside| {
            let document = &beside.desk.document;
            let file = document.path()?.to_path_buf();
            let asked = document.presets_asked();
            let presets = asked.map(|name| file.with_file_name(name)).collect();
            Some((file, presets))
        });
        if wanted == self.watched {
            return;
        }
        // What can't be watched is looked at when the person comes back.
        self.watch = wanted
            .as_ref()
            .map(|(file, presets)| Watch::start(file, presets, post.clone()).0);
        self.watched = wanted;
    }

    /// Looks whether it changed.
    pub(super) fn look(&self) {
        if let Some(watch) = &self.watch {
            watch.look();
        }
    }

    /// A file was looked at and holds this, or can't be read any more.
    pub(super) fn looked(&self, path: &Path, found: Result<String, String>, desk: &mut Desk) {
        let Some(beside) = &mut desk.beside else {
            return;
        };
        let other = &mut beside.desk;
        if other.document.path() != Some(path) {
            return;
        }
        let name = other.document.name();
        match found {
            Ok(text) if text == other.document.text() => {}
            Ok(text) => {
                other.document.changed_on_disk(text);
                desk.follow();
                let text = format!("{name}, shown beside, changed on disk and was read again.");
                tell(desk, false, text);
            }
            Err(why) => {
                // Nothing is shown of a file that is not there.
                desk.take_beside_away();
                tell(desk, true, format!("{name} is not shown any more: {why}."));
            }
        }
    }

    /// Something happened about a preset.
    pub(super) fn preset_noticed(&self, desk: &mut Desk) {
        let Some(beside) = &mut desk.beside else {
            return;
        };
        if !beside.desk.document.presets_are_as_read() {
            beside.desk.document.presets_changed();
            desk.follow();
        }
    }
}

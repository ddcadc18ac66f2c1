//! What of this window's unsaved text lies where, and what of another's is offered?
//!
//! The text of the open file is kept in a place beside it ([`super::kept`]), that of a new bay in the
//! person's folder for such things. What a crash left stays where it is until the person throws it
//! away or saves what they took over from it.

use std::ffi::OsString;
use std::path::{Path, PathBuf};

use super::autosave::Keeper;
use super::kept::{self, Left, Place};
use crate::panels::Desk;
use crate::panels::settings::Kept;

/// The places of this window.
#[derive(Debug)]
pub(super) struct Drawer {
    keeper: Keeper,
    /// The bay file that the place is for.
    base: Option<PathBuf>,
    place: Option<Place>,
    /// The generation of the text that lies in the place.
    held: Option<u64>,
    left: Option<Left>,
    /// What was left is on the desk now.
    taken: bool,
    /// What stands for the file of a new bay; none when the person has no folder for it.
    new_bay: Option<PathBuf>,
}

impl Drawer {
    /// An empty one. `variable` gives a variable of the environment.
    pub(super) fn new(keeper: Keeper, variable: impl Fn(&str) -> Option<OsString>) -> Self {
        let folder = |name: &str| {
            variable(name)
                .map(PathBuf::from)
                .filter(|path| path.is_absolute())
        };
        let state = folder("XDG_STATE_HOME")
            .or_else(|| folder("LOCALAPPDATA"))
            .or_else(|| folder("HOME").map(|home| home.join(".local").join("state")));
        Self {
            keeper,
            base: None,
            place: None,
            held: None,
            left: None,
            taken: false,
            new_bay: state.map(|state| state.join("bayrise").join("new-bay.ron")),
        }
    }

    /// A file was opened: what a crash left beside it is offered.
    pub(super) fn open(&mut self, desk: &mut Desk, file: &Path, text: &str) {
        self.give_up();
        let (place, left) = kept::find(file, Some(text));
        self.base = Some(file.into());
        self.place = place;
        desk.autosave = None;
        self.offer(desk, left, false);
    }

    /// Where nothing else is offered, a new bay that a crash left is.
    pub(super) fn offer_a_new_bay(&mut self, desk: &mut Desk) {
        if self.left.is_some() {
            return;
        }
        if let Some(new_bay) = self
            .new_bay
            .clone()
            .filter(|path| path.parent().is_some_and(Path::is_dir))
        {
            let (_, left) = kept::find(&new_bay, None);
            self.offer(desk, left, true);
        }
    }

    /// Keeps what is unsaved, and lets go of what is not any more.
    pub(super) fn keep(&mut self, desk: &mut Desk) {
        let document = &desk.document;
        let is_new_bay = document.path().is_none();
        let base = document
            .path()
            .map(Path::to_path_buf)
            .or_else(|| self.new_bay.clone());
        let (is_unsaved, generation) = (document.is_unsaved(), document.generation());
        if base != self.base {
            let saved = (!is_unsaved).then(|| document.text().to_owned());
            self.forget();
            self.base.clone_from(&base);
            self.place = None;
            if is_new_bay && let Some(folder) = base.as_deref().and_then(Path::parent) {
                // Without a folder nothing can be kept; the keeper says so.
                let _ = std::fs::create_dir_all(folder);
            }
            if let Some(base) = base {
                let (place, left) = kept::find(&base, saved.as_deref());
                self.place = place;
                if self.left.is_none() {
                    self.offer(desk, left, is_new_bay);
                }
            }
            self.tell_signs();
        }
        if !is_unsaved {
            self.forget();
            if std::mem::take(&mut self.taken) {
                self.throw_away();
            }
        } else if self.held != Some(generation)
            && let Some(place) = &self.place
        {
            self.keeper.keep(&place.kept, desk.document.text());
            self.held = Some(generation);
        }
    }

    /// What was left is on the desk now.
    pub(super) fn took(&mut self) {
        self.taken = true;
    }

    /// What was left stays for another time.
    pub(super) fn put_off(&mut self) {
        self.left = None;
        self.tell_signs();
    }

    /// What was left is not wanted any more.
    pub(super) fn throw_away(&mut self) {
        if let Some(left) = self.left.take() {
            self.keeper.forget(&left.place.kept);
        }
        self.tell_signs();
    }

    /// The window closes in order: what the person did not want to save goes away. What was offered
    /// and not answered is offered again next time.
    pub(super) fn close(&mut self) {
        self.give_up();
        self.place = None;
        self.tell_signs();
    }

    /// Puts unsaved text beside its file before the program ends in disorder; returns where.
    pub(super) fn leave(&self) -> Option<PathBuf> {
        self.keeper.leave()
    }

    fn give_up(&mut self) {
        self.forget();
        if std::mem::take(&mut self.taken) {
            self.throw_away();
        }
        self.left = None;
    }

    fn forget(&mut self) {
        if let (Some(_), Some(place)) = (self.held.take(), &self.place) {
            self.keeper.forget(&place.kept);
        }
    }

    fn offer(&mut self, desk: &mut Desk, left: Option<Left>, is_new_bay: bool) {
        if let Some(left) = left {
            desk.autosave = Some(Kept {
                text: left.text.clone(),
                is_new_bay,
            });
            self.taken = false;
            self.left = Some(left);
        }
        self.tell_signs();
    }

    fn tell_signs(&self) {
        let left = self.left.as_ref().map(|left| &left.place);
        let places = self.place.iter().chain(left);
        let signs = places.filter_map(|place| place.sign().map(Path::to_path_buf));
        self.keeper.take_along(signs.collect());
    }
}

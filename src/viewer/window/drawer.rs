//! What of this window's unsaved text lies where, and what of another's is offered?
//!
//! The text of the open file is kept in a place beside it ([`super::kept`]), that of a new bay in the
//! person's folder for such things. What a crash left stays where it is until the person throws it
//! away or saves what they took over from it.

use std::collections::VecDeque;
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
    /// What crashes left and is yet to be answered, the first one on offer.
    left: VecDeque<Offer>,
    /// What was left and is on the desk now; it stays where it lies until that is saved.
    taken: Option<Offer>,
    /// The file was written.
    saved: bool,
    /// What stands for the file of a new bay; none when the person has no folder for it.
    new_bay: Option<PathBuf>,
}

#[derive(Debug)]
struct Offer {
    left: Left,
    is_new_bay: bool,
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
            left: VecDeque::new(),
            taken: None,
            saved: false,
            new_bay: state.map(|state| state.join("bayrise").join("new-bay.ron")),
        }
    }

    /// A file was opened: what crashes left beside it is offered.
    pub(super) fn open(&mut self, desk: &mut Desk, file: &Path, text: &str) {
        self.give_up();
        self.left.retain(|offer| offer.is_new_bay);
        self.base = Some(file.into());
        self.find(Some(text), false, desk);
        self.offer(desk);
    }

    /// After all else a new bay that a crash left is offered.
    pub(super) fn offer_a_new_bay(&mut self, desk: &mut Desk) {
        if let Some(new_bay) = self
            .new_bay
            .clone()
            .filter(|path| path.parent().is_some_and(Path::is_dir))
        {
            let (_, left) = kept::find(&new_bay, None);
            self.add(left, true);
            self.offer(desk);
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
            self.left.retain(|offer| offer.is_new_bay);
            // What was taken over from beside another file, and not saved, is offered there again.
            let is_saved = self.saved;
            self.taken = self
                .taken
                .take()
                .filter(|taken| is_saved || (is_new_bay && taken.is_new_bay));
            if is_new_bay && let Some(folder) = base.as_deref().and_then(Path::parent) {
                // Without a folder nothing can be kept; that is told.
                let _ = std::fs::create_dir_all(folder);
            }
            self.base = base;
            self.find(saved.as_deref(), is_new_bay, desk);
            self.offer(desk);
        }
        let has_been_saved = std::mem::take(&mut self.saved);
        if !is_unsaved {
            self.forget();
            self.settle(has_been_saved, desk);
        } else if self.held != Some(generation)
            && let Some(place) = &self.place
        {
            self.keeper.keep(&place.kept, desk.document.text());
            self.held = Some(generation);
        }
    }

    /// The file was written.
    pub(super) fn saved(&mut self) {
        self.saved = true;
    }

    /// What was on offer is on the desk now.
    pub(super) fn took(&mut self) {
        self.taken = self.left.pop_front();
        self.tell_signs();
    }

    /// What was on offer stays for another time.
    pub(super) fn put_off(&mut self, desk: &mut Desk) {
        self.left.pop_front();
        self.offer(desk);
    }

    /// What was on offer is not wanted any more.
    pub(super) fn throw_away(&mut self, desk: &mut Desk) {
        if let Some(offer) = self.left.pop_front() {
            self.keeper.forget(&offer.left.place.kept);
        }
        self.offer(desk);
    }

    /// Nothing is unsaved. What was taken over before is saved as well, or it was undone and is
    /// offered again.
    fn settle(&mut self, has_been_saved: bool, desk: &mut Desk) {
        let Some(taken) = self.taken.take() else {
            return;
        };
        if has_been_saved || taken.left.text == desk.document.text() {
            self.keeper.forget(&taken.left.place.kept);
        } else {
            self.left.push_front(taken);
        }
        self.offer(desk);
    }

    /// The window closes in order: what the person did not want to save goes away.
    pub(super) fn close(&mut self) {
        self.give_up();
        self.place = None;
        self.tell_signs();
    }

    /// Puts unsaved text beside its file before the program ends in disorder; returns where.
    pub(super) fn leave(&self) -> Option<PathBuf> {
        self.keeper.leave()
    }

    /// What is not saved here is not wanted any more. What a crash left stays even when it was taken
    /// over: it is offered again.
    fn give_up(&mut self) {
        self.forget();
        self.taken = None;
    }

    /// Finds a place for the base, and what crashes left there.
    fn find(&mut self, text: Option<&str>, is_new_bay: bool, desk: &mut Desk) {
        // Before another is looked for: this window's own is free again.
        self.place = None;
        if let Some(base) = &self.base {
            let (place, left) = kept::find(base, text);
            self.place = place;
            self.add(left, is_new_bay);
        }
        if self.place.is_none() {
            let text = "What is not saved can't be kept here in case of a crash: save often.";
            desk.tell(text.into());
        }
    }

    fn forget(&mut self) {
        if let (Some(_), Some(place)) = (self.held.take(), &self.place) {
            self.keeper.forget(&place.kept);
        }
    }

    fn add(&mut self, left: Vec<Left>, is_new_bay: bool) {
        let offers = left.into_iter().map(|left| Offer { left, is_new_bay });
        self.left.extend(offers);
        // What was changed in the open file comes first.
        self.left
            .make_contiguous()
            .sort_by_key(|offer| offer.is_new_bay);
    }

    /// Puts the first of what was left on offer; nothing while something that was taken over is not
    /// saved yet, which would be lost behind it.
    fn offer(&mut self, desk: &mut Desk) {
        let first = self.left.front().filter(|_| self.taken.is_none());
        desk.autosave = first.map(|offer| Kept {
            text: offer.left.text.clone(),
            is_new_bay: offer.is_new_bay,
        });
        self.tell_signs();
    }

    fn tell_signs(&self) {
        let left = self.left.iter().chain(&self.taken);
        let left = left.map(|offer| &offer.left.place);
        let places = self.place.iter().chain(left);
        let signs = places.filter_map(|place| place.sign().map(Path::to_path_buf));
        self.keeper.take_along(signs.collect());
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::super::autosave::Rescue;
    use super::*;
    use crate::bayfile::presets::EmbeddedOnly;
    use crate::panels::document::autosave_path;
    use crate::panels::{Action, Document, Wish};

    /// A drawer of someone at home in a folder, and a desk with a file of it opened.
    fn open(home: &Path) -> (Drawer, Desk, PathBuf) {
        let file = home.join("bay.ron");
        std::fs::write(&file, "saved").unwrap();
        let (path, text) = (Some(file.clone()), "saved".to_owned());
        let document = Document::new(path, text.clone(), Some(text), Arc::new(EmbeddedOnly));
        let mut desk = Desk::new(document);
        let keeper = Keeper::start(Rescue::default(), |why| panic!("{why}"));
        let home = home.as_os_str().to_owned();
        let mut drawer = Drawer::new(keeper, |name| (name == "HOME").then(|| home.clone()));
        drawer.open(&mut desk, &file, "saved");
        drawer.offer_a_new_bay(&mut desk);
        (drawer, desk, file)
    }

    fn second(file: &Path) -> PathBuf {
        let mut second = autosave_path(file).into_os_string();
        second.push("-2");
        second.into()
    }

    fn offered(desk: &Desk) -> Option<&str> {
        desk.autosave.as_ref().map(|kept| kept.text.as_str())
    }

    /// As the office does it.
    fn answer(drawer: &mut Drawer, desk: &mut Desk, action: Action) {
        for wish in desk.apply(action) {
            match wish {
                Wish::TookAutosave => drawer.took(),
                Wish::PutOffAutosave => drawer.put_off(desk),
                Wish::ForgetAutosave => drawer.throw_away(desk),
                other => panic!("{other:?}"),
            }
        }
        drawer.keep(desk);
    }

    fn save(drawer: &mut Drawer, desk: &mut Desk, file: &Path) {
        let text = desk.document.text().to_owned();
        drawer.saved();
        desk.saved(file.into(), text, Arc::new(EmbeddedOnly));
        drawer.keep(desk);
    }

    #[test]
    fn what_two_crashes_left_is_offered_one_after_the_other() {
        let home = tempfile::tempdir().unwrap();
        let file = home.path().join("bay.ron");
        let (first, second) = (autosave_path(&file), second(&file));
        std::fs::write(&first, "of one").unwrap();
        std::fs::write(&second, "of two").unwrap();
        let (mut drawer, mut desk, _) = open(home.path());
        let one = offered(&desk).unwrap().to_owned();
        answer(&mut drawer, &mut desk, Action::PutOffAutosave);
        let other = offered(&desk).unwrap().to_owned();
        assert_ne!(one, other);
        answer(&mut drawer, &mut desk, Action::TakeAutosave);
        assert_eq!(desk.document.text(), other);
        assert_eq!(offered(&desk), None);
        save(&mut drawer, &mut desk, &file);
        drop(drawer);
        let left: Vec<bool> = [&first, &second].map(|kept| kept.exists()).into();
        assert_eq!(
            left.iter().filter(|there| **there).count(),
            1,
            "the one put off"
        );
        let (_drawer, desk, _) = open(home.path());
        assert_eq!(offered(&desk), Some(one.as_str()), "next time");
    }

    #[test]
    fn undoing_what_was_taken_over_does_not_lose_it() {
        let home = tempfile::tempdir().unwrap();
        let kept = autosave_path(&home.path().join("bay.ron"));
        std::fs::write(&kept, "from a crash").unwrap();
        let (mut drawer, mut desk, file) = open(home.path());
        answer(&mut drawer, &mut desk, Action::TakeAutosave);
        answer(&mut drawer, &mut desk, Action::Undo);
        assert!(!desk.document.is_unsaved());
        assert_eq!(offered(&desk), Some("from a crash"));
        answer(&mut drawer, &mut desk, Action::TakeAutosave);
        save(&mut drawer, &mut desk, &file);
        assert_eq!(offered(&desk), None);
        drop(drawer);
        assert!(!kept.exists(), "saved, so it goes");
    }

    #[test]
    fn new_edits_are_kept_beside_what_is_on_offer() {
        let home = tempfile::tempdir().unwrap();
        let file = home.path().join("bay.ron");
        std::fs::write(autosave_path(&file), "from a crash").unwrap();
        let (mut drawer, mut desk, _) = open(home.path());
        desk.document.change("edited".into());
        drawer.keep(&mut desk);
        assert_eq!(drawer.leave(), Some(second(&file)));
        assert_eq!(std::fs::read_to_string(second(&file)).unwrap(), "edited");
        let left = std::fs::read_to_string(autosave_path(&file)).unwrap();
        assert_eq!(left, "from a crash");
    }

    #[test]
    fn a_new_bay_is_kept_at_home_and_offered_after_what_lies_beside_the_file() {
        let home = tempfile::tempdir().unwrap();
        let (mut drawer, mut desk, file) = open(home.path());
        desk.apply(Action::New);
        drawer.keep(&mut desk);
        let kept = drawer.leave().unwrap();
        assert!(kept.starts_with(home.path().join(".local/state/bayrise")));
        drop(drawer);
        // As a crash would leave it.
        std::fs::create_dir_all(kept.parent().unwrap()).unwrap();
        std::fs::write(&kept, "new").unwrap();
        std::fs::write(autosave_path(&file), "from a crash").unwrap();
        let (mut drawer, mut desk, _) = open(home.path());
        assert_eq!(offered(&desk), Some("from a crash"));
        answer(&mut drawer, &mut desk, Action::PutOffAutosave);
        assert_eq!(offered(&desk), Some("new"));
        answer(&mut drawer, &mut desk, Action::DropAutosave);
        assert_eq!(offered(&desk), None);
        drop(drawer);
        assert!(!kept.exists() && autosave_path(&file).exists());
    }
}

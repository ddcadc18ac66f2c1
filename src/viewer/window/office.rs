//! What becomes of a wish that only the window can fulfil, and of news from outside?
//!
//! Reading, writing, watching and remembering files. Nothing a person changed is ever lost here:
//! what would be written over is asked about, what would be dropped is kept beside its file.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use bevy::ecs::resource::Resource;

use super::ask_path::AskPath;
use super::autosave::Keeper;
use super::drawer::Drawer;
use super::mail::{Mail, Post, Purpose};
use super::watch::Watch;
use super::{dialogs, files, recent};
use crate::panels::settings::Notice;
use crate::panels::{Action, Desk, Wish};

/// Something about the window itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Order {
    /// Full screen or not.
    FullScreen(bool),
    /// Leave.
    Close,
}

/// Everything to do with files.
#[derive(Resource)]
pub(super) struct Office {
    post: Post,
    drawer: Drawer,
    watch: Option<Watch>,
    presets: Arc<files::Presets>,
    /// The presets that are watched.
    watched: BTreeSet<PathBuf>,
    /// What the open file holds as far as is known.
    known: Option<String>,
    recent_place: Option<PathBuf>,
    recent_written: Vec<PathBuf>,
    dialog_is_open: bool,
    /// The window closes: nothing more is kept.
    leaves: bool,
}

impl Office {
    /// Starts with an open file, read with these presets.
    pub(super) fn start(
        desk: &mut Desk,
        presets: Arc<files::Presets>,
        post: Post,
        keeper: Keeper,
    ) -> Self {
        let recent_place = recent::place(|name| std::env::var_os(name));
        desk.recent = recent_place
            .as_deref()
            .map(recent::read)
            .unwrap_or_default();
        let mut office = Self {
            post,
            drawer: Drawer::new(keeper, |name| std::env::var_os(name)),
            watch: None,
            presets,
            watched: BTreeSet::new(),
            known: None,
            recent_place,
            recent_written: desk.recent.clone(),
            dialog_is_open: false,
            leaves: false,
        };
        if let Some(path) = desk.document.path().map(Path::to_path_buf) {
            desk.recent.retain(|known| *known != path);
            desk.recent.insert(0, path.clone());
            desk.recent.truncate(8);
            let text = desk.document.text().to_owned();
            office.is_open(desk, &path, text);
        }
        office.drawer.offer_a_new_bay(desk);
        office
    }

    /// Fulfils a wish.
    pub(super) fn fulfil(
        &mut self,
        wish: Wish,
        desk: &mut Desk,
        ask: &mut AskPath,
    ) -> Option<Order> {
        match wish {
            Wish::AskOpen => self.ask(Purpose::Open, desk, ask),
            Wish::AskSaveAs => self.ask(Purpose::Save, desk, ask),
            Wish::Read(path) => self.read(&absolute(path), desk),
            Wish::Write { path, text } => self.write(absolute(path), text, desk),
            Wish::TookAutosave => self.drawer.took(),
            Wish::PutOffAutosave => self.drawer.put_off(),
            Wish::ForgetAutosave => self.drawer.throw_away(),
            Wish::FullScreen(on) => return Some(Order::FullScreen(on)),
            Wish::Close => {
                self.drawer.close();
                self.leaves = true;
                return Some(Order::Close);
            }
        }
        None
    }

    /// Takes news about files; hands back what is not about them.
    pub(super) fn receive(
        &mut self,
        mail: Mail,
        desk: &mut Desk,
        ask: &mut AskPath,
    ) -> Option<Mail> {
        match mail {
            Mail::Chosen {
                purpose,
                path,
                at_once,
            } => {
                self.dialog_is_open = false;
                match path {
                    Some(path) => {
                        let wishes = match purpose {
                            Purpose::Open => desk.apply(Action::OpenFile(path)),
                            Purpose::Save => save_chosen(path, desk),
                        };
                        for wish in wishes {
                            self.fulfil(wish, desk, ask);
                        }
                    }
                    None if at_once => ask.open(purpose, desk.document.path()),
                    None => {}
                }
            }
            Mail::OnDisk(path, text) => self.changed_on_disk(&path, text, desk),
            Mail::Gone(path) => self.gone(&path, desk),
            Mail::PresetChanged => {
                desk.document.presets_changed();
                let text = "A preset beside the file changed on disk and was read again.";
                tell(desk, false, text.into());
            }
            Mail::Trouble(text) => tell(desk, true, text),
            other @ Mail::Studied(..) => return Some(other),
        }
        None
    }

    /// Keeps what is unsaved beside its file, and the list of files opened before.
    pub(super) fn keep(&mut self, desk: &mut Desk) {
        if self.leaves {
            return;
        }
        self.drawer.keep(desk);
        self.watch_presets(desk);
        if self.recent_written != desk.recent {
            self.recent_written.clone_from(&desk.recent);
            if let Some(place) = self.recent_place.clone() {
                let (list, post) = (desk.recent.clone(), self.post.clone());
                std::thread::spawn(move || {
                    if let Err(why) = recent::write(&place, &list) {
                        let why = format!("The list of recent files can't be kept: {why}.");
                        post.send(Mail::Trouble(why));
                    }
                });
            }
        }
    }

    /// Puts unsaved text beside its file before the program ends in disorder; returns where.
    pub(super) fn leave(&self) -> Option<PathBuf> {
        self.drawer.leave()
    }

    fn ask(&mut self, purpose: Purpose, desk: &Desk, ask: &mut AskPath) {
        if self.dialog_is_open || ask.is_open() {
            return;
        }
        let near = desk.document.path();
        if dialogs::may_have_one(|name| std::env::var_os(name)) {
            self.dialog_is_open = true;
            dialogs::ask(purpose, near, self.post.clone());
        } else {
            ask.open(purpose, near);
        }
    }

    fn read(&mut self, path: &Path, desk: &mut Desk) {
        let text = match files::read(path) {
            Ok(text) => text,
            Err(why) => return tell(desk, true, format!("Not opened: {why}.")),
        };
        let is_own = desk.document.path() == Some(path);
        if is_own {
            // What the file took the place of can still be had back.
            desk.document.change(text.clone());
            let presets = self.presets_of(path);
            desk.document.mark_saved(path.into(), text.clone(), presets);
            // The same text may mean another bay by now.
            desk.document.presets_changed();
            self.known = Some(text);
            return;
        }
        desk.opened(path.into(), text.clone(), self.presets_of(path));
        self.is_open(desk, path, text);
    }

    /// The presets beside a file, which is the open one from here on.
    fn presets_of(&mut self, path: &Path) -> Arc<files::Presets> {
        self.presets = files::presets(path);
        Arc::clone(&self.presets)
    }

    /// Watches the file that was opened and looks for what a crash left beside it.
    fn is_open(&mut self, desk: &mut Desk, path: &Path, text: String) {
        self.drawer.open(desk, path, &text);
        self.known = Some(text);
        self.watch(path, desk);
    }

    /// Watches the presets that the text as it stands asks for.
    fn watch_presets(&mut self, desk: &mut Desk) {
        let asked = self.presets.asked();
        if asked == self.watched {
            return;
        }
        self.watched.clone_from(&asked);
        if let Some(Err(why)) = self.watch.as_mut().map(|watch| watch.also(asked)) {
            let why = format!("Changes of presets by other programs are not seen: {why}.");
            tell(desk, false, why);
        }
    }

    fn watch(&mut self, path: &Path, desk: &mut Desk) {
        self.watched = BTreeSet::new();
        self.watch = match Watch::start(path, self.post.clone()) {
            Ok(watch) => Some(watch),
            Err(why) => {
                let why = format!("Changes of the file by other programs are not seen: {why}.");
                tell(desk, false, why);
                None
            }
        };
    }

    fn write(&mut self, path: PathBuf, text: String, desk: &mut Desk) {
        let old = desk.document.path().map(Path::to_path_buf);
        if old.as_deref() == Some(path.as_path())
            && let Ok(now) = files::read(&path)
            && now != text
            && self.known.as_deref() != Some(now.as_str())
        {
            self.known = Some(now.clone());
            desk.leaves_when_saved = false;
            let name = desk.document.name();
            // Where nothing was changed here, there is nothing to write over it.
            if desk.document.changed_on_disk(now) {
                let text = format!("{name} changed on disk and was read again.");
                return tell(desk, false, text);
            }
            return tell(
                desk,
                true,
                format!(
                    "Not saved yet: another program changed {name} meanwhile. Save again to write \
                     over it, or save as another file."
                ),
            );
        }
        if let Err(why) = files::write(&path, &text) {
            desk.leaves_when_saved = false;
            return tell(desk, true, format!("Not saved: {why}."));
        }
        self.known = Some(text.clone());
        let presets = if old.as_deref() == Some(path.as_path()) {
            Arc::clone(&self.presets)
        } else {
            self.presets_of(&path)
        };
        desk.saved(path.clone(), text, presets);
        if old.as_deref() != Some(path.as_path()) {
            self.watch(&path, desk);
        }
    }

    fn gone(&mut self, path: &Path, desk: &mut Desk) {
        if desk.document.path() != Some(path) || self.known.is_none() {
            return;
        }
        self.known = None;
        desk.document.gone_from_disk();
        let name = desk.document.name();
        let text = format!("{name} is gone from the disk. Saving writes it again.");
        tell(desk, true, text);
    }

    fn changed_on_disk(&mut self, path: &Path, text: String, desk: &mut Desk) {
        if desk.document.path() != Some(path) || self.known.as_deref() == Some(text.as_str()) {
            return;
        }
        self.known = Some(text.clone());
        let name = desk.document.name();
        if desk.document.changed_on_disk(text) {
            tell(
                desk,
                false,
                format!("{name} changed on disk and was read again."),
            );
        } else {
            tell(
                desk,
                true,
                format!(
                    "{name} changed on disk. What you changed here is kept: saving writes over \
                     the file, reloading drops your changes."
                ),
            );
        }
    }
}

/// Tells the person something, once.
fn tell(desk: &mut Desk, is_error: bool, text: String) {
    let notice = Notice { is_error, text };
    desk.notices.retain(|known| *known != notice);
    desk.notices.push(notice);
}

fn absolute(path: PathBuf) -> PathBuf {
    std::path::absolute(&path).unwrap_or(path)
}

/// A file that was chosen without an ending gets one; the person was asked about the name that they
/// chose, not about that one.
fn save_chosen(path: PathBuf, desk: &mut Desk) -> Vec<Wish> {
    if path.extension().is_some() {
        return vec![desk.save_to(path)];
    }
    let path = path.with_extension("ron");
    if path.exists() && desk.document.path() != Some(&path) {
        let text = format!(
            "Not saved: {} is there already. Choose that file itself to write over it.",
            path.display()
        );
        tell(desk, true, text);
        return Vec::new();
    }
    vec![desk.save_to(path)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::presets::EmbeddedOnly;
    use crate::panels::Document;

    #[test]
    fn an_ending_that_was_added_writes_over_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let document = Document::new(None, "()".into(), None, Arc::new(EmbeddedOnly));
        let mut desk = Desk::new(document);
        let chosen = folder.path().join("bay");
        let with_ending = folder.path().join("bay.ron");
        let wishes = save_chosen(chosen.clone(), &mut desk);
        let [Wish::Write { path, .. }] = wishes.as_slice() else {
            panic!("a free name is written");
        };
        assert_eq!(*path, with_ending);
        std::fs::write(&with_ending, "another").unwrap();
        assert!(save_chosen(chosen, &mut desk).is_empty());
        assert_eq!(desk.notices.len(), 1);
        assert_eq!(
            save_chosen(with_ending, &mut desk).len(),
            1,
            "asked by the dialog"
        );
    }
}

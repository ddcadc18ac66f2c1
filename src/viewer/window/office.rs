//! What becomes of a wish that only the window can fulfil, and of news from outside?
//!
//! Reading, writing, watching and remembering files. Nothing a person changed is ever lost here:
//! what would be written over is asked about, what would be dropped is kept beside its file.

use std::path::{Path, PathBuf};

use bevy::ecs::resource::Resource;

use super::ask_path::AskPath;
use super::autosave::{self, Keeper};
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
    keeper: Keeper,
    watch: Option<Watch>,
    /// What the open file holds as far as is known.
    known: Option<String>,
    /// The file whose unsaved text the keeper holds, and the generation of that text.
    kept: Option<(PathBuf, u64)>,
    recent_place: Option<PathBuf>,
    recent_written: Vec<PathBuf>,
    dialog_is_open: bool,
    /// The window closes: nothing more is kept.
    leaves: bool,
}

impl Office {
    /// Starts with an open file.
    pub(super) fn start(desk: &mut Desk, post: Post, keeper: Keeper) -> Self {
        let recent_place = recent::place(|name| std::env::var_os(name));
        desk.recent = recent_place
            .as_deref()
            .map(recent::read)
            .unwrap_or_default();
        let mut office = Self {
            post,
            keeper,
            watch: None,
            known: None,
            kept: None,
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
            Wish::ForgetAutosave(path) => {
                if let Some(path) = path {
                    self.keeper.forget(&path);
                }
            }
            Wish::FullScreen(on) => return Some(Order::FullScreen(on)),
            Wish::Close => {
                // An autosave that was offered and not answered is offered again next time.
                if let Some((path, _)) = self.kept.take() {
                    self.keeper.forget(&path);
                }
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
                            Purpose::Save => vec![desk.save_to(with_ending(path))],
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
            Mail::Trouble(text) => tell(desk, true, text),
            other @ Mail::Studied(..) => return Some(other),
        }
        None
    }

    /// Keeps what is unsaved beside its file, and the list of files opened before.
    pub(super) fn keep(&mut self, desk: &Desk) {
        if self.leaves {
            return;
        }
        let document = &desk.document;
        // An autosave on offer is not written over before it is answered.
        let wanted = document
            .path()
            .filter(|_| document.is_unsaved() && desk.autosave.is_none())
            .map(|path| (path.to_path_buf(), document.generation()));
        if wanted != self.kept {
            let path = |kept: &Option<(PathBuf, u64)>| kept.as_ref().map(|(path, _)| path.clone());
            if let Some(old) = path(&self.kept)
                && path(&wanted).as_ref() != Some(&old)
            {
                // Saved, or given up for another file by a person who was asked.
                self.keeper.forget(&old);
            }
            if let Some((path, _)) = &wanted {
                self.keeper.keep(path, document.text());
            }
            self.kept = wanted;
        }
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
        self.keeper.leave()
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
            desk.document
                .mark_saved(path.into(), text.clone(), files::presets(path));
            self.known = Some(text);
            return;
        }
        desk.opened(path.into(), text.clone(), files::presets(path));
        self.is_open(desk, path, text);
    }

    /// Watches the file that was opened and looks for what a crash left beside it.
    fn is_open(&mut self, desk: &mut Desk, path: &Path, text: String) {
        desk.autosave = autosave::found(path, &text);
        self.known = Some(text);
        self.watch(path, desk);
    }

    fn watch(&mut self, path: &Path, desk: &mut Desk) {
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
            self.known = Some(now);
            let name = desk.document.name();
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
            return tell(desk, true, format!("Not saved: {why}."));
        }
        self.known = Some(text.clone());
        desk.saved(path.clone(), text, files::presets(&path));
        if old.as_deref() != Some(path.as_path()) {
            self.watch(&path, desk);
        }
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

fn with_ending(path: PathBuf) -> PathBuf {
    if path.extension().is_none() {
        path.with_extension("ron")
    } else {
        path
    }
}

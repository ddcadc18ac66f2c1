//! What becomes of a wish that only the window can fulfil, and of news from outside?
//!
//! Reading, writing, watching and remembering files. Nothing a person changed is ever lost here:
//! what would be written over is asked about, what would be dropped is kept beside its file.

mod known;
mod neighbour;
mod table;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use bevy::ecs::resource::Resource;

use super::ask_path::AskPath;
use super::autosave::Keeper;
use super::drawer::Drawer;
use super::mail::{Mail, Post, Purpose};
use super::watch::Watch;
use super::{dialogs, files, recent};
use crate::bayfile::options;
use crate::choose::{Asked, matrix};
use crate::cli::hand_over;
use crate::panels::Compared;
use crate::panels::as_built::AsBuilt;
use crate::panels::hand_over::HandOver;
use crate::panels::settings::Notice;
use crate::panels::{Action, Desk, Document, Wish};
pub(super) use known::Lies;
use known::{Before, Known};
use neighbour::Neighbour;
use table::Table;

/// Something about the window itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Order {
    /// Full screen or not.
    FullScreen(bool),
    /// Leave.
    Close,
}

/// What is watched.
#[derive(Debug, Default)]
struct Watched {
    file: Option<PathBuf>,
    presets: BTreeSet<PathBuf>,
    /// The document whose presets these are.
    generation: u64,
}

/// Everything to do with files.
#[derive(Resource)]
pub(super) struct Office {
    post: Post,
    drawer: Drawer,
    watch: Option<Watch>,
    watched: Watched,
    neighbour: Neighbour,
    table: Table,
    known: Known,
    recent_place: Option<PathBuf>,
    recent_written: Vec<PathBuf>,
    dialog_is_open: bool,
    /// What was asked for by way of a dialog.
    asked: Vec<Action>,
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
            drawer: Drawer::new(keeper, |name| std::env::var_os(name)),
            watch: None,
            watched: Watched::default(),
            neighbour: Neighbour::default(),
            table: Table::default(),
            known: Known::default(),
            recent_place,
            recent_written: desk.recent.clone(),
            dialog_is_open: false,
            asked: Vec::new(),
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
            Wish::AskAsBuilt => self.ask(Purpose::Readings, desk, ask),
            Wish::AsBuilt(path) => self.read_readings(absolute(path), desk),
            Wish::AskBeside => self.ask(Purpose::Beside, desk, ask),
            Wish::ReadBeside(path) => self.read_beside(&absolute(path), desk),
            Wish::AskSaveAs => self.ask(Purpose::Save, desk, ask),
            Wish::AskHandOver(what) => self.ask(Purpose::HandOver(what), desk, ask),
            Wish::HandOver { what, path } => self.hand_over(what, path, desk),
            Wish::Read(path) => self.read(&absolute(path), desk),
            Wish::Write { path, text } => self.write(absolute(path), text, desk, ask),
            Wish::TookAutosave => self.drawer.took(),
            Wish::PutOffAutosave => self.drawer.put_off(desk),
            Wish::ForgetAutosave => self.drawer.throw_away(desk),
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
                match (path, purpose) {
                    (Some(path), Purpose::Open) => self.asked.push(Action::OpenFile(path)),
                    (Some(path), Purpose::Beside) => self.asked.push(Action::PutBeside(path)),
                    (Some(path), Purpose::Readings) => self.asked.push(Action::AsBuilt(path)),
                    (Some(path), Purpose::Save) => {
                        for wish in save_chosen(path, desk) {
                            self.fulfil(wish, desk, ask);
                        }
                    }
                    (Some(path), Purpose::HandOver(what)) => self.hand_over(what, path, desk),
                    (None, _) if at_once => ask.open(purpose, desk.document.path()),
                    (None, _) => {}
                }
            }
            Mail::OnDisk(path, text) => {
                self.neighbour.looked(&path, Ok(text.clone()), desk);
                self.compare_anew(desk);
                if desk.document.path() == Some(&path) {
                    self.known.looked(text, desk);
                }
                self.watch(desk, true);
            }
            Mail::Gone(path, why) => {
                self.neighbour.looked(&path, Err(why.clone()), desk);
                self.compare_anew(desk);
                if desk.document.path() == Some(&path) {
                    let is_there = path.symlink_metadata().is_ok();
                    self.known.is_gone(is_there, &why, desk);
                }
                self.watch(desk, true);
            }
            Mail::PresetNoticed => {
                self.neighbour.preset_noticed(desk);
                self.compare_anew(desk);
                if !desk.document.presets_are_as_read() {
                    desk.document.presets_changed();
                    let text = "A preset beside the file changed on disk and was read again.";
                    tell(desk, false, text.into());
                }
                self.watch(desk, true);
            }
            Mail::AsBuilt(built) => desk.as_built = Some(built),
            Mail::Beside(other) => desk.put_beside(*other),
            Mail::Trouble(text) => tell(desk, true, text),
            Mail::Told(text) => tell(desk, false, text),
            Mail::Compared(mut compared) => {
                desk.notices.retain(|notice| {
                    !notice.text.starts_with("Comparing")
                        && !notice.text.ends_with("until it is made anew.")
                });
                Table::renewed(&mut compared, desk.compared.as_deref());
                desk.compared = Some(compared);
            }
            Mail::Turned(done) => {
                if let Some(compared) = &mut desk.compared {
                    compared.turned(*done);
                }
            }
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
        self.neighbour.keep(desk, &self.post);
        self.table.keep(desk, &self.post);
        if let Some(asked) = desk.compared.as_mut().and_then(|table| table.to_turn()) {
            let post = self.post.clone();
            std::thread::spawn(move || post.send(Mail::Turned(Box::new(asked.run()))));
        }
        let document = &desk.document;
        if self.watched.file.as_deref() != document.path()
            || self.watched.generation != document.generation()
        {
            self.watch(desk, false);
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

    /// Makes what other hands need of the text as it stands, in a thread, and tells where it is.
    fn hand_over(&self, what: HandOver, path: PathBuf, desk: &mut Desk) {
        let path = match what.with_ending(absolute(path)) {
            Ok(path) => path,
            Err(why) => return tell(desk, true, why),
        };
        if desk.document.path() == Some(&path) {
            let text = "Not written: that is the bay file itself. Choose another name.";
            return tell(desk, true, text.into());
        }
        let file = desk.document.path().map(Path::to_path_buf);
        let file = file.unwrap_or_else(|| absolute("my-bay.ron".into()));
        let (text, on, post) = (desk.document.text().to_owned(), desk.on, self.post.clone());
        std::thread::spawn(move || {
            post.send(
                match hand_over::make_and_write(what, &file, text.into_bytes(), &path, on) {
                    Ok(said) => Mail::Told(format!("{} written: {said}.", what.name())),
                    Err(why) => Mail::Trouble(format!("{} not written: {why}.", what.name())),
                },
            );
        });
    }

    fn read(&mut self, path: &Path, desk: &mut Desk) {
        let text = match files::read(path) {
            Ok(text) => text,
            Err(why) => return tell(desk, true, format!("Not opened: {why}.")),
        };
        if options::is_one(text.as_bytes()) {
            return self.compare(path, text, desk);
        }
        if desk.document.path() == Some(path) {
            // What the file took the place of can still be had back.
            desk.document.change(text.clone());
            let presets = files::presets(path);
            desk.document.mark_saved(path.into(), text.clone(), presets);
            // The same text may mean another bay by now.
            desk.document.presets_changed();
            self.known.is(text);
            return;
        }
        desk.opened(path.into(), text.clone(), files::presets(path));
        self.is_open(desk, path, text);
    }

    /// Reads tape readings of the bay as it stands in the window, in a thread.
    fn read_readings(&self, path: PathBuf, desk: &Desk) {
        let file = desk.document.path().map(Path::to_path_buf);
        let file = file.unwrap_or_else(|| absolute("my-bay.ron".into()));
        let (text, on, post) = (desk.document.text().to_owned(), desk.on, self.post.clone());
        let generation = desk.document.generation();
        std::thread::spawn(move || {
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            post.send(
                match hand_over::as_built(&file, text.into_bytes(), &path, on) {
                    Ok(text) => Mail::AsBuilt(AsBuilt {
                        readings: name.into_owned(),
                        text,
                        generation,
                    }),
                    Err(why) => Mail::Trouble(format!("{name} was not taken: {why}.")),
                },
            );
        });
    }

    /// Reads and studies a bay to look at beside the open one, in a thread.
    fn read_beside(&self, path: &Path, desk: &mut Desk) {
        let text = match files::read(path) {
            Ok(text) => text,
            Err(why) => return tell(desk, true, format!("Not shown: {why}.")),
        };
        if options::is_one(text.as_bytes()) {
            let why = "that file lists what is to be compared; open it, and press \u{201c}beside\u{201d} in its table";
            return tell(desk, true, format!("Not shown: {why}."));
        }
        let (path, on, post) = (path.to_path_buf(), desk.on, self.post.clone());
        std::thread::spawn(move || {
            let mut other = beside(path, text);
            other.on = on;
            other.study_now();
            post.send(Mail::Beside(Box::new(other)));
        });
    }

    /// Studies what a file of options lists, in a thread; the table comes up over the open bay.
    fn compare(&self, path: &Path, text: String, desk: &mut Desk) {
        let (path, on, post) = (path.to_path_buf(), desk.on, self.post.clone());
        tell(
            desk,
            false,
            "Comparing\u{2026} the table comes up when it is done.".into(),
        );
        std::thread::spawn(move || {
            let presets = files::presets(&path);
            let name = path.to_string_lossy();
            post.send(match options::read(&name, text.as_bytes(), &*presets) {
                Ok(read) => {
                    let asked = Asked { on, inverse: false };
                    let matrix = matrix(&read, &*presets, asked, &|| ());
                    let compared =
                        Compared::new(read, matrix, presets).of_file(&path, Path::is_file);
                    Mail::Compared(Box::new(compared))
                }
                Err(faults) => {
                    let first = faults.first().map(ToString::to_string).unwrap_or_default();
                    Mail::Trouble(format!("{name} can't be compared: {first}"))
                }
            });
        });
    }

    /// Makes the table anew where a file that went into it is another by now.
    fn compare_anew(&self, desk: &mut Desk) {
        if let Some(path) = self.table.noticed(desk)
            && let Ok(text) = files::read(&path)
        {
            self.compare(&path, text, desk);
        }
    }

    /// Watches the file that was opened and looks for what a crash left beside it.
    fn is_open(&mut self, desk: &mut Desk, path: &Path, text: String) {
        self.drawer.open(desk, path, &text);
        self.known.is(text);
        self.watch(desk, false);
    }

    /// Looks whether other programs changed anything: where the system does not tell of it, when the
    /// person comes back to the window.
    pub(super) fn look(&self) {
        if let Some(watch) = &self.watch {
            watch.look();
        }
        self.neighbour.look();
        self.table.look();
    }

    /// What was asked for by way of a dialog.
    pub(super) fn take_asked(&mut self) -> Vec<Action> {
        std::mem::take(&mut self.asked)
    }

    /// Watches the open file and the presets that the text as it stands asks for. After something was
    /// noticed the folders may be others.
    fn watch(&mut self, desk: &mut Desk, noticed: bool) {
        let Some(file) = desk.document.path().map(Path::to_path_buf) else {
            (self.watch, self.watched) = (None, Watched::default());
            return;
        };
        let asked = desk.document.presets_asked();
        let presets: BTreeSet<PathBuf> = asked.map(|name| file.with_file_name(name)).collect();
        let is_watched = self.watched.file.as_ref() == Some(&file);
        let is_right = |watch: &Watch| {
            (!noticed && self.watched.presets == presets) || watch.is_right(&file, &presets)
        };
        if !is_watched || !self.watch.as_ref().is_some_and(is_right) {
            let (watch, trouble) = Watch::start(&file, &presets, self.post.clone());
            self.watch = Some(watch);
            if let Some(why) = trouble {
                let text = format!(
                    "Changes of the files by other programs are seen only when you come back to this \
                     window: {why}."
                );
                tell(desk, false, text);
            }
        }
        self.watched = Watched {
            file: Some(file),
            presets,
            generation: desk.document.generation(),
        };
    }

    fn write(&mut self, path: PathBuf, text: String, desk: &mut Desk, ask: &mut AskPath) {
        let is_own = desk.document.path() == Some(&path);
        let lies = files::lies_at(&path);
        if is_own && !ask.is_agreed(&path, &lies) {
            match self.known.before_writing(&text, &lies, desk) {
                Before::Nothing => {}
                Before::ReadAgain => {
                    desk.leaves_when_saved = false;
                    return;
                }
                Before::Question => return ask.whether_to_write_over(path, lies),
            }
        }
        if let Err(why) = files::write(&path, &text) {
            desk.leaves_when_saved = false;
            return tell(desk, true, format!("Not saved: {why}."));
        }
        self.known.is(text.clone());
        self.drawer.saved();
        let presets = files::presets(&path);
        desk.saved(path, text, presets);
        self.watch(desk, false);
    }
}

/// Tells the person something, once.
fn tell(desk: &mut Desk, is_error: bool, text: String) {
    let notice = Notice { is_error, text };
    desk.notices.retain(|known| *known != notice);
    desk.notices.push(notice);
}

/// A bay to look at beside the open one.
pub(super) fn beside(path: PathBuf, text: String) -> Desk {
    let presets = files::presets(&path);
    Desk::new(Document::new(Some(path), text.clone(), Some(text), presets))
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
    use std::sync::Arc;

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

//! What happens to the desk when the document on it is changed, saved, left or made anew?

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::Desk;
use crate::bay::UnitSystem;
use crate::bayfile::edit::EditError;
use crate::bayfile::options::{Pick, TextError};
use crate::bayfile::presets::EmbeddedOnly;
use crate::panels::action::{Action, Wish};
use crate::panels::compared::Compared;
use crate::panels::document::{Document, Presets};
use crate::panels::rise::Rise;
use crate::panels::settings::Notice;
use crate::starter::starter;

/// The lift and the vehicle of a new bay, to start from.
const NEW_BAY: [&str; 2] = ["tall-columns-11-10", "estate"];

impl Desk {
    pub(super) fn edit(&mut self, change: impl FnOnce(&mut Document) -> Result<(), EditError>) {
        self.leaves_when_saved = false;
        // It is no longer the bay of that name.
        self.label = None;
        if let Err(why) = change(&mut self.document) {
            self.notices.push(Notice {
                is_error: true,
                text: format!("The file is as before; it could not be changed so: {why}."),
            });
        }
    }

    /// Leaves the document for what comes next.
    pub(super) fn leave(&mut self, next: Action) -> Vec<Wish> {
        self.leaving = None;
        self.leaves_when_saved = false;
        match next {
            Action::New => {
                self.start_new();
                Vec::new()
            }
            Action::OpenFile(path) => vec![Wish::Read(path)],
            Action::OpenCell(pick) => {
                self.open_cell(pick);
                Vec::new()
            }
            _ => vec![Wish::Close],
        }
    }

    /// The person chose where to save.
    #[must_use]
    pub fn save_to(&self, path: PathBuf) -> Wish {
        Wish::Write {
            path,
            text: self.document.text().into(),
        }
    }

    /// A file was read.
    pub fn opened(&mut self, path: PathBuf, text: String, presets: Presets) {
        self.remember(&path);
        // A study of the last document must never be taken for one of this.
        let after = self.document.generation() + 1;
        self.document =
            Document::new(Some(path), text.clone(), Some(text), presets).counted_from(after);
        self.forget_study();
    }

    /// A file was written.
    pub fn saved(&mut self, path: PathBuf, text: String, presets: Presets) {
        self.remember(&path);
        self.document.mark_saved(path, text, presets);
    }

    /// Changes how the comparison is listed.
    pub(super) fn compare(&mut self, change: impl FnOnce(&mut Compared)) {
        if let Some(compared) = &mut self.compared {
            change(compared);
        }
    }

    /// Opens a combination of what was compared.
    fn open_cell(&mut self, pick: Pick) {
        let Some(compared) = self.compared.as_mut().filter(|compared| !compared.is_stale) else {
            return;
        };
        let (is_error, text) = match compared.text(pick) {
            Ok(text) => {
                compared.is_open = false;
                let name = compared.name(pick);
                self.document.start_over(text, compared.presets());
                self.forget_study();
                self.label = name;
                let said =
                    "This bay is the one compared, as a file of its own; it is not saved yet.";
                (false, said.to_owned())
            }
            Err(why) => (true, no_bay(&why)),
        };
        self.notices.push(Notice { is_error, text });
    }

    /// Puts a combination of what was compared beside the open bay.
    pub(super) fn cell_beside(&mut self, pick: Pick) {
        let Some(compared) = self.compared.as_ref().filter(|compared| !compared.is_stale) else {
            return;
        };
        match compared.text(pick) {
            Ok(text) => {
                let document = Document::new(None, text, None, compared.presets());
                let mut other = Self::new(document);
                other.label = compared.name(pick);
                self.put_beside(other);
                self.compare(|compared| compared.is_open = false);
            }
            Err(why) => self.tell(no_bay(&why)),
        }
    }

    /// Starts a bay of two shipped presets, in the units of the bay before it.
    pub(super) fn start_new(&mut self) {
        let read = self.document.read();
        let units = read.map_or(UnitSystem::Imperial, |read| read.bay.units);
        let [lift, vehicle] = NEW_BAY;
        match starter(lift, vehicle, units) {
            Ok(starter) => {
                self.document
                    .start_over(starter.unmeasured(), Arc::new(EmbeddedOnly));
                self.forget_study();
                self.notices.push(Notice {
                    is_error: false,
                    text: "Nothing in this bay is measured yet: its figures are typical ones, and \
                           the verdict is of them, not of your garage."
                        .into(),
                });
            }
            Err(_) => self.notices.push(Notice {
                is_error: true,
                text: "A new bay could not be made from the shipped presets.".into(),
            }),
        }
    }

    /// A study of the last document must never be taken for one of this.
    pub(super) fn forget_study(&mut self) {
        self.verdict = None;
        self.label = None;
        self.here = None;
        self.picked = None;
        self.asked = None;
        self.rise = Rise::default();
    }

    pub(super) fn remember(&mut self, path: &Path) {
        self.recent.retain(|known| known != path);
        self.recent.insert(0, path.into());
        self.recent.truncate(8);
    }
}

/// Why a combination can't be opened.
fn no_bay(why: &TextError) -> String {
    match why {
        TextError::Faults(faults) => {
            let first = faults.first().map(ToString::to_string).unwrap_or_default();
            format!("This combination makes no bay: {first}")
        }
        TextError::NotTheSame => {
            "This combination can't be written as a bay file that means the same; study it by \
             `bayrise compare`."
                .to_owned()
        }
    }
}

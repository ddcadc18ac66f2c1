//! What is asked in the middle of the window?
//!
//! For a path, where the desktop has no file dialog; and whether what another program wrote is to be
//! written over.

use std::path::{Path, PathBuf};

use bevy::ecs::resource::Resource;
use egui::{Align2, Key};

use super::mail::Purpose;
use super::office::Lies;
use crate::panels::hand_over::HandOver;

/// The open question, if any.
#[derive(Debug, Default, Resource)]
pub(super) struct AskPath {
    open: Option<Question>,
    /// The file that may be written over, and what lay there when the person said so.
    agreed: Option<(PathBuf, Lies)>,
}

#[derive(Debug)]
enum Question {
    Path(Field),
    WriteOver {
        file: PathBuf,
        lies: Lies,
        fresh: bool,
    },
}

/// What the person answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Answer {
    /// Open this file.
    Open(PathBuf),
    /// Put the bay of this file beside the open one.
    Beside(PathBuf),
    /// Read the tape readings of this file.
    Readings(PathBuf),
    /// Save to this file.
    Save(PathBuf),
    /// Write something for other hands to this file.
    HandOver(HandOver, PathBuf),
    /// Save, but not there.
    SaveElsewhere,
}

#[derive(Debug)]
struct Field {
    purpose: Purpose,
    typed: String,
    /// The file that is there already and is to be written over once it is confirmed.
    confirms: Option<PathBuf>,
    fresh: bool,
}

impl AskPath {
    /// Opens the field with a path to start from.
    pub(super) fn open(&mut self, purpose: Purpose, near: Option<&Path>) {
        let near = near.and_then(|near| std::path::absolute(near).ok());
        let typed = match (purpose, near) {
            (Purpose::HandOver(what), near) => {
                let place = what.place(near.as_deref());
                let place = std::path::absolute(&place).unwrap_or(place);
                place.display().to_string()
            }
            (_, Some(near)) => near.display().to_string(),
            (Purpose::Open | Purpose::Beside | Purpose::Readings, None) => String::new(),
            (Purpose::Save, None) => std::path::absolute("my-bay.ron")
                .unwrap_or_default()
                .display()
                .to_string(),
        };
        self.open = Some(Question::Path(Field {
            purpose,
            typed,
            confirms: None,
            fresh: true,
        }));
    }

    /// Asks whether what another program wrote to a file, and what lies there now, is to be written
    /// over.
    pub(super) fn whether_to_write_over(&mut self, file: PathBuf, lies: Lies) {
        let fresh = true;
        self.open = Some(Question::WriteOver { file, lies, fresh });
    }

    /// True when the person agreed just now to write over what lies there; once.
    pub(super) fn is_agreed(&mut self, file: &Path, lies: &Lies) -> bool {
        let agreed = self.agreed.take();
        agreed.is_some_and(|(known, was)| known == file && was == *lies)
    }

    /// Whether a question is open: keys are then for it.
    pub(super) fn is_open(&self) -> bool {
        self.open.is_some()
    }

    /// Shows the question; returns the answer once there is one. `own` is the open file, for which no
    /// other is written over.
    pub(super) fn show(&mut self, context: &egui::Context, own: Option<&Path>) -> Option<Answer> {
        let shown = match self.open.as_mut()? {
            Question::Path(field) => field.show(context, own),
            Question::WriteOver { file, fresh, .. } => {
                write_over(context, file, std::mem::take(fresh))
            }
        };
        match shown {
            Shown::Open => None,
            Shown::Closed => {
                self.open = None;
                None
            }
            Shown::Answered(answer) => {
                if let Some(Question::WriteOver { file, lies, .. }) = self.open.take()
                    && matches!(answer, Answer::Save(_))
                {
                    self.agreed = Some((file, lies));
                }
                Some(answer)
            }
        }
    }
}

/// What became of a question in a frame.
enum Shown {
    Open,
    Closed,
    Answered(Answer),
}

fn window(title: &str) -> egui::Window<'_> {
    egui::Window::new(title)
        .collapsible(false)
        .resizable(false)
        .anchor(Align2::CENTER_CENTER, [0.0, 0.0])
}

fn write_over(context: &egui::Context, file: &Path, fresh: bool) -> Shown {
    let mut shown = Shown::Open;
    window("Write over what another program wrote?")
        .id("write over".into())
        .show(context, |ui| {
            let name = file.file_name().unwrap_or_default().to_string_lossy();
            ui.label(format!(
                "{name} was changed by another program since it was read here. Saving writes over \
                 that."
            ));
            ui.horizontal(|ui| {
                if ui.button("Write over it").clicked() {
                    shown = Shown::Answered(Answer::Save(file.into()));
                }
                if ui.button("Save as another file").clicked() {
                    shown = Shown::Answered(Answer::SaveElsewhere);
                }
                let cancel = ui.button("Cancel");
                if fresh {
                    cancel.request_focus();
                }
                if cancel.clicked() {
                    shown = Shown::Closed;
                }
            });
        });
    if context.input(|input| input.key_pressed(Key::Escape)) {
        return Shown::Closed;
    }
    shown
}

impl Field {
    fn show(&mut self, context: &egui::Context, own: Option<&Path>) -> Shown {
        let mut chosen = false;
        let mut closed = context.input(|input| input.key_pressed(Key::Escape));
        let (title, verb) = match self.purpose {
            Purpose::Open => ("Open a bay file", "Open"),
            Purpose::Beside => ("A bay file to show beside this one", "Show"),
            Purpose::Readings => ("A file of tape readings", "Read"),
            Purpose::Save => ("Save the bay file as", "Save"),
            Purpose::HandOver(what) => (what.name(), "Write"),
        };
        window(title).id("path".into()).show(context, |ui| {
            ui.label("Path of the file:");
            let edit = ui.add(
                egui::TextEdit::singleline(&mut self.typed)
                    .id("path field".into())
                    .desired_width(520.0),
            );
            // A menu that closes takes the focus along: the field has it unless something else does.
            let nobody = context.memory(|memory| memory.focused().is_none());
            if std::mem::take(&mut self.fresh) || (nobody && !edit.lost_focus()) {
                edit.request_focus();
            }
            if edit.changed() {
                self.confirms = None;
            }
            chosen |= edit.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
            if let Some(there) = &self.confirms {
                ui.label(format!(
                    "{} is there already. {verb} again to write over it.",
                    there.display()
                ));
            }
            ui.horizontal(|ui| {
                chosen |= ui.button(verb).clicked();
                closed |= ui.button("Cancel").clicked();
            });
        });
        if chosen && !self.typed.trim().is_empty() {
            let path = PathBuf::from(self.typed.trim());
            let is_own = self.purpose == Purpose::Save && own.is_some_and(|own| own == path);
            let must_confirm = matches!(self.purpose, Purpose::Save | Purpose::HandOver(_))
                && path.exists()
                && !is_own
                && self.confirms.as_deref() != Some(path.as_path());
            if must_confirm {
                self.confirms = Some(path);
                self.fresh = true;
            } else {
                return Shown::Answered(match self.purpose {
                    Purpose::Open => Answer::Open(path),
                    Purpose::Beside => Answer::Beside(path),
                    Purpose::Readings => Answer::Readings(path),
                    Purpose::Save => Answer::Save(path),
                    Purpose::HandOver(what) => Answer::HandOver(what, path),
                });
            }
        } else if chosen {
            self.fresh = true;
        }
        if closed { Shown::Closed } else { Shown::Open }
    }
}

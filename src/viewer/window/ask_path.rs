//! The field for a path, where the desktop has no file dialog.

use std::path::{Path, PathBuf};

use bevy::ecs::resource::Resource;
use egui::{Align2, Key};

use super::mail::Purpose;

/// The open field, if any.
#[derive(Debug, Default, Resource)]
pub(super) struct AskPath(Option<Field>);

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
            (_, Some(near)) => near.display().to_string(),
            (Purpose::Open, None) => String::new(),
            (Purpose::Save, None) => std::path::absolute("my-bay.ron")
                .unwrap_or_default()
                .display()
                .to_string(),
        };
        self.0 = Some(Field {
            purpose,
            typed,
            confirms: None,
            fresh: true,
        });
    }

    /// Whether the field is open: keys are then for it.
    pub(super) fn is_open(&self) -> bool {
        self.0.is_some()
    }

    /// Shows the field; returns the file once one is chosen. `own` is the open file, which may be
    /// written over unasked.
    pub(super) fn show(
        &mut self,
        context: &egui::Context,
        own: Option<&Path>,
    ) -> Option<(Purpose, PathBuf)> {
        let field = self.0.as_mut()?;
        let mut chosen = false;
        let mut closed = context.input(|input| input.key_pressed(Key::Escape));
        let (title, verb) = match field.purpose {
            Purpose::Open => ("Open a bay file", "Open"),
            Purpose::Save => ("Save the bay file as", "Save"),
        };
        egui::Window::new(title)
            .id("path".into())
            .collapsible(false)
            .resizable(false)
            .anchor(Align2::CENTER_CENTER, [0.0, 0.0])
            .show(context, |ui| {
                ui.label("Path of the file:");
                let edit = ui.add(
                    egui::TextEdit::singleline(&mut field.typed)
                        .id("path field".into())
                        .desired_width(520.0),
                );
                if std::mem::take(&mut field.fresh) {
                    edit.request_focus();
                }
                if edit.changed() {
                    field.confirms = None;
                }
                chosen |= edit.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
                if let Some(there) = &field.confirms {
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
        if chosen && !field.typed.trim().is_empty() {
            let path = PathBuf::from(field.typed.trim());
            let is_own = own.is_some_and(|own| own == path);
            let must_confirm = field.purpose == Purpose::Save
                && path.exists()
                && !is_own
                && field.confirms.as_deref() != Some(path.as_path());
            if must_confirm {
                field.confirms = Some(path);
                field.fresh = true;
            } else {
                let purpose = field.purpose;
                self.0 = None;
                return Some((purpose, path));
            }
        } else if chosen {
            field.fresh = true;
        }
        if closed {
            self.0 = None;
        }
        None
    }
}

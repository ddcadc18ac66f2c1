//! Where the posts stand by tape readings, as the command of that name says it.

use egui::{Context, RichText, ScrollArea, Window};

use super::{Action, Desk};

/// What was said of the readings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AsBuilt {
    /// The file of readings, as a title.
    pub readings: String,
    /// The whole text.
    pub text: String,
    /// The state of the document that it is of.
    pub generation: u64,
}

/// The text in a window of its own, while there is one.
pub fn show(context: &Context, desk: &Desk, out: &mut Vec<Action>) {
    let Some(built) = &desk.as_built else { return };
    let mut is_open = true;
    let room = context.content_rect().size();
    Window::new(format!("As built: {}", built.readings))
        .id(egui::Id::new("as built"))
        .open(&mut is_open)
        .collapsible(false)
        .default_size([room.x * 0.7, room.y * 0.8])
        .max_size([room.x * 0.98, room.y * 0.92])
        .show(context, |ui| {
            if built.generation != desk.document.generation() {
                ui.strong("The bay was changed since: read the tape readings again.");
            }
            if ui.button("copy").on_hover_text("All of the text").clicked() {
                ui.ctx().copy_text(built.text.clone());
            }
            ui.separator();
            ScrollArea::both().auto_shrink(false).show(ui, |ui| {
                let text = RichText::new(&built.text).monospace();
                ui.add(egui::Label::new(text).extend());
            });
        });
    if !is_open {
        out.push(Action::DropAsBuilt);
    }
}

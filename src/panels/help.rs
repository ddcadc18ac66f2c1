//! Which keys are there?

use egui::{Align2, Context, Grid, ScrollArea, Window};

use super::keys::{Group, Stroke, TABLE};
use super::{Action, Desk};

/// The sheet's columns.
const COLUMNS: [&[Group]; 3] = [
    &[Group::Rise, Group::Door, Group::File],
    &[Group::View],
    &[Group::Show],
];

/// The help sheet, from the table of keys that is obeyed.
pub fn show(context: &Context, desk: &Desk, out: &mut Vec<Action>) {
    if !desk.settings.help {
        return;
    }
    let mut is_open = true;
    let room = context.content_rect().size();
    Window::new("Keys")
        .open(&mut is_open)
        .collapsible(false)
        .resizable(false)
        .anchor(Align2::CENTER_CENTER, [0.0, 0.0])
        .max_width(room.x * 0.95)
        .show(context, |ui| {
            ui.small(
                "Mouse: drag to turn, drag with Shift or the right button to move, wheel for \
                 nearer and farther. Tab goes through the fields and buttons.",
            );
            ui.small(
                "On the ladder: drag the arrow, or press the column, to raise or lower the \
                 carriage; press a lock to go to it.",
            );
            ScrollArea::vertical()
                .max_height(room.y * 0.78)
                .min_scrolled_height(room.y * 0.78)
                .show(ui, |ui| {
                    ui.horizontal_top(|ui| {
                        for groups in COLUMNS {
                            ui.vertical(|ui| {
                                for group in groups {
                                    table(ui, *group);
                                }
                            });
                        }
                    });
                });
        });
    if !is_open {
        out.push(Action::Help(false));
    }
}

fn table(ui: &mut egui::Ui, group: Group) {
    ui.strong(group.word());
    let spacing = ui.spacing().item_spacing;
    Grid::new(group)
        .num_columns(2)
        .min_row_height(ui.text_style_height(&egui::TextStyle::Body))
        .spacing([spacing.x * 1.6, spacing.y * 0.5])
        .striped(true)
        .show(ui, |ui| {
            for binding in TABLE.iter().filter(|binding| binding.group == group) {
                let keys: Vec<String> = binding.strokes.iter().map(Stroke::label).collect();
                ui.label(keys.join("  or  "));
                ui.label(binding.does);
                ui.end_row();
            }
        });
    ui.add_space(6.0);
}

//! What hangs or stands in the room, and how is it added, moved and taken away?

pub(super) mod fresh;
mod moving;
mod taken;

use egui::{Button, Id, RichText, ScrollArea, Ui};

use super::editor::Editor;
use super::{line, rows, table};
use crate::panels::Action;

use moving::Direction;

/// The list's path.
const LIST: &str = "garage.obstacles";

/// Draws the list, and the thing chosen in it.
pub(super) fn show(ui: &mut Ui, editor: &mut Editor<'_>) {
    let chosen = Id::new("bay thing");
    let count = editor.written.len(LIST);
    ui.menu_button("Add to the room", |ui| {
        for (label, fresh) in fresh::ALL {
            if ui.button(*label).clicked() {
                editor.out.push(Action::Append {
                    list: LIST.into(),
                    item: fresh(&editor.now(LIST)),
                });
                ui.data_mut(|data| data.insert_temp(chosen, count));
                ui.close();
            }
        }
    });
    line::faults(ui, editor, LIST);
    if count == 0 {
        ui.label(RichText::new("Nothing hangs or stands in the room.").weak());
        return;
    }
    let mut at: usize = ui.data(|data| data.get_temp(chosen)).unwrap_or(0);
    let height = ui.spacing().interact_size.y;
    ScrollArea::vertical()
        .id_salt("bay things")
        .max_height(9.0 * height)
        .auto_shrink([false, true])
        .show_rows(ui, height, count, |ui, range| {
            for index in range {
                let item = format!("{LIST}[{index}]");
                if entry(ui, editor, &item, index == at) {
                    at = index;
                    ui.data_mut(|data| data.insert_temp(chosen, index));
                }
            }
        });
    ui.separator();
    if at < count {
        thing(ui, editor, &format!("{LIST}[{at}]"));
    }
}

/// Draws a thing's line in the list; true when it was chosen.
fn entry(ui: &mut Ui, editor: &Editor<'_>, item: &str, is_chosen: bool) -> bool {
    let (name, kind) = table::title(&editor.now(item));
    let mut text = RichText::new(format!("{name} \u{b7} {kind}"));
    if editor.faults.within(item) > 0 {
        text = text.color(ui.visuals().error_fg_color);
    }
    ui.add(Button::selectable(is_chosen, text).truncate())
        .clicked()
}

fn thing(ui: &mut Ui, editor: &mut Editor<'_>, item: &str) {
    let (name, _) = table::title(&editor.now(item));
    line::faults(ui, editor, item);
    arrows(ui, editor, item, &name);
    let list = &table::OBSTACLES[0];
    if let table::What::List(_, one, _) = list.what {
        rows::show(ui, editor, item, one);
    }
    ui.add_space(4.0);
    if ui
        .button(format!("Remove {name}"))
        .on_hover_text("Take it away; undo brings it back.")
        .clicked()
    {
        editor.take_out(item);
    }
}

fn arrows(ui: &mut Ui, editor: &mut Editor<'_>, item: &str, name: &str) {
    let far = ui.input(|input| input.modifiers.shift);
    let step = moving::step(&editor.now(item), far);
    ui.horizontal_wrapped(|ui| {
        ui.label(format!("Move {name}:"));
        for direction in Direction::ALL {
            let changes = moving::changes(&editor.now(item), item, direction, step);
            let button = Button::new(direction.word());
            let response = ui
                .add_enabled(changes.is_some(), button)
                .on_hover_text("By 1 in or 25 mm; with Shift by 1 ft or 300 mm.");
            if response.clicked()
                && let Some(changes) = changes
            {
                editor.together(changes);
            }
        }
    });
}

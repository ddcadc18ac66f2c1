//! Which key asks for what?
//!
//! One table holds every key, what it does and the words for it: the help sheet and the menus
//! are written from the table that is obeyed.

mod binding;
mod stroke;
mod table;

use egui::{Event, Modifiers};

pub use binding::{Binding, Group};
pub use stroke::Stroke;
pub use table::TABLE;
pub(super) use table::middle_m;

use super::{Action, Desk};

/// What the keys pressed since the last frame ask for. Keys typed into a field are left to it, and
/// so are arrows and the space bar while a button or slider has the keyboard. Keys that were
/// obeyed are taken out of the input.
pub fn actions(ui: &egui::Ui, desk: &Desk, out: &mut Vec<Action>) {
    let context = ui.ctx();
    let has = if context.text_edit_focused() || was_left_by_escape(context) {
        Has::Field
    } else if context.egui_wants_keyboard_input() || egui::Popup::is_any_open(context) {
        Has::Widget
    } else {
        Has::Nothing
    };
    ui.input_mut(|input| {
        input.events.retain(|event| {
            let Event::Key {
                key,
                pressed: true,
                modifiers,
                ..
            } = event
            else {
                return true;
            };
            let Some(binding) = bound(*key, *modifiers, has) else {
                return true;
            };
            match (binding.action)(desk) {
                Some(action) => {
                    out.push(action);
                    false
                }
                None => true,
            }
        });
    });
}

fn field_id() -> egui::Id {
    egui::Id::new("bayrise field had the keyboard")
}

/// Notes, when everything was shown, whether a field has the keyboard.
pub(super) fn note_field(context: &egui::Context) {
    let has = context.text_edit_focused();
    context.data_mut(|data| data.insert_temp(field_id(), has));
}

/// True when Escape has taken the keyboard from a field before anything was shown: it is the field's
/// own, which drops what was typed.
fn was_left_by_escape(context: &egui::Context) -> bool {
    let had = context.data(|data| data.get_temp(field_id()));
    had == Some(true) && context.input(|input| input.key_pressed(egui::Key::Escape))
}

/// What has the keyboard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Has {
    Nothing,
    Widget,
    Field,
}

fn bound(key: egui::Key, modifiers: Modifiers, has: Has) -> Option<&'static Binding> {
    TABLE.iter().find(|binding| {
        binding
            .strokes
            .iter()
            .any(|stroke| stroke.is(key, modifiers) && may_be_taken(stroke, binding, has))
    })
}

fn may_be_taken(stroke: &Stroke, binding: &Binding, has: Has) -> bool {
    match has {
        Has::Nothing => true,
        Has::Widget => !stroke.works_a_widget(),
        Has::Field => binding.in_fields && stroke.types_nothing(),
    }
}

/// The keys for an action as a menu shows them; empty when it has none.
#[must_use]
pub fn of(does: &str) -> String {
    TABLE
        .iter()
        .find(|binding| binding.does == does)
        .and_then(|binding| binding.strokes.first())
        .map(Stroke::label)
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;

    #[test]
    fn no_key_is_bound_twice() {
        let mut seen = HashSet::new();
        for stroke in TABLE.iter().flat_map(|binding| binding.strokes) {
            assert!(seen.insert(stroke.label()), "{}", stroke.label());
        }
    }

    #[test]
    fn every_binding_is_found_by_each_of_its_keys() {
        for binding in TABLE {
            for stroke in binding.strokes {
                let modifiers = stroke.modifiers();
                let found = bound(stroke.key, modifiers, Has::Nothing).unwrap();
                assert_eq!(found.does, binding.does, "{}", stroke.label());
            }
        }
    }

    #[test]
    fn a_field_keeps_what_is_typed_into_it() {
        let typed = [
            egui::Key::D,
            egui::Key::Space,
            egui::Key::Num1,
            egui::Key::Questionmark,
        ];
        for key in typed {
            assert!(bound(key, Modifiers::NONE, Has::Field).is_none(), "{key:?}");
        }
        assert!(bound(egui::Key::Z, Modifiers::COMMAND, Has::Field).is_none());
        assert!(bound(egui::Key::S, Modifiers::COMMAND, Has::Field).is_some());
    }
}

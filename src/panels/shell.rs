//! Where is each panel, and what is left for the view?

use egui::{Panel, Rect, Ui};

use super::settings::Section;
use super::{
    Action, Desk, as_built, compare_table, door_bar, edit, help, keys, ladder, menu, notices,
    overlay, rise_bar, show_mode, style, verdict, view_bar,
};

/// Shows every panel around the view and what is written over it, and obeys the keys; returns
/// where the view is: with a bay beside the open one, where both are, see [`overlay::halves`].
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) -> Rect {
    style::apply(ui.ctx(), &desk.settings);
    ui.set_style(ui.ctx().global_style());
    keys::actions(ui, desk, out);
    let waiting = wait_for_the_field(ui.ctx(), out);
    let view = if desk.settings.show_mode {
        notices::show(ui, desk, out);
        show_mode::show(ui, desk, out)
    } else {
        panels(ui, desk, out)
    };
    compare_table::show(ui.ctx(), desk, out);
    as_built::show(ui.ctx(), desk, out);
    help::show(ui.ctx(), desk, out);
    if !waiting.is_empty() {
        if edit::holds_refused(ui.ctx()) {
            out.push(Action::Tell(
                "Nothing was done yet: a field holds what the file does not take. Correct it, or \
                 press Escape in it to drop it."
                    .into(),
            ));
        } else {
            out.extend(waiting);
        }
    }
    hold_what_loses(ui.ctx(), desk, out);
    keys::note_field(ui.ctx());
    view
}

/// A text that the file does not take and that was left in a field is not lost without a word.
fn hold_what_loses(context: &egui::Context, desk: &Desk, out: &mut Vec<Action>) {
    let loses = |action: &Action| {
        matches!(
            action,
            Action::SaveAndLeave
                | Action::Quit
                | Action::New
                | Action::Open
                | Action::OpenFile(_)
                | Action::OpenCell(_)
        )
    };
    if !out.iter().any(loses) {
        return;
    }
    let Some(field) = edit::left_in(context, desk) else {
        return;
    };
    out.retain(|action| !loses(action));
    out.push(Action::Tell(format!(
        "Nothing was done yet: the field {field} holds what the file does not take. Correct it, or \
         press Escape in it to drop it."
    )));
}

/// What is typed into a field becomes the file's before anything is done with the file, and before
/// the field goes from the screen: it lets go of the keyboard, and what was asked for waits until the
/// field has been seen.
fn wait_for_the_field(context: &egui::Context, out: &mut Vec<Action>) -> Vec<Action> {
    let needs_the_field = |action: &Action| {
        matches!(
            action,
            Action::Save
                | Action::SaveAndLeave
                | Action::SaveAs
                | Action::Quit
                | Action::New
                | Action::Open
                | Action::OpenFile(_)
                | Action::OpenCell(_)
                | Action::Reload
                | Action::ShowMode(_)
                | Action::Section(_)
        )
    };
    if !context.text_edit_focused() || !out.iter().any(needs_the_field) {
        return Vec::new();
    }
    context.memory_mut(|memory| {
        if let Some(id) = memory.focused() {
            memory.surrender_focus(id);
        }
    });
    let (waiting, others) = out.drain(..).partition(needs_the_field);
    *out = others;
    waiting
}

fn panels(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) -> Rect {
    let frame = style::panel_frame(&desk.settings);
    let scale = style::scale(&desk.settings);
    let whole = ui.available_rect_before_wrap();
    Panel::top("menu")
        .frame(frame)
        .show(ui, |ui| menu::show(ui, desk, out));
    notices::show(ui, desk, out);
    Panel::bottom("controls").frame(frame).show(ui, |ui| {
        rise_bar::show(ui, desk, out);
        ui.horizontal_wrapped(|ui| {
            door_bar::show(ui, desk, out);
            view_bar::show(ui, desk, out);
        });
    });
    let widths = Widths::of(whole.width(), scale, desk.settings.section.is_some());
    if !widths.is_tight {
        Panel::left("sections")
            .frame(frame)
            .resizable(false)
            .default_size(10.0)
            .show(ui, |ui| ui.vertical(|ui| sections(ui, desk, out)));
    }
    if let Some(section) = desk.settings.section {
        Panel::left("edit")
            .frame(frame)
            .resizable(true)
            .default_size(widths.edit)
            .max_size(whole.width() * 0.45)
            .show(ui, |ui| {
                if widths.is_tight {
                    ui.horizontal_wrapped(|ui| sections(ui, desk, out));
                    ui.separator();
                }
                edit::show(ui, desk, section, out);
            });
    }
    // What was drawn wide for reading is not as wide beside the fields.
    Panel::right(if widths.is_tight {
        "verdict beside fields"
    } else {
        "verdict"
    })
    .frame(frame)
    .resizable(true)
    .default_size(widths.verdict)
    .max_size(whole.width() * 0.5)
    .show(ui, |ui| verdict::show(ui, desk, out));
    Panel::right("ladder")
        .frame(frame)
        .resizable(false)
        .exact_size(widths.ladder)
        .show(ui, |ui| ladder::show(ui, desk, out));
    let view = ui.available_rect_before_wrap();
    overlay::paint_all(&ui.painter_at(view), view, desk, false);
    view
}

/// How wide the panels beside the view are at first, points.
struct Widths {
    edit: f32,
    verdict: f32,
    ladder: f32,
    /// With the fields open there is no room for the others as they like to be.
    is_tight: bool,
}

impl Widths {
    /// With the fields open, windows less wide than this are tight.
    const TIGHT: f32 = 1560.0;

    fn of(whole: f32, scale: f32, is_editing: bool) -> Self {
        let is_tight = is_editing && whole < Self::TIGHT * scale;
        let [verdict, ladder] = if is_tight {
            [214.0, 150.0]
        } else {
            [300.0, ladder::WIDTH]
        };
        // They may take most of a narrow window, never all of it.
        Self {
            edit: (300.0 * scale).min(whole * 0.3),
            verdict: (verdict * scale).min(whole * 0.34),
            ladder: (ladder * scale).min(whole * 0.24),
            is_tight,
        }
    }
}

/// The tabs of the bay file's parts: one under the other, or over the fields where it is tight.
fn sections(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    // As wide as its longest word, at any size of text.
    ui.style_mut().wrap_mode = Some(egui::TextWrapMode::Extend);
    for section in Section::ALL {
        let is_shown = desk.settings.section == Some(section);
        if ui.selectable_label(is_shown, section.word()).clicked() {
            out.push(Action::Section((!is_shown).then_some(section)));
        }
    }
}

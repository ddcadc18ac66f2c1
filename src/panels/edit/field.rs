//! How is a value typed?
//!
//! A good text becomes the file's on Enter, Tab or a click elsewhere; a bad one stays in the field
//! with what is wrong beneath it, and nothing changes. Escape drops it.

mod left;

use egui::text::{CCursor, CCursorRange};
use egui::{Id, Key, Stroke, StrokeKind, TextEdit, Ui};

use super::editor::{Editor, Mark, Seen};
use super::table::{Entry, Fallback, Row};
use super::typed::{self, Refused};
use super::{choice, line};

pub(in crate::panels) use left::left_in;

/// What was typed into a field, over the text that stood there.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
struct Draft {
    text: String,
    over: String,
}

/// The id of the field of a path.
fn id_of(path: &str) -> Id {
    Id::new(("bay field", path))
}

fn refused_id() -> Id {
    Id::new("bay field refused")
}

/// True when in this pass a field was left with a text that the file does not take.
pub(in crate::panels) fn holds_refused(context: &egui::Context) -> bool {
    let pass = context.cumulative_pass_nr();
    context.data(|data| data.get_temp::<u64>(refused_id())) == Some(pass)
}

/// Draws the field of a path.
pub(super) fn show(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (entry, fallback): (Entry, Fallback),
) {
    match entry {
        Entry::Flag => choice::flag(ui, editor, path, row, fallback),
        Entry::Words(table) => choice::words(ui, editor, path, row, (table, fallback)),
        _ => typing(ui, editor, path, row, (entry, fallback)),
    }
}

fn typing(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (entry, fallback): (Entry, Fallback),
) {
    let id = id_of(path);
    let seen = editor.seen(path, entry, fallback);
    // A draft over a text that has changed since, by undoing say, is about something else.
    let draft = ui
        .data(|data| data.get_temp::<Draft>(id))
        .filter(|draft| draft.over == seen.text);
    let mut text = draft.map_or_else(|| seen.text.clone(), |draft| draft.text);
    let can_take_out = editor.can_take_out(path, fallback);
    let refusal = |text: &str| {
        (text != seen.text)
            .then(|| wanted(entry, fallback, text).err())
            .flatten()
    };
    let marked = (seen.mark, can_take_out);
    let width = line::control_width(editor.frame);
    let response = line::show(ui, editor, path, row, marked, |ui, label| {
        edit(ui, (id, label, width), &seen, &mut text, &refusal)
    });
    if response.has_focus() && !row.hint.is_empty() {
        ui.add(egui::Label::new(egui::RichText::new(row.hint).small().weak()).wrap());
    }
    if let Some(Refused { message, cure }) = refusal(&text) {
        line::refused(ui, &message, &cure);
    }
    let left = response.lost_focus();
    let dropped = left && ui.input(|input| input.key_pressed(Key::Escape));
    if left && !dropped && text != seen.text {
        match wanted(entry, fallback, &text) {
            Ok(Some(source)) => editor.set(path, source),
            Ok(None) if fallback == Fallback::Open => editor.leave_out(path),
            Ok(None) if seen.mark == Mark::Own => editor.take_out(path),
            Ok(None) => {}
            Err(_) => {
                let pass = ui.ctx().cumulative_pass_nr();
                ui.data_mut(|data| data.insert_temp(refused_id(), pass));
                let over = seen.text;
                ui.data_mut(|data| data.insert_temp(id, Draft { text, over }));
                left::note(ui.ctx(), editor, path, Some(row.label));
                // Who pressed Enter goes on typing here, and not into the keys of the window.
                if ui.input(|input| input.key_pressed(Key::Enter)) {
                    ui.memory_mut(|memory| memory.request_focus(id));
                }
                return;
            }
        }
    }
    let stays = !left && refusal(&text).is_some();
    left::note(ui.ctx(), editor, path, stays.then_some(row.label));
    if left || text == seen.text {
        ui.data_mut(|data| data.remove_temp::<Draft>(id));
    } else {
        let over = seen.text;
        ui.data_mut(|data| data.insert_temp(id, Draft { text, over }));
    }
}

/// The source that a text asks for; none asks that the value be left out.
fn wanted(entry: Entry, fallback: Fallback, text: &str) -> Result<Option<String>, Refused> {
    let may_be_empty = matches!(entry, Entry::Quantities(_) | Entry::Texts);
    if text.trim().is_empty() && fallback != Fallback::Needed && !may_be_empty {
        return Ok(None);
    }
    typed::source(entry, text).map(Some)
}

fn edit(
    ui: &mut Ui,
    (id, label, width): (Id, Id, f32),
    seen: &Seen,
    text: &mut String,
    refusal: &impl Fn(&str) -> Option<Refused>,
) -> egui::Response {
    let is_own = seen.mark == Mark::Own || *text != seen.text;
    let weak = (!is_own).then(|| ui.visuals().weak_text_color());
    let output = TextEdit::singleline(text)
        .id(id)
        .desired_width(width)
        .text_color_opt(weak)
        .show(ui);
    let response = output.response.response.labelled_by(label);
    if response.gained_focus() {
        // What is typed first replaces the whole value.
        let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
        let mut state = output.state;
        state.cursor.set_char_range(Some(all));
        state.store(ui.ctx(), id);
    }
    if refusal(text).is_some() {
        let stroke = Stroke::new(1.5, ui.visuals().error_fg_color);
        ui.painter()
            .rect_stroke(response.rect, 2.0, stroke, StrokeKind::Outside);
    }
    response
}

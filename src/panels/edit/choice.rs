//! How is a value chosen from a list?

use egui::{ComboBox, Ui};

use super::editor::{Editor, Mark};
use super::line;
use super::table::{Entry, Fallback, Form, Row};

/// What stands in the list for a value that is left out.
const NOT_GIVEN: &str = "not given";

/// Draws a choice of words.
pub(super) fn words(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (table, fallback): (&'static [(&'static str, &'static str)], Fallback),
) {
    let seen = editor.seen(path, Entry::Words(table), fallback);
    let at = table.iter().position(|(word, _)| *word == seen.text);
    let labels: Vec<&str> = table.iter().map(|(_, label)| *label).collect();
    let chosen = choose(
        ui,
        editor,
        path,
        row,
        (seen.mark, fallback),
        (at, &seen.text, &labels),
    );
    match chosen {
        Some(Choice::Of(index)) => editor.set(path, table[index].0),
        Some(Choice::NotGiven) => editor.leave_out(path),
        None => {}
    }
}

/// Draws a yes or no.
pub(super) fn flag(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    fallback: Fallback,
) {
    let seen = editor.seen(path, Entry::Flag, fallback);
    let mut on = seen.text == "true";
    ui.horizontal(|ui| {
        let response = ui.checkbox(&mut on, row.label);
        if !row.hint.is_empty() {
            response.clone().on_hover_text(row.hint);
        }
        if response.changed() {
            editor.set(path, if on { "true" } else { "false" });
        }
    });
    line::faults(ui, editor, path);
}

/// Draws the choice among several forms; returns the form that is there now.
pub(super) fn forms(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (forms, fallback): (&'static [Form], Fallback),
) -> Option<&'static Form> {
    let now = editor.now(path);
    let at = forms.iter().position(|form| (form.is)(&now));
    let source = now.source();
    if row.label.is_empty() {
        return at.map(|at| &forms[at]);
    }
    let mark = editor.seen(path, Entry::Text, fallback).mark;
    let labels: Vec<&str> = forms.iter().map(|form| form.label).collect();
    let chosen = choose(
        ui,
        editor,
        path,
        row,
        (mark, fallback),
        (at, &source, &labels),
    );
    match chosen {
        Some(Choice::Of(index)) => {
            let fresh = (forms[index].fresh)(&editor.now(path));
            editor.set(path, fresh);
        }
        Some(Choice::NotGiven) => editor.leave_out(path),
        None => {}
    }
    at.map(|at| &forms[at])
}

/// What was chosen.
enum Choice {
    Of(usize),
    NotGiven,
}

/// Draws the list; returns what was chosen just now and is not what is there.
fn choose(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (mark, fallback): (Mark, Fallback),
    (at, source, labels): (Option<usize>, &str, &[&str]),
) -> Option<Choice> {
    let can_take_out = editor.can_take_out(path, fallback);
    let is_open = fallback == Fallback::Open;
    let shown: String = match at {
        Some(at) => labels[at].into(),
        None if source.is_empty() || source == "None" => NOT_GIVEN.into(),
        None => source.chars().take(40).collect(),
    };
    let marked = (mark, can_take_out && !is_open);
    let width = line::control_width(editor.frame);
    line::show(ui, editor, path, row, marked, |ui, label| {
        let mut text = egui::RichText::new(shown);
        if mark != Mark::Own {
            text = text.weak();
        }
        let mut chosen = None;
        let combo = ComboBox::from_id_salt(("bay choice", path))
            .width(width)
            .selected_text(text)
            .truncate();
        let response = combo.show_ui(ui, |ui| {
            for (index, label) in labels.iter().enumerate() {
                if ui.selectable_label(at == Some(index), *label).clicked() && at != Some(index) {
                    chosen = Some(Choice::Of(index));
                }
            }
            if is_open && ui.selectable_label(at.is_none(), NOT_GIVEN).clicked() && at.is_some() {
                chosen = Some(Choice::NotGiven);
            }
        });
        let response = response.response.labelled_by(label);
        if !row.hint.is_empty() {
            response.on_hover_text(row.hint);
        }
        chosen
    })
}

//! How are the rows of a table drawn, one in another?

use egui::{CollapsingHeader, Id, RichText, Ui};

use super::editor::Editor;
use super::now::Now;
use super::paths::{CORNERS, PAIRS, join};
use super::table::{Fresh, Row, What};
use super::{choice, counted, field, line};
use crate::panels::Change;

/// Draws rows, whose record stands at the path `above`.
pub(super) fn show(ui: &mut Ui, editor: &mut Editor<'_>, above: &str, rows: &'static [Row]) {
    for row in rows {
        one(ui, editor, &join(above, row.name), row);
    }
}

fn one(ui: &mut Ui, editor: &mut Editor<'_>, path: &str, row: &'static Row) {
    match row.what {
        What::Field(entry, fallback) => field::show(ui, editor, path, row, (entry, fallback)),
        What::Group(rows, open) => {
            let faults = errors(editor, path, row);
            header(ui, (path, row.label), row.label, (open, faults), |ui| {
                if !row.name.is_empty() {
                    line::faults(ui, editor, path);
                }
                show(ui, editor, path, rows);
            });
        }
        What::Maybe(rows, fresh) => maybe(ui, editor, path, row, (rows, fresh)),
        What::Variant(forms, fallback) => {
            let form = choice::forms(ui, editor, path, row, (forms, fallback));
            if let Some(form) = form {
                if row.label.is_empty() {
                    show(ui, editor, path, form.rows);
                } else if !form.rows.is_empty() {
                    ui.indent(("bay form", path), |ui| show(ui, editor, path, form.rows));
                }
            }
        }
        What::List(one, rows, fresh) => list(ui, editor, path, row, (one, rows, fresh)),
        What::Corners(rows) => corners(ui, editor, path, row, rows),
    }
}

/// How many errors a row shows, within it too.
fn errors(editor: &Editor<'_>, path: &str, row: &Row) -> usize {
    match row.what {
        What::Group(rows, _) if row.name.is_empty() => rows
            .iter()
            .map(|row| errors(editor, &join(path, row.name), row))
            .sum(),
        _ => editor.faults.within(path),
    }
}

/// Draws a heading that opens and shuts, with the faults behind it counted.
pub(super) fn header(
    ui: &mut Ui,
    salt: (&str, &str),
    text: &str,
    (open, faults): (bool, usize),
    contents: impl FnOnce(&mut Ui),
) {
    let text = if faults > 0 {
        RichText::new(format!("{text} ({})", counted(faults))).color(ui.visuals().error_fg_color)
    } else {
        RichText::new(text)
    };
    CollapsingHeader::new(text)
        .id_salt(("bay heading", salt))
        .default_open(open)
        .show(ui, contents);
}

fn maybe(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (rows, fresh): (&'static [Row], Fresh),
) {
    let was = editor.value(path).is_some();
    let mut on = was;
    let response = ui.checkbox(&mut on, row.label);
    if !row.hint.is_empty() {
        response.on_hover_text(row.hint);
    }
    if on && !was {
        let fresh = fresh(&editor.now(path));
        editor.set(path, fresh);
    } else if was && !on {
        editor.leave_out(path);
    }
    line::faults(ui, editor, path);
    if was {
        ui.indent(("bay maybe", path), |ui| show(ui, editor, path, rows));
    }
}

/// The most items that a list shows without being asked.
const MOST_OPEN: usize = 3;

fn list(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (one, rows, fresh): (&str, &'static [Row], Fresh),
) {
    let count = editor.written.len(path);
    let text = format!("{}: {count}", row.label);
    let faults = editor.faults.within(path);
    let is_short = (1..=MOST_OPEN).contains(&count);
    header(ui, (path, row.label), &text, (is_short, faults), |ui| {
        if !row.hint.is_empty() {
            ui.add(egui::Label::new(RichText::new(row.hint).weak()).wrap());
        }
        line::faults(ui, editor, path);
        for index in 0..count {
            let item = format!("{path}[{index}]");
            let name = editor.written.value(&format!("{item}.name"));
            let name = name.map_or_else(|| format!("{one} {}", index + 1), |name| name.text);
            let faults = editor.faults.within(&item);
            header(ui, (&item, "item"), &name, (false, faults), |ui| {
                line::faults(ui, editor, &item);
                show(ui, editor, &item, rows);
                if ui.button(format!("Remove {name}")).clicked() {
                    editor.take_out(&item);
                }
            });
        }
        if ui.button(format!("Add {one}")).clicked() {
            let changes = adding(&editor.now(path), path, fresh);
            editor.together(changes);
        }
    });
}

/// The changes that add an item to a list: at its end, but the last station of an outline lies at
/// the body's end, and a new one goes between the last two.
pub(super) fn adding(now: &Now<'_>, path: &str, fresh: Fresh) -> Vec<Change> {
    let append = |item| Change::Append {
        list: path.into(),
        item,
    };
    let Some(last) = now
        .count()
        .checked_sub(1)
        .filter(|_| path == "vehicle.roof")
    else {
        return vec![append(fresh(now))];
    };
    let mut changes = vec![append(
        now.text_in(&format!("[{last}]")).unwrap_or_default(),
    )];
    let between = fresh(now);
    changes.push(Change::Set {
        path: format!("{path}[{last}]"),
        value: between,
    });
    changes
}

fn corners(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &'static Row,
    rows: &'static [Row],
) {
    let faults = editor.faults.within(path);
    header(ui, (path, row.label), row.label, (false, faults), |ui| {
        line::faults(ui, editor, path);
        let are_apart = CORNERS
            .iter()
            .any(|(corner, ..)| editor.value(&join(path, corner)).is_some());
        let id = Id::new(("bay corners", path));
        let mut apart = are_apart || ui.data(|data| data.get_temp(id)).unwrap_or(false);
        let text = format!("{}: left and right differ", row.label);
        let check = ui.add_enabled(!are_apart, egui::Checkbox::new(&mut apart, text));
        if check.changed() {
            ui.data_mut(|data| data.insert_temp(id, apart));
        }
        let pairs = PAIRS.iter().map(|(name, label)| (*name, *label));
        let singles = CORNERS.iter().map(|(name, _, label)| (*name, *label));
        let shown: Vec<(&str, &str)> = if apart {
            singles.collect()
        } else {
            pairs.collect()
        };
        for (name, label) in shown {
            let corner = join(path, name);
            let faults = editor.faults.within(&corner);
            header(ui, (&corner, "corner"), label, (true, faults), |ui| {
                line::faults(ui, editor, &corner);
                show(ui, editor, &corner, rows);
            });
        }
    });
}

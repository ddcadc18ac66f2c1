//! What does the bay file say, and how is it changed?
//!
//! The tables in `table` say which fields there are; everything here walks them. What is typed and
//! not yet good lives in egui's memory, by path, so that the panel itself stays a function over the
//! desk.

mod choice;
mod editor;
mod faults;
mod field;
mod line;
mod now;
mod paths;
mod preset;
mod rows;
mod table;
#[cfg(test)]
mod tests;
mod things;
mod typed;

pub(in crate::panels) use field::{holds_refused, left_in};

use super::settings::Section;
use super::{Action, Desk};

use editor::Editor;
use faults::Faults;

/// One part of the bay file as fields.
pub fn show(ui: &mut egui::Ui, desk: &Desk, section: Section, out: &mut Vec<Action>) {
    egui::ScrollArea::vertical()
        .id_salt(("bay section", section))
        .auto_shrink(false)
        .show(ui, |ui| contents(ui, desk, section, out));
}

fn contents(ui: &mut egui::Ui, desk: &Desk, section: Section, out: &mut Vec<Action>) {
    let written = desk.document.written();
    let has = |field: &str| written.is_some_and(|written| written.value(field).is_some());
    let roots = table::roots(section, has);
    let faults = Faults::of(desk, section, &roots);
    loose(ui, &faults, out);
    let Some(written) = written else {
        ui.label(
            "The file can't be taken apart into fields until that is put right: undo the last \
             change, or put it right in a text editor.",
        );
        return;
    };
    let mut editor = Editor {
        written,
        faults: &faults,
        generation: desk.document.generation(),
        frame: ui.available_rect_before_wrap(),
        out,
    };
    match section {
        Section::Lift => preset::show(ui, &mut editor, &preset::LIFT, desk.document.text()),
        Section::Vehicle => preset::show(ui, &mut editor, &preset::VEHICLE, desk.document.text()),
        Section::Obstacles => return things::show(ui, &mut editor),
        Section::Garage | Section::Ground | Section::Parking | Section::Policy => {}
    }
    for root in &roots {
        rows::show(ui, &mut editor, root.path, root.rows);
    }
}

/// Faults that no field here has, and where the others are.
fn loose(ui: &mut egui::Ui, faults: &Faults, out: &mut Vec<Action>) {
    for fault in &faults.loose {
        line::fault(ui, fault, true);
    }
    for (section, count) in &faults.elsewhere {
        let text = format!(
            "{} in \u{201c}{}\u{201d}: show",
            counted(*count),
            section.word()
        );
        let text = egui::RichText::new(text).color(ui.visuals().error_fg_color);
        if ui.link(text).clicked() {
            out.push(Action::Section(Some(*section)));
        }
    }
    if !faults.loose.is_empty() || !faults.elsewhere.is_empty() {
        ui.separator();
    }
}

fn counted(faults: usize) -> String {
    format!("{faults} fault{}", if faults == 1 { "" } else { "s" })
}

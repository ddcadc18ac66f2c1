//! One combination of the table in full: its bill, and which ceiling and vehicle each lock needs.

use egui::{Align, Grid, Layout, Panel, RichText, ScrollArea, Ui};

use super::{Action, Compared};
use crate::report::CAUTIONS;
use crate::report::compare::{BILL_NOTE, Detail};

/// The most rows of the table that room is kept for above.
const ROWS_ABOVE: usize = 6;

/// Below the rows, in a panel that can be dragged higher.
pub(super) fn show(
    ui: &mut Ui,
    compared: &Compared,
    (detail, rows): (&Detail, usize),
    out: &mut Vec<Action>,
) {
    let row = ui.spacing().interact_size.y + ui.spacing().item_spacing.y;
    // Heading, rows, and the bar to scroll them by.
    let above = row * (rows.min(ROWS_ABOVE) as f32 + 2.0);
    let most = (ui.available_height() - above).max(120.0);
    Panel::bottom("in full")
        .resizable(true)
        .default_size(most.min(420.0))
        .max_size(most)
        .show(ui, |ui| {
            ui.horizontal(|ui| {
                ui.label(RichText::new(format!("In full: {}", detail.name)).strong());
                if ui.button("Close").clicked() {
                    out.push(Action::DetailCompared(None));
                }
            });
            ScrollArea::both()
                .auto_shrink([false, false])
                .show(ui, |ui| told(ui, compared, detail));
        });
}

fn told(ui: &mut Ui, compared: &Compared, detail: &Detail) {
    if let Some(why) = &detail.no_answer {
        ui.label(format!("No answer: {why}."));
        return;
    }
    ui.columns(2, |columns| {
        // Columns set their text from edge to edge, which reads badly.
        let plain = Layout::top_down(Align::Min);
        columns[0].with_layout(plain, |ui| bill(ui, detail));
        columns[1].with_layout(plain, |ui| turned(ui, compared, detail));
    });
    ui.add_space(6.0);
    for caution in CAUTIONS {
        ui.small(caution);
    }
}

fn bill(ui: &mut Ui, detail: &Detail) {
    ui.label(RichText::new("What it costs").strong());
    if detail.bill.is_empty() {
        ui.label("No price is given in the file of options or the bay file.");
        return;
    }
    Grid::new("bill").striped(true).show(ui, |ui| {
        for [what, amount] in &detail.bill {
            ui.label(what);
            ui.label(amount);
            ui.end_row();
        }
    });
    ui.small(BILL_NOTE);
}

fn turned(ui: &mut Ui, compared: &Compared, detail: &Detail) {
    ui.label(RichText::new("The other way round").strong());
    if let Some(not_measured) = &detail.not_measured {
        ui.label(format!("Not known. {not_measured}"));
        return;
    }
    let Some(turned) = &detail.turned else {
        ui.label(if compared.is_stale {
            "Not worked out: the table is old."
        } else {
            "Working it out\u{2026}"
        });
        return;
    };
    for words in &turned.says {
        ui.label(words);
    }
    Grid::new("turned").striped(true).show(ui, |ui| {
        for word in turned.head {
            ui.label(RichText::new(word).weak());
        }
        ui.end_row();
        for row in &turned.rows {
            for words in row {
                ui.label(words);
            }
            ui.end_row();
        }
    });
}

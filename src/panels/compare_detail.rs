//! One combination of the table in full: its bill, and which ceiling and vehicle each lock needs.

use egui::{Grid, Panel, RichText, ScrollArea, Ui};

use super::{Action, Compared};
use crate::report::CAUTIONS;
use crate::report::compare::{BILL_NOTE, Detail};

/// The least room that is left for the rows above.
const ROWS_HEIGHT: f32 = 160.0;

/// Below the rows, in a panel that can be dragged higher.
pub(super) fn show(ui: &mut Ui, compared: &Compared, detail: &Detail, out: &mut Vec<Action>) {
    let most = (ui.available_height() - ROWS_HEIGHT).max(120.0);
    Panel::bottom("in full")
        .resizable(true)
        .default_size((most * 0.6).min(280.0))
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
        bill(&mut columns[0], detail);
        turned(&mut columns[1], compared, detail);
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

//! How is a row laid out: its name, its control, where the value is from, and what is wrong?

use egui::{Align, Layout, RichText, Ui, WidgetInfo, WidgetType, vec2};

use super::editor::{Editor, Mark};
use super::faults::Fault;
use super::table::Row;
use super::{colour, colour_of};
use crate::drawing::palette;

/// Draws a row: its name, then its control, which is told the name's id, then the mark and the
/// button that takes the value out of the file where `can_take_out`; then the value's faults.
pub(super) fn show<R>(
    ui: &mut Ui,
    editor: &mut Editor<'_>,
    path: &str,
    row: &Row,
    (mark, can_take_out): (Mark, bool),
    control: impl FnOnce(&mut Ui, egui::Id) -> R,
) -> R {
    let inner = ui.horizontal(|ui| {
        let label = name(ui, row);
        let inner = control(ui, label);
        if !mark.word().is_empty() {
            ui.label(RichText::new(mark.word()).small().weak())
                .on_hover_text(mark.meaning());
        }
        if can_take_out && take_out_button(ui, row.label) {
            editor.take_out(path);
        }
        inner
    });
    faults(ui, editor, path);
    inner.inner
}

/// Draws a row's name; returns its id, for the control to be labelled by.
fn name(ui: &mut Ui, row: &Row) -> egui::Id {
    let width = (ui.available_width() * 0.44).clamp(80.0, 220.0);
    let size = vec2(width, ui.spacing().interact_size.y);
    let label = ui
        .allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(width);
            ui.add(egui::Label::new(row.label).wrap())
        })
        .inner;
    let id = label.id;
    if !row.hint.is_empty() {
        label.on_hover_text(row.hint);
    }
    id
}

/// How wide a control is, so that the mark and the button beside it have room.
pub(super) fn control_width(ui: &Ui) -> f32 {
    (ui.available_width() - 64.0).clamp(70.0, 260.0)
}

fn take_out_button(ui: &mut Ui, label: &str) -> bool {
    let button = ui.small_button("\u{d7}").on_hover_text(
        "Take your own value out of the file: what the preset says, or the default, holds again.",
    );
    button.widget_info(|| {
        WidgetInfo::labeled(WidgetType::Button, true, format!("Take out: {label}"))
    });
    button.clicked()
}

/// What is wrong with the value at a path.
pub(super) fn faults(ui: &mut Ui, editor: &Editor<'_>, path: &str) {
    for found in editor.faults.at(path) {
        fault(ui, found, false);
    }
}

/// One fault, with its place where there is no field beside it.
pub(super) fn fault(ui: &mut Ui, fault: &Fault, with_place: bool) {
    let place = match &fault.place {
        Some(place) if with_place => format!("{place}: "),
        _ => String::new(),
    };
    let sign = if fault.is_error {
        "\u{2716}"
    } else {
        "\u{26a0}"
    };
    let text = format!("{sign} {place}{}", fault.message);
    wrong(ui, &text, fault.cure.as_deref(), colour_of(fault));
}

/// What was typed and is refused.
pub(super) fn refused(ui: &mut Ui, message: &str, cure: &str) {
    let text = format!("\u{2716} {message}");
    wrong(ui, &text, Some(cure), colour(palette::STRIKES));
}

fn wrong(ui: &mut Ui, text: &str, cure: Option<&str>, colour: egui::Color32) {
    ui.add(egui::Label::new(RichText::new(text).color(colour)).wrap());
    if let Some(cure) = cure {
        ui.add(egui::Label::new(RichText::new(cure).weak()).wrap());
    }
}

//! How is a row laid out: its name, its control, where the value is from, and what is wrong?

use egui::{Align, Color32, Layout, Rect, RichText, Ui, WidgetInfo, WidgetType, vec2};

use super::editor::{Editor, Mark};
use super::faults::Fault;
use super::table::Row;

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
        let label = name(ui, row, editor.frame);
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
fn name(ui: &mut Ui, row: &Row, frame: Rect) -> egui::Id {
    let column = frame.left() + frame.width() * NAMES;
    let width = (column - ui.cursor().left()).max(60.0);
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

/// The share of the panel's width that names have.
const NAMES: f32 = 0.42;
/// The share that controls have; the rest is for the mark and the button beside them.
const CONTROLS: f32 = 0.37;

/// How wide a control is.
pub(super) fn control_width(frame: Rect) -> f32 {
    (frame.width() * CONTROLS).max(70.0)
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
    let colour = if fault.is_error {
        ui.visuals().error_fg_color
    } else {
        ui.visuals().warn_fg_color
    };
    wrong(ui, &text, fault.cure.as_deref(), colour);
}

/// What was typed and is refused.
pub(super) fn refused(ui: &mut Ui, message: &str, cure: &str) {
    let text = format!("\u{2716} {message}");
    let colour = ui.visuals().error_fg_color;
    wrong(ui, &text, Some(cure), colour);
}

fn wrong(ui: &mut Ui, text: &str, cure: Option<&str>, colour: Color32) {
    ui.add(egui::Label::new(RichText::new(text).color(colour)).wrap());
    if let Some(cure) = cure {
        ui.add(egui::Label::new(RichText::new(cure).weak()).wrap());
    }
}

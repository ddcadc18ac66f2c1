//! Where is each panel, and what is left for the view?

use super::{Action, Desk};

/// Shows every panel around the view and what is written over it; returns where the view is.
pub fn show(ui: &mut egui::Ui, _desk: &Desk, _out: &mut Vec<Action>) -> egui::Rect {
    ui.available_rect_before_wrap()
}

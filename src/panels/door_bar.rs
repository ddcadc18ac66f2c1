//! Where is the overhead door, and what does that mean for the verdict?

use egui::{Slider, Ui};

use super::{Action, Desk};
use crate::report::Sayings;

/// The door's slider and the words for its state; nothing in a bay without a door.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let Some(verdict) = &desk.verdict else { return };
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let Some(words) = said.door(desk.door) else {
        return;
    };
    ui.label("Door");
    if ui.selectable_label(desk.door <= 0.0, "shut").clicked() {
        out.push(Action::Door(0.0));
    }
    let mut share = desk.door;
    let slider = Slider::new(&mut share, 0.0..=1.0).show_value(false);
    if ui
        .add(slider)
        .on_hover_text("how far the door is open")
        .changed()
    {
        out.push(Action::Door(share));
    }
    if ui.selectable_label(desk.door >= 1.0, "open").clicked() {
        out.push(Action::Door(1.0));
    }
    let counted = desk
        .here
        .as_ref()
        .and_then(|here| said.door_counted(here.door));
    let label = ui.label(words);
    if let Some(counted) = counted {
        label.on_hover_text(counted);
    }
}

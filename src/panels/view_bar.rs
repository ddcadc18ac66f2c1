//! How is the bay looked at?

use egui::{Checkbox, Slider, Ui};

use super::camera::{Lens, Sight};
use super::keys::middle_m;
use super::{Action, Desk};

/// Named looks, frame all, and what is shown.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    ui.separator();
    ui.label("From the");
    for sight in Sight::ALL {
        let is_shown = desk.sight == Some(sight);
        if ui.selectable_label(is_shown, name(sight)).clicked() {
            out.push(Action::Look(sight));
        }
    }
    if ui.button("frame all").clicked() {
        out.push(Action::FrameAll);
    }
    parallel(ui, desk, out);
    people(ui, desk, out);
    dimensions(ui, desk, out);
    marks(ui, desk, out);
    cut(ui, desk, out);
}

/// The place's name beside the overhead door's own buttons.
#[must_use]
pub const fn name(sight: Sight) -> &'static str {
    match sight {
        Sight::Door => "driver's door",
        Sight::Corner | Sight::Front | Sight::Side | Sight::Plan => sight.word(),
    }
}

/// What the table of keys says of a look.
#[must_use]
pub const fn does(sight: Sight) -> &'static str {
    match sight {
        Sight::Corner => "look from the corner",
        Sight::Front => "look from the front",
        Sight::Side => "look from the side",
        Sight::Plan => "look from above",
        Sight::Door => "look from the driver's door",
    }
}

/// Parallel lines stay parallel, or not.
pub fn parallel(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let mut is_on = matches!(desk.camera.lens, Lens::Parallel { .. });
    if ui.checkbox(&mut is_on, "parallel").changed() {
        out.push(Action::Parallel(is_on));
    }
}

/// People under the vehicle.
pub fn people(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let mut is_on = desk.settings.people;
    if ui.checkbox(&mut is_on, "people").changed() {
        out.push(Action::People(is_on));
    }
}

/// Dimension lines.
pub fn dimensions(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let mut is_on = desk.settings.dimensions;
    if ui.checkbox(&mut is_on, "dimensions").changed() {
        out.push(Action::Dimensions(is_on));
    }
}

/// Figures of the sections at their places.
pub fn marks(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let mut is_on = desk.settings.marks;
    let about = "readings of the slab, loads and centre of gravity, where they are";
    if ui
        .checkbox(&mut is_on, "marks")
        .on_hover_text(about)
        .changed()
    {
        out.push(Action::Marks(is_on));
    }
}

/// Where the bay is cut open.
pub fn cut(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        let mut is_on = desk.settings.cut_m.is_some();
        if ui.add(Checkbox::new(&mut is_on, "cut open")).changed() {
            out.push(Action::Cut(is_on.then(|| middle_m(desk))));
        }
        if let Some(cut_m) = desk.settings.cut_m {
            let [low, high] = desk.bounds_m;
            let mut cut = cut_m;
            let slider = Slider::new(&mut cut, low.y..=high.y).show_value(false);
            let response = ui.add(slider).on_hover_text("where the bay is cut open");
            if response.changed() {
                out.push(Action::Cut(Some(cut)));
            }
        }
    });
}

//! Where does the carriage stand, what holds there, and where is it sent next?

use egui::{Button, Slider, TextStyle, Ui};

use super::{Action, Desk, keys, shown, signs, status, style};
use crate::report::Sayings;

/// Buttons, the travel's slider, and the state of the shown position.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let is_ready = desk.verdict.is_some();
        let play = if desk.rise.playing { "pause" } else { "play" };
        for (text, does, action) in [
            ("floor", "to the floor", Action::ToFloor),
            ("down", "one lock down", Action::LockDown),
            (play, "play or pause the raise", Action::PlayPause),
            ("up", "one lock up", Action::LockUp),
            ("safe", "to the highest safe lock", Action::ToSafeLock),
            ("top", "to full travel", Action::ToTop),
        ] {
            let button = ui
                .add_enabled(is_ready, Button::new(text))
                .on_hover_text(format!("{does} ({})", keys::of(does)));
            if button.clicked() {
                out.push(action);
            }
        }
        travel(ui, desk, out);
        position(ui, desk);
    });
}

fn travel(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let full_m = desk.full_travel_m();
    let mut travel_m = desk.rise.travel_m;
    let slider = Slider::new(&mut travel_m, 0.0..=full_m.max(0.001)).show_value(false);
    let slider = ui.add_enabled(full_m > 0.0, slider);
    if slider.on_hover_text("the carriage's travel").changed() {
        out.push(Action::Travel(travel_m));
    }
}

fn position(ui: &mut Ui, desk: &Desk) {
    let Some(verdict) = &desk.verdict else { return };
    let said = Sayings::of(&verdict.bay, &verdict.study);
    ui.label(format!("travel {}", said.in_both(desk.rise.travel_m)));
    let at_lock = desk.rise.at_lock(&desk.locks_m());
    ui.label(said.carriage(desk.rise.travel_m, at_lock));
    let Some(state) = shown::state(desk) else {
        return;
    };
    let screen = style::screen(&desk.settings);
    let is_stale = !desk.is_current();
    let height = ui.text_style_height(&TextStyle::Heading);
    signs::show(ui, state, height, screen, is_stale);
    if is_stale {
        let words = status::stale_words(desk).unwrap_or_default();
        ui.colored_label(
            style::egui_colour(screen.stale),
            format!("{} (stale)", state.word),
        )
        .on_hover_text(words);
    } else {
        ui.heading(state.word);
    }
}

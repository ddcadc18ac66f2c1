//! Which lock is safe, what limits it, and what must never be forgotten?

use egui::{Panel, RichText, ScrollArea, TextStyle, Ui};

use super::job::Verdict;
use super::signs::{self, NO_SAFE_LOCK, State};
use super::style::{self, egui_colour};
use super::{Action, Desk, limits, sections, status};
use crate::bay::Door;
use crate::clearance::{DoorState, LockState};
use crate::report::{AS_FILED, CAUTIONS, Sayings, on_one_line};

/// A card of so many rows has room for more than what must always be seen.
const ROOMY_ROWS: f32 = 20.0;

/// The card: the verdict on top, cautions at the bottom, the rest between them to scroll.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let is_roomy = ui.available_height() > ROOMY_ROWS * ui.text_style_height(&TextStyle::Body);
    Panel::bottom("caution")
        .frame(egui::Frame::new())
        .show_separator_line(false)
        .show(ui, |ui| cautions(ui, is_roomy));
    // What is on top stays there where there is room for some of the rest below it; else all of it is
    // scrolled, so that nothing is printed over the caution.
    let line = ui.text_style_height(&TextStyle::Body);
    let top_id = ui.id().with("height of the top");
    let top_was = ui.data(|data| data.get_temp::<f32>(top_id)).unwrap_or(0.0);
    let stays = top_was + FEWEST_ROWS * line <= ui.available_height();
    let top_is = if stays {
        let height = top(ui, desk, is_roomy);
        ScrollArea::vertical()
            .auto_shrink(false)
            .show(ui, |ui| rest(ui, desk, out));
        height
    } else {
        let all = ScrollArea::vertical()
            .min_scrolled_height(0.0)
            .auto_shrink(false)
            .show(ui, |ui| {
                let height = top(ui, desk, is_roomy);
                rest(ui, desk, out);
                height
            });
        all.inner
    };
    if (top_is - top_was).abs() > 0.5 {
        ui.data_mut(|data| data.insert_temp(top_id, top_is));
        ui.ctx()
            .request_discard("the top of the verdict has another height");
    }
}

/// So many rows of the rest are worth keeping the top still for.
const FEWEST_ROWS: f32 = 3.0;

/// Why the verdict is of another state, the faults, and the verdict; returns how high it is.
fn top(ui: &mut Ui, desk: &Desk, is_roomy: bool) -> f32 {
    let screen = style::screen(&desk.settings);
    let top = ui.cursor().top();
    if is_roomy {
        ui.heading("Verdict");
    }
    if desk.beside.is_some() {
        ui.small("Of the bay on the left. That of the bay on the right stands over it.");
    }
    if let Some(words) = status::stale_words(desk) {
        let is_fault = desk.document.read().is_err() || desk.study_failed.is_some();
        let ink = if is_fault { screen.error } else { screen.faint };
        ui.colored_label(egui_colour(ink), words);
    }
    faults(ui, desk);
    if let Some(verdict) = &desk.verdict {
        grey_when_stale(ui, desk);
        lead(ui, desk, verdict);
    }
    ui.cursor().top() - top
}

/// What is said below the verdict.
fn rest(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let Some(verdict) = &desk.verdict else { return };
    grey_when_stale(ui, desk);
    limits::show(ui, desk, verdict, out);
    reasons(ui, verdict);
    not_measured(ui, verdict);
    marks(ui, verdict);
    doors(ui, verdict);
    limits::pairs(ui, desk, out);
    sections::show(ui, desk, verdict);
    others(ui, verdict);
}

/// Everything of another state of the file looks so.
fn grey_when_stale(ui: &mut Ui, desk: &Desk) {
    if !desk.is_current() {
        let stale = Some(egui_colour(style::screen(&desk.settings).stale));
        ui.visuals_mut().override_text_color = stale;
        ui.visuals_mut().weak_text_color = stale;
    }
}

/// The first cautions, which no scrolling hides.
fn cautions(ui: &mut Ui, is_roomy: bool) {
    ui.separator();
    ui.label(format!("CAUTION. {}", CAUTIONS[0]));
    if is_roomy {
        ui.small(CAUTIONS[1]);
    }
}

fn faults(ui: &mut Ui, desk: &Desk) {
    let Err(found) = desk.document.read() else {
        return;
    };
    for fault in status::errors(found).take(3) {
        ui.label(status::fault_words(fault));
    }
    let more = status::errors(found).count().saturating_sub(3);
    if more > 0 {
        ui.label(format!("and {more} more"));
    }
}

/// The state that stands for the verdict: clear, or the cross.
#[must_use]
pub fn state(verdict: &Verdict) -> State {
    match verdict.study.highest_safe_lock {
        Some(_) => LockState::Clear.into(),
        None => NO_SAFE_LOCK,
    }
}

fn lead(ui: &mut Ui, desk: &Desk, verdict: &Verdict) {
    let screen = style::screen(&desk.settings);
    let said = Sayings::of(&verdict.bay, &verdict.study);
    ui.horizontal(|ui| {
        let height = ui.text_style_height(&style::large());
        signs::show(ui, state(verdict), height, screen, !desk.is_current());
        let text = RichText::new(said.safe_lock()).text_style(style::large());
        ui.label(text);
    });
    ui.label(said.lead());
}

fn reasons(ui: &mut Ui, verdict: &Verdict) {
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let reasons = said.reasons();
    if reasons.is_empty() {
        return;
    }
    heading(ui, "Why no lock is called safe");
    for (says, cure) in reasons {
        ui.label(says);
        ui.indent("cure", |ui| ui.label(RichText::new(cure).weak()));
    }
}

/// All that is not measured: the reasons name the first few.
fn not_measured(ui: &mut Ui, verdict: &Verdict) {
    let what = verdict.study.not_measured();
    if what.is_empty() {
        return;
    }
    heading(ui, "Not measured");
    ui.label(AS_FILED);
    for name in what {
        ui.label(on_one_line(name));
    }
}

fn marks(ui: &mut Ui, verdict: &Verdict) {
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let (Some(stop), Some(never)) = (said.stop_mark(), said.never_above()) else {
        return;
    };
    heading(ui, "Marks on the column");
    ui.label(format!("Stop: {stop}"));
    ui.label(format!("Never above: {never}"));
    ui.small("From the top of the base plate to the carriage's marked edge.");
}

fn doors(ui: &mut Ui, verdict: &Verdict) {
    if verdict.bay.garage.door == Door::None {
        return;
    }
    let said = Sayings::of(&verdict.bay, &verdict.study);
    heading(ui, "By the door");
    for state in [DoorState::Shut, DoorState::Open, DoorState::Running] {
        let governs = if state == verdict.study.headline_door {
            " (the verdict)"
        } else {
            ""
        };
        let lock = said.safe_lock_with_door(state);
        ui.label(format!("{}: {lock}{governs}", state.word()));
    }
}

fn others(ui: &mut Ui, verdict: &Verdict) {
    let said = Sayings::of(&verdict.bay, &verdict.study);
    if let Some(bar) = said.shut_off_bar() {
        heading(ui, "Shut-off bar");
        ui.label(bar);
    }
    if let Some(not_checked) = said.not_checked() {
        heading(ui, "Not checked");
        ui.label(not_checked);
    }
    if let Some(gain) = said.if_exact() {
        heading(ui, "If everything were exact");
        ui.label(gain);
    }
    heading(ui, "All cautions");
    for caution in CAUTIONS {
        ui.label(caution);
    }
}

/// A heading inside the card.
pub(super) fn heading(ui: &mut Ui, text: &str) {
    let space = ui.text_style_height(&TextStyle::Small) * 0.6;
    ui.add_space(space);
    ui.label(RichText::new(text).small().weak());
}

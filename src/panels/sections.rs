//! What decides beside clearance: arms, loads, slab, anchors, doors, power?

use egui::{CollapsingHeader, RichText, Ui};

use super::job::Verdict;
use super::signs::{self, Sign, State};
use super::style::{self, egui_colour};
use super::{Desk, verdict};
use crate::clearance::LockState;
use crate::ground::{Figure, Section, Standing};
use crate::report::Sayings;

/// Each topic under a heading of its own that says how it stands; one that stops is open.
pub(super) fn show(ui: &mut Ui, desk: &Desk, verdict: &Verdict) {
    if verdict.study.sections.is_empty() {
        return;
    }
    verdict::heading(ui, "Beside clearance");
    for section in &verdict.study.sections {
        one(ui, desk, verdict, section);
    }
}

/// How a standing is shown; a figure for information has no sign.
#[must_use]
pub fn state(standing: Standing) -> Option<State> {
    let like = |lock: LockState| State {
        word: standing.words(),
        ..State::from(lock)
    };
    match standing {
        Standing::Noted => None,
        Standing::Passes => Some(like(LockState::Clear)),
        Standing::Unknown => Some(State {
            sign: Sign::Query,
            ..like(LockState::NotShown)
        }),
        Standing::Stops => Some(like(LockState::Strikes)),
    }
}

fn one(ui: &mut Ui, desk: &Desk, verdict: &Verdict, section: &Section) {
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let standing = section.standing();
    let heading = section.topic.heading();
    // A heading is never wrapped: it has to fit into a narrow card.
    let title = match standing {
        Standing::Noted => heading.to_owned(),
        Standing::Unknown => format!("{heading} ?"),
        Standing::Passes | Standing::Stops => format!("{heading}: {}", standing.words()),
    };
    CollapsingHeader::new(title)
        .id_salt(heading)
        .default_open(standing == Standing::Stops)
        .show(ui, |ui| {
            if standing == Standing::Unknown {
                ui.label("Not known in full.");
            }
            ui.label(said.of_section(&section.lead));
            if let Some(who) = section.governs {
                ui.label(RichText::new(format!("Screening, not a design: {who}.")).weak());
            }
            for figure in &section.figures {
                row(ui, desk, &said, figure);
            }
            for note in &section.notes {
                ui.label(said.of_section(note));
            }
        });
}

/// Sign, what was found and what is asked; below it the source and what is to be minded.
fn row(ui: &mut Ui, desk: &Desk, said: &Sayings<'_>, figure: &Figure) {
    let screen = style::screen(&desk.settings);
    ui.horizontal_wrapped(|ui| {
        if let Some(state) = state(figure.standing) {
            let height = ui.text_style_height(&egui::TextStyle::Body) * 0.8;
            signs::show(ui, state, height, screen, !desk.is_current());
        }
        ui.label(said.figure(figure));
        if let Some(state) = state(figure.standing) {
            let ink = if figure.standing == Standing::Stops && desk.is_current() {
                egui_colour(screen.error)
            } else {
                ui.visuals().weak_text_color()
            };
            ui.label(RichText::new(state.word).color(ink));
        }
    });
    let below = said.below_figure(figure);
    if !below.is_empty() {
        ui.indent(&*figure.id, |ui| {
            ui.label(RichText::new(below).small().weak());
        });
    }
}

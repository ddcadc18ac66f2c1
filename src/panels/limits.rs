//! Which two things limit the rise, and which are nearest at the shown position?

use egui::{Button, RichText, TextStyle, Ui};

use super::job::Verdict;
use super::signs::{self, State};
use super::style::{self, egui_colour};
use super::verdict::heading;
use super::{Action, Desk};
use crate::clearance::probe::{HerePair, PairState};
use crate::clearance::{DoorState, PairFinding};
use crate::report::{self, Sayings, Show};

/// The floor only falls behind.
pub(super) const FLOOR: &str = "shell/floor";

/// At most so many pairs are listed.
const MOST_LISTED: usize = 8;

/// What limits the rise, with a button that shows it.
pub fn show(ui: &mut Ui, desk: &Desk, verdict: &Verdict, out: &mut Vec<Action>) {
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let Some(words) = said.limits() else { return };
    heading(ui, "What limits it");
    ui.label(words);
    let Some(pair) = said.limiting_pair() else {
        return;
    };
    let is_lit = desk
        .picked
        .as_ref()
        .is_some_and(|(moving, fixed)| *moving == pair.moving && *fixed == pair.fixed);
    if is_lit {
        if ui.button("let it go").clicked() {
            out.push(Action::DropPair);
        }
    } else if ui.button("show it where it comes short").clicked() {
        out.extend(show_where(pair));
    }
}

/// The door and the carriage go to where the pair first comes short, and the view to the pair.
#[must_use]
pub fn show_where(pair: &PairFinding) -> Vec<Action> {
    let mut out = Vec::new();
    match pair.door {
        Some(DoorState::Shut) => out.push(Action::Door(0.0)),
        Some(DoorState::Open) => out.push(Action::Door(1.0)),
        Some(DoorState::Running) | None => {}
    }
    if let Some(travel_m) = pair.first_breach_m.or(pair.first_touch_m) {
        out.push(Action::Travel(travel_m));
    }
    out.push(Action::ShowPair(pair.moving.clone(), pair.fixed.clone()));
    out
}

/// The pairs that are told of: what is short first, then what the rise can run into, then the
/// floor and what may lie as near as it likes; each the tightest first. Of those that are alike
/// (pieces of one thing) the tightest alone.
#[must_use]
pub fn distinct(pairs: &[HerePair]) -> Vec<&HerePair> {
    let mut told: Vec<&HerePair> = Vec::new();
    for pair in pairs {
        let is_known = told.iter().any(|known| {
            report::are_alike(&known.moving, &pair.moving)
                && report::are_alike(&known.fixed, &pair.fixed)
        });
        if !is_known {
            told.push(pair);
        }
    }
    told.sort_by_key(|pair| match pair.state {
        PairState::Strikes | PairState::Tight => 0,
        PairState::Clear | PairState::NotShown if pair.margin_m > 0.0 && pair.fixed != FLOOR => 1,
        PairState::Clear | PairState::NotShown => 2,
    });
    told
}

/// Worst-case room and the margin asked, in words.
#[must_use]
pub fn room_words(pair: &HerePair, show: Show) -> String {
    let asked = show.need(pair.margin_m);
    match pair.state {
        PairState::Strikes => format!("no room, asked {asked}"),
        PairState::Tight => format!("{}, asked {asked}", show.room(pair.worst_m)),
        PairState::Clear => show.room(pair.worst_m),
        PairState::NotShown => format!("{} as filed", show.room(pair.worst_m)),
    }
}

/// The nearest pairs at the shown position.
pub fn pairs(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let (Some(verdict), Some(here)) = (&desk.verdict, &desk.here) else {
        return;
    };
    let told = distinct(&here.pairs);
    if told.is_empty() {
        return;
    }
    let show = Sayings::of(&verdict.bay, &verdict.study).show();
    let screen = style::screen(&desk.settings);
    heading(ui, "Nearest here, worst case");
    for pair in told.into_iter().take(MOST_LISTED) {
        let is_lit = desk.picked.as_ref().is_some_and(|(moving, fixed)| {
            report::are_alike(moving, &pair.moving) && report::are_alike(fixed, &pair.fixed)
        });
        let state = State::from(pair.state);
        ui.horizontal(|ui| {
            let height = ui.text_style_height(&TextStyle::Body);
            signs::show(ui, state, height, screen, !desk.is_current());
            let text = format!(
                "{}: {} to {}, {}",
                state.word,
                report::short_name(&pair.moving),
                report::short_name(&pair.fixed),
                room_words(pair, show)
            );
            let mut text = RichText::new(text);
            if !desk.is_current() && !is_lit {
                text = text.color(egui_colour(screen.stale));
            }
            if ui.add(Button::selectable(is_lit, text).wrap()).clicked() {
                out.push(if is_lit {
                    Action::DropPair
                } else {
                    Action::ShowPair(pair.moving.clone(), pair.fixed.clone())
                });
            }
        });
    }
}

//! Does the lift stand here, can the vehicle be driven in, and is anything tight as parked?

use super::page::Page;
use super::{Report, Show, show};
use crate::clearance::{PairFinding, StandingFinding};
use crate::report::words::{sentence, thing};

/// The tightest so many pairs of the lift's fixed parts are listed; JSON has them all.
const MOST_STANDING: usize = 6;

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    page.heading("The lift in the room");
    let mut standing: Vec<&StandingFinding> = study.standing.iter().collect();
    standing.sort_by(|a, b| a.worst_m.total_cmp(&b.worst_m));
    if standing.is_empty() {
        page.item("No fixed part of the lift comes near anything.");
    }
    for finding in standing.iter().take(MOST_STANDING) {
        page.item(&stands(finding, show));
    }
    if let Some(more) = standing.len().checked_sub(MOST_STANDING).filter(|n| *n > 0) {
        page.item(&format!("and {more} more with at least as much room."));
    }
    let up = study.stand_up;
    page.item(&format!(
        "Tipping a column up takes {}; the ceiling over the posts is at {}, the highest in the \
         room at {}.",
        show.need(up.needs_m),
        show.room(up.ceiling_at_posts_m),
        show.room(up.highest_ceiling_m)
    ));

    page.heading("Driving in, and as parked");
    if study.driving_in.is_empty() {
        page.item("Driving in keeps its margins.");
    }
    for pair in &study.driving_in {
        page.item(&short(pair, "Driving in", show));
    }
    for pair in &study.tight_as_parked {
        page.item(&short(pair, "Tight as parked", show));
    }
    for contact in &study.carried {
        page.item(&format!(
            "{} comes against {} on the way up: {} at the nearest.",
            sentence(&thing(&contact.part)),
            thing(&contact.vehicle),
            show.room(contact.clearance_m)
        ));
    }
}

fn stands(finding: &StandingFinding, show: Show) -> String {
    let names = format!("{} and {}", thing(&finding.part), thing(&finding.other));
    let names = sentence(&names);
    match finding.overlap_m.filter(|o| *o > 0.0) {
        Some(overlap) => format!("{names}: they overlap by {}.", show.need(overlap)),
        None if finding.worst_m >= 0.0 => format!(
            "{names}: {} between them, {} in the worst case.",
            show.room(finding.room_m),
            show.room(finding.worst_m)
        ),
        None => format!(
            "{names}: {} between them, but {} short in the worst case.",
            show.room(finding.room_m),
            show.need(-finding.worst_m)
        ),
    }
}

fn short(pair: &PairFinding, what: &str, show: Show) -> String {
    let names = format!("{} and {}", thing(&pair.moving), thing(&pair.fixed));
    match pair.overlap_m.filter(|o| *o > 0.0) {
        Some(overlap) => format!("{what}, {names} overlap by {}.", show.need(overlap)),
        None => format!(
            "{what}, {names} have {} where {} is asked.",
            show.room(pair.clearance_m),
            show.need(pair.margin_m)
        ),
    }
}

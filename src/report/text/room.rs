//! Does the lift stand here, can the vehicle be driven in, and is anything tight as parked?

use super::page::Page;
use super::{Report, Show, show};
use crate::clearance::{PairFinding, StandingFinding};
use crate::report::names::{alike, the, together};
use crate::report::words::sentence;

/// The tightest so many pairs of the lift's fixed parts are listed; JSON has them all.
const MOST_STANDING: usize = 6;

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    page.heading("The lift in the room");
    let mut standing: Vec<&StandingFinding> = study.standing.iter().collect();
    standing.sort_by(|a, b| a.worst_m.total_cmp(&b.worst_m));
    let is_measured = study.not_measured().is_empty();
    if standing.is_empty() {
        page.item(if is_measured {
            "No fixed part of the lift comes near anything."
        } else {
            "Whether the lift stands clear of the room is not known."
        });
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

    for part in &study.door_in_ceiling {
        page.item(&format!(
            "As described, {} stands {} in {}: check both heights.",
            the(&part.part),
            show.need(part.overlap_m.unwrap_or(0.0)),
            the(&part.other)
        ));
    }

    page.heading("Driving in, and as parked");
    if study.driving_in.is_empty() {
        page.item(if is_measured {
            "Driving in keeps its margins."
        } else {
            "Whether the vehicle drives in with its margins is not known."
        });
    }
    for pairs in matters(&study.driving_in) {
        page.item(&short(&pairs, "Driving in", show));
    }
    for pairs in matters(&study.tight_as_parked) {
        page.item(&short(&pairs, "As parked", show));
    }
    for contact in &study.carried {
        page.item(&format!(
            "{} comes against {} on the way up: {} at the nearest.",
            sentence(&the(&contact.part)),
            the(&contact.vehicle),
            show.room(contact.clearance_m)
        ));
    }
}

/// Pairs of the same things taken together.
fn matters(pairs: &[PairFinding]) -> Vec<Vec<&PairFinding>> {
    let mut matters: Vec<Vec<&PairFinding>> = Vec::new();
    for pair in pairs {
        let known = matters
            .iter_mut()
            .find(|m| alike(&m[0].moving, &pair.moving) && alike(&m[0].fixed, &pair.fixed));
        match known {
            Some(matter) => matter.push(pair),
            None => matters.push(vec![pair]),
        }
    }
    matters
}

fn stands(finding: &StandingFinding, show: Show) -> String {
    let names = format!("{} and {}", the(&finding.part), the(&finding.other));
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

/// The worst of pairs that are one matter.
fn short(pairs: &[&PairFinding], what: &str, show: Show) -> String {
    let of = |name: fn(&PairFinding) -> &str| {
        let names: Vec<&str> = pairs.iter().map(|pair| name(pair)).collect();
        together(&names).text
    };
    let names = format!("{} and {}", of(|p| &p.moving), of(|p| &p.fixed));
    // What is no number is worse than any.
    let worst = pairs.iter().copied().reduce(|a, b| {
        let overlap = |pair: &PairFinding| pair.overlap_m.unwrap_or(0.0);
        let by = |pair: &PairFinding| overlap(pair) + pair.margin_m - pair.clearance_m;
        if by(a).is_nan() || by(a) > by(b) {
            a
        } else {
            b
        }
    });
    let Some(worst) = worst else {
        return String::new();
    };
    match worst.overlap_m.filter(|o| *o > 0.0) {
        Some(overlap) => format!("{what}, {names} overlap by {}.", show.need(overlap)),
        None => format!(
            "{what}, {names} have {} between them where {} is asked.",
            show.room(worst.clearance_m),
            show.need(worst.margin_m)
        ),
    }
}

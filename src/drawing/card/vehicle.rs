//! What does the page of one vehicle say?

use crate::bay::{Bay, Door};
use crate::clearance::{Limit, Study};
use crate::drawing::palette::paper::{INK, SET_OUT, WARN};
use crate::report::{Sayings, not_measured, on_one_line, short_name, why_not_safe};
use crate::units::{Length, Rounding, both};

use super::edge::{self, Edge, Written, joined};
use super::{Entry, Piece};
use super::{care, come_down, door, meets, pads, parking, usable};

/// How a mark is measured, and what that leaves out.
pub(super) const HOW_MEASURED: &str = "Marks are measured from the top of the base plate to the carriage's marked edge, on both \
     columns. No shims are counted: shims under a plate lift everything by their height, so with \
     any, take them off the room in the bay file and make a new card.";

/// The vehicle's name on one line.
pub(super) fn name(entry: &Entry<'_>) -> String {
    on_one_line(&entry.bay.vehicle.name)
}

pub(super) fn pieces(entry: &Entry<'_>, letter: Option<char>) -> Vec<Piece> {
    let name = name(entry);
    let name = letter.map_or_else(|| name.clone(), |letter| format!("{letter}: {name}"));
    let mut pieces = vec![Piece::Says(name, 6.0, INK), Piece::Gap(1.0)];
    match (
        entry.study.highest_safe_lock,
        edge::written(entry.bay, entry.study),
    ) {
        (Some(lock), Some(marks)) => safe(&mut pieces, entry, lock, &marks),
        _ => not_safe(&mut pieces, entry),
    }
    pieces
}

fn safe(pieces: &mut Vec<Piece>, entry: &Entry<'_>, lock: usize, marks: &Written) {
    let (bay, study) = (entry.bay, entry.study);
    let found = study.locks.iter().find(|one| one.lock == lock);
    let held = if study.door_is_held {
        format!(", only with the door {}", study.headline_door.word())
    } else {
        String::new()
    };
    pieces.push(Piece::Says(
        format!("Highest safe lock: {lock} of {}{held}", study.locks.len()),
        6.0,
        INK,
    ));
    let band = |says: String, colour| Piece::Band(says, 7.0, colour);
    pieces.push(band(format!("STOP at {}", joined(&marks.stop)), SET_OUT));
    match &marks.never {
        Some(never) => pieces.push(band(format!("NEVER ABOVE {}", joined(never)), WARN)),
        None => pieces.push(Piece::warns(
            "No NEVER ABOVE mark: nothing is met within the carriage's travel. The STOP mark holds \
             all the same.",
        )),
    }
    pieces.push(Piece::says(come_down::which_carriage(bay, marks)));
    pieces.push(Piece::Says(HOW_MEASURED.into(), 2.6, INK));
    pieces.push(Piece::Gap(1.5));
    pieces.push(Piece::labelled("Then lower onto", onto(bay, lock)));
    pieces.push(come_down::piece(bay, lock, marks));
    pieces.push(Piece::labelled("Locks to use", usable::says(study)));
    if let Some(next) = meets::next(bay, study) {
        let next = first_letter_up(&next);
        pieces.push(Piece::labelled("It meets next", next));
    }
    if let Some((bar, forbids)) = meets::shut_off_bar(bay, study) {
        let colour = if forbids { WARN } else { INK };
        pieces.push(Piece::Labelled(
            "Shut-off bar".into(),
            first_letter_up(&bar),
            colour,
        ));
    }
    let (text, forbids) = door::says(bay, study, lock);
    let colour = if forbids { WARN } else { INK };
    pieces.push(Piece::Labelled("Door".into(), text, colour));
    if let Some(text) = opening(bay, study, lock) {
        pieces.push(Piece::labelled("Hood, hatch, doors", text));
    }
    if let Some(found) = found {
        let room = both(Length::metres(found.underbody_m), bay.units, Rounding::Down);
        let mut text = format!("{room} under the lowest part of the body on lock {lock}, no more");
        if found.tyre_m < found.underbody_m {
            if found.tyre_m > 0.0 {
                let tyre = both(Length::metres(found.tyre_m), bay.units, Rounding::Down);
                text.push_str(&format!("; {tyre} under the hanging tyres"));
            } else {
                text.push_str("; a tyre may still stand on the floor");
            }
        }
        pieces.push(Piece::labelled("Room under it", text));
    }
    pieces.extend(pads::pieces(bay, study));
    let (text, known) = parking::lines(bay, study);
    let colour = if known { INK } else { WARN };
    pieces.push(Piece::Labelled("Parking".into(), text, colour));
    pieces.push(Piece::labelled(
        "As studied",
        parking::as_studied(bay, study),
    ));
    if let Some(text) = not_known(study) {
        pieces.push(Piece::Gap(1.5));
        pieces.push(Piece::Labelled("NOT KNOWN".into(), text, WARN));
    }
    let never = if marks.never.is_some() {
        care::Never::Marked
    } else {
        care::Never::NoMark
    };
    pieces.extend(care::pieces(never));
}

fn not_safe(pieces: &mut Vec<Piece>, entry: &Entry<'_>) {
    let (bay, study) = (entry.bay, entry.study);
    pieces.push(Piece::Band("DO NOT RAISE".into(), 15.0, WARN));
    pieces.push(Piece::Band(
        "NO LOCK IS SAFE for this vehicle".into(),
        7.4,
        WARN,
    ));
    pieces.push(Piece::Gap(1.5));
    pieces.push(Piece::Says(
        "There is no stop mark for it. Another vehicle's mark is not its mark.".into(),
        4.4,
        WARN,
    ));
    pieces.push(Piece::Heading(
        "Why (sections named here are those of the report)".into(),
    ));
    pieces.extend(why_not(bay, study).into_iter().map(Piece::item));
    if let Some(text) = not_measured(study.not_measured()) {
        pieces.push(Piece::warns(text));
    }
    pieces.push(Piece::says(
        "Once that is cured in the bay and in its file, make a new card. Until then this vehicle \
         stays on its tyres.",
    ));
    if let Some(text) = not_known(study) {
        pieces.push(Piece::Gap(4.0));
        pieces.push(Piece::Labelled("NOT KNOWN".into(), text, WARN));
    }
}

/// Why no lock is safe and what would cure it, each in a few sentences.
pub(in crate::drawing) fn why_not(bay: &Bay, study: &Study) -> Vec<String> {
    let reasons = Sayings::of(bay, study).reasons();
    let is_in_the_way = study.highest_clear_lock.is_none() && matches!(study.limit, Limit::Pair(_));
    let mut all = Vec::new();
    if reasons.is_empty() || is_in_the_way {
        all.push(why(bay, study));
    }
    all.extend(
        reasons
            .into_iter()
            .map(|(says, cure)| format!("{says} {cure}")),
    );
    all
}

/// Why nothing is clear, without a travel that could be taken for a mark.
fn why(bay: &Bay, study: &Study) -> String {
    match &study.limit {
        Limit::Pair(pair) => format!(
            "Before any lock can be used, {} comes too near {}.",
            meets::named(bay, &pair.moving),
            meets::named(bay, &pair.fixed)
        ),
        _ => why_not_safe(bay, study).map_or_else(
            || "See the report.".into(),
            |why| format!("{}.", first_letter_up(&why)),
        ),
    }
}

fn first_letter_up(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|one| one.to_uppercase().to_string());
    format!("{}{}", first.unwrap_or_default(), letters.as_str())
}

/// Which lock it comes to rest on, and where the marked edge then is.
fn onto(bay: &Bay, lock: usize) -> String {
    let at = lock
        .checked_sub(1)
        .and_then(|index| bay.lift.locks.get(index));
    let rest = at.map_or_else(String::new, |at| {
        format!(
            ": the marked edges come to rest at {}",
            Edge(bay).place(at.m())
        )
    });
    format!("lock {lock} on both sides{rest}")
}

/// How far things open on the lock; none without anything that opens.
fn opening(bay: &Bay, study: &Study, lock: usize) -> Option<String> {
    let parts: Vec<String> = study
        .opening_parts
        .iter()
        .map(|part| {
            let name = short_name(&part.name);
            let angle = lock
                .checked_sub(1)
                .and_then(|index| part.at_locks_rad.get(index));
            match angle {
                Some(angle) if *angle >= part.opens_rad - 1e-9 => format!("{name} all the way"),
                Some(angle) if angle.is_finite() && angle.to_degrees() >= 5.0 => {
                    format!("{name} to {:.0} deg", (angle.to_degrees() + 1e-6).floor())
                }
                Some(angle) if angle.is_finite() => format!("{name} NOT AT ALL"),
                _ => format!("{name} not known"),
            }
        })
        .collect();
    // Only the door as it governs was looked at.
    let door = match bay.garage.door {
        Door::None => String::new(),
        _ => format!(" and with the garage door {}", study.headline_door.word()),
    };
    (!parts.is_empty()).then(|| {
        format!(
            "shut for the raise. Only at rest on lock {lock}{door} may be opened: {}",
            parts.join(", ")
        )
    })
}

/// What was not checked, or is not known in full.
fn not_known(study: &Study) -> Option<String> {
    let words: Vec<&str> = study.unknown.iter().map(|one| one.words()).collect();
    (!words.is_empty()).then(|| {
        format!(
            "and no pass: {}. Settle these by the report before the first raise.",
            words.join("; ")
        )
    })
}

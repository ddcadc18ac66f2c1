//! What does the page of one vehicle say?

use crate::bay::{Bay, Door, Facing};
use crate::clearance::{Limit, LockState, Study};
use crate::drawing::palette::paper::{INK, SET_OUT, WARN};
use crate::ground::{Figure, Standing, Topic};
use crate::report::{Sayings, Show, called, on_one_line, short_name, why_not_safe};
use crate::setting_out::{place, setting_out};
use crate::units::{Length, Rounding, both};

use super::care;
use super::door;
use super::{Entry, Piece};

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
    let said = Sayings::of(entry.bay, entry.study);
    match (entry.study.highest_safe_lock, said.stop_mark()) {
        (Some(lock), Some(stop)) => safe(&mut pieces, entry, lock, &stop),
        _ => not_safe(&mut pieces, entry),
    }
    pieces
}

fn safe(pieces: &mut Vec<Piece>, entry: &Entry<'_>, lock: usize, stop: &str) {
    let (bay, study) = (entry.bay, entry.study);
    let said = Sayings::of(bay, study);
    let show = said.show();
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
    pieces.push(band(format!("STOP at {stop}"), SET_OUT));
    match study.marks.and_then(|marks| marks.never_above_m) {
        Some(never) => {
            let never = show.ceiling_mark(never);
            pieces.push(band(format!("NEVER ABOVE {never}"), WARN));
        }
        None => pieces.push(Piece::warns(
            "No NEVER ABOVE mark: nothing is met within the carriage's travel. The STOP mark holds \
             all the same.",
        )),
    }
    pieces.push(Piece::Says(HOW_MEASURED.into(), 2.6, INK));
    pieces.push(Piece::Gap(1.5));
    pieces.push(Piece::labelled("Then lower onto", onto(bay, show, lock)));
    pieces.push(Piece::labelled("Locks to use", locks(study, lock)));
    if let Some(limits) = said.limits() {
        pieces.push(Piece::labelled("It meets next", limits));
    }
    if let Some(bar) = said.shut_off_bar() {
        let colour = if bar.contains("NOT") { WARN } else { INK };
        pieces.push(Piece::Labelled("Shut-off bar".into(), bar, colour));
    }
    let (text, forbids) = door::says(bay, study, lock);
    let colour = if forbids { WARN } else { INK };
    pieces.push(Piece::Labelled("Door".into(), text, colour));
    if let Some(text) = opening(bay, study, lock) {
        pieces.push(Piece::labelled("Hood, hatch, doors", text));
    }
    if let Some(found) = found {
        let room = both(Length::metres(found.underbody_m), bay.units, Rounding::Down);
        let text = format!("{room} under the lowest part of the body on lock {lock}, no more");
        pieces.push(Piece::labelled("Room under it", text));
    }
    pieces.push(Piece::labelled("Pads and adapters", pads(bay, study)));
    let (text, known) = parking(bay, study);
    let colour = if known { INK } else { WARN };
    pieces.push(Piece::Labelled("Parking".into(), text, colour));
    pieces.push(Piece::labelled("As studied", as_studied(bay, study, show)));
    if let Some(text) = not_known(study) {
        pieces.push(Piece::Labelled("NOT KNOWN".into(), text, WARN));
    }
    pieces.extend(care::pieces());
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
    pieces.push(Piece::says(
        "Once that is cured in the bay and in its file, make a new card. Until then this vehicle \
         stays on its tyres.",
    ));
    if let Some(text) = not_known(study) {
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
            called(&pair.moving),
            called(&pair.fixed)
        ),
        _ => why_not_safe(bay, study).map_or_else(
            || "See the report.".into(),
            |why| {
                let mut letters = why.chars();
                let first = letters.next().map(|one| one.to_uppercase().to_string());
                format!("{}{}.", first.unwrap_or_default(), letters.as_str())
            },
        ),
    }
}

/// Which lock it comes to rest on, and where the marked edge then is.
fn onto(bay: &Bay, show: Show, lock: usize) -> String {
    let at = lock
        .checked_sub(1)
        .and_then(|index| bay.lift.locks.get(index));
    let rest = at.map(|at| show.place(at.m() + bay.lift.carriage.marked_edge.m()));
    let rest = rest.map_or_else(String::new, |rest| {
        format!(": the marked edges come to rest at {rest}")
    });
    format!("lock {lock} on both sides{rest}")
}

/// Which locks may be used, and which don't lift.
fn locks(study: &Study, safe: usize) -> String {
    let of = |state: LockState| -> Vec<usize> {
        let below = study.locks.iter().filter(|one| one.lock <= safe);
        below
            .filter(|one| one.state == state)
            .map(|one| one.lock)
            .collect()
    };
    let run = |locks: &[usize]| {
        let numbers: Vec<String> = locks.iter().map(ToString::to_string).collect();
        match locks {
            [first, .., last] if last - first + 1 == locks.len() => format!("{first} to {last}"),
            _ => numbers.join(", "),
        }
    };
    let mut text = format!("{} and no other", run(&of(LockState::Clear)));
    let idle = of(LockState::NotLifting);
    if !idle.is_empty() {
        let word = if idle.len() == 1 { "Lock" } else { "Locks" };
        text.push_str(&format!(
            ". {word} {}: the pads do not carry yet, nobody goes under",
            run(&idle)
        ));
    }
    text
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

/// The figures of the pads, as the section on arms has them.
fn pads(bay: &Bay, study: &Study) -> String {
    let said = Sayings::of(bay, study);
    let sections = study.sections.iter();
    let figures = sections
        .filter(|section| section.topic == Topic::Reach)
        .flat_map(|section| &section.figures)
        .filter(|figure| figure.id.starts_with("pads.") && figure.id != "pads.room");
    let each = |figure: &Figure| {
        let (text, below) = (said.figure(figure), said.below_figure(figure));
        let text = if below.is_empty() {
            text
        } else {
            format!("{text} ({})", below.trim_end().trim_end_matches('.'))
        };
        match figure.standing {
            Standing::Passes | Standing::Noted => text,
            _ => format!("NOT SETTLED: {text}"),
        }
    };
    let all: Vec<String> = figures.map(each).collect();
    if all.is_empty() {
        "NOT KNOWN: see the report".into()
    } else {
        format!("{}.", all.join(". "))
    }
}

/// Where the tyres stand, and whether that is known.
fn parking(bay: &Bay, study: &Study) -> (String, bool) {
    let parking = &bay.parking;
    let way = match parking.facing {
        Facing::NoseIn => "nose in",
        Facing::TailIn => "tail in",
    };
    let out = setting_out(bay, study);
    let at = |letter: &str| out.point(letter).map(|point| point.at_m);
    let (Some(front), Some(rear)) = (at("M"), at("N")) else {
        let text = "where the tyres stand can't be said: do not raise it before it is".into();
        return (text, false);
    };
    let line = |metres: f64| place(metres, bay.units);
    let room = |length: Length| crate::units::length(length, bay.units, Rounding::Down);
    let across = |x: f64| {
        let off = x - bay.lift.across.m();
        let side = if off > 0.0 { "right" } else { "left" };
        if off.abs() < 0.0005 {
            "on the middle between the posts".to_owned()
        } else {
            format!("{} {side} of the middle between the posts", line(off.abs()))
        }
    };
    let sideways = if (front.x - rear.x).abs() < 0.0005 {
        format!("Both {}", across(front.x))
    } else {
        format!("Front {}, rear {}", across(front.x), across(rear.x))
    };
    let yaw = (parking.repeat_yaw.in_degrees() * 100.0 + 1e-6).floor() / 100.0;
    let text = format!(
        "{way}. Lines under the middles of the tyres, from the inner face of the door wall: front \
         {}, rear {}. {sideways}. No farther off than {} along, {} across and {yaw} deg askew: \
         else park again.",
        line(front.y),
        line(rear.y),
        room(parking.repeat_along),
        room(parking.repeat_across),
    );
    (text, true)
}

/// What was raised in the study.
fn as_studied(bay: &Bay, study: &Study, show: Show) -> String {
    let vehicle = &bay.vehicle;
    let attached = vehicle.attached.iter();
    let top = attached
        .map(|part| part.top.m())
        .fold(vehicle.height.m(), f64::max);
    let mass = study
        .rating
        .mass_kg
        .map_or_else(|| "mass NOT KNOWN".into(), |kg| show.load(kg));
    let mut text = format!(
        "{} high over all, {mass}, lift rated {}",
        both(Length::metres(top), bay.units, Rounding::Down),
        show.capacity(study.rating.capacity_kg)
    );
    let mut named: Vec<String> = Vec::new();
    named.extend(vehicle.attached.iter().map(|part| on_one_line(&part.name)));
    for mass in &vehicle.masses {
        let name = on_one_line(&mass.name);
        let is_out = mass.mass.kg() < 0.0;
        named.push(if is_out {
            format!("{name} taken out")
        } else {
            name
        });
    }
    if named.is_empty() {
        text.push_str(". Nothing on the roof, no load, nothing taken out");
    } else {
        text.push_str(&format!(". With: {}; nothing else", named.join(", ")));
    }
    text
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

//! Which lock is safe, what limits the rise, and what was not looked at?

use super::page::{Page, Tone};
use super::why::{BELOW, first_reason, what_would_help, why_none};
use super::{Report, show};
use crate::bay::Door;
use crate::clearance::{DoorFinding, DoorState, Limit, PairFinding, Study, Unknown};
use crate::report::Show;
use crate::report::names::the;
use crate::report::reasons::reasons;
use crate::report::words::{count, list, relation, sentence};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let tone = if study.highest_safe_lock.is_some() {
        Tone::Good
    } else {
        Tone::Bad
    };
    page.para_toned(&headline(report), tone);
    for reason in reasons(&study.withheld, show(report)) {
        page.item(&format!(
            "{}. To cure it: {}.",
            sentence(&reason.says),
            reason.cure
        ));
    }
    let unknown = unknown(&study.unknown);
    if !unknown.is_empty() {
        page.para(&unknown);
    }
    if let Some(text) = nominal(report) {
        page.para(&text);
    }
}

/// The verdict in one paragraph.
pub(in crate::report) fn headline(report: &Report<'_>) -> String {
    let mut text = lead(report);
    for more in [limits(report), stop(report)].into_iter().flatten() {
        text.push(' ');
        text.push_str(&more);
    }
    text
}

/// Its first sentence: which lock is safe, or why none is.
pub(in crate::report) fn lead(report: &Report<'_>) -> String {
    lead_with(report, BELOW)
}

/// The same where more reasons are listed elsewhere.
pub(in crate::report) fn lead_with(report: &Report<'_>, place: &str) -> String {
    let study = report.study;
    let show = show(report);
    match (study.highest_safe_lock, study.highest_clear_lock) {
        (Some(lock), _) => {
            let pads = study
                .locks
                .iter()
                .find(|l| l.lock == lock)
                .map(|l| format!(": pads at {}", show.room(l.pad_height_m)))
                .unwrap_or_default();
            let full = if study.full_rise {
                ", the full rise"
            } else {
                ""
            };
            format!(
                "Lock {lock} of {} is the highest safe lock{}{full}{pads}.",
                study.locks.len(),
                door_words(report)
            )
        }
        (None, Some(lock)) => {
            let why = first_reason(report, place).unwrap_or_else(|| "see what is listed".into());
            format!(
                "Lock {lock} is clear{}, but no lock is called safe: {why}.",
                door_words(report)
            )
        }
        (None, None) => format!(
            "No lock is safe{}: {}.",
            door_words(report),
            why_none(report, place)
        ),
    }
}

/// What limits the rise; where no lock is clear, what would help.
pub(in crate::report) fn limits(report: &Report<'_>) -> Option<String> {
    if report.study.highest_clear_lock.is_some() {
        Some(limit(report)).filter(|text| !text.is_empty())
    } else {
        what_would_help(report)
    }
}

/// Where to stop the raise, when a lock is safe.
fn stop(report: &Report<'_>) -> Option<String> {
    let study = report.study;
    study.highest_safe_lock?;
    let marks = study.marks?;
    let stop = show(report).stop_mark(marks.stop_m, marks.never_above_m);
    Some(format!(
        "Stop the raise with the carriage's marked edge at {stop} on the column."
    ))
}

/// " (door open)", and why that state.
fn door_words(report: &Report<'_>) -> String {
    if report.bay.garage.door == Door::None {
        return String::new();
    }
    let state = report.study.headline_door.word();
    if report.study.door_is_held {
        format!(" (door held {state})")
    } else {
        format!(" (door {state})")
    }
}

/// What limits the rise and by how much.
fn limit(report: &Report<'_>) -> String {
    let study = report.study;
    let show = show(report);
    match &study.limit {
        Limit::Pair(pair) => {
            let mut text = format!("Above it {}", meets(pair, show));
            if let Some(short) = next_lock(report, pair) {
                text.push_str(&short);
            }
            text
        }
        Limit::Travel { travel_m } => format!(
            "Nothing in the bay stops it: the carriage's travel of {} does.",
            show.place(*travel_m)
        ),
        Limit::Bar(pair) => {
            let at = pair
                .first_breach_m
                .or(pair.first_touch_m)
                .map(|m| format!(" at {} of travel", show.room(m)))
                .unwrap_or_default();
            let who = the(&pair.moving);
            if pair.margin_m > 0.0 && pair.first_breach_m.is_some() {
                let margin = show.need(pair.margin_m);
                format!(
                    "Above it {who} comes too near the shut-off bar: the room of {margin} under it runs \
                     short{at}."
                )
            } else {
                format!("Above it {who} meets the shut-off bar{at}.")
            }
        }
        Limit::Withheld => governing(study)
            .first_short
            .as_ref()
            .zip(study.highest_clear_lock)
            .map(|(pair, lock)| format!("Above lock {lock} {}", meets(pair, show)))
            .unwrap_or_default(),
        Limit::Undecided(pair) => format!(
            "Above it the study could not decide between {} and {}, so it goes no higher.",
            the(&pair.moving),
            the(&pair.fixed)
        ),
    }
}

/// The findings of the door state that governs.
const fn governing(study: &Study) -> &DoorFinding {
    match study.headline_door {
        DoorState::Shut => &study.doors.shut,
        DoorState::Open => &study.doors.open,
        DoorState::Running => &study.doors.running,
    }
}

/// "vehicle roof 3 comes too near door panel 4 (over it): ..."
pub(super) fn meets(pair: &PairFinding, show: Show) -> String {
    let mut text = format!("{} comes too near {}", the(&pair.moving), the(&pair.fixed));
    if let Some(where_it_is) = relation(pair.points_m) {
        text.push_str(&format!(" ({where_it_is} it)"));
    }
    match (pair.first_breach_m, pair.first_touch_m) {
        (Some(breach), Some(touch)) if pair.margin_m > 0.0 => text.push_str(&format!(
            ": the margin of {} runs short at {} of travel, and they touch at {}.",
            show.need(pair.margin_m),
            show.room(breach),
            show.room(touch)
        )),
        (Some(breach), None) if pair.margin_m > 0.0 => text.push_str(&format!(
            ": the margin of {} runs short at {} of travel.",
            show.need(pair.margin_m),
            show.room(breach)
        )),
        (_, Some(touch)) | (Some(touch), None) => {
            text.push_str(&format!(": they touch at {} of travel.", show.room(touch)));
        }
        (None, None) => text.push('.'),
    }
    text
}

/// What the next lock is short of, when the same pair is the worst there.
fn next_lock(report: &Report<'_>, pair: &PairFinding) -> Option<String> {
    let study = report.study;
    let show = show(report);
    let clear = study.highest_clear_lock?;
    let next = study.locks.iter().find(|l| l.lock == clear + 1)?;
    let near = next.near.as_ref()?;
    if near.moving != pair.moving || near.fixed != pair.fixed {
        return None;
    }
    let lock = next.lock;
    if let Some(overlap) = near.overlap_m.filter(|o| *o > 0.0) {
        return Some(format!(
            " At lock {lock} they would overlap by {}.",
            show.need(overlap)
        ));
    }
    (near.clearance_m < near.margin_m).then(|| {
        format!(
            " At lock {lock} they would have {} of the {} asked.",
            show.room(near.clearance_m),
            show.need(near.margin_m)
        )
    })
}

/// What was not checked, and what is not known in full; empty when everything is.
pub(in crate::report) fn unknown(unknown: &[Unknown]) -> String {
    let of = |is_section: bool| -> Vec<&str> {
        unknown
            .iter()
            .filter(|one| matches!(one, Unknown::Section(_)) == is_section)
            .map(|one| one.words())
            .collect()
    };
    let (checks, sections) = (of(false), of(true));
    let mut sentences = Vec::new();
    if !checks.is_empty() {
        sentences.push(format!("Not checked: {}.", list(&checks)));
    }
    if !sections.is_empty() {
        sentences.push(format!(
            "Not known in full, and no pass (each has a section below): {}.",
            list(&sections)
        ));
    }
    sentences.join(" ")
}

/// What exact measuring and parking would gain.
pub(in crate::report) fn nominal(report: &Report<'_>) -> Option<String> {
    let study = report.study;
    let nominal = study.nominal_clear_lock?;
    let worst = study.highest_clear_lock.unwrap_or(0);
    (nominal > worst).then(|| {
        format!(
            "Were every dimension exactly as written and the vehicle exactly in its place, lock \
             {nominal} would be clear; the uncertainties listed below cost {}.",
            count(nominal - worst, "lock")
        )
    })
}

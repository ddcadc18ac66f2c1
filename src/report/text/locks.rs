//! How does each lock stand?

use super::page::{Cell, Page, Tone};
use super::{Report, Show, show};
use crate::bay::Door;
use crate::clearance::{LockFinding, LockState, NearFinding};
use crate::report::words::{plain, sentence, short_thing, thing};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    page.heading("Locks, the highest first");
    let rows: Vec<[Cell; 7]> = study
        .locks
        .iter()
        .rev()
        .map(|lock| row(lock, study.highest_safe_lock == Some(lock.lock), show))
        .collect();
    page.table(
        [
            "lock",
            "pads at",
            "state",
            "least room",
            "under body",
            "door",
            "between",
        ],
        &rows,
    );
    let door = if report.bay.garage.door == Door::None {
        String::new()
    } else {
        let word = study.headline_door.word();
        format!(" State and least room: with the door {word}, which governs.")
    };
    page.para(&format!(
        "Least room: worst case on the lock and in the climb to set and to leave it. Door: whether it \
         may be run with the vehicle on this lock and on every one below it that lifts.{door}"
    ));
    if study.highest_safe_lock.is_some() {
        page.para("* the highest safe lock.");
    }
    tyres(report, page);
    people(report, page);
}

fn row(lock: &LockFinding, is_safe: bool, show: Show) -> [Cell; 7] {
    let mark = if is_safe { "*" } else { " " };
    let tone = match lock.state {
        LockState::Clear => Tone::Good,
        LockState::Tight | LockState::Barred | LockState::NotShown => Tone::Poor,
        LockState::Strikes => Tone::Bad,
        LockState::NotLifting | LockState::NoRelease => Tone::Quiet,
    };
    [
        format!("{:>2} {mark}", lock.lock).into(),
        show.room(lock.pad_height_m).into(),
        Cell::toned(lock.state.words(), tone),
        match &lock.near {
            _ if strikes_another(lock).is_some() => "touch".into(),
            Some(near) => least_room(near, show),
            None => "-".into(),
        }
        .into(),
        show.room(lock.underbody_m).into(),
        if lock.door_may_run { "may run" } else { "stay" }.into(),
        between(lock).into(),
    ]
}

fn least_room(near: &NearFinding, show: Show) -> String {
    match near.overlap_m.filter(|o| *o > 0.0) {
        Some(overlap) => format!("overlap {}", show.need(overlap)),
        None if near.clearance_m > 0.0 => show.room(near.clearance_m),
        None => "touch".into(),
    }
}

/// What strikes at a lock, where another pair has the least room over its margin and does not touch.
fn strikes_another(lock: &LockFinding) -> Option<(&str, &str)> {
    let (moving, fixed) = lock.because.as_ref()?;
    let apart = lock.near.as_ref().is_none_or(|near| near.clearance_m > 0.0);
    (lock.state == LockState::Strikes && apart).then_some((moving, fixed))
}

fn between(lock: &LockFinding) -> String {
    let pair = |moving: &str, fixed: &str| format!("{} / {}", short_thing(moving), thing(fixed));
    if let Some((moving, fixed)) = strikes_another(lock) {
        return pair(moving, fixed);
    }
    match (&lock.near, &lock.because, lock.state) {
        (_, Some((moving, fixed)), LockState::Barred) => {
            format!("lower down: {}", pair(moving, fixed))
        }
        (Some(near), _, _) => pair(&near.moving, &near.fixed),
        (None, Some((moving, fixed)), _) => pair(moving, fixed),
        // Where the study could not decide, nothing is said to be far.
        (None, None, LockState::NotLifting | LockState::NotShown) => String::new(),
        (None, None, _) => "nothing near".into(),
    }
}

/// How low the tyres hang, where they are lower than the body.
fn tyres(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    let lock = study
        .highest_safe_lock
        .and_then(|lock| study.locks.get(lock - 1));
    if let Some(lock) = lock.filter(|lock| lock.tyre_m < lock.underbody_m) {
        let tyres = if lock.tyre_m > 0.0 {
            format!(
                "The tyres hang lower: {} over the floor",
                show.room(lock.tyre_m)
            )
        } else {
            "A tyre may still stand on the floor".to_owned()
        };
        page.para(&format!(
            "Under body: the lowest place of the body and of what sinks with its wheels. {tyres} on lock \
             {}.",
            lock.lock
        ));
    }
}

/// Who can stand upright under the vehicle.
fn people(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    let Some(highest) = study.highest_safe_lock else {
        return;
    };
    let safe = || {
        study
            .locks
            .iter()
            .filter(move |l| l.lock <= highest && l.state == LockState::Clear)
    };
    for person in &study.policy.people {
        let height = person.height.m();
        let who = format!("{} ({})", plain(&person.name), show.need(height));
        let text = match safe().find(|l| l.underbody_m >= height) {
            Some(lock) => format!(
                "{who} can stand upright under the lowest part of the body from lock {} on.",
                lock.lock
            ),
            None => {
                let most = safe()
                    .map(|l| l.underbody_m)
                    .fold(f64::NEG_INFINITY, f64::max);
                format!(
                    "{who} can't stand upright under the lowest part of the body on any safe \
                     lock: {} short.",
                    show.need(height - most)
                )
            }
        };
        page.para(&sentence(&text));
    }
}

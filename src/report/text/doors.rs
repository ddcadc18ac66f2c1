//! How do the states of the door compare?

use super::page::{Cell, Page};
use super::{Report, Show, show};
use crate::bay::Door;
use crate::clearance::DoorFinding;
use crate::report::words::{short_thing, thing};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    if report.bay.garage.door == Door::None {
        return;
    }
    let study = report.study;
    let show = show(report);
    page.heading("Door");
    let doors = &study.doors;
    let is_measured = study.not_measured().is_empty();
    let rows = [&doors.shut, &doors.open, &doors.running].map(|door| row(door, is_measured, show));
    page.table(
        ["door", "safe lock", "clear lock", "short from", "between"],
        &rows,
    );
    let governs = if study.door_is_held {
        format!(
            "The policy holds the door {} while the vehicle is up, so that state governs.",
            study.headline_door.word()
        )
    } else {
        let governs = format!(
            "The worse of shut and open governs: {}.",
            study.headline_door.word()
        );
        let held = if is_measured {
            if_held(report)
        } else {
            String::new()
        };
        format!("{governs}{held}")
    };
    let down = if !is_measured {
        "Whether it may be run is not known, not even with the vehicle on its tyres: leave it."
    } else if doors.may_run_when_down {
        "With the vehicle on its tyres the door may be run."
    } else {
        "Even with the vehicle on its tyres the door must NOT be run: it would come too near."
    };
    page.para(&format!("{governs} {down}"));
}

/// What a door that is held in the better state would leave, where that is more; the row of that state
/// alone would read as if it could be used.
fn if_held(report: &Report<'_>) -> String {
    let study = report.study;
    let better = [&study.doors.shut, &study.doors.open]
        .into_iter()
        .find(|door| door.highest_safe_lock > study.highest_safe_lock);
    let Some((lock, state)) = better.and_then(|door| Some((door.highest_safe_lock?, door.state)))
    else {
        return String::new();
    };
    let word = state.word();
    let held = study.highest_safe_lock.map_or_else(
        || "no lock is safe".to_owned(),
        |safe| format!("no lock above {safe} is safe"),
    );
    format!(
        " Lock {lock} would be safe only with the door held {word} and locked out all the while, which \
         the policy does not say; as it is, {held} with the door {word} either."
    )
}

fn row(door: &DoorFinding, is_measured: bool, show: Show) -> [Cell; 5] {
    let lock = |lock: Option<usize>| lock.map_or_else(|| "none".into(), |l| l.to_string());
    let (from, between) = door.first_short.as_ref().map_or_else(
        || {
            let nothing = if is_measured {
                "nothing comes short"
            } else {
                "not known"
            };
            ("-".into(), nothing.into())
        },
        |pair| {
            let from = pair.first_breach_m.or(pair.first_touch_m);
            (
                from.map_or_else(|| "-".into(), |m| show.room(m)),
                format!("{} / {}", short_thing(&pair.moving), thing(&pair.fixed)),
            )
        },
    );
    [
        door.state.word().into(),
        lock(door.highest_safe_lock).into(),
        lock(door.highest_clear_lock).into(),
        from.into(),
        between.into(),
    ]
}

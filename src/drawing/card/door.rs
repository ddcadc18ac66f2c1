//! What may be done with the overhead door while the vehicle is up?

use crate::bay::{Bay, Door};
use crate::clearance::{LockState, Study};

/// Whether the door may be run with the vehicle on a lock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Run {
    /// There is no door.
    NoDoor,
    /// The policy holds it in one state: not at all.
    Held(&'static str),
    /// On no lock.
    Never,
    /// On the locks from the first to the second; the third is true where that is every lock that
    /// may be used.
    UpTo(usize, usize, bool),
}

/// What holds for locks up to the highest safe one.
///
/// A lock counts only where the door may be run on it, on every lock below it that lifts, and on
/// the whole way up to it: so "not above lock N" is never too high.
pub(super) fn run(bay: &Bay, study: &Study, safe: usize) -> Run {
    if bay.garage.door == Door::None {
        return Run::NoDoor;
    }
    if study.door_is_held {
        return Run::Held(study.headline_door.word());
    }
    let running = &study.doors.running;
    let cap = running.highest_safe_lock.unwrap_or(0).min(safe);
    let mut lifting = study
        .locks
        .iter()
        .filter(|lock| lock.state != LockState::NotLifting)
        .peekable();
    let Some(first) = lifting.peek().map(|lock| lock.lock) else {
        return Run::Never;
    };
    let highest = lifting
        .take_while(|lock| lock.lock <= cap && lock.door_may_run)
        .map(|lock| lock.lock)
        .last();
    highest.map_or(Run::Never, |highest| {
        Run::UpTo(first, highest, highest == safe)
    })
}

/// The sentences for the vehicle's page, and whether they forbid something.
pub(super) fn says(bay: &Bay, study: &Study, safe: usize) -> (String, bool) {
    let run = run(bay, study, safe);
    let (text, forbids) = match run {
        Run::NoDoor => return ("none in the bay file".into(), false),
        Run::Held(word) => (
            format!(
                "Keep the door {word} as long as the vehicle is off the floor. With it anywhere \
                 else, or on its way, NOTHING on this card holds. Lock it out before the raise."
            ),
            true,
        ),
        Run::Never => (
            "DO NOT RUN THE DOOR while the vehicle is off the floor: on no lock is there room for \
             it on its way. Shut or open, leave it as it is, and lock it out before the raise."
                .into(),
            true,
        ),
        Run::UpTo(first, highest, true) => (
            format!(
                "Shut or open. It may be run only while the vehicle rests on {} with nothing on it \
                 standing open, never while the lift moves{}.",
                locks(first, highest),
                above(study, highest)
            ),
            false,
        ),
        Run::UpTo(first, highest, false) => (
            format!(
                "DO NOT RUN THE DOOR ABOVE LOCK {highest}: lock it out before the raise. It may be \
                 run only while the vehicle rests on {} with nothing on it standing open, never \
                 while the lift moves.",
                locks(first, highest)
            ),
            true,
        ),
    };
    if study.doors.may_run_when_down {
        return (text, forbids);
    }
    let down = " Not even with the vehicle on its tyres in its place: it would come too near.";
    (format!("{text}{down}"), true)
}

fn locks(first: usize, last: usize) -> String {
    if first == last {
        format!("lock {last}")
    } else {
        format!("locks {first} to {last}")
    }
}

/// ", never above lock 4"; nothing where the lift has no higher lock.
fn above(study: &Study, highest: usize) -> String {
    if highest < study.locks.len() {
        format!(", never above lock {highest}")
    } else {
        String::new()
    }
}

/// A few words for a table.
pub(super) fn in_short(bay: &Bay, study: &Study, safe: usize) -> String {
    match run(bay, study, safe) {
        Run::NoDoor => "none".into(),
        Run::Held(word) => format!("KEEP IT {}", word.to_uppercase()),
        Run::Never => "DO NOT RUN IT with the vehicle up".into(),
        Run::UpTo(first, highest, _) if highest < study.locks.len() => format!(
            "run only at rest on {}, DO NOT RUN IT above lock {highest}",
            locks(first, highest)
        ),
        Run::UpTo(first, highest, _) => format!("run only at rest on {}", locks(first, highest)),
    }
}

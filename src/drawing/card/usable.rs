//! Which locks may a vehicle be set down on?

use crate::clearance::{LockState, Study};

/// Whether a lock may be used for one vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Use {
    /// It may.
    Safe,
    /// It is passed on the way, but not all four pads carry the vehicle there yet.
    NotCarried,
    /// It may not: it is not safe, or the vehicle has no safe lock at all.
    Forbidden,
}

/// Of one lock, counted from 1. What is not known to be safe is forbidden.
pub(super) fn of(study: &Study, lock: usize) -> Use {
    let Some(highest) = study.highest_safe_lock.filter(|highest| lock <= *highest) else {
        return Use::Forbidden;
    };
    let found = study.locks.iter().find(|one| one.lock == lock);
    match found.map(|one| one.state) {
        Some(LockState::Clear) => Use::Safe,
        Some(LockState::NotLifting) if lock < highest => Use::NotCarried,
        _ => Use::Forbidden,
    }
}

/// "1 to 4", "2, 5".
pub(super) fn run(locks: &[usize]) -> String {
    let numbers: Vec<String> = locks.iter().map(ToString::to_string).collect();
    match locks {
        [first, .., last] if last - first + 1 == locks.len() => format!("{first} to {last}"),
        _ => numbers.join(", "),
    }
}

/// Which may be used and which may not, for the vehicle's page.
pub(super) fn says(study: &Study) -> String {
    let which = |what: Use| -> Vec<usize> {
        let all = study.locks.iter().map(|one| one.lock);
        all.filter(|lock| of(study, *lock) == what).collect()
    };
    let mut text = format!("{} and no other", run(&which(Use::Safe)));
    let named = |locks: &[usize]| {
        let word = if locks.len() == 1 { "Lock" } else { "Locks" };
        format!("{word} {}", run(locks))
    };
    let idle = which(Use::NotCarried);
    if !idle.is_empty() {
        text.push_str(&format!(
            ". {}: NOT TO BE USED, not all four pads carry the vehicle there",
            named(&idle)
        ));
    }
    let forbidden = which(Use::Forbidden);
    if !forbidden.is_empty() {
        text.push_str(&format!(". {}: NOT TO BE USED", named(&forbidden)));
    }
    text
}

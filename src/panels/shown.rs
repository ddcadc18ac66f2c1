//! What holds at the shown position, and who may be drawn there?
//!
//! A lock is judged over everything that the carriage passes there, from where its latches fall in
//! to where it must be raised to let them go; the shown position is a single travel. At a lock the
//! worse of the two is told, so that no picture is kinder than the study.

use super::Desk;
use super::job::Verdict;
use super::signs::{ABOVE_MARK, State, WITHHELD};
use crate::clearance::probe::HereState;
use crate::clearance::{DoorState, LockState};

/// The state of a lock (counted from 1) with the door in a state. A lock that the study says
/// nothing of is never better than undecided.
#[must_use]
pub fn lock_state(verdict: &Verdict, door: DoorState, lock: usize) -> LockState {
    let doors = &verdict.study.doors;
    let found = match door {
        DoorState::Shut => &doors.shut,
        DoorState::Open => &doors.open,
        DoorState::Running => &doors.running,
    };
    lock.checked_sub(1)
        .and_then(|index| found.locks.get(index))
        .copied()
        .unwrap_or(LockState::NotShown)
}

/// The state of the door that the shown position is counted for.
#[must_use]
pub fn door_state(desk: &Desk, verdict: &Verdict) -> DoorState {
    desk.here
        .as_ref()
        .map_or(verdict.study.headline_door, |here| here.door)
}

/// The state of the shown position; none before the first study.
#[must_use]
pub fn state(desk: &Desk) -> Option<State> {
    let (verdict, here) = (desk.verdict.as_ref()?, desk.here.as_ref()?);
    let locks_m = desk.locks_m();
    let at_lock = desk.rise.at_lock(&locks_m);
    // Between locks never better than the lock passed last: what is above a lock that is short lies
    // behind that shortness.
    let passed = at_lock.or_else(|| {
        let passed = locks_m
            .iter()
            .filter(|lock_m| **lock_m <= desk.rise.travel_m);
        Some(passed.count()).filter(|count| *count > 0)
    });
    let state = match (
        passed.map(|lock| lock_state(verdict, here.door, lock)),
        at_lock,
    ) {
        (None, _) => here.state.into(),
        (Some(lock), Some(_)) => worse(lock, here.state),
        (Some(LockState::NotLifting | LockState::NoRelease | LockState::Clear), None) => {
            here.state.into()
        }
        (Some(lock), None) => match worse(LockState::Barred, here.state) {
            barred if lock != LockState::NotShown => barred,
            _ => worse(LockState::NotShown, here.state),
        },
    };
    Some(qualified(desk, verdict, state))
}

/// What is clear in itself is not said to be when the carriage is above the mark never to climb
/// above, nor without a word where no lock is called safe.
fn qualified(desk: &Desk, verdict: &Verdict, state: State) -> State {
    let is_good = state == LockState::Clear.into() || state == HereState::Clear.into();
    if !is_good {
        return state;
    }
    let above_m = verdict.study.marks.and_then(|marks| {
        let never = marks.never_above_m?;
        // The marked edge climbs with the carriage.
        Some(marks.stop_travel_m + never - marks.stop_m)
    });
    // What is no number is above it.
    if above_m.is_some_and(|above_m| desk.rise.travel_m > above_m || above_m.is_nan()) {
        return ABOVE_MARK;
    }
    if is_withheld(verdict) {
        return WITHHELD;
    }
    state
}

/// Whether no lock is called safe though some are clear.
#[must_use]
pub fn is_withheld(verdict: &Verdict) -> bool {
    !verdict.study.withheld.is_empty()
}

/// The state of a lock as it is shown on the ladder.
#[must_use]
pub fn of_lock(verdict: &Verdict, state: LockState) -> State {
    if state == LockState::Clear && is_withheld(verdict) {
        WITHHELD
    } else {
        state.into()
    }
}

fn worse(lock: LockState, here: HereState) -> State {
    let seen = match here {
        HereState::Strikes => Some(LockState::Strikes),
        HereState::NotShown => Some(LockState::NotShown),
        HereState::Barred => Some(LockState::Barred),
        HereState::Tight => Some(LockState::Tight),
        HereState::Parked | HereState::Meeting | HereState::Clear => None,
    };
    match (lock, seen) {
        (lock, None) => lock.into(),
        // That a lock does not carry says nothing of what is met there.
        (LockState::NotLifting | LockState::NoRelease, Some(seen)) => seen.into(),
        (lock, Some(seen)) => lock.min(seen).into(),
    }
}

/// Whether someone of this height may be drawn under the vehicle: only where it rests on a lock no
/// higher than the highest safe one, clear with the door as shown, by a verdict of the file as it
/// stands, and with room for their head.
#[must_use]
pub fn may_stand_under(desk: &Desk, height_m: f64) -> bool {
    let Some(verdict) = desk.verdict.as_ref().filter(|_| desk.is_current()) else {
        return false;
    };
    let study = &verdict.study;
    let (Some(lock), Some(safe)) = (desk.rise.at_lock(&desk.locks_m()), study.highest_safe_lock)
    else {
        return false;
    };
    let has_room = study
        .locks
        .iter()
        .any(|found| found.lock == lock && found.underbody_m >= height_m);
    let is_clear = state(desk).is_some_and(|state| state == LockState::Clear.into());
    !desk.rise.playing && lock <= safe && is_clear && has_room
}

/// Whether anyone may be drawn under the vehicle now; such a picture carries
/// [`GOING_UNDER`](crate::report::GOING_UNDER).
#[must_use]
pub fn may_anyone_be_under(desk: &Desk) -> bool {
    let people = desk.verdict.iter().flat_map(|v| &v.bay.policy.people);
    desk.settings.people
        && people
            .map(|person| person.height.m())
            .any(|height_m| may_stand_under(desk, height_m))
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCKS: [LockState; 7] = [
        LockState::NotLifting,
        LockState::NoRelease,
        LockState::NotShown,
        LockState::Strikes,
        LockState::Barred,
        LockState::Tight,
        LockState::Clear,
    ];

    #[test]
    fn clear_is_said_only_where_both_say_so() {
        for lock in LOCKS {
            for here in [
                HereState::Strikes,
                HereState::NotShown,
                HereState::Tight,
                HereState::Barred,
                HereState::Parked,
                HereState::Meeting,
                HereState::Clear,
            ] {
                let said = worse(lock, here);
                let is_good = matches!(
                    here,
                    HereState::Parked | HereState::Meeting | HereState::Clear
                );
                let is_clear = said == State::from(LockState::Clear);
                assert_eq!(
                    is_clear,
                    lock == LockState::Clear && is_good,
                    "{lock:?} and {here:?}"
                );
            }
        }
        assert_eq!(
            worse(LockState::NotLifting, HereState::Strikes),
            LockState::Strikes.into()
        );
    }
}

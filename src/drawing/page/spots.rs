//! What is said beside the raise, at each lock and between?
//!
//! At a lock the worse of the lock's state and of what the probe says there; between two locks the
//! worse of both, and of what the probe says on the way. Nothing is clear above the mark never to
//! climb above, above the highest safe lock, or where no lock is called safe.

use crate::bay::{Bay, Door};
use crate::clearance::{DoorState, HereState, LockFinding, LockState, Probe, Study};
use crate::drawing::palette::{self, Colour};
use crate::report::{Sayings, called, why_not_safe};
use crate::solids::DoorTravel;

/// A stretch of the way up, or a lock on it, and what is said of it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Spot {
    /// From this travel, metres.
    pub(super) from_m: f64,
    /// To this one: the same for a lock and for the floor.
    pub(super) to_m: f64,
    /// The lock.
    pub(super) lock: Option<usize>,
    /// Its state, in a word.
    pub(super) word: &'static str,
    /// That state's colour.
    pub(super) colour: Colour,
    /// True where every margin holds and a lock here or above is safe.
    pub(super) is_good: bool,
    /// The rest, in a sentence or two.
    pub(super) says: String,
}

/// Places that the probe is asked about between two locks.
const BETWEEN: u32 = 6;

/// The states of the door that are shown, and what the page calls them.
pub(super) fn doors(bay: &Bay, study: &Study) -> Vec<(DoorState, &'static str)> {
    if bay.garage.door == Door::None {
        return vec![(study.headline_door, "")];
    }
    vec![(DoorState::Open, "open"), (DoorState::Shut, "shut")]
}

const fn travel(door: DoorState) -> DoorTravel {
    match door {
        DoorState::Open => DoorTravel::Open,
        DoorState::Shut => DoorTravel::Shut,
        DoorState::Running => DoorTravel::At(0.5),
    }
}

/// Everything that is said with the door in a state, from the floor up.
pub(super) fn spots(
    bay: &Bay,
    study: &Study,
    said: &Sayings<'_>,
    probe: &mut Probe,
    door: DoorState,
) -> Vec<Spot> {
    let teller = Teller {
        study,
        said,
        door,
        has_door: bay.garage.door != Door::None,
        why: why_not_safe(bay, study),
    };
    let floor = seen(LockState::Clear, probe.at(travel(door), 0.0).state);
    let mut spots = vec![teller.floor(floor)];
    let (mut below_m, mut below) = (0.0, floor);
    for lock in &study.locks {
        let at = seen(
            teller.lock_state(lock.lock),
            probe.at(travel(door), lock.travel_m).state,
        );
        let mut between = worse(below, at);
        for step in 1..BETWEEN {
            let share = f64::from(step) / f64::from(BETWEEN);
            let travel_m = below_m + (lock.travel_m - below_m) * share;
            between = worse(
                between,
                seen(between, probe.at(travel(door), travel_m).state),
            );
        }
        spots.push(teller.between(below_m, lock, between));
        spots.push(teller.lock(lock, at));
        (below_m, below) = (lock.travel_m, at);
    }
    spots
}

/// A lock's state and what is seen there: the worse.
fn seen(lock: LockState, here: HereState) -> LockState {
    match here {
        HereState::Strikes => worse(lock, LockState::Strikes),
        HereState::NotShown => worse(lock, LockState::NotShown),
        HereState::Barred => worse(lock, LockState::Barred),
        HereState::Tight => worse(lock, LockState::Tight),
        HereState::Parked | HereState::Meeting | HereState::Clear => lock,
    }
}

/// The worse of two states: what is met goes before what does not carry or let go.
pub(super) fn worse(a: LockState, b: LockState) -> LockState {
    let rank = |state| match state {
        LockState::Strikes => 0,
        LockState::NotShown => 1,
        LockState::Barred => 2,
        LockState::Tight => 3,
        LockState::NoRelease => 4,
        LockState::NotLifting => 5,
        LockState::Clear => 6,
    };
    if rank(a) <= rank(b) { a } else { b }
}

struct Teller<'a> {
    study: &'a Study,
    said: &'a Sayings<'a>,
    door: DoorState,
    has_door: bool,
    why: Option<String>,
}

impl Teller<'_> {
    /// A lock that the study says nothing of is never better than undecided.
    fn lock_state(&self, lock: usize) -> LockState {
        let doors = &self.study.doors;
        let found = match self.door {
            DoorState::Shut => &doors.shut,
            DoorState::Open => &doors.open,
            DoorState::Running => &doors.running,
        };
        let state = lock.checked_sub(1).and_then(|index| found.locks.get(index));
        state.copied().unwrap_or(LockState::NotShown)
    }

    fn door_words(&self) -> String {
        if self.has_door {
            format!(", door {}", self.door.word())
        } else {
            String::new()
        }
    }

    /// The travel at the mark never to climb above: the marked edge climbs with the carriage.
    fn never_above_m(&self) -> Option<f64> {
        let marks = self.study.marks?;
        Some(marks.stop_travel_m + marks.never_above_m? - marks.stop_m)
    }

    /// The word for a state up to a travel, whether it is good, and why not where it seems so.
    fn word(
        &self,
        state: LockState,
        lock: usize,
        to_m: f64,
    ) -> (&'static str, Colour, bool, String) {
        if state != LockState::Clear {
            return (state.words(), palette::lock(state), false, String::new());
        }
        let not_safe = |why: String| ("not safe", palette::BARRED, false, why);
        if let Some(why) = &self.why {
            return not_safe(format!(
                "Every margin holds here, but no lock is called safe: {why}."
            ));
        }
        match (self.study.highest_safe_lock, self.never_above_m()) {
            (Some(safe), _) if lock > safe => not_safe(format!(
                "Every margin holds here{}, but no lock above lock {safe} is called safe.",
                self.door_words().replace(", door", " with the door")
            )),
            (Some(_), Some(never)) if to_m > never => {
                not_safe("This is above the mark never to climb above.".into())
            }
            (Some(_), _) => (state.words(), palette::lock(state), true, String::new()),
            (None, _) => not_safe("No lock is called safe.".into()),
        }
    }

    fn floor(&self, state: LockState) -> Spot {
        let (word, colour) = match state {
            LockState::Clear => ("on its tyres", palette::IDLE),
            other => (other.words(), palette::lock(other)),
        };
        Spot {
            from_m: 0.0,
            to_m: 0.0,
            lock: None,
            word,
            colour,
            is_good: false,
            says: match &self.why {
                None => format!("On the floor, as parked{}.", self.door_words()),
                Some(why) => format!(
                    "On the floor, as parked{}. No lock is called safe: {why}.",
                    self.door_words()
                ),
            },
        }
    }

    fn between(&self, below_m: f64, above: &LockFinding, state: LockState) -> Spot {
        let (word, colour, is_good, why) = self.word(state, above.lock, above.travel_m);
        let place = if above.lock == 1 {
            "Below lock 1".into()
        } else {
            format!("Between lock {} and lock {}", above.lock - 1, above.lock)
        };
        let says = format!(
            "{place}{}: nobody goes under here, the vehicle hangs on the hydraulics. {why}",
            self.door_words()
        );
        Spot {
            from_m: below_m,
            to_m: above.travel_m,
            lock: None,
            word,
            colour,
            is_good,
            says: says.trim_end().into(),
        }
    }

    fn lock(&self, lock: &LockFinding, state: LockState) -> Spot {
        let study = self.study;
        let show = self.said.show();
        let (word, colour, is_good, why) = self.word(state, lock.lock, lock.travel_m);
        let is_highest = is_good && study.highest_safe_lock == Some(lock.lock);
        let mut says = format!(
            "Lock {} of {}{}{}: pads at {}, {} under the body.",
            lock.lock,
            study.locks.len(),
            if is_highest {
                ", the highest safe lock"
            } else {
                ""
            },
            self.door_words(),
            show.room(lock.pad_height_m),
            show.room(lock.underbody_m)
        );
        if !why.is_empty() {
            says = format!("{says} {why}");
        }
        // The table of locks, and what is nearest, is that of the state that governs.
        if self.door == study.headline_door {
            says = format!("{says}{}", self.nearest(lock));
        }
        if is_highest && let Some(mark) = self.said.stop_mark() {
            says = format!("{says} Stop the raise with the carriage's marked edge at {mark}.");
        }
        Spot {
            from_m: lock.travel_m,
            to_m: lock.travel_m,
            lock: Some(lock.lock),
            word,
            colour,
            is_good,
            says,
        }
    }

    fn nearest(&self, lock: &LockFinding) -> String {
        let show = self.said.show();
        if let (LockState::Barred, Some((moving, fixed))) = (lock.state, &lock.because) {
            return format!(
                " Lower down {} comes too near {}.",
                called(moving),
                called(fixed)
            );
        }
        let Some(near) = &lock.near else {
            return String::new();
        };
        let (moving, fixed) = (called(&near.moving), called(&near.fixed));
        match near.overlap_m.filter(|overlap| *overlap > 0.0) {
            Some(overlap) => format!(
                " At worst {moving} and {fixed} overlap by {}.",
                show.need(overlap)
            ),
            None => format!(
                " Least room, at worst: {} from {moving} to {fixed}, {} asked.",
                show.room(near.clearance_m),
                show.need(near.margin_m)
            ),
        }
    }
}

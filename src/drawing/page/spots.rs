//! What is said beside the raise, at each lock and between?
//!
//! At a lock the worse of the lock's state and of what the probe says there. Nothing is clear but a
//! lock: none above the mark never to climb above, none above the highest safe lock, none at all
//! where no lock is called safe. Between two locks only what is met there is told (`between`).

mod between;
mod stretch;

use self::between::Way;
use crate::bay::{Bay, Door};
use crate::clearance::{
    DoorFinding, DoorState, Here, HereState, LockFinding, LockState, PairState, Probe, Study,
    overtravel_m,
};
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
    /// True on a lock where every margin holds, up to the highest safe one.
    pub(super) is_good: bool,
    /// The rest, in a sentence or two.
    pub(super) says: String,
}

/// The states of the door that are shown, and what the page calls them.
pub(super) fn doors(bay: &Bay, study: &Study) -> Vec<(DoorState, &'static str)> {
    if bay.garage.door == Door::None {
        return vec![(study.headline_door, "")];
    }
    vec![
        (DoorState::Open, "open"),
        (DoorState::Shut, "shut"),
        (DoorState::Running, "running"),
    ]
}

/// Where a door in a state is drawn: one that runs, half way.
pub(super) const fn travel(door: DoorState) -> DoorTravel {
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
    let found = teller.found();
    let way = Way {
        short: probe.stretches(door),
        first_breach_m: found.first_breach_m,
        undecided_m: found.undecided_m,
        touch_m: least(study.phases.touch_m),
        carry_m: study.phases.carry_worst_m,
        never_above_m: teller.never_above_m(),
        locks_m: study.locks.iter().map(|lock| lock.travel_m).collect(),
        past_m: overtravel_m(bay),
        top_m: bay.lift.travel.m(),
    };
    let floor = seen(LockState::Clear, probe.at(travel(door), 0.0).state);
    let mut spots = vec![teller.floor(floor)];
    let mut below_m = 0.0;
    for lock in &study.locks {
        spots.extend(teller.between(&way, below_m, lock.travel_m));
        spots.push(teller.lock(lock, &probe.at(travel(door), lock.travel_m)));
        below_m = lock.travel_m;
    }
    // Past the highest lock too: the carriage climbs over it to set the vehicle down.
    spots.extend(teller.between(&way, below_m, way.top_m));
    spots
}

fn least(of: [f64; 4]) -> f64 {
    of.into_iter().fold(f64::INFINITY, f64::min)
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
    const fn found(&self) -> &DoorFinding {
        let doors = &self.study.doors;
        match self.door {
            DoorState::Shut => &doors.shut,
            DoorState::Open => &doors.open,
            DoorState::Running => &doors.running,
        }
    }

    /// A lock that the study says nothing of is never better than undecided.
    fn lock_state(&self, lock: usize) -> LockState {
        let locks = &self.found().locks;
        let state = lock.checked_sub(1).and_then(|index| locks.get(index));
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

    /// The word for a lock's state, whether it is good, and why not where it seems so.
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

    fn lock(&self, lock: &LockFinding, here: &Here) -> Spot {
        let state = seen(self.lock_state(lock.lock), here.state);
        let study = self.study;
        let show = self.said.show();
        let (word, colour, is_good, why) = self.word(state, lock.lock, lock.travel_m);
        let is_highest = is_good && study.highest_safe_lock == Some(lock.lock);
        let mut says = format!(
            "Lock {} of {}{}{}: pads at {}.",
            lock.lock,
            study.locks.len(),
            if is_highest {
                ", the highest safe lock"
            } else {
                ""
            },
            self.door_words(),
            show.room(lock.pad_height_m)
        );
        if is_good {
            // Nobody is told of room where they may not stand.
            says = format!("{says} {} under the body.", show.room(lock.underbody_m));
        } else {
            says += " NOT TO BE USED: nobody goes under here.";
        }
        if !why.is_empty() {
            says = format!("{says} {why}");
        } else if !is_good {
            says += &self.not_here(lock.travel_m);
        }
        // The table of locks, and what is nearest at worst, is that of the state that governs; in
        // another state, what is nearest on the lock itself.
        says += &if self.door == study.headline_door {
            self.nearest(lock)
        } else {
            self.nearest_here(here)
        };
        if self.door == DoorState::Running {
            says += if lock.door_may_run {
                " With the vehicle on this lock the overhead door may be run."
            } else {
                " With the vehicle on this lock do NOT run the overhead door."
            };
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

    /// What holds of a lock that is not clear beside its own state.
    fn not_here(&self, at_m: f64) -> String {
        if let Some(why) = &self.why {
            return format!(" No lock is called safe: {why}.");
        }
        match self.never_above_m() {
            Some(never) if at_m > never => " This is above the mark never to climb above.".into(),
            _ => String::new(),
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

    /// Nearest with the vehicle on the lock, without the climb past it and without what the lift's own
    /// parts leave each other.
    fn nearest_here(&self, here: &Here) -> String {
        let show = self.said.show();
        let of_lift = |name: &str| name.starts_with("lift/");
        let mut pairs = here.pairs.iter();
        let Some(near) = pairs.find(|pair| !(of_lift(&pair.moving) && of_lift(&pair.fixed))) else {
            return String::new();
        };
        let (moving, fixed) = (called(&near.moving), called(&near.fixed));
        if near.state == PairState::Strikes {
            return format!(" On the lock {moving} and {fixed} touch, or may.");
        }
        format!(
            " Least room on the lock: {} from {moving} to {fixed}, {} asked.",
            show.room(near.worst_m),
            show.need(near.margin_m)
        )
    }
}

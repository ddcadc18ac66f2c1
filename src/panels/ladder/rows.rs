//! What stands on the ladder?

use crate::clearance::LockState;
use crate::panels::Desk;
use crate::panels::shown::{door_state, lock_state, of_lock};
use crate::panels::signs::State;
use crate::report::Sayings;

/// Something at a travel.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Where, metres of travel.
    pub travel_m: f64,
    /// What.
    pub thing: Thing,
    /// How much its label matters when there is no room for all: 0 the most.
    pub rank: u32,
}

/// What stands at a travel.
#[derive(Debug, Clone, PartialEq)]
pub enum Thing {
    /// A lock.
    Lock(Lock),
    /// A mark, by its words, and by fewer words for a narrow ladder.
    Mark(String, &'static str),
}

/// A lock as it is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Lock {
    /// Counted from 1.
    pub number: usize,
    /// Height of its pads, in words.
    pub pads: String,
    /// Its state with the door as shown.
    pub state: LockState,
    /// How that is shown: clear is not all where no lock is called safe.
    pub shown: State,
    /// The highest safe lock of the verdict.
    pub is_safe: bool,
    /// The door that the verdict is for, where this lock is safe with that one only and another is
    /// shown.
    pub safe_with: Option<&'static str>,
    /// The carriage stands at it.
    pub is_here: bool,
}

impl Lock {
    /// All of it in words.
    #[must_use]
    pub fn words(&self) -> String {
        let mut words = format!(
            "lock {}, pads at {}, {}",
            self.number, self.pads, self.shown.word
        );
        if self.is_safe {
            words.push_str(", the highest safe lock");
        }
        if let Some(door) = self.safe_with {
            words.push_str(", the highest safe lock with the door ");
            words.push_str(door);
        }
        words
    }

    /// Its state in a word or two.
    #[must_use]
    pub fn state_words(&self) -> String {
        let state = self.shown.word;
        match self.safe_with {
            _ if self.is_safe => format!("{state}, SAFE"),
            Some(door) => format!("{state}; safe {door}"),
            None => state.into(),
        }
    }
}

/// Everything on the ladder, locks from the lowest to the highest, then marks.
#[must_use]
pub fn rows(desk: &Desk) -> Vec<Row> {
    let Some(verdict) = &desk.verdict else {
        return Vec::new();
    };
    let study = &verdict.study;
    let said = Sayings::of(&verdict.bay, study);
    let door = door_state(desk, verdict);
    let at_lock = desk.rise.at_lock(&desk.locks_m());
    let state = |index: usize| lock_state(verdict, door, index + 1);
    let last = study.locks.len().saturating_sub(1);
    let mut rows: Vec<Row> = study
        .locks
        .iter()
        .enumerate()
        .map(|(index, lock)| {
            let is_highest = study.highest_safe_lock == Some(lock.lock);
            // Safe is said of what is shown, or of which door it is true.
            let is_so = door == study.headline_door || state(index) == LockState::Clear;
            let lock_shown = Lock {
                number: lock.lock,
                pads: said.show().room(lock.pad_height_m),
                state: state(index),
                shown: of_lock(verdict, state(index)),
                is_safe: is_highest && is_so,
                safe_with: (is_highest && !is_so).then(|| study.headline_door.word()),
                is_here: at_lock == Some(lock.lock),
            };
            let changes = index > 0 && state(index) != state(index - 1);
            let above_safe = lock
                .lock
                .checked_sub(1)
                .is_some_and(|below| study.highest_safe_lock == Some(below));
            let rank = if is_highest || above_safe || lock_shown.is_here {
                0
            } else if changes || index == 0 || index == last {
                1
            } else {
                // Of many locks every second goes first, then every fourth.
                7 - lock.lock.trailing_zeros().min(5)
            };
            Row {
                travel_m: lock.travel_m,
                thing: Thing::Lock(lock_shown),
                rank,
            }
        })
        .collect();
    let mark = |travel_m: f64, words: String, short: &'static str| Row {
        travel_m,
        thing: Thing::Mark(words, short),
        rank: 0,
    };
    if let (Some(marks), Some(stop)) = (study.marks, said.stop_mark_short()) {
        rows.push(mark(
            marks.stop_travel_m,
            format!("STOP mark {stop}"),
            "STOP mark",
        ));
        if let (Some(never_m), Some(never)) = (marks.never_above_m, said.never_above_short()) {
            // Both marks are read at the same edge of the carriage.
            let travel_m = marks.stop_travel_m + never_m - marks.stop_m;
            rows.push(mark(
                travel_m,
                format!("never above {never}"),
                "never above",
            ));
        }
    }
    if let Some(trips_m) = study.bar.as_ref().and_then(|bar| bar.trips_at_m) {
        rows.push(mark(trips_m, "shut-off bar trips".into(), "bar trips"));
    }
    rows
}

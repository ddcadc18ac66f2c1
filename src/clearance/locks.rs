//! The state of every lock, from what the sweeps found.

use super::findings::LockState;
use super::sweep::{Breach, LockWindows, Swept};

/// Slack (metres) in comparing travels that were added up from the same figures.
const SAME_M: f64 = 1e-9;

/// What several sweeps (the room, the door in one state) found together.
#[derive(Debug, Clone, Copy)]
pub struct Together<'a> {
    /// The sweeps; their group is the index.
    pub swept: &'a [&'a Swept],
}

impl Together<'_> {
    /// The first breach over all groups, with its group.
    #[must_use]
    pub fn first(&self) -> Option<(usize, Breach)> {
        earliest(self.swept.iter().map(|swept| swept.first))
    }

    /// The first undecided pair over all groups, with its group.
    #[must_use]
    pub fn undecided(&self) -> Option<(usize, Breach)> {
        earliest(self.swept.iter().map(|swept| swept.undecided))
    }

    /// A pair that touches at this lock, with its group.
    #[must_use]
    pub fn touching(&self, lock: usize) -> Option<(usize, Breach)> {
        self.swept.iter().enumerate().find_map(|(group, swept)| {
            swept
                .touching
                .get(lock)
                .copied()
                .flatten()
                .map(|breach| (group, breach))
        })
    }

    /// The state of one lock, and the pair it is owed to.
    ///
    /// `carry_m` is the travel from which all pads carry, `travel_m` the carriage's full travel.
    #[must_use]
    pub fn state(
        &self,
        locks: &LockWindows,
        lock: usize,
        carry_m: f64,
        travel_m: f64,
    ) -> (LockState, Option<(usize, Breach)>) {
        let [set, top] = locks.windows[lock];
        if set < carry_m {
            return (LockState::NotLifting, None);
        }
        if top > travel_m + SAME_M {
            return (LockState::NoRelease, None);
        }
        let undecided = self.undecided();
        if let Some((_, pair)) = undecided
            && pair.travel_m <= top
        {
            return (LockState::NotShown, undecided);
        }
        if let Some(pair) = self.touching(lock) {
            return (LockState::Strikes, Some(pair));
        }
        match self.first() {
            Some((group, pair)) if pair.travel_m < set => (LockState::Barred, Some((group, pair))),
            Some((group, pair)) if pair.travel_m <= top => (LockState::Tight, Some((group, pair))),
            _ => (LockState::Clear, None),
        }
    }

    /// The state of every lock.
    #[must_use]
    pub fn states(
        &self,
        locks: &LockWindows,
        carry_m: f64,
        travel_m: f64,
    ) -> Vec<(LockState, Option<(usize, Breach)>)> {
        (0..locks.windows.len())
            .map(|lock| self.state(locks, lock, carry_m, travel_m))
            .collect()
    }
}

/// The highest clear lock, counted from 1.
#[must_use]
pub fn highest_clear(states: impl IntoIterator<Item = LockState>) -> Option<usize> {
    states
        .into_iter()
        .enumerate()
        .filter(|(_, state)| *state == LockState::Clear)
        .map(|(index, _)| index + 1)
        .max()
}

fn earliest(breaches: impl Iterator<Item = Option<Breach>>) -> Option<(usize, Breach)> {
    breaches
        .enumerate()
        .filter_map(|(group, breach)| breach.map(|breach| (group, breach)))
        .min_by(|a, b| a.1.travel_m.total_cmp(&b.1.travel_m))
}

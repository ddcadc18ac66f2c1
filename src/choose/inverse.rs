//! How high would a flat ceiling have to be for each lock, and how tall may the vehicle be?
//!
//! Found by closing in on the study itself, so that each answer fed back into `check` lies on the
//! boundary: there the lock is clear, and [`TOLERANCE_M`] farther on it is not. The side that holds
//! is the one that is told.

use super::vary::{most_lowering, roof_over_lift_points, under_flat_ceiling, with_roof_raised};
use crate::bay::Bay;
use crate::clearance::{Study, heights};
use crate::units::Length;

/// How near to the boundary an answer lies, metres.
pub const TOLERANCE_M: f64 = 1e-4;

/// The highest ceiling and the tallest roof looked at, metres.
pub const FARTHEST_M: f64 = 12.0;

/// The answers asked the other way round, for one bay.
#[derive(Debug, Clone, PartialEq)]
pub struct Inverse {
    /// For each lock, lowest first: the least flat ceiling under which it is clear and the columns
    /// stand, metres; none where no ceiling does it.
    pub ceiling_m: Vec<Option<f64>>,
    /// For each lock: how high the roof may lie over the highest lift point, metres; none where no
    /// height of it does.
    pub roof_m: Vec<Option<f64>>,
    /// The highest lock that the carriage can release.
    pub full_rise: Option<usize>,
}

impl Inverse {
    /// The least flat ceiling for full rise.
    #[must_use]
    pub fn full_rise_ceiling_m(&self) -> Option<f64> {
        self.ceiling_m.get(self.full_rise?.checked_sub(1)?).copied().flatten()
    }

    /// The tallest roof for full rise.
    #[must_use]
    pub fn full_rise_roof_m(&self) -> Option<f64> {
        self.roof_m.get(self.full_rise?.checked_sub(1)?).copied().flatten()
    }
}

/// What one look found: the highest clear lock, and how many reasons to withhold there are in which
/// the room takes part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Look {
    clear: usize,
    reasons: usize,
}

impl Look {
    /// Nothing is clear where the bay can't be studied.
    fn at(bay: &Bay) -> Self {
        heights(bay).map_or(
            Self {
                clear: 0,
                reasons: usize::MAX,
            },
            |found| Self {
                clear: found.highest_clear_lock.unwrap_or(0),
                reasons: found.reasons,
            },
        )
    }

    /// True where the lock is clear with no more reasons to withhold than there are anyway.
    const fn holds(self, lock: usize, anyway: usize) -> bool {
        self.clear >= lock && self.reasons <= anyway
    }
}

/// The answers for a bay.
#[must_use]
pub fn inverse(bay: &Bay, study: &Study) -> Inverse {
    let count = study.locks.len();
    let travels: Vec<f64> = study.locks.iter().map(|lock| lock.travel_m).collect();
    let mut ceiling = |height_m: f64| Look::at(&under_flat_ceiling(bay, Length::metres(height_m)));
    let ceiling_m = answers(&mut ceiling, &travels, Way::Up, 0.5, FARTHEST_M);

    let now = roof_over_lift_points(bay).m();
    let lowest = now - most_lowering(bay).m();
    let mut roof =
        |roof_m: f64| Look::at(&with_roof_raised(bay, Length::metres(roof_m - now)));
    Inverse {
        roof_m: answers(&mut roof, &travels, Way::Down, lowest, FARTHEST_M),
        ceiling_m,
        full_rise: study.highest_releasable_lock.filter(|lock| *lock <= count),
    }
}

/// Which way of the quantity is the good one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    /// More is better: a ceiling. The least that holds is told.
    Up,
    /// Less is better: a roof. The most that holds is told.
    Down,
}

/// For each lock the value nearest to the bad end at which it holds.
fn answers(
    look: &mut dyn FnMut(f64) -> Look,
    travels: &[f64],
    way: Way,
    low: f64,
    high: f64,
) -> Vec<Option<f64>> {
    let (good, bad) = match way {
        Way::Up => (high, low),
        Way::Down => (low, high),
    };
    let best = look(good);
    let mut last: Option<(f64, f64)> = None;
    travels
        .iter()
        .enumerate()
        .map(|(index, &travel)| {
            let lock = index + 1;
            if !best.holds(lock, best.reasons) {
                return None;
            }
            let mut range = Range {
                good,
                bad,
                bad_was_tried: false,
            };
            let mut holds = |value: f64| look(value).holds(lock, best.reasons);
            // Where the same thing limits, a lock higher asks as much more as it lies higher.
            let guesses = last.map(|(value, at)| match way {
                Way::Up => [value + (travel - at), value],
                Way::Down => [value - (travel - at), value],
            });
            for guess in guesses.into_iter().flatten() {
                range.try_near(guess, &mut holds);
            }
            let answer = range.close(&mut holds);
            last = Some((answer, travel));
            Some(answer)
        })
        .collect()
}

/// Between a value that holds and one that does not.
struct Range {
    good: f64,
    bad: f64,
    bad_was_tried: bool,
}

impl Range {
    fn contains(&self, value: f64) -> bool {
        value > self.good.min(self.bad) && value < self.good.max(self.bad)
    }

    fn is_closed(&self) -> bool {
        (self.good - self.bad).abs() <= TOLERANCE_M
    }

    fn try_at(&mut self, value: f64, holds: &mut dyn FnMut(f64) -> bool) {
        if self.contains(value) && !self.is_closed() {
            if holds(value) {
                self.good = value;
            } else {
                (self.bad, self.bad_was_tried) = (value, true);
            }
        }
    }

    /// Looks on both sides of a guess.
    fn try_near(&mut self, guess: f64, holds: &mut dyn FnMut(f64) -> bool) {
        let step = 0.45 * TOLERANCE_M * (self.good - self.bad).signum();
        self.try_at(guess + step, holds);
        self.try_at(guess - step, holds);
    }

    /// Halves until it is within the tolerance; what comes back holds.
    fn close(mut self, holds: &mut dyn FnMut(f64) -> bool) -> f64 {
        // The bad end itself may hold: then nothing limits.
        if !self.bad_was_tried && holds(self.bad) {
            return self.bad;
        }
        while !self.is_closed() {
            let middle = 0.5 * (self.good + self.bad);
            self.try_at(middle, holds);
        }
        self.good
    }
}

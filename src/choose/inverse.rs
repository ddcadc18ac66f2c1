//! How high would a flat ceiling have to be for each lock, and how tall may the vehicle be?
//!
//! Found by closing in on the study itself, so that each answer fed back into `check` lies on the
//! boundary: there the lock is clear, and [`TOLERANCE_M`] farther on it is not. The side that holds
//! is the one that is told.

use super::vary::{most_lowering, roof_over_lift_points, under_flat_ceiling, with_roof_raised};
use crate::bay::Bay;
use crate::clearance::{Fixtures, HeightSearch, Heights, Verdict};
use crate::units::Length;

/// How near to the boundary an answer lies, metres.
pub const TOLERANCE_M: f64 = 1e-4;

/// The lowest ceiling looked at, metres: no vehicle is lower.
const LOWEST_M: f64 = 0.5;

/// The highest ceiling and the tallest roof looked at, metres.
pub const FARTHEST_M: f64 = 12.0;

/// The answers asked the other way round, for one bay.
#[derive(Debug, Clone, PartialEq)]
pub struct Inverse {
    /// For each lock, lowest first: the least flat ceiling under which it is clear and the columns
    /// stand, metres; none where no ceiling does it. All none where they stand under no ceiling.
    pub ceiling_m: Vec<Option<f64>>,
    /// For each lock: how high the roof may lie over the highest lift point, metres; none where no
    /// height of it does. All none where the lift does not stand here, whatever the vehicle is.
    pub roof_m: Vec<Option<f64>>,
    /// What no ceiling cures.
    pub whatever_ceiling: Anyway,
    /// What no height of the roof cures.
    pub whatever_roof: Anyway,
    /// The highest lock that the carriage can release.
    pub full_rise: Option<usize>,
}

/// What the room still has against it where the quantity asked for is as good as it can be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Anyway {
    /// The columns don't stand, or can't be stood up.
    pub does_not_stand: bool,
    /// Something else withholds every lock: the vehicle can't be driven in, or is tight as parked.
    pub withheld: bool,
}

impl Inverse {
    /// The least flat ceiling for full rise.
    #[must_use]
    pub fn full_rise_ceiling_m(&self) -> Option<f64> {
        self.ceiling_m
            .get(self.full_rise?.checked_sub(1)?)
            .copied()
            .flatten()
    }

    /// The tallest roof for full rise.
    #[must_use]
    pub fn full_rise_roof_m(&self) -> Option<f64> {
        self.roof_m
            .get(self.full_rise?.checked_sub(1)?)
            .copied()
            .flatten()
    }
}

/// What one look found: the highest clear lock, and how many reasons to withhold there are in which
/// the room takes part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Look {
    clear: usize,
    reasons: usize,
    stands: bool,
}

impl Look {
    /// Where the bay can't be studied nothing is clear.
    const NOTHING: Self = Self {
        clear: 0,
        reasons: usize::MAX,
        // Nothing is known of it; no lock is clear anyway.
        stands: true,
    };

    fn of(found: Heights) -> Self {
        Self {
            clear: found.highest_clear_lock.unwrap_or(0),
            reasons: found.reasons,
            stands: found.stands,
        }
    }

    const fn anyway(self) -> Anyway {
        Anyway {
            does_not_stand: !self.stands,
            withheld: self.stands && self.reasons > 0,
        }
    }

    /// True where the lock is clear with no more reasons to withhold than there are anyway.
    const fn holds(self, lock: usize, anyway: usize) -> bool {
        self.clear >= lock && self.reasons <= anyway
    }
}

/// The answers for a bay.
#[must_use]
pub fn inverse(bay: &Bay, verdict: &Verdict) -> Inverse {
    let count = verdict.locks.len();
    let travels: Vec<f64> = verdict.locks.iter().map(|lock| lock.travel_m).collect();
    let ceilings = || ceilings(bay, &travels);
    let ((ceiling_m, whatever_ceiling), (roof_m, whatever_roof)) =
        rayon::join(ceilings, || roofs(bay, &travels));
    Inverse {
        ceiling_m,
        roof_m,
        whatever_ceiling,
        whatever_roof,
        full_rise: verdict
            .highest_releasable_lock
            .filter(|lock| *lock <= count),
    }
}

/// An answer for each lock, and what stands against it anyway.
type Answers = (Vec<Option<f64>>, Anyway);

fn ceilings(bay: &Bay, travels: &[f64]) -> Answers {
    let mut search = HeightSearch::new(bay).ok();
    let mut ceiling = |height_m: f64| {
        let bay = under_flat_ceiling(bay, Length::metres(height_m));
        search
            .as_mut()
            .map_or(Look::NOTHING, |search| Look::of(search.under_ceiling(&bay)))
    };
    answers(&mut ceiling, travels, Way::Up, LOWEST_M, FARTHEST_M)
}

fn roofs(bay: &Bay, travels: &[f64]) -> Answers {
    let now = roof_over_lift_points(bay).m();
    let lowest = now - most_lowering(bay).m();
    // Lift and room stay what they are.
    let fixtures = Fixtures::new(bay);
    let mut roof = |roof_m: f64| {
        let bay = with_roof_raised(bay, Length::metres(roof_m - now));
        fixtures.heights(&bay).map_or(Look::NOTHING, Look::of)
    };
    answers(&mut roof, travels, Way::Down, lowest, FARTHEST_M)
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
) -> Answers {
    let (good, bad) = match way {
        Way::Up => (high, low),
        Way::Down => (low, high),
    };
    let mut looks = Looks {
        look,
        seen: Vec::new(),
    };
    let best = looks.at(good);
    if !best.stands {
        // A height under which a vehicle would be clear on a lift that can't stand is no answer.
        return (vec![None; travels.len()], best.anyway());
    }
    // Looked at once for all: where even this holds, nothing limits.
    let worst = looks.at(bad);
    let mut last: Option<(f64, f64)> = None;
    let answers = travels
        .iter()
        .enumerate()
        .map(|(index, &travel)| {
            let lock = index + 1;
            let holds = |look: Look| look.holds(lock, best.reasons);
            if !holds(best) {
                return None;
            }
            if holds(worst) {
                return Some(bad);
            }
            let mut range = looks.range(good, bad, &holds);
            // Where the same thing limits, a lock higher asks as much more as it lies higher.
            if let Some((value, at)) = last {
                let more = match way {
                    Way::Up => travel - at,
                    Way::Down => at - travel,
                };
                let step = 0.45 * TOLERANCE_M * (good - bad).signum();
                for guess in [value + more, value] {
                    looks.narrow(&mut range, guess + step, &holds);
                    looks.narrow(&mut range, guess - step, &holds);
                }
            }
            while !range.is_closed() {
                let middle = 0.5 * (range.good + range.bad);
                looks.narrow(&mut range, middle, &holds);
            }
            last = Some((range.good, travel));
            Some(range.good)
        })
        .collect();
    (answers, best.anyway())
}

/// What was looked at so far: one look answers for every lock.
struct Looks<'a> {
    look: &'a mut dyn FnMut(f64) -> Look,
    seen: Vec<(f64, Look)>,
}

impl Looks<'_> {
    fn at(&mut self, value: f64) -> Look {
        let look = (self.look)(value);
        self.seen.push((value, look));
        look
    }

    /// The narrowest range that what was seen leaves, kept so that its good end holds and its bad
    /// end does not.
    fn range(&self, good: f64, bad: f64, holds: &dyn Fn(Look) -> bool) -> Range {
        let mut range = Range { good, bad };
        // From the good end on: the first that does not hold ends the range.
        let mut seen: Vec<&(f64, Look)> = self.seen.iter().collect();
        seen.sort_by(|a, b| (a.0 - good).abs().total_cmp(&(b.0 - good).abs()));
        for (value, look) in seen {
            if holds(*look) {
                range.good = *value;
            } else {
                range.bad = *value;
                break;
            }
        }
        range
    }

    fn narrow(&mut self, range: &mut Range, value: f64, holds: &dyn Fn(Look) -> bool) {
        if range.contains(value) && !range.is_closed() {
            if holds(self.at(value)) {
                range.good = value;
            } else {
                range.bad = value;
            }
        }
    }
}

/// Between a value that holds and one that does not.
#[derive(Debug, Clone, Copy)]
struct Range {
    good: f64,
    bad: f64,
}

impl Range {
    fn contains(&self, value: f64) -> bool {
        value > self.good.min(self.bad) && value < self.good.max(self.bad)
    }

    fn is_closed(&self) -> bool {
        (self.good - self.bad).abs() <= TOLERANCE_M
    }
}

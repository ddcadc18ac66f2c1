//! What is so between two locks?
//!
//! No lock holds there, so nothing there is ever called clear. What is said comes from the study's
//! own searches: the intervals of travel in which a pair touches or is short of its margin, the
//! first breach, the first undecided travel, and the travels at which the pads meet the vehicle and
//! carry it. Between two neighbours of these nothing changes; no place is sampled.

use crate::clearance::{LockState, PairState, Stretch};

/// Nearer than this (metres) two travels are one.
const SAME_M: f64 = 1e-6;

/// How the vehicle stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stands {
    /// On its tyres: the pads are below it.
    OnTyres,
    /// The pads meet it, and may not all carry yet.
    Meeting,
    /// On all its pads.
    OnPads,
}

/// What is known of the way up in a state of the door. Travels in metres.
#[derive(Debug)]
pub(super) struct Way {
    /// Where a pair touches or is short, at worst.
    pub(super) short: Vec<Stretch>,
    pub(super) first_breach_m: Option<f64>,
    pub(super) undecided_m: Option<f64>,
    /// Where the first pad meets the vehicle.
    pub(super) touch_m: f64,
    /// Where all pads carry, at worst.
    pub(super) carry_m: f64,
    /// At the mark never to climb above.
    pub(super) never_above_m: Option<f64>,
    /// The locks, lowest first.
    pub(super) locks_m: Vec<f64>,
    /// How far past a lock the carriage climbs to set the vehicle down on it, or to let go.
    pub(super) past_m: f64,
    /// The end of the carriage's travel.
    pub(super) top_m: f64,
}

/// A stretch all along which the same is so.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Along {
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    /// What is met; none where nothing is, which promises nothing.
    pub(super) met: Option<LockState>,
    pub(super) stands: Stands,
    pub(super) is_above_mark: bool,
    /// The lock that the carriage climbs past here (its index).
    pub(super) past: Option<usize>,
}

impl Way {
    /// Between two travels with no lock between them, from below.
    pub(super) fn along(&self, from_m: f64, to_m: f64) -> Vec<Along> {
        let mut ends: Vec<f64> = self.short.iter().flat_map(|s| [s.from_m, s.to_m]).collect();
        ends.extend(
            [self.first_breach_m, self.undecided_m, self.never_above_m]
                .into_iter()
                .flatten(),
        );
        ends.extend([self.touch_m, self.carry_m]);
        ends.extend(self.locks_m.iter().map(|lock| lock + self.past_m));
        ends.retain(|end| from_m + SAME_M < *end && *end < to_m - SAME_M);
        ends.push(to_m);
        ends.sort_by(f64::total_cmp);
        ends.dedup_by(|a, b| *a - *b < SAME_M);
        let mut all: Vec<Along> = Vec::with_capacity(ends.len());
        let mut low_m = from_m;
        for high_m in ends {
            if high_m - low_m < SAME_M {
                continue;
            }
            let here = self.one(low_m, high_m);
            low_m = high_m;
            match all.last_mut() {
                Some(last) if last.is_like(&here) => last.to_m = here.to_m,
                _ => all.push(here),
            }
        }
        all
    }

    /// Between two neighbouring travels at which something changes.
    fn one(&self, from_m: f64, to_m: f64) -> Along {
        let middle_m = (from_m + to_m) * 0.5;
        let is_in = |s: &&Stretch| s.from_m <= middle_m && middle_m <= s.to_m;
        let worst = self.short.iter().filter(is_in).map(|s| s.state).min();
        let reached = |travel: Option<f64>| travel.is_some_and(|travel| travel <= middle_m);
        let met = match worst {
            Some(PairState::Strikes) => Some(LockState::Strikes),
            _ if reached(self.undecided_m) => Some(LockState::NotShown),
            Some(PairState::Tight) => Some(LockState::Tight),
            _ if reached(self.first_breach_m) => Some(LockState::Barred),
            _ => None,
        };
        let stands = if middle_m < self.touch_m {
            Stands::OnTyres
        } else if middle_m < self.carry_m {
            Stands::Meeting
        } else {
            Stands::OnPads
        };
        Along {
            from_m,
            to_m,
            met,
            stands,
            is_above_mark: reached(self.never_above_m),
            past: self
                .locks_m
                .iter()
                .position(|lock| *lock <= middle_m && middle_m <= lock + self.past_m),
        }
    }
}

impl Along {
    fn is_like(&self, other: &Self) -> bool {
        let what = |along: &Self| (along.met, along.stands, along.is_above_mark, along.past);
        what(self) == what(other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn way() -> Way {
        let short = |from_m, to_m, state| Stretch {
            from_m,
            to_m,
            state,
        };
        Way {
            short: vec![
                short(0.61, 0.70, PairState::Tight),
                short(0.62, 0.63, PairState::Strikes),
            ],
            first_breach_m: Some(0.61),
            undecided_m: Some(0.95),
            touch_m: 0.20,
            carry_m: 0.25,
            never_above_m: Some(0.59),
            locks_m: vec![0.1, 0.5, 0.9],
            past_m: 0.02,
            top_m: 1.0,
        }
    }

    #[test]
    fn a_thing_passed_between_two_locks_is_met_there_and_bars_what_is_above() {
        let met: Vec<_> = (way().along(0.5, 0.9).into_iter())
            .map(|along| (along.from_m, along.met, along.is_above_mark, along.past))
            .collect();
        assert_eq!(
            met,
            [
                (0.5, None, false, Some(1)),
                (0.52, None, false, None),
                (0.59, None, true, None),
                (0.61, Some(LockState::Tight), true, None),
                (0.62, Some(LockState::Strikes), true, None),
                (0.63, Some(LockState::Tight), true, None),
                (0.70, Some(LockState::Barred), true, None),
            ]
        );
        let above = way().along(0.9, 1.0);
        assert_eq!(above.last().unwrap().met, Some(LockState::NotShown));
    }

    #[test]
    fn the_vehicle_stands_on_its_tyres_until_the_pads_meet_it() {
        let stands: Vec<_> = (way().along(0.1, 0.5).into_iter())
            .map(|along| (along.from_m, along.stands))
            .collect();
        let expect = [
            (0.1, Stands::OnTyres),
            (0.12, Stands::OnTyres),
            (0.2, Stands::Meeting),
            (0.25, Stands::OnPads),
        ];
        assert_eq!(stands.len(), expect.len());
        for ((from_m, one), (low_m, other)) in stands.into_iter().zip(expect) {
            assert!(
                (from_m - low_m).abs() < 1e-9 && one == other,
                "{from_m}: {one:?}"
            );
        }
    }
}

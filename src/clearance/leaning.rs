//! Where do columns that lean take what goes up on them?
//!
//! A column and its carriage are one rigid body tipped about the column's foot: each point goes
//! sideways by the lean times its height over the foot. A vehicle was set on the pads where they were
//! when they met it, and goes with them from there. Between two travels that is a stretch of places; a
//! part is taken to the middle of it, and widened to its ends.

use glam::DVec2;

use super::body::Body;
use crate::bay::{LeaningColumns, Side};

/// How the columns lean, and what of the ± of posts is left beside it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leaning {
    /// Slopes toward +x and +y, left then right.
    pub slope: [DVec2; 2],
    /// How far they may be off, either way.
    pub within: [DVec2; 2],
    /// The lowest and the highest that the feet may be over `z = 0`.
    pub foot_m: [f64; 2],
    /// The ± of a part of the lift that is no lean.
    pub placed_m: DVec2,
    /// The ± of what it carries that is no lean.
    pub set_m: DVec2,
}

/// The travels at which the vehicle is set on the pads: the earliest, and the latest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Touch {
    pub(super) first_m: f64,
    pub(super) last_m: f64,
}

/// How far sideways something may be between two travels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Drift {
    low: DVec2,
    high: DVec2,
}

/// Stretches that the whole travel is cut into. Own choice: an eighth of a lean is no more than a
/// millimetre or two.
const STRETCHES: f64 = 8.0;

impl Leaning {
    pub(super) fn of(columns: &LeaningColumns) -> Self {
        let metres = |lengths: [crate::units::Length; 2]| lengths.map(|length| length.m());
        Self {
            slope: columns.slope.map(DVec2::from),
            within: columns.within.map(DVec2::from),
            foot_m: metres(columns.foot),
            placed_m: metres(columns.placed).into(),
            set_m: metres(columns.set).into(),
        }
    }

    /// The way of a carriage that covers these heights at travel 0, between two travels.
    pub(super) fn carriage(&self, side: Side, heights: [f64; 2], travels: [f64; 2]) -> Drift {
        let i = usize::from(side == Side::Right);
        let over_foot = [
            heights[0] + travels[0] - self.foot_m[1],
            heights[1] + travels[1] - self.foot_m[0],
        ];
        let most = over_foot[0].abs().max(over_foot[1].abs());
        Drift::along(self.slope[i], over_foot).widened(self.within[i] * most)
    }

    /// The way of an arm or a pad. Its pivot goes with its carriage; its pad was set under the vehicle
    /// at some travel before they met, goes with the column from there, and where the two columns
    /// differ is held by a vehicle that goes anywhere between.
    pub(super) fn arm(
        &self,
        side: Side,
        heights: [f64; 2],
        travels: [f64; 2],
        touch: Touch,
    ) -> Drift {
        let since = [(travels[0] - touch.last_m).max(0.0), travels[1]];
        self.carriage(side, heights, travels)
            .joined(self.since(since))
    }

    /// The way of the vehicle.
    pub(super) fn vehicle(&self, travels: [f64; 2], touch: Touch) -> Drift {
        self.since([
            (travels[0] - touch.last_m).max(0.0),
            (travels[1] - touch.first_m).max(0.0),
        ])
    }

    /// What was on the pads for so much travel: as either column leans, or anything between.
    fn since(&self, travelled: [f64; 2]) -> Drift {
        let [left, right] = self.slope.map(|slope| Drift::along(slope, travelled));
        let within = self.within[0].max(self.within[1]);
        left.joined(right).widened(within * travelled[1])
    }
}

impl Drift {
    fn along(slope: DVec2, by: [f64; 2]) -> Self {
        let [one, other] = by.map(|by| slope * by);
        Self {
            low: one.min(other),
            high: one.max(other),
        }
    }

    fn joined(self, other: Self) -> Self {
        Self {
            low: self.low.min(other.low),
            high: self.high.max(other.high),
        }
    }

    fn widened(self, by: DVec2) -> Self {
        Self {
            low: self.low - by,
            high: self.high + by,
        }
    }

    /// The farthest either way, across and along.
    pub(super) fn most(self) -> DVec2 {
        self.low.abs().max(self.high.abs())
    }

    /// A body everywhere on the way.
    pub(super) fn of(self, body: &Body) -> Body {
        let middle = (self.low + self.high) * 0.5;
        let half = (self.high - self.low) * 0.5;
        body.moved(middle.extend(0.0)).widened(half.extend(0.0))
    }
}

/// The stretches that a way up is cut into, end to end: one of them starts where the last one ended.
pub(super) fn stretches(from: f64, to: f64, top: f64) -> Vec<[f64; 2]> {
    let count = ((to - from) / top * STRETCHES).ceil();
    // Never none, whatever the figures.
    let count = if count >= 1.0 {
        count.min(STRETCHES)
    } else {
        1.0
    };
    let at = |i: f64| {
        if i >= count {
            to
        } else {
            from + (to - from) * (i / count)
        }
    };
    (0..count as u32)
        .map(|i| [at(f64::from(i)), at(f64::from(i) + 1.0)])
        .collect()
}

//! What does a steel tape on the column read?
//!
//! Whatever is told of the carriage here is told as the height of its marked edge above the top of
//! the base plate, never as a travel: two figures of two kinds side by side are taken one for the
//! other. Each stands in both systems.

use crate::bay::{Bay, UnitSystem};
use crate::clearance::marks::graduation_m;
use crate::clearance::{Marks, Study};
use crate::report::Show;
use crate::units::{Length, M_PER_INCH, Rounding, both, feet_inches, length, millimetres};

/// Heights that differ by less lie on one graduation, metres.
const SAME_M: f64 = 1e-9;

/// The readings of one lift.
#[derive(Debug, Clone, Copy)]
pub(in crate::drawing) struct Edge<'a>(pub(in crate::drawing) &'a Bay);

impl Edge<'_> {
    /// The edge's height at a travel, metres.
    pub(in crate::drawing) fn at_m(self, travel_m: f64) -> f64 {
        self.0.lift.carriage.marked_edge.m() + travel_m
    }

    /// Where it stands at a travel.
    pub(in crate::drawing) fn place(self, travel_m: f64) -> String {
        self.shown(travel_m, Rounding::Nearest)
    }

    /// Where something is met at a travel: never higher than it is.
    pub(in crate::drawing) fn met(self, travel_m: f64) -> String {
        self.shown(travel_m, Rounding::Down)
    }

    fn shown(self, travel_m: f64, rounding: Rounding) -> String {
        both(Length::metres(self.at_m(travel_m)), self.0.units, rounding)
    }
}

/// A load in both systems, the file's first: up.
pub(super) fn load(kilograms: f64, units: UnitSystem) -> String {
    let other = Show {
        units: match units {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        },
    };
    let own = Show { units };
    format!("{} ({})", own.load(kilograms), other.load(kilograms))
}

/// The same of what may be carried: down.
pub(super) fn capacity(kilograms: f64, units: UnitSystem) -> String {
    let other = Show {
        units: match units {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        },
    };
    let own = Show { units };
    format!(
        "{} ({})",
        own.capacity(kilograms),
        other.capacity(kilograms)
    )
}

/// Where the latches of a lock can be pulled: the lower carriage's marked edge has climbed
/// `release_overtravel` above its rest, on the next graduation at or above it. Nothing where no
/// graduation lies between that and the highest that it may climb.
pub(in crate::drawing) fn release_m(bay: &Bay, marks: &Marks) -> Option<f64> {
    let lift = &bay.lift;
    let lock = lift.locks.get(marks.lock.checked_sub(1)?)?;
    let grid = graduation_m(bay.units);
    let lets_go = Edge(bay).at_m(lock.m() + lift.release_overtravel.m());
    let at_m = ((lets_go - SAME_M) / grid).ceil() * grid;
    let highest = marks
        .never_above_m
        .unwrap_or_else(|| Edge(bay).at_m(lift.travel.m() - lift.overshoot.m()));
    (at_m <= highest + SAME_M).then_some(at_m)
}

/// The marks of the highest safe lock as they are written, in both systems.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::drawing) struct Written {
    /// Stop here on the way up.
    pub(in crate::drawing) stop: [String; 2],
    /// Climb to here to come down again.
    pub(in crate::drawing) release: Option<[String; 2]>,
    /// Never higher.
    pub(in crate::drawing) never: Option<[String; 2]>,
}

/// "5 ft 0 3/4 in (1543.1 mm)".
pub(in crate::drawing) fn joined([own, other]: &[String; 2]) -> String {
    format!("{own} ({other})")
}

/// Only while a lock is safe.
pub(in crate::drawing) fn written(bay: &Bay, study: &Study) -> Option<Written> {
    study.highest_safe_lock?;
    let marks = study.marks?;
    let release = release_m(bay, &marks);
    let fine = fine_enough(marks.stop_m, release, marks.never_above_m);
    let own = |at_m: f64| length(Length::metres(at_m), bay.units, Rounding::Nearest);
    let other = |at_m: f64, rounding| match (bay.units, fine) {
        (UnitSystem::Imperial, _) => millimetres(Length::metres(at_m), 1, rounding),
        (UnitSystem::Metric, Some(parts)) => feet_inches(Length::metres(at_m), parts, rounding),
        // The marks lie nearer to each other than any tape shows.
        (UnitSystem::Metric, None) => feet_inches(Length::metres(at_m), 64, Rounding::Down),
    };
    let never = marks
        .never_above_m
        .map(|at_m| [own(at_m), other(at_m, Rounding::Down)]);
    // A latch needs what it needs: up. But what lies on one line with NEVER ABOVE reads the same.
    let low = |at_m: f64| match (marks.never_above_m, &never) {
        (Some(never_m), Some(never)) if at_m > never_m - SAME_M => never.clone(),
        _ => [
            own(at_m),
            other(at_m, up(bay.units, at_m, marks.never_above_m)),
        ],
    };
    Some(Written {
        stop: low(marks.stop_m),
        release: release.map(low),
        never,
    })
}

/// Up, as everywhere else that the mark is told; a tenth of a millimetre nearest, where up would be above
/// what is told of NEVER ABOVE.
fn up(units: UnitSystem, at_m: f64, never_m: Option<f64>) -> Rounding {
    const TENTH_M: f64 = 0.0001;
    let tenths = |m: f64| m / TENTH_M;
    let is_above = never_m
        .is_some_and(|never_m| (tenths(at_m) - 1e-6).ceil() > (tenths(never_m) + 1e-6).floor());
    if units == UnitSystem::Imperial && is_above {
        Rounding::Nearest
    } else {
        Rounding::Up
    }
}

/// Parts of an inch to which a mark that lies on a whole millimetre is told, finer than its tape shows: so
/// does the report.
const COARSEST: u32 = 32;

/// The coarsest parts of an inch in which marks that are rounded up stay below one that is rounded
/// down.
fn fine_enough(stop_m: f64, release_m: Option<f64>, never_m: Option<f64>) -> Option<u32> {
    let Some(never_m) = never_m else {
        return Some(COARSEST);
    };
    let lows = [Some(stop_m), release_m];
    // One that lies on the same line is written as that is, down: as finely as a tape shows, so that it
    // stays above the latches.
    let on_one_line = lows.iter().flatten().any(|low| *low >= never_m - SAME_M);
    let coarsest = if on_one_line { 64 } else { COARSEST };
    [COARSEST, 64]
        .into_iter()
        .filter(|parts| *parts >= coarsest)
        .find(|parts| {
            let step = M_PER_INCH / f64::from(*parts);
            let never = ((never_m + SAME_M) / step).floor();
            lows.into_iter()
                .flatten()
                .filter(|low| *low < never_m - SAME_M)
                .all(|low| ((low - SAME_M) / step).ceil() <= never)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_on_one_line_are_written_as_finely_as_a_tape_shows() {
        // 2424 mm = 95.433 in: to thirty-seconds down it would read 0.7 mm low.
        assert_eq!(fine_enough(2.424, None, Some(2.424)), Some(64));
        assert_eq!(fine_enough(2.400, Some(2.424), Some(2.424)), Some(64));
        assert_eq!(fine_enough(2.400, None, Some(2.424)), Some(32));
        assert_eq!(fine_enough(2.424, None, None), Some(32));
    }
}

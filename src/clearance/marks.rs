//! Where to mark the column.

use super::findings::Marks;
use crate::bay::{Bay, UnitSystem};
use crate::units::M_PER_INCH;

/// Slack (metres) for a height that lies on a graduation but for rounding noise.
const ON_THE_LINE_M: f64 = 1e-9;

/// The finest graduation of the tape in the file's units: 1/16 in or 1 mm.
#[must_use]
pub fn graduation_m(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => M_PER_INCH / 16.0,
        UnitSystem::Metric => 0.001,
    }
}

/// The marks for a lock (counted from 1), heights of the carriage's marked edge above the top of
/// the base plate. `first_breach_m` is the travel at which a margin is first short.
///
/// The stop mark is where the latches have dropped in: at `s_k + set_overtravel`, on the next
/// graduation at or above it, since a stop below it leaves the latches out. It must leave room
/// for the overshoot below the first breach and the end of the travel; none when no graduation
/// lies between.
#[must_use]
pub fn marks(bay: &Bay, lock: usize, first_breach_m: Option<f64>) -> Option<Marks> {
    let lift = &bay.lift;
    let edge = lift.carriage.marked_edge.m();
    let set = lift.locks.get(lock.checked_sub(1)?)?.m() + lift.set_overtravel.m();
    let grid = graduation_m(bay.units);
    let stop = ((edge + set - ON_THE_LINE_M) / grid).ceil() * grid;
    let ceiling = first_breach_m.unwrap_or(f64::INFINITY).min(lift.travel.m());
    let highest = edge + ceiling - lift.overshoot.m();
    if stop > highest + ON_THE_LINE_M {
        return None;
    }
    let never = first_breach_m
        .map(|breach| ((edge + breach - lift.overshoot.m() + ON_THE_LINE_M) / grid).floor() * grid);
    Some(Marks {
        lock,
        stop_m: stop,
        never_above_m: never,
        stop_travel_m: stop - edge,
    })
}

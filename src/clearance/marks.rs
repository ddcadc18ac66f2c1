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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    fn bay() -> Bay {
        let mut bay = test_bay();
        bay.units = UnitSystem::Imperial;
        bay.lift.carriage.marked_edge = Length::inches(36.0);
        bay.lift.locks = vec![Length::inches(12.0), Length::inches(16.0)];
        bay.lift.set_overtravel = Length::inches(0.5);
        bay.lift.overshoot = Length::inches(1.0);
        bay.lift.travel = Length::inches(72.0);
        bay
    }

    #[test]
    fn the_stop_mark_is_the_marked_edge_with_the_latches_in() {
        // 36 + 16 + 1/2 in.
        let marks = marks(&bay(), 2, Some(Length::inches(20.0).m())).unwrap();
        assert!((marks.stop_m - Length::inches(52.5).m()).abs() < 1e-9);
        // Never above: 36 + 20 - 1.
        let never = marks.never_above_m.unwrap();
        assert!((never - Length::inches(55.0).m()).abs() < 1e-9);
    }

    #[test]
    fn a_stop_between_graduations_goes_up_to_the_next_and_never_down() {
        let mut bay = bay();
        bay.lift.set_overtravel = Length::inches(0.51);
        let marks = marks(&bay, 2, None).unwrap();
        assert!((marks.stop_m - Length::inches(52.5625).m()).abs() < 1e-9);
        assert_eq!(marks.never_above_m, None);
    }

    #[test]
    fn no_mark_fits_where_latch_and_breach_leave_no_graduation() {
        let mut bay = bay();
        bay.lift.set_overtravel = Length::inches(0.51);
        // Breach 1.02 in above the latch point less the overshoot of 1: 0.02 in of room, and the
        // next sixteenth is 0.0525 in up.
        let breach = Length::inches(16.0 + 0.51 + 1.02).m();
        assert_eq!(marks(&bay, 2, Some(breach)), None);
    }

    #[test]
    fn a_metric_tape_has_millimetres() {
        let mut bay = bay();
        bay.units = UnitSystem::Metric;
        let marks = marks(&bay, 1, None).unwrap();
        // 36 + 12 + 0.5 in = 1231.9 mm.
        assert!((marks.stop_m - 1.232).abs() < 1e-9);
    }
}

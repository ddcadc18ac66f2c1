//! How near does whatever moves come to one thing of the room?

use super::climb::{Climb, least_gap};
use super::pair_table::climb_of;
use super::prepare::Prepared;
use super::sweep::Workspace;
use super::uncertainty::Uncertainty;
use crate::bay::Bay;

/// Least distance between the fixed solids that `is_it` names and everything that moves: the
/// vehicle on its tyres, then lift and vehicle on the way up to `lock` with what the carriage
/// climbs past it (with none, to the top of the travel). Metres, every ± against it, however far
/// off; 0 where they meet or may meet. None where there is no such solid, or where the vehicle
/// stands is not known.
#[must_use]
pub fn nearest_to(bay: &Bay, is_it: impl Fn(&str) -> bool, lock: Option<usize>) -> Option<f64> {
    let prepared = Prepared::new(bay, Uncertainty::worst(bay)).ok()?;
    let top = lock
        .and_then(|lock| prepared.locks.windows.get(lock.checked_sub(1)?))
        .map_or(bay.lift.travel.m(), |window| window[1]);
    let common = &prepared.groups.common;
    let mut space = Workspace::new();
    let mut nearest: Option<f64> = None;
    for thing in &common.bodies {
        if !is_it(&common.solids[thing.solid].name) {
            continue;
        }
        let moving = prepared.movers.moving.iter();
        for mover in moving.chain(&prepared.movers.standing) {
            if mover.climbs && mover.from > top {
                continue;
            }
            let whole = climb_of(mover);
            let climb = Climb {
                to: whole.to.min(top).max(whole.from),
                ..whole
            };
            let least = least_gap(space.solver(), &mover.body, &thing.body, climb).lower();
            // What is no number is nearer than any.
            let least = if least.is_nan() { 0.0 } else { least.max(0.0) };
            nearest = Some(nearest.map_or(least, |known| known.min(least)));
        }
    }
    nearest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::{Obstacle, ObstacleKind, ObstacleShape};
    use crate::solids::test_bay::test_bay;
    use crate::units::{Angle, Length};

    fn stove_at(bay: &mut Bay, away_m: f64, bottom: Length) {
        bay.garage.obstacles.push(Obstacle {
            name: "stove".into(),
            kind: ObstacleKind::Heater,
            shape: ObstacleShape::Box {
                x: Length::metres(away_m),
                y: bay.lift.post_line,
                bottom,
                width: Length::mm(100.0),
                depth: Length::mm(100.0),
                height: Length::mm(500.0),
                turned: Angle::ZERO,
            },
            removable: None,
            only_at_times: false,
            row: [0, 0],
        });
    }

    #[test]
    fn a_thing_is_measured_however_far_off_it_is() {
        let bay = test_bay();
        let is_it = |name: &str| name == "obstacle/stove";
        assert_eq!(nearest_to(&bay, is_it, None), None);
        let at = |away_m: f64| {
            let mut bay = test_bay();
            stove_at(&mut bay, away_m, Length::mm(300.0));
            nearest_to(&bay, is_it, None).unwrap()
        };
        // A metre farther off is about a metre more, far beyond what the study lists as near.
        let (near, far) = (at(3.0), at(4.0));
        assert!((far - near - 1.0).abs() < 0.01, "{near} {far}");
        assert!(near > 0.2);
        assert!(at(0.0) <= 0.0, "right under it");
    }

    #[test]
    fn what_hangs_over_the_vehicle_is_met_on_a_high_lock_only() {
        let mut bay = test_bay();
        let is_it = |name: &str| name == "obstacle/stove";
        stove_at(&mut bay, 0.0, Length::mm(2200.0));
        let low = nearest_to(&bay, is_it, Some(1)).unwrap();
        let high = nearest_to(&bay, is_it, None).unwrap();
        assert!(high < low, "{high} {low}");
    }
}

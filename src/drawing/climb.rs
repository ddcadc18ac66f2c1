//! Where is each solid on the way up, as a few poses to go between?
//!
//! For what plays the raise outside the program: travels between which every solid moves straight
//! and turns evenly, so that going between neighbouring poses gives the place that
//! [`crate::solids::list::solids`] gives, within a hundredth of a millimetre.

use glam::DVec3;

use crate::bay::Bay;
use crate::clearance::PhasesFound;
use crate::drawing::paint::{Livery, Painting, paint_of};
use crate::solids::attitude::StanceError;
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Pose, Solid};

/// Steps in which the turn onto the pads is taken.
const TURN_STEPS: u32 = 10;

/// The solids of a bay on the way up.
#[derive(Debug, Clone)]
pub struct Climb {
    /// Carriage travels from 0 up, metres.
    pub travels_m: Vec<f64>,
    /// Every solid, in the list's own order.
    pub parts: Vec<Climber>,
}

/// One solid.
#[derive(Debug, Clone)]
pub struct Climber {
    /// As it is at travel 0.
    pub solid: Solid,
    /// Where it is at each of the travels; empty for what never moves.
    pub poses: Vec<Pose>,
    /// How it is painted.
    pub painting: Painting,
}

/// The way up to a travel, metres.
///
/// # Errors
/// When it cannot be said how the vehicle stands.
pub fn climb(
    bay: &Bay,
    phases: &PhasesFound,
    door: DoorTravel,
    top_m: f64,
) -> Result<Climb, StanceError> {
    let travels_m = travels(phases, top_m);
    // Which wheel shows through its well hangs on the travel: painted are the wells alone, and the
    // wheels where they are solids.
    let nowhere = [DVec3::NEG_Z * 1e3; 4];
    let livery = Livery::of(&bay.vehicle, &nowhere);
    let mut parts: Vec<Climber> = solids(bay, door, 0.0)?
        .into_iter()
        .map(|solid| Climber {
            painting: paint_of(bay, &solid, &livery),
            poses: Vec::new(),
            solid,
        })
        .collect();
    for &travel_m in &travels_m {
        // The order of the list is the same at every travel.
        for (part, there) in parts.iter_mut().zip(solids(bay, door, travel_m)?) {
            if part.solid.role.moves() {
                part.poses.push(there.bay_from_solid);
            }
        }
    }
    Ok(Climb { travels_m, parts })
}

/// The travels at which the way of something bends, those of the turn onto the pads among them.
fn travels(phases: &PhasesFound, top_m: f64) -> Vec<f64> {
    let touch_m = phases.touch_m.into_iter().fold(f64::INFINITY, f64::min);
    let turn = (0..=TURN_STEPS).map(|step| {
        let share = f64::from(step) / f64::from(TURN_STEPS);
        touch_m + (phases.carry_m - touch_m) * share
    });
    let mut all: Vec<f64> = [0.0, top_m].into_iter().collect();
    all.extend(turn.chain(phases.lift_off_m));
    all.retain(|travel_m| (0.0..=top_m).contains(travel_m));
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| *a - *b < 1e-6);
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clearance::study;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    #[test]
    fn between_two_poses_lies_what_the_list_says() {
        let mut bay = test_bay();
        for raise_inches in [0.0, 5.0] {
            bay.parking.pad_raise[0] = Length::inches(raise_inches);
            bay.parking.pad_raise[1] = Length::inches(raise_inches);
            let phases = study(&bay).unwrap().phases;
            let way = climb(&bay, &phases, DoorTravel::Shut, 1.2).unwrap();
            for step in 0..=240 {
                let travel_m = 0.005 * f64::from(step);
                let next = way.travels_m.iter().position(|t| *t >= travel_m).unwrap();
                let last = next.saturating_sub(1);
                let [a, b] = [way.travels_m[last], way.travels_m[next]];
                let share = if b > a { (travel_m - a) / (b - a) } else { 0.0 };
                let list = solids(&bay, DoorTravel::Shut, travel_m).unwrap();
                for (part, there) in way.parts.iter().zip(&list) {
                    let Some((p, q)) = part.poses.get(last).zip(part.poses.get(next)) else {
                        assert_eq!(part.solid.bay_from_solid, there.bay_from_solid);
                        continue;
                    };
                    let between = Pose::new(
                        p.rotation.slerp(q.rotation, share),
                        p.translation.lerp(q.translation, share),
                    );
                    // A lever as long as anything on a vehicle.
                    for point in [DVec3::ZERO, DVec3::X, DVec3::Y * 3.0, DVec3::Z] {
                        let off = between.point(point) - there.bay_from_solid.point(point);
                        assert!(off.length() < 1e-5, "{} at {travel_m}: {off}", there.name);
                    }
                }
            }
        }
    }
}

//! Where must the vehicle be aimed so that all four arms reach their lift points?

use super::reach;
use crate::bay::{Aim, Bay, Corner};
use crate::solids::ParkingError;
use crate::solids::attitude::{self, StanceError};

/// How far from the post line an aim is looked for where the lift names no window, metres: farther
/// than any arm could follow.
const FARTHEST_M: f64 = 2.0;

/// Aim offsets (positive into the bay, metres, whole steps of `step_m`) at which every arm reaches
/// its lift point for every one of the parking errors, those nearest 0 first and of two as near
/// the one into the bay first. Where the lift names a window for the centre of gravity, it lies in
/// that window for every one of the errors. Empty when there is no such offset, or the step is not
/// positive.
///
/// # Errors
/// When the vehicle's place is not known, see [`attitude::at_rest`]; or its centre of gravity
/// where the lift names a window, see [`attitude::centre_of_gravity`].
pub fn aim_offsets(
    bay: &Bay,
    errors: &[ParkingError],
    step_m: f64,
) -> Result<Vec<f64>, StanceError> {
    let mut found = Vec::new();
    if step_m.is_nan() || step_m <= 0.0 {
        return Ok(found);
    }
    let mut aimed = bay.clone();
    for count in 0..=(FARTHEST_M / step_m) as u32 {
        let offset = f64::from(count) * step_m;
        let both = [offset, -offset];
        for &offset in if count == 0 { &both[..1] } else { &both[..] } {
            let length = crate::units::Length::metres(offset);
            aimed.parking.aim = match bay.parking.aim {
                Aim::CentreOfGravity(_) => Aim::CentreOfGravity(length),
                Aim::LiftPoints(_) => Aim::LiftPoints(length),
            };
            if in_window(&aimed, errors)? && all_reach(&aimed, errors)? {
                found.push(offset);
            }
        }
    }
    Ok(found)
}

fn all_reach(bay: &Bay, errors: &[ParkingError]) -> Result<bool, StanceError> {
    for corner in Corner::ALL {
        for &error in errors {
            if reach(bay, corner, error)?.short.is_some() {
                return Ok(false);
            }
        }
    }
    Ok(true)
}

/// Whether the centre of gravity lies in the lift's window for every error; true without a window.
fn in_window(bay: &Bay, errors: &[ParkingError]) -> Result<bool, StanceError> {
    /// Rounding of the arithmetic, metres.
    const ROUNDING_M: f64 = 1e-9;
    let Some(window) = bay.lift.cg_window else {
        return Ok(true);
    };
    let balance = attitude::centre_of_gravity(&bay.vehicle)?;
    for &error in errors {
        let place = attitude::at_rest(bay, error)?.point(balance.plan_m.extend(0.0));
        let past_posts = place.y - bay.lift.post_line.m();
        let inside = past_posts <= window.front.m() + ROUNDING_M
            && past_posts >= -window.rear.m() - ROUNDING_M;
        if !inside {
            return Ok(false);
        }
    }
    Ok(true)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::CgWindow;
    use crate::solids::test_bay::test_bay;
    use crate::units::{Angle, Length};

    const INCH_M: f64 = 0.0254;

    #[test]
    fn nearest_first_and_each_one_reaches() {
        let bay = test_bay();
        let errors = [ParkingError::default()];
        let offsets = aim_offsets(&bay, &errors, INCH_M).unwrap();
        assert!(offsets.len() > 2, "{offsets:?}");
        assert!(offsets.windows(2).all(|w| w[0].abs() <= w[1].abs()));
        for offset in &offsets {
            let mut aimed = bay.clone();
            aimed.parking.aim = match bay.parking.aim {
                Aim::CentreOfGravity(_) => Aim::CentreOfGravity(Length::metres(*offset)),
                Aim::LiftPoints(_) => Aim::LiftPoints(Length::metres(*offset)),
            };
            for corner in Corner::ALL {
                let arm = reach(&aimed, corner, ParkingError::default()).unwrap();
                assert!(arm.short.is_none(), "{offset}: {arm:?}");
            }
        }
    }

    #[test]
    fn a_parking_box_leaves_fewer() {
        let bay = test_bay();
        let along = |along_m| ParkingError {
            along_m,
            ..ParkingError::default()
        };
        let exact = aim_offsets(&bay, &[along(0.0)], INCH_M).unwrap();
        let spread = aim_offsets(&bay, &[along(-0.05), along(0.05)], INCH_M).unwrap();
        assert!(spread.len() < exact.len(), "{spread:?} {exact:?}");
        assert!(spread.iter().all(|offset| exact.contains(offset)));
    }

    #[test]
    fn the_window_holds_for_the_whole_box() {
        let mut bay = test_bay();
        bay.parking.aim = Aim::CentreOfGravity(Length::metres(0.0));
        // Arms that reach anywhere: the window alone decides.
        for arm in &mut bay.lift.arms {
            (arm.shortest, arm.longest) = (Length::mm(10.0), Length::metres(5.0));
            (arm.swing_min, arm.swing_max) = (Angle::degrees(-180.0), Angle::degrees(180.0));
            arm.tooth = None;
        }
        bay.lift.cg_window = Some(CgWindow {
            front: Length::inches(3.0),
            rear: Length::inches(5.0),
        });
        let along = |along_m| ParkingError {
            along_m,
            ..ParkingError::default()
        };
        // Two inches of spread leave 1 in to the front and 3 in to the rear.
        let errors = [along(-2.0 * INCH_M), along(2.0 * INCH_M)];
        let offsets = aim_offsets(&bay, &errors, INCH_M).unwrap();
        let inches: Vec<f64> = offsets.iter().map(|m| (m / INCH_M).round()).collect();
        assert_eq!(inches, [0.0, 1.0, -1.0, -2.0, -3.0]);
    }

    #[test]
    fn no_offset_for_arms_that_are_too_short() {
        let mut bay = test_bay();
        for arm in &mut bay.lift.arms {
            arm.longest = arm.shortest;
        }
        bay.lift.arms[0].longest = Length::mm(100.0);
        bay.lift.arms[0].shortest = Length::mm(90.0);
        let found = aim_offsets(&bay, &[ParkingError::default()], INCH_M).unwrap();
        assert_eq!(found, Vec::<f64>::new());
        assert!(aim_offsets(&bay, &[], 0.0).unwrap().is_empty());
        assert!(aim_offsets(&bay, &[], f64::NAN).unwrap().is_empty());
    }
}

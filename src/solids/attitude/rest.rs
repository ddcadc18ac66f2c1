//! How the vehicle stands on its tyres before it is raised.

use std::f64::consts::PI;

use glam::{DQuat, DVec2, DVec3};

use super::{StanceError, centre_of_gravity, levelling};
use crate::bay::{Aim, Bay, Facing};
use crate::solids::shell::floor_level_m;
use crate::solids::vehicle::wheel_middle_m;
use crate::solids::{ParkingError, Pose};

/// The vehicle standing on its tyres, `bay_from_vehicle`.
///
/// The point that is lined up with the post line lies on the vehicle's middle line; the vehicle
/// yaws about it. Where the floor falls, the vehicle lies on the plane that fits the floor under
/// its four tyres best, lifted until it is nowhere below the floor there: on a warped floor the
/// body is taken as standing on its highest tyre.
///
/// # Errors
/// When the centre of gravity is lined up and not known, see [`centre_of_gravity`]; or
/// [`StanceError::NotANumber`].
pub fn at_rest(bay: &Bay, error: ParkingError) -> Result<Pose, StanceError> {
    let heading = DQuat::from_rotation_z(heading_rad(bay) + error.yaw_rad);
    let (lined_up, offset) = lined_up(bay)?;
    let place = DVec2::new(
        bay.lift.across.m() + bay.parking.across.m() + error.across_m,
        bay.lift.post_line.m() + offset + error.along_m,
    );
    let level = Pose::new(heading, place.extend(0.0) - heading * lined_up);
    let plane = FloorPlane::under(bay, level);
    let tilt = levelling(plane.up()).inverse();
    let rotation = tilt * heading;
    let foot = place.extend(plane.level_m(place));
    let pose = Pose::new(rotation, foot - rotation * lined_up);
    if pose.translation.is_finite() && pose.rotation.is_finite() {
        Ok(pose)
    } else {
        Err(StanceError::NotANumber)
    }
}

/// The heading without any parking error: 0 nose-in, half a turn tail-in, and the parked yaw.
fn heading_rad(bay: &Bay) -> f64 {
    let facing = match bay.parking.facing {
        Facing::NoseIn => 0.0,
        Facing::TailIn => PI,
    };
    facing + bay.parking.yaw.rad()
}

/// The point lined up with the post line, on the ground in the vehicle's frame, and how far into
/// the bay from the post line it is wanted.
fn lined_up(bay: &Bay) -> Result<(DVec3, f64), StanceError> {
    let (forward, offset) = match bay.parking.aim {
        Aim::CentreOfGravity(offset) => (centre_of_gravity(&bay.vehicle)?.plan_m.y, offset),
        Aim::LiftPoints(offset) => {
            let stations = bay.vehicle.lift_points.map(|point| point.station.m());
            (-stations.iter().sum::<f64>() / 4.0, offset)
        }
    };
    Ok((DVec3::new(0.0, forward, 0.0), offset.m()))
}

/// A plane over the floor: its level at a middle point, and its fall.
struct FloorPlane {
    middle: DVec2,
    level: f64,
    /// Rise per length along bay `x` and `y`.
    slope: DVec2,
}

impl FloorPlane {
    /// The plane for the floor under the four tyres of a vehicle in a level pose.
    fn under(bay: &Bay, level_pose: Pose) -> Self {
        Self::over(std::array::from_fn(|index| {
            let middle = level_pose.point(wheel_middle_m(&bay.vehicle, index));
            let plan = DVec2::new(middle.x, middle.y);
            (plan, floor_level_m(bay, plan.x, plan.y))
        }))
    }

    /// The least-squares plane through four places in plan and the floor's level there, lifted by
    /// the greatest height that the floor stands above it.
    fn over(tyres: [(DVec2, f64); 4]) -> Self {
        let middle = tyres.iter().map(|tyre| tyre.0).sum::<DVec2>() / 4.0;
        let mean = tyres.iter().map(|tyre| tyre.1).sum::<f64>() / 4.0;
        let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
        let mut rise = DVec2::ZERO;
        for (plan, level) in tyres {
            let from = plan - middle;
            xx += from.x * from.x;
            xy += from.x * from.y;
            yy += from.y * from.y;
            rise += from * (level - mean);
        }
        // Wheelbase and track are positive, so the tyres span a plane and this is not zero.
        let determinant = xx * yy - xy * xy;
        let slope = DVec2::new(
            (rise.x * yy - rise.y * xy) / determinant,
            (rise.y * xx - rise.x * xy) / determinant,
        );
        let fitted = Self {
            middle,
            level: mean,
            slope,
        };
        let lift = tyres
            .iter()
            .map(|&(plan, level)| level - fitted.level_m(plan))
            .fold(0.0, f64::max);
        Self {
            level: mean + lift,
            ..fitted
        }
    }

    fn level_m(&self, plan: DVec2) -> f64 {
        self.level + self.slope.dot(plan - self.middle)
    }

    /// The plane's unit normal, upward.
    fn up(&self) -> DVec3 {
        DVec3::new(-self.slope.x, -self.slope.y, 1.0).normalize()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_warped_floor_lifts_the_plane_to_its_high_corners() {
        // One corner of a 2 m by 4 m rectangle stands 20 mm high. Least squares give 15, 5, 5, -5
        // at the corners: the floor stands 5 mm above that at both ends of the high diagonal.
        // Lifted by 5 mm: 20, 10, 10, 0.
        let corners =
            [(-1.0, 2.0), (1.0, 2.0), (-1.0, -2.0), (1.0, -2.0)].map(|(x, y)| DVec2::new(x, y));
        let levels = [0.020, 0.0, 0.0, 0.0];
        let plane = FloorPlane::over(std::array::from_fn(|i| (corners[i], levels[i])));
        for (corner, expected) in corners.into_iter().zip([0.020, 0.010, 0.010, 0.0]) {
            assert!((plane.level_m(corner) - expected).abs() < 1e-12, "{corner}");
        }
    }

    #[test]
    fn an_even_fall_is_the_plane_itself() {
        let corners =
            [(0.0, 0.0), (1.5, 0.2), (0.0, -3.0), (1.5, -3.2)].map(|(x, y)| DVec2::new(x, y));
        let fall = |at: DVec2| 0.3 + 0.01 * at.x - 0.02 * at.y;
        let plane = FloorPlane::over(corners.map(|corner| (corner, fall(corner))));
        let elsewhere = DVec2::new(7.0, -9.0);
        assert!((plane.level_m(elsewhere) - fall(elsewhere)).abs() < 1e-12);
    }
}

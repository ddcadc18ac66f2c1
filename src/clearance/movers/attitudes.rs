//! The attitudes of the vehicle on the pads, with the roll that out-of-level carriages add.

use super::{MoverError, parking_pivot};
use crate::bay::{Bay, Corner, Side};
use crate::clearance::uncertainty::{Uncertainty, corners_on};
use crate::solids::{ParkingError, Pose, attitude};
use glam::DVec3;

/// The attitudes on the pads, with the roll that out-of-level carriages add.
pub(super) struct Attitudes {
    /// Groups of poses (extrapolated to travel 0); the body turns within a group.
    pub(super) groups: Vec<Turning>,
    pub(super) lift_off_m: [f64; 2],
    pub(super) lift_off_last_m: [f64; 2],
    pub(super) loose: Option<(Corner, f64)>,
}

impl Attitudes {
    pub(super) fn new(bay: &Bay, uncertainty: &Uncertainty) -> Result<Self, MoverError> {
        let level = attitude::attitudes(bay, ParkingError::default(), [0.0; 4])?;
        let mut all = level.clone();
        let mut groups: Vec<Vec<Pose>> = Vec::new();
        if uncertainty.mismatch_m > 0.0 {
            for side in [Side::Left, Side::Right] {
                let extra = corners_on(side).map(|share| share * uncertainty.mismatch_m);
                let rolled = attitude::attitudes(bay, ParkingError::default(), extra)?;
                let same_supports = rolled.len() == level.len()
                    && level
                        .iter()
                        .zip(&rolled)
                        .all(|(a, b)| a.carries == b.carries);
                if same_supports {
                    for (a, b) in level.iter().zip(&rolled) {
                        groups.push(vec![a.bay_from_vehicle_at_zero, b.bay_from_vehicle_at_zero]);
                    }
                } else {
                    // The supports change on the way: bound it by the hull of all of them.
                    groups.push(
                        level
                            .iter()
                            .chain(&rolled)
                            .map(|attitude| attitude.bay_from_vehicle_at_zero)
                            .collect(),
                    );
                }
                all.extend(rolled);
            }
        } else {
            groups.extend(
                level
                    .iter()
                    .map(|attitude| vec![attitude.bay_from_vehicle_at_zero]),
            );
        }
        let mut lift_off_m = [f64::INFINITY; 2];
        let mut lift_off_last_m = [f64::NEG_INFINITY; 2];
        for attitude in &all {
            for axle in 0..2 {
                lift_off_m[axle] = lift_off_m[axle].min(attitude.lift_off_m[axle]);
                lift_off_last_m[axle] = lift_off_last_m[axle].max(attitude.lift_off_last_m[axle]);
            }
        }
        // The loose gap is judged level: the roll of the carriages comes and goes.
        let loose = level
            .iter()
            .filter_map(|attitude| attitude.loose)
            .max_by(|a, b| a.1.total_cmp(&b.1));
        let yaws = yaws(bay, uncertainty.parking.yaw_rad);
        let groups = groups.iter().map(|poses| Turning::new(poses, &yaws));
        Ok(Self {
            groups: groups.collect(),
            lift_off_m,
            lift_off_last_m,
            loose,
        })
    }

    pub(super) fn first_pose(&self) -> Pose {
        self.groups
            .first()
            .map_or(Pose::IDENTITY, |group| group.first)
    }
}

/// Poses between which the body turns.
pub(super) struct Turning {
    pub(super) first: Pose,
    /// Each of them at either end of the parking box's yaw.
    pub(super) yawed: Vec<Pose>,
    /// The most that it turns from the first, radians.
    pub(super) angle: f64,
}

impl Turning {
    fn new(poses: &[Pose], yaws: &[Pose]) -> Self {
        let first = poses.first().copied().unwrap_or(Pose::IDENTITY);
        let each = poses.iter();
        Self {
            first,
            yawed: each
                .clone()
                .flat_map(|pose| yaws.iter().map(|yaw| yaw.after(*pose)))
                .collect(),
            angle: each
                .map(|pose| first.rotation.angle_between(pose.rotation))
                .fold(0.0, f64::max),
        }
    }
}

/// The turns by ± `yaw_rad` about the vertical through the place that is lined up.
fn yaws(bay: &Bay, yaw_rad: f64) -> Vec<Pose> {
    if yaw_rad <= 0.0 {
        return vec![Pose::IDENTITY];
    }
    let pivot = parking_pivot(bay);
    [-yaw_rad, yaw_rad]
        .into_iter()
        .map(|yaw| {
            let turn = Pose::new(glam::DQuat::from_rotation_z(yaw), DVec3::ZERO);
            Pose::at(pivot).after(turn).after(Pose::at(-pivot))
        })
        .collect()
}

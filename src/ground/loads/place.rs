//! How does the vehicle stand over the pads, and how far may its weight be off?

use glam::{DVec2, DVec3};

use super::geometry::Geometry;
use crate::bay::{Aim, Bay, CgHeight, Corner};
use crate::clearance::part_levers::{support_levers, support_m};
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::attitude::{Balance, StanceError, attitudes};
use crate::solids::vehicle::{lift_point_at, lift_point_m};
use crate::solids::{ParkingError, Pose, arms};

/// Standard gravity, m/s² (3rd General Conference on Weights and Measures, 1901).
pub const GRAVITY: f64 = 9.806_65;

/// How far an estimated height of the centre of gravity may be off, as a share of it: the
/// project's own choice, about what classes of vehicles differ by.
const HEIGHT_DOUBT: f64 = 0.2;

/// The vehicle on its pads, whatever its weight.
#[derive(Debug, Clone)]
pub(super) struct Place {
    /// Every way it may stand: carriages level and out of level either way. The first is as
    /// parked.
    poses: Vec<Pose>,
    pads_m: [DVec2; 4],
    pad_off_m: [DVec2; 4],
    pivot_m: DVec2,
    parking: ParkingError,
    /// How far the weight may be off as measured.
    vehicle_off_m: f64,
    /// Rise per length, across and along, of a body whose pads and lift points stand off their heights.
    tilt: DVec2,
}

fn plan(point: DVec3) -> DVec2 {
    DVec2::new(point.x, point.y)
}

impl Place {
    /// The vehicle as parked and raised.
    ///
    /// # Errors
    /// See [`attitudes`].
    pub(super) fn new(bay: &Bay, uncertainty: &Uncertainty) -> Result<Self, StanceError> {
        let mut poses = Vec::with_capacity(12);
        let up = uncertainty.mismatch_m;
        for extra in [[0.0; 4], [up, 0.0, up, 0.0], [0.0, up, 0.0, up]] {
            for attitude in attitudes(bay, ParkingError::default(), extra)? {
                poses.push(attitude.bay_from_vehicle_at_zero);
            }
            if up <= 0.0 {
                break;
            }
        }
        let as_parked = *poses.first().ok_or(StanceError::NotANumber)?;
        let pads_m = Corner::ALL.map(|corner| plan(as_parked.point(point(bay, corner))));
        let aim = match bay.parking.aim {
            Aim::CentreOfGravity(offset) | Aim::LiftPoints(offset) => offset,
        };
        let lined_up = uncertainty.lined_up_spread();
        Ok(Self {
            pads_m,
            pad_off_m: Corner::ALL.map(|corner| {
                DVec2::splat(uncertainty.vehicle_m)
                    + beside_tooth_m(bay, corner, pads_m[corner.index()])
            }),
            pivot_m: DVec2::new(
                bay.lift.across.m() + bay.parking.across.m(),
                bay.lift.post_line.m() + aim.m(),
            ),
            parking: ParkingError {
                across_m: uncertainty.parking.across_m + lined_up.x,
                along_m: uncertainty.parking.along_m + lined_up.y,
                yaw_rad: uncertainty.parking.yaw_rad,
            },
            vehicle_off_m: uncertainty.vehicle_m,
            tilt: support_levers(bay).map_or(DVec2::ZERO, |levers| {
                levers.most_tilt(support_m(uncertainty), uncertainty.loose_pad_m)
            }),
            poses,
        })
    }

    /// The same with a weight on it.
    ///
    /// How far the weight may be off: by one ± of the vehicle (along it by those of the front overhang, and
    /// of the wheelbase with the share that the rear axle was weighed with), and by how far it moves over the pads as the body tilts
    /// (carriages out of level, pads and points off their heights), for every height that it may have.
    #[must_use]
    pub(super) fn with(
        &self,
        bay: &Bay,
        balance: Balance,
        counts: impl Fn(usize) -> bool,
    ) -> Geometry {
        let heights = heights_m(bay, balance, self.vehicle_off_m, counts);
        let over_pads = |pose: &Pose, height: f64| {
            let pads = Corner::ALL.map(|corner| plan(pose.point(point(bay, corner))));
            let middle = pads.iter().sum::<DVec2>() / 4.0;
            plan(pose.point(balance.plan_m.extend(height))) - middle
        };
        let as_parked = 0.5 * (heights[0] + heights[1]);
        let from_middle = over_pads(&self.poses[0], as_parked);
        let mut off = DVec2::ZERO;
        for pose in &self.poses {
            for height in heights {
                off = off.max((over_pads(pose, height) - from_middle).abs());
            }
        }
        let high = heights[0].abs().max(heights[1].abs());
        let measured = DVec2::splat(self.vehicle_off_m)
            + DVec2::new(0.0, self.vehicle_off_m * rear_share(bay, balance));
        let middle = self.pads_m.iter().sum::<DVec2>() / 4.0;
        Geometry {
            pads_m: self.pads_m,
            pad_off_m: self.pad_off_m,
            cg_m: middle + from_middle,
            cg_off_m: off + measured + self.tilt * high,
            weight_n: balance.mass_kg * GRAVITY,
            pivot_m: self.pivot_m,
            parking: self.parking,
        }
    }
}

/// The lift point that a corner of the lift carries, in the vehicle's frame.
fn point(bay: &Bay, corner: Corner) -> DVec3 {
    lift_point_m(&bay.vehicle, lift_point_at(corner, bay.parking.facing))
}

/// How far beside its lift point a pad may rest for the pitch of its restraint's teeth, across and
/// along: half a pitch, square to its arm, and no more than its radius, beyond which it would not
/// carry the point at all.
fn beside_tooth_m(bay: &Bay, corner: Corner, pad_m: DVec2) -> DVec2 {
    let Some(tooth) = bay.lift.arms[corner.index()].tooth else {
        return DVec2::ZERO;
    };
    let arm = pad_m - arms::pivot_m(bay, corner);
    let beside = (arm.length() * (0.5 * tooth.rad()).sin()).min(0.5 * bay.lift.pad.diameter.m());
    arm.perp().normalize_or_zero().abs() * beside
}

/// What of a wheelbase that is off moves the weight: what the rear axle was weighed with, over the weight now.
/// All of it where no axle was weighed.
fn rear_share(bay: &Bay, balance: Balance) -> f64 {
    let loads = bay.vehicle.axle_loads;
    loads.map_or(1.0, |[_, rear]| rear.kg() / balance.mass_kg)
}

/// Between which heights the weight acts: as measured, as estimated with its doubt, or anywhere
/// between ground and roof. Named masses without a height count at that of the kerb.
fn heights_m(bay: &Bay, balance: Balance, off_m: f64, counts: impl Fn(usize) -> bool) -> [f64; 2] {
    let vehicle = &bay.vehicle;
    let Some(CgHeight { height, estimated }) = vehicle.cg_height else {
        return [0.0, vehicle.height.m()];
    };
    let kerb = height.m();
    let mut moment = 0.0;
    for (index, part) in vehicle.masses.iter().enumerate() {
        if let Some(height) = part.height
            && counts(index)
        {
            moment += part.mass.kg() * (height.m() - kerb);
        }
    }
    let height = kerb + moment / balance.mass_kg;
    let doubt = if estimated {
        HEIGHT_DOUBT * height.abs()
    } else {
        off_m
    };
    [height - doubt, height + doubt]
}

//! Everything that moves, cut into the phases of the raise.
//!
//! Lift parts climb from travel 0. The vehicle's body stands until the first pad may touch it,
//! turns until all pads carry (bounded by what the turn sweeps), then climbs. Its wheels stand
//! until the droop of their axle may be spent, then climb, hanging. Along columns that lean a climb
//! is cut into stretches, each with a body of its own ([`super::leaning`]).

mod attitudes;
mod build;
mod part;

use glam::DVec3;

use self::attitudes::Attitudes;
use self::build::Build;
use self::part::PartContext;

use super::arm_bodies::{arm_bodies, leading};
use super::body::Body;
use super::leaning::Touch;
use super::part_levers::{BodyLevers, support_levers, support_m};
use super::uncertainty::{Uncertainty, corners_on};
use crate::bay::{Aim, Bay, Corner, Floor, Side};
use crate::solids::{ParkingError, Pose, Role, Solid, attitude, posts, shell, vehicle};

/// One moving solid in one phase of the raise.
#[derive(Debug, Clone)]
pub struct Moving {
    /// The solid with every uncertainty added: as posed at travel 0 when it climbs, as posed when
    /// it stands.
    pub body: Body,
    /// Index into [`Movers::solids`].
    pub solid: usize,
    /// What it is.
    pub role: Role,
    /// Travel at which this phase starts.
    pub from: f64,
    /// Travel at which it ends.
    pub to: f64,
    /// False while it stands.
    pub climbs: bool,
    /// The phase that this is a stretch of: another number for each phase, the same for all stretches
    /// that a climb along leaning columns is cut into.
    pub phase: usize,
}

/// The travels at which the phases change, worst case over the uncertainty.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phases {
    /// The first pad may touch the vehicle here (not below 0).
    pub first_touch_m: f64,
    /// All pads carry from here on, for certain.
    pub carry_m: f64,
    /// Wheels of the front axle may leave the floor here.
    pub lift_off_m: [f64; 2],
    /// All wheels of the axle are off the floor from here on.
    pub lift_off_last_m: [f64; 2],
}

/// Everything that moves, and when.
#[derive(Debug, Clone)]
pub struct Movers {
    /// The moving solids, nominal, at travel 0 (vehicle at rest).
    pub solids: Vec<Solid>,
    /// The solids' poses at travel 0 extrapolated back from the first attitude on the pads; for
    /// lift parts the same as in `solids`. With these, `pose + travel` is where a solid is once it
    /// climbs.
    pub climbing_solids: Vec<Solid>,
    /// Their phases.
    pub moving: Vec<Moving>,
    /// The vehicle's parts standing on their tyres, whether or not the pads touch them there.
    pub standing: Vec<Moving>,
    /// When the phases change.
    pub phases: Phases,
    /// The loosest pad over the checked attitudes.
    pub loose: Option<(Corner, f64)>,
    /// Pads that start above their lift points: by how much, metres.
    pub too_high: Vec<(Corner, f64)>,
}

/// Pads that meet their points in no more travel than this from the first to the last count as level; what is
/// left of that is within what a pad may hang loose.
const UNEVEN_M: f64 = 0.003;

/// Why the vehicle could not be set on the pads.
pub type MoverError = attitude::StanceError;

/// Everything that moves in this bay, with the given uncertainty.
///
/// # Errors
/// When the vehicle can't be set on the pads at all (see [`attitude::StanceError`]).
pub fn movers(bay: &Bay, uncertainty: &Uncertainty) -> Result<Movers, MoverError> {
    let top = bay.lift.travel.m();
    let contact = attitude::contact(bay, ParkingError::default())?;
    let attitudes = Attitudes::new(bay, uncertainty)?;
    let support_m = support_m(uncertainty);
    // The travel is measured too. One carriage may lead, so a pad may meet its point that much
    // earlier; all carry only when the lagging side does.
    let rest = attitude::at_rest(bay, ParkingError::default())?;
    let floor_m = floor_doubt_m(bay, &rest, uncertainty);
    let touch_m = support_m + uncertainty.lift_m + floor_m;
    let first_touch_m = (contact.first_touch_m - uncertainty.mismatch_m - touch_m).max(0.0);
    let carry_m = (contact.carry_m + touch_m).max(first_touch_m).max(0.0);
    let lift_off_m = attitudes
        .lift_off_m
        .map(|m| (m - uncertainty.mismatch_m - support_m).max(first_touch_m));
    let lift_off_last_m = attitudes.lift_off_last_m.map(|m| m + support_m);

    let mut build = Build {
        top,
        uncertainty: *uncertainty,
        touch: Touch {
            first_m: first_touch_m,
            last_m: carry_m,
        },
        phases: 0,
        solids: Vec::new(),
        climbing_solids: Vec::new(),
        moving: Vec::new(),
        standing: Vec::new(),
    };
    for carriage in posts::carriages(bay) {
        let body = Body::of(
            &carriage.shape,
            &[carriage.bay_from_solid],
            uncertainty.placed_lift_spread(),
        );
        let body = leading(&body, uncertainty);
        build.lift_part(carriage, body);
    }
    let at_rest = |errors: Vec<ParkingError>| -> Result<Vec<Pose>, MoverError> {
        let poses = errors
            .into_iter()
            .map(|error| attitude::at_rest(bay, error));
        poses.collect()
    };
    let parked = at_rest(uncertainty.parking_corners())?;
    for corner in Corner::ALL {
        for (solid, body) in arm_bodies(bay, corner, uncertainty, rest, &parked) {
            build.lift_part(solid, body);
        }
    }
    let supports = support_levers(bay);
    // What posts are off in height is no part of the turn: it counts beside it, once, and only where
    // pads carry ([`Build::vehicle_part`]). A vehicle on its tyres does not stand on the lift.
    let counted_beside_m = if supports.is_some() {
        uncertainty.posts_m.z
    } else {
        0.0
    };
    let carry_by_turn_m = (contact.carry_m + touch_m - counted_beside_m)
        .max(first_touch_m)
        .max(0.0);
    let rise = contact
        .touch_m
        .map(|touch| (carry_by_turn_m - touch + uncertainty.mismatch_m).max(0.0));
    // A pad may stand higher, and its lift point or the floor under the vehicle lower.
    let rise_more_m = support_m - counted_beside_m + floor_m;
    let levers = BodyLevers::new(supports, uncertainty, rise, rise_more_m);
    let (rest_errors, parked_m) = uncertainty.parking_hull(&bay.garage.floor);
    let rest_poses = at_rest(rest_errors)?;
    let first = attitudes.first_pose();
    let pivot = parking_pivot(bay);
    let turning_middle = rest.rotation.inverse() * (pivot - rest.translation);
    for part in vehicle::parts(bay) {
        let context = PartContext {
            uncertainty,
            attitudes: &attitudes,
            rest_poses: &rest_poses,
            parked_m,
            levers: &levers,
            rise_more_m,
            first_touch_m,
            carry_m,
            lift_off_m,
            springs_until_m: lift_off_last_m[0].max(lift_off_last_m[1]),
            turning_middle,
            floor_m,
        };
        build.vehicle_part(bay, &part, rest, first, &context);
    }
    let too_high = Corner::ALL
        .into_iter()
        .map(|corner| (corner, support_m - contact.touch_m[corner.index()]))
        .filter(|(_, excess)| *excess >= 0.0)
        .collect();
    // Where some pads carry well before others, springs that are relieved may hold an end above its own pads
    // until its tyres are off the floor: only then do all carry for certain.
    let touches = contact.touch_m;
    let least = touches.into_iter().fold(f64::INFINITY, f64::min);
    let most = touches.into_iter().fold(f64::NEG_INFINITY, f64::max);
    let are_level = most - least <= UNEVEN_M;
    let all_carry_m = if are_level {
        carry_m
    } else {
        carry_m.max(lift_off_last_m[0]).max(lift_off_last_m[1])
    };
    Ok(Movers {
        solids: build.solids,
        climbing_solids: build.climbing_solids,
        moving: build.moving,
        standing: build.standing,
        phases: Phases {
            first_touch_m,
            carry_m: all_carry_m,
            lift_off_m,
            lift_off_last_m,
        },
        loose: attitudes.loose,
        too_high,
    })
}

/// How far the floor under any tyre may be from where the study takes it; 0 where it is level or
/// one plane, and in the nominal study.
pub(super) fn floor_doubt_m(bay: &Bay, rest: &Pose, uncertainty: &Uncertainty) -> f64 {
    if *uncertainty == Uncertainty::NONE {
        return 0.0;
    }
    let Floor::Levels(_) = bay.garage.floor else {
        return 0.0;
    };
    let around = bay.vehicle.tyre_diameter.m();
    (0..4)
        .map(|wheel| {
            let at = rest.point(vehicle::wheel_middle_m(&bay.vehicle, wheel));
            let (low, high) = shell::floor_level_range_m(
                bay,
                [at.x - around, at.y - around],
                [at.x + around, at.y + around],
            );
            high - low
        })
        .fold(0.0, f64::max)
}

/// The most that the body on the pads may be turned from its nominal attitude, about any axis,
/// radians: a bound for what stands out from the body.
pub(super) fn most_turn(bay: &Bay, uncertainty: &Uncertainty) -> f64 {
    let tilt = support_levers(bay).map_or(0.0, |levers| {
        let tilt = levers.most_tilt(support_m(uncertainty), uncertainty.loose_pad_m);
        let lead = levers.most_turn(corners_on(Side::Left).map(|l| l * uncertainty.mismatch_m));
        tilt.length() + lead.length()
    });
    tilt + uncertainty.parking.yaw_rad
}

/// How far an arc of `angle` about a radius stands off its chord.
pub(crate) fn chord_bulge_m(radius_m: f64, angle: f64) -> f64 {
    radius_m * angle * angle / 8.0
}

/// The place on the floor that the vehicle is lined up with and yaws about.
pub(super) fn parking_pivot(bay: &Bay) -> DVec3 {
    let (Aim::CentreOfGravity(offset) | Aim::LiftPoints(offset)) = bay.parking.aim;
    DVec3::new(
        bay.lift.across.m() + bay.parking.across.m(),
        bay.lift.post_line.m() + offset.m(),
        0.0,
    )
}

#[cfg(test)]
mod tests;

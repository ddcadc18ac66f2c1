//! Where each arm swings to bring its pad under its lift point, and by how much it falls short.
//!
//! An arm is worked out in its own plan frame: *inward* to the other post, *away* from the post
//! line (to the front for front arms, to the rear for rear ones). Its angle is its zero direction
//! plus its swing, from inward toward away.

mod aim;

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use glam::{DQuat, DVec2, DVec3};

pub use aim::aim_offsets;

use super::attitude::{self, StanceError};
use super::posts::{column_middle_x_m, inward};
use super::{ParkingError, Pose, Role, Solid, vehicle};
use crate::bay::{Arm, Bay, Corner, Side};

/// A pad this near to its lift point is under it, metres: rounding of the arithmetic, no
/// tolerance of the trade.
const REACHED_M: f64 = 1e-9;

/// Why an arm falls short.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Short {
    /// The lift point lies beyond the longest reach.
    TooFar,
    /// The lift point lies nearer to the pivot than the shortest reach.
    TooNear,
    /// The arm cannot swing that far; with it, the length may be short too.
    SwingLimit,
}

/// A swing at which the restraint holds the arm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rest {
    /// The swing, radians.
    pub swing_rad: f64,
    /// False when this tooth lies beyond the arm's swing limits: the arm cannot rest there.
    pub within_limits: bool,
}

/// How one arm stands for its lift point. Plan places are bay `x` and `y`, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArmReach {
    /// Which arm.
    pub corner: Corner,
    /// The swing that brings the pad to its lift point, or nearest to it, radians.
    pub swing_rad: f64,
    /// The reach from pivot to pad middle, metres.
    pub reach_m: f64,
    /// The pad's middle.
    pub pad_m: DVec2,
    /// The lift point, with the vehicle standing on the floor.
    pub lift_point_m: DVec2,
    /// Distance in plan from the pad to the lift point; exactly 0 when it reaches.
    pub shortfall_m: f64,
    /// Why it falls short; none when it reaches.
    pub short: Option<Short>,
    /// The teeth on either side of the swing, lower first; both the swing itself when it is on a
    /// tooth or the arm has none. Teeth are counted from swing 0.
    pub rests: [Rest; 2],
}

/// The sign of *away from the post line* along `y`.
const fn away(corner: Corner) -> f64 {
    if corner.is_front() { 1.0 } else { -1.0 }
}

/// The arm's pivot in plan, metres.
#[must_use]
pub fn pivot_m(bay: &Bay, corner: Corner) -> DVec2 {
    let arm = &bay.lift.arms[corner.index()];
    DVec2::new(
        column_middle_x_m(bay, corner.side()) + inward(corner.side()) * arm.pivot_inward.m(),
        bay.lift.post_line.m() + away(corner) * arm.pivot_away.m(),
    )
}

/// The pad's middle in plan for a swing and a reach, metres.
#[must_use]
pub fn pad_m(bay: &Bay, corner: Corner, swing_rad: f64, reach_m: f64) -> DVec2 {
    pivot_m(bay, corner) + direction(bay, corner, swing_rad) * reach_m
}

/// The arms and the pads, by [`Corner::index`].
const ARM_NAMES: [&str; 4] = [
    "lift/arm front left",
    "lift/arm front right",
    "lift/arm rear left",
    "lift/arm rear right",
];
const PAD_NAMES: [&str; 4] = [
    "lift/pad front left",
    "lift/pad front right",
    "lift/pad rear left",
    "lift/pad rear right",
];

/// Which way an arm points in plan: its angle from +x, counter-clockwise seen from above, within half
/// a turn either way, radians.
fn heading_rad(bay: &Bay, corner: Corner, swing_rad: f64) -> f64 {
    let angle = bay.lift.arms[corner.index()].zero.rad() + swing_rad;
    let from_inward = away(corner) * angle;
    let heading = match corner.side() {
        Side::Left => from_inward,
        // Inward is -x there.
        Side::Right => PI - from_inward,
    };
    heading - TAU * (heading / TAU).round()
}

/// The way an arm points in plan, unit length.
fn direction(bay: &Bay, corner: Corner, swing_rad: f64) -> DVec2 {
    let (sin, cos) = (bay.lift.arms[corner.index()].zero.rad() + swing_rad).sin_cos();
    DVec2::new(inward(corner.side()) * cos, away(corner) * sin)
}

/// How an arm stands for its lift point, the vehicle standing on its tyres with the given parking
/// error.
///
/// # Errors
/// When the vehicle's place is not known, see [`attitude::at_rest`].
pub fn reach(bay: &Bay, corner: Corner, error: ParkingError) -> Result<ArmReach, StanceError> {
    Ok(reach_from(bay, corner, attitude::at_rest(bay, error)?))
}

/// The same for the vehicle standing in a pose that is known.
#[must_use]
pub fn reach_from(bay: &Bay, corner: Corner, rest: Pose) -> ArmReach {
    let index = vehicle::lift_point_at(corner, bay.parking.facing);
    let point = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
    reach_to(bay, corner, point.truncate())
}

/// How an arm stands for a lift point at a place in plan.
///
/// The pad's places form a sector of a ring. Within the swing limits the nearest place lies on
/// the ray to the target; outside them it lies on one of the two straight edges, since along
/// either arc the distance shrinks all the way to the arc's end.
#[must_use]
pub fn reach_to(bay: &Bay, corner: Corner, target_m: DVec2) -> ArmReach {
    let arm = &bay.lift.arms[corner.index()];
    let (shortest, longest) = (arm.shortest.m(), arm.longest.m());
    let offset = target_m - pivot_m(bay, corner);
    let (along_inward, along_away) = (offset.x * inward(corner.side()), offset.y * away(corner));
    let distance = offset.length();
    let swing_rad = swing_near_limits(arm, along_away.atan2(along_inward) - arm.zero.rad());

    let on_ray = |swing: f64, reach: f64| {
        let pad = pad_m(bay, corner, swing, reach);
        (swing, reach, pad, pad.distance(target_m))
    };
    let on_edge = |swing: f64| {
        let along = offset.dot(direction(bay, corner, swing));
        on_ray(swing, along.clamp(shortest, longest))
    };
    let (low, high) = (arm.swing_min.rad(), arm.swing_max.rad());
    let within_swing = (low..=high).contains(&swing_rad);
    let (swing, reach, pad, miss) = if within_swing {
        on_ray(swing_rad, distance.clamp(shortest, longest))
    } else {
        let (at_low, at_high) = (on_edge(low), on_edge(high));
        if at_low.3 <= at_high.3 {
            at_low
        } else {
            at_high
        }
    };
    let reached = miss <= REACHED_M;
    let short = if reached {
        None
    } else if !within_swing {
        Some(Short::SwingLimit)
    } else if distance > longest {
        Some(Short::TooFar)
    } else {
        Some(Short::TooNear)
    };
    ArmReach {
        corner,
        swing_rad: swing,
        reach_m: reach,
        pad_m: pad,
        lift_point_m: target_m,
        shortfall_m: if reached { 0.0 } else { miss },
        short,
        rests: rests(arm, swing),
    }
}

/// The swing and the reach that bring the pad right under a place in plan, whatever the arm's limits.
pub(crate) fn toward(bay: &Bay, corner: Corner, target_m: DVec2) -> (f64, f64) {
    let arm = &bay.lift.arms[corner.index()];
    let offset = target_m - pivot_m(bay, corner);
    let (along_inward, along_away) = (offset.x * inward(corner.side()), offset.y * away(corner));
    let swing = along_away.atan2(along_inward) - arm.zero.rad();
    (swing_near_limits(arm, swing), offset.length())
}

/// The same direction as `swing`, a whole turn off where that brings it within the limits.
fn swing_near_limits(arm: &Arm, swing: f64) -> f64 {
    let (low, high) = (arm.swing_min.rad(), arm.swing_max.rad());
    let up = swing + TAU * ((low - swing) / TAU).ceil();
    if up <= high { up } else { swing }
}

/// The teeth on either side of a swing.
fn rests(arm: &Arm, swing: f64) -> [Rest; 2] {
    /// Nearer to a tooth than this (in teeth) is on it.
    const ON_TOOTH: f64 = 1e-9;
    /// A tooth past a limit by less than this (radians) is on it.
    const ON_LIMIT: f64 = 1e-9;
    let rest = |swing_rad: f64| Rest {
        swing_rad,
        within_limits: swing_rad >= arm.swing_min.rad() - ON_LIMIT
            && swing_rad <= arm.swing_max.rad() + ON_LIMIT,
    };
    let Some(pitch) = arm.tooth.map(|tooth| tooth.rad()).filter(|&p| p > 0.0) else {
        return [rest(swing), rest(swing)];
    };
    let teeth = swing / pitch;
    if (teeth - teeth.round()).abs() < ON_TOOTH {
        let on = rest(teeth.round() * pitch);
        return [on, on];
    }
    [rest(teeth.floor() * pitch), rest(teeth.ceil() * pitch)]
}

/// An arm and its pad at travel 0, the pad raised as parked.
///
/// The arm is a box from half a width behind its pivot to its pad's middle, so never shorter than
/// the real arm; where the pad is narrower than the arm it goes on for half a width. The pad is a
/// cylinder from the arm's underside to the pad's top, screw and adapters included.
#[must_use]
pub fn arm_and_pad(bay: &Bay, corner: Corner, swing_rad: f64, reach_m: f64) -> [Solid; 2] {
    let raise = bay.parking.pad_raise[corner.index()].m();
    arm_with_pad_at(bay, corner, swing_rad, reach_m, raise)
}

fn arm_with_pad_at(
    bay: &Bay,
    corner: Corner,
    swing_rad: f64,
    reach_m: f64,
    raise_m: f64,
) -> [Solid; 2] {
    let arm = &bay.lift.arms[corner.index()];
    let pivot = pivot_m(bay, corner);
    let toward = direction(bay, corner, swing_rad);
    let half_width = arm.section_width.m() * 0.5;
    let pad_radius = bay.lift.pad.diameter.m() * 0.5;
    let past_pad = if pad_radius < half_width {
        half_width
    } else {
        0.0
    };
    let length = half_width + reach_m + past_pad;
    let middle = pivot + toward * (0.5 * length - half_width);
    let height = arm.section_height.m();
    let underside = arm.underside.m();
    let beam = Solid::posed_box(
        ARM_NAMES[corner.index()],
        Role::Arm(corner),
        DVec3::new(length, arm.section_width.m(), height),
        Pose::new(
            DQuat::from_rotation_z(heading_rad(bay, corner, swing_rad)),
            middle.extend(underside + 0.5 * height),
        ),
    );
    let pad_middle = pivot + toward * reach_m;
    let top = bay.lift.pad.lowest.m() + raise_m;
    let pad = Solid::bar(
        PAD_NAMES[corner.index()],
        Role::Pad(corner),
        pad_middle.extend(underside.min(top)),
        pad_middle.extend(top),
        pad_radius,
    );
    [beam, pad]
}

/// The same with the pad screwed down and without adapters, as an arm is swung.
#[must_use]
pub fn arm_and_pad_down(bay: &Bay, corner: Corner, swing_rad: f64, reach_m: f64) -> [Solid; 2] {
    arm_with_pad_at(bay, corner, swing_rad, reach_m, 0.0)
}

/// The way an arm turns about +z, seen from above, when its swing grows: 1 counter-clockwise, -1
/// clockwise.
#[must_use]
pub const fn turn_of_swing(corner: Corner) -> f64 {
    inward(corner.side()) * away(corner)
}

/// The swing at which an arm is parked for driving in: out of the lane as far as its limits allow,
/// nearest to square from inward, either way.
#[must_use]
pub fn parked_swing(bay: &Bay, corner: Corner) -> f64 {
    let arm = &bay.lift.arms[corner.index()];
    let nearest = |angle: f64| {
        let swing = (angle - arm.zero.rad()).clamp(arm.swing_min.rad(), arm.swing_max.rad());
        (swing, (arm.zero.rad() + swing - angle).abs())
    };
    let (outward, back) = (nearest(FRAC_PI_2), nearest(-FRAC_PI_2));
    if outward.1 <= back.1 {
        outward.0
    } else {
        back.0
    }
}

/// Arms and pads at travel 0, parked for driving in: see [`parked_swing`]; at their shortest, pads
/// screwed down.
#[must_use]
pub fn parked(bay: &Bay) -> Vec<Solid> {
    Corner::ALL
        .into_iter()
        .flat_map(|corner| {
            let shortest = bay.lift.arms[corner.index()].shortest.m();
            arm_and_pad_down(bay, corner, parked_swing(bay, corner), shortest)
        })
        .collect()
}

#[cfg(test)]
mod tests;

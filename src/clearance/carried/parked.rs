//! The vehicle in a piece of the parking box, its parts, and the lift's parts as they are wanted for
//! it.

use std::f64::consts::PI;
use std::ops::Range;

use glam::DVec3;

use super::super::arm_bodies::{outer_teeth, resting_swings};
use super::super::body::{Body, higher, lower};
use super::super::movers::{MoverError, chord_bulge_m};
use super::pairs::{KINDS, kind};
use super::piece::{Piece, Roam};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{Pose, Role, Solid, arms, attitude, posts, vehicle};
use crate::units::Angle;

/// A vehicle part with a box about it, vehicle frame: most parts are told far from every arm by that
/// alone.
pub(super) struct Part {
    pub(super) part: vehicle::VehiclePart,
    pub(super) lowest: f64,
    middle: DVec3,
    half: DVec3,
}

impl Part {
    pub(super) fn new(part: vehicle::VehiclePart) -> Self {
        let (low, high) = part.solid.bounds();
        Self {
            middle: (low + high) * 0.5,
            half: (high - low) * 0.5,
            lowest: low.z,
            part,
        }
    }

    /// How far it reaches from a point, vehicle frame.
    pub(super) fn reach_m(&self, from: DVec3) -> f64 {
        (self.middle - from).length() + self.half.length()
    }

    /// Whether it lies beside a box, vehicle frame. What is no number lies beside nothing.
    pub(super) fn is_beside(&self, low: DVec3, high: DVec3) -> bool {
        let (own_low, own_high) = (self.middle - self.half, self.middle + self.half);
        high.cmplt(own_low).any() || low.cmpgt(own_high).any()
    }

    /// How far it hangs once the vehicle is carried.
    pub(super) fn droop_m(&self, bay: &Bay) -> f64 {
        self.part
            .wheel
            .map_or(0.0, |axle| bay.vehicle.droop[axle].m())
    }

    /// The box about the part as posed and hanging `droop` lower: a little larger, so that rounding
    /// leaves nothing outside. A turned box reaches along each axis as far as its own half sides do
    /// together.
    pub(super) fn about(&self, pose: Pose, droop: f64) -> About {
        const ROUNDING_M: f64 = 1e-9;
        let axes = glam::DMat3::from_quat(pose.rotation);
        let reach = axes.x_axis.abs() * self.half.x
            + axes.y_axis.abs() * self.half.y
            + axes.z_axis.abs() * self.half.z
            + DVec3::splat(ROUNDING_M);
        let middle = pose.point(self.middle);
        // It hangs along the vehicle's own upright, which may lean.
        let hangs = axes.z_axis * droop;
        About {
            low: lower(middle, middle - hangs) - reach,
            high: higher(middle, middle - hangs) + reach,
        }
    }
}

/// A box; what is no number is near to everything.
#[derive(Debug, Clone, Copy)]
pub(super) struct About {
    pub(super) low: DVec3,
    pub(super) high: DVec3,
}

impl About {
    /// A box about nothing.
    pub(super) const NOTHING: Self = Self {
        low: DVec3::INFINITY,
        high: DVec3::NEG_INFINITY,
    };

    /// The box about both.
    pub(super) fn and(self, other: Self) -> Self {
        Self {
            low: lower(self.low, other.low),
            high: higher(self.high, other.high),
        }
    }

    /// The same box, larger each way.
    pub(super) fn widened(self, by: DVec3) -> Self {
        Self {
            low: self.low - by,
            high: self.high + by,
        }
    }

    /// The box about a climb from one height over here to another.
    pub(super) fn climbing(self, from: f64, to: f64) -> Self {
        Self {
            low: self.low + DVec3::Z * from,
            high: self.high + DVec3::Z * to,
        }
    }

    /// Asked this way round, what is no number is not apart.
    pub(super) fn meets(self, other: Self) -> bool {
        !(self.high.cmplt(other.low).any() || self.low.cmpgt(other.high).any())
    }
}

/// The vehicle in a piece of the parking box, and the lift's parts as they are wanted for it.
pub(super) struct Parked {
    /// The vehicle at rest in the middle place.
    pub(super) rest: Pose,
    /// How far the others are from that.
    pub(super) roam: Roam,
    pub(super) contact: attitude::Contact,
    /// Carriages, arms and pads at travel 0, as they are over the whole piece, kind by kind.
    pub(super) lift: Vec<(Role, Body)>,
    /// Which of them are of each kind.
    pub(super) of_kind: [Range<usize>; KINDS],
}

impl Parked {
    pub(super) fn new(bay: &Bay, piece: Piece) -> Result<Self, MoverError> {
        let rest = attitude::at_rest(bay, piece.middle)?;
        let roam = Roam::new(bay, piece, rest)?;
        let mut lift: Vec<(Role, Body)> = posts::carriages(bay)
            .into_iter()
            .map(|solid| (solid.role, Body::exact(&solid)))
            .collect();
        for corner in Corner::ALL {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            let point = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
            let reach = arms::reach_to(bay, corner, point.truncate());
            let off_m = if roam.is_place() {
                0.0
            } else {
                roam.point_m(point)
            };
            let (arms, pads) = wanted(bay, &reach, off_m);
            lift.extend(arms.into_iter().map(|arm| (Role::Arm(corner), arm)));
            lift.extend(pads.into_iter().map(|pad| (Role::Pad(corner), pad)));
        }
        debug_assert!(lift.is_sorted_by_key(|(role, _)| kind(*role)));
        let of_kind = std::array::from_fn(|of| {
            let from = lift.partition_point(|(role, _)| kind(*role) < of);
            from..lift.partition_point(|(role, _)| kind(*role) <= of)
        });
        Ok(Self {
            rest,
            roam,
            of_kind,
            contact: attitude::contact_from(bay, rest)?,
            lift,
        })
    }
}

/// The names of the lift parts, by kind.
pub(super) fn names(bay: &Bay) -> Vec<String> {
    let arms = Corner::ALL.into_iter();
    let arms = arms.flat_map(|corner| arms::arm_and_pad(bay, corner, 0.0, 1.0));
    let all = posts::carriages(bay).into_iter().chain(arms);
    all.map(|solid| solid.name).collect()
}

/// Of more teeth than this each is not looked at by itself, but all that the arm sweeps over them.
const MOST_TEETH: usize = 6;

/// The arm and its pad wherever they may come to rest while the lift point lies within `off_m` in plan
/// of where they are wanted for it: at each tooth, and at no tooth.
fn wanted(bay: &Bay, reach: &arms::ArmReach, off_m: f64) -> (Vec<Body>, Vec<Body>) {
    let corner = reach.corner;
    let arm = &bay.lift.arms[corner.index()];
    let (shortest, longest) = (arm.shortest.m(), arm.longest.m());
    let nearest = (reach.reach_m - off_m).clamp(shortest, longest.max(shortest));
    let farthest = (reach.reach_m + off_m).clamp(shortest, longest.max(shortest));
    swings(bay, reach, off_m)
        .into_iter()
        .map(|(least, most)| {
            let mut ends = vec![least];
            if most > least {
                ends.push(most);
            }
            let at = |reach_m: f64| {
                let ends = ends.iter();
                ends.map(move |swing| arms::arm_and_pad(bay, corner, *swing, reach_m))
            };
            let past = bay.lift.pad.diameter.max(arm.section_width).m();
            let bulge = chord_bulge_m(longest + past, most - least);
            let bulge = DVec3::new(bulge, bulge, 0.0);
            // The longer arm covers the shorter.
            let arms = at(farthest).map(|[arm, _]| Body::exact(&arm)).collect();
            let pad = |[_, pad]: [Solid; 2]| Body::exact(&pad);
            let mut pads: Vec<Body> = at(farthest).map(pad).collect();
            if nearest < farthest {
                pads.extend(at(nearest).map(pad));
            }
            let hull = |bodies: Vec<Body>| Body::hull(bodies).widened(bulge);
            (hull(arms), hull(pads))
        })
        .unzip()
}

/// The ranges of swings in which an arm may rest while its lift point lies within `off_m` of the wanted
/// place.
fn swings(bay: &Bay, reach: &arms::ArmReach, off_m: f64) -> Vec<(f64, f64)> {
    if off_m == 0.0 {
        let rests = resting_swings(reach).into_iter();
        return rests.map(|swing| (swing, swing)).collect();
    }
    let arm = &bay.lift.arms[reach.corner.index()];
    let away_m = reach
        .lift_point_m
        .distance(arms::pivot_m(bay, reach.corner));
    let turn = if off_m < away_m {
        (off_m / away_m).asin()
    } else {
        PI
    };
    let wanted = (reach.swing_rad - turn, reach.swing_rad + turn);
    let limits = (arm.swing_min.rad(), arm.swing_max.rad());
    let (low, high) = outer_teeth(arm, wanted.0, wanted.1);
    let within = |swing: f64| swing.max(limits.0).min(limits.1);
    let mut ranges = vec![(within(wanted.0), within(wanted.1))];
    if let Some(tooth) = arm.tooth.map(Angle::rad).filter(|tooth| *tooth > 0.0) {
        // A hair, so that no tooth is lost at either end to rounding.
        const HAIR: f64 = 1e-9;
        let first = (low / tooth - HAIR).ceil();
        let count = ((high / tooth + HAIR).floor() - first + 1.0).max(0.0);
        if count <= MOST_TEETH as f64 {
            let teeth = (0..count as usize).map(|number| (first + number as f64) * tooth);
            ranges.extend(teeth.map(|swing| (swing, swing)));
        } else {
            ranges = vec![(low.min(within(wanted.0)), high.max(within(wanted.1)))];
        }
    }
    ranges
}

/// The side and, where it has one, the corner of a lift part.
pub(super) fn side_of(role: Role) -> Option<(Side, Option<Corner>)> {
    match role {
        Role::Carriage(side) => Some((side, None)),
        Role::Arm(corner) | Role::Pad(corner) => Some((corner.side(), Some(corner))),
        _ => None,
    }
}

/// Whether two lift parts belong to different arms, or to different sides.
pub(super) fn are_strangers(one: Role, other: Role) -> bool {
    match (side_of(one), side_of(other)) {
        (Some((_, Some(a))), Some((_, Some(b)))) => a != b,
        (Some((a, None)), Some((b, _))) | (Some((a, _)), Some((b, None))) => a != b,
        _ => false,
    }
}

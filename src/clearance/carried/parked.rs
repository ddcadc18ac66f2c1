//! The vehicle in a piece of the parking box, its parts, and the lift's parts as they are wanted for
//! it.

use std::f64::consts::TAU;
use std::ops::Range;

use glam::{DVec2, DVec3};

use super::super::arm_bodies::resting_swings;
use super::super::body::{Body, higher, lower};
use super::super::movers::{MoverError, chord_bulge_m};
use super::pairs::{KINDS, kind};
use super::piece::{Piece, Roam};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{Pose, Role, arms, attitude, posts, vehicle};

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
    /// Carriages, arms and pads at travel 0, as they are over the whole piece seen from the vehicle in
    /// its middle, kind by kind.
    pub(super) lift: Vec<(Role, Body)>,
    /// The same as they are in the bay, to look at with each other.
    pub(super) in_bay: Vec<Body>,
    /// Which of them are of each kind.
    pub(super) of_kind: [Range<usize>; KINDS],
}

impl Parked {
    pub(super) fn new(bay: &Bay, piece: Piece) -> Result<Self, MoverError> {
        let rest = attitude::at_rest(bay, piece.middle)?;
        let roam = Roam::new(bay, piece, rest)?;
        let mut lift: Vec<(Role, Body)> = Vec::new();
        let mut in_bay = Vec::new();
        for solid in posts::carriages(bay) {
            let body = Body::exact(&solid);
            in_bay.push(body.clone());
            let around = roam
                .of_the_lift(body.low())
                .max(roam.of_the_lift(body.high()));
            let across = (body.high() - body.low()).truncate().length();
            let around = around + DVec2::splat(roam.turned_m(across));
            lift.push((solid.role, body.widened(around.extend(0.0))));
        }
        for corner in Corner::ALL {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            let point = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
            let (role, pad_role) = (Role::Arm(corner), Role::Pad(corner));
            if roam.is_place() {
                let reach = arms::reach_to(bay, corner, point.truncate());
                let (arms, pads) = at_rest(bay, &reach);
                in_bay.extend(arms.iter().chain(&pads).cloned());
                lift.extend(arms.into_iter().map(|arm| (role, arm)));
                lift.extend(pads.into_iter().map(|pad| (pad_role, pad)));
            } else {
                let off = roam.of_the_lift(arms::pivot_m(bay, corner).extend(0.0));
                let [arm, pad] = wherever(bay, corner, point.truncate(), off, SeenFrom::Vehicle);
                lift.extend([(role, arm), (pad_role, pad)]);
                let off = roam.of_the_vehicle(point);
                in_bay.extend(wherever(bay, corner, point.truncate(), off, SeenFrom::Bay));
            }
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
            in_bay,
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

/// The arm and its pad at each tooth at which they may come to rest, and at none.
fn at_rest(bay: &Bay, reach: &arms::ArmReach) -> (Vec<Body>, Vec<Body>) {
    resting_swings(reach)
        .into_iter()
        .map(|swing| {
            let [arm, pad] = arms::arm_and_pad(bay, reach.corner, swing, reach.reach_m);
            (Body::exact(&arm), Body::exact(&pad))
        })
        .unzip()
}

/// From where arms are looked at that go with a vehicle which may stand elsewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SeenFrom {
    /// From the vehicle: that stays where the piece's middle has it, and the pivot goes about.
    Vehicle,
    /// From the bay: the pivot stays, and the lift point goes about.
    Bay,
}

/// The arm and its pad wherever they may come to rest, while the one end goes about by `off` each way
/// and the other stays.
///
/// The pad is under its point but for the tooth, by which the arm is turned at most a whole pitch
/// either way. For one turn the pad's place is a linear function of either end's, so that the hull over
/// the corners of where that may be holds all between; what turns bulges out of it by no more than an
/// arc off its chord.
fn wherever(bay: &Bay, corner: Corner, point: DVec2, off: DVec2, from: SeenFrom) -> [Body; 2] {
    let arm = &bay.lift.arms[corner.index()];
    let tooth = arm.tooth.map_or(0.0, |tooth| tooth.rad().max(0.0));
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    let mut longest = arm.longest.m();
    let (middle, _) = arms::toward(bay, corner, point);
    let (mut arm_bodies, mut pad_bodies) = (Vec::new(), Vec::new());
    for (x, y) in [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)] {
        let off = off * DVec2::new(x, y);
        // The corner may lie beyond what the arm reaches, where no place of the vehicle does: its
        // limits must not draw the hull in. Where a place does the arm is told not to reach.
        let (swing, reach_m) = arms::toward(bay, corner, point + off);
        let swing = swing - TAU * ((swing - middle) / TAU).round();
        longest = longest.max(reach_m);
        let back = match from {
            SeenFrom::Vehicle => -off.extend(0.0),
            SeenFrom::Bay => DVec3::ZERO,
        };
        for swing in [swing - tooth, swing + tooth] {
            least = least.min(swing);
            most = most.max(swing);
            let [arm, pad] = arms::arm_and_pad(bay, corner, swing, reach_m);
            arm_bodies.push(Body::exact(&arm).moved(back));
            pad_bodies.push(Body::exact(&pad).moved(back));
        }
    }
    let past = bay.lift.pad.diameter.max(arm.section_width).m();
    let bulge = chord_bulge_m(longest + past, most - least);
    [arm_bodies, pad_bodies].map(|bodies| Body::hull(bodies).widened(DVec3::new(bulge, bulge, 0.0)))
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

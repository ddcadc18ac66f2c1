//! The vehicle in a piece of the parking box, its parts, and the lift's parts as they are wanted for
//! it.

use std::ops::Range;
use std::rc::Rc;

use glam::{DVec2, DVec3};

use super::super::arm_bodies::resting_swings;
use super::super::body::{Body, higher, lower};
use super::super::movers::MoverError;
use super::pairs::{KINDS, kind};
use super::piece::{Piece, Roam};
use super::swung::{SeenFrom, Swung};
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

    /// Its highest place, vehicle frame.
    pub(super) fn highest(&self) -> f64 {
        self.middle.z + self.half.z
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

    /// The box about a body.
    pub(super) fn of(body: &Body) -> Self {
        Self {
            low: body.low(),
            high: body.high(),
        }
    }

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

    /// The same seen from above.
    pub(super) fn meets_in_plan(self, other: Self) -> bool {
        let flat = |at: DVec3| at.truncate();
        !(flat(self.high).cmplt(flat(other.low)).any()
            || flat(self.low).cmpgt(flat(other.high)).any())
    }

    /// Asked this way round, what is no number is not apart.
    pub(super) fn meets(self, other: Self) -> bool {
        !(self.high.cmplt(other.low).any() || self.low.cmpgt(other.high).any())
    }
}

/// A lift part over a piece of the parking box.
pub(super) enum Made<'a> {
    /// A body, as seen from the vehicle in the piece's middle.
    Known(Body),
    /// An arm (0) or a pad (1) that goes about: as seen from the vehicle, and in the bay.
    Swung(Rc<[Swung<'a>; 2]>, usize),
}

/// The vehicle in a piece of the parking box, and the lift's parts as they are wanted for it.
pub(super) struct Parked<'a> {
    /// The vehicle at rest in the middle place.
    pub(super) rest: Pose,
    /// How far the others are from that.
    pub(super) roam: Roam,
    pub(super) contact: attitude::Contact,
    /// Carriages, arms and pads at travel 0, kind by kind.
    pub(super) lift: Vec<(Role, Made<'a>)>,
    /// The carriages as they are in the bay, to look at with other parts of the lift.
    carriages: Vec<Body>,
    /// Which of them are of each kind.
    pub(super) of_kind: [Range<usize>; KINDS],
}

impl<'a> Parked<'a> {
    pub(super) fn new(bay: &'a Bay, piece: Piece) -> Result<Self, MoverError> {
        let rest = attitude::at_rest(bay, piece.middle)?;
        let roam = Roam::new(bay, piece, rest);
        let mut lift: Vec<(Role, Made<'a>)> = Vec::with_capacity(KINDS);
        let mut carriages = Vec::with_capacity(2);
        for solid in posts::carriages(bay) {
            let body = Body::exact(&solid);
            carriages.push(body.clone());
            let around = roam
                .of_the_lift(body.low())
                .max(roam.of_the_lift(body.high()));
            let across = (body.high() - body.low()).truncate().length();
            let around = around + DVec2::splat(roam.turned_m(across));
            let body = body.widened(around.extend(0.0));
            lift.push((solid.role, Made::Known(body)));
        }
        for corner in Corner::ALL {
            let point = point_m(bay, corner, rest);
            let (role, pad_role) = (Role::Arm(corner), Role::Pad(corner));
            if roam.is_place() {
                let reach = arms::reach_to(bay, corner, point.truncate());
                let (arms, pads) = at_rest(bay, &reach);
                lift.extend(arms.into_iter().map(|arm| (role, Made::Known(arm))));
                lift.extend(pads.into_iter().map(|pad| (pad_role, Made::Known(pad))));
            } else {
                let swung = [SeenFrom::Vehicle, SeenFrom::Bay];
                let swung = Rc::new(swung.map(|from| Swung::new(bay, corner, point, &roam, from)));
                lift.push((role, Made::Swung(swung.clone(), 0)));
                lift.push((pad_role, Made::Swung(swung, 1)));
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
            carriages,
            contact: attitude::contact_from(bay, rest)?,
            lift,
        })
    }

    /// A lift part as it is over the whole piece, seen from the vehicle in its middle.
    pub(super) fn body(&self, index: usize) -> &Body {
        match &self.lift[index].1 {
            Made::Known(body) => body,
            Made::Swung(arm_and_pad, which) => &arm_and_pad[0].bodies()[*which],
        }
    }

    /// A box about it, which costs less.
    pub(super) fn about(&self, index: usize) -> About {
        match &self.lift[index].1 {
            Made::Known(body) => About::of(body),
            Made::Swung(arm_and_pad, which) => arm_and_pad[0].abouts()[*which],
        }
    }

    /// A lift part as it is in the bay, to look at with another.
    pub(super) fn in_bay(&self, index: usize) -> &Body {
        match &self.lift[index] {
            (Role::Carriage(_), _) => &self.carriages[index],
            // In one place it is where it is, from wherever it is looked at.
            (_, Made::Known(body)) => body,
            (_, Made::Swung(arm_and_pad, which)) => &arm_and_pad[1].bodies()[*which],
        }
    }

    /// A box about it, which costs less.
    pub(super) fn about_in_bay(&self, index: usize) -> About {
        match &self.lift[index] {
            (Role::Carriage(_), _) => About::of(&self.carriages[index]),
            (_, Made::Known(body)) => About::of(body),
            (_, Made::Swung(arm_and_pad, which)) => arm_and_pad[1].abouts()[*which],
        }
    }
}

/// Where a corner's lift point is with the vehicle on its tyres, bay frame.
fn point_m(bay: &Bay, corner: Corner, rest: Pose) -> DVec3 {
    let index = vehicle::lift_point_at(corner, bay.parking.facing);
    rest.point(vehicle::lift_point_m(&bay.vehicle, index))
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

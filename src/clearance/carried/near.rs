//! Which lift parts may come near which vehicle parts, and each other, wherever the vehicle stands?
//!
//! Boxes about every place at once: what they keep apart is apart in each, so that most pairs are
//! told far from each other once and not place by place.

use std::cell::OnceCell;

use glam::{DMat3, DVec3};

use super::super::body::{higher, lower};
use super::Scene;
use super::parked::{About, Part, are_strangers};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{Pose, Role};

/// Every kind of lift part that is looked at, in the order in which they are made.
const ROLES: [Role; KINDS - 1] = [
    Role::Carriage(Side::Left),
    Role::Carriage(Side::Right),
    Role::Arm(Corner::ALL[0]),
    Role::Pad(Corner::ALL[0]),
    Role::Arm(Corner::ALL[1]),
    Role::Pad(Corner::ALL[1]),
    Role::Arm(Corner::ALL[2]),
    Role::Pad(Corner::ALL[2]),
    Role::Arm(Corner::ALL[3]),
    Role::Pad(Corner::ALL[3]),
];

/// How many kinds there are, with one for what is none of them.
pub(super) const KINDS: usize = 11;

/// Which kind a lift part is, by number.
pub(super) fn kind(role: Role) -> usize {
    let known = ROLES.iter().position(|known| *known == role);
    known.unwrap_or(ROLES.len())
}

/// What may come near to what, in any of the scenes.
pub(super) struct MayMeet {
    /// For each vehicle part the kinds of lift part, by the bits of their numbers.
    vehicle: Vec<u16>,
    /// For each kind of lift part the other kinds.
    each_other: [u16; KINDS],
    /// For each vehicle part whether a corner's own lift point is on it, once asked.
    holds: Vec<[OnceCell<bool>; 4]>,
}

impl MayMeet {
    pub(super) fn new(bay: &Bay, parts: &[Part], scenes: &[Scene<'_>]) -> Self {
        let mut boxes = [About::NOTHING; KINDS];
        let mut climb_m: f64 = 0.0;
        for scene in scenes {
            let climb = scene.longest_climb_m();
            climb_m = if climb > climb_m || climb.is_nan() {
                climb
            } else {
                climb_m
            };
            for (about, of_kind) in boxes.iter_mut().zip(&scene.parked.of_kind) {
                for index in of_kind.clone() {
                    *about = about.and(scene.about(index));
                }
            }
        }
        let climbing = boxes.map(|about| about.climbing(climb_m));
        let middle = middle_of(parts);
        let standing = Places::new(middle, scenes.iter().map(|scene| scene.parked.rest));
        let carried = scenes.iter().flat_map(|scene| &scene.attitudes);
        let carried = Places::new(
            middle,
            carried.map(|attitude| attitude.bay_from_vehicle_at_zero),
        );
        let vehicle = parts
            .iter()
            .map(|part| {
                let standing = standing.about(part, 0.0);
                let carried = carried.about(part, part.droop_m(bay));
                (0..KINDS)
                    .filter(|&i| standing.meets(climbing[i]) || carried.meets(boxes[i]))
                    .fold(0, |bits, i| bits | 1 << i)
            })
            .collect();
        let each_other = std::array::from_fn(|i| {
            let are_strangers = |j: usize| match (ROLES.get(i), ROLES.get(j)) {
                (Some(one), Some(other)) => are_strangers(*one, *other),
                _ => false,
            };
            (0..KINDS)
                .filter(|&j| are_strangers(j) && boxes[i].meets(boxes[j]))
                .fold(0, |bits, j| bits | 1 << j)
        });
        Self {
            vehicle,
            each_other,
            holds: parts.iter().map(|_| Default::default()).collect(),
        }
    }

    /// Nothing is told apart from anything.
    #[cfg(test)]
    pub(super) fn anything(parts: usize) -> Self {
        let strangers = |i: usize, j: usize| match (ROLES.get(i), ROLES.get(j)) {
            (Some(one), Some(other)) => are_strangers(*one, *other),
            _ => false,
        };
        Self {
            vehicle: vec![u16::MAX; parts],
            each_other: std::array::from_fn(|i| {
                let others = (0..KINDS).filter(|&j| strangers(i, j));
                others.fold(0, |bits, j| bits | 1 << j)
            }),
            holds: (0..parts).map(|_| Default::default()).collect(),
        }
    }

    /// Whether a corner's own lift point is on a vehicle part: the same wherever the vehicle stands,
    /// so that it is asked once.
    pub(super) fn holds(&self, part: usize, corner: Corner, ask: impl FnOnce() -> bool) -> bool {
        *self.holds[part][corner.index()].get_or_init(ask)
    }

    /// Whether a vehicle part may come near any lift part.
    pub(super) fn any(&self, part: usize) -> bool {
        self.vehicle[part] != 0
    }

    /// Whether a vehicle part may come near a kind of lift part.
    pub(super) fn vehicle(&self, part: usize, kind: usize) -> bool {
        self.vehicle[part] >> kind & 1 == 1
    }

    /// Whether two kinds of lift part that are strangers may come near each other.
    pub(super) fn each_other(&self, one: usize, other: usize) -> bool {
        self.each_other[one] >> other & 1 == 1
    }
}

/// The middle of the box about all parts, vehicle frame.
fn middle_of(parts: &[Part]) -> DVec3 {
    let about = parts
        .iter()
        .map(Part::about_itself)
        .fold(About::NOTHING, About::and);
    if parts.is_empty() {
        DVec3::ZERO
    } else {
        (about.low + about.high) * 0.5
    }
}

/// Where the vehicle may stand, all places at once: every pose takes a point `x` to `M (x - middle)
/// + p`, where no entry of `M` is farther from `turn` than `turn_off`, and none of `p` from `place`
/// than `place_off`.
struct Places {
    middle: DVec3,
    turn: DMat3,
    turn_off: DMat3,
    place: DVec3,
    place_off: DVec3,
}

impl Places {
    fn new(middle: DVec3, poses: impl Iterator<Item = Pose>) -> Self {
        let columns = |pose: Pose| {
            let turn = DMat3::from_quat(pose.rotation);
            [turn.x_axis, turn.y_axis, turn.z_axis, pose.point(middle)]
        };
        let mut least = [DVec3::INFINITY; 4];
        let mut most = [DVec3::NEG_INFINITY; 4];
        for pose in poses {
            for (i, column) in columns(pose).into_iter().enumerate() {
                least[i] = lower(least[i], column);
                most[i] = higher(most[i], column);
            }
        }
        let between = |i: usize| (least[i] + most[i]) * 0.5;
        let off = |i: usize| (most[i] - least[i]) * 0.5;
        Self {
            middle,
            turn: DMat3::from_cols(between(0), between(1), between(2)),
            turn_off: DMat3::from_cols(off(0), off(1), off(2)),
            place: between(3),
            place_off: off(3),
        }
    }

    /// The box about a part in any of the places, hanging `droop` lower or not: a little larger, so
    /// that rounding leaves nothing outside.
    fn about(&self, part: &Part, droop: f64) -> About {
        const ROUNDING_M: f64 = 1e-9;
        let itself = part.about_itself();
        // It hangs along the vehicle's own upright.
        let hangs = DVec3::NEG_Z * droop;
        let (low, high) = (
            lower(itself.low, itself.low + hangs),
            higher(itself.high, itself.high + hangs),
        );
        let from = (low + high) * 0.5 - self.middle;
        let half = (high - low) * 0.5;
        let all_off = from.abs() + half;
        let sized = |turn: DMat3, by: DVec3| {
            turn.x_axis.abs() * by.x + turn.y_axis.abs() * by.y + turn.z_axis.abs() * by.z
        };
        let reach = sized(self.turn, half)
            + sized(self.turn_off, all_off)
            + self.place_off
            + DVec3::splat(ROUNDING_M);
        let at = self.turn * from + self.place;
        About {
            low: at - reach,
            high: at + reach,
        }
    }
}

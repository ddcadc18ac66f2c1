//! Which lift parts may come near which vehicle parts, and each other, wherever the vehicle stands?
//!
//! Boxes about every place at once: what they keep apart is apart in each, so that most pairs are
//! told far from each other once and not place by place.

use std::cell::OnceCell;

use super::Scene;
use super::parked::{About, Part, are_strangers};
use crate::bay::{Bay, Corner, Side};
use crate::solids::Role;

/// Every kind of lift part that is looked at.
const ROLES: [Role; 10] = [
    Role::Carriage(Side::Left),
    Role::Carriage(Side::Right),
    Role::Arm(Corner::ALL[0]),
    Role::Arm(Corner::ALL[1]),
    Role::Arm(Corner::ALL[2]),
    Role::Arm(Corner::ALL[3]),
    Role::Pad(Corner::ALL[0]),
    Role::Pad(Corner::ALL[1]),
    Role::Pad(Corner::ALL[2]),
    Role::Pad(Corner::ALL[3]),
];

/// The bit that stands for a kind of lift part; all bits for what is none, so that it is looked at.
fn bit(role: Role) -> u16 {
    ROLES
        .iter()
        .position(|known| *known == role)
        .map_or(u16::MAX, |index| 1 << index)
}

/// What may come near to what, in any of the scenes.
pub(super) struct MayMeet {
    /// For each vehicle part the kinds of lift part.
    vehicle: Vec<u16>,
    /// For each kind of lift part the other kinds.
    each_other: [u16; ROLES.len()],
    /// For each vehicle part whether a corner's own lift point is on it, once asked.
    holds: Vec<[OnceCell<bool>; 4]>,
}

impl MayMeet {
    pub(super) fn new(bay: &Bay, parts: &[Part], scenes: &[Scene<'_>]) -> Self {
        let mut boxes = [About::NOTHING; ROLES.len()];
        let mut climb_m: f64 = 0.0;
        for scene in scenes {
            let climb = scene.longest_climb_m();
            climb_m = if climb > climb_m || climb.is_nan() {
                climb
            } else {
                climb_m
            };
            for (index, (solid, _)) in scene.parked.lift.iter().enumerate() {
                for (role, about) in ROLES.iter().zip(&mut boxes) {
                    if bit(solid.role) & bit(*role) != 0 {
                        *about = about.and(scene.about(index));
                    }
                }
            }
        }
        let climbing = boxes.map(|about| about.climbing(climb_m));
        let vehicle = parts
            .iter()
            .map(|part| {
                let droop = part.droop_m(bay);
                let (mut standing, mut carried) = (About::NOTHING, About::NOTHING);
                for scene in scenes {
                    standing = standing.and(part.about(scene.parked.rest, 0.0));
                    for attitude in &scene.attitudes {
                        let pose = attitude.bay_from_vehicle_at_zero;
                        carried = carried.and(part.about(pose, droop));
                    }
                }
                (0..ROLES.len())
                    .filter(|&i| standing.meets(climbing[i]) || carried.meets(boxes[i]))
                    .fold(0, |bits, i| bits | 1 << i)
            })
            .collect();
        let each_other = std::array::from_fn(|i| {
            (0..ROLES.len())
                .filter(|&j| are_strangers(ROLES[i], ROLES[j]) && boxes[i].meets(boxes[j]))
                .fold(0, |bits, j| bits | 1 << j)
        });
        Self {
            vehicle,
            each_other,
            holds: parts.iter().map(|_| Default::default()).collect(),
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
    pub(super) fn vehicle(&self, part: usize, role: Role) -> bool {
        self.vehicle[part] & bit(role) != 0
    }

    /// Whether two kinds of lift part that are strangers may come near each other.
    pub(super) fn each_other(&self, one: Role, other: Role) -> bool {
        ROLES
            .iter()
            .zip(self.each_other)
            .any(|(role, others)| *role == one && others & bit(other) != 0)
    }
}

//! Which lift parts may come near which vehicle parts, and each other, wherever the vehicle stands?
//!
//! Boxes about every place at once: what they keep apart is apart in each, so that most pairs are
//! told far from each other once and not place by place.

use glam::DVec3;

use super::super::body::{higher, lower};
use super::Scene;
use super::parked::{Part, are_strangers};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{Pose, Role};

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
pub(super) fn bit(role: Role) -> u16 {
    ROLES
        .iter()
        .position(|known| *known == role)
        .map_or(u16::MAX, |index| 1 << index)
}

/// A box about what was added to it; what is no number stays so, and is near to everything.
#[derive(Debug, Clone, Copy)]
struct About {
    low: DVec3,
    high: DVec3,
}

impl About {
    const NOTHING: Self = Self {
        low: DVec3::INFINITY,
        high: DVec3::NEG_INFINITY,
    };

    fn add(&mut self, low: DVec3, high: DVec3) {
        self.low = lower(self.low, low);
        self.high = higher(self.high, high);
    }

    fn widened(self, reach: f64) -> Self {
        Self {
            low: self.low - DVec3::splat(reach),
            high: self.high + DVec3::splat(reach),
        }
    }

    /// Asked this way round, what is no number is not apart.
    fn meets(self, other: Self) -> bool {
        !(self.high.cmplt(other.low).any() || self.low.cmpgt(other.high).any())
    }
}

/// What may come near to what, in any of the scenes.
pub(super) struct MayMeet {
    /// For each vehicle part the kinds of lift part.
    vehicle: Vec<u16>,
    /// For each kind of lift part the other kinds.
    each_other: [u16; ROLES.len()],
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
                let (low, high) = scene.box_of(index);
                for (role, about) in ROLES.iter().zip(&mut boxes) {
                    if bit(solid.role) & bit(*role) != 0 {
                        about.add(low, high);
                    }
                }
            }
        }
        let climbing = boxes.map(|about| About {
            high: about.high + DVec3::Z * climb_m,
            ..about
        });
        let vehicle = parts
            .iter()
            .map(|part| {
                let about = |poses: &mut dyn Iterator<Item = Pose>, reach: f64| {
                    let mut about = About::NOTHING;
                    for pose in poses {
                        let middle = pose.point(part.middle);
                        about.add(middle, middle);
                    }
                    about.widened(part.radius + reach)
                };
                let standing = about(&mut scenes.iter().map(|scene| scene.parked.rest), 0.0);
                let mut carried = scenes
                    .iter()
                    .flat_map(|scene| &scene.attitudes)
                    .map(|attitude| attitude.bay_from_vehicle_at_zero);
                let carried = about(&mut carried, part.droop_m(bay));
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
        }
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

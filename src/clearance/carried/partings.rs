//! Which direction parted two parts the last time?
//!
//! The vehicle's places differ by centimetres, so that a direction along which two parts were apart
//! in one place mostly parts them in the next: two looks instead of a search. It is never taken on
//! trust: the room along it is measured anew each time.

use std::cell::{Cell, OnceCell};

use glam::DVec3;

use super::super::gap::PLAINLY_M;
use super::pairs::{KINDS, kind};
use crate::solids::{Pose, Role, Shape};

/// Of one vehicle part; most are never near enough to any lift part to be asked for.
type OfPart = [[Cell<DVec3>; 2]; KINDS];

/// For each vehicle part and kind of lift part the direction from the lift part: while the vehicle
/// stands on its tyres, and once it is carried.
pub(super) struct Partings {
    vehicle: Vec<OnceCell<Box<OfPart>>>,
    each_other: [[Cell<DVec3>; KINDS]; KINDS],
}

impl Partings {
    /// Of so many vehicle parts; nothing known.
    pub(super) fn new(parts: usize) -> Self {
        Self {
            vehicle: vec![OnceCell::new(); parts],
            each_other: Default::default(),
        }
    }

    /// Of a vehicle part that stands on its tyres.
    pub(super) fn standing(&self, part: usize, lift: Role) -> &Cell<DVec3> {
        &self.of_part(part)[kind(lift)][0]
    }

    /// Of a vehicle part on the pads.
    pub(super) fn carried(&self, part: usize, lift: Role) -> &Cell<DVec3> {
        &self.of_part(part)[kind(lift)][1]
    }

    fn of_part(&self, part: usize) -> &OfPart {
        self.vehicle[part].get_or_init(Box::default)
    }

    /// Of two lift parts.
    pub(super) fn each_other(&self, one: Role, other: Role) -> &Cell<DVec3> {
        &self.each_other[kind(one)][kind(other)]
    }
}

/// Whether the room along a direction shows two parts apart. Nothing known (no direction) shows
/// nothing, and neither does what is no number.
pub(super) fn is_parted(direction: DVec3, room_m: impl Fn(DVec3) -> f64) -> bool {
    direction != DVec3::ZERO && room_m(direction) > PLAINLY_M
}

/// How far a posed shape reaches along a unit vector, metres from the origin.
pub(super) fn reach_m(shape: &Shape, pose: Pose, direction: DVec3) -> f64 {
    let own = pose.rotation.inverse() * direction;
    let from_middle =
        match shape {
            Shape::Box { half } => half.dot(own.abs()),
            Shape::Cylinder {
                radius,
                half_height,
            } => radius * own.truncate().length() + half_height * own.z.abs(),
            Shape::Prism { vertices } => vertices.iter().map(|vertex| vertex.dot(own)).fold(
                f64::NEG_INFINITY,
                |most, dot| {
                    if dot > most || dot.is_nan() {
                        dot
                    } else {
                        most
                    }
                },
            ),
        };
    pose.translation.dot(direction) + from_middle
}

#[cfg(test)]
mod tests {
    use glam::DQuat;
    use proptest::prelude::*;

    use super::*;
    use crate::clearance::body::Body;

    fn shapes() -> impl Strategy<Value = Shape> {
        let size = 0.01..2.0_f64;
        prop_oneof![
            (size.clone(), size.clone(), size.clone()).prop_map(|(x, y, z)| Shape::Box {
                half: DVec3::new(x, y, z)
            }),
            (size.clone(), size).prop_map(|(radius, half_height)| Shape::Cylinder {
                radius,
                half_height
            }),
            proptest::collection::vec((-2.0..2.0_f64, -2.0..2.0_f64, -2.0..2.0_f64), 1..12)
                .prop_map(|points| Shape::Prism {
                    vertices: points.into_iter().map(DVec3::from).collect()
                }),
        ]
    }

    proptest! {
        /// A second way to the same number: the body's farthest point.
        #[test]
        fn a_shape_reaches_as_far_as_its_body(
            shape in shapes(),
            axis in (-1.0..1.0_f64, -1.0..1.0_f64, -1.0..1.0_f64),
            angle in -3.0..3.0_f64,
            at in (-5.0..5.0_f64, -5.0..5.0_f64, -5.0..5.0_f64),
            toward in (-1.0..1.0_f64, -1.0..1.0_f64, -1.0..1.0_f64),
        ) {
            let unit = |v: (f64, f64, f64)| DVec3::from(v).try_normalize().unwrap_or(DVec3::Z);
            let pose = Pose::new(DQuat::from_axis_angle(unit(axis), angle), DVec3::from(at));
            let direction = unit(toward);
            let body = Body::of(&shape, &[pose], DVec3::ZERO);
            let found = reach_m(&shape, pose, direction);
            prop_assert!((found - body.reach(direction)).abs() < 1e-9);
        }
    }

    #[test]
    fn what_is_not_known_or_no_number_parts_nothing() {
        assert!(!is_parted(DVec3::ZERO, |_| 1.0));
        assert!(!is_parted(DVec3::X, |_| f64::NAN));
        assert!(!is_parted(DVec3::X, |_| PLAINLY_M));
        assert!(is_parted(DVec3::X, |_| 2.0 * PLAINLY_M));
    }
}

//! How do places, turns and colours of the bay become the engine's?
//!
//! The only place where `f64` becomes `f32`. The axes are the bay's own (`z` up); places are told
//! from the middle of the room's floor, so that single precision is good to a thousandth of a
//! millimetre.

use bevy::math::{Quat, Vec3};
use bevy::prelude::{Color, LinearRgba, Transform};
use glam::{DQuat, DVec3};

use crate::bay::Bay;
use crate::drawing::palette::Colour;
use crate::solids::Pose;

/// Where the engine's origin lies in the bay, metres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Origin {
    in_bay: DVec3,
}

impl Origin {
    /// The middle of the room's floor.
    #[must_use]
    pub fn of(bay: &Bay) -> Self {
        let middle = -bay.garage.opening.offset.m();
        Self {
            in_bay: DVec3::new(middle, bay.garage.depth.m() * 0.5, 0.0),
        }
    }

    /// A place of the bay.
    #[must_use]
    pub fn place(&self, point: DVec3) -> Vec3 {
        vector(point - self.in_bay)
    }

    /// A pose in the bay.
    #[must_use]
    pub fn transform(&self, pose: &Pose) -> Transform {
        Transform::from_translation(self.place(pose.translation))
            .with_rotation(rotation(pose.rotation))
    }
}

/// A direction or a size, or a place in a solid's own frame.
#[must_use]
pub fn vector(v: DVec3) -> Vec3 {
    Vec3::from_array(v.to_array().map(|x| x as f32))
}

/// A turn.
#[must_use]
pub fn rotation(q: DQuat) -> Quat {
    Quat::from_array(q.to_array().map(|x| x as f32))
}

/// A colour.
#[must_use]
pub fn colour(colour: Colour) -> Color {
    Color::srgb_u8(colour.0, colour.1, colour.2)
}

/// A colour as light.
#[must_use]
pub fn light(colour_of: Colour) -> LinearRgba {
    colour(colour_of).to_linear()
}

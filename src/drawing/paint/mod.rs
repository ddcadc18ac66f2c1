//! Which colour does each part of a solid's surface have?
//!
//! What makes a vehicle recognisable (glass, wheels, lamps, gaps) is painted on the faces of its
//! solids: faces are split where a [`Decal`] begins, and nothing is added to them.

mod bay;
mod decal;
mod vehicle;

pub use bay::{Painting, paint_of};
pub use decal::{Decal, Patch, painted};
pub use vehicle::{Livery, wheel_decals};

use crate::drawing::palette::Colour;

/// How a surface takes the light.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Finish {
    /// Like chalk.
    Matt,
    /// Like paint or glass.
    Gloss,
    /// It shines by itself.
    Glow,
}

impl Finish {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Matt, Self::Gloss, Self::Glow];
}

/// A colour with its finish.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Paint {
    /// The colour.
    pub colour: Colour,
    /// The finish.
    pub finish: Finish,
}

impl Paint {
    /// Like chalk.
    #[must_use]
    pub const fn matt(colour: Colour) -> Self {
        Self {
            colour,
            finish: Finish::Matt,
        }
    }

    /// Like paint or glass.
    #[must_use]
    pub const fn gloss(colour: Colour) -> Self {
        Self {
            colour,
            finish: Finish::Gloss,
        }
    }

    /// Shining by itself.
    #[must_use]
    pub const fn glow(colour: Colour) -> Self {
        Self {
            colour,
            finish: Finish::Glow,
        }
    }
}

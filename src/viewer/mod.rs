//! How does the bay look: in a window, and in a picture?
//!
//! Plugins for the engine, one per concern. They translate the state of a [`crate::panels::Desk`]
//! into what is drawn and hold no rule of the trade. Built without the feature `viewer`, the same
//! functions answer with a clear error.

#[cfg(feature = "viewer")]
pub mod capture;
#[cfg(feature = "viewer")]
pub mod convert;
mod day;
#[cfg(feature = "viewer")]
pub mod engine;
pub mod order;
#[cfg(feature = "viewer")]
pub mod probe;
#[cfg(feature = "viewer")]
pub mod scene;
#[cfg(feature = "viewer")]
mod window;
#[cfg(not(feature = "viewer"))]
mod without;

use std::fmt;

#[cfg(feature = "viewer")]
pub(crate) use crate::drawing::{facets, paint};
#[cfg(feature = "viewer")]
pub use capture::{beside, make as picture};
pub use day::today;
#[cfg(feature = "viewer")]
pub use window::{no_window, open, open_beside, open_compared, trace};
#[cfg(not(feature = "viewer"))]
pub use without::{beside, no_window, open, open_beside, picture, trace};

/// Why nothing could be drawn; for people, with what to do about it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// What is missing or went wrong.
    pub what: String,
    /// What to install or do.
    pub help: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.what)
    }
}

impl std::error::Error for Fault {}

/// The desk as a resource of the engine.
#[cfg(feature = "viewer")]
#[derive(Debug, bevy::ecs::resource::Resource)]
pub struct OpenDesk(pub crate::panels::Desk);

/// What the machine is asked to draw.
#[cfg(feature = "viewer")]
#[derive(Debug, Clone, Copy, PartialEq, Eq, bevy::ecs::resource::Resource)]
pub struct Quality {
    /// Soft shadows.
    pub shadows: bool,
    /// Samples a pixel against stairs along edges: 1 or 4.
    pub samples: u32,
}

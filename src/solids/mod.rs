//! The one list of named convex solids: a builder per thing, and the attitude on the pads.
//!
//! Fixed solids stay where they are. Moving solids follow the carriage straight up: carriages,
//! arms and pads from travel 0; the vehicle's body from the travel at which the pads carry it;
//! its wheels from the travel at which the droop of their axle is spent.

pub mod arms;
pub mod attitude;
mod body;
pub mod door;
pub mod export;
pub mod list;
pub mod obstacles;
pub mod opener;
mod outline;
pub mod posts;
pub mod raise;
pub mod shell;
mod solid;
#[cfg(test)]
pub(crate) mod test_bay;
pub mod vehicle;

pub(crate) use outline::convex_outline;
pub use solid::{Layer, Pose, Role, Shape, Solid};

/// Where the door is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DoorTravel {
    /// Shut.
    Shut,
    /// Fully open.
    Open,
    /// Part of the way: 0 is shut, 1 is open.
    At(f64),
}

impl DoorTravel {
    /// 0 for shut, 1 for open, in between as given (held to that range).
    #[must_use]
    pub fn fraction(self) -> f64 {
        match self {
            Self::Shut => 0.0,
            Self::Open => 1.0,
            Self::At(s) => s.clamp(0.0, 1.0),
        }
    }
}

/// How far the vehicle stands from its wanted place: one corner of the parking box.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ParkingError {
    /// To the right (+x), metres.
    pub across_m: f64,
    /// Into the bay (+y), metres.
    pub along_m: f64,
    /// Counter-clockwise from above, radians.
    pub yaw_rad: f64,
}

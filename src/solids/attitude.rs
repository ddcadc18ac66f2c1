//! How the vehicle stands: on its tyres, and on the four pads.
//!
//! The body is rigid and turns only as far as its heights ask: pitch and roll about the level
//! position, the heading kept. Lift points are points and pads are points under them.

mod balance;
mod contact;
mod on_pads;
mod rest;
#[cfg(test)]
mod tests;

pub use balance::{Balance, centre_of_gravity, centre_of_gravity_with};
pub(crate) use contact::contact_from;
pub use contact::{Contact, contact};
pub(crate) use on_pads::attitudes_from;
pub use on_pads::{Attitude, attitudes};
pub use rest::at_rest;

use glam::{DQuat, DVec3};

/// Why it cannot be said how the vehicle stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StanceError {
    /// The centre of gravity is to be lined up, but no axle loads are given.
    NoAxleLoads,
    /// Axle loads and named masses add up to nothing or less.
    NoMass,
    /// The lift points span no plane: three of any four lie in one line.
    LiftPointsInLine,
    /// The pads differ by more than the distance between their lift points.
    PadsTooUneven,
    /// A value that went into it is not a number.
    NotANumber,
}

impl std::fmt::Display for StanceError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::NoAxleLoads => {
                "the centre of gravity is to be lined up, but no axle loads are given"
            }
            Self::NoMass => "axle loads and named masses add up to nothing",
            Self::LiftPointsInLine => "the lift points lie in one line and span no plane",
            Self::PadsTooUneven => {
                "the pads differ in height by more than their lift points do in plan"
            }
            Self::NotANumber => "a value in the vehicle's place is not a number",
        })
    }
}

impl std::error::Error for StanceError {}

/// The least rotation that brings the unit vector `up` (its `z` positive) to +z.
///
/// Written out rather than taken from a library: the shortcut that libraries take for nearly equal
/// vectors costs a tenth of a micrometre over the length of a vehicle.
fn levelling(up: DVec3) -> DQuat {
    let axis = up.cross(DVec3::Z);
    DQuat::from_xyzw(axis.x, axis.y, axis.z, 1.0 + up.z).normalize()
}

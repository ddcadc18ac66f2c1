//! Does the slab under a base plate carry what comes down on it?
//!
//! A screening by published methods: bearing and punching by the concrete code, bending of a slab
//! on ground by Westergaard's formulas.

mod bend;
pub mod on_ground;
pub mod plate;
pub mod point;
pub mod press;
mod pressed;
mod section;
mod tension;
#[cfg(test)]
mod tests;
pub mod ultimate;
mod under;

pub use bend::{SAFETY, TAKEN_PCI};
pub(super) use section::{section, stays_uncracked};
pub use tension::EDGE_REACH;

//! Does the slab under a base plate carry what comes down on it?
//!
//! A screening by published methods: bearing and punching by the concrete code, bending of a slab
//! on ground by Westergaard's formulas.

pub mod on_ground;
pub mod plate;
pub mod ultimate;

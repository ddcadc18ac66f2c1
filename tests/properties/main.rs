//! Is the clearance engine never optimistic?
//!
//! Random bays and random true worlds against methods written separately from the engine: no
//! geometry library, no body or gap code of the engine. Seeds are fixed; every failure names its
//! own.

mod containment;
mod distance;
mod random_bays;
mod rng;
mod scenes;
mod true_worlds;

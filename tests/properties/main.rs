//! Is the clearance engine never optimistic?
//!
//! Random bays and random true worlds against methods written separately from the engine: no
//! geometry library, no body or gap code of the engine. Seeds are fixed; every failure names its
//! own.
#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

mod containment;
mod distance;
mod monotone;
mod probe;
mod probe_pairs;
mod random_bays;
mod rng;
mod scenes;
mod true_worlds;

//! Pictures of the shipped scenes, drawn on the processor: do they look as they did, and do they
//! show what is so?
//!
//! The engine is started once; tests ask a thread of its own for pictures. With
//! `BAYRISE_UPDATE_PICTURES=1` in the environment the stored pictures are written anew: look at
//! every one of them before keeping it.

// A failed unwrap in what the tests share is a failed test.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::manual_is_multiple_of
)]

mod facts;
mod likeness;
mod shots;
mod stored;

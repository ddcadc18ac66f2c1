//! The window as a person meets it: on a real display (a virtual one), by mouse and keyboard.
//!
//! Needs `Xvfb` and `xdotool`. Where they are missing the tests say so and pass, except where the
//! environment variable `CI` is set. Pictures of the screen are left in the build folder.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests may fail the test too"
)]

mod beside;
mod dragging;
mod kept;
mod program;
mod refusals;
mod screen;
mod session;

//! How long does a person wait?
//!
//! In a test binary of its own: cargo runs those one after another, so that no other test takes
//! the processor meanwhile. Measured in the release profile only; a debug build says nothing of it.
#![cfg(not(debug_assertions))]
#![allow(clippy::unwrap_used)] // a failed unwrap here is a failed test

use std::time::{Duration, Instant};

/// The whole process, from the file to the last line, within the 15 ms that make it feel instant.
/// Judged by the quickest of sixty runs, so that a busy machine does not fail it.
#[test]
fn a_check_answers_within_fifteen_milliseconds() {
    let scene = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/tall-pickup.ron");
    let quickest = (0..60)
        .map(|_| {
            let start = Instant::now();
            let output = std::process::Command::new(env!("CARGO_BIN_EXE_bayrise"))
                .args(["check", scene])
                .output()
                .unwrap();
            assert!(output.status.success());
            start.elapsed()
        })
        .min()
        .unwrap();
    assert!(quickest < Duration::from_millis(15), "{quickest:?}");
}

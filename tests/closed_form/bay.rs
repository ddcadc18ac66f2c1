//! The plain bay: a box of a vehicle, a lift with round figures, nothing uncertain.
//!
//! Carriage down, the pads' tops stand at 0.1 and the lift points at 0.4: the pads meet them at a
//! travel of 0.3. From there on the flat roof, 1.8 above the ground at rest, stands at 1.5 + s. The
//! vehicle is 4.8 long and 1.8 wide, its middle at y = 5: it reaches from y = 2.6 to 7.4.
//! Locks at 0.4, 0.5, .. 1.7; each climb goes past its lock by o = 0.02 + 0.03 = 0.05.

use bayrise::bay::Bay;
use bayrise::bayfile::{self, presets};
use bayrise::clearance::{Limit, LockState, PairFinding, Study, study};
use bayrise::diagnostics::{Style, render};

const BAY: &str = include_str!("plain.ron");

/// The plain bay with some of its text replaced; each piece must be there.
pub(crate) fn with(changes: &[(&str, &str)]) -> Bay {
    let mut text = BAY.to_owned();
    for (old, new) in changes {
        assert!(text.contains(old), "{old} is not in the plain bay");
        text = text.replace(old, new);
    }
    match bayfile::read("plain.ron", text.as_bytes(), &presets::EmbeddedOnly) {
        Ok(read) => read.bay,
        Err(faults) => panic!("{}", render(&faults, Style::default())),
    }
}

/// Its study.
pub(crate) fn studied(changes: &[(&str, &str)]) -> Study {
    study(&with(changes)).unwrap()
}

/// The pair, or the bar, that limits the rise.
pub(crate) fn limiting(study: &Study) -> &PairFinding {
    match &study.limit {
        Limit::Pair(pair) | Limit::Bar(pair) => pair,
        // What withholds the lock leaves the first pair of the governing door.
        _ => study
            .pairs
            .iter()
            .find(|pair| pair.first_breach_m.is_some())
            .unwrap(),
    }
}

/// The first breach is `expected` to a thousandth of a millimetre, between these two.
#[track_caller]
pub(crate) fn breach(study: &Study, moving: &str, fixed: &str, expected: f64) {
    let pair = limiting(study);
    assert!(
        pair.moving.starts_with(moving) && pair.fixed.starts_with(fixed),
        "{} and {}",
        pair.moving,
        pair.fixed
    );
    let found = pair.first_breach_m.unwrap();
    assert!((found - expected).abs() < 1e-6, "{found} is not {expected}");
}

/// How many locks stand in each state, lowest first, as pairs of words and counts.
pub(crate) fn states(study: &Study) -> Vec<(LockState, usize)> {
    let mut runs: Vec<(LockState, usize)> = Vec::new();
    for lock in &study.locks {
        match runs.last_mut() {
            Some((state, count)) if *state == lock.state => *count += 1,
            _ => runs.push((lock.state, 1)),
        }
    }
    runs
}

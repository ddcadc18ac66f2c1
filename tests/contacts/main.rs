//! Does every ± count against a pair of parts that may touch?
//!
//! Each bay here is one that is clear as written, and beside it the same bay with its figures moved by
//! no more than the ± of the first, and nothing uncertain: what touches there must be told of the
//! first. `pad-into-arm` and `bracket-over-arm` were measured with python-fcl 0.7 on the program's own solids,
//! when they were made; the others are arithmetic on the figures of the files.
#![allow(clippy::unwrap_used)] // a failed unwrap here is a failed test

use std::path::Path;

use bayrise::bay::Bay;
use bayrise::bayfile::{self, presets::EmbeddedOnly};
use bayrise::clearance::{ContactFinding, Study, study};
use bayrise::units::Length;

fn bay(name: &str) -> Bay {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/contacts");
    let text = std::fs::read(folder.join(format!("{name}.ron"))).unwrap();
    let read = bayfile::read(name, &text, &EmbeddedOnly);
    read.map(|read| read.bay)
        .map_err(|faults| format!("{faults:?}"))
        .unwrap()
}

fn with(study: &Study, part: &str, vehicle: &str) -> bool {
    let is = |one: &ContactFinding| one.part.starts_with(part) && one.vehicle.starts_with(vehicle);
    study.carried.iter().any(is)
}

#[test]
fn what_touches_within_the_tolerances_is_told_and_withholds() {
    for (name, part, vehicle) in [
        (
            "bracket-over-arm",
            "lift/arm front left",
            "vehicle/running board bracket",
        ),
        ("bracket-beside-pad", "lift/pad front left", "vehicle/"),
        ("arm-under-sill", "lift/arm", "vehicle/side"),
        ("sill-over-point", "lift/arm", "vehicle/side"),
        ("part-over-rim", "lift/pad front left", "vehicle/"),
        ("point-above-sill", "lift/arm", "vehicle/side"),
        ("pad-before-wheel", "lift/pad rear", "vehicle/wheel rear"),
        ("keel-beside-pad", "lift/pad front left", "vehicle/keel"),
    ] {
        let within = study(&bay(&format!("{name}-within"))).unwrap();
        assert!(
            with(&within, part, vehicle),
            "{name}: nothing touches within the \u{b1}"
        );
        let written = bay(name);
        let found = study(&written).unwrap();
        assert!(with(&found, part, vehicle), "{name}: {:?}", found.carried);
        assert_eq!(found.highest_safe_lock, None, "{name}");
        // With nothing off it is clear: it is the ± that is told.
        let mut exact = written;
        let none = Length::ZERO;
        exact.policy.measured_garage = none;
        exact.policy.measured_lift = none;
        exact.policy.measured_vehicle = none;
        exact.lift.side_mismatch = none;
        let found = study(&exact).unwrap();
        assert!(!with(&found, part, vehicle), "{name}: {:?}", found.carried);
    }
}

/// A pad is lowered for its own lift point's sake; against another arm it is where it is.
#[test]
fn a_pad_in_the_height_of_another_arm_meets_it() {
    let into = bay("pad-into-arm");
    let found = study(&into).unwrap();
    assert!(
        with(&found, "lift/pad front left", "lift/arm rear left"),
        "{:?}",
        found.carried
    );
    assert_eq!(found.highest_safe_lock, None);
    // 5 mm of one in the height of the other: 6 mm apart nothing is met.
    let mut apart = into;
    for arm in &mut apart.lift.arms[2..] {
        arm.underside += Length::metres(0.006);
    }
    for raise in &mut apart.parking.pad_raise[2..] {
        *raise += Length::metres(0.006);
    }
    let found = study(&apart).unwrap();
    assert!(found.carried.is_empty(), "{:?}", found.carried);
}

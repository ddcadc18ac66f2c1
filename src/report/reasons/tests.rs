//! Reasons in words, one by one and taken together.

use super::*;
use crate::bay::{Corner, UnitSystem};

#[test]
fn shortfalls_round_up() {
    let show = Show {
        units: UnitSystem::Metric,
    };
    let said = reason(
        &Withheld::ArmDoesNotReach {
            corner: Corner::RearLeft,
            shortfall_m: 0.0201,
        },
        show,
    );
    assert_eq!(
        said.says,
        "the rear left arm falls 21 mm short of its lift point"
    );
}
fn said(withheld: &[Withheld]) -> Vec<String> {
    let show = Show {
        units: UnitSystem::Imperial,
    };
    let all = reasons(withheld, show);
    all.into_iter().map(|reason| reason.says).collect()
}

fn short(corner: Corner, inches: f64) -> Withheld {
    Withheld::ArmDoesNotReach {
        corner,
        shortfall_m: inches * 0.0254,
    }
}

fn touch(part: &str, vehicle: &str) -> Withheld {
    Withheld::CarriedPartsTouch {
        part: part.into(),
        vehicle: vehicle.into(),
    }
}

fn parked(moving: &str, fixed: &str, inches: f64) -> Withheld {
    Withheld::TightAsParked {
        moving: moving.into(),
        fixed: fixed.into(),
        shortfall_m: inches * 0.0254,
    }
}

#[test]
fn one_matter_is_said_once_with_its_worst_figure() {
    use Corner::{FrontLeft, FrontRight, RearLeft};
    assert_eq!(
        said(&[
            short(FrontLeft, 1.0),
            short(FrontRight, 2.0),
            short(RearLeft, 3.0)
        ]),
        [
            "the front arms fall up to 2 in short of their lift points",
            "the rear left arm falls 3 in short of its lift point",
        ]
    );
    assert_eq!(
        said(&[
            touch("lift/arm front left", "vehicle/side 5"),
            touch("lift/arm front left", "vehicle/side 4"),
            touch("lift/pad front left", "vehicle/side 4"),
        ]),
        [
            "the front left arm touches the vehicle's side (pieces 4 and 5) on the way up",
            "the front left pad touches the vehicle's side (piece 4) on the way up",
        ]
    );
    assert_eq!(
        said(&[
            parked("vehicle/roof 7", "opener/release cord", 2.0),
            parked("vehicle/roof 8", "opener/release cord 4", 9.0),
            parked("vehicle/mirror left", "lift/post left", 1.0),
            parked("vehicle/mirror right", "lift/post right", 1.0),
        ]),
        [
            "as parked, the vehicle's roof (pieces 7 and 8) already stands too near the \
             opener's release cord: up to 9 in short of the margin",
            "as parked, the vehicle's mirrors already stand too near the lift's posts: 1 in \
             short of the margin",
        ]
    );
}

#[test]
fn parts_of_the_lift_that_meet_the_same_thing_are_named_together() {
    let stands = |part: &str, inches: f64| Withheld::DoesNotStand {
        part: part.into(),
        meets: "shell/ceiling".into(),
        shortfall_m: inches * 0.0254,
    };
    assert_eq!(
        said(&[
            stands("lift/post left", 12.0),
            stands("lift/post right", 12.0),
            stands("lift/overhead beam", 6.0),
        ]),
        [
            "the lift's posts and the overhead beam lack up to 1 ft of clearing the ceiling, \
             so the lift can't stand here"
        ]
    );
}

#[test]
fn what_is_no_number_is_the_worst() {
    use Corner::{FrontLeft, FrontRight};
    for nan_first in [[f64::NAN, 1.0], [1.0, f64::NAN]] {
        let [left, right] = nan_first;
        let text = said(&[short(FrontLeft, left), short(FrontRight, right)]);
        assert!(text[0].contains("no number"), "{text:?}");
    }
}

#[test]
fn one_thing_not_measured_is_spoken_of_as_one() {
    let show = Show {
        units: UnitSystem::Imperial,
    };
    let cure = |what: &[&str]| {
        let what = what.iter().map(|one| (*one).to_owned()).collect();
        let said = reason(&Withheld::NotMeasured { what }, show);
        said.cure.into_owned()
    };
    let one = cure(&["the beam"]);
    assert!(one.starts_with("measure it, ") && one.contains("take it out"));
    let two = cure(&["the beam", "the rack"]);
    assert!(two.starts_with("measure them, ") && two.contains("take each out"));
}

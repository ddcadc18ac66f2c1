//! The text report on hand-made studies.

use super::super::sample;
use super::super::{NeedFinding, judge};
use super::*;
use crate::bay::{Bay, Person, UnitSystem};
use crate::clearance::{DoorState, Limit, LockState, Study};
use crate::report::Need;
use crate::solids::test_bay::test_bay;
use crate::units::Length;

fn render_with(bay: &Bay, study: &Study, needs: &[NeedFinding], look: Look) -> String {
    let report = Report {
        bay,
        study,
        warnings: &[],
        needs,
        fingerprint: "0123456789abcdef",
        day: None,
    };
    render(&report, look)
}

fn text(study: &Study) -> String {
    render_with(&test_bay(), study, &[], Look::default())
}

/// The report with line breaks and runs of blanks made single blanks, for looking up sentences.
fn flowed(study: &Study) -> String {
    text(study).split_whitespace().collect::<Vec<_>>().join(" ")
}

#[track_caller]
fn says(text: &str, what: &str) {
    assert!(text.contains(what), "missing: {what}\nin:\n{text}");
}

#[test]
fn the_verdict_comes_first_and_says_it_all() {
    let text = flowed(&sample::study());
    says(
        &text,
        "Lock 3 of 5 is the highest safe lock (door open): pads at 2 ft 3 in. Above it the \
         vehicle's roof (piece 3) comes too near door panel 4 (over it): the margin of 3 in runs short at 2 ft 2 in of \
         travel, and they touch at 2 ft 5 in. At lock 4 they would have 1 in of the 3 in asked. \
         Stop the raise with the carriage's marked edge at 4 ft 8 1/2 in (1435.1 mm) on the column.",
    );
    says(
        &text,
        "Not checked: vehicle mass. Not known in full, and no pass (each has a section below): slab.",
    );
    says(
        &text,
        "lock 4 would be clear; the uncertainties listed below cost 1 lock",
    );
    let verdict = text.find("Lock 3 of 5");
    assert!(verdict < text.find("Locks, the highest first"));
}

#[test]
fn a_clear_lock_that_is_withheld_is_not_called_safe() {
    let text = flowed(&sample::withheld());
    says(
        &text,
        "Lock 3 is clear (door open), but no lock is called safe: the rear left arm falls 13/16 in \
         short of its lift point.",
    );
    says(&text, "To cure it: aim the vehicle farther in or out");
    says(&text, "don't set these marks yet");
    assert!(!text.contains("highest safe lock"), "{text}");
}

#[test]
fn no_clear_lock_says_why_and_what_would_help() {
    let text = flowed(&sample::none_clear());
    says(
        &text,
        "No lock is safe (door open): the vehicle's roof (piece 3) comes too near door panel 4",
    );
    says(&text, "With the door shut lock 2 would be clear.");
    assert!(!text.contains("Stop the raise"));

    let mut study = sample::none_clear();
    study.doors.shut.highest_clear_lock = None;
    // 30.1 mm of overlap and a margin of 76.2 mm: 4.185 in, up.
    says(
        &flowed(&study),
        "Lock 2, the lowest that lifts, needs 4 3/16 in more between the vehicle's roof (piece 3) and \
         door panel 4.",
    );
}

#[test]
fn pads_that_never_carry() {
    let mut study = sample::none_clear();
    for lock in &mut study.locks {
        lock.state = LockState::NotLifting;
    }
    study.doors.shut.highest_clear_lock = None;
    says(
        &flowed(&study),
        "at no lock do all four pads carry the vehicle",
    );
}

#[test]
fn every_limit_has_its_sentence() {
    let mut study = sample::study();
    let Limit::Pair(pair) = study.limit.clone() else {
        panic!("the sample is limited by a pair")
    };
    for (limit, expect) in [
        (
            Limit::Travel { travel_m: 1.8288 },
            "the carriage's travel of 6 ft does",
        ),
        (
            Limit::Bar(pair.clone()),
            "the vehicle's roof (piece 3) comes too near the shut-off bar: the room of 3 in under it runs short at 2 ft 2 in of travel",
        ),
        (
            Limit::Undecided(pair),
            "could not decide between the vehicle's roof (piece 3) and door panel 4",
        ),
    ] {
        study.limit = limit;
        says(&flowed(&study), expect);
    }
}

#[test]
fn clearance_down_overlap_up() {
    let text = text(&sample::study());
    // 98.4 mm = 3.874 in: 3 7/8 in would be 98.425 mm, more than there is.
    says(&text, "3 13/16 in");
    // 30.1 mm = 1.185 in: up to 1 3/16 in.
    says(&text, "overlap 1 3/16 in");
}

#[test]
fn cautions_margins_and_tolerances_are_always_there() {
    for study in [sample::study(), sample::withheld(), sample::none_clear()] {
        let text = flowed(&study);
        for caution in CAUTIONS {
            says(&text, caution);
        }
        for what in [
            "Over the vehicle:",
            "Beside the vehicle:",
            "Beside a post, body and mirrors:",
            "The lift's own moving parts:",
            "Under the shut-off bar:",
            "Vehicle, each dimension \u{b1}:",
            "One carriage above the other:",
            "Parking:",
            "would NOT stop that",
        ] {
            says(&text, what);
        }
    }
}

#[test]
fn states_and_the_safe_lock_do_without_colour() {
    let plain = text(&sample::study());
    assert!(!plain.contains('\u{1b}'));
    for word in ["clear", "tight", "strikes", "not lifting", "3 *"] {
        says(&plain, word);
    }
    let coloured = render_with(
        &test_bay(),
        &sample::study(),
        &[],
        Look {
            colour: true,
            width: 100,
        },
    );
    assert!(coloured.contains('\u{1b}'));
    let stripped = anstream::adapter::strip_str(&coloured).to_string();
    assert_eq!(stripped, plain);
}

#[test]
fn lines_keep_to_the_width() {
    for width in [80, 100] {
        let look = Look {
            colour: false,
            width,
        };
        let text = render_with(&test_bay(), &sample::study(), &[], look);
        for line in text.lines() {
            assert!(line.chars().count() <= width, "{width}: {line}");
            assert_eq!(line, line.trim_end());
        }
    }
}

#[test]
fn needs_say_which_failed_and_by_how_much() {
    let study = sample::study();
    let needs = [
        judge(&study, Need::Lock(4)),
        judge(&study, Need::Underbody(Length::feet(3.0))),
        judge(&study, Need::Lock(2)),
    ];
    let text = render_with(&test_bay(), &study, &needs, Look::default());
    says(&text, "Asked for lock 4: not met, 1 lock short.");
    // Lock 3: 0.5580 m under the body; 3 ft = 0.9144 m; 0.3564 m = 14.0315 in, up to 1/16.
    says(
        &text,
        "Asked for 3 ft under the body: not met, 1 ft 2 1/16 in short.",
    );
    says(&text, "Asked for lock 2: met.");
}

#[test]
fn people_are_told_whether_they_can_stand() {
    let mut study = sample::study();
    study.policy.people = vec![Person {
        stature: None,
        name: "Ida".into(),
        height: Length::mm(1700.0),
    }];
    let mut bay = test_bay();
    bay.units = UnitSystem::Metric;
    let text = render_with(&bay, &study, &[], Look::default());
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    // 1700 mm less 558 mm.
    says(&text, "Ida (1700 mm) can't stand upright");
    says(&text, "on any safe lock: 1142 mm short.");
}

#[test]
fn a_door_that_is_held_is_named_so() {
    let mut study = sample::study();
    study.door_is_held = true;
    study.headline_door = DoorState::Shut;
    says(&flowed(&study), "(door held shut)");
}

#[test]
fn escape_sequences_in_names_do_not_reach_the_terminal() {
    let mut bay = test_bay();
    bay.title = "Bay\u{1b}[2J\u{7}".into();
    bay.vehicle.name = "Van\u{9b}31m".into();
    let text = render_with(&bay, &sample::study(), &[], Look::default());
    assert!(!text.chars().any(|c| c.is_control() && c != '\n'));
}

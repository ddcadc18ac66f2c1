//! Does the first sentence tell the worst?

use super::*;
use crate::ground::{Part, Said};

fn words(said: &Said) -> String {
    let mut text = String::new();
    for part in &said.0 {
        if let Part::Words(words) = part {
            text.push_str(words);
        }
    }
    text
}

fn has(said: &Said, value: f64) -> bool {
    said.0.iter().any(|part| match part {
        Part::Quantity(found, _) => found.number() == Some(value),
        Part::Words(_) => false,
    })
}

#[test]
fn it_takes_the_worst_state_and_three_pads() {
    let mut bay = exact();
    bay.parking.aim = Aim::LiftPoints(Length::inches(-12.0));
    bay.vehicle.masses = vec![part("engine", -2_000.0, 100.0, 0.0)];
    let found = section(&bay, &states(&bay));
    assert!(has(&found.lead, number(&found, "before.pad_load")));
    assert!(!has(&found.lead, number(&found, "pad_load.front_left")));
    assert!(
        words(&found.lead).contains("before parts come out"),
        "{:?}",
        found.lead
    );
    assert!(!words(&found.lead).contains("Stop"), "{:?}", found.lead);
    // On three pads 2600 lb against an arm's share of them.
    bay.lift.arm_capacity = Some(Mass::pounds(2_550.0));
    let found = section(&bay, &states(&bay));
    assert!(
        has(&found.lead, number(&found, "before.three_pads")),
        "{:?}",
        found.lead
    );
}

#[test]
fn a_stop_comes_first() {
    let mut bay = test_bay();
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(20.0));
    let found = section(&bay, &states(&bay));
    assert!(
        words(&found.lead).starts_with("Stop: the centre of gravity"),
        "{:?}",
        found.lead
    );
    bay.parking.aim = Aim::CentreOfGravity(Length::ZERO);
    bay.lift.capacity = Mass::pounds(5_000.0);
    let over = section(&bay, &states(&bay));
    assert!(
        words(&over.lead).starts_with("Stop: vehicle on the lift is"),
        "{:?}",
        over.lead
    );
}

//! Does the file say what was answered, and only that?

use std::collections::BTreeSet;

use super::*;
use crate::bay::{Bay, Ceiling, Door, Floor, Opener, TrackLayout, UnitSystem};
use crate::bayfile::presets::EmbeddedOnly;
use crate::bayfile::read;
use crate::units::{Length, parse_length};

mod answers;
mod contradiction;
mod dialogue;
mod explain;
mod form;
mod review;
mod templates;
mod values;
mod withheld;

use answers::{full, measured};

/// Answers every question by its number, `` where it is not named; which were asked comes back.
fn asked(says: &[(&str, &str)]) -> (Dialogue, BTreeSet<String>) {
    let mut dialogue = Dialogue::default();
    let mut numbers = BTreeSet::new();
    let mut things = 0;
    while let Some(prompt) = dialogue.prompt() {
        numbers.insert(prompt.number.clone());
        let mut wanted = says.iter().filter(|(number, _)| *number == prompt.number);
        let first = prompt.number.ends_with(".1");
        // A list is answered once, then closed.
        let line = match wanted.next() {
            Some((_, "none")) => "none",
            Some((_, line)) if first && prompt.takes.contains("nothing more") => {
                things += 1;
                if prompt.what.contains(" 1: ") {
                    line
                } else {
                    "none"
                }
            }
            Some((_, line)) => line,
            None => "",
        };
        dialogue
            .answer(line)
            .unwrap_or_else(|refused| panic!("{}: {refused:?}", prompt.number));
        assert!(things < 100);
    }
    (dialogue, numbers)
}

fn bay(made: &Made) -> Bay {
    let read = read("asked", made.text.as_bytes(), &EmbeddedOnly);
    read.unwrap_or_else(|faults| panic!("{faults:#?}\n{}", made.text))
        .bay
}

/// The number of a question.
fn of(section: &str, key: &str) -> String {
    number(section, key).unwrap()
}

fn made_of(says: &[(String, String)]) -> Made {
    let says: Vec<(&str, &str)> = says.iter().map(|(n, s)| (n.as_str(), s.as_str())).collect();
    asked(&says).0.made().unwrap()
}

fn near(is: Length, typed: &str) {
    let wanted = parse_length(typed).unwrap();
    assert!((is - wanted).abs().m() < 1e-9, "{is:?} for {typed}");
}

/// No lock is called safe, and why is the first thing that is said.
fn is_withheld(made: &Made) -> Vec<String> {
    let bay = bay(made);
    let study = crate::clearance::study(&bay).unwrap();
    assert_eq!(study.highest_safe_lock, None);
    let Some(crate::clearance::Withheld::NotMeasured { what }) = study.withheld.first() else {
        panic!("{:?}", study.withheld);
    };
    assert_eq!(*what, made.not_measured);
    assert!(bay.title.contains("NOT MEASURED"), "{}", bay.title);
    what.clone()
}

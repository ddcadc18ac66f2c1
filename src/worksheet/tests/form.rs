//! Are all questions of the form asked, each once, in its order?

use super::*;

#[test]
fn numbers_and_keys_are_each_given_once() {
    let mut keys = BTreeSet::new();
    let mut numbers = BTreeSet::new();
    for section in sections() {
        for question in section.questions {
            assert!(keys.insert((section.id, question.key)), "{}", question.key);
            assert!(numbers.insert(of(section.id, question.key)));
            assert!(
                !question.how.is_empty() && question.how.ends_with('.'),
                "{}",
                question.what
            );
        }
    }
    assert!(numbers.len() > 100);
}

#[test]
fn every_question_of_the_form_is_asked_in_its_order_and_no_other() {
    let of_form: Vec<String> = sections()
        .iter()
        .flat_map(|section| section.questions.iter().map(|one| of(section.id, one.key)))
        .collect();
    let all: BTreeSet<String> = of_form.iter().cloned().collect();
    let mut seen = BTreeSet::new();
    for (ceiling, door, layout, opener, floor, tie) in [
        (
            "flat",
            "sectional",
            "high-lift",
            "trolley",
            "level",
            "overhead beam",
        ),
        (
            "sloped",
            "roll-up",
            "",
            "wall-mounted",
            "door",
            "floor plate",
        ),
        ("gable", "swing-up", "", "none", "left", ""),
        ("stepped", "side-hinged", "", "", "", ""),
    ] {
        let says = [
            (of("room", "#ceiling"), ceiling),
            (of("door", "#door"), door),
            (of("door", "#layout"), layout),
            (of("opener", "#opener"), opener),
            (of("room", "#floor"), floor),
            (of("lift", "#tie"), tie),
            (of("slab", "#to_walls"), "no"),
            (of("under", "name"), "an axle"),
            (of("lift", "#bar"), "yes"),
            (of("room", "#step.more"), "yes"),
            (of("lift", "#unit"), "left"),
            (of("lift", "#arm.hold"), "teeth"),
            (of("lift", "#cg"), "yes"),
            (of("roof", "station"), "0 in"),
            (of("things", "name"), "a lamp"),
            (of("readings", "x"), "1 m"),
            (of("lines", "kind"), "joint"),
            (of("fixed", "name"), "a box"),
            (of("people", "name"), "Ida"),
        ];
        let says: Vec<(&str, &str)> = says.iter().map(|(n, s)| (n.as_str(), *s)).collect();
        let (dialogue, numbers) = asked(&says);
        // In the order of the form.
        let order: Vec<&String> = of_form
            .iter()
            .filter(|one| numbers.contains(*one))
            .collect();
        assert_eq!(
            order.len(),
            numbers.len(),
            "nothing is asked that is not on the form"
        );
        seen.extend(numbers);
        let _ = bay(&dialogue.made().unwrap());
    }
    assert_eq!(seen, all);
}

#[test]
fn the_same_answers_make_the_same_file() {
    assert_eq!(made_of(&full()).text, made_of(&full()).text);
}

//! Is it said which earlier answer is at odds, and can it be gone to?

use super::*;

/// Answers until a question comes up, as in `says`.
fn until(dialogue: &mut Dialogue, wanted: &str, says: &[(&str, &str)]) {
    loop {
        let prompt = dialogue.prompt().unwrap();
        if prompt.number == wanted {
            return;
        }
        let line = says.iter().find(|(number, _)| *number == prompt.number);
        dialogue.answer(line.map_or("", |(_, line)| line)).unwrap();
    }
}

/// Answers the rest of a section with Enter; what its end says comes back.
fn end_of_section(dialogue: &mut Dialogue) -> Refused {
    for _ in 0..60 {
        if let Err(refused) = dialogue.answer("") {
            return refused;
        }
    }
    panic!("nothing is refused")
}

/// At the end of the room, with an opening of 30 ft in a wall of 24 ft.
fn too_wide() -> (Dialogue, Refused, [String; 2]) {
    let opening = of("door", "garage.opening.width");
    let width = of("room", "garage.width");
    let mut dialogue = Dialogue::default();
    until(&mut dialogue, &width, &[(&opening, "30 ft")]);
    dialogue.answer("24 ft").unwrap();
    let refused = end_of_section(&mut dialogue);
    (dialogue, refused, [opening, width])
}

#[test]
fn an_earlier_answer_that_does_not_go_with_a_section_is_named_gone_to_and_gone_on_from() {
    let (mut dialogue, refused, [opening, width]) = too_wide();
    assert!(
        refused.message.contains("wider than its wall"),
        "{refused:?}"
    );
    for words in [
        format!("{opening} (Opening: clear width): 30 ft"),
        format!("{width} (Width, wall to wall): 24 ft"),
    ] {
        assert!(refused.help.contains(&words), "{refused:?}");
    }
    // Only what is not asked again is to be gone to.
    assert!(
        refused
            .then
            .contains(&format!("write its number: {opening}. Else")),
        "{refused:?}"
    );
    assert!(dialogue.is_asked_again());
    assert_eq!(dialogue.prompt().unwrap().number, width);
    // Nothing else is gone to: this is no answer.
    assert!(
        dialogue
            .answer(&of("door", "garage.opening.height"))
            .is_err()
    );
    // From within the section too.
    dialogue.answer("").unwrap();
    dialogue.answer(&opening).unwrap();
    let prompt = dialogue.prompt().unwrap();
    assert_eq!(
        (prompt.number, prompt.kept.as_deref()),
        (opening, Some("30 ft"))
    );
    dialogue.answer("10 ft").unwrap();
    let next = dialogue.prompt().unwrap();
    assert_eq!(
        next.number,
        of("opener", "#opener"),
        "on to the next section"
    );
    assert_eq!(next.kept, None);
    assert!(!dialogue.is_asked_again());
    let made = dialogue.made().unwrap();
    near(bay(&made).garage.opening.width, "10 ft");
    near(bay(&made).garage.width, "24 ft");
}

#[test]
fn what_still_does_not_go_together_is_asked_again_and_a_sign_goes_back() {
    let (mut dialogue, _, [opening, width]) = too_wide();
    dialogue.answer(&format!("change {opening}")).unwrap();
    // Back out of it.
    dialogue.answer("<").unwrap();
    assert_eq!(dialogue.prompt().unwrap().number, width);
    dialogue.answer(&opening).unwrap();
    let refused = dialogue.answer("25 ft").unwrap_err();
    assert!(
        refused.help.contains("25 ft") && refused.then.contains(&opening),
        "{refused:?}"
    );
    assert_eq!(dialogue.prompt().unwrap().number, width);
    // Enter all through: the same again, and it still can be gone to.
    let refused = end_of_section(&mut dialogue);
    assert!(refused.then.contains(&opening), "{refused:?}");
    dialogue.answer(&opening).unwrap();
    dialogue.answer("-").unwrap();
    assert_eq!(dialogue.prompt().unwrap().number, of("opener", "#opener"));
    // Once it goes together the number is no way back any more.
    assert!(dialogue.answer(&opening).is_err());
}

#[test]
fn a_thing_of_an_earlier_list_is_named_by_its_place_in_it() {
    let mut answers = Answers::default();
    for (item, width) in [(0, "\"1 ft\""), (1, "\"2 ft\"")] {
        answers.more("things");
        for (key, ron) in [
            ("name", if item == 0 { "\"lamp\"" } else { "\"beam/x\"" }),
            ("kind", "Beam"),
            ("x", "\"0 in\""),
            ("y", "\"10 ft\""),
            ("bottom", "\"9 ft\""),
            ("width", width),
            ("depth", "\"1 ft\""),
            ("height", "\"1 ft\""),
        ] {
            answers.put("things", item, key, ron.into());
        }
    }
    answers.close("things", true);
    // A name that bay files refuse.
    let refused = answers.bay_file(false).unwrap_err();
    let found = answers.contradict(&refused);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].number, format!("{} of 2", of("things", "name")));
}

#[test]
fn a_change_that_is_not_made_names_what_it_is_at_odds_with() {
    let says = measured();
    let says: Vec<(&str, &str)> = says.iter().map(|(n, s)| (n.as_str(), s.as_str())).collect();
    let (mut dialogue, _) = asked(&says);
    let width = of("room", "garage.width");
    dialogue.decide(&width).unwrap();
    let refused = dialogue.answer("6 ft").unwrap_err();
    let opening = of("door", "garage.opening.width");
    assert!(
        refused.help.contains(&format!("{opening} (")),
        "{refused:?}"
    );
    assert!(refused.help.contains("6 ft"), "{refused:?}");
    assert!(refused.then.is_empty(), "{refused:?}");
}

#[test]
fn a_room_that_was_measured_is_not_refused_for_an_opening_that_was_not() {
    let made = made_of(&[
        (of("room", "garage.width"), "8 ft".into()),
        (of("room", "#ceiling"), "flat".into()),
        (of("room", "garage.ceiling.height"), "7 ft 6 in".into()),
    ]);
    let garage = bay(&made).garage;
    near(garage.width, "8 ft");
    assert!(garage.opening.width <= garage.width && garage.opening.width.m() > 2.43);
    assert!(garage.opening.height.m() <= 2.286 && garage.opening.height.m() > 2.28);
    for key in ["garage.opening.width", "garage.opening.height"] {
        assert!(made.not_measured.contains(&label(key)), "{key}");
    }
}

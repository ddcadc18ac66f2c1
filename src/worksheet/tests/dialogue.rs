//! Is a line taken for what was meant, and refused in words else?

use super::*;

#[test]
fn a_bad_answer_is_refused_in_words_and_asked_again() {
    let mut dialogue = Dialogue::default();
    let mut at = |number: &str| {
        while let Some(prompt) = dialogue.prompt() {
            if prompt.number == number {
                return std::mem::take(&mut dialogue);
            }
            dialogue.answer("").unwrap();
        }
        panic!("{number}")
    };
    let width = of("door", "garage.opening.width");
    let mut dialogue = at(&width);
    for (bad, words) in [
        ("10", "needs a unit"),
        ("10 lb", "measures a mass"),
        ("-3 ft", "can't be"),
        ("0 in", "can't be"),
        ("wide", "number is missing"),
        ("1,5 m", "comma"),
        ("9 ft 14 in", "below 12"),
        ("1e400 m", ""),
        ("NaN m", ""),
    ] {
        let refused = dialogue.answer(bad).unwrap_err();
        assert!(refused.message.contains(words), "{bad}: {refused:?}");
        assert!(!refused.help.is_empty(), "{bad}");
        assert_eq!(dialogue.prompt().unwrap().number, width, "asked again");
    }
    dialogue.answer("10 ft").unwrap();
    assert_ne!(dialogue.prompt().unwrap().number, width);
    for (kind, bad) in [
        (Kind::YesNo, "perhaps"),
        (Kind::Day, "June 1998"),
        (Kind::Day, "1998-02-30"),
        (Kind::Count, "0"),
        (Kind::Count, "1.5"),
        (Kind::Preset(Form::Lift), "estate"),
        (Kind::Choice(&[("left", "Left"), ("level", "")]), "le"),
        (Kind::Words, "a\u{7}b"),
        (Kind::Size(crate::units::Kind::Mass), "5 ft"),
    ] {
        assert!(read_answer(kind, bad).is_err(), "{kind:?} {bad}");
    }
}

#[test]
fn what_does_not_go_together_is_said_and_its_section_asked_again() {
    let mut says = full();
    // A door wider than its wall: said at the end of the room, where both are known.
    for (number, line) in &mut says {
        if *number == of("room", "garage.width") {
            *line = "3 m".into();
        }
    }
    let mut dialogue = Dialogue::default();
    let mut refusals = Vec::new();
    let mut asked_width = 0;
    while let Some(prompt) = dialogue.prompt() {
        let width = prompt.number == of("room", "garage.width");
        asked_width += usize::from(width);
        let line = says.iter().find(|(number, _)| *number == prompt.number);
        let line = match line {
            // The second time the answer is a good one, and what is kept stays.
            _ if width && asked_width == 2 => {
                assert_eq!(prompt.kept.as_deref(), Some("3 m"));
                "7301 mm"
            }
            _ if dialogue.is_asked_again() => "",
            Some((_, _))
                if prompt.takes.contains("nothing more") && !prompt.what.contains(" 1: ") =>
            {
                "none"
            }
            Some((_, line)) => line,
            None => "",
        };
        if let Err(refused) = dialogue.answer(line) {
            refusals.push(refused.message);
        }
        assert!(asked_width < 5);
    }
    assert_eq!(refusals.len(), 1, "{refusals:?}");
    assert!(refusals[0].contains("wider than its wall"), "{refusals:?}");
    let made = dialogue.made().unwrap();
    near(bay(&made).garage.width, "7301 mm");
    near(bay(&made).garage.depth, "9502 mm");
}

#[test]
fn a_question_mark_explains_no_is_none_and_a_sign_goes_back() {
    let mut dialogue = Dialogue::default();
    let said = dialogue.answer("?").unwrap().unwrap();
    assert_eq!(said, "There is nothing more to say of it.");
    assert_eq!(
        dialogue.prompt().unwrap().number,
        "1.1",
        "the question stays"
    );
    assert!(dialogue.answer("<").is_err(), "there is none before");
    let until = |dialogue: &mut Dialogue, number: &str| {
        while dialogue.prompt().unwrap().number != number {
            dialogue.answer("").unwrap();
        }
    };
    let width = of("door", "garage.opening.width");
    until(&mut dialogue, &width);
    dialogue.answer("9 ft").unwrap();
    dialogue.answer("<").unwrap();
    assert_eq!(dialogue.prompt().unwrap().number, width);
    dialogue.answer("10 ft").unwrap();
    until(&mut dialogue, &of("opener", "#opener"));
    assert_eq!(dialogue.answer("no").unwrap().unwrap(), "taken: none");
    let gate = of("things", "name");
    until(&mut dialogue, &gate);
    assert!(
        dialogue
            .answer("1/2 in pipe")
            .unwrap_err()
            .message
            .contains('/')
    );
    dialogue.answer("pipe").unwrap();
    while dialogue.prompt().unwrap().number != gate {
        dialogue.answer("").unwrap();
    }
    assert!(
        dialogue
            .answer("pipe")
            .unwrap_err()
            .message
            .contains("already")
    );
    assert_eq!(
        dialogue.answer("no").unwrap().unwrap(),
        "taken: nothing more"
    );
    // A list is gone back into with what it held.
    dialogue.answer("<").unwrap();
    assert_eq!(dialogue.prompt().unwrap().number, gate);
    dialogue.answer("none").unwrap();
    until(&mut dialogue, &of("supply", "arrangements.permit"));
    assert!(
        dialogue.answer("no").is_err(),
        "no leave is not: none needed"
    );
    assert!(dialogue.answer("not").is_ok());
    while dialogue.prompt().is_some() {
        dialogue.answer("").unwrap();
    }
    let bay = bay(&dialogue.made().unwrap());
    near(bay.garage.opening.width, "10 ft");
    assert!(bay.not_measured.iter().any(|what| what.starts_with("pipe")));
}

#[test]
fn not_known_in_words_is_not_known_and_never_keeps_what_was_said_before() {
    let tendons = of("slab", "slab.post_tensioned");
    let (mut dialogue, _) = asked(&[(&tendons, "not known"), (&of("lines", "kind"), "unknown")]);
    let slab = |dialogue: &Dialogue| bay(&dialogue.made().unwrap()).slab;
    assert!(slab(&dialogue).is_none(), "neither is a no");
    dialogue.decide(&tendons).unwrap();
    dialogue.answer("no").unwrap();
    assert_eq!(slab(&dialogue).unwrap().post_tensioned, Some(false));
    dialogue.decide(&tendons).unwrap();
    assert_eq!(dialogue.prompt().unwrap().kept.as_deref(), Some("no"));
    dialogue.answer("Not known").unwrap();
    assert!(slab(&dialogue).is_none());
    // A list that was called complete is no longer.
    let lines = of("lines", "kind");
    let listed = |dialogue: &Dialogue| slab(dialogue).is_some_and(|slab| slab.lines_listed);
    dialogue.decide(&lines).unwrap();
    dialogue.answer("none").unwrap();
    assert!(listed(&dialogue));
    dialogue.decide(&lines).unwrap();
    dialogue.answer("").unwrap();
    assert!(listed(&dialogue), "Enter keeps it");
    dialogue.decide(&lines).unwrap();
    dialogue.answer("not known").unwrap();
    assert!(!listed(&dialogue));
}

#[test]
fn a_list_that_does_not_go_with_the_rest_is_gone_through_again_and_not_lost() {
    let mut says = measured();
    says.push((of("fixed", "name"), "none".into()));
    let name = of("under", "name");
    let height = of("under", "height");
    let mut dialogue = Dialogue::default();
    let mut again = 0;
    while let Some(prompt) = dialogue.prompt() {
        let line = says.iter().find(|(number, _)| *number == prompt.number);
        let line = line.map_or("", |(_, line)| line.as_str());
        let second = prompt.what.contains(" 2: ");
        let line = match prompt.number.as_str() {
            _ if dialogue.is_asked_again() && prompt.number == height => {
                again += 1;
                // Higher than the sill, it does not hang below it.
                assert_eq!(prompt.kept.as_deref(), Some("20 in"));
                "9 in"
            }
            _ if dialogue.is_asked_again() => "",
            number if number == name && second => "none",
            number if number == height => "20 in",
            _ if prompt.takes.contains("nothing more") && second => "none",
            _ => line,
        };
        if let Err(refused) = dialogue.answer(line) {
            assert!(
                refused.message.contains("does not hang lower"),
                "{refused:?}"
            );
        }
        assert!(again < 3);
    }
    assert_eq!(again, 1);
    let made = dialogue.made().unwrap();
    assert_eq!(made.not_measured, Vec::<String>::new());
    near(bay(&made).vehicle.underbody[0].height, "9 in");
    near(bay(&made).vehicle.underbody[0].from, "176 in");
}

#[test]
fn what_is_gone_back_over_is_shown_and_kept_by_enter_but_in_a_list() {
    let until = |dialogue: &mut Dialogue, number: &str| {
        while dialogue.prompt().unwrap().number != number {
            dialogue.answer("").unwrap();
        }
    };
    let mut dialogue = Dialogue::default();
    let width = of("door", "garage.opening.width");
    until(&mut dialogue, &width);
    for line in ["10 ft", "9 ft", "1 in", "<", "<", "<"] {
        dialogue.answer(line).unwrap();
    }
    assert_eq!(dialogue.prompt().unwrap().kept.as_deref(), Some("10 ft"));
    // A refused line leaves it to be kept.
    assert!(dialogue.answer("10").is_err());
    for line in ["", "8 ft 6 in", "-"] {
        assert!(dialogue.prompt().unwrap().kept.is_some(), "{line:?}");
        dialogue.answer(line).unwrap();
    }
    assert_eq!(dialogue.prompt().unwrap().kept, None);
    // Another kind of door: what was said of the first is neither kept nor shown.
    for line in ["", "roll-up", "1 in", "<", "<", "none"] {
        dialogue.answer(line).unwrap();
    }
    let name = of("things", "name");
    until(&mut dialogue, &name);
    for line in ["lamp", "light", "<"] {
        dialogue.answer(line).unwrap();
    }
    assert_eq!(dialogue.prompt().unwrap().kept, None);
    while dialogue.prompt().is_some() {
        dialogue.answer("").unwrap();
    }
    let made = dialogue.made().unwrap();
    let garage = bay(&made).garage;
    near(garage.opening.width, "10 ft");
    near(garage.opening.height, "8 ft 6 in");
    assert!(matches!(garage.door, Door::None));
    let offset = label("garage.opening.offset");
    assert!(
        made.not_measured.contains(&offset),
        "{:?}",
        made.not_measured
    );
}

//! Is all that was answered shown, and changed only as was said?

use super::*;

/// A dialogue with every question answered.
fn answered(says: &[(String, String)]) -> Dialogue {
    let says: Vec<(&str, &str)> = says.iter().map(|(n, s)| (n.as_str(), s.as_str())).collect();
    asked(&says).0
}

/// Says a line at the end, which asks again.
fn decide(dialogue: &mut Dialogue, line: &str) {
    let decision = dialogue.decide(line);
    assert!(
        matches!(decision, Ok(Decision::Ask)),
        "{line}: {decision:?}"
    );
}

/// Answers what is asked until all is answered again; the numbers that were asked come back.
fn answer(dialogue: &mut Dialogue, lines: &[&str]) -> Vec<String> {
    let mut lines = lines.iter();
    let mut numbers = Vec::new();
    while let Some(prompt) = dialogue.prompt() {
        numbers.push(prompt.number);
        let line = lines.next().copied().unwrap_or("");
        dialogue
            .answer(line)
            .unwrap_or_else(|refused| panic!("{numbers:?} {line}: {refused:?}"));
        assert!(numbers.len() < 60);
    }
    assert!(lines.next().is_none(), "asked: {numbers:?}");
    numbers
}

fn written(dialogue: &mut Dialogue) -> Made {
    match dialogue.decide("write") {
        Ok(Decision::Write(made)) => *made,
        other => panic!("{other:?}"),
    }
}

#[test]
fn all_answers_are_shown_in_the_order_of_the_walk_and_what_is_not_known_by_number() {
    let says = measured();
    let dialogue = answered(&says);
    let review = dialogue.review();
    assert_eq!(review.parts.len(), sections().len());
    for (number, line) in &says {
        let at = format!("{}. ", number.split('.').next().unwrap());
        let part = review.parts.iter().find(|part| part.title.starts_with(&at));
        let part = part.unwrap();
        let shown = part.answers.iter().any(|said| {
            line == "none" && said == "none" || said.contains(number) && said.contains(line)
        });
        assert!(shown, "{number} {line}: {part:?}");
        assert!(!part.not_known.contains(number), "{number}");
    }
    // What is asked and not answered, and only that.
    let part = |review: &Review, id: &str| {
        let title = sections().iter().find(|one| one.id == id).unwrap().title;
        let mut parts = review.parts.iter();
        let part = parts.find(|part| part.title.ends_with(title));
        part.unwrap().clone()
    };
    assert!(
        part(&review, "start")
            .not_known
            .contains(&of("start", "title"))
    );
    let door = &part(&review, "door").not_known;
    assert!(
        !door.contains(&of("door", "#layout")),
        "not asked: {door:?}"
    );
    let readings = &part(&review, "readings").answers;
    assert!(readings[0].contains("NOT KNOWN"), "{readings:?}");
    assert_eq!(review.made.unwrap().text, dialogue.made().unwrap().text);
    // A begun thing shows what it lacks.
    let mut says = measured();
    says.retain(|(number, _)| *number != of("under", "height"));
    let review = answered(&says).review();
    let low = &part(&review, "under").answers[0];
    assert!(
        low.contains(&format!("{} NOT KNOWN", of("under", "height"))),
        "{low}"
    );
    assert_eq!(review.made.unwrap().not_measured.len(), 1);
}

#[test]
fn all_of_it_is_shown_on_two_screens_of_thirty_two_lines() {
    for says in [full(), measured(), Vec::new()] {
        let lines = answered(&says).review().lines(80);
        assert!(lines.len() <= 64, "{}\n{}", lines.len(), lines.join("\n"));
        for line in &lines {
            assert!(line.chars().count() <= 80, "{line}");
        }
        let all = lines.join(" ");
        for (number, _) in says.iter().filter(|(_, line)| line != "none") {
            assert!(all.contains(&format!("{number} ")), "{number}");
        }
        for part in ["GARAGE", "DOOR", "SLAB AND SUPPLY", "VEHICLE", "LIFT"] {
            assert_eq!(lines.iter().filter(|line| *line == part).count(), 1);
        }
    }
}

#[test]
fn nothing_is_written_without_the_word_and_what_is_no_choice_is_told() {
    let mut dialogue = answered(&measured());
    let before = dialogue.made().unwrap().text;
    for line in [
        "",
        "yes",
        "no",
        "writ",
        "save",
        "change",
        "change it",
        "\u{7}",
    ] {
        let refused = dialogue.decide(line).unwrap_err();
        assert!(
            refused.help.contains("write") && refused.help.contains("stop"),
            "{line}"
        );
    }
    for line in [
        "0",
        "2",
        "2.0",
        "2.99",
        "99",
        "99.1",
        "2.1.1",
        "2.1 of 1",
        "14.2 of 2",
        "14 of",
    ] {
        assert!(dialogue.decide(line).is_err(), "{line}");
        assert!(dialogue.prompt().is_none(), "{line} asks nothing");
    }
    // Not asked where there is no door.
    let layout = of("door", "#layout");
    assert!(
        dialogue
            .decide(&layout)
            .unwrap_err()
            .message
            .contains("is not asked")
    );
    assert!(matches!(dialogue.decide(" STOP "), Ok(Decision::Stop)));
    assert_eq!(written(&mut dialogue).text, before);
}

#[test]
fn one_answer_is_changed_and_nothing_else() {
    let mut dialogue = answered(&measured());
    let before = dialogue.made().unwrap();
    let width = of("door", "garage.opening.width");
    decide(&mut dialogue, &format!("change {width}"));
    assert_eq!(dialogue.prompt().unwrap().kept.as_deref(), Some("10 ft"));
    // Enter keeps it.
    assert_eq!(answer(&mut dialogue, &[""]), std::slice::from_ref(&width));
    assert_eq!(written(&mut dialogue).text, before.text);
    decide(&mut dialogue, &format!("c {width}"));
    assert!(dialogue.answer("10").is_err(), "asked again");
    assert_eq!(
        answer(&mut dialogue, &["9 ft 6 in"]),
        std::slice::from_ref(&width)
    );
    let made = written(&mut dialogue);
    assert_eq!(
        made.text,
        before
            .text
            .replace("width: \"10 ft\"", "width: \"9 ft 6 in\"")
    );
    assert_ne!(made.text, before.text);
    // Taken back it is not measured.
    decide(&mut dialogue, &width);
    answer(&mut dialogue, &["-"]);
    let what = is_withheld(&written(&mut dialogue));
    assert_eq!(what, [label("garage.opening.width")]);
    // And < brings it back.
    decide(&mut dialogue, "<");
    assert_eq!(dialogue.prompt().unwrap().number, width);
    answer(&mut dialogue, &[""]);
    assert_eq!(written(&mut dialogue).text, made.text);
}

#[test]
fn what_hangs_on_an_answer_is_asked_with_it_and_what_no_longer_does_is_gone() {
    let mut dialogue = answered(&full());
    let door = of("door", "#door");
    // The same again: nothing more is asked.
    decide(&mut dialogue, &door);
    assert_eq!(
        answer(&mut dialogue, &["sectional"]),
        std::slice::from_ref(&door)
    );
    decide(&mut dialogue, &door);
    let asked = answer(
        &mut dialogue,
        &["roll-up", "26 mm", "451 mm", "3001 mm", "281 mm", "2550 mm"],
    );
    let wanted = [
        "#door",
        "garage.door.curtain_thickness",
        "garage.door.coil_diameter",
        "garage.door.coil_height",
        "garage.door.coil_out",
        "#open_lowest",
    ];
    assert_eq!(asked, wanted.map(|key| of("door", key)));
    let made = written(&mut dialogue);
    let Door::RollUp(coil) = bay(&made).garage.door else {
        panic!("{}", made.text)
    };
    near(coil.coil_height, "3001 mm");
    assert!(!made.text.contains("402 mm") && !made.text.contains("381 mm"));
    // Back to the first kind: nothing of it is remembered, so it is not measured.
    decide(&mut dialogue, &door);
    answer(&mut dialogue, &["sectional"]);
    let made = written(&mut dialogue);
    let lacks = |key: &str| {
        made.not_measured
            .iter()
            .any(|what| what.starts_with(&label(key)))
    };
    assert!(
        lacks("#layout") && lacks("garage.door.track_radius"),
        "{:?}",
        made.not_measured
    );
    // Over two steps: ceiling, second step, its height.
    let ceiling = of("room", "#ceiling");
    decide(&mut dialogue, &ceiling);
    let lines = [
        "stepped", "4201 mm", "3 m", "4301 mm", "yes", "6 m", "4401 mm",
    ];
    assert_eq!(answer(&mut dialogue, &lines).len(), lines.len());
    decide(&mut dialogue, &of("room", "#step.more"));
    assert_eq!(answer(&mut dialogue, &["no"]).len(), 1);
    let made = written(&mut dialogue);
    assert!(!made.text.contains("4401 mm") && made.text.contains("4301 mm"));
    decide(&mut dialogue, &ceiling);
    answer(&mut dialogue, &["flat", "4205 mm"]);
    assert!(!written(&mut dialogue).text.contains("4301 mm"));
}

#[test]
fn everything_that_hangs_on_an_answer_is_in_its_section() {
    for section in sections() {
        for question in section.questions {
            let When::If(key, _) = question.when else {
                continue;
            };
            let at = section.questions.iter().position(|one| one.key == key);
            let own = section
                .questions
                .iter()
                .position(|one| one.key == question.key);
            assert!(at.is_some() && at < own, "{}", question.key);
            assert!(section.repeat.is_none());
        }
    }
}

#[test]
fn a_list_is_gone_through_again_and_one_thing_of_it_by_its_number() {
    let mut dialogue = Dialogue::default();
    let name = of("things", "name");
    let lines = [
        "lamp", "light", "1 ft", "2 ft", "9 ft", "1 in", "2 in", "3 in", "no", //
        "pipe", "pipe", "3 ft", "4 ft", "8 ft", "4 in", "5 in", "6 in", "", "none",
    ];
    while dialogue.prompt().unwrap().number != name {
        dialogue.answer("").unwrap();
    }
    for line in lines {
        dialogue.answer(line).unwrap();
    }
    while dialogue.prompt().is_some() {
        dialogue.answer("").unwrap();
    }
    let things = |dialogue: &Dialogue| bay(&dialogue.made().unwrap()).garage.obstacles;
    let before = things(&dialogue);
    assert_eq!(before.len(), 2);
    // Of which, has to be said.
    let bottom = of("things", "bottom");
    let refused = dialogue.decide(&format!("change {bottom}")).unwrap_err();
    assert!(
        refused.message.contains("thing in the room no. 1 to 2"),
        "{refused:?}"
    );
    decide(&mut dialogue, &format!("change {bottom} of 2"));
    assert_eq!(dialogue.prompt().unwrap().kept.as_deref(), Some("8 ft"));
    assert_eq!(
        answer(&mut dialogue, &["7 ft 9 in"]),
        std::slice::from_ref(&bottom)
    );
    let after = things(&dialogue);
    assert_eq!(after[0], before[0]);
    let crate::bay::ObstacleShape::Box { bottom: is, .. } = after[1].shape else {
        panic!("{:?}", after[1])
    };
    near(is, "7 ft 9 in");
    // Enter through all of it changes nothing, not even that they are all.
    let text = dialogue.made().unwrap().text;
    let at = name.split('.').next().unwrap().to_owned();
    decide(&mut dialogue, &format!("change {at}"));
    answer(&mut dialogue, &[]);
    assert_eq!(dialogue.made().unwrap().text, text);
    // One more, and the first taken out.
    decide(&mut dialogue, &at);
    assert!(dialogue.answer("none").is_err(), "it is described");
    dialogue.answer("-").unwrap();
    let mut more = vec![""; 9];
    more.extend([
        "fan", "fan", "1 m", "2 m", "3 m", "4 cm", "5 cm", "6 cm", "", "none",
    ]);
    answer(&mut dialogue, &more);
    let names: Vec<String> = things(&dialogue).into_iter().map(|one| one.name).collect();
    assert_eq!(names, ["pipe", "fan"]);
    assert!(
        !dialogue
            .made()
            .unwrap()
            .not_measured
            .iter()
            .any(|what| what.contains("these are all") && what.contains("hangs, stands"))
    );
    // One by its number taken out.
    decide(&mut dialogue, &format!("{name} of 1"));
    answer(&mut dialogue, &["-"]);
    assert_eq!(things(&dialogue).len(), 1);
    // A name that is there already is refused here too.
    decide(&mut dialogue, &at);
    dialogue.answer("fan").unwrap();
    while dialogue.prompt().unwrap().number != name {
        dialogue.answer("").unwrap();
    }
    assert!(
        dialogue
            .answer("fan")
            .unwrap_err()
            .message
            .contains("already")
    );
    answer(&mut dialogue, &["none"]);
    // A list that is empty is begun.
    decide(&mut dialogue, &of("people", "height"));
    answer(&mut dialogue, &["Ida", "1731 mm", ""]);
    assert_eq!(bay(&dialogue.made().unwrap()).policy.people.len(), 1);
}

#[test]
fn a_change_that_does_not_go_with_the_rest_is_told_and_not_made() {
    let mut dialogue = answered(&measured());
    let before = dialogue.made().unwrap().text;
    let width = of("room", "garage.width");
    decide(&mut dialogue, &width);
    let refused = dialogue.answer("6 ft").unwrap_err();
    assert!(
        refused.message.contains("wider than its wall"),
        "{refused:?}"
    );
    assert!(refused.message.contains("stand"), "{refused:?}");
    assert!(dialogue.prompt().is_none());
    assert!(!dialogue.is_asked_again());
    assert_eq!(written(&mut dialogue).text, before);
    // Locks said twice, likewise.
    decide(&mut dialogue, &of("lift", "#locks.each"));
    assert!(dialogue.answer("12 in, 16 in").is_err());
    assert_eq!(written(&mut dialogue).text, before);
}

#[test]
fn while_one_is_changed_a_sign_goes_back_to_the_choice() {
    let mut dialogue = answered(&full());
    let before = dialogue.made().unwrap().text;
    decide(&mut dialogue, &of("door", "#door"));
    dialogue.answer("swing-up").unwrap();
    dialogue.answer("41 mm").unwrap();
    for _ in 0..3 {
        dialogue.answer("<").unwrap();
    }
    assert!(dialogue.prompt().is_none());
    assert_eq!(written(&mut dialogue).text, before);
}

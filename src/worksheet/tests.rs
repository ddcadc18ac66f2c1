//! Does the file say what was answered, and only that?

use std::collections::BTreeSet;

use super::*;
use crate::bay::{Bay, Ceiling, Door, Floor, Opener, TrackLayout, UnitSystem};
use crate::bayfile::presets::EmbeddedOnly;
use crate::bayfile::read;
use crate::units::{Length, parse_length};

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
    for (ceiling, door, layout, opener, floor) in [
        ("flat", "sectional", "high-lift", "trolley", "level"),
        ("sloped", "roll-up", "", "wall-mounted", "door"),
        ("gable", "swing-up", "", "none", "left"),
        ("stepped", "side-hinged", "", "", ""),
    ] {
        let says = [
            (of("room", "#ceiling"), ceiling),
            (of("door", "#door"), door),
            (of("door", "#layout"), layout),
            (of("opener", "#opener"), opener),
            (of("room", "#floor"), floor),
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
fn with_nothing_known_everything_is_marked_and_still_it_is_a_bay() {
    let (dialogue, _) = asked(&[]);
    let made = dialogue.made().unwrap();
    let bay = bay(&made);
    assert!(bay.title.contains("NOT MEASURED"), "{}", bay.title);
    assert!(made.not_measured.len() > 30);
    assert!(made.text.contains("// NOT MEASURED: width") || made.text.contains("NOT MEASURED:"));
    // No invented light, no invented slab, no invented person.
    assert!(bay.garage.obstacles.is_empty());
    assert!(bay.slab.is_none() && bay.power.is_none());
    assert!(bay.policy.people.is_empty());
    assert!(!made.text.contains("<placeholder"));
    // Each question whose value stands in the file is on a marked line.
    for words in [
        "garage.width",
        "garage.opening.width",
        "lift.post_line",
        "parking.repeat.along",
    ] {
        assert!(made.text.contains(&format!("({words})")), "{words}");
        let field = words.rsplit('.').next().unwrap();
        let marked =
            |line: &str| line.contains(&format!("{field}: ")) && line.contains("// NOT MEASURED");
        assert!(made.text.lines().any(marked), "{words}");
    }
}

/// An answer for every question, each another, so that a value in the wrong place is seen.
fn full() -> Vec<(String, String)> {
    let mut says = Vec::new();
    let mut put = |section: &str, key: &str, line: &str| {
        says.push((of(section, key), line.to_owned()));
    };
    for (section, key, line) in [
        ("start", "title", "The \"long\" shed"),
        ("start", "units", "metric"),
        ("start", "#measured", "Ida, 3 May"),
        ("door", "garage.opening.width", "10 ft 1 in"),
        ("door", "garage.opening.height", "2601 mm"),
        ("door", "garage.opening.offset", "-105 mm"),
        ("door", "garage.opening.wall_thickness", "151 mm"),
        ("door", "#door", "sect"),
        ("door", "#layout", "high-lift"),
        ("door", "#extra", "402 mm"),
        ("door", "garage.door.panel_thickness", "46 mm"),
        ("door", "garage.door.panel_height", "531 mm"),
        ("door", "garage.door.track_radius", "381 mm"),
        ("door", "garage.door.track_offset", "91 mm"),
        ("door", "garage.door.track_section", "76 mm"),
        ("door", "garage.door.track_length", "1803 mm"),
        ("door", "garage.door.spring.height", "3504 mm"),
        ("door", "garage.door.spring.out", "131 mm"),
        ("door", "garage.door.spring.diameter", "152 mm"),
        ("door", "garage.door.top_bracket", "77 mm"),
        ("door", "#open_lowest", "2 m"),
        ("room", "garage.width", "7301 mm"),
        ("room", "garage.depth", "9502 mm"),
        ("room", "#ceiling", "flat"),
        ("room", "garage.ceiling.height", "4205 mm"),
        ("room", "#floor", "door"),
        ("room", "#fall.drop", "15 mm"),
        ("room", "#fall.run", "3 m"),
        ("opener", "#opener", "wall-mounted"),
        ("opener", "garage.opener.side", "left"),
        ("opener", "garage.opener.width", "203 mm"),
        ("opener", "garage.opener.depth", "191 mm"),
        ("opener", "garage.opener.height", "452 mm"),
        ("opener", "garage.opener.bottom", "2804 mm"),
        ("opener", "garage.opener.beside", "205 mm"),
        ("things", "name", "lamp"),
        ("things", "kind", "light"),
        ("things", "x", "-1501 mm"),
        ("things", "y", "6002 mm"),
        ("things", "bottom", "3903 mm"),
        ("things", "width", "154 mm"),
        ("things", "depth", "1205 mm"),
        ("things", "height", "106 mm"),
        ("things", "#removable", "yes"),
        ("readings", "x", "-1407 mm"),
        ("readings", "y", "4408 mm"),
        ("readings", "thickness", "159 mm"),
        ("lines", "kind", "joint"),
        ("lines", "from.x", "-3 m"),
        ("lines", "from.y", "3001 mm"),
        ("lines", "to.x", "3002 mm"),
        ("lines", "to.y", "3003 mm"),
        ("slab", "slab.claimed_thickness", "6 in"),
        ("slab", "slab.strength", "25 MPa"),
        ("slab", "slab.poured", "1998-06-01"),
        ("slab", "#to_walls", "yes"),
        ("slab", "slab.post_tensioned", "no"),
        ("slab", "slab.heated", "n"),
        ("slab", "slab.buried_services", "NO"),
        ("slab", "slab.void_below", "no"),
        ("slab", "slab.suspended", "no"),
        ("supply", "power.voltage", "230 V"),
        ("supply", "power.breaker", "30 A"),
        ("supply", "power.run", "12 m"),
        ("supply", "power.conductor", "awg 10"),
        ("supply", "arrangements.panel_space.width", "801 mm"),
        ("supply", "arrangements.panel_space.depth", "1002 mm"),
        ("supply", "arrangements.panel_space.height", "2003 mm"),
        ("supply", "arrangements.permit", "not needed"),
        ("supply", "arrangements.landlord", "given"),
        ("supply", "arrangements.insurer", "given"),
        ("supply", "#note", "ask about the drain"),
        ("lift", "lift.preset", "tall-columns-12-8"),
        ("lift", "lift.post_line", "4601 mm"),
        ("lift", "lift.across", "12 mm"),
        ("lift", "lift.capacity", "9001 lb"),
        ("vehicle", "vehicle.preset", "estate"),
        ("vehicle", "vehicle.height", "1502 mm"),
        ("vehicle", "vehicle.axle_loads.front", "901 kg"),
        ("vehicle", "vehicle.axle_loads.rear", "702 kg"),
        ("fixed", "name", "box"),
        ("fixed", "from", "1501 mm"),
        ("fixed", "to", "3002 mm"),
        ("fixed", "width", "703 mm"),
        ("fixed", "bottom", "1554 mm"),
        ("fixed", "top", "1905 mm"),
        ("parking", "parking.facing", "tail in"),
        ("parking", "#aim", "25 mm"),
        ("parking", "parking.repeat.along", "41 mm"),
        ("parking", "parking.repeat.across", "22 mm"),
        ("parking", "parking.repeat.yaw", "0.4 deg"),
        ("parking", "parking.pad_raise", "23 mm"),
        ("people", "name", "Ida"),
        ("people", "height", "1731 mm"),
        ("trust", "policy.measured_garage", "7 mm"),
        ("trust", "policy.measured_vehicle", "8 mm"),
        ("trust", "policy.measured_lift", "4 mm"),
        ("trust", "policy.over_vehicle", "81 mm"),
        ("trust", "policy.beside_vehicle", "62 mm"),
    ] {
        put(section, key, line);
    }
    says
}

fn made_of(says: &[(String, String)]) -> Made {
    let says: Vec<(&str, &str)> = says.iter().map(|(n, s)| (n.as_str(), s.as_str())).collect();
    asked(&says).0.made().unwrap()
}

fn near(is: Length, typed: &str) {
    let wanted = parse_length(typed).unwrap();
    assert!((is - wanted).abs().m() < 1e-9, "{is:?} for {typed}");
}

#[test]
fn every_value_is_where_it_belongs_as_it_was_typed() {
    let made = made_of(&full());
    assert_eq!(made.not_measured, Vec::<String>::new());
    let bay = bay(&made);
    assert_eq!(
        (bay.title.as_str(), bay.units),
        ("The \"long\" shed", UnitSystem::Metric)
    );
    for words in [
        "Measured: Ida, 3 May",
        "To remember: ask about the drain",
        "// Answers",
    ] {
        assert!(made.text.contains(words), "{words}");
    }
    let garage = &bay.garage;
    near(garage.opening.width, "10 ft 1 in");
    near(garage.opening.height, "2601 mm");
    near(garage.opening.offset, "-105 mm");
    near(garage.opening.wall_thickness, "151 mm");
    near(garage.width, "7301 mm");
    near(garage.depth, "9502 mm");
    let Ceiling::Flat { height } = garage.ceiling else {
        panic!("{:?}", garage.ceiling)
    };
    near(height, "4205 mm");
    let Floor::Fall { slope, .. } = garage.floor else {
        panic!("{:?}", garage.floor)
    };
    assert!((slope - 0.005).abs() < 1e-12);
    let Door::Sectional(door) = &garage.door else {
        panic!("{:?}", garage.door)
    };
    let TrackLayout::HighLift { extra } = door.layout else {
        panic!("{:?}", door.layout)
    };
    near(extra, "402 mm");
    near(door.panel_thickness, "46 mm");
    near(door.panel_height, "531 mm");
    near(door.track_radius, "381 mm");
    near(door.track_offset, "91 mm");
    near(door.track_section, "76 mm");
    near(door.track_length, "1803 mm");
    let spring = door.spring.unwrap();
    near(spring.height, "3504 mm");
    near(spring.out, "131 mm");
    near(spring.diameter, "152 mm");
    near(door.top_bracket, "77 mm");
    let Opener::WallMounted(opener) = &garage.opener else {
        panic!("{:?}", garage.opener)
    };
    near(opener.width, "203 mm");
    near(opener.depth, "191 mm");
    near(opener.height, "452 mm");
    near(opener.bottom, "2804 mm");
    near(opener.beside, "205 mm");
    assert_eq!(
        (garage.obstacles.len(), garage.obstacles[0].name.as_str()),
        (1, "lamp")
    );
    assert!(garage.obstacles[0].removable.is_some());
    let slab = bay.slab.as_ref().unwrap();
    near(slab.readings[0].x, "-1407 mm");
    near(slab.readings[0].y, "4408 mm");
    near(slab.readings[0].thickness, "159 mm");
    assert_eq!(slab.lines.len(), 1);
    near(slab.claimed_thickness.unwrap(), "6 in");
    assert!(slab.strength.is_some() && slab.poured.is_some());
    assert_eq!(
        [
            slab.post_tensioned,
            slab.heated,
            slab.buried_services,
            slab.void_below,
            slab.suspended
        ],
        [Some(false); 5]
    );
    // The left wall lies half the width and the offset from the door's middle.
    assert_eq!(slab.outline.len(), 4);
    near(slab.outline[0][0], "-3545.5 mm");
    near(slab.outline[1][0], "3755.5 mm");
    near(slab.outline[2][1], "9502 mm");
    let power = bay.power.as_ref().unwrap();
    assert!(power.voltage.is_some() && power.breaker.is_some() && power.conductor.is_some());
    let arrangements = bay.arrangements.as_ref().unwrap();
    near(arrangements.panel_space.unwrap()[1], "1002 mm");
    assert!(arrangements.permit.is_some());
    near(bay.lift.post_line, "4601 mm");
    near(bay.lift.across, "12 mm");
    assert!((bay.lift.capacity.kg() - 9001.0 * 0.453_592_37).abs() < 1e-6);
    near(bay.vehicle.height, "1502 mm");
    assert!((bay.vehicle.axle_loads.unwrap()[1].kg() - 702.0).abs() < 1e-9);
    near(bay.vehicle.attached[0].top, "1905 mm");
    near(bay.parking.repeat_along, "41 mm");
    near(bay.parking.repeat_across, "22 mm");
    assert_eq!(bay.parking.facing, crate::bay::Facing::TailIn);
    near(bay.policy.people[0].height, "1731 mm");
    near(bay.policy.measured_garage, "7 mm");
    near(bay.policy.measured_vehicle, "8 mm");
    near(bay.policy.measured_lift, "4 mm");
    near(bay.policy.over_vehicle, "81 mm");
    near(bay.policy.beside_vehicle, "62 mm");
    // The open door was read far lower than its figures say.
    assert!(
        made.notes.iter().any(|note| note.contains("HANGS LOWER")),
        "{:?}",
        made.notes
    );
    assert!(made.text.contains("HANGS LOWER"));
}

#[test]
fn each_answer_left_empty_is_missing_or_marked_and_never_filled() {
    let full = full();
    let says: Vec<(&str, &str)> = full.iter().map(|(n, s)| (n.as_str(), s.as_str())).collect();
    let answers = asked(&says).0.answers;
    let whole = answers.bay_file(false).unwrap();
    let mut looked_at = 0;
    for (number, line) in &full {
        // Names open a thing; what hangs on them goes with them.
        let section: usize = number.split('.').next().unwrap().parse().unwrap();
        let section = &sections()[section - 1];
        if section.repeat.is_some() || *number == of("start", "units") {
            continue;
        }
        let question: usize = number.split('.').nth(1).unwrap().parse().unwrap();
        let key = section.questions[question - 1].key;
        let mut fewer = answers.clone();
        fewer.clear(section.id, 0, key);
        // The aim is looked for where it is not given, else it is the starter's.
        let made = fewer.bay_file(false).unwrap();
        looked_at += 1;
        let quiet = ["#open_lowest", "#measured", "#note", "title"];
        assert_ne!(made.text, whole.text, "{number} {line} changes nothing");
        if quiet.contains(&key) || key.starts_with("policy.") || key == "#aim" {
            continue;
        }
        let listed = made.not_measured.len() + made.typical.len() + made.notes.len()
            > whole.not_measured.len() + whole.typical.len() + whole.notes.len();
        // What a remark shows as an example is not filled in.
        let values = made
            .text
            .lines()
            .map(|line| line.split("//").next().unwrap_or(""));
        let absent = values
            .into_iter()
            .all(|text| !text.contains(&format!("\"{line}\"")))
            || line.len() < 5;
        assert!(listed || absent, "{number} {line}: {:?}", made.not_measured);
    }
    assert!(looked_at > 60);
}

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
fn a_true_door_is_not_refused_for_a_room_that_nobody_measured() {
    let made = made_of(&[
        (of("door", "garage.opening.width"), "40 ft".into()),
        (of("door", "garage.opening.height"), "18 ft".into()),
        (of("lift", "lift.post_line"), "60 ft".into()),
    ]);
    let bay = bay(&made);
    near(bay.garage.opening.width, "40 ft");
    assert!(
        made.not_measured
            .iter()
            .any(|what| what.contains("Width, wall to wall"))
    );
}

#[test]
fn a_thing_that_was_not_measured_through_is_named_and_left_out() {
    let made = made_of(&[
        (of("things", "name"), "heater by the door".into()),
        (of("things", "kind"), "heater".into()),
    ]);
    assert!(bay(&made).garage.obstacles.is_empty());
    assert!(
        made.notes
            .iter()
            .any(|note| note.contains("heater by the door")),
        "{:?}",
        made.notes
    );
    assert!(made.text.contains("NOT IN THIS FILE"));
}

#[test]
fn the_same_answers_make_the_same_file() {
    assert_eq!(made_of(&full()).text, made_of(&full()).text);
}

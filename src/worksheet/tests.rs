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
            (of("lift", "#tie"), "overhead beam"),
            (of("lift", "#bar"), "yes"),
            (of("room", "#step.more"), "yes"),
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
        let label = label(words);
        let label = if label.is_empty() {
            words.into()
        } else {
            label
        };
        assert!(made.not_measured.contains(&label), "{words}");
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
        ("place", "lift.post_line", "4601 mm"),
        ("place", "lift.across", "12 mm"),
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
    // The open door, which was read far lower than its figures say, and a preset's figures.
    assert!(
        made.not_measured
            .iter()
            .any(|what| what.contains("lower than the figures"))
    );
    let of_preset = |what: &&String| !what.contains(", a preset's figure");
    assert_eq!(made.not_measured.iter().filter(of_preset).count(), 1);
    assert!(
        !made
            .not_measured
            .iter()
            .any(|what| what.starts_with(&label("vehicle.height")))
    );
    assert!(
        made.not_measured
            .iter()
            .any(|what| what.starts_with(&label("vehicle.length")))
    );
    let bay = bay(&made);
    assert_eq!(bay.not_measured, made.not_measured);
    assert!(
        bay.title.starts_with("The \"long\" shed ("),
        "{}",
        bay.title
    );
    assert_eq!(bay.units, UnitSystem::Metric);
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
        (of("place", "lift.post_line"), "60 ft".into()),
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
    assert!(
        made.not_measured
            .iter()
            .any(|what| what.starts_with("heater by the door"))
    );
}

#[test]
fn the_same_answers_make_the_same_file() {
    assert_eq!(made_of(&full()).text, made_of(&full()).text);
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

#[test]
fn a_file_of_placeholders_is_never_called_safe_whatever_its_title() {
    let made = made_of(&[]);
    let what = is_withheld(&made);
    assert!(what.contains(&label("garage.width")), "{what:?}");
    let renamed = made.text.replace(" values NOT MEASURED)", " cars)");
    let bay = read("asked", renamed.as_bytes(), &EmbeddedOnly)
        .unwrap()
        .bay;
    assert!(!bay.title.contains("NOT MEASURED"));
    let study = crate::clearance::study(&bay).unwrap();
    assert_eq!(study.highest_safe_lock, None);
    assert!(
        crate::report::why_not_safe(&bay, &study).is_some_and(|why| why.contains("NOT MEASURED"))
    );
}

#[test]
fn a_thing_that_is_there_and_not_measured_withholds_every_lock() {
    for (section, name, more) in [
        ("things", "main beam", ("kind", "beam")),
        ("fixed", "ladder rack", ("bottom", "78 in")),
    ] {
        let mut says = measured();
        says.retain(|(number, _)| *number != of(section, "name"));
        says.push((of(section, "name"), name.into()));
        says.push((of(section, more.0), more.1.into()));
        let made = made_of(&says);
        let what = is_withheld(&made);
        assert_eq!(what.len(), 1, "{what:?}");
        assert!(what[0].contains(name), "{what:?}");
        // What was answered is kept beside it, with a sign for what was not.
        let path = if section == "things" {
            "garage.obstacles"
        } else {
            "vehicle.attached"
        };
        assert!(made.text.contains(&format!("put it into {path}: [..]:")));
        let draft = made.text.lines().find(|line| {
            line.trim_start().starts_with("// ") && line.contains(&format!("name: \"{name}\""))
        });
        let draft = draft.unwrap_or_else(|| panic!("{}", made.text));
        assert!(draft.contains("width: ?"), "{draft}");
        assert!(
            draft.contains("bottom: \"78 in\"") || draft.contains("kind: Beam"),
            "{draft}"
        );
        let bay = bay(&made);
        let study = crate::clearance::study(&bay).unwrap();
        let why = crate::report::why_not_safe(&bay, &study).unwrap();
        assert!(why.contains("NOT MEASURED"), "{why}");
    }
    // With nothing there the same answers leave a verdict.
    let made = made_of(&measured());
    assert_eq!(made.not_measured, Vec::<String>::new());
    assert!(made.text.find("not_measured").is_none());
}

#[test]
fn the_open_door_read_lower_than_worked_out_withholds_every_lock() {
    let mut says = full();
    let is_lower = |what: &String| what.contains("lower than the figures");
    assert!(is_withheld(&made_of(&says)).iter().any(is_lower));
    for (number, line) in &mut says {
        if *number == of("door", "#open_lowest") {
            *line = "2590 mm".into();
        }
    }
    assert!(!made_of(&says).not_measured.iter().any(is_lower));
}

#[test]
fn a_presets_figure_in_the_place_of_ones_own_withholds_where_it_decides_clearance() {
    let mut says = measured();
    says.retain(|(number, _)| *number != of("vehicle", "vehicle.height"));
    let what = is_withheld(&made_of(&says));
    assert_eq!(what.len(), 1, "{what:?}");
    assert!(what[0].starts_with(&label("vehicle.height")), "{what:?}");
    // What was neither asked for nor answered is told of.
    let made = made_of(&measured());
    assert!(
        made.not_asked.contains(&"lift.carriage.proud".into()),
        "{:?}",
        made.not_asked
    );
    assert!(made.text.contains("lift.carriage.proud"));
}

#[test]
fn a_presets_load_latch_or_marked_edge_withholds_every_lock() {
    for (section, key) in [
        ("lift", "lift.set_overtravel"),
        ("lift", "lift.release_overtravel"),
        ("lift", "lift.capacity"),
        ("lift", "lift.arm_capacity"),
        ("lift", "lift.carriage.marked_edge"),
        ("lift", "lift.base_plate.width"),
        ("vehicle", "vehicle.axle_loads.front"),
        ("vehicle", "vehicle.axle_loads.rear"),
    ] {
        let mut says = measured();
        let mut left = vec![key];
        if key == "lift.capacity" {
            // An arm's own figure alone, or none: the capacity is the preset's either way.
            left.push("lift.arm_capacity");
        }
        says.retain(|(number, _)| left.iter().all(|key| *number != of(section, key)));
        let made = made_of(&says);
        if key == "lift.arm_capacity" {
            // Beside a capacity of one's own no preset's figure stays: a quarter of it is taken.
            assert_eq!(made.not_measured, Vec::<String>::new());
            assert_eq!(bay(&made).lift.arm_capacity, None);
            continue;
        }
        let what = is_withheld(&made);
        for key in left {
            let starts = |one: &String| one.starts_with(&label(key));
            assert!(what.iter().any(starts), "{key}: {what:?}");
            assert!(made.text.contains(&format!("// {key}\n")), "{key}");
        }
    }
}

#[test]
fn a_smaller_capacity_makes_the_arms_weaker_too() {
    let mut says = measured();
    says.retain(|(number, _)| {
        ["lift.capacity", "lift.arm_capacity"]
            .iter()
            .all(|key| *number != of("lift", key))
    });
    says.push((of("lift", "lift.capacity"), "7000 lb".into()));
    let made = made_of(&says);
    assert_eq!(bay(&made).lift.arm_capacity, None);
    assert!(made.notes.iter().any(|note| note.contains("a quarter")));
    says.push((of("lift", "lift.arm_capacity"), "1800 lb".into()));
    assert!(bay(&made_of(&says)).lift.arm_capacity.is_some());
}

#[test]
fn a_presets_beam_never_floats_over_columns_that_were_measured() {
    let underside = |made: &Made| match bay(made).lift.tie {
        crate::bay::Tie::OverheadBeam { underside, .. } => underside,
        crate::bay::Tie::FloorPlate { .. } => panic!("a beam"),
    };
    let without = |keys: &[&str]| {
        let mut says = measured();
        says.retain(|(number, _)| keys.iter().all(|key| *number != of("lift", key)));
        says
    };
    for column in ["10 ft 10 in", "13 ft 6 in"] {
        let mut says = without(&["lift.column.height", "#tie"]);
        says.push((of("lift", "lift.column.height"), column.into()));
        let made = made_of(&says);
        // The preset's beam is 5 in high: it lies with its top at the top of the columns.
        let top = parse_length(column).unwrap();
        assert!((underside(&made).m() - (top.m() - 0.127)).abs() < 0.02);
        assert!(is_withheld(&made).contains(&label("#tie.underside")));
        let mut says = without(&["lift.column.height", "#tie.underside"]);
        says.push((of("lift", "lift.column.height"), column.into()));
        says.push((of("lift", "#tie.underside"), "10 ft 4 in".into()));
        let made = made_of(&says);
        near(underside(&made), "10 ft 4 in");
        assert_eq!(made.not_measured, Vec::<String>::new());
    }
    let mut says = without(&["#tie"]);
    says.push((of("lift", "#tie"), "floor plate".into()));
    let tie = bay(&made_of(&says)).lift.tie;
    assert!(matches!(tie, crate::bay::Tie::FloorPlate { .. }));
}

/// Every figure of a room without door and opener, and nothing in it.
fn measured() -> Vec<(String, String)> {
    [
        ("door", "garage.opening.width", "10 ft"),
        ("door", "garage.opening.height", "9 ft"),
        ("door", "garage.opening.offset", "0 in"),
        ("door", "garage.opening.wall_thickness", "6 in"),
        ("door", "#door", "none"),
        ("room", "garage.width", "24 ft"),
        ("room", "garage.depth", "30 ft"),
        ("room", "#ceiling", "flat"),
        ("room", "garage.ceiling.height", "15 ft"),
        ("room", "#floor", "level"),
        ("opener", "#opener", "none"),
        ("things", "name", "none"),
        ("place", "lift.post_line", "15 ft"),
        ("place", "lift.across", "0 in"),
        ("lines", "kind", "none"),
        ("lift", "lift.preset", "tall-columns-11-10"),
        ("lift", "lift.column.height", "11 ft 10 in"),
        ("lift", "#tie", "overhead beam"),
        ("lift", "#tie.underside", "11 ft 4 in"),
        ("lift", "#tie.height", "5 in"),
        ("lift", "#tie.width", "8 in"),
        ("lift", "#bar", "yes"),
        ("lift", "#bar.drop", "5 in"),
        ("lift", "lift.spacing", "9 ft 8 in"),
        ("lift", "lift.drive_through", "98 in"),
        ("lift", "lift.travel", "72 in"),
        ("lift", "lift.carriage.marked_edge", "36 1/4 in"),
        ("lift", "lift.base_plate.width", "18 in"),
        ("lift", "lift.base_plate.depth", "18 in"),
        ("lift", "lift.base_plate.thickness", "3/4 in"),
        ("lift", "#locks.first", "12 in"),
        ("lift", "#locks.pitch", "4 in"),
        ("lift", "#locks.count", "15"),
        ("lift", "lift.pad.lowest", "4 in"),
        ("lift", "lift.pad.screw_travel", "3 in"),
        ("lift", "lift.arms.front.shortest", "24 in"),
        ("lift", "lift.arms.front.longest", "46 in"),
        ("lift", "lift.arms.rear.shortest", "30 in"),
        ("lift", "lift.arms.rear.longest", "60 in"),
        ("lift", "lift.set_overtravel", "1 in"),
        ("lift", "lift.release_overtravel", "1 in"),
        ("lift", "lift.capacity", "10000 lb"),
        ("lift", "lift.arm_capacity", "2500 lb"),
        ("vehicle", "vehicle.preset", "pickup-half-ton-crew-cab"),
        ("vehicle", "vehicle.height", "76 in"),
        ("vehicle", "vehicle.length", "232 in"),
        ("vehicle", "vehicle.body_width", "80 in"),
        ("vehicle", "vehicle.mirrors.width_over", "96 in"),
        ("vehicle", "vehicle.wheelbase", "145 in"),
        ("vehicle", "vehicle.front_overhang", "38 in"),
        ("vehicle", "vehicle.track.front", "68 in"),
        ("vehicle", "vehicle.track.rear", "68 in"),
        ("vehicle", "vehicle.tyre.diameter", "32 in"),
        ("vehicle", "vehicle.tyre.width", "11 in"),
        ("vehicle", "vehicle.lift_points.front.station", "72 in"),
        ("vehicle", "vehicle.lift_points.front.half_spacing", "22 in"),
        ("vehicle", "vehicle.lift_points.front.height", "16 in"),
        ("vehicle", "vehicle.lift_points.rear.station", "146 in"),
        ("vehicle", "vehicle.lift_points.rear.half_spacing", "22 in"),
        ("vehicle", "vehicle.lift_points.rear.height", "16 in"),
        ("vehicle", "vehicle.axle_loads.front", "2900 lb"),
        ("vehicle", "vehicle.axle_loads.rear", "2100 lb"),
        ("fixed", "name", "none"),
        ("parking", "parking.facing", "nose in"),
        ("parking", "parking.repeat.along", "2 in"),
        ("parking", "parking.repeat.across", "1 in"),
        ("parking", "parking.repeat.yaw", "0.5 deg"),
        ("parking", "parking.pad_raise", "3 in"),
    ]
    .map(|(section, key, line)| (of(section, key), line.to_owned()))
    .into()
}

#[test]
fn a_question_mark_explains_no_is_none_and_a_sign_goes_back() {
    let mut dialogue = Dialogue::default();
    let said = dialogue.answer("?").unwrap().unwrap();
    assert!(said.contains("headed with"), "{said}");
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
fn locks_that_are_not_alike_and_a_second_step_are_written_each() {
    let mut says = measured();
    says.retain(|(number, _)| {
        !["#locks.first", "#locks.pitch", "#locks.count"]
            .iter()
            .any(|key| *number == of("lift", key))
            && *number != of("room", "#ceiling")
    });
    for (section, key, line) in [
        ("lift", "#locks.each", "12 in, 15 1/2 in; 400 mm"),
        ("room", "#ceiling", "stepped"),
        ("room", "#step.height", "14 ft"),
        ("room", "#step.from", "10 ft"),
        ("room", "#step.next", "15 ft"),
        ("room", "#step.more", "yes"),
        ("room", "#step.second", "20 ft"),
        ("room", "#step.last", "13 ft"),
    ] {
        says.push((of(section, key), line.into()));
    }
    let made = made_of(&says);
    assert_eq!(made.not_measured, Vec::<String>::new());
    let bay = bay(&made);
    assert_eq!(bay.lift.locks.len(), 3);
    near(bay.lift.locks[2], "400 mm");
    let Ceiling::Stepped { steps, .. } = &bay.garage.ceiling else {
        panic!("{:?}", bay.garage.ceiling)
    };
    assert_eq!(steps.len(), 3);
}

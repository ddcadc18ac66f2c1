//! Does what is not measured withhold every lock?

use super::*;

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
        ("under", "transfer case", ("height", "8 in")),
    ] {
        let mut says = measured();
        let own = of(section, "name");
        let own = own.split_once('.').map(|(at, _)| format!("{at}.")).unwrap();
        says.retain(|(number, _)| !number.starts_with(&own));
        says.push((of(section, "name"), name.into()));
        says.push((of(section, more.0), more.1.into()));
        let made = made_of(&says);
        let what = is_withheld(&made);
        assert_eq!(what.len(), 1, "{what:?}");
        assert!(what[0].contains(name), "{what:?}");
        // What was answered is kept beside it, with a sign for what was not.
        let path = match section {
            "things" => "garage.obstacles",
            "under" => "vehicle.underbody",
            _ => "vehicle.attached",
        };
        assert!(made.text.contains(&format!("put it into {path}: [..]:")));
        let draft = made.text.lines().find(|line| {
            line.trim_start().starts_with("// ") && line.contains(&format!("name: \"{name}\""))
        });
        let draft = draft.unwrap_or_else(|| panic!("{}", made.text));
        assert!(draft.contains("width: ?"), "{draft}");
        let said = ["bottom: \"78 in\"", "kind: Beam", "height: \"8 in\""];
        assert!(said.iter().any(|said| draft.contains(said)), "{draft}");
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
        ("lift", "lift.base_plate.inward"),
        ("vehicle", "vehicle.sill"),
        ("vehicle", "vehicle.belt"),
        ("vehicle", "vehicle.mirrors.station"),
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
fn somebody_elses_underbody_is_no_answer_and_never_stands_in_the_way_of_ones_own() {
    let without = |keys: &[(&str, &str)]| {
        let mut says = measured();
        let under = of("under", "name")
            .split_once('.')
            .map(|(at, _)| format!("{at}."));
        let under = under.unwrap();
        says.retain(|(number, _)| !number.starts_with(&under));
        for (key, line) in keys {
            says.retain(|(number, _)| *number != of("vehicle", key));
            says.push((of("vehicle", key), (*line).into()));
        }
        says
    };
    let all = format!("{}: whether these are all", section_label("under"));
    assert_eq!(
        is_withheld(&made_of(&without(&[]))),
        std::slice::from_ref(&all)
    );
    // A sill below the preset's own gearbox, in a walk where nobody looked below.
    let lower = made_of(&without(&[("vehicle.sill", "8 in")]));
    assert_eq!(is_withheld(&lower), [all]);
    assert!(bay(&lower).vehicle.underbody.is_empty());
    // Nothing hangs below: said, and so it is.
    let mut says = without(&[]);
    says.push((of("under", "name"), "none".into()));
    let made = made_of(&says);
    assert_eq!(made.not_measured, Vec::<String>::new());
    assert!(bay(&made).vehicle.underbody.is_empty());
}

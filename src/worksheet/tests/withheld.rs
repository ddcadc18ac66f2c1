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
    // And the outline, which is as high as the preset.
    assert_eq!(what.len(), 2, "{what:?}");
    assert!(what[0].starts_with(&section_label("roof")), "{what:?}");
    assert!(what[1].starts_with(&label("vehicle.height")), "{what:?}");
    // Nothing that is left to a preset decides anything.
    let made = made_of(&measured());
    for path in &made.of_presets {
        let harmless = [
            "lift.motor",
            "lift.hydraulics",
            "lift.shipping_mass",
            "vehicle.style",
        ];
        let harmless = harmless.iter().any(|may| path.starts_with(may));
        assert!(harmless || path.ends_with(".zero"), "{path}");
    }
    assert!(made.text.contains("lift.hydraulics"));
}

/// Whatever a preset has, and however it came to have it: with any one answer of lift or vehicle
/// missing the lock is withheld, or what stood there is taken out of the file.
#[test]
fn no_figure_of_a_preset_stands_behind_a_safe_lock() {
    let all = measured();
    let made = made_of(&all);
    assert_eq!(made.not_measured, Vec::<String>::new());
    assert!(
        crate::clearance::study(&bay(&made))
            .unwrap()
            .highest_safe_lock
            .is_some(),
        "with all of it answered a lock is safe"
    );
    // Left empty they fall back to what is on the safe side, or on the study's own usual figure.
    let safe = ["lift.arm_capacity", "lift.preset", "vehicle.preset"];
    let mut looked_at = 0;
    for section in sections()
        .iter()
        .filter(|one| ["lift", "vehicle"].contains(&one.id))
    {
        for question in section.questions {
            let number = of(section.id, question.key);
            if safe.contains(&question.key) || !all.iter().any(|(one, _)| *one == number) {
                continue;
            }
            let mut says = all.clone();
            says.retain(|(one, _)| *one != number);
            // That the list withholds is what `is_withheld` sees elsewhere; a study each takes minutes.
            let made = made_of(&says);
            assert!(!made.not_measured.is_empty(), "{}", question.key);
            assert_eq!(
                bay(&made).not_measured,
                made.not_measured,
                "{}",
                question.key
            );
            looked_at += 1;
        }
    }
    assert!(looked_at > 70, "{looked_at}");
    // What was not said at all: the file has no figure of a preset for it.
    let bay = bay(&made);
    assert!(bay.lift.base_plate.anchors.is_empty());
    assert_eq!(bay.lift.base_plate.anchor_diameter, None);
    assert_eq!(bay.lift.manual, crate::bay::SlabDemand::default());
    assert_eq!(bay.lift.advertised, crate::bay::SlabDemand::default());
    assert!(bay.lift.pad.adapters.is_empty());
    assert!(bay.vehicle.opening_parts.is_empty() && bay.vehicle.masses.is_empty());
    assert_eq!(bay.vehicle.cg_height, None);
    near(bay.lift.overshoot, "1 in");
    near(bay.lift.side_mismatch, "1/2 in");
    for what in [label("#holes"), label("lift.manual.thickness")] {
        assert!(made.not_known.contains(&what), "{what}");
        assert!(made.text.contains(&what), "{what}");
    }
}

#[test]
fn an_outline_that_was_not_measured_is_as_high_and_wide_as_the_body_all_along() {
    let whole = |made: &Made| {
        let vehicle = bay(made).vehicle;
        vehicle.roof.iter().all(|place| {
            (place.height - vehicle.height).abs().m() < 1e-9
                && (place.half_width * 2.0 - vehicle.body_width).abs().m() < 1e-9
        })
    };
    assert!(whole(&made_of(&measured())));
    // Three places and the word that there are no more.
    let of_roof = |lines: &[&str]| {
        let mut dialogue = Dialogue::default();
        let says = measured();
        while let Some(prompt) = dialogue.prompt() {
            if prompt.number == of("roof", "station") && prompt.what.contains(" 1: ") {
                for line in lines {
                    dialogue.answer(line).unwrap();
                }
                continue;
            }
            let said = says.iter().find(|(number, _)| *number == prompt.number);
            let list = prompt.takes.contains("nothing more");
            let line = match said {
                Some((_, line)) if !list || prompt.what.contains(" 1: ") => line.as_str(),
                _ if list => "none",
                _ => "",
            };
            dialogue.answer(line).unwrap();
        }
        dialogue.made().unwrap()
    };
    let places = [
        "0 in", "40 in", "34 in", "90 in", "76 in", "28 in", "232 in", "57 in", "37 in",
    ];
    let mut said = places.to_vec();
    said.push("none");
    let made = of_roof(&said);
    let roof = bay(&made).vehicle.roof;
    assert_eq!(roof.len(), 3);
    near(roof[1].station, "90 in");
    near(roof[2].height, "57 in");
    near(roof[0].half_width, "34 in");
    assert_eq!(made.not_measured, Vec::<String>::new());
    // One figure missing, or nobody said that they are all.
    let mut said = places.to_vec();
    said[5] = "";
    said.push("none");
    assert!(whole(&of_roof(&said)));
    let mut said = places.to_vec();
    said.push("");
    let made = of_roof(&said);
    assert!(whole(&made));
    assert!(made.notes.iter().any(|note| note.contains("not complete")));
}

#[test]
fn without_any_size_of_the_body_it_is_a_box_of_the_presets_sizes_and_not_measured() {
    let roof = section_label("roof");
    for vehicle in crate::bayfile::presets::vehicles() {
        let says = [(of("vehicle", "vehicle.preset"), vehicle.name.to_owned())];
        let made = made_of(&says);
        let vehicle = bay(&made).vehicle;
        assert_eq!(vehicle.roof.len(), 2, "{}", vehicle.name);
        for place in &vehicle.roof {
            assert!((place.height - vehicle.height).abs().m() < 1e-9);
            assert!((place.half_width * 2.0 - vehicle.body_width).abs().m() < 1e-9);
        }
        assert!(made.not_measured.iter().any(|what| what.starts_with(&roof)));
    }
    // A width of somebody else's: the outline is not one's own for having the other two.
    let mut says = measured();
    says.retain(|(number, _)| *number != of("vehicle", "vehicle.body_width"));
    assert!(
        is_withheld(&made_of(&says))
            .iter()
            .any(|what| what.starts_with(&roof))
    );
}

#[test]
fn an_outline_over_a_body_that_was_not_measured_is_kept_as_a_draft() {
    let mut answers = Answers::default();
    for (item, station) in [(0, "\"0 in\""), (1, "\"190 in\"")] {
        answers.more("roof");
        for (key, ron) in [
            ("station", station),
            ("height", "\"61 in\""),
            ("half_width", "\"30 in\""),
        ] {
            answers.put("roof", item, key, ron.into());
        }
    }
    answers.close("roof", true);
    let made = answers.bay_file(false).unwrap();
    let vehicle = bay(&made).vehicle;
    near(vehicle.roof[1].station, "232 in");
    let draft = "(station: \"190 in\", height: \"61 in\", half_width: \"30 in\")";
    assert!(
        made.notes.iter().any(|note| note.contains(draft)),
        "{:?}",
        made.notes
    );
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
            assert_eq!(bay(&made).lift.arm_capacity, None);
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

#[test]
fn usual_figures_that_nobody_gave_are_listed() {
    for key in ["lift.overshoot", "lift.side_mismatch"] {
        let mut says = measured();
        says.retain(|(number, _)| *number != of("lift", key));
        let what = is_withheld(&made_of(&says));
        assert!(
            what.iter().any(|one| one.starts_with(&label(key))),
            "{key}: {what:?}"
        );
    }
}

#[test]
fn a_hole_that_was_measured_and_not_placed_withholds() {
    let with_hole = |said: &[(&str, &str)]| {
        let mut says = measured();
        says.retain(|(number, _)| {
            ["x", "y", "thickness"]
                .iter()
                .all(|key| *number != of("readings", key))
        });
        let hole = said
            .iter()
            .map(|(key, said)| (of("readings", key), (*said).into()));
        says.extend(hole);
        made_of(&says)
    };
    let what = is_withheld(&with_hole(&[("x", "5 ft 6 in"), ("thickness", "2 in")]));
    let told = |one: &String| one.contains("so it is not in the file");
    assert!(what.iter().any(told), "{what:?}");
    // What was not measured at all says nothing of the slab.
    assert!(with_hole(&[("x", "5 ft 6 in")]).not_measured.is_empty());
}

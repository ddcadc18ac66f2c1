//! Is each answer where it belongs, as it was typed?

use super::*;

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
    let others: Vec<&String> = made.not_measured.iter().filter(of_preset).collect();
    // The outline of a preset's sizes, and an arm's rating that nobody gave beside the capacity that was.
    assert!(
        others.len() == 3
            && others[1].starts_with(&section_label("roof"))
            && others[2].starts_with(&label("lift.arm_capacity")),
        "{others:?}"
    );
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
    near(bay.vehicle.sill, "231 mm");
    near(bay.vehicle.belt, "893 mm");
    near(bay.vehicle.mirrors.unwrap().station, "1612 mm");
    near(bay.vehicle.mirrors.unwrap().bottom, "951 mm");
    near(bay.vehicle.mirrors.unwrap().top, "1102 mm");
    near(bay.vehicle.mirrors.unwrap().depth, "143 mm");
    near(bay.vehicle.droop[0], "94 mm");
    near(bay.vehicle.droop[1], "105 mm");
    let lift = &bay.lift;
    near(lift.column.width, "301 mm");
    near(lift.column.depth, "352 mm");
    assert!((lift.column.turned.rad().to_degrees() + 3.0).abs() < 1e-9);
    near(lift.overshoot, "33 mm");
    near(lift.side_mismatch, "14 mm");
    near(lift.carriage.proud, "126 mm");
    near(lift.carriage.depth, "251 mm");
    near(lift.carriage.height, "861 mm");
    near(lift.carriage.bottom, "74 mm");
    let unit = lift.power_unit.unwrap();
    assert_eq!(unit.side, crate::bay::Side::Left);
    near(unit.width, "253 mm");
    near(unit.depth, "304 mm");
    near(unit.height, "705 mm");
    near(unit.bottom, "1206 mm");
    near(lift.pad.diameter, "123 mm");
    near(lift.pad.adapters[0], "72 mm");
    near(lift.pad.adapters[1], "5 in");
    for (corner, inward, away, swings) in [
        (0, "261 mm", "152 mm", [-11.0, 92.0]),
        (3, "263 mm", "154 mm", [-13.0, 94.0]),
    ] {
        let arm = lift.arms[corner];
        near(arm.pivot_inward, inward);
        near(arm.pivot_away, away);
        assert!((arm.swing_min.rad().to_degrees() - swings[0]).abs() < 1e-9);
        assert!((arm.swing_max.rad().to_degrees() - swings[1]).abs() < 1e-9);
        assert!((arm.tooth.unwrap().rad().to_degrees() - 4.0).abs() < 1e-9);
        assert!(arm.zero.rad().to_degrees().abs() < 1e-9);
        near(arm.underside, "43 mm");
        near(arm.section_height, "47 mm");
        near(arm.section_width, "104 mm");
    }
    let window = lift.cg_window.unwrap();
    near(window.front, "311 mm");
    near(window.rear, "322 mm");
    let plate = &lift.base_plate;
    assert_eq!(plate.anchors.len(), 2);
    near(plate.anchors[0][0], "-7 in");
    near(plate.anchors[1][1], "201 mm");
    near(plate.anchor_diameter.unwrap(), "19 mm");
    near(plate.anchor_embedment.unwrap(), "108 mm");
    near(lift.manual.thickness.unwrap(), "107 mm");
    near(lift.manual.edge_distance.unwrap(), "155 mm");
    assert_eq!(lift.advertised, crate::bay::SlabDemand::default());
    let [low] = bay.vehicle.underbody.as_slice() else {
        panic!("{:?}", bay.vehicle.underbody)
    };
    assert_eq!(low.name, "exhaust");
    near(low.from, "1011 mm");
    near(low.to, "3507 mm");
    near(low.half_width, "312 mm");
    near(low.height, "148 mm");
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
        let listed = made.not_measured.len() + made.not_known.len() + made.notes.len()
            > whole.not_measured.len() + whole.not_known.len() + whole.notes.len();
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

#[test]
fn a_floor_plate_is_as_high_as_was_read_and_never_as_thin_as_somebody_elses() {
    let without_beam = || {
        let mut says = measured();
        says.retain(|(number, _)| {
            ![
                "#tie",
                "#tie.underside",
                "#tie.height",
                "#tie.width",
                "#bar",
                "#bar.drop",
            ]
            .iter()
            .any(|key| *number == of("lift", key))
        });
        says.push((of("lift", "#tie"), "floor plate".into()));
        says
    };
    let plate = |made: &Made| match bay(made).lift.tie {
        crate::bay::Tie::FloorPlate { height, width } => (height, width),
        crate::bay::Tie::OverheadBeam { .. } => panic!("a plate"),
    };
    for preset in ["tall-columns-11-10", "floor-plate-9-6"] {
        let mut says = without_beam();
        for (number, line) in &mut says {
            if *number == of("lift", "lift.preset") {
                *line = preset.into();
            }
        }
        let what = is_withheld(&made_of(&says));
        for key in ["#plate.height", "#plate.width"] {
            assert!(
                what.iter().any(|one| one.starts_with(&label(key))),
                "{what:?}"
            );
        }
        says.push((of("lift", "#plate.height"), "2 3/8 in".into()));
        says.push((of("lift", "#plate.width"), "21 in".into()));
        let made = made_of(&says);
        assert_eq!(made.not_measured, Vec::<String>::new(), "{preset}");
        near(plate(&made).0, "2 3/8 in");
        near(plate(&made).1, "21 in");
    }
}

#[test]
fn a_slab_that_ends_before_the_walls_has_the_outline_that_was_measured() {
    let with = |edges: &[(&str, &str)]| {
        let mut says = measured();
        says.push((of("slab", "#to_walls"), "no".into()));
        for (key, line) in edges {
            says.push((of("slab", key), (*line).into()));
        }
        says
    };
    let all = [
        ("#slab.left", "11 ft"),
        ("#slab.right", "10 ft 6 in"),
        ("#slab.near", "-4 in"),
        ("#slab.far", "29 ft"),
    ];
    let made = made_of(&with(&all));
    assert_eq!(made.not_measured, Vec::<String>::new());
    let outline = bay(&made).slab.unwrap().outline;
    assert_eq!(outline.len(), 4);
    near(outline[0][0], "-11 ft");
    near(outline[0][1], "-4 in");
    near(outline[2][0], "10 ft 6 in");
    near(outline[2][1], "29 ft");
    // While one edge is missing nobody knows where the slab ends.
    for missing in 0..all.len() {
        let mut some = all.to_vec();
        let (key, _) = some.remove(missing);
        let what = is_withheld(&made_of(&with(&some)));
        assert_eq!(what.len(), 1, "{what:?}");
        assert!(what[0].starts_with(&label(key)), "{what:?}");
    }
}

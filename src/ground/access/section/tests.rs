use super::garage_door::shuts_on;
use super::*;
use crate::bay::Bay;
use crate::bayfile::{self, presets::EmbeddedOnly};
use crate::clearance::study;
use crate::clearance::{DoorState, LockState};
use crate::ground::{Figure, Standing};

const DOOR_MEETS_POST: &str = include_str!("../../../../scenes/door-meets-post.ron");

fn scene(text: &str) -> Bay {
    let read = bayfile::read("door-meets-post.ron", text.as_bytes(), &EmbeddedOnly);
    read.map(|read| read.bay)
        .unwrap_or_else(|_| panic!("it reads"))
}

fn of(bay: &Bay) -> Section {
    section(bay, &study(bay).unwrap())
}

fn figure<'a>(section: &'a Section, id: &str) -> &'a Figure {
    let found = section.figures.iter().find(|figure| figure.id == id);
    found.unwrap_or_else(|| panic!("no {id}"))
}

#[test]
fn the_scene_names_the_shift_that_lets_the_driver_out_and_it_does() {
    let bay = scene(DOOR_MEETS_POST);
    let before = study(&bay).unwrap();
    let told = section(&bay, &before);
    let door = figure(&told, "door_1_down");
    assert_eq!(door.standing, Standing::Unknown);
    // Only the driver's door is asked about.
    assert_eq!(figure(&told, "door_2_down").standing, Standing::Noted);
    let shift = before.access.shift.clone().unwrap();
    assert!(shift.enough && shift.without_loss);
    let written = format!("LiftPoints(\"{} mm\")", 50.0 + shift.along_m * 1e3);
    let moved = scene(&DOOR_MEETS_POST.replace("LiftPoints(\"50 mm\")", &written));
    assert_ne!(moved, bay);
    let after = study(&moved).unwrap();
    let told = section(&moved, &after);
    assert_eq!(figure(&told, "door_1_down").standing, Standing::Passes);
    assert!(after.highest_safe_lock.is_some());
    assert!(after.highest_safe_lock >= before.highest_safe_lock);
}

/// The scene with another door and another place of the post line.
fn with_door(door: &str, post_line: &str) -> Bay {
    let start = DOOR_MEETS_POST.find("door: Sectional(").unwrap();
    let end = start + DOOR_MEETS_POST[start..].find("\n        ),\n").unwrap() + 11;
    let text = format!(
        "{}{door}{}",
        &DOOR_MEETS_POST[..start],
        &DOOR_MEETS_POST[end..]
    );
    let moved = text.replace("post_line: \"3900 mm\"", post_line);
    assert_ne!(moved, text);
    scene(&moved)
}

#[test]
fn a_door_that_can_not_be_run_does_not_shut() {
    let leaves = "door: SideHinged(leaf_thickness: \"45 mm\", inward: true, opens: \"90 deg\"),";
    let swing = "door: SwingUp(panel_thickness: \"45 mm\", panel_height: \"2250 mm\", \
                 track_height: \"2300 mm\", track_offset: \"90 mm\", track_section: \"75 mm\"),";
    for (door, post_line) in [
        (leaves, "post_line: \"3300 mm\""),
        (swing, "post_line: \"3000 mm\""),
    ] {
        let bay = with_door(door, post_line);
        let found = study(&bay).unwrap();
        // Once shut it stands clear; on its way it does not.
        assert!(!found.doors.may_run_when_down);
        let shut = found.access.shut.clone().unwrap();
        assert!(shut.while_running && shut.meets.is_some(), "{shut:?}");
        let told = section(&bay, &found);
        let down = figure(&told, "door_shuts_down");
        assert_eq!(down.standing, Standing::Unknown);
        let on_lock = figure(&told, "door_shuts_lock");
        assert_eq!(
            on_lock.found,
            Some(Quantity::Words("must stay open".into()))
        );
        assert_eq!(on_lock.standing, Standing::Unknown);
        assert!(!found.access.turned.unwrap().shuts);
    }
}

#[test]
fn a_pair_that_is_tight_as_parked_keeps_the_door_from_shutting() {
    let text = DOOR_MEETS_POST.replace("post_line: \"3900 mm\"", "post_line: \"2500 mm\"");
    let bay = scene(&text);
    let mut found = study(&bay).unwrap();
    let tight = found
        .tight_as_parked
        .iter()
        .any(|pair| pair.door == Some(DoorState::Shut));
    assert!(tight, "{:?}", found.tight_as_parked);
    // Nothing else of it may say that the door shuts.
    found
        .locks
        .iter_mut()
        .for_each(|lock| lock.door_may_run = true);
    found.doors.shut.locks.fill(LockState::Clear);
    assert!(!shuts_on(&found, 1));
    found.tight_as_parked.clear();
    assert!(shuts_on(&found, 1));
    found.locks[0].door_may_run = false;
    assert!(!shuts_on(&found, 1));
}

#[test]
fn a_way_too_narrow_beside_the_drivers_door_is_not_known() {
    let shelf = "Box(name: \"shelf\", kind: Shelf, x: \"-2050 mm\", y: \"2000 mm\", \
                 bottom: \"0 mm\", width: \"2060 mm\", depth: \"600 mm\", height: \"1900 mm\"), ";
    let text = DOOR_MEETS_POST.replace(
        "            Box(\n                name: \"tool chest\"",
        &format!("            {shelf}Box(\n                name: \"tool chest\""),
    );
    assert_ne!(text, DOOR_MEETS_POST);
    let bay = scene(&text);
    assert_eq!(bay.vehicle.driver, Some(Side::Left));
    let told = of(&bay);
    let way = figure(&told, "way_left");
    assert_eq!(way.standing, Standing::Unknown);
    assert!(way.cure.is_some());
    // Nobody has to walk on the other side.
    assert_eq!(figure(&told, "way_right").standing, Standing::Noted);
}

#[test]
fn a_vehicle_in_the_back_wall_does_not_fit_turned_round() {
    let text = DOOR_MEETS_POST
        .replace("depth: \"7400 mm\"", "depth: \"6300 mm\"")
        .replace("y: \"6950 mm\"", "y: \"5900 mm\"")
        .replace("LiftPoints(\"50 mm\")", "LiftPoints(\"-150 mm\")");
    let bay = scene(&text);
    let found = study(&bay).unwrap();
    let turned = found.access.turned.clone().unwrap();
    assert!(!turned.shuts && turned.meets.is_some(), "{turned:?}");
    let told = section(&bay, &found);
    let words = figure(&told, "door_shuts_turned").found.clone();
    assert_eq!(
        words,
        Some(Quantity::Words("not shown to fit turned round".into()))
    );
}

#[test]
fn nothing_of_doors_and_people_ever_stops() {
    let mut bay = scene(DOOR_MEETS_POST);
    bay.vehicle.driver = None;
    assert_ne!(of(&bay).standing(), Standing::Stops);
    bay.vehicle.opening_parts.clear();
    let told = of(&bay);
    assert_eq!(figure(&told, "door_gap").standing, Standing::Unknown);
}

#[test]
fn who_stands_and_sits_is_told_against_the_body() {
    let words = |room, height| match &posture(room, height).0[0] {
        crate::ground::Part::Words(words) => words.clone(),
        crate::ground::Part::Quantity(..) => String::new(),
    };
    assert!(words(1.85, 1.80).starts_with("stands and moves"));
    assert!(words(1.84, 1.80).starts_with("stands upright, with less"));
    assert!(words(1.79, 1.80).starts_with("does not stand"));
    assert!(words(1.30, 1.80).starts_with("neither"));
    assert!(words(f64::NAN, 1.80).starts_with("neither"));
}

const ON_PAPER: &str = include_str!("../../../../scenes/anchors-on-paper.ron");

fn words(said: &Said) -> String {
    let part = |part: &crate::ground::Part| match part {
        crate::ground::Part::Words(words) => words.to_string(),
        crate::ground::Part::Quantity(..) => "#".into(),
    };
    said.0.iter().map(part).collect()
}

/// The scene tail-in with arms that reach there, its driver on the left of the vehicle.
fn tail_in() -> String {
    let text = ON_PAPER
        .replace("facing: NoseIn", "facing: TailIn")
        .replace(
            "preset: \"overhead-beam-3600-mm\"",
            "preset: \"overhead-beam-3600-mm\", arms: (front: (longest: \"1300 mm\"), \
             rear: (shortest: \"500 mm\"))",
        )
        .replace(
            "preset: \"small-hatch\"",
            "preset: \"small-hatch\", driver: Left",
        );
    assert_eq!(text.matches("driver: Left").count(), 1);
    text
}

#[test]
fn a_driver_shut_in_behind_the_post_does_not_get_out() {
    // The room just wider than the lift and hardly deeper than the vehicle: the corner behind the
    // post has no way out of the width that a person takes.
    let text = tail_in()
        .replace("width: \"7400 mm\"", "width: \"4100 mm\"")
        .replace("depth: \"8600 mm\"", "depth: \"6700 mm\"")
        .replace("3700 mm\", \"", "2050 mm\", \"")
        .replace("\"8600 mm\")", "\"6700 mm\")");
    let start = text.find("obstacles: [").unwrap();
    let end = start + text[start..].find("\n        ],").unwrap() + 10;
    let bay = scene(&format!("{}obstacles: []{}", &text[..start], &text[end..]));
    let told = of(&bay);
    // His door is on the bay's right; the door end is wide enough, but he does not get there.
    for id in ["way_back", "way_to_post_right", "way_behind_post_right"] {
        assert_eq!(figure(&told, id).standing, Standing::Unknown, "{id}");
    }
    assert_eq!(figure(&told, "way_door").standing, Standing::Passes);
    assert!(words(&told.lead).contains("not known"), "{:?}", told.lead);
    // In a deeper room he gets round the back, but only to where the other post shuts him in.
    let deeper = scene(
        &format!("{}obstacles: []{}", &text[..start], &text[end..]).replace("6700 mm", "7400 mm"),
    );
    let told = of(&deeper);
    assert_eq!(figure(&told, "way_back").standing, Standing::Passes);
    assert!(words(&told.lead).contains("not known"), "{:?}", told.lead);
    // In a wider one he gets past the post.
    let wider = text.replace("width: \"4100 mm\"", "width: \"4500 mm\"");
    let wider = wider.replace("2050 mm\", \"", "2250 mm\", \"");
    let start = wider.find("obstacles: [").unwrap();
    let end = start + wider[start..].find("\n        ],").unwrap() + 10;
    let told = of(&scene(&format!(
        "{}obstacles: []{}",
        &wider[..start],
        &wider[end..]
    )));
    assert!(
        words(&told.lead).starts_with("The driver can get out"),
        "{:?}",
        told.lead
    );
}

#[test]
fn tail_in_the_drivers_door_is_on_the_other_side_of_the_bay() {
    let shelf = "obstacles: [Box(name: \"shelf\", kind: Shelf, x: \"1340 mm\", \
                 y: \"6700 mm\", bottom: \"0 mm\", width: \"300 mm\", depth: \"3700 mm\", \
                 height: \"1900 mm\"),";
    let bay = scene(&tail_in().replace("obstacles: [", shelf));
    let told = of(&bay);
    assert_eq!(figure(&told, "way_right").standing, Standing::Unknown);
    assert_eq!(figure(&told, "way_left").standing, Standing::Noted);
    // The way he needs is too narrow: the first sentence does not let him out either.
    assert!(words(&told.lead).contains("not known"), "{:?}", told.lead);
}

#[test]
fn a_side_that_the_driver_may_sit_on_without_a_door_is_not_known() {
    let mut bay = scene(DOOR_MEETS_POST);
    bay.vehicle
        .opening_parts
        .retain(|part| part.kind != crate::bay::OpeningKind::DoorLeft);
    let told = of(&bay);
    assert_eq!(figure(&told, "door_gap_left").standing, Standing::Unknown);
    assert!(words(&told.lead).contains("not known"), "{:?}", told.lead);
    let mut bay = scene(ON_PAPER);
    assert_eq!(bay.vehicle.driver, None);
    bay.vehicle
        .opening_parts
        .retain(|part| part.kind != crate::bay::OpeningKind::DoorRight);
    let told = of(&bay);
    assert_eq!(figure(&told, "door_gap_right").standing, Standing::Unknown);
    assert!(
        words(&told.lead).contains("no front door"),
        "{:?}",
        told.lead
    );
}

#[test]
fn no_place_is_told_that_the_room_is_against() {
    // Nearer to the door wall the driver would get out, with the vehicle through the shut door.
    let bay = scene(&DOOR_MEETS_POST.replace("post_line: \"3900 mm\"", "post_line: \"2300 mm\""));
    let shift = study(&bay).unwrap().access.shift;
    assert!(shift.is_none_or(|shift| !shift.enough));
}

#[test]
fn no_place_is_told_at_which_the_loads_stop() {
    for (window, masses) in [
        ("front: \"300 mm\", rear: \"80 mm\"", ""),
        (
            "front: \"500 mm\", rear: \"60 mm\"",
            ", masses: [(name: \"rear axle\", mass: \"-200 kg\", station: \"3680 mm\", \
             across: \"0 mm\", height: \"300 mm\")]",
        ),
    ] {
        let text = DOOR_MEETS_POST
            .replace(
                "preset: \"overhead-beam-3600-mm\"",
                &format!("preset: \"overhead-beam-3600-mm\", cg_window: ({window})"),
            )
            .replace("driver: Left", &format!("driver: Left{masses}"));
        let bay = scene(&text);
        let Some(shift) = study(&bay).unwrap().access.shift.filter(|s| s.enough) else {
            continue;
        };
        let written = format!("LiftPoints(\"{} mm\")", 50.0 + shift.along_m * 1e3);
        let moved = scene(&text.replace("LiftPoints(\"50 mm\")", &written));
        let after = study(&moved).unwrap();
        let loads = after.sections.iter().find(|one| one.topic == Topic::Loads);
        let loads = loads.unwrap().figures.iter();
        let stops: Vec<_> = loads
            .filter(|one| one.standing == Standing::Stops)
            .collect();
        assert!(stops.is_empty(), "{stops:?}");
    }
}

#[test]
fn the_door_is_told_about_waist_height_at_the_place_to_park_too() {
    let bay = scene(DOOR_MEETS_POST);
    let found = study(&bay).unwrap();
    let (lock, swing) = found.access.shift.clone().unwrap().at_waist.unwrap();
    let told = section(&bay, &found);
    assert_eq!(
        figure(&told, "shift_waist").found,
        Some(Quantity::Length(swing.gap_m))
    );
    let along = found.access.shift.unwrap().along_m;
    let written = format!("LiftPoints(\"{} mm\")", 50.0 + along * 1e3);
    let moved = study(&scene(
        &DOOR_MEETS_POST.replace("LiftPoints(\"50 mm\")", &written),
    ));
    let doors = moved.unwrap().access.doors;
    let left = doors.iter().find(|door| door.side == Side::Left).unwrap();
    let (on, there) = left.at_waist.as_ref().unwrap();
    assert_eq!(*on, lock);
    assert!((there.gap_m - swing.gap_m).abs() < 1e-9);
}

#[test]
fn how_tall_people_are_and_who_sits_is_told() {
    let mut bay = scene(DOOR_MEETS_POST);
    bay.policy.people = vec![
        crate::bay::Person {
            name: "Ines".into(),
            height: crate::units::Length::mm(1680.0),
            stature: None,
        },
        crate::bay::Person {
            name: "helper".into(),
            height: crate::bay::PERCENTILES[6].with_shoes(),
            stature: Some(crate::bay::PERCENTILES[6]),
        },
    ];
    let told = of(&bay);
    let note = |id: &str| words(figure(&told, id).note.as_ref().unwrap());
    assert!(note("person_1").starts_with("with shoes and what is on the head # tall"));
    assert!(note("person_2").contains("95 of 100 men of ANSUR II"));
    assert!(note("under_body").contains("on a low stool"));
}

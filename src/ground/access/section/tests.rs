use super::*;
use crate::bay::Bay;
use crate::bayfile::{self, presets::EmbeddedOnly};
use crate::clearance::study;
use crate::ground::Standing;

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
        assert_eq!(on_lock.found, Some(Quantity::Words("stays open".into())));
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

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

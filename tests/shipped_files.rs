//! Are all shipped scenes and presets read without a word of complaint?

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use std::fs;
use std::path::Path;

use bayrise::bay::{Aim, BodyStyle, Door, ObstacleShape, Tie, UnitSystem};
use bayrise::bayfile::{self, presets};
use bayrise::diagnostics::{Style, render};
use bayrise::units::Length;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn read(name: &str) -> bayfile::Read {
    let text = fs::read(root().join(name)).unwrap();
    match bayfile::read(name, &text, &presets::EmbeddedOnly) {
        Ok(read) => read,
        Err(faults) => panic!("{}", render(&faults, Style::default())),
    }
}

fn names_in(folder: &str) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(root().join(folder))
        .unwrap()
        .map(|e| e.unwrap().file_name().into_string().unwrap())
        .filter_map(|n| n.strip_suffix(".ron").map(String::from))
        .collect();
    names.sort();
    names
}

#[test]
fn every_scene_is_read_without_a_warning() {
    for name in names_in("scenes") {
        let read = read(&format!("scenes/{name}.ron"));
        let warnings = render(&read.warnings, Style::default());
        assert!(read.warnings.is_empty(), "{name}: {warnings}");
    }
}

#[test]
fn the_embedded_presets_are_those_of_the_folders() {
    for (folder, embedded) in [
        ("assets/lifts", presets::lifts()),
        ("assets/vehicles", presets::vehicles()),
    ] {
        let names: Vec<&str> = embedded.iter().map(|e| e.name).collect();
        assert_eq!(
            names,
            names_in(folder),
            "{folder} and src/bayfile/presets.rs"
        );
        for preset in embedded {
            let path = root().join(folder).join(format!("{}.ron", preset.name));
            assert_eq!(preset.text, fs::read_to_string(path).unwrap());
        }
    }
}

#[test]
fn every_preset_can_stand_in_the_first_scene() {
    let scene = fs::read_to_string(root().join("scenes/tall-pickup.ron")).unwrap();
    let check = |text: String, name: &str| {
        if let Err(faults) = bayfile::read(name, text.as_bytes(), &presets::EmbeddedOnly) {
            panic!("{name}: {}", render(&faults, Style::default()));
        }
    };
    for lift in presets::lifts() {
        // No screw goes as far on every lift: the pads stay down.
        let text = scene
            .replace("\"tall-columns-11-10\"", &format!("{:?}", lift.name))
            .replace("pad_raise: \"3 in\"", "pad_raise: \"0 in\"");
        check(text, lift.name);
    }
    for vehicle in presets::vehicles() {
        let text = scene.replace(
            "\"pickup-half-ton-crew-cab\"",
            &format!("{:?}", vehicle.name),
        );
        check(text, vehicle.name);
    }
}

#[test]
fn the_tall_pickup_means_what_its_file_says() {
    let read = read("scenes/tall-pickup.ron");
    let bay = &read.bay;
    assert_eq!(read.sources.len(), 3, "the bay file and two presets");
    assert_eq!(bay.units, UnitSystem::Imperial);
    assert_eq!(bay.garage.width, Length::inches(288.0));
    assert_eq!(bay.garage.obstacles.len(), 2);
    let cost = bay.garage.obstacles[0].removable.as_ref().unwrap();
    assert_eq!(cost.cost.as_deref(), Some("$90"));
    let ObstacleShape::Cylinder { from, .. } = bay.garage.obstacles[1].shape else {
        panic!("the pipe is round");
    };
    assert_eq!(from[0], Length::inches(-144.0));
    let Door::Sectional(door) = &bay.garage.door else {
        panic!("a sectional door");
    };
    assert_eq!(door.track_offset, Length::inches(3.5));
    assert_eq!(bay.lift.post_line, Length::inches(168.0));
    assert_eq!(
        bay.lift.arms[0], bay.lift.arms[1],
        "the front arms are alike"
    );
    assert_eq!(
        bay.lift.arms[2], bay.lift.arms[3],
        "and so are the rear arms"
    );
    assert!(matches!(
        bay.lift.tie,
        Tie::OverheadBeam { bar: Some(_), .. }
    ));
    assert_eq!(bay.vehicle.style, BodyStyle::Pickup);
    assert_eq!(
        bay.vehicle.attached[0].name, "headache rack",
        "the override replaced the list"
    );
    assert_eq!(bay.parking.aim, Aim::CentreOfGravity(Length::ZERO));
    assert_eq!(bay.parking.pad_raise, [Length::inches(3.0); 4]);
    assert_eq!(bay.policy.over_vehicle, Length::inches(3.0));
    assert_eq!(bay.policy.people[0].name, "Marta");
}

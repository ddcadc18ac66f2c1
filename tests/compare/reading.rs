//! What a combination makes of the bay file.

use bayrise::bay::{Ceiling, Opener};
use bayrise::bayfile::options::{MOST_CELLS, Pick};
use bayrise::units::Length;

use super::{Files, read, shipped};

const FIRST: Pick = Pick {
    garage: 0,
    change: 0,
    lift: 0,
    vehicle: 0,
};

fn options(lists: &str) -> String {
    format!("(format: 1, title: \"t\", base: \"south-bay.ron\", {lists})")
}

#[test]
fn without_lists_the_bay_is_as_it_is() {
    let files = Files::shipped();
    let options = read(&options(""), &files);
    assert_eq!(options.picks(), [FIRST]);
    let bay = options.bay(FIRST, &files).unwrap().bay;
    let alone =
        bayrise::bayfile::read("south-bay.ron", shipped("south-bay.ron").as_bytes(), &files);
    assert_eq!(bay, alone.unwrap().bay);
}

#[test]
fn another_lift_keeps_the_place_and_nothing_else_of_the_one_before() {
    let base = shipped("south-bay.ron").replace(
        "post_line: \"14 ft\",",
        "post_line: \"13 ft 6 in\", capacity: \"2000 lb\", arm_capacity: \"500 lb\",",
    );
    let files = Files::shipped().with("south-bay.ron", &base);
    let text =
        options("lifts: [\"tall-columns-11-10\", (name: \"more\", lift: (travel: \"70 in\"))]");
    let options = read(&text, &files);
    let other = options.bay(FIRST, &files).unwrap().bay.lift;
    assert_eq!(other.post_line, Length::inches(162.0));
    assert!(
        (other.capacity.kg() - 4535.9237).abs() < 1e-6,
        "the new lift's own"
    );
    let changed = options
        .bay(Pick { lift: 1, ..FIRST }, &files)
        .unwrap()
        .bay
        .lift;
    assert_eq!(changed.travel, Length::inches(70.0));
    assert!(
        changed.capacity.kg() < 1000.0,
        "without a preset the lift is the bay's"
    );
}

#[test]
fn another_vehicle_keeps_nothing_of_the_one_before() {
    let base = shipped("south-bay.ron").replace(
        "preset: \"large-suv\",",
        "preset: \"large-suv\", masses: [(name: \"load\", mass: \"300 lb\", station: \"100 in\", across: \"0 in\")],",
    );
    let files = Files::shipped().with("south-bay.ron", &base);
    let options = read(
        &options("vehicles: [\"large-suv\", (name: \"as it is\")]"),
        &files,
    );
    assert!(
        options
            .bay(FIRST, &files)
            .unwrap()
            .bay
            .vehicle
            .masses
            .is_empty()
    );
    let as_it_is = options
        .bay(
            Pick {
                vehicle: 1,
                ..FIRST
            },
            &files,
        )
        .unwrap()
        .bay;
    assert_eq!(as_it_is.vehicle.masses.len(), 1);
}

#[test]
fn another_garage_brings_its_slab_and_the_place_in_it() {
    let files = Files::shipped();
    let text = options(
        "garages: [(name: \"south\"), (name: \"creamery\", bay: \"creamery.ron\", garage: (ceiling: Flat(height: \"15 ft\")))]",
    );
    let options = read(&text, &files);
    let south = options.bay(FIRST, &files).unwrap().bay;
    let creamery = options
        .bay(Pick { garage: 1, ..FIRST }, &files)
        .unwrap()
        .bay;
    let own = bayrise::bayfile::read("c", shipped("creamery.ron").as_bytes(), &files)
        .unwrap()
        .bay;
    assert_eq!(creamery.slab, own.slab);
    assert_eq!(creamery.power, own.power);
    assert_eq!(creamery.garage.depth, own.garage.depth);
    assert_eq!(
        creamery.garage.ceiling,
        Ceiling::Flat {
            height: Length::feet(15.0)
        }
    );
    assert_eq!(creamery.vehicle, south.vehicle);
    // What the other file does not say is not known there.
    let without = shipped("creamery.ron");
    let cut = without.find("    slab: (").unwrap();
    let end = without.find("    power:").unwrap();
    let files = Files::shipped().with(
        "creamery.ron",
        &format!("{}{}", &without[..cut], &without[end..]),
    );
    let options = read(&text, &files);
    let creamery = options
        .bay(Pick { garage: 1, ..FIRST }, &files)
        .unwrap()
        .bay;
    assert_eq!(
        creamery.slab, None,
        "the base's slab lies in another garage"
    );
}

#[test]
fn another_garage_is_trusted_no_more_than_its_own_file_trusts_it() {
    let measured = |own: &str, other: &str| {
        let with =
            |text: String, more: &str| text.replacen("policy: (", &format!("policy: ({more} "), 1);
        let files = Files::shipped()
            .with("south-bay.ron", &with(shipped("south-bay.ron"), own))
            .with("creamery.ron", &with(shipped("creamery.ron"), other));
        let read = read(
            &options("garages: [(name: \"creamery\", bay: \"creamery.ron\")]"),
            &files,
        );
        read.bay(FIRST, &files)
            .unwrap()
            .bay
            .policy
            .measured_garage
            .in_mm()
    };
    let near = |found: f64, expect: f64| assert!((found - expect).abs() < 1e-6, "{found} {expect}");
    near(measured("", "measured_garage: \"4 in\","), 101.6);
    near(
        measured("measured_garage: \"1 mm\",", "measured_garage: \"4 in\","),
        101.6,
    );
    near(
        measured("measured_garage: \"9 mm\",", "measured_garage: \"2 mm\","),
        9.0,
    );
    // What says nothing is off by what every file is taken to be off.
    near(measured("measured_garage: \"1 mm\",", ""), 6.0);
    near(measured("measured_garage: \"9 mm\",", ""), 9.0);
}

#[test]
fn what_is_not_taken_from_another_garages_file_is_named() {
    let other =
        shipped("creamery.ron").replacen("over_vehicle: \"3 in\"", "over_vehicle: \"6 in\"", 1);
    let files = Files::shipped().with("creamery.ron", &other);
    let read = read(
        &options("garages: [(name: \"home\"), (name: \"creamery\", bay: \"creamery.ron\")]"),
        &files,
    );
    let said: Vec<&str> = read
        .warnings
        .iter()
        .map(|one| one.message.as_str())
        .collect();
    assert_eq!(said.len(), 1, "{said:?}");
    assert!(
        said[0].contains("policy.over_vehicle") && said[0].contains("parking"),
        "{said:?}"
    );
}

#[test]
fn a_change_comes_last() {
    let files = Files::shipped();
    let text = options(
        "changes: [(name: \"a\", garage: (opener: None), parking: (pad_raise: \"1 in\"))], \
         vehicles: [(name: \"v\", vehicle: (preset: \"saloon\"), parking: (pad_raise: \"0 in\"))]",
    );
    let bay = read(&text, &files).bay(FIRST, &files).unwrap().bay;
    assert_eq!(bay.garage.opener, Opener::None);
    assert_eq!(bay.parking.pad_raise, [Length::inches(1.0); 4]);
}

#[test]
fn too_many_combinations_are_refused() {
    let many = |what: &str, n: usize| {
        let items: Vec<String> = (0..n).map(|i| format!("(name: \"{i}\")")).collect();
        format!("{what}: [{}]", items.join(", "))
    };
    let text = options(&[many("lifts", 150), many("vehicles", 150)].join(", "));
    let faults = bayrise::bayfile::options::read("o.ron", text.as_bytes(), &Files::shipped());
    let faults = faults.unwrap_err();
    assert_eq!(faults.len(), 1, "{faults:?}");
    let label = &faults[0].place.as_ref().unwrap().label;
    assert!(label.contains(&format!("at most {MOST_CELLS}")), "{label}");
}

#[test]
fn other_concrete_does_not_take_the_age_of_the_slab() {
    let files = Files::shipped();
    let ages = |slab: &str| {
        let text = format!(
            "(format: 1, title: \"t\", base: \"creamery.ron\", changes: [(name: \"c\", slab: ({slab}))])"
        );
        let options = read(&text, &files);
        let pick = options.picks()[0];
        let slab = options.bay(pick, &files).unwrap().bay.slab.unwrap();
        (slab.age_days, options.warnings.len())
    };
    let (own, none) = ages("heated: false");
    assert!(own.is_some() && none == 0, "the same concrete");
    for other in [
        "strength: \"4000 psi\"",
        "readings: []",
        "claimed_thickness: \"15 in\"",
        "lines: []",
    ] {
        assert_eq!(ages(other), (None, 1), "{other}");
        let stated = format!("{other}, age_days: 30");
        assert_eq!(ages(&stated), (Some(30.0), 0), "{stated}");
        // A day in the place of an age.
        let poured = format!("{other}, poured: \"2026-10-01\"");
        assert_eq!(ages(&poured), (None, 0), "{poured}");
    }
}

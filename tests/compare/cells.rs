//! Each cell is what its bay gives alone, in whatever order the options are listed.

use bayrise::bay::Bay;
use bayrise::bayfile::options::Pick;
use bayrise::bayfile::{self, presets};
use bayrise::choose::{Found, Matrix};
use bayrise::clearance::{Verdict, study};

use super::{Files, quick, read, shipped};

/// What a row of the table tells.
#[derive(Debug, PartialEq)]
struct Told {
    safe: Option<usize>,
    clear: Option<usize>,
    full_rise: bool,
    underbody: Option<String>,
    limit: String,
    withheld: String,
    arms: String,
    load: String,
    slab: String,
    walking: String,
    standings: String,
}

fn told(found: &Found) -> Told {
    Told {
        safe: found.verdict.highest_safe_lock,
        clear: found.verdict.highest_clear_lock,
        full_rise: found.verdict.full_rise,
        underbody: found.underbody_m().map(|m| format!("{m:.9}")),
        limit: format!("{:?}", found.verdict.limit),
        withheld: format!("{:?}", found.verdict.withheld),
        arms: format!("{:?}", found.arms()),
        load: format!("{:?}", found.load_use()),
        slab: format!("{:?}", found.slab()),
        walking: format!("{:?}", found.walking()),
        standings: format!("{:?}", found.verdict.standings().collect::<Vec<_>>()),
    }
}

/// What `check` finds of a bay, told like a row.
fn alone(bay: &Bay, of: &Found) -> Told {
    told(&Found {
        bay: bay.clone(),
        verdict: Verdict::of(&study(bay).unwrap()),
        bill: of.bill,
        inverse: None,
    })
}

const TWO_BY_TWO: &str = r#"(
    format: 1, title: "two by two", base: "south-bay.ron",
    lifts: [LIFTS],
    vehicles: [VEHICLES],
)"#;

fn two_by_two(lifts: &[&str], vehicles: &[&str]) -> String {
    TWO_BY_TWO
        .replace("LIFTS", &lifts.join(", "))
        .replace("VEHICLES", &vehicles.join(", "))
}

/// The bay file with other presets written into its text: no part of the comparison's own reading
/// takes part.
fn by_hand(lift: &str, vehicle: &str) -> Bay {
    let text = shipped("south-bay.ron")
        .replace("\"floor-plate-9-6\"", &format!("{lift:?}"))
        .replace("\"large-suv\"", &format!("{vehicle:?}"));
    bayfile::read("by hand", text.as_bytes(), &presets::EmbeddedOnly)
        .map_err(|faults| super::said(&faults))
        .unwrap()
        .bay
}

#[test]
fn a_cell_is_what_its_bay_gives_alone() {
    let (lifts, vehicles) = (
        ["floor-plate-9-6", "tall-columns-11-10"],
        ["large-suv", "pickup-half-ton-crew-cab"],
    );
    let quoted =
        |names: &[&str]| -> Vec<String> { names.iter().map(|name| format!("{name:?}")).collect() };
    let (l, v) = (quoted(&lifts), quoted(&vehicles));
    let text = two_by_two(
        &l.iter().map(String::as_str).collect::<Vec<_>>(),
        &v.iter().map(String::as_str).collect::<Vec<_>>(),
    );
    let files = Files::shipped();
    let options = read(&text, &files);
    let matrix = quick(&options, &files);
    assert_eq!(matrix.cells.len(), 4);
    let mut different = std::collections::HashSet::new();
    for cell in &matrix.cells {
        let found = cell.found().unwrap();
        let bay = by_hand(lifts[cell.pick.lift], vehicles[cell.pick.vehicle]);
        assert_eq!(found.bay, bay, "{:?}", cell.pick);
        let alone = alone(&bay, found);
        assert_eq!(told(found), alone, "{:?}", cell.pick);
        different.insert(format!("{alone:?}"));
    }
    assert_eq!(different.len(), 4, "the cells differ: {different:?}");
}

#[test]
fn every_cell_of_the_shipped_comparisons_is_what_its_bay_gives_alone() {
    for name in ["short-or-tall.ron", "cheaper-or-dearer.ron"] {
        let files = Files::shipped();
        let options = read(&shipped(name), &files);
        for cell in &quick(&options, &files).cells {
            let found = cell.found().unwrap();
            let bay = options.bay(cell.pick, &files).unwrap().bay;
            let alone = alone(&bay, found);
            assert_eq!(told(found), alone, "{name} {:?}", cell.pick);
        }
    }
}

fn by_names(
    matrix: &Matrix,
    name: impl Fn(Pick) -> (String, String),
) -> Vec<(String, String, Told)> {
    let mut all: Vec<_> = matrix
        .cells
        .iter()
        .map(|cell| {
            let (lift, vehicle) = name(cell.pick);
            (lift, vehicle, told(cell.found().unwrap()))
        })
        .collect();
    all.sort_by(|a, b| (&a.0, &a.1).cmp(&(&b.0, &b.1)));
    all
}

#[test]
fn the_order_of_options_changes_no_cell() {
    let lifts = [
        "\"floor-plate-9-6\"",
        "\"tall-columns-12-8\"",
        "\"wide-heavy-13-6\"",
    ];
    let vehicles = ["\"saloon\"", "\"large-suv\"", "\"coupe\""];
    let files = Files::shipped();
    let run = |lifts: &[&str], vehicles: &[&str]| {
        // A saloon's pads can't be screwed up as far as the SUV's: none are.
        let text = two_by_two(lifts, vehicles).replace(
            "vehicles:",
            "changes: [(name: \"down\", parking: (pad_raise: \"0 in\"))], vehicles:",
        );
        let options = read(&text, &files);
        let matrix = quick(&options, &files);
        by_names(&matrix, |pick| {
            (
                options.lifts[pick.lift].name.clone(),
                options.vehicles[pick.vehicle].name.clone(),
            )
        })
    };
    let turned = |names: [&'static str; 3]| [names[2], names[0], names[1]];
    let first = run(&lifts, &vehicles);
    assert_eq!(first.len(), 9);
    assert_eq!(first, run(&turned(lifts), &turned(vehicles)));
    assert_eq!(
        first,
        run(&lifts, &vehicles),
        "and every run gives the same"
    );
}

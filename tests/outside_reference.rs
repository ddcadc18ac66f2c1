//! Do other programs find the same distances between our solids as we do?
//!
//! `tests/reference/distances.json` holds what two collision libraries outside this project say
//! of the program's own exported lists; `tests/reference/make_fixture.py` makes and re-checks it.
//! Here the stored solids are built again and measured with the study's own solver.
#![allow(
    clippy::unwrap_used,
    reason = "a stored file that can't be read fails the test"
)]

use std::collections::HashSet;
use std::fs;
use std::path::Path;

use bayrise::clearance::body::Body;
use bayrise::clearance::gap::{Gap, Separation, Solver, UNDECIDED_M};
use bayrise::solids::{Pose, Role, Shape, Solid};
use glam::{DQuat, DVec3};
use serde::Deserialize;

/// Both bounds must lie this close to the reference, metres.
const CLOSE_M: f64 = 0.2e-3;
/// A certified bound may exceed the reference by no more than the reference's own error, metres.
const CERTIFIED_M: f64 = 1e-5;

#[derive(Deserialize)]
struct Fixture {
    header: Header,
    shapes: Vec<StoredShape>,
    solids: Vec<StoredSolid>,
    lists: Vec<StoredList>,
}

#[derive(Deserialize)]
struct Header {
    made_by: String,
    lists: usize,
    pairs: usize,
    touching: usize,
    overlapping: usize,
    in_doubt: usize,
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum StoredShape {
    Box { size_m: Triple },
    Cylinder { radius_m: f64, height_m: f64 },
    Prism { vertices_m: Vec<Triple> },
}

/// Three numbers, x, y and z.
type Triple = [f64; 3];

#[derive(Deserialize)]
struct StoredSolid {
    shape: usize,
    name: String,
    position_m: Triple,
    quaternion_wxyz: [f64; 4],
}

#[derive(Deserialize)]
struct StoredList {
    bay: Option<String>,
    lift: Option<String>,
    vehicle: Option<String>,
    door: Option<String>,
    travel_m: Option<f64>,
    pairs: Vec<(usize, usize, Option<f64>)>,
}

fn fixture() -> Fixture {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/distances.json");
    serde_json::from_slice(&fs::read(path).unwrap()).unwrap()
}

fn shape(stored: &StoredShape) -> Shape {
    match stored {
        StoredShape::Box { size_m } => Shape::Box {
            half: DVec3::from_array(*size_m) * 0.5,
        },
        StoredShape::Cylinder { radius_m, height_m } => Shape::Cylinder {
            radius: *radius_m,
            half_height: height_m * 0.5,
        },
        StoredShape::Prism { vertices_m } => Shape::Prism {
            vertices: vertices_m.iter().copied().map(DVec3::from_array).collect(),
        },
    }
}

/// Every stored solid as the study sees it, nothing added.
fn bodies(fixture: &Fixture) -> Vec<Body> {
    fixture
        .solids
        .iter()
        .map(|stored| {
            let [w, x, y, z] = stored.quaternion_wxyz;
            Body::exact(&Solid {
                name: stored.name.clone(),
                role: Role::Body,
                shape: shape(&fixture.shapes[stored.shape]),
                bay_from_solid: Pose::new(
                    DQuat::from_xyzw(x, y, z, w).normalize(),
                    DVec3::from_array(stored.position_m),
                ),
            })
        })
        .collect()
}

/// What is wrong with a separation that should be `reference`: metres, 0 for touching, none for
/// an overlap.
fn fault(found: Separation, reference: Option<f64>) -> Option<String> {
    let Some(reference) = reference else {
        // An overlap of over 0.01 mm must be seen, not left undecided.
        return match found {
            Separation::Meet => None,
            Separation::Apart(gap) => Some(format!("apart by {} to {}", gap.lower, gap.upper)),
        };
    };
    match found {
        Separation::Meet if reference > 0.0 => Some("they meet".into()),
        Separation::Meet => None,
        Separation::Apart(Gap { lower, upper, .. }) => {
            let close =
                (lower - reference).abs() <= CLOSE_M && (upper - reference).abs() <= CLOSE_M;
            let certified = lower <= reference + CERTIFIED_M && reference - CERTIFIED_M <= upper;
            (!close || !certified).then(|| format!("{lower} to {upper} is not {reference}"))
        }
    }
}

/// Measures every pair with `gap` and fails with all that differ.
#[track_caller]
fn compare(mut gap: impl FnMut(&mut Solver, &Body, &Body) -> Separation) {
    let fixture = fixture();
    let bodies = bodies(&fixture);
    let mut solver = Solver::new();
    let mut faults = Vec::new();
    for &(moving, fixed, reference) in fixture.lists.iter().flat_map(|list| &list.pairs) {
        let found = gap(&mut solver, &bodies[moving], &bodies[fixed]);
        if let Some(fault) = fault(found, reference) {
            let names = [moving, fixed].map(|solid| &fixture.solids[solid].name);
            faults.push(format!("{} and {}: {fault}", names[0], names[1]));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_gap_is_the_distance_that_other_programs_find() {
    compare(|solver, moving, fixed| solver.gap(moving, DVec3::ZERO, fixed));
}

#[test]
fn the_gap_is_the_same_the_other_way_round() {
    compare(|solver, moving, fixed| solver.gap(fixed, DVec3::ZERO, moving));
}

#[test]
fn the_gap_is_the_same_where_the_shift_brings_the_body_to_its_place() {
    // As in the study: a body held at travel 0 and shifted to its travel.
    let climb = DVec3::new(0.0, 0.0, 1.234);
    compare(|solver, moving, fixed| solver.gap(&moving.moved(-climb), climb, fixed));
}

#[test]
fn nearly_every_gap_is_decided() {
    let fixture = fixture();
    let bodies = bodies(&fixture);
    let mut solver = Solver::new();
    let mut undecided = Vec::new();
    for &(moving, fixed, _) in fixture.lists.iter().flat_map(|list| &list.pairs) {
        if let Separation::Apart(gap) = solver.gap(&bodies[moving], DVec3::ZERO, &bodies[fixed])
            && !gap.is_decided()
        {
            undecided.push(&fixture.solids[moving].name);
        }
    }
    assert!(undecided.is_empty(), "over {UNDECIDED_M} m: {undecided:?}");
}

#[test]
fn the_stored_file_is_as_rich_as_it_says() {
    let fixture = fixture();
    let header = &fixture.header;
    assert!(header.made_by.ends_with("make_fixture.py"));
    assert_eq!(header.lists, fixture.lists.len());
    let exported: HashSet<String> = fixture
        .lists
        .iter()
        .filter_map(|list| {
            let bay = list.bay.as_ref()?;
            Some(format!(
                "{bay} {:?} {:?} {:?} {:?}",
                list.lift, list.vehicle, list.door, list.travel_m
            ))
        })
        .collect();
    assert!(exported.len() >= 200, "{} exported lists", exported.len());
    let references: Vec<Option<f64>> = fixture
        .lists
        .iter()
        .flat_map(|list| list.pairs.iter().map(|pair| pair.2))
        .collect();
    let count = |wanted: fn(&Option<f64>) -> bool| references.iter().filter(|r| wanted(r)).count();
    assert_eq!(header.pairs, references.len());
    assert_eq!(header.overlapping, count(|r| r.is_none()));
    assert_eq!(header.touching, count(|r| r.is_some_and(|d| d <= 0.0)));
    assert!(header.overlapping >= 100);
    assert!(
        count(|r| r.is_some_and(|d| d > 0.0 && d < 0.3)) >= 500,
        "few near pairs"
    );
    assert!(header.in_doubt * 100 <= header.pairs);
    println!("{} of {} pairs in doubt", header.in_doubt, header.pairs);
}

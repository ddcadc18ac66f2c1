//! Does every form that a bay file may take mean what it should?

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use bayrise::bay::{
    Bay, Ceiling, CgHeight, Conductor, Corner, Door, DoorHeld, FallToward, Floor, Obstacle,
    ObstacleKind, ObstacleShape, Opener, Run, Side, Tie, TrackLayout,
};
use bayrise::bayfile::presets::{PresetError, PresetSource};
use bayrise::bayfile::read;
use bayrise::diagnostics::{Style, render};
use bayrise::units::{Angle, Length};

const BASE: &str = include_str!("bad_input/base.ron");

struct Files;

impl PresetSource for Files {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        match path {
            "lift.ron" => Ok(include_bytes!("bad_input/lift.ron").to_vec()),
            "vehicle.ron" => Ok(include_bytes!("bad_input/vehicle.ron").to_vec()),
            "below/lift.ron" => {
                Ok(b"(preset: \"lift.ron\", name: \"lower\", pad: (lowest: \"5 in\"))".to_vec())
            }
            _ => Err(PresetError::Missing),
        }
    }
}

/// The base with replacements, read without a warning.
fn bay(edits: &[(&str, &str)]) -> Bay {
    let mut text = BASE.to_string();
    for (from, to) in edits {
        assert!(text.contains(from), "the base holds no {from}");
        text = text.replacen(from, to, 1);
    }
    match read("bay.ron", text.as_bytes(), &Files) {
        Ok(read) => {
            assert!(
                read.warnings.is_empty(),
                "{}",
                render(&read.warnings, Style::default())
            );
            read.bay
        }
        Err(faults) => panic!("{}", render(&faults, Style::default())),
    }
}

/// The base with its first door replaced by another.
fn with_door(door: &str) -> Door {
    let start = BASE.find("door: Sectional(").unwrap();
    let end = BASE.find("        opener:").unwrap();
    let text = BASE.replace(&BASE[start..end], &format!("door: {door},\n"));
    match read("bay.ron", text.as_bytes(), &Files) {
        Ok(read) => read.bay.garage.door,
        Err(faults) => panic!("{}", render(&faults, Style::default())),
    }
}

fn inches(value: f64) -> Length {
    Length::inches(value)
}

const CEILING: &str = "Flat(height: \"12 ft\")";
const LIFT: &str = "preset: \"lift.ron\",";
const VEHICLE: &str = "preset: \"vehicle.ron\",";

#[test]
fn ceilings_and_floors() {
    let sloped = bay(&[(
        CEILING,
        "Sloped(run: SideToSide, first: \"10 ft\", last: \"14 ft\")",
    )]);
    assert_eq!(
        sloped.garage.ceiling,
        Ceiling::Sloped {
            run: Run::SideToSide,
            first: inches(120.0),
            last: inches(168.0),
        }
    );
    let gable = bay(&[(
        CEILING,
        "Gable(ridge_along: SideToSide, eaves: \"9 ft\", ridge: \"16 ft\", ridge_offset: \"-1 ft\")",
    )]);
    assert_eq!(
        gable.garage.ceiling,
        Ceiling::Gable {
            ridge_along: Run::SideToSide,
            eaves: inches(108.0),
            ridge: inches(192.0),
            ridge_offset: inches(-12.0),
        }
    );
    let stepped = bay(&[(
        CEILING,
        "Stepped(steps: [(from: \"0 in\", height: \"10 ft\"), (from: \"9 ft\", height: \"13 ft\")])",
    )]);
    let Ceiling::Stepped { steps } = stepped.garage.ceiling else {
        panic!("steps");
    };
    assert_eq!(steps[1].from, inches(108.0));
    let fall = bay(&[("floor: Level", "floor: Fall(slope: 0.01, toward: Door)")]);
    assert_eq!(
        fall.garage.floor,
        Floor::Fall {
            slope: 0.01,
            toward: FallToward::Door,
        }
    );
    let levels = bay(&[(
        "floor: Level",
        "floor: Levels([(x: \"0 ft\", y: \"14 ft\", level: \"0 in\"), (x: \"0 ft\", y: \"1 ft\", level: \"-2 in\")])",
    )]);
    let Floor::Levels(points) = levels.garage.floor else {
        panic!("levels");
    };
    assert_eq!(points[1].level, inches(-2.0));
}

#[test]
fn doors_and_openers() {
    assert_eq!(with_door("None"), Door::None);
    assert!(matches!(
        with_door("RollUp(curtain_thickness: \"1 in\", coil_diameter: \"16 in\", coil_height: \"9 ft\", coil_out: \"9 in\")"),
        Door::RollUp(d) if d.coil_diameter == inches(16.0)
    ));
    assert!(matches!(
        with_door("SwingUp(panel_thickness: \"2 in\", panel_height: \"8 ft\", track_height: \"8 ft 4 in\", track_offset: \"3 in\", track_section: \"2 in\")"),
        Door::SwingUp(d) if d.track_height == inches(100.0)
    ));
    assert!(matches!(
        with_door("SideHinged(leaf_thickness: \"2 in\", inward: false, opens: \"110 deg\")"),
        Door::SideHinged(d) if !d.inward
    ));
    for (written, layout) in [
        ("LowHeadroom", TrackLayout::LowHeadroom),
        ("VerticalLift", TrackLayout::VerticalLift),
        (
            "HighLift(extra: \"24 in\")",
            TrackLayout::HighLift {
                extra: inches(24.0),
            },
        ),
    ] {
        let bay = bay(&[("layout: Standard", &format!("layout: {written}"))]);
        assert!(matches!(bay.garage.door, Door::Sectional(d) if d.layout == layout));
    }
    let start = BASE.find("opener: Trolley(").unwrap();
    let end = BASE.find("        obstacles:").unwrap();
    let wall = "opener: WallMounted(side: Right, width: \"8 in\", depth: \"10 in\", height: \"14 in\", bottom: \"7 ft\", beside: \"4 in\"),\n";
    let other = bay(&[(&BASE[start..end], wall)]);
    assert!(matches!(other.garage.opener, Opener::WallMounted(o) if o.side == Side::Right));
}

fn box_of(obstacle: &Obstacle) -> [f64; 6] {
    let ObstacleShape::Box {
        x,
        y,
        bottom,
        width,
        depth,
        height,
        turned,
    } = obstacle.shape
    else {
        panic!("a box");
    };
    assert_eq!(turned, Angle::ZERO);
    [x, y, bottom, width, depth, height].map(Length::in_inches)
}

fn close(a: [f64; 6], b: [f64; 6]) {
    for (a, b) in a.iter().zip(b) {
        assert!((a - b).abs() < 1e-9, "{a} and {b}");
    }
}

/// By hand: a room 24 ft wide whose door lies 2 ft right of its middle, where `x` is zero: the
/// walls stand at -14 ft and +10 ft, and the middle of what spans them at -2 ft.
#[test]
fn beams_and_ties_span_the_room() {
    let bay = bay(&[
        ("offset: \"0 in\"", "offset: \"2 ft\""),
        (
            "        obstacles: [",
            "        obstacles: [\n\
             Ties(name: \"tie\", along: SideToSide, first: \"4 ft\", pitch: \"2 ft\", count: 3, underside: \"10 ft\", height: \"6 in\", width: \"2 in\", removable: ()),\n\
             Beam(name: \"beam\", along: DoorToBack, at: \"3 ft\", underside: \"9 ft\", height: \"10 in\", width: \"4 in\", from: \"6 ft\"),",
        ),
    ]);
    let obstacles = &bay.garage.obstacles;
    assert_eq!(obstacles.len(), 3 + 1 + 2);
    for (i, y) in [48.0, 72.0, 96.0].into_iter().enumerate() {
        assert_eq!(obstacles[i].name, format!("tie {}", i + 1));
        assert_eq!(obstacles[i].kind, ObstacleKind::CollarTie);
        assert!(
            obstacles[i]
                .removable
                .as_ref()
                .is_some_and(|r| r.cost.is_none())
        );
        close(box_of(&obstacles[i]), [-24.0, y, 120.0, 288.0, 2.0, 6.0]);
    }
    // From 6 ft to the back wall at 28 ft: 22 ft long, its middle at 17 ft.
    close(
        box_of(&obstacles[3]),
        [36.0, 204.0, 108.0, 4.0, 264.0, 10.0],
    );
    assert_eq!(obstacles[3].kind, ObstacleKind::Beam);
}

#[test]
fn overrides_go_into_records_and_replace_the_rest() {
    let plain = bay(&[]);
    let changed = bay(&[(
        LIFT,
        "preset: \"below/lift.ron\", pad: (screw_travel: \"4 in\"), locks: [\"10 in\", \"20 in\"], \
         tie: FloorPlate(height: \"2 in\", width: \"18 in\"), arms: (rear: (longest: \"50 in\"), rear_right: (tooth: None)),",
    )]);
    let (from, to) = (&plain.lift, &changed.lift);
    assert_eq!(to.name, "lower", "from the preset between");
    assert_eq!(to.pad.lowest, inches(5.0), "from the preset between");
    assert_eq!(to.pad.screw_travel, inches(4.0), "from the bay file");
    assert_eq!(to.pad.adapters, from.pad.adapters, "from the lowest preset");
    assert_eq!(to.locks, [inches(10.0), inches(20.0)]);
    assert!(matches!(to.tie, Tie::FloorPlate { .. }));
    assert_eq!(to.arms[0], from.arms[0]);
    let [left, right] = [Corner::RearLeft, Corner::RearRight].map(|c| to.arms[c.index()]);
    assert_eq!(left.longest, inches(50.0));
    assert_eq!(right.longest, inches(50.0));
    assert!(left.tooth.is_some() && right.tooth.is_none());
    assert_eq!(left.shortest, from.arms[2].shortest);
    let pads = bay(&[(
        "pad_raise: \"3 in\"",
        "pad_raise: (front: \"1 in\", rear_left: \"4 in\", rear_right: \"11 in\")",
    )]);
    assert_eq!(pads.parking.pad_raise, [1.0, 1.0, 4.0, 11.0].map(inches));
}

#[test]
fn raises_that_screw_and_adapters_give() {
    // Screw 3 in, adapters 3 in and 5 in: 0 to 6, 5 to 8 and 8 to 11 in, without a gap.
    for raise in ["0 in", "3 in", "6 in", "7 in", "11 in"] {
        let bay = bay(&[("pad_raise: \"3 in\"", &format!("pad_raise: \"{raise}\""))]);
        assert_eq!(bay.parking.pad_raise[0], bay.parking.pad_raise[3]);
    }
}

#[test]
fn the_ways_to_know_the_centre_of_gravity() {
    let height = |written: &str| -> CgHeight {
        let edit = format!("preset: \"vehicle.ron\", cg_height: {written},");
        bay(&[(VEHICLE, &edit)]).vehicle.cg_height.unwrap()
    };
    let given = height("Given(\"27 in\")");
    assert!(!given.estimated && given.height == inches(27.0));
    let by_ratio = height("FromTrack(1.25)");
    assert!(by_ratio.estimated);
    // Track 68 in front and rear: 68 / (2 x 1.25) = 27.2.
    assert!((by_ratio.height.in_inches() - 27.2).abs() < 1e-9);
    let by_class = height("FromTrack");
    assert!(by_class.estimated && by_class.height > inches(20.0) && by_class.height < inches(40.0));
    // 76 in high: 0.38 x 76 = 28.88.
    let share = height("ShareOfHeight(0.38)");
    assert!(share.estimated && (share.height.in_inches() - 28.88).abs() < 1e-9);
    let none = bay(&[(VEHICLE, "preset: \"vehicle.ron\", cg_height: None,")]);
    assert_eq!(none.vehicle.cg_height, None);
}

#[test]
fn a_derived_roof_stands_for_a_list() {
    for written in ["Derived", "Derived(Suv)"] {
        let edit = format!("preset: \"vehicle.ron\", roof: {written},");
        let vehicle = bay(&[(VEHICLE, &edit)]).vehicle;
        let top = vehicle
            .roof
            .iter()
            .fold(Length::ZERO, |t, s| t.max(s.height));
        assert!((top - vehicle.height).abs().m() < 1e-9);
        let last = vehicle.roof.last().unwrap();
        assert!((last.station - vehicle.length).abs().m() < 1e-9);
    }
}

#[test]
fn what_is_left_out_keeps_its_stated_default() {
    let bay = bay(&[
        (
            "        over_vehicle: \"3 in\",\n",
            "        door_held: Open,\n",
        ),
        ("people: [(name: \"Marta\", height: \"5 ft 10 in\")],", ""),
        (
            "    slab: (",
            "    people: [(name: \"Ola\", height: \"180 cm\")],\n    slab: (",
        ),
    ]);
    assert_eq!(
        bay.policy.over_vehicle,
        bayrise::bay::Policy::default().over_vehicle
    );
    assert_eq!(bay.policy.door_held, Some(DoorHeld::Open));
    assert_eq!(bay.policy.people[0].name, "Ola");
    let slab = bay.slab.unwrap();
    assert_eq!(slab.heated, Some(false));
    assert_eq!(slab.post_tensioned, None, "not said is not known");
    assert_eq!(slab.readings[0].thickness, inches(4.5));
    assert_eq!(bay.power.unwrap().breaker.unwrap().si().round() as i64, 30);
}

#[test]
fn conductors_driver_and_pieces_of_the_delivery() {
    let bay = bay(&[
        ("run: \"40 ft\"", "run: \"40 ft\", conductor: Awg8"),
        (
            "preset: \"vehicle.ron\",",
            "preset: \"vehicle.ron\", driver: Right,",
        ),
        (
            "preset: \"lift.ron\",",
            "preset: \"lift.ron\", pieces: [(name: \"column\", mass: \"400 lb\", length: \"12 ft\", width: \"16 in\", height: \"14 in\")],",
        ),
    ]);
    assert_eq!(bay.power.unwrap().conductor, Some(Conductor::Awg8));
    assert_eq!(bay.vehicle.driver, Some(Side::Right));
    let [piece] = &bay.lift.pieces[..] else {
        panic!("{:?}", bay.lift.pieces);
    };
    assert_eq!(piece.name, "column");
    assert!((piece.mass.kg() - 400.0 * 0.453_592_37).abs() < 1e-9);
    let sides = [piece.length, piece.width, piece.height];
    for (side, expected) in sides.into_iter().zip([144.0, 16.0, 14.0]) {
        assert!((side.in_inches() - expected).abs() < 1e-9, "{side:?}");
    }
    let plain = self::bay(&[]);
    assert_eq!(plain.power.unwrap().conductor, None);
    assert_eq!((plain.vehicle.driver, plain.lift.pieces.len()), (None, 0));
}

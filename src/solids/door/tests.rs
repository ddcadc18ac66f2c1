//! Doors against places worked out by hand, and the envelope against every travel.

use glam::DVec3;

use super::test_doors::{
    moving_doors, roll_up, sectional_layouts, side_hinged, swing_up, with_door,
};
use super::*;
use crate::bay::{FallToward, Floor, TrackLayout};
use crate::solids::Role;
use crate::units::Length;

const INCH: f64 = 0.0254;

/// The half-spaces whose meeting is the hull of a solid's corners, found by trying every three
/// corners: a plane through three that has all others on one side. Written apart from the code
/// that builds the solids.
struct Hull {
    planes: Vec<(DVec3, f64)>,
}

impl Hull {
    fn of(solid: &Solid) -> Self {
        let corners: Vec<DVec3> = corners(solid);
        let mut planes: Vec<(DVec3, f64)> = Vec::new();
        for i in 0..corners.len() {
            for j in i + 1..corners.len() {
                for k in j + 1..corners.len() {
                    let normal = (corners[j] - corners[i]).cross(corners[k] - corners[i]);
                    let normal = normal.normalize_or_zero();
                    let offset = normal.dot(corners[i]);
                    let sides = |sign: f64| {
                        corners
                            .iter()
                            .all(|corner| sign * (normal.dot(*corner) - offset) <= 1e-10)
                    };
                    if normal == DVec3::ZERO {
                        continue;
                    } else if sides(1.0) {
                        planes.push((normal, offset));
                    } else if sides(-1.0) {
                        planes.push((-normal, -offset));
                    }
                }
            }
        }
        planes.dedup_by(|a, b| a.0.distance(b.0) < 1e-12 && (a.1 - b.1).abs() < 1e-12);
        assert!(planes.len() >= 6, "{}", solid.name);
        Self { planes }
    }

    fn holds(&self, solid: &Solid) -> bool {
        corners(solid).iter().all(|corner| {
            self.planes
                .iter()
                .all(|(normal, offset)| normal.dot(*corner) <= offset + 1e-10)
        })
    }
}

fn corners(solid: &Solid) -> Vec<DVec3> {
    solid
        .shape
        .corners()
        .into_iter()
        .map(|corner| solid.bay_from_solid.point(corner))
        .collect()
}

fn panels(solids: Vec<Solid>) -> Vec<Solid> {
    solids
        .into_iter()
        .filter(|solid| solid.role == Role::DoorPanel)
        .collect()
}

/// The property that matters: each panel at each travel lies wholly in one solid of the envelope;
/// and dropping any of those solids would leave a panel unheld.
#[test]
fn the_envelope_holds_every_panel_at_every_travel() {
    const TRAVELS: u32 = 1000;
    for (name, bay) in moving_doors() {
        let running = panels(envelope(&bay));
        let hulls: Vec<Hull> = running.iter().map(Hull::of).collect();
        let mut needed = vec![false; hulls.len()];
        for i in 0..=TRAVELS {
            let travel = DoorTravel::At(f64::from(i) / f64::from(TRAVELS));
            for panel in panels(door(&bay, travel)) {
                let mut holding = (0..hulls.len()).filter(|&h| hulls[h].holds(&panel));
                let first = holding.next();
                assert!(first.is_some(), "{name}: {} at {travel:?}", panel.name);
                if let (Some(only), None) = (first, holding.next()) {
                    needed[only] = true;
                }
            }
        }
        // Round a sharp corner, and with a top edge that starts far round its own, neighbouring
        // hulls overlap by more than an interval: there some piece may be idle.
        if name.ends_with("no radius") || name == "low headroom, panels taller in sum" {
            continue;
        }
        for (solid, needed) in running.iter().zip(needed) {
            assert!(needed, "{name}: {} holds nothing of its own", solid.name);
        }
    }
}

/// The same for doors of many proportions, likely and unlikely.
#[test]
fn the_envelope_holds_doors_of_all_proportions() {
    let inches = Length::inches;
    for layout in [
        TrackLayout::Standard,
        TrackLayout::LowHeadroom,
        TrackLayout::HighLift { extra: inches(7.0) },
    ] {
        for (radius, thickness) in [(1.0, 1.0), (12.0, 3.5), (21.0, 1.0), (34.0, 3.5)] {
            for height in [14.0, 19.2, 28.0, 50.0, 97.0] {
                let mut door_type = crate::solids::test_bay::test_sectional_door();
                door_type.layout = layout;
                door_type.track_radius = inches(radius);
                door_type.panel_height = inches(height);
                door_type.panel_thickness = inches(thickness);
                let bay = with_door(Door::Sectional(door_type));
                let hulls: Vec<Hull> = panels(envelope(&bay)).iter().map(Hull::of).collect();
                for i in 0..=40 {
                    for panel in panels(door(&bay, DoorTravel::At(f64::from(i) / 40.0))) {
                        assert!(
                            hulls.iter().any(|hull| hull.holds(&panel)),
                            "{layout:?} {radius} {height} {thickness}: {} at {i}",
                            panel.name
                        );
                    }
                }
            }
        }
    }
}

/// The envelope is pessimistic, but not idle: it reaches less than half an inch beyond what the
/// panels themselves reach into the bay.
#[test]
fn the_envelope_is_not_much_larger_than_the_door() {
    for (name, bay) in sectional_layouts() {
        let deepest = |solids: Vec<Solid>| {
            panels(solids)
                .iter()
                .map(|solid| solid.bounds().1.y)
                .fold(f64::NEG_INFINITY, f64::max)
        };
        let real = (0..=100)
            .map(|i| deepest(door(&bay, DoorTravel::At(f64::from(i) / 100.0))))
            .fold(f64::NEG_INFINITY, f64::max);
        let built = deepest(envelope(&bay));
        assert!(built >= real && built - real < 0.5 * INCH, "{name}");
    }
}

#[test]
fn a_shut_door_stands_in_its_opening() {
    let bay = with_door(Door::Sectional(
        crate::solids::test_bay::test_sectional_door(),
    ));
    let shut = panels(door(&bay, DoorTravel::Shut));
    let names: Vec<&str> = shut.iter().map(|solid| solid.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "door/panel 1",
            "door/panel 2",
            "door/panel 3",
            "door/panel 4",
            "door/top bracket"
        ]
    );
    for (i, panel) in (0..4_u32).zip(&shut) {
        let (low, high) = panel.bounds();
        // 24 in panels from the floor; 3 in tracks, so the 2 in door stands from 0.5 to 2.5 in.
        assert!((low.z - 24.0 * INCH * f64::from(i)).abs() < 1e-9);
        assert!((high.z - 24.0 * INCH * f64::from(i + 1)).abs() < 1e-9);
        assert!((low.y - 0.5 * INCH).abs() < 1e-9 && (high.y - 2.5 * INCH).abs() < 1e-9);
        // The 10 ft opening and 3 1/2 in beyond it on each side.
        assert!((low.x + 63.5 * INCH).abs() < 1e-9 && (high.x - 63.5 * INCH).abs() < 1e-9);
    }
    let (low, high) = shut[4].bounds();
    // The bracket: 3 in proud, down 12 in from the top.
    assert!((low.y - 2.5 * INCH).abs() < 1e-9 && (high.y - 5.5 * INCH).abs() < 1e-9);
    assert!((low.z - 84.0 * INCH).abs() < 1e-9 && (high.z - 96.0 * INCH).abs() < 1e-9);
}

#[test]
fn an_open_door_is_out_of_its_opening() {
    for (name, bay) in sectional_layouts() {
        let opening = bay.garage.opening.height.m();
        let thickness = 2.0 * INCH;
        for panel in panels(door(&bay, DoorTravel::Open)) {
            let lowest = panel.bounds().0.z;
            // The bottom edge's middle line stands at the top of the opening; a level panel hangs
            // half its thickness lower, the low-headroom bracket 3 in more.
            let hangs = if panel.name == "door/top bracket" {
                3.0 * INCH + 0.5 * thickness
            } else {
                0.5 * thickness
            };
            assert!(lowest >= opening - hangs - 1e-9, "{name}: {}", panel.name);
        }
    }
}

#[test]
fn an_open_standard_door_lies_at_the_radius_over_the_opening() {
    let (_, bay) = sectional_layouts().swap_remove(0);
    let open = panels(door(&bay, DoorTravel::Open));
    let (low, high) = open[3].bounds();
    // 96 in opening and 15 in radius: middle plane at 111 in, 2 in thick.
    assert!((low.z - 110.0 * INCH).abs() < 1e-9 && (high.z - 112.0 * INCH).abs() < 1e-9);
    // The bracket hangs 3 in lower.
    assert!((open[4].bounds().0.z - 107.0 * INCH).abs() < 1e-9);
}

#[test]
fn a_low_headroom_door_is_upright_when_shut_and_just_over_the_opening_when_open() {
    let (name, bay) = sectional_layouts().swap_remove(4);
    assert_eq!(name, "low headroom");
    let shut = panels(door(&bay, DoorTravel::Shut));
    assert!((shut[3].bounds().1.y - 2.5 * INCH).abs() < 1e-9);
    let open = panels(door(&bay, DoorTravel::Open));
    assert!((open[3].bounds().0.z - 96.0 * INCH).abs() < 1e-9);
    assert!(findings(&bay).is_empty());
}

#[test]
fn the_track_is_built_no_smaller_than_it_is() {
    for (name, bay) in sectional_layouts() {
        if name == "vertical lift" || name.starts_with("low") {
            continue;
        }
        let fittings: Vec<Hull> = fittings(&bay)
            .iter()
            .filter(|solid| solid.name.contains("left"))
            .map(Hull::of)
            .collect();
        let Door::Sectional(sectional) = &bay.garage.door else {
            unreachable!("all are sectional")
        };
        let linkage = linkage::Linkage::of(&bay, sectional);
        let half = 1.5 * INCH;
        let x = -(60.0 + 3.5) * INCH;
        let end = linkage.track.level_from_m() + sectional.track_length.m();
        for i in 0..=300 {
            let along = end * f64::from(i) / 300.0;
            let (at, tangent) = (linkage.track.point(along), linkage.track.tangent(along));
            for side in [-half, 0.0, half] {
                let place = at + side * DVec2::new(tangent.y, -tangent.x);
                let held = fittings.iter().any(|hull| {
                    hull.planes
                        .iter()
                        .all(|(n, offset)| n.dot(across(x, place)) <= offset + 1e-9)
                });
                assert!(held, "{name}: {along} {side}");
            }
        }
    }
}

#[test]
fn a_door_over_a_falling_floor_hangs_from_its_lowest_reading() {
    let (_, mut bay) = sectional_layouts().swap_remove(0);
    bay.garage.floor = Floor::Fall {
        slope: 0.01,
        toward: FallToward::Door,
    };
    // The opening's outer edge lies 14 ft 6 in from the post line: 0.01 * 4.4196 m lower.
    let shut = panels(door(&bay, DoorTravel::Shut));
    assert!((shut[0].bounds().0.z + 0.044_196).abs() < 1e-9);
}

#[test]
fn findings_name_what_does_not_fit() {
    let (_, mut bay) = sectional_layouts().swap_remove(0);
    assert!(findings(&bay).is_empty());
    if let Door::Sectional(door) = &mut bay.garage.door {
        door.track_length = Length::inches(40.0);
        door.panel_height = Length::inches(25.0);
    }
    let found = findings(&bay);
    assert!(matches!(found[0], DoorFinding::LevelTrackShort { by_m } if by_m > 0.5));
    assert!(matches!(found[1], DoorFinding::LeansWhenShut { by_m } if by_m > 0.01));
    let (name, bay) = sectional_layouts().swap_remove(7);
    assert_eq!(name, "vertical lift");
    // 96 in of door over a 96 in opening under 144 in.
    let found = findings(&bay);
    assert!(
        matches!(found[..], [DoorFinding::ThroughCeiling { by_m }] if (by_m - 48.0 * INCH).abs() < 1e-9)
    );
}

#[test]
fn a_roll_up_door_keeps_its_drum_and_lifts_its_curtain() {
    let bay = with_door(Door::RollUp(roll_up()));
    let lowest = |travel| {
        panels(door(&bay, travel))
            .iter()
            .map(|solid| solid.bounds().0.z)
            .fold(f64::INFINITY, f64::min)
    };
    assert!(lowest(DoorTravel::Shut).abs() < 1e-12);
    assert!((lowest(DoorTravel::At(0.5)) - 48.0 * INCH).abs() < 1e-9);
    assert!((lowest(DoorTravel::Open) - 96.0 * INCH).abs() < 1e-9);
    let solids = door(&bay, DoorTravel::Shut);
    let drum = solids.iter().find(|s| s.name == "door/drum").unwrap();
    let (low, high) = drum.bounds();
    assert!((low.z - 98.0 * INCH).abs() < 1e-9 && (high.y - 20.0 * INCH).abs() < 1e-9);
    let running: Vec<Hull> = panels(envelope(&bay)).iter().map(Hull::of).collect();
    for i in 0..=400 {
        for panel in panels(door(&bay, DoorTravel::At(f64::from(i) / 400.0))) {
            assert!(running.iter().any(|hull| hull.holds(&panel)));
        }
    }
}

#[test]
fn a_swing_up_door_climbs_and_lies_level() {
    let bay = with_door(Door::SwingUp(swing_up()));
    let place = |travel| panels(door(&bay, travel))[0].bounds();
    // Track 99 in, panel 96 in: shut, it hangs from 3 in to 99 in.
    let (low, high) = place(DoorTravel::Shut);
    assert!((low.z - 3.0 * INCH).abs() < 1e-9 && (high.z - 99.0 * INCH).abs() < 1e-9);
    let (low, high) = place(DoorTravel::Open);
    assert!((low.z - 98.125 * INCH).abs() < 1e-9);
    assert!((low.y - 1.0 * INCH).abs() < 1e-9 && (high.y - 97.0 * INCH).abs() < 1e-9);
    // Halfway, at 45 degrees, the top edge is 96/√2 in from the door's plane.
    let top = top_edge(&bay, 0.5).unwrap();
    assert!((top.x - (1.0 + 96.0 / 2_f64.sqrt()) * INCH).abs() < 1e-9);
}

#[test]
fn leaves_open_into_the_bay_or_out_of_it() {
    let mut leaves = side_hinged(true);
    leaves.opens = crate::units::Angle::degrees(90.0);
    let bay = with_door(Door::SideHinged(leaves));
    let shut = panels(door(&bay, DoorTravel::Shut));
    // 60 in each, flush with the inner face.
    assert!((shut[0].bounds().0.x + 60.0 * INCH).abs() < 1e-9);
    assert!(shut[0].bounds().1.x.abs() < 1e-9 && shut[1].bounds().0.x.abs() < 1e-9);
    assert!(shut[0].bounds().1.y.abs() < 1e-9);
    let open = panels(door(&bay, DoorTravel::Open));
    let (low, high) = open[0].bounds();
    assert!((high.y - 60.0 * INCH).abs() < 1e-9 && (low.x + 60.0 * INCH).abs() < 1e-9);
    leaves.inward = false;
    let bay = with_door(Door::SideHinged(leaves));
    let open = panels(door(&bay, DoorTravel::Open));
    // Outward from the 6 in wall's outer face.
    assert!((open[1].bounds().0.y + 66.0 * INCH).abs() < 1e-9);
    assert!((open[1].bounds().1.x - 60.0 * INCH).abs() < 1e-9);
}

#[test]
fn names_are_unique() {
    for (name, bay) in moving_doors() {
        for solids in [door(&bay, DoorTravel::At(0.3)), envelope(&bay)] {
            let mut names: Vec<&str> = solids.iter().map(|s| s.name.as_str()).collect();
            names.sort_unstable();
            let count = names.len();
            names.dedup();
            assert_eq!(names.len(), count, "{name}");
        }
    }
}

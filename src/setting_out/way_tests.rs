//! Are tapes pulled where they can be, and is what stands in their way told?

use glam::{DVec2, DVec3};

use super::*;
use crate::bay::{Obstacle, ObstacleKind, ObstacleShape, Tie};
use crate::bayfile::{presets::EmbeddedOnly, read};
use crate::clearance::study;
use crate::solids::posts::posts;
use crate::solids::{Role, Shape, Solid};
use crate::units::{Angle, Length};

fn scene(name: &str) -> Bay {
    let path = format!("{}/scenes/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    read(&path, &std::fs::read(&path).unwrap(), &EmbeddedOnly)
        .unwrap()
        .bay
}

fn scenes() -> Vec<(String, Bay)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes");
    let entries = std::fs::read_dir(folder).unwrap();
    let paths = entries.map(|entry| entry.unwrap().path());
    let paths = paths.filter(|path| path.extension().is_some_and(|ending| ending == "ron"));
    let names = paths.map(|path| path.file_stem().unwrap().to_str().unwrap().to_owned());
    names.map(|name| (name.clone(), scene(&name))).collect()
}

/// With holes, whatever forbids them.
fn drilled(bay: &Bay) -> SettingOut {
    let points = points::points(bay, true);
    let (steps, stop_marks) = pulls::steps(bay, &points);
    SettingOut {
        points,
        steps,
        drill: Drill::Shown,
        stop_marks,
    }
}

fn thing(name: &str, [x, y]: [f64; 2], [width, depth]: [f64; 2], bottom: f64) -> Obstacle {
    Obstacle {
        name: name.into(),
        kind: ObstacleKind::Shelf,
        shape: ObstacleShape::Box {
            x: Length::metres(x),
            y: Length::metres(y),
            bottom: Length::metres(bottom),
            width: Length::metres(width),
            depth: Length::metres(depth),
            height: Length::metres(0.9),
            turned: Angle::ZERO,
        },
        removable: None,
        only_at_times: false,
        row: [0, 0],
    }
}

/// Whether a point of a straight tape lies inside a box, looked at from above; by looking.
fn runs_through(solid: &Solid, tape: [DVec2; 2]) -> bool {
    let Shape::Box { half } = &solid.shape else {
        panic!("{} is no box", solid.name);
    };
    let pose = solid.bay_from_solid;
    (0..=2000).any(|step| {
        let at = tape[0].lerp(tape[1], f64::from(step) / 2000.0).extend(0.0);
        let own: DVec3 = pose.rotation.inverse() * (at - pose.translation);
        own.x.abs() < half.x - 1e-6 && own.y.abs() < half.y - 1e-6
    })
}

fn ends(out: &SettingOut, pull: &Pull) -> [DVec2; 2] {
    let at = |letter: &str| out.point(letter).unwrap().at_m;
    let to = at(&pull.ends[1]);
    let from = match pull.ends[0].strip_prefix("edge ") {
        Some(edge) => {
            let (one, other) = edge.split_once('\u{2013}').unwrap();
            let way = (at(other) - at(one)).normalize();
            at(one) + way * (to - at(one)).dot(way)
        }
        None => at(&pull.ends[0]),
    };
    // Laid where it is said to read so much.
    assert!((from.distance(to) - pull.reading.expected_m).abs() < 1e-9);
    [from, to]
}

#[test]
fn holes_are_checked_past_the_posts_and_from_marks_that_no_plate_covers() {
    let mut tapes = 0;
    for (name, as_it_is) in scenes() {
        let mut plated = as_it_is.clone();
        plated.lift.tie = Tie::FloorPlate {
            height: Length::mm(40.0),
            width: Length::mm(350.0),
        };
        for bay in [as_it_is, plated] {
            let out = drilled(&bay);
            let solids = posts(&bay);
            let covers =
                |solid: &&Solid| matches!(solid.role, Role::BasePlate(_) | Role::FloorPlate);
            let holes = out.points.iter();
            let holes = holes.filter(|point| matches!(point.kind, PointKind::Hole(_)));
            let step = out.steps.iter().find(|step| step.title == "Anchor holes");
            let Some(step) = step else {
                assert_eq!(holes.count(), 0, "{name}");
                continue;
            };
            for hole in holes {
                let to_it = step.pulls.iter();
                let to_it = to_it.filter(|pull| pull.ends[1] == hole.letter).count();
                // What a post stands over, by the file, can't be reached.
                let around = [DVec2::X, DVec2::Y, -DVec2::X, -DVec2::Y];
                let around = around.map(|way| [hole.at_m, hole.at_m + way * 0.01]);
                let buried = solids.iter().any(|post| {
                    matches!(post.role, Role::Post(_))
                        && around.iter().any(|tape| runs_through(post, *tape))
                });
                assert!(
                    to_it == 2 || buried && to_it == 0,
                    "{name}: {}",
                    hole.letter
                );
                assert!(to_it == 2 || step.says.contains("They are not checked"));
            }
            for pull in &step.pulls {
                let tape = ends(&out, pull);
                for post in solids
                    .iter()
                    .filter(|one| matches!(one.role, Role::Post(_)))
                {
                    assert!(!runs_through(post, tape), "{name}: {:?}", pull.ends);
                }
                // A corner or an edge of its own plate.
                let is_corner = pull.ends[0].contains('P');
                let covered = solids.iter().filter(covers).any(|plate| {
                    let (low, high) = plate.bounds();
                    let at = tape[0];
                    at.cmpgt(low.truncate()).all() && at.cmplt(high.truncate()).all()
                });
                assert!(is_corner || !covered, "{name}: {:?}", pull.ends);
                tapes += 1;
            }
        }
    }
    assert!(tapes > 100, "{tapes}");
}

#[test]
fn marks_on_the_base_line_lie_clear_of_door_tracks_and_of_what_stands_there() {
    let mut moved = 0;
    for (name, as_it_is) in scenes() {
        let half = as_it_is.lift.spacing.m() * 0.5;
        let mut blocked = as_it_is.clone();
        let freezer = thing(
            "freezer",
            [half + blocked.lift.across.m(), 0.3],
            [0.5, 0.6],
            0.0,
        );
        blocked.garage.obstacles.push(freezer);
        for (is_blocked, bay) in [(false, as_it_is), (true, blocked)] {
            let out = drilled(&bay);
            let at = |letter: &str| out.point(letter).unwrap().at_m;
            let [h, j] = [at("H"), at("J")];
            let middle = bay.lift.across.m();
            assert!((h.x + j.x - 2.0 * middle).abs() < 1e-9, "{name}");
            assert!(h.y == 0.0 && j.y == 0.0);
            for one in way::standing(&bay) {
                for mark in [h, j] {
                    let (low, high) = one.solid.bounds();
                    let near = mark.clamp(low.truncate(), high.truncate()).distance(mark);
                    assert!(near >= 0.025, "{name}: {near} m from {}", one.solid.name);
                }
            }
            let off = (j.x - middle - half).abs();
            let whys = out.steps.iter().flat_map(|step| &step.pulls);
            let mut whys = whys.filter(|pull| pull.ends[1] == "J");
            let why = &whys.next().unwrap().why;
            assert_eq!(
                off > 1e-9,
                why.contains("for the diagonals"),
                "{name}: {why}"
            );
            assert!(!is_blocked || off > 0.1, "{name}: {off}");
            let step = if bay.units == crate::bay::UnitSystem::Imperial {
                0.0254
            } else {
                0.01
            };
            let steps = (j.x - middle) / step;
            assert!(off < 1e-9 || (steps - steps.round()).abs() < 1e-6, "{name}");
            // The post line stays where the posts stand.
            assert!((at("L").x - middle - half).abs() < 1e-9, "{name}");
            moved += usize::from(!is_blocked && off > 1e-9);
        }
    }
    assert!(moved >= 2, "light-in-the-way and door-meets-post at least");
}

#[test]
fn what_stands_in_the_way_of_a_pull_or_on_a_mark_is_told_with_the_pulls() {
    let mut bay = scene("coupe-full-rise");
    bay.garage.obstacles.clear();
    let wall = -bay.garage.opening.offset.m() - bay.garage.width.m() * 0.5;
    bay.garage.obstacles = vec![
        thing("freezer", [wall + 0.3, 0.3], [0.7, 0.7], 0.0),
        thing("shelf on the wall", [wall + 0.3, 0.3], [0.7, 0.7], 1.2),
        thing(
            "pallet",
            [bay.lift.across.m(), bay.lift.post_line.m() * 0.5],
            [0.4, 0.4],
            0.02,
        ),
    ];
    let out = setting_out(&bay, &study(&bay).unwrap());
    let step = |title: &str| out.steps.iter().find(|step| step.title == title).unwrap();
    let base = &step("Base line").says;
    assert!(
        base.contains("In the way: freezer (pulls 1, 2; over A)"),
        "{base}"
    );
    assert!(base.contains("Move it first"), "{base}");
    let line = step("Post line");
    let along = line.pulls.iter().find(|pull| pull.ends[1] == "G").unwrap();
    let told = line.says.split("pallet (pull").nth(1).unwrap();
    let told = told.split(')').next().unwrap();
    let numbers: Vec<usize> = told
        .trim_start_matches("s ")
        .split(", ")
        .map(|number| number.trim().parse().unwrap())
        .collect();
    // Every pull that runs through it, and no other.
    let solid = way::standing(&bay).into_iter();
    let solid = solid
        .map(|one| one.solid)
        .find(|one| one.name.ends_with("pallet"));
    let solid = solid.unwrap();
    let through = line.pulls.iter();
    let through = through.filter(|pull| runs_through(&solid, ends(&out, pull)));
    let through: Vec<usize> = through.map(|pull| pull.number).collect();
    assert_eq!(numbers, through);
    assert!(numbers.contains(&along.number));
    for step in &out.steps {
        assert!(!step.says.contains("shelf on the wall"), "{}", step.says);
    }
}

#[test]
fn tapes_along_the_base_line_are_pulled_in_front_of_door_tracks() {
    let bay = scene("light-in-the-way");
    let out = setting_out(&bay, &study(&bay).unwrap());
    let base = &out.steps[0].says;
    assert!(base.contains("the door's tracks (pulls 1"), "{base}");
    assert!(
        base.contains("Open the door, and pull in front of the tracks"),
        "{base}"
    );
}

#[test]
fn a_turned_column_has_an_edge_there_and_no_face() {
    let bay = scene("no-safe-lock");
    assert!(bay.lift.column.turned.rad() != 0.0);
    let said = |bay: &Bay| {
        let out = drilled(bay);
        let pulls = out.steps.iter().flat_map(|step| &step.pulls);
        let mut to_k = pulls.filter(|pull| pull.ends[1] == "K" && pull.sets);
        let why = to_k.next().unwrap().why.clone();
        (why, out.point("K").unwrap().what.clone())
    };
    let (why, what) = said(&bay);
    assert_eq!(
        why,
        "on the post line, level with the left post's nearest edge"
    );
    assert!(what.contains("nearest edge"), "{what}");
    let mut straight = bay;
    straight.lift.column.turned = Angle::ZERO;
    let (why, what) = said(&straight);
    assert!(why.contains("inner face") && what.contains("inner face"));
}

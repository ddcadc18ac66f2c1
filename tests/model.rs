//! The model, read back by another library and held against the list of solids.
#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use std::collections::HashMap;
use std::path::Path;
use std::process::Command;

use glam::{DQuat, DVec3};
use gltf::Gltf;
use gltf::animation::util::ReadOutputs;
use serde_json::Value;

/// How far the model may stand outside a solid, metres.
const OUTSIDE_M: f64 = 1e-4;
/// How far single precision may put it inside, metres.
const ROUNDING_M: f64 = 5e-6;

fn bayrise(args: &[&str]) -> Vec<u8> {
    let output = Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .args(args)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.code().is_some_and(|code| code < 2), "{said}");
    output.stdout
}

fn scenes() -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let all = std::fs::read_dir(folder).unwrap();
    let mut all: Vec<String> = all
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "ron"))
        .map(|path| path.display().to_string())
        .collect();
    all.sort();
    assert!(all.len() >= 14);
    all
}

/// A rigid place: turn, then shift.
#[derive(Clone, Copy)]
struct Place(DQuat, DVec3);

fn vector(values: [f32; 3]) -> DVec3 {
    DVec3::from_array(values.map(f64::from))
}

fn turn(values: [f32; 4]) -> DQuat {
    DQuat::from_array(values.map(f64::from)).normalize()
}

/// What a program that plays the animation shows at a time: the place of each animated node.
fn played(model: &Gltf, seconds: f64) -> HashMap<usize, Place> {
    let blob = model.blob.as_deref();
    let mut places: HashMap<usize, Place> = HashMap::new();
    for channel in model.animations().flat_map(|raise| raise.channels()) {
        let node = channel.target().node();
        let (shift, rotation, _) = node.transform().decomposed();
        let place = places
            .entry(node.index())
            .or_insert(Place(turn(rotation), vector(shift)));
        let reader = channel.reader(|_| blob);
        let times: Vec<f64> = reader.read_inputs().unwrap().map(f64::from).collect();
        let next = times.iter().position(|t| *t >= seconds).unwrap();
        let last = next.saturating_sub(1);
        let length = times[next] - times[last];
        let share = if length > 0.0 {
            (seconds - times[last]) / length
        } else {
            0.0
        };
        match reader.read_outputs().unwrap() {
            ReadOutputs::Translations(all) => {
                let all: Vec<_> = all.map(vector).collect();
                place.1 = all[last].lerp(all[next], share);
            }
            ReadOutputs::Rotations(all) => {
                let all: Vec<_> = all.into_f32().map(turn).collect();
                place.0 = all[last].slerp(all[next], share);
            }
            _ => panic!("only places are animated"),
        }
    }
    places
}

/// Every node's corners where they are shown, in the bay's axes, by name.
fn corners(model: &Gltf, moved: &HashMap<usize, Place>) -> HashMap<String, Vec<DVec3>> {
    let blob = model.blob.as_deref();
    let scene = model.default_scene().unwrap();
    let root = scene.nodes().next().unwrap();
    assert_eq!(root.name(), Some("bay"));
    let (shift, rotation, _) = root.transform().decomposed();
    assert!(shift.iter().all(|part| part.abs() <= 0.0));
    let upright = turn(rotation);
    // y up, and what lies deep in the bay lies away from the viewer.
    assert!((upright * DVec3::Z - DVec3::Y).length() < 1e-6);
    assert!((upright * DVec3::Y + DVec3::Z).length() < 1e-6);
    let mut found = HashMap::new();
    for node in root.children() {
        let (shift, rotation, scale) = node.transform().decomposed();
        assert!(scale.iter().all(|part| (part - 1.0).abs() <= 0.0));
        let rest = Place(turn(rotation), vector(shift));
        let Place(rotation, shift) = moved.get(&node.index()).copied().unwrap_or(rest);
        let mut points = Vec::new();
        for part in node.mesh().unwrap().primitives() {
            let reader = part.reader(|_| blob);
            let places: Vec<DVec3> = reader.read_positions().unwrap().map(vector).collect();
            let normals: Vec<DVec3> = reader.read_normals().unwrap().map(vector).collect();
            let numbers: Vec<u32> = reader.read_indices().unwrap().into_u32().collect();
            assert!(part.material().name().is_some());
            for triangle in numbers.chunks(3) {
                let [a, b, c] = [0, 1, 2].map(|i| places[triangle[i] as usize]);
                let out = (b - a).cross(c - a);
                if out.length() > 1e-8 {
                    let shaded = normals[triangle[0] as usize];
                    assert!(out.normalize().dot(shaded) > 0.9, "faces look outward");
                }
            }
            points.extend(places.iter().map(|place| rotation * *place + shift));
        }
        let name = node.name().unwrap().to_owned();
        assert!(found.insert(name, points).is_none(), "names are unique");
    }
    found
}

fn numbers(value: &Value) -> Vec<f64> {
    let all = value.as_array().unwrap().iter();
    all.map(|one| one.as_f64().unwrap()).collect()
}

/// How far a solid of the printed list reaches along a direction.
fn reach(solid: &Value, way: DVec3) -> f64 {
    let q = &solid["quaternion"];
    let part = |name: &str| q[name].as_f64().unwrap();
    let rotation = DQuat::from_xyzw(part("x"), part("y"), part("z"), part("w"));
    let own = rotation.inverse() * way;
    let farthest = match solid["kind"].as_str().unwrap() {
        "box" => (DVec3::from_slice(&numbers(&solid["size_m"])) * 0.5).dot(own.abs()),
        "cylinder" => {
            let size = |name: &str| solid[name].as_f64().unwrap();
            size("radius_m") * own.truncate().length() + size("height_m") * 0.5 * own.z.abs()
        }
        _ => {
            let all = solid["vertices_m"].as_array().unwrap().iter();
            all.map(|vertex| DVec3::from_slice(&numbers(vertex)).dot(own))
                .fold(f64::NEG_INFINITY, f64::max)
        }
    };
    DVec3::from_slice(&numbers(&solid["position_m"])).dot(way) + farthest
}

/// Directions spread over the sphere.
fn ways() -> Vec<DVec3> {
    let golden = std::f64::consts::PI * (3.0 - 5.0_f64.sqrt());
    let spread = (0..60).map(|i| {
        let z = 1.0 - (f64::from(i) + 0.5) / 30.0;
        let flat = (1.0 - z * z).sqrt();
        let angle = golden * f64::from(i);
        DVec3::new(flat * angle.cos(), flat * angle.sin(), z)
    });
    let axes = [DVec3::X, DVec3::Y, DVec3::Z];
    spread.chain(axes).chain(axes.map(|axis| -axis)).collect()
}

fn compare(scene: &str, model: &Gltf, travel_m: f64, door: &str, ways: &[DVec3]) {
    let moved = if travel_m > 0.0 {
        played(model, travel_m / 0.1)
    } else {
        HashMap::new()
    };
    let shown = corners(model, &moved);
    let travel = format!("{:.6} m", travel_m);
    let list = bayrise(&["solids", scene, "--travel", &travel, "--door", door]);
    let list: Value = serde_json::from_slice(&list).unwrap();
    let list = list["solids"].as_array().unwrap();
    assert_eq!(list.len(), shown.len(), "{scene}: every solid is a node");
    for solid in list {
        let name = solid["name"].as_str().unwrap();
        let points = &shown[name];
        for way in ways {
            let drawn = points.iter().map(|p| p.dot(*way));
            let drawn = drawn.fold(f64::NEG_INFINITY, f64::max);
            let off = drawn - reach(solid, *way);
            assert!(
                (-ROUNDING_M..OUTSIDE_M).contains(&off),
                "{scene}: {name} at {travel_m} along {way}: off by {off}"
            );
        }
    }
}

#[test]
fn every_solid_stands_in_the_model_and_follows_the_raise() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("bay.glb");
    let out = out.to_str().unwrap();
    let ways = ways();
    let (mut with, mut without) = (0, 0);
    for scene in scenes() {
        bayrise(&["model", &scene, out, "--on", "2026-05-14"]);
        let bytes = std::fs::read(out).unwrap();
        // Reading checks the model by the rules of its format.
        let model = Gltf::from_slice(&bytes).unwrap_or_else(|error| panic!("{scene}: {error}"));
        let said = model.document.as_json().asset.extras.as_ref().unwrap();
        let said: Value = serde_json::from_str(said.get()).unwrap();
        let check = bayrise(&["check", &scene, "--format", "json", "--on", "2026-05-14"]);
        let check: Value = serde_json::from_slice(&check).unwrap();
        let verdict = &check["verdict"];
        assert_eq!(said["highest_safe_lock"], verdict["highest_safe_lock"]);
        assert_eq!(said["cautions"], check["cautions"]);
        assert_eq!(
            said["input_fingerprint"],
            check["program"]["input_fingerprint"]
        );
        let door = said["door"].as_str().unwrap();
        compare(&scene, &model, 0.0, door, &ways);
        let raise = model.animations().count();
        match verdict["highest_safe_lock"].as_u64() {
            None => {
                without += 1;
                assert_eq!(raise, 0, "{scene}: nothing is raised where no lock is safe");
                let words = said["raise"].as_str().unwrap();
                assert!(words.starts_with("No lock is called safe"), "{words}");
            }
            Some(lock) => {
                with += 1;
                assert_eq!(raise, 1);
                let locks = check["locks"].as_array().unwrap();
                let lock = locks.iter().find(|one| one["lock"] == lock).unwrap();
                let top_m = lock["travel_m"].as_f64().unwrap();
                let last = model.animations().flat_map(|raise| raise.channels());
                let last = last.map(|channel| {
                    let reader = channel.reader(|_| model.blob.as_deref());
                    reader.read_inputs().unwrap().map(f64::from).last().unwrap()
                });
                let last = last.fold(0.0, f64::max);
                assert!((last * 0.1 - top_m).abs() < 1e-6, "it ends on the lock");
                for share in [0.07, 0.13, 0.31, 0.5, 0.9] {
                    let travel_m = (top_m * share * 1e6).round() / 1e6;
                    compare(&scene, &model, travel_m, door, &ways);
                }
            }
        }
    }
    assert!(with >= 8 && without >= 3, "{with} and {without}");
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    for (command, ending) in [("model", "glb"), ("report", "html")] {
        let files = ["a", "b"].map(|name| folder.path().join(format!("{name}.{ending}")));
        for file in &files {
            let out = file.to_str().unwrap();
            bayrise(&[command, "scenes/tall-pickup.ron", out, "--on", "2026-05-14"]);
        }
        let [a, b] = files.map(|file| std::fs::read(file).unwrap());
        assert!(a == b, "{command}");
    }
}

#[test]
fn what_can_not_be_made_leaves_nothing_behind() {
    let folder = tempfile::tempdir().unwrap();
    let broken = folder.path().join("broken.ron");
    std::fs::write(&broken, "(format: 1, title: 3").unwrap();
    for (command, name) in [
        ("model", "bay.gltf"),
        ("report", "bay.pdf"),
        ("model", "bay.glb"),
        ("report", "bay.html"),
    ] {
        let out = folder.path().join(name);
        let output = Command::new(env!("CARGO_BIN_EXE_bayrise"))
            .arg(command)
            .args([&broken, &out])
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        assert!(!output.stderr.is_empty());
        assert!(!out.exists());
    }
}

//! While a file names something as not measured, nothing that the program says of it can be taken for
//! a pass: every shipped scene, every command that says something of a bay, and the study itself.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests may fail the test too"
)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use bayrise::bayfile::{self, presets::EmbeddedOnly};
use bayrise::clearance::{
    DoorState, HereState, Limit, LockState, PairState, Probe, Verdict, Withheld, verdict_on,
};
use bayrise::ground::{Quantity, Standing};
use bayrise::solids::DoorTravel;
use serde_json::Value;

/// More than are named in a sentence: the rest must be named elsewhere.
const NAMES: [&str; 6] = [
    "qualm one",
    "qualm two",
    "qualm three",
    "qualm four",
    "qualm five",
    "qualm six, the underside of the beam that runs across the bay over the third panel of the door",
];

/// A scene, its text, and its text with things that are not measured.
struct Scene {
    name: String,
    text: String,
    unmeasured: String,
}

fn scenes() -> Vec<Scene> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let all = fs::read_dir(folder).unwrap();
    let mut all: Vec<Scene> = all
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "ron"))
        .map(|path| {
            let text = fs::read_to_string(&path).unwrap();
            Scene {
                name: path.file_stem().unwrap().to_str().unwrap().to_owned(),
                unmeasured: unmeasured(&text),
                text,
            }
        })
        .collect();
    all.sort_by(|a, b| a.name.cmp(&b.name));
    assert!(all.len() >= 14);
    all
}

fn unmeasured(text: &str) -> String {
    let list = NAMES.map(|name| format!("{name:?}")).join(", ");
    let with = text.replacen(
        "format: 1,",
        &format!("format: 1,\n    not_measured: [{list}],"),
        1,
    );
    assert_ne!(with, text);
    with
}

fn bay(text: &str) -> bayrise::bay::Bay {
    bayfile::read("bay.ron", text.as_bytes(), &EmbeddedOnly)
        .unwrap()
        .bay
}

#[test]
fn nothing_in_the_study_passes_and_what_fails_stays() {
    for scene in scenes() {
        let name = &scene.name;
        let (whole, _) = Probe::with_study(&bay(&scene.text)).unwrap();
        let listed = bay(&scene.unmeasured);
        let (study, mut probe) = Probe::with_study(&listed).unwrap();
        assert_eq!(study.not_measured(), NAMES, "{name}");
        assert_eq!(study.highest_safe_lock, None, "{name}");
        assert_eq!(study.highest_clear_lock, None, "{name}");
        assert_eq!(study.nominal_clear_lock, None, "{name}");
        assert!(study.marks.is_none() && !study.full_rise, "{name}");
        assert!(!study.doors.may_run_when_down, "{name}");
        assert!(study.opening_parts.is_empty(), "{name}");
        for lock in &study.locks {
            assert!(
                lock.state != LockState::Clear && !lock.door_may_run,
                "{name}"
            );
        }
        let doors = &study.doors;
        for door in [&doors.shut, &doors.open, &doors.running] {
            assert!(!door.locks.contains(&LockState::Clear), "{name}");
            assert_eq!(
                (door.highest_clear_lock, door.highest_safe_lock),
                (None, None)
            );
        }
        // What was not clear is told as it was.
        for (lock, was) in study.locks.iter().zip(&whole.locks) {
            let fails = was.state != LockState::Clear;
            assert!(
                !fails || lock.state == was.state,
                "{name}: lock {}",
                lock.lock
            );
        }
        assert_eq!(
            study.limit,
            match whole.highest_clear_lock {
                Some(_) => Limit::Withheld,
                None => whole.limit.clone(),
            },
            "{name}"
        );
        // Every other reason to withhold is still there, with its figure.
        let others = |one: &&Withheld| !matches!(one, Withheld::NotMeasured { .. });
        let others: Vec<_> = study.withheld.iter().filter(others).cloned().collect();
        assert_eq!(others, whole.withheld, "{name}");
        for (section, was) in study.sections.iter().zip(&whole.sections) {
            assert_eq!(section.figures.len(), was.figures.len(), "{name}");
            assert_ne!(section.standing(), Standing::Passes, "{name}");
            for (figure, was) in section.figures.iter().zip(&was.figures) {
                match was.standing {
                    Standing::Stops => assert_eq!(figure, was, "{name}"),
                    Standing::Passes => assert_eq!(figure.standing, Standing::Unknown, "{name}"),
                    _ => assert_ne!(figure.standing, Standing::Passes, "{name}"),
                }
                let is_in_words = matches!(figure.found, Some(Quantity::Words(_)));
                assert!(!is_in_words || figure.standing == Standing::Stops, "{name}");
            }
        }
        // Among many bays it is judged alike.
        let (among, alone) = (verdict_on(&listed, None).unwrap(), Verdict::of(&study));
        assert_eq!(among.limit, alone.limit, "{name}");
        assert_eq!(among.not_measured(), NAMES, "{name}");
        let locks = |one: &Verdict| (one.highest_safe_lock, one.highest_clear_lock, one.full_rise);
        assert_eq!(locks(&among), locks(&alone), "{name}");
        assert!(among.standings().eq(alone.standings()), "{name}");
        nothing_is_clear_on_the_way(name, &listed, &mut probe);
    }
}

fn nothing_is_clear_on_the_way(name: &str, bay: &bayrise::bay::Bay, probe: &mut Probe) {
    for door in [DoorTravel::Shut, DoorTravel::At(0.5), DoorTravel::Open] {
        for step in 0..=40 {
            let travel_m = bay.lift.travel.m() * f64::from(step) / 40.0;
            let here = probe.at(door, travel_m);
            assert_ne!(here.state, HereState::Clear, "{name} at {travel_m}");
            let pairs = here.pairs.iter();
            assert!(
                pairs
                    .map(|pair| pair.state)
                    .all(|state| state != PairState::Clear),
                "{name} at {travel_m}"
            );
        }
    }
    assert!(
        probe
            .stretches(DoorState::Running)
            .iter()
            .all(|stretch| { matches!(stretch.state, PairState::Tight | PairState::Strikes) })
    );
}

/// The folder of a test, empty.
fn folder(of: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(of);
    drop(fs::remove_dir_all(&folder));
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// What a command printed; it found no safe lock, or wrote a file.
fn bayrise(folder: &Path, args: &[&str]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .args(args)
        .current_dir(folder)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(
        output.status.code().is_some_and(|code| code < 2),
        "{args:?}: {said}"
    );
    String::from_utf8(output.stdout).unwrap()
}

/// Every value of JSON, with the key that it stands under.
fn values<'a>(key: &'a str, value: &'a Value, out: &mut Vec<(&'a str, &'a Value)>) {
    out.push((key, value));
    match value {
        Value::Array(all) => all.iter().for_each(|one| values(key, one, out)),
        Value::Object(all) => all.iter().for_each(|(key, one)| values(key, one, out)),
        _ => {}
    }
}

/// No value that a program could take for a pass.
fn no_pass(of: &str, json: &Value) {
    let mut all = Vec::new();
    values("", json, &mut all);
    for (key, value) in all {
        let says = value.as_str().unwrap_or_default();
        let words = ["clear", "passes", "holds", "safe", "go", "reach", "may run"];
        let is_name = ["topic", "check"].contains(&key);
        assert!(is_name || !words.contains(&says), "{of}: {key} is {says}");
        let is_answer = [
            "highest_safe_lock",
            "highest_clear_lock",
            "nominal_clear_lock",
            "stop_mark_m",
            "never_above_m",
            "stop_travel_m",
            "holds_from",
            "marks",
            "estimate",
            "inverse",
            "load_use",
            "walking_m",
            "price_in_all",
        ];
        assert!(
            !is_answer.contains(&key) || value.is_null(),
            "{of}: {key} is {value}"
        );
        let is_yes = [
            "door_may_run",
            "door_may_run_when_down",
            "full_rise",
            "is_go",
            "met",
            "good",
        ];
        assert!(
            !is_yes.contains(&key) || *value == false,
            "{of}: {key} is {value}"
        );
    }
}

/// No sentence and no cell of a table that a person could take for a pass; and everything that is
/// not measured is named.
fn says_no_pass(of: &str, text: &str) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for name in NAMES {
        assert!(flat.contains(name), "{of} does not name {name}");
    }
    // The cautions stand in all of them.
    let lower = flat.to_lowercase().replace("stop at the mark", "");
    for words in [
        "is the highest safe lock",
        "highest safe lock:",
        "stop at ",
        "never above ",
        "never above:",
        "stop the raise with",
        "marks on the column",
        "release at",
        "the door may be run",
        "it may be run only",
        "every margin holds here",
        "driving in keeps",
        "its margins hold",
        "nothing comes near",
        "nothing comes short",
        "comes near anything",
        "the driver can get out",
        "brings its pad under",
        "touch nothing",
        "touches nothing",
        "is as thick",
        "the anchors hold",
        "the slab carries",
        "can stand upright",
        "would be clear",
        "is a go",
        "all the way",
        "accepted by",
    ] {
        assert!(!lower.contains(words), "{of} says \"{words}\"");
    }
    for line in text.lines() {
        for cell in line.split("  ").map(str::trim) {
            let is_pass = ["clear", "may run", "go", "holds", "yes", "reach", "safe"]
                .contains(&cell)
                || cell.starts_with("holds (");
            assert!(!is_pass, "{of}: {line}");
        }
    }
}

/// The texts of the pages of one sheet, and of those beside it.
fn pages(folder: &Path, stem: &str) -> String {
    let mut files: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| {
            let name = path.file_name().unwrap().to_str().unwrap();
            name.starts_with(stem) && name.ends_with(".svg")
        })
        .collect();
    files.sort();
    assert!(!files.is_empty(), "{stem}");
    let all = files
        .iter()
        .map(|file| words_of(&fs::read_to_string(file).unwrap()));
    all.collect()
}

/// What of a page is text, one line for each piece.
fn words_of(markup: &str) -> String {
    let mut out = String::new();
    for piece in markup.split('<').skip(1) {
        let (tag, text) = piece.split_once('>').unwrap_or((piece, ""));
        if !tag.starts_with("script") && !tag.starts_with("style") {
            out.push_str(&text.replace("&amp;", "&").replace("&#39;", "'"));
            out.push('\n');
        }
    }
    out
}

#[test]
fn no_command_says_that_anything_passes() {
    let scenes = scenes();
    // Side by side, as far as there is room.
    std::thread::scope(|scope| {
        for part in 0..4 {
            let mine = scenes.iter().skip(part).step_by(4);
            scope.spawn(move || mine.for_each(of_one_scene));
        }
    });
}

fn of_one_scene(scene: &Scene) {
    let name = &scene.name;
    let at = folder(&format!("unmeasured-{name}"));
    fs::write(at.join("bay.ron"), &scene.unmeasured).unwrap();
    let json = |args: &[&str]| -> Value { serde_json::from_str(&bayrise(&at, args)).unwrap() };

    let check = json(&[
        "check",
        "bay.ron",
        "--format",
        "json",
        "--need-lock",
        "1",
        "--sample",
        "20",
    ]);
    no_pass(&format!("check of {name}"), &check);
    assert_eq!(check["not_measured"].as_array().unwrap().len(), NAMES.len());
    assert_eq!(check["verdict"]["withheld"][0]["reason"], "not_measured");
    let text = bayrise(&at, &["check", "bay.ron", "--sample", "20"]);
    says_no_pass(&format!("check of {name}"), &text);

    let plan = json(&["plan", "bay.ron", "--format", "json", "--page", "plan.svg"]);
    no_pass(&format!("plan of {name}"), &plan);
    assert_eq!(plan["not_measured"].as_array().unwrap().len(), NAMES.len());
    says_no_pass(
        &format!("plan of {name}"),
        &bayrise(&at, &["plan", "bay.ron"]),
    );

    for (command, out) in [
        ("card", "card.svg"),
        ("record", "record.svg"),
        ("layout", "layout.svg"),
    ] {
        bayrise(&at, &[command, "bay.ron", out]);
    }
    for stem in ["plan", "card", "record", "layout"] {
        says_no_pass(&format!("{stem} of {name}"), &pages(&at, stem));
    }

    bayrise(&at, &["report", "bay.ron", "bay.html"]);
    of_the_page(name, &fs::read_to_string(at.join("bay.html")).unwrap());

    bayrise(&at, &["model", "bay.ron", "bay.glb"]);
    let model = gltf::Gltf::open(at.join("bay.glb")).unwrap();
    assert_eq!(model.animations().count(), 0, "{name}");
    let asset = model.document.as_json().asset.extras.as_ref().unwrap();
    let asset: Value = serde_json::from_str(asset.get()).unwrap();
    no_pass(&format!("model of {name}"), &asset);
    assert_eq!(asset["not_measured"].as_array().unwrap().len(), NAMES.len());
}

/// The page to hand on: its text, and what it says beside the slider.
fn of_the_page(name: &str, page: &str) {
    let words = words_of(page);
    says_no_pass(&format!("page of {name}"), &words);
    let start = page.find("type=\"application/json\"").unwrap();
    let start = start + page[start..].find('>').unwrap() + 1;
    let end = start + page[start..].find("</script>").unwrap();
    let slider: Value = serde_json::from_str(&page[start..end]).unwrap();
    no_pass(&format!("slider of {name}"), &slider);
    let mut all = Vec::new();
    values("", &slider, &mut all);
    let spots: Vec<&str> = all
        .iter()
        .filter(|(key, _)| *key == "says")
        .map(|(_, says)| says.as_str().unwrap())
        .collect();
    assert!(spots.len() > 10, "{name}");
    for says in spots {
        assert!(!says.contains("margin holds"), "{name}: {says}");
        assert!(!says.contains("may be run"), "{name}: {says}");
        assert!(!says.contains("under the body"), "{name}: {says}");
    }
}

#[test]
fn a_comparison_says_nothing_of_what_is_not_measured() {
    let at = folder("unmeasured-compare");
    let scene = scenes()
        .into_iter()
        .find(|one| one.name == "coupe-full-rise");
    fs::write(at.join("bay.ron"), scene.unwrap().unmeasured).unwrap();
    let options = "(format: 1, title: \"Which\", base: \"bay.ron\", currency: \"$\", \
                   prices: (freight: 10), lifts: [(name: \"as is\"), \"floor-plate-9-6\"])";
    fs::write(at.join("options.ron"), options).unwrap();
    let compared = bayrise(&at, &["compare", "options.ron", "--format", "json"]);
    let compared: Value = serde_json::from_str(&compared).unwrap();
    no_pass("comparison", &compared);
    let cells = compared["cells"].as_array().unwrap();
    assert_eq!(cells.len(), 2);
    for cell in cells {
        assert_eq!(
            cell["found"]["not_measured"].as_array().unwrap().len(),
            NAMES.len()
        );
    }
    says_no_pass("comparison", &bayrise(&at, &["compare", "options.ron"]));
    let csv = bayrise(&at, &["compare", "options.ron", "--format", "csv"]);
    for name in NAMES {
        assert_eq!(
            csv.matches(name).count(),
            2 + usize::from(NAMES[..3].contains(&name)) * 2
        );
    }
}

#[test]
fn posts_as_built_in_an_unmeasured_room_are_no_pass() {
    let at = folder("unmeasured-asbuilt");
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/asbuilt");
    let loft = fs::read_to_string(shipped.join("sail-loft.ron")).unwrap();
    fs::write(at.join("sail-loft.ron"), unmeasured(&loft)).unwrap();
    let readings = "sail-loft-measured.ron";
    fs::copy(shipped.join(readings), at.join(readings)).unwrap();
    let json = bayrise(
        &at,
        &["asbuilt", "sail-loft.ron", readings, "--format", "json"],
    );
    let json: Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json["highest_safe_lock"], Value::Null);
    assert_eq!(json["marks"], Value::Null);
    assert_eq!(json["not_measured"].as_array().unwrap().len(), NAMES.len());
    let text = bayrise(&at, &["asbuilt", "sail-loft.ron", readings]);
    for name in NAMES {
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(name), "{name}");
    }
    assert!(!text.contains("is the highest safe lock") && !text.contains("Never above"));
}

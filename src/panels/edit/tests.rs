//! Do the tables hold every field of the file, and does everything that they offer give a bay?

use std::collections::HashSet;
use std::path::Path;
use std::sync::Arc;

use super::now::Now;
use super::paths::{self, join};
use super::rows::adding;
use super::table::{self, Entry, Fallback, Row, What, roots};
use super::things::fresh;
use crate::bay::Bay;
use crate::bayfile::presets::{EmbeddedOnly, lifts, vehicles};
use crate::bayfile::syntax::{Kind, Node, parse};
use crate::diagnostics::{Style, render};
use crate::panels::document::Document;
use crate::panels::settings::Section;
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Solid};

fn scenes() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut scenes: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_file())
        .map(|path| {
            let text = std::fs::read_to_string(&path).unwrap();
            (path.file_name().unwrap().to_string_lossy().into(), text)
        })
        .collect();
    scenes.sort();
    // The same in millimetres: what is made anew follows the file's units.
    let metric: Vec<(String, String)> = scenes
        .iter()
        .map(|(name, text)| {
            let text = text.replace("units: Imperial", "units: Metric");
            (format!("{name}, metric"), text)
        })
        .collect();
    scenes.extend(metric);
    assert!(scenes.len() > 10);
    scenes
}

fn open(text: &str) -> Document {
    Document::new(None, text.into(), None, Arc::new(EmbeddedOnly))
}

fn bay(document: &Document) -> &Bay {
    match document.read() {
        Ok(read) => &read.bay,
        Err(faults) => panic!("{}\n{}", document.text(), render(faults, Style::default())),
    }
}

/// Every row with the path of its value, as the document has them.
fn rows(document: &Document) -> Vec<(String, &'static Row)> {
    fn walk(
        document: &Document,
        above: &str,
        rows: &'static [Row],
        out: &mut Vec<(String, &'static Row)>,
    ) {
        let written = document.written().unwrap();
        for row in rows {
            let path = join(above, row.name);
            out.push((path.clone(), row));
            match row.what {
                What::Field(..) => {}
                What::Group(rows, _) => walk(document, &path, rows, out),
                What::Maybe(rows, _) => {
                    if written.value(&path).is_some() {
                        walk(document, &path, rows, out);
                    }
                }
                What::Variant(forms, _) => {
                    let now = Now::at(written, &path);
                    if let Some(form) = forms.iter().find(|form| (form.is)(&now)) {
                        walk(document, &path, form.rows, out);
                    }
                }
                What::List(_, rows, _) => {
                    for item in 0..written.len(&path) {
                        walk(document, &format!("{path}[{item}]"), rows, out);
                    }
                }
                What::Corners(rows) => {
                    for (pair, _) in paths::PAIRS {
                        walk(document, &join(&path, pair), rows, out);
                    }
                }
            }
        }
    }
    let mut out = Vec::new();
    for section in Section::ALL {
        for root in roots(section, |_| false) {
            if section != Section::Obstacles {
                walk(document, root.path, root.rows, &mut out);
            }
        }
    }
    walk(document, "garage", table::OBSTACLES, &mut out);
    out
}

/// The paths of all plain values in a tree.
fn leaves(node: &Node, path: &str, out: &mut Vec<String>) {
    match &node.kind {
        Kind::Struct { fields, .. } => {
            for field in fields {
                leaves(&field.value, &join(path, &field.name.text), out);
            }
        }
        Kind::Tuple { items, .. } | Kind::List(items) => {
            for (index, item) in items.iter().enumerate() {
                leaves(item, &format!("{path}[{index}]"), out);
            }
        }
        _ => out.push(path.into()),
    }
}

/// The paths that the panel shows for a text.
fn shown(text: &str) -> HashSet<String> {
    let document = open(text);
    let mut shown = Vec::new();
    for section in Section::ALL {
        for root in roots(section, |_| false) {
            paths::shown(
                document.written().unwrap(),
                root.path,
                root.rows,
                &mut shown,
            );
        }
    }
    // A field that takes a whole list shows its items.
    for (path, row) in rows(&document) {
        if matches!(row.what, What::Field(Entry::Quantities(_), _)) {
            let count = document.written().unwrap().len(&path);
            shown.extend((0..count).map(|item| format!("{path}[{item}]")));
        }
    }
    shown.into_iter().collect()
}

#[test]
fn every_value_of_the_scenes_has_a_field() {
    for (name, text) in scenes() {
        let shown = shown(&text);
        let mut wanted = Vec::new();
        leaves(&parse(0, &text).root.unwrap(), "", &mut wanted);
        for path in wanted {
            let has_list = ["format", "lift.preset", "vehicle.preset"].contains(&path.as_str());
            assert!(has_list || shown.contains(&path), "{path} of {name}");
        }
    }
}

#[test]
fn every_value_of_the_presets_has_a_field() {
    let scene = &scenes()[0].1;
    for (record, presets) in [("lift", lifts()), ("vehicle", vehicles())] {
        for preset in presets {
            let head = format!("    {record}: (\n        preset: \"");
            let (before, rest) = scene.split_once(&head).unwrap();
            let (_, after) = rest.split_once('"').unwrap();
            let shown = shown(&format!("{before}{head}{}\"{after}", preset.name));
            let mut wanted = Vec::new();
            leaves(&parse(0, preset.text).root.unwrap(), record, &mut wanted);
            assert!(wanted.len() > 20);
            for path in wanted {
                let is_version = path == format!("{record}.format");
                let is_overridden = path.starts_with("vehicle.attached");
                assert!(
                    is_version || is_overridden || shown.contains(&path),
                    "{path} of {}",
                    preset.name
                );
            }
        }
    }
}

#[test]
fn every_form_of_every_value_gives_a_bay() {
    let mut seen = HashSet::new();
    for (name, text) in scenes() {
        let mut document = open(&text);
        bay(&document);
        for (path, row) in rows(&document) {
            let What::Variant(forms, _) = row.what else {
                continue;
            };
            if row.label.is_empty() {
                continue;
            }
            // From every form to every other in one scene of each units, from the scene's own in all.
            let all = name.starts_with("tall-pickup");
            for from in forms {
                let is = (from.is)(&Now::at(document.written().unwrap(), &path));
                if !all && !is {
                    continue;
                }
                if all {
                    let source = (from.fresh)(&Now::at(document.written().unwrap(), &path));
                    document.set(&path, &source).unwrap();
                }
                let between = document.text().to_string();
                for to in forms {
                    let source = (to.fresh)(&Now::at(document.written().unwrap(), &path));
                    document.set(&path, &source).unwrap();
                    bay(&document);
                    let now = Now::at(document.written().unwrap(), &path);
                    assert!((to.is)(&now), "{name}: {path} is {} now", to.label);
                    seen.insert((path.clone(), to.label));
                    document.change(between.clone());
                }
                document.change(text.clone());
            }
        }
    }
    assert!(seen.len() > 20, "{seen:?}");
}

#[test]
fn defaults_are_what_the_reader_takes() {
    let mut seen = HashSet::new();
    for (name, text) in scenes() {
        let mut document = open(&text);
        for (path, row) in rows(&document) {
            let What::Field(entry, fallback) = row.what else {
                continue;
            };
            let said = match (fallback, entry) {
                (Fallback::Said(said), _) => said,
                (Fallback::Zero, Entry::Quantity(crate::units::Kind::Angle)) => "0 deg",
                (Fallback::Zero, _) => "0 in",
                _ => continue,
            };
            if document.written().unwrap().value(&path).is_some() {
                continue;
            }
            let before = bay(&document).clone();
            let source = super::typed::source(entry, said).unwrap();
            document.set(&path, &source).unwrap();
            assert_eq!(*bay(&document), before, "{name}: {path}");
            seen.insert(row.label);
            document.undo();
        }
    }
    for label in [
        "Under the shut-off bar",
        "Loose pad",
        "Lift",
        "Overshoot",
        "Turned",
    ] {
        // The shipped lifts give their overshoot.
        assert!(
            seen.contains(label) || label == "Overshoot",
            "{label}: {seen:?}"
        );
    }
}

#[test]
fn overshoot_and_mismatch_of_a_lift_that_does_not_say() {
    let scene = &scenes()[0].1;
    let preset = lifts().iter().find(|lift| scene.contains(lift.name));
    let whole = preset
        .unwrap()
        .text
        .replace("format: 1,", "post_line: \"16 ft\",");
    let start = scene.find("    lift: (").unwrap();
    let end = start + scene[start..].find("\n    ),").unwrap() + "\n    ),".len();
    let cut = |text: &str| -> String {
        text.lines()
            .filter(|line| !line.contains("overshoot:") && !line.contains("side_mismatch:"))
            .map(|line| format!("{line}\n"))
            .collect()
    };
    let text = |lift: &str| format!("{}    lift: {lift},{}", &scene[..start], &scene[end..]);
    let said = cut(&whole).replacen('(', "(overshoot: \"25 mm\", side_mismatch: \"12 mm\",", 1);
    let lift = cut(&whole);
    assert_ne!(lift, whole);
    assert_eq!(
        bay(&open(&text(lift.trim()))).lift,
        bay(&open(&text(said.trim()))).lift
    );
}

#[test]
fn everything_known_of_the_ground_has_a_field() {
    let scene = std::fs::read_to_string("scenes/tall-columns.ron").unwrap();
    let start = scene.find("    slab: (").unwrap();
    let ground = r#"    slab: (
        claimed_thickness: "6 in", strength: "25 MPa",
        poured: "2026-05-14", curing: Moist, drill_on: "2026-06-14", load_on: "2026-06-20",
        readings: [("1 ft", "2 ft", "5 in"), (x: "1 ft", y: "3 ft", thickness: "5 in")],
        outline: [("-9 ft", "0 in"), ("9 ft", "0 in"), ("9 ft", "30 ft"), ("-9 ft", "30 ft")],
        lines: [(kind: Crack, from: ("1 ft", "2 ft"), to: ("3 ft", "4 ft"))],
        post_tensioned: false, heated: true, buried_services: false, void_below: false,
        suspended: false, subgrade: "100 psi/in",
        new_pad: (count: 2, length: "4 ft", width: "4 ft", depth: "8 in", strength: "25 MPa", waste: 0.1),
    ),
    power: (voltage: "230 V", breaker: "30 A", run: "45 ft"),
)
"#;
    let text = format!("{}{ground}", &scene[..start]);
    bay(&open(&text));
    let shown = shown(&text);
    let mut wanted = Vec::new();
    leaves(
        &parse(0, &format!("({ground}")).root.unwrap(),
        "",
        &mut wanted,
    );
    assert!(wanted.len() > 35, "{wanted:?}");
    // The age is given by the day or by days, never by both.
    let by_days = text.replace("poured: \"2026-05-14\"", "age_days: 90");
    bay(&open(&by_days));
    wanted.push("slab.age_days".into());
    for path in wanted {
        assert!(shown.contains(&path), "{path}");
    }
    // What is not known is never shown as a no.
    let known = "post_tensioned: false, ";
    let unknown = open(&text.replace(known, ""));
    assert_eq!(bay(&unknown).slab.as_ref().unwrap().post_tensioned, None);
    let open_word = rows(&unknown).into_iter().any(|(path, row)| {
        path == "slab.post_tensioned"
            && matches!(row.what, What::Field(Entry::Words(_), Fallback::Open))
    });
    assert!(open_word);
}

#[test]
fn everything_known_of_the_anchors_has_a_field() {
    let scene = std::fs::read_to_string("scenes/tall-columns.ron").unwrap();
    let anchor = r#"base_plate: (anchor_age_days: 28, anchor: (
            kind: Sleeve, effective_embedment: "3 in", tensile_strength: "90 ksi",
            yield_strength: "72 ksi", stress_area: "0.3 sq in", ductile: true, category: 2, kc: 17,
            cracked: true, pull_out: "6000 lbf", bearing_area: "1 sq in", torque: "80 ft lbf",
            min_spacing: "5 in", min_edge: "6 in", min_thickness: "5 in", critical_edge: "12 in",
        )),
        manual: (embedment: "4 in"), advertised: (embedment: "4 in"),
"#;
    let text = scene.replace(
        "post_line: \"14 ft\",",
        &format!("post_line: \"14 ft\", {anchor}"),
    );
    assert_ne!(text, scene);
    bay(&open(&text));
    let shown = shown(&text);
    let mut wanted = Vec::new();
    leaves(
        &parse(0, &format!("(lift: ({anchor}))")).root.unwrap(),
        "",
        &mut wanted,
    );
    assert!(wanted.len() > 18, "{wanted:?}");
    for path in wanted {
        assert!(shown.contains(&path), "{path}");
    }
}

#[test]
fn what_may_be_left_out_or_added_gives_a_bay_either_way() {
    let mut lists = HashSet::new();
    for (name, text) in scenes() {
        let mut document = open(&text);
        for (path, row) in rows(&document) {
            match row.what {
                What::List(_, _, fresh) => {
                    let count = document.written().unwrap().len(&path);
                    for _ in 0..2 {
                        let now = Now::at(document.written().unwrap(), &path);
                        let changes = adding(&now, &path, fresh);
                        document.change_all(&changes).unwrap();
                        bay(&document);
                    }
                    assert_eq!(document.written().unwrap().len(&path), count + 2, "{path}");
                    document.undo();
                    document.undo();
                    lists.insert(path);
                }
                What::Maybe(_, fresh) => {
                    let written = document.written().unwrap();
                    if written.value(&path).is_none() {
                        let source = fresh(&Now::at(written, &path));
                        document.set(&path, &source).unwrap();
                        bay(&document);
                        document.undo();
                    }
                }
                _ => {}
            }
        }
        assert_eq!(document.text(), text, "{name}");
    }
    assert!(lists.len() > 5, "{lists:?}");
}

#[test]
fn a_new_light_hangs_free_of_everything_over_the_lift() {
    let mut moved = 0;
    for (name, text) in scenes() {
        let mut document = open(&text);
        let before = bay(&document).clone();
        for _ in 0..2 {
            let now = Now::at(document.written().unwrap(), "garage.obstacles");
            let item = fresh::light(&now);
            document.append("garage.obstacles", &item).unwrap();
        }
        let bay = bay(&document);
        let all = solids(bay, DoorTravel::Open, 0.0).unwrap();
        let there = solids(&before, DoorTravel::Open, 0.0).unwrap().len();
        assert_eq!(all.len(), there + 2, "{name}");
        let is_new = |solid: &Solid| {
            let known = before.garage.obstacles.iter();
            solid
                .name
                .strip_prefix("obstacle/")
                .is_some_and(|name| !known.clone().any(|obstacle| obstacle.name == name))
        };
        for light in all.iter().filter(|solid| is_new(solid)) {
            let (low, high) = light.bounds();
            moved += usize::from(((low.y + high.y) * 0.5 - bay.lift.post_line.m()).abs() > 0.01);
            let others = all.iter().filter(|other| other.name != light.name);
            for other in others.filter(|other| !other.name.starts_with("shell/")) {
                let (other_low, other_high) = other.bounds();
                let apart = low.cmpgt(other_high) | high.cmplt(other_low);
                assert!(apart.any(), "{name}: {} and {}", light.name, other.name);
            }
        }
    }
    assert!(moved > 0, "somewhere a beam was in the way");
}

#[test]
fn everything_that_can_be_added_to_the_room_stands_in_it() {
    for (name, text) in scenes() {
        let mut document = open(&text);
        let before = bay(&document).garage.obstacles.len();
        for (word, fresh) in fresh::ALL.iter().chain(fresh::ALL) {
            let now = Now::at(document.written().unwrap(), "garage.obstacles");
            let item = fresh(&now);
            document.append("garage.obstacles", &item).unwrap();
            bay(&document);
            assert!(
                document.read().unwrap().warnings.is_empty(),
                "{name}: {word}"
            );
        }
        // A row of ties is three.
        let added = bay(&document).garage.obstacles.len() - before;
        assert_eq!(added, 2 * (fresh::ALL.len() + 2));
    }
}

//! Do the sheets keep what they promise, on every shipped scene?

use glam::DVec2;

use super::*;
use crate::bayfile::{presets::EmbeddedOnly, read};
use crate::clearance::study_on;
use crate::drawing::sheet::{Layer, Shape};

const DAY: Date = jiff::civil::date(2026, 5, 14);

fn scenes() -> Vec<(String, Bay)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes");
    let mut scenes: Vec<(String, Bay)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = path.display().to_string();
            let bay = read(&name, &std::fs::read(&path).unwrap(), &EmbeddedOnly).unwrap();
            (name, bay.bay)
        })
        .collect();
    scenes.sort_by(|a, b| a.0.cmp(&b.0));
    assert!(scenes.len() > 10);
    scenes
}

fn sheets(bay: &Bay, paper: Paper) -> Vec<Sheet> {
    let study = study_on(bay, Some(DAY)).unwrap();
    layout(&Order {
        bay,
        study: &study,
        fingerprint: "0123456789abcdef",
        on: DAY,
        paper,
    })
    .unwrap()
}

fn overlap(a: (DVec2, DVec2), b: (DVec2, DVec2)) -> bool {
    a.0.cmplt(b.1 - 1e-6).all() && b.0.cmplt(a.1 - 1e-6).all()
}

#[track_caller]
fn check(name: &str, sheet: &Sheet) {
    let texts: Vec<_> = sheet.texts().map(|text| (text, text.bounds())).collect();
    assert!(texts.len() > 5);
    for (index, (one, its)) in texts.iter().enumerate() {
        let inside = its.0.cmpge(DVec2::splat(8.0)).all() && its.1.cmple(sheet.page_mm - 8.0).all();
        assert!(
            inside,
            "{name}, {}: {:?} leaves the page",
            sheet.name, one.says
        );
        assert!(one.size >= 2.0, "{:?} is too small to read", one.says);
        for (other, theirs) in &texts[..index] {
            assert!(
                !overlap(*its, *theirs),
                "{name}, {}: {:?} lies on {:?}",
                sheet.name,
                one.says,
                other.says
            );
        }
    }
    // Nothing that is drawn leaves the frame.
    for item in &sheet.items {
        let points = match &item.shape {
            Shape::Line { ends, .. } => ends.to_vec(),
            Shape::Polygon { points, .. } => points.clone(),
            Shape::Circle { middle, radius, .. } => vec![*middle - *radius, *middle + *radius],
            Shape::Text(_) => continue,
        };
        for point in points {
            let inside =
                point.cmpge(DVec2::splat(7.99)).all() && point.cmple(sheet.page_mm - 7.99).all();
            assert!(inside, "{name}, {}: {:?}", sheet.name, item.layer);
        }
    }
}

#[test]
fn nothing_overlaps_and_nothing_is_clipped() {
    for (name, bay) in scenes() {
        for paper in [Paper::Letter, Paper::A4, Paper::A3] {
            let sheets = sheets(&bay, paper);
            for (index, sheet) in sheets.iter().enumerate() {
                check(&name, sheet);
                let number = format!("page {} of {}", index + 1, sheets.len());
                assert!(sheet.texts().any(|text| text.says == number), "{number}");
            }
        }
    }
}

#[test]
fn every_page_has_cautions_version_and_fingerprint() {
    let scenes = scenes();
    for sheet in sheets(&scenes[0].1, Paper::Letter) {
        let said: Vec<&str> = sheet.texts().map(|text| text.says.as_str()).collect();
        let said = said.join(" ");
        for caution in CAUTIONS {
            assert!(said.contains(caution), "{caution}");
        }
        assert!(said.contains("0123456789abcdef") && said.contains(env!("CARGO_PKG_VERSION")));
    }
}

#[test]
fn holes_are_on_the_sheets_only_where_they_may_be_drilled() {
    let mut shown = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let drill = crate::setting_out::Drill::of(&bay, &study);
        let sheets = sheets(&bay, Paper::A4);
        let holes = sheets.iter().flat_map(|sheet| &sheet.items);
        let count = holes.filter(|item| item.layer == Layer::Holes).count();
        let texts = sheets.iter().flat_map(Sheet::texts);
        let named = texts.filter(|text| text.says.contains("LH1")).count();
        if drill.why_not().is_none() {
            shown += 1;
            assert!(count > 0 && named > 0, "{name}");
        } else {
            assert_eq!((count, named), (0, 0), "{name}");
            for sheet in &sheets {
                let warned = |text: &crate::drawing::sheet::Text| {
                    text.says.contains("NO DRILLING POSITIONS")
                };
                assert!(sheet.texts().any(warned), "{name}, {}", sheet.name);
            }
        }
    }
    assert!(shown > 0, "one scene at least may be drilled");
}

#[test]
fn a_bay_without_a_safe_lock_says_so_on_every_page() {
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let sheets = sheets(&bay, Paper::Letter);
        for sheet in &sheets {
            let warned = sheet
                .texts()
                .any(|text| text.says.contains("NO LOCK IS SAFE"));
            assert_eq!(warned, study.highest_safe_lock.is_none(), "{name}");
        }
    }
}

#[test]
fn the_same_every_time() {
    let (_, bay) = scenes().remove(0);
    let write = || -> Vec<String> {
        let sheets = sheets(&bay, Paper::A4);
        sheets.iter().map(crate::drawing::svg::svg).collect()
    };
    assert_eq!(write(), write());
}

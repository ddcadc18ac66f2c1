//! What tests of pages share: the shipped scenes, and what every page must keep to.

use glam::DVec2;

use super::sheet::{Shape, Sheet, Text};
use crate::bay::Bay;
use crate::bayfile::{presets::EmbeddedOnly, read};
use crate::ground::Date;

pub(super) const DAY: Date = jiff::civil::date(2026, 5, 14);

pub(super) fn scenes() -> Vec<(String, Bay)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes");
    let mut scenes: Vec<(String, Bay)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        .map(|path| {
            let name = path.file_stem().unwrap().to_string_lossy().into_owned();
            let bay = read(&name, &std::fs::read(&path).unwrap(), &EmbeddedOnly).unwrap();
            (name, bay.bay)
        })
        .collect();
    scenes.sort_by(|a, b| a.0.cmp(&b.0));
    assert!(scenes.len() > 10);
    scenes
}

pub(super) fn scene(name: &str) -> Bay {
    let mut scenes = scenes();
    let index = scenes.iter().position(|(one, _)| one == name).unwrap();
    scenes.swap_remove(index).1
}

/// Everything that is written on some pages, in one line.
pub(super) fn said(pages: &[Sheet]) -> String {
    let texts = pages.iter().flat_map(Sheet::texts);
    let texts: Vec<&str> = texts.map(|text| text.says.as_str()).collect();
    texts.join(" ")
}

fn overlap(a: (DVec2, DVec2), b: (DVec2, DVec2)) -> bool {
    a.0.cmplt(b.1 - 1e-6).all() && b.0.cmplt(a.1 - 1e-6).all()
}

/// No text on another, too small, or off the page; nothing drawn outside the frame.
#[track_caller]
pub(super) fn check(name: &str, pages: &[Sheet]) {
    for (index, sheet) in pages.iter().enumerate() {
        let number = format!("page {} of {}", index + 1, pages.len());
        assert!(sheet.texts().any(|text| text.says == number), "{number}");
        let said = said(std::slice::from_ref(sheet));
        for caution in crate::report::CAUTIONS {
            assert!(said.contains(caution), "{name}: {caution}");
        }
        assert!(said.contains(env!("CARGO_PKG_VERSION")));
        let texts: Vec<_> = sheet.texts().map(|text| (text, text.bounds())).collect();
        for (index, (one, its)) in texts.iter().enumerate() {
            keeps_inside(name, sheet, one, *its);
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
        for item in &sheet.items {
            let points = match &item.shape {
                Shape::Line { ends, .. } => ends.to_vec(),
                Shape::Polygon { points, .. } => points.clone(),
                Shape::Circle { middle, radius, .. } => vec![*middle - *radius, *middle + *radius],
                Shape::Text(_) => continue,
            };
            for point in points {
                let inside = point.cmpge(DVec2::splat(7.99)).all()
                    && point.cmple(sheet.page_mm - 7.99).all();
                assert!(inside, "{name}, {}: {:?}", sheet.name, item);
            }
        }
    }
}

#[track_caller]
fn keeps_inside(name: &str, sheet: &Sheet, text: &Text, (low, high): (DVec2, DVec2)) {
    let inside = low.cmpge(DVec2::splat(8.0)).all() && high.cmple(sheet.page_mm - 8.0).all();
    assert!(
        inside,
        "{name}, {}: {:?} leaves the page",
        sheet.name, text.says
    );
    assert!(text.size >= 2.0, "{:?} is too small to read", text.says);
}

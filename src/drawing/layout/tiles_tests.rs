//! Do the pages in full size show all of the floor, each thing where it is?

use glam::DVec2;

use super::tests::{DAY, scenes};
use super::tiles::{Grid, OVERLAP_MM, Part, full_size};
use super::*;
use crate::clearance::study_on;
use crate::drawing::sheet::{Layer, Shape};

fn tiles(bay: &Bay, paper: Paper, part: Part) -> Vec<Sheet> {
    let study = study_on(bay, Some(DAY)).unwrap();
    let order = Order {
        bay,
        study: &study,
        fingerprint: "0123456789abcdef",
        day: ForDay::settled(DAY),
        paper,
        scale: None,
    };
    full_size(&order, part).unwrap()
}

#[test]
fn windows_cover_an_area_without_a_gap() {
    for size in [
        DVec2::new(0.1, 0.1),
        DVec2::new(3.9, 0.58),
        DVec2::new(7.31, 9.14),
    ] {
        let low = DVec2::new(-3.2, -0.15);
        let window = DVec2::new(0.195, 0.212);
        let grid = Grid::over((low, low + size), window);
        let [columns, rows] = grid.count;
        let (first, _) = grid.window(0, 0);
        let (_, last) = grid.window(columns - 1, rows - 1);
        assert!(first.cmple(low + 1e-9).all() && last.cmpge(low + size - 1e-9).all());
        for column in 1..columns {
            let (before, after) = (grid.window(column - 1, 0).1, grid.window(column, 0).0);
            assert!((before.x - after.x - OVERLAP_MM / 1000.0).abs() < 1e-9);
        }
        for row in 1..rows {
            let (before, after) = (grid.window(0, row - 1).1, grid.window(0, row).0);
            assert!((before.y - after.y - OVERLAP_MM / 1000.0).abs() < 1e-9);
        }
    }
}

/// Every point that is drawn of some layers, metres of the bay, and the box that each page is
/// trimmed to.
fn drawn(pages: &[Sheet], layer: Layer) -> Vec<DVec2> {
    let mut found = Vec::new();
    for page in pages.iter().skip(1) {
        for item in page.items.iter().filter(|item| item.layer == layer) {
            if let Shape::Line { ends: [a, b], .. } = item.shape {
                for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
                    found.push((a.lerp(b, share) - page.origin_mm) / 1000.0);
                }
            }
        }
    }
    found
}

#[test]
fn all_of_the_plates_and_holes_is_on_the_pages_in_full_size() {
    use crate::bay::Side;
    use crate::ground::slab::{SlabMap, anchors_m, plate_rect};

    let mut holes = 0;
    for (name, bay) in scenes() {
        for paper in [Paper::Letter, Paper::A4, Paper::A3] {
            let pages = tiles(&bay, paper, Part::Lift);
            assert!(
                pages.len() > 4 && pages.len() < 120,
                "{name}: {}",
                pages.len()
            );
            let plates = drawn(&pages, Layer::Plates);
            for side in [Side::Left, Side::Right] {
                let rect = plate_rect(&bay, side);
                // Each edge, every 20 mm: something is drawn within 0.01 mm of it in one page.
                let corners = [
                    rect.low,
                    DVec2::new(rect.high.x, rect.low.y),
                    rect.high,
                    DVec2::new(rect.low.x, rect.high.y),
                ];
                let segments = segments(&pages, Layer::Plates);
                for index in 0..4 {
                    let (a, b) = (corners[index], corners[(index + 1) % 4]);
                    let steps = (a.distance(b) / 0.02) as u32;
                    for step in 0..=steps {
                        let at = a.lerp(b, f64::from(step) / f64::from(steps));
                        let near = segments.iter().any(|ends| distance(*ends, at) < 1e-5);
                        assert!(near, "{name}, {paper:?}: {at} of a plate is on no page");
                    }
                }
            }
            assert!(!plates.is_empty());
            let study = study_on(&bay, Some(DAY)).unwrap();
            let drill = crate::setting_out::Drill::of(&bay, &study);
            let on_pages = drawn(&pages, Layer::Holes);
            if drill.why_not().is_some() {
                assert!(on_pages.is_empty(), "{name}");
                continue;
            }
            let lines = segments(&pages, Layer::Holes);
            let map = SlabMap::of(&bay);
            let radius = bay
                .lift
                .base_plate
                .anchor_diameter
                .map_or(0.008, |d| d.m() * 0.5);
            for side in [Side::Left, Side::Right] {
                for at in anchors_m(&bay, &map, side) {
                    let rim = on_pages
                        .iter()
                        .any(|p| (p.distance(at) - radius).abs() < 1e-5);
                    assert!(rim, "{name}: a hole is on no page");
                    for way in [DVec2::X, DVec2::Y] {
                        let crossed = lines.iter().any(|ends| {
                            let along = (ends[1] - ends[0]).normalize().dot(way).abs() > 0.999_999;
                            along && distance(*ends, at) < 1e-6
                        });
                        assert!(crossed, "{name}: a hole has no cross to set a punch on");
                    }
                    holes += 1;
                }
            }
        }
    }
    assert!(holes > 0);
}

fn segments(pages: &[Sheet], layer: Layer) -> Vec<[DVec2; 2]> {
    let mut found = Vec::new();
    for page in pages.iter().skip(1) {
        for item in page.items.iter().filter(|item| item.layer == layer) {
            if let Shape::Line { ends, .. } = item.shape {
                found.push(ends.map(|end| (end - page.origin_mm) / 1000.0));
            }
        }
    }
    found
}

fn distance([a, b]: [DVec2; 2], at: DVec2) -> f64 {
    let way = b - a;
    let share = ((at - a).dot(way) / way.length_squared().max(1e-18)).clamp(0.0, 1.0);
    at.distance(a + way * share)
}

#[test]
fn the_whole_plan_is_there_wall_by_wall() {
    let (_, bay) = scenes().remove(0);
    let pages = tiles(&bay, Paper::A3, Part::Plan);
    let segments = segments(&pages, Layer::Walls);
    let half = bay.garage.width.m() * 0.5;
    let offset = bay.garage.opening.offset.m();
    let depth = bay.garage.depth.m();
    for step in 0..=200 {
        let y = depth * f64::from(step) / 200.0;
        for x in [-half - offset, half - offset] {
            let at = DVec2::new(x, y);
            assert!(
                segments.iter().any(|ends| distance(*ends, at) < 1e-5),
                "{at}"
            );
        }
    }
}

#[test]
fn crosses_of_neighbours_lie_on_each_other_and_pages_carry_what_all_pages_do() {
    let (name, bay) = scenes().remove(0);
    for paper in [Paper::Letter, Paper::A4] {
        let pages = tiles(&bay, paper, Part::Lift);
        let mut crosses: Vec<DVec2> = Vec::new();
        for page in &pages[1..] {
            for item in &page.items {
                if let (Layer::Frame, Shape::Circle { middle, .. }) = (item.layer, &item.shape) {
                    crosses.push((*middle - page.origin_mm) / 1000.0);
                }
            }
        }
        assert_eq!(crosses.len(), (pages.len() - 1) * 4);
        let shared = crosses.iter().filter(|one| {
            crosses
                .iter()
                .filter(|other| one.distance(**other) < 1e-9)
                .count()
                > 1
        });
        assert!(shared.count() > crosses.len() / 3);
        for page in &pages {
            super::tests::check(&name, page);
            let said: Vec<&str> = page.texts().map(|text| text.says.as_str()).collect();
            let said = said.join(" ");
            assert!(said.contains("0123456789abcdef") && said.contains(env!("CARGO_PKG_VERSION")));
            assert!(said.contains(CAUTIONS[0]));
        }
        let again = tiles(&bay, paper, Part::Lift);
        assert_eq!(
            crate::drawing::pdf::pdf("t", &pages),
            crate::drawing::pdf::pdf("t", &again)
        );
    }
}

#[test]
fn nothing_lies_on_anything_on_any_page_of_any_scene() {
    for (name, bay) in scenes() {
        for paper in [Paper::Letter, Paper::A4, Paper::A3] {
            for page in tiles(&bay, paper, Part::Lift) {
                super::tests::check(&name, &page);
            }
        }
    }
}

//! Do the sheets keep what they promise, on every shipped scene?

use glam::DVec2;

use super::*;
use crate::bayfile::{presets::EmbeddedOnly, read};
use crate::clearance::study_on;
use crate::drawing::sheet::{Layer, Shape};

pub(super) const DAY: crate::ground::Date = jiff::civil::date(2026, 5, 14);

pub(super) fn scenes() -> Vec<(String, Bay)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes");
    let mut scenes: Vec<(String, Bay)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        .map(|path| {
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
        day: ForDay::settled(DAY),
        paper,
        scale: None,
    })
    .unwrap()
}

fn overlap(a: (DVec2, DVec2), b: (DVec2, DVec2)) -> bool {
    a.0.cmplt(b.1 - 1e-6).all() && b.0.cmplt(a.1 - 1e-6).all()
}

#[track_caller]
pub(super) fn check(name: &str, sheet: &Sheet) {
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
    // No leader runs through a text.
    for item in &sheet.items {
        let Shape::Line { ends, pen } = item.shape else {
            continue;
        };
        if pen != crate::drawing::sheet::LEADER {
            continue;
        }
        for (text, (low, high)) in &texts {
            let through = (1..1000)
                .map(|share| ends[0].lerp(ends[1], f64::from(share) / 1000.0))
                .find(|at| at.cmpgt(*low + 0.05).all() && at.cmplt(*high - 0.05).all());
            assert!(
                through.is_none(),
                "{name}, {}: a leader runs through {:?}",
                sheet.name,
                text.says
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

/// Type, layer, and each pair of a code and a value.
type Entity = (String, String, Vec<(u16, String)>);

/// The entities of a drawing, read by a reader of its own.
fn entities(dxf: &str) -> Vec<Entity> {
    let mut lines = dxf.lines();
    let mut groups = Vec::new();
    while let (Some(code), Some(value)) = (lines.next(), lines.next()) {
        groups.push((code.trim().parse::<u16>().unwrap(), value.to_owned()));
    }
    let start = groups
        .iter()
        .position(|g| *g == (2, "ENTITIES".into()))
        .unwrap();
    let mut found: Vec<Entity> = Vec::new();
    for (code, value) in groups.into_iter().skip(start + 1) {
        if code == 0 {
            found.push((value, String::new(), Vec::new()));
            continue;
        }
        let last = found.last_mut().unwrap();
        if code == 8 {
            last.1 = value;
        } else {
            last.2.push((code, value));
        }
    }
    found
}

fn number(of: &[(u16, String)], code: u16) -> f64 {
    let found = of.iter().find(|(other, _)| *other == code).unwrap();
    found.1.parse().unwrap()
}

/// Lowest and highest corner of every closed line and circle on layers that begin so, millimetres.
fn boxes(dxf: &str, tag: &str) -> Vec<(DVec2, DVec2)> {
    let mut boxes: Vec<(DVec2, DVec2)> = Vec::new();
    for (kind, layer, groups) in entities(dxf) {
        if !layer.starts_with(tag) {
            continue;
        }
        let at = || DVec2::new(number(&groups, 10), number(&groups, 20));
        match kind.as_str() {
            "POLYLINE" => boxes.push((DVec2::INFINITY, DVec2::NEG_INFINITY)),
            "VERTEX" => {
                let last = boxes.last_mut().unwrap();
                *last = (last.0.min(at()), last.1.max(at()));
            }
            "CIRCLE" => {
                let radius = number(&groups, 40);
                boxes.push((at() - radius, at() + radius));
            }
            _ => {}
        }
    }
    boxes
}

#[test]
fn what_is_read_back_is_where_the_solids_are() {
    use crate::drawing::dxf::{dxf, shifts_mm};
    use crate::drawing::outline::Look;
    use crate::ground::slab::{SlabMap, anchors_m};
    use crate::solids::list::solids;
    use crate::solids::{DoorTravel, Role};

    let mut holes = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let pages = sheets(&bay, Paper::A4);
        let text = dxf(&pages);
        let near = |boxes: &[(DVec2, DVec2)], low: DVec2, high: DVec2| {
            let close = |a: DVec2, b: DVec2| (a - b).abs().max_element() < 0.01;
            boxes.iter().any(|(l, h)| close(*l, low) && close(*h, high))
        };
        let plan = boxes(&text, "PLAN-");
        for one in solids(&bay, DoorTravel::Shut, 0.0).unwrap() {
            let drawn = matches!(
                one.role,
                Role::Post(_) | Role::BasePlate(_) | Role::Body | Role::Wall | Role::Obstacle(_)
            );
            let (low, high) = one.bounds();
            let flat = |p| Look::Plan.flat(p) * 1000.0;
            assert!(
                !drawn || near(&plan, flat(low), flat(high)),
                "{name}: {}",
                one.name
            );
        }
        let drilled = boxes(&text, "PLAN-HOLES");
        if crate::setting_out::Drill::of(&bay, &study)
            .why_not()
            .is_none()
        {
            let map = SlabMap::of(&bay);
            let anchors = [crate::bay::Side::Left, crate::bay::Side::Right]
                .map(|side| anchors_m(&bay, &map, side))
                .concat();
            assert_eq!(anchors.len(), drilled.len());
            for at in anchors {
                let is_there = |(low, high): &(DVec2, DVec2)| {
                    ((*low + *high) * 0.5).distance(at * 1000.0) < 0.01
                };
                assert!(drilled.iter().any(is_there), "{name}");
                holes += 1;
            }
        } else {
            assert!(drilled.is_empty());
        }

        let lock = study.highest_safe_lock.or(study.highest_clear_lock);
        let travel = lock.map_or(0.0, |lock| study.locks[lock - 1].travel_m);
        let door = match study.headline_door {
            crate::clearance::DoorState::Open => DoorTravel::Open,
            _ => DoorTravel::Shut,
        };
        for (tag, look) in [("SIDE", Look::Side), ("FRONT", Look::Front)] {
            let index = pages.iter().position(|page| page.tag == tag).unwrap();
            let shift = DVec2::new(shifts_mm(&pages)[index], 0.0);
            let drawn = boxes(&text, &format!("{tag}-"));
            for one in solids(&bay, door, travel).unwrap() {
                let (low, high) = one.bounds();
                let flat = |p| look.flat(p) * 1000.0 + shift;
                // Walls before the eye are left out, nothing else that the study collides.
                let counts = one.layer() != crate::solids::Layer::Shell;
                let is_there = near(&drawn, flat(low), flat(high));
                assert!(!counts || is_there, "{name}, {tag}: {}", one.name);
            }
        }
    }
    assert!(holes > 0);
}

#[test]
fn a_pdf_has_every_page_in_its_size_and_the_same_bytes() {
    let (_, bay) = scenes().remove(0);
    let pages = sheets(&bay, Paper::Letter);
    let pdf = || crate::drawing::pdf::pdf("Bay", &pages).unwrap();
    let bytes = pdf();
    assert_eq!(bytes, pdf());
    let text = String::from_utf8_lossy(&bytes);
    assert!(text.starts_with("%PDF-1.7"));
    let boxes = text.matches("/MediaBox").count();
    assert_eq!(boxes, pages.len());
    assert!(
        text.contains("792") && text.contains("612"),
        "Letter in points"
    );
    for must in ["/PrintScaling /None", "/FontFile2", "/ToUnicode"] {
        assert!(text.contains(must), "{must}");
    }
    assert!(!text.contains("CreationDate"));
}

#[test]
fn what_is_open_of_slab_and_anchors_is_said_beside_the_holes() {
    let mut seen = 0;
    for (name, mut bay) in scenes() {
        // Nobody knows which anchors they are, and nothing stops for it.
        bay.lift.base_plate.anchor = None;
        let study = study_on(&bay, Some(DAY)).unwrap();
        if crate::setting_out::Drill::of(&bay, &study) != Drill::Shown {
            continue;
        }
        seen += 1;
        for sheet in sheets(&bay, Paper::A4) {
            let warned = |text: &crate::drawing::sheet::Text| text.says.contains("NOT KNOWN YET");
            assert!(sheet.texts().any(warned), "{name}");
        }
    }
    assert!(seen > 0);
}

#[test]
fn a_file_for_programs_has_every_hole_and_plate_once_and_plain_letters() {
    use crate::drawing::dxf::dxf;
    let mut holes = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let order = order(&bay, &study, Paper::A4);
        let text = dxf(&without_copies(&order).unwrap());
        let layers = |wanted: &str| -> Vec<String> {
            let all = entities(&text).into_iter();
            let all = all.filter(|(kind, layer, _)| {
                layer.ends_with(wanted) && matches!(kind.as_str(), "CIRCLE" | "POLYLINE")
            });
            all.map(|(_, layer, _)| layer).collect()
        };
        assert!(layers("-HOLES").iter().all(|layer| layer == "PLAN-HOLES"));
        holes += layers("-HOLES").len();
        assert!(
            !text.contains("LEFT-") && !text.contains("RIGHT-"),
            "{name}"
        );
        for code in ["\\U+00B7", "\\U+2013", "\\U+00B1"] {
            assert!(!text.contains(code), "{name}: {code}");
        }
    }
    assert!(holes > 0);
}

pub(super) fn order<'a>(bay: &'a Bay, study: &'a Study, paper: Paper) -> Order<'a> {
    Order {
        bay,
        study,
        fingerprint: "0123456789abcdef",
        day: ForDay::settled(DAY),
        paper,
        scale: None,
    }
}

#[test]
fn elevations_never_show_more_room_under_the_vehicle_than_the_study_found() {
    use crate::units::{Length, Rounding, both};
    let mut seen = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let Some(lock) = study.highest_safe_lock.or(study.highest_clear_lock) else {
            continue;
        };
        let found = &study.locks[lock - 1];
        for look in [Look::Side, Look::Front] {
            let shown = super::seen(&order(&bay, &study, Paper::A4), look).unwrap();
            let reads = |what: &str| {
                let tick = shown.view.left.iter().find(|tick| tick.what.contains(what));
                tick.unwrap_or_else(|| panic!("{name}: {what}"))
                    .reads
                    .clone()
            };
            let down = |metres| both(Length::metres(metres), bay.units, Rounding::Down);
            let up = |metres| both(Length::metres(metres), bay.units, Rounding::Up);
            assert_eq!(
                reads("lowest of the body, at worst"),
                down(found.underbody_m)
            );
            assert_eq!(reads("lowest tyre, at worst"), down(found.tyre_m));
            assert_eq!(reads("top of the vehicle, at worst"), up(found.top_m));
            seen += 1;
        }
        // At worst the top is no lower than as written, and not above it by more than a span.
        let all = solids_at(&bay, found.travel_m);
        let body = all.iter().filter(|one| {
            matches!(
                one.role,
                crate::solids::Role::Body | crate::solids::Role::Mirror
            )
        });
        let top = body.map(|one| one.bounds().1.z).fold(f64::MIN, f64::max);
        assert!(found.top_m >= top && found.top_m < top + 0.25, "{name}");
    }
    assert!(seen > 10);
}

fn solids_at(bay: &Bay, travel_m: f64) -> Vec<crate::solids::Solid> {
    let open = crate::solids::DoorTravel::Open;
    crate::solids::list::solids(bay, open, travel_m).unwrap()
}

#[test]
fn room_lines_are_as_long_as_drawn_and_say_what_is_left_at_worst() {
    let mut lines = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let order = order(&bay, &study, Paper::A4);
        let made = Made::new(&order);
        let (view, ..) = elevation::view(&made, Look::Side, Telling::InWords).unwrap();
        let lock = study.highest_safe_lock.or(study.highest_clear_lock);
        if let Some(lock) = lock.map(|lock| &study.locks[lock - 1])
            && let Some(near) = &lock.near
        {
            // No line shows more room than the study's least.
            let pairs = made.near(lock).iter();
            let mut same = pairs.filter(|p| p.moving == near.moving && p.fixed == near.fixed);
            if let Some(pair) = same.next() {
                assert!(pair.worst_m <= near.clearance_m + 1e-4, "{name}: {pair:?}");
            }
        }
        let said = view.callouts.iter();
        let said = said.filter(|callout| callout.says.contains("of room at worst"));
        let is_stroke = |item: &&crate::drawing::sheet::Item| match item.shape {
            Shape::Line { pen, .. } => pen.colour == crate::drawing::palette::paper::WARN,
            _ => false,
        };
        let strokes = view.items.iter().filter(is_stroke).count();
        let count = said.count();
        assert_eq!(strokes, count * 3, "{name}");
        lines += count;
    }
    assert!(lines > 10);
}

#[test]
fn a_plan_too_coarse_to_read_gets_a_part_of_its_own() {
    let (_, mut bay) = scenes().remove(0);
    bay.garage.width = crate::units::Length::metres(24.0);
    bay.garage.depth = crate::units::Length::metres(24.0);
    let pages = sheets(&bay, Paper::A4);
    let plan = pages.iter().find(|page| page.tag == "PLAN").unwrap();
    let part = pages.iter().find(|page| page.tag == "DETAIL").unwrap();
    assert!(plan.scale > 60.0 && part.scale < 60.0, "{}", part.scale);
    check("large", part);
    let letters: Vec<&str> = part.texts().map(|text| text.says.as_str()).collect();
    for letter in ["G", "K", "L", "LP1", "RP4"] {
        assert!(letters.contains(&letter), "{letter}");
    }
    for (name, bay) in scenes() {
        let pages = sheets(&bay, Paper::A4);
        let coarse = pages[0].scale > 60.0;
        let has = pages.iter().any(|page| page.tag == "DETAIL");
        assert!(coarse || !has, "{name}");
        let part = pages.iter().find(|page| page.tag == "DETAIL");
        assert!(part.is_none_or(|part| part.scale * 1.25 <= pages[0].scale));
    }
}

#[test]
fn a_joint_near_a_plate_is_told_beside_it_and_leads_to_the_page() {
    use crate::bay::{Slab, SlabLine, SlabLineKind};
    let (_, mut bay) = scenes().remove(0);
    let plate = crate::ground::slab::plate_rect(&bay, crate::bay::Side::Left);
    let off = crate::units::Length::metres;
    // Square to the post line, 0.4 m beyond the plate's far edge.
    let y = off(plate.high.y + 0.4);
    let ends = [[off(plate.low.x), y], [off(plate.high.x), y]];
    let slab = bay.slab.get_or_insert_with(Slab::default);
    slab.lines = vec![SlabLine {
        kind: SlabLineKind::Joint,
        from: ends[0],
        to: ends[1],
    }];
    let map = crate::ground::slab::SlabMap::of(&bay);
    let wanted = plate.line_distance_m(map.lines[0].ends);
    let pages = sheets(&bay, Paper::A4);
    let page = pages.iter().find(|page| page.tag == "LEFT").unwrap();
    check("joint", page);
    let says = crate::units::both(off(wanted), bay.units, crate::units::Rounding::Down);
    let said: Vec<&str> = page.texts().map(|text| text.says.as_str()).collect();
    assert!(
        said.join(" ")
            .contains(&format!("joint: {says} from the plate"))
    );
}

#[test]
fn a_lift_or_a_parking_place_that_stops_is_not_set_out_as_it_is() {
    let mut seen = [0; 2];
    for (path, bay) in scenes() {
        let name = path.rsplit('/').next().unwrap().trim_end_matches(".ron");
        let pages = sheets(&bay, Paper::Letter);
        let on = |page: &Sheet| -> String {
            let said: Vec<&str> = page.texts().map(|text| text.says.as_str()).collect();
            said.join(" ")
        };
        let of_its_place = ["tall-columns", "thin-slab", "door-meets-post"].contains(&name);
        for page in &pages {
            let warned = on(page).contains("NOT TO BE SET OUT AS IT IS");
            if ["tall-columns", "thin-slab"].contains(&name) {
                assert!(warned, "{name}, {}", page.name);
                seen[0] += 1;
            }
            assert!(!warned || of_its_place, "{name}, {}", page.name);
        }
        let pulls = pages.iter().filter(|page| page.tag == "PULLS");
        let said: Vec<String> = pulls.map(on).collect();
        let parked = said.join(" ");
        let warned = parked.contains("NOT AS IT IS: the vehicle is to be parked otherwise");
        let wanted = ["arms-too-short", "engine-out"].contains(&name);
        assert_eq!(warned, wanted, "{name}");
        seen[1] += usize::from(warned);
    }
    assert!(seen[0] > 10 && seen[1] == 2, "{seen:?}");
}

//! Does the form keep what it promises, on every paper?

use glam::DVec2;

use super::*;
use crate::drawing::sheet::Shape;
use crate::worksheet::{Kind, number};

fn overlap(a: (DVec2, DVec2), b: (DVec2, DVec2)) -> bool {
    a.0.cmplt(b.1 - 1e-6).all() && b.0.cmplt(a.1 - 1e-6).all()
}

const PAPERS: [Paper; 3] = [Paper::Letter, Paper::A4, Paper::A3];

#[test]
fn no_text_lies_on_another_and_nothing_leaves_the_page() {
    let mut found = Vec::new();
    for paper in PAPERS {
        let pages = worksheet(paper);
        for (index, sheet) in pages.iter().enumerate() {
            let texts: Vec<_> = sheet.texts().map(|text| (text, text.bounds())).collect();
            assert!(texts.len() > 10, "page {index} is nearly empty");
            for (at, (one, its)) in texts.iter().enumerate() {
                let inside =
                    its.0.cmpge(DVec2::splat(8.0)).all() && its.1.cmple(sheet.page_mm - 8.0).all();
                assert!(
                    inside,
                    "{paper:?}, page {}: {:?} leaves it",
                    index + 1,
                    one.says
                );
                assert!(one.size >= 2.0, "{:?} is too small to read", one.says);
                for (other, theirs) in &texts[..at] {
                    if overlap(*its, *theirs) {
                        let [one, other] = [one, other].map(|text| &text.says);
                        let page = index + 1;
                        found.push(format!("{paper:?}, page {page}: {one:?} lies on {other:?}"));
                    }
                }
            }
            for item in &sheet.items {
                let points = match &item.shape {
                    Shape::Line { ends, .. } => ends.to_vec(),
                    Shape::Polygon { points, .. } => points.clone(),
                    Shape::Circle { middle, radius, .. } => {
                        vec![*middle - *radius, *middle + *radius]
                    }
                    Shape::Text(_) => continue,
                };
                for point in points {
                    let inside = point.cmpge(DVec2::splat(7.99)).all()
                        && point.cmple(sheet.page_mm - 7.99).all();
                    assert!(
                        inside,
                        "{paper:?}, page {}: {:?} at {point}",
                        index + 1,
                        item.layer
                    );
                }
            }
            let number = format!("page {} of {}", index + 1, pages.len());
            assert!(sheet.texts().any(|text| text.says == number), "{number}");
        }
    }
    assert_eq!(found, Vec::<String>::new());
}

/// Everything that is written on the form.
fn said(paper: Paper) -> String {
    let pages = worksheet(paper);
    let texts: Vec<String> = pages
        .iter()
        .flat_map(Sheet::texts)
        .map(|t| t.says.clone())
        .collect();
    texts.join(" ")
}

#[test]
fn every_question_is_on_the_form_with_its_number_its_words_and_its_unit() {
    for paper in PAPERS {
        let said = said(paper);
        for section in sections() {
            for question in section.questions {
                let number = number(section.id, question.key).unwrap();
                assert!(said.contains(&number), "{number}");
                assert!(said.contains(question.what), "{number} {}", question.what);
                assert!(said.contains(question.how), "{number} {}", question.how);
                assert!(said.contains(question.kind.units()));
                if let Kind::Choice(words) = question.kind {
                    for (word, _) in words {
                        assert!(said.contains(word), "{number} {word}");
                    }
                }
            }
        }
        assert!(
            !said.contains('?') || !said.contains(" ? "),
            "a sketch names no question"
        );
    }
}

/// Lengths that no sketch marks, each with its reason.
const NO_SKETCH: &[(&str, &str)] = &[
    ("lift.overshoot", "how far a thing coasts that has stopped"),
    ("lift.side_mismatch", "the manual says it"),
    ("policy.measured_garage", "the difference of two readings"),
    ("policy.measured_vehicle", "the difference of two readings"),
    (
        "policy.measured_lift",
        "how near to its mark a thing is set",
    ),
    ("policy.over_vehicle", "chosen, not measured"),
    ("policy.beside_vehicle", "chosen, not measured"),
];

/// The sketches of a section, each with the question that it stands before.
fn drawn(section: &crate::worksheet::Section) -> Vec<(&'static str, sketch::Sketch)> {
    let questions = section.questions.iter();
    questions
        .filter_map(|question| Some((question.key, sketches::sketch(section.id, question.key)?)))
        .collect()
}

#[test]
fn every_length_that_is_asked_for_is_marked_in_a_sketch_and_only_what_is_asked() {
    use crate::units::Kind as Of;
    let mut excused = Vec::new();
    for section in sections() {
        let drawn = drawn(section);
        let marked: Vec<&str> = drawn
            .iter()
            .flat_map(|(_, one)| one.marks.clone())
            .collect();
        for key in &marked {
            let asked = section.questions.iter().any(|one| one.key == *key);
            assert!(asked, "{}: {key} is marked and not asked", section.id);
        }
        for question in section.questions {
            let (Kind::Size(of) | Kind::NotNegative(of) | Kind::Place(of)) = question.kind else {
                continue;
            };
            if of != Of::Length || marked.contains(&question.key) {
                continue;
            }
            let known = NO_SKETCH.iter().find(|(key, _)| *key == question.key);
            assert!(
                known.is_some(),
                "{}: {} is not drawn",
                section.id,
                question.key
            );
            excused.push(question.key);
        }
    }
    // The list holds nothing that is drawn or no longer asked.
    let listed: Vec<&str> = NO_SKETCH.iter().map(|(key, _)| *key).collect();
    assert_eq!(excused, listed);
}

#[test]
fn with_each_door_every_length_of_it_is_marked_in_its_own_sketch() {
    let door = sections()
        .iter()
        .find(|section| section.id == "door")
        .unwrap();
    let drawn = drawn(door);
    let of = |before: &str| {
        let found = drawn.iter().find(|(key, _)| *key == before);
        found.map_or_else(Vec::new, |(_, one)| one.marks.clone())
    };
    for (kind, before) in [
        ("sectional", "#layout"),
        ("roll-up", "garage.door.curtain_thickness"),
        ("swing-up", "#swing.panel_thickness"),
        ("side-hinged", "garage.door.leaf_thickness"),
        ("none", ""),
    ] {
        let mut seen = 0;
        for question in door.questions {
            let asked = match question.when {
                crate::worksheet::When::Always => false,
                crate::worksheet::When::If(key, words) => {
                    key == "#door" && words.contains(&kind)
                        || key == "#layout" && kind == "sectional"
                }
            };
            let is_length = matches!(
                question.kind,
                Kind::Size(crate::units::Kind::Length)
                    | Kind::NotNegative(crate::units::Kind::Length)
            );
            if asked && is_length {
                seen += 1;
                assert!(
                    of(before).contains(&question.key),
                    "{kind}: {}",
                    question.key
                );
            }
        }
        assert_eq!(seen == 0, kind == "none", "{kind}");
        assert!(kind == "none" || of(before).len() >= seen.max(2), "{kind}");
    }
    // What there is without a door is in the first.
    assert_eq!(of("garage.opening.width").len(), 4);
}

#[test]
fn each_mark_is_a_number_that_can_be_read_on_the_form() {
    for section in sections() {
        for (_, sketch) in drawn(section) {
            let texts = sketch.items().filter_map(|item| match &item.shape {
                Shape::Text(text) => Some(text.says.clone()),
                _ => None,
            });
            let texts: Vec<String> = texts.collect();
            assert!(!sketch.marks.is_empty() && !texts.contains(&String::from("?")));
            for key in &sketch.marks {
                let number = number(section.id, key).unwrap();
                let times = texts.iter().filter(|says| **says == number).count();
                assert_eq!(times, 1, "{}: {number} {key}", section.id);
            }
        }
    }
}

#[test]
fn it_says_its_version_and_the_cautions_on_every_page_and_is_the_same_every_time() {
    for sheet in worksheet(Paper::Letter) {
        let said: Vec<&str> = sheet.texts().map(|text| text.says.as_str()).collect();
        let said = said.join(" ");
        assert!(said.contains(env!("CARGO_PKG_VERSION")));
        assert!(said.contains(&format!("worksheet form {FORM_VERSION}")));
        for caution in crate::report::CAUTIONS {
            assert!(said.contains(caution), "{caution}");
        }
    }
    let write = || crate::drawing::pdf::pdf(TITLE, &worksheet(Paper::A4));
    assert!(write().is_some());
    assert_eq!(write(), write());
}

#[test]
fn every_question_has_its_sketch_on_its_page() {
    for paper in PAPERS {
        let pages = worksheet(paper);
        // Numbers in sketches have a size of their own.
        let pages_with = |number: &str, in_sketch: bool| -> Vec<usize> {
            let is = |text: &crate::drawing::sheet::Text| {
                text.says == number && (2.6..2.8).contains(&text.size) == in_sketch
            };
            let pages = pages.iter().enumerate();
            pages
                .filter(|(_, page)| page.texts().any(is))
                .map(|(at, _)| at)
                .collect()
        };
        for section in sections() {
            let starts: Vec<&str> = drawn(section).iter().map(|(key, _)| *key).collect();
            for (start, sketch) in drawn(section) {
                let mark = number(section.id, sketch.marks[0]).unwrap();
                let own = section
                    .questions
                    .iter()
                    .skip_while(|one| one.key != start)
                    .enumerate()
                    .take_while(|(at, one)| *at == 0 || !starts.contains(&one.key));
                let seen: Vec<Vec<usize>> = own
                    .map(|(_, one)| pages_with(&number(section.id, one.key).unwrap(), false))
                    .collect();
                assert!(
                    seen.iter().all(|pages| pages.len() == 1),
                    "{start}: {seen:?}"
                );
                let at = pages_with(&mark, true);
                for pages in seen {
                    assert!(
                        at.contains(&pages[0]),
                        "{paper:?}: {start}, page {}",
                        pages[0] + 1
                    );
                }
            }
        }
    }
}

/// How much of a page between its frame's head and foot is empty, from the bottom up.
fn empty_share(sheet: &Sheet) -> f64 {
    let lowest = |item: &crate::drawing::sheet::Item| match &item.shape {
        Shape::Line { ends, .. } => ends[0].y.min(ends[1].y),
        Shape::Polygon { points, .. } => points.iter().fold(f64::INFINITY, |y, p| y.min(p.y)),
        Shape::Circle { middle, radius, .. } => middle.y - radius,
        Shape::Text(text) => text.bounds().0.y,
    };
    let [low, high] = pages::room(if sheet.page_mm.x > 280.0 {
        Paper::A3
    } else if sheet.page_mm.y > 285.0 {
        Paper::A4
    } else {
        Paper::Letter
    });
    let content = sheet.items.iter().map(lowest);
    let content = content.filter(|y| *y > low.y - 0.1 && *y < high.y);
    (content.fold(high.y, f64::min) - low.y) / (high.y - low.y)
}

#[test]
fn the_pages_are_few_and_no_page_but_the_last_is_more_than_a_third_empty() {
    for (paper, most) in [(Paper::Letter, 19), (Paper::A4, 18), (Paper::A3, 10)] {
        let pages = worksheet(paper);
        assert!(pages.len() <= most, "{paper:?}: {}", pages.len());
        let before_last = &pages[..pages.len() - 1];
        for (index, sheet) in before_last.iter().enumerate() {
            let empty = empty_share(sheet);
            assert!(
                empty <= 1.0 / 3.0,
                "{paper:?}, page {}: {empty:.2}",
                index + 1
            );
        }
    }
}

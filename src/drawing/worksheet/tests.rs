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
                    assert!(
                        !overlap(*its, *theirs),
                        "{paper:?}, page {}: {:?} lies on {:?}",
                        index + 1,
                        one.says,
                        other.says
                    );
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

#[test]
fn a_sketch_numbers_only_what_its_section_asks() {
    let mut drawn = 0;
    for section in sections() {
        let Some(sketch) = sketches::sketch(section.id) else {
            continue;
        };
        let mut numbers = 0;
        for item in &sketch.items {
            if let Shape::Text(text) = &item.shape {
                assert_ne!(
                    text.says, "?",
                    "{} has a number that is not asked",
                    section.id
                );
                let own = section
                    .questions
                    .iter()
                    .any(|question| number(section.id, question.key).as_ref() == Some(&text.says));
                numbers += usize::from(own);
            }
        }
        assert!(numbers >= section.questions.len().min(3), "{}", section.id);
        drawn += 1;
    }
    assert!(drawn >= 10);
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

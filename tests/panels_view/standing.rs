//! What the verdict card says, and when it is greyed.

use bayrise::drawing::palette::screen::LIGHT;
use bayrise::panels::limits::distinct;
use bayrise::panels::settings::Section;
use bayrise::panels::style::egui_colour;
use bayrise::panels::{Action, status};
use bayrise::report::{CAUTIONS, Sayings};
use egui::{Color32, Shape};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;

use super::{SCENES, World, desk, find, painted, window};

/// The colour that words are painted in.
fn ink_of(harness: &Harness<'_, World>, words: &str) -> Color32 {
    fn search(shape: &Shape, words: &str) -> Option<Color32> {
        match shape {
            Shape::Vec(shapes) => shapes.iter().find_map(|shape| search(shape, words)),
            Shape::Text(text) if text.galley.job.text == words => {
                let own = text.galley.job.sections[0].format.color;
                Some(
                    text.override_text_color
                        .unwrap_or(if own == Color32::PLACEHOLDER {
                            text.fallback_color
                        } else {
                            own
                        }),
                )
            }
            _ => None,
        }
    }
    let shapes = &harness.output().shapes;
    shapes
        .iter()
        .find_map(|clipped| search(&clipped.shape, words))
        .unwrap()
}

#[test]
fn every_scene_shows_its_verdict_and_the_cautions() {
    for scene in SCENES {
        let harness = window(desk(scene), [1280.0, 720.0]);
        let verdict = harness.state().desk.verdict.as_ref().unwrap();
        let said = Sayings::of(&verdict.bay, &verdict.study);
        harness.get_by_label(&said.safe_lock());
        harness.get_by_label(&said.lead());
        let painted = painted(&harness);
        for words in [said.safe_lock().as_str(), CAUTIONS[0], CAUTIONS[1]] {
            let text = find(&painted, words).unwrap();
            assert!(
                text.clip.expand(1.0).contains_rect(text.rect),
                "{scene}: {words} is cut"
            );
        }
    }
}

#[test]
fn a_verdict_is_greyed_until_the_next_one_is_there() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let lead = |harness: &Harness<'_, World>| {
        let verdict = harness.state().desk.verdict.as_ref().unwrap();
        Sayings::of(&verdict.bay, &verdict.study).lead()
    };
    let before = lead(&harness);
    assert_eq!(ink_of(&harness, &before), egui_colour(LIGHT.ink));
    let text = harness
        .state()
        .desk
        .document
        .text()
        .replace("12 ft", "10 ft 9 in");
    harness.state_mut().desk.document.change(text);
    harness.run();
    let words = status::stale_words(&harness.state().desk).unwrap();
    assert!(words.starts_with("studying"), "{words}");
    assert!(
        harness.get_all_by_label(&words).count() >= 2,
        "in the card and on the ladder"
    );
    assert_eq!(ink_of(&harness, &before), egui_colour(LIGHT.stale));
    assert!(find(&painted(&harness), "(stale)").is_some());
    harness.state_mut().desk.study_now();
    harness.run();
    assert_eq!(status::stale_words(&harness.state().desk), None);
    let after = lead(&harness);
    assert_eq!(ink_of(&harness, &after), egui_colour(LIGHT.ink));
    assert_ne!(
        before, after,
        "a ceiling 15 inches lower changes the verdict"
    );
}

#[test]
fn faults_are_counted_and_the_last_good_verdict_is_greyed() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let text = harness
        .state()
        .desk
        .document
        .text()
        .replacen("\"12 ft\"", "\"12 fet\"", 1);
    harness.state_mut().desk.document.change(text);
    harness.state_mut().desk.study_now();
    harness.run();
    let words = "1 fault in the file; the verdict shown is of the last good state";
    harness.get_all_by_label(words).next().unwrap();
    let lines = harness.state().desk.document.text().lines();
    let line = 1 + lines.take_while(|line| !line.contains("12 fet")).count();
    harness.get_by_label_contains(&format!("line {line}, column "));
    let verdict = harness.state().desk.verdict.as_ref().unwrap();
    let lead = Sayings::of(&verdict.bay, &verdict.study).lead();
    assert_eq!(ink_of(&harness, &lead), egui_colour(LIGHT.stale));
}

#[test]
fn a_file_with_faults_from_the_start_has_no_verdict() {
    let mut desk = desk("tall-pickup");
    let text = desk.document.text().replacen("\"12 ft\"", "\"12 fet\"", 1);
    desk.opened(
        "broken.ron".into(),
        text,
        std::sync::Arc::new(bayrise::bayfile::presets::EmbeddedOnly),
    );
    desk.study_now();
    let harness = window(desk, [1280.0, 720.0]);
    let words = "1 fault in the file; there is no verdict yet";
    harness.get_all_by_label(words).next().unwrap();
    assert!(find(&painted(&harness), "Lock ").is_none());
    assert!(find(&painted(&harness), CAUTIONS[0]).is_some());
}

#[test]
fn text_twice_as_large_cuts_nothing_of_the_verdict() {
    for scene in ["tall-pickup", "no-safe-lock"] {
        let mut desk = desk(scene);
        desk.apply(Action::TextScale(2.0));
        let harness = window(desk, [1280.0, 720.0]);
        let verdict = harness.state().desk.verdict.as_ref().unwrap();
        let said = Sayings::of(&verdict.bay, &verdict.study);
        let painted = painted(&harness);
        for words in [said.safe_lock(), said.lead(), CAUTIONS[0].to_owned()] {
            let text = find(&painted, &words).unwrap();
            assert!(
                text.clip.expand(1.0).contains_rect(text.rect),
                "{scene}: {words} is cut"
            );
            assert!(text.rect.right() <= 1280.0 && text.rect.bottom() <= 720.0);
        }
        assert!(
            harness.state().view.width() > 100.0,
            "{}",
            harness.state().view
        );
    }
}

#[test]
fn large_text_with_notices_and_a_fault_prints_nothing_over_the_caution() {
    for (fault, scale) in [(false, 2.0), (true, 1.5), (true, 2.0), (true, 2.5)] {
        let mut desk = desk("tall-pickup");
        desk.apply(Action::TextScale(scale));
        desk.tell("The file could not be written: the disk is full.".into());
        desk.tell("tall-pickup.ron changed on disk. What you changed here is kept.".into());
        if fault {
            let text = desk.document.text().replacen("\"12 ft\"", "\"12 fet\"", 1);
            desk.document.change(text);
        }
        let safe = desk.verdict.as_ref().unwrap().study.highest_safe_lock;
        let harness = window(desk, [1280.0, 800.0]);
        let painted = painted(&harness);
        let caution = find(&painted, CAUTIONS[0]).unwrap();
        assert!(caution.clip.expand(1.0).contains_rect(caution.rect));
        let seen = caution.rect.shrink(1.5);
        for other in painted
            .iter()
            .filter(|other| !other.text.contains(CAUTIONS[0]))
        {
            let what = other.rect.intersect(other.clip);
            assert!(
                !what.is_positive() || !what.intersects(seen),
                "{fault} {scale}: {} is over the caution",
                other.text
            );
        }
        if !fault {
            let verdict = harness.state().desk.verdict.as_ref().unwrap();
            let words = Sayings::of(&verdict.bay, &verdict.study).safe_lock();
            let lock = find(&painted, &words).unwrap();
            assert!(lock.clip.expand(1.0).contains_rect(lock.rect), "{words}");
        }
        let column = harness.get_by_label("carriage on the ladder").rect();
        let numbers: Vec<usize> = painted
            .iter()
            .filter(|text| {
                column
                    .expand2(egui::vec2(80.0, 4.0))
                    .contains_rect(text.rect)
            })
            .filter_map(|text| text.text.parse().ok())
            .collect();
        assert!(
            numbers.contains(&safe.unwrap()),
            "{fault} {scale}: {numbers:?} on {column}"
        );
    }
}

#[test]
fn with_the_fields_open_the_view_stays_wide_and_the_verdict_whole() {
    for scene in ["tall-pickup", "no-safe-lock"] {
        for section in Section::ALL {
            let mut desk = desk(scene);
            desk.settings.section = Some(section);
            let harness = window(desk, [1280.0, 720.0]);
            let width = harness.state().view.width();
            assert!(width >= 560.0, "{section:?}: {width}");
            let verdict = harness.state().desk.verdict.as_ref().unwrap();
            let said = Sayings::of(&verdict.bay, &verdict.study);
            let painted = painted(&harness);
            for words in [said.safe_lock(), said.lead(), CAUTIONS[0].to_owned()] {
                let text = find(&painted, &words).unwrap();
                assert!(
                    text.clip.expand(1.0).contains_rect(text.rect),
                    "{scene} {section:?}: {words} is cut"
                );
            }
        }
    }
}

#[test]
fn what_limits_it_is_shown_where_it_comes_short() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let eye = harness.state().desk.camera.eye_m;
    harness.get_by_label("show it where it comes short").click();
    harness.run();
    let desk = &harness.state().desk;
    let verdict = desk.verdict.as_ref().unwrap();
    let pair = Sayings::of(&verdict.bay, &verdict.study)
        .limiting_pair()
        .unwrap();
    assert_eq!(desk.picked, Some((pair.moving.clone(), pair.fixed.clone())));
    assert!((desk.rise.travel_m - pair.first_breach_m.unwrap()).abs() < 1e-9);
    assert_ne!(desk.camera.eye_m, eye, "the view goes there");
    harness.get_by_label("let it go").click();
    harness.run();
    assert_eq!(harness.state().desk.picked, None);
}

#[test]
fn a_pair_of_the_list_is_looked_at() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToSafeLock);
    let first = distinct(&desk.here.as_ref().unwrap().pairs)[0].clone();
    let mut harness = window(desk, [1280.0, 720.0]);
    let name = bayrise::report::short_name(&first.moving);
    let row = format!("{name} to");
    let first_row = |harness: &Harness<'_, World>, scroll: bool| {
        let node = harness.get_all_by_label_contains(&row).next().unwrap();
        if scroll {
            node.scroll_to_me();
        } else {
            node.click();
        }
    };
    first_row(&harness, true);
    harness.run();
    first_row(&harness, false);
    harness.run();
    assert_eq!(
        harness.state().desk.picked,
        Some((first.moving, first.fixed))
    );
}

//! The caption of pictures and show mode.

use bayrise::panels::overlay::{content, paint, view_rect};
use bayrise::panels::{Action, Desk};
use bayrise::report::IN_A_PICTURE;
use egui::{Pos2, Rect, vec2};

use super::{Painted, SCENES, desk, shapes, texts};

/// Every text of a picture of this size, and where the title block is.
fn picture(desk: &Desk, size: [f32; 2]) -> (Vec<Painted>, Rect) {
    let whole = Rect::from_min_size(Pos2::ZERO, vec2(size[0], size[1]));
    let mut painted = Vec::new();
    for clipped in shapes(size, |ui| paint(ui.painter(), whole, desk, true)) {
        texts(&clipped.shape, clipped.clip_rect, &mut painted);
    }
    let view = view_rect(whole, desk, true);
    assert!(view.height() > whole.height() * 0.5);
    (painted, Rect::from_min_max(view.left_bottom(), whole.max))
}

#[test]
fn nothing_is_cut_and_nothing_overlaps_at_any_size() {
    for scene in SCENES {
        let mut desk = desk(scene);
        desk.apply(Action::ToSafeLock);
        for size in [[640.0, 480.0], [1280.0, 720.0], [1920.0, 1080.0]] {
            let (painted, block) = picture(&desk, size);
            let inside: Vec<&Painted> = painted
                .iter()
                .filter(|text| block.contains(text.rect.center()))
                .collect();
            assert!(inside.len() >= 8, "{scene} {size:?}");
            for (i, text) in inside.iter().enumerate() {
                assert!(
                    block.contains_rect(text.rect),
                    "{scene} {size:?}: {}",
                    text.text
                );
                for other in &inside[i + 1..] {
                    let apart = !text.rect.shrink(0.5).intersects(other.rect.shrink(0.5));
                    assert!(apart, "{scene} {size:?}: {} / {}", text.text, other.text);
                }
            }
        }
    }
}

#[test]
fn verdict_stop_mark_position_and_cautions_are_in_the_picture() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToSafeLock);
    let said = content(&desk);
    let (painted, _) = picture(&desk, [1280.0, 720.0]);
    let all: Vec<&str> = painted.iter().map(|text| text.text.as_str()).collect();
    for words in [
        said.title.as_str(),
        &said.headline,
        &said.position,
        said.here.unwrap().word,
        IN_A_PICTURE[0],
        IN_A_PICTURE[1],
        &said.origin,
    ] {
        assert!(all.contains(&words), "{words}: {all:?}");
    }
    assert!(
        said.headline
            .contains("Stop the raise with the carriage's marked edge at")
    );
    assert!(
        said.position.starts_with("Carriage at lock "),
        "{}",
        said.position
    );
    assert!(said.origin.contains("input "), "{}", said.origin);
}

#[test]
fn text_of_a_picture_is_legible_at_1280_by_720() {
    for scene in SCENES {
        let desk = desk(scene);
        let whole = Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 720.0));
        let mut smallest = f32::INFINITY;
        for clipped in shapes([1280.0, 720.0], |ui| {
            paint(ui.painter(), whole, &desk, true)
        }) {
            if let egui::Shape::Text(text) = &clipped.shape {
                let words = &text.galley.job.text;
                if !words.starts_with("Bayrise ") {
                    smallest = smallest.min(text.galley.job.sections[0].format.font_id.size);
                }
            }
        }
        assert!(smallest >= 10.0, "{scene}: {smallest}");
    }
}

#[test]
fn a_stale_verdict_says_so_in_the_picture() {
    let mut desk = desk("tall-pickup");
    let text = desk.document.text().replace("12 ft", "11 ft 6 in");
    desk.document.change(text);
    let (painted, _) = picture(&desk, [1280.0, 720.0]);
    assert!(painted.iter().any(|text| text.text.starts_with("studying")));
    assert!(painted.iter().any(|text| text.text.contains("(stale)")));
    let said = content(&desk);
    assert!(
        !said.origin.contains("input"),
        "no input is named that the verdict is not of"
    );
}

//! Dimension lines: where they are, and what stands at them.

use bayrise::clearance::probe::PairState;
use bayrise::drawing::palette::CLEAR;
use bayrise::drawing::palette::screen::{DARK, LIGHT};
use bayrise::panels::camera::{Camera, Lens, Sight};
use bayrise::panels::overlay::{self, DimensionLine, lines, text_size};
use bayrise::panels::settings::Theme;
use bayrise::panels::style::egui_colour;
use bayrise::panels::{Action, Desk};
use egui::{Color32, Pos2, Rect, Shape, pos2, vec2};
use glam::DVec3;

use super::{SCENES, desk, shapes};

const SIZES: [[f32; 2]; 3] = [[640.0, 480.0], [1280.0, 720.0], [1920.0, 1080.0]];

fn rect(size: [f32; 2]) -> Rect {
    Rect::from_min_size(pos2(60.0, 40.0), vec2(size[0], size[1]))
}

/// The nearest points of the pair that a line stands for.
fn points(desk: &Desk, line: &DimensionLine) -> (DVec3, DVec3) {
    let pairs = &desk.here.as_ref().unwrap().pairs;
    let pair = pairs
        .iter()
        .find(|pair| pair.moving == line.moving && pair.fixed == line.fixed)
        .unwrap();
    pair.points_m.unwrap()
}

#[test]
fn lines_end_where_the_nearest_points_appear() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToSafeLock);
    let rect = rect(SIZES[1]);
    let aspect = f64::from(rect.width() / rect.height());
    desk.set_aspect(aspect);
    for sight in Sight::ALL {
        desk.apply(Action::Look(sight));
        for line in lines(&desk, rect) {
            let (a, b) = points(&desk, &line);
            for (end, point) in [(line.from, a), (line.to, b)] {
                let at = desk.camera.project(point, aspect).unwrap();
                let x = f64::from(rect.left()) + (at.x + 1.0) * 0.5 * f64::from(rect.width());
                let y = f64::from(rect.top()) + (1.0 - at.y) * 0.5 * f64::from(rect.height());
                let away = (f64::from(end.x) - x).hypot(f64::from(end.y) - y);
                assert!(away < 1.0, "{sight:?} {line:?}");
            }
        }
    }
}

#[test]
fn the_floor_is_not_measured_to_unless_it_is_short_or_asked_for() {
    let mut spared = 0;
    for scene in SCENES {
        let mut desk = desk(scene);
        let rect = rect(SIZES[1]);
        desk.set_aspect(f64::from(rect.width() / rect.height()));
        for found in lines(&desk, rect) {
            let is_floor = found.fixed == "shell/floor";
            assert!(!is_floor || found.state != PairState::Clear, "{found:?}");
        }
        let pairs = &desk.here.as_ref().unwrap().pairs;
        let floor = pairs.iter().find(|pair| {
            pair.fixed == "shell/floor" && pair.state == PairState::Clear && pair.points_m.is_some()
        });
        let Some((moving, fixed)) = floor.map(|p| (p.moving.clone(), p.fixed.clone())) else {
            continue;
        };
        spared += 1;
        desk.picked = Some((moving.clone(), fixed));
        let found = lines(&desk, rect);
        assert!(found.iter().any(|line| line.moving == moving), "{scene}");
    }
    assert!(spared > 0, "somewhere the floor is near");
}

/// The same by hand: looked at square on, a metre is so many points.
#[test]
fn square_on_a_metre_is_a_hundred_points() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToSafeLock);
    desk.camera = Camera {
        eye_m: DVec3::new(0.5, -20.0, 2.0),
        target_m: DVec3::new(0.5, 3.0, 2.0),
        up: DVec3::Z,
        lens: Lens::Parallel { height_m: 7.2 },
    };
    let rect = rect(SIZES[1]);
    let found = lines(&desk, rect);
    assert!(!found.is_empty());
    for line in found {
        let (a, b) = points(&desk, &line);
        let by_hand = |point: DVec3| {
            #[allow(clippy::cast_possible_truncation)]
            let at = ((point.x - 0.5) as f32, (point.z - 2.0) as f32);
            pos2(60.0 + 640.0 + 100.0 * at.0, 40.0 + 360.0 - 100.0 * at.1)
        };
        let near = |p: Pos2, q: Pos2| (p - q).length() < 1.0;
        assert!(
            near(line.from, by_hand(a)) && near(line.to, by_hand(b)),
            "{line:?}"
        );
    }
}

#[test]
fn labels_stay_apart_and_inside_in_every_scene_at_every_size() {
    let mut counted = 0;
    for scene in SCENES {
        let mut desk = desk(scene);
        let full = desk.full_travel_m();
        for share in [0.0, 0.3, 0.6, 1.0] {
            desk.apply(Action::Travel(full * share));
            for size in SIZES {
                let rect = rect(size);
                desk.set_aspect(f64::from(rect.width() / rect.height()));
                for sight in Sight::ALL {
                    desk.apply(Action::Look(sight));
                    let found = lines(&desk, rect);
                    counted += found.len();
                    for (i, line) in found.iter().enumerate() {
                        assert!(rect.contains_rect(line.label_rect), "{scene} {line:?}");
                        for other in &found[i + 1..] {
                            let apart = !line.label_rect.intersects(other.label_rect);
                            assert!(apart, "{scene} {size:?} {sight:?}: {line:?} {other:?}");
                        }
                    }
                }
            }
        }
    }
    assert!(counted > 300, "{counted}");
}

#[test]
fn labels_fit_on_their_plates() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToTop);
    for scale in [1.0, 2.0] {
        desk.settings.text_scale = scale;
        for size in SIZES {
            let rect = rect(size);
            let mut checked = 0;
            let _ = shapes([1920.0, 1080.0], |ui| {
                for line in lines(&desk, rect) {
                    let size = text_size(rect, &desk.settings);
                    let font = egui::FontId::proportional(size);
                    let text =
                        ui.painter()
                            .layout_no_wrap(line.label.clone(), font, egui::Color32::BLACK);
                    let plate = line.label_rect.size();
                    let text = text.size();
                    assert!(
                        text.x <= plate.x && text.y <= plate.y,
                        "{} {text} {plate}",
                        line.label
                    );
                    checked += 1;
                }
            });
            assert!(checked > 0);
        }
    }
}

#[test]
fn short_pairs_come_first_and_say_what_is_asked() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToTop);
    let rect = rect(SIZES[1]);
    let found = lines(&desk, rect);
    for line in &found {
        let is_short = line.state != PairState::Clear;
        assert_eq!(line.label.contains("asked"), is_short, "{line:?}");
    }
    let here = desk.here.as_ref().unwrap();
    let short = |state: PairState| state != PairState::Clear;
    assert!(
        here.pairs.iter().any(|pair| short(pair.state)),
        "the top of this bay is not clear"
    );
    // A lit pair is always drawn, the tightest or not.
    let last = here
        .pairs
        .iter()
        .rev()
        .find(|pair| pair.points_m.is_some())
        .unwrap();
    let (moving, fixed) = (last.moving.clone(), last.fixed.clone());
    desk.apply(Action::ShowPair(moving.clone(), fixed.clone()));
    let found = lines(&desk, rect);
    assert!(
        found
            .iter()
            .any(|line| line.moving == moving && line.fixed == fixed)
    );
}

#[test]
fn lines_are_drawn_in_the_ink_that_shows_on_the_theme() {
    fn strokes(shape: &Shape, out: &mut Vec<Color32>) {
        match shape {
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| strokes(shape, out)),
            Shape::LineSegment { stroke, .. } => out.push(stroke.color),
            _ => {}
        }
    }
    for (theme, screen) in [(Theme::Light, &LIGHT), (Theme::Dark, &DARK)] {
        let mut desk = desk("tall-pickup");
        desk.apply(Action::Theme(theme));
        desk.apply(Action::ToSafeLock);
        let rect = Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 720.0));
        let drawn = shapes([1280.0, 720.0], |ui| {
            overlay::paint(ui.painter(), rect, &desk, false);
        });
        let mut inks = Vec::new();
        drawn.iter().for_each(|one| strokes(&one.shape, &mut inks));
        assert!(!inks.is_empty());
        let line = egui_colour(screen.line(CLEAR));
        assert!(inks.contains(&line), "{theme:?}");
    }
}

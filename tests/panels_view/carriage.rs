//! Stepping, clicking and playing the raise.

use bayrise::clearance::LockState;
use bayrise::clearance::probe::HereState;
use bayrise::drawing::palette::CLEAR;
use bayrise::drawing::palette::screen::LIGHT;
use bayrise::panels::ladder::{Thing, rows};
use bayrise::panels::settings::Section;
use bayrise::panels::style::egui_colour;
use bayrise::panels::{Action, shown};
use egui::{Color32, Key, Rect, Shape};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;

use super::{Painted, SCENES, World, desk, find, painted, window};

#[test]
fn locks_are_stepped_by_keyboard() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let locks = harness.state().desk.locks_m();
    assert_eq!(
        harness.state().desk.here.as_ref().unwrap().state,
        HereState::Parked
    );
    assert!(find(&painted(&harness), HereState::Parked.words()).is_some());
    for (index, lock_m) in locks.iter().enumerate() {
        harness.key_press(Key::PageUp);
        harness.run();
        let desk = &harness.state().desk;
        assert!((desk.rise.travel_m - lock_m).abs() < 1e-12);
        let number = index + 1;
        harness.get_by_label_contains(&format!("Carriage at lock {number}, pads at"));
        let selected: Vec<usize> = rows(desk)
            .into_iter()
            .filter_map(|row| match row.thing {
                Thing::Lock(lock) if lock.is_here => Some(lock.number),
                _ => None,
            })
            .collect();
        assert_eq!(selected, [number]);
        let state = shown::state(desk).unwrap();
        harness.get_all_by_label(state.word).next().unwrap();
    }
    assert_ne!(
        harness.state().desk.here.as_ref().unwrap().state,
        HereState::Clear,
        "the top lock of this bay is not clear"
    );
    harness.key_press(Key::ArrowDown);
    harness.run();
    let last = locks.len() - 2;
    assert!((harness.state().desk.rise.travel_m - locks[last]).abs() < 1e-12);
    harness.key_press(Key::S);
    harness.run();
    assert_eq!(
        harness.state().desk.here.as_ref().unwrap().state,
        HereState::Clear
    );
    harness.key_press(Key::Home);
    harness.run();
    assert!(harness.state().desk.rise.travel_m.abs() < 1e-12);
}

#[test]
fn a_lock_of_the_ladder_is_clicked() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    harness.get_by_label_contains("lock 7, pads at").click();
    harness.run();
    let desk = &harness.state().desk;
    assert!((desk.rise.travel_m - desk.locks_m()[6]).abs() < 1e-12);
}

#[test]
fn the_carriage_is_dragged_on_the_ladder() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let column = harness.get_by_label("carriage on the ladder").rect();
    harness.drag_at(column.center_bottom() - egui::vec2(0.0, 20.0));
    harness.run();
    harness.hover_at(column.center());
    harness.run();
    harness.drop_at(column.center());
    harness.run();
    let desk = &harness.state().desk;
    let half = desk.full_travel_m() * 0.5;
    assert!(
        (desk.rise.travel_m - half).abs() < 0.06,
        "{}",
        desk.rise.travel_m
    );
}

#[test]
fn the_space_bar_plays_and_pauses() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    harness.key_press(Key::Space);
    harness.run();
    assert!(harness.state().desk.rise.playing);
    harness.get_by_label("pause");
    harness.state_mut().desk.apply(Action::Tick(0.5));
    harness.run();
    let after = harness.state().desk.rise.travel_m;
    assert!(after > 0.01);
    harness.get_by_label("pause").click();
    harness.run();
    harness.state_mut().desk.apply(Action::Tick(0.5));
    assert!((harness.state().desk.rise.travel_m - after).abs() < 1e-12);
}

#[test]
fn safe_lock_and_marks_stand_on_the_ladder() {
    let harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let desk = &harness.state().desk;
    let study = &desk.verdict.as_ref().unwrap().study;
    let safe = study.highest_safe_lock.unwrap();
    let label = format!("lock {safe}, pads at");
    harness.get_by(|node| {
        let words = node.label().unwrap_or_default();
        words.starts_with(&label) && words.ends_with("the highest safe lock")
    });
    let painted = painted(&harness);
    for words in ["SAFE", "STOP mark ", "never above "] {
        assert!(find(&painted, words).is_some(), "{words}");
    }
    // To scale: the never-above mark lies above the stop mark, and that above the lock.
    let marks: Vec<f64> = rows(desk)
        .into_iter()
        .filter(|row| matches!(row.thing, Thing::Mark(..)))
        .map(|row| row.travel_m)
        .collect();
    assert!(
        marks[0] > study.locks[safe - 1].travel_m && marks[1] >= marks[0],
        "{marks:?}"
    );
}

#[test]
fn the_shut_off_bar_stands_on_the_ladder() {
    let harness = window(desk("camper-under-the-bar"), [1280.0, 720.0]);
    let trips = harness
        .state()
        .desk
        .verdict
        .as_ref()
        .unwrap()
        .study
        .bar
        .clone();
    assert!(trips.unwrap().trips_at_m.is_some());
    assert!(find(&painted(&harness), "shut-off bar trips").is_some());
}

#[test]
fn the_ladder_follows_the_door() {
    let mut desk = desk("tall-pickup");
    for share in [0.0, 1.0, 0.5] {
        desk.apply(Action::Door(share));
        let study = &desk.verdict.as_ref().unwrap().study;
        let found = match share {
            s if s <= 0.0 => &study.doors.shut,
            s if s >= 1.0 => &study.doors.open,
            _ => &study.doors.running,
        };
        let shown: Vec<LockState> = rows(&desk)
            .into_iter()
            .filter_map(|row| match row.thing {
                Thing::Lock(lock) => Some(lock.state),
                Thing::Mark(..) => None,
            })
            .collect();
        assert_eq!(shown, found.locks);
    }
}

/// Every text on the ladder, and the ladder's column.
fn on_the_ladder(harness: &Harness<'_, World>) -> (Vec<Painted>, Rect) {
    let column = harness.get_by_label("carriage on the ladder").rect();
    let on_it = |text: &Painted| {
        let at = text.rect.center();
        let clip = text.clip;
        // The panel's own clip begins left of the column and holds nothing left of it.
        clip.left() <= column.left()
            && clip.left() >= column.left() - 20.0
            && at.x > column.left()
            && column.expand(12.0).y_range().contains(at.y)
    };
    (painted(harness).into_iter().filter(on_it).collect(), column)
}

#[test]
fn labels_of_the_ladder_stay_apart_and_the_lock_above_the_safe_one_has_its_own() {
    let mut safe_ones = 0;
    for scene in SCENES {
        for (size, scale, section) in [
            ([1280.0, 720.0], 1.0, None),
            ([1280.0, 720.0], 1.0, Some(Section::Garage)),
            ([1024.0, 600.0], 1.0, None),
            ([1280.0, 720.0], 1.5, None),
        ] {
            for door in [0.0, 1.0] {
                let mut desk = desk(scene);
                desk.settings.text_scale = scale;
                desk.settings.section = section;
                if door > 0.5 {
                    // The longest words: what is safe with another door than the one shown.
                    desk.apply(Action::Set {
                        path: "policy.door_held".into(),
                        value: "Shut".into(),
                    });
                    desk.study_now();
                }
                desk.apply(Action::Door(door));
                desk.apply(Action::ToTop);
                let harness = window(desk, size);
                let what = format!("{scene} {size:?} {scale} {section:?} door {door}");
                let (texts, column) = on_the_ladder(&harness);
                assert!(texts.len() > 10, "{what}: {}", texts.len());
                for (i, text) in texts.iter().enumerate() {
                    assert!(
                        text.clip.expand(1.0).contains_rect(text.rect),
                        "{what}: {} is cut",
                        text.text
                    );
                    for other in &texts[i + 1..] {
                        let apart = !text.rect.shrink(1.5).intersects(other.rect.shrink(1.5));
                        assert!(apart, "{what}: {} / {}", text.text, other.text);
                    }
                }
                let study = &harness.state().desk.verdict.as_ref().unwrap().study;
                let Some(safe) = study.highest_safe_lock else {
                    continue;
                };
                safe_ones += 1;
                for lock in [safe, safe + 1] {
                    let number = lock.to_string();
                    let is_there = texts.iter().any(|text| text.text == number);
                    assert!(is_there || lock > study.locks.len(), "{what}: {number}");
                }
                assert!(column.height() > 100.0);
            }
        }
    }
    assert!(safe_ones > 10);
}

#[test]
fn safe_is_said_on_the_ladder_whatever_stands_beside_it() {
    for section in Section::ALL {
        for door in [0.0, 1.0] {
            let mut desk = desk("tall-pickup");
            desk.settings.section = Some(section);
            if door > 0.5 {
                // Safe with another door than the one shown.
                desk.apply(Action::Set {
                    path: "policy.door_held".into(),
                    value: "Shut".into(),
                });
                desk.study_now();
            }
            desk.apply(Action::Door(door));
            desk.apply(Action::ToSafeLock);
            let study = &desk.verdict.as_ref().unwrap().study;
            let safe = study.highest_safe_lock.unwrap();
            let lock = rows(&desk)
                .into_iter()
                .find_map(|row| match row.thing {
                    Thing::Lock(lock) if lock.number == safe => Some(lock),
                    _ => None,
                })
                .unwrap();
            let harness = window(desk, [1280.0, 800.0]);
            let (texts, _) = on_the_ladder(&harness);
            let number = texts.iter().find(|text| text.text == safe.to_string());
            let row = number.unwrap().rect.center().y;
            let words: Vec<&str> = texts
                .iter()
                .filter(|text| (text.rect.center().y - row).abs() < 4.0)
                .map(|text| text.text.as_str())
                .collect();
            let wanted = match lock.safe_with {
                Some(with) => format!("safe {with}"),
                None => "SAFE".into(),
            };
            let is_said = words.iter().any(|words| words.contains(&wanted));
            assert!(is_said, "{section:?} {door}: {words:?}");
        }
    }
}

#[test]
fn the_flag_is_painted_over_the_carriage_that_stands_at_it() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ToSafeLock);
    let harness = window(desk, [1280.0, 720.0]);
    let column = harness.get_by_label("carriage on the ladder").rect();
    let mut triangles = Vec::new();
    for clipped in &harness.output().shapes {
        fillings(&clipped.shape, &mut triangles);
    }
    let fills: Vec<Color32> = triangles
        .into_iter()
        .filter(|(rect, _)| column.expand(12.0).contains_rect(*rect))
        .map(|(_, fill)| fill)
        .collect();
    let place = |colour| fills.iter().rposition(|fill| *fill == egui_colour(colour));
    let (arrow, flag) = (place(LIGHT.accent).unwrap(), place(CLEAR).unwrap());
    assert!(flag > arrow, "{fills:?}");
}

/// Every filled triangle of a shape, with what fills it.
fn fillings(shape: &Shape, out: &mut Vec<(Rect, Color32)>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|shape| fillings(shape, out)),
        Shape::Path(path) if path.closed && path.points.len() == 3 => {
            out.push((Rect::from_points(&path.points), path.fill));
        }
        _ => {}
    }
}

#[test]
fn sixty_locks_fit_on_the_ladder() {
    let mut desk = desk("tall-pickup");
    let locks: Vec<String> = (0..60)
        .map(|i| format!("\"{} mm\"", 300 + i * 25))
        .collect();
    let value = format!("[{}]", locks.join(", "));
    let text = desk.document.text().replace(
        "preset: \"tall-columns-11-10\",",
        &format!("preset: \"tall-columns-11-10\", locks: {value},"),
    );
    desk.document.change(text);
    desk.study_now();
    assert_eq!(desk.locks_m().len(), 60, "{:?}", desk.document.read().err());
    let mut harness = window(desk, [1280.0, 720.0]);
    for number in [1, 30, 31, 60] {
        let label = format!("lock {number}, pads at");
        harness.get_by_label_contains(&label).click();
        harness.run();
        let desk = &harness.state().desk;
        assert!(
            (desk.rise.travel_m - desk.locks_m()[number - 1]).abs() < 1e-12,
            "{number}"
        );
    }
}

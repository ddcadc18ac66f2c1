//! Show mode by itself.

use bayrise::clearance::DoorState;
use bayrise::panels::Action;
use bayrise::panels::camera::Sight;
use glam::DVec3;

use super::{desk, window};

#[test]
fn it_turns_and_raises_to_the_safe_lock_and_no_higher() {
    let mut desk = desk("tall-pickup");
    let top = desk.safe_travel_m().unwrap();
    desk.apply(Action::ToTop);
    desk.apply(Action::ShowMode(true));
    assert!(desk.rise.travel_m.abs() < 1e-12, "begins on the floor");
    let governs = desk.verdict.as_ref().unwrap().study.headline_door;
    assert_eq!(desk.door >= 1.0, governs == DoorState::Open);
    let eye = desk.camera.eye_m;
    let mut highest = 0.0_f64;
    for _ in 0..400 {
        desk.apply(Action::Tick(0.1));
        highest = highest.max(desk.rise.travel_m);
        assert!(desk.rise.travel_m <= top);
    }
    assert!((highest - top).abs() < 1e-9);
    assert!((desk.camera.eye_m - eye).length() > 1.0, "the view turns");
    desk.apply(Action::ShowMode(false));
    let stays = desk.rise.travel_m;
    desk.apply(Action::Tick(0.5));
    assert!((desk.rise.travel_m - stays).abs() < 1e-12);
}

#[test]
fn without_a_safe_lock_it_only_turns() {
    let mut desk = desk("no-safe-lock");
    desk.apply(Action::ShowMode(true));
    let eye = desk.camera.eye_m;
    for _ in 0..200 {
        desk.apply(Action::Tick(0.1));
    }
    assert!(desk.rise.travel_m.abs() < 1e-12);
    assert!((desk.camera.eye_m - eye).length() > 1.0);
}

#[test]
fn a_stale_verdict_raises_nothing() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::ShowMode(true));
    let text = format!("{}\n// changed\n", desk.document.text());
    desk.document.change(text);
    for _ in 0..100 {
        desk.apply(Action::Tick(0.1));
    }
    assert!(desk.rise.travel_m.abs() < 1e-12);
}

#[test]
fn the_bay_is_inside_the_picture_all_the_way_around() {
    for aspect in [1.0, 16.0 / 9.0, 3.0] {
        let mut desk = desk("tall-pickup");
        desk.apply(Action::ShowMode(true));
        desk.set_aspect(aspect);
        let [low, high] = desk.bounds_m;
        // Once around, in steps of half a second.
        for step in 0..180 {
            desk.apply(Action::Tick(0.5));
            for corner in 0..8 {
                let pick = |bit: usize, low: f64, high: f64| match corner >> bit & 1 {
                    1 => high,
                    _ => low,
                };
                let point = DVec3::new(
                    pick(0, low.x, high.x),
                    pick(1, low.y, high.y),
                    pick(2, low.z, high.z),
                );
                let at = desk.camera.project(point, aspect).unwrap();
                let widest = at.abs().max_element();
                assert!(widest <= 1.0, "{aspect} step {step}: {point} at {at}");
            }
        }
    }
}

#[test]
fn afterwards_the_eye_is_where_it_was() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::Look(Sight::Side));
    let mut harness = window(desk, [1280.0, 720.0]);
    let before = harness.state().desk.camera;
    let play = |harness: &mut egui_kittest::Harness<'_, super::World>| {
        let desk = &mut harness.state_mut().desk;
        desk.apply(Action::ShowMode(true));
        // Asked for twice, it is the same show.
        desk.apply(Action::ShowMode(true));
        harness.run();
        for _ in 0..40 {
            harness.state_mut().desk.apply(Action::Tick(0.5));
        }
        assert_eq!(harness.state().desk.sight, None);
        harness.key_press(egui::Key::Escape);
        harness.run();
    };
    play(&mut harness);
    let desk = &mut harness.state_mut().desk;
    assert_eq!(desk.sight, Some(Sight::Side));
    assert!((desk.camera.eye_m - before.eye_m).length() < 1e-9);

    desk.apply(Action::Orbit(0.3, 0.1));
    desk.apply(Action::Zoom(0.5));
    let before = desk.camera;
    play(&mut harness);
    assert_eq!(harness.state().desk.camera, before);
    assert_eq!(harness.state().desk.sight, None);
}

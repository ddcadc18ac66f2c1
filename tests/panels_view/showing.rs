//! Show mode by itself.

use bayrise::clearance::DoorState;
use bayrise::panels::Action;

use super::desk;

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

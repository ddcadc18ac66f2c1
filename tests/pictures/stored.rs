//! Do the scenes look as they were stored?

use std::path::PathBuf;

use bayrise::panels::Action;
use bayrise::panels::camera::Sight;
use bayrise::viewer::capture::{Pixels, png};

use crate::likeness::likeness;
use crate::shots::{Shot, root, take};

/// Pictures at least so alike are the same to a person: another version of the software driver
/// moves edges by parts of a pixel, a thing that is missing or in another place takes more.
const ALIKE: f64 = 0.96;

/// The same of the region that differs most.
const ALIKE_EVERYWHERE: f64 = 0.75;

/// Stored pictures are kept small.
const MOST_BYTES: usize = 72_000;

fn stored(name: &str) -> PathBuf {
    root()
        .join("tests/pictures/stored")
        .join(format!("{name}.png"))
}

#[track_caller]
fn check(name: &str, shot: Shot) {
    let pixels = take(shot).pixels;
    let path = stored(name);
    if std::env::var_os("BAYRISE_UPDATE_PICTURES").is_some_and(|v| v == "1") {
        std::fs::write(&path, png(&pixels).unwrap()).unwrap();
        return;
    }
    let bytes = std::fs::read(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    assert!(bytes.len() < MOST_BYTES, "{name}: {} bytes", bytes.len());
    let kept = image::load_from_memory(&bytes).unwrap().to_rgba8();
    let kept = Pixels {
        width: kept.width(),
        height: kept.height(),
        rgba: kept.into_raw(),
    };
    let [alike, worst] = likeness(&pixels, &kept);
    eprintln!("{name}: alike by {alike:.4}, at worst {worst:.4}");
    if alike < ALIKE || worst < ALIKE_EVERYWHERE {
        let now = std::env::temp_dir().join(format!("bayrise-{name}-now.png"));
        std::fs::write(&now, png(&pixels).unwrap()).unwrap();
        panic!(
            "{name}: alike by {alike:.4}, {ALIKE} asked; at worst by {worst:.4}, \
             {ALIKE_EVERYWHERE} asked; now: {}",
            now.display()
        );
    }
}

#[test]
fn pickup_from_the_corner() {
    let shot = Shot::plain("tall-pickup", Sight::Corner).with(Action::ToSafeLock);
    check("pickup-corner", shot.captioned());
}

#[test]
fn pickup_on_the_floor_from_the_side() {
    check("pickup-side-floor", Shot::plain("tall-pickup", Sight::Side));
}

#[test]
fn pickup_from_above_with_the_door_open() {
    let shot = Shot::plain("tall-pickup", Sight::Plan).with(Action::Door(1.0));
    check("pickup-plan-open", shot);
}

#[test]
fn coupe_up_from_the_front() {
    let shot = Shot::plain("coupe-full-rise", Sight::Front).with(Action::ToSafeLock);
    check("coupe-front", shot.captioned());
}

#[test]
fn coupe_in_the_dark() {
    let shot = Shot::plain("coupe-full-rise", Sight::Corner)
        .with(Action::ToTop)
        .with(Action::Theme(bayrise::panels::settings::Theme::Dark));
    check("coupe-corner-dark", shot);
}

#[test]
fn camper_at_full_travel_from_the_corner() {
    let shot = Shot::plain("camper-under-ties", Sight::Corner).with(Action::ToTop);
    check("camper-corner-top", shot.captioned());
}

#[test]
fn estate_from_the_drivers_door() {
    check("estate-door", Shot::plain("light-in-the-way", Sight::Door));
}

#[test]
fn estate_under_the_light_cut_open() {
    let shot = Shot::plain("light-in-the-way", Sight::Corner)
        .with(Action::ToLock(4))
        .with(Action::Cut(Some(2.0)));
    check("estate-cut", shot);
}

#[test]
fn large_suv_with_a_person() {
    let shot = Shot::plain("tall-columns", Sight::Side)
        .with(Action::ToLock(11))
        .with(Action::People(true));
    check("suv-side-people", shot.captioned());
}

#[test]
fn the_door_half_way() {
    let shot = Shot::plain("barred-way-up", Sight::Side)
        .with(Action::Door(0.5))
        .with(Action::ToLock(2));
    check("barred-side-half-open", shot);
}

#[test]
fn van_that_no_lock_lifts() {
    let shot = Shot::plain("no-safe-lock", Sight::Corner).with(Action::Door(0.0));
    check("van-corner", shot.captioned());
}

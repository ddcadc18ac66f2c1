//! How far up, by hand.

use bayrise::clearance::{Limit, LockState};
use bayrise::units::Length;

use crate::bay::{breach, limiting, states, studied, with};

#[test]
fn a_flat_ceiling_leaves_its_height_less_the_top_of_the_body() {
    let study = studied(&[]);
    // 3 - (1.5 + s) = 0.075 at s = 1.425; nothing is left at s = 1.5.
    breach(&study, "vehicle/roof 1", "shell/ceiling", 1.425);
    let touch = limiting(&study).first_touch_m.unwrap();
    assert!((touch - 1.5).abs() < 1e-6, "{touch}");
    // Lock 10 at 1.3 climbs to 1.35: 3 - 2.85 = 0.15 left. Lock 11 at 1.4 climbs to 1.45.
    assert_eq!(study.highest_clear_lock, Some(10));
    let near = study.locks[9].near.as_ref().unwrap();
    assert!((near.clearance_m - 0.15).abs() < 1e-6, "{near:?}");
    // Lock 11 is short at 1.425. Lock 12 at 1.5 touches, and so does all above: lock 14 climbs to
    // 1.75, within the travel of 1.8.
    assert_eq!(
        states(&study),
        [
            (LockState::Clear, 10),
            (LockState::Tight, 1),
            (LockState::Strikes, 3)
        ]
    );
    // Stop at the next millimetre on or above 0.9 + 1.3 + 0.01 = 2.21; never above
    // 0.9 + 1.425 - 0.03 = 2.295, less what rounding down takes.
    let marks = study.marks.unwrap();
    assert!((marks.stop_m - 2.21).abs() < 1e-9, "{marks:?}");
    assert!(
        (marks.never_above_m.unwrap() - 2.295).abs() < 1.001e-3,
        "{marks:?}"
    );
    assert!(marks.never_above_m.unwrap() <= 2.295 + 1e-9, "{marks:?}");
}

#[test]
fn a_sloped_ceiling_keeps_its_margin_along_the_normal() {
    let slope = r#"Sloped(run: DoorToBack, first: "3.2 m", last: "2.7 m")"#;
    let study = studied(&[(r#"Flat(height: "3 m")"#, slope)]);
    // It falls 0.5 in 10: at the nose, y = 7.4, it stands at 3.2 - 0.05 * 7.4 = 2.83. Along the
    // normal (2.83 - (1.5 + s)) / sqrt(1 + 0.05²) = 0.075, so s = 1.33 - 0.075 * 1.0012492.
    breach(
        &study,
        "vehicle/roof 1",
        "shell/ceiling",
        1.33 - 0.075 * 1.0025_f64.sqrt(),
    );
    // Measured straight up it would be 1.255, a tenth of a millimetre more.
    assert!(limiting(&study).first_breach_m.unwrap() < 1.255 - 0.9e-4);
}

#[test]
fn unequal_pads_pitch_the_body() {
    let raised = r#"pad_raise: (front_left: "40 mm", front_right: "40 mm", rear_left: "0 mm", rear_right: "0 mm")"#;
    let study = studied(&[(r#"pad_raise: "0 mm""#, raised)]);
    // 40 mm over 1.6 m between the lift points: the sine of the pitch is 0.025. The middle of the
    // lift points stands at 0.12 + s; the nose's upper edge lies 2.4 ahead of it and 1.4 above:
    // 0.12 + s + 2.4 * 0.025 + 1.4 * sqrt(1 - 0.025²) = 3 - 0.075.
    let expected = 2.925 - 0.12 - 0.06 - 1.4 * (1.0_f64 - 0.000_625).sqrt();
    breach(&study, "vehicle/roof 1", "shell/ceiling", expected);
    // The front pads touch at 0.26, the rear ones at 0.3.
    assert!((study.phases.carry_m - 0.3).abs() < 1e-9);
    assert!((study.phases.touch_m[0] - 0.26).abs() < 1e-9);
}

/// A sectional door in an opening of 1.84 m: its tracks' middles lie 0.92 + 0.05 = 0.97 off the
/// middle, their inner faces 0.97 - 0.0375 = 0.9325, past the vehicle's side by 0.0325. The curve
/// starts at the top of the opening, 2.4; the level run lies 0.3 above it, its underside at
/// 2.7 - 0.0375 = 2.6625.
const DOOR: &str = r#"door: Sectional(
    layout: Standard, panel_thickness: "50 mm", panel_height: "600 mm", track_radius: "300 mm",
    track_offset: "50 mm", track_section: "75 mm", track_length: "4 m", top_bracket: "0 mm",
)"#;

#[test]
fn a_door_track_at_the_side() {
    let study = studied(&[
        ("door: None", DOOR),
        (r#"width: "3 m", height"#, r#"width: "1.84 m", height"#),
        (
            r#"under_bar: "25 mm""#,
            r#"under_bar: "25 mm", door_held: Shut"#,
        ),
    ]);
    // The roof's edge passes 0.0325 beside the track: 75 mm are short where it is less than
    // sqrt(0.075² - 0.0325²) below the track's underside.
    let below = (0.075_f64 * 0.075 - 0.0325 * 0.0325).sqrt();
    let expected = 2.6625 - below - 1.5;
    breach(&study, "vehicle/roof 1", "door/track", expected);
    // 1.0949: past lock 7, which climbs to 1.05, and below lock 8 at 1.1. The track is never
    // touched: what strikes from lock 12 at 1.5 on is the ceiling.
    assert_eq!(study.highest_clear_lock, Some(7));
    assert_eq!(
        states(&study),
        [
            (LockState::Clear, 7),
            (LockState::Barred, 4),
            (LockState::Strikes, 3)
        ]
    );
}

const TROLLEY: &str = r#"opener: Trolley(
    x: "0 m", rail_bottom: "2.9 m", rail_width: "50 mm", rail_depth: "50 mm", rail_length: "3.5 m",
    head_width: "250 mm", head_depth: "400 mm", head_height: "200 mm", head_bottom: "2.75 m",
    arm_drop: "0 mm", cord_drop: "0 mm",
)"#;

#[test]
fn an_opener_head_over_the_cab() {
    let study = studied(&[("opener: None", TROLLEY)]);
    // 2.75 - (1.5 + s) = 0.075. The head stands from y = 3.5 to 3.9, over the roof.
    breach(&study, "vehicle/roof 1", "opener/", 1.175);
    // Lock 8 at 1.1 climbs to 1.15; lock 9 at 1.2 lies above the breach.
    assert_eq!(study.highest_clear_lock, Some(8));
}

const BEAM: &str = r#"tie: OverheadBeam(
    underside: "3.3 m", height: "100 mm", width: "200 mm",
    bar: (drop: "100 mm", diameter: "80 mm", length: "2 m"),
)"#;

#[test]
fn the_shut_off_bar() {
    let changes = [
        (r#"tie: FloorPlate(height: "20 mm", width: "500 mm")"#, BEAM),
        (r#"column: (height: "2.9 m""#, r#"column: (height: "3.5 m""#),
        (r#"Flat(height: "3 m")"#, r#"Flat(height: "4 m")"#),
    ];
    let study = studied(&changes);
    // Its underside hangs at 3.3 - 0.1 = 3.2: 25 mm are left at s = 3.2 - 0.025 - 1.5, none at 1.7.
    breach(&study, "vehicle/roof 1", "lift/shut-off bar", 1.675);
    let bar = study.bar.as_ref().unwrap();
    assert!((bar.trips_at_m.unwrap() - 1.7).abs() < 1e-6, "{bar:?}");
    assert_eq!(bar.met_before, None);
    // Lock 13 at 1.6 climbs to 1.65; lock 14 at 1.7 would trip it.
    assert_eq!(study.highest_clear_lock, Some(13));
    assert!(matches!(study.limit, Limit::Bar(_) | Limit::Withheld));
}

/// A light 2 m up over the bed.
const LIGHT: (&str, &str) = (
    "obstacles: []",
    r#"obstacles: [Box(
        name: "light", kind: Light, x: "0 m", y: "3.2 m", bottom: "2 m",
        width: "200 mm", depth: "1 m", height: "100 mm",
    )]"#,
);

/// The vehicle's rear half is a bed 1.2 high.
const BED: (&str, &str) = (
    r#"(station: "4.8 m", height: "1.8 m", half_width: "900 mm"),"#,
    r#"(station: "2.4 m", height: "1.8 m", half_width: "900 mm"),
       (station: "2.41 m", height: "1.2 m", half_width: "900 mm"),
       (station: "4.8 m", height: "1.2 m", half_width: "900 mm"),"#,
);

#[test]
fn a_light_over_the_bed() {
    let study = studied(&[LIGHT, BED]);
    // The bed's top stands at 1.2 - 0.3 + s = 0.9 + s: 2 - 0.075 - 0.9. The cab, 1.5 + s high,
    // ends at y = 7.4 - 2.41 = 4.99; the light ends at 3.7.
    breach(&study, "vehicle/", "obstacle/light", 1.025);
    // Lock 6 at 0.9 climbs to 0.95; lock 7 at 1.0 would climb to 1.05. Without the light the
    // ceiling over the cab gives lock 10: the light costs four locks.
    assert_eq!(study.highest_clear_lock, Some(6));
    assert_eq!(studied(&[BED]).highest_clear_lock, Some(10));
}

#[test]
fn a_lock_beyond_the_travel_by_rounding_has_its_room_under_as_well() {
    // Nine locks of 175 mm over the first end at 400 + 8 · 175 = 1800 mm, the travel: above it by less than
    // the noise that is let pass, all phases are over.
    let mut bay = with(&[(
        r#"locks: Even(first: "400 mm", pitch: "100 mm", count: 14)"#,
        r#"locks: Even(first: "400 mm", pitch: "175 mm", count: 9)"#,
    )]);
    let last = bay.lift.locks.last_mut().unwrap();
    *last = Length::metres(bay.lift.travel.m() + 5e-10);
    let study = bayrise::clearance::study(&bay).unwrap();
    let [.., below, top] = &study.locks[..] else {
        panic!("{:?}", study.locks)
    };
    let higher = top.travel_m - below.travel_m;
    assert!((higher - 0.175).abs() < 1e-6, "{higher}");
    for (what, low, high) in [
        ("underbody", below.underbody_m, top.underbody_m),
        ("tyre", below.tyre_m, top.tyre_m),
        ("top", below.top_m, top.top_m),
    ] {
        assert!((high - low - higher).abs() < 1e-6, "{what}: {low}, {high}");
    }
}

//! What must stop the lift although the way up is clear: each case once passed for safe.

use bayrise::clearance::{LockState, Study, Withheld};

use crate::bay::studied;

/// Nothing withholds the plain bay, so whatever does in a test below is owed to its change.
#[test]
fn the_plain_bay_is_safe() {
    let study = studied(&[]);
    assert!(study.withheld.is_empty(), "{:?}", study.withheld);
    assert!(study.highest_safe_lock.is_some());
}

fn drives_in(study: &Study) -> Vec<(&str, &str, f64)> {
    study
        .withheld
        .iter()
        .filter_map(|one| match one {
            Withheld::CannotDriveIn {
                moving,
                fixed,
                shortfall_m,
            } => Some((moving.as_str(), fixed.as_str(), *shortfall_m)),
            _ => None,
        })
        .collect()
}

#[test]
fn a_floor_that_rises_toward_the_door_lifts_the_roof_into_the_header() {
    // The floor at the door lies 5 * 0.11 = 0.55 above that at the posts, and the header stands
    // 1.85 above it, at 2.4: 0.6 above the roof as parked. But the vehicle comes in over that
    // floor, so only 1.85 - 1.8 = 0.05 is left, and 0.075 is asked.
    assert!(drives_in(&studied(&[])).is_empty());
    let study = studied(&[
        ("floor: Level", "floor: Fall(slope: 0.11, toward: Back)"),
        (r#"height: "2.4 m", offset"#, r#"height: "1.85 m", offset"#),
        (r#"Flat(height: "3 m")"#, r#"Flat(height: "6 m")"#),
    ]);
    assert!(
        drives_in(&study)
            .iter()
            .any(|(_, fixed, _)| *fixed == "shell/door header"),
        "{:?}",
        study.withheld
    );
    assert_eq!(study.highest_safe_lock, None);
}

#[test]
fn a_low_ceiling_on_the_way_in_counts_though_the_vehicle_stands_beyond_it() {
    // 1.85 over the first metre, 3 m beyond; the roof is 1.8 high: 0.05 of the 0.075 asked, so
    // 0.025 is short.
    let study = studied(&[
        (
            r#"ceiling: Flat(height: "3 m")"#,
            r#"ceiling: Stepped(steps: [(from: "0 m", height: "2.4 m"), (from: "200 mm", height: "1.85 m"), (from: "1 m", height: "3 m")])"#,
        ),
        (r#"height: "2.4 m", offset"#, r#"height: "2.3 m", offset"#),
    ]);
    let short = drives_in(&study)
        .iter()
        .filter(|(_, fixed, _)| fixed.starts_with("shell/ceiling"))
        .map(|(_, _, short)| *short)
        .fold(0.0, f64::max);
    assert!((short - 0.025).abs() < 1e-6, "{short}");
}

#[test]
fn a_mast_ahead_of_the_posts_must_pass_under_the_beam() {
    // The mast stands 0.1 behind the front bumper, at y = 7.3: beyond the beam at y = 5, which it
    // must pass at 2.6 - 2.5 = 0.1 with a mast of 2.55: 0.05, and 0.075 is asked.
    let beam = (
        r#"tie: FloorPlate(height: "20 mm", width: "500 mm")"#,
        r#"tie: OverheadBeam(underside: "2.6 m", height: "100 mm", width: "200 mm")"#,
    );
    let mast = (
        "attached: []",
        r#"attached: [(name: "mast", from: "100 mm", to: "200 mm", across: "0 m", width: "50 mm", bottom: "1.8 m", top: "2.55 m")]"#,
    );
    let opening = (r#"height: "2.4 m", offset"#, r#"height: "2.8 m", offset"#);
    assert!(drives_in(&studied(&[beam, opening])).is_empty());
    let study = studied(&[beam, mast, opening]);
    let found = drives_in(&study);
    assert!(
        found.iter().any(|(moving, fixed, short)| {
            *moving == "vehicle/mast"
                && *fixed == "lift/overhead beam"
                && (short - 0.025).abs() < 1e-6
        }),
        "{found:?}"
    );
}

#[test]
fn pads_that_start_at_the_lift_points_do_not_hide_the_drive_in() {
    // Pads at 0.1, lift points lowered to 0.1: touch at 0. The opening is lower than the roof.
    let study = studied(&[
        (
            r#"front: (station: "1.6 m", half_spacing: "600 mm", height: "400 mm")"#,
            r#"front: (station: "1.6 m", half_spacing: "600 mm", height: "100 mm")"#,
        ),
        (
            r#"rear: (station: "3.2 m", half_spacing: "600 mm", height: "400 mm")"#,
            r#"rear: (station: "3.2 m", half_spacing: "600 mm", height: "100 mm")"#,
        ),
        (r#"height: "2.4 m", offset"#, r#"height: "1.5 m", offset"#),
    ]);
    assert!(
        drives_in(&study)
            .iter()
            .any(|(_, fixed, _)| *fixed == "shell/door header"),
        "{:?}",
        study.withheld
    );
    // And arms can't be swung under what leaves them no room.
    assert!(
        study
            .withheld
            .iter()
            .any(|one| matches!(one, Withheld::PadStartsTooHigh { .. }))
    );
}

#[test]
fn the_lifts_own_drive_through_width_counts() {
    // Between the carriages 2.9 - 0.2 = 2.7; the lift says 1.82, the body is 1.8 wide: 0.01 a side
    // of the 0.025 asked for the lift's own parts.
    let study = studied(&[(
        r#"tie: FloorPlate"#,
        r#"drive_through: "1.82 m", tie: FloorPlate"#,
    )]);
    let found = drives_in(&study);
    assert!(
        found
            .iter()
            .any(|(_, fixed, short)| fixed.starts_with("lift/carriage")
                && (short - 0.015).abs() < 1e-6),
        "{found:?}"
    );
}

#[test]
fn arms_that_cross_each_other_are_seen() {
    // The front pivots behind the post line and the rear ones ahead of it: the arms of a side must
    // cross to reach their points.
    let study = studied(&[(
        r#"carriage: ("#,
        r#"arms: (front: (pivot_away: "-150 mm"), rear: (pivot_away: "-150 mm")), carriage: ("#,
    )]);
    assert!(
        study.carried.iter().any(|one| {
            one.part == "lift/arm front left" && one.vehicle == "lift/arm rear left"
        }),
        "{:?}",
        study.carried
    );
    assert_eq!(study.highest_safe_lock, None);
}

#[test]
fn an_arm_through_its_own_column_is_seen() {
    // The front pivots lie outside and behind their columns, at x = -2.0 and y = 4.7; on the way to
    // the pads at -0.6 and 5.8 the arm passes y = 4.7 + 0.55 * 1.1 / 1.4 = 5.13 at the column's
    // inner face, whose far edge is at 5.15.
    let study = studied(&[(
        r#"carriage: ("#,
        r#"arms: (front: (pivot_inward: "-400 mm", pivot_away: "-300 mm", longest: "3 m")), carriage: ("#,
    )]);
    assert_eq!(study.highest_safe_lock, None);
    assert!(
        study.withheld.iter().any(|one| matches!(
            one,
            Withheld::TightAsParked { moving, fixed, .. }
                if moving.starts_with("lift/arm front") && fixed.starts_with("lift/post")
        )),
        "{:?}",
        study.withheld
    );
}

#[test]
fn room_underneath_is_measured_from_the_highest_floor_under_the_vehicle() {
    // The floor rises 0.02 a metre toward the back; the vehicle's front would be at y = 7.4, but as it is
    // levelled it goes back by 0.02 of the 0.4 m that the lift points are over the ground: there the
    // floor is (2.4 - 0.008) * 0.02 = 0.04784 above the post line.
    let level = studied(&[]);
    let sloped = studied(&[("floor: Level", "floor: Fall(slope: 0.02, toward: Door)")]);
    let lock = |study: &Study| study.locks[8].underbody_m;
    let lost = lock(&level) - lock(&sloped);
    assert!(lost >= 0.047_84 - 1e-6, "{lost}");
}

#[test]
fn a_door_state_that_does_not_count_still_shows_what_it_strikes() {
    // The vehicle's tail, at y = 2.6, stands under a shut roll-up door's drum only if it is moved
    // to the door: park it with its tail through the curtain.
    let study = studied(&[
        (
            "door: None",
            r#"door: RollUp(curtain_thickness: "50 mm", coil_diameter: "300 mm", coil_height: "2.6 m", coil_out: "200 mm")"#,
        ),
        (r#"post_line: "5 m""#, r#"post_line: "2.3 m""#),
        (
            r#"over_vehicle: "75 mm""#,
            r#"door_held: Open, over_vehicle: "75 mm""#,
        ),
    ]);
    assert!(study.door_is_held);
    assert_eq!(study.doors.shut.highest_clear_lock, None);
    assert!(
        study
            .doors
            .shut
            .locks
            .iter()
            .filter(|state| **state != LockState::NotLifting && **state != LockState::NoRelease)
            .all(|state| *state == LockState::Strikes),
        "{:?}",
        study.doors.shut.locks
    );
}

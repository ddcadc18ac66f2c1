//! What each part of the study is good for: with it the answer is the one by hand, without it
//! another one.

use bayrise::bay::Bay;
use bayrise::clearance::locks::{Together, highest_clear};
use bayrise::clearance::pairs::rule;
use bayrise::clearance::prepare::{FixedSet, Prepared};
use bayrise::clearance::sweep::{Swept, Workspace};
use bayrise::clearance::uncertainty::Uncertainty;
use bayrise::solids::{Layer, Role};
use glam::DVec3;

use crate::bay::{breach, limiting, studied, with};

#[test]
fn the_release_overtravel_costs_exactly_one_lock() {
    // With o = 0.01 + 0.01 lock 11 climbs to 1.42, just short of the breach at 1.425. The latches
    // let go at 0.02 instead: o = 0.02 + 0.01, and it would climb to 1.43.
    let overshoot = (r#"overshoot: "30 mm""#, r#"overshoot: "10 mm""#);
    let release = (
        r#"release_overtravel: "20 mm""#,
        r#"release_overtravel: "0 mm""#,
    );
    assert_eq!(studied(&[overshoot, release]).highest_clear_lock, Some(11));
    assert_eq!(studied(&[overshoot]).highest_clear_lock, Some(10));
}

#[test]
fn the_set_overtravel_and_the_overshoot_count_too() {
    // Lock 11 at 1.4 and the breach at 1.425: 0.025 may be climbed past it, not 0.026.
    let at_once = (
        r#"release_overtravel: "20 mm""#,
        r#"release_overtravel: "0 mm""#,
    );
    let clear = |set: &str, over: &str| {
        let set = format!("set_overtravel: \"{set} mm\"");
        let over = format!("overshoot: \"{over} mm\"");
        let changes = [
            at_once,
            (r#"set_overtravel: "10 mm""#, set.as_str()),
            (r#"overshoot: "30 mm""#, over.as_str()),
        ];
        studied(&changes).highest_clear_lock
    };
    assert_eq!(clear("0", "24.9"), Some(11));
    assert_eq!(clear("0", "26"), Some(10));
    assert_eq!(clear("24.9", "0"), Some(11));
    assert_eq!(clear("26", "0"), Some(10));
    assert_eq!(clear("13", "13"), Some(10));
}

#[test]
fn a_lock_without_room_to_release_is_none() {
    // Lock 14 at 1.7 must climb to 1.75: with a travel of 1.74 it can't be left again.
    let high = (r#"Flat(height: "3 m")"#, r#"Flat(height: "4 m")"#);
    let travel = (r#"travel: "1.8 m""#, r#"travel: "1.74 m""#);
    assert_eq!(studied(&[high]).highest_clear_lock, Some(14));
    assert_eq!(studied(&[high, travel]).highest_clear_lock, Some(13));
}

#[test]
fn the_margin_counts() {
    // With none asked the roof may come to 1.5: lock 11 climbs to 1.45, lock 12 at 1.5 touches.
    let none = (r#"over_vehicle: "75 mm""#, r#"over_vehicle: "0 mm""#);
    assert_eq!(studied(&[none]).highest_clear_lock, Some(11));
    assert_eq!(studied(&[]).highest_clear_lock, Some(10));
}

#[test]
fn the_roll_of_carriages_out_of_level_counts() {
    let study = studied(&[(r#"side_mismatch: "0 mm""#, r#"side_mismatch: "20 mm""#)]);
    // 20 mm over the 1.2 m between left and right lift points: the sine of the roll is 1/60. The
    // middle of the lift points stands at 0.11 + s; the roof's edge lies 0.9 to the side and 1.4
    // above it: 0.11 + s + 0.9 / 60 + 1.4 * sqrt(1 - 1/3600) = 2.925.
    let by_hand = 2.925 - 0.11 - 0.015 - 1.4 * (1.0_f64 - 1.0 / 3600.0).sqrt();
    let found = limiting(&study).first_breach_m.unwrap();
    // Any roll on the way there is bounded, so it may come out up to a millimetre sooner.
    assert!(
        found <= by_hand && found > by_hand - 1e-3,
        "{found}, by hand {by_hand}"
    );
    // Without the roll it is 1.425.
    assert!(by_hand < 1.4005);
}

#[test]
fn the_uncertainty_of_every_measure_counts() {
    // The ceiling may be 10 mm lower. The roof may be 10 mm higher over its own floor, and each of
    // the four lift points 10 mm lower than measured: over the ends of the roof, 2.4 ahead and 0.9
    // to the side of their middle, the body then tips as well.
    let garage = (r#"measured_garage: "0 mm""#, r#"measured_garage: "10 mm""#);
    breach(
        &studied(&[garage]),
        "vehicle/roof 1",
        "shell/ceiling",
        1.415,
    );
    let vehicle = (
        r#"measured_vehicle: "0 mm""#,
        r#"measured_vehicle: "10 mm""#,
    );
    // Three pads carry: front left 2.4 / 1.6 + 0.5 = 2, rear right (0.9 + 0.6) / 1.2 = 1.25 and so
    // rear left 1 - 2 - 1.25 = -2.25, together 5.5 times 10 mm; 10 mm of the roof itself; and what
    // a gap of 3 mm left at a pad can add.
    let found = limiting(&studied(&[vehicle])).first_breach_m.unwrap();
    let by_hand = 1.425 - 0.010 - 0.055;
    assert!(found <= by_hand && found > by_hand - 0.010, "{found}");
}

fn shut(prepared: &Prepared) -> &FixedSet {
    &prepared.groups.shut
}

fn open(prepared: &Prepared) -> &FixedSet {
    &prepared.groups.open
}

/// The highest clear lock with the door in one state, without the solids that `leave_out` names and
/// the pairs it takes out.
fn clear_without(
    bay: &Bay,
    door: fn(&Prepared) -> &FixedSet,
    leave_out: &dyn Fn(Role, Role) -> bool,
) -> Option<usize> {
    let prepared = Prepared::new(bay, Uncertainty::worst(bay)).unwrap();
    let mut space = Workspace::new();
    let mut sweep = |set: &FixedSet| -> Swept {
        space.sweep(
            &prepared.movers.moving,
            &set.bodies,
            &prepared.locks,
            DVec3::Z,
            &|mover, fixed| {
                if leave_out(mover.role, fixed.role) {
                    return None;
                }
                rule(mover.role, fixed.role, &bay.policy)
            },
        );
        space.swept.clone()
    };
    let swept = [sweep(&prepared.groups.common), sweep(door(&prepared))];
    let together = Together {
        swept: &[&swept[0], &swept[1]],
    };
    let states = together.states(
        &prepared.locks,
        prepared.movers.phases.carry_m,
        bay.lift.travel.m(),
    );
    highest_clear(states.into_iter().map(|(state, _)| state))
}

/// The vehicle 0.8 nearer to the door, and a door whose open panels lie over the vehicle's tail: the level run's middle
/// lies at 2.4 + 0.3 = 2.7, the panels' undersides 25 mm below it, at 2.675. The tracks lie far to
/// the sides.
fn under_the_open_door() -> Bay {
    let nearer = (r#"post_line: "5 m""#, r#"post_line: "4.2 m""#);
    let door = (
        "door: None",
        r#"door: Sectional(
            layout: Standard, panel_thickness: "50 mm", panel_height: "600 mm",
            track_radius: "300 mm", track_offset: "50 mm", track_section: "75 mm",
            track_length: "4 m", top_bracket: "0 mm",
        )"#,
    );
    with(&[nearer, door])
}

#[test]
fn a_door_panel_counts() {
    let bay = under_the_open_door();
    // Four panels of 0.6, the lowest at the top of the opening: less a quarter circle of 0.3 they
    // reach 2.4 - 0.471 along the level run, to y = 0.3 + 1.929 = 2.229 or a little beyond (chords
    // cut the curve short). The tail starts at 1.8: 2.675 - 0.075 - 1.5 = 1.1, and lock 7 at 1.0
    // climbs to 1.05.
    assert_eq!(clear_without(&bay, open, &|_, _| false), Some(7));
    let no_panel = |_: Role, fixed: Role| fixed == Role::DoorPanel;
    assert_eq!(clear_without(&bay, open, &no_panel), Some(10));
    // Shut, the panels stand in the opening and the ceiling limits.
    assert_eq!(clear_without(&bay, shut, &|_, _| false), Some(10));
}

#[test]
fn every_layer_counts() {
    let shell = |_: Role, fixed: Role| fixed.layer() == Layer::Shell;
    let bay = with(&[]);
    assert_eq!(clear_without(&bay, shut, &|_, _| false), Some(10));
    // Without the ceiling nothing limits the rise below lock 14.
    assert_eq!(clear_without(&bay, shut, &shell), Some(14));
}

#[test]
fn every_pair_counts() {
    let bay = with(&[]);
    let body_and_ceiling =
        |moving: Role, fixed: Role| moving == Role::Body && fixed == Role::Ceiling;
    // Carriages reach 0.08 + 0.8 + s, nothing else comes near the ceiling.
    assert_eq!(clear_without(&bay, shut, &body_and_ceiling), Some(14));
}

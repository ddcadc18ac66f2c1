//! Each answer the other way round, fed back into the study of `check`, lies on the boundary.

use bayrise::bay::Bay;
use bayrise::choose::inverse::{FARTHEST_M, TOLERANCE_M, inverse};
use bayrise::choose::vary::{roof_over_lift_points, under_flat_ceiling, with_roof_raised};
use bayrise::clearance::{Study, Verdict, Withheld, heights, study};
use bayrise::units::Length;

use super::{Files, read, shipped};

/// Reasons in which the room takes part.
fn of_the_room(study: &Study) -> usize {
    let is_of_the_room = |one: &&Withheld| {
        matches!(
            one,
            Withheld::DoesNotStand { .. }
                | Withheld::CannotBeStoodUp { .. }
                | Withheld::CannotDriveIn { .. }
                | Withheld::TightAsParked { .. }
        )
    };
    study.withheld.iter().filter(is_of_the_room).count()
}

fn holds(bay: &Bay, lock: usize, anyway: usize) -> bool {
    study(bay).is_ok_and(|found| {
        found.highest_clear_lock.unwrap_or(0) >= lock && of_the_room(&found) <= anyway
    })
}

fn bays() -> Vec<Bay> {
    let files = Files::shipped();
    ["short-or-tall.ron", "cheaper-or-dearer.ron"]
        .into_iter()
        .flat_map(|name| {
            let options = read(&shipped(name), &files);
            let picks = options.picks();
            let bays: Vec<Bay> = picks
                .into_iter()
                .map(|pick| options.bay(pick, &files).unwrap().bay)
                .collect();
            bays
        })
        .collect()
}

#[test]
fn the_short_study_is_the_study() {
    for bay in bays() {
        let (short, whole) = (heights(&bay).unwrap(), study(&bay).unwrap());
        assert_eq!(short.highest_clear_lock, whole.highest_clear_lock);
        assert_eq!(short.reasons, of_the_room(&whole));
    }
}

#[test]
fn answers_lie_on_the_boundary() {
    let mut looked_at = [0, 0];
    for bay in bays().into_iter().step_by(3) {
        let found = inverse(&bay, &Verdict::of(&study(&bay).unwrap()));
        let now = roof_over_lift_points(&bay).m();
        let ceiling = |m: f64| under_flat_ceiling(&bay, Length::metres(m));
        let roof = |m: f64| with_roof_raised(&bay, Length::metres(m - now));
        let anyway = of_the_room(&study(&ceiling(FARTHEST_M)).unwrap());
        for (index, least) in found.ceiling_m.iter().enumerate().skip(2).step_by(5) {
            let Some(least) = least else { continue };
            assert!(holds(&ceiling(*least), index + 1, anyway), "{least}");
            let lower = least - 1.01 * TOLERANCE_M;
            assert!(!holds(&ceiling(lower), index + 1, anyway), "{lower}");
            looked_at[0] += 1;
        }
        let lowest = found
            .roof_m
            .iter()
            .flatten()
            .copied()
            .fold(f64::INFINITY, f64::min);
        let anyway = of_the_room(&study(&roof(lowest)).unwrap());
        for (index, tallest) in found.roof_m.iter().enumerate().skip(2).step_by(5) {
            let Some(tallest) = tallest.filter(|m| *m < FARTHEST_M) else {
                continue;
            };
            assert!(holds(&roof(tallest), index + 1, anyway), "{tallest}");
            let taller = tallest + 1.01 * TOLERANCE_M;
            assert!(!holds(&roof(taller), index + 1, anyway), "{taller}");
            looked_at[1] += 1;
        }
    }
    assert!(looked_at[0] >= 8 && looked_at[1] >= 8, "{looked_at:?}");
}

#[test]
fn a_higher_lock_never_asks_less() {
    for bay in bays().into_iter().step_by(2) {
        let found = inverse(&bay, &Verdict::of(&study(&bay).unwrap()));
        let ceilings: Vec<f64> = found.ceiling_m.iter().flatten().copied().collect();
        assert!(
            ceilings
                .windows(2)
                .all(|pair| pair[0] <= pair[1] + TOLERANCE_M)
        );
        let roofs: Vec<f64> = found.roof_m.iter().flatten().copied().collect();
        assert!(
            roofs
                .windows(2)
                .all(|pair| pair[0] >= pair[1] - TOLERANCE_M)
        );
    }
}

/// The low roof of a coupe under a flat ceiling, with something fixed to its body.
fn with_attached(bottom: &str) -> Bay {
    let text = shipped("south-bay.ron").replace(
        "preset: \"large-suv\",",
        &format!(
            "preset: \"large-suv\", attached: [(name: \"ladder frame\", from: \"100 in\", to: \
             \"180 in\", across: \"0 in\", width: \"60 in\", bottom: \"{bottom}\", top: \"96 in\")],"
        ),
    );
    bayrise::bayfile::read("frame", text.as_bytes(), &Files::shipped())
        .map_err(|faults| super::said(&faults))
        .unwrap()
        .bay
}

#[test]
fn the_answer_for_a_frame_that_starts_below_the_belt_lies_on_the_boundary_too() {
    for bottom in ["41 in", "80 in"] {
        let bay = with_attached(bottom);
        let now = roof_over_lift_points(&bay).m();
        for by in [-0.3, -0.1, 0.2, 0.6] {
            let higher = with_roof_raised(&bay, Length::metres(by));
            let found = roof_over_lift_points(&higher).m();
            assert!((found - now - by).abs() < 1e-9, "{bottom} {by}: {found}");
        }
        let found = inverse(&bay, &Verdict::of(&study(&bay).unwrap()));
        let roof = |m: f64| with_roof_raised(&bay, Length::metres(m - now));
        let mut looked_at = 0;
        for (index, tallest) in found.roof_m.iter().enumerate().step_by(4) {
            let Some(tallest) = tallest.filter(|m| *m < FARTHEST_M) else {
                continue;
            };
            assert!(holds(&roof(tallest), index + 1, 0), "{bottom} {tallest}");
            assert!(!holds(&roof(tallest + 1.01 * TOLERANCE_M), index + 1, 0));
            looked_at += 1;
        }
        assert!(looked_at > 0, "{bottom}: {found:?}");
    }
}

#[test]
fn no_roof_is_told_for_a_lift_that_cannot_stand() {
    let text = shipped("south-bay.ron").replace("\"floor-plate-9-6\"", "\"tall-columns-12-8\"");
    let bay = bayrise::bayfile::read("tall", text.as_bytes(), &Files::shipped())
        .map_err(|faults| super::said(&faults))
        .unwrap()
        .bay;
    let whole = study(&bay).unwrap();
    let stands = |one: &Withheld| !matches!(one, Withheld::DoesNotStand { .. });
    assert!(
        !whole.withheld.iter().all(stands),
        "columns taller than the ceiling"
    );
    let found = inverse(&bay, &Verdict::of(&whole));
    assert!(found.whatever_roof.does_not_stand);
    assert_eq!(found.roof_m.iter().flatten().count(), 0, "{found:?}");
    assert!(
        !found.whatever_ceiling.does_not_stand,
        "a higher ceiling cures it"
    );
    assert!(found.ceiling_m.iter().flatten().count() > 0);
}

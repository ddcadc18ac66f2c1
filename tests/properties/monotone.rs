//! Does more room ever give less? A higher ceiling, a lower vehicle, a thing taken away.

use bayrise::bay::{Bay, Ceiling};
use bayrise::choose::vary::{most_lowering, under_flat_ceiling, with_roof_raised};
use bayrise::clearance::heights;
use bayrise::units::Length;

use super::rng::Rng;
use super::scenes::scenes;

const ROUNDS: u64 = 150;

/// A shipped scene with another lift, another vehicle and another ceiling in it; none where they
/// make no bay.
fn random(seed: u64, scenes: &[(String, Bay)]) -> (Rng, Option<Bay>) {
    let mut rng = Rng::new(seed);
    let (_, scene) = &scenes[rng.below(scenes.len())];
    let (_, lift) = &scenes[rng.below(scenes.len())];
    let (_, vehicle) = &scenes[rng.below(scenes.len())];
    let mut bay = scene.clone();
    if !rng.once_in(3) {
        let place = (bay.lift.post_line, bay.lift.across);
        bay.lift = lift.lift.clone();
        (bay.lift.post_line, bay.lift.across) = place;
    }
    if !rng.once_in(3) {
        bay.vehicle = vehicle.vehicle.clone();
        bay.parking = vehicle.parking.clone();
    }
    if rng.once_in(2) {
        let height = Length::metres(rng.between(2.3, 4.8));
        bay.garage.ceiling = Ceiling::Flat { height };
    }
    let is_studied = heights(&bay).is_ok();
    (rng, is_studied.then_some(bay))
}

/// The highest clear lock; 0 where none is, or where something is tight as parked already: what is
/// tight there is told by itself, withholds every lock, and is left out of the rise.
fn clear(bay: &Bay) -> usize {
    let found = heights(bay).unwrap();
    if found.is_tight_as_parked {
        return 0;
    }
    found.highest_clear_lock.unwrap_or(0)
}

/// Runs a property over random bays and says how often what was changed made a difference.
fn over_random_bays(mut property: impl FnMut(&mut Rng, &Bay) -> Option<(usize, usize)>) {
    let scenes = scenes();
    let (mut looked_at, mut mattered) = (0, 0);
    for seed in 0..ROUNDS {
        let (mut rng, bay) = random(seed, &scenes);
        let Some(bay) = bay else { continue };
        let Some((less, more)) = property(&mut rng, &bay) else {
            continue;
        };
        assert!(
            more >= less,
            "seed {seed}: {more} with more room, {less} with less"
        );
        looked_at += 1;
        mattered += usize::from(more > less);
    }
    assert!(looked_at >= 60, "only {looked_at} bays");
    assert!(mattered >= 3, "it mattered in {mattered} bays only");
}

#[test]
fn a_higher_ceiling_never_lowers_the_highest_clear_lock() {
    over_random_bays(|rng, bay| {
        let low = rng.between(2.2, 4.4);
        let high = low + rng.between(0.0, 0.6);
        let under = |m: f64| clear(&under_flat_ceiling(bay, Length::metres(m)));
        Some((under(low), under(high)))
    });
}

#[test]
fn a_lower_vehicle_never_lowers_the_highest_clear_lock() {
    over_random_bays(|rng, bay| {
        let by = -most_lowering(bay).m() * rng.between(0.0, 1.0);
        Some((
            clear(bay),
            clear(&with_roof_raised(bay, Length::metres(by))),
        ))
    });
}

#[test]
fn a_thing_taken_away_never_lowers_the_highest_clear_lock() {
    over_random_bays(|rng, bay| {
        let count = bay.garage.obstacles.len();
        if count == 0 {
            return None;
        }
        let mut without = bay.clone();
        without.garage.obstacles.remove(rng.below(count));
        Some((clear(bay), clear(&without)))
    });
}

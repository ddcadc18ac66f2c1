//! Does the answer for one shown position agree with the study, and is it never optimistic?

use std::collections::BTreeMap;

use bayrise::bay::Bay;
use bayrise::clearance::prepare::overtravel_m;
use bayrise::clearance::{
    DoorFinding, DoorState, Here, HereState, LockState, MOST_PAIRS, PairState, Probe, Study, study,
};
use bayrise::solids::DoorTravel;
use bayrise::units::Length;

use crate::rng::Rng;
use crate::scenes::{scene, scenes};

/// Bays varied from each scene.
const VARIED: u64 = 2;
/// Positions looked at in each lock's window, beside the travels where something starts.
const STEPS: u32 = 4;

/// The scenes as shipped, and each with other margins, heights and places.
pub(crate) fn bays() -> Vec<(String, Bay)> {
    let mut bays = scenes();
    for (name, bay) in scenes() {
        for seed in 0..VARIED {
            bays.push((format!("{name}, varied {seed}"), varied(&bay, seed)));
        }
    }
    bays
}

fn varied(bay: &Bay, seed: u64) -> Bay {
    let mut rng = Rng::new(seed + 1);
    let mut bay = bay.clone();
    if seed == 1 {
        // A little more than there is: short as parked and all the way up.
        bay.policy.beside_post = Length::mm(1e3 * nearest_post_m(&bay) + 5.0);
        return bay;
    }
    let mut off = |length: &mut Length, half: f64| {
        *length += Length::mm(1e3 * rng.within(half));
    };
    off(&mut bay.parking.across, 0.1);
    off(&mut bay.lift.post_line, 0.3);
    for raise in &mut bay.parking.pad_raise {
        off(raise, 0.01);
        *raise = raise.max(Length::mm(0.0));
    }
    let policy = &mut bay.policy;
    for margin in [
        &mut policy.over_vehicle,
        &mut policy.beside_vehicle,
        &mut policy.beside_post,
        &mut policy.lift_parts,
        &mut policy.under_bar,
    ] {
        *margin = Length::mm(1e3 * rng.between(0.0, 0.15));
    }
    policy.door_held = None;
    // A lock below the lift points: the pads do not carry there.
    let low = bay.lift.locks[0].min(Length::mm(60.0));
    if low < bay.lift.locks[0] {
        bay.lift.locks.insert(0, low);
    }
    bay
}

/// How near a post the vehicle comes, worst case, metres; 0 when nothing is near.
fn nearest_post_m(bay: &Bay) -> f64 {
    let Ok((_, mut probe)) = Probe::with_study(bay) else {
        return 0.0;
    };
    let beside = probe.at(DoorTravel::Open, 0.0).pairs.into_iter();
    let beside = beside
        .filter(|pair| pair.moving.starts_with("vehicle/") && pair.fixed.starts_with("lift/post"));
    beside
        .map(|pair| pair.worst_m)
        .min_by(f64::total_cmp)
        .unwrap_or(0.0)
}

/// Each door position looked at, with what the study says of it.
fn doors(study: &Study) -> [(DoorTravel, &DoorFinding); 4] {
    let doors = &study.doors;
    [
        (DoorTravel::Shut, &doors.shut),
        (DoorTravel::Open, &doors.open),
        (DoorTravel::At(0.37), &doors.running),
        (DoorTravel::At(0.92), &doors.running),
    ]
}

/// Everything short here is what the study reports as tight as parked and leaves out of the rise.
fn only_as_parked(here: &Here) -> bool {
    let short = |state| state != PairState::Clear;
    matches!(here.state, HereState::Tight | HereState::Strikes)
        && here.pairs.iter().any(|pair| short(pair.state))
        && here
            .pairs
            .iter()
            .all(|pair| !short(pair.state) || pair.as_parked)
        // The list must hold every pair that is short.
        && here.pairs.last().is_none_or(|last| here.pairs.len() < MOST_PAIRS || !short(last.state))
}

fn is_clear(here: &Here) -> bool {
    here.state == HereState::Clear || only_as_parked(here)
}

/// The states of all positions of a lock's window, for one door position.
fn window(
    probe: &mut Probe,
    door: DoorTravel,
    known: &DoorFinding,
    [set, top]: [f64; 2],
) -> Vec<Here> {
    let mut travels: Vec<f64> = (0..=STEPS)
        .map(|step| set + (top - set) * f64::from(step) / f64::from(STEPS))
        .collect();
    travels.extend(known.first_breach_m);
    for at in [set, top] {
        for pair in probe.at(door, at).pairs {
            travels.extend(pair.first_breach_m);
            travels.extend(pair.first_touch_m);
        }
    }
    travels.retain(|travel| (set..=top).contains(travel));
    travels
        .into_iter()
        .map(|travel| probe.at(door, travel))
        .collect()
}

#[derive(Default)]
struct Seen(BTreeMap<&'static str, usize>);

impl Seen {
    fn one(&mut self, what: &'static str) {
        *self.0.entry(what).or_default() += 1;
    }
}

#[test]
fn no_position_looks_better_than_its_lock() {
    let mut seen = Seen::default();
    for (name, bay) in bays() {
        let Ok((study, mut probe)) = Probe::with_study(&bay) else {
            continue;
        };
        let carry_m = study.phases.carry_worst_m;
        for (door, known) in doors(&study) {
            if let Some(lock) = known.highest_clear_lock {
                let top = bay.lift.locks[lock - 1].m() + overtravel_m(&bay);
                for step in 0..=40 {
                    let travel = carry_m + (top - carry_m) * f64::from(step) / 40.0;
                    let here = probe.at(door, travel);
                    assert!(is_clear(&here), "{name}: {travel} {:?}", here.state);
                }
            }
            for (index, (state, lock)) in known.locks.iter().zip(&bay.lift.locks).enumerate() {
                let [set, top] = [lock.m(), lock.m() + overtravel_m(&bay)];
                let place = format!("{name}, {door:?}, lock {}: {state:?}", index + 1);
                let heres = window(&mut probe, door, known, [set, top]);
                let any = |wanted: HereState| heres.iter().any(|here| here.state == wanted);
                seen.one(state.words());
                match state {
                    LockState::Clear => {
                        for here in &heres {
                            if only_as_parked(here) {
                                seen.one("as parked");
                            }
                            assert!(
                                is_clear(here),
                                "{place}: {} {:?}",
                                here.travel_m,
                                here.state
                            );
                        }
                    }
                    LockState::Strikes => assert!(any(HereState::Strikes), "{place}"),
                    LockState::Tight => assert!(any(HereState::Tight), "{place}"),
                    LockState::Barred => assert!(
                        heres.iter().all(|here| matches!(
                            here.state,
                            HereState::Barred | HereState::Tight | HereState::Strikes
                        )) && (any(HereState::Barred) || any(HereState::Tight)),
                        "{place}"
                    ),
                    LockState::NotShown => assert!(
                        any(HereState::NotShown) || any(HereState::Strikes),
                        "{place}"
                    ),
                    LockState::NotLifting => {
                        assert!(probe.at(door, set).state != HereState::Clear, "{place}")
                    }
                    LockState::NoRelease => {}
                }
            }
        }
    }
    // The bays show what they are here for.
    for what in [
        "clear",
        "strikes",
        "tight",
        "barred",
        "not lifting",
        "as parked",
    ] {
        let count = seen.0.get(what).copied().unwrap_or(0);
        assert!(count >= 5, "{what}: {count}");
    }
}

#[test]
fn nothing_is_clear_above_a_breach() {
    let mut seen = Seen::default();
    for (name, bay) in bays() {
        let Ok((study, mut probe)) = Probe::with_study(&bay) else {
            continue;
        };
        let mut rng = Rng::new(7);
        let top = bay.lift.travel.m();
        for (door, known) in doors(&study) {
            let stop = [known.first_breach_m, known.undecided_m];
            let stop = stop.into_iter().flatten().fold(f64::INFINITY, f64::min);
            let mut travels: Vec<f64> = (0..60).map(|_| rng.between(0.0, top)).collect();
            travels.extend([0.0, top]);
            for near in [stop - 1e-9, stop, stop + 1e-9] {
                travels.extend(Some(near).filter(|near| (0.0..=top).contains(near)));
            }
            for travel in travels {
                let here = probe.at(door, travel);
                seen.one(here.state.words());
                let fine = matches!(
                    here.state,
                    HereState::Parked | HereState::Meeting | HereState::Clear
                );
                assert!(
                    fine == (travel < stop) || travel < stop && only_as_parked(&here),
                    "{name}, {door:?}, {travel}: {:?}, stop {stop}",
                    here.state
                );
                if fine {
                    let phases = &study.phases;
                    assert_eq!(
                        here.state == HereState::Clear,
                        travel >= phases.carry_worst_m
                    );
                }
            }
        }
    }
    for state in ["parked", "clear", "tight", "strikes", "barred"] {
        assert!(
            seen.0.get(state).copied().unwrap_or(0) >= 10,
            "{state} {:?}",
            seen.0
        );
    }
}

#[test]
fn the_study_beside_a_probe_is_the_study() {
    for (name, bay) in scenes() {
        let (beside, _) = Probe::with_study(&bay).unwrap();
        let alone = study(&bay).unwrap();
        assert_eq!(format!("{beside:?}"), format!("{alone:?}"), "{name}");
    }
}

#[test]
fn first_touches_of_a_door_state_are_where_something_starts_to_strike() {
    let bay = scene("tall-pickup.ron");
    let (study, mut probe) = Probe::with_study(&bay).unwrap();
    for (door, known) in doors(&study) {
        let first = probe.first_touch_m(known.state);
        let breach = known.first_breach_m;
        assert!(first.unwrap_or(f64::INFINITY) >= breach.unwrap_or(f64::INFINITY));
        if let Some(first) = first {
            assert_eq!(probe.at(door, first).state, HereState::Strikes);
            assert_ne!(probe.at(door, first - 1e-6).state, HereState::Strikes);
        }
    }
    assert!(probe.first_touch_m(DoorState::Open).is_some());
}

#[test]
fn what_is_not_a_number_is_not_shown_and_the_ends_of_the_door_are_shut_and_open() {
    let bay = scene("tall-pickup.ron");
    let (_, mut probe) = Probe::with_study(&bay).unwrap();
    for (door, travel) in [
        (DoorTravel::Shut, f64::NAN),
        (DoorTravel::At(f64::NAN), 0.5),
    ] {
        let here = probe.at(door, travel);
        assert_eq!(here.state, HereState::NotShown);
        assert!(here.pairs.is_empty());
    }
    assert_eq!(
        probe.at(DoorTravel::At(0.0), 0.5),
        probe.at(DoorTravel::Shut, 0.5)
    );
    assert_eq!(
        probe.at(DoorTravel::At(1.0), 0.5),
        probe.at(DoorTravel::Open, 0.5)
    );
    // Above its travel the carriage can't be: the answer is that of the top.
    let top = bay.lift.travel.m();
    assert_eq!(
        probe.at(DoorTravel::Open, top + 5.0),
        probe.at(DoorTravel::Open, top)
    );
    assert_eq!(
        probe.at(DoorTravel::Open, -1.0),
        probe.at(DoorTravel::Open, 0.0)
    );
}

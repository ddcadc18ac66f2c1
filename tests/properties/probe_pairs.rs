//! Are the pairs listed for a shown position the tightest of all, and drawn where they are?

use std::collections::BTreeMap;

use bayrise::bay::Bay;
use bayrise::clearance::body::Body;
use bayrise::clearance::gap::{Separation, Solver};
use bayrise::clearance::pairs::rule;
use bayrise::clearance::prepare::{FixedSet, Prepared};
use bayrise::clearance::sweep::NEAR_M;
use bayrise::clearance::uncertainty::Uncertainty;
use bayrise::clearance::{DoorState, MOST_PAIRS, Probe};
use bayrise::solids::list::solids;
use bayrise::solids::{DoorTravel, Solid};
use glam::DVec3;

use crate::probe::bays;
use crate::rng::Rng;

/// Rounding, metres.
const SLACK_M: f64 = 1e-6;

/// The pairs as the study counts them, every one measured, nothing pruned: least room first.
fn all_pairs(
    bay: &Bay,
    prepared: &Prepared,
    door: DoorState,
    travel: f64,
) -> Vec<(String, String, f64)> {
    let mut solver = Solver::new();
    let groups = &prepared.groups;
    let of_door = match door {
        DoorState::Shut => &groups.shut,
        DoorState::Open => &groups.open,
        DoorState::Running => &groups.running,
    };
    let mut rooms: BTreeMap<(String, String), f64> = BTreeMap::new();
    let mut add = |set: &FixedSet| {
        for mover in &prepared.movers.moving {
            if travel < mover.from || travel > mover.to {
                continue;
            }
            let shift = if mover.climbs {
                DVec3::Z * travel
            } else {
                DVec3::ZERO
            };
            for (solid, thing) in set.solids.iter().zip(&set.bodies) {
                let Some(rule) = rule(mover.role, thing.role, &bay.policy) else {
                    continue;
                };
                let apart = match solver.gap(&mover.body, shift, &thing.body) {
                    Separation::Meet => 0.0,
                    Separation::Apart(gap) => gap.lower.max(0.0),
                };
                let moving = prepared.movers.solids[mover.solid].name.clone();
                let room = rooms
                    .entry((moving, solid.name.clone()))
                    .or_insert(f64::INFINITY);
                *room = room.min(apart - rule.margin_m);
            }
        }
    };
    add(&groups.common);
    add(of_door);
    let mut list: Vec<_> = rooms
        .into_iter()
        .filter(|(_, room)| *room <= NEAR_M)
        .map(|((moving, fixed), room)| (moving, fixed, room))
        .collect();
    list.sort_by(|a, b| a.2.total_cmp(&b.2));
    list
}

#[test]
fn the_tightest_pairs_are_those_of_all_pairs_measured() {
    for (name, bay) in bays().into_iter().step_by(2) {
        let Ok((_, mut probe)) = Probe::with_study(&bay) else {
            continue;
        };
        let prepared = Prepared::new(&bay, Uncertainty::worst(&bay)).unwrap();
        let top = bay.lift.travel.m();
        for step in 0..=5 {
            let travel = top * f64::from(step) / 5.0;
            for (door, state) in [
                (DoorTravel::Shut, DoorState::Shut),
                (DoorTravel::Open, DoorState::Open),
                (DoorTravel::At(0.5), DoorState::Running),
            ] {
                let here = probe.at(door, travel);
                let all = all_pairs(&bay, &prepared, state, travel);
                let place = format!("{name}, {door:?}, {travel}");
                if state == DoorState::Running {
                    // One pair stands for the whole envelope: only the least room compares.
                    let least = |room: Option<f64>| room.unwrap_or(f64::INFINITY).min(NEAR_M);
                    let found = least(here.pairs.first().map(|pair| pair.room_m()));
                    let expected = least(all.first().map(|pair| pair.2));
                    assert!(
                        (found - expected).abs() < 0.1e-3,
                        "{place}: {found} {expected}"
                    );
                    continue;
                }
                assert_eq!(here.pairs.len(), all.len().min(MOST_PAIRS), "{place}");
                for (pair, (_, _, room)) in here.pairs.iter().zip(&all) {
                    // Called short a hair early, never late.
                    assert!(
                        pair.room_m() <= room + 1e-7 + 0.05e-3,
                        "{place}: {pair:?} {room}"
                    );
                    assert!(pair.room_m() >= room - 0.1e-3, "{place}: {pair:?} {room}");
                    let known = all
                        .iter()
                        .find(|(moving, fixed, _)| (moving, fixed) == (&pair.moving, &pair.fixed));
                    assert!(known.is_some(), "{place}: {pair:?}");
                }
            }
        }
    }
}

fn apart(a: &Solid, b: &Solid) -> Option<f64> {
    match Solver::new().gap(&Body::exact(a), DVec3::ZERO, &Body::exact(b)) {
        Separation::Meet => None,
        Separation::Apart(gap) => Some(gap.upper),
    }
}

#[test]
fn points_lie_on_the_solids_as_drawn_and_worst_is_never_more_than_drawn() {
    let mut rng = Rng::new(11);
    let mut drawn_to_moving_door = 0;
    for (name, bay) in bays() {
        let Ok((_, mut probe)) = Probe::with_study(&bay) else {
            continue;
        };
        for _ in 0..6 {
            // More often where the door is near.
            let travel = bay.lift.travel.m() * rng.between(0.0, 1.0).sqrt();
            let shut = solids(&bay, DoorTravel::Shut, travel).unwrap();
            let part_way = DoorTravel::At(rng.between(0.4, 0.98));
            for door in [DoorTravel::Shut, DoorTravel::Open, part_way] {
                let list = solids(&bay, door, travel).unwrap();
                let by_name: BTreeMap<&str, &Solid> = list
                    .iter()
                    .map(|solid| (solid.name.as_str(), solid))
                    .collect();
                for pair in probe.at(door, travel).pairs {
                    let place = format!("{name}, {door:?}, {travel}: {pair:?}");
                    let moving = by_name[pair.moving.as_str()];
                    let Some(fixed) = by_name.get(pair.fixed.as_str()) else {
                        panic!("not drawn: {place}");
                    };
                    if door == part_way && !shut.contains(*fixed) {
                        drawn_to_moving_door += 1;
                    }
                    assert!(pair.worst_m <= pair.nominal_m + SLACK_M, "{place}");
                    let expected = apart(moving, fixed);
                    assert!(
                        (expected.unwrap_or(0.0) - pair.nominal_m).abs() < 0.05e-3 + SLACK_M,
                        "{place}: {expected:?}"
                    );
                    let Some((on_moving, on_fixed)) = pair.points_m else {
                        assert!(pair.nominal_m <= 0.0, "{place}");
                        continue;
                    };
                    let between = (on_fixed - on_moving).length();
                    assert!(
                        (between - pair.nominal_m).abs() < 0.05e-3 + SLACK_M,
                        "{place}"
                    );
                    let way = (on_fixed - on_moving) / between;
                    assert!(
                        moving.support(way).dot(way) - on_moving.dot(way) < 0.1e-3,
                        "{place}"
                    );
                    assert!(
                        on_fixed.dot(way) - fixed.support(-way).dot(way) < 0.1e-3,
                        "{place}"
                    );
                }
            }
        }
    }
    assert!(drawn_to_moving_door > 20, "{drawn_to_moving_door}");
}

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use super::spots::{Spot, doors, spots, travel, worse};
use super::*;
use crate::bayfile::{self, presets::EmbeddedOnly};
use crate::clearance::{DoorState, HereState, LockState};

fn scenes() -> Vec<(String, bayfile::Read)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut all: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        .collect();
    all.sort();
    all.into_iter()
        .map(|path| {
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            let read = bayfile::read(&name, &fs::read(&path).unwrap(), &EmbeddedOnly);
            (name, read.unwrap())
        })
        .collect()
}

/// The spot that is told at a travel: a lock's own, else the stretch that holds it.
fn told(all: &[Spot], travel_m: f64) -> &Spot {
    let holds = |spot: &&Spot| spot.from_m <= travel_m && travel_m <= spot.to_m;
    let mut here = all.iter().filter(holds);
    here.clone()
        .find(|spot| spot.lock.is_some())
        .or_else(|| here.next())
        .unwrap()
}

#[test]
fn nothing_beside_the_raise_is_kinder_than_the_study() {
    let (mut good, mut met) = (0, 0);
    for (name, read) in scenes() {
        let bay = &read.bay;
        let (study, mut probe) = Probe::with_study(bay).unwrap();
        let said = Sayings::of(bay, &study);
        let top_m = bay.lift.travel.m();
        for (door, _) in doors(bay, &study) {
            let all = spots(bay, &study, &said, &mut probe, door);
            for spot in all.iter().filter(|spot| spot.lock.is_some()) {
                let says = &spot.says;
                let is_barred = says.contains("NOT TO BE USED: nobody goes under here.");
                assert_ne!(spot.is_good, is_barred, "{name} {door:?}: {says}");
                assert_eq!(
                    spot.is_good,
                    says.contains("under the body"),
                    "{name}: {says}"
                );
                if study.highest_safe_lock.is_none() {
                    assert!(says.contains("o lock is called safe"), "{name}: {says}");
                }
            }
            for pair in all.windows(2) {
                assert!(
                    (pair[0].to_m - pair[1].from_m).abs() < 1e-12,
                    "{name}: no gap"
                );
            }
            assert!(
                (all.last().unwrap().to_m - top_m).abs() < 1e-12,
                "{name}: to the end"
            );
            let locks: Vec<f64> = study.locks.iter().map(|lock| lock.travel_m).collect();
            let spread = (0..=400).map(|step| top_m * f64::from(step) / 400.0);
            for travel_m in locks.iter().copied().chain(spread) {
                let spot = told(&all, travel_m);
                let here = probe.at(travel(door), travel_m).state;
                let allowed: &[&str] = match here {
                    HereState::Strikes => &["strikes"],
                    HereState::NotShown => &["not decided", "strikes"],
                    HereState::Tight | HereState::Barred => {
                        &["tight", "barred", "not decided", "strikes"]
                    }
                    _ => &[],
                };
                met += usize::from(!allowed.is_empty() && spot.lock.is_none());
                assert!(
                    allowed.is_empty() || allowed.contains(&spot.word),
                    "{name}, door {door:?} at {travel_m}: {here:?} is called {}",
                    spot.word
                );
            }
            let found = match door {
                DoorState::Open => &study.doors.open,
                DoorState::Shut => &study.doors.shut,
                DoorState::Running => &study.doors.running,
            };
            let of_locks: Vec<&Spot> = all.iter().filter(|spot| spot.lock.is_some()).collect();
            assert_eq!(of_locks.len(), study.locks.len());
            for (index, spot) in of_locks.into_iter().enumerate() {
                assert_eq!(spot.lock, Some(index + 1));
                let is_safe = study.highest_safe_lock.is_some_and(|safe| index < safe);
                let may = is_safe && found.locks[index] == LockState::Clear;
                assert!(!spot.is_good || may, "{name}: {spot:?}");
                assert_eq!(spot.is_good, spot.word == "clear");
                good += usize::from(spot.is_good);
            }
        }
    }
    assert!(good > 100, "the test sees good ones too: {good}");
    assert!(met > 100, "and what is met between locks: {met}");
}

#[test]
fn only_a_lock_is_ever_called_clear() {
    for (name, read) in scenes() {
        let bay = &read.bay;
        let (study, mut probe) = Probe::with_study(bay).unwrap();
        let said = Sayings::of(bay, &study);
        let touch_m = study
            .phases
            .touch_m
            .into_iter()
            .fold(f64::INFINITY, f64::min);
        for (door, _) in doors(bay, &study) {
            let all = spots(bay, &study, &said, &mut probe, door);
            for spot in all.iter().filter(|spot| spot.lock.is_none()) {
                let is_clear = spot.word == "clear" || spot.colour == palette::CLEAR;
                assert!(!is_clear && !spot.is_good, "{name}: {spot:?}");
                let is_raised = spot.says.contains("hangs on the hydraulics");
                assert!(!is_raised || spot.from_m >= touch_m, "{name}: {spot:?}");
            }
            // Below the pads the vehicle stands on its tyres, and that is said.
            let low = told(&all, touch_m * 0.5);
            assert!(
                low.lock.is_some() || low.says.contains("on its tyres"),
                "{low:?}"
            );
        }
    }
}

#[test]
fn the_running_door_and_the_climb_past_a_lock_are_told() {
    let (_, read) = scenes()
        .into_iter()
        .find(|(name, _)| name == "tall-pickup.ron")
        .unwrap();
    let bay = &read.bay;
    let (study, mut probe) = Probe::with_study(bay).unwrap();
    let said = Sayings::of(bay, &study);
    let states = doors(bay, &study);
    assert!(states.iter().any(|(state, _)| *state == DoorState::Running));
    for (door, _) in states {
        let all = spots(bay, &study, &said, &mut probe, door);
        for (lock, spot) in study
            .locks
            .iter()
            .zip(all.iter().filter(|s| s.lock.is_some()))
        {
            let near = !probe.at(travel(door), lock.travel_m).pairs.is_empty();
            let is_told = ["Least room", "overlap", "touch, or may", "comes too near"]
                .iter()
                .any(|words| spot.says.contains(words));
            assert!(is_told || !near || lock.near.is_none(), "{spot:?}");
            let past = told(&all, lock.travel_m + 0.001);
            let words = format!("climbs past lock {}", lock.lock);
            assert!(past.says.contains(&words), "{past:?}");
        }
    }
}

#[test]
fn the_worse_of_two_is_the_same_both_ways_round() {
    let all = [
        LockState::NotLifting,
        LockState::NoRelease,
        LockState::NotShown,
        LockState::Strikes,
        LockState::Barred,
        LockState::Tight,
        LockState::Clear,
    ];
    for a in all {
        for b in all {
            assert_eq!(worse(a, b), worse(b, a));
            assert_eq!(
                worse(a, b) == LockState::Clear,
                a == b && b == LockState::Clear
            );
        }
    }
}

#[test]
fn every_scene_has_a_page_with_all_of_it() {
    for (name, read) in scenes() {
        let bay = &read.bay;
        let (study, mut probe) = Probe::with_study(bay).unwrap();
        let sources: Vec<(String, String)> = read
            .sources
            .iter()
            .map(|source| (source.name.clone(), source.text.clone()))
            .collect();
        let order = PageOrder {
            report: Report {
                bay,
                study: &study,
                warnings: &[],
                needs: &[],
                fingerprint: "0123456789abcdef",
                day: None,
            },
            day: ForDay::settled("2026-05-14".parse().unwrap()),
            sources: &sources,
        };
        let start = Instant::now();
        let text = page(&order, &mut probe).unwrap();
        let took = start.elapsed();
        if cfg!(not(debug_assertions)) {
            assert!(took < Duration::from_secs(2), "{name}: {took:?}");
        }
        for part in ["input 0123456789abcdef", env!("CARGO_PKG_VERSION")] {
            assert!(text.contains(part), "{name}");
        }
        // Every sentence and figure of the report stands on it.
        for block in blocks(&order.report) {
            let words: Vec<String> = match block {
                Block::Heading(text) | Block::Paragraph(text, _) | Block::Item(text) => vec![text],
                Block::Entry(label, text) => vec![label, text],
                Block::Table { head, rows } => {
                    let cells = rows.into_iter().flatten().map(|(text, _)| text);
                    head.into_iter().chain(cells).collect()
                }
            };
            for word in words {
                assert!(text.contains(&escaped(&word)), "{name}: {word}");
            }
        }
        // One document: no name is given twice, nothing leads out of it.
        let mut ids: Vec<&str> = text
            .split(" id=\"")
            .skip(1)
            .filter_map(|rest| rest.split('"').next())
            .collect();
        let all = ids.len();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), all, "{name}");
        let markup = text.split("<script").next().unwrap();
        for out in ["src=", "url(", "@import", "style=\"", " onload"] {
            assert!(!markup.contains(out), "{name}: {out}");
        }
    }
}

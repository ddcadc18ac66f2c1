use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use super::spots::{doors, spots, worse};
use super::*;
use crate::bayfile::{self, presets::EmbeddedOnly};
use crate::clearance::{DoorState, HereState, LockState};
use crate::solids::DoorTravel;

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

#[test]
fn nothing_beside_the_raise_is_kinder_than_the_study() {
    let mut good = 0;
    for (name, read) in scenes() {
        let bay = &read.bay;
        let (study, mut probe) = Probe::with_study(bay).unwrap();
        let said = Sayings::of(bay, &study);
        let top_m = study.locks.last().unwrap().travel_m;
        for (door, _) in doors(bay, &study) {
            let all = spots(bay, &study, &said, &mut probe, door);
            assert_eq!(all.len(), 1 + 2 * study.locks.len(), "{name}");
            for pair in all.windows(2) {
                assert!(
                    (pair[0].to_m - pair[1].from_m).abs() < 1e-12,
                    "{name}: no gap"
                );
            }
            let travel = match door {
                DoorState::Open => DoorTravel::Open,
                _ => DoorTravel::Shut,
            };
            let locks = study.locks.iter().map(|lock| lock.travel_m);
            let spread = (0..=400).map(|step| top_m * f64::from(step) / 400.0);
            for travel_m in locks.chain(spread) {
                let spot = all
                    .iter()
                    .find(|spot| spot.from_m <= travel_m && travel_m <= spot.to_m)
                    .unwrap();
                let here = probe.at(travel, travel_m).state;
                let allowed: &[&str] = match here {
                    HereState::Strikes => &["strikes"],
                    HereState::NotShown => &["not decided", "strikes"],
                    HereState::Tight | HereState::Barred => {
                        &["tight", "barred", "not decided", "strikes"]
                    }
                    _ => &[],
                };
                assert!(
                    allowed.is_empty() || allowed.contains(&spot.word),
                    "{name}, door {door:?} at {travel_m}: {here:?} is called {}",
                    spot.word
                );
            }
            for (index, lock) in study.locks.iter().enumerate() {
                let found = match door {
                    DoorState::Open => study.doors.open.locks[index],
                    _ => study.doors.shut.locks[index],
                };
                for spot in &all[2 * index + 1..=2 * index + 2] {
                    let is_safe = study
                        .highest_safe_lock
                        .is_some_and(|safe| lock.lock <= safe);
                    let may = is_safe && found == LockState::Clear;
                    assert!(!spot.is_good || may, "{name}: {spot:?}");
                    assert_eq!(spot.is_good, spot.word == "clear");
                    good += usize::from(spot.is_good);
                }
                // Both neighbours are minded.
                let between = &all[2 * index + 1];
                if all[2 * index + 2].word == "strikes" {
                    assert_eq!(between.word, "strikes", "{name}");
                }
            }
        }
    }
    assert!(good > 100, "the test sees good ones too: {good}");
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
            },
            on: "2026-05-14".parse().unwrap(),
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

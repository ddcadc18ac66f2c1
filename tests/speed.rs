//! How long does a person wait?
//!
//! In a test binary of its own: cargo runs those one after another, so that no other test takes
//! the processor meanwhile. Measured in the release profile only; a debug build says nothing of it.
#![cfg(not(debug_assertions))]
#![allow(clippy::unwrap_used)] // a failed unwrap here is a failed test

use std::hint::black_box;
use std::path::Path;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use bayrise::bay::Bay;
use bayrise::bayfile::{self, presets::EmbeddedOnly};
use bayrise::choose::{Asked, bays, studies};
use bayrise::clearance::{Probe, study_on};
use bayrise::solids::DoorTravel;
use bayrise::solids::list::solids;

#[allow(
    clippy::panic,
    dead_code,
    missing_docs,
    reason = "shared with the benchmark; options that can't be read have nothing to measure"
)]
#[path = "../benches/compare/options.rs"]
mod options;

/// As the program has it.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Held while a test measures, so that the tests here don't take the processor from each other.
static MEASURING: Mutex<()> = Mutex::new(());

/// The whole process, from the file to the last line, within the 15 ms that make it feel instant.
/// Judged by the quickest of sixty runs, so that a busy machine does not fail it.
#[test]
fn a_check_answers_within_fifteen_milliseconds() {
    let _alone = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let scene = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/tall-pickup.ron");
    let quickest = (0..60)
        .map(|_| {
            let start = Instant::now();
            let output = std::process::Command::new(env!("CARGO_BIN_EXE_bayrise"))
                .args(["check", scene])
                .output()
                .unwrap();
            assert!(output.status.success());
            start.elapsed()
        })
        .min()
        .unwrap();
    assert!(quickest < Duration::from_millis(15), "{quickest:?}");
}

/// Travels looked at in each scene, evenly from the floor to the top.
const TRAVELS: u32 = 100;

/// What a shown position costs while the carriage or the door is dragged: every solid where it
/// then is, and what the study says there. Within 2 ms, so that it is there in the same frame.
///
/// Of each travel the quicker of three runs is taken, so that a busy machine does not fail it;
/// then the median over the travels. The worst scene and door position counts.
#[test]
fn a_shown_position_is_answered_within_two_milliseconds() {
    let _alone = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut worst = Duration::ZERO;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.extension().is_none_or(|ending| ending != "ron") {
            continue;
        }
        let read = bayfile::read(&name, &std::fs::read(&path).unwrap(), &EmbeddedOnly);
        let bay = read
            .map(|read| read.bay)
            .map_err(|faults| faults.len())
            .unwrap();
        for door in ["shut", "open", "dragged"] {
            let (lists, answers, both) = dragged(&bay, door);
            println!(
                "{name}, door {door}: solids {:?} (worst {:?}), answer {:?} (worst {:?}), both {:?} (worst {:?})",
                lists[lists.len() / 2],
                lists[lists.len() - 1],
                answers[answers.len() / 2],
                answers[answers.len() - 1],
                both[both.len() / 2],
                both[both.len() - 1],
            );
            worst = worst.max(both[both.len() / 2]);
        }
    }
    assert!(worst > Duration::ZERO, "no scene was measured");
    assert!(worst < Duration::from_millis(2), "{worst:?}");
}

/// The time for the solids, for the answer, and for both, at each travel, least first.
fn dragged(bay: &Bay, door: &str) -> (Vec<Duration>, Vec<Duration>, Vec<Duration>) {
    let (_, mut probe) = Probe::with_study(bay).unwrap();
    let top = bay.lift.travel.m();
    let (mut lists, mut answers, mut both) = (Vec::new(), Vec::new(), Vec::new());
    for step in 0..=TRAVELS {
        let share = f64::from(step) / f64::from(TRAVELS);
        let mut quickest = (Duration::MAX, Duration::MAX, Duration::MAX);
        for run in 0..3_u32 {
            let door = match door {
                "shut" => DoorTravel::Shut,
                "open" => DoorTravel::Open,
                // A little elsewhere every time: nothing can be kept from the last.
                _ => DoorTravel::At(0.01 + 0.97 * share + 0.003 * f64::from(run)),
            };
            let start = Instant::now();
            black_box(solids(bay, door, share * top).unwrap());
            let list = start.elapsed();
            black_box(probe.at(door, share * top));
            let all = start.elapsed();
            quickest.0 = quickest.0.min(list);
            quickest.1 = quickest.1.min(all.saturating_sub(list));
            quickest.2 = quickest.2.min(all);
        }
        lists.push(quickest.0);
        answers.push(quickest.1);
        both.push(quickest.2);
    }
    for times in [&mut lists, &mut answers, &mut both] {
        times.sort_unstable();
    }
    (lists, answers, both)
}

/// The quickest of a few runs.
fn quickest(mut run: impl FnMut() -> Duration) -> Duration {
    (0..8).map(|_| run()).min().unwrap()
}

/// A comparison is worth more than `check` in a loop: it asks less of each bay, makes lift and room
/// once, and takes every core. Ten lifts by twenty vehicles; each way judged by the quickest of a
/// few runs, and by the ratio, so that neither a busy nor a slow machine fails it.
#[test]
fn a_comparison_is_four_times_as_quick_as_single_studies() {
    if std::thread::available_parallelism().unwrap().get() < 2 {
        return;
    }
    let _alone = MEASURING.lock().unwrap_or_else(PoisonError::into_inner);
    let (options, base) = options::ten_by_twenty();
    let single: Vec<Bay> = bays(&options, &base)
        .into_iter()
        .map(|(_, read)| read.unwrap().bay)
        .collect();
    assert_eq!(single.len(), 200);
    let together = quickest(|| {
        let made = bays(&options, &base);
        let start = Instant::now();
        let cells = studies(&options, made, Asked::default(), &|| ());
        let took = start.elapsed();
        assert_eq!(cells.len(), 200);
        took
    });
    let in_a_loop = quickest(|| {
        let start = Instant::now();
        for bay in &single {
            black_box(study_on(bay, None).unwrap());
        }
        start.elapsed()
    });
    assert!(together * 4 < in_a_loop, "{together:?} of {in_a_loop:?}");
}

//! How long a comparison takes, and how that stands to running `check` in a loop.
//!
//! `cargo bench --no-default-features --bench compare`
#![allow(
    clippy::panic,
    missing_docs,
    reason = "a benchmark that can't load its options has nothing to measure"
)]

mod options;

use bayrise::choose::{Asked, bays, studies};
use bayrise::clearance::{study_on, verdict_on};
use divan::Bencher;

use self::options::ten_by_twenty;

/// As the program has it.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() {
    divan::main();
}

/// 10 lifts by 20 vehicles on all cores, after loading.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn matrix_ten_by_twenty(bencher: Bencher<'_, '_>) {
    let (options, base) = ten_by_twenty();
    bencher
        .with_inputs(|| bays(&options, &base))
        // The cells are given back, so that freeing them is not counted: the program goes on to show them.
        .bench_local_values(|made| studies(&options, made, Asked::default(), &|| ()));
}

/// The same studies one after another, as `check` run in a loop makes them, without starting the
/// program or reading a file.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn studies_in_a_loop(bencher: Bencher<'_, '_>) {
    let (options, base) = ten_by_twenty();
    let bays: Vec<_> = bays(&options, &base)
        .into_iter()
        .filter_map(|(_, read)| Some(read.ok()?.bay))
        .collect();
    bencher.bench_local(|| {
        let safe = bays.iter().filter_map(|bay| study_on(bay, None).ok());
        safe.filter(|study| study.highest_safe_lock.is_some())
            .count()
    });
}

/// Reading the 200 bays.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn loading_ten_by_twenty(bencher: Bencher<'_, '_>) {
    let (options, base) = ten_by_twenty();
    bencher.bench_local(|| bays(&options, &base).len());
}

/// The answers the other way round for one cell.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn inverse_of_one_cell(bencher: Bencher<'_, '_>) {
    let (options, base) = ten_by_twenty();
    let Some(bay) = bays(&options, &base)
        .into_iter()
        .find_map(|(_, read)| Some(read.ok()?.bay))
    else {
        panic!("no bay");
    };
    let Ok(verdict) = verdict_on(&bay, None) else {
        panic!("not studied");
    };
    bencher.bench_local(|| bayrise::choose::inverse::inverse(&bay, &verdict));
}

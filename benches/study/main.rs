//! How long the study takes: the shipped scenes, and a dense bay made for the purpose.
//!
//! `cargo bench --no-default-features --bench study`
#![allow(
    clippy::panic,
    missing_docs,
    reason = "a benchmark that can't load its scene has nothing to measure"
)]

use std::path::Path;

use bayrise::bay::{Bay, Policy};
use bayrise::bayfile;
use bayrise::clearance::body::Body;
use bayrise::clearance::locks::{Together, highest_clear};
use bayrise::clearance::movers::Moving;
use bayrise::clearance::pairs::rule;
use bayrise::clearance::sweep::{Fixed, LockWindows, Workspace};
use bayrise::clearance::{self, prepare::Prepared, uncertainty::Uncertainty};
use bayrise::solids::{DoorTravel, Pose, Role, Solid};
use divan::Bencher;
use glam::{DQuat, DVec3};

mod dense;

/// Counts allocations, so that the table shows that the dense study makes none.
#[global_allocator]
static ALLOCATIONS: divan::AllocProfiler = divan::AllocProfiler::system();

fn main() {
    dense::export_when_asked();
    divan::main();
}

/// One study of the dense bay: one door state, nominal, after preparation.
#[divan::bench(sample_count = 200, sample_size = 20)]
fn dense_bay(bencher: Bencher<'_, '_>) {
    let bay = dense::Dense::new();
    let mut space = Workspace::new();
    bencher.bench_local(|| bay.study(&mut space));
}

/// Three studies of the dense bay with every uncertainty: as many as there are door states.
#[divan::bench(sample_count = 100, sample_size = 5)]
fn dense_bay_three_states_worst_case(bencher: Bencher<'_, '_>) {
    let bay = dense::Dense::new().worst_case();
    let mut space = Workspace::new();
    bencher.bench_local(|| [(); 3].map(|()| bay.study(&mut space)));
}

/// The same without pruning: every pair, at every lock.
#[divan::bench(sample_count = 20, sample_size = 1)]
fn dense_bay_unpruned(bencher: Bencher<'_, '_>) {
    let bay = dense::Dense::new();
    let mut space = Workspace::new();
    bencher.bench_local(|| bay.study_unpruned(&mut space));
}

/// Every door state with every uncertainty, the whole report, of each shipped scene.
#[divan::bench(args = scenes(), sample_count = 20, sample_size = 1)]
fn whole_study(bencher: Bencher<'_, '_>, scene: &str) {
    let bay = load(scene);
    bencher.bench_local(|| clearance::study(&bay).map(|study| study.highest_clear_lock));
}

/// Every door state with every uncertainty, after preparation: the sweeps and the states.
#[divan::bench(args = scenes(), sample_count = 50, sample_size = 1)]
fn door_states(bencher: Bencher<'_, '_>, scene: &str) {
    let bay = load(scene);
    let prepared = match Prepared::new(&bay, Uncertainty::worst(&bay)) {
        Ok(prepared) => prepared,
        Err(error) => panic!("{scene}: {error}"),
    };
    let mut space = Workspace::new();
    bencher.bench_local(|| sweep_all(&bay.policy, &prepared, &mut space));
}

/// Building every solid and body of a bay.
#[divan::bench(args = scenes(), sample_count = 50, sample_size = 1)]
fn preparation(bencher: Bencher<'_, '_>, scene: &str) {
    let bay = load(scene);
    bencher.bench_local(|| Prepared::new(&bay, Uncertainty::worst(&bay)).map(|p| p.locks));
}

/// What is the case at one shown position: every door state in turn, over the whole travel.
#[divan::bench(args = every_scene(), sample_count = 50, sample_size = 10)]
fn shown_position(bencher: Bencher<'_, '_>, scene: &str) {
    let bay = load(scene);
    let mut probe = match clearance::Probe::with_study(&bay) {
        Ok((_, probe)) => probe,
        Err(error) => panic!("{scene}: {error}"),
    };
    let mut shares = (0..).map(|step| f64::from(step % 101) / 100.0);
    let mut doors = [DoorTravel::Shut, DoorTravel::Open, DoorTravel::At(0.5)]
        .into_iter()
        .cycle();
    bencher.bench_local(|| {
        let travel_m = shares.next().unwrap_or(0.0) * bay.lift.travel.m();
        probe.at(doors.next().unwrap_or(DoorTravel::Shut), travel_m)
    });
}

/// The study with its probe: what the probe costs over [`whole_study`].
#[divan::bench(args = every_scene(), sample_count = 20, sample_size = 1)]
fn study_with_probe(bencher: Bencher<'_, '_>, scene: &str) {
    let bay = load(scene);
    bencher.bench_local(|| clearance::Probe::with_study(&bay).map(|(study, _)| study.limit));
}

/// Every solid at one shown position.
#[divan::bench(args = every_scene(), sample_count = 50, sample_size = 10)]
fn list_of_solids(bencher: Bencher<'_, '_>, scene: &str) {
    let bay = load(scene);
    let travel_m = bay.lift.travel.m() * 0.5;
    bencher.bench_local(|| {
        bayrise::solids::list::solids(&bay, DoorTravel::At(0.5), travel_m).map(|list| list.len())
    });
}

fn sweep_all(policy: &Policy, prepared: &Prepared, space: &mut Workspace) -> Vec<Option<usize>> {
    let groups = &prepared.groups;
    let mut swept = Vec::new();
    for set in [&groups.common, &groups.shut, &groups.open, &groups.running] {
        space.sweep(
            &prepared.movers.moving,
            &set.bodies,
            &prepared.locks,
            DVec3::Z,
            &|mover, fixed| rule(mover.role, fixed.role, policy),
        );
        swept.push(space.swept.clone());
    }
    (1..4)
        .map(|door| {
            let both = [&swept[0], &swept[door]];
            let together = Together { swept: &both };
            highest_clear(
                together
                    .states(&prepared.locks, prepared.movers.phases.carry_m, 2.0)
                    .into_iter()
                    .map(|(state, _)| state),
            )
        })
        .collect()
}

fn scenes() -> Vec<&'static str> {
    vec![
        "tall-pickup",
        "coupe-full-rise",
        "camper-under-ties",
        "barred-way-up",
    ]
}

fn every_scene() -> Vec<&'static str> {
    let mut all = scenes();
    all.extend([
        "camper-under-the-bar",
        "light-in-the-way",
        "no-safe-lock",
        "short-columns",
        "tall-columns",
        "thin-slab",
        "anchors-on-paper",
    ]);
    all
}

fn load(scene: &str) -> Bay {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("scenes")
        .join(format!("{scene}.ron"));
    let text = match std::fs::read(&path) {
        Ok(text) => text,
        Err(error) => panic!("{}: {error}", path.display()),
    };
    match bayfile::read(scene, &text, &bayfile::presets::EmbeddedOnly) {
        Ok(read) => read.bay,
        Err(faults) => panic!("{scene}: {} faults", faults.len()),
    }
}

//! Random bays: no lock is called better than it is.
//!
//! Boxes, cylinders and prisms, tilted, standing and climbing, past others with margins of 0 to
//! 100 mm. The slow method walks every pair's whole travel. It steps by the room that is left over
//! the margin, which no move of that length can use up, and by 1 mm where there is none.

use bayrise::clearance::LockState;
use bayrise::clearance::body::Body;
use bayrise::clearance::locks::Together;
use bayrise::clearance::movers::Moving;
use bayrise::clearance::pairs::{Family, Rule};
use bayrise::clearance::sweep::{Fixed, LockWindows, NEAR_M, Workspace};
use bayrise::solids::{Pose, Role, Shape};
use glam::DVec3;

use crate::distance::{Thing, distance};
use crate::rng::Rng;

/// Bays per run.
const BAYS: u64 = 2_200;
/// What a breach must exceed to count against a lock called clear, metres.
const BEYOND_M: f64 = 0.1e-3;
/// The most that the engine may be pessimistic with nothing uncertain, metres.
const PESSIMISM_M: f64 = 2e-3;
/// The slow method's step where no room is left, metres.
const STEP_M: f64 = 1e-3;

struct Mover {
    thing: Thing,
    from: f64,
    to: f64,
    climbs: bool,
}

struct RandomBay {
    moving: Vec<Moving>,
    movers: Vec<Mover>,
    fixed: Vec<Fixed>,
    things: Vec<Thing>,
    locks: LockWindows,
    up: DVec3,
    carry: f64,
    travel: f64,
    margins: Vec<f64>,
}

fn random_shape(rng: &mut Rng, most: f64) -> Shape {
    let size = |rng: &mut Rng| rng.between(0.03, most) * if rng.once_in(4) { 0.2 } else { 1.0 };
    match rng.below(3) {
        0 => Shape::Box {
            half: DVec3::new(size(rng), size(rng), size(rng)) * 0.5,
        },
        1 => Shape::Cylinder {
            radius: size(rng) * 0.5,
            half_height: size(rng) * 0.5,
        },
        _ => {
            let count = 3 + rng.below(5);
            let start = rng.between(0.0, 6.0);
            let (radius, half) = (size(rng) * 0.5, size(rng) * 0.5);
            let taper = rng.between(0.3, 1.0);
            let ring = |scale: f64, z: f64| {
                (0..count).map(move |i| {
                    let angle = start + i as f64 * std::f64::consts::TAU / count as f64;
                    DVec3::new(
                        angle.cos() * radius * scale,
                        angle.sin() * radius * scale,
                        z,
                    )
                })
            };
            Shape::Prism {
                vertices: ring(1.0, -half).chain(ring(taper, half)).collect(),
            }
        }
    }
}

/// A pose upright, tipped a little, or anyhow.
fn random_pose(rng: &mut Rng, low: DVec3, high: DVec3) -> Pose {
    let rotation = match rng.below(3) {
        0 => glam::DQuat::from_rotation_z(rng.between(-3.0, 3.0)),
        1 => rng.turn(0.05),
        _ => rng.turn(3.0),
    };
    Pose::new(rotation, rng.point(low, high))
}

impl RandomBay {
    fn new(rng: &mut Rng) -> Self {
        let travel = rng.between(1.0, 2.0);
        let up = if rng.once_in(3) {
            DVec3::new(rng.between(-0.05, 0.05), rng.between(-0.05, 0.05), 1.0).normalize()
        } else {
            DVec3::Z
        };
        let mut bay = Self {
            moving: Vec::new(),
            movers: Vec::new(),
            fixed: Vec::new(),
            things: Vec::new(),
            locks: LockWindows {
                windows: Vec::new(),
            },
            up,
            carry: rng.between(0.0, 0.3),
            travel,
            margins: Vec::new(),
        };
        for solid in 0..2 + rng.below(4) {
            let shape = random_shape(rng, 1.2);
            let low = DVec3::new(-1.0, -1.0, 0.2);
            let pose = random_pose(rng, low, DVec3::new(1.0, 1.0, 1.0));
            let lifts = rng.between(0.0, 0.5);
            match rng.below(3) {
                // A part of the lift.
                0 => bay.mover(rng, solid, &shape, &[pose], (0.0, travel), true),
                // A part that stands, then climbs in another attitude.
                1 => {
                    bay.mover(rng, solid, &shape, &[pose], (0.0, lifts), false);
                    let shift = rng.point(DVec3::splat(-0.05), DVec3::splat(0.02));
                    let tipped = Pose::new(
                        rng.turn(0.05) * pose.rotation,
                        pose.translation + shift - up * lifts,
                    );
                    bay.mover(rng, solid, &shape, &[tipped], (lifts, travel), true);
                }
                // A part that rolls either way.
                _ => {
                    let rolled = Pose::new(rng.turn(0.05) * pose.rotation, pose.translation);
                    bay.mover(rng, solid, &shape, &[pose, rolled], (0.0, travel), true);
                }
            }
        }
        for _ in 0..2 + rng.below(5) {
            let shape = random_shape(rng, 1.5);
            let low = DVec3::new(-1.8, -1.8, 0.0);
            let pose = random_pose(rng, low, DVec3::new(1.8, 1.8, 3.6));
            bay.fixture(rng, &shape, pose);
        }
        let (mut at, over) = (rng.between(0.0, 0.3), rng.between(0.0, 0.15));
        for _ in 0..3 + rng.below(6) {
            bay.locks.windows.push([at, at + over]);
            at += rng.between(0.02, 0.4);
        }
        let pairs = bay.movers.len() * bay.fixed.len();
        bay.margins = (0..pairs)
            .map(|_| {
                if rng.once_in(5) {
                    0.0
                } else {
                    rng.between(0.0, 0.1)
                }
            })
            .collect();
        bay
    }

    fn mover(
        &mut self,
        rng: &mut Rng,
        solid: usize,
        shape: &Shape,
        poses: &[Pose],
        (from, to): (f64, f64),
        climbs: bool,
    ) {
        let spread = random_spread(rng);
        self.moving.push(Moving {
            body: Body::of(shape, poses, spread),
            solid,
            // The role carries the phase's index to the rule.
            role: Role::Obstacle(self.movers.len()),
            from,
            to,
            climbs,
            phase: self.movers.len(),
        });
        self.movers.push(Mover {
            thing: Thing::new(shape, poses, spread),
            from,
            to,
            climbs,
        });
    }

    fn fixture(&mut self, rng: &mut Rng, shape: &Shape, pose: Pose) {
        let spread = random_spread(rng);
        self.fixed.push(Fixed {
            body: Body::of(shape, &[pose], spread),
            solid: self.fixed.len(),
            role: Role::Obstacle(self.fixed.len()),
        });
        self.things.push(Thing::new(shape, &[pose], spread));
    }

    fn margin(&self, mover: usize, thing: usize) -> f64 {
        self.margins[mover * self.fixed.len() + thing]
    }

    fn rule(&self, moving: &Moving, fixed: &Fixed) -> Option<Rule> {
        let Role::Obstacle(mover) = moving.role else {
            return None;
        };
        Some(Rule {
            margin_m: self.margin(mover, fixed.solid),
            family: Family::Over,
        })
    }
}

fn random_spread(rng: &mut Rng) -> DVec3 {
    if rng.once_in(3) {
        rng.point(DVec3::ZERO, DVec3::splat(0.02))
    } else {
        DVec3::ZERO
    }
}

/// One pair, seen slowly.
struct SlowPair<'a> {
    mover: &'a Mover,
    fixed: &'a Thing,
    up: DVec3,
    margin: f64,
    mover_bounds: (DVec3, DVec3),
    fixed_bounds: (DVec3, DVec3),
}

impl SlowPair<'_> {
    fn shift(&self, travel: f64) -> DVec3 {
        if self.mover.climbs {
            self.up * travel
        } else {
            DVec3::ZERO
        }
    }

    /// How far apart the boxes about the two are: never more than the distance.
    fn boxes(&self, travel: f64) -> f64 {
        let shift = self.shift(travel);
        (self.mover_bounds.0 + shift - self.fixed_bounds.1)
            .max(self.fixed_bounds.0 - self.mover_bounds.1 - shift)
            .max(DVec3::ZERO)
            .length()
    }

    fn distance(&self, travel: f64) -> f64 {
        let found = distance(&self.mover.thing, self.shift(travel), self.fixed);
        assert!(
            found.upper - found.lower < 1e-6,
            "the slow method is not sure: {found:?}"
        );
        found.upper
    }

    /// The first travel at which the distance is found below `level`, by steps that cannot pass
    /// over a place where it is by more than half a step of [`STEP_M`].
    fn first_under(&self, level: f64) -> Option<f64> {
        let mut travel = self.mover.from;
        loop {
            let mut room = self.boxes(travel) - level;
            if room < 0.05 {
                room = self.distance(travel) - level;
            }
            if room < 0.0 {
                return Some(travel);
            }
            if !self.mover.climbs || travel >= self.mover.to {
                return None;
            }
            travel = (travel + room.max(STEP_M)).min(self.mover.to);
        }
    }

    /// The least distance in `[from, to]`: a grid, then ever finer about its least place. None
    /// where the part is in another phase, or where nothing under `level` can be found: no move
    /// changes a distance by more than its own length.
    fn least(&self, from: f64, to: f64, level: f64) -> Option<f64> {
        let (mut from, mut to) = (from.max(self.mover.from), to.min(self.mover.to));
        if from > to {
            return None;
        }
        let (middle, half) = ((from + to) * 0.5, (to - from) * 0.5);
        if self.boxes(middle) - half > level {
            return None;
        }
        let at_middle = self.distance(middle);
        if !self.mover.climbs || half == 0.0 {
            return Some(at_middle);
        }
        if at_middle - half > level {
            return None;
        }
        let (start, end) = (from, to);
        let mut least = f64::INFINITY;
        loop {
            let step = (to - from) / 8.0;
            let mut at = from;
            for i in 0..=8 {
                let travel = from + step * f64::from(i);
                let found = self.distance(travel);
                if found < least {
                    (least, at) = (found, travel);
                }
            }
            if step < 1e-5 || least <= 0.0 {
                return Some(least);
            }
            (from, to) = ((at - step).max(start), (at + step).min(end));
        }
    }
}

/// What a run found, for printing and for showing that it looked at enough.
#[derive(Default)]
struct Tally {
    states: [usize; 7],
    breach_pessimism: Vec<f64>,
    near_pessimism: Vec<f64>,
}

fn check(seed: u64, tally: &mut Tally) {
    let mut rng = Rng::new(seed);
    let bay = RandomBay::new(&mut rng);
    let mut space = Workspace::new();
    space.sweep(&bay.moving, &bay.fixed, &bay.locks, bay.up, &|m, f| {
        bay.rule(m, f)
    });
    let swept = space.swept.clone();
    let together = Together { swept: &[&swept] };
    let states = together.states(&bay.locks, bay.carry, bay.travel);
    let pairs: Vec<SlowPair<'_>> = bay
        .movers
        .iter()
        .enumerate()
        .flat_map(|(i, mover)| {
            bay.things
                .iter()
                .enumerate()
                .map(move |(j, thing)| (i, mover, j, thing))
        })
        .map(|(i, mover, j, fixed)| SlowPair {
            mover,
            fixed,
            up: bay.up,
            margin: bay.margin(i, j),
            mover_bounds: mover.thing.bounds(),
            fixed_bounds: fixed.bounds(),
        })
        .collect();
    // Where a margin is short by more than what counts, seen slowly.
    let breach = pairs
        .iter()
        .filter_map(|pair| pair.first_under(pair.margin - BEYOND_M))
        .fold(f64::INFINITY, f64::min);
    // Certified before the first breach, and short at it.
    if let Some(first) = swept.first {
        let unsure = swept.undecided.is_some_and(|pair| pair.travel_m <= breach);
        assert!(
            breach >= first.travel_m || unsure,
            "seed {seed}: short at {breach} already, not at {first:?}"
        );
        let pair = &pairs[first.moving * bay.fixed.len() + first.fixed];
        let over = pair.distance(first.travel_m) - pair.margin;
        // The search closes in from the safe side, so it stops before the margin is short, unless
        // it was short where the phase began.
        assert!(
            over > -1e-6 || first.travel_m <= pair.mover.from,
            "seed {seed}: {over} already lost at the first breach"
        );
        assert!(
            over < PESSIMISM_M,
            "seed {seed}: {over} to spare at the first breach"
        );
        tally.breach_pessimism.push(over.max(0.0));
    }
    for (lock, &[set, top]) in bay.locks.windows.iter().enumerate() {
        let state = states[lock].0;
        tally.states[state as usize] += 1;
        // The nearest pair at the lock, and whether any touches.
        let (mut spare, mut least) = (f64::INFINITY, f64::INFINITY);
        for pair in &pairs {
            if let Some(found) = pair.least(set, top, (spare + pair.margin).max(0.0)) {
                spare = spare.min(found - pair.margin);
                least = least.min(found);
            }
        }
        let touches = least <= 0.0;
        match state {
            LockState::NotLifting => assert!(set < bay.carry, "seed {seed}"),
            LockState::NoRelease => assert!(top > bay.travel, "seed {seed}"),
            LockState::NotShown => {
                assert!(
                    swept.undecided.is_some_and(|pair| pair.travel_m <= top),
                    "seed {seed}"
                );
            }
            LockState::Clear => {
                assert!(set >= bay.carry && top <= bay.travel + 1e-9, "seed {seed}");
                assert!(
                    breach > top,
                    "seed {seed}: lock {lock} is short at {breach}"
                );
            }
            LockState::Tight => {
                assert!(
                    !touches,
                    "seed {seed}: lock {lock} is tight, yet it touches"
                );
                assert!(
                    breach >= set,
                    "seed {seed}: lock {lock} is barred at {breach}"
                );
            }
            LockState::Barred => {
                assert!(
                    !touches,
                    "seed {seed}: lock {lock} is barred, yet it touches"
                );
            }
            LockState::Strikes => {
                assert!(
                    least < PESSIMISM_M,
                    "seed {seed}: lock {lock} has {least} to spare"
                );
            }
        }
        match swept.near[lock] {
            None => assert!(
                spare > NEAR_M - BEYOND_M,
                "seed {seed}: lock {lock}, {spare}"
            ),
            Some(near) => {
                let found = near.distance_m - near.margin_m;
                if spare < NEAR_M {
                    assert!(
                        found <= spare + BEYOND_M,
                        "seed {seed}: lock {lock}: {found} is more than {spare}"
                    );
                    let own = &pairs[near.moving * bay.fixed.len() + near.fixed];
                    assert!((own.margin - near.margin_m).abs() < 1e-12, "seed {seed}");
                    tally.near_pessimism.push((spare - found).max(0.0));
                }
                assert!(
                    found >= spare - PESSIMISM_M,
                    "seed {seed}: lock {lock}: {found} is far less than {spare}"
                );
            }
        }
    }
}

fn distribution(name: &str, values: &mut [f64]) {
    values.sort_by(f64::total_cmp);
    let at = |share: f64| values[((values.len() - 1) as f64 * share) as usize] * 1e3;
    println!(
        "{name}: {} values, median {:.6} mm, 99 % {:.6} mm, most {:.6} mm",
        values.len(),
        at(0.5),
        at(0.99),
        at(1.0)
    );
}

#[test]
fn no_lock_of_a_random_bay_is_called_better_than_it_is() {
    let mut tally = Tally::default();
    for bay in 0..BAYS {
        check(0x00ba_1005_e000 + bay, &mut tally);
    }
    println!("states (in the order of LockState): {:?}", tally.states);
    distribution("pessimism of the first breach", &mut tally.breach_pessimism);
    distribution("pessimism of the nearest pair", &mut tally.near_pessimism);
    for state in [
        LockState::NotLifting,
        LockState::NoRelease,
        LockState::Strikes,
        LockState::Barred,
        LockState::Tight,
        LockState::Clear,
    ] {
        assert!(
            tally.states[state as usize] > 40,
            "too few locks are {}: {:?}",
            state.words(),
            tally.states
        );
    }
}

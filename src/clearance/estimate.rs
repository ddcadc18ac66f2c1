//! How often each lock is clear, by sampling: beside the worst case, never in place of it.
//!
//! Each sample draws one true world inside the uncertainty (evenly, each error on its own): where
//! the vehicle is parked, which carriage leads and by how much, how high each pad and lift point
//! stands, and how far each solid stands off for its measured dimensions. The world is then studied with nothing uncertain. The worst case asks whether anything
//! *can* go wrong; this asks how often it does.

use glam::DVec3;
use rand_pcg::Pcg64Mcg;
use rand_pcg::rand_core::{Rng, SeedableRng};

use super::findings::{DoorState, LockState};
use super::fixed_off::Off;
use super::locks::Together;
use super::movers::{MoverError, movers};
use super::pairs::rule;
use super::prepare::{GroupSolids, Prepared};
use super::study::counted_states;
use super::sweep::{Fixed, Swept, Workspace};
use super::uncertainty::{Uncertainty, corners_on};
use crate::bay::{Aim, Bay, Side};
use crate::solids::{ParkingError, Role};
use crate::units::{Angle, Length};

/// Quantile of the normal distribution for a 95 % interval.
const Z_95: f64 = 1.959_963_984_540_054;

/// Most samples in one estimate.
pub const MOST_SAMPLES: usize = 100_000;

/// A sampled estimate.
#[derive(Debug, Clone, PartialEq)]
pub struct Estimate {
    /// How many worlds were drawn.
    pub samples: usize,
    /// Seed of the generator: the same seed draws the same worlds.
    pub seed: u64,
    /// For each lock, lowest first.
    pub locks: Vec<LockShare>,
}

/// How often a lock was clear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LockShare {
    /// In how many samples the lock was clear in every door state that counts.
    pub clear: usize,
    /// Lower end of the 95 % interval of the share (Wilson score interval).
    pub low: f64,
    /// Upper end; below 1 always, since no number of samples shows a certainty.
    pub high: f64,
}

impl LockShare {
    /// The Wilson score interval for `clear` of `samples` (E. B. Wilson, "Probable inference, the
    /// law of succession, and statistical inference", J. Am. Stat. Assoc. 22, 1927; from memory).
    fn new(clear: usize, samples: usize) -> Self {
        let n = samples as f64;
        let share = clear as f64 / n;
        let z2 = Z_95 * Z_95;
        let middle = (share + z2 / (2.0 * n)) / (1.0 + z2 / n);
        let half = Z_95 / (1.0 + z2 / n) * (share * (1.0 - share) / n + z2 / (4.0 * n * n)).sqrt();
        Self {
            clear,
            low: (middle - half).clamp(0.0, 1.0),
            high: (middle + half).clamp(0.0, 1.0 - f64::EPSILON),
        }
    }
}

/// Draws `samples` worlds (held to 1 to [`MOST_SAMPLES`]) and counts in how many each lock is
/// clear. `done` is called after each.
///
/// # Errors
/// When the vehicle can't be set on the pads (see [`MoverError`]).
pub fn estimate(
    bay: &Bay,
    samples: usize,
    seed: u64,
    done: &mut dyn FnMut(),
) -> Result<Estimate, MoverError> {
    let samples = samples.clamp(1, MOST_SAMPLES);
    let uncertainty = Uncertainty::worst(bay);
    let nominal = Prepared::from_solids(bay, GroupSolids::new(bay), Uncertainty::NONE)?;
    let mut generator = Pcg64Mcg::seed_from_u64(seed);
    let mut space = Workspace::new();
    let mut clear = vec![0_usize; bay.lift.locks.len()];
    for _ in 0..samples {
        let mut draw = |half: f64| {
            // 53 random bits, evenly over [-half, half).
            let unit = (generator.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
            (unit * 2.0 - 1.0) * half
        };
        let world = drawn_bay(bay, &uncertainty, &mut draw);
        let mut prepared = nominal.clone();
        prepared.movers = movers(&world, &Uncertainty::NONE)?;
        shift_all(bay, &mut prepared, &uncertainty, &mut draw);
        for (count, is_clear) in clear
            .iter_mut()
            .zip(clear_locks(bay, &prepared, &mut space))
        {
            *count += usize::from(is_clear);
        }
        done();
    }
    Ok(Estimate {
        samples,
        seed,
        locks: clear
            .into_iter()
            .map(|count| LockShare::new(count, samples))
            .collect(),
    })
}

/// The bay with the vehicle parked off its wanted place.
fn parked_at(bay: &Bay, error: ParkingError) -> Bay {
    let mut world = bay.clone();
    world.parking.across += Length::metres(error.across_m);
    world.parking.yaw += Angle::radians(error.yaw_rad);
    let along = Length::metres(error.along_m);
    world.parking.aim = match world.parking.aim {
        Aim::CentreOfGravity(offset) => Aim::CentreOfGravity(offset + along),
        Aim::LiftPoints(offset) => Aim::LiftPoints(offset + along),
    };
    world
}

/// The bay with its parking place, its supports and its carriages as they may truly be.
fn drawn_bay(bay: &Bay, uncertainty: &Uncertainty, draw: &mut impl FnMut(f64) -> f64) -> Bay {
    let mut world = parked_at(
        bay,
        ParkingError {
            across_m: draw(uncertainty.parking.across_m),
            along_m: draw(uncertainty.parking.along_m),
            yaw_rad: draw(uncertainty.parking.yaw_rad),
        },
    );
    let leads = draw(uncertainty.mismatch_m);
    let side = if leads < 0.0 { Side::Left } else { Side::Right };
    for (raise, share) in world.parking.pad_raise.iter_mut().zip(corners_on(side)) {
        *raise += Length::metres(share * leads.abs() + draw(uncertainty.lift_m));
    }
    for point in &mut world.vehicle.lift_points {
        point.height += Length::metres(draw(uncertainty.vehicle_m));
    }
    world
}

/// Shifts every body by what its measures may be off.
fn shift_all(
    bay: &Bay,
    prepared: &mut Prepared,
    uncertainty: &Uncertainty,
    draw: &mut impl FnMut(f64) -> f64,
) {
    let mut shift = |half: DVec3| DVec3::new(draw(half.x), draw(half.y), draw(half.z));
    let shifts: Vec<DVec3> = prepared
        .movers
        .solids
        .iter()
        .map(|solid| {
            shift(match solid.role {
                Role::Carriage(_) | Role::Arm(_) | Role::Pad(_) => uncertainty.lift_spread(),
                _ => uncertainty.standing_vehicle_spread(),
            })
        })
        .collect();
    for mover in &mut prepared.movers.moving {
        mover.body = mover.body.moved(shifts[mover.solid]);
    }
    let groups = std::sync::Arc::make_mut(&mut prepared.groups);
    for (set, state) in [
        (&mut groups.common, DoorState::Shut),
        (&mut groups.shut, DoorState::Shut),
        (&mut groups.open, DoorState::Open),
    ] {
        let off = Off::of(bay, uncertainty, state);
        for fixed in &mut set.bodies {
            let half = off.spread(&set.solids[fixed.solid]);
            fixed.body = fixed.body.moved(shift(half));
        }
    }
}

/// Whether each lock is clear in every door state that counts.
fn clear_locks(bay: &Bay, prepared: &Prepared, space: &mut Workspace) -> Vec<bool> {
    let mut sweep = |bodies: &[Fixed]| -> Swept {
        space.sweep(
            &prepared.movers.moving,
            bodies,
            &prepared.locks,
            DVec3::Z,
            &|mover, fixed| rule(mover.role, fixed.role, &bay.policy),
        );
        space.swept.clone()
    };
    let common = sweep(&prepared.groups.common.bodies);
    let mut clear = vec![true; prepared.locks.windows.len()];
    for state in counted_states(bay) {
        let door = sweep(match state {
            DoorState::Shut => &prepared.groups.shut.bodies,
            _ => &prepared.groups.open.bodies,
        });
        let both = [&common, &door];
        let found = Together { swept: &both }.states(
            &prepared.locks,
            prepared.movers.phases.carry_m,
            bay.lift.travel.m(),
        );
        for (clear, (state, _)) in clear.iter_mut().zip(found) {
            *clear &= state == LockState::Clear;
        }
    }
    clear
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Ceiling;
    use crate::clearance::study;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn the_interval_is_the_published_one_and_never_reaches_certainty() {
        // Wilson interval for 0 of 10 at 95 %: 0 to z^2 / (n + z^2) = 3.8415 / 13.8415 = 0.2775.
        let none = LockShare::new(0, 10);
        assert!(none.low.abs() < 1e-12 && (none.high - 0.277_53).abs() < 1e-4);
        let all = LockShare::new(1000, 1000);
        assert!(all.high < 1.0 && (all.low - (1.0 - 3.8415 / 1003.8415)).abs() < 1e-5);
    }

    #[test]
    fn the_same_seed_draws_the_same_worlds_and_worse_locks_are_clear_less_often() {
        let mut bay = test_bay();
        // Lower the ceiling until it limits in some worlds and not in others.
        bay.garage.ceiling = Ceiling::Flat {
            height: Length::feet(10.6),
        };
        let first = estimate(&bay, 40, 7, &mut || {}).unwrap();
        assert_eq!(first, estimate(&bay, 40, 7, &mut || {}).unwrap());
        assert!(
            first
                .locks
                .windows(2)
                .all(|pair| pair[1].clear <= pair[0].clear
                // Below the travel at which the pads carry no lock is clear.
                || pair[0].clear == 0),
            "{first:?}"
        );
    }

    #[test]
    fn what_the_worst_case_calls_clear_is_clear_in_every_sample() {
        let mut bay = test_bay();
        // Set the arms clear of their own columns, so that nothing is short as parked.
        bay.lift.carriage.proud = Length::inches(5.0);
        for arm in &mut bay.lift.arms {
            arm.pivot_inward = Length::inches(10.25);
        }
        let Some(lock) = study(&bay).unwrap().highest_clear_lock else {
            panic!("the test bay has no clear lock");
        };
        let estimate = estimate(&bay, 200, 1, &mut || {}).unwrap();
        assert_eq!(estimate.locks[lock - 1].clear, 200);
    }
}

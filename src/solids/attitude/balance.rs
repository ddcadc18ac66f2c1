//! Where the vehicle's weight acts: its centre of gravity in plan.

use glam::DVec2;

use super::StanceError;
use crate::bay::Vehicle;
use crate::solids::vehicle::axle_station_m;

/// The vehicle's mass and where it acts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// Axle loads and named masses together, kilograms.
    pub mass_kg: f64,
    /// The centre of gravity in plan in the vehicle's frame: to the right, forward (so the
    /// negative of its station), metres.
    pub plan_m: DVec2,
}

/// The centre of gravity by moments: each axle load at its axle, on the middle line, and each
/// named mass at its place; a part taken out counts negative.
///
/// # Errors
/// [`StanceError::NoAxleLoads`] without axle loads, [`StanceError::NoMass`] when the masses add up
/// to nothing, [`StanceError::NotANumber`].
pub fn centre_of_gravity(vehicle: &Vehicle) -> Result<Balance, StanceError> {
    centre_of_gravity_with(vehicle, |_| true)
}

/// The same with only those named masses that `counts` names, by their index.
///
/// # Errors
/// As [`centre_of_gravity`].
pub fn centre_of_gravity_with(
    vehicle: &Vehicle,
    counts: impl Fn(usize) -> bool,
) -> Result<Balance, StanceError> {
    let loads = vehicle.axle_loads.ok_or(StanceError::NoAxleLoads)?;
    let axles = (0..2).map(|axle| {
        let place = DVec2::new(0.0, -axle_station_m(vehicle, axle));
        (loads[axle].kg(), place)
    });
    let counted = vehicle.masses.iter().enumerate();
    let named = counted
        .filter(|&(index, _)| counts(index))
        .map(|(_, part)| {
            let place = DVec2::new(part.across.m(), -part.station.m());
            (part.mass.kg(), place)
        });
    let mut mass_kg = 0.0;
    let mut moment = DVec2::ZERO;
    for (mass, place) in axles.chain(named) {
        mass_kg += mass;
        moment += place * mass;
    }
    if !(mass_kg.is_finite() && moment.is_finite()) {
        return Err(StanceError::NotANumber);
    }
    if mass_kg <= 0.0 {
        return Err(StanceError::NoMass);
    }
    Ok(Balance {
        mass_kg,
        plan_m: moment / mass_kg,
    })
}

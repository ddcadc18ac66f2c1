//! Do the values of a bay go together?
//!
//! Only what can't be is refused here. What merely does not work (columns taller than the
//! ceiling, a vehicle too heavy, an arm that can't reach) is a finding of the study.

mod plate;
mod ratings;
mod room;
mod slab;
mod tie;
mod vehicle;

use super::fields::Fields;
use crate::bay::{Aim, Garage, Lift, Parking, Vehicle};
use crate::units::{Length, Rounding, feet_inches, millimetres};

pub(super) use plate::anchors;
pub(super) use ratings::ratings;
pub(super) use room::{ceiling, outside, panels};
pub(super) use slab::slab_days;
pub(super) use tie::tie;
pub(super) use vehicle::vehicle;

/// Noise allowed between two figures that should be one, in metres.
const NOISE_M: f64 = 1e-9;

/// A length in both systems, to the nearest, for messages.
pub(in crate::bayfile::decode) fn both(length: Length) -> String {
    /// Less is nothing in sixteenths of an inch.
    const TOO_SMALL_M: f64 = 0.001;
    if length.m().abs() > 0.0 && length.m().abs() < TOO_SMALL_M {
        return millimetres(length, 2, Rounding::Nearest);
    }
    format!(
        "{} ({})",
        feet_inches(length, 16, Rounding::Nearest),
        millimetres(length, 0, Rounding::Nearest)
    )
}

/// True when the second of two values is greater than the first; else that is noted.
pub(in crate::bayfile::decode) fn rising(
    f: &Fields<'_>,
    low_name: &str,
    low: Length,
    high_name: &str,
    high: Length,
) -> bool {
    if low < high {
        return true;
    }
    f.error(
        f.newer(high_name, low_name),
        &format!("`{high_name}` must be more than `{low_name}`"),
        &format!(
            "`{low_name}` is {}, `{high_name}` {}",
            both(low),
            both(high)
        ),
        &format!("check `{low_name}` and `{high_name}`, or swap them"),
    );
    false
}

/// The parts of a bay against each other; each check runs when its parts could be read.
pub(in crate::bayfile::decode) fn between(
    f: &Fields<'_>,
    garage: Option<&Garage>,
    lift: Option<&Lift>,
    vehicle: Option<&Vehicle>,
    parking: Option<&Parking>,
) {
    if let (Some(garage), Some(vehicle)) = (garage, vehicle)
        && vehicle.length > garage.depth
    {
        f.error(
            "garage.depth",
            &format!(
                "the vehicle is {} long, but the garage is only {} deep",
                both(vehicle.length),
                both(garage.depth)
            ),
            "the vehicle is longer than this",
            "check the garage's `depth` and the vehicle's `length`",
        );
    }
    if let (Some(garage), Some(lift)) = (garage, lift) {
        let left_wall = -(garage.width * 0.5) - garage.opening.offset;
        let inside = lift.across > left_wall && lift.across < left_wall + garage.width;
        if lift.post_line >= garage.depth || !inside {
            f.error(
                "lift.post_line",
                "the lift stands outside the garage",
                "`post_line` and `across` must lie within the walls",
                "measure `post_line` from the door wall and `across` from the opening's middle",
            );
        }
    }
    if let (Some(vehicle), Some(parking)) = (vehicle, parking)
        && matches!(parking.aim, Aim::CentreOfGravity(_))
        && vehicle.axle_loads.is_none()
    {
        f.error(
            "parking.aim",
                "the aim is the centre of gravity, but the vehicle's axle loads are not given",
                "`aim: CentreOfGravity(..)` needs `axle_loads` in the vehicle",
                "give the vehicle `axle_loads: (front: .., rear: ..)`, or aim with `LiftPoints(\"0 in\")`",
        );
    }
    if let (Some(lift), Some(parking)) = (lift, parking) {
        pads_reachable(f, lift, parking);
    }
}

/// Every raise must be some adapters of the set stacked, and screw for the rest.
fn pads_reachable(f: &Fields<'_>, lift: &Lift, parking: &Parking) {
    let sums = stacks(&lift.pad.adapters);
    let reachable = |raise: Length| {
        sums.iter().any(|sum| {
            let screw = raise.m() - sum.m();
            screw >= -NOISE_M && screw <= lift.pad.screw_travel.m() + NOISE_M
        })
    };
    for (corner, raise) in crate::bay::Corner::ALL.iter().zip(parking.pad_raise) {
        if reachable(raise) {
            continue;
        }
        f.error(
            "parking.pad_raise",
            &format!(
                "the {} pad can't be raised by {}: the screw gives {} and the adapters {}",
                corner.name(),
                both(raise),
                both(lift.pad.screw_travel),
                if lift.pad.adapters.is_empty() {
                    "nothing".into()
                } else {
                    let all: Vec<String> = lift.pad.adapters.iter().map(|a| both(*a)).collect();
                    all.join(" and ")
                }
            ),
            "its `pad_raise` must be stacked adapters and screw",
            "choose a raise that adapters and screw give together, or list the adapters at hand",
        );
        // The four are mostly alike: one message says it.
        return;
    }
}

/// Every height that some of the adapters stack to. There are at most twelve adapters.
fn stacks(adapters: &[Length]) -> Vec<Length> {
    let mut sums = vec![Length::ZERO];
    for adapter in adapters {
        let taller: Vec<Length> = sums.iter().map(|s| *s + *adapter).collect();
        sums.extend(taller);
    }
    sums
}

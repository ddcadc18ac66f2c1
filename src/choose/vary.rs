//! What is a bay with another ceiling, or a taller vehicle?

use crate::bay::{Bay, Ceiling, Vehicle};
use crate::units::Length;

/// What a part that is squeezed between roof and belt keeps of its height.
const LEAST_TALL: Length = Length::mm(10.0);

/// The bay under a flat ceiling of this height, whatever its ceiling was. What hangs under it stays
/// where it is.
#[must_use]
pub fn under_flat_ceiling(bay: &Bay, height: Length) -> Bay {
    let mut bay = bay.clone();
    bay.garage.ceiling = Ceiling::Flat { height };
    bay
}

/// The bay with the vehicle's roof, and what is fixed above its belt, higher by `by` (lower, where
/// negative). What lies at or below the belt stays where it is, and so does every lift point.
///
/// Something fixed to the body that starts at or below the belt and ends above it, a frame that
/// stands on the bumper, grows with the roof; where the roof sinks it stays as tall as it is, unless
/// it would be the highest point. So the highest point always lies higher by `by`.
#[must_use]
pub fn with_roof_raised(bay: &Bay, by: Length) -> Bay {
    let mut bay = bay.clone();
    let vehicle = &mut bay.vehicle;
    let belt = vehicle.belt;
    let highest = highest_point(vehicle) + by;
    for station in &mut vehicle.roof {
        if station.height > belt {
            station.height = (station.height + by).max(belt);
        }
    }
    for part in &mut vehicle.attached {
        if part.bottom > belt {
            let top = part.top + by;
            part.bottom = (part.bottom + by).max(belt);
            part.top = top.max(part.top.min(part.bottom + LEAST_TALL));
        } else if part.top > belt {
            part.top = if by > Length::ZERO {
                part.top + by
            } else {
                part.top.min(highest)
            };
        }
    }
    vehicle.height = (vehicle.height + by).max(belt);
    bay
}

/// The highest point of the roof and of what is fixed to the body, over the highest lift point,
/// at ride height.
#[must_use]
pub fn roof_over_lift_points(bay: &Bay) -> Length {
    let vehicle = &bay.vehicle;
    let point = vehicle
        .lift_points
        .iter()
        .map(|point| point.height)
        .fold(Length::ZERO, Length::max);
    highest_point(vehicle) - point
}

fn highest_point(vehicle: &Vehicle) -> Length {
    vehicle
        .attached
        .iter()
        .map(|part| part.top)
        .chain(vehicle.roof.iter().map(|station| station.height))
        .fold(vehicle.height, Length::max)
}

/// How far the roof may be lowered at most so that it still is a roof: the highest point stays a
/// hand's width over the belt.
#[must_use]
pub fn most_lowering(bay: &Bay) -> Length {
    let vehicle = &bay.vehicle;
    let top = vehicle
        .roof
        .iter()
        .map(|station| station.height)
        .fold(Length::ZERO, Length::max);
    (top - vehicle.belt - Length::mm(100.0)).max(Length::ZERO)
}

//! The vehicle as solids in its own frame, and the same posed in the bay.
//!
//! Vehicle frame, metres: origin on the ground under the front bumper's middle, `x` to the
//! vehicle's right, `y` forward, `z` up; a station `t` is `y = -t`. Where the description
//! contradicts itself the larger reading is built.

use std::collections::HashSet;
use std::f64::consts::FRAC_1_SQRT_2;

use glam::{DQuat, DVec3};

use super::{Pose, Role, Shape, Solid, body};
use crate::bay::{Bay, Corner, Facing, Mirrors, Vehicle};

/// Plan size of the block that stands for a lift point below the sill, metres.
const LIFT_POINT_BLOCK_M: f64 = 0.1;
/// Least thickness of anything built, metres.
const LEAST_THICKNESS_M: f64 = 1e-3;

/// One part of the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct VehiclePart {
    /// The part; its `bay_from_solid` holds `vehicle_from_solid`.
    pub solid: Solid,
    /// For a wheel, and for a low part that sinks with the wheels, the axle: 0 front, 1 rear. Both stand at
    /// ride height.
    pub wheel: Option<usize>,
    /// True for the body itself, which is drawn solid from the sill up: a lift point above the sill
    /// lies inside it.
    pub is_body: bool,
}

/// Which of the vehicle's lift points is served by a corner of the lift: an index into
/// `vehicle.lift_points`. Tail-in the vehicle is turned by half a turn, so that its front left
/// point lies at the lift's rear right.
#[must_use]
pub const fn lift_point_at(corner: Corner, facing: Facing) -> usize {
    match facing {
        Facing::NoseIn => corner.index(),
        Facing::TailIn => 3 - corner.index(),
    }
}

/// A lift point in the vehicle's frame, by its index (0 to 3: front left, front right, rear left,
/// rear right), metres.
#[must_use]
pub fn lift_point_m(vehicle: &Vehicle, index: usize) -> DVec3 {
    let point = &vehicle.lift_points[index];
    DVec3::new(
        outward(index) * point.half_spacing.m(),
        -point.station.m(),
        point.height.m(),
    )
}

/// The name of the block that a lift point below the sill is built as, by the point's index.
#[must_use]
pub fn lift_point_name(index: usize) -> String {
    format!("vehicle/lift point {}", Corner::ALL[index].name())
}

/// The middle of a wheel at ride height in the vehicle's frame, by its index (front left, front
/// right, rear left, rear right), metres.
#[must_use]
pub fn wheel_middle_m(vehicle: &Vehicle, index: usize) -> DVec3 {
    DVec3::new(
        outward(index) * vehicle.track[index / 2].m() * 0.5,
        -axle_station_m(vehicle, index / 2),
        vehicle.tyre_diameter.m() * 0.5,
    )
}

/// The station of an axle (0 front, 1 rear), metres from the front bumper.
#[must_use]
pub fn axle_station_m(vehicle: &Vehicle, axle: usize) -> f64 {
    let front = vehicle.front_overhang.m();
    if axle == 0 {
        front
    } else {
        front + vehicle.wheelbase.m()
    }
}

/// The sign of outward along the vehicle's `x` for a left (even) or right (odd) index.
const fn outward(index: usize) -> f64 {
    if index.is_multiple_of(2) { -1.0 } else { 1.0 }
}

/// Every part of the vehicle in its own frame, with everything that opens shut. Names are unique.
#[must_use]
pub fn parts(bay: &Bay) -> Vec<VehiclePart> {
    let vehicle = &bay.vehicle;
    let mut solids = body::prisms(vehicle);
    let body_count = solids.len();
    if let Some(mirrors) = &vehicle.mirrors {
        solids.extend(mirror_boxes(vehicle, mirrors));
    }
    let low_from = solids.len();
    solids.extend(low_parts(vehicle));
    solids.extend((0..4).filter_map(|index| lift_point_block(vehicle, index)));
    solids.extend(attached(vehicle));
    let mut parts: Vec<VehiclePart> = solids
        .into_iter()
        .enumerate()
        .map(|(index, solid)| VehiclePart {
            solid,
            wheel: index
                .checked_sub(low_from)
                .and_then(|index| vehicle.underbody.get(index))
                .and_then(|part| vehicle.sinks_with(part)),
            is_body: index < body_count,
        })
        .collect();
    parts.extend((0..4).map(|index| VehiclePart {
        solid: wheel(vehicle, index),
        wheel: Some(index / 2),
        is_body: false,
    }));
    make_names_unique(&mut parts);
    parts
}

/// Every part posed in the bay, the wheels of each axle lowered along the vehicle's `z` by
/// `droop_m` (front, rear; negative for a compressed spring).
#[must_use]
pub fn posed(bay: &Bay, bay_from_vehicle: Pose, droop_m: [f64; 2]) -> Vec<Solid> {
    parts(bay)
        .into_iter()
        .map(
            |VehiclePart {
                 mut solid, wheel, ..
             }| {
                let droop = wheel.map_or(0.0, |axle| droop_m[axle]);
                let lowered = solid.bay_from_solid.moved(DVec3::NEG_Z * droop);
                solid.bay_from_solid = bay_from_vehicle.after(lowered);
                solid
            },
        )
        .collect()
}

/// A box between two stations, from `left` to `right` and from `bottom` to `top`, at least as
/// thick as the least thickness.
fn between_stations(
    name: String,
    role: Role,
    (from, to): (f64, f64),
    (left, right): (f64, f64),
    (bottom, top): (f64, f64),
) -> Solid {
    let top = top.max(bottom + LEAST_THICKNESS_M);
    Solid::aligned_box(
        name,
        role,
        DVec3::new(left, -from.max(to), bottom),
        DVec3::new(right, -from.min(to), top),
    )
}

/// Both mirrors, from the body's side (at its narrowest there, so that no gap is left beside the
/// glass) out to half the width over both.
fn mirror_boxes(vehicle: &Vehicle, mirrors: &Mirrors) -> Vec<Solid> {
    let station = mirrors.station.m();
    let half_depth = mirrors.depth.m() * 0.5;
    let outer = mirrors.width_over.m() * 0.5;
    let body_side = vehicle.body_width.m() * 0.5;
    let inner = body::roof_half_width_m(vehicle, station).map_or(body_side, |w| w.min(body_side));
    if outer <= inner {
        return Vec::new();
    }
    let mirror = |name: &str, across| {
        between_stations(
            format!("vehicle/mirror {name}"),
            Role::Mirror,
            (station - half_depth, station + half_depth),
            across,
            (mirrors.bottom.m(), mirrors.top.m()),
        )
    };
    vec![
        mirror("left", (-outer, -inner)),
        mirror("right", (inner, outer)),
    ]
}

/// What hangs lower than the sill, each from its underside up to the sill.
fn low_parts(vehicle: &Vehicle) -> impl Iterator<Item = Solid> {
    let sill = vehicle.sill.m();
    vehicle.underbody.iter().map(move |part| {
        let half = part.half_width.m();
        between_stations(
            format!("vehicle/underbody {}", part.name),
            Role::Body,
            (part.from.m(), part.to.m()),
            (-half, half),
            (part.height.m(), sill),
        )
    })
}

/// What is fixed to the body.
fn attached(vehicle: &Vehicle) -> impl Iterator<Item = Solid> {
    vehicle.attached.iter().map(|part| {
        let (middle, half) = (part.across.m(), part.width.m() * 0.5);
        between_stations(
            format!("vehicle/{}", part.name),
            Role::Body,
            (part.from.m(), part.to.m()),
            (middle - half, middle + half),
            (part.bottom.m(), part.top.m()),
        )
    })
}

/// A lift point below the sill as a block up to the sill; none when the body reaches down to it.
fn lift_point_block(vehicle: &Vehicle, index: usize) -> Option<Solid> {
    let point = lift_point_m(vehicle, index);
    let sill = vehicle.sill.m();
    let half = LIFT_POINT_BLOCK_M * 0.5;
    (point.z < sill).then(|| {
        between_stations(
            lift_point_name(index),
            Role::Body,
            (-point.y - half, -point.y + half),
            (point.x - half, point.x + half),
            (point.z, sill),
        )
    })
}

fn wheel_name(index: usize) -> String {
    format!("vehicle/wheel {}", Corner::ALL[index].name())
}

/// A wheel at ride height in the vehicle's frame, by its index (front left, front right, rear left,
/// rear right).
pub(super) fn wheel(vehicle: &Vehicle, index: usize) -> Solid {
    let (shape, bay_from_solid) = wheel_shape(vehicle, index);
    Solid {
        name: wheel_name(index),
        role: Role::Wheel(index / 2),
        shape,
        bay_from_solid,
    }
}

/// Its shape and where it is, likewise: a cylinder about an axis square to the middle line.
pub(super) fn wheel_shape(vehicle: &Vehicle, index: usize) -> (Shape, Pose) {
    let shape = Shape::Cylinder {
        radius: vehicle.tyre_diameter.m() * 0.5,
        half_height: vehicle.tyre_width.m() * 0.5,
    };
    // Its own z to the vehicle's x: a quarter turn about y.
    let across = DQuat::from_xyzw(0.0, FRAC_1_SQRT_2, 0.0, FRAC_1_SQRT_2);
    (shape, Pose::new(across, wheel_middle_m(vehicle, index)))
}

fn is_wheel(part: &VehiclePart) -> bool {
    matches!(part.solid.role, Role::Wheel(_))
}

/// A name given twice gets a number: a thing fixed to the body may be called anything. Parts
/// built earlier, and wheels, keep their names.
fn make_names_unique(parts: &mut [VehiclePart]) {
    // Mostly they are.
    let mut names = HashSet::with_capacity(parts.len());
    if parts
        .iter()
        .all(|part| names.insert(part.solid.name.as_str()))
    {
        return;
    }
    let mut seen: HashSet<String> = (0..4).map(wheel_name).collect();
    for VehiclePart { solid, .. } in parts.iter_mut().filter(|part| !is_wheel(part)) {
        let mut name = solid.name.clone();
        let mut number = 2;
        while !seen.insert(name.clone()) {
            name = format!("{} ({number})", solid.name);
            number += 1;
        }
        solid.name = name;
    }
}

#[cfg(test)]
mod tests;

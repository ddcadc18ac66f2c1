//! Lamps, bumpers, door gaps, an open bed: what else is painted on the body?

use glam::DVec3;

use super::cabin::Cabin;
use super::{FACING, on_end, on_sides};
use crate::bay::{BodyStyle, OpeningKind, Vehicle};
use crate::drawing::facets::HalfSpace;
use crate::drawing::paint::{Decal, Paint};
use crate::drawing::palette::{Colour, things};

/// Width of a gap as drawn: wider than it is, so that it is seen from across the room.
const GAP_M: f64 = 0.014;
/// Doors end this far above the sill.
const OVER_SILL_M: f64 = 0.1;

/// What lies under the glass: gaps, stripe, bed, sill.
pub(super) fn before_glass(vehicle: &Vehicle, cabin: &Cabin, gap: Colour) -> Vec<Decal> {
    let (length, sill) = (vehicle.length.m(), vehicle.sill.m());
    let gap = Paint::matt(gap);
    let mut decals = Vec::new();
    if vehicle.style == BodyStyle::Camper {
        let stripe = Paint::gloss(things::STRIPE);
        let belt = vehicle.belt.m();
        decals.extend(on_sides((0.0, length), (belt - 0.34, belt - 0.14), stripe));
    }
    let (foot, top) = (sill + OVER_SILL_M, cabin.glass_low);
    let mut doors = vec![cabin.door];
    doors.extend(cabin.rear_door);
    if matches!(vehicle.style, BodyStyle::Van | BodyStyle::Camper) {
        // The sliding door behind the front one.
        doors.push((cabin.door.1, cabin.door.1 + 1.2));
    }
    for (index, &(from, to)) in doors.iter().enumerate() {
        let top = if index > 0 && cabin.rear_door.is_none() {
            vehicle.height.m() - 0.25
        } else {
            top
        };
        for at in [from, to] {
            decals.extend(on_sides((at, at + GAP_M), (foot, top), gap));
        }
        decals.extend(on_sides((from, to), (foot, foot + GAP_M), gap));
        let handle = (cabin.glass_low - 0.13, cabin.glass_low - 0.1);
        let handle_at = (to - 0.24, to - 0.08);
        decals.extend(on_sides(handle_at, handle, Paint::matt(things::TRIM)));
    }
    decals.extend(lids(vehicle, cabin, gap));
    if vehicle.style == BodyStyle::Pickup {
        let behind_cab = cabin.rear_base.at + 0.03;
        decals.extend(on_sides(
            (behind_cab, behind_cab + 1.5 * GAP_M),
            (foot, vehicle.height.m()),
            gap,
        ));
        decals.push(bed(vehicle, cabin));
    }
    let trim = Paint::matt(things::TRIM);
    decals.extend(on_sides((0.0, length), (0.0, sill + 0.07), trim));
    decals
}

/// What lies over it: lamps, grille and bumpers.
pub(super) fn after_glass(vehicle: &Vehicle, cabin: &Cabin) -> Vec<Decal> {
    let half = vehicle.body_width.m() * 0.5;
    let (length, sill, belt) = (vehicle.length.m(), vehicle.sill.m(), vehicle.belt.m());
    let nose = vehicle.roof.first().map_or(belt, |s| s.height.m());
    let tail = vehicle.roof.last().map_or(belt, |s| s.height.m());
    let trim = Paint::matt(things::TRIM);
    let head = Paint::gloss(things::HEAD_LAMP);
    let red = Paint::gloss(things::TAIL_LAMP);
    let reach = 0.3;
    let front = (-0.001, reach);
    let rear = (length - reach, length + 0.001);
    let lamp_top = nose.min(belt) - 0.06;
    let lamp = (lamp_top - 0.15, lamp_top);
    let bumper = sill + 0.3 * (lamp.0 - sill).max(0.0) + 0.05;
    let mut decals = vec![
        on_end(DVec3::Y, front, (-half, half), (sill, bumper), trim),
        on_end(DVec3::NEG_Y, rear, (-half, half), (sill, bumper), trim),
        on_end(DVec3::Y, front, (-0.52 * half, 0.52 * half), lamp, trim),
    ];
    let tall = matches!(
        vehicle.style,
        BodyStyle::Pickup | BodyStyle::Van | BodyStyle::Camper | BodyStyle::Suv
    );
    let tail_top = match vehicle.style {
        BodyStyle::Pickup => tail - 0.06,
        BodyStyle::Van | BodyStyle::Camper => belt + 0.1,
        _ => cabin.glass_low - 0.06,
    };
    let tail_lamp = (tail_top - if tall { 0.34 } else { 0.14 }, tail_top);
    let inner = if tall { 0.8 } else { 0.6 };
    for side in [-1.0, 1.0] {
        let between = |inner: f64| {
            let (a, b) = (side * inner * half, side * half);
            (a.min(b), a.max(b))
        };
        decals.push(on_end(DVec3::Y, front, between(0.58), lamp, head));
        decals.push(on_end(DVec3::NEG_Y, rear, between(inner), tail_lamp, red));
    }
    decals.extend(on_sides((0.0, 0.16), lamp, head));
    decals.extend(on_sides((length - 0.09, length), tail_lamp, red));
    decals
}

/// Gaps around hood, boot lid or tailgate.
fn lids(vehicle: &Vehicle, cabin: &Cabin, gap: Paint) -> Vec<Decal> {
    let half = vehicle.body_width.m() * 0.5;
    let length = vehicle.length.m();
    let mut decals = Vec::new();
    let across = |at: f64| Decal {
        region: vec![
            HalfSpace::behind(DVec3::Y, DVec3::new(0.0, -at, 0.0)),
            HalfSpace::behind(DVec3::NEG_Y, DVec3::new(0.0, -at - GAP_M, 0.0)),
        ],
        toward: DVec3::Z,
        least: FACING,
        paint: gap,
    };
    if cabin.cowl.at > 0.5 {
        decals.push(across(cabin.cowl.at - 0.03));
    }
    let tailgate = vehicle
        .opening_parts
        .iter()
        .find(|part| part.kind == OpeningKind::Tailgate);
    if let Some(gate) = tailgate {
        let (low, high) = (gate.hinge_height.m(), vehicle.height.m());
        let wide = gate.width.m() * 0.5;
        let rear = (length - 0.3, length + 0.001);
        for side in [-1.0, 1.0] {
            let at = side * wide.min(0.95 * half);
            let between = (at - GAP_M * 0.5, at + GAP_M * 0.5);
            decals.push(on_end(DVec3::NEG_Y, rear, between, (low, high), gap));
        }
        decals.push(on_end(
            DVec3::NEG_Y,
            rear,
            (-wide, wide),
            (low, low + GAP_M),
            gap,
        ));
    }
    if matches!(vehicle.style, BodyStyle::Van | BodyStyle::Camper) {
        let rear = (length - 0.3, length + 0.001);
        let gap_up = (vehicle.sill.m() + 0.25, vehicle.height.m() - 0.25);
        decals.push(on_end(DVec3::NEG_Y, rear, (-GAP_M, GAP_M), gap_up, gap));
    }
    decals
}

/// The open bed behind a pickup's cab, seen from above.
fn bed(vehicle: &Vehicle, cabin: &Cabin) -> Decal {
    let rail = 0.09;
    let half = vehicle
        .roof
        .last()
        .map_or(vehicle.body_width.m() * 0.5, |s| s.half_width.m())
        .min(cabin.rear_base.half)
        - rail;
    let (from, to) = (cabin.rear_base.at + 0.06, vehicle.length.m() - 0.06);
    Decal {
        region: vec![
            HalfSpace::behind(DVec3::Y, DVec3::new(0.0, -from, 0.0)),
            HalfSpace::behind(DVec3::NEG_Y, DVec3::new(0.0, -to, 0.0)),
            HalfSpace::behind(DVec3::X, DVec3::new(half, 0.0, 0.0)),
            HalfSpace::behind(DVec3::NEG_X, DVec3::new(-half, 0.0, 0.0)),
        ],
        toward: DVec3::Z,
        least: 0.8,
        paint: Paint::matt(things::BED),
    }
}

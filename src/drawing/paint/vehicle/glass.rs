//! Where is the glass?

use glam::DVec3;

use super::cabin::{Cabin, Point};
use super::{SIDES, facing, on_sides};
use crate::bay::{BodyStyle, Vehicle};
use crate::drawing::facets::HalfSpace;
use crate::drawing::paint::{Decal, Paint};
use crate::drawing::palette::things;

/// Width of roof rails and pillars around the glass, metres.
const FRAME_M: f64 = 0.075;
/// Half the width of a pillar between two windows, metres.
const PILLAR_M: f64 = 0.03;

const GLASS: Paint = Paint::gloss(things::GLASS);

/// Windscreen, rear window and side windows.
pub(super) fn glass(vehicle: &Vehicle, cabin: &Cabin) -> Vec<Decal> {
    let mut decals = vec![screen(DVec3::Y, cabin.cowl, cabin.front_top, cabin.cowl.z)];
    if !matches!(vehicle.style, BodyStyle::Van | BodyStyle::Camper) {
        let low = cabin.rear_base.z.max(cabin.glass_low);
        decals.push(screen(DVec3::NEG_Y, cabin.rear_base, cabin.rear_top, low));
    }
    for (from, to) in windows(vehicle, cabin) {
        decals.extend(side_window(cabin, from, to));
    }
    if vehicle.style == BodyStyle::Camper {
        let length = vehicle.length.m();
        for (from, to) in [(0.47, 0.62), (0.72, 0.88)] {
            let low = cabin.glass_low + 0.12;
            decals.extend(on_sides(
                (from * length, to * length),
                (low, low + 0.42),
                GLASS,
            ));
        }
    }
    decals
}

/// A window across the vehicle, from its foot on the outline to its top, on faces that look
/// `toward` (forward or rearward).
fn screen(toward: DVec3, foot: Point, top: Point, low: f64) -> Decal {
    let (near, far) = (foot.at.min(top.at), foot.at.max(top.at));
    let mut region = vec![
        HalfSpace::behind(DVec3::Y, DVec3::new(0.0, -near, 0.0)),
        HalfSpace::behind(DVec3::NEG_Y, DVec3::new(0.0, -far, 0.0)),
        HalfSpace::behind(DVec3::NEG_Z, DVec3::new(0.0, 0.0, low + 0.05)),
        HalfSpace::behind(DVec3::Z, DVec3::new(0.0, 0.0, top.z - 0.04)),
    ];
    // The sides run from the foot's half width to the top's.
    for side in [-1.0, 1.0] {
        let outward = DVec3::new(side * (top.z - foot.z), 0.0, foot.half - top.half)
            .normalize_or(DVec3::X * side);
        let corner = DVec3::new(side * foot.half, 0.0, foot.z);
        region.push(HalfSpace::behind(outward, corner - outward * FRAME_M));
    }
    Decal {
        region,
        toward,
        least: 0.2,
        paint: GLASS,
    }
}

/// Stations between which there is glass in the sides.
fn windows(vehicle: &Vehicle, cabin: &Cabin) -> Vec<(f64, f64)> {
    let (start, pillar) = (cabin.cowl.at, cabin.door.1);
    let mut windows = vec![(start, pillar - PILLAR_M)];
    match vehicle.style {
        BodyStyle::Van | BodyStyle::Camper => {}
        BodyStyle::Coupe => windows.push((pillar + PILLAR_M, cabin.rear_base.at)),
        _ => match cabin.rear_door {
            Some((from, to)) => {
                windows.push((from + PILLAR_M, to - PILLAR_M));
                if vehicle.style != BodyStyle::Pickup {
                    windows.push((to + PILLAR_M, cabin.rear_base.at));
                }
            }
            None => windows.push((pillar + PILLAR_M, cabin.rear_base.at)),
        },
    }
    windows.retain(|(from, to)| to - from > 0.12);
    windows
}

/// A side window under the outline, less its frame.
fn side_window(cabin: &Cabin, from: f64, to: f64) -> Vec<Decal> {
    let mut region = vec![
        HalfSpace::behind(DVec3::NEG_Z, DVec3::new(0.0, 0.0, cabin.glass_low)),
        HalfSpace::behind(DVec3::Y, DVec3::new(0.0, -from, 0.0)),
        HalfSpace::behind(DVec3::NEG_Y, DVec3::new(0.0, -to, 0.0)),
    ];
    for pair in cabin.outline.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if b.z < cabin.glass_low && a.z < cabin.glass_low {
            continue;
        }
        let outward = DVec3::new(0.0, b.z - a.z, b.at - a.at).normalize_or(DVec3::Z);
        let corner = DVec3::new(0.0, -a.at, a.z);
        region.push(HalfSpace::behind(outward, corner - outward * FRAME_M));
    }
    facing(&SIDES, region, GLASS)
}

//! What is painted on a vehicle, so that it is known at a glance for what it is?
//!
//! Everything is worked out from the description: the outline says where the glass begins, the
//! parts that open say where the doors are. Vehicle frame, metres: `x` to the vehicle's right,
//! `y` forward (station `t` is `y = -t`), `z` up.

mod cabin;
mod glass;
mod trim;
mod wheels;

use std::sync::Arc;

use glam::DVec3;

use super::{Decal, Paint};
use crate::bay::{BodyStyle, Vehicle};
use crate::drawing::palette::things;
use crate::viewer::facets::{Facet, HalfSpace};
use cabin::Cabin;

pub use wheels::wheel_decals;

/// What is painted on the body's own solids, all in the vehicle's frame.
#[derive(Debug, Clone, PartialEq)]
pub struct Livery {
    /// One over the other.
    pub decals: Arc<[Decal]>,
    /// The paint around them.
    body: Paint,
}

impl Livery {
    /// The livery of a vehicle whose wheels stand at these places in its own frame (front left,
    /// front right, rear left, rear right): wheels seen through their wells are painted there.
    #[must_use]
    pub fn of(vehicle: &Vehicle, wheels_m: &[DVec3; 4]) -> Self {
        let pale = matches!(vehicle.style, BodyStyle::Camper | BodyStyle::Van);
        let (body, gap) = if pale {
            (things::BODY_PALE, things::GAP_PALE)
        } else {
            (things::BODY, things::GAP)
        };
        let cabin = Cabin::of(vehicle);
        let mut decals = trim::before_glass(vehicle, &cabin, gap);
        decals.extend(glass::glass(vehicle, &cabin));
        decals.extend(trim::after_glass(vehicle, &cabin));
        decals.extend(wheels::in_wells(vehicle, wheels_m));
        Self {
            decals: decals.into(),
            body: Paint::gloss(body),
        }
    }

    /// The paint of a face of the body where no decal lies.
    #[must_use]
    pub fn base(&self, facet: &Facet) -> Paint {
        if facet.normal.z < -0.7 {
            Paint::matt(things::UNDERBODY)
        } else {
            self.body
        }
    }
}

/// Both sides of the vehicle.
const SIDES: [DVec3; 2] = [DVec3::NEG_X, DVec3::X];
/// How near to square on a face must be to count as a side, a front or a top.
const FACING: f64 = 0.5;

/// A rectangle by stations (from, to) and heights (low, high), on both sides.
fn on_sides(stations: (f64, f64), heights: (f64, f64), paint: Paint) -> Vec<Decal> {
    let region = vec![
        HalfSpace::behind(DVec3::Y, DVec3::new(0.0, -stations.0, 0.0)),
        HalfSpace::behind(DVec3::NEG_Y, DVec3::new(0.0, -stations.1, 0.0)),
        HalfSpace::behind(DVec3::NEG_Z, DVec3::new(0.0, 0.0, heights.0)),
        HalfSpace::behind(DVec3::Z, DVec3::new(0.0, 0.0, heights.1)),
    ];
    facing(&SIDES, region, paint)
}

/// A rectangle across the vehicle on faces that look along `toward`: across (left, right) and
/// heights (low, high), between two stations.
fn on_end(
    toward: DVec3,
    stations: (f64, f64),
    across: (f64, f64),
    heights: (f64, f64),
    paint: Paint,
) -> Decal {
    Decal {
        region: vec![
            HalfSpace::behind(DVec3::Y, DVec3::new(0.0, -stations.0, 0.0)),
            HalfSpace::behind(DVec3::NEG_Y, DVec3::new(0.0, -stations.1, 0.0)),
            HalfSpace::behind(DVec3::NEG_X, DVec3::new(across.0, 0.0, 0.0)),
            HalfSpace::behind(DVec3::X, DVec3::new(across.1, 0.0, 0.0)),
            HalfSpace::behind(DVec3::NEG_Z, DVec3::new(0.0, 0.0, heights.0)),
            HalfSpace::behind(DVec3::Z, DVec3::new(0.0, 0.0, heights.1)),
        ],
        toward,
        least: FACING,
        paint,
    }
}

/// The same region on faces that look each of these ways.
fn facing(ways: &[DVec3], region: Vec<HalfSpace>, paint: Paint) -> Vec<Decal> {
    ways.iter()
        .map(|&toward| Decal {
            region: region.clone(),
            toward,
            least: FACING,
            paint,
        })
        .collect()
}

#[cfg(test)]
mod tests;

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
use crate::drawing::facets::HalfSpace;
use crate::drawing::palette::things;
use cabin::Cabin;

pub use wheels::wheel_decals;

/// What is painted on the body's own solids, all in the vehicle's frame.
#[derive(Debug, Clone)]
pub struct Livery {
    /// What stays where it is, one over the other.
    fixed: Arc<[Decal]>,
    /// The wells, and the wheels seen in them, over the rest.
    wheels: Arc<[Decal]>,
    /// Where the wheels stand.
    wheels_m: [DVec3; 4],
    /// The paint around all of them.
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
        Self {
            fixed: decals.into(),
            wheels: wheels::in_wells(vehicle, wheels_m).into(),
            wheels_m: *wheels_m,
            body: Paint::gloss(body),
        }
    }

    /// The livery of the same vehicle with its wheels at these places.
    #[must_use]
    pub fn with_wheels(self, vehicle: &Vehicle, wheels_m: &[DVec3; 4]) -> Self {
        if self.wheels_m == *wheels_m {
            return self;
        }
        Self {
            wheels: wheels::in_wells(vehicle, wheels_m).into(),
            wheels_m: *wheels_m,
            ..self
        }
    }

    /// True when the other is this very livery, or a copy of it.
    #[must_use]
    pub fn is(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.fixed, &other.fixed) && Arc::ptr_eq(&self.wheels, &other.wheels)
    }

    /// What of it lies on a convex solid with these corners, one over the other.
    #[must_use]
    pub fn decals_on(&self, corners: &[DVec3]) -> Vec<Decal> {
        let touches = |decal: &&Decal| {
            decal
                .region
                .iter()
                .all(|half| corners.iter().any(|c| half.outside_m(*c) < 0.0))
        };
        let all = self.fixed.iter().chain(self.wheels.iter());
        all.filter(touches).cloned().collect()
    }

    /// The paint where no decal lies.
    #[must_use]
    pub fn body(&self) -> Paint {
        self.body
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

//! How does a wheel look, on its own solid and where it is seen through its well?

use glam::DVec3;

use super::{FACING, SIDES};
use crate::bay::Vehicle;
use crate::drawing::facets::HalfSpace;
use crate::drawing::paint::{Decal, Paint};
use crate::drawing::palette::things;
use crate::solids::vehicle::{axle_station_m, wheel_middle_m};

/// Sides of a painted circle.
const CIRCLE: u32 = 28;
/// Air between tyre and well, metres.
const AIR_M: f64 = 0.06;
/// Rim over tyre.
const RIM: f64 = 0.66;
/// Spokes of a rim.
const SPOKES: u32 = 5;

/// Wells on the body's sides with the wheels seen in them.
pub(super) fn in_wells(vehicle: &Vehicle, wheels_m: &[DVec3; 4]) -> Vec<Decal> {
    let radius = vehicle.tyre_diameter.m() * 0.5;
    let mut decals = Vec::new();
    for (index, &wheel) in wheels_m.iter().enumerate() {
        let toward = SIDES[index % 2];
        let well = DVec3::new(0.0, -axle_station_m(vehicle, index / 2), radius);
        let paint = Paint::matt(things::TRIM);
        decals.push(disc(Plane::SIDE, toward, well, radius + AIR_M, paint));
        // Only a wheel whose face lies inside the body's side is seen through it.
        let outside = wheel_middle_m(vehicle, index).x.abs() + vehicle.tyre_width.m() * 0.5;
        if outside <= vehicle.body_width.m() * 0.5 + 1e-6 {
            decals.extend(face(Plane::SIDE, toward, wheel, radius));
        }
    }
    decals
}

/// A wheel's own two faces, in the frame of its solid (axis along `z`).
#[must_use]
pub fn wheel_decals(radius_m: f64) -> Vec<Decal> {
    [DVec3::Z, DVec3::NEG_Z]
        .into_iter()
        .flat_map(|toward| face(Plane::END, toward, DVec3::ZERO, radius_m))
        .collect()
}

/// Two directions across a face.
#[derive(Debug, Clone, Copy)]
struct Plane(DVec3, DVec3);

impl Plane {
    /// The body's side.
    const SIDE: Self = Self(DVec3::Y, DVec3::Z);
    /// The end of a wheel's solid: its axis `z` is turned onto the vehicle's `x`, so that its own
    /// `x` points down. The spokes thus agree with those that are painted on the body.
    const END: Self = Self(DVec3::Y, DVec3::NEG_X);

    fn way(self, angle: f64) -> DVec3 {
        self.0 * angle.cos() + self.1 * angle.sin()
    }
}

/// Tyre, rim, spokes and hub.
fn face(plane: Plane, toward: DVec3, middle: DVec3, radius: f64) -> Vec<Decal> {
    let rubber = Paint::matt(things::RUBBER);
    let (rim, shade) = (Paint::gloss(things::RIM), Paint::matt(things::RIM_SHADE));
    let mut decals = vec![
        disc(plane, toward, middle, radius, rubber),
        disc(plane, toward, middle, radius * RIM, rim),
        disc(plane, toward, middle, radius * RIM * 0.88, shade),
    ];
    for i in 0..SPOKES {
        let angle = std::f64::consts::TAU * (f64::from(i) / f64::from(SPOKES) + 0.25);
        let (out, beside) = (
            plane.way(angle),
            plane.way(angle + std::f64::consts::FRAC_PI_2),
        );
        let half = radius * 0.085;
        decals.push(Decal {
            region: vec![
                HalfSpace::behind(-out, middle),
                HalfSpace::behind(out, middle + out * (radius * RIM * 0.9)),
                HalfSpace::behind(beside, middle + beside * half),
                HalfSpace::behind(-beside, middle - beside * half),
            ],
            toward,
            least: FACING,
            paint: rim,
        });
    }
    decals.push(disc(plane, toward, middle, radius * 0.17, rim));
    decals
}

fn disc(plane: Plane, toward: DVec3, middle: DVec3, radius: f64, paint: Paint) -> Decal {
    // The four quarters first, then what lies between them: most faces lie beyond one of the first,
    // and what is cut away around the circle comes in large pieces.
    let quarter = CIRCLE / 4;
    let region = (0..CIRCLE)
        .map(|i| (i % 4) * quarter + i / 4)
        .map(|i| {
            let out = plane.way(std::f64::consts::TAU * f64::from(i) / f64::from(CIRCLE));
            HalfSpace::behind(out, middle + out * radius)
        })
        .collect();
    Decal {
        region,
        toward,
        least: FACING,
        paint,
    }
}

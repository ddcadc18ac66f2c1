//! How does a point load bend a slab on ground at a place beside it?
//!
//! The infinite plate on a bed of springs: w = -(Pℓ²/2πD) kei(r/ℓ) (Timoshenko and
//! Woinowsky-Krieger, *Theory of Plates and Shells*, 2nd edition, art. 58; from memory), so that
//! the moments along and across the line from the load are P/2π [ker x - (1-ν) kei'x/x] and
//! P/2π [ν ker x + (1-ν) kei'x/x], with x = r/ℓ.

use std::f64::consts::{FRAC_PI_4, PI};

use super::on_ground::POISSON;

const EULER: f64 = 0.577_215_664_901_532_9;

/// Beyond so many ℓ a load is not felt: ker and kei'/x are under a thousandth there.
const UNFELT: f64 = 9.0;

/// ker x and kei' x, of Kelvin's functions of order zero, by their series (Abramowitz and Stegun,
/// *Handbook of Mathematical Functions*, 9.9.12; from memory). `x` above zero and below 12.
#[must_use]
pub fn kelvin(x: f64) -> (f64, f64) {
    let log = (x / 2.0).ln();
    let quarter = x * x / 4.0;
    // Term n is (x²/4)^n / n!²; even ones belong to ber, odd ones to bei, with changing signs.
    let (mut term, mut psi) = (1.0, -EULER);
    let (mut ber, mut bei, mut ker_rest) = (0.0, 0.0, 0.0);
    let (mut ber_slope, mut bei_slope, mut kei_rest_slope) = (0.0, 0.0, 0.0);
    for n in 0..60_u32 {
        let sign = if (n / 2) % 2 == 0 { 1.0 } else { -1.0 };
        let signed = sign * term;
        // d/dx of (x²/4)^n is 2n/x of it.
        let slope = signed * 2.0 * f64::from(n) / x;
        if n % 2 == 0 {
            ber += signed;
            ber_slope += slope;
            ker_rest += signed * psi;
        } else {
            bei += signed;
            bei_slope += slope;
            kei_rest_slope += slope * psi;
        }
        let next = f64::from(n + 1);
        term *= quarter / (next * next);
        psi += 1.0 / next;
        if term < 1e-18 {
            break;
        }
    }
    let ker = -log * ber + FRAC_PI_4 * bei + ker_rest;
    let kei_slope = -bei / x - log * bei_slope - FRAC_PI_4 * ber_slope + kei_rest_slope;
    (ker, kei_slope)
}

/// Moments of a plate, lbf in per inch, along both axes of the bay and twisting.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Bent {
    /// Across the bay.
    pub x: f64,
    /// Along the bay.
    pub y: f64,
    /// Twist.
    pub xy: f64,
}

impl Bent {
    /// The same moment every way.
    #[must_use]
    pub const fn round(moment: f64) -> Self {
        Self {
            x: moment,
            y: moment,
            xy: 0.0,
        }
    }

    /// What a point load bends at a place so far from it, with a radius of relative stiffness ℓ.
    /// `off_in` must not be zero.
    #[must_use]
    pub fn beside(load_lbf: f64, off_in: [f64; 2], stiffness_in: f64) -> Self {
        let distance = off_in[0].hypot(off_in[1]);
        let x = distance / stiffness_in;
        if x > UNFELT {
            return Self::default();
        }
        let (ker, kei_slope) = kelvin(x);
        let turn = (1.0 - POISSON) * kei_slope / x;
        let scale = load_lbf / (2.0 * PI);
        let along = scale * (ker - turn);
        let across = scale * (POISSON * ker + turn);
        let (cos, sin) = (off_in[0] / distance, off_in[1] / distance);
        Self {
            x: along * cos * cos + across * sin * sin,
            y: along * sin * sin + across * cos * cos,
            xy: (along - across) * cos * sin,
        }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            x: self.x + other.x,
            y: self.y + other.y,
            xy: self.xy + other.xy,
        }
    }

    /// The greatest tension at the underside and at the top of a slab so thick, psi, whichever way
    /// it runs; below zero where all is compressed.
    #[must_use]
    pub fn tension_psi(&self, thickness_in: f64) -> [f64; 2] {
        let middle = 0.5 * (self.x + self.y);
        let radius = (0.5 * (self.x - self.y)).hypot(self.xy);
        let per_moment = 6.0 / (thickness_in * thickness_in);
        [
            per_moment * (middle + radius),
            per_moment * (radius - middle),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::super::on_ground::GroundSlab;
    use super::*;

    #[test]
    fn kelvins_functions() {
        // By an arbitrary-precision library for mathematics (mpmath), 15 digits; ker 1 and kei' 1
        // are also tabled so in Abramowitz and Stegun, table 9.12.
        for (x, ker, kei_slope) in [
            (0.1, 2.420_473_981_038_17, 0.145_974_811_428_596),
            (0.5, 0.855_905_872_118_634, 0.333_203_791_603_33),
            (1.0, 0.286_706_208_728_316, 0.352_369_913_336_171),
            (2.0, -0.041_664_513_991_509_5, 0.219_807_909_919_606),
            (5.0, -0.011_511_727_199_490_7, -0.000_819_986_543_630_789),
            (8.0, 0.001_485_834_068_518_96, -0.001_336_312_914_858_89),
        ] {
            let found = kelvin(x);
            assert!((found.0 - ker).abs() < 1e-9, "ker {x}: {}", found.0);
            assert!((found.1 - kei_slope).abs() < 1e-9, "kei' {x}: {}", found.1);
        }
    }

    #[test]
    fn a_ring_of_point_loads_bends_its_middle_as_westergaards_circle_less_its_own_spread() {
        // Loads spread over a circle of radius a bend the middle by the mean over the circle.
        // Westergaard's interior formula without the thickness's share (b = a) is the small-radius
        // value of that: within 0.5 % at a = ℓ/10.
        let slab = GroundSlab {
            thickness_in: 5.0,
            elastic_psi: 3.4e6,
            subgrade_pci: 100.0,
        };
        let l = slab.stiffness_radius_in();
        let a = 0.1 * l;
        let rings = 400;
        let mut sum = Bent::default();
        for k in 0..rings {
            // Equal areas.
            let r = a * ((f64::from(k) + 0.5) / f64::from(rings)).sqrt();
            for j in 0..8 {
                let angle = PI * f64::from(j) / 4.0;
                let load = 1e4 / f64::from(8 * rings);
                let off = [r * angle.cos(), r * angle.sin()];
                sum = sum.and(Bent::beside(load, off, l));
            }
        }
        let found = sum.tension_psi(5.0)[0];
        let expected = 0.316 * 1e4 / 25.0 * (4.0 * (l / a).log10() + 1.069);
        assert!((found / expected - 1.0).abs() < 0.01, "{found} {expected}");
    }

    #[test]
    fn turned_axes_and_both_faces() {
        let along_x = Bent::beside(1e3, [10.0, 0.0], 30.0);
        let slanting = Bent::beside(1e3, [6.0, 8.0], 30.0);
        let faces = |bent: Bent| bent.tension_psi(5.0);
        for (a, b) in faces(along_x).into_iter().zip(faces(slanting)) {
            assert!((a - b).abs() < 1e-9);
        }
        // Upward is the same with the faces swapped.
        let up = faces(Bent::beside(-1e3, [6.0, 8.0], 30.0));
        assert!((up[1] - faces(along_x)[0]).abs() < 1e-9);
        assert_eq!(Bent::beside(1e3, [400.0, 0.0], 30.0), Bent::default());
    }
}

//! How much is a slab on ground bent by a load on it?
//!
//! Westergaard's formulas as in Huang, *Pavement Analysis and Design*, chapter 4: a plate on a bed
//! of springs, loads over circles. Inches, pounds-force, psi; the subgrade modulus in psi/in.

use std::f64::consts::{PI, SQRT_2};

/// Poisson's ratio of concrete that the formulas' numbers are made for.
pub const POISSON: f64 = 0.15;

/// A slab on ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundSlab {
    /// Thickness, inches.
    pub thickness_in: f64,
    /// Modulus of elasticity of the concrete, psi.
    pub elastic_psi: f64,
    /// Modulus of subgrade reaction, psi/in.
    pub subgrade_pci: f64,
}

impl GroundSlab {
    /// Radius of relative stiffness ℓ, inches: fourth root of E h³ / 12(1-ν²)k.
    #[must_use]
    pub fn stiffness_radius_in(&self) -> f64 {
        let h = self.thickness_in;
        (self.elastic_psi * h * h * h / (12.0 * (1.0 - POISSON * POISSON) * self.subgrade_pci))
            .powf(0.25)
    }

    /// Radius b that bends as the load's radius does: √(1.6a² + h²) - 0.675h below 1.724h, else a.
    #[must_use]
    pub fn counted_radius_in(&self, radius_in: f64) -> f64 {
        let h = self.thickness_in;
        if radius_in < 1.724 * h {
            (1.6 * radius_in * radius_in + h * h).sqrt() - 0.675 * h
        } else {
            radius_in
        }
    }

    /// Tension at the underside under a load far from edges, psi:
    /// 0.316 P/h² [4 log(ℓ/b) + 1.069].
    #[must_use]
    pub fn interior_psi(&self, load_lbf: f64, radius_in: f64) -> f64 {
        let (h, b) = (self.thickness_in, self.counted_radius_in(radius_in));
        0.316 * load_lbf / (h * h) * (4.0 * (self.stiffness_radius_in() / b).log10() + 1.069)
    }

    /// Settlement under a load far from edges, inches.
    #[must_use]
    pub fn interior_settlement_in(&self, load_lbf: f64, radius_in: f64) -> f64 {
        let l = self.stiffness_radius_in();
        let part = radius_in / l;
        load_lbf / (8.0 * self.subgrade_pci * l * l)
            * (1.0 + ((part / 2.0).ln() - 0.673) * part * part / (2.0 * PI))
    }

    /// Tension at the underside under a circle that touches a straight free edge, psi:
    /// 0.803 P/h² [4 log(ℓ/a) + 0.666 a/ℓ - 0.034].
    #[must_use]
    pub fn edge_psi(&self, load_lbf: f64, radius_in: f64) -> f64 {
        let (h, l) = (self.thickness_in, self.stiffness_radius_in());
        0.803 * load_lbf / (h * h) * (4.0 * (l / radius_in).log10() + 0.666 * radius_in / l - 0.034)
    }

    /// Tension at the top of a corner under a circle that touches both edges, psi:
    /// 3P/h² [1 - (a√2/ℓ)^0.6].
    #[must_use]
    pub fn corner_psi(&self, load_lbf: f64, radius_in: f64) -> f64 {
        let (h, l) = (self.thickness_in, self.stiffness_radius_in());
        3.0 * load_lbf / (h * h) * (1.0 - (radius_in * SQRT_2 / l).powf(0.6))
    }
}

/// Modulus of elasticity of concrete of normal weight, psi: 57,000 √f'c (ACI 318-19, 19.2.2.1(b)).
#[must_use]
pub fn elastic_psi(fc_psi: f64) -> f64 {
    57_000.0 * fc_psi.sqrt()
}

/// Modulus of rupture, psi: 7.5 λ √f'c (ACI 318-19, 19.2.3.1), λ 1 for concrete of normal weight.
/// Handbooks of floors take up to 9 √f'c.
#[must_use]
pub fn rupture_psi(fc_psi: f64) -> f64 {
    7.5 * fc_psi.sqrt()
}

#[cfg(test)]
mod tests {
    use super::super::point::Bent;
    use super::*;

    fn near(found: f64, expected: f64, within: f64) {
        assert!((found - expected).abs() <= within, "{found} not {expected}");
    }

    /// Huang, chapter 4: E 4,000,000 psi, ν 0.15, 10 in thick, k 100 psi/in.
    const HUANG: GroundSlab = GroundSlab {
        thickness_in: 10.0,
        elastic_psi: 4e6,
        subgrade_pci: 100.0,
    };

    #[test]
    fn ten_thousand_pounds_on_a_pavement() {
        // Huang, chapter 4, worked examples: 10,000 lb over a circle of 6 in radius.
        near(HUANG.stiffness_radius_in(), 42.97, 0.005);
        near(HUANG.counted_radius_in(6.0), 5.804, 0.0005);
        near(HUANG.interior_psi(1e4, 6.0), 143.7, 0.1);
        near(HUANG.interior_settlement_in(1e4, 6.0), 0.0067, 0.000_05);
        near(HUANG.edge_psi(1e4, 6.0), 279.4, 0.15);
        near(HUANG.corner_psi(1e4, 6.0), 186.6, 0.15);
        near(HUANG.counted_radius_in(20.0), 20.0, 0.0);
    }

    #[test]
    fn a_rack_post() {
        // ACI 360R-10, example A1.3: posts of 15.5 kip on 36 sq in, 100 in by 40 in apart, 4000
        // psi, modulus of rupture 570 psi, k 100, factor of safety 1.4. Allowable 407 psi, 26.3 psi
        // for each kip, and 8.25 in thick by its chart.
        let allowable = 570.0 / 1.4;
        near(allowable, 407.0, 0.5);
        near(allowable / 15.5, 26.3, 0.05);
        near(9.0 * 4000.0_f64.sqrt(), 570.0, 1.0);
        // With the post beside it in its frame, 40 in off, and those of the frames beside, 100 in
        // off, the formulas here want 8.0 in for that stress. A chart is read by eye: within 4 %.
        let bent = |thickness_in: f64| {
            let slab = GroundSlab {
                thickness_in,
                elastic_psi: 4e6,
                subgrade_pci: 100.0,
            };
            let own = slab.interior_psi(15_500.0, (36.0 / PI).sqrt());
            let l = slab.stiffness_radius_in();
            let mut bent = Bent::round(own * thickness_in * thickness_in / 6.0);
            for off in [[40.0, 0.0], [0.0, 100.0], [0.0, -100.0]] {
                bent = bent.and(Bent::beside(15_500.0, off, l));
            }
            bent.tension_psi(thickness_in)[0]
        };
        let wanted = (0..2000)
            .map(|k| 4.0 + 0.005 * f64::from(k))
            .find(|h| bent(*h) <= allowable)
            .unwrap();
        near(wanted, 8.25, 0.04 * 8.25);
    }
}

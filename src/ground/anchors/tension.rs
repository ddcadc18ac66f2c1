//! How much pull does the concrete code let anchors take: steel, cone of concrete, pull-out?
//!
//! ACI 318-19, 17.6, in the units its numbers are made for: inches, pounds-force, psi.

/// What a failure of concrete is: the code's factor k<sub>c</sub> differs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Placing {
    /// Set before the concrete.
    CastIn,
    /// Set in hardened concrete.
    PostInstalled,
}

impl Placing {
    /// k<sub>c</sub> of 17.6.2.2.1: 24 cast in, 17 post-installed.
    #[must_use]
    pub const fn kc(self) -> f64 {
        match self {
            Self::CastIn => 24.0,
            Self::PostInstalled => 17.0,
        }
    }

    /// The greatest strength that may be put into a formula, psi: 17.3.1.
    #[must_use]
    pub const fn most_fc_psi(self) -> f64 {
        match self {
            Self::CastIn => 10_000.0,
            Self::PostInstalled => 8_000.0,
        }
    }

    /// ψ<sub>c,N</sub> of 17.6.2.5.1 where k<sub>c</sub> is the code's own: 1.25 cast in and 1.4
    /// post-installed where analysis shows no cracking, else 1.0.
    #[must_use]
    pub const fn psi_c(self, cracked: bool) -> f64 {
        match (cracked, self) {
            (true, _) => 1.0,
            (false, Self::CastIn) => 1.25,
            (false, Self::PostInstalled) => 1.4,
        }
    }
}

/// The tensile strength that counts, psi: at most 1.9 f<sub>ya</sub> and 125 ksi (17.6.1.2).
#[must_use]
pub fn counted_futa_psi(futa_psi: f64, fya_psi: f64) -> f64 {
    futa_psi.min(1.9 * fya_psi).min(125_000.0)
}

/// N<sub>sa</sub> = A<sub>se</sub> f<sub>uta</sub>, lbf (17.6.1.2).
#[must_use]
pub fn steel_lbf(area_in2: f64, futa_psi: f64, fya_psi: f64) -> f64 {
    area_in2 * counted_futa_psi(futa_psi, fya_psi)
}

/// N<sub>b</sub> = k<sub>c</sub> λ<sub>a</sub> √f'c h<sub>ef</sub><sup>1.5</sup>, lbf (17.6.2.2.1).
#[must_use]
pub fn basic_breakout_lbf(kc: f64, lambda_a: f64, fc_psi: f64, hef_in: f64) -> f64 {
    kc * lambda_a * fc_psi.sqrt() * hef_in.powf(1.5)
}

/// N<sub>b</sub> = 16 λ<sub>a</sub> √f'c h<sub>ef</sub><sup>5/3</sup>, lbf: allowed for cast-in headed
/// anchors of 11 to 25 in (17.6.2.2.3).
#[must_use]
pub fn deep_headed_breakout_lbf(lambda_a: f64, fc_psi: f64, hef_in: f64) -> f64 {
    16.0 * lambda_a * fc_psi.sqrt() * hef_in.powf(5.0 / 3.0)
}

/// A<sub>Nco</sub> = 9 h<sub>ef</sub>², sq in (17.6.2.1.4).
#[must_use]
pub fn whole_cone_in2(hef_in: f64) -> f64 {
    9.0 * hef_in * hef_in
}

/// ψ<sub>ec,N</sub> = 1/(1 + e'<sub>N</sub>/1.5h<sub>ef</sub>) ≤ 1 (17.6.2.3.1).
#[must_use]
pub fn psi_ec(eccentricity_in: f64, hef_in: f64) -> f64 {
    1.0 / (1.0 + eccentricity_in.abs() / (1.5 * hef_in))
}

/// ψ<sub>ed,N</sub> = 0.7 + 0.3 c<sub>a,min</sub>/1.5h<sub>ef</sub> ≤ 1 (17.6.2.4.1).
#[must_use]
pub fn psi_ed(edge_in: f64, hef_in: f64) -> f64 {
    (0.7 + 0.3 * edge_in / (1.5 * hef_in)).min(1.0)
}

/// ψ<sub>cp,N</sub> of post-installed anchors in uncracked concrete: the larger of
/// c<sub>a,min</sub> and 1.5h<sub>ef</sub> over c<sub>ac</sub> ≤ 1 (17.6.2.6.1).
#[must_use]
pub fn psi_cp(edge_in: f64, hef_in: f64, critical_edge_in: f64) -> f64 {
    (edge_in.max(1.5 * hef_in) / critical_edge_in).min(1.0)
}

/// N<sub>p</sub> = 8 A<sub>brg</sub> f'c of a headed anchor, lbf (17.6.3.2.2); ψ<sub>c,P</sub> is
/// 1.0 in cracked concrete. What expansion anchors hold may come from tests only (17.6.3.2.1).
#[must_use]
pub fn headed_pull_out_lbf(bearing_area_in2: f64, fc_psi: f64) -> f64 {
    8.0 * bearing_area_in2 * fc_psi
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, within: f64) {
        assert!((found - expected).abs() <= within, "{found} not {expected}");
    }

    #[test]
    fn one_stud_of_half_an_inch() {
        // ACI 349.2R-07, example A1, as asserted by the verification test of a general
        // finite-element library: 1/2 in stud, 65 ksi, hef 4.69 in, 4000 psi, edge 12 in.
        // Ase is pi/4 x 0.5^2 = 0.19635 sq in.
        let area = std::f64::consts::FRAC_PI_4 * 0.25;
        // The yield strength is not said there: any over 34.2 ksi leaves 65 ksi.
        near(steel_lbf(area, 65_000.0, 51_000.0), 12_762.7, 0.1);
        near(basic_breakout_lbf(24.0, 1.0, 4000.0, 4.69), 15_417.0, 0.5);
        // 12 in is more than 1.5 x 4.69: no edge, the whole cone.
        near(psi_ed(12.0, 4.69), 1.0, 0.0);
        near(headed_pull_out_lbf(0.59, 4000.0), 18_880.0, 1e-6);
    }

    #[test]
    fn one_stud_of_five_eighths() {
        // ACI 349.2R-07, example A3, same library: hef 6.63 in, edges 12 and 20 in, Abrg 0.92.
        let area = std::f64::consts::FRAC_PI_4 * 0.625 * 0.625;
        near(steel_lbf(area, 65_000.0, 51_000.0), 19_942.0, 1.0);
        near(basic_breakout_lbf(24.0, 1.0, 4000.0, 6.63), 25_913.0, 1.0);
        near(psi_ed(12.0, 6.63), 1.0, 0.0);
        near(headed_pull_out_lbf(0.92, 4000.0), 29_440.0, 1e-6);
    }

    #[test]
    fn a_deep_headed_bolt() {
        // ACI 349.2R-07, example A4, same library: 1 1/8 in rod of 105 ksi yield and 125 ksi
        // strength, Ase 0.7633 sq in, hef 17.57 in, 4000 psi.
        near(steel_lbf(0.7633, 125_000.0, 105_000.0), 95_430.0, 20.0);
        near(
            deep_headed_breakout_lbf(1.0, 4000.0, 17.57),
            120_160.0,
            20.0,
        );
    }

    #[test]
    fn a_rod_of_36_ksi() {
        // ACI 355.3R, example 1: 1 in rod of 36 and 58 ksi, hef 8 in, 6000 psi. Inputs as
        // published; 0.606 x 58,000 and 24 x sqrt 6000 x 8^1.5 worked out.
        let steel = steel_lbf(0.606, 58_000.0, 36_000.0);
        near(steel, 35_148.0, 0.5);
        near(0.75 * 0.75 * steel, 19_771.0, 1.0);
        let cone = basic_breakout_lbf(24.0, 1.0, 6000.0, 8.0);
        near(cone, 42_065.0, 1.0);
        near(0.75 * 0.70 * cone, 22_084.0, 1.0);
    }

    #[test]
    fn post_installed() {
        // Worked out from 17.6.2.2.1 with kc 17.
        let kc = Placing::PostInstalled.kc();
        let shallow = basic_breakout_lbf(kc, 1.0, 2500.0, 3.25);
        near(shallow, 4_980.0, 0.5);
        near(0.65 * shallow, 3_237.0, 0.5);
        near(basic_breakout_lbf(kc, 1.0, 3000.0, 4.0), 7_449.0, 0.5);
    }

    #[test]
    fn factors_of_the_cone() {
        // 0.7 + 0.3 x 3/4.875 and 1/(1 + 1/4.875).
        near(psi_ed(3.0, 3.25), 0.8846, 5e-5);
        near(psi_ec(1.0, 3.25), 0.8298, 5e-5);
        near(psi_ec(-1.0, 3.25), 0.8298, 5e-5);
        // 4 x 3.25 = 13: an anchor far from edges keeps 4.875/13 of 1.
        near(psi_cp(4.0, 3.25, 13.0), 0.375, 1e-9);
        near(psi_cp(20.0, 3.25, 13.0), 1.0, 0.0);
        near(psi_ed(100.0, 3.25), 1.0, 0.0);
    }

    #[test]
    fn high_strengths_are_not_counted() {
        near(counted_futa_psi(150_000.0, 130_000.0), 125_000.0, 0.0);
        near(counted_futa_psi(80_000.0, 30_000.0), 57_000.0, 1e-9);
    }
}

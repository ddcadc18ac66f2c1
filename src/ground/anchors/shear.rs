//! How much sideways force do anchors take, and how much beside a pull?
//!
//! ACI 318-19, 17.7 and 17.8, in inches, pounds-force and psi. The concrete edge is taken from its
//! worst side: the whole of a post's force on the one anchor nearest to the edge.

/// V<sub>sa</sub> = 0.6 A<sub>se</sub> f<sub>uta</sub>, lbf, of bolts and of post-installed anchors
/// whose sleeve does not reach through the shear plane (17.7.1.2b); with 0.8 of it over a grout pad
/// (17.7.1.2.1), which shims under a plate are taken as (from memory).
#[must_use]
pub fn steel_lbf(area_in2: f64, counted_futa_psi: f64, on_shims: bool) -> f64 {
    let pad = if on_shims { 0.8 } else { 1.0 };
    pad * 0.6 * area_in2 * counted_futa_psi
}

/// V<sub>b</sub>, lbf: the smaller of 7 (l<sub>e</sub>/d<sub>a</sub>)<sup>0.2</sup> √d<sub>a</sub>
/// λ<sub>a</sub> √f'c c<sub>a1</sub><sup>1.5</sup> and 9 λ<sub>a</sub> √f'c c<sub>a1</sub><sup>1.5</sup>
/// (17.7.2.2.1, from memory); l<sub>e</sub> at most 8d<sub>a</sub>.
#[must_use]
pub fn basic_breakout_lbf(
    bearing_length_in: f64,
    diameter_in: f64,
    lambda_a: f64,
    fc_psi: f64,
    edge_in: f64,
) -> f64 {
    let length = bearing_length_in.min(8.0 * diameter_in);
    let of_edge = lambda_a * fc_psi.sqrt() * edge_in.powf(1.5);
    let of_steel = 7.0 * (length / diameter_in).powf(0.2) * diameter_in.sqrt();
    of_steel.min(9.0) * of_edge
}

/// V<sub>cb</sub> of one anchor, lbf, taken low: concrete to one side only, the corner factor
/// ψ<sub>ed,V</sub> at its least (0.7), cracked concrete without edge bars (ψ<sub>c,V</sub> 1.0),
/// and a member of this thickness (17.7.2.1 to 17.7.2.6, from memory).
#[must_use]
pub fn low_breakout_lbf(basic_lbf: f64, edge_in: f64, thickness_in: f64) -> f64 {
    let deep = 1.5 * edge_in;
    let thick = thickness_in.min(deep);
    let share = 1.5 * edge_in * thick / (4.5 * edge_in * edge_in);
    let psi_h = (deep / thick).sqrt().max(1.0);
    share * 0.7 * psi_h * basic_lbf
}

/// k<sub>cp</sub> of 17.7.3.1: what pries out is so many times what breaks out in tension.
#[must_use]
pub fn pry_out_factor(hef_in: f64) -> f64 {
    if hef_in < 2.5 { 1.0 } else { 2.0 }
}

/// How much of both strengths is used together, as a share of what 17.8 allows: a fifth of either
/// is free, beyond that both shares may add to 1.2.
#[must_use]
pub fn used_together(tension_share: f64, shear_share: f64) -> f64 {
    if tension_share.is_nan() || shear_share.is_nan() {
        f64::NAN
    } else if shear_share <= 0.2 {
        tension_share
    } else if tension_share <= 0.2 {
        shear_share
    } else {
        let alone = tension_share.max(shear_share);
        alone.max((tension_share + shear_share) / 1.2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, within: f64) {
        assert!((found - expected).abs() <= within, "{found} not {expected}");
    }

    #[test]
    fn steel_over_shims_is_less() {
        near(steel_lbf(0.334, 100_000.0, false), 20_040.0, 1e-6);
        near(steel_lbf(0.334, 100_000.0, true), 16_032.0, 1e-6);
    }

    #[test]
    fn the_edge_from_its_worst_side() {
        // 3/4 in, le 4 in, 4000 psi, edge 6 in: (4/0.75)^0.2 = 1.3976, sqrt 0.75 = 0.8660, so
        // 7 x 1.2104 = 8.473 < 9; sqrt 4000 x 6^1.5 = 929.5; 7,876 lbf.
        let basic = basic_breakout_lbf(4.0, 0.75, 1.0, 4000.0, 6.0);
        near(basic, 7_876.0, 3.0);
        // A member deeper than 9 in: half of the whole area, and 0.7.
        near(low_breakout_lbf(basic, 6.0, 20.0), 0.35 * basic, 1e-6);
        // 4 in thick: 9 x 4/162 of the area, and sqrt(9/4) more.
        near(
            low_breakout_lbf(basic, 6.0, 4.0),
            (36.0 / 162.0) * 0.7 * 1.5 * basic,
            1e-6,
        );
    }

    #[test]
    fn pull_and_shear_together() {
        near(used_together(0.9, 0.2), 0.9, 0.0);
        near(used_together(0.1, 0.7), 0.7, 0.0);
        near(used_together(0.6, 0.6), 1.0, 1e-12);
        near(used_together(0.7, 0.7), 1.4 / 1.2, 1e-12);
        // Never less than one alone.
        near(used_together(1.1, 0.21), 1.1, 1e-12);
        assert!(used_together(1.0, 0.25) > 1.0);
        assert!(used_together(f64::NAN, 0.5).is_nan());
        assert!(used_together(0.5, f64::NAN).is_nan());
    }
}

//! How much may be pressed onto concrete under a plate, and how much before it punches through?
//!
//! ACI 318-19, 22.8 and chapter 14, in inches, pounds-force and psi.

/// φ of bearing (Table 21.2.1; from memory).
pub const PHI_BEARING: f64 = 0.65;

/// φ of plain concrete (Table 21.2.1).
pub const PHI_PLAIN: f64 = 0.60;

/// What is taken off the thickness of plain concrete cast against soil, inches (14.5.1.7; from
/// memory).
pub const AGAINST_SOIL_IN: f64 = 2.0;

/// B<sub>n</sub> = 0.85 f'c A<sub>1</sub> · min(√(A<sub>2</sub>/A<sub>1</sub>), 2), lbf (22.8.3.2).
#[must_use]
pub fn bearing_lbf(fc_psi: f64, loaded_in2: f64, spread_in2: f64) -> f64 {
    0.85 * fc_psi * loaded_in2 * (spread_in2 / loaded_in2).sqrt().clamp(1.0, 2.0)
}

/// The outline of what punches out: half a thickness outside of a loaded rectangle, inches
/// (14.5.5.1 with 22.6.4). `edges_in`: distances of edges from the rectangle, least first, wherever
/// they lie; of the ways past them the shortest is taken. A side that runs out to an edge ends
/// there and not half a thickness outside of the rectangle.
#[must_use]
pub fn punching_outline_in([a, b]: [f64; 2], thickness_in: f64, edges_in: &[f64]) -> f64 {
    let (short, long) = if a < b { (a, b) } else { (b, a) };
    let t = thickness_in;
    let whole = 2.0 * (a + b + 2.0 * t);
    let edge = |k: usize| edges_in.get(k).copied();
    // Past one beside a long side: that side, and both short ones out to the edge.
    let past_one = edge(0).map(|d| long + t + 2.0 * (short + 0.5 * t + d));
    // Past two at a corner: a side of each kind. Past two along both long sides: two short sides,
    // from edge to edge.
    let past_two = edge(0).zip(edge(1)).map(|(d1, d2)| {
        let corner = (short + 0.5 * t + d1) + (long + 0.5 * t + d2);
        let strip = 2.0 * (short + d1 + d2);
        if corner < strip { corner } else { strip }
    });
    // The end of a strip, where a third is as near as the rectangle is long: one short side.
    let past_three = edge(2)
        .filter(|d3| *d3 <= long)
        .zip(edge(0).zip(edge(1)))
        .map(|(_, (d1, d2))| short + d1 + d2);
    let ways = [past_one, past_two, past_three].into_iter().flatten();
    // No number stays no number.
    ways.fold(whole, |least, way| {
        if least.is_nan() || way >= least {
            least
        } else {
            way
        }
    })
}

/// √f'c as it counts in shear, psi: no more than 100 (ACI 318-19, 22.5.3.1 and 22.6.3.1; from
/// memory). No number stays no number.
#[must_use]
pub fn counted_root_psi(fc_psi: f64) -> f64 {
    let root = fc_psi.sqrt();
    if root > 100.0 { 100.0 } else { root }
}

/// Nominal shear stress of plain concrete in two directions, psi: the smaller of (1 + 2/β)(4/3)
/// and 2.66, times λ √f'c (Table 14.5.5.1).
#[must_use]
pub fn punching_psi(fc_psi: f64, loaded_in: [f64; 2]) -> f64 {
    let [a, b] = loaded_in;
    let (short, long) = if a < b { (a, b) } else { (b, a) };
    ((1.0 + 2.0 * short / long) * 4.0 / 3.0).min(2.66) * counted_root_psi(fc_psi)
}

/// V<sub>n</sub> of plain concrete in two directions, lbf: that stress over b<sub>o</sub> h.
/// `thickness_in` is what is left when the 2 in against soil are off.
#[must_use]
pub fn punching_lbf(fc_psi: f64, loaded_in: [f64; 2], thickness_in: f64, edges_in: &[f64]) -> f64 {
    punching_psi(fc_psi, loaded_in)
        * punching_outline_in(loaded_in, thickness_in, edges_in)
        * thickness_in
}

/// γ<sub>v</sub>: the share of a moment that goes into a slab by shear that is not even around the
/// outline, `along` the moment's span and `beside` it (ACI 318-19, 8.4.4.2.2; from memory).
#[must_use]
pub fn moment_share(along_in: f64, beside_in: f64) -> f64 {
    1.0 - 1.0 / (1.0 + 2.0 / 3.0 * (along_in / beside_in).sqrt())
}

/// J<sub>c</sub>/c of an outline with four sides, cubic inches (ACI 318-19, R8.4.4.2.3; from
/// memory): d b₁³/6 + b₁ d³/6 + d b₂ b₁²/2 over half of b₁.
#[must_use]
pub fn polar_section_in3(along_in: f64, beside_in: f64, thickness_in: f64) -> f64 {
    let (b1, b2, d) = (along_in, beside_in, thickness_in);
    (d * b1.powi(3) / 6.0 + b1 * d.powi(3) / 6.0 + d * b2 * b1 * b1 / 2.0) / (0.5 * b1)
}

/// The greatest shear stress around a loaded rectangle that brings a load and moments across and
/// along the bay, psi (ACI 318-19, 8.4.4.2.3; from memory): both moments' at one corner.
#[must_use]
pub fn punching_stress_psi(
    load_lbf: f64,
    moments_lbf_in: [f64; 2],
    loaded_in: [f64; 2],
    thickness_in: f64,
) -> f64 {
    let d = thickness_in;
    let [a, b] = loaded_in.map(|size| size + d);
    let by = |moment: f64, along: f64, beside: f64| {
        moment_share(along, beside) * moment.abs() / polar_section_in3(along, beside, d)
    };
    load_lbf / (2.0 * (a + b) * d) + by(moments_lbf_in[0], a, b) + by(moments_lbf_in[1], b, a)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, within: f64) {
        assert!((found - expected).abs() <= within, "{found} not {expected}");
    }

    #[test]
    fn very_strong_concrete_counts_no_more_in_shear() {
        near(counted_root_psi(8100.0), 90.0, 1e-9);
        near(counted_root_psi(10_000.0), 100.0, 1e-9);
        near(counted_root_psi(29_000.0), 100.0, 0.0);
        assert!(counted_root_psi(f64::NAN).is_nan());
        let square = [10.0, 10.0];
        near(
            punching_psi(29_000.0, square),
            punching_psi(10_000.0, square),
            1e-9,
        );
    }

    #[test]
    fn a_column_plate_on_a_pedestal() {
        // AISC design example J.7: 3 ksi, plate 22 in by 22 in on a pedestal 24 in by 24 in.
        // Nominal 1,346.4 kip, 808 kip with the 0.60 used there; 875.2 with 0.65.
        let nominal = bearing_lbf(3000.0, 484.0, 576.0);
        near(nominal, 1_346_400.0, 100.0);
        near(0.60 * nominal, 808_000.0, 500.0);
        near(PHI_BEARING * nominal, 875_200.0, 100.0);
        // The same example's first size: 451 sq in for 690 kip without the spread.
        near(0.60 * bearing_lbf(3000.0, 451.0, 451.0), 690_000.0, 1000.0);
        // The spread counts twice at most, and never less than once.
        near(bearing_lbf(1000.0, 1.0, 100.0), 1700.0, 1e-9);
        near(bearing_lbf(1000.0, 2.0, 1.0), 1700.0, 1e-9);
    }

    #[test]
    fn a_square_plate_punching() {
        // Worked out from Table 14.5.5.1: 12 in by 12 in, 4000 psi, slab 4 in.
        near(punching_outline_in([12.0, 12.0], 2.0, &[]), 56.0, 0.0);
        let against_soil = punching_lbf(4000.0, [12.0, 12.0], 4.0 - AGAINST_SOIL_IN, &[]);
        near(against_soil, 18_842.0, 1.0);
        near(PHI_PLAIN * against_soil, 11_305.0, 1.0);
        let whole = punching_lbf(4000.0, [12.0, 12.0], 4.0, &[]);
        near(whole, 43_068.0, 1.0);
        near(PHI_PLAIN * whole, 25_841.0, 1.0);
        // A strip of 1 to 4: (1 + 2/4)(4/3) = 2.0.
        near(
            punching_lbf(4000.0, [4.0, 16.0], 2.0, &[]),
            2.0 * 4000.0_f64.sqrt() * 48.0 * 2.0,
            1e-6,
        );
    }

    #[test]
    fn edges_shorten_the_outline() {
        // 12 in by 16 in, 2 in thick: each side and each way by hand.
        let outline = |edges: &[f64]| punching_outline_in([12.0, 16.0], 2.0, edges);
        near(outline(&[]), 64.0, 0.0);
        near(outline(&[50.0, 60.0]), 64.0, 0.0);
        // 18 in along it, and 1 + 12 + 1 in twice out to the edge.
        near(outline(&[1.0]), 18.0 + 2.0 * 14.0, 1e-12);
        // On the edge: 18 in, and 12 + 1 in twice.
        near(outline(&[0.0]), 18.0 + 2.0 * 13.0, 1e-12);
        // In a corner 14 + 18 in, but along both long sides 14 in twice.
        near(outline(&[1.0, 1.0]), 28.0, 1e-12);
        near(outline(&[1.0, 5.0]), 36.0, 1e-12);
        // The end of a strip.
        near(outline(&[1.0, 1.0, 1.0]), 14.0, 1e-12);
        near(outline(&[1.0, 1.0, 17.0]), 28.0, 1e-12);
    }

    #[test]
    fn edges_along_both_long_sides_of_a_long_plate_leave_two_short_cuts() {
        // 16 in by 8 in, 2 in thick, 1/2 in off each: 9 in from edge to edge, twice. A corner would
        // be 8 + 1 + 1/2 and 16 + 1 + 1/2, 27 in.
        near(
            punching_outline_in([16.0, 8.0], 2.0, &[0.5, 0.5]),
            18.0,
            1e-12,
        );
        // More edges and nearer ones never lengthen it.
        let mut last = f64::INFINITY;
        for edges in [
            &[][..],
            &[9.0],
            &[4.0],
            &[4.0, 9.0],
            &[4.0, 4.0],
            &[4.0, 4.0, 4.0],
        ] {
            let found = punching_outline_in([16.0, 8.0], 2.0, edges);
            assert!(found <= last, "{edges:?}");
            last = found;
        }
        assert!(punching_outline_in([16.0, 8.0], 2.0, &[f64::NAN]).is_nan());
    }

    #[test]
    fn a_square_carries_two_fifths_of_its_moment_by_shear() {
        // ACI 318-19, R8.4.4.2.2 (from memory): 60 % by bending for a square, 40 % by shear.
        near(moment_share(12.0, 12.0), 0.40, 1e-12);
        assert!(moment_share(24.0, 12.0) > 0.40 && moment_share(12.0, 24.0) < 0.40);
        // The outline's faces by summing over thin strips; the small twist of the faces across
        // the span (b1 d^3/6) apart.
        let (b1, b2, d) = (18.0, 24.0, 4.0);
        let strips = 2000;
        let width = b1 / f64::from(strips);
        let along: f64 = (0..strips)
            .map(|k| (f64::from(k) + 0.5) * width - 0.5 * b1)
            .map(|s| 2.0 * d * width * s * s)
            .sum();
        let across = 2.0 * d * b2 * (0.5 * b1) * (0.5 * b1);
        let twist = b1 * d * d * d / 6.0;
        near(
            polar_section_in3(b1, b2, d),
            (along + across + twist) / (0.5 * b1),
            1e-2,
        );
        // Without a moment it is the load over the outline.
        let even = punching_stress_psi(1000.0, [0.0; 2], [12.0, 12.0], 2.0);
        near(even, 1000.0 / (56.0 * 2.0), 1e-9);
        let turned = punching_stress_psi(1000.0, [-5000.0, 0.0], [12.0, 12.0], 2.0);
        near(
            turned - even,
            0.4 * 5000.0 / polar_section_in3(14.0, 14.0, 2.0),
            1e-9,
        );
        assert!(punching_stress_psi(1.0, [f64::NAN, 0.0], [12.0, 12.0], 2.0).is_nan());
    }
}

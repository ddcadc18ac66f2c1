//! What do other published methods say of a load on a slab?
//!
//! For comparison; none of them decides a verdict here.

/// The load that a post may bring to a slab on ground when all of it yields, lbf:
/// 1.72 [(k R<sub>1</sub>/E<sub>c</sub>) 10⁴ + 3.60] f<sub>t</sub> d², R<sub>1</sub> half the root
/// of the plate's area (Azzi and Laird, *Structure*, April 2008, after Shentu and others 1997). It
/// has no factor of safety in it.
#[must_use]
pub fn yielding_lbf(
    subgrade_pci: f64,
    loaded_in2: f64,
    elastic_psi: f64,
    rupture_psi: f64,
    thickness_in: f64,
) -> f64 {
    let r1 = 0.5 * loaded_in2.sqrt();
    1.72 * (subgrade_pci * r1 / elastic_psi * 1e4 + 3.60)
        * rupture_psi
        * thickness_in
        * thickness_in
}

/// The load that may lie all over a floor, psf: 257.876 s √(kh/E), s half the modulus of rupture
/// (UFC 3-320-06A, stationary live loads).
#[must_use]
pub fn stationary_psf(
    rupture_psi: f64,
    subgrade_pci: f64,
    thickness_in: f64,
    elastic_psi: f64,
) -> f64 {
    257.876 * 0.5 * rupture_psi * (subgrade_pci * thickness_in / elastic_psi).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plate_on_four_inches() {
        // Worked out from the formula: k 100, 12 in by 12 in, E 3.6e6, ft 474.3 psi, 4 in.
        let load = yielding_lbf(100.0, 144.0, 3.6e6, 474.3, 4.0);
        assert!((load - 68_750.0).abs() < 30.0, "{load}");
    }

    #[test]
    fn loads_all_over_a_floor() {
        // Worked out from the formula of UFC 3-320-06A with E 4e6 and k 100.
        for (thickness, expected) in [
            (6.0, [869.0, 947.0, 1026.0, 1105.0]),
            (8.0, [1003.0, 1094.0, 1185.0, 1276.0]),
        ] {
            for (rupture, psf) in [550.0, 600.0, 650.0, 700.0].into_iter().zip(expected) {
                let found = stationary_psf(rupture, 100.0, thickness, 4e6);
                assert!((found - psf).abs() <= 1.0, "{found} not {psf}");
            }
        }
    }
}

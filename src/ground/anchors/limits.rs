//! Which strength reduction, spacing, edge distance and depth does the code ask for?
//!
//! ACI 318-19, 17.5.3 and 17.9. Lengths in inches.

use crate::bay::AnchorKind;

/// φ of the steel (Table 17.5.3(a)): in tension 0.75 where it is ductile and 0.65 where it is not
/// known to be; in shear 0.65 and 0.60.
#[must_use]
pub const fn phi_steel(ductile: bool, in_tension: bool) -> f64 {
    match (ductile, in_tension) {
        (true, true) => 0.75,
        (true, false) | (false, true) => 0.65,
        (false, false) => 0.60,
    }
}

/// φ of concrete without supplementary reinforcement (Table 17.5.3(b) and (c)): cast in 0.70,
/// post-installed by category 0.65, 0.55, 0.45. Taken for shear too, where the code has as much or
/// more (from memory).
#[must_use]
pub const fn phi_concrete(cast_in: bool, category: u8) -> f64 {
    match (cast_in, category) {
        (true, _) => 0.70,
        (false, 1) => 0.65,
        (false, 2) => 0.55,
        (false, _) => 0.45,
    }
}

/// Least spacing, in diameters and for screws in embedments too (Table 17.9.2(a)). Anchors under a
/// lift are tightened, so that cast-in ones are taken as torqued.
#[must_use]
pub fn least_spacing(kind: Option<AnchorKind>, diameter: f64, hef: f64) -> f64 {
    let torqued = 6.0 * diameter;
    match kind {
        // Not known: what any kind may ask.
        Some(AnchorKind::Screw) | None => torqued.max(0.6 * hef),
        Some(_) => torqued,
    }
}

/// The least edge distance of any anchor without product data, inches: Table 17.9.2(b) asks the cover
/// of reinforcement too, 3 in on a side that is cast against the ground (Table 20.5.1.3.1, from
/// memory), and twice the greatest aggregate, for which 1 1/2 in are taken.
pub const LEAST_EDGE_IN: f64 = 3.0;

/// Least edge distance without product data, inches: so many diameters (Table 17.9.2(b)), and no less
/// than [`LEAST_EDGE_IN`].
#[must_use]
pub const fn least_edge(kind: Option<AnchorKind>, diameter: f64) -> f64 {
    let times = match kind {
        Some(AnchorKind::Wedge | AnchorKind::Sleeve) => 8.0,
        // Not known: the most that any kind asks.
        Some(AnchorKind::DropIn) | None => 10.0,
        Some(
            AnchorKind::Undercut | AnchorKind::Screw | AnchorKind::Adhesive | AnchorKind::CastIn,
        ) => 6.0,
    };
    let asked = times * diameter;
    if asked < LEAST_EDGE_IN {
        LEAST_EDGE_IN
    } else {
        asked
    }
}

/// c<sub>ac</sub> without product data, in embedments (17.9.5).
#[must_use]
pub const fn critical_edge(kind: Option<AnchorKind>, hef: f64) -> f64 {
    let times = match kind {
        Some(AnchorKind::Adhesive) => 2.0,
        Some(AnchorKind::Undercut) => 2.5,
        _ => 4.0,
    };
    times * hef
}

/// True where 17.9.4 limits the embedment by the thickness: expansion, undercut and screw anchors,
/// and those of which nothing is known.
#[must_use]
pub const fn depth_is_limited(kind: Option<AnchorKind>) -> bool {
    !matches!(kind, Some(AnchorKind::Adhesive | AnchorKind::CastIn))
}

/// The greatest effective embedment in concrete so thick, inches, unless tests say otherwise
/// (17.9.4): the greater of two thirds of it and all of it but 4 in.
#[must_use]
pub fn most_embedment_in(thickness_in: f64) -> f64 {
    (thickness_in * 2.0 / 3.0).max(thickness_in - 4.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 5e-4, "{found} not {expected}");
    }

    #[test]
    fn embedment_by_thickness() {
        // Worked out from 17.9.4; both branches meet at 12 in.
        for (slab, most) in [
            (4.0, 2.667),
            (5.0, 3.333),
            (6.0, 4.0),
            (8.0, 5.333),
            (12.0, 8.0),
            (14.0, 10.0),
        ] {
            near(most_embedment_in(slab), most);
        }
    }

    #[test]
    fn spacing_and_edges() {
        // Table 17.9.2(a) and (b) for 3/4 in.
        near(least_spacing(Some(AnchorKind::Wedge), 0.75, 4.0), 4.5);
        near(least_spacing(Some(AnchorKind::Screw), 0.75, 10.0), 6.0);
        near(least_edge(Some(AnchorKind::Sleeve), 0.75), 6.0);
        near(least_edge(Some(AnchorKind::DropIn), 0.75), 7.5);
        near(least_edge(Some(AnchorKind::Screw), 0.75), 4.5);
        // A thin anchor: the cover and twice the aggregate ask more than its diameters do.
        near(least_edge(Some(AnchorKind::Screw), 0.25), 3.0);
        near(least_edge(Some(AnchorKind::Wedge), 0.25), 3.0);
        near(critical_edge(Some(AnchorKind::Wedge), 3.0), 12.0);
        near(critical_edge(Some(AnchorKind::Undercut), 3.0), 7.5);
        near(critical_edge(Some(AnchorKind::Adhesive), 3.0), 6.0);
    }

    #[test]
    fn what_is_not_known_is_asked_the_most() {
        use AnchorKind::{Adhesive, CastIn, DropIn, Screw, Sleeve, Undercut, Wedge};
        for kind in [Wedge, Sleeve, DropIn, Undercut, Screw, Adhesive, CastIn] {
            assert!(least_edge(None, 1.0) >= least_edge(Some(kind), 1.0));
            assert!(least_spacing(None, 1.0, 20.0) >= least_spacing(Some(kind), 1.0, 20.0));
            assert!(critical_edge(None, 1.0) >= critical_edge(Some(kind), 1.0));
        }
        assert!(depth_is_limited(None));
        for category in [1, 2] {
            assert!(phi_concrete(false, 3) < phi_concrete(false, category));
        }
        near(phi_concrete(false, 1), 0.65);
        near(phi_concrete(true, 3), 0.70);
        assert!(phi_steel(false, true) < phi_steel(true, true));
    }
}

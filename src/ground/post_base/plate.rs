//! What does each anchor of a rigid plate pull with when a moment turns it?
//!
//! The plate stays flat and turns about the line where it presses on the slab; each anchor pulls
//! in proportion to its distance from that line, and those on the line or behind it do not pull.

/// The pull of each anchor, newtons, by its distance in metres ahead of the line about which the
/// plate turns (negative behind it), for what is left of the moment about that line once the load
/// on the plate is taken off it, newton metres. Nothing where the load outweighs the moment;
/// without end where no anchor can hold it.
#[must_use]
pub fn pulls(distances_m: &[f64], moment_nm: f64) -> Vec<f64> {
    if moment_nm <= 0.0 {
        return vec![0.0; distances_m.len()];
    }
    let ahead = |distance: &f64| distance.max(0.0);
    let squares: f64 = distances_m.iter().map(|d| ahead(d).powi(2)).sum();
    let per_metre = if squares > 0.0 {
        moment_nm / squares
    } else {
        f64::INFINITY
    };
    distances_m
        .iter()
        .map(|distance| {
            if squares > 0.0 {
                ahead(distance) * per_metre
            } else {
                f64::INFINITY
            }
        })
        .collect()
}

/// How far from the plate's middle it presses when it turns that way: half way between the
/// column's face and the plate's edge, metres. A plate is no stiffer than that where it stands out
/// past the column, and the shorter lever gives the greater pull. The project's own choice.
#[must_use]
pub fn presses_at_m(column_face_m: f64, plate_edge_m: f64) -> f64 {
    0.5 * (column_face_m.clamp(0.0, plate_edge_m) + plate_edge_m)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn overturning_with_rows_apart() {
        // Worked example of equipment anchorage (panacheg.com, "Center of gravity and overturning
        // of equipment anchorage"): 1800 lb at 18 in over the base, rows of two anchors 24 in
        // apart, overturning about the far row: 675 lb in each anchor of the near row. Units go
        // through unchanged: pounds and inches.
        let pulls = pulls(&[24.0, 24.0, 0.0, 0.0], 1_800.0 * 18.0);
        assert!((pulls[0] - 675.0).abs() < 1e-9 && (pulls[1] - 675.0).abs() < 1e-9);
        assert!(pulls[2].abs() < 1e-12 && pulls[3].abs() < 1e-12);
    }

    #[test]
    fn pulls_balance_the_moment() {
        let distances = [0.4, 0.3, 0.05, -0.1];
        let pulls = pulls(&distances, 5_000.0);
        let held: f64 = pulls.iter().zip(distances).map(|(t, d)| t * d).sum();
        assert!((held - 5_000.0).abs() < 1e-9);
        assert!(pulls[3].abs() < 1e-12);
    }

    #[test]
    fn no_anchor_ahead_holds_nothing() {
        assert!(pulls(&[-0.1, 0.0], 1.0).iter().all(|t| t.is_infinite()));
        assert_eq!(pulls(&[-0.1, 0.0], 0.0), [0.0, 0.0]);
    }

    #[test]
    fn presses_between_column_and_edge() {
        assert!((presses_at_m(0.1, 0.2) - 0.15).abs() < 1e-12);
        // A column past the plate's edge presses at the edge; one that ends behind the middle is
        // taken to end there.
        assert!((presses_at_m(0.3, 0.2) - 0.2).abs() < 1e-12);
        assert!((presses_at_m(-0.1, 0.2) - 0.1).abs() < 1e-12);
    }
}

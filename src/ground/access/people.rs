//! Who stands and sits under a raised body?

use crate::bay::{PERCENTILES, Percentile, SHOES};

/// Room to move over the head (EN 547-1, from memory). A helmet would add 60 mm more.
pub(super) const MOVEMENT_M: f64 = 0.050;
/// What is added to a stature: movement and shoes.
const ADDED_M: f64 = MOVEMENT_M + SHOES.m();
/// Sitting height as a share of stature: 0.52 (body segment lengths after Drillis and Contini,
/// from memory).
const SITTING_SHARE: f64 = 0.52;
/// Height of the seat of a low rolling stool: common practice, no source.
const STOOL_M: f64 = 0.38;

/// The height someone of this stature, without shoes, needs to stand and move under.
#[must_use]
pub fn stands_under_m(stature_m: f64) -> f64 {
    stature_m + ADDED_M
}

/// The height someone needs to sit under on a low rolling stool, with movement and shoes.
#[must_use]
pub fn sits_under_m(stature_m: f64) -> f64 {
    SITTING_SHARE * stature_m + STOOL_M + ADDED_M
}

/// The tallest of the percentiles that stand under this height; none when not even the shortest
/// does.
#[must_use]
pub fn tallest_percentile_standing(height_m: f64) -> Option<Percentile> {
    PERCENTILES
        .into_iter()
        .rfind(|one| stands_under_m(one.stature_m) <= height_m)
}

/// The tallest of the percentiles that sit under this height on a low rolling stool; none when not
/// even the shortest does.
#[must_use]
pub fn tallest_percentile_sitting(height_m: f64) -> Option<Percentile> {
    PERCENTILES
        .into_iter()
        .rfind(|one| sits_under_m(one.stature_m) <= height_m)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn statures_as_published_shortest_first() {
        // ANSUR II public data, computed percentiles: men 1648, 1755, 1870, 1927; women 1525,
        // 1626, 1740, 1777.6 mm at 5, 50, 95 and 99.
        for (who, expected) in [
            ("men", [1.648, 1.755, 1.870, 1.927]),
            ("women", [1.525, 1.626, 1.740, 1.7776]),
        ] {
            let found: Vec<f64> = PERCENTILES
                .iter()
                .filter(|one| one.who == who)
                .map(|one| one.stature_m)
                .collect();
            for (found, expected) in found.into_iter().zip(expected) {
                assert!((found - expected).abs() < 1e-12);
            }
        }
        assert!(
            PERCENTILES
                .windows(2)
                .all(|w| w[0].stature_m < w[1].stature_m)
        );
    }

    #[test]
    fn a_tall_man_with_helmet_needs_two_metres_and_two_hundredths() {
        // EN 547-1 additions, from memory: 1870 + 50 + 40 + 60 = 2020 mm.
        assert!((stands_under_m(1.870) + 0.060 - 2.020).abs() < 1e-12);
    }

    #[test]
    fn who_stands_under_a_height() {
        let under =
            |height: f64| tallest_percentile_standing(height).map(|one| (one.of_hundred, one.who));
        assert_eq!(under(1.9601), Some((95, "men")));
        assert_eq!(under(1.9599), Some((99, "women")));
        assert_eq!(under(1.6), None);
        assert_eq!(under(f64::NAN), None);
        let sitting =
            |height: f64| tallest_percentile_sitting(height).map(|one| (one.of_hundred, one.who));
        // 0.52 * 1.525 + 0.38 + 0.09 = 1.263; 0.52 * 1.927 + 0.47 = 1.472.
        assert_eq!(sitting(1.2629), None);
        assert_eq!(sitting(1.2631), Some((5, "women")));
        assert_eq!(sitting(1.4721), Some((99, "men")));
        assert_eq!(sitting(f64::NAN), None);
        // 0.52 * 1.755 + 0.38 + 0.09.
        assert!((sits_under_m(1.755) - 1.3826).abs() < 1e-9);
    }
}

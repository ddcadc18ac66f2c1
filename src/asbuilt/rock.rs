//! How far may a plate rock, and its column with it?
//!
//! Four tops rock a rigid plate by a gap that is the difference of two sums of two heights each. Levels
//! know that to some six standard deviations of one of them, which over a tall column is inches. A
//! feeler gauge knows it to the thickness of a leaf: with the anchors snug, none over so much goes in
//! under any corner. The plate may be held with a gap at both corners that do not carry, so that it
//! rocks by twice that.

use glam::DVec2;

use super::IN_STUDY;
use super::contact::Contact;
use crate::bay::{Measured, Side};

/// How far a plate may rock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rock {
    /// The most that may be open under one corner while the one across from it touches.
    pub gap_m: f64,
    /// How far that lets its column go, as slopes: across and along.
    pub goes: DVec2,
    /// No gap over this was felt under any corner; none where nobody tried.
    pub felt_m: Option<f64>,
    /// The least gap that the levels leave, with three standard deviations of them, where that is more
    /// than was felt: one of the two is wrong.
    pub levelled_m: Option<f64>,
}

impl Rock {
    /// Of a plate with corners at these places about its middle; none where it was neither felt nor
    /// levelled. `level_sd` is one standard deviation of one level.
    pub(super) fn of(
        places: &[DVec2; 4],
        contact: Option<&Contact>,
        level_sd: f64,
        felt_m: Option<f64>,
    ) -> Option<Self> {
        // The gap is made of the levels of four corners, each with its ±.
        let within = IN_STUDY * 2.0 * level_sd;
        let by_levels = contact.map(|contact| contact.rock_m + within);
        let by_feel = felt_m.map(|gap| 2.0 * gap);
        let gap_m = match (by_levels, by_feel) {
            (Some(levels), Some(feel)) => levels.min(feel),
            (one, other) => one.or(other)?,
        };
        let least = contact.map(|contact| contact.rock_m - within);
        let clashes = |least: &f64| by_feel.is_some_and(|feel| *least > feel);
        // It goes square to the diagonal that carries, by the gap over the distance of a corner from
        // there; both diagonals of a rectangle make the same of that.
        let diagonal = places[0].length();
        let away = places[0].perp_dot(places[1]).abs() / diagonal;
        let square_to = DVec2::new(places[0].y, places[0].x).abs() / diagonal;
        Some(Self {
            gap_m,
            goes: square_to * (gap_m / away),
            felt_m,
            levelled_m: least.filter(clashes),
        })
    }
}

/// What was felt under a post's plate.
pub(super) fn felt(measured: &Measured, side: Side) -> Option<f64> {
    let mut of_post = measured.feeler.iter().filter(|one| one.side == side);
    of_post.next().map(|one| one.gap.m())
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLACES: [DVec2; 4] = [
        DVec2::new(-0.22, -0.26),
        DVec2::new(0.22, -0.26),
        DVec2::new(0.22, 0.26),
        DVec2::new(-0.22, 0.26),
    ];

    /// As far as on tops that have that gap, whichever corner is low.
    #[test]
    fn a_plate_goes_by_its_gap_as_on_tops_with_that_gap() {
        let gap = 0.003;
        for low in 0..4 {
            let tops = [0, 1, 2, 3].map(|i| if i == low { -gap } else { 0.0 });
            let contact = Contact::on(&PLACES, &tops);
            let goes = (contact.slopes[1] - contact.slopes[0]).abs();
            let rock = Rock::of(&PLACES, Some(&contact), 0.0, None).unwrap();
            assert!((rock.gap_m - gap).abs() < 1e-12);
            assert!((rock.goes - goes).length() < 1e-12, "{rock:?} {goes}");
        }
    }

    #[test]
    fn levels_leave_a_gap_that_a_feeler_gauge_does_not() {
        let flat = Contact::on(&PLACES, &[0.0; 4]);
        let level_sd = 0.000_5;
        let levelled = Rock::of(&PLACES, Some(&flat), level_sd, None).unwrap();
        assert!((levelled.gap_m - 0.003).abs() < 1e-12);
        let felt = Rock::of(&PLACES, Some(&flat), level_sd, Some(0.000_1)).unwrap();
        assert!((felt.gap_m - 0.000_2).abs() < 1e-12);
        assert!(felt.goes.length() < levelled.goes.length() / 10.0);
        assert_eq!(Rock::of(&PLACES, None, level_sd, None), None);
        let alone = Rock::of(&PLACES, None, level_sd, Some(0.000_1)).unwrap();
        assert_eq!(alone.goes, felt.goes);
        // Fine levels know it better than a thick leaf.
        let fine = Rock::of(&PLACES, Some(&flat), 0.000_01, Some(0.001)).unwrap();
        assert!((fine.gap_m - 0.000_06).abs() < 1e-12);
    }

    #[test]
    fn a_gap_that_the_levels_are_sure_of_contradicts_what_was_felt() {
        let low = Contact::on(&PLACES, &[-0.005, 0.0, 0.0, 0.0]);
        let of = |level_sd| Rock::of(&PLACES, Some(&low), level_sd, Some(0.000_1)).unwrap();
        assert!(of(0.000_1).levelled_m.is_some());
        assert_eq!(of(0.001).levelled_m, None);
    }
}

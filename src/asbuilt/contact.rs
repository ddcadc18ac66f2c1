//! On which corners does a plate stand, and how may it lie on them?
//!
//! A plate is rigid and can't sink into concrete or shims: it rests on tops from above. Of four tops
//! under a rectangle those of one diagonal carry; about that diagonal the plate may rock, from
//! touching one of the other two corners to touching the other. Where all four tops lie in one
//! plane both are the same.

use glam::DVec2;

/// How a plate lies on what is under its corners.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    /// The slopes (rise per length along x and along y) at both ends of its rocking.
    pub slopes: [DVec2; 2],
    /// Height of the middle of its underside; the same however it rocks.
    pub middle_m: f64,
    /// The diagonal that carries, by the number of its corner at the rear: 1 (with 3) or 2 (with 4).
    pub carries: u8,
    /// The gap under one of the other two corners while it touches at the other.
    pub rock_m: f64,
}

impl Contact {
    /// Of a plate with corners at these places about its middle, by their numbers, on these tops.
    #[must_use]
    pub fn on(places: &[DVec2; 4], tops: &[f64; 4]) -> Self {
        let means = [(tops[0] + tops[2]) * 0.5, (tops[1] + tops[3]) * 0.5];
        let (on, off) = if means[0] >= means[1] { (0, 1) } else { (1, 0) };
        let middle_m = means[on];
        let (p, q) = (places[on], places[off]);
        let along = (tops[on] - tops[on + 2]) * 0.5;
        // The plane through the diagonal that carries, and this high over its middle at the corner
        // beside it.
        let plane = |beside: f64| {
            let det = p.perp_dot(q);
            DVec2::new(along * q.y - beside * p.y, beside * p.x - along * q.x) / det
        };
        Self {
            slopes: [plane(tops[off] - middle_m), plane(middle_m - tops[off + 2])],
            middle_m,
            carries: if on == 0 { 1 } else { 2 },
            rock_m: 2.0 * (means[on] - means[off]),
        }
    }

    /// The slope that it may lie at that comes nearest to one, measured in standard deviations.
    #[must_use]
    pub fn nearest(&self, slope: DVec2, sd: DVec2) -> DVec2 {
        let sd = sd.max(DVec2::splat(1e-12));
        let [one, other] = self.slopes;
        let way = (other - one) / sd;
        let length = way.length_squared();
        if length <= 0.0 {
            return one;
        }
        let share = ((slope - one) / sd).dot(way) / length;
        one.lerp(other, share.clamp(0.0, 1.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLACES: [DVec2; 4] = [
        DVec2::new(-0.22, -0.24),
        DVec2::new(0.22, -0.24),
        DVec2::new(0.22, 0.24),
        DVec2::new(-0.22, 0.24),
    ];

    fn at(contact: &Contact, end: usize, i: usize) -> f64 {
        contact.middle_m + contact.slopes[end].dot(PLACES[i])
    }

    #[test]
    fn a_plate_on_one_plane_lies_on_it() {
        let slope = DVec2::new(0.003, -0.002);
        let tops = PLACES.map(|place| 0.01 + slope.dot(place));
        let contact = Contact::on(&PLACES, &tops);
        for end in contact.slopes {
            assert!((end - slope).length() < 1e-12);
        }
        assert!((contact.middle_m - 0.01).abs() < 1e-12 && contact.rock_m.abs() < 1e-12);
    }

    #[test]
    fn it_touches_three_corners_at_each_end_and_sinks_into_none() {
        for tops in [
            [-0.003, 0.0, 0.0, 0.0],
            [0.01, 0.0, 0.01, 0.0],
            [0.001, -0.002, 0.0, 0.0015],
        ] {
            let contact = Contact::on(&PLACES, &tops);
            for end in 0..2 {
                let gaps = [0, 1, 2, 3].map(|i| at(&contact, end, i) - tops[i]);
                assert!(gaps.iter().all(|gap| *gap > -1e-12), "{gaps:?}");
                let touching = gaps.iter().filter(|gap| gap.abs() < 1e-12).count();
                assert!(touching >= 3, "{gaps:?}");
            }
        }
    }

    #[test]
    fn on_a_hump_it_stands_on_the_hump() {
        let contact = Contact::on(&PLACES, &[0.01, 0.0, 0.01, 0.0]);
        assert!((contact.middle_m - 0.01).abs() < 1e-12);
        assert_eq!(contact.carries, 1);
        assert!((contact.rock_m - 0.02).abs() < 1e-12);
        // Level lies between both ends.
        assert!(contact.nearest(DVec2::ZERO, DVec2::ONE).length() < 1e-12);
    }
}

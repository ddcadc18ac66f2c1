//! Where does a track run: straight up the jamb, round a quarter circle, then level into the bay?

use std::f64::consts::FRAC_PI_2;

use glam::DVec2;

/// The middle line of a track in the plane of `y` (into the bay) and `z` (up): `DVec2::new(y, z)`,
/// metres. Places on it are lengths along it from its foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Track {
    /// Where it starts: at the floor, in the plane the shut door stands in.
    pub(super) foot: DVec2,
    /// Length of the upright run; infinite for a track without a curve.
    pub(super) upright_m: f64,
    /// Radius of the quarter circle; may be zero.
    pub(super) radius_m: f64,
}

impl Track {
    /// Where the curve ends and the level run starts, along the track.
    pub(super) fn level_from_m(&self) -> f64 {
        self.upright_m + self.radius_m * FRAC_PI_2
    }

    /// The angle turned at `along_m`, from upright: 0 to a quarter turn.
    fn turned(&self, along_m: f64) -> f64 {
        if along_m <= self.upright_m {
            0.0
        } else if along_m >= self.level_from_m() {
            FRAC_PI_2
        } else {
            (along_m - self.upright_m) / self.radius_m
        }
    }

    /// The place at `along_m`.
    pub(super) fn point(&self, along_m: f64) -> DVec2 {
        if along_m <= self.upright_m {
            return self.foot + DVec2::new(0.0, along_m);
        }
        let (sin, cos) = self.turned(along_m).sin_cos();
        let level = (along_m - self.level_from_m()).max(0.0);
        let radius = self.radius_m;
        self.foot + DVec2::new(radius * (1.0 - cos) + level, self.upright_m + radius * sin)
    }

    /// The direction of travel at `along_m`, a unit vector.
    pub(super) fn tangent(&self, along_m: f64) -> DVec2 {
        let (sin, cos) = self.turned(along_m).sin_cos();
        DVec2::new(sin, cos)
    }

    /// The place beyond `from_m` that lies `chord_m` from `point` in a straight line.
    ///
    /// Where the track from `from_m` on leads away from `point` (its direction never more than a
    /// right angle off the line from `point`), the distance only grows along it and the place is
    /// unique. Every track here turns by a quarter at most, so this holds for a point of the track
    /// itself at `from_m`; and the distance is then at least the length along the track times the
    /// cosine of half that turn, so the place lies within √2 chords of `from_m`.
    pub(super) fn ahead_m(&self, point: DVec2, from_m: f64, chord_m: f64) -> f64 {
        let (mut low, mut high) = (from_m, from_m + 2.0 * chord_m);
        // Halving ends when no number lies between the two, long before this bound.
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if middle <= low || middle >= high {
                break;
            }
            if self.point(middle).distance(point) < chord_m {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high)
    }

    /// Corners of a triangle that holds the track from `a_m` to `b_m`: both ends and the meeting
    /// point of the tangents there. A curve that turns one way, by a right angle at most, lies
    /// between its chord and its end tangents.
    pub(super) fn triangle(&self, a_m: f64, b_m: f64) -> Vec<DVec2> {
        let (a, b) = (self.point(a_m), self.point(b_m));
        let (from_a, from_b) = (self.tangent(a_m), self.tangent(b_m));
        let turn = from_a.perp_dot(from_b);
        // Below this the tangents are parallel to a part in 10^9 and the chord is the track to
        // within a nanometre per metre, which the envelope's rounding allowance takes in.
        if turn.abs() < 1e-9 {
            return vec![a, b];
        }
        let reach = (b - a).perp_dot(from_b) / turn;
        vec![a, b, a + from_a * reach]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::SQRT_2;

    const TRACK: Track = Track {
        foot: DVec2::new(0.05, 0.0),
        upright_m: 2.0,
        radius_m: 0.4,
    };

    #[test]
    fn points_worked_by_hand() {
        let close = |along: f64, y: f64, z: f64| {
            assert!(TRACK.point(along).distance(DVec2::new(y, z)) < 1e-12);
        };
        close(1.0, 0.05, 1.0);
        close(2.0, 0.05, 2.0);
        // Half the quarter circle: 0.4 (1 - 1/√2) in, 0.4/√2 up.
        let half = 0.4 / SQRT_2;
        close(2.0 + 0.4 * FRAC_PI_2 / 2.0, 0.05 + 0.4 - half, 2.0 + half);
        close(2.0 + 0.4 * FRAC_PI_2 + 1.0, 1.45, 2.4);
    }

    #[test]
    fn the_triangle_holds_the_track() {
        for i in 0..60 {
            for j in i + 1..60 {
                let (a, b) = (0.06 * f64::from(i), 0.06 * f64::from(j));
                let triangle = TRACK.triangle(a, b);
                let outline = crate::solids::outline::convex_outline(triangle);
                for k in 0..=20 {
                    let point = TRACK.point(a + (b - a) * f64::from(k) / 20.0);
                    let outside = (0..outline.len()).any(|c| {
                        let (p, q) = (outline[c], outline[(c + 1) % outline.len()]);
                        (q - p).perp_dot(point - p) < -1e-9
                    });
                    assert!(!outside, "{a} {b} {k}");
                }
            }
        }
    }
}

//! Which is the shortest move that keeps to every boundary?
//!
//! What an arm reaches is a sector of a ring, so the moves of the vehicle that leave its lift point
//! within reach are bounded by circles and straight lines, and those that do for every arm by the
//! circles and lines of all. The shortest allowed move is no move, or the point of one boundary
//! that is nearest to it, or a corner where two boundaries cross: a few thousand points, each tried
//! exactly. No grid, so no shorter one is passed over.

use glam::DVec2;

/// A boundary in the plane of moves, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Curve {
    /// A circle.
    Circle {
        /// Its middle.
        middle: DVec2,
        /// Its radius.
        radius: f64,
    },
    /// A straight line.
    Line {
        /// A point on it.
        through: DVec2,
        /// Its direction, unit length.
        along: DVec2,
    },
}

impl Curve {
    /// The points of the curve that may be nearest to no move.
    fn nearest(self, found: &mut Vec<DVec2>) {
        match self {
            Self::Circle { middle, radius } => {
                let out = middle.normalize_or_zero() * radius;
                found.extend([middle - out, middle + out]);
            }
            Self::Line { through, along } => {
                found.push(through - along * through.dot(along));
            }
        }
    }

    /// Where two curves cross.
    fn crossings(self, other: Self, found: &mut Vec<DVec2>) {
        match (self, other) {
            (
                Self::Circle { middle, radius },
                Self::Circle {
                    middle: second,
                    radius: other,
                },
            ) => {
                let between = second - middle;
                let apart = between.length();
                if apart > 0.0 {
                    let along = (apart * apart + radius * radius - other * other) / (2.0 * apart);
                    let foot = middle + between * (along / apart);
                    chord(foot, between.perp() / apart, radius, along, found);
                }
            }
            (Self::Line { through, along }, Self::Circle { middle, radius })
            | (Self::Circle { middle, radius }, Self::Line { through, along }) => {
                let foot = through + along * (middle - through).dot(along);
                chord(foot, along, radius, foot.distance(middle), found);
            }
            (
                Self::Line { through, along },
                Self::Line {
                    through: second,
                    along: other,
                },
            ) => {
                let turn = along.perp_dot(other);
                if turn != 0.0 {
                    let share = (second - through).perp_dot(other) / turn;
                    found.push(through + along * share);
                }
            }
        }
    }
}

/// Both ends of a circle's chord whose middle lies `from_middle` from the circle's.
fn chord(foot: DVec2, along: DVec2, radius: f64, from_middle: f64, found: &mut Vec<DVec2>) {
    let square = radius * radius - from_middle * from_middle;
    if square >= 0.0 {
        let half = square.sqrt();
        found.extend([foot + along * half, foot - along * half]);
    }
}

/// The shortest move, no longer than `longest_m`, for which `holds` is true, where all that bounds
/// such moves are these curves; none when there is no such move.
pub fn shortest(
    curves: &[Curve],
    longest_m: f64,
    mut holds: impl FnMut(DVec2) -> bool,
) -> Option<DVec2> {
    if holds(DVec2::ZERO) {
        return Some(DVec2::ZERO);
    }
    let mut tried = Vec::new();
    for (index, curve) in curves.iter().enumerate() {
        curve.nearest(&mut tried);
        for other in &curves[index + 1..] {
            curve.crossings(*other, &mut tried);
        }
    }
    tried.retain(|point| point.is_finite() && point.length_squared() <= longest_m * longest_m);
    tried.sort_by(|a, b| a.length_squared().total_cmp(&b.length_squared()));
    tried.into_iter().find(|&point| holds(point))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_disc_a_line_and_a_corner() {
        let disc = Curve::Circle {
            middle: DVec2::new(3.0, 4.0),
            radius: 2.0,
        };
        let inside = |p: DVec2| p.distance(DVec2::new(3.0, 4.0)) <= 2.0 + 1e-12;
        // Toward the middle, 5 less the radius.
        let found = shortest(&[disc], 9.0, inside).unwrap();
        assert!(found.distance(DVec2::new(1.8, 2.4)) < 1e-12, "{found}");
        // Right of x = 3 as well: straight below the middle.
        let line = Curve::Line {
            through: DVec2::new(3.0, 0.0),
            along: DVec2::Y,
        };
        let found = shortest(&[disc, line], 9.0, |p| inside(p) && p.x >= 3.0 - 1e-12).unwrap();
        assert!(found.distance(DVec2::new(3.0, 2.0)) < 1e-12, "{found}");
        assert_eq!(shortest(&[disc], 2.9, inside), None);
        assert_eq!(shortest(&[disc, line], 9.0, |_| false), None);
        assert_eq!(shortest(&[], 9.0, |_| true), Some(DVec2::ZERO));
    }

    #[test]
    fn circles_that_touch_or_share_their_middle() {
        let circle = |x: f64, radius| Curve::Circle {
            middle: DVec2::new(x, 0.0),
            radius,
        };
        let mut found = Vec::new();
        circle(0.0, 1.0).crossings(circle(3.0, 2.0), &mut found);
        assert!(found.iter().all(|p| p.distance(DVec2::X) < 1e-12));
        assert_eq!(found.len(), 2);
        found.clear();
        circle(0.0, 1.0).crossings(circle(0.0, 2.0), &mut found);
        circle(0.0, 1.0).crossings(circle(9.0, 2.0), &mut found);
        assert!(found.is_empty());
    }
}

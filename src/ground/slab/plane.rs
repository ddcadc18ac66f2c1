//! How far are points, lines, rectangles and outlines apart in plan?

use glam::DVec2;

/// Noise of the conversion to metres that is not taken for a distance, in metres.
pub(super) const NOISE_M: f64 = 1e-9;

/// A rectangle along the axes, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Its corner toward the left and the door.
    pub low: DVec2,
    /// Its corner toward the right and the back.
    pub high: DVec2,
}

impl Rect {
    /// From a point to it; 0 inside.
    #[must_use]
    pub fn distance_m(&self, point: DVec2) -> f64 {
        (self.low - point)
            .max(point - self.high)
            .max(DVec2::ZERO)
            .length()
    }

    /// The place in it that is nearest to a point.
    pub(super) fn nearest(&self, point: DVec2) -> DVec2 {
        point.clamp(self.low, self.high)
    }

    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> DVec2 {
        (self.low + self.high) * 0.5
    }

    /// Its corners, one after another around it.
    #[must_use]
    pub fn corners(&self) -> [DVec2; 4] {
        let (low, high) = (self.low, self.high);
        [
            low,
            DVec2::new(high.x, low.y),
            high,
            DVec2::new(low.x, high.y),
        ]
    }

    /// The same, smaller by so much on every side; never turned inside out.
    pub(super) fn shrunk(&self, by: f64) -> Self {
        let middle = self.middle();
        Self {
            low: (self.low + by).min(middle),
            high: (self.high - by).max(middle),
        }
    }

    /// True when a line from one point to another meets it.
    pub(super) fn meets(&self, [from, to]: [DVec2; 2]) -> bool {
        // The share of the line that lies within both pairs of sides (Liang and Barsky's clipping).
        let way = to - from;
        let (mut first, mut last) = (0.0_f64, 1.0_f64);
        for axis in 0..2 {
            let (low, high) = (self.low[axis] - from[axis], self.high[axis] - from[axis]);
            if way[axis].abs() < NOISE_M {
                if low > 0.0 || high < 0.0 {
                    return false;
                }
            } else {
                let (a, b) = (low / way[axis], high / way[axis]);
                first = first.max(a.min(b));
                last = last.min(a.max(b));
            }
        }
        first <= last
    }

    /// From a line to it; 0 where they meet.
    #[must_use]
    pub fn line_distance_m(&self, line: [DVec2; 2]) -> f64 {
        if self.meets(line) {
            return 0.0;
        }
        let corners = self.corners().map(|corner| distance_m(corner, line));
        let ends = line.map(|end| self.distance_m(end));
        corners
            .iter()
            .chain(&ends)
            .copied()
            .fold(f64::INFINITY, f64::min)
    }
}

/// From a point to a line between two points, which may be one and the same.
pub(super) fn distance_m(point: DVec2, [from, to]: [DVec2; 2]) -> f64 {
    let way = to - from;
    let length_squared = way.length_squared();
    let share = if length_squared > 0.0 {
        ((point - from).dot(way) / length_squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    point.distance(from + way * share)
}

/// True when two lines between points cross; lines that only touch may count either way.
pub(super) fn cross([a, b]: [DVec2; 2], [c, d]: [DVec2; 2]) -> bool {
    let side = |from: DVec2, to: DVec2, point: DVec2| (to - from).perp_dot(point - from) > 0.0;
    side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
}

/// The sides of an outline, the last back to the first.
pub(super) fn sides(outline: &[DVec2]) -> impl Iterator<Item = [DVec2; 2]> + '_ {
    let next = outline.iter().cycle().skip(1);
    outline.iter().zip(next).map(|(from, to)| [*from, *to])
}

/// True when a point lies within an outline or on it. A side counts once however often others
/// cross it (even and odd).
pub(super) fn inside(outline: &[DVec2], point: DVec2) -> bool {
    let mut is_in = false;
    for [a, b] in sides(outline) {
        if distance_m(point, [a, b]) <= NOISE_M {
            return true;
        }
        if (a.y > point.y) != (b.y > point.y) {
            let x = a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y);
            if point.x < x {
                is_in = !is_in;
            }
        }
    }
    is_in
}

/// The area within an outline, whichever way round it goes.
pub(super) fn area_m2(outline: &[DVec2]) -> f64 {
    0.5 * sides(outline)
        .map(|[a, b]| a.perp_dot(b))
        .sum::<f64>()
        .abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    const RECT: Rect = Rect {
        low: DVec2::new(1.0, 2.0),
        high: DVec2::new(3.0, 5.0),
    };

    fn near(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-12, "{a} {b}");
    }

    #[test]
    fn distances_by_hand() {
        near(RECT.distance_m(DVec2::new(2.0, 3.0)), 0.0);
        // 3 left and 4 below the lower left corner: 5.
        near(RECT.distance_m(DVec2::new(-2.0, -2.0)), 5.0);
        let at = DVec2::new;
        near(distance_m(at(0.0, 1.0), [at(-1.0, 0.0), at(1.0, 0.0)]), 1.0);
        near(distance_m(at(4.0, 4.0), [at(-1.0, 0.0), at(1.0, 0.0)]), 5.0);
        near(distance_m(at(3.0, 4.0), [DVec2::ZERO; 2]), 5.0);
        // Through it, past a corner, beside it, and wholly within.
        near(RECT.line_distance_m([at(0.0, 3.0), at(9.0, 3.0)]), 0.0);
        near(RECT.line_distance_m([at(0.0, 0.0), at(9.0, 0.0)]), 2.0);
        near(RECT.line_distance_m([at(4.0, 0.0), at(4.0, 9.0)]), 1.0);
        near(RECT.line_distance_m([at(2.0, 3.0), at(2.0, 4.0)]), 0.0);
        // The line x + y = 0 lies (1 + 2) / sqrt 2 off the corner.
        let slanting = [at(-9.0, 9.0), at(9.0, -9.0)];
        near(RECT.line_distance_m(slanting), 3.0 / 2.0_f64.sqrt());
    }

    #[test]
    fn within_an_outline() {
        // An L: the square of 2 by 2 without its upper right quarter.
        let l: Vec<DVec2> = [
            (0.0, 0.0),
            (2.0, 0.0),
            (2.0, 1.0),
            (1.0, 1.0),
            (1.0, 2.0),
            (0.0, 2.0),
        ]
        .map(|(x, y)| DVec2::new(x, y))
        .into();
        near(area_m2(&l), 3.0);
        for (x, y, is_in) in [
            (0.5, 0.5, true),
            (1.5, 1.5, false),
            (1.0, 1.5, true),
            (2.0, 0.5, true),
            (2.1, 0.5, false),
            (-0.1, 1.0, false),
            (f64::NAN, 1.0, false),
        ] {
            assert_eq!(inside(&l, DVec2::new(x, y)), is_in, "{x} {y}");
        }
        assert!(!inside(&[], DVec2::ZERO));
    }
}

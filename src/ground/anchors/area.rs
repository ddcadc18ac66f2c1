//! How large is the concrete surface that pulled anchors would break out, seen from above?
//!
//! A<sub>Nc</sub> of ACI 318-19, 17.6.2.1: squares of 3h<sub>ef</sub> around the anchors, taken
//! once where they overlap and cut off at edges. For anchors in rows this is the code's rectangle;
//! for scattered ones it is less, which is on the safe side.

/// The side of a line on which the concrete lies: `normal · p ≤ offset`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Unit vector out of the concrete.
    pub normal: [f64; 2],
    /// Where the line lies along it.
    pub offset: f64,
}

impl Cut {
    /// How far a point lies inside; negative: outside.
    #[must_use]
    pub fn inside(&self, point: [f64; 2]) -> f64 {
        self.offset - self.normal[0] * point[0] - self.normal[1] * point[1]
    }
}

/// The area of the union of squares of half size `half` around `points`, cut by `cuts`.
#[must_use]
pub fn union_area(points: &[[f64; 2]], half: f64, cuts: &[Cut]) -> f64 {
    let ticks = |axis: usize| {
        let mut all: Vec<f64> = points
            .iter()
            .flat_map(|p| [p[axis] - half, p[axis] + half])
            .collect();
        all.sort_by(f64::total_cmp);
        all
    };
    let (xs, ys) = (ticks(0), ticks(1));
    let mut area = 0.0;
    for x in xs.windows(2) {
        for y in ys.windows(2) {
            let middle = [0.5 * (x[0] + x[1]), 0.5 * (y[0] + y[1])];
            let covered = points
                .iter()
                .any(|p| (p[0] - middle[0]).abs() < half && (p[1] - middle[1]).abs() < half);
            if covered {
                area += cell_area([x[0], x[1]], [y[0], y[1]], cuts);
            }
        }
    }
    area
}

fn cell_area(x: [f64; 2], y: [f64; 2], cuts: &[Cut]) -> f64 {
    if cuts.is_empty() {
        return (x[1] - x[0]) * (y[1] - y[0]);
    }
    let mut corners = vec![[x[0], y[0]], [x[1], y[0]], [x[1], y[1]], [x[0], y[1]]];
    for cut in cuts {
        corners = clipped(&corners, cut);
    }
    let mut twice = 0.0;
    for (k, a) in corners.iter().enumerate() {
        let b = corners[(k + 1) % corners.len()];
        twice += a[0] * b[1] - b[0] * a[1];
    }
    0.5 * twice
}

/// A convex outline without what lies outside of a cut.
fn clipped(corners: &[[f64; 2]], cut: &Cut) -> Vec<[f64; 2]> {
    let mut out = Vec::with_capacity(corners.len() + 1);
    for (k, a) in corners.iter().enumerate() {
        let b = &corners[(k + 1) % corners.len()];
        let (inside_a, inside_b) = (cut.inside(*a), cut.inside(*b));
        if inside_a >= 0.0 {
            out.push(*a);
        }
        if (inside_a > 0.0 && inside_b < 0.0) || (inside_a < 0.0 && inside_b > 0.0) {
            let t = inside_a / (inside_a - inside_b);
            out.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} not {expected}");
    }

    const RIGHT_EDGE: Cut = Cut {
        normal: [1.0, 0.0],
        offset: 3.0,
    };

    #[test]
    fn one_anchor_is_a_square() {
        near(union_area(&[[1.0, 2.0]], 3.0, &[]), 36.0);
    }

    #[test]
    fn rows_are_the_codes_rectangle() {
        // Two by two at 8 in with hef 3.25 in: (8 + 9.75)^2.
        let four = [[0.0, 0.0], [8.0, 0.0], [0.0, 8.0], [8.0, 8.0]];
        near(union_area(&four, 4.875, &[]), 315.0625);
        // Farther than 3hef apart they are four.
        let far = [[0.0, 0.0], [10.0, 0.0], [0.0, 10.0], [10.0, 10.0]];
        near(union_area(&far, 4.875, &[]), 4.0 * 9.75 * 9.75);
    }

    #[test]
    fn edges_cut_it() {
        near(union_area(&[[0.0, 0.0]], 5.0, &[RIGHT_EDGE]), 80.0);
        // Half a square beyond a slanting line through its middle.
        let root = 0.5_f64.sqrt();
        let slanting = Cut {
            normal: [root, root],
            offset: 0.0,
        };
        near(union_area(&[[0.0, 0.0]], 5.0, &[slanting]), 50.0);
        near(union_area(&[[9.0, 0.0]], 5.0, &[RIGHT_EDGE]), 0.0);
    }

    #[test]
    fn scattered_anchors_are_no_more_than_their_rectangle() {
        let three = [[0.0, 0.0], [6.0, 1.0], [2.0, 7.0]];
        let area = union_area(&three, 4.0, &[]);
        assert!(area > 64.0 && area < (6.0 + 8.0) * (7.0 + 8.0));
        // By counting points of a fine grid.
        let step = 0.01;
        let mut counted = 0.0;
        for i in -500..1200 {
            for k in -500..1200 {
                let p = [f64::from(i) * step + 0.005, f64::from(k) * step + 0.005];
                if three
                    .iter()
                    .any(|q| (p[0] - q[0]).abs() < 4.0 && (p[1] - q[1]).abs() < 4.0)
                {
                    counted += step * step;
                }
            }
        }
        assert!((area - counted).abs() < 0.1, "{area} not {counted}");
    }
}

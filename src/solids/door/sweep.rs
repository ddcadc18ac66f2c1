//! What holds every place that a stiff bar takes while its two ends run along their paths?
//!
//! A panel seen from the side is a bar between two joints, thickened to its faces. Let the lower
//! joint `P` run over an interval of its path and the upper joint `Q` over one of its own, and let
//! the bar's direction turn one way, from its direction at the interval's start to that at its
//! end. Then:
//!
//! 1. `P` stays in a convex piece `A`, `Q` in a convex piece `B`, both given by corners.
//! 2. A point of the bar's middle line, `(1-λ)P + λQ`, lies in the hull of `(1-λ)A + λB`; for `λ`
//!    from `λ₀` to 1, in the hull of the corners at `λ = λ₀` and at `λ = 1`, since the point is a
//!    mean of the two points at those ends.
//! 3. A point of the thickened bar is such a point plus `w n`, with `n` the bar's bay side and `w`
//!    between the offsets of its two faces. `n` turns between its directions at the ends of the
//!    interval, so `w n` lies on a circle of radius `|w|` between `w n₀` and `w n₁`: in the hull of
//!    those two and the meeting point of the tangents there. These triangles for all `w` lie in
//!    the hull of the triangles for the two faces; where both faces lie on the same side, the
//!    nearer one needs no tangents, since its circle bulges toward the farther one.
//! 4. So the point lies in the hull of all sums of a corner of step 2 and a corner of step 3.
//!
//! That hull is one convex solid per interval: it holds the whole panel at every travel of the
//! interval, not only its corners.

use glam::DVec2;

use super::sectional::bay_side;

/// Added all round every hull, so that rounding can't leave a corner outside: a micrometre.
const ROUNDING_M: f64 = 1e-6;

/// One interval of a bar's motion.
pub(super) struct Sweep {
    /// Corners whose hull holds the lower joint.
    pub(super) lower: Vec<DVec2>,
    /// Corners whose hull holds the upper joint.
    pub(super) upper: Vec<DVec2>,
    /// The bar's direction, lower to upper joint, at the start and at the end of the interval.
    pub(super) along: [DVec2; 2],
    /// Where the solid part of the bar starts: 0 at the lower joint, 1 at the upper.
    pub(super) from: f64,
    /// Offsets of its two faces from the middle line, toward the bay side: the lesser (which may be
    /// negative), then the greater (which may not).
    pub(super) faces_m: [f64; 2],
}

impl Sweep {
    /// Points whose convex hull holds every place of the bar, as shown above.
    pub(super) fn points(&self) -> Vec<DVec2> {
        let mut middles = self.upper.clone();
        for lower in &self.lower {
            middles.extend(self.upper.iter().map(|upper| lower.lerp(*upper, self.from)));
        }
        let offsets = self.offsets();
        let mut points = Vec::with_capacity(middles.len() * offsets.len() * 4);
        for middle in middles {
            for offset in &offsets {
                for (y, z) in [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)] {
                    points.push(middle + *offset + ROUNDING_M * DVec2::new(y, z));
                }
            }
        }
        points
    }

    /// Corners whose hull holds every offset of a point of the bar from its middle line.
    fn offsets(&self) -> Vec<DVec2> {
        let [start, end] = self.along.map(bay_side);
        let middle = (start + end).normalize_or(start);
        // The tangents at both ends meet at radius / cos(half the turn).
        let tangent = middle / middle.dot(start);
        let [near, far] = self.faces_m;
        let mut offsets = vec![
            start * near,
            end * near,
            start * far,
            end * far,
            tangent * far,
        ];
        if near < 0.0 {
            offsets.push(tangent * near);
        }
        offsets
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::outline::convex_outline;

    /// A bar much shorter than it is thick, turning about its lower joint: the paths of its joints
    /// lend the hull next to nothing, so the offsets must hold the faces by themselves.
    #[test]
    fn a_bar_turning_about_a_fixed_joint_stays_inside() {
        let [start, end] = [0.2_f64, 1.0];
        let short = 0.01;
        let along = |lean: f64| DVec2::new(lean.sin(), lean.cos());
        let outer = along(0.5 * (start + end)) / (0.5 * (end - start)).cos();
        for (from, faces) in [(0.0, [-0.1, 0.3]), (0.6, [0.1, 0.3]), (0.0, [-0.3, 0.1])] {
            let sweep = Sweep {
                lower: vec![DVec2::ZERO],
                upper: vec![short * along(start), short * outer, short * along(end)],
                along: [along(start), along(end)],
                from,
                faces_m: faces,
            };
            let outline = convex_outline(sweep.points());
            for i in 0..=200 {
                let lean = start + (end - start) * f64::from(i) / 200.0;
                for share in [from, 1.0] {
                    for face in faces {
                        let corner = share * short * along(lean) + face * bay_side(along(lean));
                        for c in 0..outline.len() {
                            let (p, q) = (outline[c], outline[(c + 1) % outline.len()]);
                            assert!((q - p).perp_dot(corner - p) > 0.0, "{lean} {share} {face}");
                        }
                    }
                }
            }
        }
    }
}

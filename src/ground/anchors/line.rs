//! How far is it from anchors to an edge, a joint or a crack?

/// An edge, joint or crack in plan, inches: all are taken as the end of the concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// One end.
    pub from_in: [f64; 2],
    /// The other end.
    pub to_in: [f64; 2],
}

/// Of some points the one nearest to a line, the line's point nearest to it, and their distance.
pub(in crate::ground) fn nearest(
    points: &[[f64; 2]],
    line: &Line,
) -> Option<([f64; 2], [f64; 2], f64)> {
    let (a, b) = (line.from_in, line.to_in);
    let along = [b[0] - a[0], b[1] - a[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    points
        .iter()
        .map(|p| {
            let t = if square > 0.0 {
                let dot = (p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1];
                (dot / square).clamp(0.0, 1.0)
            } else {
                0.0
            };
            let q = [a[0] + t * along[0], a[1] + t * along[1]];
            (*p, q, (q[0] - p[0]).hypot(q[1] - p[1]))
        })
        .min_by(|one, other| one.2.total_cmp(&other.2))
}

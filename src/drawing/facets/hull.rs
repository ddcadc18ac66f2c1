//! Which faces does the convex hull of a few points have?
//!
//! The solids' prisms have a dozen corners or so: every plane through three corners that leaves
//! all others on one side is a face. Slow for many points, and hard to get wrong.

use glam::{DVec2, DVec3};

use super::Facet;

/// Points nearer than this to a plane lie on it, metres: less than anyone can see, more than
/// rounding.
const ON_PLANE_M: f64 = 1e-7;
/// The least sine of the angle at a corner that a plane is laid through.
const LEAST_SINE: f64 = 1e-6;

/// The faces of the convex hull. Points in one plane give that plane's outline, from both sides;
/// points on one line give nothing.
pub(super) fn hull(points: &[DVec3]) -> Vec<Facet> {
    let points = distinct(points);
    let mut planes: Vec<(DVec3, f64)> = Vec::new();
    for (i, &a) in points.iter().enumerate() {
        for (j, &b) in points.iter().enumerate().skip(i + 1) {
            for &c in points.iter().skip(j + 1) {
                let Some(normal) = across(b - a, c - a) else {
                    continue;
                };
                for normal in [normal, -normal] {
                    let offset = normal.dot(a);
                    let outermost = points.iter().all(|p| normal.dot(*p) - offset < ON_PLANE_M);
                    let known = planes
                        .iter()
                        .any(|(n, o)| n.dot(normal) > 1.0 - 1e-9 && (o - offset).abs() < 1e-6);
                    if outermost && !known {
                        planes.push((normal, offset));
                    }
                }
            }
        }
    }
    planes
        .into_iter()
        .filter_map(|(normal, offset)| {
            let on_plane: Vec<DVec3> = points
                .iter()
                .copied()
                .filter(|p| (normal.dot(*p) - offset).abs() < 2.0 * ON_PLANE_M)
                .collect();
            outline(&on_plane, normal).map(|corners| Facet {
                corners,
                normal,
                round: false,
            })
        })
        .collect()
}

fn distinct(points: &[DVec3]) -> Vec<DVec3> {
    let mut kept: Vec<DVec3> = Vec::with_capacity(points.len());
    for &point in points {
        if kept.iter().all(|k| k.distance(point) > ON_PLANE_M) {
            kept.push(point);
        }
    }
    kept
}

/// The unit vector across two directions; none when they run nearly the same way.
fn across(a: DVec3, b: DVec3) -> Option<DVec3> {
    let cross = a.cross(b);
    (cross.length() > LEAST_SINE * a.length() * b.length()).then(|| cross.normalize_or_zero())
}

/// The corners of the convex outline of points in one plane, counter-clockwise seen against the
/// normal; none when they lie on a line. (Andrew's monotone chain.)
fn outline(points: &[DVec3], normal: DVec3) -> Option<Vec<DVec3>> {
    let x = normal.any_orthonormal_vector();
    let y = normal.cross(x);
    let mut flat: Vec<(DVec2, DVec3)> = points
        .iter()
        .map(|&p| (DVec2::new(p.dot(x), p.dot(y)), p))
        .collect();
    flat.sort_by(|a, b| a.0.x.total_cmp(&b.0.x).then(a.0.y.total_cmp(&b.0.y)));
    let half = |points: &mut dyn Iterator<Item = (DVec2, DVec3)>| {
        let mut chain: Vec<(DVec2, DVec3)> = Vec::new();
        for point in points {
            while let [.., (a, _), (b, _)] = chain[..] {
                let (along, next) = (b - a, point.0 - b);
                if along.perp_dot(next) > LEAST_SINE * along.length() * next.length() {
                    break;
                }
                chain.pop();
            }
            chain.push(point);
        }
        chain.pop();
        chain
    };
    let mut corners = half(&mut flat.iter().copied());
    corners.extend(half(&mut flat.iter().rev().copied()));
    (corners.len() >= 3).then(|| corners.into_iter().map(|(_, p)| p).collect())
}

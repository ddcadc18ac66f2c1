//! Which convex prism stands on these points: flat convex outlines and their extrusion.

use glam::{DVec2, DVec3};

use super::{Role, Solid};

/// The corners of the convex hull of `points`, counter-clockwise, without points on its edges.
/// (Andrew's monotone chain.)
pub(crate) fn convex_outline(mut points: Vec<DVec2>) -> Vec<DVec2> {
    points.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    points.dedup();
    if points.len() < 3 {
        return points;
    }
    let half = |points: &mut dyn Iterator<Item = DVec2>| {
        let mut chain: Vec<DVec2> = Vec::new();
        for point in points {
            while let [.., a, b] = chain[..]
                && (b - a).perp_dot(point - b) <= 0.0
            {
                chain.pop();
            }
            chain.push(point);
        }
        chain.pop();
        chain
    };
    let mut outline = half(&mut points.iter().copied());
    outline.extend(half(&mut points.iter().rev().copied()));
    outline
}

/// A prism along the bay's `x` over the hull of `(y, z)` points.
pub(super) fn along_x(
    name: impl Into<String>,
    role: Role,
    x_m: [f64; 2],
    yz_m: Vec<DVec2>,
) -> Solid {
    extrude(name, role, x_m, yz_m, |x, p| DVec3::new(x, p.x, p.y))
}

/// A prism along the bay's `y` over the hull of `(x, z)` points.
pub(super) fn along_y(
    name: impl Into<String>,
    role: Role,
    y_m: [f64; 2],
    xz_m: Vec<DVec2>,
) -> Solid {
    extrude(name, role, y_m, xz_m, |y, p| DVec3::new(p.x, y, p.y))
}

/// A prism along the bay's `z` over the hull of `(x, y)` points.
pub(super) fn along_z(
    name: impl Into<String>,
    role: Role,
    z_m: [f64; 2],
    xy_m: Vec<DVec2>,
) -> Solid {
    extrude(name, role, z_m, xy_m, |z, p| DVec3::new(p.x, p.y, z))
}

fn extrude(
    name: impl Into<String>,
    role: Role,
    ends_m: [f64; 2],
    points_m: Vec<DVec2>,
    place: impl Fn(f64, DVec2) -> DVec3,
) -> Solid {
    let outline = convex_outline(points_m);
    let vertices = ends_m
        .iter()
        .flat_map(|&end| outline.iter().map(move |&point| (end, point)))
        .map(|(end, point)| place(end, point))
        .collect();
    Solid::hull(name, role, vertices)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inner_and_edge_points_are_left_out() {
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)];
        let mut points: Vec<DVec2> = square.iter().map(|&(x, y)| DVec2::new(x, y)).collect();
        points.extend([DVec2::new(1.0, 1.0), DVec2::new(1.0, 0.0), points[2]]);
        let outline = convex_outline(points);
        assert_eq!(outline.len(), 4);
        for (x, y) in square {
            assert!(outline.contains(&DVec2::new(x, y)));
        }
    }
}

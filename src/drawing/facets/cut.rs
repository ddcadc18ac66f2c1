//! What is left of a convex polygon, or of a whole convex solid, on one side of a plane?

use glam::{DQuat, DVec3};

use super::Facet;

/// Corners nearer than this to the plane lie on it, metres.
const ON_PLANE_M: f64 = 1e-9;

/// The points `p` with `normal · p <= offset`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HalfSpace {
    /// Outward, unit length.
    pub normal: DVec3,
    /// Metres along the normal.
    pub offset: f64,
}

impl HalfSpace {
    /// Everything behind the plane through `point` with this outward normal.
    #[must_use]
    pub fn behind(normal: DVec3, point: DVec3) -> Self {
        Self {
            normal,
            offset: normal.dot(point),
        }
    }

    /// How far a point lies outside, metres; negative inside.
    #[must_use]
    pub fn outside_m(&self, point: DVec3) -> f64 {
        self.normal.dot(point) - self.offset
    }

    /// The same half-space told in a frame that is posed in this one.
    #[must_use]
    pub fn seen_from(&self, rotation: DQuat, translation: DVec3) -> Self {
        Self {
            normal: rotation.inverse() * self.normal,
            offset: self.offset - self.normal.dot(translation),
        }
    }
}

/// The two parts of a polygon; a part without area is none.
#[derive(Debug, Clone, PartialEq)]
pub struct Split {
    /// What lies inside.
    pub inside: Option<Vec<DVec3>>,
    /// What lies outside.
    pub outside: Option<Vec<DVec3>>,
}

/// Splits a convex polygon by a plane.
#[must_use]
pub fn split(corners: &[DVec3], by: &HalfSpace) -> Split {
    let away: Vec<f64> = corners.iter().map(|c| by.outside_m(*c)).collect();
    if away.iter().all(|a| *a <= ON_PLANE_M) {
        return Split {
            inside: Some(corners.to_vec()),
            outside: None,
        };
    }
    if away.iter().all(|a| *a >= -ON_PLANE_M) {
        return Split {
            inside: None,
            outside: Some(corners.to_vec()),
        };
    }
    let (mut inside, mut outside) = (Vec::new(), Vec::new());
    for (i, (&corner, &here)) in corners.iter().zip(&away).enumerate() {
        let next = (i + 1) % corners.len();
        if here <= ON_PLANE_M {
            inside.push(corner);
        }
        if here >= -ON_PLANE_M {
            outside.push(corner);
        }
        let there = away[next];
        if (here > ON_PLANE_M && there < -ON_PLANE_M) || (here < -ON_PLANE_M && there > ON_PLANE_M)
        {
            let on_plane = corner.lerp(corners[next], here / (here - there));
            inside.push(on_plane);
            outside.push(on_plane);
        }
    }
    let area = |corners: Vec<DVec3>| (corners.len() >= 3).then_some(corners);
    Split {
        inside: area(inside),
        outside: area(outside),
    }
}

/// What is left of a convex solid inside the half-space, and the face that the cut opens.
#[must_use]
pub fn section(facets: &[Facet], by: &HalfSpace) -> (Vec<Facet>, Option<Facet>) {
    let mut left = Vec::with_capacity(facets.len());
    let mut rim: Vec<DVec3> = Vec::new();
    for facet in facets {
        let parts = split(&facet.corners, by);
        if parts.outside.is_none() {
            left.push(facet.clone());
            continue;
        }
        let Some(corners) = parts.inside else {
            continue;
        };
        rim.extend(
            corners
                .iter()
                .filter(|c| by.outside_m(**c).abs() < 10.0 * ON_PLANE_M),
        );
        left.push(Facet {
            corners,
            ..facet.clone()
        });
    }
    let opened = in_order(rim, by.normal).map(|corners| Facet {
        corners,
        normal: by.normal,
        round: false,
    });
    (left, opened)
}

/// Points of a convex outline in one plane put in order, counter-clockwise seen against the
/// normal.
fn in_order(mut points: Vec<DVec3>, normal: DVec3) -> Option<Vec<DVec3>> {
    if points.len() < 3 {
        return None;
    }
    let middle = points.iter().sum::<DVec3>() / points.len() as f64;
    let x = normal.any_orthonormal_vector();
    let y = normal.cross(x);
    let angle = |p: &DVec3| {
        let away = *p - middle;
        away.dot(y).atan2(away.dot(x))
    };
    points.sort_by(|a, b| angle(a).total_cmp(&angle(b)));
    points.dedup_by(|a, b| a.distance(*b) < 1e-7);
    (points.len() >= 3).then_some(points)
}

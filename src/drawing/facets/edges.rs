//! Along which lines do the faces of a solid meet at an angle?

use std::collections::HashMap;

use glam::DVec3;

use super::Facet;

/// Faces that meet flatter than this (cosine; about 12 degrees) show no line.
const FLAT: f64 = 0.978;
/// Corners of neighbouring faces are the same corner within this, metres.
const SAME_M: f64 = 1e-6;

/// A line along which two faces meet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Edge {
    /// Its ends.
    pub ends: [DVec3; 2],
    /// Outward: the middle between the normals of the two faces, unit length.
    pub outward: DVec3,
}

/// The edges of a convex solid that are worth a line.
#[must_use]
pub fn edges(facets: &[Facet]) -> Vec<Edge> {
    let mut half: HashMap<[[i64; 3]; 2], (DVec3, bool)> = HashMap::new();
    let mut found = Vec::new();
    for facet in facets {
        for (i, &from) in facet.corners.iter().enumerate() {
            let to = facet.corners[(i + 1) % facet.corners.len()];
            let (a, b) = (key(from), key(to));
            match half.remove(&[b, a]) {
                Some((normal, round)) => {
                    let smooth = round && facet.round;
                    if !smooth && normal.dot(facet.normal) < FLAT {
                        found.push(Edge {
                            ends: [from, to],
                            outward: (normal + facet.normal).normalize_or(normal),
                        });
                    }
                }
                None => {
                    half.insert([a, b], (facet.normal, facet.round));
                }
            }
        }
    }
    found
}

fn key(point: DVec3) -> [i64; 3] {
    point.to_array().map(|x| (x / SAME_M).round() as i64)
}

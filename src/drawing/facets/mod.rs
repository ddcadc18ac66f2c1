//! Which flat faces and which edges does a convex solid show?
//!
//! Pure geometry in the solid's own frame, metres, without the engine: shapes become convex
//! polygons, polygons are cut by half-spaces. What [`facets`] gives never reaches beyond the shape,
//! what [`around`] gives never stays inside it.

mod cut;
mod edges;
mod hull;

use glam::DVec3;

pub use cut::{HalfSpace, Split, section, split};
pub use edges::{Edge, edges};

use crate::solids::Shape;

/// Sides of the prism that a cylinder is drawn as.
const ROUND_SIDES: u32 = 48;

/// One convex, flat face, seen from outside.
#[derive(Debug, Clone, PartialEq)]
pub struct Facet {
    /// The corners, counter-clockwise seen from outside.
    pub corners: Vec<DVec3>,
    /// Outward, unit length.
    pub normal: DVec3,
    /// Part of the round side of a cylinder about the solid's own `z`; shaded round.
    pub round: bool,
}

impl Facet {
    /// The outward direction for shading at a corner.
    #[must_use]
    pub fn shading(&self, corner: DVec3) -> DVec3 {
        if self.round {
            DVec3::new(corner.x, corner.y, 0.0).normalize_or(self.normal)
        } else {
            self.normal
        }
    }
}

/// The faces of a shape, in its own frame.
#[must_use]
pub fn facets(shape: &Shape) -> Vec<Facet> {
    match shape {
        Shape::Box { half } => box_facets(*half),
        Shape::Cylinder {
            radius,
            half_height,
        } => cylinder_facets(*radius, *half_height, ROUND_SIDES),
        Shape::Prism { vertices } => hull::hull(vertices),
    }
}

/// Most sides of a prism about a cylinder.
const MOST_SIDES: u32 = 720;

/// The same for a file that others measure in: a cylinder becomes a prism about it, whose corners
/// stand at most `off_m` (metres) outside, so that nothing looks smaller than it is.
#[must_use]
pub fn around(shape: &Shape, off_m: f64) -> Vec<Facet> {
    let Shape::Cylinder {
        radius,
        half_height,
    } = shape
    else {
        return facets(shape);
    };
    let outside = |sides: u32| radius / half_side(sides).cos();
    let mut sides = 12;
    while sides < MOST_SIDES && outside(sides) - radius > off_m {
        sides += 4;
    }
    cylinder_facets(outside(sides), *half_height, sides)
}

/// Half the angle that one side of a prism takes up, radians.
fn half_side(sides: u32) -> f64 {
    std::f64::consts::PI / f64::from(sides)
}

fn box_facets(half: DVec3) -> Vec<Facet> {
    // Two directions across each face, in an order that turns counter-clockwise from outside.
    [
        (DVec3::X, DVec3::Y, DVec3::Z),
        (DVec3::Y, DVec3::Z, DVec3::X),
        (DVec3::Z, DVec3::X, DVec3::Y),
    ]
    .into_iter()
    .flat_map(|(normal, across, up)| [(normal, across, up), (-normal, up, across)])
    .map(|(normal, across, up)| Facet {
        corners: [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(a, b)| (normal + across * a + up * b) * half)
            .to_vec(),
        normal,
        round: false,
    })
    .collect()
}

fn cylinder_facets(radius: f64, half_height: f64, sides: u32) -> Vec<Facet> {
    let rim = |i: u32, z: f64| {
        let angle = 2.0 * half_side(sides) * f64::from(i);
        DVec3::new(radius * angle.cos(), radius * angle.sin(), z)
    };
    let mut facets: Vec<Facet> = (0..sides)
        .map(|i| {
            let (low, high) = (-half_height, half_height);
            let corners = vec![rim(i, low), rim(i + 1, low), rim(i + 1, high), rim(i, high)];
            let middle = corners.iter().sum::<DVec3>() / 4.0;
            Facet {
                normal: DVec3::new(middle.x, middle.y, 0.0).normalize_or(DVec3::X),
                corners,
                round: true,
            }
        })
        .collect();
    facets.push(Facet {
        corners: (0..sides).map(|i| rim(i, half_height)).collect(),
        normal: DVec3::Z,
        round: false,
    });
    facets.push(Facet {
        corners: (0..sides).rev().map(|i| rim(i, -half_height)).collect(),
        normal: DVec3::NEG_Z,
        round: false,
    });
    facets
}

#[cfg(test)]
mod tests;

//! How is a convex patch of colour put on the faces of a solid?

use glam::DVec3;

use super::Paint;
use crate::drawing::facets::{Facet, HalfSpace, split};

/// A convex patch of colour, in the solid's own frame.
#[derive(Debug, Clone, PartialEq)]
pub struct Decal {
    /// The patch is what lies in all of these.
    pub region: Vec<HalfSpace>,
    /// Only faces that look this way are painted: unit length.
    pub toward: DVec3,
    /// Least cosine between a face's normal and `toward`.
    pub least: f64,
    /// The paint.
    pub paint: Paint,
}

/// A painted piece of a face.
#[derive(Debug, Clone, PartialEq)]
pub struct Patch {
    /// The piece.
    pub facet: Facet,
    /// Its paint.
    pub paint: Paint,
}

/// How far pieces of one face reach over each other, metres: where three corners meet on the edge of
/// a fourth piece, the engine would leave holes of a pixel. Less than can be seen.
const OVERLAP_M: f64 = 3e-4;

/// Paints faces: first the base, then one decal over the other.
#[must_use]
pub fn painted(facets: Vec<Facet>, base: impl Fn(&Facet) -> Paint, decals: &[Decal]) -> Vec<Patch> {
    let mut patches = Vec::with_capacity(facets.len() * 2);
    for facet in facets {
        let paint = base(&facet);
        let mut pieces = pieces(facet.clone(), paint, decals);
        if pieces.len() > 1 {
            for piece in &mut pieces {
                piece.facet.corners = grown_within(&piece.facet.corners, &facet);
            }
        }
        patches.extend(pieces);
    }
    patches
}

/// The pieces that decals split a face into, side by side.
fn pieces(facet: Facet, paint: Paint, decals: &[Decal]) -> Vec<Patch> {
    let mut pieces = vec![Patch { facet, paint }];
    for decal in decals {
        if pieces[0].facet.normal.dot(decal.toward) >= decal.least {
            pieces = pieces
                .into_iter()
                .flat_map(|piece| put_on(piece, decal))
                .collect();
        }
    }
    pieces
}

/// A convex piece of a face, larger by the overlap on every side, but not beyond the face.
fn grown_within(corners: &[DVec3], facet: &Facet) -> Vec<DVec3> {
    let count = corners.len();
    let outward = |corners: &[DVec3], i: usize| {
        let along = corners[(i + 1) % corners.len()] - corners[i];
        along.cross(facet.normal).normalize_or_zero()
    };
    let mut grown: Vec<DVec3> = (0..count)
        .map(|i| {
            let (before, after) = (
                outward(corners, (i + count - 1) % count),
                outward(corners, i),
            );
            // At a sharp corner the two sides meet far outside; that far it need not go.
            let out = (before + after) / (1.0 + before.dot(after)).max(0.2);
            corners[i] + out * OVERLAP_M
        })
        .collect();
    for i in 0..facet.corners.len() {
        let side = HalfSpace::behind(outward(&facet.corners, i), facet.corners[i]);
        match split(&grown, &side).inside {
            Some(inside) => grown = inside,
            None => return corners.to_vec(),
        }
    }
    grown
}

/// The piece under the decal in its new paint, and what is left around it.
fn put_on(piece: Patch, decal: &Decal) -> Vec<Patch> {
    let beside = decal.region.iter().any(|half| {
        let corners = &piece.facet.corners;
        corners.iter().all(|c| half.outside_m(*c) > -1e-6)
    });
    if beside || decal.region.is_empty() {
        return vec![piece];
    }
    let with = |corners: Vec<DVec3>, paint: Paint| Patch {
        facet: Facet {
            corners,
            ..piece.facet.clone()
        },
        paint,
    };
    let mut around = Vec::new();
    let mut under = piece.facet.corners.clone();
    for half in &decal.region {
        let parts = split(&under, half);
        around.extend(parts.outside.map(|corners| with(corners, piece.paint)));
        match parts.inside {
            Some(inside) => under = inside,
            // Nothing of the piece lies under the decal after all.
            None => return vec![piece],
        }
    }
    around.push(with(under, decal.paint));
    around
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::facets::facets;
    use crate::drawing::palette::things;
    use crate::solids::Shape;

    /// Area of a convex polygon.
    fn area(corners: &[DVec3]) -> f64 {
        let first = corners[0];
        let fan = corners.windows(2).skip(1);
        fan.map(|p| (p[0] - first).cross(p[1] - first).length() * 0.5)
            .sum()
    }

    #[test]
    fn paint_covers_what_it_should_and_leaves_no_gap() {
        let shape = Shape::Box {
            half: DVec3::new(1.0, 1.0, 1.0),
        };
        let (base, blue) = (Paint::matt(things::WALL), Paint::gloss(things::BODY));
        let square = |x: f64, y: f64, half: f64| Decal {
            region: [DVec3::X, DVec3::NEG_X, DVec3::Y, DVec3::NEG_Y]
                .map(|n| HalfSpace::behind(n, DVec3::new(x, y, 0.0) + n * half))
                .to_vec(),
            toward: DVec3::Z,
            least: 0.5,
            paint: blue,
        };
        // One in the middle, one over a corner of the top, one that misses it.
        let decals = [
            square(0.0, 0.0, 0.25),
            square(1.0, 1.0, 0.5),
            square(5.0, 0.0, 0.5),
        ];
        let patches: Vec<Patch> = facets(&shape)
            .into_iter()
            .flat_map(|facet| pieces(facet, base, &decals))
            .collect();
        let sum = |paint: Paint| -> f64 {
            let with = patches.iter().filter(|p| p.paint == paint);
            with.map(|p| area(&p.facet.corners)).sum()
        };
        assert!((sum(blue) - (0.25 + 0.25)).abs() < 1e-9);
        assert!((sum(base) + sum(blue) - 24.0).abs() < 1e-9);
        assert!(
            patches
                .iter()
                .all(|p| p.paint == base || p.facet.normal == DVec3::Z),
            "only the top is painted"
        );

        // As drawn, pieces reach over each other by a hair and never beyond the face.
        let drawn = painted(facets(&shape), |_| base, &decals);
        assert_eq!(drawn.len(), patches.len());
        for (drawn, patch) in drawn.iter().zip(&patches) {
            let (now, before) = (area(&drawn.facet.corners), area(&patch.facet.corners));
            assert!(now >= before - 1e-12 && now < before + 0.01);
            let outermost = drawn.facet.corners.iter().map(|c| c.abs().max_element());
            assert!(outermost.fold(0.0, f64::max) < 1.0 + 1e-9);
        }
    }
}

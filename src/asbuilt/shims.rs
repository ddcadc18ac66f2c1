//! How do the posts lean, and which shims under which corner make them plumb?
//!
//! A post and its plate are one rigid body: tipping the plate by the lean makes the column plumb.
//! Where the floor under all four corners was levelled, the shims also fill up to an uneven floor;
//! else the plate is taken to bear on all of its shims as it stands.

use glam::DVec2;

use super::COVERAGE;
use super::places::{Planned, SIDES, index};
use crate::bay::{CornerHeight, Measured, PlateCorner, Side};

/// A lean in one direction: rise of the top off the foot over the height, positive toward +x or +y.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lean {
    /// Its slope.
    pub slope: f64,
    /// One standard deviation of the slope.
    pub sd: f64,
}

/// The shims of a post.
#[derive(Debug, Clone, PartialEq)]
pub struct PostShims {
    /// Which post.
    pub side: Side,
    /// What lies under each corner now, by its number.
    pub now_m: [f64; 4],
    /// What should lie there for a plumb column; none where its plumb was not read both ways.
    pub wanted_m: Option<[f64; 4]>,
    /// True when the floor under its four corners was levelled.
    pub levelled: bool,
}

/// The leans of the posts: left then right, each across and along.
#[must_use]
pub fn leans(measured: &Measured) -> [[Option<Lean>; 2]; 2] {
    SIDES.map(|side| {
        [true, false].map(|across| {
            let read = measured
                .plumb
                .iter()
                .find(|one| one.side == side && one.toward.is_across() == across)?;
            Some(Lean {
                slope: read.toward.sign() * read.out.m() / read.over.m(),
                sd: read.tolerance.m() / COVERAGE / read.over.m(),
            })
        })
    })
}

/// The height given for a corner.
pub(super) fn height_at(heights: &[CornerHeight], at: PlateCorner) -> Option<f64> {
    heights
        .iter()
        .find(|one| one.at == at)
        .map(|one| one.height.m())
}

/// The corners of a post's plate, by number.
pub(super) fn corners(side: Side) -> [PlateCorner; 4] {
    [1, 2, 3, 4].map(|number| PlateCorner { side, number })
}

/// The shims of both posts.
#[must_use]
pub fn shims(
    planned: &Planned,
    leans: &[[Option<Lean>; 2]; 2],
    measured: &Measured,
) -> [PostShims; 2] {
    SIDES.map(|side| {
        let at = corners(side);
        let now_m = at.map(|corner| height_at(&measured.shims, corner).unwrap_or(0.0));
        let places = at.map(|corner| planned.corner_m(corner));
        let levels = at.map(|corner| height_at(&measured.levels, corner));
        let levelled = levels.iter().all(Option::is_some);
        let wanted_m = match leans[index(side)] {
            [Some(across), Some(along)] => {
                let lean = DVec2::new(across.slope, along.slope);
                let now = if levelled {
                    let levels = levels.map(|level| level.unwrap_or(0.0));
                    let tops = [0, 1, 2, 3].map(|i| levels[i] + now_m[i]);
                    let tilt = tilt(&places, &tops);
                    [0, 1, 2, 3].map(|i| tilt.dot(places[i]) - levels[i])
                } else {
                    now_m
                };
                let raised = [0, 1, 2, 3].map(|i| now[i] + lean.dot(places[i]));
                let least = raised.iter().copied().fold(f64::INFINITY, f64::min);
                Some(raised.map(|height| height - least))
            }
            _ => None,
        };
        PostShims {
            side,
            now_m,
            wanted_m,
            levelled,
        }
    })
}

/// The slope of the plane fitted over the corners of a rectangle about its middle.
fn tilt(places: &[DVec2; 4], heights: &[f64; 4]) -> DVec2 {
    let mut along = DVec2::ZERO;
    let mut squares = DVec2::ZERO;
    for (place, height) in places.iter().zip(heights) {
        along += *place * *height;
        squares += *place * *place;
    }
    along / squares.max(DVec2::splat(1e-12))
}

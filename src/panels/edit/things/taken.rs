//! What hangs or stands in the room already, and where beside it is there room?
//!
//! As boxes about each thing, read from the file as it is written. That is for a first place of
//! something new, which the person then measures; the study looks at the true shapes.

use crate::panels::edit::now::Now;

/// A box, its lowest and its highest corner: across, into the bay, up; metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Block {
    low: [f64; 3],
    high: [f64; 3],
}

/// Free room kept beside a new thing, metres.
const BESIDE_M: f64 = 0.05;

/// A new thing is moved along in steps of this, metres.
const STEP_M: f64 = 0.1;

impl Block {
    /// About a middle, `size` across, into the bay and up from `bottom`.
    pub(super) fn about([x, y]: [f64; 2], bottom: f64, size: [f64; 3]) -> Self {
        let [width, depth, height] = size;
        Self {
            low: [x - width * 0.5, y - depth * 0.5, bottom],
            high: [x + width * 0.5, y + depth * 0.5, bottom + height],
        }
    }

    fn meets(&self, other: &Self) -> bool {
        (0..3).all(|axis| {
            self.low[axis] < other.high[axis] + BESIDE_M
                && other.low[axis] < self.high[axis] + BESIDE_M
        })
    }

    fn moved(&self, by: [f64; 3]) -> Self {
        let mut moved = *self;
        for axis in 0..3 {
            moved.low[axis] += by[axis];
            moved.high[axis] += by[axis];
        }
        moved
    }

    fn is_between_walls(&self, depth: f64) -> bool {
        self.low[1] >= 0.0 && self.high[1] <= depth
    }
}

/// Where a new thing under the ceiling meets nothing: how far it is moved along the bay and up
/// (which is never upward), metres. As little along the bay as possible, and where there is no
/// such place under what hangs in the way; where there is none at all, not at all.
pub(super) fn clear_of(taken: &[Block], new: &Block, depth: f64) -> [f64; 2] {
    let is_free = |there: &Block| !taken.iter().any(|block| block.meets(there));
    let along = (0_u16..)
        .map(|step| STEP_M * f64::from(step))
        .take_while(|away| *away <= depth.min(100.0))
        .flat_map(|away| [-away, away])
        .find(|along| {
            let there = new.moved([0.0, *along, 0.0]);
            there.is_between_walls(depth) && is_free(&there)
        });
    if let Some(along) = along {
        return [along, 0.0];
    }
    // A hair more than what counts as room beside it.
    let under = |block: &Block| block.low[2] - new.high[2] - 1.01 * BESIDE_M;
    let mut heights: Vec<f64> = taken.iter().map(under).filter(|up| *up < 0.0).collect();
    heights.sort_by(|a, b| b.total_cmp(a));
    let up = heights.into_iter().find(|up| {
        let there = new.moved([0.0, 0.0, *up]);
        there.low[2] >= 0.0 && is_free(&there)
    });
    [0.0, up.unwrap_or(0.0)]
}

/// Everything that is there, from the list of things that is looked at, and the lift's own beam.
pub(super) fn taken(now: &Now<'_>) -> Vec<Block> {
    let things = (0..now.count()).flat_map(|item| thing(&now.item(item)));
    overhead_beam(now).into_iter().chain(things).collect()
}

/// The beam over the lift with what hangs under it, from wall to wall.
fn overhead_beam(now: &Now<'_>) -> Option<Block> {
    let of = |name: &str| Some(now.length_of(&format!("lift.tie.{name}"))?.m());
    let (underside, height, width) = (of("underside")?, of("height")?, of("width")?);
    let y = now.length_of("lift.post_line")?.m();
    let half = 0.5 * width.max(of("bar.diameter").unwrap_or(0.0));
    Some(Block {
        low: [
            f64::NEG_INFINITY,
            y - half,
            underside - of("bar.drop").unwrap_or(0.0),
        ],
        high: [f64::INFINITY, y + half, underside + height],
    })
}

fn thing(now: &Now<'_>) -> Vec<Block> {
    let of = |name: &str| Some(now.length_in(name)?.m());
    if now.is("Box") {
        boxed(now, of).into_iter().collect()
    } else if now.is("Cylinder") {
        round(of).into_iter().collect()
    } else {
        spanning(now, of).unwrap_or_default()
    }
}

fn boxed(now: &Now<'_>, of: impl Fn(&str) -> Option<f64>) -> Option<Block> {
    let (mut width, mut depth) = (of("width")?, of("depth")?);
    if now.has("turned") {
        // Wherever it is turned to.
        width = width.hypot(depth);
        depth = width;
    }
    let size = [width, depth, of("height")?];
    Some(Block::about([of("x")?, of("y")?], of("bottom")?, size))
}

fn round(of: impl Fn(&str) -> Option<f64>) -> Option<Block> {
    let end = |end: &str| -> Option<[f64; 3]> {
        let at = |axis: usize| of(&format!("{end}[{axis}]"));
        Some([at(0)?, at(1)?, at(2)?])
    };
    let (from, to, half) = (end("from")?, end("to")?, 0.5 * of("diameter")?);
    Some(Block {
        low: [0, 1, 2].map(|axis: usize| from[axis].min(to[axis]) - half),
        high: [0, 1, 2].map(|axis: usize| from[axis].max(to[axis]) + half),
    })
}

/// A beam, or each of a row of ties, from wall to wall.
fn spanning(now: &Now<'_>, of: impl Fn(&str) -> Option<f64>) -> Option<Vec<Block>> {
    let (bottom, height, half) = (of("underside")?, of("height")?, 0.5 * of("width")?);
    let middles: Vec<f64> = match of("at") {
        Some(at) => vec![at],
        None => {
            let (first, pitch) = (of("first")?, of("pitch")?);
            let count: u16 = now.text_in("count")?.parse().ok()?;
            (0..count)
                .map(|tie| first + pitch * f64::from(tie))
                .collect()
        }
    };
    let across = usize::from(now.text_in("along")? == "SideToSide");
    let block = |middle: f64| {
        let mut block = Block {
            low: [f64::NEG_INFINITY, f64::NEG_INFINITY, bottom],
            high: [f64::INFINITY, f64::INFINITY, bottom + height],
        };
        block.low[across] = middle - half;
        block.high[across] = middle + half;
        block
    };
    Some(middles.into_iter().map(block).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_thing_goes_where_there_is_room_and_no_farther() {
        let light = Block::about([0.0, 4.0], 2.8, [0.15, 1.2, 0.1]);
        let goes = |taken: &[Block]| clear_of(taken, &light, 8.0);
        let is = |found: [f64; 2], along: f64, up: f64| {
            assert!((found[0] - along).abs() < 1e-9, "{found:?}");
            assert!((found[1] - up).abs() < 1e-9, "{found:?}");
        };
        is(goes(&[]), 0.0, 0.0);
        // From the beam's near side at 4.0 the light's far end keeps a hand's breadth.
        let beam = Block::about([0.0, 4.1], 2.7, [6.0, 0.2, 0.2]);
        is(goes(&[beam]), -0.7, 0.0);
        let low = Block::about([0.0, 4.1], 0.0, [6.0, 0.2, 2.0]);
        is(goes(&[low]), 0.0, 0.0);
        let wide = Block::about([0.0, 4.0], 2.5, [6.0, 8.0, 0.5]);
        is(goes(&[wide]), 0.0, 2.5 - 2.9 - 0.0505);
        let full = Block::about([0.0, 4.0], 0.0, [6.0, 8.0, 3.0]);
        is(goes(&[full]), 0.0, 0.0);
    }
}

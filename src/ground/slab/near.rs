//! How near are a post's anchors to joint, crack, edge and drain?

use glam::DVec2;

use super::map::SlabMap;
use super::plane::{NOISE_M, distance_m, inside, sides};
use crate::bay::{Bay, Side, SlabLineKind};
use crate::solids::posts::inward;

/// The kinds of line, in the order they are shown.
pub const KINDS: [SlabLineKind; 4] = [
    SlabLineKind::Joint,
    SlabLineKind::Crack,
    SlabLineKind::Edge,
    SlabLineKind::Drain,
];

/// What lies near one post's plate and anchors.
#[derive(Debug, Clone, PartialEq)]
pub struct Near {
    /// From the nearest anchor's middle to the nearest line of each of [`KINDS`], metres; from the
    /// plate where no anchors are known. None where there is no such line.
    pub distances_m: [Option<f64>; 4],
    /// True for those of [`KINDS`] that run through the plate or touch it.
    pub through: [bool; 4],
    /// True where the plate reaches over the slab's edge.
    pub overhangs: bool,
}

impl Near {
    /// For the post on one side.
    #[must_use]
    pub fn of(bay: &Bay, map: &SlabMap, side: Side) -> Self {
        let rect = map.plate(side).rect;
        let anchors = anchors_m(bay, map, side);
        let mut near = Self {
            distances_m: [None; 4],
            through: [false; 4],
            overhangs: false,
        };
        let outline = sides(&map.outline).map(|ends| (SlabLineKind::Edge, ends));
        let lines = map.lines.iter().map(|line| (line.kind, line.ends));
        for (kind, ends) in lines.chain(outline) {
            let from_plate = rect.line_distance_m(ends);
            let off = if anchors.is_empty() {
                from_plate
            } else {
                let all = anchors.iter().map(|anchor| distance_m(*anchor, ends));
                all.fold(f64::INFINITY, f64::min)
            };
            let index = index(kind);
            let least = &mut near.distances_m[index];
            *least = Some(least.map_or(off, |least| least.min(off)));
            near.through[index] |= from_plate <= NOISE_M;
        }
        let within = rect.shrunk(1e-6);
        near.overhangs = rect.corners().iter().any(|p| !inside(&map.outline, *p))
            || sides(&map.outline).any(|side| within.meets(side));
        near
    }

    /// The distance to the nearest line of a kind, metres.
    #[must_use]
    pub const fn distance_m(&self, kind: SlabLineKind) -> Option<f64> {
        self.distances_m[index(kind)]
    }
}

const fn index(kind: SlabLineKind) -> usize {
    match kind {
        SlabLineKind::Joint => 0,
        SlabLineKind::Crack => 1,
        SlabLineKind::Edge => 2,
        SlabLineKind::Drain => 3,
    }
}

/// Where a post's anchors go into the slab.
#[must_use]
pub fn anchors_m(bay: &Bay, map: &SlabMap, side: Side) -> Vec<DVec2> {
    let middle = map.plate(side).rect.middle();
    let anchors = bay.lift.base_plate.anchors.iter();
    anchors
        .map(|[toward, front]| middle + DVec2::new(inward(side) * toward.m(), front.m()))
        .collect()
}

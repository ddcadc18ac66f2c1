//! How thick was the slab found, where, and how thick may it be taken to be at a place?
//!
//! A map of readings with the plates on it: plain data for a text, a panel or a drawing. It is
//! never above the data: at any place it says the least reading within reach, and nothing where
//! fewer than two are.

use glam::DVec2;

use super::plane::{NOISE_M, Rect, area_m2, cross, inside, sides};
use crate::bay::{Bay, Side, Slab, SlabLineKind};
use crate::solids::posts::{column_middle_x_m, inward};

/// How far a reading speaks for the slab around it, metres.
pub const REACH_M: f64 = 0.6;
/// Readings that must lie within reach of a place before its thickness is known.
pub const ENOUGH: usize = 2;
/// How far apart readings must lie to be two, metres: one hole measured or written twice is one.
/// The project's own choice.
pub const APART_M: f64 = 0.05;
/// Within reach: noise of the conversion to metres is not taken for a distance.
const WITHIN_M: f64 = REACH_M + NOISE_M;

/// The slab in plan: bay x and y, metres.
#[derive(Debug, Clone, PartialEq)]
pub struct SlabMap {
    /// The readings, in the file's order.
    pub readings: Vec<MapReading>,
    /// The base plates, left and right.
    pub plates: [MapPlate; 2],
    /// The slab's corners around it: the file's, or those of the room where it gives none that
    /// enclose anything.
    pub outline: Vec<DVec2>,
    /// True when the file gives an outline that encloses nothing: it is not known.
    pub outline_is_broken: bool,
    /// Joints, cracks, edges and drains.
    pub lines: Vec<MapLine>,
}

/// A reading on the map.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MapReading {
    /// Where.
    pub at_m: DVec2,
    /// Thickness found.
    pub thickness_m: f64,
    /// The plate that it is nearest to.
    pub nearest: Side,
    /// How far it is from that plate; 0 under it.
    pub off_m: f64,
    /// True when it lies on the slab. One that does not is no reading of it: it may count against
    /// the slab, never for it.
    pub on_slab: bool,
    /// True when a joint or an edge lies between it and the plate that it is nearest to: it may be
    /// of another pour, and counts against the plate, never for it.
    pub parted: bool,
}

impl MapReading {
    /// True when it lies within reach of the plate that it is nearest to.
    #[must_use]
    pub fn is_near(&self) -> bool {
        self.off_m <= WITHIN_M
    }
}

/// A base plate on the map.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MapPlate {
    /// Of which post.
    pub side: Side,
    /// Where it lies.
    pub rect: Rect,
    /// Places on the slab within reach that were read, no joint or edge between them and it.
    pub readings_used: usize,
    /// Which reading within reach is the thinnest, by its place in the list.
    pub thinnest: Option<usize>,
}

/// A line on the map.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MapLine {
    /// What it is.
    pub kind: SlabLineKind,
    /// From where to where.
    pub ends: [DVec2; 2],
}

/// Where the base plate of a post lies.
#[must_use]
pub fn plate_rect(bay: &Bay, side: Side) -> Rect {
    let plate = &bay.lift.base_plate;
    let middle = DVec2::new(
        column_middle_x_m(bay, side) + inward(side) * plate.inward.m(),
        bay.lift.post_line.m(),
    );
    let half = DVec2::new(plate.width.m(), plate.depth.m()) * 0.5;
    Rect {
        low: middle - half,
        high: middle + half,
    }
}

impl SlabMap {
    /// The map of a bay; a bay that says nothing of its slab has one without readings.
    #[must_use]
    pub fn of(bay: &Bay) -> Self {
        match &bay.slab {
            Some(slab) => Self::of_slab(bay, slab),
            None => Self::of_slab(bay, &Slab::default()),
        }
    }

    pub(super) fn of_slab(bay: &Bay, slab: &Slab) -> Self {
        let given: Vec<DVec2> = slab.outline.iter().copied().map(point).collect();
        let encloses = area_m2(&given) > NOISE_M;
        let outline_is_broken = !given.is_empty() && !encloses;
        let outline = if encloses { given } else { room(bay) };
        let rects = [Side::Left, Side::Right].map(|side| (side, plate_rect(bay, side)));
        let lines: Vec<MapLine> = slab
            .lines
            .iter()
            .map(|line| MapLine {
                kind: line.kind,
                ends: [point(line.from), point(line.to)],
            })
            .collect();
        let rect_of = |side| rects[usize::from(side == Side::Right)].1;
        let readings: Vec<MapReading> = slab
            .readings
            .iter()
            .map(|reading| {
                let at_m = point([reading.x, reading.y]);
                let off = rects.map(|(side, rect)| (side, rect.distance_m(at_m)));
                let (nearest, off_m) = if off[1].1 < off[0].1 { off[1] } else { off[0] };
                MapReading {
                    at_m,
                    thickness_m: reading.thickness.m(),
                    nearest,
                    off_m,
                    on_slab: inside(&outline, at_m),
                    parted: parted(&outline, &lines, at_m, rect_of(nearest).nearest(at_m)),
                }
            })
            .collect();
        let plates = rects.map(|(side, rect)| {
            let reached = || reached(&readings, |at| rect.distance_m(at));
            MapPlate {
                side,
                rect,
                readings_used: places(reached().filter(|(_, reading)| {
                    let at = reading.at_m;
                    reading.on_slab && !parted(&outline, &lines, at, rect.nearest(at))
                })),
                thinnest: thinnest(reached()),
            }
        });
        Self {
            lines,
            readings,
            plates,
            outline,
            outline_is_broken,
        }
    }

    /// The plate of a post.
    #[must_use]
    pub const fn plate(&self, side: Side) -> &MapPlate {
        match side {
            Side::Left => &self.plates[0],
            Side::Right => &self.plates[1],
        }
    }

    /// The least reading within reach of a place, metres; none with fewer than two.
    #[must_use]
    pub fn thickness_at_m(&self, at_m: DVec2) -> Option<f64> {
        let reached = || reached(&self.readings, |reading| reading.distance(at_m));
        let of_it = |reading: &MapReading| {
            reading.on_slab && !parted(&self.outline, &self.lines, reading.at_m, at_m)
        };
        if places(reached().filter(|(_, reading)| of_it(reading))) < ENOUGH {
            return None;
        }
        thinnest(reached()).map(|index| self.readings[index].thickness_m)
    }

    /// The least reading within reach of a plate, metres; none with fewer than two.
    #[must_use]
    pub fn under_plate_m(&self, side: Side) -> Option<f64> {
        let plate = self.plate(side);
        let thinnest = self.readings[plate.thinnest?].thickness_m;
        (plate.readings_used >= ENOUGH).then_some(thinnest)
    }

    /// The thinnest of all readings, by its place in the list.
    #[must_use]
    pub fn thinnest(&self) -> Option<usize> {
        thinnest(self.readings.iter().enumerate())
    }
}

fn reached(
    readings: &[MapReading],
    off: impl Fn(DVec2) -> f64,
) -> impl Iterator<Item = (usize, &MapReading)> {
    let all = readings.iter().enumerate();
    all.filter(move |(_, reading)| off(reading.at_m) <= WITHIN_M)
}

/// How many places readings were taken at, each farther than [`APART_M`] from those before it.
fn places<'a>(readings: impl Iterator<Item = (usize, &'a MapReading)>) -> usize {
    let mut kept: Vec<DVec2> = Vec::new();
    for (_, reading) in readings {
        let is_new = |at: &DVec2| at.distance(reading.at_m) >= APART_M - NOISE_M;
        if kept.iter().all(is_new) {
            kept.push(reading.at_m);
        }
    }
    kept.len()
}

/// True when a joint or an edge lies between two places: they may be of two pours.
fn parted(outline: &[DVec2], lines: &[MapLine], from: DVec2, to: DVec2) -> bool {
    let way = [from, to];
    let pours = |kind| matches!(kind, SlabLineKind::Joint | SlabLineKind::Edge);
    lines
        .iter()
        .any(|line| pours(line.kind) && cross(way, line.ends))
        || sides(outline).any(|side| cross(way, side))
}

fn thinnest<'a>(readings: impl Iterator<Item = (usize, &'a MapReading)>) -> Option<usize> {
    readings
        .min_by(|(_, a), (_, b)| a.thickness_m.total_cmp(&b.thickness_m))
        .map(|(index, _)| index)
}

fn point([x, y]: [crate::units::Length; 2]) -> DVec2 {
    DVec2::new(x.m(), y.m())
}

/// The inner faces of the walls: a slab is at least as large as the room.
fn room(bay: &Bay) -> Vec<DVec2> {
    let middle = -bay.garage.opening.offset.m();
    let half = bay.garage.width.m() * 0.5;
    let rect = Rect {
        low: DVec2::new(middle - half, 0.0),
        high: DVec2::new(middle + half, bay.garage.depth.m()),
    };
    rect.corners().into()
}

#[cfg(test)]
mod tests;

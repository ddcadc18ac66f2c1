//! How are solids and floor lines drawn?

use glam::DVec2;

use crate::bay::UnitSystem;
use crate::drawing::outline::{Look, Outline};
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{BODY, DOOR, FINE, INK, STEEL, TYRE, WALL};
use crate::drawing::sheet::{Dash, Item, Layer, Pen, Shape, Tick};
use crate::setting_out::place;
use crate::solids::{Role, Solid};

/// The layer and the fill of a solid.
pub(super) const fn looks(role: Role) -> (Layer, Colour) {
    match role {
        Role::Floor | Role::Wall | Role::DoorWall | Role::Ceiling => (Layer::Walls, WALL),
        Role::Obstacle(_) => (Layer::Overhead, WALL),
        Role::DoorPanel | Role::DoorFitting | Role::Opener => (Layer::Door, DOOR),
        Role::BasePlate(_) => (Layer::Plates, STEEL),
        Role::Post(_)
        | Role::PowerUnit(_)
        | Role::TieBeam
        | Role::FloorPlate
        | Role::ShutOffBar => (Layer::Posts, STEEL),
        Role::Carriage(_) | Role::Arm(_) | Role::Pad(_) => (Layer::Lift, STEEL),
        Role::Body | Role::Mirror => (Layer::Vehicle, BODY),
        Role::Wheel(_) => (Layer::Vehicle, TYRE),
    }
}

/// An outline as a shape.
pub(super) fn shape(outline: &Outline, pen: Option<Pen>, fill: Option<Colour>) -> Shape {
    match outline {
        Outline::Polygon(points) => Shape::Polygon {
            points: points.clone(),
            pen,
            fill,
        },
        Outline::Circle(middle, radius) => Shape::Circle {
            middle: *middle,
            radius: *radius,
            pen,
            fill,
        },
    }
}

/// One solid, filled and outlined.
pub(super) fn solid(items: &mut Vec<Item>, look: Look, solid: &Solid) {
    let (layer, fill) = looks(solid.role);
    items.push(Item {
        layer,
        shape: shape(
            &look.outline(solid),
            Some(Pen::solid(0.18, INK)),
            Some(fill),
        ),
    });
}

/// One solid as a broken outline: what lies over the eye's plane.
pub(super) fn over(items: &mut Vec<Item>, look: Look, solid: &Solid) {
    let (layer, _) = looks(solid.role);
    let pen = Pen::broken(0.15, FINE, Dash::Dashed);
    items.push(Item {
        layer,
        shape: shape(&look.outline(solid), Some(pen), None),
    });
}

/// Several solids as one: outlines first, then what fills them, so that only the outline of all
/// together is seen.
pub(super) fn together<'a>(
    items: &mut Vec<Item>,
    look: Look,
    solids: impl Iterator<Item = &'a Solid> + Clone,
) {
    for solid in solids.clone() {
        let (layer, _) = looks(solid.role);
        items.push(Item {
            layer,
            shape: shape(&look.outline(solid), Some(Pen::solid(0.4, INK)), None),
        });
    }
    for solid in solids {
        let (_, fill) = looks(solid.role);
        items.push(Item {
            layer: Layer::Shade,
            // Its own edge hides the seams between neighbours.
            shape: shape(
                &look.outline(solid),
                Some(Pen::solid(0.12, fill)),
                Some(fill),
            ),
        });
    }
}

/// A line.
pub(super) fn line(items: &mut Vec<Item>, layer: Layer, ends: [DVec2; 2], pen: Pen) {
    items.push(Item {
        layer,
        shape: Shape::Line { ends, pen },
    });
}

/// Running dimensions from one zero, each thing with its place; what lies at the same place is
/// told together.
pub(super) struct Running {
    zero_m: f64,
    units: UnitSystem,
    ticks: Vec<Tick>,
}

/// Nearer than this to each other, two places read the same on any tape, metres.
const SAME_M: f64 = 0.000_4;

impl Running {
    pub(super) const fn from(zero_m: f64, units: UnitSystem) -> Self {
        Self {
            zero_m,
            units,
            ticks: Vec::new(),
        }
    }

    pub(super) fn put(&mut self, what: impl Into<String>, at_m: f64, across_m: f64) {
        let reads = place(at_m - self.zero_m, self.units);
        self.put_as(what, at_m, across_m, reads);
    }

    pub(super) fn put_as(
        &mut self,
        what: impl Into<String>,
        at_m: f64,
        across_m: f64,
        reads: String,
    ) {
        let what = what.into();
        let same = |tick: &&mut Tick| (tick.at_m - at_m).abs() < SAME_M && tick.reads == reads;
        if let Some(tick) = self.ticks.iter_mut().find(same) {
            tick.what = format!("{}, {what}", tick.what);
            return;
        }
        self.put_apart(what, at_m, across_m, reads);
    }

    /// The same, told by itself whatever lies at its place.
    pub(super) fn put_apart(&mut self, what: String, at_m: f64, across_m: f64, reads: String) {
        self.ticks.push(Tick {
            at_m,
            across_m,
            what,
            reads,
        });
    }

    pub(super) fn done(self) -> Vec<Tick> {
        self.ticks
    }
}

/// The part of a line that lies inside a rectangle; none where they don't meet.
pub(super) fn clipped([from, to]: [DVec2; 2], low: DVec2, high: DVec2) -> Option<[DVec2; 2]> {
    let way = to - from;
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        if way[axis].abs() < 1e-12 {
            if from[axis] < low[axis] || from[axis] > high[axis] {
                return None;
            }
            continue;
        }
        let a = (low[axis] - from[axis]) / way[axis];
        let b = (high[axis] - from[axis]) / way[axis];
        first = first.max(a.min(b));
        last = last.min(a.max(b));
    }
    (first < last).then(|| [from + way * first, from + way * last])
}

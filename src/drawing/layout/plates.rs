//! A base plate by itself: where are its corners and holes, from the same corner of the room?

use glam::DVec2;

use super::Made;
use super::draw::{Running, clipped, line, shape};
use super::plan::{HOLE_M, line_word};
use crate::bay::{Side, SlabLineKind};
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::{INK, SET_OUT, SLAB_LINE};
use crate::drawing::sheet::{Callout, Dash, Item, Layer, Mark, Pen, Shape, View};
use crate::ground::slab::{SlabMap, plate_rect};
use crate::setting_out::{Drill, PointKind, Reading};
use crate::solids::Role;
use crate::solids::posts::posts;
use crate::units::{Length, Rounding, both};

pub(super) const SIDES: [(Side, &str, &str); 2] = [
    (Side::Left, "Left base plate", "LEFT"),
    (Side::Right, "Right base plate", "RIGHT"),
];

/// How far around a plate the floor is drawn, metres.
const AROUND_M: f64 = 0.15;

pub(super) fn notes(made: &Made<'_>) -> Vec<String> {
    let plate = &made.order.bay.lift.base_plate;
    let units = made.order.bay.units;
    let mut notes = vec![
        "Seen from above. Running dimensions from corner A, as on the floor plan: from the left \
         wall and from the door wall."
            .into(),
    ];
    if made.out.drill == Drill::Shown {
        let part = |what: &str, length: Option<Length>, rounding| {
            length.map_or_else(
                || format!("{what} not given"),
                |length| format!("{what} {}", both(length, units, rounding)),
            )
        };
        notes.push(format!(
            "Each post: {} holes, {}, {}. The maker's manual governs bit and depth.",
            plate.anchors.len(),
            part("anchor diameter", plate.anchor_diameter, Rounding::Nearest),
            part("embedment", plate.anchor_embedment, Rounding::Up)
        ));
    }
    notes
}

pub(super) fn view(made: &Made<'_>, side: Side) -> View {
    let bay = made.order.bay;
    let rect = plate_rect(bay, side);
    let mut view = View::default();
    let fixed = posts(bay);
    for one in &fixed {
        if one.role == Role::BasePlate(side) {
            let pen = Some(Pen::solid(0.35, INK));
            view.items.push(Item {
                layer: Layer::Plates,
                shape: shape(&Look::Plan.outline(one), pen, None),
            });
        }
    }
    for one in &fixed {
        if one.role == Role::Post(side) {
            super::draw::over(&mut view.items, Look::Plan, one);
        }
    }
    let (low, high) = (rect.low - AROUND_M, rect.high + AROUND_M);
    let post_line = [
        DVec2::new(low.x, bay.lift.post_line.m()),
        DVec2::new(high.x, bay.lift.post_line.m()),
    ];
    let pen = Pen::broken(0.2, SET_OUT, Dash::Centre);
    line(&mut view.items, Layer::Points, post_line, pen);
    let map = SlabMap::of(bay);
    for one in &map.lines {
        if let Some(ends) = clipped(one.ends, low, high) {
            let pen = Pen::broken(0.35, SLAB_LINE, Dash::Dashed);
            line(&mut view.items, Layer::SlabLines, ends, pen);
        }
    }
    slab_lines(&mut view, made, side, &map);
    readings(&mut view, made, side, &map, (low, high));
    let points = &made.out.points;
    diagonals(&mut view, made, side);
    let corner_a = made.out.point("A").map_or(DVec2::ZERO, |a| a.at_m);
    let mut x = Running::from(corner_a.x, bay.units);
    let mut y = Running::from(corner_a.y, bay.units);
    x.put("plate, left edge", rect.low.x, rect.low.y);
    x.put("plate, right edge", rect.high.x, rect.low.y);
    y.put("plate, rear edge", rect.low.y, rect.low.x);
    y.put("plate, front edge", rect.high.y, rect.low.x);
    y.put("post line", bay.lift.post_line.m(), rect.low.x);
    let face = crate::solids::posts::inner_face_x_m(bay, side);
    x.put("post's inner face", face, bay.lift.post_line.m());
    let radius = bay
        .lift
        .base_plate
        .anchor_diameter
        .map_or(HOLE_M, |d| d.m())
        * 0.5;
    for point in points {
        let own = point.kind == PointKind::Plate(side) || point.kind == PointKind::Hole(side);
        if !own {
            continue;
        }
        view.marks.push(Mark {
            at_m: point.at_m,
            letter: point.letter.clone(),
            may_be_left: false,
            clear_m: match point.kind {
                PointKind::Hole(_) => radius * BEYOND,
                _ => 0.0,
            },
        });
        if point.kind == PointKind::Hole(side) {
            hole(&mut view.items, point.at_m, radius);
            x.put(&point.letter, point.at_m.x, point.at_m.y);
            y.put(&point.letter, point.at_m.y, point.at_m.x);
        }
    }
    view.bottom = x.done();
    view.left = y.done();
    view
}

/// Lines of the slab farther from a plate than this are not told beside it, metres.
const NEAR_M: f64 = 1.0;

/// How near joints, cracks, edges and drains come to the plate, and to its holes where they are
/// shown.
fn slab_lines(view: &mut View, made: &Made<'_>, side: Side, map: &SlabMap) {
    let bay = made.order.bay;
    let rect = plate_rect(bay, side);
    let given = bay
        .slab
        .as_ref()
        .is_some_and(|slab| !slab.outline.is_empty());
    let corners = map.outline.iter().copied();
    let next = map.outline.iter().copied().cycle().skip(1);
    let outline = corners.zip(next).filter(|_| given);
    let outline = outline.map(|(a, b)| (SlabLineKind::Edge, [a, b]));
    let lines = map.lines.iter().map(|one| (one.kind, one.ends));
    let room = |metres: f64| both(Length::metres(metres), bay.units, Rounding::Down);
    let (low, high) = view.bounds_m();
    for (kind, ends) in lines.chain(outline) {
        let off = rect.line_distance_m(ends);
        if off > NEAR_M {
            continue;
        }
        let word = line_word(kind);
        let mut says = if off <= 0.0 {
            format!("{word}: runs through the plate")
        } else {
            format!("{word}: {} from the plate", room(off))
        };
        let holes = made.out.points.iter();
        let holes = holes.filter(|point| point.kind == PointKind::Hole(side));
        let nearest = holes
            .map(|point| (nearest_on(ends, point.at_m).distance(point.at_m), point))
            .min_by(|a, b| a.0.total_cmp(&b.0));
        if let Some((far, hole)) = nearest {
            says += &format!(", {} from the middle of {}", room(far), hole.letter);
        }
        let on_line = nearest_on(ends, rect.middle());
        // Off the page its leader would lead nowhere: it ends at the edge on that side.
        let at_m = on_line.clamp(low, high);
        view.callouts.push(Callout::leading(at_m, says));
    }
}

/// Where the slab was read near the plate: a hole there is none to be drilled.
fn readings(
    view: &mut View,
    made: &Made<'_>,
    side: Side,
    map: &SlabMap,
    (low, high): (DVec2, DVec2),
) {
    let is_seen = |at: DVec2| at.cmpge(low).all() && at.cmple(high).all();
    for (index, reading) in map.readings.iter().enumerate() {
        if !is_seen(reading.at_m) {
            continue;
        }
        view.items.push(read_here(reading.at_m));
        let holes = made.out.points.iter();
        let holes = holes.filter(|point| point.kind == PointKind::Hole(side));
        let nearest = holes
            .map(|point| (point.at_m.distance(reading.at_m), point))
            .min_by(|a, b| a.0.total_cmp(&b.0));
        let mut says = format!("slab read here (reading {}), not to be drilled", index + 1);
        if let Some((far, hole)) = nearest {
            let far = both(Length::metres(far), made.order.bay.units, Rounding::Down);
            says += &format!(": {far} from the middle of {}", hole.letter);
        }
        view.callouts.push(Callout::leading(reading.at_m, says));
    }
}

/// The sign of a place where the slab was read.
pub(super) fn read_here(at: DVec2) -> Item {
    Item {
        layer: Layer::Readings,
        shape: Shape::Circle {
            middle: at,
            radius: READ_M,
            pen: Some(Pen::solid(0.2, SLAB_LINE)),
            fill: None,
        },
    }
}

/// Its radius, metres of the floor.
pub(super) const READ_M: f64 = 0.03;

/// The place on a line that is nearest to a point.
fn nearest_on([a, b]: [DVec2; 2], point: DVec2) -> DVec2 {
    let way = b - a;
    let share = (point - a).dot(way) / way.length_squared().max(1e-18);
    a + way * share.clamp(0.0, 1.0)
}

/// From corner to corner of the plate, both ways.
fn diagonals(view: &mut View, made: &Made<'_>, side: Side) {
    let corners: Vec<_> = made
        .out
        .points
        .iter()
        .filter(|point| point.kind == PointKind::Plate(side))
        .collect();
    let [one, two, three, four] = corners[..] else {
        return;
    };
    for [from, to] in [[one, three], [two, four]] {
        let ends = [from.at_m, to.at_m];
        let pen = Pen::broken(0.15, SET_OUT, Dash::Dashed);
        line(&mut view.items, Layer::Points, ends, pen);
        let reading = Reading {
            expected_m: from.at_m.distance(to.at_m),
            tolerance_m: 0.0,
        };
        view.callouts.push(Callout::leading(
            ends[0].lerp(ends[1], if from.letter == one.letter { 0.7 } else { 0.25 }),
            format!(
                "diagonal {}\u{2013}{}: {}",
                from.letter,
                to.letter,
                reading.fine(made.order.bay.units)
            ),
        ));
    }
}

fn hole(items: &mut Vec<Item>, at: DVec2, radius: f64) {
    items.push(Item {
        layer: Layer::Holes,
        shape: Shape::Circle {
            middle: at,
            radius,
            pen: Some(Pen::solid(0.3, INK)),
            fill: None,
        },
    });
    middle(items, at, radius);
}

/// How far beyond a hole its middle lines go, of its radius.
pub(super) const BEYOND: f64 = 1.6;

/// The middle lines of a hole: where they cross one sets the centre punch.
pub(super) fn middle(items: &mut Vec<Item>, at: DVec2, radius: f64) {
    for way in [DVec2::X, DVec2::Y] {
        let pen = Pen::solid(0.15, INK);
        line(
            items,
            Layer::Holes,
            [at - way * radius * BEYOND, at + way * radius * BEYOND],
            pen,
        );
    }
}

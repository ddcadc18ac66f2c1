//! A base plate by itself: where are its corners and holes, from the same corner of the room?

use glam::DVec2;

use super::Made;
use super::draw::{Running, clipped, line, shape};
use super::plan::HOLE_M;
use crate::bay::Side;
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
            view.callouts.push(Callout {
                at_m: ends[0].lerp(ends[1], 0.5),
                says: "joint, crack, edge or drain".into(),
            });
        }
    }
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
            clear_m: match point.kind {
                PointKind::Hole(_) => radius,
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
        view.callouts.push(Callout {
            at_m: ends[0].lerp(ends[1], if from.letter == one.letter { 0.7 } else { 0.25 }),
            says: format!(
                "diagonal {}\u{2013}{}: {}",
                from.letter,
                to.letter,
                reading.both(made.order.bay.units)
            ),
        });
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
    for way in [DVec2::X, DVec2::Y] {
        let pen = Pen::solid(0.15, INK);
        line(
            items,
            Layer::Holes,
            [at - way * radius * 1.6, at + way * radius * 1.6],
            pen,
        );
    }
}

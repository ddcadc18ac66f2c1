//! The part of the floor plan about the posts, larger, where the plan's own scale is too coarse for
//! its points to be told apart.

use glam::DVec2;

use super::draw::{Running, clipped, line};
use super::parking::beside_stop_line;
use super::plan::Telling;
use super::{LayoutError, Made, plan};
use crate::bay::Side;
use crate::drawing::sheet::{Item, Mark, Shape, View};
use crate::ground::slab::plate_rect;
use crate::setting_out::PointKind;
use crate::solids::DoorTravel;
use crate::solids::list::solids;

/// A plan to a coarser scale than 1 to this gets a part of its own.
pub(super) const COARSE: f64 = 60.0;
/// It is at least so many times as large as on the plan.
pub(super) const LARGER: f64 = 1.25;
/// A short word that the page's layers begin with.
pub(super) const TAG: &str = "DETAIL";
/// How far around the plates the floor is drawn, metres.
const AROUND_M: f64 = 0.3;

pub(super) fn notes() -> Vec<String> {
    vec![
        "The part of the floor plan about the posts, seen from above, the door below. Running \
         dimensions from corner A, as on the floor plan. Letters are the points of the pulls; holes \
         are on the sheets of the plates."
            .into(),
    ]
}

/// What is drawn: both plates, and the points for parking where there are any.
fn area(made: &Made<'_>) -> (DVec2, DVec2) {
    let plates = [Side::Left, Side::Right].map(|side| plate_rect(made.order.bay, side));
    let mut low = plates[0].low.min(plates[1].low);
    let mut high = plates[0].high.max(plates[1].high);
    for point in &made.out.points {
        if matches!(point.kind, PointKind::Parking | PointKind::Posts) && point.at_m.y > 0.0 {
            low = low.min(point.at_m);
            high = high.max(point.at_m);
        }
    }
    (low - AROUND_M, high + AROUND_M)
}

/// What of a convex outline lies in a rectangle.
fn cut(points: &[DVec2], low: DVec2, high: DVec2) -> Vec<DVec2> {
    let mut kept = points.to_vec();
    for (normal, most) in [
        (DVec2::X, high.x),
        (DVec2::NEG_X, -low.x),
        (DVec2::Y, high.y),
        (DVec2::NEG_Y, -low.y),
    ] {
        let next = kept.iter().copied().cycle().skip(1);
        let mut rest = Vec::with_capacity(kept.len() + 1);
        for (a, b) in kept.iter().copied().zip(next) {
            let (from, to) = (a.dot(normal) - most, b.dot(normal) - most);
            if from <= 0.0 {
                rest.push(a);
            }
            if from * to < 0.0 {
                rest.push(a.lerp(b, from / (from - to)));
            }
        }
        kept = rest;
    }
    kept
}

pub(super) fn view(made: &Made<'_>, telling: Telling) -> Result<View, LayoutError> {
    let whole = plan::view(made, telling)?;
    let all = solids(made.order.bay, DoorTravel::Shut, 0.0).map_err(LayoutError::Stance)?;
    let (low, high) = area(made);
    let mut view = View::default();
    for item in &whole.items {
        let inside = |at: DVec2| at.cmpge(low).all() && at.cmple(high).all();
        match &item.shape {
            Shape::Circle { middle, radius, .. } => {
                if inside(*middle - *radius) && inside(*middle + *radius) {
                    view.items.push(Item {
                        layer: item.layer,
                        shape: item.shape.clone(),
                    });
                }
            }
            Shape::Line { ends, pen } => {
                if let Some(ends) = clipped(*ends, low, high) {
                    line(&mut view.items, item.layer, ends, *pen);
                }
            }
            Shape::Polygon { points, pen, fill } => {
                let points = cut(points, low, high);
                if points.len() > 2 {
                    let (pen, fill) = (*pen, *fill);
                    view.items.push(Item {
                        layer: item.layer,
                        shape: Shape::Polygon { points, pen, fill },
                    });
                }
            }
            Shape::Text(_) => {}
        }
    }
    let shown = |at: DVec2| at.cmpgt(low).all() && at.cmplt(high).all();
    view.callouts = whole.callouts;
    view.callouts.retain(|callout| shown(callout.at_m));
    let corner = made.out.point("A").map_or(DVec2::ZERO, |a| a.at_m);
    let units = made.order.bay.units;
    let mut x = Running::from(corner.x, units);
    let mut y = Running::from(corner.y, units);
    for point in made.out.points.iter().filter(|point| shown(point.at_m)) {
        if matches!(point.kind, PointKind::Hole(_)) {
            continue;
        }
        view.marks.push(Mark {
            at_m: point.at_m,
            letter: point.letter.clone(),
            clear_m: 0.0,
            may_be_left: false,
        });
        x.put(point.letter.clone(), point.at_m.x, point.at_m.y);
        let across = match point.kind {
            PointKind::Parking => beside_stop_line(made.order.bay, &all, point.at_m),
            _ => point.at_m.x,
        };
        y.put(point.letter.clone(), point.at_m.y, across.max(low.x));
    }
    // Numbers of the list of fixed things, after the points that must have their letters.
    let listed = whole.marks.into_iter();
    view.marks
        .extend(listed.filter(|mark| mark.may_be_left && shown(mark.at_m)));
    view.bottom = x.done();
    view.left = y.done();
    Ok(view)
}

//! What is drawn of the bay from the side and from the door, in which order, and where is a thing
//! seen in it?

use glam::DVec2;

use super::draw::{over, solid, together};
use crate::bay::Garage;
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::FINE;
use crate::drawing::sheet::{Dash, Item, Layer, Pen, Shape, View};
use crate::solids::{Role, Solid};

/// Each solid with the number of its item: what is filled after it may hide it.
pub(super) struct Painted<'a>(Vec<(&'a str, usize)>);

/// Everything that the study collides, but for walls between the eye and the bay; the panels of a door
/// there are broken outlines.
pub(super) fn picture<'a>(
    view: &mut View,
    look: Look,
    garage: &Garage,
    all: &'a [Solid],
) -> Painted<'a> {
    let hidden = |one: &Solid| {
        let name = one.name.as_str();
        match (look, one.role) {
            // Between the eye and the bay.
            (Look::Side, Role::Wall) => name != "shell/wall back",
            (Look::Side, Role::DoorWall) => !name.ends_with("header"),
            (_, Role::Wall) => name == "shell/wall back",
            (_, Role::DoorWall) => true,
            _ => false,
        }
    };
    // The nearest of all to the eye, open too: filled they would hide the beam and what it limits.
    let is_door = |one: &Solid| look == Look::Front && one.role == Role::DoorPanel;
    let mut seen: Vec<&Solid> = all.iter().filter(|one| !hidden(one)).collect();
    seen.sort_by(|a, b| look.nearness(a).total_cmp(&look.nearness(b)));
    let shell = |one: &&&Solid| {
        matches!(
            one.role,
            Role::Floor | Role::Wall | Role::DoorWall | Role::Ceiling
        )
    };
    let mut painted = Painted(Vec::new());
    for one in seen.iter().filter(shell) {
        painted.put(&mut view.items, one, |items| solid(items, look, one));
    }
    if look == Look::Front {
        let header = all.iter().find(|one| one.name == "shell/door header");
        let underside_m = header.map(|one| one.bounds().0.z);
        view.items
            .extend(underside_m.map(|underside_m| opening(garage, underside_m)));
    }
    let vehicle = |one: &&&Solid| matches!(one.role, Role::Body | Role::Mirror | Role::Wheel(_));
    let eye = look.toward_eye();
    let nearest = seen.iter().filter(vehicle).map(|one| look.nearness(one));
    let nearest = nearest.fold(f64::NEG_INFINITY, f64::max);
    // Parts of the lift that stand before the vehicle don't hide it, and are not painted behind it.
    let before = |one: &&&Solid| {
        let part = matches!(
            one.role,
            Role::Post(_) | Role::PowerUnit(_) | Role::Carriage(_)
        );
        part && one.support(-eye).dot(eye) > nearest
    };
    for one in seen.iter() {
        if !shell(&one) && !vehicle(&one) && !before(&one) && !is_door(one) {
            painted.put(&mut view.items, one, |items| solid(items, look, one));
        }
    }
    let of = |wheel: bool| {
        let seen = seen.iter().filter(vehicle).copied();
        seen.filter(move |one| matches!(one.role, Role::Wheel(_)) == wheel)
    };
    together(&mut view.items, look, of(true));
    together(&mut view.items, look, of(false));
    for one in seen.iter().filter(|one| is_door(one)) {
        painted.put(&mut view.items, one, |items| over(items, look, one));
    }
    // Posts and arms once more, over or behind the vehicle as they may be.
    let lift = |one: &&&Solid| matches!(one.role, Role::Post(_) | Role::Arm(_) | Role::Pad(_));
    for one in seen.iter().filter(|one| lift(one) || before(one)) {
        if before(&one) {
            painted.put(&mut view.items, one, |items| over(items, look, one));
        } else {
            over(&mut view.items, look, one);
        }
    }
    painted
}

/// The opening, as the door wall leaves it under its header.
fn opening(garage: &Garage, underside_m: f64) -> Item {
    let half = garage.opening.width.m() * 0.5;
    let foot = underside_m - garage.opening.height.m();
    Item {
        layer: Layer::Door,
        shape: Shape::Polygon {
            points: vec![
                DVec2::new(-half, foot),
                DVec2::new(half, foot),
                DVec2::new(half, underside_m),
                DVec2::new(-half, underside_m),
            ],
            pen: Some(Pen::broken(0.15, FINE, Dash::Dashed)),
            fill: None,
        },
    }
}

/// Places looked at across a thing, each way: an odd count has one in its middle.
const PLACES: u32 = 21;

impl<'a> Painted<'a> {
    fn put(&mut self, items: &mut Vec<Item>, one: &'a Solid, draw: impl Fn(&mut Vec<Item>)) {
        draw(items);
        self.0.push((&one.name, items.len() - 1));
    }

    /// The place on the page, metres, that lies deepest in what is seen of a thing, and of several
    /// the one nearest to its middle; none where all of it is hidden.
    pub(super) fn seen_at(&self, view: &View, one: &Solid) -> Option<DVec2> {
        let (_, own) = *self.0.iter().find(|(name, _)| *name == one.name)?;
        let own_shape = &view.items.get(own)?.shape;
        let (low, high) = bounds(own_shape)?;
        let over: Vec<&Shape> = view.items[own + 1..]
            .iter()
            .map(|item| &item.shape)
            .filter(|shape| is_filled(shape))
            .filter(|shape| {
                bounds(shape).is_some_and(|(l, h)| l.cmplt(high).all() && low.cmplt(h).all())
            })
            .collect();
        let step = (high - low) / f64::from(PLACES);
        let cells = (0..PLACES).flat_map(|x| (0..PLACES).map(move |y| (x, y)));
        let at = |(x, y): (u32, u32)| low + step * (DVec2::new(x.into(), y.into()) + 0.5);
        let (seen, not): (Vec<DVec2>, Vec<DVec2>) = cells
            .map(at)
            .partition(|at| holds(own_shape, *at) && !over.iter().any(|shape| holds(shape, *at)));
        let middle = (low + high) * 0.5;
        let depth = |at: DVec2| {
            let edge = (at - low).min(high - at).min_element();
            let not = not.iter().map(|other| at.distance(*other));
            not.fold(edge, f64::min)
        };
        let deep = seen
            .into_iter()
            .map(|at| (depth(at), at.distance(middle), at));
        // Less than a hair deeper is no deeper.
        let hair = step.min_element() * 1e-3;
        deep.reduce(|best, next| {
            let deeper = next.0 > best.0 + hair;
            let as_deep = next.0 > best.0 - hair;
            if deeper || (as_deep && next.1 < best.1) {
                next
            } else {
                best
            }
        })
        .map(|(_, _, at)| at)
    }
}

const fn is_filled(shape: &Shape) -> bool {
    matches!(
        shape,
        Shape::Polygon { fill: Some(_), .. } | Shape::Circle { fill: Some(_), .. }
    )
}

/// Lowest and highest corner about a polygon or a circle.
fn bounds(shape: &Shape) -> Option<(DVec2, DVec2)> {
    match shape {
        Shape::Polygon { points, .. } => points
            .iter()
            .map(|&at| (at, at))
            .reduce(|(low, high), (a, b)| (low.min(a), high.max(b))),
        Shape::Circle { middle, radius, .. } => Some((*middle - *radius, *middle + *radius)),
        Shape::Line { .. } | Shape::Text(_) => None,
    }
}

/// Whether a convex polygon, counter-clockwise, or a circle has this point inside.
fn holds(shape: &Shape, at: DVec2) -> bool {
    match shape {
        Shape::Circle { middle, radius, .. } => at.distance(*middle) < *radius,
        Shape::Polygon { points, .. } => {
            let next = points.iter().cycle().skip(1);
            let mut sides = points.iter().zip(next);
            sides.all(|(&a, &b)| (b - a).perp_dot(at - a) > 0.0)
        }
        Shape::Line { .. } | Shape::Text(_) => false,
    }
}

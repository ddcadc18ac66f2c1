//! The floor plan: where do lift, vehicle, walls and slab lines lie, from one corner?

use glam::DVec2;

use super::draw::{Running, line, over, solid, together};
use super::parking::{axle, beside_stop_line, cg, parking};
use super::things::numbered;
use super::{LayoutError, Made};
use crate::bay::SlabLineKind;
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::{SET_OUT, SLAB_LINE};
use crate::drawing::sheet::{Callout, Dash, Item, Layer, Mark, Pen, Shape, View};
use crate::ground::slab::SlabMap;
use crate::report::{on_one_line, short_name};
use crate::setting_out::{PointKind, Reading, place};
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Role, Solid};
use crate::units::{Length, Rounding, both};

/// What reaches no lower than this is drawn as lying overhead, metres.
const OVERHEAD_M: f64 = 1.8;
/// The drawn diameter of a hole whose anchor is not known, metres.
pub(super) const HOLE_M: f64 = 0.016;

/// How things in the room and lines of the slab are told of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Telling {
    /// Beside the drawing, each with a leader.
    InWords,
    /// By the number in the list of fixed things.
    ByNumber,
}

pub(super) fn notes(made: &Made<'_>, telling: Telling) -> Vec<String> {
    let tail = match made.order.bay.parking.facing {
        crate::bay::Facing::NoseIn => "nose in",
        crate::bay::Facing::TailIn => "tail in",
    };
    vec![format!(
        "Seen from above, the door below. Running dimensions from corner A (door wall and left \
         wall, inner faces); a place as \"a / b\" is a from the left wall, b from the door wall. \
         Letters are the points of the pulls{}. The vehicle stands {tail}, as parked; broken outlines \
         lie overhead.",
        match telling {
            Telling::InWords => ", a number in brackets that of the list of fixed things",
            Telling::ByNumber =>
                ", numbers those of the list of fixed things on the last pages: there is no room here \
                 to say what each is",
        }
    )]
}

pub(super) fn view(made: &Made<'_>, telling: Telling) -> Result<View, LayoutError> {
    let bay = made.order.bay;
    let all = solids(bay, DoorTravel::Shut, 0.0).map_err(LayoutError::Stance)?;
    let mut view = View::default();
    // What is told of by number comes after the points of the pulls, which must have their letters.
    let mut listed = Vec::new();
    room(&mut view, made, &all, &mut listed);
    let of = |wanted: fn(Role) -> bool| all.iter().filter(move |solid| wanted(solid.role));
    let items = &mut view.items;
    together(items, Look::Plan, of(|role| matches!(role, Role::Wheel(_))));
    together(
        items,
        Look::Plan,
        of(|role| matches!(role, Role::Body | Role::Mirror)),
    );
    for one in of(|role| matches!(role, Role::Wheel(_))) {
        over(items, Look::Plan, one);
    }
    for one in of(|role| matches!(role, Role::BasePlate(_) | Role::FloorPlate)) {
        solid(items, Look::Plan, one);
    }
    for one in of(|role| matches!(role, Role::Post(_) | Role::PowerUnit(_))) {
        solid(items, Look::Plan, one);
    }
    for one in of(|role| matches!(role, Role::TieBeam | Role::ShutOffBar)) {
        over(items, Look::Plan, one);
    }
    slab(&mut view, made, numbered(&all).count(), &mut listed);
    lines_and_points(&mut view, made);
    match telling {
        Telling::InWords => view
            .callouts
            .extend(listed.into_iter().map(Listed::in_words)),
        Telling::ByNumber => view.marks.extend(listed.into_iter().map(Listed::by_number)),
    }
    parking(&mut view, made, &all);
    ticks(&mut view, made, &all);
    Ok(view)
}

/// Something that the list of fixed things has too.
struct Listed {
    at_m: DVec2,
    number: usize,
    says: String,
}

impl Listed {
    fn in_words(self) -> Callout {
        Callout::leading(self.at_m, format!("({}) {}", self.number, self.says))
    }

    fn by_number(self) -> Mark {
        Mark {
            at_m: self.at_m,
            letter: self.number.to_string(),
            clear_m: 0.0,
            may_be_left: true,
        }
    }
}

fn room(view: &mut View, made: &Made<'_>, all: &[Solid], listed: &mut Vec<Listed>) {
    let bay = made.order.bay;
    listed.extend(numbered(all).map(|(number, one)| {
        let (low, high) = one.bounds();
        Listed {
            at_m: Look::Plan.flat((low + high) * 0.5),
            number,
            says: on_one_line(&short_name(&one.name)),
        }
    }));
    for one in all {
        match one.role {
            Role::DoorWall if one.bounds().0.z > 0.5 => over(&mut view.items, Look::Plan, one),
            Role::Wall | Role::DoorWall => solid(&mut view.items, Look::Plan, one),
            Role::Obstacle(_) => {
                if one.bounds().0.z > OVERHEAD_M {
                    over(&mut view.items, Look::Plan, one);
                } else {
                    solid(&mut view.items, Look::Plan, one);
                }
            }
            _ => {}
        }
    }
    let opening = &bay.garage.opening;
    let size = |length: Length| both(length, bay.units, Rounding::Down);
    view.callouts.push(Callout::leading(
        DVec2::new(opening.width.m() * 0.25, -opening.wall_thickness.m() * 0.5),
        format!(
            "door opening {} wide, {} high",
            size(opening.width),
            size(opening.height)
        ),
    ));
}

/// What a line of the slab is called.
pub(super) const fn line_word(kind: SlabLineKind) -> &'static str {
    match kind {
        SlabLineKind::Joint => "joint",
        SlabLineKind::Crack => "crack",
        SlabLineKind::Edge => "edge of the slab",
        SlabLineKind::Drain => "drain",
    }
}

/// Lines and readings of the slab, numbered on after the things in the room.
fn slab(view: &mut View, made: &Made<'_>, before: usize, listed: &mut Vec<Listed>) {
    let bay = made.order.bay;
    let map = SlabMap::of(bay);
    let (low, high) = view.bounds_m();
    for (index, one) in map.lines.iter().enumerate() {
        let word = line_word(one.kind);
        let Some(ends) = super::draw::clipped(one.ends, low, high) else {
            continue;
        };
        let pen = Pen::broken(0.3, SLAB_LINE, Dash::Dashed);
        line(&mut view.items, Layer::SlabLines, ends, pen);
        listed.push(Listed {
            at_m: ends[0].lerp(ends[1], 0.8),
            number: before + index + 1,
            says: format!(
                "{word}, from {} to {}",
                from_corner(made, ends[0]),
                from_corner(made, ends[1])
            ),
        });
    }
    for (index, reading) in map.readings.iter().enumerate() {
        view.items.push(super::plates::read_here(reading.at_m));
        let thick = both(
            Length::metres(reading.thickness_m),
            bay.units,
            Rounding::Down,
        );
        listed.push(Listed {
            at_m: reading.at_m,
            number: before + map.lines.len() + index + 1,
            says: format!(
                "slab read {thick} thick at {}",
                from_corner(made, reading.at_m)
            ),
        });
    }
}

/// Where a point is, from the left wall and from the door wall.
fn from_corner(made: &Made<'_>, point: DVec2) -> String {
    let units = made.order.bay.units;
    let corner = made.out.point("A").map_or(DVec2::ZERO, |a| a.at_m);
    let from_a = point - corner;
    format!("{} / {}", place(from_a.x, units), place(from_a.y, units))
}

fn lines_and_points(view: &mut View, made: &Made<'_>) {
    let bay = made.order.bay;
    let out = &made.out;
    let at = |letter: &str| out.point(letter).map(|point| point.at_m);
    let middle = if at("D").is_some() { "D" } else { "C" };
    let set_out = |dash| Pen::broken(0.2, SET_OUT, dash);
    for (from, to, dash, diagonal) in [
        ("A", "B", Dash::Centre, false),
        (middle, "F", Dash::Centre, false),
        (middle, "G", Dash::Centre, false),
        ("K", "L", Dash::Centre, false),
        ("H", "K", Dash::Dashed, false),
        ("J", "L", Dash::Dashed, false),
        ("H", "L", Dash::Dashed, true),
        ("J", "K", Dash::Dashed, true),
        ("E", "F", Dash::Dashed, false),
    ] {
        let (Some(a), Some(b)) = (at(from), at(to)) else {
            continue;
        };
        line(&mut view.items, Layer::Points, [a, b], set_out(dash));
        if diagonal {
            let reading = Reading {
                expected_m: a.distance(b),
                tolerance_m: 0.0,
            };
            view.callouts.push(Callout::leading(
                a.lerp(b, 0.72),
                format!("diagonal {from}\u{2013}{to}: {}", reading.fine(bay.units)),
            ));
        }
    }
    let hole = bay.lift.base_plate.anchor_diameter;
    for point in &out.points {
        match point.kind {
            PointKind::Line | PointKind::Posts | PointKind::Parking => view.marks.push(Mark {
                at_m: point.at_m,
                letter: point.letter.clone(),
                clear_m: 0.0,
                may_be_left: false,
            }),
            PointKind::Hole(_) => view.items.push(Item {
                layer: Layer::Holes,
                shape: Shape::Circle {
                    middle: point.at_m,
                    radius: hole.map_or(HOLE_M, |d| d.m()) * 0.5,
                    pen: Some(Pen::solid(0.18, SET_OUT)),
                    fill: None,
                },
            }),
            PointKind::Plate(_) => {}
        }
    }
}

fn ticks(view: &mut View, made: &Made<'_>, all: &[Solid]) {
    let bay = made.order.bay;
    let at = |letter: &str| made.out.point(letter).map(|point| point.at_m);
    let (Some(a), Some(b), Some(g)) = (at("A"), at("B"), at("G")) else {
        return;
    };
    let mut x = Running::from(a.x, bay.units);
    let half = bay.garage.opening.width.m() * 0.5;
    x.put("left jamb", -half, 0.0);
    x.put("right jamb", half, 0.0);
    x.put("door's middle", 0.0, 0.0);
    x.put("right wall", b.x, 0.0);
    x.put("lift's middle", g.x, g.y);
    for (letter, what) in [("K", "left post's face"), ("L", "right post's face")] {
        if let Some(point) = at(letter) {
            x.put(what, point.x, point.y);
        }
    }
    if let Some(at) = cg(made)
        && (at.x - g.x).abs() > 0.001
    {
        x.put("centre of gravity", at.x, at.y);
    }
    view.bottom = x.done();

    let mut y = Running::from(a.y, bay.units);
    y.put("back wall", bay.garage.depth.m(), a.x);
    y.put("post line", g.y, at("K").map_or(g.x, |k| k.x));
    for one in all {
        if one.role == Role::BasePlate(crate::bay::Side::Left) {
            let (low, high) = one.bounds();
            y.put("plates, rear edge", low.y, low.x);
            y.put("plates, front edge", high.y, low.x);
        }
    }
    for (number, word) in [(0, "front tyres"), (1, "rear tyres")] {
        if let Some([p, q]) = axle(all, number) {
            let left = if p.x < q.x { p } else { q };
            let across = beside_stop_line(bay, all, left);
            y.put(format!("stop line, {word}"), left.y, across);
        }
    }
    if let Some(at) = cg(made) {
        y.put("centre of gravity", at.y, at.x);
    }
    let body = all.iter().filter(|one| one.role == Role::Body);
    let ends = body.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
        let (a, b) = one.bounds();
        (low.min(a.y), high.max(b.y))
    });
    if ends.0.is_finite() {
        y.put("vehicle, door end", ends.0, g.x);
        y.put("vehicle, far end", ends.1, g.x);
    }
    view.left = y.done();
}

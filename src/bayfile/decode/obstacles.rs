//! What else stands or hangs in the room?
//!
//! `Box(..)` and `Cylinder(..)` are kept as they are. `Beam(..)` and `Ties(..)` are short ways to
//! write boxes that span the room, and become such boxes here.

use super::all;
use super::fields::{Fields, record};
use super::garage::along;
use super::readers::{
    Count, Flag, Point, Read, angle, custom, items, name, not_negative, place, rec, size, text,
    variant, words,
};
use crate::bay::{Obstacle, ObstacleKind, ObstacleShape, Removable, Run};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::Node;
use crate::units::{Angle, Length};

/// The most obstacles in one bay, ties counted one by one.
const MOST: usize = 2000;
/// The most ties in one row.
const MOST_TIES: usize = 200;

/// The room that beams and ties span.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    pub(super) width: Length,
    pub(super) depth: Length,
    /// How far the opening's middle, where `x` is zero, lies to the right of the room's middle.
    pub(super) offset: Length,
}

/// Reads the obstacles. Without a room (its sizes were refused) beams and ties are looked at for
/// faults only.
pub(super) fn obstacles(room: Option<Room>) -> impl Read<Out = Vec<Obstacle>> {
    custom("[]", move |cx, node| {
        let nodes = items(cx, node, "obstacles", MOST, "Box(..)")?;
        let read: Vec<Option<Vec<Obstacle>>> = nodes.iter().map(|n| one(cx, n, room)).collect();
        let named: Vec<(&Node, Option<&str>)> = nodes
            .iter()
            .zip(&read)
            .map(|(n, o)| {
                (
                    n,
                    o.as_ref().and_then(|o| o.first()).map(|o| o.name.as_str()),
                )
            })
            .collect();
        let unique = unique_names(cx, &named);
        let all: Option<Vec<Vec<Obstacle>>> = read.into_iter().collect();
        let all: Vec<Obstacle> = all?.into_iter().flatten().collect();
        if all.len() > MOST {
            cx.error(
                node.head(),
                &format!(
                    "{} obstacles, ties counted one by one, are too many",
                    all.len()
                ),
                &format!("expected at most {MOST}"),
                "leave out those that can't matter",
            );
            return None;
        }
        unique.then_some(all)
    })
}

/// True when no two names are alike; the second of two is told.
pub(super) fn unique_names(cx: &Context, named: &[(&Node, Option<&str>)]) -> bool {
    let mut seen = std::collections::HashSet::new();
    let mut unique = true;
    for (node, name) in named {
        let Some(name) = name else { continue };
        if !seen.insert(*name) {
            unique = false;
            cx.error(
                node.head(),
                &format!("two things here are called \"{name}\""),
                "the second of that name",
                "give each its own name: reports tell them apart by it",
            );
        }
    }
    unique
}

fn one(cx: &Context, node: &Node, room: Option<Room>) -> Option<Vec<Obstacle>> {
    match variant(
        cx,
        node,
        "a kind of obstacle",
        &["Box", "Cylinder", "Beam", "Ties"],
    )? {
        "Box" => record(cx, node, "the box", |f| single(f, None, box_shape(f))),
        "Cylinder" => record(cx, node, "the cylinder", |f| single(f, None, cylinder(f))),
        "Beam" => record(cx, node, "the beam", |f| beam(f, room)),
        _ => record(cx, node, "the row of ties", |f| ties(f, room)),
    }
}

fn kind() -> impl Read<Out = ObstacleKind> {
    words(
        "a kind of thing",
        &[
            ("Beam", ObstacleKind::Beam),
            ("CollarTie", ObstacleKind::CollarTie),
            ("Duct", ObstacleKind::Duct),
            ("Light", ObstacleKind::Light),
            ("Heater", ObstacleKind::Heater),
            ("Fan", ObstacleKind::Fan),
            ("Pipe", ObstacleKind::Pipe),
            ("Shelf", ObstacleKind::Shelf),
            ("Bench", ObstacleKind::Bench),
            ("Post", ObstacleKind::Post),
            ("SecondVehicle", ObstacleKind::SecondVehicle),
            ("Other", ObstacleKind::Other),
        ],
    )
}

/// What every obstacle has beside its shape. A kind that follows from the form may be left out.
fn single(
    f: &Fields<'_>,
    default_kind: Option<ObstacleKind>,
    shape: Option<ObstacleShape>,
) -> Option<Vec<Obstacle>> {
    let obstacle = all!(Obstacle {
        name: f.need("name", &name()),
        kind: match default_kind {
            Some(default) => f.or("kind", default, &kind()),
            None => f.need("kind", &kind()),
        },
        shape,
        removable: f.maybe(
            "removable",
            &rec("the cost of removal", |f: &Fields<'_>| {
                all!(Removable {
                    cost: f.maybe("cost", &text()),
                })
            })
        ),
        only_at_times: f.or("only_at_times", false, &Flag),
        row: Some([0, 0]),
    })?;
    Some(vec![obstacle])
}

fn box_shape(f: &Fields<'_>) -> Option<ObstacleShape> {
    all!(ObstacleShape::Box {
        x: f.need("x", &place()),
        y: f.need("y", &place()),
        bottom: f.need("bottom", &not_negative()),
        width: f.need("width", &size()),
        depth: f.need("depth", &size()),
        height: f.need("height", &size()),
        turned: f.or("turned", Angle::ZERO, &angle(-360.0, 360.0)),
    })
}

fn cylinder(f: &Fields<'_>) -> Option<ObstacleShape> {
    let from = f.need("from", &Point::<3>);
    let to = f.need("to", &Point::<3>);
    let diameter = f.need("diameter", &size());
    let (from, to, diameter) = (from?, to?, diameter?);
    let length: f64 = (0..3).map(|i| (to[i] - from[i]).m().powi(2)).sum();
    if length.sqrt() < 1e-6 {
        f.error(
            "to",
            "this round bar has no length",
            "both ends are the same point",
            "give the two ends of its axis",
        );
        return None;
    }
    Some(ObstacleShape::Cylinder { from, to, diameter })
}

/// A box across or along the room, `width` thick in the other direction.
struct Spanning {
    along: Run,
    underside: Length,
    height: Length,
    width: Length,
    /// Ends along its run, in the room's axes.
    ends: [Length; 2],
}

impl Spanning {
    /// The box with its middle line at `at`: `y` for one that runs side to side, else `x`.
    fn at(&self, at: Length) -> ObstacleShape {
        let middle = (self.ends[0] + self.ends[1]) * 0.5;
        let length = self.ends[1] - self.ends[0];
        let (x, y, width, depth) = match self.along {
            Run::SideToSide => (middle, at, length, self.width),
            Run::DoorToBack => (at, middle, self.width, length),
        };
        ObstacleShape::Box {
            x,
            y,
            bottom: self.underside,
            width,
            depth,
            height: self.height,
            turned: Angle::ZERO,
        }
    }
}

/// Where the walls stand along a run.
fn walls(room: Room, along: Run) -> [Length; 2] {
    match along {
        Run::DoorToBack => [Length::ZERO, room.depth],
        Run::SideToSide => {
            let half = room.width * 0.5;
            [-half - room.offset, half - room.offset]
        }
    }
}

fn span(f: &Fields<'_>, room: Option<Room>) -> Option<Spanning> {
    let along = f.need("along", &along());
    let underside = f.need("underside", &size());
    let height = f.need("height", &size());
    let width = f.need("width", &size());
    let from = f.maybe("from", &place());
    let to = f.maybe("to", &place());
    let (along, walls) = (along?, walls(room?, along?));
    let ends = [from?.unwrap_or(walls[0]), to?.unwrap_or(walls[1])];
    if ends[0] >= ends[1] {
        f.error(
            "to",
            "this ends before it starts",
            "`to` must lie beyond `from`",
            "swap the two, or leave both out: it then spans the room",
        );
        return None;
    }
    Some(Spanning {
        along,
        underside: underside?,
        height: height?,
        width: width?,
        ends,
    })
}

fn beam(f: &Fields<'_>, room: Option<Room>) -> Option<Vec<Obstacle>> {
    let at = f.need("at", &place());
    let span = span(f, room);
    let shape = at.and_then(|at| Some(span?.at(at)));
    single(f, Some(ObstacleKind::Beam), shape)
}

fn ties(f: &Fields<'_>, room: Option<Room>) -> Option<Vec<Obstacle>> {
    let first = f.need("first", &place());
    let pitch = f.need("pitch", &size());
    let count = f.need(
        "count",
        &Count {
            what: "ties",
            least: 1,
            most: MOST_TIES,
        },
    );
    let span = span(f, room);
    let shape = first.and_then(|first| Some(span.as_ref()?.at(first)));
    let model = single(f, Some(ObstacleKind::CollarTie), shape)?.pop()?;
    let (first, pitch, count, span) = (first?, pitch?, count?, span?);
    let ties = (0..count).map(|i| Obstacle {
        name: format!("{} {}", model.name, i + 1),
        #[allow(clippy::cast_precision_loss)] // at most 200
        shape: span.at(first + pitch * i as f64),
        row: match span.along {
            Run::SideToSide => [0, i],
            Run::DoorToBack => [i, 0],
        },
        ..model.clone()
    });
    Some(ties.collect())
}

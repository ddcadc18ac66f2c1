//! Which room does the file describe?

use super::all;
use super::fields::{Fields, record};
use super::readers::{
    Read, custom, list, not_negative, number, one_item, place, rec, size, variant, words,
};
use super::{checks, door, obstacles};
use crate::bay::{Ceiling, CeilingStep, Door, FallToward, Floor, FloorLevel, Garage, Opening, Run};
use crate::units::Length;

/// The most panels a sectional door may have.
const MOST_PANELS: f64 = 60.0;

/// Reads the garage.
pub(super) fn garage(f: &Fields<'_>) -> Option<Garage> {
    let width = f.need("width", &size());
    let depth = f.need("depth", &size());
    let opening = f.need("opening", &rec("the opening", opening));
    let ceiling = f.need("ceiling", &ceiling());
    let room = match (width, depth, opening) {
        (Some(width), Some(depth), Some(opening)) => Some(obstacles::Room {
            width,
            depth,
            offset: opening.offset,
        }),
        _ => None,
    };
    let read = all!(Garage {
        width,
        depth,
        opening,
        ceiling,
        floor: f.need("floor", &floor()),
        door: f.need("door", &door::door()),
        opener: f.need("opener", &door::opener()),
        obstacles: f.or("obstacles", Vec::new(), &obstacles::obstacles(room)),
    });
    // These look at two or three values each and run even when others were refused.
    if let Some(room) = room {
        opening_fits(f, room, opening);
    }
    let read = read?;
    if let Door::Sectional(door) = &read.door
        && read.opening.height / door.panel_height > MOST_PANELS
    {
        f.error(
            "door.panel_height",
            "so low panels would make a door of more than 60 panels",
            "the panel height and the opening's height don't go together",
            "measure one panel, hinge to hinge, for example \"21 in\"",
        );
        return None;
    }
    checks::ceiling(f, &read)?;
    checks::outside(f, &read);
    checks::panels(f, &read);
    Some(read)
}

fn opening(f: &Fields<'_>) -> Option<Opening> {
    all!(Opening {
        width: f.need("width", &size()),
        height: f.need("height", &size()),
        offset: f.or("offset", Length::ZERO, &place()),
        wall_thickness: f.need("wall_thickness", &size()),
    })
}

fn opening_fits(f: &Fields<'_>, room: obstacles::Room, opening: Option<Opening>) {
    let Some(opening) = opening else { return };
    let needed = opening.width + opening.offset.abs() * 2.0;
    if needed > room.width {
        f.error(
            "opening.width",
            &format!(
                "the door opening is wider than its wall: {} with its offset, in a wall of {}",
                checks::both(needed),
                checks::both(room.width)
            ),
            "the opening must fit into the garage's width",
            "check the opening's width and offset and the garage's width",
        );
    }
}

fn run() -> impl Read<Out = Run> {
    words(
        "a direction",
        &[
            ("DoorToBack", Run::DoorToBack),
            ("SideToSide", Run::SideToSide),
        ],
    )
}

fn ceiling() -> impl Read<Out = Ceiling> {
    custom("Flat(height: \"10 ft\")", |cx, node| {
        let known = ["Flat", "Sloped", "Gable", "Stepped"];
        match variant(cx, node, "a kind of ceiling", &known)? {
            "Flat" => record(cx, node, "the flat ceiling", |f| {
                all!(Ceiling::Flat {
                    height: f.need("height", &size()),
                })
            }),
            "Sloped" => record(cx, node, "the sloped ceiling", |f| {
                all!(Ceiling::Sloped {
                    run: f.need("run", &run()),
                    first: f.need("first", &size()),
                    last: f.need("last", &size()),
                })
            }),
            "Gable" => record(cx, node, "the gable", |f| {
                all!(Ceiling::Gable {
                    ridge_along: f.need("ridge_along", &run()),
                    eaves: f.need("eaves", &size()),
                    ridge: f.need("ridge", &size()),
                    ridge_offset: f.or("ridge_offset", Length::ZERO, &place()),
                })
            }),
            _ => record(cx, node, "the stepped ceiling", |f| {
                all!(Ceiling::Stepped {
                    steps: f.need("steps", &list("steps", 200, rec("the step", step))),
                })
            }),
        }
    })
}

fn step(f: &Fields<'_>) -> Option<CeilingStep> {
    all!(CeilingStep {
        from: f.need("from", &not_negative()),
        height: f.need("height", &size()),
    })
}

fn floor() -> impl Read<Out = Floor> {
    custom("Level", |cx, node| {
        match variant(cx, node, "a kind of floor", &["Level", "Fall", "Levels"])? {
            "Fall" => record(cx, node, "the floor's fall", |f| {
                all!(Floor::Fall {
                    slope: f.need("slope", &number("a fall per length", 0.0, 0.2)),
                    toward: f.need("toward", &toward()),
                })
            }),
            "Levels" => {
                let points = one_item(cx, node, &levels())?;
                if points.is_empty() {
                    cx.error(
                        node.head(),
                        "the floor's levels list no point",
                        "expected at least one point",
                        "measure a level at the post line and at the door, or write `Level`",
                    );
                    return None;
                }
                Some(Floor::Levels(points))
            }
            _ => Some(Floor::Level),
        }
    })
}

fn levels() -> impl Read<Out = Vec<FloorLevel>> {
    list(
        "levels",
        1000,
        rec("the level", |f: &Fields<'_>| {
            all!(FloorLevel {
                x: f.need("x", &place()),
                y: f.need("y", &place()),
                level: f.need("level", &place()),
            })
        }),
    )
}

fn toward() -> impl Read<Out = FallToward> {
    words(
        "a direction",
        &[
            ("Door", FallToward::Door),
            ("Back", FallToward::Back),
            ("Left", FallToward::Left),
            ("Right", FallToward::Right),
        ],
    )
}

/// Which way beams, ties and ridges run.
pub(super) fn along() -> impl Read<Out = Run> {
    run()
}

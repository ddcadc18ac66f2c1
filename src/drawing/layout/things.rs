//! What is fixed in the room, thing by thing: where from corner A, and how high?
//!
//! The plan has each thing's number beside it; where there is no room to say beside a thing what it
//! is, its number alone stands there. This list has them all.

use glam::{DVec2, DVec3};

use super::plan::line_word;
use super::{LayoutError, Made};
use crate::drawing::outline::Look;
use crate::drawing::sheet::{Frame, Row, Sheet, Text, listing};
use crate::ground::slab::SlabMap;
use crate::report::{on_one_line, short_name};
use crate::setting_out::place;
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Role, Solid};
use crate::units::{Length, Rounding, both};

/// A short word that the page's layers begin with.
pub(super) const TAG: &str = "THINGS";
pub(super) const NAME: &str = "Fixed things, one by one";
/// What moves less than this between shut and open door is fixed, metres.
const STILL_M: f64 = 1e-6;

/// A word for a place, where it is, and its height with the way it is rounded, metres.
type Place = (&'static str, DVec2, Option<(f64, Rounding)>);

/// A thing of the list.
pub(super) struct Thing {
    /// Its number on the plan; none where the plan does not show it.
    pub(super) number: Option<usize>,
    name: String,
    /// Two places of it, each with a word for it and a height where it has one, metres.
    places: Vec<Place>,
}

/// Lowest and highest corner, metres.
type Bounds = (DVec3, DVec3);

/// The pieces of a thing, which are numbered, as one.
fn whole<'a>(pieces: impl Iterator<Item = &'a Solid>) -> Vec<(&'a str, Bounds)> {
    let mut found: Vec<(&str, Bounds)> = Vec::new();
    for one in pieces {
        let name = one
            .name
            .trim_end_matches(|c: char| c.is_ascii_digit() || c == ' ');
        let (low, high) = one.bounds();
        match found.iter_mut().find(|(other, _)| *other == name) {
            Some((_, bounds)) => *bounds = (bounds.0.min(low), bounds.1.max(high)),
            None => found.push((name, (low, high))),
        }
    }
    found
}

fn boxed(number: Option<usize>, name: &str, (low, high): Bounds) -> Thing {
    let flat = |at: DVec3| Look::Plan.flat(at);
    Thing {
        number,
        name: on_one_line(&short_name(name)),
        places: vec![
            ("from, underside", flat(low), Some((low.z, Rounding::Down))),
            ("to, top", flat(high), Some((high.z, Rounding::Up))),
        ],
    }
}

/// The numbers of the obstacles among these solids, in the solids' order, from 1.
pub(super) fn numbered(all: &[Solid]) -> impl Iterator<Item = (usize, &Solid)> {
    let obstacles = all.iter();
    let obstacles = obstacles.filter(|one| matches!(one.role, Role::Obstacle(_)));
    obstacles.enumerate().map(|(index, one)| (index + 1, one))
}

/// Everything fixed: what the plan shows with its number, then lines and readings of the slab, then
/// what hangs at the door.
pub(super) fn things(made: &Made<'_>) -> Result<Vec<Thing>, LayoutError> {
    let bay = made.order.bay;
    let shut = solids(bay, DoorTravel::Shut, 0.0).map_err(LayoutError::Stance)?;
    let open = solids(bay, DoorTravel::Open, 0.0).map_err(LayoutError::Stance)?;
    let mut found: Vec<Thing> = numbered(&shut)
        .map(|(number, one)| boxed(Some(number), &one.name, one.bounds()))
        .collect();
    let map = SlabMap::of(bay);
    for one in &map.lines {
        found.push(Thing {
            number: Some(found.len() + 1),
            name: line_word(one.kind).into(),
            places: vec![("from", one.ends[0], None), ("to", one.ends[1], None)],
        });
    }
    for one in &map.readings {
        let thick = both(Length::metres(one.thickness_m), bay.units, Rounding::Down);
        found.push(Thing {
            number: Some(found.len() + 1),
            name: format!("slab read {thick} thick"),
            places: vec![("at", one.at_m, None)],
        });
    }
    let is_still = |one: &&Solid| {
        let (low, high) = one.bounds();
        open.iter()
            .filter(|other| other.name == one.name)
            .any(|other| {
                let (l, h) = other.bounds();
                (l - low).abs().max_element() < STILL_M && (h - high).abs().max_element() < STILL_M
            })
    };
    let at_door = |one: &&Solid| {
        matches!(
            one.role,
            Role::DoorFitting | Role::Opener | Role::PowerUnit(_)
        )
    };
    let rest = shut.iter().filter(at_door).filter(is_still);
    let rest = whole(rest).into_iter();
    found.extend(rest.map(|(name, bounds)| boxed(None, name, bounds)));
    Ok(found)
}

fn notes(unmarked: &[usize]) -> Vec<String> {
    let mut notes = vec![
        "Places from corner A (door wall and left wall, inner faces), each thing squarely boxed along \
         the walls; heights from the floor at the post line, undersides rounded down and tops up. As \
         the bay file has them: what they are off at most is not taken from them. Numbers are those \
         on the floor plan; what has none is not on it. The lift's own parts are on their own sheets."
            .into(),
    ];
    if !unmarked.is_empty() {
        let numbers: Vec<String> = unmarked.iter().map(usize::to_string).collect();
        notes.push(format!(
            "On the plan there was no room for these numbers; find them by their places: {}.",
            numbers.join(", ")
        ));
    }
    notes
}

/// The pages of the list; none where nothing is fixed in the room. `plan` is the sheet of the floor
/// plan.
pub(super) fn pages(
    made: &Made<'_>,
    plan: Option<&Sheet>,
    page: [usize; 2],
) -> Result<Vec<Sheet>, LayoutError> {
    let things = things(made)?;
    if things.is_empty() {
        return Ok(Vec::new());
    }
    let units = made.order.bay.units;
    let corner = made.out.point("A").map_or(DVec2::ZERO, |a| a.at_m);
    let said: Vec<&str> = plan.map_or_else(Vec::new, |plan| {
        plan.texts().map(|text: &Text| text.says.as_str()).collect()
    });
    let unmarked: Vec<usize> = things
        .iter()
        .filter_map(|thing| thing.number)
        .filter(|number| !is_on(&said, *number))
        .collect();
    let mut rows = Vec::new();
    for thing in &things {
        for (word, at, height) in &thing.places {
            let from_a = *at - corner;
            rows.push(Row::Cells([
                thing
                    .number
                    .map_or_else(|| "\u{2013}".into(), |number| number.to_string()),
                format!("{}: {word}", thing.name),
                place(from_a.x, units),
                place(from_a.y, units),
                height.map_or_else(
                    || "\u{2013}".into(),
                    |(z, rounding)| both(Length::metres(z), units, rounding),
                ),
            ]));
        }
    }
    let mut frame: Frame = made.frame(NAME, TAG, notes(&unmarked));
    frame.page = page;
    Ok(listing(
        &frame,
        made.order.paper,
        [
            "No.",
            "Thing",
            "from the left wall",
            "from the door wall",
            "height",
        ],
        &rows,
    ))
}

/// Whether a number stands on the plan: alone as a mark, or before what is said of the thing.
fn is_on(said: &[&str], number: usize) -> bool {
    let (mark, before) = (number.to_string(), format!("({number})"));
    said.iter()
        .any(|text| *text == mark || text.starts_with(&before))
}

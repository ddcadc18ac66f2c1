//! Do heaters and flues keep their distance from the raised vehicle?

use crate::bay::{Bay, Burning, Obstacle, ObstacleKind, ObstacleShape};
use crate::clearance::{Study, nearest_to};
use crate::ground::{Bound, Figure, Quantity};
use crate::units::{Length, Rounding};

/// Ignition sources in a garage stand at least so high, for fuel vapour lies low: IFGC 305.3,
/// 18 in; from memory.
const IGNITION_IN: f64 = 18.0;

/// One or two figures for each heater and flue.
#[must_use]
pub fn burning(bay: &Bay, study: &Study) -> Vec<Figure> {
    let said = bay.arrangements.as_ref().and_then(|a| a.burning.as_ref());
    let mut figures: Vec<Figure> = said
        .into_iter()
        .flatten()
        .enumerate()
        .map(|(n, one)| distance(n, one, bay, study))
        .collect();
    let heaters = || {
        let all = bay.garage.obstacles.iter();
        all.filter(|one| one.kind == ObstacleKind::Heater)
    };
    for heater in heaters() {
        let is_said = said.is_some_and(|said| said.iter().any(|one| one.name == heater.name));
        if !is_said {
            figures.push(
                Figure::unknown(
                    format!("burning.{}", heater.name),
                    format!("{}: distance from the raised vehicle", heater.name),
                    "read in its manual which clearance it asks, and name it under `burning`",
                )
                .source("its own manual"),
            );
        }
        figures.push(height(heater));
    }
    figures.extend(may_burn(bay));
    if !figures.is_empty() {
        return figures;
    }
    let what = "heaters, boilers and flues";
    vec![if said.is_some() {
        super::passing(Figure::noted(
            "burning",
            what,
            Quantity::Words("none, as the file says".into()),
        ))
        .source("the bay file")
    } else {
        Figure::unknown(
            "burning",
            what,
            "look for what burns or glows near the lift; where there is nothing write `burning: []`",
        )
        .source("the bay file")
    }]
}

/// What may burn or be a flue, as far as its kind tells, and nothing says which.
fn may_burn(bay: &Bay) -> impl Iterator<Item = Figure> {
    let arranged = bay.arrangements.as_ref();
    let is_told = move |thing: &Obstacle| {
        arranged.is_some_and(|a| {
            let burns = a.burning.iter().flatten();
            burns.map(|one| &one.name).any(|name| *name == thing.name)
                || a.not_burning.contains(&thing.name)
        })
    };
    let may_be = |kind: ObstacleKind| {
        matches!(
            kind,
            ObstacleKind::Pipe | ObstacleKind::Duct | ObstacleKind::Other
        )
    };
    let things = bay.garage.obstacles.iter();
    things
        .filter(move |thing| may_be(thing.kind) && !is_told(thing))
        .map(|thing| {
            Figure::unknown(
                format!("burning.{}", thing.name),
                format!("{}: whether it burns or is a flue", thing.name),
                "name it under arrangements.burning where it does, under arrangements.not_burning \
                 where it does not",
            )
            .source("the bay file")
        })
}

fn distance(n: usize, one: &Burning, bay: &Bay, study: &Study) -> Figure {
    let id = format!("burning.{n}");
    let what = format!("{}: distance from the raised vehicle", one.name);
    let source = "its own manual";
    let is_in_the_room = bay
        .garage
        .obstacles
        .iter()
        .any(|thing| thing.name == one.name);
    if !is_in_the_room {
        return Figure::unknown(
            id,
            what,
            "the file has no thing in the room of that name: give its place, or measure from the \
             raised vehicle to it",
        )
        .source(source);
    }
    let solid = format!("obstacle/{}", one.name);
    let is_part = |name: &str| {
        name.strip_prefix(&solid)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with([' ', '/']))
    };
    // The study's own list of near pairs is cut short: measured here, however far off it is.
    let near = nearest_to(bay, is_part, study.highest_clear_lock);
    match (one.clearance, near) {
        (None, near) => Figure {
            found: near.map(Quantity::Length),
            ..Figure::unknown(id, what, "read in its manual which clearance it asks")
        }
        .rounded(Rounding::Down),
        (Some(asked), Some(near)) => Figure::judged(
            id,
            what,
            Quantity::Length(near),
            Bound::AtLeast,
            Quantity::Length(asked.m()),
        )
        .cure("move the lift or the heater; ask whoever set the heater up")
        .note(match study.highest_clear_lock {
            Some(lock) => format!(
                "at the nearest, from the floor up to lock {lock} with what the carriage climbs \
                 past it, parts that open shut"
            ),
            None => "at the nearest, from the floor to the top of the travel, parts that open shut"
                .into(),
        }),
        (Some(_), None) => Figure::unknown(id, what, "measure from the raised vehicle to it"),
    }
    .source(source)
}

fn height(heater: &Obstacle) -> Figure {
    let bottom = match heater.shape {
        ObstacleShape::Box { bottom, .. } => Some(bottom.m()),
        ObstacleShape::Cylinder { .. } => None,
    };
    let id = format!("ignition.{}", heater.name);
    let what = format!("{}: height of its underside", heater.name);
    let how = "ask the gas fitter whether it may stand so low in a garage";
    match bottom {
        Some(bottom) => Figure::judged(
            id,
            what,
            Quantity::Length(bottom),
            Bound::AtLeast,
            Quantity::Length(Length::inches(IGNITION_IN).m()),
        )
        .undecided_unless_it_passes(how),
        None => Figure::unknown(id, what, how),
    }
    .source("IFGC 305.3, from memory; the local code governs")
}

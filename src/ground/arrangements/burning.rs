//! Do heaters and flues keep their distance from the raised vehicle?

use crate::bay::{Bay, Burning, Obstacle, ObstacleKind, ObstacleShape};
use crate::clearance::Study;
use crate::ground::{Bound, Figure, Quantity};
use crate::units::Length;

/// Things that come nearer than this over their margin are among the study's pairs; what is not
/// there is at least so far away.
const LISTED_WITHIN_M: f64 = 0.5;

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
    // What is no number is nearer than any.
    let near = study
        .pairs
        .iter()
        .chain(&study.tight_as_parked)
        .filter(|pair| is_part(&pair.fixed))
        .map(|pair| pair.clearance_m)
        .reduce(|a, b| if a.is_nan() || a < b { a } else { b });
    match (one.clearance, near) {
        (None, _) => Figure::unknown(id, what, "read in its manual which clearance it asks"),
        (Some(asked), Some(near)) => Figure::judged(
            id,
            what,
            Quantity::Length(near),
            Bound::AtLeast,
            Quantity::Length(asked.m()),
        )
        .cure("move the lift or the heater; ask whoever set the heater up"),
        (Some(asked), None) => Figure::judged(
            id,
            what,
            Quantity::Length(LISTED_WITHIN_M),
            Bound::AtLeast,
            Quantity::Length(asked.m()),
        )
        .note("In plan it comes nowhere nearer than the length shown")
        .undecided_unless_it_passes("measure from the raised vehicle to it"),
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

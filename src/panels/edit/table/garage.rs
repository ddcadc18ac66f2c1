//! The fields of the room, its ceiling and its floor.

use super::super::now::Now;
use super::door;
use super::{Entry, Form, Row, What, field, group, length, list, variant, words};
use crate::units::Length;

/// What belongs to the file as a whole.
pub(super) const FILE: &[Row] = &[
    field("title", "Title", Entry::Text).hint("What reports and pictures are headed with."),
    words(
        "units",
        "Shown in",
        &[("Imperial", "feet and inches"), ("Metric", "millimetres")],
    )
    .hint("How lengths are shown. Every field takes both, each value with its unit."),
];

/// What is not measured, where the file lists it.
pub(super) const NOT_MEASURED: &[Row] = &[field("not_measured", "Not measured", Entry::Texts)
    .or("")
    .hint(
        "Placeholders, and things that are there but not in the file, with semicolons between them. \
         No lock is called safe while anything stands here: take out what you have measured.",
    )];

/// The room.
pub(super) const GARAGE: &[Row] = &[
    length("width", "Inside width").hint("Wall to wall, at the narrowest place."),
    length("depth", "Inside depth").hint("From the door wall's inner face to the back wall."),
    group(
        "opening",
        "Door opening",
        &[
            length("width", "Opening width").hint("Clear, between the jambs."),
            length("height", "Opening height").hint("Clear, from the floor to the header."),
            length("offset", "Opening offset")
                .or_zero()
                .hint("How far its middle lies right of the room's middle; left with a minus."),
            length("wall_thickness", "Door wall thickness").hint("Through the wall at the jamb."),
        ],
    ),
    variant("ceiling", "Ceiling", CEILINGS)
        .hint("Measure to the lowest part of it, at several places."),
    variant("floor", "Floor", FLOORS).hint("Level, falling one way, or levels taken at points."),
    variant("door", "Overhead door", door::DOORS),
    variant("opener", "Door opener", door::OPENERS),
];

const RUNS: &[(&str, &str)] = &[
    ("DoorToBack", "from the door to the back"),
    ("SideToSide", "from side to side"),
];

const CEILINGS: &[Form] = &[
    Form {
        label: "Flat",
        is: |now| now.is("Flat"),
        rows: &[length("height", "Ceiling height")
            .hint("From the floor to the lowest part of the ceiling, at several places.")],
        fresh: |now| format!("Flat(height: {})", ceiling(now)),
    },
    Form {
        label: "Sloped",
        is: |now| now.is("Sloped"),
        rows: &[
            words("run", "Slopes", RUNS),
            length("first", "Height where it starts")
                .hint("At the door wall, or at the left wall when it slopes to the side."),
            length("last", "Height where it ends").hint("At the back wall, or at the right wall."),
        ],
        fresh: |now| {
            let height = ceiling(now);
            format!("Sloped(run: DoorToBack, first: {height}, last: {height})")
        },
    },
    Form {
        label: "Gable",
        is: |now| now.is("Gable"),
        rows: &[
            words("ridge_along", "Ridge runs", RUNS),
            length("eaves", "Eaves height")
                .hint("Where the ceiling meets the wall, the lower side."),
            length("ridge", "Ridge height").hint("Under the ridge, from the floor."),
            length("ridge_offset", "Ridge offset")
                .or_zero()
                .hint("How far the ridge lies off the room's middle, to the right or the back."),
        ],
        // No more room than is known: the ridge is for the person to measure.
        fresh: |now| {
            let ridge = now
                .text_at_lowest(HEIGHTS)
                .and_then(|eaves| crate::units::parse_length(&eaves).ok())
                .unwrap_or_else(|| now.pick(120.0, 3000.0))
                + now.pick(1.0, 25.0);
            format!(
                "Gable(ridge_along: DoorToBack, eaves: {}, ridge: {}, ridge_offset: {})",
                ceiling(now),
                now.length_up(ridge),
                now.zero()
            )
        },
    },
    Form {
        label: "Stepped",
        is: |now| now.is("Stepped"),
        rows: &[list(
            "steps",
            "Steps of the ceiling",
            "step",
            &[
                length("from", "Step starts").hint("From the door wall."),
                length("height", "Step height").hint("From the floor to this part of the ceiling."),
            ],
            |now| {
                let last = now.count().saturating_sub(1);
                let from = now.length_in(&format!("[{last}].from"));
                let from = from.unwrap_or(Length::ZERO) + now.pick(48.0, 1200.0);
                let height = now.text_in(&format!("[{last}].height"));
                let height = height.map_or_else(|| now.say(120.0, 3000.0), |h| now.quoted(&h));
                format!("(from: {}, height: {height})", now.length(from))
            },
        )],
        fresh: |now| {
            format!(
                "Stepped(steps: [(from: {}, height: {})])",
                now.zero(),
                ceiling(now)
            )
        },
    },
];

/// Where a ceiling of any form has its heights.
const HEIGHTS: &[&str] = &["height", "first", "last", "eaves", "steps[0].height"];

/// The lowest height of the ceiling that is there, quoted.
fn ceiling(now: &Now<'_>) -> String {
    match now.text_at_lowest(HEIGHTS) {
        Some(text) => now.quoted(&text),
        None => now.say(120.0, 3000.0),
    }
}

const FLOORS: &[Form] = &[
    Form {
        label: "Level",
        is: |now| now.is("Level"),
        rows: &[],
        fresh: |_| "Level".into(),
    },
    Form {
        label: "Falls one way",
        is: |now| now.is("Fall"),
        rows: &[
            field("slope", "Fall per length", Entry::Number)
                .hint("Drop divided by run: 1/4 in in a foot, or 20 mm in a metre, is 0.02."),
            words(
                "toward",
                "Falls toward",
                &[
                    ("Door", "the door"),
                    ("Back", "the back"),
                    ("Left", "the left"),
                    ("Right", "the right"),
                ],
            ),
        ],
        fresh: |_| "Fall(slope: 0.01, toward: Door)".into(),
    },
    Form {
        label: "Levels at points",
        is: |now| now.is("Levels"),
        rows: &[Row::new(
            "[0]",
            "Levels of the floor",
            What::List("level", LEVEL, level),
        )
        .hint("The floor at the post line is 0; higher is more.")],
        fresh: |now| {
            format!(
                "Levels([{}])",
                point(now, now.length_of("lift.post_line").unwrap_or(Length::ZERO))
            )
        },
    },
];

const LEVEL: &[Row] = &[
    length("x", "Point to the right").hint("From the middle of the door opening."),
    length("y", "Point into the bay").hint("From the door wall."),
    length("level", "Level there").hint("Above the floor at the post line; lower with a minus."),
];

fn level(now: &Now<'_>) -> String {
    point(now, Length::ZERO)
}

fn point(now: &Now<'_>, y: Length) -> String {
    let zero = now.zero();
    format!("(x: {zero}, y: {}, level: {zero})", now.length(y))
}

//! The fields of what is known of the slab and of the electric supply.

use super::super::now::Now;
use super::{Entry, Fallback, Form, Row, What, field, group, length, list, words};
use crate::units::{Kind, Length};

/// Slab and supply; either may be left out.
pub(super) const GROUND: &[Row] = &[
    Row::new(
        "slab",
        "The slab is known",
        What::Maybe(SLAB, |_| "()".into()),
    )
    .hint("What the lift is anchored in. Left out: nothing is known of it."),
    Row::new(
        "power",
        "The supply is known",
        What::Maybe(POWER, |_| "()".into()),
    )
    .hint("What the lift's motor is fed from. Left out: nothing is known of it."),
    Row::new(
        "arrangements",
        "What is arranged is known",
        What::Maybe(super::arrangements::ARRANGEMENTS, |_| "()".into()),
    )
    .hint("Permission, people and gear, for the page to read before buying."),
];

const SLAB: &[Row] = &[
    length("claimed_thickness", "Claimed thickness")
        .open()
        .hint("What it is said to be by someone who did not drill."),
    list(
        "readings",
        "Thickness readings",
        "reading",
        &[Row::new("", "", What::Variant(READINGS, Fallback::Needed))],
        reading,
    )
    .hint(
        "Drill near each plate, hook the tape under the slab, and read down; no hole before \
         tendons, heating and services are ruled out.",
    ),
    field("strength", "Strength", Entry::Quantity(Kind::Pressure))
        .open()
        .hint("Compressive strength, as delivered or as tested."),
    field("age_days", "Age in days", Entry::Number)
        .open()
        .hint("Where the day that it was poured is not known."),
    day("poured", "Poured on").hint("Year-month-day, such as 2026-05-14."),
    words(
        "curing",
        "Cured",
        &[("Moist", "kept moist"), ("Steam", "by steam")],
    )
    .open()
    .hint("Counts before it is 28 days old."),
    day("drill_on", "To be drilled on").hint("Year-month-day: when the anchors are to be set."),
    day("load_on", "First raise on").hint("Year-month-day: age and strength count to this day."),
    field(
        "subgrade",
        "Subgrade modulus",
        Entry::Quantity(Kind::Subgrade),
    )
    .open()
    .hint("How stiff the ground under it is, from a soil report or a plate test."),
    list(
        "outline",
        "Corners of the slab",
        "corner",
        &[
            length("[0]", "Corner to the right").hint("From the middle of the door opening."),
            length("[1]", "Corner into the bay").hint("From the door wall."),
        ],
        |now| format!("({zero}, {zero})", zero = now.zero()),
    )
    .hint("One after another around it. None: it is as large as the room."),
    list(
        "lines",
        "Joints, cracks, edges and drains",
        "line",
        LINE,
        line,
    ),
    group(
        "",
        "What may be in it or under it",
        &[
            unknown("post_tensioned", "Post-tensioned")
                .hint("Tendons under load: never drilled without a plan of them."),
            unknown("heated", "Heated").hint("Pipes or wires in it."),
            unknown("buried_services", "Services in or under it")
                .hint("Water, gas, electricity, drains."),
            unknown("void_below", "Void or room below"),
            unknown("suspended", "Suspended floor")
                .hint("It spans between supports instead of lying on the ground."),
        ],
    ),
    Row::new("new_pad", "A new pad is wanted", What::Maybe(NEW_PAD, pad))
        .hint("What it takes of concrete; it changes no verdict before it is poured."),
];

const NEW_PAD: &[Row] = &[
    field("count", "Pads alike", Entry::Count).or("1"),
    length("length", "Pad length"),
    length("width", "Pad width"),
    length("depth", "Pad depth"),
    field(
        "strength",
        "Strength to order",
        Entry::Quantity(Kind::Pressure),
    )
    .open(),
    field("waste", "Waste, as a share", Entry::Number)
        .or("0.1")
        .hint("Ordered over what the form holds: 0.1 is a tenth."),
];

/// A pad under each post, as deep as the manual asks.
fn pad(now: &Now<'_>) -> String {
    let asked = now.length_of("lift.manual.thickness");
    let depth = asked.unwrap_or_else(|| now.pick(8.0, 200.0));
    let side = now.say(48.0, 1200.0);
    format!(
        "(count: 2, length: {side}, width: {side}, depth: {})",
        now.exactly(depth)
    )
}

/// A day of the calendar, which may be left out.
const fn day(name: &'static str, label: &'static str) -> Row {
    field(name, label, Entry::Text).open()
}

/// Yes, no, or not known, which is not the same as no.
const fn unknown(name: &'static str, label: &'static str) -> Row {
    words(name, label, &[("true", "yes"), ("false", "no")]).open()
}

/// A reading is written with names or as three in a row.
const READINGS: &[Form] = &[
    Form {
        label: "named",
        is: |now| now.has("thickness"),
        rows: &[
            length("x", "Hole to the right").hint("From the middle of the door opening."),
            length("y", "Hole into the bay").hint("From the door wall."),
            length("thickness", "Thickness there"),
        ],
        fresh: reading,
    },
    Form {
        label: "in a row",
        is: |now| now.has("[2]"),
        rows: &[
            length("[0]", "Hole to the right").hint("From the middle of the door opening."),
            length("[1]", "Hole into the bay").hint("From the door wall."),
            length("[2]", "Thickness there"),
        ],
        fresh: reading,
    },
];

/// At the post line, and thinner than any slab that carries: what is typed over it counts.
fn reading(now: &Now<'_>) -> String {
    let line = now.length_of("lift.post_line").unwrap_or(Length::ZERO);
    format!(
        "(x: {}, y: {}, thickness: {})",
        now.zero(),
        now.length(line),
        now.say(1.0, 25.0)
    )
}

const LINE: &[Row] = &[
    words(
        "kind",
        "Kind of line",
        &[
            ("Joint", "joint"),
            ("Crack", "crack"),
            ("Edge", "free edge"),
            ("Drain", "drain"),
        ],
    ),
    length("from[0]", "One end, to the right").hint("From the middle of the door opening."),
    length("from[1]", "One end, into the bay").hint("From the door wall."),
    length("to[0]", "Other end, to the right").hint("From the middle of the door opening."),
    length("to[1]", "Other end, into the bay").hint("From the door wall."),
];

/// Into the bay along the middle, from the door to the back.
fn line(now: &Now<'_>) -> String {
    let depth = now.length_of("garage.depth");
    let depth = depth.unwrap_or_else(|| now.pick(360.0, 9100.0));
    let zero = now.zero();
    format!(
        "(kind: Joint, from: ({zero}, {zero}), to: ({zero}, {}))",
        now.length(depth)
    )
}

const POWER: &[Row] = &[
    field("voltage", "Voltage", Entry::Quantity(Kind::Voltage))
        .open()
        .hint("Between the two wires that the motor gets, measured."),
    field("breaker", "Breaker", Entry::Quantity(Kind::Current))
        .open()
        .hint("Its rating, as printed on it."),
    length("run", "Run of the cable")
        .open()
        .hint("From the panel to the motor, as the cable goes."),
    words(
        "conductor",
        "Copper conductors",
        &[
            ("Awg14", "14 AWG"),
            ("Awg12", "12 AWG"),
            ("Awg10", "10 AWG"),
            ("Awg8", "8 AWG"),
            ("Awg6", "6 AWG"),
        ],
    )
    .open()
    .hint("As printed on the cable's jacket."),
    field(
        "overload",
        "Overload protection",
        Entry::Quantity(Kind::Current),
    )
    .open()
    .hint("What the motor's starter is set to."),
];

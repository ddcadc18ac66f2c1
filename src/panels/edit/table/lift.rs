//! The fields of the lift: where it stands, and what its maker's manual says of it.

use super::super::now::Now;
use super::door::SIDES;
use super::lift_parts::{ARM, BASE_PLATE, CARRIAGE, HYDRAULICS, MOTOR};
use super::{Entry, Form, Row, What, angle, field, group, length, list, more, variant, words};
use crate::units::{Kind, Length};

/// The lift, after the choice of a preset.
pub(super) const LIFT: &[Row] = &[
    length("post_line", "Post line")
        .hint("From the door wall's inner face to where the middle of both columns stands."),
    length("across", "Lift to the right")
        .or_zero()
        .hint("From the middle of the door opening to the middle between the columns."),
    field("name", "Lift's name", Entry::Name),
    group(
        "",
        "Columns",
        &[
            group(
                "column",
                "Column",
                &[
                    length("height", "Column height").hint("From the floor to its top."),
                    length("width", "Column width").hint("Across the bay, before it is turned."),
                    length("depth", "Column depth").hint("Along the bay, before it is turned."),
                    angle("turned", "Column turned")
                        .or_zero()
                        .hint("About the vertical; the right column is the mirror image."),
                ],
            ),
            length("spacing", "Between the columns").hint("Between their nearest faces."),
            length("drive_through", "Drive-through width").hint("Between the carriages."),
            variant("tie", "Columns are tied by", TIES),
        ],
    ),
    group(
        "",
        "Travel and locks",
        &[
            length("travel", "Carriage travel").hint("From its lowest place to its highest."),
            variant("locks", "Locks", LOCKS).hint("Carriage travel at each lock, lowest first."),
            length("set_overtravel", "Climb to set a lock")
                .hint("How far past a lock the carriage climbs before the latches drop in."),
            length("release_overtravel", "Climb to release")
                .hint("How far it climbs before the latches can be pulled."),
            length("overshoot", "Overshoot")
                .or("25 mm")
                .hint("What the operator and coasting add to a stop."),
            length("side_mismatch", "Carriages out of level")
                .or("12 mm")
                .hint("How far one carriage may run ahead of the other."),
        ],
    ),
    group(
        "pad",
        "Pads",
        &[
            length("diameter", "Pad diameter"),
            length("lowest", "Pad's lowest height")
                .hint("From the floor to its top, carriage down, screw in, no adapter."),
            length("screw_travel", "Screw travel").hint("How far the screw raises the pad."),
            field("adapters", "Adapters", Entry::Quantities(Kind::Length))
                .or("")
                .hint("Heights of the adapters at hand, with commas between them."),
        ],
    ),
    more(
        "",
        "Carriage and arms",
        &[
            more("carriage", "Carriage", CARRIAGE),
            Row::new("arms", "Arms", What::Corners(ARM)),
        ],
    ),
    more("base_plate", "Base plates and anchors", BASE_PLATE),
    Row::new(
        "power_unit",
        "Power unit",
        What::Maybe(POWER_UNIT, power_unit),
    ),
    more("", "Ratings", RATINGS),
    more("", "Motor, hydraulics, delivery", DELIVERY),
    more("manual", "The manual asks of the slab", SLAB),
    more("advertised", "Advertised demand on the slab", SLAB),
];

const TIES: &[Form] = &[
    Form {
        label: "Overhead beam",
        is: |now| now.is("OverheadBeam"),
        rows: &[
            length("underside", "Beam underside").hint("From the floor."),
            length("height", "Beam height").hint("Its upright size."),
            length("width", "Beam width").hint("Along the bay."),
            Row::new("bar", "Shut-off bar", What::Maybe(BAR, bar)),
        ],
        fresh: |now| {
            let top = now
                .length_of("lift.column.height")
                .unwrap_or_else(|| now.pick(142.0, 3600.0));
            format!(
                "OverheadBeam(underside: {}, height: {}, width: {}, bar: {})",
                now.length(top - now.pick(6.0, 150.0)),
                now.say(5.0, 120.0),
                now.say(8.0, 200.0),
                bar(now)
            )
        },
    },
    Form {
        label: "Floor plate",
        is: |now| now.is("FloorPlate"),
        rows: &[
            length("height", "Floor plate height").hint("What the tyres climb over."),
            length("width", "Floor plate width").hint("Along the bay."),
        ],
        fresh: |now| {
            format!(
                "FloorPlate(height: {}, width: {})",
                now.say(1.0, 25.0),
                now.say(20.0, 500.0)
            )
        },
    },
];

const BAR: &[Row] = &[
    length("drop", "Bar below the beam")
        .hint("From the beam's underside to the bar's lowest part."),
    length("diameter", "Bar diameter").hint("With its padding."),
    length("length", "Bar length"),
];

fn bar(now: &Now<'_>) -> String {
    format!(
        "(drop: {}, diameter: {}, length: {})",
        now.say(5.0, 120.0),
        now.say(3.0, 75.0),
        now.say(84.0, 2100.0)
    )
}

const LOCKS: &[Form] = &[
    Form {
        label: "Evenly spaced",
        is: |now| now.is("Even"),
        rows: &[
            length("first", "Lowest lock").hint("Carriage travel at the lowest lock."),
            length("pitch", "Between locks").hint("From one lock to the next."),
            field("count", "Number of locks", Entry::Count),
        ],
        fresh: |now| {
            let travel = now.length_of("lift.travel").unwrap_or(Length::ZERO);
            let (first, pitch) = (now.listed(0), now.listed(1));
            let first = first.unwrap_or_else(|| now.pick(12.0, 300.0));
            let pitch = pitch.map_or_else(|| now.pick(4.0, 100.0), |second| second - first);
            let count = ((travel - first) / pitch).floor().clamp(0.0, 199.0) + 1.0;
            format!(
                "Even(first: {}, pitch: {}, count: {count:.0})",
                now.exactly(first),
                now.exactly(pitch)
            )
        },
    },
    Form {
        label: "Listed",
        is: |now| now.source().starts_with('['),
        rows: &[
            field("", "Travel at each lock", Entry::Quantities(Kind::Length))
                .hint("Lowest first, with commas between them."),
        ],
        fresh: |now| {
            let first = now.length_in("first");
            let pitch = now.length_in("pitch");
            let count: u32 = now
                .text_in("count")
                .and_then(|c| c.parse().ok())
                .unwrap_or(1);
            let first = first.unwrap_or_else(|| now.pick(12.0, 300.0));
            let pitch = pitch.unwrap_or(Length::ZERO);
            let locks: Vec<String> = (0..count.min(200))
                .map(|lock| now.exactly(first + pitch * f64::from(lock)))
                .collect();
            format!("[{}]", locks.join(", "))
        },
    },
];

const POWER_UNIT: &[Row] = &[
    words("side", "Power unit's side", SIDES),
    length("width", "Power unit width").hint("Across the bay."),
    length("depth", "Power unit depth").hint("Along the bay."),
    length("height", "Power unit height").hint("Its upright size."),
    length("bottom", "Power unit underside").hint("From the floor."),
];

fn power_unit(now: &Now<'_>) -> String {
    format!(
        "(side: Right, width: {}, depth: {}, height: {}, bottom: {})",
        now.say(10.0, 250.0),
        now.say(12.0, 300.0),
        now.say(28.0, 700.0),
        now.say(48.0, 1200.0)
    )
}

const MASS: Entry = Entry::Quantity(Kind::Mass);

const RATINGS: &[Row] = &[
    field("capacity", "Rated capacity", MASS).hint("From the rating plate."),
    field("arm_capacity", "Rating of one arm", MASS)
        .open()
        .hint("From the manual."),
    field("post_capacity", "Rating of one post", MASS)
        .open()
        .hint("From the manual. Left out: half of the lift's, which is for both posts."),
    Row::new(
        "cg_window",
        "Window for the centre of gravity",
        What::Maybe(
            &[
                length("front", "Ahead of the posts")
                    .hint("How far it may lie that way, from the manual."),
                length("rear", "Behind the posts")
                    .hint("How far it may lie that way, from the manual."),
            ],
            |now| format!("(front: {side}, rear: {side})", side = now.say(12.0, 300.0)),
        ),
    ),
];

const DELIVERY: &[Row] = &[
    Row::new(
        "motor",
        "Motor",
        What::Maybe(MOTOR, |_| "(power: \"2 hp\", voltage: \"230 V\")".into()),
    ),
    Row::new(
        "hydraulics",
        "Hydraulics",
        What::Maybe(HYDRAULICS, |now| {
            format!(
                "(bore: {}, stroke: {})",
                now.say(2.0, 50.0),
                now.say(36.0, 900.0)
            )
        }),
    ),
    length("shim_limit", "Highest shims")
        .open()
        .hint("Under a plate, from the manual."),
    length("plumb_limit", "Most out of plumb")
        .open()
        .hint("Of a column over its height, from the manual."),
    field("shipping_mass", "Shipping mass", MASS).open(),
    list("pieces", "Pieces", "piece", PIECE, piece)
        .hint("As they are carried in: columns, arms, power unit, crates."),
    field("price", "Price", Entry::Text).open(),
];

const PIECE: &[Row] = &[
    field("name", "Piece's name", Entry::Name),
    field("mass", "Piece's mass", MASS),
    length("length", "Piece's length").hint("As it lies, packed."),
    length("width", "Piece's width"),
    length("height", "Piece's height"),
    words(
        "column",
        "It is a column",
        &[("true", "yes"), ("false", "no")],
    )
    .or("false"),
];

/// A column as it lies: as long as the column is high.
fn piece(now: &Now<'_>) -> String {
    let high = now
        .length_of("lift.column.height")
        .unwrap_or_else(|| now.pick(142.0, 3600.0));
    format!(
        "(name: {}, mass: {}, length: {}, width: {}, height: {}, column: true)",
        now.new_name("column"),
        if now.is_metric() {
            "\"230 kg\""
        } else {
            "\"500 lb\""
        },
        now.length(high),
        now.say(16.0, 400.0),
        now.say(14.0, 350.0)
    )
}

const SLAB: &[Row] = &[
    length("thickness", "Slab thickness").open(),
    field(
        "strength",
        "Concrete strength",
        Entry::Quantity(Kind::Pressure),
    )
    .open(),
    length("edge_distance", "Anchor to edge")
        .open()
        .hint("Of an anchor from joint, crack or edge."),
    length("embedment", "Anchor embedment")
        .open()
        .hint("Least depth of an anchor in the concrete."),
    field("age_days", "Age of the concrete", Entry::Number)
        .open()
        .hint("In days, before anchors are set and the lift is loaded."),
];

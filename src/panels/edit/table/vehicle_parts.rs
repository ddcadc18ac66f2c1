//! The fields of what is on, under and at the vehicle.

use super::super::now::Now;
use super::vehicle::STYLES;
use super::{Entry, Fallback, Form, Row, angle, field, length, list, words};
use crate::units::{Kind, Length};

pub(super) const MIRRORS: &[Row] = &[
    length("width_over", "Width over mirrors").hint("Folded out, tip to tip."),
    length("station", "Mirrors' station").hint("From the front bumper to their front."),
    length("bottom", "Mirrors' underside").hint("From the ground."),
    length("top", "Mirrors' top").hint("From the ground."),
    length("depth", "Mirrors' depth").hint("Along the vehicle."),
];

pub(super) fn mirrors(now: &Now<'_>) -> String {
    let body = now.length_of("vehicle.body_width");
    let over = body.unwrap_or_else(|| now.pick(72.0, 1830.0)) + now.pick(16.0, 400.0);
    format!(
        "(width_over: {}, station: {}, bottom: {}, top: {}, depth: {})",
        now.length(over),
        now.say(60.0, 1500.0),
        now.say(38.0, 950.0),
        now.say(48.0, 1200.0),
        now.say(6.0, 150.0)
    )
}

pub(super) const ATTACHED: &[Row] = &[
    field("name", "Part's name", Entry::Name),
    length("from", "Starts").hint("From the front bumper; ahead of it with a minus."),
    length("to", "Ends").hint("From the front bumper."),
    length("across", "Part to the right")
        .or_zero()
        .hint("Its middle from the vehicle's middle."),
    length("width", "Part's width"),
    length("bottom", "Part's underside").hint("From the ground."),
    length("top", "Part's top").hint("From the ground."),
];

/// A rack on the roof, over the middle of the vehicle.
pub(super) fn attached(now: &Now<'_>) -> String {
    let long = now
        .length_of("vehicle.length")
        .unwrap_or_else(|| now.pick(180.0, 4600.0));
    let high = now
        .length_of("vehicle.height")
        .unwrap_or_else(|| now.pick(60.0, 1500.0));
    format!(
        "(name: {}, from: {}, to: {}, across: {}, width: {}, bottom: {}, top: {})",
        now.new_name("roof rack"),
        now.length(long * 0.4),
        now.length(long * 0.7),
        now.zero(),
        now.say(48.0, 1200.0),
        now.length(high),
        now.length_up(high + now.pick(6.0, 150.0))
    )
}

pub(super) const LOW_PART: &[Row] = &[
    field("name", "Low part's name", Entry::Name),
    length("from", "Low part starts").hint("From the front bumper."),
    length("to", "Low part ends").hint("From the front bumper."),
    length("half_width", "Half its width").hint("From the vehicle's middle to its side."),
    length("height", "Low part's height").hint("From the ground to its lowest point."),
];

/// A part that hangs a little below the sill: nothing higher is one.
pub(super) fn low_part(now: &Now<'_>) -> String {
    let sill = now.length_of("vehicle.sill");
    let sill = sill.unwrap_or_else(|| now.pick(8.0, 200.0));
    format!(
        "(name: {}, from: {}, to: {}, half_width: {}, height: {})",
        now.new_name("low part"),
        now.say(60.0, 1500.0),
        now.say(90.0, 2300.0),
        now.say(12.0, 300.0),
        now.length((sill - now.pick(2.0, 50.0)).max(sill * 0.5))
    )
}

pub(super) const OPENING: &[Row] = &[
    field("name", "Opening part's name", Entry::Name),
    words(
        "kind",
        "It is",
        &[
            ("Hood", "a hood"),
            ("Hatch", "a hatch"),
            ("Tailgate", "a tailgate"),
            ("DoorLeft", "a door on the left"),
            ("DoorRight", "a door on the right"),
        ],
    ),
    length("hinge", "Hinge's station").hint("From the front bumper."),
    length("hinge_height", "Hinge's height")
        .hint("From the ground; of a side door, its lower edge."),
    length("length", "Its length").hint("From the hinge to its free edge."),
    length("width", "Its width").hint("Along the hinge."),
    angle("shut", "Angle when shut")
        .or_zero()
        .hint("From level, upward; of a side door, from along the body."),
    angle("opens", "Opens by"),
];

pub(super) fn opening(now: &Now<'_>) -> String {
    let long = now
        .length_of("vehicle.length")
        .unwrap_or_else(|| now.pick(180.0, 4600.0));
    let high = now
        .length_of("vehicle.height")
        .unwrap_or_else(|| now.pick(60.0, 1500.0));
    format!(
        "(name: {}, kind: Hatch, hinge: {}, hinge_height: {}, length: {}, width: {}, \
         shut: \"-60 deg\", opens: \"90 deg\")",
        now.new_name("hatch"),
        now.length(long * 0.9),
        now.length(high * 0.9),
        now.say(36.0, 900.0),
        now.say(42.0, 1050.0)
    )
}

pub(super) const MASSES: &[Row] = &[
    field("name", "Mass's name", Entry::Name),
    field("mass", "Mass", Entry::Quantity(Kind::Mass)).hint("With a minus for a part taken out."),
    length("station", "Mass's station").hint("From the front bumper."),
    length("across", "Mass to the right")
        .or_zero()
        .hint("From the vehicle's middle."),
    length("height", "Mass's height")
        .open()
        .hint("From the ground."),
    field("stays", "Stays so while it is up", Entry::Flag)
        .falling_back(Fallback::Said("false"))
        .hint("Nobody unloads it while the vehicle is up; a part taken out is out before."),
];

pub(super) fn mass(now: &Now<'_>) -> String {
    let long = now
        .length_of("vehicle.length")
        .unwrap_or_else(|| now.pick(180.0, 4600.0));
    let mass = if now.is_metric() { "50 kg" } else { "100 lb" };
    format!(
        "(name: {}, mass: \"{mass}\", station: {}, across: {})",
        now.new_name("cargo"),
        now.length(long * 0.75),
        now.zero()
    )
}

const STATION: &[Row] = &[
    length("station", "Station").hint("From the front bumper."),
    length("height", "Outline's height there").hint("From the ground."),
    length("half_width", "Half its width there"),
];

/// How the outline is given.
pub(super) const ROOFS: &[Form] = &[
    Form {
        label: "Stations",
        is: |now| now.source().starts_with('['),
        rows: &[list(
            "",
            "Stations of the outline",
            "station",
            STATION,
            |now| {
                // Halfway between the last two, and as large as the larger of them.
                let last = now.count().saturating_sub(1);
                let of = |item: usize, name: &str| {
                    let length = now.length_in(&format!("[{item}].{name}"));
                    length.unwrap_or(Length::ZERO)
                };
                let before = last.saturating_sub(1);
                let larger = |name: &str| now.exactly(of(before, name).max(of(last, name)));
                format!(
                    "(station: {}, height: {}, half_width: {})",
                    now.exactly((of(before, "station") + of(last, "station")) * 0.5),
                    larger("height"),
                    larger("half_width")
                )
            },
        )],
        // A box over the whole body: more than any body, never less.
        fresh: |now| {
            let of = |name: &str| {
                now.length_of(&format!("vehicle.{name}"))
                    .unwrap_or_else(|| now.pick(60.0, 1500.0))
            };
            let end = |station: Length| {
                format!(
                    "(station: {}, height: {}, half_width: {})",
                    now.exactly(station),
                    now.exactly(of("height")),
                    now.exactly(of("body_width") * 0.5)
                )
            };
            format!("[{}, {}]", end(Length::ZERO), end(of("length")))
        },
    },
    Form {
        label: "From the body style",
        is: |now| now.is("Derived") && !now.source().contains('('),
        rows: &[],
        fresh: |_| "Derived".into(),
    },
    Form {
        label: "From another style",
        is: |now| now.is("Derived") && now.source().contains('('),
        rows: &[words("[0]", "Outline of", STYLES)],
        fresh: |now| {
            format!(
                "Derived({})",
                now.text_of("vehicle.style").unwrap_or_else(|| "Van".into())
            )
        },
    },
];

//! The fields of how the vehicle stands on the lift.

use super::super::now::Now;
use super::{Form, Row, angle, group, length, variant, words};

/// How it is parked.
pub(super) const PARKING: &[Row] = &[
    words(
        "facing",
        "Drives in",
        &[("NoseIn", "nose first"), ("TailIn", "tail first")],
    ),
    variant("aim", "Lined up with the posts", AIMS).hint("What is brought over the post line."),
    length("across", "Parked to the right")
        .or_zero()
        .hint("From the middle between the columns to the vehicle's middle."),
    angle("yaw", "Parked turned")
        .or_zero()
        .hint("Counter-clockwise seen from above."),
    group(
        "repeat",
        "How well the place is met again",
        &[
            length("along", "Spread along the bay")
                .hint("Park three times; the widest spread, either way."),
            length("across", "Spread across the bay")
                .hint("Park three times; the widest spread, either way."),
            angle("yaw", "Spread of the heading").hint("Either way."),
        ],
    ),
    variant("pad_raise", "Pads are raised", RAISES)
        .hint("By screw and adapters, above their lowest, when they take the load."),
];

const AIMS: &[Form] = &[
    Form {
        label: "Centre of gravity",
        is: |now| now.is("CentreOfGravity"),
        rows: OFFSET,
        fresh: |now| format!("CentreOfGravity({})", offset(now)),
    },
    Form {
        label: "Middle of the lift points",
        is: |now| now.is("LiftPoints"),
        rows: OFFSET,
        fresh: |now| format!("LiftPoints({})", offset(now)),
    },
];

const OFFSET: &[Row] = &[length("[0]", "Past the post line")
    .hint("How far into the bay from the post line; toward the door with a minus.")];

fn offset(now: &Now<'_>) -> String {
    now.text_in("[0]")
        .map_or_else(|| now.zero(), |text| now.quoted(&text))
}

const RAISES: &[Form] = &[
    Form {
        label: "All four alike",
        is: |now| !now.has("front") && !now.has("rear") && !apart(now),
        rows: &[length("", "Pad raise").hint("Of every pad above its lowest.")],
        fresh: |now| raise(now, "front_left"),
    },
    Form {
        label: "Front and rear apart",
        is: |now| (now.has("front") || now.has("rear")) && !apart(now),
        rows: &[
            length("front", "Front pads' raise"),
            length("rear", "Rear pads' raise"),
        ],
        fresh: |now| {
            format!(
                "(front: {}, rear: {})",
                raise(now, "front_left"),
                raise(now, "rear_left")
            )
        },
    },
    Form {
        label: "Each on its own",
        is: apart,
        rows: &[
            length("front_left", "Front left pad's raise"),
            length("front_right", "Front right pad's raise"),
            length("rear_left", "Rear left pad's raise"),
            length("rear_right", "Rear right pad's raise"),
        ],
        fresh: |now| {
            let of = |corner| raise(now, corner);
            format!(
                "(front_left: {}, front_right: {}, rear_left: {}, rear_right: {})",
                of("front_left"),
                of("front_right"),
                of("rear_left"),
                of("rear_right")
            )
        },
    },
];

fn apart(now: &Now<'_>) -> bool {
    ["front_left", "front_right", "rear_left", "rear_right"]
        .iter()
        .any(|corner| now.has(corner))
}

/// What a corner's pad is raised by now, quoted, in whatever form that is written.
fn raise(now: &Now<'_>, corner: &str) -> String {
    let pair = corner.split('_').next().unwrap_or(corner);
    let text = [corner, pair]
        .iter()
        .find_map(|name| now.text_in(name))
        .or_else(|| now.text_in("").filter(|text| !text.starts_with('(')));
    text.map_or_else(|| now.zero(), |text| now.quoted(&text))
}

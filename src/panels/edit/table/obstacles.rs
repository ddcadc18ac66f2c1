//! The fields of what hangs or stands in the room.

use super::super::things::fresh;
use super::{Entry, Fallback, Form, Row, What, angle, field, length, list, words};
use crate::panels::edit::now::Now;

/// Everything in the room.
pub(in crate::panels::edit) const LIST: &[Row] = &[list(
    "obstacles",
    "In the room",
    "thing",
    &[Row::new("", "", What::Variant(FORMS, Fallback::Needed))],
    fresh::light,
)];

/// What a thing may be.
pub(in crate::panels::edit) const KINDS: &[(&str, &str)] = &[
    ("Light", "light"),
    ("Beam", "beam"),
    ("CollarTie", "collar tie"),
    ("Duct", "duct"),
    ("Pipe", "pipe"),
    ("Heater", "heater"),
    ("Fan", "fan"),
    ("Shelf", "shelf"),
    ("Bench", "bench"),
    ("Post", "post"),
    ("SecondVehicle", "second vehicle"),
    ("Other", "something else"),
];

const NAME: Row = field("name", "Name", Entry::Name).hint("Reports call it so; no two alike.");
const KIND: Row = words("kind", "Kind", KINDS);
const REMOVABLE: Row = Row::new(
    "removable",
    "Can be taken away",
    What::Maybe(
        &[field("cost", "Cost of taking it away", Entry::Text).open()],
        |_| "()".into(),
    ),
);
const AT_TIMES: Row = field("only_at_times", "There at times only", Entry::Flag)
    .falling_back(Fallback::Said("false"));
const ALONG: Row = words(
    "along",
    "Runs",
    &[
        ("DoorToBack", "from the door to the back"),
        ("SideToSide", "from side to side"),
    ],
);
const UNDERSIDE: Row = length("underside", "Underside").hint("From the floor right below.");
const HEIGHT: Row = length("height", "Height").hint("Its upright size.");
const WIDTH: Row = length("width", "Width").hint("Across the way it runs.");
const FROM: Row = length("from", "Starts at")
    .open()
    .hint("Left out: at the wall.");
const TO: Row = length("to", "Ends at")
    .open()
    .hint("Left out: at the wall.");

/// A round bar, in its own words.
pub(in crate::panels::edit) const CYLINDER: &str = "Cylinder";

/// The forms that a thing is written in. None is made from another: a new one is added instead.
pub(in crate::panels::edit) const FORMS: &[Form] = &[
    Form {
        label: "box",
        is: |now| now.is("Box"),
        rows: &[
            NAME,
            KIND,
            length("x", "To the right").hint("Of its middle, from the middle of the door opening."),
            length("y", "Into the bay").hint("Of its middle, from the door wall."),
            length("bottom", "Underside").hint("From the floor right below."),
            length("width", "Width").hint("Across the bay, before it is turned."),
            length("depth", "Depth").hint("Into the bay, before it is turned."),
            HEIGHT,
            angle("turned", "Turned")
                .or_zero()
                .hint("About the vertical, counter-clockwise seen from above."),
            REMOVABLE,
            AT_TIMES,
        ],
        fresh: fresh::light,
    },
    Form {
        label: "round bar",
        is: |now| now.is(CYLINDER),
        rows: &[
            NAME,
            KIND,
            length("from[0]", "One end, to the right").hint("From the middle of the door opening."),
            length("from[1]", "One end, into the bay").hint("From the door wall."),
            length("from[2]", "One end, up").hint("Of its axis, from the floor."),
            length("to[0]", "Other end, to the right").hint("From the middle of the door opening."),
            length("to[1]", "Other end, into the bay").hint("From the door wall."),
            length("to[2]", "Other end, up").hint("Of its axis, from the floor."),
            length("diameter", "Diameter"),
            REMOVABLE,
            AT_TIMES,
        ],
        fresh: fresh::pipe,
    },
    Form {
        label: "beam",
        is: |now| now.is("Beam"),
        rows: &[
            NAME,
            KIND.falling_back(Fallback::Said("Beam")),
            ALONG,
            length("at", "Middle line at")
                .hint("Into the bay, or to the right when it runs to the back."),
            UNDERSIDE,
            HEIGHT,
            WIDTH,
            FROM,
            TO,
            REMOVABLE,
            AT_TIMES,
        ],
        fresh: fresh::beam,
    },
    Form {
        label: "row of ties",
        is: |now| now.is("Ties"),
        rows: &[
            NAME,
            KIND.falling_back(Fallback::Said("CollarTie")),
            ALONG,
            length("first", "First tie at").hint("Its middle line: into the bay, or to the right."),
            length("pitch", "Between ties").hint("From one middle line to the next."),
            field("count", "Number of ties", Entry::Count),
            UNDERSIDE,
            HEIGHT,
            WIDTH,
            FROM,
            TO,
            REMOVABLE,
            AT_TIMES,
        ],
        fresh: fresh::ties,
    },
];

/// What a thing is called in the list: its name and its kind.
pub(in crate::panels::edit) fn title(now: &Now<'_>) -> (String, &'static str) {
    let name = now.text_in("name").unwrap_or_else(|| "no name".into());
    let kind = now.text_in("kind");
    let kind = KINDS
        .iter()
        .find(|(word, _)| kind.as_deref() == Some(*word))
        .map(|(_, label)| *label)
        .or_else(|| {
            let form = FORMS.iter().find(|form| (form.is)(now));
            form.map(|form| form.label)
        });
    (name, kind.unwrap_or("thing"))
}

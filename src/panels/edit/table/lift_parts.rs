//! The fields of the lift's parts that a preset usually brings.

use super::super::now::Now;
use super::{Entry, Row, What, angle, field, length, list, words};
use crate::units::{Kind, Length};

pub(super) const CARRIAGE: &[Row] = &[
    length("proud", "Carriage proud of column").hint("How far it stands out toward the vehicle."),
    length("depth", "Carriage depth").hint("Along the bay."),
    length("height", "Carriage height").hint("Its upright size."),
    length("bottom", "Carriage underside").hint("From the floor, carriage down."),
    length("marked_edge", "Marked edge")
        .hint("From the base plate's top to the edge that marks are read at, carriage down."),
];

/// One arm; lengths from its pivot.
pub(super) const ARM: &[Row] = &[
    length("pivot_inward", "Pivot inward").hint("From the plate's middle toward the vehicle."),
    length("pivot_away", "Pivot off the post line")
        .hint("From the post line, to its own end of the vehicle."),
    angle("zero", "Where the swing counts from").or_zero(),
    angle("swing_min", "Least swing").hint("Positive turns away from the post line."),
    angle("swing_max", "Greatest swing").hint("Positive turns away from the post line."),
    length("shortest", "Shortest reach").hint("From the pivot to the pad's middle, pushed in."),
    length("longest", "Longest reach").hint("From the pivot to the pad's middle, drawn out."),
    angle("tooth", "Restraint tooth")
        .open()
        .hint("From one tooth of the arm restraint to the next."),
    field("stepless_restraint", "Restraint without teeth", Entry::Flag)
        .open()
        .hint("Yes: one holds the arm at any swing. No: nothing holds it. Left out with no teeth: not known."),
    length("section_width", "Arm width"),
    length("section_height", "Arm height").hint("Its upright size."),
    length("underside", "Arm underside").hint("From the floor, carriage down."),
];

pub(super) const BASE_PLATE: &[Row] = &[
    length("width", "Plate width").hint("Across the bay."),
    length("depth", "Plate depth").hint("Along the bay."),
    length("thickness", "Plate thickness"),
    length("inward", "Plate inward")
        .or_zero()
        .hint("How far its middle lies toward the vehicle from the column's."),
    length("anchor_diameter", "Anchor diameter").open(),
    length("anchor_embedment", "Anchor embedment")
        .open()
        .hint("Depth in the concrete."),
    Row::new(
        "anchor",
        "The anchors are known",
        What::Maybe(ANCHOR, |_| "()".into()),
    )
    .hint("From the manual and from the anchor's test report. Left out: only their size is known."),
    field("anchor_age_days", "Age that the anchors ask", Entry::Number)
        .open()
        .hint("Of the concrete, in days, by the anchors' maker."),
    list(
        "anchors",
        "Anchors",
        "anchor",
        &[
            length("[0]", "Anchor inward").hint("From the column's middle toward the vehicle."),
            length("[1]", "Anchor along the bay")
                .hint("From the plate's middle, toward the back of the bay."),
        ],
        anchor,
    ),
];

/// On the plate's middle line, beside those that are there: two anchors can't share a hole.
fn anchor(now: &Now<'_>) -> String {
    let taken = |along: Length| {
        (0..now.count()).any(|index| {
            let place = now.item(index);
            let is_near = |at: Option<Length>, to: Length| {
                at.is_some_and(|at| (at - to).m().abs() < Length::mm(15.0).m())
            };
            is_near(place.listed(0), Length::ZERO) && is_near(place.listed(1), along)
        })
    };
    let step = |n: i32| Length::mm(25.0) * f64::from(n);
    let free = (0..50)
        .flat_map(|n| [n, -n])
        .map(step)
        .find(|along| !taken(*along));
    format!(
        "({}, {})",
        now.zero(),
        now.length(free.unwrap_or(Length::ZERO))
    )
}

/// What is known of the anchors; all of it may be left out.
const ANCHOR: &[Row] = &[
    words(
        "kind",
        "Kind of anchor",
        &[
            ("Wedge", "wedge"),
            ("Sleeve", "sleeve"),
            ("DropIn", "drop-in"),
            ("Undercut", "undercut"),
            ("Screw", "screw"),
            ("Adhesive", "adhesive"),
            ("CastIn", "cast in"),
        ],
    )
    .open(),
    length("effective_embedment", "Effective embedment")
        .open()
        .hint(
            "From the test report: to where it bears on the concrete, less than the hole's depth.",
        ),
    field("tensile_strength", "Tensile strength", PRESSURE)
        .open()
        .hint("Of its steel."),
    field("yield_strength", "Yield strength", PRESSURE)
        .open()
        .hint("Of its steel."),
    field("stress_area", "Stress area", AREA)
        .open()
        .hint("Of its steel, where it is thinnest."),
    words("ductile", "Ductile steel", YES_NO).open(),
    field("category", "Category", Entry::Count)
        .open()
        .hint("1, 2 or 3, from its test report."),
    field("kc", "Effectiveness factor", Entry::Number)
        .open()
        .hint("From its test report, for inches and pounds: 17 to 24."),
    words("cracked", "Concrete may crack", YES_NO)
        .open()
        .hint("Left out: yes."),
    field(
        "pull_out",
        "Pull-out strength",
        Entry::Quantity(Kind::Force),
    )
    .open()
    .hint("Characteristic, from its test report, for this concrete."),
    field("bearing_area", "Bearing area of the head", AREA)
        .open()
        .hint("Of an anchor cast in."),
    field("torque", "Tightening torque", Entry::Quantity(Kind::Torque))
        .open()
        .hint("As the anchor's maker gives it."),
    length("min_spacing", "Least spacing")
        .open()
        .hint("From its product data."),
    length("min_edge", "Least edge distance")
        .open()
        .hint("From its product data."),
    length("min_thickness", "Least concrete thickness")
        .open()
        .hint("From its product data, at this embedment."),
    length("critical_edge", "Critical edge distance")
        .open()
        .hint("From its product data; counts in concrete that does not crack."),
];

const PRESSURE: Entry = Entry::Quantity(Kind::Pressure);
const AREA: Entry = Entry::Quantity(Kind::Area);
const YES_NO: &[(&str, &str)] = &[("true", "yes"), ("false", "no")];

pub(super) const MOTOR: &[Row] = &[
    field("power", "Motor power", Entry::Quantity(Kind::Power)).open(),
    field("voltage", "Motor voltage", Entry::Quantity(Kind::Voltage)).open(),
    field("current", "Motor current", Entry::Quantity(Kind::Current)).open(),
    words(
        "phases",
        "Motor phases",
        &[("One", "one"), ("Three", "three")],
    )
    .open(),
    words("protected", "Thermally protected", YES_NO)
        .open()
        .hint("As its nameplate says."),
];

pub(super) const HYDRAULICS: &[Row] = &[
    length("bore", "Cylinder bore"),
    length("stroke", "Cylinder stroke"),
    field("tank_min", "Tank, least", Entry::Quantity(Kind::Volume)).open(),
    field("tank_max", "Tank, most", Entry::Quantity(Kind::Volume)).open(),
];

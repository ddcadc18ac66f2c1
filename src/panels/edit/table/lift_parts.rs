//! The fields of the lift's parts that a preset usually brings.

use super::{Entry, Row, angle, field, length, list};
use crate::units::Kind;

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
    length("pivot_inward", "Pivot inward").hint("From the column's middle toward the vehicle."),
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
    field("anchor_age_days", "Age that the anchors ask", Entry::Number)
        .open()
        .hint("Of the concrete, in days, by the anchors' maker."),
    list(
        "anchors",
        "Anchors",
        "anchor",
        &[
            length("[0]", "Anchor inward").hint("From the column's middle toward the vehicle."),
            length("[1]", "Anchor along the bay").hint("From the post line."),
        ],
        |now| format!("({zero}, {zero})", zero = now.zero()),
    ),
];

pub(super) const MOTOR: &[Row] = &[
    field("power", "Motor power", Entry::Quantity(Kind::Power)).open(),
    field("voltage", "Motor voltage", Entry::Quantity(Kind::Voltage)).open(),
    field("current", "Motor current", Entry::Quantity(Kind::Current)).open(),
];

pub(super) const HYDRAULICS: &[Row] = &[
    length("bore", "Cylinder bore"),
    length("stroke", "Cylinder stroke"),
    field("tank_min", "Tank, least", Entry::Quantity(Kind::Volume)).open(),
    field("tank_max", "Tank, most", Entry::Quantity(Kind::Volume)).open(),
];

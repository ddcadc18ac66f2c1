//! The fields of what is arranged before buying.

use super::super::now::Now;
use super::{Entry, Row, field, group, length, list, words};
use crate::units::Kind;

/// Permission, people, gear.
pub(super) const ARRANGEMENTS: &[Row] = &[
    flag("lift_compared", "Lift's figures compared with its manual")
        .hint("A preset's figures are typical ones."),
    flag("vehicle_measured", "Vehicle measured and weighed"),
    leave("permit", "Building permit"),
    leave("landlord", "Landlord or owners' association"),
    leave("insurer", "Insurer"),
    group(
        "panel_space",
        "Clear space before the electric panel",
        &[
            length("width", "Its width").open(),
            length("depth", "Its depth").open(),
            length("height", "Its height").open(),
        ],
    ),
    list(
        "burning",
        "Heaters, boilers and flues",
        "heater",
        &[
            field("name", "Name", Entry::Text).hint("Its name in the room, where it has one."),
            length("clearance", "Clearance its manual asks").open(),
        ],
        heater,
    ),
    list(
        "not_burning",
        "Pipes, ducts and others that don't burn",
        "thing",
        &[field("name", "Name", Entry::Text).hint("Its name in the room.")],
        pipe,
    ),
    field(
        "unloading",
        "Heaviest piece that can be unloaded",
        Entry::Quantity(Kind::Mass),
    )
    .open()
    .hint("Off the truck and into the garage."),
    field(
        "raising",
        "Heaviest column the gear stands up",
        Entry::Quantity(Kind::Mass),
    )
    .open(),
    field("helpers", "Helpers", Entry::Count).open(),
    flag("shored", "Columns shored until anchored"),
    flag("stand_up_way", "Way of a column's top, tipped up, is free")
        .hint("Walked past lights, door tracks and opener."),
    group(
        "tools",
        "Tools at hand",
        &[
            flag("hammer_drill", "Rotary hammer drill"),
            flag("anchor_bit", "Bit of the anchors' size"),
            flag("hole_cleaner", "Brush and pump or vacuum"),
            flag("torque_wrench", "Torque wrench"),
            flag("level", "Level or laser"),
            flag("tape", "Tape over the diagonals"),
            flag("chalk_line", "Chalk line"),
            flag("shims", "Steel shims"),
        ],
    ),
    leave("inspection", "Inspection once it stands"),
];

const fn leave(name: &'static str, label: &'static str) -> Row {
    words(
        name,
        label,
        &[
            ("Given", "given"),
            ("NotNeeded", "not needed"),
            ("Refused", "refused"),
        ],
    )
    .open()
}

const fn flag(name: &'static str, label: &'static str) -> Row {
    words(name, label, &[("true", "yes"), ("false", "no")]).open()
}

fn pipe(_: &Now<'_>) -> String {
    "(name: \"pipe\")".into()
}

fn heater(_: &Now<'_>) -> String {
    "(name: \"heater\")".into()
}

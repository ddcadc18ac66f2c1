//! The fields of the vehicle.

use super::super::now::Now;
use super::door::SIDES;
use super::vehicle_parts::{
    ATTACHED, LOW_PART, MASSES, MIRRORS, OPENING, ROOFS, attached, low_part, mass, mirrors, opening,
};
use super::{Entry, Form, Row, What, field, group, length, list, more, variant, words};
use crate::units::Kind;

/// Body styles.
pub(super) const STYLES: &[(&str, &str)] = &[
    ("Hatch", "hatchback"),
    ("Saloon", "saloon"),
    ("Coupe", "coup\u{e9}"),
    ("Estate", "estate"),
    ("Suv", "sport utility"),
    ("Pickup", "pickup"),
    ("Van", "van"),
    ("Camper", "camper"),
];

/// The vehicle, after the choice of a preset.
pub(super) const VEHICLE: &[Row] = &[
    field("name", "Vehicle's name", Entry::Name),
    words("style", "Body style", STYLES),
    group(
        "",
        "Size",
        &[
            length("length", "Overall length").hint("Bumper to bumper."),
            length("body_width", "Body width").hint("Without mirrors."),
            length("height", "Overall height").hint("To the roof, without what is fixed on it."),
            Row::new("mirrors", "Mirrors", What::Maybe(MIRRORS, mirrors)),
        ],
    ),
    list(
        "attached",
        "Fixed on the body",
        "attached part",
        ATTACHED,
        attached,
    )
    .hint("Racks, boxes, toppers, light bars, spare wheels, antennas, load."),
    Row::new("lift_points", "Lift points", What::Corners(LIFT_POINT))
        .hint("Where the pads meet the vehicle."),
    group(
        "",
        "Weight and balance",
        &[
            Row::new(
                "axle_loads",
                "Axle loads",
                What::Maybe(&AXLES, |_| "(front: \"2000 lb\", rear: \"2000 lb\")".into()),
            )
            .hint("At the kerb, weighed."),
            list("masses", "Cargo and parts taken out", "mass", MASSES, mass),
            variant("cg_height", "Height of the balance point", CG_HEIGHTS).open(),
        ],
    ),
    more(
        "",
        "Wheels",
        &[
            length("wheelbase", "Wheelbase").hint("Between the axles."),
            length("front_overhang", "Front overhang")
                .hint("From the front bumper to the front axle."),
            more(
                "track",
                "Track",
                &[
                    length("front", "Front track").hint("Between the tyres' middles."),
                    length("rear", "Rear track").hint("Between the tyres' middles."),
                ],
            ),
            more(
                "tyre",
                "Tyre",
                &[
                    length("diameter", "Tyre diameter"),
                    length("width", "Tyre width"),
                ],
            ),
            more(
                "droop",
                "Droop",
                &[
                    length("front", "Front droop")
                        .hint("How far the wheels hang down once off the floor."),
                    length("rear", "Rear droop")
                        .hint("How far the wheels hang down once off the floor."),
                ],
            ),
        ],
    ),
    more(
        "",
        "Outline and underbody",
        &[
            length("belt", "Belt line").hint("From the ground to the lower edge of the glass."),
            length("sill", "Sill").hint("From the ground to the body's lower edge."),
            variant("roof", "Outline", ROOFS).hint("Stations count from the front bumper."),
            list(
                "underbody",
                "Low parts underneath",
                "low part",
                LOW_PART,
                low_part,
            ),
        ],
    ),
    list(
        "opening_parts",
        "Parts that open",
        "opening part",
        OPENING,
        opening,
    ),
    words("driver", "Driver sits", SIDES)
        .open()
        .hint("Which front door the driver leaves by."),
];

const LIFT_POINT: &[Row] = &[
    length("station", "Lift point's station").hint("From the front bumper."),
    length("half_spacing", "Lift point off the middle").hint("From the vehicle's middle line."),
    length("height", "Lift point's height").hint("From the ground, standing on its wheels."),
];

const AXLES: [Row; 2] = [
    field("front", "Front axle load", Entry::Quantity(Kind::Mass)),
    field("rear", "Rear axle load", Entry::Quantity(Kind::Mass)),
];

const CG_HEIGHTS: &[Form] = &[
    Form {
        label: "Measured",
        is: |now| now.is("Given"),
        rows: HEIGHT,
        fresh: |now| format!("Given({})", cg_height(now)),
    },
    Form {
        label: "Estimated",
        is: |now| now.is("Estimated"),
        rows: HEIGHT,
        fresh: |now| format!("Estimated({})", cg_height(now)),
    },
    Form {
        label: "From track, by class",
        is: |now| now.is("FromTrack") && !now.source().contains('('),
        rows: &[],
        fresh: |_| "FromTrack".into(),
    },
    Form {
        label: "From track, by factor",
        is: |now| now.is("FromTrack") && now.source().contains('('),
        rows: &[
            field("[0]", "Stability factor", Entry::Number).hint("Half the track over the height.")
        ],
        fresh: |_| "FromTrack(1.2)".into(),
    },
    Form {
        label: "Share of the height",
        is: |now| now.is("ShareOfHeight"),
        rows: &[field("[0]", "Share of the overall height", Entry::Number)],
        fresh: |_| "ShareOfHeight(0.4)".into(),
    },
];

const HEIGHT: &[Row] = &[length("[0]", "Balance point's height").hint("From the ground.")];

fn cg_height(now: &Now<'_>) -> String {
    let kept = now
        .text_in("[0]")
        .filter(|text| crate::units::parse_length(text).is_ok());
    kept.map_or_else(|| now.say(28.0, 700.0), |text| now.quoted(&text))
}

//! The fields of the margins asked, the trust in measurements, and the people underneath.

use super::door::HELD;
use super::{Entry, Row, What, field, group, length, list, words};

/// Margins and trust. What is left out is the project's own default.
pub(super) const POLICY: &[Row] = &[
    group(
        "",
        "Room to keep",
        &[
            length("over_vehicle", "Over the vehicle").or("75 mm"),
            length("beside_vehicle", "Beside the vehicle")
                .or("50 mm")
                .hint("Between the vehicle and walls or jambs."),
            length("beside_post", "Beside the posts")
                .or("50 mm")
                .hint("Between body or mirrors and the posts."),
            length("lift_parts", "Around the lift's parts")
                .or("25 mm")
                .hint("Between the lift's own moving parts and the bay."),
            length("under_bar", "Under the shut-off bar")
                .or("25 mm")
                .hint("So that the bar does not trip in normal use."),
            length("loose_pad", "Loose pad")
                .or("3 mm")
                .hint("A pad with a wider gap than this withholds the verdict."),
            length("inside_pads", "Weight inside the pads")
                .or("150 mm")
                .hint("How far inside the span of the pads the centre of gravity must lie."),
        ],
    ),
    group(
        "",
        "How far measurements may be off",
        &[
            length("measured_garage", "Room and door")
                .or("6 mm")
                .hint("Of each dimension, either way."),
            length("measured_lift", "Lift")
                .or("2 mm")
                .hint("Of each dimension, either way."),
            length("measured_vehicle", "Vehicle")
                .or("6 mm")
                .hint("Of each dimension, either way."),
        ],
    ),
    Row::new(
        "door_held",
        "Door while raised",
        What::Field(HELD.0, HELD.1),
    )
    .hint("Where it is always kept so; otherwise the worse of shut and open counts."),
];

/// The people.
pub(super) const PEOPLE: &[Row] = &[list(
    "people",
    "People underneath",
    "person",
    &[
        field("name", "Person's name", Entry::Name),
        length("height", "Person's height")
            .open()
            .hint("With shoes and whatever is on the head. Or a stature below, not both."),
        words(
            "stature",
            "Or a stature of ANSUR II",
            &[
                ("Women5", "5 of 100 women are no taller"),
                ("Women50", "50 of 100 women"),
                ("Women95", "95 of 100 women"),
                ("Women99", "99 of 100 women"),
                ("Men5", "5 of 100 men"),
                ("Men50", "50 of 100 men"),
                ("Men95", "95 of 100 men"),
                ("Men99", "99 of 100 men"),
            ],
        )
        .open()
        .hint("Of service members, unweighted; 40 mm of shoes are added, nothing on the head."),
    ],
    |now| {
        format!(
            "(name: {}, height: {})",
            now.new_name("person"),
            now.say(70.0, 1780.0)
        )
    },
)];

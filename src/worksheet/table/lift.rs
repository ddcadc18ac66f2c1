//! The lift: where it will stand, and what its manual says.

use super::super::question::{Form, Kind, Question, Section};
use super::{FROM_ZERO, PLACE, SIZE};
use crate::units;

const MASS: Kind = Kind::Size(units::Kind::Mass);

pub(super) const PLACE_OF_LIFT: Section = Section {
    id: "place",
    title: "Where the lift will stand",
    says: "Chalk both base plates on the floor now: the holes, joints and cracks that come next are \
           looked for around them.",
    questions: &[
        Question::new(
            "lift.post_line",
            "Door wall to the middle of both columns",
            "Where you mean them to stand: chalk it on the floor.",
            SIZE,
        ),
        Question::new(
            "lift.across",
            "Lift's middle to the right of the door's middle",
            "With a minus to the left; 0 in where it stands in line with the door.",
            PLACE,
        ),
    ],
    repeat: None,
};

const BEAM: &[&str] = &["overhead beam"];

const fn beam(key: &'static str, what: &'static str, how: &'static str, kind: Kind) -> Question {
    Question::new(key, what, how, kind).only_if("#tie", BEAM)
}

const fn plate(key: &'static str, what: &'static str, how: &'static str, kind: Kind) -> Question {
    Question::new(key, what, how, kind).only_if("#tie", &["floor plate"])
}

pub(super) const LIFT: Section = Section {
    id: "lift",
    title: "The lift, from its manual",
    says: "Ask the seller for the manual before buying: an advertisement is not enough. What stays \
           empty keeps the typical figure of the preset, which is no maker's, and no lock is called \
           safe on one that decides clearance, a load or a mark on the column.",
    questions: &[
        Question::new(
            "lift.preset",
            "The nearest of the lifts to start from",
            "`bayrise presets` lists them with their main figures.",
            Kind::Preset(Form::Lift),
        ),
        Question::new(
            "lift.column.height",
            "Column: height",
            "From the base plate up.",
            SIZE,
        ),
        Question::new(
            "lift.spacing",
            "Between the columns",
            "Nearest faces, inside to inside.",
            SIZE,
        ),
        Question::new(
            "lift.drive_through",
            "Drive-through width",
            "Between the carriages.",
            SIZE,
        ),
        Question::new(
            "lift.base_plate.width",
            "Base plate: width",
            "Left to right.",
            SIZE,
        ),
        Question::new(
            "lift.base_plate.depth",
            "Base plate: depth",
            "Door to back.",
            SIZE,
        ),
        Question::new(
            "lift.base_plate.thickness",
            "Base plate: thickness",
            "Of the steel.",
            SIZE,
        ),
        Question::new(
            "lift.base_plate.inward",
            "Base plate: its middle off the column's, toward the vehicle",
            "0 in where the column stands in its middle; with a minus toward the wall.",
            PLACE,
        ),
        Question::new(
            "#tie",
            "What ties the columns together",
            "Floor plate: a plate on the floor, driven over, and nothing over the vehicle.",
            Kind::Choice(&[("overhead beam", ""), ("floor plate", "")]),
        ),
        beam(
            "#tie.underside",
            "Overhead beam: floor to its underside",
            "Hoses and cables that hang below it counted; the shut-off bar comes next.",
            SIZE,
        ),
        beam(
            "#tie.height",
            "Overhead beam: size up and down",
            "With the brackets on top of it.",
            SIZE,
        ),
        beam(
            "#tie.width",
            "Overhead beam: size door to back",
            "At its widest.",
            SIZE,
        ),
        beam(
            "#bar",
            "Overhead beam: a shut-off bar under it?",
            "A padded bar that cuts the power when the vehicle meets it.",
            Kind::Choice(&[("yes", ""), ("no", "")]),
        ),
        Question::new(
            "#bar.drop",
            "Shut-off bar: beam's underside to the bar's underside",
            "As it hangs; the larger of two ends counts.",
            SIZE,
        )
        .only_if("#bar", &["yes"]),
        plate(
            "#plate.height",
            "Floor plate: height over the floor",
            "Its highest place, covers, hoses and cable guides along.",
            SIZE,
        ),
        plate(
            "#plate.width",
            "Floor plate: size door to back",
            "At its widest.",
            SIZE,
        ),
        Question::new(
            "lift.travel",
            "Travel of the carriage",
            "Lowest to highest.",
            SIZE,
        ),
        Question::new(
            "lift.carriage.marked_edge",
            "Base plate's top to the carriage's marked edge",
            "Carriage down. Any edge easily seen beside the column: every mark is made from it.",
            SIZE,
        ),
        Question::new(
            "#locks.first",
            "First lock: travel",
            "Above the lowest place of the carriage.",
            SIZE,
        ),
        Question::new("#locks.pitch", "From lock to lock", "All alike.", SIZE),
        Question::new(
            "#locks.count",
            "How many locks",
            "Counted on the column.",
            Kind::Count,
        ),
        Question::new(
            "#locks.each",
            "Locks that are not all alike: each one's travel",
            "Lowest first, each with its unit, commas between, and the three before left empty: \
             12 in, 15 1/2 in, 20 in.",
            Kind::Words,
        ),
        Question::new(
            "lift.pad.lowest",
            "Lowest pad's top over the floor",
            "Carriage down, screw in, no adapter.",
            SIZE,
        ),
        Question::new(
            "lift.pad.screw_travel",
            "Pad: how far its screw gives",
            "Screwed in to screwed out as far as the manual lets it.",
            FROM_ZERO,
        ),
        Question::new(
            "lift.arms.front.shortest",
            "Front arm, pushed in",
            "Middle of its pivot to the middle of the pad. Front: the side away from the door.",
            SIZE,
        ),
        Question::new(
            "lift.arms.front.longest",
            "Front arm, drawn out",
            "As before.",
            SIZE,
        ),
        Question::new(
            "lift.arms.rear.shortest",
            "Rear arm, pushed in",
            "As before. Rear: the side of the door.",
            SIZE,
        ),
        Question::new(
            "lift.arms.rear.longest",
            "Rear arm, drawn out",
            "As before.",
            SIZE,
        ),
        Question::new(
            "lift.set_overtravel",
            "Climb past a lock before its latch drops in",
            "The larger of the two columns counts.",
            FROM_ZERO,
        ),
        Question::new(
            "lift.release_overtravel",
            "Climb off a lock before its latch can be pulled",
            "The larger of the two columns counts.",
            FROM_ZERO,
        ),
        Question::new("lift.capacity", "Rated capacity", "From its plate.", MASS),
        Question::new(
            "lift.arm_capacity",
            "Rated capacity of one arm",
            "From the manual. Left empty beside a capacity: a quarter of it.",
            MASS,
        ),
        Question::new(
            "lift.manual.thickness",
            "Slab asked for: thickness",
            "The manual outranks advertisements.",
            SIZE,
        ),
        Question::new(
            "lift.manual.strength",
            "Slab asked for: strength",
            "As the manual says.",
            Kind::Size(units::Kind::Pressure),
        ),
        Question::new(
            "lift.manual.edge_distance",
            "Slab asked for: anchor to edge or joint",
            "As the manual says.",
            FROM_ZERO,
        ),
    ],
    repeat: None,
};

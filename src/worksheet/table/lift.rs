//! The lift: where it will stand, and what its manual says.

use super::super::question::{Form, Kind, Question, Section};
use super::{FROM_ZERO, PLACE, SIZE};
use crate::units;

const MASS: Kind = Kind::Size(units::Kind::Mass);

pub(super) const LIFT: Section = Section {
    id: "lift",
    title: "The lift, from its manual",
    says: "Ask the seller for the manual before buying: an advertisement is not enough. What stays \
           empty keeps the typical figure of the preset, which is no maker's.",
    questions: &[
        Question::new(
            "lift.preset",
            "The nearest of the lifts to start from",
            "`bayrise presets` lists them with their main figures.",
            Kind::Preset(Form::Lift),
        ),
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
            "lift.travel",
            "Travel of the carriage",
            "Lowest to highest.",
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
            "lift.pad.lowest",
            "Lowest pad's top over the floor",
            "Carriage down, screw in, no adapter.",
            SIZE,
        ),
        Question::new("lift.capacity", "Rated capacity", "From its plate.", MASS),
        Question::new(
            "lift.arm_capacity",
            "Rated capacity of one arm",
            "From the manual; a quarter of the whole where it says nothing.",
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

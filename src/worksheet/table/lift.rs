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

/// A question about the power unit, where one hangs on a column.
const fn unit(key: &'static str, what: &'static str, how: &'static str, kind: Kind) -> Question {
    Question::new(key, what, how, kind).only_if("#unit", &["left", "right"])
}

const fn bar(key: &'static str, what: &'static str, how: &'static str) -> Question {
    Question::new(key, what, how, SIZE).only_if("#bar", &["yes"])
}

const fn window(key: &'static str, what: &'static str, how: &'static str) -> Question {
    Question::new(key, what, how, FROM_ZERO).only_if("#cg", &["yes"])
}

const ANGLE: Kind = Kind::Place(units::Kind::Angle);

pub(super) const LIFT: Section = Section {
    id: "lift",
    title: "The lift, from its manual",
    says: "Ask the seller for the manual and the maker's drawing before buying: an advertisement is \
           not enough. The preset is only a start: it is no maker's. What stays empty is called not \
           measured, and no lock is called safe for want of it.",
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
            "Floor to its top.",
            SIZE,
        ),
        Question::new(
            "lift.column.width",
            "Column: size across",
            "Toward the other column, before it is turned.",
            SIZE,
        ),
        Question::new(
            "lift.column.depth",
            "Column: size door to back",
            "Before it is turned.",
            SIZE,
        ),
        Question::new(
            "lift.column.turned",
            "Columns turned: by how much",
            "0 deg: face to face. Open sides toward the back: without a sign; toward the door: with \
             a minus.",
            ANGLE,
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
        bar(
            "#bar.drop",
            "Shut-off bar: beam's underside to the bar's underside",
            "As it hangs; the larger of two ends counts.",
        ),
        bar("#bar.diameter", "Shut-off bar: across its padding", "At its thickest."),
        bar(
            "#bar.length",
            "Shut-off bar: its length",
            "Left to right; it is taken to hang midway between the columns.",
        ),
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
            "Lowest to highest. Where the two columns differ ask the maker.",
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
            "Above the lowest place of the carriage. The higher of the two columns counts.",
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
        Question::new(
            "lift.overshoot",
            "How far the carriage still climbs once the button is let go",
            "With a hand's delay. Left empty: 1 in (25 mm), which nobody measured.",
            FROM_ZERO,
        ),
        Question::new(
            "lift.side_mismatch",
            "How far the carriages may be out of level",
            "What the manual lets them be. Left empty: 1/2 in (12 mm), which is nobody's.",
            FROM_ZERO,
        ),
        Question::new(
            "lift.carriage.proud",
            "Carriage: how far it stands out from the column",
            "Toward the vehicle, from the column's inner face; bolts and hoses along.",
            FROM_ZERO,
        ),
        Question::new(
            "lift.carriage.depth",
            "Carriage: size door to back",
            "At its widest, the arms left out.",
            SIZE,
        ),
        Question::new(
            "lift.carriage.height",
            "Carriage: size up and down",
            "From its lowest to its highest place.",
            SIZE,
        ),
        Question::new(
            "lift.carriage.bottom",
            "Carriage: floor to its underside",
            "Carriage down.",
            FROM_ZERO,
        ),
        Question::new(
            "#unit",
            "On which column the power unit hangs",
            "As seen from the door. None: it stands elsewhere (then it is a thing in the room).",
            Kind::Choice(&[("left", "Left"), ("right", "Right"), ("none", "")]),
        ),
        unit(
            "lift.power_unit.width",
            "Power unit: how far it stands out",
            "From the column's outer face, motor and tank along.",
            SIZE,
        ),
        unit(
            "lift.power_unit.depth",
            "Power unit: size door to back",
            "At its widest.",
            SIZE,
        ),
        unit(
            "lift.power_unit.height",
            "Power unit: size up and down",
            "With motor and tank.",
            SIZE,
        ),
        unit(
            "lift.power_unit.bottom",
            "Power unit: floor to its underside",
            "At its lowest place.",
            FROM_ZERO,
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
        Question::new("lift.pad.diameter", "Pad: across", "At its widest.", SIZE),
        Question::new(
            "#adapters",
            "Adapters that come with it: each one's height",
            "With commas between: 3 in, 5 in. Left empty: none is counted on.",
            Kind::Words,
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
            "lift.arms.front.pivot_inward",
            "Front arm's pivot: from the column's middle, inward",
            "Toward the other column.",
            PLACE,
        ),
        Question::new(
            "lift.arms.front.pivot_away",
            "Front arm's pivot: from the post line",
            "Toward the back; with a minus toward the door.",
            PLACE,
        ),
        Question::new(
            "lift.arms.rear.pivot_inward",
            "Rear arm's pivot: from the column's middle, inward",
            "Toward the other column.",
            PLACE,
        ),
        Question::new(
            "lift.arms.rear.pivot_away",
            "Rear arm's pivot: from the post line",
            "Toward the door; with a minus toward the back.",
            PLACE,
        ),
        Question::new(
            "lift.arms.front.swing_min",
            "Front arm: least swing",
            "From straight across to the other column, which is 0 deg; past it toward the door with \
             a minus.",
            ANGLE,
        ),
        Question::new(
            "lift.arms.front.swing_max",
            "Front arm: greatest swing",
            "From straight across toward the back.",
            ANGLE,
        ),
        Question::new(
            "lift.arms.rear.swing_min",
            "Rear arm: least swing",
            "From straight across; past it toward the back with a minus.",
            ANGLE,
        ),
        Question::new(
            "lift.arms.rear.swing_max",
            "Rear arm: greatest swing",
            "From straight across toward the door.",
            ANGLE,
        ),
        Question::new(
            "#arm.hold",
            "What holds an arm once it is swung in",
            "Teeth: it rests from tooth to tooth. Stepless: at any swing.",
            Kind::Choice(&[("teeth", ""), ("stepless", ""), ("nothing", "")]),
        ),
        Question::new(
            "#arm.tooth",
            "Teeth: angle from tooth to tooth",
            "360 deg shared by the teeth that a full turn would have; the largest of the four arms.",
            Kind::Size(units::Kind::Angle),
        )
        .only_if("#arm.hold", &["teeth"]),
        Question::new(
            "#arm.underside",
            "Arms: floor to the underside",
            "Carriage down; the lowest of the four counts.",
            SIZE,
        ),
        Question::new(
            "#arm.section_height",
            "Arms: size up and down",
            "Underside to the highest place beside the pad; the largest counts.",
            SIZE,
        ),
        Question::new(
            "#arm.section_width",
            "Arms: size across",
            "At the widest of the four.",
            SIZE,
        ),
        Question::new("lift.capacity", "Rated capacity", "From its plate.", MASS),
        Question::new(
            "lift.arm_capacity",
            "Rated capacity of one arm",
            "From the manual. Left empty beside a capacity: a quarter of it, which is nobody's.",
            MASS,
        ),
        Question::new(
            "#cg",
            "Does the manual say where the centre of gravity may lie?",
            "How far it may lie off the post line.",
            Kind::Choice(&[("yes", ""), ("no", "")]),
        ),
        window(
            "lift.cg_window.front",
            "Centre of gravity: farthest toward the back",
            "From the post line.",
        ),
        window(
            "lift.cg_window.rear",
            "Centre of gravity: farthest toward the door",
            "From the post line.",
        ),
        Question::new(
            "#holes",
            "Holes of a base plate: the place of each",
            "From the plate's middle: toward the vehicle, then toward the back, with a comma; a \
             semicolon after each: -7 in, -8 in; -7 in, 8 in.",
            Kind::Words,
        ),
        Question::new(
            "lift.base_plate.anchor_diameter",
            "Anchors: diameter",
            "As the manual says.",
            SIZE,
        ),
        Question::new(
            "lift.base_plate.anchor_embedment",
            "Anchors: how deep they go into the slab",
            "As the manual says.",
            SIZE,
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

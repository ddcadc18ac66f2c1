//! The vehicle, what is fixed on it, and how it is parked.

use super::super::question::{Form, Kind, Question, Repeat, Section};
use super::{FROM_ZERO, PLACE, SIZE, WORDS};
use crate::units;

const MASS: Kind = Kind::Size(units::Kind::Mass);

pub(super) const VEHICLE: Section = Section {
    id: "vehicle",
    title: "The vehicle",
    says: "On level ground, tyres pumped, empty as it will be raised, mirrors out. Stations are \
           measured along the vehicle from the front bumper. The preset is only a start: what stays \
           empty is called not measured, and no lock is called safe for want of it.",
    questions: &[
        Question::new(
            "vehicle.preset",
            "The nearest of the vehicles to start from",
            "`bayrise presets` lists them with their main figures.",
            Kind::Preset(Form::Vehicle),
        ),
        Question::new(
            "vehicle.height",
            "Height of the body",
            "A straight board over the roof, level, and the tape down at both sides; the larger \
             counts. Racks and boxes come later.",
            SIZE,
        ),
        Question::new(
            "vehicle.length",
            "Length over bumpers",
            "Plumb both ends down to the floor; tow ball and spare along.",
            SIZE,
        ),
        Question::new(
            "vehicle.body_width",
            "Width of the body",
            "Without mirrors, flares along; the largest counts.",
            SIZE,
        ),
        Question::new(
            "vehicle.sill",
            "Floor to the body's underside at its sides",
            "Along both sills, flares and steps along; the lowest counts.",
            SIZE,
        ),
        Question::new(
            "vehicle.belt",
            "Floor to where the sides start to lean in",
            "Below the windows; both sides, the higher counts.",
            SIZE,
        ),
        Question::new(
            "vehicle.mirrors.width_over",
            "Width over the mirrors",
            "Folded out.",
            SIZE,
        ),
        Question::new(
            "vehicle.mirrors.station",
            "Mirrors: from the front bumper",
            "To the middle of their heads.",
            SIZE,
        ),
        Question::new(
            "vehicle.mirrors.bottom",
            "Mirrors: floor to their underside",
            "Both sides; the lower counts.",
            SIZE,
        ),
        Question::new(
            "vehicle.mirrors.top",
            "Mirrors: floor to their top",
            "Both sides; the higher counts.",
            SIZE,
        ),
        Question::new(
            "vehicle.mirrors.depth",
            "Mirrors: size along the vehicle",
            "The larger of both.",
            SIZE,
        ),
        Question::new(
            "vehicle.wheelbase",
            "Wheelbase",
            "Middle of the front hub to the middle of the rear hub.",
            SIZE,
        ),
        Question::new(
            "vehicle.front_overhang",
            "Front overhang",
            "Front bumper to the middle of the front hub.",
            FROM_ZERO,
        ),
        Question::new(
            "vehicle.track.front",
            "Track, front",
            "Middle of tyre to middle of tyre.",
            SIZE,
        ),
        Question::new("vehicle.track.rear", "Track, rear", "As before.", SIZE),
        Question::new(
            "vehicle.tyre.diameter",
            "Tyre: height",
            "Floor to top.",
            SIZE,
        ),
        Question::new("vehicle.tyre.width", "Tyre: width", "At its widest.", SIZE),
        Question::new(
            "vehicle.lift_points.front.station",
            "Front lift points: from the front bumper",
            "Where the vehicle's own manual lets it be lifted; to the middle of the point.",
            FROM_ZERO,
        ),
        Question::new(
            "vehicle.lift_points.front.half_spacing",
            "Front lift points: from the vehicle's middle",
            "Half of left to right.",
            SIZE,
        ),
        Question::new(
            "vehicle.lift_points.front.height",
            "Front lift points: floor to the point",
            "Both sides; the lower counts.",
            SIZE,
        ),
        Question::new(
            "vehicle.lift_points.rear.station",
            "Rear lift points: from the front bumper",
            "As before.",
            FROM_ZERO,
        ),
        Question::new(
            "vehicle.lift_points.rear.half_spacing",
            "Rear lift points: from the vehicle's middle",
            "As before.",
            SIZE,
        ),
        Question::new(
            "vehicle.lift_points.rear.height",
            "Rear lift points: floor to the point",
            "As before.",
            SIZE,
        ),
        Question::new(
            "vehicle.droop.front",
            "Front wheels: how far they drop when nothing carries them",
            "Hub to arch, on the ground and with that end on stands: the difference; both sides, the \
             larger counts.",
            FROM_ZERO,
        ),
        Question::new(
            "vehicle.droop.rear",
            "Rear wheels: how far they drop",
            "As before.",
            FROM_ZERO,
        ),
        Question::new(
            "vehicle.axle_loads.front",
            "Front axle load",
            "Over a scale, as it will be raised; not the plate in the door, which is the most it may be.",
            MASS,
        ),
        Question::new(
            "vehicle.axle_loads.rear",
            "Rear axle load",
            "As before.",
            MASS,
        ),
    ],
    repeat: None,
};

pub(super) const ROOF: Section = Section {
    id: "roof",
    title: "The outline of its body",
    says: "Wherever the outline bends: bumper, hood, foot and top of the windscreen, roof's end, tail. \
           The first at 0 in, the last at the rear bumper, one at the full height. Where it bulges \
           between two of them write the higher. Left empty, or \"none\": the vehicle counts as high \
           and as wide as its roof and body over its whole length, which is on the safe side.",
    questions: &[
        Question::new(
            "station",
            "From the front bumper",
            "Along the vehicle.",
            FROM_ZERO,
        ),
        Question::new(
            "height",
            "Floor to the body's top",
            "Racks and boxes left out.",
            SIZE,
        ),
        Question::new(
            "half_width",
            "From the vehicle's middle to its side, up there",
            "Where the sides lean in; the farther of both.",
            SIZE,
        ),
    ],
    repeat: Some(Repeat {
        thing: "place of the outline",
        lines: 8,
    }),
};

pub(super) const UNDER: Section = Section {
    id: "under",
    title: "What hangs below the body",
    says: "With a torch, from both sides, nothing raised: suspension, axle housing, exhaust, tank, \
           gearbox, steps, spare. Each as the box that just holds it, about the vehicle's middle. The \
           arms pass under them, and they pass over plates on the floor. Write \"none\" only when \
           nothing hangs below the sills.",
    questions: &[
        Question::new("name", "Name", "Each its own.", WORDS),
        Question::new(
            "from",
            "Front bumper to its front end",
            "Along the vehicle.",
            FROM_ZERO,
        ),
        Question::new(
            "to",
            "Front bumper to its rear end",
            "Along the vehicle.",
            SIZE,
        ),
        Question::new(
            "half_width",
            "From the vehicle's middle to its side",
            "The farther of its two sides.",
            SIZE,
        ),
        Question::new(
            "height",
            "Floor to its lowest place",
            "Bolts, brackets and guards along.",
            SIZE,
        ),
    ],
    repeat: Some(Repeat {
        thing: "low part",
        lines: 6,
    }),
};

pub(super) const FIXED: Section = Section {
    id: "fixed",
    title: "What is fixed on the vehicle",
    says: "Racks, boxes, bars, lamps, a spare, an antenna, a load: each as the box that just holds \
           it. Write \"none\" only when there is nothing.",
    questions: &[
        Question::new("name", "Name", "Each its own.", WORDS),
        Question::new(
            "from",
            "Front bumper to its front end",
            "Along the vehicle.",
            PLACE,
        ),
        Question::new(
            "to",
            "Front bumper to its rear end",
            "Along the vehicle.",
            PLACE,
        ),
        Question::new(
            "width",
            "Width",
            "At its widest, about the vehicle's middle.",
            SIZE,
        ),
        Question::new(
            "bottom",
            "Floor to its underside",
            "At its lowest.",
            FROM_ZERO,
        ),
        Question::new("top", "Floor to its top", "At its highest.", SIZE),
    ],
    repeat: Some(Repeat {
        thing: "thing fixed on the vehicle",
        lines: 5,
    }),
};

pub(super) const PARKING: Section = Section {
    id: "parking",
    title: "Parking",
    says: "Chalk the post line. Park three times as you will every day, and each time mark where \
           the front tyres stand.",
    questions: &[
        Question::new(
            "parking.facing",
            "Which end goes in first",
            "Nose in, or tail in.",
            Kind::Choice(&[("nose in", "NoseIn"), ("tail in", "TailIn")]),
        ),
        Question::new(
            "#aim",
            "Centre of gravity, how far behind the post line",
            "Into the bay; with a minus toward the door. Left empty: the place nearest to the post \
             line from which all four arms reach is looked for.",
            PLACE,
        ),
        Question::new(
            "parking.repeat.along",
            "Spread of three times, along",
            "The widest of the marks, front to back.",
            FROM_ZERO,
        ),
        Question::new(
            "parking.repeat.across",
            "Spread of three times, across",
            "The widest of the marks, side to side.",
            FROM_ZERO,
        ),
        Question::new(
            "parking.repeat.yaw",
            "How far askew it may stand",
            "How far front and rear tyres stand off a straight line: 1 in over 10 ft (8 mm over 1 m) \
             is half a degree.",
            Kind::NotNegative(units::Kind::Angle),
        ),
        Question::new(
            "parking.pad_raise",
            "How far pads are raised by screw and adapters",
            "All four alike, when they take the load.",
            FROM_ZERO,
        ),
    ],
    repeat: None,
};

//! The room, what is in it, who works in it.

use super::super::question::{Kind, Question, Repeat, Section};
use super::{FROM_ZERO, PLACE, SIZE, WORDS};

pub(super) const START: Section = Section {
    id: "start",
    title: "Before the walk",
    says: "Take a steel tape, a torch, chalk, a straight board of 10 ft (3 m) and a level, and \
           someone for the other end of the tape. Write each reading with its unit, as the tape \
           shows it. Read twice; where two readings differ write the smaller for room, the larger \
           for what takes up room. What you can't reach or don't know stays empty: that is a good \
           answer, a guess is not.",
    questions: &[
        Question::new(
            "title",
            "Name of this bay",
            "What the sheets will be headed with.",
            WORDS,
        ),
        Question::new(
            "units",
            "How lengths are to be shown",
            "Readings may be written in either, always with their unit.",
            Kind::Choice(&[("imperial", "Imperial"), ("metric", "Metric")]),
        ),
        Question::new(
            "#measured",
            "Measured by, and on which day",
            "Stands in the file as a comment.",
            WORDS,
        ),
    ],
    repeat: None,
};

pub(super) const ROOM: Section = Section {
    id: "room",
    title: "The room",
    says: "Inside, between finished faces. Left, right, back: as seen from the door, looking in.",
    questions: &[
        Question::new(
            "garage.width",
            "Width, wall to wall",
            "At the floor and at head height, where the lift will stand; the smallest counts.",
            SIZE,
        ),
        Question::new(
            "garage.depth",
            "Depth, door wall to back wall",
            "From the inner face of the door wall; along both side walls, the smaller counts.",
            SIZE,
        ),
        Question::new(
            "#ceiling",
            "Shape of the ceiling",
            "Where the shape is none of these, write flat and its lowest place.",
            Kind::Choice(&[("flat", ""), ("sloped", ""), ("gable", ""), ("stepped", "")]),
        ),
        Question::new(
            "garage.ceiling.height",
            "Flat: least height",
            "Floor to ceiling at nine places at least, above all where posts and vehicle will be; \
             the lowest counts, after rows of lights and pipes are left out.",
            SIZE,
        )
        .only_if("#ceiling", &["flat"]),
        Question::new(
            "garage.ceiling.run",
            "Sloped: which way it rises or falls",
            "From the door to the back, or from side to side.",
            Kind::Choice(&[
                ("door to back", "DoorToBack"),
                ("side to side", "SideToSide"),
            ]),
        )
        .only_if("#ceiling", &["sloped"]),
        Question::new(
            "garage.ceiling.first",
            "Sloped: height at the door wall, or at the left wall",
            "Floor to underside, at three places along that wall; the lowest counts.",
            SIZE,
        )
        .only_if("#ceiling", &["sloped"]),
        Question::new(
            "garage.ceiling.last",
            "Sloped: height at the back wall, or at the right wall",
            "As before, at the other end.",
            SIZE,
        )
        .only_if("#ceiling", &["sloped"]),
        Question::new(
            "garage.ceiling.ridge_along",
            "Gable: which way the ridge runs",
            "Along the depth of the room, or across it.",
            Kind::Choice(&[
                ("door to back", "DoorToBack"),
                ("side to side", "SideToSide"),
            ]),
        )
        .only_if("#ceiling", &["gable"]),
        Question::new(
            "garage.ceiling.eaves",
            "Gable: height where the slope meets the walls",
            "Both sides, each at three places; the lowest counts.",
            SIZE,
        )
        .only_if("#ceiling", &["gable"]),
        Question::new(
            "garage.ceiling.ridge",
            "Gable: height under the ridge",
            "Below the ridge board, at three places; the lowest counts. Collar ties go to the \
             things in the room.",
            SIZE,
        )
        .only_if("#ceiling", &["gable"]),
        Question::new(
            "garage.ceiling.ridge_offset",
            "Gable: ridge off the room's middle",
            "To the right (or toward the back); with a minus to the left (toward the door).",
            PLACE,
        )
        .only_if("#ceiling", &["gable"]),
        Question::new(
            "#step.height",
            "Stepped: least height by the door",
            "Three places; the lowest counts.",
            SIZE,
        )
        .only_if("#ceiling", &["stepped"]),
        Question::new(
            "#step.from",
            "Stepped: where the step is",
            "From the door wall to the face of the step; where it runs askew, the place that \
             leaves the higher part smaller.",
            SIZE,
        )
        .only_if("#ceiling", &["stepped"]),
        Question::new(
            "#step.next",
            "Stepped: least height behind the step",
            "As before, up to the next step where there is one.",
            SIZE,
        )
        .only_if("#ceiling", &["stepped"]),
        Question::new(
            "#step.more",
            "Stepped: is there a second step?",
            "A third is written into the file.",
            Kind::Choice(&[("yes", ""), ("no", "")]),
        )
        .only_if("#ceiling", &["stepped"]),
        Question::new(
            "#step.second",
            "Stepped: where the second step is",
            "From the door wall, as before.",
            SIZE,
        )
        .only_if("#step.more", &["yes"]),
        Question::new(
            "#step.last",
            "Stepped: least height behind the second step",
            "As before.",
            SIZE,
        )
        .only_if("#step.more", &["yes"]),
        Question::new(
            "#floor",
            "The floor falls toward",
            "Lay the board with the level along and across the room. Where it falls more than one way \
             leave this empty and write its levels into the file.",
            Kind::Choice(&[
                ("level", ""),
                ("door", "Door"),
                ("back", "Back"),
                ("left", "Left"),
                ("right", "Right"),
            ]),
        ),
        Question::new(
            "#fall.drop",
            "Fall: how far under the lifted end of the level board",
            "Raise the low end of the board until it is level, and read the gap under it; the \
             largest of three places counts.",
            FROM_ZERO,
        )
        .only_if("#floor", &["door", "back", "left", "right"]),
        Question::new(
            "#fall.run",
            "Fall: length of the board",
            "From the end that rests on the floor to where the gap was read.",
            SIZE,
        )
        .only_if("#floor", &["door", "back", "left", "right"]),
    ],
    repeat: None,
};

/// The kinds of things, as bay files call them.
const THING: Kind = Kind::Choice(&[
    ("light", "Light"),
    ("beam", "Beam"),
    ("collar tie", "CollarTie"),
    ("duct", "Duct"),
    ("heater", "Heater"),
    ("fan", "Fan"),
    ("pipe", "Pipe"),
    ("shelf", "Shelf"),
    ("bench", "Bench"),
    ("post", "Post"),
    ("vehicle", "SecondVehicle"),
    ("other", "Other"),
]);

pub(super) const THINGS: Section = Section {
    id: "things",
    title: "What hangs, stands or runs in the room",
    says: "Everything over, under or beside the place of the vehicle: lights, beams, ties, ducts, \
           pipes, fans, heaters, shelves, benches, posts, another vehicle. Each is the box that just \
           holds it, with brackets, chains and swing. What spans the room is a box as wide as the \
           room.",
    questions: &[
        Question::new(
            "name",
            "Name",
            "Each its own: \"light, front left\".",
            WORDS,
        ),
        Question::new("kind", "Kind", "The nearest of the words.", THING),
        Question::new(
            "x",
            "To the right of the door's middle",
            "Plumb its middle down to the floor; with a minus to the left.",
            PLACE,
        ),
        Question::new(
            "y",
            "From the door wall",
            "To the same mark on the floor.",
            PLACE,
        ),
        Question::new(
            "bottom",
            "Floor to its underside",
            "At its lowest place; 0 for what stands on the floor.",
            FROM_ZERO,
        ),
        Question::new(
            "width",
            "Size across",
            "Left to right, at its widest.",
            SIZE,
        ),
        Question::new(
            "depth",
            "Size into the room",
            "Door to back, at its longest.",
            SIZE,
        ),
        Question::new("height", "Its own height", "Underside to top.", SIZE),
        Question::new(
            "#removable",
            "Can it be moved away for good?",
            "Only where you may and will do it.",
            Kind::YesNo,
        ),
    ],
    repeat: Some(Repeat {
        thing: "thing in the room",
        lines: 10,
    }),
};

pub(super) const PEOPLE: Section = Section {
    id: "people",
    title: "Who will work under it",
    says: "With shoes and whatever is on the head.",
    questions: &[
        Question::new("name", "Name", "A first name will do.", WORDS),
        Question::new(
            "height",
            "Height",
            "Standing, heel to top of the hat.",
            SIZE,
        ),
    ],
    repeat: Some(Repeat {
        thing: "person",
        lines: 4,
    }),
};

pub(super) const TRUST: Section = Section {
    id: "trust",
    title: "How far may the readings be off?",
    says: "Have someone else read five of them again without seeing yours: the largest difference \
           is an honest answer. The study counts it against the vehicle. Where it is left empty the \
           study takes its usual figures and shows them.",
    questions: &[
        Question::new(
            "policy.measured_garage",
            "Readings of the room, door and things",
            "Either way.",
            FROM_ZERO,
        ),
        Question::new(
            "policy.measured_vehicle",
            "Readings of the vehicle",
            "Either way.",
            FROM_ZERO,
        ),
        Question::new(
            "policy.measured_lift",
            "How near the lift will be set to its marks",
            "Either way; the maker's manual may say.",
            FROM_ZERO,
        ),
        Question::new(
            "policy.over_vehicle",
            "Room to keep over the vehicle",
            "Your choice.",
            SIZE,
        ),
        Question::new(
            "policy.beside_vehicle",
            "Room to keep beside the vehicle",
            "Your choice.",
            SIZE,
        ),
    ],
    repeat: None,
};

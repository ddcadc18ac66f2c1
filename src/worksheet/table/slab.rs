//! The slab, and the electric supply; who has to be asked.

use super::super::question::{Kind, Question, Repeat, Section};
use super::{PLACE, SIZE, WORDS};
use crate::units;

pub(super) const READINGS: Section = Section {
    id: "readings",
    title: "Holes through the slab",
    says: "FIRST have the slab scanned for tendons, heating, pipes and cables, and ask who poured \
           it: where anything is in it, or nobody knows, do not drill. Then drill at least two small \
           holes (1/2 in, 12 mm) within 2 ft (600 mm) of each future base plate, at opposite sides \
           of it. Hook a bent wire under the slab, mark it at the top, and measure the wire.",
    questions: &[
        Question::new(
            "x",
            "To the right of the door's middle",
            "To the hole's middle; with a minus to the left.",
            PLACE,
        ),
        Question::new("y", "From the door wall", "To the hole's middle.", PLACE),
        Question::new(
            "thickness",
            "Thickness read",
            "Four readings round each hole, coating and topping left out; the smallest counts.",
            SIZE,
        ),
    ],
    repeat: Some(Repeat {
        thing: "hole through the slab",
        lines: 6,
    }),
};

pub(super) const LINES: Section = Section {
    id: "lines",
    title: "Joints, cracks, edges, drains",
    says: "Within 10 ft (3 m) of each future post. Sweep the floor, wet it and let it dry: cracks \
           stay dark longest. Each line by its two ends. Write \"none\" only after you have looked.",
    questions: &[
        Question::new(
            "kind",
            "Kind",
            "A saw cut or a gap is a joint.",
            Kind::Choice(&[
                ("joint", "Joint"),
                ("crack", "Crack"),
                ("edge", "Edge"),
                ("drain", "Drain"),
            ]),
        ),
        Question::new(
            "from.x",
            "One end: to the right of the door's middle",
            "With a minus to the left.",
            PLACE,
        ),
        Question::new("from.y", "One end: from the door wall", "As before.", PLACE),
        Question::new(
            "to.x",
            "Other end: to the right of the door's middle",
            "With a minus to the left.",
            PLACE,
        ),
        Question::new("to.y", "Other end: from the door wall", "As before.", PLACE),
    ],
    repeat: Some(Repeat {
        thing: "line in the floor",
        lines: 7,
    }),
};

const YES_NO: Kind = Kind::YesNo;

/// A question about a slab that ends before the walls.
const fn edge(key: &'static str, what: &'static str, how: &'static str, kind: Kind) -> Question {
    Question::new(key, what, how, kind).only_if("#to_walls", &["no"])
}

pub(super) const SLAB: Section = Section {
    id: "slab",
    title: "The slab on paper",
    says: "From drawings, delivery notes, the builder or the building department. Not known is an \
           answer: leave it empty.",
    questions: &[
        Question::new(
            "slab.claimed_thickness",
            "Thickness as drawn or told",
            "Never counts without the holes.",
            SIZE,
        ),
        Question::new(
            "slab.strength",
            "Strength of the concrete",
            "From the delivery note, or from cores that were crushed.",
            Kind::Size(units::Kind::Pressure),
        ),
        Question::new(
            "slab.poured",
            "Day it was poured",
            "The latest that it can be.",
            Kind::Day,
        ),
        Question::new(
            "#to_walls",
            "Does the slab reach to all four walls?",
            "Look along the walls for a gap or another colour. What runs through it belongs to the \
             lines above.",
            YES_NO,
        ),
        edge(
            "#slab.left",
            "Slab's edge: to the left of the door's middle",
            "Of the slab that the posts will stand on. Where an edge runs askew or jumps, the place \
             nearest to the posts counts, at all four.",
            SIZE,
        ),
        edge(
            "#slab.right",
            "Slab's edge: to the right of the door's middle",
            "As before.",
            SIZE,
        ),
        edge(
            "#slab.near",
            "Slab's edge toward the door: from the door wall",
            "0 in where it reaches the wall; with a minus where it runs on under the door.",
            PLACE,
        ),
        edge(
            "#slab.far",
            "Slab's edge toward the back: from the door wall",
            "As before.",
            SIZE,
        ),
        Question::new(
            "slab.post_tensioned",
            "Tendons in it (post-tensioned)?",
            "A stamp at the door, anchors along the edge, the drawings.",
            YES_NO,
        ),
        Question::new(
            "slab.heated",
            "Heating in it?",
            "A manifold, warm floor, the drawings.",
            YES_NO,
        ),
        Question::new(
            "slab.buried_services",
            "Pipes or cables in it or just below?",
            "From the scan and the drawings.",
            YES_NO,
        ),
        Question::new(
            "slab.void_below",
            "A void, a pit, a cellar or a tank below?",
            "Knock with a hammer: hollow sounds; look from the cellar.",
            YES_NO,
        ),
        Question::new(
            "slab.suspended",
            "Does it carry over a room below, not on the ground?",
            "Look from below.",
            YES_NO,
        ),
    ],
    repeat: None,
};

const LEAVE: Kind = Kind::Choice(&[
    ("given", "Given"),
    ("not needed", "NotNeeded"),
    ("refused", "Refused"),
]);

pub(super) const SUPPLY: Section = Section {
    id: "supply",
    title: "Electric supply, and who has to be asked",
    says: "Read the label; open nothing. An electrician sees to the rest.",
    questions: &[
        Question::new(
            "power.voltage",
            "Voltage where the lift will be fed from",
            "From the panel's label.",
            Kind::Size(units::Kind::Voltage),
        ),
        Question::new(
            "power.breaker",
            "Breaker for the lift",
            "Printed on its lever.",
            Kind::Size(units::Kind::Current),
        ),
        Question::new(
            "power.run",
            "Length of the cable, panel to motor",
            "Along the walls as it will run, one way.",
            SIZE,
        ),
        Question::new(
            "power.conductor",
            "Size of its copper conductors",
            "Printed on the cable.",
            Kind::Choice(&[
                ("AWG 14", "Awg14"),
                ("AWG 12", "Awg12"),
                ("AWG 10", "Awg10"),
                ("AWG 8", "Awg8"),
                ("AWG 6", "Awg6"),
            ]),
        ),
        Question::new(
            "arrangements.panel_space.width",
            "Clear before the panel: width",
            "Free floor to the ceiling, doors and shelves counted.",
            SIZE,
        ),
        Question::new(
            "arrangements.panel_space.depth",
            "Clear before the panel: out into the room",
            "As the vehicle will stand.",
            SIZE,
        ),
        Question::new(
            "arrangements.panel_space.height",
            "Clear before the panel: height",
            "Floor to the first thing over it.",
            SIZE,
        ),
        Question::new(
            "arrangements.permit",
            "Building permit",
            "In writing.",
            LEAVE,
        ),
        Question::new(
            "arrangements.landlord",
            "Landlord or owners' association",
            "In writing.",
            LEAVE,
        ),
        Question::new("arrangements.insurer", "Insurer", "In writing.", LEAVE),
        Question::new(
            "#note",
            "Anything else to remember",
            "Stands in the file as a comment.",
            WORDS,
        ),
    ],
    repeat: None,
};

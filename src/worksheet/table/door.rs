//! The door opening, the door, its opener.

use super::super::question::{Kind, Question, Section};
use super::{FROM_ZERO, PLACE, SIZE};

const SECTIONAL: &[&str] = &["sectional"];
const ROLL_UP: &[&str] = &["roll-up"];
const SWING_UP: &[&str] = &["swing-up"];
const SIDE_HINGED: &[&str] = &["side-hinged"];

const fn sectional(
    key: &'static str,
    what: &'static str,
    how: &'static str,
    kind: Kind,
) -> Question {
    Question::new(key, what, how, kind).only_if("#door", SECTIONAL)
}

pub(super) const DOOR: Section = Section {
    id: "door",
    title: "The door",
    says: "From inside, the door shut unless it says open. Keep hands off springs and cables: they \
           are under load. Measure beside them.",
    questions: &[
        Question::new(
            "garage.opening.width",
            "Opening: clear width",
            "Jamb to jamb at the floor, half-way up and at the top; the smallest counts.",
            SIZE,
        ),
        Question::new(
            "garage.opening.height",
            "Opening: clear height",
            "Floor to header at both sides and in the middle; the smallest counts.",
            SIZE,
        ),
        Question::new(
            "garage.opening.offset",
            "Opening: its middle off the room's middle",
            "Measure each jamb to its side wall: (left - right) / 2, a minus and all. With a minus the \
             door lies to the left.",
            PLACE,
        ),
        Question::new(
            "garage.opening.wall_thickness",
            "Thickness of the door wall",
            "In the opening, from the inner face to the outer.",
            SIZE,
        ),
        Question::new(
            "#door",
            "Kind of door",
            "Sectional: panels that run back on tracks.",
            Kind::Choice(&[
                ("sectional", ""),
                ("roll-up", ""),
                ("swing-up", ""),
                ("side-hinged", ""),
                ("none", ""),
            ]),
        ),
        sectional(
            "#layout",
            "Sectional: how the tracks run",
            "High-lift: they go on up the wall before they turn. Vertical: they never turn.",
            Kind::Choice(&[
                ("standard", "Standard"),
                ("low-headroom", "LowHeadroom"),
                ("high-lift", "HighLift"),
                ("vertical", "VerticalLift"),
            ]),
        ),
        Question::new(
            "#extra",
            "High-lift: how far up before they turn",
            "From where a standard track would start to turn (about the header) to where this one \
             does; the smaller of two sides counts.",
            SIZE,
        )
        .only_if("#layout", &["high-lift"]),
        sectional(
            "garage.door.panel_thickness",
            "Sectional: thickness of a panel",
            "With handles, struts and window trim; the largest counts.",
            SIZE,
        ),
        sectional(
            "garage.door.panel_height",
            "Sectional: height of a panel",
            "Hinge to hinge, of the highest panel.",
            SIZE,
        ),
        sectional(
            "garage.door.track_radius",
            "Sectional: radius of the track's curve",
            "Straight up, from where the track leaves the wall to the height of its level part; to the \
             middle of the rollers.",
            SIZE,
        ),
        sectional(
            "garage.door.track_offset",
            "Sectional: track beside the opening",
            "From the edge of the opening to the middle of the track; the smaller side counts.",
            FROM_ZERO,
        ),
        sectional(
            "garage.door.track_section",
            "Sectional: size of the track with its brackets",
            "The larger of width and height, hangers and bolts along.",
            SIZE,
        ),
        sectional(
            "garage.door.track_length",
            "Sectional: length of the level track",
            "From the end of the curve to the far end with its stop; the longer side counts.",
            FROM_ZERO,
        ),
        sectional(
            "garage.door.spring.height",
            "Sectional: floor to the middle of the spring shaft",
            "Beside a bracket, not at a spring.",
            SIZE,
        ),
        sectional(
            "garage.door.spring.out",
            "Sectional: door wall to the middle of the shaft",
            "Beside a bracket.",
            FROM_ZERO,
        ),
        sectional(
            "garage.door.spring.diameter",
            "Sectional: widest part on the shaft",
            "Spring or cable drum, across; don't touch them.",
            SIZE,
        ),
        sectional(
            "garage.door.top_bracket",
            "Sectional: how far bracket and strut stand out",
            "From the inner face of the top panel into the room; the largest counts.",
            FROM_ZERO,
        ),
        Question::new(
            "garage.door.curtain_thickness",
            "Roll-up: thickness of the curtain",
            "With its end pieces and guides.",
            SIZE,
        )
        .only_if("#door", ROLL_UP),
        Question::new(
            "garage.door.coil_diameter",
            "Roll-up: coil across, door open",
            "With its hood; the largest counts.",
            SIZE,
        )
        .only_if("#door", ROLL_UP),
        Question::new(
            "garage.door.coil_height",
            "Roll-up: floor to the coil's middle",
            "At both ends; the lower counts.",
            SIZE,
        )
        .only_if("#door", ROLL_UP),
        Question::new(
            "garage.door.coil_out",
            "Roll-up: door wall to the coil's middle",
            "At both ends; the larger counts.",
            FROM_ZERO,
        )
        .only_if("#door", ROLL_UP),
        Question::new(
            "#swing.panel_thickness",
            "Swing-up: thickness of the panel",
            "With frame, handle and bracing; the largest counts.",
            SIZE,
        )
        .only_if("#door", SWING_UP),
        Question::new(
            "#swing.panel_height",
            "Swing-up: height of the panel",
            "Lower edge to upper edge.",
            SIZE,
        )
        .only_if("#door", SWING_UP),
        Question::new(
            "#swing.track_height",
            "Swing-up: floor to the track",
            "To the middle of its rollers, at both ends of both tracks; the lowest counts.",
            SIZE,
        )
        .only_if("#door", SWING_UP),
        Question::new(
            "#swing.track_offset",
            "Swing-up: track beside the opening",
            "From the edge of the opening to the middle of the track.",
            FROM_ZERO,
        )
        .only_if("#door", SWING_UP),
        Question::new(
            "#swing.track_section",
            "Swing-up: size of the track with its brackets",
            "The larger of width and height.",
            SIZE,
        )
        .only_if("#door", SWING_UP),
        Question::new(
            "garage.door.leaf_thickness",
            "Side-hinged: thickness of a leaf",
            "With handles and bars; the largest counts.",
            SIZE,
        )
        .only_if("#door", SIDE_HINGED),
        Question::new(
            "garage.door.inward",
            "Side-hinged: does it open into the room?",
            "Yes or no.",
            Kind::YesNo,
        )
        .only_if("#door", SIDE_HINGED),
        Question::new(
            "garage.door.opens",
            "Side-hinged: how far it opens",
            "90 deg: square to the wall.",
            Kind::NotNegative(crate::units::Kind::Angle),
        )
        .only_if("#door", SIDE_HINGED),
        Question::new(
            "#open_lowest",
            "Door OPEN: floor to its lowest point inside",
            "Run it fully open, block it, then look along it from both sides: seal, handle, strut, \
             bracket, rope. The lowest of all counts. It is compared with the figures above.",
            SIZE,
        )
        .only_if("#door", &["sectional", "roll-up", "swing-up"]),
    ],
    repeat: None,
};

const TROLLEY: &[&str] = &["trolley"];
const WALL: &[&str] = &["wall-mounted"];

const fn trolley(key: &'static str, what: &'static str, how: &'static str, kind: Kind) -> Question {
    Question::new(key, what, how, kind).only_if("#opener", TROLLEY)
}

const fn wall(key: &'static str, what: &'static str, how: &'static str, kind: Kind) -> Question {
    Question::new(key, what, how, kind).only_if("#opener", WALL)
}

pub(super) const OPENER: Section = Section {
    id: "opener",
    title: "The opener",
    says: "Trolley: a rail under the ceiling with a motor at its end. Wall-mounted: a motor beside \
           the door on the shaft.",
    questions: &[
        Question::new(
            "#opener",
            "Kind of opener",
            "None: the door is moved by hand.",
            Kind::Choice(&[("none", ""), ("trolley", ""), ("wall-mounted", "")]),
        ),
        trolley(
            "garage.opener.x",
            "Trolley: rail to the right of the door's middle",
            "To the rail's middle; with a minus to the left.",
            PLACE,
        ),
        trolley(
            "garage.opener.rail_bottom",
            "Trolley: floor to the rail's underside",
            "At both ends; the lower counts.",
            SIZE,
        ),
        trolley(
            "garage.opener.rail_width",
            "Trolley: rail, size across",
            "With chain and brackets.",
            SIZE,
        ),
        trolley(
            "garage.opener.rail_depth",
            "Trolley: rail, size up and down",
            "With chain and brackets.",
            SIZE,
        ),
        trolley(
            "garage.opener.rail_length",
            "Trolley: door wall to the motor",
            "Along the rail.",
            SIZE,
        ),
        trolley(
            "garage.opener.head_width",
            "Trolley: motor, size across",
            "With its lamps and covers.",
            SIZE,
        ),
        trolley(
            "garage.opener.head_depth",
            "Trolley: motor, size into the room",
            "With its lamps and covers.",
            SIZE,
        ),
        trolley(
            "garage.opener.head_height",
            "Trolley: motor, size up and down",
            "With its lamps and covers.",
            SIZE,
        ),
        trolley(
            "garage.opener.head_bottom",
            "Trolley: floor to the motor's underside",
            "At its lowest place.",
            SIZE,
        ),
        trolley(
            "garage.opener.arm_drop",
            "Trolley: arm below the rail while the door runs",
            "Stop the door half-way; rail's underside down to the lowest of arm and trolley.",
            FROM_ZERO,
        ),
        trolley(
            "garage.opener.cord_drop",
            "Trolley: release cord below the rail",
            "As it will hang while a vehicle is up; the cord must stay in reach of a hand.",
            FROM_ZERO,
        ),
        wall(
            "garage.opener.side",
            "Wall-mounted: which side",
            "As seen from the door, looking in.",
            Kind::Choice(&[("left", "Left"), ("right", "Right")]),
        ),
        wall(
            "garage.opener.width",
            "Wall-mounted: size across",
            "With its lock and covers.",
            SIZE,
        ),
        wall(
            "garage.opener.depth",
            "Wall-mounted: how far it stands out",
            "From the wall into the room.",
            SIZE,
        ),
        wall(
            "garage.opener.height",
            "Wall-mounted: size up and down",
            "With cables and covers.",
            SIZE,
        ),
        wall(
            "garage.opener.bottom",
            "Wall-mounted: floor to its underside",
            "At its lowest place.",
            FROM_ZERO,
        ),
        wall(
            "garage.opener.beside",
            "Wall-mounted: beside the opening",
            "From the edge of the opening to its nearer side.",
            FROM_ZERO,
        ),
    ],
    repeat: None,
};

//! The fields of the overhead door and of what moves it.

use super::super::now::Now;
use super::{Entry, Fallback, Form, Row, What, angle, field, length, variant, words};
use crate::units::Length;

/// The doors.
pub(super) const DOORS: &[Form] = &[
    Form {
        label: "Sectional",
        is: |now| now.is("Sectional"),
        rows: &[
            variant("layout", "Tracks", LAYOUTS),
            length("panel_thickness", "Panel thickness").hint("Of one panel, at its edge."),
            length("panel_height", "Panel height").hint("Of one panel, hinge to hinge."),
            length("track_radius", "Track radius")
                .hint("Of the track's curve, to the middle of the rollers."),
            length("track_offset", "Track offset")
                .hint("From the edge of the opening out to the middle of the track."),
            length("track_section", "Track section").hint("Width and depth, brackets included."),
            length("track_length", "Level track length")
                .hint("From the end of the curve to the track's far end."),
            Row::new("spring", "Spring shaft", What::Maybe(SPRING, spring)),
            length("top_bracket", "Top bracket")
                .hint("How far bracket and strut stand out from the top panel, into the room."),
        ],
        fresh: sectional,
    },
    Form {
        label: "Roll-up",
        is: |now| now.is("RollUp"),
        rows: &[
            length("curtain_thickness", "Curtain thickness"),
            length("coil_diameter", "Coil diameter").hint("With the curtain rolled up."),
            length("coil_height", "Coil axis height").hint("Of the drum's axis, from the floor."),
            length("coil_out", "Coil axis from wall")
                .hint("Of the drum's axis, from the door wall."),
        ],
        fresh: |now| {
            let diameter = now.pick(16.0, 400.0);
            format!(
                "RollUp(curtain_thickness: {}, coil_diameter: {}, coil_height: {}, coil_out: {})",
                now.say(1.0, 25.0),
                now.length(diameter),
                now.length(opening(now) + diameter * 0.5 + now.pick(2.0, 50.0)),
                now.length(diameter * 0.5 + now.pick(1.0, 25.0)),
            )
        },
    },
    Form {
        label: "One-piece swing-up",
        is: |now| now.is("SwingUp"),
        rows: &[
            length("panel_thickness", "Panel thickness"),
            length("panel_height", "Panel height").hint("The whole panel."),
            length("track_height", "Level track height")
                .hint("From the floor to the level track that the top edge runs in."),
            length("track_offset", "Track offset")
                .hint("From the edge of the opening out to the middle of the track."),
            length("track_section", "Track section").hint("Width and depth, brackets included."),
        ],
        fresh: |now| {
            let height = now.length(opening(now));
            format!(
                "SwingUp(panel_thickness: {}, panel_height: {height}, track_height: {}, \
                 track_offset: {}, track_section: {})",
                now.keep(&["panel_thickness", "leaf_thickness"], 2.0, 50.0),
                now.length(opening(now) + now.pick(3.0, 75.0)),
                now.keep(&["track_offset"], 3.5, 90.0),
                now.keep(&["track_section"], 3.0, 75.0),
            )
        },
    },
    Form {
        label: "Side-hinged",
        is: |now| now.is("SideHinged"),
        rows: &[
            length("leaf_thickness", "Leaf thickness"),
            field("inward", "Opens into the bay", Entry::Flag),
            angle("opens", "Opens by").hint("From shut to fully open."),
        ],
        fresh: |now| {
            format!(
                "SideHinged(leaf_thickness: {}, inward: false, opens: \"90 deg\")",
                now.keep(&["panel_thickness", "leaf_thickness"], 2.0, 50.0)
            )
        },
    },
    Form {
        label: "None",
        is: |now| now.is("None"),
        rows: &[],
        fresh: |_| "None".into(),
    },
];

const LAYOUTS: &[Form] = &[
    Form {
        label: "Standard",
        is: |now| now.is("Standard"),
        rows: &[],
        fresh: |_| "Standard".into(),
    },
    Form {
        label: "Low headroom",
        is: |now| now.is("LowHeadroom"),
        rows: &[],
        fresh: |_| "LowHeadroom".into(),
    },
    Form {
        label: "High lift",
        is: |now| now.is("HighLift"),
        rows: &[length("extra", "Extra lift")
            .hint("How far the upright track goes on above the opening before its curve.")],
        fresh: |now| format!("HighLift(extra: {})", now.say(24.0, 600.0)),
    },
    Form {
        label: "Vertical lift",
        is: |now| now.is("VerticalLift"),
        rows: &[],
        fresh: |_| "VerticalLift".into(),
    },
];

const SPRING: &[Row] = &[
    length("height", "Spring shaft height").hint("From the floor to the shaft's middle."),
    length("out", "Spring shaft from wall").hint("From the door wall to the shaft's middle."),
    length("diameter", "Spring diameter").hint("The widest part on the shaft."),
];

fn opening(now: &Now<'_>) -> Length {
    now.length_of("garage.opening.height")
        .unwrap_or_else(|| now.pick(84.0, 2150.0))
}

fn spring(now: &Now<'_>) -> String {
    format!(
        "(height: {}, out: {}, diameter: {})",
        now.length(opening(now) + now.pick(14.0, 350.0)),
        now.say(5.0, 125.0),
        now.say(6.0, 150.0)
    )
}

fn sectional(now: &Now<'_>) -> String {
    let opening = opening(now);
    let panel = now.pick(24.0, 610.0);
    let panels = (opening / panel).ceil().max(1.0);
    format!(
        "Sectional(layout: Standard, panel_thickness: {}, panel_height: {}, track_radius: {}, \
         track_offset: {}, track_section: {}, track_length: {}, spring: {}, top_bracket: {})",
        now.keep(&["panel_thickness", "leaf_thickness"], 2.0, 50.0),
        now.length_up(opening * (1.0 / panels)),
        now.say(15.0, 380.0),
        now.keep(&["track_offset"], 3.5, 90.0),
        now.keep(&["track_section"], 3.0, 75.0),
        now.length(opening + now.pick(6.0, 150.0)),
        spring(now),
        now.say(3.0, 75.0)
    )
}

/// Which side.
pub(super) const SIDES: &[(&str, &str)] = &[("Left", "left"), ("Right", "right")];

/// What moves the door.
pub(super) const OPENERS: &[Form] = &[
    Form {
        label: "Ceiling opener",
        is: |now| now.is("Trolley"),
        rows: &[
            length("x", "Rail to the right").hint("From the middle of the opening to the rail."),
            length("rail_bottom", "Rail underside").hint("From the floor."),
            length("rail_width", "Rail width"),
            length("rail_depth", "Rail depth").hint("Its upright size."),
            length("rail_length", "Rail length").hint("From the door wall to the head unit."),
            length("head_width", "Head unit width").hint("Across the bay."),
            length("head_depth", "Head unit depth").hint("Into the bay."),
            length("head_height", "Head unit height").hint("Its upright size, with its light."),
            length("head_bottom", "Head unit underside").hint("From the floor."),
            length("arm_drop", "Arm below the rail")
                .hint("How far the arm hangs while the door runs."),
            length("cord_drop", "Cord below the rail")
                .hint("The release cord as it is while the vehicle is up; 0 when tied up."),
        ],
        fresh: |now| {
            let head = opening(now) + now.pick(15.0, 370.0);
            format!(
                "Trolley(x: {}, rail_bottom: {}, rail_width: {rail}, rail_depth: {rail}, \
                 rail_length: {}, head_width: {}, head_depth: {}, head_height: {}, \
                 head_bottom: {}, arm_drop: {drop}, cord_drop: {drop})",
                now.zero(),
                now.length(head + now.pick(3.0, 80.0)),
                now.length(opening(now) + now.pick(24.0, 600.0)),
                now.say(10.0, 250.0),
                now.say(14.0, 350.0),
                now.say(8.0, 200.0),
                now.length(head),
                rail = now.say(2.0, 50.0),
                drop = now.say(6.0, 150.0),
            )
        },
    },
    Form {
        label: "On the wall",
        is: |now| now.is("WallMounted"),
        rows: &[
            words("side", "Opener's side", SIDES),
            length("width", "Opener width").hint("Across the bay."),
            length("depth", "Opener depth").hint("Into the bay."),
            length("height", "Opener height").hint("Its upright size."),
            length("bottom", "Opener underside").hint("From the floor."),
            length("beside", "Gap beside the opening").hint("From the opening's edge to the unit."),
        ],
        fresh: |now| {
            format!(
                "WallMounted(side: Right, width: {small}, depth: {small}, height: {}, bottom: {}, \
                 beside: {small})",
                now.say(18.0, 450.0),
                now.length(opening(now) + now.pick(3.0, 80.0)),
                small = now.say(8.0, 200.0),
            )
        },
    },
    Form {
        label: "None",
        is: |now| now.is("None"),
        rows: &[],
        fresh: |_| "None".into(),
    },
];

/// The door as the policy may hold it.
pub(super) const HELD: (Entry, Fallback) = (
    Entry::Words(&[("Shut", "shut"), ("Open", "open")]),
    Fallback::Open,
);

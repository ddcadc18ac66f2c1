//! Which door does the garage have, and what moves it?

use super::all;
use super::fields::{Fields, record};
use super::readers::{Flag, Read, angle, custom, not_negative, place, rec, size, variant, words};
use crate::bay::{
    Door, Opener, RollUpDoor, SectionalDoor, Side, SideHingedDoor, SpringShaft, SwingUpDoor,
    TrackLayout, TrolleyOpener, WallOpener,
};

/// Reads a door.
pub(super) fn door() -> impl Read<Out = Door> {
    custom("Sectional(..)", |cx, node| {
        let known = ["None", "Sectional", "RollUp", "SwingUp", "SideHinged"];
        match variant(cx, node, "a kind of door", &known)? {
            "Sectional" => record(cx, node, "the sectional door", sectional).map(Door::Sectional),
            "RollUp" => record(cx, node, "the roll-up door", roll_up).map(Door::RollUp),
            "SwingUp" => record(cx, node, "the swing-up door", swing_up).map(Door::SwingUp),
            "SideHinged" => {
                record(cx, node, "the side-hinged door", side_hinged).map(Door::SideHinged)
            }
            _ => Some(Door::None),
        }
    })
}

fn sectional(f: &Fields<'_>) -> Option<SectionalDoor> {
    let read = all!(SectionalDoor {
        layout: f.need("layout", &layout()),
        panel_thickness: f.need("panel_thickness", &size()),
        panel_height: f.need("panel_height", &size()),
        track_radius: f.need("track_radius", &size()),
        track_offset: f.need("track_offset", &not_negative()),
        track_section: f.need("track_section", &size()),
        track_length: f.need("track_length", &not_negative()),
        spring: f.maybe("spring", &rec("the spring shaft", spring)),
        top_bracket: f.need("top_bracket", &not_negative()),
    })?;
    if read.track_radius * 2.0 <= read.panel_thickness {
        f.error(
            "track_radius",
            "the track turns tighter than the panel is thick",
            "expected more than half the panel's thickness",
            "measure the radius of the track's curve, for example \"15 in\"",
        );
        return None;
    }
    Some(read)
}

fn layout() -> impl Read<Out = TrackLayout> {
    custom("Standard", |cx, node| {
        let known = ["Standard", "LowHeadroom", "HighLift", "VerticalLift"];
        match variant(cx, node, "a track layout", &known)? {
            "LowHeadroom" => Some(TrackLayout::LowHeadroom),
            "VerticalLift" => Some(TrackLayout::VerticalLift),
            "HighLift" => record(cx, node, "the high-lift track", |f| {
                all!(TrackLayout::HighLift {
                    extra: f.need("extra", &size()),
                })
            }),
            _ => Some(TrackLayout::Standard),
        }
    })
}

fn spring(f: &Fields<'_>) -> Option<SpringShaft> {
    all!(SpringShaft {
        height: f.need("height", &size()),
        out: f.need("out", &not_negative()),
        diameter: f.need("diameter", &size()),
    })
}

fn roll_up(f: &Fields<'_>) -> Option<RollUpDoor> {
    all!(RollUpDoor {
        curtain_thickness: f.need("curtain_thickness", &size()),
        coil_diameter: f.need("coil_diameter", &size()),
        coil_height: f.need("coil_height", &size()),
        coil_out: f.need("coil_out", &not_negative()),
    })
}

fn swing_up(f: &Fields<'_>) -> Option<SwingUpDoor> {
    all!(SwingUpDoor {
        panel_thickness: f.need("panel_thickness", &size()),
        panel_height: f.need("panel_height", &size()),
        track_height: f.need("track_height", &size()),
        track_offset: f.need("track_offset", &not_negative()),
        track_section: f.need("track_section", &size()),
    })
}

fn side_hinged(f: &Fields<'_>) -> Option<SideHingedDoor> {
    all!(SideHingedDoor {
        leaf_thickness: f.need("leaf_thickness", &size()),
        inward: f.need("inward", &Flag),
        opens: f.need("opens", &angle(0.0, 270.0)),
    })
}

/// Reads an opener.
pub(super) fn opener() -> impl Read<Out = Opener> {
    custom("None", |cx, node| {
        match variant(
            cx,
            node,
            "a kind of opener",
            &["None", "Trolley", "WallMounted"],
        )? {
            "Trolley" => record(cx, node, "the trolley opener", trolley).map(Opener::Trolley),
            "WallMounted" => {
                record(cx, node, "the wall-mounted opener", wall).map(Opener::WallMounted)
            }
            _ => Some(Opener::None),
        }
    })
}

fn trolley(f: &Fields<'_>) -> Option<TrolleyOpener> {
    all!(TrolleyOpener {
        x: f.need("x", &place()),
        rail_bottom: f.need("rail_bottom", &size()),
        rail_width: f.need("rail_width", &size()),
        rail_depth: f.need("rail_depth", &size()),
        rail_length: f.need("rail_length", &size()),
        head_width: f.need("head_width", &size()),
        head_depth: f.need("head_depth", &size()),
        head_height: f.need("head_height", &size()),
        head_bottom: f.need("head_bottom", &size()),
        arm_drop: f.need("arm_drop", &not_negative()),
        cord_drop: f.need("cord_drop", &not_negative()),
    })
}

/// Left or right.
pub(super) fn side() -> impl Read<Out = Side> {
    words("a side", &[("Left", Side::Left), ("Right", Side::Right)])
}

fn wall(f: &Fields<'_>) -> Option<WallOpener> {
    all!(WallOpener {
        side: f.need("side", &side()),
        width: f.need("width", &size()),
        depth: f.need("depth", &size()),
        height: f.need("height", &size()),
        bottom: f.need("bottom", &not_negative()),
        beside: f.need("beside", &not_negative()),
    })
}

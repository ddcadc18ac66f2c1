//! The overhead door and what moves it.

use crate::units::{Angle, Length};

/// The overhead door.
#[derive(Debug, Clone, PartialEq)]
pub enum Door {
    /// No door.
    None,
    /// Hinged panels that run up and back on tracks.
    Sectional(SectionalDoor),
    /// A curtain that rolls onto a drum above the opening.
    RollUp(RollUpDoor),
    /// One stiff panel: its top edge runs back along level tracks while its bottom edge climbs
    /// the jamb.
    SwingUp(SwingUpDoor),
    /// Two leaves hinged at the jambs.
    SideHinged(SideHingedDoor),
}

/// How the tracks of a sectional door run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TrackLayout {
    /// Curve starts at the top of the opening.
    Standard,
    /// Double tracks: the level run lies low over the opening.
    LowHeadroom,
    /// The vertical run goes on above the opening before the curve.
    HighLift {
        /// Extra vertical run above the opening.
        extra: Length,
    },
    /// No level run: the door stands upright above the opening when open.
    VerticalLift,
}

/// A sectional door and its tracks.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionalDoor {
    /// How the tracks run.
    pub layout: TrackLayout,
    /// Panel thickness.
    pub panel_thickness: Length,
    /// Panel height, hinge to hinge. The door has as many as cover the opening.
    pub panel_height: Length,
    /// Radius of the track's curve, on the middle of the panel's thickness.
    pub track_radius: Length,
    /// How far each track's middle lies outside the opening's edge.
    pub track_offset: Length,
    /// Width and depth of the track's section, brackets included.
    pub track_section: Length,
    /// Length of the level track, from the end of the curve.
    pub track_length: Length,
    /// Springs and shaft over the opening.
    pub spring: Option<SpringShaft>,
    /// How far the top bracket and strut stand proud of the top panel, toward the bay.
    pub top_bracket: Length,
}

/// Springs and their shaft above the opening, as one round bar across it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpringShaft {
    /// Height of the shaft's middle above the floor.
    pub height: Length,
    /// Distance of the shaft's middle from the door wall.
    pub out: Length,
    /// Diameter of the springs with their fittings.
    pub diameter: Length,
}

/// A curtain on a drum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollUpDoor {
    /// Thickness of the curtain.
    pub curtain_thickness: Length,
    /// Diameter of the drum with the curtain rolled up.
    pub coil_diameter: Length,
    /// Height of the drum's axis above the floor.
    pub coil_height: Length,
    /// Distance of the drum's axis from the door wall.
    pub coil_out: Length,
}

/// One stiff panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwingUpDoor {
    /// Panel thickness.
    pub panel_thickness: Length,
    /// Panel height.
    pub panel_height: Length,
    /// Height of the level track above the floor (where the top edge runs).
    pub track_height: Length,
    /// How far each track's middle lies outside the opening's edge.
    pub track_offset: Length,
    /// Width and depth of the track's section.
    pub track_section: Length,
}

/// Two leaves hinged at the jambs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SideHingedDoor {
    /// Leaf thickness.
    pub leaf_thickness: Length,
    /// True when the leaves open into the bay.
    pub inward: bool,
    /// How far they open.
    pub opens: Angle,
}

/// What moves the door.
#[derive(Debug, Clone, PartialEq)]
pub enum Opener {
    /// Nothing: moved by hand.
    None,
    /// A rail and a head unit under the ceiling.
    Trolley(TrolleyOpener),
    /// A unit beside the door, on the shaft.
    WallMounted(WallOpener),
}

/// A ceiling opener: a rail from over the door to a head unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrolleyOpener {
    /// Where the rail runs, across.
    pub x: Length,
    /// Height of the rail's underside above the floor.
    pub rail_bottom: Length,
    /// Width of the rail.
    pub rail_width: Length,
    /// Depth (vertical size) of the rail.
    pub rail_depth: Length,
    /// Distance from the door wall to the far end of the rail, where the head unit starts.
    pub rail_length: Length,
    /// Head unit: size across.
    pub head_width: Length,
    /// Head unit: size into the bay.
    pub head_depth: Length,
    /// Head unit: vertical size.
    pub head_height: Length,
    /// Height of the head unit's underside above the floor.
    pub head_bottom: Length,
    /// How far the arm from trolley to door hangs below the rail while the door runs.
    pub arm_drop: Length,
    /// How far the hand-release cord hangs below the rail; zero when tied up.
    pub cord_drop: Length,
}

/// Which side of the bay.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Toward -x.
    Left,
    /// Toward +x.
    Right,
}

/// An opener on the wall beside the door.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallOpener {
    /// Which side of the opening.
    pub side: Side,
    /// Size across.
    pub width: Length,
    /// Size into the bay.
    pub depth: Length,
    /// Vertical size.
    pub height: Length,
    /// Height of its underside above the floor.
    pub bottom: Length,
    /// Gap between the opening's edge and the unit.
    pub beside: Length,
}

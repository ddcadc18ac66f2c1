//! The two-post lift: columns, tie, carriages, arms, pads, locks, and where it stands.

use super::{Anchor, Side};
use crate::units::{Angle, Current, Length, Mass, Power, Pressure, Voltage, Volume};

/// A two-post lift and its place in the bay.
///
/// "Front" is the side that points into the bay (+y), where a nose-in vehicle has its nose;
/// "left" is -x. Each post has its own mirrored frame: *inward* points to the other post.
#[derive(Debug, Clone, PartialEq)]
pub struct Lift {
    /// What it is called.
    pub name: String,
    /// Distance of the post line (the middle of both columns) from the door wall.
    pub post_line: Length,
    /// How far the middle between the posts lies to the right of the middle of the door opening.
    pub across: Length,
    /// The columns, both alike.
    pub column: Column,
    /// Spacing between the columns' nearest faces, after any rotation.
    pub spacing: Length,
    /// Width between the carriages and parked arms that a vehicle drives through.
    pub drive_through: Length,
    /// The plate under each column.
    pub base_plate: BasePlate,
    /// Motor, pump and tank on one of the columns.
    pub power_unit: Option<PowerUnit>,
    /// What ties the columns together.
    pub tie: Tie,
    /// The carriages, both alike.
    pub carriage: Carriage,
    /// The four arms, by [`Corner::index`].
    pub arms: [Arm; 4],
    /// The pads.
    pub pad: Pad,
    /// Full travel of the carriage.
    pub travel: Length,
    /// Travels of the locks, lowest first; lock 1 is the first.
    pub locks: Vec<Length>,
    /// Climb past a lock before its latches drop in.
    pub set_overtravel: Length,
    /// Climb from a lock before its latches can be pulled.
    pub release_overtravel: Length,
    /// What the operator and coasting add to every stop.
    pub overshoot: Length,
    /// How far the carriages may be out of level.
    pub side_mismatch: Length,
    /// Where the centre of gravity may lie, from the post line.
    pub cg_window: Option<CgWindow>,
    /// Rated capacity.
    pub capacity: Mass,
    /// What one arm may carry, where the manual says.
    pub arm_capacity: Option<Mass>,
    /// What the two pads of one post may carry together, where the manual says; else half of the
    /// rated capacity is taken, which is for both posts.
    pub post_capacity: Option<Mass>,
    /// The motor.
    pub motor: Option<Motor>,
    /// Hydraulic cylinders and tank.
    pub hydraulics: Option<Hydraulics>,
    /// How high shims may be under a plate, where the manual says.
    pub shim_limit: Option<Length>,
    /// How far a column may be out of plumb over its whole height, where the manual says.
    pub plumb_limit: Option<Length>,
    /// How far the posts may stand from these figures, beyond their ±. No file says it: it is known
    /// of posts that were measured where they stand.
    pub posts_off: PostsOff,
    /// What is delivered.
    pub shipping_mass: Option<Mass>,
    /// The pieces it is delivered in.
    pub pieces: Vec<Piece>,
    /// Price in the file's own words.
    pub price: Option<String>,
    /// What the maker's manual asks of the slab.
    pub manual: SlabDemand,
    /// What other sources (an advertisement) say of the same.
    pub advertised: SlabDemand,
}

/// The four corners of the lift. "Front" is +y, "left" is -x.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Corner {
    /// Front left: +y, -x.
    FrontLeft,
    /// Front right: +y, +x.
    FrontRight,
    /// Rear left: -y, -x.
    RearLeft,
    /// Rear right: -y, +x.
    RearRight,
}

impl Corner {
    /// All four, in index order.
    pub const ALL: [Self; 4] = [
        Self::FrontLeft,
        Self::FrontRight,
        Self::RearLeft,
        Self::RearRight,
    ];

    /// 0 to 3, in the order of [`Corner::ALL`].
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }

    /// The words a person uses.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::FrontLeft => "front left",
            Self::FrontRight => "front right",
            Self::RearLeft => "rear left",
            Self::RearRight => "rear right",
        }
    }

    /// Which post it belongs to.
    #[must_use]
    pub const fn side(self) -> Side {
        match self {
            Self::FrontLeft | Self::RearLeft => Side::Left,
            Self::FrontRight | Self::RearRight => Side::Right,
        }
    }

    /// True for the two corners at +y.
    #[must_use]
    pub const fn is_front(self) -> bool {
        matches!(self, Self::FrontLeft | Self::FrontRight)
    }
}

/// How far any point of the lift may be from where a plumb, square lift has it, either way, at any
/// travel.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PostsOff {
    /// Across the bay.
    pub across: Length,
    /// Into the bay.
    pub along: Length,
    /// In height.
    pub up: Length,
    /// How far what is carried goes sideways, across the bay, on leaning columns and for want of
    /// knowing the middle of the posts.
    pub carried_across: Length,
    /// The same into the bay.
    pub carried_along: Length,
    /// What of that is lean, and goes with the travel; none of plumb columns.
    pub leaning: Option<LeaningColumns>,
}

/// Columns that lean. Slopes are rise of the top off the foot over the height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeaningColumns {
    /// How they lean, left then right: each toward +x and toward +y.
    pub slope: [[f64; 2]; 2],
    /// How far the slopes may be off that, either way.
    pub within: [[f64; 2]; 2],
    /// The lowest and the highest that their feet may be over the floor at the post line.
    pub foot: [Length; 2],
    /// What is left of [`PostsOff::across`] and [`PostsOff::along`] without the lean.
    pub placed: [Length; 2],
    /// What is left of [`PostsOff::carried_across`] and [`PostsOff::carried_along`].
    pub set: [Length; 2],
}

/// A column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Height above the top of the base plate's underside, that is, above the floor.
    pub height: Length,
    /// Section across the bay before rotation.
    pub width: Length,
    /// Section into the bay before rotation.
    pub depth: Length,
    /// Rotation of each column about its own axis (asymmetric lifts), positive when the open
    /// side turns toward the front (+y); mirrored on the other side.
    pub turned: Angle,
}

/// The plate under a column and the pattern of its anchors.
#[derive(Debug, Clone, PartialEq)]
pub struct BasePlate {
    /// Size across.
    pub width: Length,
    /// Size into the bay.
    pub depth: Length,
    /// Thickness.
    pub thickness: Length,
    /// How far the plate's middle lies inward of the column's middle.
    pub inward: Length,
    /// Anchor holes from the plate's middle: inward, front.
    pub anchors: Vec<[Length; 2]>,
    /// Anchor diameter.
    pub anchor_diameter: Option<Length>,
    /// Anchor embedment.
    pub anchor_embedment: Option<Length>,
    /// What is known of the anchors beside their size.
    pub anchor: Option<Anchor>,
    /// Least age of the concrete, in days, that the anchors' maker asks before they are set.
    pub anchor_age_days: Option<f64>,
}

/// Motor, pump and tank on the outer face of one column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowerUnit {
    /// On which column.
    pub side: Side,
    /// Size outward from the column.
    pub width: Length,
    /// Size into the bay.
    pub depth: Length,
    /// Vertical size.
    pub height: Length,
    /// Height of its underside above the floor.
    pub bottom: Length,
}

/// What ties the columns together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tie {
    /// A beam over the vehicle.
    OverheadBeam {
        /// Height of its underside above the floor.
        underside: Length,
        /// Vertical size.
        height: Length,
        /// Size into the bay.
        width: Length,
        /// The padded bar under it that cuts the power when the vehicle meets it.
        bar: Option<ShutOffBar>,
    },
    /// A plate on the floor, driven over.
    FloorPlate {
        /// Height above the floor.
        height: Length,
        /// Size into the bay.
        width: Length,
    },
}

/// The padded shut-off bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShutOffBar {
    /// How far its underside hangs below the beam.
    pub drop: Length,
    /// Diameter of its padding.
    pub diameter: Length,
    /// Length across the bay, centred between the posts.
    pub length: Length,
}

/// A carriage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carriage {
    /// How far it stands proud of the column's inner face, inward.
    pub proud: Length,
    /// Size into the bay.
    pub depth: Length,
    /// Vertical size.
    pub height: Length,
    /// Height of its underside above the floor with the carriage down.
    pub bottom: Length,
    /// Height above the top of the base plate of the edge that marks are read at, carriage down.
    pub marked_edge: Length,
}

/// One arm. Swing 0 is the zero direction; positive swing turns away from the post line (toward
/// the front for front arms, toward the rear for rear arms).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arm {
    /// Pivot, inward from the column's middle.
    pub pivot_inward: Length,
    /// Pivot, away from the post line (toward the front for front arms, the rear for rear arms).
    pub pivot_away: Length,
    /// Zero direction: angle from inward, positive away from the post line.
    pub zero: Angle,
    /// Least swing.
    pub swing_min: Angle,
    /// Greatest swing.
    pub swing_max: Angle,
    /// Shortest reach, pivot to pad middle.
    pub shortest: Length,
    /// Longest reach, pivot to pad middle.
    pub longest: Length,
    /// Pitch of the restraint's teeth; none where it has none.
    pub tooth: Option<Angle>,
    /// Where it has no teeth: true when a restraint holds it at any swing, false when nothing holds
    /// it; none when that is not known. With teeth it has a restraint, and this says nothing more.
    pub stepless_restraint: Option<bool>,
    /// Width of the arm's section, in plan.
    pub section_width: Length,
    /// Height of the arm's section.
    pub section_height: Length,
    /// Height of the arm's underside above the floor with the carriage down.
    pub underside: Length,
}

/// The pads, all alike.
#[derive(Debug, Clone, PartialEq)]
pub struct Pad {
    /// Diameter.
    pub diameter: Length,
    /// Height of the pad's top above the floor with the carriage down, screwed down, no adapter.
    pub lowest: Length,
    /// Screw travel.
    pub screw_travel: Length,
    /// Adapter heights that come with the lift.
    pub adapters: Vec<Length>,
}

/// Where the manual lets the centre of gravity lie, from the post line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CgWindow {
    /// Farthest toward the front (+y).
    pub front: Length,
    /// Farthest toward the rear (-y), as a positive length.
    pub rear: Length,
}

/// The motor's nameplate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motor {
    /// Rated power.
    pub power: Option<Power>,
    /// Rated voltage.
    pub voltage: Option<Voltage>,
    /// Full-load current.
    pub current: Option<Current>,
    /// Phases: 1 or 3.
    pub phases: Option<Phases>,
    /// Whether its nameplate says that overload protection is in it.
    pub protected: Option<bool>,
}

/// How many phases a motor takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phases {
    /// One.
    One,
    /// Three.
    Three,
}

/// Cylinders and tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hydraulics {
    /// Bore of each cylinder.
    pub bore: Length,
    /// Stroke of each cylinder.
    pub stroke: Length,
    /// The least that the manual has the tank filled to, cylinders empty.
    pub tank_min: Option<Volume>,
    /// The most that the manual has it filled to.
    pub tank_max: Option<Volume>,
}

/// One piece of the delivery, as it is carried in.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Its name.
    pub name: String,
    /// Its mass.
    pub mass: Mass,
    /// Its longest side as it lies.
    pub length: Length,
    /// Across that.
    pub width: Length,
    /// Its height as it lies.
    pub height: Length,
    /// True for a column, or a piece that a column comes in.
    pub column: bool,
}

/// What one source asks of the slab.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SlabDemand {
    /// Least thickness.
    pub thickness: Option<Length>,
    /// Least compressive strength.
    pub strength: Option<Pressure>,
    /// Least distance of an anchor from an edge or joint.
    pub edge_distance: Option<Length>,
    /// Least embedment of an anchor.
    pub embedment: Option<Length>,
    /// Least age of the concrete, in days, before anchors are set and the lift is loaded.
    pub age_days: Option<f64>,
}

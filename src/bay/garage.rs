//! The room: walls, ceiling, floor, door opening and the things that hang or stand in it.

use super::{Door, Opener};
use crate::units::Length;

/// The room and everything in it that does not belong to the lift or the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Garage {
    /// Inside width, wall to wall, along `x`.
    pub width: Length,
    /// Inside depth, door wall to back wall, along `y`.
    pub depth: Length,
    /// The door opening in the wall at `y = 0`.
    pub opening: Opening,
    /// The underside of the roof or ceiling.
    pub ceiling: Ceiling,
    /// How the floor falls.
    pub floor: Floor,
    /// The overhead door.
    pub door: Door,
    /// What moves the door.
    pub opener: Opener,
    /// Beams, ties, ducts, lights, shelves, a second vehicle: everything else.
    pub obstacles: Vec<Obstacle>,
}

/// The door opening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// Clear width, along `x`, centred on `x = 0`.
    pub width: Length,
    /// Clear height above the floor.
    pub height: Length,
    /// How far the opening's middle lies to the right (+x) of the middle of the room's width.
    pub offset: Length,
    /// Thickness of the door wall, outward from `y = 0`.
    pub wall_thickness: Length,
}

/// Which way a ceiling slopes, a ridge or a beam runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Run {
    /// From the door to the back, along `y`.
    DoorToBack,
    /// From side to side, along `x`.
    SideToSide,
}

/// The underside of the ceiling or roof. Heights are above the floor below (see [`Floor`]).
#[derive(Debug, Clone, PartialEq)]
pub enum Ceiling {
    /// One height everywhere.
    Flat {
        /// Height above the floor.
        height: Length,
    },
    /// A plane that falls one way.
    Sloped {
        /// The way it falls.
        run: Run,
        /// Height at the door wall (door to back) or at the left wall (side to side).
        first: Length,
        /// Height at the back wall or at the right wall.
        last: Length,
    },
    /// Two planes that meet in a ridge.
    Gable {
        /// The way the ridge runs.
        ridge_along: Run,
        /// Height where the planes meet the walls.
        eaves: Length,
        /// Height of the ridge.
        ridge: Length,
        /// How far the ridge lies from the room's middle, toward +x (ridge from door to back) or
        /// toward +y (ridge from side to side).
        ridge_offset: Length,
    },
    /// Flat at different heights, one after another from the door to the back.
    Stepped {
        /// The steps in order; the first starts at the door wall.
        steps: Vec<CeilingStep>,
    },
}

/// One flat part of a stepped ceiling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CeilingStep {
    /// Distance from the door wall where this part starts.
    pub from: Length,
    /// Height of this part.
    pub height: Length,
}

/// How the floor falls. Levels are relative to `z = 0`, the floor at the post line.
#[derive(Debug, Clone, PartialEq)]
pub enum Floor {
    /// Level everywhere.
    Level,
    /// A plane through the floor at the post line's middle.
    Fall {
        /// Fall per length, 0.01 for a centimetre in a metre; never negative.
        slope: f64,
        /// The way down.
        toward: FallToward,
    },
    /// Levels taken at points; between them the nearest points' lowest or highest level is used,
    /// whichever is worse.
    Levels(Vec<FloorLevel>),
}

/// The way the floor falls.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FallToward {
    /// Toward the door (-y).
    Door,
    /// Toward the back (+y).
    Back,
    /// Toward the left wall (-x).
    Left,
    /// Toward the right wall (+x).
    Right,
}

/// The floor's level at one point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FloorLevel {
    /// Across, from the middle of the door opening, to the right.
    pub x: Length,
    /// Into the bay from the door wall.
    pub y: Length,
    /// Level above (+) or below (-) the floor at the post line.
    pub level: Length,
}

/// Something fixed in the room.
#[derive(Debug, Clone, PartialEq)]
pub struct Obstacle {
    /// Its name, without a slash.
    pub name: String,
    /// What sort of thing it is; for drawing and for wording.
    pub kind: ObstacleKind,
    /// Its size and place.
    pub shape: ObstacleShape,
    /// Whether it can be taken away, and at what cost.
    pub removable: Option<Removable>,
    /// True when it is there only at times (a second vehicle, a bench on wheels). It is collided
    /// with all the same.
    pub only_at_times: bool,
    /// How many spacings of a row its place adds up, across and along: each of them was measured.
    pub row: [usize; 2],
}

/// What sort of thing an obstacle is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ObstacleKind {
    /// A dropped beam.
    Beam,
    /// A collar tie of a roof.
    CollarTie,
    /// A duct.
    Duct,
    /// A light.
    Light,
    /// A heater.
    Heater,
    /// A fan.
    Fan,
    /// A pipe.
    Pipe,
    /// A shelf.
    Shelf,
    /// A bench.
    Bench,
    /// A post of the building.
    Post,
    /// A second vehicle beside or under the raised one.
    SecondVehicle,
    /// Anything else.
    Other,
}

/// Size and place of an obstacle. Heights are above the floor below its middle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ObstacleShape {
    /// A box, turned about the vertical.
    Box {
        /// Middle, across.
        x: Length,
        /// Middle, into the bay.
        y: Length,
        /// Height of its underside.
        bottom: Length,
        /// Size across (before turning).
        width: Length,
        /// Size into the bay (before turning).
        depth: Length,
        /// Size upward.
        height: Length,
        /// Turn about the vertical, counter-clockwise seen from above.
        turned: crate::units::Angle,
    },
    /// A round bar between two points on its axis.
    Cylinder {
        /// One end of the axis: x, y, height.
        from: [Length; 3],
        /// The other end of the axis: x, y, height.
        to: [Length; 3],
        /// Diameter.
        diameter: Length,
    },
}

/// Something that can be taken away.
#[derive(Debug, Clone, PartialEq)]
pub struct Removable {
    /// What taking it away costs, in the file's own words (`"$120"`), where given.
    pub cost: Option<String>,
}

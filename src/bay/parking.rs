//! How the vehicle stands on the lift.

use crate::units::{Angle, Length};

/// How the vehicle stands on the lift.
#[derive(Debug, Clone, PartialEq)]
pub struct Parking {
    /// Which end points into the bay.
    pub facing: Facing,
    /// What is lined up with the post line.
    pub aim: Aim,
    /// Parked offset to the right (+x) of the middle between the posts.
    pub across: Length,
    /// Parked yaw, counter-clockwise seen from above.
    pub yaw: Angle,
    /// How well the driver can repeat the place: ± along the bay.
    pub repeat_along: Length,
    /// How well the driver can repeat the place: ± across the bay.
    pub repeat_across: Length,
    /// How well the driver can repeat the heading: ±.
    pub repeat_yaw: Angle,
    /// What each pad is raised by screw and adapters above its lowest height, by
    /// [`super::Corner::index`].
    pub pad_raise: [Length; 4],
}

/// Which end points into the bay.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Facing {
    /// Nose toward the back wall (+y).
    NoseIn,
    /// Tail toward the back wall.
    TailIn,
}

/// What is lined up with the post line. Offsets are positive into the bay (+y).
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Aim {
    /// The centre of gravity, from the kerb axle loads and the named masses.
    CentreOfGravity(Length),
    /// The middle between the front and the rear lift points.
    LiftPoints(Length),
}

//! The margins asked, the trust put in each measurement, and the people underneath.

use super::Percentile;
use crate::units::Length;

/// The margins asked, the trust put in each measurement, and the people underneath.
#[derive(Debug, Clone, PartialEq)]
pub struct Policy {
    /// Margin asked between the vehicle and anything over it.
    pub over_vehicle: Length,
    /// Margin asked between the vehicle and walls or jambs beside it.
    pub beside_vehicle: Length,
    /// Margin asked between body or mirrors and the posts.
    pub beside_post: Length,
    /// Margin asked between the lift's own moving parts and the bay.
    pub lift_parts: Length,
    /// Margin asked under the shut-off bar, so that it does not trip in normal use.
    pub under_bar: Length,
    /// How far each measured dimension may be off: ±, room and door.
    pub measured_garage: Length,
    /// How far each measured dimension may be off: ±, lift.
    pub measured_lift: Length,
    /// How far each measured dimension may be off: ±, vehicle.
    pub measured_vehicle: Length,
    /// Gap at a loose pad above which nothing is called safe.
    pub loose_pad: Length,
    /// How far inside the span of the pads the centre of gravity must lie.
    pub inside_pads: Length,
    /// The door state that the policy holds; none: the headline is the worse of shut and open.
    pub door_held: Option<DoorHeld>,
    /// The people who will walk and work under the vehicle.
    pub people: Vec<Person>,
}

/// A door state that the policy holds while the vehicle is up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DoorHeld {
    /// The door stays shut while the vehicle is up.
    Shut,
    /// The door stays open while the vehicle is up.
    Open,
}

/// Someone who will walk and work under the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Person {
    /// Their name or role.
    pub name: String,
    /// Standing height with shoes and whatever they wear on the head.
    pub height: Length,
    /// The percentile that the height was taken from, with shoes and nothing on the head; none
    /// where they were measured.
    pub stature: Option<Percentile>,
}

impl Default for Policy {
    /// The project's own choices; every report prints them.
    fn default() -> Self {
        Self {
            over_vehicle: Length::mm(75.0),
            beside_vehicle: Length::mm(50.0),
            beside_post: Length::mm(50.0),
            lift_parts: Length::mm(25.0),
            under_bar: Length::mm(25.0),
            measured_garage: Length::mm(6.0),
            measured_lift: Length::mm(2.0),
            measured_vehicle: Length::mm(6.0),
            loose_pad: Length::mm(3.0),
            inside_pads: Length::mm(150.0),
            door_held: None,
            people: Vec::new(),
        }
    }
}

//! The valid bay: what a bay file means once every value in it has been read and checked.
//!
//! Nothing here knows of files. Lengths, masses and angles are typed quantities; geometry starts
//! in [`crate::solids`]. The axes are those of the whole program: right-handed, `x` to the right
//! as seen by someone standing in the door opening and looking into the bay, `y` into the bay,
//! `z` up; the origin lies on the floor, at mid-width of the door opening, in the plane of the
//! door wall's inner face. `z = 0` is the floor at the post line.

mod anchor;
mod arrangements;
mod door;
mod garage;
mod ground;
mod lift;
mod measured;
mod parking;
mod policy;
mod stature;
mod vehicle;

pub use anchor::*;
pub use arrangements::*;
pub use door::*;
pub use garage::*;
pub use ground::*;
pub use lift::*;
pub use measured::*;
pub use parking::*;
pub use policy::*;
pub use stature::*;
pub use vehicle::*;

/// Which system of units the shown lengths follow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnitSystem {
    /// Feet, inches and sixteenths.
    Imperial,
    /// Whole millimetres.
    Metric,
}

/// One garage, one lift in it, one vehicle on it: everything the study needs.
#[derive(Debug, Clone, PartialEq)]
pub struct Bay {
    /// What the person calls this bay.
    pub title: String,
    /// How lengths are shown.
    pub units: UnitSystem,
    /// What of the file is not measured, in the person's words: placeholders, and things that are
    /// there but not in the file. While anything is, no lock is called safe.
    pub not_measured: Vec<String>,
    /// The room, its ceiling, door, opener and everything fixed in it.
    pub garage: Garage,
    /// The two-post lift and where it stands.
    pub lift: Lift,
    /// The vehicle to be raised.
    pub vehicle: Vehicle,
    /// How the vehicle stands on the lift.
    pub parking: Parking,
    /// Margins, tolerances and the people who will use it.
    pub policy: Policy,
    /// What is known of the slab; none when the file says nothing.
    pub slab: Option<Slab>,
    /// What is known of the electric supply; none when the file says nothing.
    pub power: Option<PowerSupply>,
    /// What has been arranged before buying; none when the file says nothing.
    pub arrangements: Option<Arrangements>,
}

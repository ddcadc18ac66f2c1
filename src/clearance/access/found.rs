//! What is found about people: plain data, every length in metres.

use crate::bay::Side;

/// What the room leaves to people.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Access {
    /// The vehicle's front doors with the vehicle on its tyres, in the file's order.
    pub doors: Vec<DoorRoom>,
    /// Where the driver can't get out as parked: what parking farther in or out would do.
    pub shift: Option<ShiftFound>,
    /// Widths to walk through with the vehicle on its tyres.
    pub ways: Vec<Way>,
    /// Whether the garage door shuts with the vehicle on its tyres; none when there is no door.
    pub shut: Option<Shut>,
    /// The same with the vehicle turned round; none when it was not looked at.
    pub turned: Option<Turned>,
    /// The tallest person looked at.
    pub tallest_m: f64,
}

/// A front door.
#[derive(Debug, Clone, PartialEq)]
pub struct DoorRoom {
    /// Its name.
    pub name: String,
    /// On which side of the vehicle.
    pub side: Side,
    /// Its index among the vehicle's parts that open.
    pub part: usize,
    /// How far it opens with nothing in the way, radians.
    pub opens_rad: f64,
    /// With the vehicle on its tyres, carriages down and arms swung aside.
    pub down: Swing,
    /// With the vehicle about waist height, and on which lock; none when no such lock is clear.
    pub at_waist: Option<(usize, Swing)>,
}

/// How far a door opens until it nearly touches, in the worst case.
#[derive(Debug, Clone, PartialEq)]
pub struct Swing {
    /// The angle, radians.
    pub angle_rad: f64,
    /// The clear gap from the body's side to its free edge.
    pub gap_m: f64,
    /// What ends it; none when it opens all the way.
    pub meets: Option<String>,
}

/// Parking farther into the bay or out of it, within what the arms reach.
#[derive(Debug, Clone, PartialEq)]
pub struct ShiftFound {
    /// How much farther into the bay; negative is toward the door wall.
    pub along_m: f64,
    /// The least of the swings of the doors asked about, parked there.
    pub swing: Swing,
    /// The least of them about waist height there, and on which lock; none when no such lock is
    /// clear, or where it is not enough.
    pub at_waist: Option<(usize, Swing)>,
    /// True when that is enough to get out.
    pub enough: bool,
    /// The highest clear lock parked there; only worked out where it is enough.
    pub highest_clear_lock: Option<usize>,
    /// True when it is no lower than as parked now.
    pub without_loss: bool,
}

/// One place to walk through.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Where.
    pub kind: WayKind,
    /// Its least width in plan, worst case; 0 where nothing is left.
    pub width_m: f64,
    /// What it lies between.
    pub between: (String, String),
}

/// Where a way leads. Sides are the bay's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WayKind {
    /// Between the vehicle and what stands on this side of it, posts left out.
    BesideVehicle(Side),
    /// Between the vehicle and the post or its carriage.
    VehicleToPost(Side),
    /// Between the post with its power unit and what stands outside it.
    BehindPost(Side),
    /// Between the carriages, where people walk under the raised vehicle.
    BetweenPosts,
    /// Between the vehicle and what stands at the back of the bay.
    Back,
    /// Between the vehicle and the door wall, the shut door or what stands there.
    Door,
}

/// Whether the garage door shuts: stands shut with its margins, and gets there with them.
#[derive(Debug, Clone, PartialEq)]
pub struct Shut {
    /// The first pair that is short of its margin (vehicle or lift part, door part), once the door
    /// is shut or on its way; none when it shuts.
    pub meets: Option<(String, String)>,
    /// True when that pair is only short while the door runs.
    pub while_running: bool,
}

/// The vehicle turned round on the spot, on its tyres, by boxes about its parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Turned {
    /// The first pair (vehicle part, part of the room) that is short of its margin there; none
    /// when the vehicle fits.
    pub meets: Option<(String, String)>,
    /// True when it fits and the garage door runs shut with its margins kept; false when that is
    /// not shown.
    pub shuts: bool,
    /// Room from the vehicle to the shut door or the door wall.
    pub to_door_m: f64,
    /// Room from the vehicle to the back.
    pub to_back_m: f64,
}

//! What the study found: plain data, every length in metres, every lock counted from 1.

use glam::DVec3;

use super::access::Access;
use super::estimate::Estimate;
use super::uncertainty::Uncertainty;
use crate::bay::{Corner, Policy};
use crate::ground::{Figure, Section, Topic};

/// Everything the study found about one bay.
#[derive(Debug, Clone)]
pub struct Study {
    /// The governing door state: the worse of shut and open, or the one the policy holds.
    pub headline_door: DoorState,
    /// True when the policy holds that state, so that the other one was not counted.
    pub door_is_held: bool,
    /// Every lock in the governing door state, lowest first.
    pub locks: Vec<LockFinding>,
    /// The highest lock that is clear: geometry alone, worst case.
    pub highest_clear_lock: Option<usize>,
    /// The same lock, or none when there is a reason to withhold it.
    pub highest_safe_lock: Option<usize>,
    /// The highest clear lock if every dimension were exactly as written; for comparison only.
    pub nominal_clear_lock: Option<usize>,
    /// True when the highest lock the carriage can release is safe.
    pub full_rise: bool,
    /// The highest lock the carriage can release from.
    pub highest_releasable_lock: Option<usize>,
    /// What limits the rise.
    pub limit: Limit,
    /// Reasons why no lock is called safe.
    pub withheld: Vec<Withheld>,
    /// What decides beside clearance: arms, loads, slab, anchors, doors, power.
    pub sections: Vec<Section>,
    /// Checks that this version does not make, or that lack their data.
    pub unknown: Vec<Unknown>,
    /// Where to mark the column for the highest clear lock.
    pub marks: Option<Marks>,
    /// Shut, open and running side by side.
    pub doors: Doors,
    /// Pairs on the way up in the governing door state, those with the least room first.
    pub pairs: Vec<PairFinding>,
    /// Pairs already short of their margin as parked that come no nearer.
    pub tight_as_parked: Vec<PairFinding>,
    /// The lift's fixed parts against the room.
    pub standing: Vec<StandingFinding>,
    /// Parts of door and opener that stand in the ceiling as they are described; without the
    /// running door.
    pub door_in_ceiling: Vec<StandingFinding>,
    /// Whether a column can be tipped up under the ceiling.
    pub stand_up: StandUp,
    /// Arms, pads and carriages against body and drooped wheels: pairs that touch.
    pub carried: Vec<ContactFinding>,
    /// Driving in: pairs short of their margin.
    pub driving_in: Vec<PairFinding>,
    /// Whether each arm reaches its lift point, by [`Corner::index`].
    pub arms: [ArmFinding; 4],
    /// The shut-off bar, where the lift has one.
    pub bar: Option<BarFinding>,
    /// How far hood, hatch and doors open at each lock.
    pub opening_parts: Vec<OpeningFinding>,
    /// What the room leaves to people: front doors, ways, the shut overhead door.
    pub access: Access,
    /// When pads touch and tyres leave the floor.
    pub phases: PhasesFound,
    /// The vehicle's mass as known and the rating.
    pub rating: RatingFinding,
    /// The loosest pad, when four pads do not all meet their points.
    pub loose_pad: Option<(Corner, f64)>,
    /// How often each lock is clear in sampled worlds, where that was asked for.
    pub estimate: Option<Estimate>,
    /// Margins used.
    pub policy: Policy,
    /// Uncertainty used.
    pub uncertainty: Uncertainty,
}

/// A state of the overhead door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DoorState {
    /// Shut.
    Shut,
    /// Open.
    Open,
    /// Anywhere on its way.
    Running,
}

impl DoorState {
    /// One word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Shut => "shut",
            Self::Open => "open",
            Self::Running => "running",
        }
    }
}

/// The state of a lock: the first of these that applies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LockState {
    /// The pads do not yet carry the vehicle.
    NotLifting,
    /// The carriage runs out of travel before the latches can let go.
    NoRelease,
    /// The study could not decide.
    NotShown,
    /// Something touches here.
    Strikes,
    /// A margin is short, or something touches, below this lock.
    Barred,
    /// Nothing touches, but a margin is short here.
    Tight,
    /// Every margin holds all the way.
    Clear,
}

impl LockState {
    /// The words shown for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::NotLifting => "not lifting",
            Self::NoRelease => "no release",
            Self::NotShown => "not decided",
            Self::Strikes => "strikes",
            Self::Barred => "barred",
            Self::Tight => "tight",
            Self::Clear => "clear",
        }
    }
}

/// One lock.
#[derive(Debug, Clone, PartialEq)]
pub struct LockFinding {
    /// Counted from 1, lowest first.
    pub lock: usize,
    /// Carriage travel at the lock.
    pub travel_m: f64,
    /// Height of the lowest pad top with the load on the lock, above the floor at the post line.
    pub pad_height_m: f64,
    /// Its state.
    pub state: LockState,
    /// The pair that strikes here, is tight here, or bars the way below.
    pub because: Option<(String, String)>,
    /// The pair with the least room over its margin in this lock's window, among what the rise
    /// can run into; none when nothing is near.
    pub near: Option<NearFinding>,
    /// Lowest point of the body on the lock, above the highest floor under the vehicle.
    pub underbody_m: f64,
    /// Lowest point of a hanging tyre on the lock, above the highest floor under the vehicle.
    pub tyre_m: f64,
    /// Highest point that the body may reach on the lock, above the floor at the post line.
    pub top_m: f64,
    /// Whether the door may be run with the vehicle on this lock.
    pub door_may_run: bool,
}

/// Two things near each other.
#[derive(Debug, Clone, PartialEq)]
pub struct NearFinding {
    /// Name of the moving solid.
    pub moving: String,
    /// Name of the fixed solid.
    pub fixed: String,
    /// Least distance in the window, worst case, certified; 0 when they meet.
    pub clearance_m: f64,
    /// The margin asked of the pair.
    pub margin_m: f64,
    /// How far the climb goes past their first touch, when they meet and one of them climbs.
    pub overlap_m: Option<f64>,
}

/// A pair of a moving and a fixed solid.
#[derive(Debug, Clone, PartialEq)]
pub struct PairFinding {
    /// Name of the moving solid.
    pub moving: String,
    /// Name of the fixed solid.
    pub fixed: String,
    /// Which door state the fixed solid belongs to; none for what is always there.
    pub door: Option<DoorState>,
    /// The margin asked.
    pub margin_m: f64,
    /// Least distance over the way looked at, worst case, certified; 0 when they meet.
    pub clearance_m: f64,
    /// How deep they overlap where they stand or are driven in, when they meet; none for pairs of
    /// the rise.
    pub overlap_m: Option<f64>,
    /// First travel at which the margin is short; none when it never is.
    pub first_breach_m: Option<f64>,
    /// First travel at which they touch; none when they never do.
    pub first_touch_m: Option<f64>,
    /// Nearest points (moving, fixed) of the nominal solids where the margin is first short, or
    /// where they are nearest.
    pub points_m: Option<(DVec3, DVec3)>,
}

/// What limits the rise.
#[derive(Debug, Clone, PartialEq)]
pub enum Limit {
    /// Two solids.
    Pair(PairFinding),
    /// The carriage's travel: full rise is reached.
    Travel {
        /// Full travel.
        travel_m: f64,
    },
    /// The shut-off bar.
    Bar(PairFinding),
    /// There is a clear lock, but something withholds it; the reasons are listed.
    Withheld,
    /// The study could not decide about this pair.
    Undecided(PairFinding),
}

/// A reason why no lock is called safe.
#[derive(Debug, Clone, PartialEq)]
pub enum Withheld {
    /// An arm does not reach its lift point.
    ArmDoesNotReach {
        /// Which arm.
        corner: Corner,
        /// By how much at worst over the parking box.
        shortfall_m: f64,
    },
    /// A pad starts above its lift point: the arm does not go under.
    PadStartsTooHigh {
        /// Which pad.
        corner: Corner,
        /// By how much.
        excess_m: f64,
    },
    /// The vehicle weighs more than the lift is rated for.
    OverRating {
        /// Mass of the vehicle with cargo.
        mass_kg: f64,
        /// Rated capacity.
        capacity_kg: f64,
    },
    /// A fixed part of the lift does not fit where it stands.
    DoesNotStand {
        /// Name of the lift part.
        part: String,
        /// What it meets.
        meets: String,
        /// How much is short.
        shortfall_m: f64,
    },
    /// A column can't be tipped up under the ceiling.
    CannotBeStoodUp {
        /// How much is short.
        shortfall_m: f64,
    },
    /// The vehicle can't be driven in with its margins.
    CannotDriveIn {
        /// Vehicle part.
        moving: String,
        /// What it comes too near to.
        fixed: String,
        /// How much of the margin is short.
        shortfall_m: f64,
    },
    /// The file says of itself that something in it is a placeholder, or is missing: whatever was
    /// worked out is about another garage, lift or vehicle.
    NotMeasured {
        /// What, in the words of the file.
        what: Vec<String>,
    },
    /// A pad hangs loose.
    LoosePad {
        /// Which pad.
        corner: Corner,
        /// Its gap.
        gap_m: f64,
    },
    /// A margin is short as parked and stays so.
    TightAsParked {
        /// Moving solid.
        moving: String,
        /// Fixed solid.
        fixed: String,
        /// How much of the margin is short.
        shortfall_m: f64,
    },
    /// The lift's arms, pads or carriages touch the vehicle where they should not.
    CarriedPartsTouch {
        /// Lift part.
        part: String,
        /// Vehicle part.
        vehicle: String,
    },
    /// No graduation of the tape lies between latch and breach.
    NoMarkFits,
    /// A figure of a section stops.
    Ground {
        /// The section.
        topic: Topic,
        /// The figure.
        figure: Box<Figure>,
    },
}

/// A check that this version does not make, or that lacks its data.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unknown {
    /// The vehicle's mass: no axle loads are given.
    VehicleMass,
    /// Whether the columns can be tipped up past lights, door tracks and opener.
    StandUpPath,
    /// Whether columns that can't be tipped up where they stand can be tipped up under a higher
    /// part of the ceiling and moved.
    StandUpElsewhere,
    /// Some figure of this section.
    Section(Topic),
}

impl Unknown {
    /// The words shown for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::VehicleMass => "vehicle mass",
            Self::StandUpPath => "columns tipped up past lights, door tracks and opener",
            Self::StandUpElsewhere => {
                "columns tipped up under a higher part of the ceiling and moved from there"
            }
            Self::Section(topic) => topic.not_known(),
        }
    }
}

/// Where to mark the column, measured from the top of the base plate (no shims) to the carriage's
/// marked edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Marks {
    /// The lock the marks are for.
    pub lock: usize,
    /// Stop the raise here: on a graduation of the tape.
    pub stop_m: f64,
    /// Never climb above here; rounded down to a graduation. None when nothing is met in the
    /// carriage's travel.
    pub never_above_m: Option<f64>,
    /// The travel at the stop mark.
    pub stop_travel_m: f64,
}

/// The three door states.
#[derive(Debug, Clone, PartialEq)]
pub struct Doors {
    /// Door shut.
    pub shut: DoorFinding,
    /// Door open.
    pub open: DoorFinding,
    /// Door anywhere on its way, by an outer envelope of its whole travel.
    pub running: DoorFinding,
    /// Whether the door may be run with the vehicle standing on its tyres.
    pub may_run_when_down: bool,
}

/// One door state.
#[derive(Debug, Clone, PartialEq)]
pub struct DoorFinding {
    /// Which.
    pub state: DoorState,
    /// Highest clear lock in this state.
    pub highest_clear_lock: Option<usize>,
    /// The same, or none when withheld.
    pub highest_safe_lock: Option<usize>,
    /// The state of every lock.
    pub locks: Vec<LockState>,
    /// The travel at which the first margin comes short in this state; everything below it holds.
    pub first_breach_m: Option<f64>,
    /// The travel from which something could not be decided in this state.
    pub undecided_m: Option<f64>,
    /// The first pair that comes short in this state.
    pub first_short: Option<PairFinding>,
}

/// A fixed part of the lift against something in the room.
#[derive(Debug, Clone, PartialEq)]
pub struct StandingFinding {
    /// Name of the lift part.
    pub part: String,
    /// Name of the other solid.
    pub other: String,
    /// Nominal room between them; 0 when they touch.
    pub room_m: f64,
    /// Nominal overlap when they meet.
    pub overlap_m: Option<f64>,
    /// Room left in the worst case; negative by the shortfall when they may touch.
    pub worst_m: f64,
}

/// Whether a column can be tipped up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StandUp {
    /// What tipping the column up needs: the diagonal of its height and the smaller side of its
    /// section.
    pub needs_m: f64,
    /// The ceiling over the posts, lowest of both.
    pub ceiling_at_posts_m: f64,
    /// The highest ceiling in the room.
    pub highest_ceiling_m: f64,
}

/// A lift part that touches the vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct ContactFinding {
    /// Lift part.
    pub part: String,
    /// Vehicle part, or the lift part of another corner that it touches.
    pub vehicle: String,
    /// Least distance over the raise, worst case; 0 when they touch.
    pub clearance_m: f64,
}

/// One arm.
#[derive(Debug, Clone, PartialEq)]
pub struct ArmFinding {
    /// Which.
    pub corner: Corner,
    /// Reach asked of it as parked, pivot to lift point in plan.
    pub reach_m: f64,
    /// Swing asked of it as parked.
    pub swing_rad: f64,
    /// What it falls short as parked; 0 when it reaches.
    pub shortfall_m: f64,
    /// What it falls short at the worst corner of the parking box.
    pub worst_shortfall_m: f64,
    /// How far its restraint's teeth may keep the pad's middle from its lift point at the worst
    /// corner of the parking box; 0 without teeth.
    pub pad_off_m: f64,
    /// What is in the way of reaching, in words; none when it reaches.
    pub why: Option<String>,
}

/// The shut-off bar.
#[derive(Debug, Clone, PartialEq)]
pub struct BarFinding {
    /// Travel at which the vehicle trips it (touches it); none when it is not met in the travel.
    pub trips_at_m: Option<f64>,
    /// The vehicle part that meets it.
    pub by: Option<String>,
    /// What may be met before the bar trips, so that the bar would not stop it.
    pub met_before: Option<(String, String)>,
    /// Whether it is met first by the bay as it may be at its earliest for both; else it is first only where
    /// what is off hastens the one and delays the other.
    pub is_surely_before: bool,
}

/// How far a part can be opened at each lock.
#[derive(Debug, Clone, PartialEq)]
pub struct OpeningFinding {
    /// Name of the part.
    pub name: String,
    /// How far it opens when nothing is in the way, radians.
    pub opens_rad: f64,
    /// At each lock: how far it can be opened with its margin kept, radians.
    pub at_locks_rad: Vec<f64>,
}

/// When pads touch and tyres leave the floor, nominal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhasesFound {
    /// Travel at which each pad meets its lift point, by [`Corner::index`].
    pub touch_m: [f64; 4],
    /// Travel from which all pads carry.
    pub carry_m: f64,
    /// The same in the worst case: a lock below it is not lifting.
    pub carry_worst_m: f64,
    /// Travel at which the front and the rear axle's tyres leave the floor.
    pub lift_off_m: [f64; 2],
}

/// The vehicle's mass against the rating.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RatingFinding {
    /// Mass of the vehicle with cargo and without removed parts; none when not known.
    pub mass_kg: Option<f64>,
    /// Rated capacity.
    pub capacity_kg: f64,
}

//! What the answer stands on: the types of everything beside the verdict.

use schemars::JsonSchema;
use serde::Serialize;

use super::words::{CornerWord, DoorStateWord, LockStateWord};

/// One lock.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LockReport {
    /// Counted from 1, the lowest first.
    pub lock: usize,
    /// Carriage travel at the lock.
    pub travel_m: Option<f64>,
    /// Height of the lowest pad top on the lock, above the floor at the post line; rounded down.
    pub pad_height_m: Option<f64>,
    /// Its state.
    pub state: LockStateWord,
    /// Least distance of the nearest pair on the lock and in the climb to set and to leave it,
    /// worst case; rounded down; 0 when they meet; null when nothing is near.
    pub clearance_m: Option<f64>,
    /// The nearest pair: the moving solid, the fixed solid; null when nothing is near.
    pub between: Option<[String; 2]>,
    /// The margin asked of that pair.
    pub margin_m: Option<f64>,
    /// How deep the pair overlaps at worst; rounded up; null when it does not or it is not known.
    pub overlap_m: Option<f64>,
    /// The pair that strikes here, is tight here, or bars the way below; null when none does.
    pub because: Option<[String; 2]>,
    /// Lowest point of the body on the lock, above the floor at the post line; rounded down.
    pub underbody_m: Option<f64>,
    /// Lowest point of a hanging tyre on the lock; rounded down.
    pub tyre_m: Option<f64>,
    /// True where the door is shown to be free to run with the vehicle on this lock; false where it is
    /// not, or where that is not known.
    pub door_may_run: bool,
}

/// The three states of the door.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DoorsReport {
    /// Door shut.
    pub shut: DoorReport,
    /// Door open.
    pub open: DoorReport,
    /// Door anywhere on its way, by an outer envelope of its whole travel.
    pub running: DoorReport,
}

/// One state of the door.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DoorReport {
    /// The highest safe lock in this state; null when no lock is called safe.
    pub highest_safe_lock: Option<usize>,
    /// The highest clear lock in this state; null when none is.
    pub highest_clear_lock: Option<usize>,
    /// The state of every lock, lowest first.
    pub states: Vec<LockStateWord>,
    /// The first pair that comes short in this state; null when none does.
    pub first_short: Option<PairReport>,
}

/// A pair of a moving and a fixed solid.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PairReport {
    /// The solid that moves.
    pub moving: String,
    /// The solid that does not.
    pub fixed: String,
    /// The door state that the fixed solid belongs to; null for what is always there.
    pub door: Option<DoorStateWord>,
    /// The margin asked.
    pub margin_m: Option<f64>,
    /// Least distance over the way looked at, worst case; rounded down; 0 when they meet.
    pub clearance_m: Option<f64>,
    /// How deep they overlap at worst; rounded up; null when they don't or it is not known.
    pub overlap_m: Option<f64>,
    /// First carriage travel at which the margin is short; rounded down; null when it never is.
    pub first_breach_m: Option<f64>,
    /// First carriage travel at which they touch; rounded down; null when they never do.
    pub first_touch_m: Option<f64>,
    /// The nearest points, on the moving and on the fixed solid, where the margin is first short
    /// or where the two are nearest.
    pub points_m: Option<[[f64; 3]; 2]>,
}

/// A fixed part of the lift against something in the room.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StandingReport {
    /// The lift's part.
    pub part: String,
    /// The other solid.
    pub other: String,
    /// Room between them as written; rounded down; 0 when they touch.
    pub room_m: Option<f64>,
    /// How deep they overlap as written; rounded up; null when they don't.
    pub overlap_m: Option<f64>,
    /// Room left in the worst case; negative when they may touch; rounded down.
    pub worst_m: Option<f64>,
}

/// Whether a column can be tipped up.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StandUpReport {
    /// Height that tipping the column up takes; rounded up.
    pub needs_m: Option<f64>,
    /// The ceiling over the posts, the lower of both; rounded down.
    pub ceiling_at_posts_m: Option<f64>,
    /// The highest ceiling in the room; rounded down.
    pub highest_ceiling_m: Option<f64>,
}

/// A lift part that touches the vehicle where it should not.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ContactReport {
    /// The lift's part.
    pub part: String,
    /// The vehicle's part.
    pub vehicle: String,
    /// Least distance over the raise, worst case; rounded down; 0 when they touch.
    pub clearance_m: Option<f64>,
}

/// One arm.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ArmReport {
    /// Which.
    pub corner: CornerWord,
    /// Reach asked of it as parked, pivot to lift point in plan.
    pub reach_m: Option<f64>,
    /// Swing asked of it as parked.
    pub swing_rad: Option<f64>,
    /// What it falls short as parked; rounded up; 0 when it reaches; null where that hangs on what was
    /// not measured.
    pub shortfall_m: Option<f64>,
    /// What it falls short at the worst corner of the parking box; rounded up; null likewise.
    pub worst_shortfall_m: Option<f64>,
    /// What is in the way of reaching; null when it reaches.
    pub why: Option<String>,
}

/// The padded shut-off bar.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BarReport {
    /// Carriage travel at which the vehicle trips it; rounded down; null when it is not met.
    pub trips_at_m: Option<f64>,
    /// The vehicle's part that meets it.
    pub by: Option<String>,
    /// What is met before the bar trips, so that the bar would not stop it: moving, fixed.
    pub met_before: Option<[String; 2]>,
}

/// How far a part can be opened.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct OpeningReport {
    /// The part's name.
    pub name: String,
    /// How far it opens when nothing is in the way.
    pub opens_rad: Option<f64>,
    /// At each lock, lowest first: how far it can be opened with its margin kept; rounded down.
    pub at_locks_rad: Vec<Option<f64>>,
}

/// When pads touch and tyres leave the floor, as written (no uncertainty).
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PhasesReport {
    /// Carriage travel at which each pad meets its lift point: front left, front right, rear
    /// left, rear right.
    pub touch_m: [Option<f64>; 4],
    /// Carriage travel from which all pads carry; rounded up.
    pub carry_m: Option<f64>,
    /// The same in the worst case: a lock below it is not lifting.
    pub carry_worst_m: Option<f64>,
    /// Carriage travel at which the tyres of the front and of the rear axle leave the floor.
    pub lift_off_m: [Option<f64>; 2],
}

/// The vehicle's mass against the rating.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RatingReport {
    /// Mass of the vehicle with cargo and without removed parts; rounded up; null when not known.
    pub mass_kg: Option<f64>,
    /// Rated capacity; rounded down.
    pub capacity_kg: Option<f64>,
}

/// A pad that hangs loose.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LoosePadReport {
    /// Which.
    pub corner: CornerWord,
    /// Its gap; rounded up.
    pub gap_m: Option<f64>,
}

/// The margins asked.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PolicyReport {
    /// Between the vehicle and anything over it.
    pub over_vehicle_m: Option<f64>,
    /// Between the vehicle and walls or jambs beside it.
    pub beside_vehicle_m: Option<f64>,
    /// Between body or mirrors and the posts.
    pub beside_post_m: Option<f64>,
    /// Between the lift's own moving parts and the bay.
    pub lift_parts_m: Option<f64>,
    /// Under the shut-off bar.
    pub under_bar_m: Option<f64>,
    /// Gap at a loose pad above which nothing is called safe.
    pub loose_pad_m: Option<f64>,
    /// How far inside the span of the pads the centre of gravity must lie.
    pub inside_pads_m: Option<f64>,
    /// The door state that the policy holds; null when the worse of shut and open governs.
    pub door_held: Option<DoorStateWord>,
    /// The people who will walk and work under the vehicle.
    pub people: Vec<PersonReport>,
    /// Climb past a lock before its latches drop in.
    pub set_overtravel_m: Option<f64>,
    /// Climb from a lock before its latches can be pulled.
    pub release_overtravel_m: Option<f64>,
    /// What the operator and coasting add to every stop.
    pub overshoot_m: Option<f64>,
}

/// Someone who will walk and work under the vehicle.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PersonReport {
    /// Name or role.
    pub name: String,
    /// Standing height; rounded up.
    pub height_m: Option<f64>,
}

/// How far everything may be from where the file says it is; each is a plus or minus.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct UncertaintyReport {
    /// Each measured dimension of room, door and what is in the room.
    pub garage_m: Option<f64>,
    /// Each measured dimension of the lift.
    pub lift_m: Option<f64>,
    /// Each measured dimension of the vehicle.
    pub vehicle_m: Option<f64>,
    /// What is left of a twist between pads and lift points once the pads are set.
    pub loose_pad_m: Option<f64>,
    /// How far one carriage may stand above the other.
    pub mismatch_m: Option<f64>,
    /// Parked place along the bay.
    pub parking_along_m: Option<f64>,
    /// Parked place across the bay.
    pub parking_across_m: Option<f64>,
    /// Parked heading.
    pub parking_yaw_rad: Option<f64>,
}

/// Something noticed while the file was read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WarningReport {
    /// What.
    pub message: String,
    /// Where, as file:line:column; null when the whole file is meant.
    pub place: Option<String>,
    /// What to write instead.
    pub help: Option<String>,
}

/// How often each lock is clear in worlds drawn inside the uncertainty: an estimate beside the
/// worst case, never the verdict.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct EstimateReport {
    /// How many worlds were drawn.
    pub samples: usize,
    /// The seed they were drawn with.
    pub seed: u64,
    /// For each lock, lowest first.
    pub locks: Vec<LockShareReport>,
}

/// How often one lock is clear.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LockShareReport {
    /// In how many worlds it is clear in every door state that counts.
    pub clear: usize,
    /// Lower end of the 95 % Wilson score interval of the share, rounded down.
    pub low: Option<f64>,
    /// Its upper end, rounded down to stay below 1.
    pub high: Option<f64>,
}

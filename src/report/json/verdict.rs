//! The answer's types.

use schemars::JsonSchema;
use serde::Serialize;

use super::words::{DoorStateWord, LimitKind, UnitsWord, UnknownCheck, WithheldKind};

/// What made the report, and from what.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Program {
    /// The program's name.
    pub name: String,
    /// The program's version.
    pub version: String,
    /// Sixteen hex digits that stand for what went in: SHA-256, cut, of the bay file's text and every
    /// preset's, and of the day that ages are counted to where the answer is another on a later day.
    pub input_fingerprint: String,
    /// The day that ages are counted to, as `2027-11-05`: the answer holds for none before it. Null where
    /// nothing that is said hangs on a day.
    pub ages_counted_to: Option<String>,
}

/// What was studied.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Subject {
    /// The bay's title.
    pub title: String,
    /// The lift's name.
    pub lift: String,
    /// The vehicle's name.
    pub vehicle: String,
    /// The system that the text report and the sentences here show lengths in.
    pub units: UnitsWord,
}

/// The answer.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Verdict {
    /// The highest safe lock on the day that ages are counted to; null when no lock is called safe.
    pub highest_safe_lock: Option<usize>,
    /// The day from which what is said of slab and anchors holds, as `2027-11-05`: that of the first
    /// raise, where it lies ahead and the slab is counted as it is then. No lock is called safe
    /// before it. Null where all of it holds on the day that ages are counted to.
    pub holds_from: Option<String>,
    /// The highest lock that is clear by geometry alone, worst case; null when none is.
    pub highest_clear_lock: Option<usize>,
    /// The highest clear lock if every dimension were exactly as written; for comparison only,
    /// never the answer.
    pub nominal_clear_lock: Option<usize>,
    /// The highest lock that the carriage can release from.
    pub highest_releasable_lock: Option<usize>,
    /// Reasons why no lock is called safe; empty when there is none.
    pub withheld: Vec<WithheldReport>,
    /// Checks that this version does not make or that lack their data. They don't withhold the lock and are no pass.
    pub unknown: Vec<UnknownReport>,
    /// Height of the lowest pad top on the highest safe lock, above the floor at the post line;
    /// rounded down; null when no lock is safe.
    pub pad_height_m: Option<f64>,
    /// Height of the carriage's marked edge at which to stop the raise, from the top of the base
    /// plate, no shims; null when no lock is safe.
    pub stop_mark_m: Option<f64>,
    /// The same for the height never to climb above; rounded down; null when no lock is safe, or
    /// when nothing is met within the carriage's travel.
    pub never_above_m: Option<f64>,
    /// Carriage travel at the stop mark; null when no lock is safe.
    pub stop_travel_m: Option<f64>,
    /// True when the highest lock that the carriage can release from is safe.
    pub full_rise: bool,
    /// The state of the door that the answer is for.
    pub door: DoorStateWord,
    /// True when the policy holds the door in that state; false when it is the worse of shut and
    /// open.
    pub door_is_held: bool,
    /// What limits the rise.
    pub limited_by: LimitReport,
}

/// What limits the rise.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LimitReport {
    /// What sort of limit it is.
    pub kind: LimitKind,
    /// The solid that climbs; null where the limit is no pair.
    pub moving: Option<String>,
    /// The solid that it meets; null where the limit is no pair.
    pub fixed: Option<String>,
    /// The margin asked of the pair; null where the limit is no pair.
    pub margin_m: Option<f64>,
    /// First carriage travel at which the margin is short; rounded down.
    pub first_breach_m: Option<f64>,
    /// First carriage travel at which the two touch; rounded down.
    pub first_touch_m: Option<f64>,
    /// The nearest points, on the moving and on the fixed solid, where the margin is first short.
    pub points_m: Option<[[f64; 3]; 2]>,
    /// The carriage's full travel, where that is the limit.
    pub travel_m: Option<f64>,
}

/// A reason why no lock is called safe.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WithheldReport {
    /// Which reason.
    pub reason: WithheldKind,
    /// The reason in words.
    pub says: String,
    /// What would cure it.
    pub cure: String,
    /// The solids or the corner that it is about.
    pub about: Vec<String>,
    /// By how much a length is short; null where the reason is not about a length; rounded up.
    pub short_m: Option<f64>,
}

/// A check that this version does not make, or that lacks its data.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct UnknownReport {
    /// Which check.
    pub check: UnknownCheck,
    /// The check in words.
    pub says: String,
}

/// Something the caller asked.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct NeedReport {
    /// The lock asked for; null when a height was asked.
    pub lock: Option<usize>,
    /// The height under the body asked for; null when a lock was asked.
    pub underbody_m: Option<f64>,
    /// Whether it is met.
    pub met: bool,
    /// How many locks are missing, where that can be said.
    pub short_locks: Option<usize>,
    /// How much height is missing, where that can be said; rounded up.
    pub short_m: Option<f64>,
}

//! The report a program reads: the same as the text, complete, in its own versioned types.
//!
//! The types here are the promise; [`crate::clearance::findings`] stay free to change. All lengths
//! are metres and all angles radians, in the axes of [`crate::bay`]. Every number is rounded to
//! six decimals against the vehicle; what could not be worked out is null, never a default.

mod build;
mod findings;
pub(super) mod number;
mod sections;
mod verdict;
mod words;

pub use findings::*;
pub use sections::*;
pub use verdict::*;
pub use words::*;

use schemars::{JsonSchema, Schema, schema_for};
use serde::Serialize;

use super::Report;

/// The version of the layout. It goes up when a key changes its meaning or goes away.
pub const SCHEMA_VERSION: u32 = 3;

/// The report of `bayrise check --format json`. Lengths are metres, angles radians, masses
/// kilograms; locks are counted from 1, the lowest first. Numbers are rounded to six decimals
/// against the vehicle; null stands for what could not be worked out.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[schemars(title = "Bayrise check report")]
pub struct CheckReport {
    /// The version of this layout: 2.
    pub schema_version: u32,
    /// What made the report, and from what.
    pub program: Program,
    /// What was studied.
    pub bay: Subject,
    /// The answer.
    pub verdict: Verdict,
    /// What of the file is not measured, in the words of the file; empty where nothing is listed.
    /// While anything is, nothing in this report passes: no lock is clear, no door may run, no mark is
    /// given, no figure of a section holds; every number is as filed, not measured; and a list of
    /// what comes short says nothing of what is not in it.
    pub not_measured: Vec<String>,
    /// What the caller asked with --need-lock and --need-underbody, and whether it is met.
    pub needs: Vec<NeedReport>,
    /// Every lock in the governing door state, lowest first.
    pub locks: Vec<LockReport>,
    /// The three states of the door side by side.
    pub doors: DoorsReport,
    /// True where the door is shown to be free to run with the vehicle standing on its tyres; false
    /// where it is not, or where that is not known.
    pub door_may_run_when_down: bool,
    /// Pairs on the way up in the governing door state, those with the least room first.
    pub pairs: Vec<PairReport>,
    /// Pairs already short of their margin as parked that come no nearer. Null where none is found and
    /// something was not measured.
    pub tight_as_parked: Option<Vec<PairReport>>,
    /// The lift's fixed parts against the room.
    pub standing: Vec<StandingReport>,
    /// Parts of door and opener that stand in the ceiling as they are described.
    pub door_in_ceiling: Vec<StandingReport>,
    /// Whether a column can be tipped up under the ceiling.
    pub stand_up: StandUpReport,
    /// Arms, pads and carriages against body and hanging wheels: pairs that touch. Null as above.
    pub carried: Option<Vec<ContactReport>>,
    /// Driving in: pairs short of their margin. Null as above.
    pub driving_in: Option<Vec<PairReport>>,
    /// Whether each arm reaches its lift point: front left, front right, rear left, rear right.
    pub arms: Vec<ArmReport>,
    /// The padded shut-off bar; null where the lift has none.
    pub bar: Option<BarReport>,
    /// How far hood, hatch and doors open at each lock.
    pub opening_parts: Vec<OpeningReport>,
    /// When pads touch and tyres leave the floor.
    pub phases: PhasesReport,
    /// The vehicle's mass against the rating.
    pub rating: RatingReport,
    /// The loosest pad, when four pads do not all meet their points.
    pub loose_pad: Option<LoosePadReport>,
    /// What decides beside clearance, topic by topic.
    pub sections: Vec<SectionReport>,
    /// How often each lock is clear in sampled worlds; null unless asked for with --sample.
    pub estimate: Option<EstimateReport>,
    /// The margins asked.
    pub policy: PolicyReport,
    /// How far everything may be from where the file says it is.
    pub uncertainty: UncertaintyReport,
    /// What was noticed while the file was read.
    pub warnings: Vec<WarningReport>,
    /// What governs and what must be minded, whatever was found.
    pub cautions: Vec<String>,
}

impl CheckReport {
    /// From finished findings.
    #[must_use]
    pub fn new(report: &Report<'_>) -> Self {
        build::check_report(report)
    }
}

/// The JSON Schema of [`CheckReport`].
#[must_use]
pub fn schema() -> Schema {
    schema_for!(CheckReport)
}

#[cfg(test)]
mod tests;

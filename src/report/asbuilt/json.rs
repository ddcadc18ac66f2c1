//! The page for programs. Metres and radians; bay axes.

use serde::Serialize;

use super::AsBuiltReport;
use super::moves::post;
use crate::asbuilt::{COVERAGE, Planned, SIDES, State, index};
use crate::bay::PlateCorner;
use crate::report::CAUTIONS;

/// The version of the layout.
pub const SCHEMA_VERSION: u32 = 1;

/// The answer of `bayrise asbuilt --format json`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AsBuiltJson {
    /// The version of this layout: 1.
    pub schema_version: u32,
    /// The program's version.
    pub program_version: &'static str,
    /// Sixteen hex digits that stand for the bay file and its presets.
    pub input_fingerprint: String,
    /// The same for the file of readings.
    pub readings_fingerprint: String,
    /// The readings' title.
    pub title: String,
    /// The verdict in words.
    pub says: String,
    /// The highest safe lock with the posts as they stand; null while anything is open.
    pub highest_safe_lock: Option<usize>,
    /// What stands against it.
    pub findings: Vec<FindingJson>,
    /// Readings more than the posts need.
    pub spare_readings: usize,
    /// The standard deviation of unit weight; null without a spare reading.
    pub unit_deviation: Option<f64>,
    /// The posts, left first.
    pub posts: Vec<PostJson>,
    /// From LP1 to RP4 and from LP4 to RP1.
    pub diagonals_m: [f64; 2],
    /// Two standard deviations of their difference.
    pub diagonal_difference_within_m: f64,
    /// The tape readings, in the order of the file: distances, then walls.
    pub readings: Vec<ReadingJson>,
    /// What counts against the rise for the posts: across, along, up.
    pub posts_off_m: [f64; 3],
    /// What governs and what must be minded.
    pub cautions: Vec<String>,
}

/// One thing that stands against a safe lock.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingJson {
    /// stop or unknown.
    pub state: &'static str,
    /// What it is.
    pub what: String,
    /// What to do.
    pub cure: String,
}

/// One post.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PostJson {
    /// Which.
    pub post: &'static str,
    /// How far its plate's middle stands off the plan, x and y.
    pub off_m: [f64; 2],
    /// Two standard deviations of that.
    pub within_m: [f64; 2],
    /// Its turn, counter-clockwise seen from above.
    pub turn_rad: f64,
    /// Two standard deviations of that.
    pub turn_within_rad: f64,
    /// What to do, in words.
    pub to_do: String,
    /// Lean toward +x and +y, as a slope; null where it was not read.
    pub lean: [Option<f64>; 2],
    /// The corners.
    pub corners: Vec<CornerJson>,
}

/// One corner of a plate.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CornerJson {
    /// Its letters on the floor sheet.
    pub corner: &'static str,
    /// Shims there now.
    pub shims_m: f64,
    /// Shims for a plumb post; null where its plumb was not read both ways.
    pub wanted_m: Option<f64>,
}

/// One tape reading.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReadingJson {
    /// What was measured.
    pub what: String,
    /// What was read.
    pub reading_m: f64,
    /// Its ±.
    pub tolerance_m: f64,
    /// What the fit makes of it.
    pub fitted_m: f64,
    /// What it is by the plan.
    pub planned_m: f64,
    /// Its standardised residual; null where nothing checks it.
    pub standardised: Option<f64>,
    /// Its redundancy number, 0 to 1.
    pub redundancy: f64,
    /// fits, unchecked, misfit or suspect.
    pub state: &'static str,
}

impl AsBuiltJson {
    /// From a finished report.
    #[must_use]
    pub fn new(report: &AsBuiltReport<'_>) -> Self {
        let built = report.built;
        let off = built.standing.bay.lift.posts_off;
        Self {
            schema_version: SCHEMA_VERSION,
            program_version: env!("CARGO_PKG_VERSION"),
            input_fingerprint: report.fingerprint.into(),
            readings_fingerprint: report.readings_fingerprint.into(),
            title: report.measured.title.clone(),
            says: report.verdict(),
            highest_safe_lock: report.safe_lock(),
            findings: report
                .findings
                .iter()
                .map(|finding| {
                    let (what, cure) = report.says(*finding);
                    FindingJson {
                        state: if finding.stops() { "stop" } else { "unknown" },
                        what,
                        cure,
                    }
                })
                .collect(),
            spare_readings: built.spare,
            unit_deviation: built.unit,
            posts: posts(report),
            diagonals_m: built.square.diagonals_m,
            diagonal_difference_within_m: COVERAGE * built.square.difference_sd_m,
            readings: readings(report),
            posts_off_m: [off.across.m(), off.along.m(), off.up.m()],
            cautions: CAUTIONS.map(Into::into).into(),
        }
    }
}

fn posts(report: &AsBuiltReport<'_>) -> Vec<PostJson> {
    let built = report.built;
    SIDES
        .into_iter()
        .map(|side| {
            let place = &built.posts[index(side)];
            let shims = &built.shims[index(side)];
            PostJson {
                post: post(side),
                off_m: place.off_m.into(),
                within_m: (place.off_sd_m * COVERAGE).into(),
                turn_rad: place.turn_rad,
                turn_within_rad: COVERAGE * place.turn_sd_rad,
                to_do: report.move_of(place).1,
                lean: built.leans[index(side)].map(|lean| lean.map(|lean| lean.slope)),
                corners: (1..=4_u8)
                    .map(|number| {
                        let i = usize::from(number) - 1;
                        CornerJson {
                            corner: PlateCorner { side, number }.letters(),
                            shims_m: shims.now_m[i],
                            wanted_m: shims.wanted_m.map(|wanted| wanted[i]),
                        }
                    })
                    .collect(),
            }
        })
        .collect()
}

fn readings(report: &AsBuiltReport<'_>) -> Vec<ReadingJson> {
    let rows = report.built.readings.iter().zip(&report.measured.tape);
    rows.map(|(one, taken)| ReadingJson {
        what: Planned::says(taken.over),
        reading_m: one.reading_m,
        tolerance_m: one.tolerance_m,
        fitted_m: one.fitted_m,
        planned_m: one.planned_m,
        standardised: one.standardised,
        redundancy: one.checked,
        state: match one.state {
            State::Fits => "fits",
            State::Unchecked => "unchecked",
            State::Misfit => "misfit",
            State::Suspect => "suspect",
        },
    })
    .collect()
}

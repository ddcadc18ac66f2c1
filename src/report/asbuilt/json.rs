//! The page for programs. Metres and radians; bay axes.

use schemars::{JsonSchema, Schema, schema_for};
use serde::Serialize;

use super::AsBuiltReport;
use super::moves::post;
use super::square::is_square;
use super::text::{HOW_MEASURED, hangs_on, not_checked};
use crate::asbuilt::{COVERAGE, Planned, SIDES, State, WALLS, index};
use crate::bay::PlateCorner;
use crate::report::{CAUTIONS, Sayings};

/// The version of the layout.
pub const SCHEMA_VERSION: u32 = 1;

/// The answer of `bayrise asbuilt --format json`.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[schemars(title = "Bayrise as-built report")]
pub struct AsBuiltJson {
    /// The version of this layout: 1.
    pub schema_version: u32,
    /// The program's version.
    pub program_version: &'static str,
    /// Sixteen hex digits that stand for the bay file and its presets.
    pub input_fingerprint: String,
    /// The same for the file of readings.
    pub readings_fingerprint: String,
    /// The day that ages are counted to: the answer holds for none before it. Null where nothing that is
    /// said hangs on a day.
    pub ages_counted_to: Option<String>,
    /// The readings' title.
    pub title: String,
    /// The verdict in words.
    pub says: String,
    /// The highest safe lock with the posts as they stand; null while anything is open.
    pub highest_safe_lock: Option<usize>,
    /// What stands against it.
    pub findings: Vec<FindingJson>,
    /// Why the study calls no lock safe, each with its cure.
    pub withheld: Vec<String>,
    /// What of the bay file is not measured; while anything is, nothing here passes.
    pub not_measured: Vec<String>,
    /// What was not checked or is not known in full, and no pass; null where everything is.
    pub not_checked: Option<String>,
    /// The marks on the columns; null while no lock is safe.
    pub marks: Option<MarksJson>,
    /// The manual's limits.
    pub limits: LimitsJson,
    /// Readings more than the posts need.
    pub spare_readings: usize,
    /// The standard deviation of unit weight; null without a spare reading.
    pub unit_deviation: Option<f64>,
    /// How likely so much scatter is by chance, if each reading is as good as stated: under 0.01
    /// something is wrong.
    pub by_chance: f64,
    /// The posts, left first.
    pub posts: Vec<PostJson>,
    /// From LP1 to RP4 and from LP4 to RP1.
    pub diagonals_m: [f64; 2],
    /// Two standard deviations of their difference.
    pub diagonal_difference_within_m: f64,
    /// Whether the posts are square: neither ahead of the other nor turned; null where that is not
    /// known.
    pub square: Option<bool>,
    /// How far the right post stands ahead of the left one.
    pub ahead_m: f64,
    /// Two standard deviations of that.
    pub ahead_within_m: f64,
    /// How much farther apart across the bay the posts stand than by the plan.
    pub wider_m: f64,
    /// Two standard deviations of that.
    pub wider_within_m: f64,
    /// How far both feet together stand over the floor.
    pub raised_m: f64,
    /// How far the right foot stands higher than the left one; null where that is not known.
    pub right_higher_m: Option<f64>,
    /// Left, right and back wall by the readings.
    pub walls: Vec<WallJson>,
    /// The tape readings, in the order of the file: distances, then walls.
    pub readings: Vec<ReadingJson>,
    /// The most that counts against any part of the lift for the posts, the lean over a column's whole
    /// height with it: across, along, up.
    pub posts_off_m: [f64; 3],
    /// What of that counts at every height on the way up, where carriages and vehicle are taken along
    /// the columns as they lean: across, along, up.
    pub beside_lean_m: [f64; 3],
    /// What governs and what must be minded.
    pub cautions: Vec<String>,
}

/// The marks on the columns, from the top of the base plate to the carriage's marked edge.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MarksJson {
    /// Where to stop.
    pub stop_m: f64,
    /// Where never to climb above; null where nothing is met within the carriage's travel.
    pub never_above_m: Option<f64>,
    /// How they are measured.
    pub how: &'static str,
}

/// The manual's limits; null where the bay file has none.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LimitsJson {
    /// The highest stack of shims.
    pub shim_m: Option<f64>,
    /// How far a column may lean over its whole height.
    pub plumb_m: Option<f64>,
}

/// A wall of the room.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WallJson {
    /// Which.
    pub wall: &'static str,
    /// How far the readings have it off the bay file, along +x or +y.
    pub off_m: f64,
    /// As of a reading; null where nothing checks it.
    pub standardised: Option<f64>,
    /// Its redundancy number, 0 to 1.
    pub redundancy: f64,
    /// fits, unchecked, misfit or suspect.
    pub state: &'static str,
}

/// One thing that stands against a safe lock.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FindingJson {
    /// stop or unknown.
    pub state: &'static str,
    /// What it is.
    pub what: String,
    /// What to do.
    pub cure: String,
}

/// One post.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
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
    /// How far one slip of a reading that does not show can have moved the place: x and y. Null where
    /// it could be any amount, since nothing checks a reading that the place hangs on; then no lock is
    /// safe.
    pub slip_m: [Option<f64>; 2],
    /// The same of the turn.
    pub slip_turn_rad: Option<f64>,
    /// The readings that the place hangs on and that nothing checks, in words; empty where there are
    /// none.
    pub hangs_on: Vec<String>,
    /// What to do, in words.
    pub to_do: String,
    /// Lean toward +x and +y, as a slope; null where it was not read.
    pub lean: [Option<f64>; 2],
    /// Two standard deviations of that.
    pub lean_within: [Option<f64>; 2],
    /// The lean by levels and shims, where it contradicts the plumb.
    pub lean_by_levels: Option<[f64; 2]>,
    /// The thickest leaf that was felt to go in under its plate; null where nobody tried.
    pub felt_m: Option<f64>,
    /// The most that may be open under one corner of its plate while the one across from it touches;
    /// null where it was neither felt nor levelled.
    pub rock_gap_m: Option<f64>,
    /// How far that lets its column go, toward x and y either way, as a slope.
    pub rock: Option<[f64; 2]>,
    /// The corners.
    pub corners: Vec<CornerJson>,
}

/// One corner of a plate.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CornerJson {
    /// Its letters on the floor sheet.
    pub corner: &'static str,
    /// Shims there now; 0 where none are listed.
    pub shims_m: f64,
    /// Shims for a plumb post; null where its plumb was not read both ways, or where the levels
    /// contradict it or what was felt.
    pub wanted_m: Option<f64>,
    /// Two standard deviations of that.
    pub wanted_within_m: Option<f64>,
}

/// One tape reading.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
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
    /// What the tape should show once the posts are moved as told; null where nothing is to be moved, or
    /// it is not known what.
    pub after_moving_m: Option<f64>,
    /// True where the fit is without it.
    pub left_out: bool,
    /// Its standardised residual; null where nothing checks it.
    pub standardised: Option<f64>,
    /// Its redundancy number, 0 to 1; of a pair read more than once, that of their mean.
    pub redundancy: f64,
    /// fits, unchecked, misfit, suspect or differs (from the same read again).
    pub state: &'static str,
}

/// The schema of [`AsBuiltJson`].
#[must_use]
pub fn schema() -> Schema {
    schema_for!(AsBuiltJson)
}

const fn state(state: State) -> &'static str {
    match state {
        State::Fits => "fits",
        State::Unchecked => "unchecked",
        State::Misfit => "misfit",
        State::Suspect => "suspect",
        State::Differs => "differs",
    }
}

impl AsBuiltJson {
    /// From a finished report.
    #[must_use]
    pub fn new(report: &AsBuiltReport<'_>) -> Self {
        let built = report.built;
        let standing = &built.standing;
        let off = standing.bay.lift.posts_off;
        let placed = off
            .leaning
            .map_or([off.across, off.along], |leaning| leaning.placed);
        let sayings = Sayings::of(&standing.bay, report.study);
        let marks = report.study.marks.filter(|_| report.safe_lock().is_some());
        let lift = &report.planned.lift;
        Self {
            schema_version: SCHEMA_VERSION,
            program_version: env!("CARGO_PKG_VERSION"),
            input_fingerprint: report.fingerprint.into(),
            readings_fingerprint: report.readings_fingerprint.into(),
            ages_counted_to: report.day.counts.then(|| report.day.on.to_string()),
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
            withheld: sayings
                .reasons()
                .into_iter()
                .map(|(says, cure)| format!("{says} {cure}"))
                .collect(),
            not_measured: report.study.not_measured().to_vec(),
            not_checked: not_checked(report),
            marks: marks.map(|marks| MarksJson {
                stop_m: marks.stop_m,
                never_above_m: marks.never_above_m,
                how: HOW_MEASURED,
            }),
            limits: LimitsJson {
                shim_m: lift.shim_limit.map(|limit| limit.m()),
                plumb_m: lift.plumb_limit.map(|limit| limit.m()),
            },
            spare_readings: built.spare,
            by_chance: built.by_chance,
            square: is_square(report),
            ahead_m: built.square.ahead_m,
            ahead_within_m: COVERAGE * built.square.ahead_sd_m,
            wider_m: built.square.wider_m,
            wider_within_m: COVERAGE * built.square.wider_sd_m,
            raised_m: standing.raised_m,
            right_higher_m: standing.right_higher_m,
            walls: WALLS
                .iter()
                .zip(&built.walls)
                .map(|(wall, one)| WallJson {
                    wall: wall.name(),
                    off_m: one.off_m,
                    standardised: one.standardised,
                    redundancy: one.checked,
                    state: state(one.state),
                })
                .collect(),
            unit_deviation: built.unit,
            posts: posts(report),
            diagonals_m: built.square.diagonals_m,
            diagonal_difference_within_m: COVERAGE * built.square.difference_sd_m,
            readings: readings(report),
            posts_off_m: [off.across.m(), off.along.m(), off.up.m()],
            beside_lean_m: [placed[0].m(), placed[1].m(), off.up.m()],
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
            let no_bound = report.no_bound(side);
            PostJson {
                post: post(side),
                off_m: place.off_m.into(),
                within_m: (place.off_sd_m * COVERAGE).into(),
                turn_rad: place.turn_rad,
                turn_within_rad: COVERAGE * place.turn_sd_rad,
                slip_m: [
                    (!no_bound[0]).then_some(place.slip_m.x),
                    (!no_bound[1]).then_some(place.slip_m.y),
                ],
                slip_turn_rad: (!no_bound[2]).then_some(place.slip_turn_rad),
                hangs_on: hangs_on(report, side),
                to_do: report.move_of(place),
                lean: built.leans[index(side)].map(|lean| lean.map(|lean| lean.slope)),
                lean_within: built.leans[index(side)]
                    .map(|lean| lean.map(|lean| COVERAGE * lean.sd)),
                lean_by_levels: shims.clash.map(|clash| clash.plate.into()),
                felt_m: shims.rock.and_then(|rock| rock.felt_m),
                rock_gap_m: shims.rock.map(|rock| rock.gap_m),
                rock: shims.rock.map(|rock| rock.goes.into()),
                corners: (1..=4_u8)
                    .map(|number| {
                        let i = usize::from(number) - 1;
                        CornerJson {
                            corner: PlateCorner { side, number }.letters(),
                            shims_m: shims.now_m[i],
                            wanted_m: shims.wanted_m.map(|wanted| wanted[i]),
                            wanted_within_m: shims
                                .wanted_m
                                .map(|_| COVERAGE * shims.wanted_sd_m[i]),
                        }
                    })
                    .collect(),
            }
        })
        .collect()
}

fn readings(report: &AsBuiltReport<'_>) -> Vec<ReadingJson> {
    let after = report.after_moves();
    let rows = report.built.readings.iter().zip(&report.measured.tape);
    rows.enumerate()
        .map(|(i, (one, taken))| ReadingJson {
            after_moving_m: after.as_ref().and_then(|after| after.get(i)).copied(),
            left_out: one.left_out,
            what: Planned::says(taken.over),
            reading_m: one.reading_m,
            tolerance_m: one.tolerance_m,
            fitted_m: one.fitted_m,
            planned_m: one.planned_m,
            standardised: one.standardised,
            redundancy: one.checked,
            state: state(one.state),
        })
        .collect()
}

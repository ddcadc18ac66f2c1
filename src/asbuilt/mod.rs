//! Where do the posts really stand, and what does the study say of that?
//!
//! Tape readings taken after setting out are adjusted by weighted least squares: place and turn of
//! each post, with its uncertainty. A reading that does not fit the others is pointed out, and so is
//! one that nothing else checks. Plumb readings, shims and levels give the shims of each corner.
//! Then the bay is studied with the posts where they stand, its carriages taken along columns that
//! lean; what the bay's symmetric posts can't show (one post ahead of the other, a turn, a height)
//! widens every body of the lift and of what it carries.
//!
//! The room's dimensions in the bay file count as readings with the room's ±; the study has the room
//! where the bay file has it, with its ±, as before.

mod adjust;
mod contact;
mod eigen;
mod faces;
mod places;
mod plumb;
mod reliability;
mod rock;
mod shims;
mod snoop;
mod stand;
#[cfg(test)]
mod tests;
mod verdict;

use glam::DVec2;

pub use adjust::{Adjusted, NotFixed, Observed, Residual, Row, adjust};
pub use contact::Contact;
pub use places::{Planned, SIDES, WALLS, index};
pub use plumb::{Lean, leans};
pub use reliability::Held;
pub use rock::Rock;
pub use shims::{Clash, PostShims, shims};
pub use snoop::{Checked, State, Wall};
pub use stand::{Standing, as_they_stand};
pub use verdict::{Finding, findings};

use crate::bay::{Bay, Mark, Measured, Over, PlateCorner, Side, UnitSystem};
use crate::diagnostics::{Diagnostic, Severity};
use crate::units::{Length, Rounding, both};

/// A place that is not known to this is not fixed: some half an inch. Own choice.
pub const WEAK_M: f64 = 0.015;

/// A reading this far off the plan was misread, or the post stands where no anchor can: half a
/// metre. Own choice.
const MISREAD_M: f64 = 0.5;

/// A ± is taken as two standard deviations, and shown ± are again two (ISO/IEC Guide 98-3, 6.3:
/// coverage factor 2, about 95 %; from memory).
pub const COVERAGE: f64 = 2.0;

/// The study counts with three.
pub const IN_STUDY: f64 = 3.0;

/// Where one post stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostPlace {
    /// Which post.
    pub side: Side,
    /// How far its plate's middle stands off the plan, bay x and y.
    pub off_m: DVec2,
    /// How far it is turned, counter-clockwise seen from above.
    pub turn_rad: f64,
    /// One standard deviation of the place.
    pub off_sd_m: DVec2,
    /// And of the turn.
    pub turn_sd_rad: f64,
    /// How far one slip of a reading that may not show can have moved the place, either way.
    pub slip_m: DVec2,
    /// And the turn.
    pub slip_turn_rad: f64,
}

impl PostPlace {
    /// The turn, three standard deviations of it and what one slip that may not show can turn it.
    #[must_use]
    pub fn most_turn_rad(&self) -> f64 {
        self.turn_rad.abs() + IN_STUDY * self.turn_sd_rad + self.slip_turn_rad
    }
}

/// How far out of square the posts stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Square {
    /// Outer corner to outer corner, from rear left to front right and from front left to rear right,
    /// as the posts stand.
    pub diagonals_m: [f64; 2],
    /// One standard deviation of their difference.
    pub difference_sd_m: f64,
    /// How far the right post stands ahead of the left one, beyond the plan.
    pub ahead_m: f64,
    /// One standard deviation of that.
    pub ahead_sd_m: f64,
    /// How much farther apart across the bay the posts stand than by the plan; negative where they stand
    /// closer.
    pub wider_m: f64,
    /// One standard deviation of that: mostly far less than of either post's own place.
    pub wider_sd_m: f64,
    /// Between the inner corners by the plan.
    pub planned_between_m: f64,
    /// Between the inner corners at the front and at the rear.
    pub between_m: [f64; 2],
}

/// What readings say.
#[derive(Debug, Clone, PartialEq)]
pub struct AsBuilt {
    /// Each tape reading, in the order of the file.
    pub readings: Vec<Checked>,
    /// More readings than unknowns, of those that were used.
    pub spare: usize,
    /// The standard deviation of unit weight; none without a spare reading.
    pub unit: Option<f64>,
    /// How likely the readings scatter so much by chance, if each is as good as stated.
    pub by_chance: f64,
    /// The left, the right and the back wall by the readings.
    pub walls: [Wall; 3],
    /// The unknowns that fit best: each post's middle and turn, then the walls.
    pub unknowns: Vec<f64>,
    /// Half the diagonal of a plate: what a turn is multiplied by to be weighed as a length.
    pub arm_m: f64,
    /// How well the posts are held.
    pub held: [Held; 2],
    /// The posts.
    pub posts: [PostPlace; 2],
    /// Whether they are square.
    pub square: Square,
    /// How they lean: across and along, where it was read.
    pub leans: [[Option<Lean>; 2]; 2],
    /// Shims.
    pub shims: [PostShims; 2],
    /// The bay with the posts where they stand.
    pub standing: Standing,
}

impl AsBuilt {
    /// True when no reading contradicts the others.
    #[must_use]
    pub fn fits(&self) -> bool {
        !self.readings.iter().any(|one| one.state.is_open()) && !self.scatters()
    }

    /// True when the readings as a whole scatter more than their stated ± lets them.
    #[must_use]
    pub fn scatters(&self) -> bool {
        self.by_chance < reliability::FAILS
    }

    /// True while a contradiction is open: of the readings as a whole, of the room's dimensions, or of
    /// a reading that this post's place hangs on.
    #[must_use]
    pub fn is_open(&self, side: Side, measured: &Measured) -> bool {
        let touches = |over: Over| match over {
            Over::Between(from, to) => from.post() == Some(side) || to.post() == Some(side),
            Over::Wall(_, mark) => mark.post() == Some(side),
        };
        let mut read = self.readings.iter().zip(&measured.tape);
        self.scatters()
            || self.walls.iter().any(|wall| wall.state.is_open())
            || read.any(|(one, taken)| one.state.is_open() && touches(taken.over))
    }
}

/// What a bay's posts are by what was read of them.
///
/// # Errors
/// When readings are impossible, or do not fix the posts; each fault with its place and cure.
pub fn as_built(bay: &Bay, measured: &Measured) -> Result<AsBuilt, Vec<Diagnostic>> {
    let planned = Planned::of(bay);
    misread(&planned, measured, bay.units)?;
    let refused = [
        plumb::longer_than_the_column(bay, measured),
        faces::of_turned_columns(bay, measured),
    ]
    .concat();
    if !refused.is_empty() {
        return Err(refused);
    }
    let found = snoop::fit(&planned, measured).map_err(|why| vec![not_fixed(&why)])?;
    let mut fit = found.adjusted;
    let scale = fit.unit.unwrap_or(1.0).max(1.0);
    // Beside the scatter, what all tapes are off together.
    for (row, one) in fit.covariance.iter_mut().zip(&found.common) {
        for (value, other) in row.iter_mut().zip(&found.common) {
            *value = scale * scale * *value + one * other;
        }
    }
    let fit = &fit;
    let sd = |i: usize| fit.covariance[i][i].max(0.0).sqrt();
    let held = SIDES.map(|side| {
        let at = 3 * index(side);
        let unit = [1.0, 1.0, 1.0 / planned.arm_m()];
        Held {
            covariance: [0, 1, 2]
                .map(|i| [0, 1, 2].map(|j| fit.covariance[at + i][at + j] * unit[i] * unit[j])),
            slips: found
                .slips
                .iter()
                .map(|slip| [0, 1, 2].map(|i| scale * slip[at + i] * unit[i]))
                .collect(),
            unchecked: found
                .unchecked
                .iter()
                .map(|(tape, moves)| (*tape, [0, 1, 2].map(|i| moves[at + i])))
                .collect(),
        }
    });
    let posts = SIDES.map(|side| {
        let at = 3 * index(side);
        PostPlace {
            side,
            off_m: DVec2::new(fit.unknowns[at], fit.unknowns[at + 1])
                - planned.middle_m[index(side)],
            turn_rad: fit.unknowns[at + 2] / planned.arm_m(),
            off_sd_m: DVec2::new(sd(at), sd(at + 1)),
            turn_sd_rad: sd(at + 2) / planned.arm_m(),
            slip_m: DVec2::from_slice(&held[index(side)].slip()),
            slip_turn_rad: held[index(side)].slip()[2],
        }
    });
    let leans = leans(measured);
    let shims = shims(&planned, &leans, measured);
    let standing = as_they_stand(bay, &planned, (&posts, &held), &leans, (&shims, measured));
    let sum = fit.unit.map_or(0.0, |unit| unit * unit * fit.spare as f64);
    Ok(AsBuilt {
        spare: fit.spare,
        unit: fit.unit,
        by_chance: reliability::by_chance(sum, fit.spare),
        walls: found.walls,
        unknowns: fit.unknowns.clone(),
        arm_m: planned.arm_m(),
        held,
        square: square(&planned, fit),
        shims,
        readings: found.readings,
        posts,
        leans,
        standing,
    })
}

fn square(planned: &Planned, fit: &Adjusted) -> Square {
    let corner = |side, number| Mark::Corner(PlateCorner { side, number });
    let over = |from, to| planned.row(Over::Between(from, to), &fit.unknowns);
    let (left, right) = (Side::Left, Side::Right);
    let one = over(corner(left, 1), corner(right, 4));
    let other = over(corner(left, 4), corner(right, 1));
    let slopes: Vec<f64> = one
        .slopes
        .iter()
        .zip(&other.slopes)
        .map(|(a, b)| a - b)
        .collect();
    let sd = |slopes: &[f64]| {
        let mut variance = 0.0;
        for (row, a) in fit.covariance.iter().zip(slopes) {
            for (value, b) in row.iter().zip(slopes) {
                variance += a * value * b;
            }
        }
        variance.max(0.0).sqrt()
    };
    let mut ahead_slopes = vec![0.0; fit.unknowns.len()];
    ahead_slopes[1] = -1.0;
    ahead_slopes[4] = 1.0;
    let mut wider_slopes = vec![0.0; fit.unknowns.len()];
    wider_slopes[0] = -1.0;
    wider_slopes[3] = 1.0;
    let plan = planned.start();
    let wider = |unknowns: &[f64]| unknowns[3] - unknowns[0];
    let by_plan = |from, to| planned.row(Over::Between(from, to), &plan).computed;
    let ahead = |unknowns: &[f64]| unknowns[4] - unknowns[1];
    Square {
        diagonals_m: [one.computed, other.computed],
        difference_sd_m: sd(&slopes),
        ahead_sd_m: sd(&ahead_slopes),
        ahead_m: ahead(&fit.unknowns) - ahead(&plan),
        wider_m: wider(&fit.unknowns) - wider(&plan),
        wider_sd_m: sd(&wider_slopes),
        planned_between_m: by_plan(corner(left, 3), corner(right, 3)),
        between_m: [3, 2].map(|number| over(corner(left, number), corner(right, number)).computed),
    }
}

/// Readings that no post set out by this plan can give.
fn misread(
    planned: &Planned,
    measured: &Measured,
    units: UnitSystem,
) -> Result<(), Vec<Diagnostic>> {
    let start = planned.start();
    let found: Vec<Diagnostic> = measured
        .tape
        .iter()
        .filter_map(|taken| {
            let plan = planned.row(taken.over, &start).computed;
            ((taken.reading.m() - plan).abs() > MISREAD_M).then(|| {
                Diagnostic {
                severity: Severity::Error,
                message: format!(
                    "{} can't be {}: by the bay file it is {}",
                    Planned::says(taken.over),
                    both(taken.reading, units, Rounding::Nearest),
                    both(Length::metres(plan), units, Rounding::Nearest),
                ),
                place: taken.place.clone(),
                help: Some(
                    "check the reading, the two marks and the units; a post that does stand so far \
                     off needs a bay file of its own place"
                        .into(),
                ),
            }
            })
        })
        .collect();
    if found.is_empty() { Ok(()) } else { Err(found) }
}

/// Which of a post's three unknowns a direction moves.
const WHAT: [&str; 3] = ["place across the bay", "place into the bay", "angle"];

/// Which readings would hold them.
const CURE: [&str; 3] = [
    "a distance from a side wall or from A or B to a corner of its plate, or a spacing to the other \
     post",
    "a distance from the door wall to a corner of its plate, or a diagonal",
    "a diagonal to the other post, or the same distance at both the front and the rear corner of its \
     plate",
];

fn not_fixed(why: &NotFixed) -> Diagnostic {
    let (message, help) = match why {
        NotFixed::NoRest => (
            "these readings contradict each other so far that no place of the posts comes near them"
                .to_owned(),
            "check each reading and its two marks".to_owned(),
        ),
        NotFixed::Loose(directions) => {
            let share = |i: usize| -> f64 { directions.iter().map(|d| d[i] * d[i]).sum() };
            let loose: Vec<usize> = (0..6).filter(|&i| share(i) > 0.02).collect();
            let name = |i: &usize| {
                let post = if *i < 3 { "left" } else { "right" };
                format!("the {post} post's {}", WHAT[i % 3])
            };
            let mut cures: Vec<usize> = loose.iter().map(|i| i % 3).collect();
            cures.sort_unstable();
            cures.dedup();
            let cures: Vec<&str> = cures.into_iter().map(|i| CURE[i]).collect();
            (
                format!(
                    "these readings do not fix {}",
                    joined(&loose.iter().map(name).collect::<Vec<_>>())
                ),
                format!("add {}", cures.join("; and ")),
            )
        }
    };
    Diagnostic {
        severity: Severity::Error,
        message,
        place: None,
        help: Some(help),
    }
}

fn joined(words: &[String]) -> String {
    match words {
        [] => "the posts".into(),
        [one] => one.clone(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

//! What stands against a safe lock beside the study: readings that can't be trusted, and the
//! manual's limits of plumb and shims.

use glam::DVec2;

use super::shims::{PostShims, THINNEST_M, levels};
use super::snoop::State;
use super::stand::may_lean;
use super::{AsBuilt, COVERAGE, IN_STUDY, SIDES, WEAK_M, index};
use crate::bay::{Bay, Measured, PlateCorner, Side};
use crate::solids::posts::column_middle_x_m;
use crate::solids::shell::floor_level_m;

/// Comparing what was converted to metres and back: a hair.
const NOISE_M: f64 = 1e-9;

/// One thing that stands against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Finding {
    /// A reading does not fit: its place in the file's list.
    Misfit(usize),
    /// One of several readings is wrong; this is one of them.
    Suspect(usize),
    /// The same was read more than once, and the readings differ by more than their ±: the first.
    Differs(usize),
    /// Nothing else checks a reading.
    Unchecked(usize),
    /// The place of a wall in the bay file does not fit the readings: left, right, back.
    Wall(usize),
    /// Readings hang on the place of a wall in the bay file, and nothing checks that.
    WallUnchecked(usize),
    /// The readings as a whole scatter more than their ± lets them.
    Scatters,
    /// A post's place or turn is not known well enough, for the scatter of the readings.
    Weak(Side),
    /// A post's plumb was not read: across the bay, or along it.
    PlumbNotRead(Side, bool),
    /// It was read more than once, and the readings differ by more than their ±.
    PlumbDiffers(Side, bool),
    /// A post leans by the plumb otherwise than its plate lies by levels and shims.
    PlumbAgainstLevels(Side),
    /// A plate rocks on two of its corners, with this gap at the others: how its post leans under a
    /// load is not what was read.
    Rocks(Side, f64),
    /// A plate may rock by more than the manual lets its column lean, for all that the levels tell, and
    /// nobody felt under it: by which gap, and how far its column goes on that over its height. Neither
    /// is known where its floor was not levelled.
    MayRock(Side, Option<(f64, f64)>),
    /// A gap was levelled that a feeler gauge does not find: the least that the levels leave, and the
    /// most that was felt.
    FeltAgainstLevels(Side, f64, f64),
    /// By levels and shims a post leans more than the manual lets it, and a plumb that was read once
    /// says otherwise: by how much over its height, and the limit.
    PlateOutOfPlumb(Side, f64, f64),
    /// The bay file has no limit of the manual for the plumb.
    NoPlumbLimit,
    /// A post leans more than the manual lets it: by how much over its height, and the limit.
    OutOfPlumb(Side, f64, f64),
    /// It may, by the ± of the reading.
    MaybeOutOfPlumb(Side, f64, f64),
    /// Shims lie there or are wanted, and the bay file has no limit of the manual for them.
    NoShimLimit,
    /// A stack that lies there is higher than the manual lets it be.
    ShimsTooHigh(PlateCorner, f64, f64),
    /// A stack that is wanted is.
    ShimsWantedTooHigh(PlateCorner, f64, f64),
    /// It may be, by the ± of plumb and levels.
    ShimsMaybeTooHigh(PlateCorner, f64, f64),
    /// The floor under both plates was not levelled: how much higher one post stands is not known.
    NotLevelled,
    /// The floor as levelled falls otherwise than the bay file's: by how much over the two plates.
    FloorFallsOtherwise(f64),
}

impl Finding {
    /// True where the posts can't be used as they stand; else it is not known.
    #[must_use]
    pub const fn stops(self) -> bool {
        matches!(
            self,
            Self::OutOfPlumb(..) | Self::ShimsTooHigh(..) | Self::ShimsWantedTooHigh(..)
        )
    }
}

/// Everything that stands against a safe lock beside the study.
#[must_use]
pub fn findings(bay: &Bay, measured: &Measured, built: &AsBuilt) -> Vec<Finding> {
    let mut found = of_tapes(measured, built);
    of_plumb(bay, built, &mut found);
    of_shims(bay, built, &mut found);
    if built.standing.right_higher_m.is_none() {
        found.push(Finding::NotLevelled);
    }
    found.extend(of_floor(bay, measured));
    found
}

fn of_tapes(measured: &Measured, built: &AsBuilt) -> Vec<Finding> {
    let mut found = Vec::new();
    // A wrong wall makes many readings look wrong: it comes first.
    for (at, wall) in built.walls.iter().enumerate() {
        if wall.state.is_open() {
            found.push(Finding::Wall(at));
        } else if wall.used && wall.state == State::Unchecked {
            found.push(Finding::WallUnchecked(at));
        }
    }
    for (at, one) in built.readings.iter().enumerate() {
        // What was read more than once counts once, and is told once.
        let told = built.readings[..at]
            .iter()
            .zip(&measured.tape)
            .any(|(before, taken)| {
                before.state == one.state
                    && (measured.tape.get(at))
                        .is_some_and(|this| super::snoop::same(taken.over, this.over))
            });
        if told {
            continue;
        }
        match one.state {
            State::Misfit => found.push(Finding::Misfit(at)),
            State::Suspect => found.push(Finding::Suspect(at)),
            State::Differs => found.push(Finding::Differs(at)),
            State::Unchecked => found.push(Finding::Unchecked(at)),
            State::Fits => {}
        }
    }
    if built.scatters() {
        found.push(Finding::Scatters);
    }
    for post in &built.posts {
        let turn = post.turn_sd_rad * built.arm_m;
        if post.off_sd_m.max_element().max(turn) > WEAK_M {
            found.push(Finding::Weak(post.side));
        }
    }
    found
}

fn of_plumb(bay: &Bay, built: &AsBuilt, found: &mut Vec<Finding>) {
    let high = bay.lift.column.height.m();
    for side in SIDES {
        let [across, along] = built.leans[index(side)];
        for (lean, is_across) in [(across, true), (along, false)] {
            match lean {
                None => found.push(Finding::PlumbNotRead(side, is_across)),
                Some(lean) if lean.clash => found.push(Finding::PlumbDiffers(side, is_across)),
                Some(_) => {}
            }
        }
        if built.shims[index(side)].clash.is_some() {
            found.push(Finding::PlumbAgainstLevels(side));
        }
        let slope = |lean: Option<super::Lean>| lean.map_or(0.0, |lean| lean.slope.abs());
        let most = |lean: Option<super::Lean>, axis: usize, rocking: f64| {
            let may = lean.map_or([0.0; 2], |lean| {
                may_lean(lean, &built.shims[index(side)], axis)
            });
            may[0].abs().max(may[1].abs()) + rocking
        };
        let leans =
            |rocking: DVec2| most(across, 0, rocking.x).hypot(most(along, 1, rocking.y)) * high;
        let may_rock = may_rock(bay, &built.shims[index(side)], leans);
        found.extend(may_rock);
        let Some(limit) = bay.lift.plumb_limit else {
            continue;
        };
        // A gap that takes no shim is none to fill, but the column still goes as far on it. What is
        // known of no gap was told.
        let rocking = if may_rock.is_some() {
            built.shims[index(side)].rocking_as_levelled()
        } else {
            built.shims[index(side)].rocking(&bay.lift)
        };
        let out = slope(across).hypot(slope(along)) * high;
        let at_most = leans(rocking);
        if out > limit.m() + NOISE_M {
            found.push(Finding::OutOfPlumb(side, out, limit.m()));
        } else if at_most > limit.m() + NOISE_M {
            found.push(Finding::MaybeOutOfPlumb(side, at_most, limit.m()));
        }
        let by_plate = built.shims[index(side)].plate_lean.map_or(0.0, |plate| {
            // Readings of one direction that agree outweigh the levels; one alone does not.
            let one = |lean: Option<super::Lean>, plate: f64| {
                lean.filter(|lean| lean.reads > 1 && !lean.clash)
                    .map_or(plate, |lean| lean.slope)
            };
            one(across, plate.x).hypot(one(along, plate.y)) * high
        });
        if out <= limit.m() + NOISE_M && by_plate > limit.m() + NOISE_M {
            found.push(Finding::PlateOutOfPlumb(side, by_plate, limit.m()));
        }
    }
    if bay.lift.plumb_limit.is_none() {
        found.push(Finding::NoPlumbLimit);
    }
}

/// Whether a plate may rock farther than is known to do no harm, where nobody felt under it. `leans`
/// says how far its column may lean at most with such a rocking.
fn may_rock(bay: &Bay, post: &PostShims, leans: impl Fn(DVec2) -> f64) -> Option<Finding> {
    let Some(rock) = post.rock else {
        return Some(Finding::MayRock(post.side, None));
    };
    // What rocks as levelled is told as that.
    if rock.felt_m.is_some() || post.rocks_m().is_some() {
        return None;
    }
    let harms = match bay.lift.plumb_limit {
        Some(limit) => leans(rock.goes) > limit.m() + NOISE_M,
        None => rock.gap_m > THINNEST_M,
    };
    let tips_m = rock.goes.length() * bay.lift.column.height.m();
    harms.then_some(Finding::MayRock(post.side, Some((rock.gap_m, tips_m))))
}

fn of_shims(bay: &Bay, built: &AsBuilt, found: &mut Vec<Finding>) {
    let mut any = false;
    for post in &built.shims {
        // The gap as levelled counts, whatever the ± of the levels: a coarser level is no excuse.
        if let Some(gap) = post.rocks_m() {
            found.push(Finding::Rocks(post.side, gap));
        }
        if let Some(rock) = post.rock
            && let (Some(felt), Some(levelled)) = (rock.felt_m, rock.levelled_m)
        {
            found.push(Finding::FeltAgainstLevels(post.side, levelled, felt));
        }
        for (number, i) in (1_u8..=4).zip(0..4) {
            let now = post.now_m[i];
            let wanted = post.wanted_m.map_or(0.0, |wanted| wanted[i]);
            let at_most = post
                .wanted_m
                .map_or(0.0, |wanted| wanted[i] + IN_STUDY * post.wanted_sd_m[i]);
            // Less than the thinnest shim is none.
            any |= now.max(wanted) > THINNEST_M;
            let Some(limit) = bay.lift.shim_limit.map(|limit| limit.m()) else {
                continue;
            };
            let at = PlateCorner {
                side: post.side,
                number,
            };
            if wanted > limit + NOISE_M {
                found.push(Finding::ShimsWantedTooHigh(at, wanted, limit));
            } else if at_most > limit + NOISE_M {
                found.push(Finding::ShimsMaybeTooHigh(at, at_most, limit));
            }
            if now > limit + NOISE_M {
                found.push(Finding::ShimsTooHigh(at, now, limit));
            }
        }
    }
    if any && bay.lift.shim_limit.is_none() {
        found.push(Finding::NoShimLimit);
    }
}

/// How far the levels under the plates fall otherwise than the bay file's floor does, where that is
/// more than the room's ± and three standard deviations of a level. A bump is no fall: the plane
/// through what is left of the eight levels counts.
fn of_floor(bay: &Bay, measured: &Measured) -> Option<Finding> {
    let planned = super::Planned::of(bay);
    let mut points = Vec::with_capacity(8);
    for side in SIDES {
        let levels = levels(measured, side)?;
        for (at, level) in super::shims::corners(side).into_iter().zip(levels) {
            let place = planned.middle_m[index(side)] + planned.corner_m(at);
            points.push((place, level - floor_level_m(bay, place.x, place.y)));
        }
    }
    // Set about the middle, the eight points of two plates have no mixed moment.
    let middle = glam::DVec2::new(
        (column_middle_x_m(bay, Side::Left) + column_middle_x_m(bay, Side::Right)) * 0.5,
        bay.lift.post_line.m(),
    );
    let mut along = glam::DVec2::ZERO;
    let mut squares = glam::DVec2::ZERO;
    for (place, off) in &points {
        along += (*place - middle) * *off;
        squares += (*place - middle) * (*place - middle);
    }
    let slope = (along / squares.max(glam::DVec2::splat(1e-12))).abs();
    let fall = points
        .iter()
        .map(|(place, _)| 2.0 * slope.dot((*place - middle).abs()))
        .fold(0.0, f64::max);
    let within =
        bay.policy.measured_garage.m() + IN_STUDY * measured.level_tolerance.m() / COVERAGE;
    (fall > within + NOISE_M).then_some(Finding::FloorFallsOtherwise(fall))
}

//! Which shims under which corner make a post plumb?
//!
//! A post and its plate are one rigid body: tipping the plate by the lean makes the column plumb.
//! Where the floor under all four corners was levelled, the plate lies as it can on floor and shims
//! ([`Contact`]), and the shims also fill up to the floor; else the plate is taken to bear on all of
//! its shims as it stands. A column is taken to stand square on its plate: where it leans by the
//! plumb otherwise than its plate lies by the levels, one of them is wrong, and no shims are told.

use glam::DVec2;

use super::contact::Contact;
use super::places::{Planned, SIDES, index};
use super::plumb::Lean;
use super::rock::{Rock, felt};
use super::{COVERAGE, IN_STUDY};
use crate::bay::{CornerHeight, Lift, Measured, PlateCorner, Side};

/// Plumb and levels that contradict each other: leans toward +x and +y, as slopes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clash {
    /// By the plumb.
    pub plumb: DVec2,
    /// By how the plate may lie on floor and shims, the nearest to the plumb.
    pub plate: DVec2,
}

/// The shims of a post.
#[derive(Debug, Clone, PartialEq)]
pub struct PostShims {
    /// Which post.
    pub side: Side,
    /// What lies under each corner now, by its number; 0 where nothing is listed.
    pub now_m: [f64; 4],
    /// Whether the file lists shims there.
    pub listed: [bool; 4],
    /// What should lie there for a plumb column; none where its plumb was not read both ways, or where
    /// the levels contradict it or what was felt.
    pub wanted_m: Option<[f64; 4]>,
    /// One standard deviation of that.
    pub wanted_sd_m: [f64; 4],
    /// How its plate lies, where the floor under its four corners was levelled.
    pub contact: Option<Contact>,
    /// One standard deviation of the lean that the levels give: across, along.
    pub contact_sd: DVec2,
    /// How far its plate may rock; none where it was neither felt nor levelled.
    pub rock: Option<Rock>,
    /// Plumb against levels.
    pub clash: Option<Clash>,
    /// How the column leans by its plate on floor and shims, toward +x and +y as slopes: the nearest to
    /// the plumb that the plate may lie at. None without plumb and levels, or where they contradict.
    pub plate_lean: Option<DVec2>,
    /// Height of its column's foot over where the levels count from.
    pub foot_m: Option<f64>,
}

impl PostShims {
    /// True when the floor under its four corners was levelled.
    #[must_use]
    pub const fn levelled(&self) -> bool {
        self.contact.is_some()
    }

    /// The gap that its plate rocks by as levelled, where that takes a shim. What was felt counts before
    /// the levels.
    #[must_use]
    pub fn rocks_m(&self) -> Option<f64> {
        let levelled = self.contact?.rock_m;
        let felt = self.rock.filter(|rock| rock.felt_m.is_some());
        let gap = felt.map_or(levelled, |rock| rock.gap_m.min(levelled));
        (gap > THINNEST_M).then_some(gap)
    }

    /// How far its column goes between both ends of the rocking as levelled, as slopes: across and
    /// along.
    #[must_use]
    pub fn rocking_as_levelled(&self) -> DVec2 {
        self.contact.map_or(DVec2::ZERO, |contact| {
            (contact.slopes[1] - contact.slopes[0]).abs()
        })
    }

    /// How far its column may go by what its plate can rock, as counts for the study: all that was felt,
    /// or that the levels leave open. Where they leave open more than the manual lets a column lean, or
    /// that is not known, nothing is called safe, and what was levelled counts.
    #[must_use]
    pub fn rocking(&self, lift: &Lift) -> DVec2 {
        let levelled = self.rocking_as_levelled();
        let Some(rock) = self.rock else {
            return levelled;
        };
        let limit_m = lift.plumb_limit.map_or(0.0, |limit| limit.m());
        if rock.felt_m.is_some() || rock.goes.length() * lift.column.height.m() <= limit_m {
            rock.goes
        } else {
            levelled
        }
    }
}

/// The thinnest shim in use, metres: a lesser gap is none. Common practice, no source.
pub(super) const THINNEST_M: f64 = 0.000_5;

/// The height given for a corner.
pub(super) fn height_at(heights: &[CornerHeight], at: PlateCorner) -> Option<f64> {
    heights
        .iter()
        .find(|one| one.at == at)
        .map(|one| one.height.m())
}

/// The corners of a post's plate, by number.
pub(super) fn corners(side: Side) -> [PlateCorner; 4] {
    [1, 2, 3, 4].map(|number| PlateCorner { side, number })
}

/// The floor levels at a plate's corners, where all four were taken.
pub(super) fn levels(measured: &Measured, side: Side) -> Option<[f64; 4]> {
    let found = corners(side).map(|at| height_at(&measured.levels, at));
    found
        .iter()
        .all(Option::is_some)
        .then(|| found.map(|level| level.unwrap_or(0.0)))
}

/// The shims of both posts.
#[must_use]
pub fn shims(
    planned: &Planned,
    leans: &[[Option<Lean>; 2]; 2],
    measured: &Measured,
) -> [PostShims; 2] {
    SIDES.map(|side| of_post(planned, &leans[index(side)], measured, side))
}

fn of_post(
    planned: &Planned,
    leans: &[Option<Lean>; 2],
    measured: &Measured,
    side: Side,
) -> PostShims {
    let at = corners(side);
    let given = at.map(|corner| height_at(&measured.shims, corner));
    let now_m = given.map(|height| height.unwrap_or(0.0));
    let places = at.map(|corner| planned.corner_m(corner));
    let column = planned.column_m[index(side)] - planned.middle_m[index(side)];
    let levels = levels(measured, side);
    let level_sd = measured.level_tolerance.m() / COVERAGE;
    // Over a side of the plate, between two corners.
    let contact_sd = std::f64::consts::SQRT_2 * level_sd / (2.0 * planned.half_m);
    let contact = levels.map(|levels| {
        let tops = [0, 1, 2, 3].map(|i| levels[i] + now_m[i]);
        Contact::on(&places, &tops)
    });
    let mut found = PostShims {
        side,
        now_m,
        listed: given.map(|height| height.is_some()),
        wanted_m: None,
        wanted_sd_m: [0.0; 4],
        contact,
        contact_sd,
        rock: Rock::of(&places, contact.as_ref(), level_sd, felt(measured, side)),
        clash: None,
        plate_lean: None,
        foot_m: contact.map(|contact| foot_m(&contact, column)),
    };
    let [Some(across), Some(along)] = *leans else {
        return found;
    };
    if found.rock.is_some_and(|rock| rock.levelled_m.is_some()) {
        return found;
    }
    let lean = DVec2::new(across.slope, along.slope);
    let lean_sd = DVec2::new(across.sd, along.sd);
    let now = match (levels, contact) {
        (Some(levels), Some(contact)) => {
            let sd = DVec2::new(lean_sd.x.hypot(contact_sd.x), lean_sd.y.hypot(contact_sd.y));
            let lies = contact.nearest(-lean, sd);
            let apart = ((lies + lean) / sd.max(DVec2::splat(1e-12))).abs();
            if apart.max_element() > IN_STUDY + 1e-6 {
                found.clash = Some(Clash {
                    plumb: lean,
                    plate: -lies,
                });
                return found;
            }
            found.plate_lean = Some(-lies);
            found.foot_m = Some(contact.middle_m + lies.dot(column));
            [0, 1, 2, 3].map(|i| lies.dot(places[i]) - levels[i])
        }
        _ => now_m,
    };
    let raised = [0, 1, 2, 3].map(|i| now[i] + lean.dot(places[i]));
    let lowest = (1..4).fold(0, |at, i| if raised[i] < raised[at] { i } else { at });
    found.wanted_m = Some(raised.map(|height| height - raised[lowest]));
    let level_sd = if levels.is_some() {
        std::f64::consts::SQRT_2 * level_sd
    } else {
        0.0
    };
    found.wanted_sd_m = places.map(|place| {
        let far = (place - places[lowest]) * lean_sd;
        far.length().hypot(level_sd)
    });
    found
}

/// Height of the column's foot, the higher of both ends of the rocking.
fn foot_m(contact: &Contact, column: DVec2) -> f64 {
    let [one, other] = contact.slopes.map(|slope| slope.dot(column));
    contact.middle_m + one.max(other)
}

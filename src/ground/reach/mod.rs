//! Do the arms bring their pads under the lift points, and how are they got there?
//!
//! Whether an arm reaches, with every ± and the whole parking box against it, is the study's
//! ([`crate::clearance::reach`]), and so is what arms and pads touch on the way up. Here is what an
//! installer asks next: the move of the vehicle that makes all four reach ([`shift`], [`propose`]),
//! a way to swing them in past tyres and each other ([`swing`]), and how the pads are set so that
//! the body stands level ([`pads`]).

pub mod least;
mod move_figures;
mod order;
mod pad_figures;
pub mod pads;
pub mod propose;
mod reset;
mod restraints;
mod scene;
mod section;
pub mod shift;
pub mod swing;
mod tool;
mod words;

use pads::{Kit, Level, PadSet, out_of_level_m};
use propose::Moves;
use shift::NoMove;
use swing::SwingIn;

use super::{Clearances, Section};
use crate::bay::{Bay, Corner};
use crate::clearance::gap::Solver;
use crate::clearance::part_levers::support_m;
use crate::clearance::uncertainty::Uncertainty;
use crate::clearance::{Study, StudyError, Withheld};
use crate::solids::{ParkingError, attitude, vehicle};

/// Everything about arms and pads beside what the study holds.
#[derive(Debug, Clone, PartialEq)]
pub struct Reach {
    /// Where the vehicle should stand instead, or why nowhere; none where nothing asks for it.
    pub moves: Option<Result<Moves, NoMove>>,
    /// Whether the arms can be swung in; none where an arm does not reach.
    pub swing: Option<SwingIn>,
    /// An arm that touches a column or a plate where it is wanted.
    pub on_post: Option<(Corner, String)>,
    /// How the pads are set.
    pub pads: Pads,
    /// True where a move is asked for and was not looked for, see
    /// [`Clearances::verdict_only`](super::Clearances::verdict_only).
    pub move_not_looked_for: bool,
    /// Where arms that reach touch the vehicle: the setting of the pads at which they do not, and how
    /// many settings were looked at.
    pub reset: Reset,
}

/// A setting of the pads, where one was found, and how many were looked at.
pub type Reset = (Option<Box<[PadSet; 4]>>, usize);

/// How the pads are set.
#[derive(Debug, Clone, PartialEq)]
pub struct Pads {
    /// As the file sets them, by [`Corner::index`]: with what the lift has; none where it has no
    /// stack and screw for that.
    pub as_set: [Option<PadSet>; 4],
    /// The height of the highest pad over its lift point against the lowest, metres.
    pub out_of_level_m: f64,
    /// The lowest setting on which the body stands level.
    pub level: Level,
    /// The pad with the least room under its lift point, the vehicle on its tyres, every ±
    /// against it, metres.
    pub room: (Corner, f64),
}

impl Reach {
    /// Works it out for a study whose arms and touches are known.
    ///
    /// # Errors
    /// When the vehicle's place is not known.
    pub fn of(bay: &Bay, study: &Study) -> Result<Self, StudyError> {
        Self::found(bay, &Clearances::of(study))
    }

    fn found(bay: &Bay, found: &Clearances<'_>) -> Result<Self, StudyError> {
        let mut solver = Solver::new();
        let uncertainty = found.uncertainty;
        let all_reach = found.arms.iter().all(|arm| arm.worst_shortfall_m <= 0.0);
        let (on_post, swing) = if all_reach {
            let room = scene::Room::new(bay, &uncertainty)?;
            (
                scene::on_posts(&room, &mut solver),
                Some(swing::swing_in(&room, &mut solver)),
            )
        } else {
            (None, None)
        };
        let reset = if all_reach && !found.carried.is_empty() && !found.verdict_only {
            reset::pads(bay, uncertainty, &mut solver)?
        } else {
            (None, 0)
        };
        let asks_for_a_move = !all_reach || on_post.is_some() || !found.carried.is_empty();
        // Read where what arms and pads touch is a reason of its own to withhold.
        let is_read = !found.verdict_only || (all_reach && !is_placed_told(found));
        Ok(Self {
            moves: if asks_for_a_move && is_read {
                Some(propose::moves(bay, uncertainty, &mut solver)?)
            } else {
                None
            },
            swing,
            on_post,
            pads: pads_of(bay, &uncertainty)?,
            reset,
            move_not_looked_for: asks_for_a_move && !is_read,
        })
    }
}

fn pads_of(bay: &Bay, uncertainty: &Uncertainty) -> Result<Pads, StudyError> {
    let kit = kit(bay);
    let raises = bay.parking.pad_raise.map(|raise| raise.m());
    let points = points_m(bay);
    let rooms = rooms_m(bay, uncertainty)?;
    let most = std::array::from_fn(|i| raises[i] + rooms[i]);
    let room = Corner::ALL
        .map(|corner| (corner, rooms[corner.index()]))
        .into_iter()
        .reduce(|a, b| if a.1.is_nan() || a.1 <= b.1 { a } else { b })
        .unwrap_or((Corner::FrontLeft, f64::NAN));
    Ok(Pads {
        as_set: raises.map(|raise| kit.set(raise)),
        out_of_level_m: out_of_level_m(raises, points),
        level: kit.level(points, most),
        room,
    })
}

/// What the lift has to raise pads with.
fn kit(bay: &Bay) -> Kit {
    let pad = &bay.lift.pad;
    let adapters: Vec<f64> = pad.adapters.iter().map(|height| height.m()).collect();
    Kit::new(pad.screw_travel.m(), &adapters)
}

/// The heights of the lift points above the vehicle's own ground, by [`Corner::index`], metres.
fn points_m(bay: &Bay) -> [f64; 4] {
    Corner::ALL.map(|corner| {
        let index = vehicle::lift_point_at(corner, bay.parking.facing);
        vehicle::lift_point_m(&bay.vehicle, index).z
    })
}

/// The room over each pad as it is set, the vehicle on its tyres, every ± against it, metres.
fn rooms_m(bay: &Bay, uncertainty: &Uncertainty) -> Result<[f64; 4], StudyError> {
    let spare = support_m(uncertainty);
    let contact = attitude::contact(bay, ParkingError::default())?;
    Ok(contact.touch_m.map(|touch| touch - spare))
}

/// The section.
#[must_use]
pub fn section(bay: &Bay, study: &Study) -> Section {
    section_of(bay, &Clearances::of(study))
}

/// The same of what clearance found.
pub(super) fn section_of(bay: &Bay, found: &Clearances<'_>) -> Section {
    section::section(bay, found)
}

/// Whether the study already withholds for this.
fn is_told(found: &Clearances<'_>, told: impl Fn(&Withheld) -> bool) -> bool {
    found.withheld.iter().any(told)
}

/// Whether what arms and pads touch in place, if anything, is told by another reason to withhold:
/// what touches a post has no clear lock, or is tight as parked.
fn is_placed_told(found: &Clearances<'_>) -> bool {
    let told = !found.carried.is_empty()
        || found.highest_clear_lock.is_none()
        || is_told(found, |reason| {
            matches!(reason, Withheld::TightAsParked { moving, .. }
                if moving.starts_with("lift/"))
        });
    told && !found.withheld.is_empty()
}

#[cfg(test)]
mod tests;

//! Where should the vehicle stand instead, so that the arms reach and meet nothing?
//!
//! The shortest move for reach alone is found exactly. What the arms then meet is looked at for a
//! bounded number of moves in whole steps, the shortest first; the first that meets nothing, and that
//! the room is no more against than where the vehicle stands now, is proposed, with how much longer
//! it is than the shortest for reach.

use glam::DVec2;

use super::scene::{Room, on_posts};
use super::shift::{Least, NoMove, Wanted, moved, steps_m, whole_steps};
use super::swing::{SwingIn, swing_in};
use crate::bay::Bay;
use crate::clearance::carried::carried;
use crate::clearance::gap::Solver;
use crate::clearance::uncertainty::Uncertainty;
use crate::clearance::{Heights, StudyError, heights};
use crate::ground::loads::balance_holds;

/// Moves looked at for what the arms meet: in fine steps about the shortest, then in coarse ones.
const MOST_FINE: usize = 6;
const MOST_COARSE: usize = 18;
/// Coarse steps looked at to every side of the shortest.
const COARSE_AROUND: i32 = 8;
/// Moves looked at for driving in, for standing in the room and for the whole way up.
const MOST_ROOM: usize = 8;

/// A place to move the vehicle to.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// To the right and into the bay, metres.
    pub by_m: DVec2,
    /// What is against it all the same; none when the arms reach and meet nothing there.
    pub against: Option<Against>,
    /// How many moves were looked at for what the arms meet.
    pub tried: usize,
    /// The longest of them, metres: what lies between it and the shortest for reach is not ruled
    /// out, nor what lies beyond.
    pub farthest_m: f64,
    /// Whether the arms can be swung in there.
    pub swing: SwingIn,
    /// How high, and whether the room allows it: where the vehicle stands now, and there; none
    /// when it was not looked at.
    pub room: Option<[Heights; 2]>,
}

/// What is against a place.
#[derive(Debug, Clone, PartialEq)]
pub enum Against {
    /// An arm or a pad touches something.
    Touches(String, String),
    /// Balance or an arm's load stops there: as the file gives the vehicle, before parts come out,
    /// or with some of them out.
    Balance,
    /// The room is against it more than where the vehicle stands now: it can't be driven in, stands
    /// too near something, or no lock is clear though one is now.
    Room,
    /// On this floor the arms don't reach from there.
    Reach,
}

impl Against {
    /// The higher the worse.
    const fn rank(&self) -> u8 {
        match self {
            // Balance is somebody else's to weigh; the room's walls and a touch are not.
            Self::Balance => 1,
            Self::Room => 2,
            Self::Touches(..) => 3,
            Self::Reach => 4,
        }
    }
}

/// The shortest move for reach alone, and the one proposed.
#[derive(Debug, Clone, PartialEq)]
pub struct Moves {
    /// For reach alone.
    pub least: Least,
    /// In whole steps; none when the places that do are narrower than a step.
    pub proposal: Option<Proposal>,
}

/// Looks for a move.
pub(super) fn moves(
    bay: &Bay,
    uncertainty: Uncertainty,
    solver: &mut Solver,
) -> Result<Result<Moves, NoMove>, StudyError> {
    let wanted = Wanted::new(bay, uncertainty)?;
    let least = match wanted.least() {
        Ok(least) => least,
        Err(none) => return Ok(Err(none)),
    };
    let [fine, coarse] = steps_m(bay.units);
    let steps = |step_m: f64, around: i32| {
        whole_steps(least.by_m, step_m, around)
            .into_iter()
            .filter(|&by_m| wanted.all_reach(by_m))
    };
    let mut near: Vec<DVec2> = steps(fine, 3).take(MOST_FINE).collect();
    if near.is_empty() {
        near = steps(fine * 0.25, 6).take(MOST_FINE).collect();
    }
    near.extend(spread_out(
        steps(coarse, COARSE_AROUND),
        coarse,
        MOST_COARSE,
    ));
    let here = heights(bay)?;
    let mut looks = 0;
    let mut farthest_m: f64 = 0.0;
    let mut best: Option<Proposal> = None;
    let rank = |against: &Option<Against>| against.as_ref().map_or(0, Against::rank);
    for (index, by_m) in near.into_iter().enumerate() {
        farthest_m = farthest_m.max(by_m.length());
        let place = moved(bay, by_m);
        let mut against = against(&place, uncertainty, solver)?;
        let mut room = None;
        if against.is_none() {
            if looks == MOST_ROOM {
                break;
            }
            looks += 1;
            let there = heights(&place)?;
            let no_lock = there.highest_clear_lock.is_none() && here.highest_clear_lock.is_some();
            if there.reasons > here.reasons || no_lock {
                against = Some(Against::Room);
            }
            room = Some([here, there]);
        }
        let is_free = against.is_none();
        if best
            .as_ref()
            .is_none_or(|best| rank(&against) < rank(&best.against))
        {
            best = Some(Proposal {
                by_m,
                against,
                tried: index + 1,
                farthest_m,
                swing: swing_in(&Room::new(&place, &uncertainty)?, solver),
                room,
            });
        }
        if let Some(best) = &mut best {
            (best.tried, best.farthest_m) = (index + 1, farthest_m);
        }
        if is_free {
            break;
        }
    }
    Ok(Ok(Moves {
        least,
        proposal: best,
    }))
}

/// The first of the moves, and of the rest those that are at least two steps from any taken before.
fn spread_out(moves: impl Iterator<Item = DVec2>, step_m: f64, most: usize) -> Vec<DVec2> {
    let mut taken: Vec<DVec2> = Vec::with_capacity(most);
    for by_m in moves {
        if taken.len() == most {
            break;
        }
        if taken.iter().all(|one| one.distance(by_m) > 1.9 * step_m) {
            taken.push(by_m);
        }
    }
    taken
}

/// What is against a place of the vehicle, the cheapest question first.
fn against(
    bay: &Bay,
    uncertainty: Uncertainty,
    solver: &mut Solver,
) -> Result<Option<Against>, StudyError> {
    if !Wanted::new(bay, uncertainty)?.all_reach(DVec2::ZERO) {
        return Ok(Some(Against::Reach));
    }
    if let Some(touches) = touching(bay, uncertainty, solver)? {
        return Ok(Some(touches));
    }
    Ok((!balance_holds(bay, &uncertainty)).then_some(Against::Balance))
}

/// What an arm or a pad in its place touches.
pub(super) fn touching(
    bay: &Bay,
    uncertainty: Uncertainty,
    solver: &mut Solver,
) -> Result<Option<Against>, StudyError> {
    let room = Room::new(bay, &uncertainty)?;
    if let Some((corner, post)) = on_posts(&room, solver) {
        let arm = format!("lift/arm {}", corner.name());
        return Ok(Some(Against::Touches(arm, post)));
    }
    for uncertainty in [Uncertainty::NONE, uncertainty] {
        if let Some(touch) = carried(bay, &uncertainty, solver)?.into_iter().next() {
            return Ok(Some(Against::Touches(touch.part, touch.vehicle)));
        }
    }
    Ok(None)
}

//! Do arms, pads or carriages touch the vehicle anywhere but under its lift points, or each other?
//!
//! Until the pads carry, the lift parts climb past the standing vehicle; from then on body and
//! lift parts keep their places to each other, and only the wheels still sink as far as their
//! droop. So each pair needs one short climb and one standing comparison. A pad meets its own
//! lift point by design: pads are lowered by a little more than the uncertainty for this check, but
//! not where they may meet another arm, or a part that may hang lower than their point. How far two
//! parts may be off each other, every ± against them, is in `allowed`.
//!
//! An arm rests at a tooth, so that how it lies under the vehicle hangs on where in the parking box that
//! stands, and not only on the box's corners. The box is looked at as a whole, with all that arms and
//! vehicle may cover in it; what may touch then is looked at in its halves, and so on. Nothing is sampled:
//! what is told apart is apart in every place.

mod allowed;
mod lift_part;
mod pairs;
mod parked;
mod partings;
mod piece;
mod points;
mod scene;
mod swung;
#[cfg(test)]
mod tests;

use std::collections::VecDeque;

use self::allowed::Allowed;
use self::pairs::Pairs;
use self::parked::{Parked, Part};
use self::partings::Partings;
use self::piece::Piece;
use self::points::Points;
use self::scene::Scene;
use super::findings::ContactFinding;
use super::gap::Solver;
use super::movers::MoverError;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, Side};
use crate::solids::vehicle;

/// Pieces of the parking box that are cut before what is left counts as touching: parts that pass each
/// other within a millimetre over much of the box.
const MOST_PIECES: usize = 600;

/// Pieces that are looked at in the order of their size before one is followed down.
const COARSE_PIECES: usize = 16;

/// Lift parts that touch the vehicle, by name; wherever in the parking box it stands, and at every
/// restraint tooth at which an arm may rest for it.
///
/// # Errors
/// When the vehicle can't be set on the pads.
pub(crate) fn carried(
    bay: &Bay,
    uncertainty: &Uncertainty,
    solver: &mut Solver,
) -> Result<Vec<ContactFinding>, MoverError> {
    let parts: Vec<Part> = vehicle::parts(bay).into_iter().map(Part::new).collect();
    let points = Points::new(bay, &parts, solver);
    let allowed = Allowed::new(bay, parts.len(), uncertainty)?;
    let mut look = Look {
        bay,
        allowed: &allowed,
        uncertainty,
        parts: &parts,
        points: &points,
        partings: Partings::new(parts.len()),
        solver,
    };
    let mut touching = points.met_before(&parts);
    // The larger pieces first: most are told apart, or touch in the middle of one. What is told neither in
    // them is followed down into the small: what one of those does not part is looked at in no other.
    let mut left = VecDeque::from([(Piece::whole(uncertainty), Pairs::all(parts.len()))]);
    let mut pieces = 0;
    let next = |left: &mut VecDeque<_>, pieces| {
        if pieces < COARSE_PIECES {
            left.pop_front()
        } else {
            left.pop_back()
        }
    };
    while let Some((piece, pairs)) = next(&mut left, pieces) {
        let mut may_touch = look.touching(piece, &pairs.without(&touching))?;
        if may_touch.is_empty() {
            continue;
        }
        pieces += 1;
        if piece.is_small() || pieces > MOST_PIECES {
            touching.add(&may_touch);
            continue;
        }
        let touch = look.touching(Piece::at(piece.middle), &may_touch)?;
        touching.add(&touch);
        may_touch = may_touch.without(&touch);
        if !may_touch.is_empty() {
            left.extend(piece.halves().map(|half| (half, may_touch.clone())));
        }
    }
    Ok(by_name(bay, &parts, &touching))
}

/// What is looked at, and what is kept from one piece for the next.
struct Look<'a> {
    bay: &'a Bay,
    uncertainty: &'a Uncertainty,
    allowed: &'a Allowed,
    parts: &'a [Part],
    points: &'a Points,
    partings: Partings,
    solver: &'a mut Solver,
}

impl Look<'_> {
    /// Which of the pairs may touch in a piece of the parking box; in one place, which do.
    fn touching(&mut self, piece: Piece, pairs: &Pairs) -> Result<Pairs, MoverError> {
        let mut found = Pairs::none(self.parts.len());
        if pairs.is_empty() {
            return Ok(found);
        }
        let parked = Parked::new(self.bay, piece)?;
        let leads: &[Option<Side>] = if self.uncertainty.mismatch_m > 0.0 {
            &[None, Some(Side::Left), Some(Side::Right)]
        } else {
            &[None]
        };
        for lead in leads {
            let scene = Scene::new(self, &parked, *lead)?;
            scene.touching(pairs, self, &mut found);
        }
        Ok(found)
    }
}

/// The pairs by their names, each once.
fn by_name(bay: &Bay, parts: &[Part], touching: &Pairs) -> Vec<ContactFinding> {
    if touching.is_empty() {
        return Vec::new();
    }
    let names = parked::names(bay);
    let name = |kind: usize| names[kind].clone();
    let [with_vehicle, each_other] = touching.told();
    let mut found: Vec<ContactFinding> = with_vehicle
        .into_iter()
        .map(|(part, kind)| (name(kind), parts[part].part.solid.name.clone()))
        .chain(
            each_other
                .into_iter()
                .map(|(one, other)| (name(one), name(other))),
        )
        .map(|(part, vehicle)| ContactFinding {
            part,
            vehicle,
            clearance_m: 0.0,
        })
        .collect();
    found.sort_by(|a, b| (&a.part, &a.vehicle).cmp(&(&b.part, &b.vehicle)));
    found.dedup();
    found
}

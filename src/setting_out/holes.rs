//! From where are the holes of a laid plate checked?
//!
//! By then the posts stand on the plates and cover some of the marks: a tape runs straight only where
//! none of them is in its way.

use glam::DVec2;

use super::points::{FloorPoint, PointKind};
use super::puller::Puller;
use super::way::{BESIDE_M, HOOK_M, Standing, meets};
use crate::bay::{Bay, Side};
use crate::solids::posts::{carriages, posts};
use crate::solids::{Role, Solid};

/// Marks that may be pulled from, beside the corners of the hole's own plate.
const BASES: [&str; 9] = ["H", "J", "C", "D", "E", "F", "G", "M", "N"];
/// What of the lift hangs no lower leaves a tape room under it, metres.
const LOW_M: f64 = 0.15;

/// What is to be said of the check.
#[derive(Debug, Clone, Default)]
pub(super) struct Checked {
    /// Whether carriages are raised out of the way for it.
    pub(super) carriages_up: bool,
    /// Holes that no two tapes reach.
    pub(super) not_reached: Vec<String>,
}

/// A pull from each of two marks to every hole, clear of what stands there by then.
pub(super) fn holes(
    pull: &mut Puller<'_>,
    bay: &Bay,
    points: &[FloorPoint],
    things: &[Standing],
    sets: f64,
) -> Checked {
    let lift = posts(bay);
    let is_low = |solid: &&Solid| solid.bounds().0.z < LOW_M;
    let stands = |solid: &&Solid| matches!(solid.role, Role::Post(_) | Role::PowerUnit(_));
    let standing: Vec<&Solid> = lift.iter().filter(stands).filter(is_low).collect();
    let carriages = carriages(bay);
    let carriages: Vec<&Solid> = carriages.iter().filter(is_low).collect();
    let things: Vec<&Solid> = things.iter().map(|thing| &thing.solid).collect();
    let is_plate = |solid: &&Solid| matches!(solid.role, Role::BasePlate(_) | Role::FloorPlate);
    let plates: Vec<&Solid> = lift.iter().filter(is_plate).collect();
    let is_met = |solids: &[&Solid], tape: [DVec2; 2], within: f64| {
        solids.iter().any(|solid| meets(solid, tape, within))
    };
    let mut checked = Checked::default();
    for point in points {
        let PointKind::Hole(side) = point.kind else {
            continue;
        };
        let name = match side {
            Side::Left => "L",
            Side::Right => "R",
        };
        let corners = ["P1", "P2", "P3", "P4"].map(|corner| format!("{name}{corner}"));
        let bare = BASES.iter().copied().filter(|letter| {
            let at = pull.at(letter);
            at.is_some_and(|at| !is_met(&plates, [at; 2], HOOK_M))
        });
        let bases: Vec<&str> = bare.chain(corners.iter().map(String::as_str)).collect();
        // Rather past what stands in the room as well; if need be with the carriages up.
        let ways = [
            [&standing[..], &carriages, &things].concat(),
            [&standing[..], &carriages].concat(),
            standing.clone(),
        ];
        let found = ways.iter().enumerate().find_map(|(way, solids)| {
            let free = bases.iter().copied().filter(|letter| {
                let at = pull.at(letter);
                at.is_some_and(|at| !is_met(solids, [at, point.at_m], BESIDE_M))
            });
            let free: Vec<&str> = free.collect();
            let pair = pull.best_pair(&free, std::slice::from_ref(&point.letter), sets)?;
            Some((way, pair))
        });
        let Some((way, pair)) = found else {
            checked.not_reached.push(point.letter.clone());
            continue;
        };
        checked.carriages_up |= way == 2;
        let word = if side == Side::Left { "left" } else { "right" };
        let why = format!("{word} plate, hole {}", point.letter);
        pull.cross(pair, &point.letter, [why, "the same".into()], sets);
    }
    checked
}

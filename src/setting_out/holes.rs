//! From where are the holes of a laid plate checked?
//!
//! By then the posts stand on the plates and cover some of the marks: a tape runs straight only where
//! none of them is in its way. A hole that no two such tapes hold closely enough is checked from the
//! edges of its plate, which lies on its corner marks.

use glam::DVec2;

use super::points::{FloorPoint, PointKind};
use super::puller::{Puller, foot};
use super::way::{BESIDE_M, HOOK_M, Standing, meets};
use crate::bay::{Bay, Side};
use crate::solids::posts::{carriages, posts};
use crate::solids::{Role, Solid};

/// Marks that may be pulled from, beside the corners of the hole's own plate. Corners of the room are
/// none: they are off by as much as the room is.
const BASES: [&str; 9] = ["H", "J", "C", "D", "E", "F", "G", "M", "N"];
/// What of the lift hangs no lower leaves a tape room under it, metres.
const LOW_M: f64 = 0.15;

/// What is to be said of the check.
#[derive(Debug, Clone, Default)]
pub(super) struct Checked {
    /// Whether carriages are raised out of the way for it.
    pub(super) carriages_up: bool,
    /// Holes that no tapes reach.
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
    // What the study counts a part of the lift off by.
    let counted = 2.0 * bay.policy.measured_lift.m();
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
        let best = |solids: &[&Solid], most_m: f64| {
            let free = bases.iter().copied().filter(|letter| {
                let at = pull.at(letter);
                at.is_some_and(|at| !is_met(solids, [at, point.at_m], BESIDE_M))
            });
            let free: Vec<&str> = free.collect();
            let pair = pull.best_pair(&free, std::slice::from_ref(&point.letter), sets);
            pair.filter(|(_, off)| *off <= most_m).map(|(pair, _)| pair)
        };
        // Rather past what stands in the room as well.
        let all = [&standing[..], &carriages, &things].concat();
        let of_lift = [&standing[..], &carriages].concat();
        let pair = best(&all, counted).or_else(|| best(&of_lift, counted));
        // Then by short tapes over the plate; if need be with the carriages up.
        let edges = |solids: &[&Solid]| {
            let places = corners.each_ref().map(|corner| pull.at(corner));
            let [one, two, three, four] = places;
            free_edges([one?, two?, three?, four?], point.at_m, |tape| {
                is_met(solids, tape, BESIDE_M)
            })
        };
        let word = if side == Side::Left { "left" } else { "right" };
        let why = format!("{word} plate, hole {}", point.letter);
        if let Some(pair) = pair {
            pull.cross(pair, &point.letter, [why, "the same".into()], sets);
        } else if let Some(found) = edges(&of_lift).or_else(|| edges(&standing)) {
            checked.carriages_up |= edges(&of_lift).is_none();
            let edges = found.map(|edge| edge.map(|index| corners[index].as_str()));
            let whys = [format!("{why}, square to the edge"), "the same".into()];
            pull.off_edges(edges, &point.letter, whys, sets);
        } else if let Some(pair) = best(&standing, f64::INFINITY) {
            checked.carriages_up = true;
            pull.cross(pair, &point.letter, [why, "the same".into()], sets);
        } else {
            checked.not_reached.push(point.letter.clone());
        }
    }
    checked
}

/// The nearest edges of a plate, along the bay and across it, from which a short tape square to each runs
/// to a hole without meeting anything, by the numbers of their corners.
fn free_edges(
    corners: [DVec2; 4],
    hole: DVec2,
    is_met: impl Fn([DVec2; 2]) -> bool,
) -> Option<[[usize; 2]; 2]> {
    let nearest = |edges: [[usize; 2]; 2]| {
        let each = edges.into_iter().filter_map(|edge| {
            let (from, _) = foot(edge.map(|index| corners[index]), hole);
            (!is_met([from, hole])).then(|| (edge, from.distance(hole)))
        });
        each.min_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(edge, _)| edge)
    };
    // Outer or inner edge, rear or front edge.
    Some([nearest([[0, 3], [1, 2]])?, nearest([[0, 1], [3, 2]])?])
}

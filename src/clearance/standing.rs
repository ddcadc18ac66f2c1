//! Does the lift stand where it is drawn, and can its columns be tipped up there?

use glam::DVec2;

use super::body::Body;
use super::findings::{StandUp, StandingFinding};
use super::gap::{Separation, Solver};
use super::prepare::FixedSet;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, Side};
use crate::solids::{Role, Solid, posts, shell};

/// Rooms wider than this (metres) are not listed.
const LISTED_M: f64 = 0.5;

/// Fixed parts of the lift.
fn is_lift(role: Role) -> bool {
    matches!(
        role,
        Role::Post(_)
            | Role::BasePlate(_)
            | Role::PowerUnit(_)
            | Role::TieBeam
            | Role::FloorPlate
            | Role::ShutOffBar
    )
}

/// Things the lift's fixed parts must not touch. The floor is what they stand on.
fn is_room(role: Role) -> bool {
    !is_lift(role) && !role.moves() && role != Role::Floor
}

/// Every fixed part of the lift against room, door in all states, opener and obstacles: the pairs
/// with less than half a metre between them, nearest first.
#[must_use]
pub(super) fn standing(groups: &[&FixedSet], solver: &mut Solver) -> Vec<StandingFinding> {
    let mut found: Vec<StandingFinding> = Vec::new();
    let parts = groups.iter().flat_map(|group| group.pairs());
    for (part, part_body) in parts.filter(|(solid, _)| is_lift(solid.role)) {
        for (other, other_body) in groups
            .iter()
            .flat_map(|group| group.pairs())
            .filter(|(solid, _)| is_room(solid.role))
        {
            if apart_by_boxes(part_body, other_body) > LISTED_M {
                continue;
            }
            let (nominal, finding_room) = nominal_room(part, other, solver);
            let worst_m = match solver.gap(part_body, glam::DVec3::ZERO, other_body) {
                Separation::Apart(gap) => gap.lower,
                Separation::Meet => -solver
                    .depth(part_body, glam::DVec3::ZERO, other_body)
                    .unwrap_or(f64::INFINITY)
                    .min(1e3),
            };
            if worst_m > LISTED_M {
                continue;
            }
            // The same pair may stand in several door states: keep the worst.
            if let Some(known) = found
                .iter_mut()
                .find(|known| known.part == part.name && known.other == other.name)
            {
                if worst_m < known.worst_m {
                    known.worst_m = worst_m;
                    known.room_m = nominal;
                    known.overlap_m = finding_room;
                }
                continue;
            }
            found.push(StandingFinding {
                part: part.name.clone(),
                other: other.name.clone(),
                room_m: nominal,
                overlap_m: finding_room,
                worst_m,
            });
        }
    }
    found.sort_by(|a, b| a.worst_m.total_cmp(&b.worst_m));
    found
}

/// Room between two solids exactly as written, and their overlap when they meet.
fn nominal_room(part: &Solid, other: &Solid, solver: &mut Solver) -> (f64, Option<f64>) {
    let (a, b) = (Body::exact(part), Body::exact(other));
    match solver.gap(&a, glam::DVec3::ZERO, &b) {
        Separation::Apart(gap) => (gap.lower, None),
        Separation::Meet => (0.0, solver.depth(&a, glam::DVec3::ZERO, &b)),
    }
}

fn apart_by_boxes(a: &Body, b: &Body) -> f64 {
    (a.low() - b.high())
        .max(b.low() - a.high())
        .max(glam::DVec3::ZERO)
        .length()
}

/// What tipping a column up needs, and the ceiling it has.
///
/// A column tipped up about its foot sweeps the diagonal of its side view; the smaller side of
/// the section is the better way to tip it.
#[must_use]
pub(super) fn stand_up(bay: &Bay, uncertainty: &Uncertainty) -> StandUp {
    let column = &bay.lift.column;
    let side = column.width.min(column.depth).m();
    let y = bay.lift.post_line.m();
    let half = DVec2::new(column.width.m(), column.depth.m()).length() * 0.5;
    let mut ceiling = f64::INFINITY;
    for post in [Side::Left, Side::Right] {
        let x = posts::column_middle_x_m(bay, post);
        for corner in [
            DVec2::new(-half, -half),
            DVec2::new(half, -half),
            DVec2::new(-half, half),
            DVec2::new(half, half),
            DVec2::ZERO,
        ] {
            ceiling = ceiling.min(shell::ceiling_height_m(bay, x + corner.x, y + corner.y));
        }
    }
    StandUp {
        needs_m: column.height.m().hypot(side) + uncertainty.lift_m,
        ceiling_at_posts_m: ceiling - uncertainty.garage_m,
        highest_ceiling_m: shell::highest_ceiling_m(bay) - uncertainty.garage_m,
    }
}

//! Does the lift stand where it is drawn, and can its columns be tipped up there?

use glam::DVec2;

use super::body::Body;
use super::findings::{StandUp, StandingFinding};
use super::gap::{Separation, Solver};
use super::prepare::FixedSet;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, Side};
use crate::solids::{Layer, Role, Solid, posts, shell};

/// Overlap up to which two solids only touch, metres.
const TOUCHING_M: f64 = 0.001;

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
pub(super) fn standing(
    groups: &[&FixedSet],
    uncertainty: &Uncertainty,
    solver: &mut Solver,
) -> Vec<StandingFinding> {
    let mut found: Vec<StandingFinding> = Vec::new();
    let parts = groups.iter().flat_map(|group| group.pairs());
    for (part, part_body) in parts.filter(|(solid, _)| is_lift(solid.role)) {
        let part_body = &part_body.clone().widened(uncertainty.lift_in_room_more());
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
                Separation::Meet => -overlap_m(other.role, part_body, other_body, solver),
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

/// Parts of door and opener that, as described, stand in the ceiling by more than the ± of their
/// places: a height was measured or written wrongly, or the ceiling is not what it is taken for.
/// They withhold nothing; the lower of two wrong heights still counts.
pub(super) fn door_in_ceiling(groups: &[&FixedSet], solver: &mut Solver) -> Vec<StandingFinding> {
    let of = |wanted: fn(Role) -> bool| {
        groups
            .iter()
            .flat_map(|group| group.pairs())
            .filter(move |(solid, _)| wanted(solid.role))
            .map(|(solid, _)| solid)
    };
    let mut found: Vec<StandingFinding> = Vec::new();
    for part in of(|role| role.layer() == Layer::Door) {
        let body = Body::exact(part);
        for ceiling in of(|role| role == Role::Ceiling) {
            let above = Body::exact(ceiling);
            let known = found.iter().any(|one| one.part == part.name);
            if known
                || apart_by_boxes(&body, &above) > 0.0
                || solver.gap(&body, glam::DVec3::ZERO, &above) != Separation::Meet
            {
                continue;
            }
            let overlap = solver
                .depth(&body, glam::DVec3::ZERO, &above)
                .unwrap_or(f64::INFINITY);
            if overlap > TOUCHING_M {
                found.push(StandingFinding {
                    part: part.name.clone(),
                    other: ceiling.name.clone(),
                    room_m: 0.0,
                    overlap_m: Some(overlap),
                    worst_m: -overlap,
                });
            }
        }
    }
    found
}

/// What is short where a part meets something. Out of walls and ceiling it is measured into the
/// room: the shortest way out may lead through the wall to its far side.
fn overlap_m(other: Role, part: &Body, body: &Body, solver: &mut Solver) -> f64 {
    let shortest = solver
        .depth(part, glam::DVec3::ZERO, body)
        .unwrap_or(f64::INFINITY)
        .min(1e3);
    let size = body.high() - body.low();
    match other {
        Role::Ceiling => shortest.max(part.high().z - body.low().z),
        Role::Wall if size.x < size.y => {
            // A side wall: left of the room when its middle is left of the part's.
            let into_right = body.high().x - part.low().x;
            let into_left = part.high().x - body.low().x;
            shortest.max(
                if body.low().x + body.high().x < part.low().x + part.high().x {
                    into_right
                } else {
                    into_left
                },
            )
        }
        Role::Wall => shortest.max(part.high().y - body.low().y),
        _ => shortest,
    }
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
/// A column tipped up turns about the edge of its base plate and sweeps the diagonal from there to
/// the far edge of its top; the narrower way is the better one.
#[must_use]
pub(super) fn stand_up(bay: &Bay, uncertainty: &Uncertainty) -> StandUp {
    let (column, plate) = (&bay.lift.column, &bay.lift.base_plate);
    let foot = |plate: f64, column: f64, off: f64| (plate + column) * 0.5 + off.abs();
    let side = foot(plate.width.m(), column.width.m(), plate.inward.m()).min(foot(
        plate.depth.m(),
        column.depth.m(),
        0.0,
    ));
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

//! Can the vehicle be driven in to its place with its margins kept?
//!
//! The vehicle on its tyres is swept along the bay from outside to its place: for convex bodies
//! moved in a straight line the swept solid is exactly the hull of its two ends; where the floor
//! falls, the line follows it. The door is open and the arms are swung aside.

use std::cell::LazyCell;

use glam::DVec3;

use super::body::{Body, higher, lower};
use super::findings::{DoorState, PairFinding};
use super::gap::{Separation, Solver};
use super::movers::Movers;
use super::pairs::rule;
use super::prepare::Groups;
use super::sweep::Fixed;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, FallToward, Floor, Policy};
use crate::solids::{Role, Solid, arms, posts, shell};

/// How far outside the door wall the sweep starts ahead of the vehicle's farthest point.
const OUTSIDE_M: f64 = 0.5;

/// Jambs stand on the floor; what starts higher than this is over the opening.
const HEADER_FROM_M: f64 = 0.5;

/// The margin asked while driving in; none for pairs that are left out.
fn margin(moving: Role, fixed: &Fixed, policy: &Policy) -> Option<f64> {
    let wheel = matches!(moving, Role::Wheel(_));
    match fixed.role {
        // Driven over; the body must keep the lift's own margin above it.
        Role::FloorPlate | Role::BasePlate(_) => (!wheel).then(|| policy.lift_parts.m()),
        Role::DoorWall if fixed.body.low().z < HEADER_FROM_M => Some(policy.beside_vehicle.m()),
        Role::DoorWall => Some(policy.over_vehicle.m()),
        // How the vehicle stands to the walls is checked as parked.
        Role::Wall | Role::Floor => None,
        Role::Arm(_) | Role::Pad(_) | Role::Carriage(_) => Some(policy.lift_parts.m()),
        other => rule(moving, other, policy).map(|rule| rule.margin_m),
    }
}

/// How much lower and how much higher the vehicle may stand on its way in than in its place, the
/// farthest `way` metres out. A fall is taken to go on outside the door.
fn rises_m(bay: &Bay, way: f64) -> [f64; 2] {
    match &bay.garage.floor {
        Floor::Level => [0.0, 0.0],
        Floor::Fall { slope, toward } => match toward {
            FallToward::Door => [-slope * way, 0.0],
            FallToward::Back => [0.0, slope * way],
            FallToward::Left | FallToward::Right => [0.0, 0.0],
        },
        Floor::Levels(_) => {
            let half = bay.garage.width.m();
            let (low, high) =
                shell::floor_level_range_m(bay, [-half, 0.0], [half, bay.garage.depth.m()]);
            [low - high, high - low]
        }
    }
}

/// How far a part may lean or nod on the way in where the floor is uneven: one tyre on the highest
/// place of the way and another on the lowest.
fn lean(bay: &Bay, body: &Body, way: f64) -> DVec3 {
    let Floor::Levels(_) = bay.garage.floor else {
        return DVec3::ZERO;
    };
    let [down, up] = rises_m(bay, way);
    let step = up.max(-down);
    let vehicle = &bay.vehicle;
    let track = vehicle.track[0].min(vehicle.track[1]).m();
    let (across, along) = (step / track, step / vehicle.wheelbase.m());
    let height = body.high().z.abs();
    DVec3::new(
        across * height,
        along * height,
        across * vehicle.body_width.m() + along * vehicle.length.m(),
    )
}

/// Pairs that come nearer than their margin while the vehicle is driven in.
#[must_use]
pub(super) fn driving_in(
    bay: &Bay,
    movers: &Movers,
    groups: &Groups,
    uncertainty: &Uncertainty,
    solver: &mut Solver,
) -> Vec<PairFinding> {
    let how_deep =
        |swept: &Body, fixed: &Body, solver: &mut Solver| solver.depth(swept, DVec3::ZERO, fixed);
    pairs_met(bay, movers, groups, uncertainty, solver, how_deep)
}

/// The same pairs, in no order, without how deep those overlap that meet.
pub(super) fn met_driving_in(
    bay: &Bay,
    movers: &Movers,
    groups: &Groups,
    uncertainty: &Uncertainty,
    solver: &mut Solver,
) -> Vec<PairFinding> {
    pairs_met(bay, movers, groups, uncertainty, solver, |_, _, _| None)
}

fn pairs_met(
    bay: &Bay,
    movers: &Movers,
    groups: &Groups,
    uncertainty: &Uncertainty,
    solver: &mut Solver,
    how_deep: impl Fn(&Body, &Body, &mut Solver) -> Option<f64>,
) -> Vec<PairFinding> {
    let lift_spread = uncertainty.lift_spread();
    // Where the lift's own drive-through width is narrower than what the carriages leave, it
    // governs.
    let lift = &bay.lift;
    let narrower =
        ((lift.spacing - lift.carriage.proud * 2.0 - lift.drive_through).m() * 0.5).max(0.0);
    let aside: Vec<(Solid, Fixed)> = arms::parked(bay)
        .into_iter()
        .chain(posts::carriages(bay))
        .map(|solid| {
            let extra = match solid.role {
                Role::Carriage(_) => DVec3::X * narrower,
                _ => DVec3::ZERO,
            };
            let fixed = Fixed {
                body: Body::exact(&solid).widened(lift_spread + extra),
                solid: 0,
                role: solid.role,
            };
            (solid, fixed)
        })
        .collect();
    let in_the_way: Vec<(&str, Option<DoorState>, &Fixed)> = groups
        .common
        .bodies
        .iter()
        .map(|fixed| (groups.common.solids[fixed.solid].name.as_str(), None, fixed))
        .chain(groups.open.bodies.iter().map(|fixed| {
            let name = groups.open.solids[fixed.solid].name.as_str();
            (name, Some(DoorState::Open), fixed)
        }))
        .chain(
            aside
                .iter()
                .map(|(solid, fixed)| (solid.name.as_str(), None, fixed)),
        )
        .collect();
    let mut found = Vec::new();
    for mover in &movers.standing {
        let way = mover.body.high().y + bay.vehicle.length.m() + OUTSIDE_M;
        let [down, up] = rises_m(bay, way);
        let mut ends = vec![DVec3::new(0.0, -way, down)];
        if up.total_cmp(&down).is_ne() {
            ends.push(DVec3::new(0.0, -way, up));
        }
        if let Floor::Levels(_) = bay.garage.floor {
            // Anywhere on the way the floor may be as high or as low as anywhere else on it.
            ends.extend([DVec3::Z * down, DVec3::Z * up]);
        }
        let lean = lean(bay, &mover.body, way);
        let (mut low, mut high) = (mover.body.low(), mover.body.high());
        for end in &ends {
            low = lower(low, mover.body.low() + *end);
            high = higher(high, mover.body.high() + *end);
        }
        let (low, high) = (low - lean, high + lean);
        let swept = LazyCell::new(|| {
            let moved = ends.iter().map(|end| mover.body.moved(*end));
            let along: Vec<Body> = std::iter::once(mover.body.clone()).chain(moved).collect();
            Body::hull(along).widened(lean)
        });
        for (name, door, fixed) in &in_the_way {
            let Some(margin_m) = margin(mover.role, fixed, &bay.policy) else {
                continue;
            };
            let apart = (low - fixed.body.high())
                .max(fixed.body.low() - high)
                .max(DVec3::ZERO)
                .length();
            if apart > margin_m {
                continue;
            }
            let (clearance_m, overlap_m) = match solver.gap(&swept, DVec3::ZERO, &fixed.body) {
                Separation::Apart(gap) => (gap.lower.max(0.0), None),
                Separation::Meet => (0.0, how_deep(&swept, &fixed.body, solver)),
            };
            let touches = clearance_m <= 0.0;
            if clearance_m < margin_m || touches {
                found.push(PairFinding {
                    moving: movers.solids[mover.solid].name.clone(),
                    fixed: (*name).to_owned(),
                    door: *door,
                    margin_m,
                    clearance_m,
                    overlap_m,
                    first_breach_m: None,
                    first_touch_m: None,
                    points_m: None,
                });
            }
        }
    }
    found.sort_by(|a, b| {
        let short =
            |pair: &PairFinding| pair.clearance_m - pair.margin_m - pair.overlap_m.unwrap_or(0.0);
        short(a).total_cmp(&short(b))
    });
    found
}

//! Can the vehicle be driven in to its place with its margins kept?
//!
//! The vehicle on its tyres is swept along the bay from outside to its place: for convex bodies
//! moved in a straight line the swept solid is exactly the hull of its two ends. The door is
//! open and the arms are swung aside.

use glam::DVec3;

use super::body::Body;
use super::findings::{DoorState, PairFinding};
use super::gap::{Separation, Solver};
use super::movers::Movers;
use super::pairs::rule;
use super::prepare::Groups;
use super::sweep::Fixed;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, Policy};
use crate::solids::{Role, Solid, arms, posts};

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
        // The walls are the room's; how the vehicle stands to them is checked as parked.
        Role::Wall | Role::Floor | Role::Ceiling | Role::TieBeam | Role::ShutOffBar => None,
        Role::Arm(_) | Role::Pad(_) | Role::Carriage(_) => Some(0.0),
        other => rule(moving, other, policy).map(|rule| rule.margin_m),
    }
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
    let lift_spread = uncertainty.lift_spread();
    let aside: Vec<(Solid, Fixed)> = arms::parked(bay)
        .into_iter()
        .chain(posts::carriages(bay))
        .map(|solid| {
            let fixed = Fixed {
                body: Body::exact(&solid).widened(lift_spread),
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
    let standing = movers
        .moving
        .iter()
        .filter(|mover| !mover.climbs && mover.from <= 0.0);
    for mover in standing {
        let way = -(mover.body.high().y + bay.vehicle.length.m() + OUTSIDE_M);
        let swept = mover.body.swept(DVec3::Y * way);
        for (name, door, fixed) in &in_the_way {
            let Some(margin_m) = margin(mover.role, fixed, &bay.policy) else {
                continue;
            };
            let apart = (swept.low() - fixed.body.high())
                .max(fixed.body.low() - swept.high())
                .max(DVec3::ZERO)
                .length();
            if apart > margin_m {
                continue;
            }
            let (clearance_m, overlap_m) = match solver.gap(&swept, DVec3::ZERO, &fixed.body) {
                Separation::Apart(gap) => (gap.lower.max(0.0), None),
                Separation::Meet => (0.0, solver.depth(&swept, DVec3::ZERO, &fixed.body)),
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

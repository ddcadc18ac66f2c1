//! How wide are the ways round the vehicle and the posts?
//!
//! In plan, by boxes about the bodies of the worst case: a box is never smaller than what it holds,
//! so no way is wider than told. What stands up to a person's height counts, and so does what hangs
//! lower than that. Each thing counts on the side of the vehicle that it lies on, also past its
//! corner, where the way round leads between the two.

use glam::DVec3;

use super::{Before, Turned, Way, WayKind};
use crate::bay::{Aim, Bay, Door, Floor, Side};
use crate::clearance::pairs::rule;
use crate::clearance::parked::as_parked;
use crate::clearance::prepare::Prepared;
use crate::clearance::sweep::Fixed;
use crate::solids::Role;
use crate::units::Length;

/// Tall enough where the file names nobody: 95 of 100 men of ANSUR II (unweighted, service
/// members) 1870 mm, and for movement 50, shoes 40 and a helmet 60 mm (EN 547-1, from memory).
const TALL: Length = Length::mm(2020.0);
/// What is no higher than this is stepped over: base plates, a floor plate.
const STEPPED_OVER_M: f64 = 0.05;

/// The tallest person of the file, or a tall one.
pub(super) fn tallest_m(bay: &Bay) -> f64 {
    bay.policy
        .people
        .iter()
        .map(|person| person.height.m())
        .reduce(f64::max)
        .unwrap_or(TALL.m())
}

/// A box in plan with what it stands for.
#[derive(Clone, Copy)]
struct Plan<'a> {
    name: &'a str,
    role: Role,
    low: DVec3,
    high: DVec3,
}

impl Plan<'_> {
    /// How far apart along x and along y; negative where they overlap.
    fn apart(&self, other: &Self) -> (f64, f64) {
        let apart = (self.low - other.high).max(other.low - self.high);
        (apart.x, apart.y)
    }

    /// Least distance in plan; 0 where they meet.
    fn distance(&self, other: &Self) -> f64 {
        let (x, y) = self.apart(other);
        x.max(0.0).hypot(y.max(0.0))
    }
}

fn plans<'a>(
    solids: &'a [crate::solids::Solid],
    bodies: &'a [Fixed],
    tallest_m: f64,
) -> impl Iterator<Item = Plan<'a>> {
    bodies
        .iter()
        .map(|fixed| Plan {
            name: &solids[fixed.solid].name,
            role: fixed.role,
            low: fixed.body.low(),
            high: fixed.body.high(),
        })
        .filter(move |plan| plan.low.z < tallest_m && plan.high.z > STEPPED_OVER_M)
}

/// Every way with the vehicle on its tyres.
pub(in crate::clearance) fn ways(bay: &Bay, prepared: &Prepared) -> Vec<Way> {
    let tallest = tallest_m(bay);
    let groups = &prepared.groups;
    let movers = &prepared.movers;
    let vehicle: Vec<Plan<'_>> = movers
        .standing
        .iter()
        .map(|mover| Plan {
            name: &movers.solids[mover.solid].name,
            role: mover.role,
            low: mover.body.low(),
            high: mover.body.high(),
        })
        .filter(|plan| plan.low.z < tallest)
        .collect();
    let Some(whole) = vehicle.iter().copied().reduce(|a, b| Plan {
        low: a.low.min(b.low),
        high: a.high.max(b.high),
        ..a
    }) else {
        return Vec::new();
    };
    let room: Vec<Plan<'_>> = plans(&groups.common.solids, &groups.common.bodies, tallest)
        .chain(plans(&groups.shut.solids, &groups.shut.bodies, tallest))
        .filter(|plan| {
            matches!(
                plan.role,
                Role::Wall
                    | Role::DoorWall
                    | Role::Obstacle(_)
                    | Role::DoorPanel
                    | Role::DoorFitting
                    | Role::Opener
            )
        })
        .collect();
    let mut found = Found(Vec::with_capacity(8));
    for thing in &room {
        let kind = beside(&whole, thing);
        for part in &vehicle {
            found.take(kind, part, thing);
        }
    }
    for post in plans(&groups.common.solids, &groups.common.bodies, tallest) {
        let (Role::Post(side) | Role::PowerUnit(side)) = post.role else {
            continue;
        };
        for part in &vehicle {
            found.take(WayKind::VehicleToPost(side), part, &post);
        }
        let outward = |thing: &Plan<'_>| {
            let (x, y) = post.apart(thing);
            let left = thing.low.x + thing.high.x < post.low.x + post.high.x;
            x >= y && left == (side == Side::Left)
        };
        // Against the room its place is off by more measures than against what moves between the posts.
        let more = prepared.uncertainty.lift_in_room_more();
        let in_room = Plan {
            low: post.low - more,
            high: post.high + more,
            ..post
        };
        for thing in room.iter().filter(|thing| outward(thing)) {
            found.take(WayKind::BehindPost(side), &in_room, thing);
        }
    }
    let mut carriages = [None; 2];
    for mover in as_parked(movers) {
        let Role::Carriage(side) = mover.role else {
            continue;
        };
        let carriage = Plan {
            name: &movers.solids[mover.solid].name,
            role: mover.role,
            low: mover.body.low(),
            high: mover.body.high(),
        };
        carriages[usize::from(side == Side::Right)] = Some(carriage);
        for part in &vehicle {
            found.take(WayKind::VehicleToPost(side), part, &carriage);
        }
    }
    if let [Some(left), Some(right)] = &carriages {
        found.take(WayKind::BetweenPosts, left, right);
    }
    found.named()
}

/// The narrowest of each kind so far.
struct Found<'a>(Vec<(WayKind, f64, &'a str, &'a str)>);

impl<'a> Found<'a> {
    fn take(&mut self, kind: WayKind, a: &Plan<'a>, b: &Plan<'a>) {
        let width = a.distance(b);
        match self.0.iter_mut().find(|way| way.0 == kind) {
            // What is no number is no way.
            Some(way) if width < way.1 || width.is_nan() => {
                *way = (
                    kind,
                    if width.is_nan() { 0.0 } else { width },
                    a.name,
                    b.name,
                );
            }
            Some(_) => {}
            None => self.0.push((kind, width, a.name, b.name)),
        }
    }

    fn named(self) -> Vec<Way> {
        self.0
            .into_iter()
            .map(|(kind, width_m, a, b)| Way {
                kind,
                width_m,
                between: (a.to_owned(), b.to_owned()),
            })
            .collect()
    }
}

/// On which side of the vehicle a thing lies: the side it is farther off by.
fn beside(vehicle: &Plan<'_>, thing: &Plan<'_>) -> WayKind {
    let (x, y) = vehicle.apart(thing);
    if x >= y {
        let left = thing.low.x + thing.high.x < vehicle.low.x + vehicle.high.x;
        WayKind::BesideVehicle(if left { Side::Left } else { Side::Right })
    } else if thing.low.y + thing.high.y > vehicle.low.y + vehicle.high.y {
        WayKind::Back
    } else {
        WayKind::Door
    }
}

/// The vehicle turned round about the point that is lined up with the post line: every box turned
/// by half a turn, exact on a level floor. None on any other, or when there is no door to shut.
pub(super) fn turned_round(before: &Before<'_>) -> Option<Turned> {
    let bay = before.bay;
    if bay.garage.floor != Floor::Level || bay.garage.door == Door::None {
        return None;
    }
    let (Aim::CentreOfGravity(offset) | Aim::LiftPoints(offset)) = bay.parking.aim;
    let about = DVec3::new(
        (bay.lift.across + bay.parking.across).m(),
        (bay.lift.post_line + offset).m(),
        0.0,
    );
    let movers = &before.prepared.movers;
    let turned =
        |point: DVec3| DVec3::new(2.0 * about.x - point.x, 2.0 * about.y - point.y, point.z);
    let (mut shuts, mut to_door, mut to_back) = (true, f64::INFINITY, f64::INFINITY);
    let mut meets = None;
    let groups = &before.prepared.groups;
    for mover in &movers.standing {
        let (a, b) = (turned(mover.body.low()), turned(mover.body.high()));
        let (low, high) = (a.min(b), a.max(b));
        let apart = |fixed: &Fixed| {
            (fixed.body.low() - high)
                .max(low - fixed.body.high())
                .max(DVec3::ZERO)
        };
        let holds = |fixed: &Fixed| {
            rule(mover.role, fixed.role, &bay.policy)
                .is_none_or(|rule| apart(fixed).length() > rule.margin_m)
        };
        // On its way too: a door that stands clear once shut may not come there.
        shuts &= groups.running.bodies.iter().all(holds);
        for fixed in &groups.shut.bodies {
            let apart = apart(fixed);
            shuts &= holds(fixed);
            if fixed.role == Role::DoorPanel && apart.x <= 0.0 && apart.z <= 0.0 {
                to_door = to_door.min(apart.y);
            }
        }
        for fixed in &groups.common.bodies {
            let solid = matches!(fixed.role, Role::Wall | Role::Obstacle(_));
            if (solid || fixed.role == Role::DoorWall) && meets.is_none() && !holds(fixed) {
                meets = Some((
                    movers.solids[mover.solid].name.clone(),
                    groups.common.solids[fixed.solid].name.clone(),
                ));
            }
            let apart = apart(fixed);
            let behind = fixed.body.low().y + fixed.body.high().y > low.y + high.y;
            if solid && behind && apart.x <= 0.0 && apart.z <= 0.0 {
                to_back = to_back.min(apart.y);
            }
            if fixed.role == Role::DoorWall {
                to_door = to_door.min(low.y - fixed.body.high().y);
            }
        }
    }
    Some(Turned {
        shuts: shuts && meets.is_none(),
        meets,
        to_door_m: to_door.max(0.0),
        to_back_m: to_back.max(0.0),
    })
}

#[cfg(test)]
mod tests;

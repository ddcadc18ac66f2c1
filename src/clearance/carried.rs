//! Do arms, pads or carriages touch the vehicle anywhere but under its lift points, or each other?
//!
//! Until the pads carry, the lift parts climb past the standing vehicle; from then on body and
//! lift parts keep their places to each other, and only the wheels still sink as far as their
//! droop. So each pair needs one short climb and one standing comparison. A pad meets its own
//! lift point by design: pads are lowered by a little more than the uncertainty for this check.

use glam::DVec3;

use super::arm_bodies::resting_swings;
use super::body::{Body, higher, lower};
use super::climb::{Climb, First, first_below};
use super::findings::ContactFinding;
use super::gap::{Separation, Solver, certified, plainly_apart};
use super::movers::MoverError;
use super::uncertainty::{Uncertainty, corners_on};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{ParkingError, Pose, Role, Shape, Solid, arms, attitude, posts, vehicle};

/// How far a pad is lowered so that meeting its own lift point does not count, beyond the ±.
const OWN_POINT_M: f64 = 0.002;

/// Rise per length that a body's underside may have over its own pad, on a floor that falls or
/// with the pads set unevenly.
const TILT_OVER_PAD: f64 = 0.05;

/// A part this near to a lift point holds it.
const ON_THE_POINT_M: f64 = 0.001;

/// Lift parts that touch the vehicle, by name; over the corners of the parking box and
/// over both neighbouring restraint teeth.
///
/// # Errors
/// When the vehicle can't be set on the pads.
pub(crate) fn carried(
    bay: &Bay,
    uncertainty: &Uncertainty,
    solver: &mut Solver,
) -> Result<Vec<ContactFinding>, MoverError> {
    let mut found: Vec<ContactFinding> = Vec::new();
    let parts: Vec<Part> = vehicle::parts(bay).into_iter().map(Part::new).collect();
    let mut places = vec![ParkingError::default()];
    if *uncertainty != Uncertainty::NONE {
        places.extend(uncertainty.parking_corners());
    }
    for place in places {
        let mut leads = vec![None];
        if uncertainty.mismatch_m > 0.0 {
            leads.extend([Some(Side::Left), Some(Side::Right)]);
        }
        let parked = Parked::new(bay, place)?;
        for lead in leads {
            let scene = Scene::new(bay, &parts, &parked, lead, uncertainty)?;
            scene.touching(bay, solver, &mut found);
            scene.touching_each_other(solver, &mut found);
        }
    }
    found.sort_by(|a, b| (&a.part, &a.vehicle).cmp(&(&b.part, &b.vehicle)));
    Ok(found)
}

/// A vehicle part with a ball about it, vehicle frame: most parts are told far from every arm by
/// that alone.
struct Part {
    part: vehicle::VehiclePart,
    middle: DVec3,
    radius: f64,
    lowest: f64,
}

impl Part {
    fn new(part: vehicle::VehiclePart) -> Self {
        let (low, high) = part.solid.bounds();
        Self {
            middle: (low + high) * 0.5,
            radius: (high - low).length() * 0.5,
            lowest: low.z,
            part,
        }
    }

    /// Whether the ball about the part, posed, comes near the box about a climbing lift part.
    fn may_meet(&self, pose: Pose, reach: f64, (low, high): (DVec3, DVec3), climb: f64) -> bool {
        let middle = pose.point(self.middle);
        let reach = DVec3::splat(self.radius + reach);
        let high = high + DVec3::Z * climb;
        // Asked this way round, what is no number is not apart.
        !((middle + reach).cmplt(low).any() || (middle - reach).cmpgt(high).any())
    }
}

/// A lift part with its uncertainty to the vehicle.
struct LiftPart<'a> {
    solid: &'a Solid,
    body: Body,
    /// The same against what rests on the arm's own pad.
    under_own_pad: Body,
}

/// One place of the vehicle, and the lift's parts as they are wanted for it.
struct Parked {
    place: ParkingError,
    rest: Pose,
    contact: attitude::Contact,
    solids: Vec<Solid>,
}

impl Parked {
    fn new(bay: &Bay, place: ParkingError) -> Result<Self, MoverError> {
        let rest = attitude::at_rest(bay, place)?;
        let mut solids = posts::carriages(bay);
        for corner in Corner::ALL {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            let point = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
            let reach = arms::reach_to(bay, corner, point.truncate());
            for swing in resting_swings(&reach) {
                solids.extend(arms::arm_and_pad(bay, corner, swing, reach.reach_m));
            }
        }
        Ok(Self {
            place,
            rest,
            contact: attitude::contact(bay, place)?,
            solids,
        })
    }
}

/// One place of the vehicle with the arms swung under it.
struct Scene<'a> {
    lift: Vec<LiftPart<'a>>,
    /// The box about all of them.
    low: DVec3,
    high: DVec3,
    parts: &'a [Part],
    rest: Pose,
    attitudes: Vec<attitude::Attitude>,
    contact: attitude::Contact,
    /// How much of its climb to the standing vehicle the leading carriage has done before the
    /// other starts.
    lead: Option<(Side, f64)>,
}

/// The side and, where it has one, the corner of a lift part.
fn side_of(role: Role) -> Option<(Side, Option<Corner>)> {
    match role {
        Role::Carriage(side) => Some((side, None)),
        Role::Arm(corner) | Role::Pad(corner) => Some((corner.side(), Some(corner))),
        _ => None,
    }
}

impl<'a> Scene<'a> {
    fn new(
        bay: &Bay,
        parts: &'a [Part],
        parked: &'a Parked,
        lead: Option<Side>,
        uncertainty: &Uncertainty,
    ) -> Result<Self, MoverError> {
        let lead = lead.map(|side| (side, uncertainty.mismatch_m));
        let relative = 1.5 * (uncertainty.vehicle_m + uncertainty.lift_m);
        let off = uncertainty.posts_to_carried();
        let spread = DVec3::splat(relative) + off;
        let on_own_pad = DVec3::new(relative, relative, 1.5 * uncertainty.lift_m) + off;
        let pad_drop = relative + off.z + OWN_POINT_M + TILT_OVER_PAD * bay.lift.pad.diameter.m();
        let part = |solid: &'a Solid| {
            let ahead = match (lead, side_of(solid.role)) {
                (Some((leading, by)), Some((side, _))) if leading == side => by,
                _ => 0.0,
            };
            let drop = match solid.role {
                Role::Pad(_) => pad_drop,
                _ => 0.0,
            };
            let exact = Body::exact(solid).moved(DVec3::Z * (ahead - drop));
            LiftPart {
                under_own_pad: exact.clone().widened(on_own_pad),
                body: exact.widened(spread),
                solid,
            }
        };
        let lift: Vec<LiftPart<'a>> = parked.solids.iter().map(part).collect();
        let (low, high) = lift.iter().fold(
            (DVec3::INFINITY, DVec3::NEG_INFINITY),
            |(low, high), part| (lower(low, part.body.low()), higher(high, part.body.high())),
        );
        Ok(Self {
            lift,
            low,
            high,
            parts,
            rest: parked.rest,
            attitudes: attitude::attitudes(
                bay,
                parked.place,
                lead.map_or([0.0; 4], |(side, by)| {
                    corners_on(side).map(|share| share * by)
                }),
            )?,
            contact: parked.contact,
            lead,
        })
    }

    /// Whether the corner's own lift point lies in or on the part. A lift point above the sill is
    /// reached through the body's side as it is drawn, so the pad is let into that part.
    fn holds_point(
        &self,
        bay: &Bay,
        part: &vehicle::VehiclePart,
        corner: Corner,
        solver: &mut Solver,
    ) -> bool {
        let index = vehicle::lift_point_at(corner, bay.parking.facing);
        let point = Pose::at(vehicle::lift_point_m(&bay.vehicle, index));
        let point = Body::of(
            &Shape::Box {
                half: DVec3::splat(1e-6),
            },
            &[point],
            DVec3::ZERO,
        );
        match solver.gap(&point, DVec3::ZERO, &Body::exact(&part.solid)) {
            Separation::Meet => true,
            Separation::Apart(gap) => gap.upper <= ON_THE_POINT_M,
        }
    }

    fn touching(&self, bay: &Bay, solver: &mut Solver, found: &mut Vec<ContactFinding>) {
        let longest_climb = self
            .attitudes
            .iter()
            .flat_map(|attitude| attitude.lift_off_last_m)
            .fold(self.contact.carry_m, f64::max)
            .max(0.0);
        for known in self.parts {
            let droop = known
                .part
                .wheel
                .map_or(0.0, |axle| bay.vehicle.droop[axle].m());
            let near = |of: (DVec3, DVec3)| {
                known.may_meet(self.rest, 0.0, of, longest_climb)
                    || self.attitudes.iter().any(|attitude| {
                        known.may_meet(attitude.bay_from_vehicle_at_zero, droop, of, 0.0)
                    })
            };
            let near_one = |lift: &LiftPart<'_>| near((lift.body.low(), lift.body.high()));
            if !near((self.low, self.high)) || !self.lift.iter().any(near_one) {
                continue;
            }
            let part = &known.part;
            let from_part = part.solid.bay_from_solid;
            let standing = Body::of(
                &part.solid.shape,
                &[self.rest.after(from_part)],
                DVec3::ZERO,
            );
            let raised: Vec<Body> = self
                .attitudes
                .iter()
                .map(|attitude| {
                    let pose = attitude
                        .bay_from_vehicle_at_zero
                        .after(Pose::at(DVec3::Z * -droop))
                        .after(from_part);
                    Body::of(&part.solid.shape, &[pose], DVec3::ZERO)
                })
                .collect();
            for LiftPart {
                solid,
                body,
                under_own_pad,
            } in &self.lift
            {
                let body = match solid.role {
                    Role::Arm(corner)
                        if known.lowest >= own_point_height(bay, corner) - ON_THE_POINT_M =>
                    {
                        under_own_pad
                    }
                    _ => body,
                };
                let known = |found: &[ContactFinding]| {
                    found
                        .iter()
                        .any(|one| one.part == solid.name && one.vehicle == part.solid.name)
                };
                if known(found) {
                    continue;
                }
                // While the part stands, the lift parts climb to where they meet it, or for a
                // wheel until it has sunk as far as it can.
                let until = match (solid.role, part.wheel) {
                    (_, Some(axle)) => self
                        .attitudes
                        .iter()
                        .map(|attitude| attitude.lift_off_last_m[axle])
                        .fold(self.contact.carry_m, f64::max),
                    (Role::Pad(corner), None) => self.contact.touch_m[corner.index()],
                    _ => self.contact.carry_m,
                };
                let ahead = match (self.lead, side_of(solid.role)) {
                    (Some((leading, by)), Some((side, _))) if leading == side => by,
                    _ => 0.0,
                };
                let until = (until - ahead).max(0.0);
                let climb = Climb {
                    up: DVec3::Z,
                    from: 0.0,
                    to: until,
                };
                let mut touches = boxes_meet(body, until, &standing)
                    && !clear_of_climb(body, until, &standing)
                    && first_below(solver, body, &standing, 0.0, climb) != First::Never;
                touches = touches
                    || raised.iter().any(|raised| {
                        boxes_meet(body, 0.0, raised)
                            && !plainly_apart(body, DVec3::ZERO, raised)
                            && match solver.gap(body, DVec3::ZERO, raised) {
                                Separation::Meet => true,
                                Separation::Apart(gap) => gap.lower <= 0.0,
                            }
                    });
                // Looked at last, since it matters to few pairs.
                let own_point = touches
                    && matches!(solid.role, Role::Pad(corner)
                        if self.holds_point(bay, part, corner, solver));
                if touches && !own_point {
                    found.push(ContactFinding {
                        part: solid.name.clone(),
                        vehicle: part.solid.name.clone(),
                        clearance_m: 0.0,
                    });
                }
            }
        }
    }
}

impl Scene<'_> {
    /// Arms and pads of different corners, and the other side's carriage: they climb together, so
    /// one standing comparison tells.
    fn touching_each_other(&self, solver: &mut Solver, found: &mut Vec<ContactFinding>) {
        for (index, one) in self.lift.iter().enumerate() {
            for other in &self.lift[index + 1..] {
                let strangers = match (side_of(one.solid.role), side_of(other.solid.role)) {
                    (Some((_, Some(a))), Some((_, Some(b)))) => a != b,
                    (Some((a, None)), Some((b, _))) | (Some((a, _)), Some((b, None))) => a != b,
                    _ => false,
                };
                let known = found
                    .iter()
                    .any(|known| known.part == one.solid.name && known.vehicle == other.solid.name);
                if !strangers
                    || known
                    || !boxes_meet(&one.body, 0.0, &other.body)
                    || plainly_apart(&one.body, DVec3::ZERO, &other.body)
                {
                    continue;
                }
                let touches = match solver.gap(&one.body, DVec3::ZERO, &other.body) {
                    Separation::Meet => true,
                    Separation::Apart(gap) => gap.lower <= 0.0,
                };
                if touches {
                    found.push(ContactFinding {
                        part: one.solid.name.clone(),
                        vehicle: other.solid.name.clone(),
                        clearance_m: 0.0,
                    });
                }
            }
        }
    }
}

/// Height of the lift point that an arm carries, vehicle frame.
fn own_point_height(bay: &Bay, corner: Corner) -> f64 {
    let index = vehicle::lift_point_at(corner, bay.parking.facing);
    vehicle::lift_point_m(&bay.vehicle, index).z
}

/// Whether the boxes about a climbing and a standing body ever meet.
fn boxes_meet(climbing: &Body, climb: f64, standing: &Body) -> bool {
    let high = climbing.high() + DVec3::Z * climb;
    !(high.cmplt(standing.low()).any() || climbing.low().cmpgt(standing.high()).any())
}

/// Whether a climbing body is plainly clear of a standing one on its whole climb: along a direction
/// in which both ends of the climb are apart all between is.
fn clear_of_climb(climbing: &Body, climb: f64, standing: &Body) -> bool {
    const APART_M: f64 = 1e-6;
    let toward = standing.low() + standing.high() - climbing.low() - climbing.high();
    let flat = DVec3::new(toward.x, toward.y, 0.0).normalize_or_zero();
    flat != DVec3::ZERO
        && [0.0, climb]
            .iter()
            .all(|&at| certified(climbing, DVec3::Z * at, standing, flat) > APART_M)
}

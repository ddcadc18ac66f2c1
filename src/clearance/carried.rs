//! Do arms, pads or carriages touch the vehicle anywhere but under its lift points, or each other?
//!
//! Until the pads carry, the lift parts climb past the standing vehicle; from then on body and
//! lift parts keep their places to each other, and only the wheels still sink as far as their
//! droop. So each pair needs one short climb and one standing comparison. A pad meets its own
//! lift point by design: pads are lowered by a little more than the uncertainty for this check.

use std::cell::OnceCell;

use glam::DVec3;

mod near;
mod parked;
#[cfg(test)]
mod tests;

use self::near::MayMeet;
use self::parked::{About, Parked, Part, side_of};
use super::body::Body;
use super::climb::{Climb, First, first_below};
use super::findings::ContactFinding;
use super::gap::{Separation, Solver, certified, plainly_apart};
use super::movers::MoverError;
use super::uncertainty::{Uncertainty, corners_on};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{ParkingError, Pose, Role, Shape, attitude, vehicle};

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
    let mut leads = vec![None];
    if uncertainty.mismatch_m > 0.0 {
        leads.extend([Some(Side::Left), Some(Side::Right)]);
    }
    let parked = places
        .into_iter()
        .map(|place| Parked::new(bay, place))
        .collect::<Result<Vec<_>, _>>()?;
    let scenes = parked
        .iter()
        .flat_map(|parked| leads.iter().map(move |lead| (parked, *lead)))
        .map(|(parked, lead)| Scene::new(bay, &parts, parked, lead, uncertainty))
        .collect::<Result<Vec<_>, _>>()?;
    // Most parts are far from most arms in all of them.
    let may_meet = MayMeet::new(bay, &parts, &scenes);
    for scene in &scenes {
        scene.touching(bay, &may_meet, solver, &mut found);
        scene.touching_each_other(&may_meet, solver, &mut found);
    }
    found.sort_by(|a, b| (&a.part, &a.vehicle).cmp(&(&b.part, &b.vehicle)));
    Ok(found)
}

/// A lift part with its uncertainty to the vehicle.
struct LiftPart {
    body: Body,
    /// The same against what rests on the arm's own pad.
    under_own_pad: Body,
}

/// One place of the vehicle with the arms swung under it.
struct Scene<'a> {
    parked: &'a Parked,
    parts: &'a [Part],
    /// How far each lift part stands above its place, metres.
    shift: Vec<f64>,
    /// How far each lift part may be off to the vehicle, and to what rests on its own pad.
    spread: [DVec3; 2],
    /// Made for those that something may meet.
    lift: Vec<OnceCell<LiftPart>>,
    attitudes: Vec<attitude::Attitude>,
    /// How much of its climb to the standing vehicle the leading carriage has done before the
    /// other starts.
    lead: Option<(Side, f64)>,
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
        let ahead = lead.map_or([0.0; 4], |(side, by)| {
            corners_on(side).map(|share| share * by)
        });
        let attitudes = attitude::attitudes(bay, parked.place, ahead)?;
        let mut scene = Self {
            parked,
            parts,
            shift: Vec::with_capacity(parked.lift.len()),
            spread: [spread, on_own_pad],
            lift: parked.lift.iter().map(|_| OnceCell::new()).collect(),
            attitudes,
            lead,
        };
        for (solid, _) in &parked.lift {
            let drop = match solid.role {
                Role::Pad(_) => pad_drop,
                _ => 0.0,
            };
            scene.shift.push(scene.ahead_m(solid.role) - drop);
        }
        Ok(scene)
    }

    /// By how much a lift part's carriage leads.
    fn ahead_m(&self, role: Role) -> f64 {
        match (self.lead, side_of(role)) {
            (Some((leading, by)), Some((side, _))) if leading == side => by,
            _ => 0.0,
        }
    }

    /// The box about a lift part.
    fn about(&self, index: usize) -> About {
        let (_, exact) = &self.parked.lift[index];
        let shift = DVec3::Z * self.shift[index];
        let spread = self.spread[0].max(DVec3::ZERO);
        About {
            low: exact.low() + shift - spread,
            high: exact.high() + shift + spread,
        }
    }

    fn lift_part(&self, index: usize) -> &LiftPart {
        self.lift[index].get_or_init(|| {
            let exact = self.parked.lift[index]
                .1
                .moved(DVec3::Z * self.shift[index]);
            LiftPart {
                under_own_pad: exact.clone().widened(self.spread[1]),
                body: exact.widened(self.spread[0]),
            }
        })
    }

    /// How far any lift part climbs past the standing vehicle.
    fn longest_climb_m(&self) -> f64 {
        self.attitudes
            .iter()
            .flat_map(|attitude| attitude.lift_off_last_m)
            .fold(self.parked.contact.carry_m, f64::max)
            .max(0.0)
    }

    fn touching(
        &self,
        bay: &Bay,
        may_meet: &MayMeet,
        solver: &mut Solver,
        found: &mut Vec<ContactFinding>,
    ) {
        let longest_climb = self.longest_climb_m();
        for (number, known) in self.parts.iter().enumerate() {
            if !may_meet.any(number) {
                continue;
            }
            let droop = known.droop_m(bay);
            let standing = known.about(self.parked.rest, 0.0);
            let carried = self
                .attitudes
                .iter()
                .map(|attitude| known.about(attitude.bay_from_vehicle_at_zero, droop))
                .fold(About::NOTHING, About::and);
            let near = |index: usize| {
                let of = self.about(index);
                may_meet.vehicle(number, self.parked.lift[index].0.role)
                    && (standing.meets(of.climbing(longest_climb)) || carried.meets(of))
            };
            if !(0..self.parked.lift.len()).any(near) {
                continue;
            }
            let part = &known.part;
            let from_part = part.solid.bay_from_solid;
            let standing = Body::of(
                &part.solid.shape,
                &[self.parked.rest.after(from_part)],
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
            for (index, (solid, _)) in self.parked.lift.iter().enumerate() {
                if !near(index) {
                    continue;
                }
                // Where it holds its own lift point it meets what that is on.
                if let Role::Pad(corner) = solid.role
                    && may_meet.holds(number, corner, || holds_point(bay, part, corner, solver))
                {
                    continue;
                }
                let LiftPart {
                    body,
                    under_own_pad,
                } = self.lift_part(index);
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
                        .fold(self.parked.contact.carry_m, f64::max),
                    (Role::Pad(corner), None) => self.parked.contact.touch_m[corner.index()],
                    _ => self.parked.contact.carry_m,
                };
                let until = (until - self.ahead_m(solid.role)).max(0.0);
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
                if touches {
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
    fn touching_each_other(
        &self,
        may_meet: &MayMeet,
        solver: &mut Solver,
        found: &mut Vec<ContactFinding>,
    ) {
        let lift = &self.parked.lift;
        for (index, (one, _)) in lift.iter().enumerate() {
            for (other_index, (other, _)) in lift.iter().enumerate().skip(index + 1) {
                if !may_meet.each_other(one.role, other.role)
                    || found
                        .iter()
                        .any(|known| known.part == one.name && known.vehicle == other.name)
                {
                    continue;
                }
                let [body, other_body] =
                    [index, other_index].map(|index| &self.lift_part(index).body);
                if !boxes_meet(body, 0.0, other_body)
                    || plainly_apart(body, DVec3::ZERO, other_body)
                {
                    continue;
                }
                let touches = match solver.gap(body, DVec3::ZERO, other_body) {
                    Separation::Meet => true,
                    Separation::Apart(gap) => gap.lower <= 0.0,
                };
                if touches {
                    found.push(ContactFinding {
                        part: one.name.clone(),
                        vehicle: other.name.clone(),
                        clearance_m: 0.0,
                    });
                }
            }
        }
    }
}

/// Whether the corner's own lift point lies in or on the part. A lift point above the sill is reached
/// through the body's side as it is drawn, so the pad is let into that part.
fn holds_point(
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

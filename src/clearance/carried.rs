//! Do arms, pads or carriages touch the vehicle anywhere but under its lift points, or each other?
//!
//! Until the pads carry, the lift parts climb past the standing vehicle; from then on body and
//! lift parts keep their places to each other, and only the wheels still sink as far as their
//! droop. So each pair needs one short climb and one standing comparison. A pad meets its own
//! lift point by design: pads are lowered by a little more than the uncertainty for this check.

use std::cell::{Cell, LazyCell, OnceCell};

use glam::DVec3;

mod near;
mod parked;
mod partings;
#[cfg(test)]
mod tests;

use self::near::{KINDS, MayMeet};
use self::parked::{About, Parked, Part, side_of};
use self::partings::{Partings, is_parted, reach_m};
use super::body::Body;
use super::climb::{Climb, First, first_below};
use super::findings::ContactFinding;
use super::gap::{self, Separation, Solver};
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
    let known = Known {
        // Most parts are far from most arms in all of them.
        may_meet: MayMeet::new(bay, &parts, &scenes),
        partings: Partings::new(parts.len()),
    };
    found.extend(met_before_their_points(
        bay, &parts, &parked, &known, solver,
    ));
    for scene in &scenes {
        scene.touching(bay, &known, solver, &mut found);
        scene.touching_each_other(&known, solver, &mut found);
    }
    found.sort_by(|a, b| (&a.part, &a.vehicle).cmp(&(&b.part, &b.vehicle)));
    Ok(found)
}

/// Pads that meet a part before their own lift point: the point is in the part, and the part hangs
/// lower. Then the pads carry elsewhere and sooner than the study has it.
fn met_before_their_points(
    bay: &Bay,
    parts: &[Part],
    parked: &[Parked],
    known: &Known,
    solver: &mut Solver,
) -> Vec<ContactFinding> {
    let mut found = Vec::new();
    let pads = parked.iter().take(1).flat_map(|parked| &parked.lift);
    for (pad, _) in pads {
        let Role::Pad(corner) = pad.role else {
            continue;
        };
        let point_m = own_point_height(bay, corner);
        for (number, part) in parts.iter().enumerate() {
            // The body is drawn solid from the sill up; the pad goes in through its side.
            let hangs_lower = !part.part.is_body && part.lowest < point_m - ON_THE_POINT_M;
            let is_told = |found: &[ContactFinding]| {
                let told = |one: &ContactFinding| one.part == pad.name;
                found
                    .iter()
                    .any(|one| told(one) && one.vehicle == part.part.solid.name)
            };
            if hangs_lower
                && known.may_meet.holds(number, corner, || {
                    holds_point(bay, &part.part, corner, solver)
                })
                && !is_told(&found)
            {
                found.push(ContactFinding {
                    part: pad.name.clone(),
                    vehicle: part.part.solid.name.clone(),
                    clearance_m: 0.0,
                });
            }
        }
    }
    found
}

/// What is known before a scene is looked at.
struct Known {
    may_meet: MayMeet,
    partings: Partings,
}

/// One place of the vehicle with the arms swung under it.
struct Scene<'a> {
    parked: &'a Parked,
    parts: &'a [Part],
    /// How far each lift part stands above its place, metres.
    shift: Vec<f64>,
    /// How far each lift part may be off to the vehicle, and to what rests on its own pad.
    spread: [DVec3; 2],
    /// The lift parts' bodies, so widened; made where they are wanted.
    bodies: Vec<[OnceCell<Body>; 2]>,
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
        let attitudes = attitude::attitudes_from(bay, parked.rest, ahead)?;
        let mut scene = Self {
            parked,
            parts,
            shift: Vec::with_capacity(parked.lift.len()),
            spread: [spread, on_own_pad],
            bodies: parked.lift.iter().map(|_| Default::default()).collect(),
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
        known: &Known,
        solver: &mut Solver,
        found: &mut Vec<ContactFinding>,
    ) {
        let abouts: Vec<About> = (0..self.parked.lift.len())
            .map(|index| self.about(index))
            .collect();
        for (number, part) in self.parts.iter().enumerate() {
            if !known.may_meet.any(number) {
                continue;
            }
            let droop = part.droop_m(bay);
            let standing = part.about(self.parked.rest, 0.0);
            let carried = self
                .attitudes
                .iter()
                .map(|attitude| part.about(attitude.bay_from_vehicle_at_zero, droop))
                .fold(About::NOTHING, About::and);
            // While the part stands, the lift parts climb to where they meet it, or for a wheel
            // until it has sunk as far as it can.
            let until = match part.part.wheel {
                Some(axle) => self
                    .attitudes
                    .iter()
                    .map(|attitude| attitude.lift_off_last_m[axle])
                    .fold(self.parked.contact.carry_m, f64::max),
                None => self.parked.contact.carry_m,
            };
            let posed = LazyCell::new(|| Posed::new(self, part, droop));
            let of_kind = self.parked.of_kind.iter().enumerate();
            for index in of_kind
                .filter(|(kind, _)| known.may_meet.vehicle(number, *kind))
                .flat_map(|(_, of_kind)| of_kind.clone())
            {
                let solid = &self.parked.lift[index].0;
                let until = match (solid.role, part.part.wheel) {
                    (Role::Pad(corner), None) => self.parked.contact.touch_m[corner.index()],
                    _ => until,
                };
                let until = (until - self.ahead_m(solid.role)).max(0.0);
                let on_the_way = standing.meets(abouts[index].climbing(until));
                let on_the_pads = carried.meets(abouts[index]);
                if !(on_the_way || on_the_pads) {
                    continue;
                }
                // Where it holds its own lift point it meets what that is on.
                if let Role::Pad(corner) = solid.role
                    && known.may_meet.holds(number, corner, || {
                        holds_point(bay, &part.part, corner, solver)
                    })
                {
                    continue;
                }
                let vehicle = &part.part.solid.name;
                let is_known = |found: &[ContactFinding]| {
                    found
                        .iter()
                        .any(|one| one.part == solid.name && one.vehicle == *vehicle)
                };
                if is_known(found) {
                    continue;
                }
                let under_own_pad = matches!(solid.role, Role::Arm(corner)
                    if part.lowest >= own_point_height(bay, corner) - ON_THE_POINT_M);
                let lift = LiftPart {
                    scene: self,
                    index,
                    under_own_pad,
                };
                let partings = &known.partings;
                let parting = partings.standing(number, solid.role);
                let touches = on_the_way && meets_climbing(&lift, until, &posed, parting, solver)
                    || on_the_pads && {
                        let parting = partings.carried(number, solid.role);
                        (0..self.attitudes.len())
                            .any(|attitude| meets_carried(&lift, &posed, attitude, parting, solver))
                    };
                if touches {
                    found.push(ContactFinding {
                        part: solid.name.clone(),
                        vehicle: vehicle.clone(),
                        clearance_m: 0.0,
                    });
                }
            }
        }
    }

    /// Arms and pads of different corners, and the other side's carriage: they climb together, so
    /// one standing comparison tells.
    fn touching_each_other(
        &self,
        known: &Known,
        solver: &mut Solver,
        found: &mut Vec<ContactFinding>,
    ) {
        let Parked { lift, of_kind, .. } = self.parked;
        let pairs = (0..KINDS).flat_map(|one| (one + 1..KINDS).map(move |other| (one, other)));
        for (one, other) in pairs.filter(|(one, other)| known.may_meet.each_other(*one, *other)) {
            let each = of_kind[one].clone().flat_map(|index| {
                let others = of_kind[other].clone();
                others.map(move |other_index| (index, other_index))
            });
            for (index, other_index) in each {
                let (one, other) = (&lift[index].0, &lift[other_index].0);
                let [part, other_part] = [index, other_index].map(|index| LiftPart {
                    scene: self,
                    index,
                    under_own_pad: false,
                });
                let parting = known.partings.each_other(one.role, other.role);
                if is_parted(parting.get(), |direction| {
                    -other_part.reach_m(-direction) - part.reach_m(direction)
                }) || found
                    .iter()
                    .any(|known| known.part == one.name && known.vehicle == other.name)
                {
                    continue;
                }
                if meet(part.body(), other_part.body(), parting, solver) {
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

/// A lift part in a scene with its uncertainty to what it is looked at with.
struct LiftPart<'a> {
    scene: &'a Scene<'a>,
    index: usize,
    under_own_pad: bool,
}

impl<'a> LiftPart<'a> {
    fn shift(&self) -> DVec3 {
        DVec3::Z * self.scene.shift[self.index]
    }

    fn exact(&self) -> &'a Body {
        &self.scene.parked.lift[self.index].1
    }

    fn spread(&self) -> DVec3 {
        self.scene.spread[usize::from(self.under_own_pad)]
    }

    fn body(&self) -> &'a Body {
        let made = || self.exact().moved(self.shift()).widened(self.spread());
        self.scene.bodies[self.index][usize::from(self.under_own_pad)].get_or_init(made)
    }

    /// How far it reaches along a unit vector, metres from the origin.
    fn reach_m(&self, direction: DVec3) -> f64 {
        self.exact().reach(direction)
            + self.shift().dot(direction)
            + self.spread().max(DVec3::ZERO).dot(direction.abs())
    }
}

/// A vehicle part where it stands, and on the pads in each attitude; its bodies are made where they
/// are wanted.
struct Posed<'a> {
    shape: &'a Shape,
    standing: Pose,
    carried: Vec<Pose>,
    bodies: OnceCell<(Body, Vec<Body>)>,
}

impl<'a> Posed<'a> {
    fn new(scene: &Scene<'_>, part: &'a Part, droop: f64) -> Self {
        let from_part = part.part.solid.bay_from_solid;
        let hangs = Pose::at(DVec3::Z * -droop).after(from_part);
        let attitudes = scene.attitudes.iter();
        Self {
            shape: &part.part.solid.shape,
            standing: scene.parked.rest.after(from_part),
            carried: attitudes
                .map(|attitude| attitude.bay_from_vehicle_at_zero.after(hangs))
                .collect(),
            bodies: OnceCell::new(),
        }
    }

    fn bodies(&self) -> &(Body, Vec<Body>) {
        self.bodies.get_or_init(|| {
            let body = |pose: &Pose| Body::of(self.shape, &[*pose], DVec3::ZERO);
            (
                body(&self.standing),
                self.carried.iter().map(body).collect(),
            )
        })
    }
}

/// Whether a lift part meets a vehicle part that stands on its tyres while it climbs so far.
fn meets_climbing(
    lift: &LiftPart<'_>,
    until: f64,
    posed: &Posed<'_>,
    parting: &Cell<DVec3>,
    solver: &mut Solver,
) -> bool {
    // Along a direction in which both ends of the climb are apart all between is.
    let parted = |direction: DVec3| {
        let room = -reach_m(posed.shape, posed.standing, -direction) - lift.reach_m(direction);
        room - (direction.z * until).max(0.0)
    };
    if is_parted(parting.get(), parted) {
        return false;
    }
    let (body, (standing, _)) = (lift.body(), posed.bodies());
    if !boxes_meet(body, until, standing) {
        return false;
    }
    let toward = standing.low() + standing.high() - body.low() - body.high();
    let flat = DVec3::new(toward.x, toward.y, 0.0).normalize_or_zero();
    if is_parted(flat, parted) {
        parting.set(flat);
        return false;
    }
    if let Separation::Apart(gap) = solver.gap(&body.swept(DVec3::Z * until), DVec3::ZERO, standing)
        && is_parted(gap.normal, parted)
    {
        parting.set(gap.normal);
        return false;
    }
    let climb = Climb {
        up: DVec3::Z,
        from: 0.0,
        to: until,
    };
    first_below(solver, body, standing, 0.0, climb) != First::Never
}

/// Whether a lift part meets a vehicle part on the pads in one of the attitudes.
fn meets_carried(
    lift: &LiftPart<'_>,
    posed: &Posed<'_>,
    attitude: usize,
    parting: &Cell<DVec3>,
    solver: &mut Solver,
) -> bool {
    let pose = posed.carried[attitude];
    if is_parted(parting.get(), |direction| {
        -reach_m(posed.shape, pose, -direction) - lift.reach_m(direction)
    }) {
        return false;
    }
    meet(lift.body(), &posed.bodies().1[attitude], parting, solver)
}

/// Whether two bodies meet where they are; what parts them is kept.
fn meet(one: &Body, other: &Body, parting: &Cell<DVec3>, solver: &mut Solver) -> bool {
    if !boxes_meet(one, 0.0, other) {
        return false;
    }
    if let Some(direction) = gap::parting(one, DVec3::ZERO, other) {
        parting.set(direction);
        return false;
    }
    match solver.gap(one, DVec3::ZERO, other) {
        Separation::Meet => true,
        Separation::Apart(gap) => {
            if gap.lower > 0.0 {
                parting.set(gap.normal);
            }
            gap.lower <= 0.0
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

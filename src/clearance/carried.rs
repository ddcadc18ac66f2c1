//! Do arms, pads or carriages touch the vehicle anywhere but under its lift points, or each other?
//!
//! Until the pads carry, the lift parts climb past the standing vehicle; from then on body and
//! lift parts keep their places to each other, and only the wheels still sink as far as their
//! droop. So each pair needs one short climb and one standing comparison. A pad meets its own
//! lift point by design: pads are lowered by a little more than the uncertainty for this check.

use glam::DVec3;

use super::arm_bodies::resting_swings;
use super::body::Body;
use super::climb::{Climb, First, first_below};
use super::findings::ContactFinding;
use super::gap::{Separation, Solver, plainly_apart, plainly_apart_on};
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
    let parked = places
        .into_iter()
        .map(|place| Parked::new(bay, place))
        .collect::<Result<Vec<_>, _>>()?;
    let mut leads = vec![None];
    if uncertainty.mismatch_m > 0.0 {
        leads.extend([Some(Side::Left), Some(Side::Right)]);
    }
    for lead in leads {
        let scenes = parked
            .iter()
            .map(|parked| Scene::new(bay, &parts, parked, lead, uncertainty))
            .collect::<Result<Vec<_>, _>>()?;
        // Most pairs are apart wherever the vehicle may stand, and one look shows it.
        let open = Open::new(bay, &scenes);
        for scene in &scenes {
            scene.touching(bay, &open, solver, &mut found);
            scene.touching_each_other(&open, solver, &mut found);
        }
    }
    found.sort_by(|a, b| (&a.part, &a.vehicle).cmp(&(&b.part, &b.vehicle)));
    Ok(found)
}

/// A vehicle part with its lowest point, vehicle frame.
struct Part {
    part: vehicle::VehiclePart,
    lowest: f64,
}

impl Part {
    fn new(part: vehicle::VehiclePart) -> Self {
        let (low, _) = part.solid.bounds();
        Self {
            lowest: low.z,
            part,
        }
    }

    /// How far it hangs from where it stands, once it is off the floor.
    fn droop_m(&self, bay: &Bay) -> f64 {
        self.part
            .wheel
            .map_or(0.0, |axle| bay.vehicle.droop[axle].m())
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
        let spread = DVec3::splat(relative);
        let on_own_pad = DVec3::new(relative, relative, 1.5 * uncertainty.lift_m);
        let pad_drop = relative + OWN_POINT_M + TILT_OVER_PAD * bay.lift.pad.diameter.m();
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
        Ok(Self {
            lift: parked.solids.iter().map(part).collect(),
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

    /// The travel until which a lift part climbs past a standing part of the vehicle: to where they
    /// meet, or for a wheel until it has sunk as far as it can.
    fn climb_m(&self, lift: Role, part: &Part) -> f64 {
        let until = match (lift, part.part.wheel) {
            (_, Some(axle)) => self
                .attitudes
                .iter()
                .map(|attitude| attitude.lift_off_last_m[axle])
                .fold(self.contact.carry_m, f64::max),
            (Role::Pad(corner), None) => self.contact.touch_m[corner.index()],
            _ => self.contact.carry_m,
        };
        let ahead = match (self.lead, side_of(lift)) {
            (Some((leading, by)), Some((side, _))) if leading == side => by,
            _ => 0.0,
        };
        (until - ahead).max(0.0)
    }

    /// A part standing on its tyres.
    fn standing(&self, part: &Part) -> Pose {
        self.rest.after(part.part.solid.bay_from_solid)
    }

    /// A part on the pads, extrapolated to travel 0, in every attitude.
    fn raised<'p>(&'p self, bay: &Bay, part: &'p Part) -> impl Iterator<Item = Pose> + 'p {
        let hanging = Pose::at(DVec3::Z * -part.droop_m(bay));
        self.attitudes.iter().map(move |attitude| {
            attitude
                .bay_from_vehicle_at_zero
                .after(hanging)
                .after(part.part.solid.bay_from_solid)
        })
    }

    fn touching(
        &self,
        bay: &Bay,
        open: &Open,
        solver: &mut Solver,
        found: &mut Vec<ContactFinding>,
    ) {
        for (index, known) in self.parts.iter().enumerate() {
            if !open.any(index) {
                continue;
            }
            let part = &known.part;
            let of = |pose: Pose| Body::of(&part.solid.shape, &[pose], DVec3::ZERO);
            let standing = of(self.standing(known));
            let raised: Vec<Body> = self.raised(bay, known).map(of).collect();
            for LiftPart {
                solid,
                body,
                under_own_pad,
            } in &self.lift
            {
                if !open.pair(index, solid.role) {
                    continue;
                }
                let until = self.climb_m(solid.role, known);
                let body = match solid.role {
                    Role::Arm(corner) if rests_on(bay, known, corner) => under_own_pad,
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
                let climb = Climb {
                    up: DVec3::Z,
                    from: 0.0,
                    to: until,
                };
                let mut touches = boxes_meet(body, until, &standing)
                    && !plainly_apart_on(body, DVec3::Z * until, &standing)
                    && first_below(solver, body, &standing, 0.0, climb) != First::Never;
                touches = touches
                    || raised.iter().any(|raised| {
                        boxes_meet(body, 0.0, raised)
                            && !plainly_apart(body, raised)
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
    fn touching_each_other(
        &self,
        open: &Open,
        solver: &mut Solver,
        found: &mut Vec<ContactFinding>,
    ) {
        if !open.each_other {
            return;
        }
        for (index, one) in self.lift.iter().enumerate() {
            for other in &self.lift[index + 1..] {
                let known = found
                    .iter()
                    .any(|known| known.part == one.solid.name && known.vehicle == other.solid.name);
                if !strangers(one.solid.role, other.solid.role)
                    || known
                    || !boxes_meet(&one.body, 0.0, &other.body)
                    || plainly_apart(&one.body, &other.body)
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
    // Asked this way round, what is no number is not apart.
    !(standing.low().cmpgt(high).any() || climbing.low().cmpgt(standing.high()).any())
}

/// Whether two lift parts may meet at all: arms and pads of different corners, and the other side's
/// carriage.
fn strangers(one: Role, other: Role) -> bool {
    match (side_of(one), side_of(other)) {
        (Some((_, Some(a))), Some((_, Some(b)))) => a != b,
        (Some((a, None)), Some((b, _))) | (Some((a, _)), Some((b, None))) => a != b,
        _ => false,
    }
}

/// Whether all of a part lies as high as the corner's own lift point.
fn rests_on(bay: &Bay, part: &Part, corner: Corner) -> bool {
    part.lowest >= own_point_height(bay, corner) - ON_THE_POINT_M
}

/// Carriages, arms and pads: so many kinds of lift part there are.
const KINDS: usize = 10;

/// Which kind a lift part is of.
fn kind(role: Role) -> Option<usize> {
    match role {
        Role::Carriage(side) => Some(usize::from(side == Side::Right)),
        Role::Arm(corner) => Some(2 + corner.index()),
        Role::Pad(corner) => Some(6 + corner.index()),
        _ => None,
    }
}

/// Which pairs one look at all places of the vehicle together leaves open. What is clear there, of
/// the hull of them all, is clear at each.
struct Open {
    pairs: Vec<[bool; KINDS]>,
    each_other: bool,
}

impl Open {
    fn new(bay: &Bay, scenes: &[Scene<'_>]) -> Self {
        let hull = |kind_of: usize, of: &dyn Fn(&LiftPart<'_>) -> Body| {
            let bodies: Vec<Body> = scenes
                .iter()
                .flat_map(|scene| &scene.lift)
                .filter(|part| kind(part.solid.role) == Some(kind_of))
                .map(of)
                .collect();
            Body::hull_of(&bodies)
        };
        let lift: [Body; KINDS] = std::array::from_fn(|kind| hull(kind, &|part| part.body.clone()));
        let under_own_pad: [Body; 4] =
            std::array::from_fn(|corner| hull(2 + corner, &|part| part.under_own_pad.clone()));
        let roles: [Role; KINDS] = std::array::from_fn(|kind| match kind {
            0 => Role::Carriage(Side::Left),
            1 => Role::Carriage(Side::Right),
            2..6 => Role::Arm(Corner::ALL[kind - 2]),
            _ => Role::Pad(Corner::ALL[kind - 6]),
        });
        let parts = scenes.first().map_or(&[][..], |scene| scene.parts);
        let pairs = parts
            .iter()
            .map(|part| {
                let shape = &part.part.solid.shape;
                let rests: Vec<Pose> = scenes.iter().map(|scene| scene.standing(part)).collect();
                let standing = Body::of(shape, &rests, DVec3::ZERO);
                let raised: Vec<Pose> = scenes
                    .iter()
                    .flat_map(|scene| scene.raised(bay, part))
                    .collect();
                let raised = Body::of(shape, &raised, DVec3::ZERO);
                std::array::from_fn(|kind| {
                    let role = roles[kind];
                    let body = match role {
                        Role::Arm(corner) if rests_on(bay, part, corner) => {
                            &under_own_pad[corner.index()]
                        }
                        _ => &lift[kind],
                    };
                    let climb = scenes
                        .iter()
                        .map(|scene| scene.climb_m(role, part))
                        .fold(0.0, f64::max);
                    let clear_below = !boxes_meet(body, climb, &standing)
                        || plainly_apart_on(body, DVec3::Z * climb, &standing);
                    let clear_above =
                        !boxes_meet(body, 0.0, &raised) || plainly_apart(body, &raised);
                    !(clear_below && clear_above)
                })
            })
            .collect();
        let each_other = (0..KINDS).any(|one| {
            (one + 1..KINDS).any(|other| {
                strangers(roles[one], roles[other])
                    && boxes_meet(&lift[one], 0.0, &lift[other])
                    && !plainly_apart(&lift[one], &lift[other])
            })
        });
        Self { pairs, each_other }
    }

    /// Whether a pair of a vehicle's part, by its index, and a lift part is open.
    fn pair(&self, part: usize, lift: Role) -> bool {
        kind(lift).is_none_or(|kind| self.pairs[part][kind])
    }

    /// Whether any lift part is open with a vehicle's part.
    fn any(&self, part: usize) -> bool {
        self.pairs[part].contains(&true)
    }
}

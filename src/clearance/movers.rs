//! Everything that moves, cut into the phases of the raise.
//!
//! Lift parts climb from travel 0. The vehicle's body stands until the first pad may touch it,
//! turns until all pads carry (bounded by what the turn sweeps), then climbs. Its wheels stand
//! until the droop of their axle may be spent, then climb, hanging. Along columns that lean a climb
//! is cut into stretches, each with a body of its own ([`super::leaning`]).

use glam::{DVec2, DVec3};

use super::arm_bodies::{arm_bodies, leading};
use super::body::Body;
use super::leaning::{Drift, Touch, stretches};
use super::part_levers::{BodyLevers, PartLevers, outline_corners, support_levers, support_m};
use super::uncertainty::{Uncertainty, corners_on, turning_bulge_m};
use crate::bay::{Aim, Bay, Corner, Floor, Side};
use crate::solids::vehicle::{self, VehiclePart};
use crate::solids::{ParkingError, Pose, Role, Shape, Solid, attitude, posts, shell};

/// One moving solid in one phase of the raise.
#[derive(Debug, Clone)]
pub struct Moving {
    /// The solid with every uncertainty added: as posed at travel 0 when it climbs, as posed when
    /// it stands.
    pub body: Body,
    /// Index into [`Movers::solids`].
    pub solid: usize,
    /// What it is.
    pub role: Role,
    /// Travel at which this phase starts.
    pub from: f64,
    /// Travel at which it ends.
    pub to: f64,
    /// False while it stands.
    pub climbs: bool,
    /// The phase that this is a stretch of: another number for each phase, the same for all stretches
    /// that a climb along leaning columns is cut into.
    pub phase: usize,
}

/// The travels at which the phases change, worst case over the uncertainty.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phases {
    /// The first pad may touch the vehicle here (not below 0).
    pub first_touch_m: f64,
    /// All pads carry from here on, for certain.
    pub carry_m: f64,
    /// Wheels of the front axle may leave the floor here.
    pub lift_off_m: [f64; 2],
    /// All wheels of the axle are off the floor from here on.
    pub lift_off_last_m: [f64; 2],
}

/// Everything that moves, and when.
#[derive(Debug, Clone)]
pub struct Movers {
    /// The moving solids, nominal, at travel 0 (vehicle at rest).
    pub solids: Vec<Solid>,
    /// The solids' poses at travel 0 extrapolated back from the first attitude on the pads; for
    /// lift parts the same as in `solids`. With these, `pose + travel` is where a solid is once it
    /// climbs.
    pub climbing_solids: Vec<Solid>,
    /// Their phases.
    pub moving: Vec<Moving>,
    /// The vehicle's parts standing on their tyres, whether or not the pads touch them there.
    pub standing: Vec<Moving>,
    /// When the phases change.
    pub phases: Phases,
    /// The loosest pad over the checked attitudes.
    pub loose: Option<(Corner, f64)>,
    /// Pads that start above their lift points: by how much, metres.
    pub too_high: Vec<(Corner, f64)>,
}

/// Pads that meet their points in no more travel than this from the first to the last count as level; what is
/// left of that is within what a pad may hang loose.
const UNEVEN_M: f64 = 0.003;

/// Why the vehicle could not be set on the pads.
pub type MoverError = attitude::StanceError;

/// Everything that moves in this bay, with the given uncertainty.
///
/// # Errors
/// When the vehicle can't be set on the pads at all (see [`attitude::StanceError`]).
pub fn movers(bay: &Bay, uncertainty: &Uncertainty) -> Result<Movers, MoverError> {
    let top = bay.lift.travel.m();
    let contact = attitude::contact(bay, ParkingError::default())?;
    let attitudes = Attitudes::new(bay, uncertainty)?;
    let support_m = support_m(uncertainty);
    // The travel is measured too. One carriage may lead, so a pad may meet its point that much
    // earlier; all carry only when the lagging side does.
    let rest = attitude::at_rest(bay, ParkingError::default())?;
    let floor_m = floor_doubt_m(bay, &rest, uncertainty);
    let touch_m = support_m + uncertainty.lift_m + floor_m;
    let first_touch_m = (contact.first_touch_m - uncertainty.mismatch_m - touch_m).max(0.0);
    let carry_m = (contact.carry_m + touch_m).max(first_touch_m).max(0.0);
    let lift_off_m = attitudes
        .lift_off_m
        .map(|m| (m - uncertainty.mismatch_m - support_m).max(first_touch_m));
    let lift_off_last_m = attitudes.lift_off_last_m.map(|m| m + support_m);

    let mut build = Build {
        top,
        uncertainty: *uncertainty,
        touch: Touch {
            first_m: first_touch_m,
            last_m: carry_m,
        },
        phases: 0,
        solids: Vec::new(),
        climbing_solids: Vec::new(),
        moving: Vec::new(),
        standing: Vec::new(),
    };
    for carriage in posts::carriages(bay) {
        let body = Body::of(
            &carriage.shape,
            &[carriage.bay_from_solid],
            uncertainty.placed_lift_spread(),
        );
        let body = leading(&body, uncertainty);
        build.lift_part(carriage, body);
    }
    let at_rest = |errors: Vec<ParkingError>| -> Result<Vec<Pose>, MoverError> {
        let poses = errors
            .into_iter()
            .map(|error| attitude::at_rest(bay, error));
        poses.collect()
    };
    let parked = at_rest(uncertainty.parking_corners())?;
    for corner in Corner::ALL {
        for (solid, body) in arm_bodies(bay, corner, uncertainty, rest, &parked) {
            build.lift_part(solid, body);
        }
    }
    let supports = support_levers(bay);
    // What posts are off in height is no part of the turn: it counts beside it, once, and only where
    // pads carry ([`Build::vehicle_part`]). A vehicle on its tyres does not stand on the lift.
    let counted_beside_m = if supports.is_some() {
        uncertainty.posts_m.z
    } else {
        0.0
    };
    let carry_by_turn_m = (contact.carry_m + touch_m - counted_beside_m)
        .max(first_touch_m)
        .max(0.0);
    let rise = contact
        .touch_m
        .map(|touch| (carry_by_turn_m - touch + uncertainty.mismatch_m).max(0.0));
    // A pad may stand higher, and its lift point or the floor under the vehicle lower.
    let rise_more_m = support_m - counted_beside_m + floor_m;
    let levers = BodyLevers::new(supports, uncertainty, rise, rise_more_m);
    let (rest_errors, parked_m) = uncertainty.parking_hull(&bay.garage.floor);
    let rest_poses = at_rest(rest_errors)?;
    let first = attitudes.first_pose();
    let pivot = parking_pivot(bay);
    let turning_middle = rest.rotation.inverse() * (pivot - rest.translation);
    for part in vehicle::parts(bay) {
        let context = PartContext {
            uncertainty,
            attitudes: &attitudes,
            rest_poses: &rest_poses,
            parked_m,
            levers: &levers,
            rise_more_m,
            first_touch_m,
            carry_m,
            lift_off_m,
            springs_until_m: lift_off_last_m[0].max(lift_off_last_m[1]),
            turning_middle,
            floor_m,
        };
        build.vehicle_part(bay, &part, rest, first, &context);
    }
    let too_high = Corner::ALL
        .into_iter()
        .map(|corner| (corner, support_m - contact.touch_m[corner.index()]))
        .filter(|(_, excess)| *excess >= 0.0)
        .collect();
    // Where some pads carry well before others, springs that are relieved may hold an end above its own pads
    // until its tyres are off the floor: only then do all carry for certain.
    let touches = contact.touch_m;
    let least = touches.into_iter().fold(f64::INFINITY, f64::min);
    let most = touches.into_iter().fold(f64::NEG_INFINITY, f64::max);
    let are_level = most - least <= UNEVEN_M;
    let all_carry_m = if are_level {
        carry_m
    } else {
        carry_m.max(lift_off_last_m[0]).max(lift_off_last_m[1])
    };
    Ok(Movers {
        solids: build.solids,
        climbing_solids: build.climbing_solids,
        moving: build.moving,
        standing: build.standing,
        phases: Phases {
            first_touch_m,
            carry_m: all_carry_m,
            lift_off_m,
            lift_off_last_m,
        },
        loose: attitudes.loose,
        too_high,
    })
}

/// The attitudes on the pads, with the roll that out-of-level carriages add.
struct Attitudes {
    /// Groups of poses (extrapolated to travel 0); the body turns within a group.
    groups: Vec<Turning>,
    lift_off_m: [f64; 2],
    lift_off_last_m: [f64; 2],
    loose: Option<(Corner, f64)>,
}

impl Attitudes {
    fn new(bay: &Bay, uncertainty: &Uncertainty) -> Result<Self, MoverError> {
        let level = attitude::attitudes(bay, ParkingError::default(), [0.0; 4])?;
        let mut all = level.clone();
        let mut groups: Vec<Vec<Pose>> = Vec::new();
        if uncertainty.mismatch_m > 0.0 {
            for side in [Side::Left, Side::Right] {
                let extra = corners_on(side).map(|share| share * uncertainty.mismatch_m);
                let rolled = attitude::attitudes(bay, ParkingError::default(), extra)?;
                let same_supports = rolled.len() == level.len()
                    && level
                        .iter()
                        .zip(&rolled)
                        .all(|(a, b)| a.carries == b.carries);
                if same_supports {
                    for (a, b) in level.iter().zip(&rolled) {
                        groups.push(vec![a.bay_from_vehicle_at_zero, b.bay_from_vehicle_at_zero]);
                    }
                } else {
                    // The supports change on the way: bound it by the hull of all of them.
                    groups.push(
                        level
                            .iter()
                            .chain(&rolled)
                            .map(|attitude| attitude.bay_from_vehicle_at_zero)
                            .collect(),
                    );
                }
                all.extend(rolled);
            }
        } else {
            groups.extend(
                level
                    .iter()
                    .map(|attitude| vec![attitude.bay_from_vehicle_at_zero]),
            );
        }
        let mut lift_off_m = [f64::INFINITY; 2];
        let mut lift_off_last_m = [f64::NEG_INFINITY; 2];
        for attitude in &all {
            for axle in 0..2 {
                lift_off_m[axle] = lift_off_m[axle].min(attitude.lift_off_m[axle]);
                lift_off_last_m[axle] = lift_off_last_m[axle].max(attitude.lift_off_last_m[axle]);
            }
        }
        // The loose gap is judged level: the roll of the carriages comes and goes.
        let loose = level
            .iter()
            .filter_map(|attitude| attitude.loose)
            .max_by(|a, b| a.1.total_cmp(&b.1));
        let yaws = yaws(bay, uncertainty.parking.yaw_rad);
        let groups = groups.iter().map(|poses| Turning::new(poses, &yaws));
        Ok(Self {
            groups: groups.collect(),
            lift_off_m,
            lift_off_last_m,
            loose,
        })
    }

    fn first_pose(&self) -> Pose {
        self.groups
            .first()
            .map_or(Pose::IDENTITY, |group| group.first)
    }
}

/// Poses between which the body turns.
struct Turning {
    first: Pose,
    /// Each of them at either end of the parking box's yaw.
    yawed: Vec<Pose>,
    /// The most that it turns from the first, radians.
    angle: f64,
}

impl Turning {
    fn new(poses: &[Pose], yaws: &[Pose]) -> Self {
        let first = poses.first().copied().unwrap_or(Pose::IDENTITY);
        let each = poses.iter();
        Self {
            first,
            yawed: each
                .clone()
                .flat_map(|pose| yaws.iter().map(|yaw| yaw.after(*pose)))
                .collect(),
            angle: each
                .map(|pose| first.rotation.angle_between(pose.rotation))
                .fold(0.0, f64::max),
        }
    }
}

/// What a vehicle part's bodies are made from.
struct PartContext<'a> {
    uncertainty: &'a Uncertainty,
    attitudes: &'a Attitudes,
    /// The vehicle on its tyres in the parking box: the hull over these, widened by that.
    rest_poses: &'a [Pose],
    parked_m: DVec3,
    levers: &'a BodyLevers,
    /// How much more any pad may raise its lift point until all carry, for what was measured.
    rise_more_m: f64,
    first_touch_m: f64,
    carry_m: f64,
    lift_off_m: [f64; 2],
    /// Travel from which no spring can hold a corner above its pad.
    springs_until_m: f64,
    /// How far the floor under the tyres may be off.
    floor_m: f64,
    /// Where the turns of yaw and roll are centred, vehicle frame.
    turning_middle: DVec3,
}

impl PartContext<'_> {
    /// A part, or a length of it, with the vehicle on its tyres.
    fn at_rest(&self, part: &VehiclePart) -> Body {
        let poses: Vec<Pose> = self
            .rest_poses
            .iter()
            .map(|pose| pose.after(part.solid.bay_from_solid))
            .collect();
        // A floor that is off under one tyre tips the body; twice the doubt bounds it up to as far
        // beyond the tyres as they stand apart.
        let spread = self.uncertainty.standing_vehicle_spread()
            + self.uncertainty.wheel_spread(part.wheel)
            + self.parked_m
            + self.yaw_bulge(self.reach_m(part))
            + DVec3::splat(2.0 * self.floor_m);
        Body::of(&part.solid.shape, &poses, spread)
    }

    /// No turn takes any of it round a greater radius.
    fn reach_m(&self, part: &VehiclePart) -> f64 {
        part_reach_m(
            &part.solid.shape,
            &part.solid.bay_from_solid,
            self.turning_middle,
        )
    }

    /// The parking box's yaw corners are chords of the turn between them.
    fn yaw_bulge(&self, reach_m: f64) -> DVec3 {
        let bulge = chord_bulge_m(reach_m, 2.0 * self.uncertainty.parking.yaw_rad);
        DVec3::new(bulge, bulge, 0.0)
    }
}

/// A part as it hangs once its wheel does.
fn hanging(bay: &Bay, part: &VehiclePart) -> Pose {
    let droop = part.wheel.map_or(0.0, |axle| bay.vehicle.droop[axle].m());
    part.solid.bay_from_solid.moved(DVec3::Z * -droop)
}

/// A low part longer than this is looked at length by length, metres: what may be off at the pads moves
/// its far end, beyond them, by much more than what is over the lift.
const LENGTH_M: f64 = 1.2;

/// A long part that hangs under the body in its lengths; none of any other.
fn lengths(bay: &Bay, part: &VehiclePart) -> Vec<VehiclePart> {
    let Shape::Box { half } = part.solid.shape else {
        return Vec::new();
    };
    let from_part = part.solid.bay_from_solid;
    let is_low = from_part.translation.z + half.z <= bay.vehicle.sill.m() + 1e-9;
    let count = (2.0 * half.y / LENGTH_M).ceil();
    if part.is_body || part.wheel.is_some() || !is_low || !(2.0..50.0).contains(&count) {
        return Vec::new();
    }
    let half = DVec3::new(half.x, half.y / count, half.z);
    let along = from_part.rotation * DVec3::Y * half.y;
    (0..count as usize)
        .map(|number| {
            let mut length = part.clone();
            length.solid.shape = Shape::Box { half };
            let steps = 2.0 * number as f64 + 1.0 - count;
            length.solid.bay_from_solid = from_part.moved(along * steps);
            length
        })
        .collect()
}

struct Build {
    top: f64,
    uncertainty: Uncertainty,
    touch: Touch,
    /// How many phases there are.
    phases: usize,
    solids: Vec<Solid>,
    climbing_solids: Vec<Solid>,
    moving: Vec<Moving>,
    standing: Vec<Moving>,
}

impl Build {
    fn lift_part(&mut self, solid: Solid, body: Body) {
        let role = solid.role;
        self.climbing_solids.push(solid.clone());
        self.solids.push(solid);
        self.push_climb(body, role, 0.0, self.top);
    }

    fn vehicle_part(
        &mut self,
        bay: &Bay,
        part: &VehiclePart,
        rest: Pose,
        first: Pose,
        context: &PartContext<'_>,
    ) {
        let role = part.solid.role;
        let from_part = part.solid.bay_from_solid;
        self.solids.push(Solid {
            bay_from_solid: rest.after(from_part),
            ..part.solid.clone()
        });
        self.climbing_solids.push(Solid {
            bay_from_solid: first.after(hanging(bay, part)),
            ..part.solid.clone()
        });
        let rest_body = context.at_rest(part);
        self.standing.push(Moving {
            body: rest_body.clone(),
            solid: self.solids.len() - 1,
            role,
            from: 0.0,
            to: 0.0,
            climbs: false,
            phase: self.phases,
        });
        self.phases += 1;
        let at_rest_until = context.first_touch_m;
        if at_rest_until > 0.0 {
            self.push(rest_body.clone(), role, 0.0, at_rest_until, false);
        }
        let lengths = lengths(bay, part);
        for length in &lengths {
            self.raised(bay, length, &context.at_rest(length), context);
        }
        if lengths.is_empty() {
            self.raised(bay, part, &rest_body, context);
        }
    }

    /// A vehicle part, or a length of it, from the first touch on.
    fn raised(
        &mut self,
        bay: &Bay,
        part: &VehiclePart,
        rest_body: &Body,
        context: &PartContext<'_>,
    ) {
        let role = part.solid.role;
        let shape = &part.solid.shape;
        let hanging = hanging(bay, part);
        let reach = context.reach_m(part);
        let wheel = part.wheel;
        let levers = PartLevers::new(part, context.levers);
        let measured = levers.climbing_spread(context.uncertainty);
        // What may move a hanging wheel up or down moves the travel at which it leaves the floor;
        // between the earliest and the latest it may stand or hang.
        let stands_until = wheel.map_or(context.first_touch_m, |axle| {
            context.attitudes.lift_off_last_m[axle] + measured.z
        });
        let at_rest_until = context.first_touch_m;

        let parking = context.uncertainty.parking;
        let spread = measured + context.yaw_bulge(reach);
        let climbing: Vec<Body> = context
            .attitudes
            .groups
            .iter()
            .map(|group| {
                let poses: Vec<Pose> = group.yawed.iter().map(|pose| pose.after(hanging)).collect();
                let bulge = turning_bulge_m(group.angle, reach);
                let parked = DVec3::new(parking.across_m, parking.along_m, 0.0);
                Body::of(shape, &poses, spread + parked + DVec3::splat(bulge))
            })
            .collect();

        let sinks = wheel.is_some() && !matches!(role, Role::Wheel(_));
        let climbs_from = wheel.map_or(context.carry_m, |axle| {
            // What sinks with the wheels is held up by them: it is never lower than on the tyres.
            let earliest = if sinks {
                stands_until
            } else {
                context.lift_off_m[axle] - measured.z
            };
            earliest.max(context.first_touch_m)
        });
        let top = self.top.max(climbs_from);
        // Where columns that lean have taken the body by then.
        let (leaning, touch) = (self.uncertainty.leaning, self.touch);
        let taken = |until: f64| leaning.map(|of| of.vehicle([0.0, until], touch));
        let mut climbs_exactly_from = climbs_from;
        if wheel.is_some() && stands_until > at_rest_until {
            // The body turns over the standing tyre and takes it along sideways.
            let sideways = climbing.iter().fold(DVec3::ZERO, |most, body| {
                most.max(rest_body.low() - body.low())
                    .max(body.high() - rest_body.high())
            });
            let taken = taken(stands_until).map_or(DVec2::ZERO, Drift::most);
            let sideways = sideways.truncate() + taken;
            let mut body = rest_body.clone().widened(sideways.extend(0.0));
            if sinks {
                // It may have been lifted off for a while, and stands at most as high as then.
                let up = climbing
                    .iter()
                    .map(|body| body.moved(DVec3::Z * climbs_from));
                body = Body::hull(std::iter::once(body).chain(up).collect());
            }
            self.push(body, role, at_rest_until, stands_until, false);
        }
        if wheel.is_none() && context.carry_m > context.first_touch_m {
            // Some pads carry and others not yet: each lift point stands somewhere between where it is
            // with the vehicle on its tyres and where its pad has it once all carry.
            let mut starts = vec![rest_body.clone()];
            // All carry from where the lowest of them must: until then the posts' heights raise each lift
            // point by something from nothing to twice their ±, and never hold it below where it stands.
            let posts_up_m = context.uncertainty.posts_m.z;
            if posts_up_m != 0.0 {
                let on_pads = rest_body.moved(DVec3::Z * posts_up_m);
                starts.push(on_pads.widened(levers.off_at_supports(posts_up_m)));
            }
            let mut ways = vec![
                levers
                    .turning(context.rise_more_m, reach)
                    .of(&Body::hull(starts)),
            ];
            ways.extend(
                climbing
                    .iter()
                    .map(|body| body.moved(DVec3::Z * context.carry_m)),
            );
            let turned = Body::hull(ways);
            let body = match taken(context.carry_m) {
                Some(way) => way.of(&turned),
                None => turned,
            };
            self.push(body, role, context.first_touch_m, context.carry_m, false);
            // Until every tyre is off the floor a spring may still hold a corner above its pad, by
            // no more than the turn has moved it.
            let springs_until = context.springs_until_m.clamp(climbs_from, top);
            if springs_until > climbs_from {
                let held = levers.turning(0.0, reach);
                for body in &climbing {
                    self.push_climb(held.of(body), role, climbs_from, springs_until);
                }
                climbs_exactly_from = springs_until;
            }
        }
        for body in climbing {
            self.push_climb(body, role, climbs_exactly_from, top);
        }
    }

    /// A climb, in stretches where the columns lean.
    fn push_climb(&mut self, body: Body, role: Role, from: f64, to: f64) {
        let Some(leaning) = self.uncertainty.leaning else {
            self.push(body, role, from, to, true);
            return;
        };
        let heights = [body.low().z, body.high().z];
        for travels in stretches(from, to, self.top) {
            let way = match role {
                Role::Carriage(side) => leaning.carriage(side, heights, travels),
                Role::Arm(corner) | Role::Pad(corner) => {
                    leaning.arm(corner.side(), heights, travels, self.touch)
                }
                _ => leaning.vehicle(travels, self.touch),
            };
            self.push_in(way.of(&body), role, travels, true);
        }
        self.phases += 1;
    }

    fn push(&mut self, body: Body, role: Role, from: f64, to: f64, climbs: bool) {
        self.push_in(body, role, [from, to], climbs);
        self.phases += 1;
    }

    fn push_in(&mut self, body: Body, role: Role, [from, to]: [f64; 2], climbs: bool) {
        self.moving.push(Moving {
            body,
            solid: self.solids.len() - 1,
            role,
            from,
            to,
            climbs,
            phase: self.phases,
        });
    }
}

/// How far the floor under any tyre may be from where the study takes it; 0 where it is level or
/// one plane, and in the nominal study.
pub(super) fn floor_doubt_m(bay: &Bay, rest: &Pose, uncertainty: &Uncertainty) -> f64 {
    if *uncertainty == Uncertainty::NONE {
        return 0.0;
    }
    let Floor::Levels(_) = bay.garage.floor else {
        return 0.0;
    };
    let around = bay.vehicle.tyre_diameter.m();
    (0..4)
        .map(|wheel| {
            let at = rest.point(vehicle::wheel_middle_m(&bay.vehicle, wheel));
            let (low, high) = shell::floor_level_range_m(
                bay,
                [at.x - around, at.y - around],
                [at.x + around, at.y + around],
            );
            high - low
        })
        .fold(0.0, f64::max)
}

/// The most that the body on the pads may be turned from its nominal attitude, about any axis,
/// radians: a bound for what stands out from the body.
pub(super) fn most_turn(bay: &Bay, uncertainty: &Uncertainty) -> f64 {
    let tilt = support_levers(bay).map_or(0.0, |levers| {
        let tilt = levers.most_tilt(support_m(uncertainty), uncertainty.loose_pad_m);
        let lead = levers.most_turn(corners_on(Side::Left).map(|l| l * uncertainty.mismatch_m));
        tilt.length() + lead.length()
    });
    tilt + uncertainty.parking.yaw_rad
}

/// A radius that bounds every turn of the part: the axes of yaw and roll pass within a metre of
/// `middle` (the place that is lined up), on any vehicle that fits between two posts.
fn part_reach_m(shape: &Shape, vehicle_from_solid: &Pose, middle: DVec3) -> f64 {
    1.0 + outline_corners(shape, vehicle_from_solid)
        .into_iter()
        .map(|corner| (corner - middle).length())
        .fold(0.0, f64::max)
}

/// How far an arc of `angle` about a radius stands off its chord.
pub(crate) fn chord_bulge_m(radius_m: f64, angle: f64) -> f64 {
    radius_m * angle * angle / 8.0
}

/// The turns by ± `yaw_rad` about the vertical through the place that is lined up.
fn yaws(bay: &Bay, yaw_rad: f64) -> Vec<Pose> {
    if yaw_rad <= 0.0 {
        return vec![Pose::IDENTITY];
    }
    let pivot = parking_pivot(bay);
    [-yaw_rad, yaw_rad]
        .into_iter()
        .map(|yaw| {
            let turn = Pose::new(glam::DQuat::from_rotation_z(yaw), DVec3::ZERO);
            Pose::at(pivot).after(turn).after(Pose::at(-pivot))
        })
        .collect()
}

/// The place on the floor that the vehicle is lined up with and yaws about.
pub(super) fn parking_pivot(bay: &Bay) -> DVec3 {
    let (Aim::CentreOfGravity(offset) | Aim::LiftPoints(offset)) = bay.parking.aim;
    DVec3::new(
        bay.lift.across.m() + bay.parking.across.m(),
        bay.lift.post_line.m() + offset.m(),
        0.0,
    )
}

#[cfg(test)]
mod tests;

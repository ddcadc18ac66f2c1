//! How far hood, hatch and doors can be opened at each lock.
//!
//! The panel turns about its hinge. No point of it moves farther than its distance from the hinge
//! times the angle, so from any angle the panel can turn by (room over the margin) / (that
//! distance) before its margin can be short. Stepping that way closes in on the largest angle
//! from the safe side.

use glam::{DQuat, DVec3};

use super::body::Body;
use super::findings::OpeningFinding;
use super::gap::{Separation, Solver};
use super::movers::Moving;
use super::pairs::rule;
use super::sweep::Fixed;
use crate::bay::{Bay, OpeningKind, OpeningPart, Policy};
use crate::solids::{Pose, Role, Shape};

/// Thickness of the panel, metres.
pub(super) const THICKNESS_M: f64 = 0.06;
/// Room over the margin (metres) at which the search stops.
const CLOSE_M: f64 = 0.005;
/// Most steps per part and lock.
const MOST_STEPS: usize = 400;

/// What an open panel must keep from other things.
#[derive(Debug, Clone, Copy)]
pub(super) enum Keep {
    /// The margins asked of the body.
    Margins,
    /// It must not touch: a hand is on it, and its opener looks where it goes.
    NoTouch,
}

impl Keep {
    fn margin(self, fixed: Role, policy: &Policy) -> Option<f64> {
        let asked = margin(fixed, policy)?;
        Some(match self {
            Self::Margins => asked,
            Self::NoTouch => 0.0,
        })
    }
}

/// The margin asked of an open panel; none for what is left out. Of the lift's own moving parts a
/// carriage is kept clear of like the post it rides on; arms and pads must not be touched.
fn margin(fixed: Role, policy: &Policy) -> Option<f64> {
    match fixed {
        Role::Carriage(_) => Some(policy.beside_post.m()),
        Role::Arm(_) | Role::Pad(_) => Some(0.0),
        other => rule(Role::Body, other, policy).map(|rule| rule.margin_m),
    }
}

/// Something a panel may swing into.
#[derive(Debug, Clone, Copy)]
pub(super) struct InTheWay<'a> {
    /// Its body.
    pub(super) body: &'a Body,
    /// What it is.
    pub(super) role: Role,
    /// How far it stands from where its body is.
    pub(super) moved: DVec3,
}

impl<'a> InTheWay<'a> {
    /// Something that stays where it is.
    pub(super) fn fixed(fixed: &'a Fixed) -> Self {
        Self {
            body: &fixed.body,
            role: fixed.role,
            moved: DVec3::ZERO,
        }
    }
}

/// How far a panel opens, and what ends it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Opens {
    /// The angle, radians.
    pub(super) angle: f64,
    /// The index of what it comes near to; none when it opens all the way.
    pub(super) met: Option<usize>,
}

/// The hinge of a part, vehicle frame.
pub(super) struct Hinge {
    /// A point on the hinge's axis, at the panel's middle.
    pub(super) at: DVec3,
    /// Unit axis: the panel opens by a positive turn about it.
    axis: DVec3,
    /// From the hinge to the free edge, shut.
    toward: DVec3,
    /// Panel length from the hinge.
    length: f64,
    /// Panel size along the axis.
    width: f64,
}

impl Hinge {
    pub(super) fn new(part: &OpeningPart, body_width: f64) -> Self {
        let station = -part.hinge.m();
        let height = part.hinge_height.m();
        let middle = DVec3::new(0.0, station, height);
        let tilted = |forward: f64| {
            let (sin, cos) = part.shut.rad().sin_cos();
            DVec3::new(0.0, forward * cos, sin)
        };
        let (at, axis, toward) = match part.kind {
            // Free edge ahead of the hinge, opening upward: a turn about +x.
            OpeningKind::Hood => (middle, DVec3::X, tilted(1.0)),
            // Free edge behind the hinge, opening upward: a turn about -x.
            OpeningKind::Hatch => (middle, DVec3::NEG_X, tilted(-1.0)),
            // Free edge up, opening rearward and down: a turn about +x.
            OpeningKind::Tailgate => (middle, DVec3::X, tilted(-1.0)),
            OpeningKind::DoorLeft | OpeningKind::DoorRight => {
                let side = if part.kind == OpeningKind::DoorLeft {
                    -1.0
                } else {
                    1.0
                };
                let at = DVec3::new(
                    side * body_width * 0.5,
                    station,
                    height + part.width.m() * 0.5,
                );
                // Free edge behind the hinge; the left door swings to the left.
                (at, DVec3::Z * side, DVec3::NEG_Y)
            }
        };
        Self {
            at,
            axis,
            toward,
            length: part.length.m(),
            width: part.width.m(),
        }
    }

    /// The panel opened by `angle`, vehicle frame.
    pub(super) fn pose(&self, angle: f64) -> Pose {
        let turn = DQuat::from_axis_angle(self.axis, angle);
        let toward = turn * self.toward;
        let across = self.axis;
        let normal = across.cross(toward);
        let rotation =
            DQuat::from_mat3(&glam::DMat3::from_cols(across, toward, normal)).normalize();
        Pose::new(rotation, self.at + toward * (self.length * 0.5))
    }

    pub(super) fn shape(&self) -> Shape {
        Shape::Box {
            half: DVec3::new(self.width, self.length, THICKNESS_M) * 0.5,
        }
    }

    /// The farthest any point of the panel lies from the hinge's axis.
    fn radius(&self) -> f64 {
        self.length.hypot(THICKNESS_M * 0.5)
    }
}

/// How far the body may be from where it is drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct PlaceDoubt {
    /// How far any point of the body may be off, metres.
    pub(super) spread: DVec3,
    /// How far the body may be turned, radians: what stands out from it is off by that much more
    /// for each metre.
    pub(super) turn: f64,
}

/// How far each part opens at each lock, `at_locks` being `bay_from_vehicle` on each lock, once for
/// every attitude on the pads; the worst attitude counts.
pub(super) fn opening_parts(
    bay: &Bay,
    at_locks: &[Vec<Pose>],
    place: PlaceDoubt,
    fixed: &[&Fixed],
    moving: &[Moving],
    solver: &mut Solver,
) -> Vec<OpeningFinding> {
    // The carriages climb along beside the doors. Arms and pads carry the body from below: what
    // they must not touch is checked where they carry it.
    let carriages = moving
        .iter()
        .filter(|mover| matches!(mover.role, Role::Carriage(_)));
    let in_the_way: Vec<InTheWay<'_>> = fixed
        .iter()
        .map(|&fixed| InTheWay::fixed(fixed))
        .chain(carriages.map(|mover| InTheWay {
            body: &mover.body,
            role: mover.role,
            moved: DVec3::ZERO,
        }))
        .collect();
    let at_lock = |travel_m: f64| -> Vec<InTheWay<'_>> {
        let mut things = in_the_way.clone();
        for thing in &mut things[fixed.len()..] {
            thing.moved = DVec3::Z * travel_m;
        }
        things
    };
    let in_the_way: Vec<_> = bay
        .lift
        .locks
        .iter()
        .map(|travel| at_lock(travel.m()))
        .collect();
    bay.vehicle
        .opening_parts
        .iter()
        .map(|part| {
            let hinge = Hinge::new(part, bay.vehicle.body_width.m());
            let stands_out = hinge.length.max(hinge.width);
            let spread = place.spread + DVec3::splat(place.turn * stands_out);
            OpeningFinding {
                name: part.name.clone(),
                opens_rad: part.opens.rad(),
                at_locks_rad: at_locks
                    .iter()
                    .zip(&in_the_way)
                    .map(|(poses, things)| {
                        poses
                            .iter()
                            .map(|pose| {
                                let keep = Keep::Margins;
                                opens_to(bay, part, &hinge, *pose, (spread, keep), things, solver)
                                    .angle
                            })
                            .reduce(f64::min)
                            .unwrap_or(0.0)
                    })
                    .collect(),
            }
        })
        .collect()
}

/// How far one part opens where the vehicle stands.
pub(super) fn opens_to(
    bay: &Bay,
    part: &OpeningPart,
    hinge: &Hinge,
    bay_from_vehicle: Pose,
    (spread, keep): (DVec3, Keep),
    things: &[InTheWay<'_>],
    solver: &mut Solver,
) -> Opens {
    let most = part.opens.rad();
    let radius = hinge.radius();
    let shape = hinge.shape();
    let hinge_in_bay = bay_from_vehicle.point(hinge.at);
    // The panel stays in a cylinder about its hinge: the box about that.
    let axis = (bay_from_vehicle.rotation * hinge.axis).abs();
    let square = (DVec3::ONE - axis * axis).max(DVec3::ZERO);
    let square = DVec3::new(square.x.sqrt(), square.y.sqrt(), square.z.sqrt());
    let reach = square * radius + axis * (hinge.width * 0.5) + spread;
    let mut near: Vec<Near<'_>> = things
        .iter()
        .enumerate()
        .filter_map(|(index, thing)| {
            let margin_m = keep.margin(thing.role, &bay.policy)?;
            let apart = (hinge_in_bay - reach - thing.body.high() - thing.moved)
                .max(thing.body.low() + thing.moved - hinge_in_bay - reach)
                .max_element();
            (apart <= margin_m).then_some(Near {
                index,
                thing: *thing,
                margin_m,
                clear_until: 0.0,
            })
        })
        .collect();
    let mut angle = 0.0;
    for _ in 0..MOST_STEPS {
        let pose = bay_from_vehicle.after(hinge.pose(angle));
        let panel = Body::of(&shape, &[pose], spread);
        // Only what may be short from here on is asked again.
        for near in near.iter_mut().filter(|near| near.clear_until <= angle) {
            let gap = match solver.gap(&panel, -near.thing.moved, near.thing.body) {
                Separation::Meet => 0.0,
                Separation::Apart(gap) => gap.lower,
            };
            let room = gap - near.margin_m;
            if room.is_nan() || room <= CLOSE_M {
                return Opens {
                    angle,
                    met: Some(near.index),
                };
            }
            near.clear_until = angle + room / radius;
        }
        angle = near
            .iter()
            .map(|near| near.clear_until)
            .fold(f64::INFINITY, f64::min);
        if angle >= most {
            return Opens {
                angle: most,
                met: None,
            };
        }
    }
    let met = near
        .iter()
        .min_by(|a, b| a.clear_until.total_cmp(&b.clear_until));
    Opens {
        angle,
        met: met.map(|near| near.index),
    }
}

/// Something near enough to matter.
struct Near<'a> {
    index: usize,
    thing: InTheWay<'a>,
    margin_m: f64,
    /// The angle up to which it can't be short of its margin.
    clear_until: f64,
}

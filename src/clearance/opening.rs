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
use super::pairs::rule;
use super::sweep::Fixed;
use crate::bay::{Bay, OpeningKind, OpeningPart};
use crate::solids::{Pose, Role, Shape};

/// Thickness of the panel, metres.
const THICKNESS_M: f64 = 0.06;
/// Room over the margin (metres) at which the search stops.
const CLOSE_M: f64 = 0.005;
/// Most steps per part and lock.
const MOST_STEPS: usize = 200;

/// The hinge of a part, vehicle frame.
struct Hinge {
    /// A point on the hinge's axis, at the panel's middle.
    at: DVec3,
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
    fn new(part: &OpeningPart, body_width: f64) -> Self {
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
    fn pose(&self, angle: f64) -> Pose {
        let turn = DQuat::from_axis_angle(self.axis, angle);
        let toward = turn * self.toward;
        let across = self.axis;
        let normal = across.cross(toward);
        let rotation =
            DQuat::from_mat3(&glam::DMat3::from_cols(across, toward, normal)).normalize();
        Pose::new(rotation, self.at + toward * (self.length * 0.5))
    }

    fn shape(&self) -> Shape {
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
    solver: &mut Solver,
) -> Vec<OpeningFinding> {
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
                    .map(|poses| {
                        poses
                            .iter()
                            .map(|pose| opens_to(bay, part, &hinge, *pose, spread, fixed, solver))
                            .reduce(f64::min)
                            .unwrap_or(0.0)
                    })
                    .collect(),
            }
        })
        .collect()
}

fn opens_to(
    bay: &Bay,
    part: &OpeningPart,
    hinge: &Hinge,
    bay_from_vehicle: Pose,
    spread: DVec3,
    fixed: &[&Fixed],
    solver: &mut Solver,
) -> f64 {
    let most = part.opens.rad();
    let radius = hinge.radius();
    let shape = hinge.shape();
    let hinge_in_bay = bay_from_vehicle.point(hinge.at);
    let reach = DVec3::splat(radius + hinge.width * 0.5) + spread;
    let near: Vec<(&Fixed, f64)> = fixed
        .iter()
        .filter_map(|fixed| {
            let margin = rule(Role::Body, fixed.role, &bay.policy)?.margin_m;
            let apart = (hinge_in_bay - reach - fixed.body.high())
                .max(fixed.body.low() - hinge_in_bay - reach)
                .max_element();
            (apart <= margin).then_some((*fixed, margin))
        })
        .collect();
    let mut angle = 0.0;
    for _ in 0..MOST_STEPS {
        let pose = bay_from_vehicle.after(hinge.pose(angle));
        let panel = Body::of(&shape, &[pose], spread);
        let mut room = f64::INFINITY;
        for (thing, margin) in &near {
            let gap = match solver.gap(&panel, DVec3::ZERO, &thing.body) {
                Separation::Meet => 0.0,
                Separation::Apart(gap) => gap.lower,
            };
            room = room.min(gap - margin);
        }
        if room.is_nan() || room <= CLOSE_M {
            return angle;
        }
        angle += room / radius;
        if angle >= most {
            return most;
        }
    }
    angle
}

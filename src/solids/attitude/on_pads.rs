//! Every rigid attitude in which the body can stand on the four pads.

use glam::{DVec2, DVec3};

use super::{StanceError, at_rest, balance::centre_of_gravity, levelling};
use crate::bay::{Bay, Corner};
use crate::solids::shell::floor_level_m;
use crate::solids::vehicle::{lift_point_at, lift_point_m, wheel_shape};
use crate::solids::{ParkingError, Pose};

/// Four tops and four points within this of one plane are in one plane, metres: rounding of the
/// arithmetic.
const COPLANAR_M: f64 = 1e-9;
/// How far outside a triangle of pads the centre of gravity may seem to lie before that stance is
/// ruled out, metres. The project's own choice, wide on purpose: one part in a hundred of an axle
/// load moves the centre of gravity of a long vehicle by some 40 mm, and keeping a stance too many
/// only makes the answer more careful.
const BALANCE_TOLERANCE_M: f64 = 0.05;

/// One way for the body to stand on the pads.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Attitude {
    /// The vehicle's pose, extrapolated to travel 0: at travel `s` it is this moved up by `s`.
    pub bay_from_vehicle_at_zero: Pose,
    /// Which pads carry, by [`Corner::index`].
    pub carries: [bool; 4],
    /// The pad that hangs loose and the height of its gap, metres; none when all four carry.
    pub loose: Option<(Corner, f64)>,
    /// Travel at which the first wheel of each axle (front, rear) leaves the floor, metres.
    pub lift_off_m: [f64; 2],
    /// Travel at which the last wheel of each axle (front, rear) leaves the floor, metres.
    pub lift_off_last_m: [f64; 2],
}

/// The lift points in the vehicle's frame and the pad tops at travel 0, both by
/// [`Corner::index`], metres.
pub(super) struct Stand {
    pub(super) points: [DVec3; 4],
    pub(super) tops: [f64; 4],
}

impl Stand {
    pub(super) fn new(bay: &Bay, pad_extra_m: [f64; 4]) -> Self {
        Self {
            points: Corner::ALL.map(|corner| {
                lift_point_m(&bay.vehicle, lift_point_at(corner, bay.parking.facing))
            }),
            tops: std::array::from_fn(|i| {
                bay.lift.pad.lowest.m() + bay.parking.pad_raise[i].m() + pad_extra_m[i]
            }),
        }
    }

    fn centroid(&self) -> DVec3 {
        self.points.iter().sum::<DVec3>() / 4.0
    }
}

/// Every stable attitude on the pads.
///
/// When the four tops and the four lift points fit one plane there is one, on all four pads.
/// Otherwise the body stands on three pads with the fourth below its point; of those stances the
/// ones whose three pads carry the centre of gravity are kept, or all of them while the centre of
/// gravity is not known or seems to lie outside every one. The order is that of the loose pad's
/// corner.
///
/// The heading is that of the vehicle at rest, and so is the place in plan of the lift points'
/// middle. `pad_extra_m` is added to the height of each pad (by [`Corner::index`]): carriages out
/// of level, a trial setting of a screw.
///
/// # Errors
/// See [`StanceError`].
pub fn attitudes(
    bay: &Bay,
    error: ParkingError,
    pad_extra_m: [f64; 4],
) -> Result<Vec<Attitude>, StanceError> {
    attitudes_from(bay, at_rest(bay, error)?, pad_extra_m)
}

/// The same for a vehicle whose pose at rest is known.
///
/// # Errors
/// See [`StanceError`].
pub(crate) fn attitudes_from(
    bay: &Bay,
    rest: Pose,
    pad_extra_m: [f64; 4],
) -> Result<Vec<Attitude>, StanceError> {
    let stand = Stand::new(bay, pad_extra_m);
    if !stand.tops.iter().all(|top| top.is_finite()) {
        return Err(StanceError::NotANumber);
    }
    let mut stances = Vec::with_capacity(4);
    let mut fault = StanceError::LiftPointsInLine;
    for loose in Corner::ALL {
        match pose_without(&stand, rest, loose) {
            Ok(pose) => {
                let i = loose.index();
                let gap = pose.point(stand.points[i]).z - stand.tops[i];
                if gap.abs() <= COPLANAR_M {
                    return Ok(vec![attitude(bay, rest, pose, None)]);
                }
                if gap > 0.0 {
                    stances.push((pose, loose, gap));
                }
            }
            Err(StanceError::LiftPointsInLine) => {}
            Err(other) => fault = other,
        }
    }
    if stances.is_empty() {
        return Err(fault);
    }
    let balanced: Vec<_> = stances
        .iter()
        .copied()
        .filter(|&(pose, loose, _)| may_balance(bay, &stand, pose, loose))
        .collect();
    let kept = if balanced.is_empty() {
        stances
    } else {
        balanced
    };
    Ok(kept
        .into_iter()
        .map(|(pose, loose, gap)| attitude(bay, rest, pose, Some((loose, gap))))
        .collect())
}

/// The pose at travel 0 on the three pads other than `loose`.
///
/// `up` is the bay's +z seen from the vehicle: its product with the way from one carried point to
/// another is the difference of their pads' heights. Two such differences and unit length give it.
fn pose_without(stand: &Stand, rest: Pose, loose: Corner) -> Result<Pose, StanceError> {
    let [a, b, c] = carried_by(loose);
    let (to_b, to_c) = (
        stand.points[b] - stand.points[a],
        stand.points[c] - stand.points[a],
    );
    let normal = to_b.cross(to_c);
    // The triangle's least height in plan must exceed a tenth of a millimetre.
    let longest = to_b.length().max(to_c.length()).max((to_c - to_b).length());
    if normal.z.abs() <= 1e-4 * longest {
        return Err(StanceError::LiftPointsInLine);
    }
    let (rise_b, rise_c) = (stand.tops[b] - stand.tops[a], stand.tops[c] - stand.tops[a]);
    let square = normal.length_squared();
    let in_plane = (to_c.cross(normal) * rise_b + normal.cross(to_b) * rise_c) / square;
    let across_square = 1.0 - in_plane.length_squared();
    if across_square.is_nan() || across_square <= 0.0 {
        return Err(StanceError::PadsTooUneven);
    }
    let up = in_plane + normal * (across_square / square).sqrt() * normal.z.signum();
    if up.z <= 0.0 {
        return Err(StanceError::PadsTooUneven);
    }
    let heading = heading_only(rest);
    let rotation = levelling(heading * up) * heading;
    let kept = rest.point(stand.centroid());
    let mut shift = kept - rotation * stand.centroid();
    shift.z = [a, b, c]
        .iter()
        .map(|&i| stand.tops[i] - (rotation * stand.points[i]).z)
        .sum::<f64>()
        / 3.0;
    Ok(Pose::new(rotation, shift))
}

/// The rotation at rest without the tilt of the floor.
fn heading_only(rest: Pose) -> glam::DQuat {
    levelling(rest.rotation * DVec3::Z) * rest.rotation
}

/// The indices of the three corners other than `loose`.
fn carried_by(loose: Corner) -> [usize; 3] {
    let skip = loose.index();
    std::array::from_fn(|i| if i < skip { i } else { i + 1 })
}

/// False only when the centre of gravity, known in plan, lies outside the triangle of the three
/// carrying points by more than the tolerance, whatever its height between the ground and the
/// roof (a tilted body carries a high centre of gravity to one side).
fn may_balance(bay: &Bay, stand: &Stand, pose: Pose, loose: Corner) -> bool {
    let Ok(balance) = centre_of_gravity(&bay.vehicle) else {
        return true;
    };
    let plan = |point: DVec3| {
        let point = pose.point(point);
        DVec2::new(point.x, point.y)
    };
    let low = plan(balance.plan_m.extend(0.0));
    let high = plan(balance.plan_m.extend(bay.vehicle.height.m()));
    let triangle = carried_by(loose).map(|i| plan(stand.points[i]));
    let turn = (triangle[1] - triangle[0])
        .perp_dot(triangle[2] - triangle[0])
        .signum();
    // The part of the way from low to high that lies inside all three edges, as shares of it.
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for i in 0..3 {
        let (start, end) = (triangle[i], triangle[(i + 1) % 3]);
        let along = (end - start).normalize_or_zero();
        let inside = |point: DVec2| turn * along.perp_dot(point - start) + BALANCE_TOLERANCE_M;
        let (at_low, at_high) = (inside(low), inside(high));
        if at_low < 0.0 && at_high < 0.0 {
            return false;
        }
        if at_low < 0.0 {
            from = from.max(at_low / (at_low - at_high));
        } else if at_high < 0.0 {
            to = to.min(at_low / (at_low - at_high));
        }
    }
    from <= to
}

/// The attitude of a pose, with the travels at which its wheels leave the floor.
fn attitude(bay: &Bay, rest: Pose, pose: Pose, loose: Option<(Corner, f64)>) -> Attitude {
    let mut first = [f64::INFINITY; 2];
    let mut last = [f64::NEG_INFINITY; 2];
    let down = rest.rotation * DVec3::NEG_Z;
    for index in 0..4 {
        let axle = index / 2;
        let drooped = DVec3::NEG_Z * bay.vehicle.droop[axle].m();
        let (shape, place) = wheel_shape(&bay.vehicle, index);
        let foot = shape.support(pose.after(place.moved(drooped)), down);
        let lift_off = floor_level_m(bay, foot.x, foot.y) - foot.z;
        first[axle] = first[axle].min(lift_off);
        last[axle] = last[axle].max(lift_off);
    }
    Attitude {
        bay_from_vehicle_at_zero: pose,
        carries: Corner::ALL.map(|corner| loose.is_none_or(|(hanging, _)| hanging != corner)),
        loose,
        lift_off_m: first,
        lift_off_last_m: last,
    }
}

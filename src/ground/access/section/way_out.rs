//! Does the driver get away from where his door lets him out?
//!
//! Vehicle and posts part the room into four corners. He leaves by the garage door: from a corner on
//! its side of the posts he has to get past the vehicle's end there; from one behind the posts he
//! first has to get past the post beside him, or round the vehicle's other end and past the other
//! post. Whether the room has another door is not known.

use crate::bay::{Bay, Facing, Side};
use crate::clearance::{LEAVE_M, Study, Way, WayKind};
use crate::solids::{ParkingError, attitude};

/// The sides of the vehicle that the driver may sit on.
pub(super) fn sides(bay: &Bay) -> impl Iterator<Item = Side> {
    let driver = bay.vehicle.driver;
    [Side::Left, Side::Right]
        .into_iter()
        .filter(move |&side| driver.is_none_or(|driver| driver == side))
}

/// The first side of the vehicle that the driver may sit on and no front door is given for.
pub(super) fn without_a_door(bay: &Bay, study: &Study) -> Option<Side> {
    sides(bay).find(|&side| !has_door(study, side))
}

pub(super) fn has_door(study: &Study, side: Side) -> bool {
    study.access.doors.iter().any(|door| door.side == side)
}

/// Where a side of the vehicle lies in the bay.
const fn in_bay(side: Side, facing: Facing) -> Side {
    match (facing, side) {
        (Facing::NoseIn, side) => side,
        (Facing::TailIn, Side::Left) => Side::Right,
        (Facing::TailIn, Side::Right) => Side::Left,
    }
}

/// The ways that the driver needs: the one beside the vehicle where his door is, and, where they
/// are all too narrow, those of which one would let him out of the corner he steps into.
pub(super) fn needed(bay: &Bay, study: &Study) -> Vec<WayKind> {
    let wide = |kind: WayKind| {
        let way = study.access.ways.iter().find(|way| way.kind == kind);
        // Where nothing stands nothing is narrow.
        way.is_none_or(|way| way.width_m >= LEAVE_M)
    };
    let mut needed = Vec::with_capacity(4);
    for of_vehicle in sides(bay) {
        let side = in_bay(of_vehicle, bay.parking.facing);
        needed.push(WayKind::BesideVehicle(side));
        let past = |side: Side| [WayKind::VehicleToPost(side), WayKind::BehindPost(side)];
        let gets_past = |side: Side| past(side).into_iter().any(wide);
        let other = match side {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        };
        for end in ends(bay, study, of_vehicle) {
            let gets_round = wide(WayKind::Back) && gets_past(other);
            let is_behind = end == WayKind::Back;
            if wide(WayKind::Door) && (!is_behind || gets_past(side) || gets_round) {
                continue;
            }
            needed.push(WayKind::Door);
            if is_behind && !gets_past(side) {
                needed.extend(past(side));
                needed.push(WayKind::Back);
                needed.extend(past(other));
            }
        }
    }
    needed
}

/// The first of the needed ways that is too narrow.
pub(super) fn too_narrow<'a>(bay: &Bay, study: &'a Study) -> Option<&'a Way> {
    let needed = needed(bay, study);
    let ways = study.access.ways.iter();
    let mut narrow = ways.filter(|way| needed.contains(&way.kind) && way.width_m < LEAVE_M);
    narrow.next()
}

/// On which side of the post line people step out of the front doors of a side of the vehicle: at
/// a door's free edge. Both where that may be beside the post, or is not known.
fn ends(bay: &Bay, study: &Study, side: Side) -> Vec<WayKind> {
    let both = vec![WayKind::Back, WayKind::Door];
    let Ok(rest) = attitude::at_rest(bay, ParkingError::default()) else {
        return both;
    };
    let column = &bay.lift.column;
    let beside_post = 0.5 * column.width.m().hypot(column.depth.m())
        + bay.parking.repeat_along.m()
        + study.uncertainty.lined_up_spread().y;
    let mut ends = Vec::with_capacity(2);
    for door in study.access.doors.iter().filter(|door| door.side == side) {
        let Some(part) = bay.vehicle.opening_parts.get(door.part) else {
            return both;
        };
        let edge = glam::DVec3::NEG_Y * (part.hinge + part.length).m();
        let past = rest.point(edge).y - bay.lift.post_line.m();
        if past > beside_post {
            ends.push(WayKind::Back);
        } else if past < -beside_post {
            ends.push(WayKind::Door);
        } else {
            return both;
        }
    }
    if ends.is_empty() { both } else { ends }
}

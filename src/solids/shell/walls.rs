//! Where do the walls stand, and what is left of the door wall around its opening?

use glam::DVec2;

use super::ceiling::Profile;
use super::floor_level_range_m;
use crate::bay::{Bay, Run};
use crate::solids::outline::{along_x, along_y};
use crate::solids::{Role, Solid};

/// How thick side and back walls are built, outward.
pub(super) const THICKNESS_M: f64 = 0.15;
/// How far walls run up into the ceiling, so that no gap opens between them.
const INTO_CEILING_M: f64 = 0.05;
/// How far walls run down below the lowest floor.
const BELOW_FLOOR_M: f64 = 0.1;
/// Least thickness of the door wall as built; a file may call it nothing.
const LEAST_DOOR_WALL_M: f64 = 0.001;

/// The room's lowest and highest corner in plan (x, y), at the walls' inner faces.
pub(super) fn room(bay: &Bay) -> ([f64; 2], [f64; 2]) {
    let garage = &bay.garage;
    // x = 0 is the middle of the opening, which lies `offset` right of the room's middle.
    let middle = -garage.opening.offset.m();
    let half = 0.5 * garage.width.m();
    ([middle - half, 0.0], [middle + half, garage.depth.m()])
}

/// `z` of the underside of the door wall over the opening: over the lowest floor along it.
pub(super) fn header_bottom_m(bay: &Bay) -> f64 {
    let opening = &bay.garage.opening;
    let half = 0.5 * opening.width.m();
    let floor = floor_level_range_m(bay, [-half, -opening.wall_thickness.m()], [half, 0.0]).0;
    floor + opening.height.m()
}

/// Side walls, back wall, and the door wall's parts.
#[must_use]
pub fn walls(bay: &Bay) -> Vec<Solid> {
    let profile = Profile::of(bay);
    let (low, high) = room(bay);
    let opening = &bay.garage.opening;
    let outside = -opening.wall_thickness.m().max(LEAST_DOOR_WALL_M);
    let foot = floor_level_range_m(bay, low, high).0 - BELOW_FLOOR_M;

    let side = |name: &str, inner: f64, outer: f64| {
        let top = tops(&profile, Run::DoorToBack, inner, [low[1], high[1]]);
        let ends = [outside, high[1] + THICKNESS_M];
        let outline = upright(foot, ends, [low[1], high[1]], &top);
        along_x(name, Role::Wall, [inner, outer], outline)
    };
    let mut solids = vec![
        side("shell/wall left", low[0], low[0] - THICKNESS_M),
        side("shell/wall right", high[0], high[0] + THICKNESS_M),
    ];

    // A wall across the bay: from `from` to `to` along x, heights read within the room.
    let across = |name: &str, role: Role, y: [f64; 2], x: [f64; 2], bottom: f64| {
        let read = [x[0].max(low[0]), x[1].min(high[0])];
        if read[1] <= read[0] {
            return None;
        }
        let inner_face = y[0];
        let top = tops(&profile, Run::SideToSide, inner_face, read);
        if top.iter().all(|point| point.y <= bottom) {
            return None;
        }
        let outline = upright(bottom, x, read, &top);
        Some(along_y(name, role, y, outline))
    };
    let back = [high[1], high[1] + THICKNESS_M];
    let beyond = [low[0] - THICKNESS_M, high[0] + THICKNESS_M];
    let half = 0.5 * opening.width.m();
    let door = [0.0, outside];
    let header = header_bottom_m(bay);
    let role = Role::DoorWall;
    solids.extend(across("shell/wall back", Role::Wall, back, beyond, foot));
    let left = [beyond[0], -half];
    solids.extend(across("shell/door wall left", role, door, left, foot));
    let right = [half, beyond[1]];
    solids.extend(across("shell/door wall right", role, door, right, foot));
    solids.extend(across(
        "shell/door header",
        role,
        door,
        [-half, half],
        header,
    ));
    solids
}

/// The ceiling's line over a wall that runs along `run` at `place` on the other axis, between the
/// two positions: its ends and every break between them.
fn tops(profile: &Profile, run: Run, place: f64, between: [f64; 2]) -> Vec<DVec2> {
    let mut positions = between.to_vec();
    if profile.along == run {
        let breaks = profile.pieces.iter().map(|piece| piece.start.x);
        positions.extend(breaks.filter(|&at| at > between[0] && at < between[1]));
    }
    let height = |position| match run {
        Run::DoorToBack => profile.highest_at(place, position),
        Run::SideToSide => profile.highest_at(position, place),
    };
    positions
        .into_iter()
        .map(|position| DVec2::new(position, height(position) + INTO_CEILING_M))
        .collect()
}

/// The outline of a wall from `bottom` up to `top`. The parts beyond the room (`ends` outside
/// `room`) take the height of the room's edge.
fn upright(bottom: f64, ends: [f64; 2], room: [f64; 2], top: &[DVec2]) -> Vec<DVec2> {
    let mut outline = Vec::new();
    for point in top {
        let z = point.y.max(bottom);
        outline.extend([DVec2::new(point.x, bottom), DVec2::new(point.x, z)]);
        if point.x <= room[0] {
            outline.extend([DVec2::new(ends[0], bottom), DVec2::new(ends[0], z)]);
        }
        if point.x >= room[1] {
            outline.extend([DVec2::new(ends[1], bottom), DVec2::new(ends[1], z)]);
        }
    }
    outline
}

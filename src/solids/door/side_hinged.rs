//! Which solids are two leaves hinged at the jambs, and what do they sweep?
//!
//! Leaves that open inward hang flush with the wall's inner face, outward ones with its outer
//! face, each hinged at the edge of the opening on that face.

use glam::{DQuat, DVec2, DVec3};

use super::footing_m;
use crate::bay::{Bay, SideHingedDoor};
use crate::solids::outline::along_z;
use crate::solids::shell::floor_level_range_m;
use crate::solids::{Pose, Role, Solid};

/// How many intervals the swing is cut into.
const INTERVALS: u32 = 16;
/// Added all round the swept hulls, so that rounding can't leave a corner outside.
const ROUNDING_M: f64 = 1e-6;

/// One leaf: its hinge, its corners from the hinge when shut, and the sense it turns in.
struct Leaf {
    side: &'static str,
    hinge: DVec2,
    /// Opposite corners of the shut leaf in plan, from the hinge.
    low: DVec2,
    high: DVec2,
    /// +1 when it turns counter-clockwise seen from above.
    sense: f64,
    /// Bottom and top.
    z_m: [f64; 2],
}

fn leaves(bay: &Bay, door: &SideHingedDoor) -> [Leaf; 2] {
    let opening = &bay.garage.opening;
    let half = 0.5 * opening.width.m();
    let (thick, wall) = (door.leaf_thickness.m(), opening.wall_thickness.m());
    let (face, depth) = if door.inward {
        (0.0, [-thick, 0.0])
    } else {
        (-wall, [0.0, thick])
    };
    // Leaves are stiff and level: from the lowest floor along the opening to the full height over
    // the highest.
    let top = floor_level_range_m(bay, [-half, -wall], [half, 0.0]).1 + opening.height.m();
    let z_m = [footing_m(bay), top];
    let inward = if door.inward { 1.0 } else { -1.0 };
    [("left", -1.0), ("right", 1.0)].map(|(side, sign)| {
        // The left leaf reaches toward +x from its hinge, the right one toward -x.
        let reach = -sign * half;
        Leaf {
            side,
            hinge: DVec2::new(sign * half, face),
            low: DVec2::new(reach.min(0.0), depth[0]),
            high: DVec2::new(reach.max(0.0), depth[1]),
            sense: -sign * inward,
            z_m,
        }
    })
}

/// Both leaves at a point of travel, which scales the angle they open to.
pub(super) fn panels(bay: &Bay, door: &SideHingedDoor, fraction: f64) -> Vec<Solid> {
    leaves(bay, door)
        .iter()
        .map(|leaf| {
            let turned = leaf.sense * fraction * door.opens.rad();
            let middle =
                leaf.hinge + DVec2::from_angle(turned).rotate(0.5 * (leaf.low + leaf.high));
            let size = leaf.high - leaf.low;
            Solid::posed_box(
                format!("door/panel {}", leaf.side),
                Role::DoorPanel,
                DVec3::new(size.x, size.y, leaf.z_m[1] - leaf.z_m[0]),
                Pose::new(
                    DQuat::from_rotation_z(turned),
                    middle.extend(0.5 * (leaf.z_m[0] + leaf.z_m[1])),
                ),
            )
        })
        .collect()
}

/// Solids that hold both leaves on their whole way. Every corner of a leaf moves on a circle about
/// the hinge; over an interval it stays between its two ends and the meeting point of the tangents
/// there. The leaf is the hull of its corners, so at each angle it lies in the hull of those
/// triangles.
pub(super) fn running(bay: &Bay, door: &SideHingedDoor) -> Vec<Solid> {
    let step = door.opens.rad() / f64::from(INTERVALS);
    let mut solids = Vec::new();
    for leaf in leaves(bay, door) {
        let corners = [
            leaf.low,
            leaf.high,
            DVec2::new(leaf.low.x, leaf.high.y),
            DVec2::new(leaf.high.x, leaf.low.y),
        ];
        for i in 0..INTERVALS {
            let turned = |share: f64| DVec2::from_angle(leaf.sense * step * (f64::from(i) + share));
            let outer = turned(0.5) / (0.5 * step).cos();
            let mut points = Vec::new();
            for corner in corners {
                for turn in [turned(0.0), outer, turned(1.0)] {
                    let point = leaf.hinge + turn.rotate(corner);
                    for (x, y) in [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)] {
                        points.push(point + ROUNDING_M * DVec2::new(x, y));
                    }
                }
            }
            let name = format!("door/running leaf {} {}", leaf.side, i + 1);
            solids.push(along_z(name, Role::DoorPanel, leaf.z_m, points));
        }
    }
    solids
}

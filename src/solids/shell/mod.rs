//! Which solids are the room itself: floor, walls, door wall around its opening, ceiling?
//!
//! The room's inner faces are exact; thicknesses beyond them are the project's own choice, since
//! nothing in the bay can be behind them.

mod ceiling;
mod floor;
mod walls;

use glam::DVec3;

pub use ceiling::{ceiling_height_m, highest_ceiling_m};
pub use floor::{floor_level_m, floor_level_range_m};
pub use walls::walls;

use super::{Role, Solid};
use crate::bay::{Bay, Floor};

/// How thick the floor is built, and how far it runs on beyond the walls.
const FLOOR_M: f64 = 0.2;
/// Where the floor is known by points only, it is built of flat patches no longer than this.
const PATCH_M: f64 = 2.0;

/// The room: floor, walls, door wall, ceiling; bay axes, metres.
#[must_use]
pub fn shell(bay: &Bay) -> Vec<Solid> {
    let mut solids = floor_solids(bay);
    solids.extend(walls::walls(bay));
    solids.extend(ceiling::ceiling(bay));
    solids
}

/// The floor slab. Its top is the floor where that is a plane; where it is known by points, each
/// patch stands at the highest level that the floor may have in it, so nothing real stands higher.
fn floor_solids(bay: &Bay) -> Vec<Solid> {
    let (low, high) = walls::room(bay);
    let low = [
        low[0] - FLOOR_M,
        -bay.garage.opening.wall_thickness.m() - FLOOR_M,
    ];
    let high = [high[0] + FLOOR_M, high[1] + FLOOR_M];
    let bottom = floor_level_range_m(bay, low, high).0 - FLOOR_M;
    match &bay.garage.floor {
        Floor::Level => vec![Solid::aligned_box(
            "shell/floor",
            Role::Floor,
            DVec3::new(low[0], low[1], bottom),
            DVec3::new(high[0], high[1], 0.0),
        )],
        Floor::Fall { .. } => {
            let corners = [[low[0], low[1]], [high[0], low[1]], [low[0], high[1]], high];
            let vertices = corners
                .iter()
                .flat_map(|&[x, y]| {
                    [
                        DVec3::new(x, y, bottom),
                        DVec3::new(x, y, floor_level_m(bay, x, y)),
                    ]
                })
                .collect();
            vec![Solid::hull("shell/floor", Role::Floor, vertices)]
        }
        Floor::Levels(_) => {
            let (columns, rows) = (cuts(low[0], high[0]), cuts(low[1], high[1]));
            let mut patches = Vec::new();
            for y in rows.windows(2) {
                for x in columns.windows(2) {
                    let top = floor_level_range_m(bay, [x[0], y[0]], [x[1], y[1]]).1;
                    patches.push(Solid::aligned_box(
                        format!("shell/floor patch {}", patches.len() + 1),
                        Role::Floor,
                        DVec3::new(x[0], y[0], bottom),
                        DVec3::new(x[1], y[1], top),
                    ));
                }
            }
            patches
        }
    }
}

/// Even cuts from `low` to `high`, at most [`PATCH_M`] apart.
fn cuts(low: f64, high: f64) -> Vec<f64> {
    let count = ((high - low) / PATCH_M).ceil().clamp(1.0, 100.0) as u32;
    (0..=count)
        .map(|i| low + (high - low) * f64::from(i) / f64::from(count))
        .collect()
}

#[cfg(test)]
mod tests;

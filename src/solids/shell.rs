//! Stand-in until the room's builders are merged: the level of the floor, and nothing built.

use super::Solid;
use crate::bay::{Bay, FallToward, Floor};

/// The floor's level at a place in plan, metres above the floor at the post line.
#[must_use]
pub fn floor_level_m(bay: &Bay, x_m: f64, y_m: f64) -> f64 {
    let along = y_m - bay.lift.post_line.m();
    let across = x_m - bay.lift.across.m();
    match &bay.garage.floor {
        Floor::Fall { slope, toward } => match toward {
            FallToward::Door => slope * along,
            FallToward::Back => -slope * along,
            FallToward::Left => slope * across,
            FallToward::Right => -slope * across,
        },
        Floor::Level | Floor::Levels(_) => 0.0,
    }
}

/// Stand-in: nothing built.
#[must_use]
pub fn shell(_bay: &Bay) -> Vec<Solid> {
    Vec::new()
}

//! Which solids are the door, shut, open or in between, and what does it take up while it runs?
//!
//! Heights are above the lowest floor along the opening: a door hung lower is nearer to the
//! vehicle. A shut door stands against the wall's inner face.

mod findings;
mod linkage;
mod roll_up;
mod running;
mod sectional;
mod side_hinged;
mod sweep;
mod swing_up;
mod track;

use glam::{DVec2, DVec3};

pub use findings::{DoorFinding, findings};

use super::shell::floor_level_range_m;
use super::{DoorTravel, Solid};
use crate::bay::{Bay, Door};

/// The door at a point of travel: panels, and fittings (tracks, springs, drum) where they are
/// whatever the door does. Bay axes, metres.
#[must_use]
pub fn door(bay: &Bay, travel: DoorTravel) -> Vec<Solid> {
    let fraction = travel.fraction();
    let mut solids = match &bay.garage.door {
        Door::None => Vec::new(),
        Door::Sectional(door) => sectional::panels(bay, door, fraction),
        Door::RollUp(door) => roll_up::curtain(bay, door, "panel", fraction),
        Door::SwingUp(door) => vec![swing_up::panel(bay, door, fraction)],
        Door::SideHinged(door) => side_hinged::panels(bay, door, fraction),
    };
    solids.extend(fittings(bay));
    solids
}

/// What the door takes up on its whole way, as `door/running …`, with its fittings. Each panel (and
/// bracket) at each point of travel lies wholly in one of these solids. Bay axes, metres.
#[must_use]
pub fn envelope(bay: &Bay) -> Vec<Solid> {
    let mut solids = match &bay.garage.door {
        Door::None => Vec::new(),
        Door::Sectional(door) => running::running(bay, door),
        // The curtain only moves in its own plane: shut, it is all there is.
        Door::RollUp(door) => roll_up::curtain(bay, door, "running", 0.0),
        Door::SwingUp(door) => swing_up::running(bay, door),
        Door::SideHinged(door) => side_hinged::running(bay, door),
    };
    solids.extend(fittings(bay));
    solids
}

/// The middle of the door's top edge in `(y, z)`, for doors that an opener's trolley pulls by it.
/// It only moves inward and up as the door opens.
pub(super) fn top_edge(bay: &Bay, fraction: f64) -> Option<DVec2> {
    match &bay.garage.door {
        Door::Sectional(door) => {
            let joints = linkage::Linkage::of(bay, door).joints(fraction);
            joints.last().map(|joint| joint.at)
        }
        Door::SwingUp(door) => Some(swing_up::top_edge(bay, door, fraction)),
        Door::None | Door::RollUp(_) | Door::SideHinged(_) => None,
    }
}

fn fittings(bay: &Bay) -> Vec<Solid> {
    match &bay.garage.door {
        Door::None | Door::SideHinged(_) => Vec::new(),
        Door::Sectional(door) => sectional::fittings(bay, door),
        Door::RollUp(door) => roll_up::fittings(bay, door),
        Door::SwingUp(door) => swing_up::fittings(bay, door),
    }
}

/// `z` of the lowest floor along the opening, where the door stands.
fn footing_m(bay: &Bay) -> f64 {
    let opening = &bay.garage.opening;
    let half = 0.5 * opening.width.m();
    floor_level_range_m(bay, [-half, -opening.wall_thickness.m()], [half, 0.0]).0
}

/// A point at `x` in the plane of `(y, z)`.
fn across(x: f64, yz: DVec2) -> DVec3 {
    DVec3::new(x, yz.x, yz.y)
}

#[cfg(test)]
pub(crate) mod test_doors;
#[cfg(test)]
mod tests;

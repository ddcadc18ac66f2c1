//! Which solids are a roll-up door: its curtain and its drum?
//!
//! The curtain hangs against the wall's inner face and climbs to the drum on the drum's wall side.
//! The drum is built at its largest, with the whole curtain on it, whatever the door does.

use glam::DVec2;

use super::{across, footing_m};
use crate::bay::{Bay, RollUpDoor};
use crate::solids::outline::along_x;
use crate::solids::{Role, Solid};

/// How far curtain, guides and drum reach beyond the opening on each side. Common practice, no
/// source.
const BESIDE_M: f64 = 0.1;

fn half_width_m(bay: &Bay) -> f64 {
    0.5 * bay.garage.opening.width.m() + BESIDE_M
}

/// The curtain from its bottom edge to the drum. `label` is `panel` for the door at a point of
/// travel and `running` for all of it.
pub(super) fn curtain(bay: &Bay, door: &RollUpDoor, label: &str, fraction: f64) -> Vec<Solid> {
    let floor = footing_m(bay);
    let opening = floor + bay.garage.opening.height.m();
    let thick = door.curtain_thickness.m();
    let drum = DVec2::new(door.coil_out.m(), floor + door.coil_height.m());
    let half = half_width_m(bay);
    let bottom = floor + fraction * bay.garage.opening.height.m();
    let guide_top = opening.min(drum.y);
    let mut solids = Vec::new();
    if bottom < guide_top {
        let outline = vec![
            DVec2::new(0.0, bottom),
            DVec2::new(thick, bottom),
            DVec2::new(0.0, guide_top),
            DVec2::new(thick, guide_top),
        ];
        let name = format!("door/{label} 1");
        solids.push(along_x(name, Role::DoorPanel, [-half, half], outline));
    }
    if guide_top < drum.y {
        // From the guides to the drum: everything between the wall and the line from the curtain's
        // inner face to the drum's axis. The curtain meets the drum on the wall side of that line.
        let outline = vec![
            DVec2::new(0.0, guide_top),
            DVec2::new(thick, guide_top),
            DVec2::new(0.0, drum.y),
            DVec2::new(drum.x.max(thick), drum.y),
        ];
        let name = format!("door/{label} 2");
        solids.push(along_x(name, Role::DoorPanel, [-half, half], outline));
    }
    solids
}

/// The drum with the curtain on it.
pub(super) fn fittings(bay: &Bay, door: &RollUpDoor) -> Vec<Solid> {
    let half = half_width_m(bay);
    let axis = DVec2::new(door.coil_out.m(), footing_m(bay) + door.coil_height.m());
    vec![Solid::bar(
        "door/drum",
        Role::DoorFitting,
        across(-half, axis),
        across(half, axis),
        0.5 * door.coil_diameter.m(),
    )]
}

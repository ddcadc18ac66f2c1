//! Does the door, as the file gives it, fit its tracks and its room?

use super::linkage::Linkage;
use super::swing_up;
use crate::bay::{Bay, Door, TrackLayout};
use crate::solids::shell::ceiling_height_m;

/// Something about the door as given that a person should look at. None of these makes the solids
/// less than the real door: it is built as far as it reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DoorFinding {
    /// The open door reaches this far beyond the end of its level track, metres.
    LevelTrackShort {
        /// What the track lacks.
        by_m: f64,
    },
    /// The open door's top edge, or the way to it, stands this far above the ceiling, metres.
    ThroughCeiling {
        /// How far.
        by_m: f64,
    },
    /// The top edge of the shut door leans this far into the bay, since the panels reach onto the
    /// track's curve, metres.
    LeansWhenShut {
        /// How far the top edge lies from the plane of the shut door.
        by_m: f64,
    },
}

/// How far out of plane the top of a shut door may be before it is told: 1 mm.
const TOLD_FROM_M: f64 = 0.001;

/// What a person should look at in the door as given.
#[must_use]
pub fn findings(bay: &Bay) -> Vec<DoorFinding> {
    let (shut, open, track_end) = match &bay.garage.door {
        Door::Sectional(door) => {
            let linkage = Linkage::of(bay, door);
            let edge = |fraction| linkage.joints(fraction).last().map(|joint| joint.at);
            let (Some(shut), Some(open)) = (edge(0.0), edge(1.0)) else {
                return Vec::new();
            };
            let end = (door.layout != TrackLayout::VerticalLift)
                .then(|| linkage.track.foot.x + linkage.track.radius_m + door.track_length.m());
            let lean = shut.x - linkage.track.foot.x;
            ((shut, lean), open, end)
        }
        Door::SwingUp(door) => {
            let [shut, open] = [0.0, 1.0].map(|at| swing_up::top_edge(bay, door, at));
            let plane = 0.5 * door.track_section.m().max(door.panel_thickness.m());
            ((shut, shut.x - plane), open, None)
        }
        Door::None | Door::RollUp(_) | Door::SideHinged(_) => return Vec::new(),
    };
    let mut found = Vec::new();
    if let Some(end) = track_end
        && open.x > end
    {
        found.push(DoorFinding::LevelTrackShort { by_m: open.x - end });
    }
    let half = 0.5 * bay.garage.opening.width.m();
    // Straight ceilings are lowest at an end: over the jambs, the ridge being higher.
    let ceiling = [-half, 0.0, half]
        .iter()
        .flat_map(|&x| [shut.0.x, open.x].map(|y| ceiling_height_m(bay, x, y)))
        .fold(f64::INFINITY, f64::min);
    if open.y > ceiling {
        let by_m = open.y - ceiling;
        found.push(DoorFinding::ThroughCeiling { by_m });
    }
    if shut.1 > TOLD_FROM_M {
        found.push(DoorFinding::LeansWhenShut { by_m: shut.1 });
    }
    found
}

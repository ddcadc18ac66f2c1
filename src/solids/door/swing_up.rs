//! Which solids are a one-piece door, and what does it sweep?
//!
//! The panel moves as a ladder does that slides down a wall, upside down: its top edge runs level
//! into the bay, its bottom edge climbs the jamb. Travel turns it evenly from upright to level.
//! Where the track hangs lower than the panel is tall, the shut panel leans in at the top.

use glam::DVec2;

use super::{footing_m, sectional, sweep::Sweep};
use crate::bay::{Bay, SwingUpDoor};
use crate::solids::outline::along_x;
use crate::solids::shell::floor_level_range_m;
use crate::solids::{Role, Solid};

/// How many intervals the turn is cut into.
const INTERVALS: u32 = 24;

/// The panel's motion in the plane of `(y, z)`.
struct Ladder {
    /// Where the level track meets the door's plane.
    corner: DVec2,
    length_m: f64,
    /// Lean of the shut panel from upright, radians.
    shut_rad: f64,
}

impl Ladder {
    fn of(bay: &Bay, door: &SwingUpDoor) -> Self {
        let length_m = door.panel_height.m();
        let half = half_width_m(bay, door) + 0.5 * door.track_section.m();
        // The lowest floor under the whole level track, and along the opening.
        let under_track = floor_level_range_m(bay, [-half, 0.0], [half, length_m]).0;
        let foot = footing_m(bay);
        let z = under_track.min(foot) + door.track_height.m();
        let plane = 0.5 * door.track_section.m().max(door.panel_thickness.m());
        let shut_rad = ((z - foot) / length_m).clamp(0.0, 1.0).acos();
        Self {
            corner: DVec2::new(plane, z),
            length_m,
            shut_rad,
        }
    }

    fn lean_rad(&self, fraction: f64) -> f64 {
        self.shut_rad + fraction * (std::f64::consts::FRAC_PI_2 - self.shut_rad)
    }

    /// Bottom and top edge at a lean from upright.
    fn edges(&self, lean_rad: f64) -> [DVec2; 2] {
        let (sin, cos) = lean_rad.sin_cos();
        [
            self.corner - DVec2::new(0.0, self.length_m * cos),
            self.corner + DVec2::new(self.length_m * sin, 0.0),
        ]
    }
}

fn half_width_m(bay: &Bay, door: &SwingUpDoor) -> f64 {
    0.5 * bay.garage.opening.width.m() + door.track_offset.m()
}

/// The panel at a point of travel.
pub(super) fn panel(bay: &Bay, door: &SwingUpDoor, fraction: f64) -> Solid {
    let ladder = Ladder::of(bay, door);
    let [low, high] = ladder.edges(ladder.lean_rad(fraction));
    let width = 2.0 * half_width_m(bay, door);
    sectional::panel("door/panel 1", width, door.panel_thickness.m(), low, high)
}

/// The top edge at a point of travel, `(y, z)`.
pub(super) fn top_edge(bay: &Bay, door: &SwingUpDoor, fraction: f64) -> DVec2 {
    let ladder = Ladder::of(bay, door);
    ladder.edges(ladder.lean_rad(fraction))[1]
}

/// Solids that hold the panel on its whole way: both edges run straight, and the panel turns one
/// way, so [`Sweep`] applies to every interval of the turn.
pub(super) fn running(bay: &Bay, door: &SwingUpDoor) -> Vec<Solid> {
    let ladder = Ladder::of(bay, door);
    let half = half_width_m(bay, door);
    let half_thickness = 0.5 * door.panel_thickness.m();
    (0..INTERVALS)
        .map(|i| {
            let [start, end] = [i, i + 1].map(|k| {
                let fraction = f64::from(k) / f64::from(INTERVALS);
                ladder.edges(ladder.lean_rad(fraction))
            });
            let along = [start, end].map(|[low, high]| (high - low).normalize());
            let sweep = Sweep {
                lower: vec![start[0], end[0]],
                upper: vec![start[1], end[1]],
                along,
                from: 0.0,
                faces_m: [-half_thickness, half_thickness],
            };
            along_x(
                format!("door/running panel {}", i + 1),
                Role::DoorPanel,
                [-half, half],
                sweep.points(),
            )
        })
        .collect()
}

/// The level tracks and the guides along the jambs.
pub(super) fn fittings(bay: &Bay, door: &SwingUpDoor) -> Vec<Solid> {
    let ladder = Ladder::of(bay, door);
    let middle = half_width_m(bay, door);
    let section = 0.5 * DVec2::splat(door.track_section.m());
    let mut solids = Vec::new();
    for (side, x) in [("left", -middle), ("right", middle)] {
        let between = [x - section.x, x + section.x];
        let end = ladder.corner + DVec2::new(ladder.length_m, 0.0);
        let foot = DVec2::new(ladder.corner.x, footing_m(bay));
        for (label, from, to) in [
            ("level", ladder.corner, end),
            ("upright", foot, ladder.corner),
        ] {
            let (low, high) = (from - section, to + section);
            let corners = vec![
                low,
                high,
                DVec2::new(low.x, high.y),
                DVec2::new(high.x, low.y),
            ];
            let name = format!("door/track {side} {label}");
            solids.push(along_x(name, Role::DoorFitting, between, corners));
        }
    }
    solids
}

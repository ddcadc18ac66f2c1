//! Where do posts, plates and holes go on the floor, and which pulls of a tape put them there?
//!
//! Everything is set out from the inner face of the door wall, as everything in the bay is
//! measured: a base line along it, a centre line square to it by a 3-4-5 triangle, the post line
//! with its two equal diagonals (common practice, no source: equal corner-to-corner diagonals mean
//! square), then the stop lines, the plates, which cover marks, and the holes only where the slab may be
//! drilled. Places come from the same functions as the solids.

#[cfg(test)]
mod accepted_tests;
mod drift;
mod drill;
mod holes;
mod points;
mod puller;
mod pulls;
mod reading;
mod says;
mod stop_lines;
mod stop_marks;
#[cfg(test)]
mod tests;
mod way;
#[cfg(test)]
mod way_tests;

pub use drill::{Drill, is_of_the_load, is_young, not_known_yet};
pub use points::{FloorPoint, PointKind};
pub use pulls::{Pull, Step};
pub use reading::{Reading, place};
pub use stop_lines::{BESIDE_M, STOP_LINES};
pub use stop_marks::{LeftForDriver, StopMarks};

use crate::bay::Bay;
use crate::clearance::Study;

/// How the lift is set out.
#[derive(Debug, Clone, PartialEq)]
pub struct SettingOut {
    /// The points on the floor.
    pub points: Vec<FloorPoint>,
    /// The steps, in the order of the work.
    pub steps: Vec<Step>,
    /// Whether holes are among them, and if not, why.
    pub drill: Drill,
    /// How far the marks that the vehicle is parked by may be off; none without such marks.
    pub stop_marks: Option<StopMarks>,
}

/// The setting out of a bay, as far as its study lets it go.
#[must_use]
pub fn setting_out(bay: &Bay, study: &Study) -> SettingOut {
    let drill = Drill::of(bay, study);
    let points = points::points(bay, drill == Drill::Shown);
    let (steps, stop_marks) = pulls::steps(bay, &points);
    SettingOut {
        points,
        steps,
        drill,
        stop_marks,
    }
}

impl SettingOut {
    /// The point with this letter.
    #[must_use]
    pub fn point(&self, letter: &str) -> Option<&FloorPoint> {
        self.points.iter().find(|point| point.letter == letter)
    }
}

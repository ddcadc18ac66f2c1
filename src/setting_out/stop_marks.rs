//! How far may the marks be off that the vehicle is parked by, and what is left for the driver?

use glam::DVec2;

use super::puller::Puller;
use crate::bay::Bay;

/// How far M and N, the middles between the tyres, may be off at worst.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StopMarks {
    /// Across the bay, either of them, metres.
    pub across_m: f64,
    /// Along the bay, either of them, metres.
    pub along_m: f64,
    /// How far the line from one to the other may be turned, radians.
    pub turned_rad: f64,
}

/// How far the driver may be off beside the marks: ± of place and heading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeftForDriver {
    /// Across the bay, metres; 0 where the marks take all of it.
    pub across_m: f64,
    /// Along the bay, metres.
    pub along_m: f64,
    /// Heading, radians.
    pub yaw_rad: f64,
}

impl StopMarks {
    pub(super) fn of(pull: &Puller<'_>, m: DVec2, n: DVec2) -> Self {
        let off = pull.box_m(["M", "N"]);
        let [front, rear] = ["M", "N"].map(|letter| pull.drift(letter));
        let line = m - n;
        let sideways = line.perp().normalize_or_zero();
        Self {
            across_m: off.x,
            along_m: off.y,
            turned_rad: front.most_beside(&rear, sideways) / line.length().max(0.1),
        }
    }

    /// What of the parking box is left for the driver: the study counts the box once, for marks and
    /// driver together.
    #[must_use]
    pub fn left_for_driver(&self, bay: &Bay) -> LeftForDriver {
        let parking = &bay.parking;
        LeftForDriver {
            across_m: (parking.repeat_across.m() - self.across_m).max(0.0),
            along_m: (parking.repeat_along.m() - self.along_m).max(0.0),
            yaw_rad: (parking.repeat_yaw.rad() - self.turned_rad).max(0.0),
        }
    }
}

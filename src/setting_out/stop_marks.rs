//! How far may the marks be off that the vehicle is parked by, and what is left for the driver?

use glam::DVec2;

use super::puller::Puller;
use super::stop_lines::StopLine;
use crate::bay::Bay;

/// How far M and N, the middles between the tyres, and the lines through them may be off at worst.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StopMarks {
    /// Across the bay, M or N, metres.
    pub across_m: f64,
    /// Along the bay, M or N or an end of their lines, metres.
    pub along_m: f64,
    /// How far the line from one to the other, or a stop line, may be turned, radians.
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
    pub(super) fn of(pull: &Puller<'_>, [m, n]: [DVec2; 2], lines: &[StopLine; 2]) -> Self {
        let off = pull.box_m(["M", "N"]);
        let [front, rear] = ["M", "N"].map(|letter| pull.drift(letter));
        let line = m - n;
        let along = line.normalize_or_zero();
        let between = front.most_beside(&rear, along.perp()) / line.length().max(0.1);
        let askew = lines.each_ref().map(|line| {
            let [one, other] = &line.ends;
            one.most_beside(other, along) / (2.0 * line.half_m).max(0.1)
        });
        let ends = lines.iter().flat_map(|line| &line.ends);
        Self {
            across_m: off.x,
            along_m: ends.map(|end| end.box_m().y).fold(off.y, f64::max),
            turned_rad: askew.into_iter().fold(between, f64::max),
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

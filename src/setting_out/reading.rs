//! What must a tape show, and which readings are near enough?
//!
//! What is accepted is given as two readings and not as a ±: both lie on graduations of the tape
//! and inside the tolerance, so that no rounding makes it wider than it is.

use crate::bay::UnitSystem;
use crate::units::{Length, Rounding, feet_inches, millimetres};

/// A distance to pull with a tape, and how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The distance, metres.
    pub expected_m: f64,
    /// How far off it may be, either way, metres.
    pub tolerance_m: f64,
}

/// Noise of the conversion, millimetres.
const NOISE_MM: f64 = 1e-6;
/// Parts of an inch on a tape.
const PARTS: u32 = 16;
/// Parts of an inch to which the ends of what is accepted are given: a window of two millimetres
/// would hold hardly one sixteenth.
const ACCEPTED_PARTS: u32 = 32;

impl Reading {
    /// What the tape shows, in feet and inches to the nearest sixteenth.
    #[must_use]
    pub fn inches(&self) -> String {
        feet_inches(Length::metres(self.expected_m), PARTS, Rounding::Nearest)
    }

    /// What the tape shows, to the nearest millimetre.
    #[must_use]
    pub fn mm(&self) -> String {
        millimetres(Length::metres(self.expected_m), 0, Rounding::Nearest)
    }

    /// Both, the file's system first.
    #[must_use]
    pub fn both(&self, units: UnitSystem) -> String {
        pair(self.inches(), self.mm(), units)
    }

    /// Both, as fine as the ends of what is accepted are given.
    #[must_use]
    pub fn fine(&self, units: UnitSystem) -> String {
        let length = Length::metres(self.expected_m);
        let inches = feet_inches(length, ACCEPTED_PARTS, Rounding::Nearest);
        pair(inches, self.mm(), units)
    }

    /// The least and the greatest reading that is accepted, each in both systems: up from the low
    /// end, down from the high end.
    #[must_use]
    pub fn accepted(&self, units: UnitSystem) -> [String; 2] {
        let low = (self.expected_m - self.tolerance_m) * 1000.0;
        let high = (self.expected_m + self.tolerance_m) * 1000.0;
        // A window of less than a millimetre may lie between two of them.
        let has_mm = (low - NOISE_MM).ceil() <= (high + NOISE_MM).floor();
        let end = |metres: f64, rounding| {
            let length = Length::metres(metres);
            let inches = feet_inches(length, ACCEPTED_PARTS, rounding);
            if has_mm {
                pair(inches, millimetres(length, 0, rounding), units)
            } else {
                inches
            }
        };
        [
            end(self.expected_m - self.tolerance_m, Rounding::Up),
            end(self.expected_m + self.tolerance_m, Rounding::Down),
        ]
    }
}

fn pair(inches: String, mm: String, units: UnitSystem) -> String {
    match units {
        UnitSystem::Imperial => format!("{inches} \u{b7} {mm}"),
        UnitSystem::Metric => format!("{mm} \u{b7} {inches}"),
    }
}

/// A place in both systems, to the nearest graduation.
#[must_use]
pub fn place(metres: f64, units: UnitSystem) -> String {
    let reading = Reading {
        expected_m: metres,
        tolerance_m: 0.0,
    };
    reading.both(units)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_accepted_is_never_more_than_the_tolerance() {
        // 100 1/4 in = 2546.35 mm; 2 mm either way: 100 11/64 in to 100 21/64 in, so 3/16 to 5/16,
        // and 2544.35 to 2548.35 mm.
        let reading = Reading {
            expected_m: 2.546_35,
            tolerance_m: 0.002,
        };
        assert_eq!(
            reading.both(UnitSystem::Imperial),
            "8 ft 4 1/4 in \u{b7} 2546 mm"
        );
        assert_eq!(
            reading.accepted(UnitSystem::Metric),
            [
                "2545 mm \u{b7} 8 ft 4 3/16 in",
                "2548 mm \u{b7} 8 ft 4 5/16 in"
            ]
        );
    }
}

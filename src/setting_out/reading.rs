//! What must a tape show, and which readings are near enough?
//!
//! A tape is read to its nearest graduation, so that one that reads g shows a distance of g, half a
//! graduation more or half a graduation less. What is accepted is given as two graduations and not
//! as a ±: whatever distance reads as one of them, or as one between, lies inside the tolerance.

use crate::bay::UnitSystem;
use crate::units::{Length, M_PER_INCH, Rounding, feet_inches, millimetres};

/// A distance to pull with a tape, and how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The distance, metres.
    pub expected_m: f64,
    /// How far off it may be, either way, metres.
    pub tolerance_m: f64,
}

/// Noise of floating point at the size of bays, metres.
const NOISE_M: f64 = 1e-9;
/// Parts of an inch on a tape.
const PARTS: u32 = 16;
/// Parts of an inch in which what is accepted is read: a window of two millimetres would hold
/// hardly one sixteenth.
const ACCEPTED_PARTS: u32 = 32;

/// A graduation of the tape's edge in these units, as fine as it is read, metres.
fn graduation_m(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => M_PER_INCH / f64::from(ACCEPTED_PARTS),
        UnitSystem::Metric => 0.001,
    }
}

/// The least tolerance, metres, of a distance that lies on a graduation in these units: half a
/// graduation, and a little. Less can't be read.
pub(super) fn readable_m(units: UnitSystem) -> f64 {
    0.5 * graduation_m(units) + LITTLE_M
}

/// Far above floating point's noise, far below what is read, metres.
const LITTLE_M: f64 = 1e-7;

/// Graduations of one edge of the tape that are accepted: the least and the greatest.
#[derive(Debug, Clone, Copy)]
struct Column {
    units: UnitSystem,
    ends_m: [f64; 2],
}

impl Column {
    fn texts(&self) -> [String; 2] {
        self.ends_m.map(|metres| {
            let length = Length::metres(metres);
            match self.units {
                UnitSystem::Imperial => feet_inches(length, ACCEPTED_PARTS, Rounding::Nearest),
                UnitSystem::Metric => millimetres(length, 0, Rounding::Nearest),
            }
        })
    }
}

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

    /// Graduations of one edge of the tape which, with half a graduation more or less, lie inside
    /// the tolerance; none where there is no such graduation.
    fn column(&self, units: UnitSystem) -> Option<Column> {
        let graduation = graduation_m(units);
        let room = self.tolerance_m - 0.5 * graduation + NOISE_M;
        let low = ((self.expected_m - room) / graduation).ceil();
        let high = ((self.expected_m + room) / graduation).floor();
        (low <= high).then(|| Column {
            units,
            ends_m: [low.max(0.0), high.max(0.0)].map(|count| count * graduation),
        })
    }

    /// What is shown: each edge of the tape by itself, the file's first; where neither has a
    /// graduation inside the tolerance, the nearest of the file's own.
    fn columns(&self, units: UnitSystem) -> Vec<Column> {
        let other = match units {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        };
        let fitting = [units, other].map(|one| self.column(one));
        let mut shown: Vec<Column> = fitting.into_iter().flatten().collect();
        if shown.is_empty() {
            let graduation = graduation_m(units);
            let nearest = (self.expected_m / graduation).round() * graduation;
            shown.push(Column {
                units,
                ends_m: [nearest; 2],
            });
        }
        shown
    }

    /// The least and the greatest reading that is accepted, each in both systems. A system in which
    /// no graduation lies inside the tolerance is left out; where neither has one, the nearest
    /// graduation of the file's own system is all that is accepted.
    #[must_use]
    pub fn accepted(&self, units: UnitSystem) -> [String; 2] {
        let texts: Vec<[String; 2]> = self.columns(units).iter().map(Column::texts).collect();
        [0, 1].map(|end| {
            let ends: Vec<&str> = texts.iter().map(|both| both[end].as_str()).collect();
            ends.join(BETWEEN)
        })
    }

    /// How far the distance itself may be off where a reading that is accepted was read to the
    /// nearest graduation, metres.
    #[must_use]
    pub fn most_off_m(&self, units: UnitSystem) -> f64 {
        let off = self.columns(units).into_iter().map(|column| {
            let ends = column.ends_m.map(|end| (end - self.expected_m).abs());
            ends[0].max(ends[1]) + 0.5 * graduation_m(column.units)
        });
        off.fold(0.0, f64::max)
    }
}

/// Between what one edge of the tape shows and what the other does.
const BETWEEN: &str = " \u{b7} ";

fn pair(inches: String, mm: String, units: UnitSystem) -> String {
    match units {
        UnitSystem::Imperial => [inches, mm].join(BETWEEN),
        UnitSystem::Metric => [mm, inches].join(BETWEEN),
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
    use crate::units::parse_length;

    #[test]
    fn what_is_accepted_is_never_more_than_the_tolerance() {
        // 100 1/4 in = 2546.35 mm; 2 mm either way is 2544.35 to 2548.35 mm. Half a millimetre comes
        // off for reading: 2545 to 2547 mm. Of inches 0.397 mm does: 1.603 mm is 2.02 parts of 32.
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
                "2547 mm \u{b7} 8 ft 4 5/16 in"
            ]
        );
        // 2 parts of 32 and half a part.
        let most = 2.5 * 25.4 / 32.0;
        assert!((reading.most_off_m(UnitSystem::Metric) * 1000.0 - most).abs() < 1e-9);
    }

    /// Each end that is shown, read back from its words, and half a graduation of its edge.
    fn read_back(end: &str) -> Vec<(f64, f64)> {
        let edges = end.split(BETWEEN).map(|text| {
            let half = if text.ends_with("mm") {
                0.0005
            } else {
                0.0254 / 64.0
            };
            (parse_length(text).unwrap().m(), half)
        });
        edges.collect()
    }

    #[test]
    fn whatever_reads_as_a_graduation_that_is_shown_lies_within_what_it_is_said_to_be_off_by() {
        let mut alone = 0;
        for step in 0..4000_u32 {
            let expected_m = 1.9 + f64::from(step) * 0.000_123_7;
            for tolerance_mm in [0.0, 0.4, 0.55, 0.8, 1.0, 1.3, 2.0, 5.0] {
                let reading = Reading {
                    expected_m,
                    tolerance_m: tolerance_mm * 0.001,
                };
                for units in [UnitSystem::Imperial, UnitSystem::Metric] {
                    let most = reading.most_off_m(units);
                    let ends = reading.accepted(units);
                    let mut found = 0.0_f64;
                    for (graduation, half) in ends.iter().flat_map(|end| read_back(end)) {
                        found = found.max((graduation - expected_m).abs() + half);
                    }
                    assert!((found - most).abs() < 1e-9, "{reading:?}: {found}, {most}");
                    if tolerance_mm >= 1.0 {
                        assert!(most <= reading.tolerance_m + 2e-9, "{reading:?}: {most}");
                        // Either edge of the tape can be read.
                        assert!(ends.iter().all(|end| end.contains(BETWEEN)), "{ends:?}");
                    } else if most > reading.tolerance_m + 2e-9 {
                        alone += 1;
                        assert!(ends[0] == ends[1] && !ends[0].contains(BETWEEN), "{ends:?}");
                    }
                }
            }
        }
        assert!(alone > 100);
    }

    #[test]
    fn what_lies_on_a_graduation_can_be_read_in_its_own_system() {
        for (units, unit_m) in [(UnitSystem::Imperial, 0.3048), (UnitSystem::Metric, 0.3)] {
            for times in 3..60_u32 {
                let reading = Reading {
                    expected_m: unit_m * f64::from(times),
                    tolerance_m: readable_m(units),
                };
                assert!(reading.most_off_m(units) <= reading.tolerance_m);
            }
        }
    }
}

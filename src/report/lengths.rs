//! Which way is each shown length rounded?

use crate::bay::UnitSystem;
use crate::units::{self, Length, Mass, Rounding};

/// Shows lengths in the file's system, each rounded against the vehicle.
#[derive(Debug, Clone, Copy)]
pub struct Show {
    /// The file's system.
    pub units: UnitSystem,
}

impl Show {
    /// A clearance, an underbody height, room, a travel that must not be passed: down.
    #[must_use]
    pub fn room(self, metres: f64) -> String {
        units::length(Length::metres(metres), self.units, Rounding::Down)
    }

    /// An overlap, a shortfall, a requirement, a margin or an uncertainty: up.
    #[must_use]
    pub fn need(self, metres: f64) -> String {
        units::length(Length::metres(metres), self.units, Rounding::Up)
    }

    /// A place: nearest.
    #[must_use]
    pub fn place(self, metres: f64) -> String {
        units::length(Length::metres(metres), self.units, Rounding::Nearest)
    }

    /// A mark to set with a tape, in both systems, the file's first. The mark lies on a graduation
    /// of the file's system; the other system is given finer than its tape shows, so that it
    /// stands for the same mark and not for one beside it.
    #[must_use]
    pub fn mark(self, metres: f64) -> String {
        self.with_fine_other(metres, Rounding::Nearest)
    }

    /// A mark never to climb above, in both systems: down in both.
    #[must_use]
    pub fn ceiling_mark(self, metres: f64) -> String {
        self.with_fine_other(metres, Rounding::Down)
    }

    fn with_fine_other(self, metres: f64, rounding: Rounding) -> String {
        let length = Length::metres(metres);
        let other = match self.units {
            UnitSystem::Imperial => units::millimetres(length, 1, rounding),
            UnitSystem::Metric => units::feet_inches(length, 32, rounding),
        };
        format!("{} ({other})", units::length(length, self.units, rounding))
    }

    /// A mass that is there (or a load): up to the next whole pound or kilogram.
    #[must_use]
    pub fn load(self, kilograms: f64) -> String {
        self.whole_mass(kilograms, f64::ceil)
    }

    /// A mass that may be carried: down to a whole pound or kilogram.
    #[must_use]
    pub fn capacity(self, kilograms: f64) -> String {
        self.whole_mass(kilograms, f64::floor)
    }

    fn whole_mass(self, kilograms: f64, round: fn(f64) -> f64) -> String {
        let (per_unit, unit) = match self.units {
            UnitSystem::Imperial => (Mass::pounds(1.0).kg(), "lb"),
            UnitSystem::Metric => (1.0, "kg"),
        };
        // A thousandth of a unit is noise of the conversion: 10000 lb stay 10000 lb.
        let count = kilograms / per_unit;
        let whole = if (count - count.round()).abs() < 1e-3 {
            count.round()
        } else {
            round(count)
        };
        if whole.is_finite() {
            format!("{whole:.0} {unit}")
        } else {
            "no number".into()
        }
    }
}

/// An angle in whole degrees, down: how far a thing opens.
#[must_use]
pub(super) fn opening_angle(radians: f64) -> String {
    let degrees = radians.to_degrees();
    if degrees.is_finite() {
        format!("{:.0} deg", (degrees + 1e-6).floor())
    } else {
        "no number".into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const IMPERIAL: Show = Show {
        units: UnitSystem::Imperial,
    };
    const METRIC: Show = Show {
        units: UnitSystem::Metric,
    };

    #[test]
    fn rounding_goes_against_the_vehicle() {
        let just_short_of_3_in = 0.0762 - 1e-6;
        assert_eq!(IMPERIAL.room(just_short_of_3_in), "2 15/16 in");
        assert_eq!(METRIC.room(0.0759), "75 mm");
        assert_eq!(METRIC.need(0.0751), "76 mm");
        assert_eq!(METRIC.room(-0.0001), "-1 mm");
    }

    #[test]
    fn marks_name_the_same_place_in_both_systems() {
        // 63 1/2 in = 1612.9 mm.
        assert_eq!(IMPERIAL.mark(1.6129), "5 ft 3 1/2 in (1612.9 mm)");
        // 1613 mm = 63.5039 in.
        assert_eq!(METRIC.mark(1.613), "1613 mm (5 ft 3 1/2 in)");
        // 1613.4 mm = 63.5197 in: down to 63 16/32.
        assert_eq!(METRIC.ceiling_mark(1.6134), "1613 mm (5 ft 3 1/2 in)");
    }

    #[test]
    fn masses_round_toward_the_unsafe_reading_of_the_vehicle() {
        assert_eq!(METRIC.load(3270.2), "3271 kg");
        assert_eq!(METRIC.capacity(4535.9), "4535 kg");
        assert_eq!(IMPERIAL.capacity(4535.9237), "10000 lb");
        assert_eq!(METRIC.load(f64::NAN), "no number");
    }

    #[test]
    fn an_opening_angle_is_never_rounded_up() {
        assert_eq!(opening_angle(0.9599), "54 deg");
        assert_eq!(opening_angle(55.0_f64.to_radians()), "55 deg");
    }
}

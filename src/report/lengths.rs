//! Which way is each shown length rounded?

use crate::bay::UnitSystem;
use crate::units::{self, Length, M_PER_INCH, Mass, Rounding};

/// Slack (metres) for a height that lies on a graduation but for rounding noise.
const HAIR_M: f64 = 1e-9;

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

    /// A mark where to stop, in both systems, the file's first. The mark lies on a graduation of the
    /// file's system; the other system is given finer than its tape shows, so that it stands for the
    /// same mark and not for one beside it. Never below the mark, where the latches may be out; and
    /// not above `never_above`, or else the other system is left out.
    #[must_use]
    pub fn stop_mark(self, metres: f64, never_above: Option<f64>) -> String {
        let own = units::length(Length::metres(metres), self.units, Rounding::Nearest);
        let highest = never_above.unwrap_or(f64::INFINITY) + HAIR_M;
        let up = |graduation: f64| ((metres - HAIR_M) / graduation).ceil() * graduation;
        let fits = |graduation: &f64| up(*graduation) <= highest;
        match self.units {
            UnitSystem::Imperial => Some(0.0001).filter(fits).map(|graduation| {
                let metres = Length::metres(up(graduation));
                units::millimetres(metres, 1, Rounding::Nearest)
            }),
            UnitSystem::Metric => [32, 64]
                .into_iter()
                .find(|parts| fits(&(M_PER_INCH / f64::from(*parts))))
                .map(|parts| {
                    let metres = Length::metres(up(M_PER_INCH / f64::from(parts)));
                    units::feet_inches(metres, parts, Rounding::Nearest)
                }),
        }
        .map_or(own.clone(), |other| format!("{own} ({other})"))
    }

    /// A mark never to climb above, in both systems: down in both.
    #[must_use]
    pub fn ceiling_mark(self, metres: f64) -> String {
        let length = Length::metres(metres);
        let other = match self.units {
            UnitSystem::Imperial => units::millimetres(length, 1, Rounding::Down),
            UnitSystem::Metric => units::feet_inches(length, 32, Rounding::Down),
        };
        format!(
            "{} ({other})",
            units::length(length, self.units, Rounding::Down)
        )
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
        assert_eq!(
            IMPERIAL.stop_mark(1.6129, None),
            "5 ft 3 1/2 in (1612.9 mm)"
        );
        // 1613 mm = 63.5039 in: up to 63 17/32 (1613.694 mm), or 63 33/64 (1613.297 mm).
        assert_eq!(METRIC.stop_mark(1.613, None), "1613 mm (5 ft 3 17/32 in)");
        let close = METRIC.stop_mark(1.613, Some(1.6135));
        assert_eq!(close, "1613 mm (5 ft 3 33/64 in)");
        assert_eq!(METRIC.stop_mark(1.613, Some(1.613)), "1613 mm");
        // 1613.4 mm = 63.5197 in: down to 63 16/32.
        assert_eq!(METRIC.ceiling_mark(1.6134), "1613 mm (5 ft 3 1/2 in)");
    }

    #[test]
    fn a_stop_mark_is_never_below_itself_nor_above_the_highest() {
        for step in 0..2000 {
            let metres = 1.0 + 0.001 * f64::from(step);
            let highest = metres + 0.0003 * f64::from(step % 5);
            let text = METRIC.stop_mark(metres, Some(highest));
            if let Some((_, other)) = text.split_once('(') {
                let other = crate::units::parse_length(other.trim_end_matches(')')).unwrap();
                assert!(
                    other.m() > metres - 1e-9 && other.m() < highest + 1e-8,
                    "{text}"
                );
            }
        }
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

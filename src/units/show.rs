//! How is a quantity shown to someone with a tape or a drill?

use super::{Angle, Kind, Length, M_PER_INCH, Mass};
use crate::bay::UnitSystem;

/// A length this near to a step of the scale, in metres, counts as on it: it is far below
/// anything a tape shows and far above the noise of floating point at bay sizes, so that
/// 2 ft 3 in made of sums is not shown a sixteenth off.
const SNAP_M: f64 = 1e-9;

/// Which way a shown length is rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest step, ties away from zero: marks and positions only.
    Nearest,
    /// Toward minus infinity: clearances, heights, room.
    Down,
    /// Toward plus infinity: overlaps, shortfalls, requirements.
    Up,
}

/// How many steps of `step_m` a length holds; none when it is not a number or out of range.
#[allow(clippy::cast_possible_truncation)] // the range is checked
fn steps(length: Length, step_m: f64, rounding: Rounding) -> Option<i64> {
    let count = length.m() / step_m;
    if !count.is_finite() || count.abs() > 1e15 {
        return None;
    }
    let snap = SNAP_M / step_m;
    let nearest = count.round();
    let rounded = if (count - nearest).abs() <= snap {
        nearest
    } else {
        match rounding {
            Rounding::Down => count.floor(),
            Rounding::Up => count.ceil(),
            // A tie within the snap counts as a tie, and goes away from zero.
            Rounding::Nearest => (count.abs() + 0.5 + snap).floor() * count.signum(),
        }
    };
    Some(rounded as i64)
}

const NOT_A_LENGTH: &str = "no number";

/// Feet, inches and a fraction with the given denominator: `8 ft 8 5/16 in`.
#[must_use]
pub fn feet_inches(length: Length, denominator: u32, rounding: Rounding) -> String {
    let per_inch = i64::from(denominator.max(1));
    #[allow(clippy::cast_precision_loss)] // a denominator is small
    let Some(count) = steps(length, M_PER_INCH / per_inch as f64, rounding) else {
        return NOT_A_LENGTH.into();
    };
    let sign = if count < 0 { "-" } else { "" };
    let count = count.abs();
    let (feet, inches, part) = (
        count / (12 * per_inch),
        count / per_inch % 12,
        count % per_inch,
    );
    let shared = gcd(part, per_inch);
    let fraction = (part > 0).then(|| format!("{}/{}", part / shared, per_inch / shared));
    let inches = match (inches, fraction, feet) {
        (0, None, f) if f > 0 => return format!("{sign}{feet} ft"),
        (n, None, _) => format!("{n} in"),
        (0, Some(f), 0) => format!("{f} in"),
        (n, Some(f), _) => format!("{n} {f} in"),
    };
    if feet > 0 {
        format!("{sign}{feet} ft {inches}")
    } else {
        format!("{sign}{inches}")
    }
}

const fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// Millimetres with so many decimals: `2650 mm`.
#[must_use]
pub fn millimetres(length: Length, decimals: u8, rounding: Rounding) -> String {
    decimal(length, 0.001, decimals, rounding, "mm")
}

/// Inches with so many decimals: `104.33 in`.
#[must_use]
pub fn decimal_inches(length: Length, decimals: u8, rounding: Rounding) -> String {
    decimal(length, M_PER_INCH, decimals, rounding, "in")
}

fn decimal(length: Length, unit_m: f64, decimals: u8, rounding: Rounding, unit: &str) -> String {
    let decimals = decimals.min(6);
    let scale = 10_i64.pow(u32::from(decimals));
    #[allow(clippy::cast_precision_loss)] // at most a million
    let Some(count) = steps(length, unit_m / scale as f64, rounding) else {
        return NOT_A_LENGTH.into();
    };
    let sign = if count < 0 { "-" } else { "" };
    let (whole, part) = (count.abs() / scale, count.abs() % scale);
    if decimals == 0 {
        format!("{sign}{whole} {unit}")
    } else {
        let width = usize::from(decimals);
        format!("{sign}{whole}.{part:0width$} {unit}")
    }
}

/// A length in the system of the file: feet, inches and sixteenths, or whole millimetres.
#[must_use]
pub fn length(length: Length, system: UnitSystem, rounding: Rounding) -> String {
    match system {
        UnitSystem::Imperial => feet_inches(length, 16, rounding),
        UnitSystem::Metric => millimetres(length, 0, rounding),
    }
}

/// A length in both systems, the file's first: for anything that goes to a drill or a tape.
#[must_use]
pub fn both(value: Length, system: UnitSystem, rounding: Rounding) -> String {
    let other = match system {
        UnitSystem::Imperial => UnitSystem::Metric,
        UnitSystem::Metric => UnitSystem::Imperial,
    };
    format!(
        "{} ({})",
        length(value, system, rounding),
        length(value, other, rounding)
    )
}

/// How far something may be off, in both systems, the file's first: to 1/64 in and a tenth of a millimetre,
/// so that one thing's ± reads the same wherever it is told.
#[must_use]
pub fn plus_minus(value: Length, system: UnitSystem) -> String {
    let imperial = feet_inches(value, 64, Rounding::Nearest);
    let metric = millimetres(value, 1, Rounding::Nearest).replace(".0 mm", " mm");
    match system {
        UnitSystem::Imperial => format!("{imperial} ({metric})"),
        UnitSystem::Metric => format!("{metric} ({imperial})"),
    }
}

/// A mass in whole pounds or kilograms, to the nearest.
#[must_use]
pub fn show_mass(mass: Mass, system: UnitSystem) -> String {
    match system {
        UnitSystem::Imperial => format!("{:.0} lb", mass.kg() / super::KG_PER_POUND),
        UnitSystem::Metric => format!("{:.0} kg", mass.kg()),
    }
}

/// An angle in degrees with one decimal, to the nearest.
#[must_use]
pub fn show_angle(angle: Angle) -> String {
    format!("{:.1} deg", angle.in_degrees())
}

/// Any quantity in the first unit of its kind, to three significant decimals at most.
#[must_use]
pub fn show_quantity(kind: Kind, si: f64) -> String {
    let unit = &kind.units()[0];
    let text = format!("{:.3}", si / unit.si);
    let text = text.trim_end_matches('0').trim_end_matches('.');
    format!("{text} {}", unit.spellings[0])
}

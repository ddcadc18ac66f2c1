//! Which quantity did a person type?

use super::spelling::{Part, split};
use super::{Angle, Kind, Length, Mass};

/// Why a typed value is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnitError {
    /// Nothing but blanks.
    Empty,
    /// It does not start with a number, or a number is missing before a unit.
    NotANumber,
    /// A number without a unit.
    NoUnit {
        /// The number as typed.
        number: String,
    },
    /// A unit of another kind.
    WrongKind {
        /// The unit as typed.
        unit: String,
        /// The kind that it measures.
        measures: Kind,
    },
    /// A word that is no unit that we know.
    UnknownUnit {
        /// The word.
        unit: String,
    },
    /// `ton` is 2000 lb, 2240 lb or 1000 kg, depending on who says it.
    Ton,
    /// A comma: thousands to some, the decimal point to others.
    Comma,
    /// A fraction of one or more beside a whole number.
    ImproperFraction,
    /// A fraction that is not two whole numbers, or with nothing below the stroke.
    BadFraction,
    /// A minus sign inside the value.
    MinusInside,
    /// Twelve inches or more beside feet.
    InchesBesideFeet,
    /// Feet that are not whole beside inches, or metres beside centimetres likewise.
    FractionOfFeet,
    /// Units that don't belong side by side, or too many.
    NotUnderstood,
    /// Too large for a number.
    TooLarge,
}

impl UnitError {
    /// What is wrong, when `wanted` was asked.
    #[must_use]
    pub fn message(&self, wanted: Kind) -> String {
        let wanted = wanted.with_article();
        match self {
            Self::Empty => format!("{wanted} is missing between the quotes"),
            Self::NotANumber => format!("this is not {wanted}: a number is missing"),
            Self::NoUnit { .. } => format!("{wanted} needs a unit"),
            Self::WrongKind { unit, measures } => format!(
                "`{unit}` measures {}, but {wanted} belongs here",
                measures.with_article()
            ),
            Self::UnknownUnit { unit } => format!("`{unit}` is not a unit known here"),
            Self::Ton => "`ton` means different masses to different people".into(),
            Self::Comma => "a comma may mean thousands or decimals".into(),
            Self::ImproperFraction => "the fraction beside a whole number must be below one".into(),
            Self::BadFraction => "this fraction is not one whole number over another".into(),
            Self::MinusInside => "a minus sign stands inside the value".into(),
            Self::InchesBesideFeet => "inches beside feet must stay below 12".into(),
            Self::FractionOfFeet => "only the last part of a value may be a fraction".into(),
            Self::NotUnderstood => format!("this is not understood as {wanted}"),
            Self::TooLarge => "this number is too large".into(),
        }
    }

    /// What to write instead, when `wanted` was asked.
    #[must_use]
    pub fn help(&self, wanted: Kind) -> String {
        let fit = wanted.units_that_fit();
        let example = wanted.example();
        match self {
            // Which of them was meant nobody can tell: 24 may be feet of a room or inches of a tyre.
            Self::NoUnit { number } if wanted == Kind::Length => format!(
                "units that fit: {fit}; write \"{number} in\", \"{number} ft\" or \"{number} mm\", \
                 whichever was meant"
            ),
            Self::NoUnit { number } => format!(
                "units that fit: {fit}; perhaps \"{number} {}\"",
                wanted.first_unit()
            ),
            Self::WrongKind { .. } | Self::UnknownUnit { .. } => {
                format!("units that fit: {fit}; for example \"{example}\"")
            }
            Self::Ton => "write lb, kg or t (1 t is 1000 kg)".into(),
            Self::Comma => "write 1234 or 1.234, without a comma".into(),
            Self::ImproperFraction | Self::BadFraction => {
                "write fractions as in \"2 1/2 in\" or \"2-1/2 in\"".into()
            }
            Self::MinusInside => {
                "put the minus in front of the whole value: \"-10 ft 2 in\"".into()
            }
            Self::InchesBesideFeet => "write \"9 ft 2 in\", or inches alone: \"110 in\"".into(),
            Self::FractionOfFeet => "write \"10 ft 6 in\" or \"10.5 ft\"".into(),
            Self::Empty | Self::NotANumber | Self::NotUnderstood | Self::TooLarge => {
                format!("for example \"{example}\"; units that fit: {fit}")
            }
        }
    }
}

/// The factor to SI of a unit of one kind; spelling counts, case only where it must.
fn factor(kind: Kind, unit: &str) -> Option<f64> {
    let find = |same: &dyn Fn(&str) -> bool| {
        kind.units()
            .iter()
            .find(|u| u.spellings.iter().any(|s| same(s)))
            .map(|u| u.si)
    };
    find(&|s| s == unit).or_else(|| find(&|s| s.eq_ignore_ascii_case(unit)))
}

fn unit_of(kind: Kind, unit: &str, typed: &str) -> Result<f64, UnitError> {
    if unit.is_empty() {
        return Err(UnitError::NoUnit {
            number: typed.trim().into(),
        });
    }
    if let Some(factor) = factor(kind, unit) {
        return Ok(factor);
    }
    if ["ton", "tons"].contains(&unit.to_ascii_lowercase().as_str()) {
        return Err(UnitError::Ton);
    }
    match Kind::ALL.into_iter().find(|k| factor(*k, unit).is_some()) {
        Some(measures) => Err(UnitError::WrongKind {
            unit: unit.into(),
            measures,
        }),
        None => Err(UnitError::UnknownUnit {
            unit: unit.chars().take(24).collect(),
        }),
    }
}

/// Reads a value of one kind, in SI.
///
/// # Errors
/// [`UnitError`] says why it is refused; the value is never guessed.
pub fn parse(kind: Kind, text: &str) -> Result<f64, UnitError> {
    let (negative, parts) = split(text)?;
    let value = match parts.as_slice() {
        // A sign alone.
        [] => return Err(UnitError::NotUnderstood),
        [Part { number, unit, .. }] => {
            let si = unit_of(kind, unit, text)?;
            if kind == Kind::Length && is_foot(si) {
                // By way of inches, so that 48 ft and 576 in are the same number.
                Length::inches(number * 12.0).m()
            } else {
                scaled(*number, si)
            }
        }
        several if kind == Kind::Length => length_of_parts(several, text)?,
        several => {
            for part in several {
                unit_of(kind, &part.unit, text)?;
            }
            return Err(UnitError::NotUnderstood);
        }
    };
    if !value.is_finite() {
        return Err(UnitError::TooLarge);
    }
    Ok(if negative { -value } else { value })
}

fn is_foot(si: f64) -> bool {
    (si - super::M_PER_FOOT).abs() < 1e-9
}

fn is_inch(si: f64) -> bool {
    (si - super::M_PER_INCH).abs() < 1e-9
}

/// Feet and inches, or metres, centimetres and millimetres, each below one of the part before it.
fn length_of_parts(parts: &[Part], typed: &str) -> Result<f64, UnitError> {
    let mut sizes = Vec::with_capacity(parts.len());
    for part in parts {
        sizes.push(unit_of(Kind::Length, &part.unit, typed)?);
    }
    if parts[..parts.len() - 1].iter().any(|p| !p.whole) {
        return Err(UnitError::FractionOfFeet);
    }
    if let ([feet, inches], [f, i]) = (parts, sizes.as_slice())
        && is_foot(*f)
        && is_inch(*i)
    {
        if inches.number >= 12.0 {
            return Err(UnitError::InchesBesideFeet);
        }
        // In inches first: every 1/64 in is then exact.
        return Ok(Length::inches(feet.number * 12.0 + inches.number).m());
    }
    if sizes.iter().any(|s| is_foot(*s) || is_inch(*s)) {
        return Err(UnitError::NotUnderstood);
    }
    for (pair, size) in parts.windows(2).zip(sizes.windows(2)) {
        let falls = size[0] > size[1] && pair[1].number * size[1] < size[0];
        if !falls {
            return Err(UnitError::NotUnderstood);
        }
    }
    let millimetres: f64 = parts
        .iter()
        .zip(&sizes)
        .map(|(p, s)| p.number * (s * 1000.0))
        .sum();
    Ok(Length::mm(millimetres).m())
}

/// The same rounding as the constructors of the quantities: small decimal units divide, as 0.001
/// is not exact in binary and 1000 is.
fn scaled(number: f64, si: f64) -> f64 {
    if si < 1.0 && (1.0 / si).fract().abs() < f64::EPSILON {
        number / (1.0 / si)
    } else {
        number * si
    }
}

/// Reads a length.
///
/// # Errors
/// See [`parse`].
pub fn parse_length(text: &str) -> Result<Length, UnitError> {
    parse(Kind::Length, text).map(Length::metres)
}

/// Reads a mass.
///
/// # Errors
/// See [`parse`].
pub fn parse_mass(text: &str) -> Result<Mass, UnitError> {
    parse(Kind::Mass, text).map(Mass::kilograms)
}

/// Reads an angle.
///
/// # Errors
/// See [`parse`].
pub fn parse_angle(text: &str) -> Result<Angle, UnitError> {
    parse(Kind::Angle, text).map(Angle::radians)
}

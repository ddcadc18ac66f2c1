//! Which kinds of quantity does a figure have?

use super::Date;

/// A quantity in SI, or words where a number would say too much.
#[derive(Debug, Clone, PartialEq)]
pub enum Quantity {
    /// Metres.
    Length(f64),
    /// Square metres.
    Area(f64),
    /// Cubic metres.
    Volume(f64),
    /// Kilograms; loads that people know as weights are masses too.
    Mass(f64),
    /// Newtons.
    Force(f64),
    /// Newton metres, of a bending moment or a tightening torque.
    Moment(f64),
    /// Pascals.
    Pressure(f64),
    /// Pascals per metre: modulus of subgrade reaction.
    Subgrade(f64),
    /// Radians.
    Angle(f64),
    /// A plain number: a factor, a share of one, a use of a capacity.
    Number(f64),
    /// A count of things, whole.
    Count(f64),
    /// Amperes.
    Current(f64),
    /// Volts.
    Voltage(f64),
    /// Watts.
    Power(f64),
    /// Days.
    Days(f64),
    /// A calendar day.
    Day(Date),
    /// In words.
    Words(String),
}

impl Quantity {
    /// The number in SI; none for days of the calendar and for words.
    #[must_use]
    pub const fn number(&self) -> Option<f64> {
        match self {
            Self::Length(value)
            | Self::Area(value)
            | Self::Volume(value)
            | Self::Mass(value)
            | Self::Force(value)
            | Self::Moment(value)
            | Self::Pressure(value)
            | Self::Subgrade(value)
            | Self::Angle(value)
            | Self::Number(value)
            | Self::Count(value)
            | Self::Current(value)
            | Self::Voltage(value)
            | Self::Power(value)
            | Self::Days(value) => Some(*value),
            Self::Day(_) | Self::Words(_) => None,
        }
    }

    /// The SI unit that [`Self::number`] is in; none for plain numbers, dates and words.
    #[must_use]
    pub const fn unit(&self) -> Option<&'static str> {
        match self {
            Self::Length(_) => Some("m"),
            Self::Area(_) => Some("m2"),
            Self::Volume(_) => Some("m3"),
            Self::Mass(_) => Some("kg"),
            Self::Force(_) => Some("N"),
            Self::Moment(_) => Some("N m"),
            Self::Pressure(_) => Some("Pa"),
            Self::Subgrade(_) => Some("Pa/m"),
            Self::Angle(_) => Some("rad"),
            Self::Current(_) => Some("A"),
            Self::Voltage(_) => Some("V"),
            Self::Power(_) => Some("W"),
            Self::Days(_) => Some("d"),
            Self::Number(_) | Self::Count(_) | Self::Day(_) | Self::Words(_) => None,
        }
    }
}

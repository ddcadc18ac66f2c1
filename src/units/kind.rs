//! Which kinds of quantity are there, and which units does each take?
//!
//! Factors to SI are the exact ones of NIST SP 811 (2008 edition), appendix B.8, or derived from
//! them as written beside each.

use super::quantity::{
    KG_PER_POUND, M_PER_FOOT, M_PER_INCH, N_PER_POUND_FORCE, PA_PER_PSI, W_PER_ELECTRIC_HORSEPOWER,
};

/// A kind of quantity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A length.
    Length,
    /// A mass.
    Mass,
    /// A force.
    Force,
    /// A pressure or a strength.
    Pressure,
    /// An angle.
    Angle,
    /// A torque.
    Torque,
    /// A power.
    Power,
    /// A voltage.
    Voltage,
    /// A current.
    Current,
    /// A volume.
    Volume,
    /// An area.
    Area,
    /// A modulus of subgrade reaction: pressure for each length that the ground gives way.
    Subgrade,
}

/// A unit: its spellings, the first of which is the one shown, and its size in SI.
pub(super) struct Unit {
    pub(super) spellings: &'static [&'static str],
    pub(super) si: f64,
}

macro_rules! units {
    ($($name:ident: $($si:expr => [$($spelling:literal),+]),+;)*) => {
        $(const $name: &[Unit] = &[$(Unit { spellings: &[$($spelling),+], si: $si }),+];)*
    };
}

units! {
    LENGTH:
        M_PER_INCH => ["in", "inch", "inches", "\""],
        M_PER_FOOT => ["ft", "foot", "feet", "'"],
        0.001 => ["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
        0.01 => ["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
        1.0 => ["m", "metre", "metres", "meter", "meters"];
    MASS:
        KG_PER_POUND => ["lb", "lbs", "pound", "pounds"],
        1.0 => ["kg", "kilo", "kilos", "kilogram", "kilograms"],
        1000.0 => ["t", "tonne", "tonnes"],
        // Sixteen ounces make a pound.
        KG_PER_POUND / 16.0 => ["oz", "ounce", "ounces"],
        0.001 => ["g", "gram", "grams"];
    FORCE:
        1.0 => ["N", "newton", "newtons"],
        1000.0 => ["kN"],
        N_PER_POUND_FORCE => ["lbf"],
        // A kip is a thousand pounds-force.
        1000.0 * N_PER_POUND_FORCE => ["kip", "kips"];
    PRESSURE:
        PA_PER_PSI => ["psi"],
        1000.0 * PA_PER_PSI => ["ksi"],
        1.0 => ["Pa"],
        1e3 => ["kPa"],
        // One N/mm2 is one MPa.
        1e6 => ["MPa", "N/mm2"],
        1e5 => ["bar"];
    ANGLE:
        std::f64::consts::PI / 180.0 => ["deg", "degree", "degrees", "\u{b0}"],
        1.0 => ["rad", "radian", "radians"];
    TORQUE:
        N_PER_POUND_FORCE * M_PER_FOOT => ["ft lbf", "lbf ft", "ft lb", "lb ft", "ft lbs", "foot pounds", "ftlbf", "ftlb"],
        N_PER_POUND_FORCE * M_PER_INCH => ["in lbf", "lbf in", "in lb", "lb in"],
        1.0 => ["N m", "Nm", "newton metres", "newton meters"];
    POWER:
        W_PER_ELECTRIC_HORSEPOWER => ["hp", "horsepower"],
        1.0 => ["W", "watt", "watts"],
        1000.0 => ["kW", "kilowatt", "kilowatts"];
    VOLTAGE:
        1.0 => ["V", "volt", "volts"];
    CURRENT:
        1.0 => ["A", "amp", "amps", "ampere", "amperes"];
    VOLUME:
        // A US gallon is 231 cubic inches.
        231.0 * M_PER_INCH * M_PER_INCH * M_PER_INCH => ["gal", "gallon", "gallons"],
        0.001 => ["L", "l", "litre", "litres", "liter", "liters"],
        1.0 => ["m3"];
    AREA:
        M_PER_INCH * M_PER_INCH => ["sq in", "in2", "square inches"],
        1e-6 => ["mm2", "sq mm"],
        1e-4 => ["cm2", "sq cm"];
    SUBGRADE:
        // A pound-force per square inch and inch, also called pci.
        PA_PER_PSI / M_PER_INCH => ["psi/in", "pci", "lbf/in3"],
        1e6 => ["MPa/m", "MN/m3"],
        // A thousand newtons per square metre and metre.
        1e3 => ["kPa/m", "kN/m3"];
}

impl Kind {
    /// All kinds.
    pub const ALL: [Self; 12] = [
        Self::Length,
        Self::Mass,
        Self::Force,
        Self::Pressure,
        Self::Angle,
        Self::Torque,
        Self::Power,
        Self::Voltage,
        Self::Current,
        Self::Volume,
        Self::Area,
        Self::Subgrade,
    ];

    pub(super) const fn units(self) -> &'static [Unit] {
        match self {
            Self::Length => LENGTH,
            Self::Mass => MASS,
            Self::Force => FORCE,
            Self::Pressure => PRESSURE,
            Self::Angle => ANGLE,
            Self::Torque => TORQUE,
            Self::Power => POWER,
            Self::Voltage => VOLTAGE,
            Self::Current => CURRENT,
            Self::Volume => VOLUME,
            Self::Area => AREA,
            Self::Subgrade => SUBGRADE,
        }
    }

    /// With its article: "a length".
    #[must_use]
    pub const fn with_article(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Mass => "a mass",
            Self::Force => "a force",
            Self::Pressure => "a pressure",
            Self::Angle => "an angle",
            Self::Torque => "a torque",
            Self::Power => "a power",
            Self::Voltage => "a voltage",
            Self::Current => "a current",
            Self::Volume => "a volume",
            Self::Area => "an area",
            Self::Subgrade => "a subgrade modulus",
        }
    }

    /// The units that fit, for a message: "in, ft, mm, cm or m".
    #[must_use]
    pub fn units_that_fit(self) -> String {
        let names: Vec<&str> = self.units().iter().map(|u| u.spellings[0]).collect();
        match names.as_slice() {
            [one] => (*one).into(),
            [first @ .., last] => format!("{} or {last}", first.join(", ")),
            [] => String::new(),
        }
    }

    /// The unit that a bare number is proposed with.
    #[must_use]
    pub fn first_unit(self) -> &'static str {
        self.units()[0].spellings[0]
    }

    /// A value as one would type it.
    #[must_use]
    pub const fn example(self) -> &'static str {
        match self {
            Self::Length => "8 ft 2 1/2 in",
            Self::Mass => "7200 lb",
            Self::Force => "500 lbf",
            Self::Pressure => "3000 psi",
            Self::Angle => "1.5 deg",
            Self::Torque => "100 ft lbf",
            Self::Power => "2 hp",
            Self::Voltage => "230 V",
            Self::Current => "12 A",
            Self::Volume => "3 gal",
            Self::Area => "0.33 sq in",
            Self::Subgrade => "100 psi/in",
        }
    }
}

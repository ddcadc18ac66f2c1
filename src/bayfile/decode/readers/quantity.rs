//! How is a quantity with its unit read, and within which bounds?

use super::{Read, wrong_kind};
use crate::bayfile::context::Context;
use crate::bayfile::decode::checks::both;
use crate::bayfile::syntax::{Kind as Written, Node};
use crate::units::{
    Angle, Area, Current, Force, Kind, Length, Mass, Power, Pressure, Subgrade, Torque, Voltage,
    Volume, parse, show_quantity,
};

/// A quantity with its unit, within bounds given in SI.
pub(in crate::bayfile::decode) struct Quantity<T> {
    kind: Kind,
    make: fn(f64) -> T,
    low: f64,
    /// False when `low` itself is refused too.
    low_fits: bool,
    high: f64,
    example: &'static str,
}

impl<T> Quantity<T> {
    const fn above_zero(kind: Kind, make: fn(f64) -> T, high: f64, example: &'static str) -> Self {
        Self {
            kind,
            make,
            low: 0.0,
            low_fits: false,
            high,
            example,
        }
    }

    /// Another greatest value, in SI; the least stays as it is.
    pub(in crate::bayfile::decode) const fn at_most(mut self, high: f64) -> Self {
        self.high = high;
        self
    }

    /// What errors show as an example, as it is written in a file.
    pub(in crate::bayfile::decode) const fn such_as(mut self, example: &'static str) -> Self {
        self.example = example;
        self
    }

    /// Other bounds, in SI, both of them allowed.
    pub(in crate::bayfile::decode) const fn within(mut self, low: f64, high: f64) -> Self {
        self.low = low;
        self.high = high;
        self.low_fits = true;
        self
    }
}

/// The longest length in a bay, in metres.
const LONGEST: f64 = 100.0;

/// A length above zero.
pub(in crate::bayfile::decode) const fn size() -> Quantity<Length> {
    Quantity::above_zero(Kind::Length, Length::metres, LONGEST, "\"2 ft 6 in\"")
}

/// A length that is not negative.
pub(in crate::bayfile::decode) const fn not_negative() -> Quantity<Length> {
    size().within(0.0, LONGEST)
}

/// A place along an axis: negative lengths are allowed.
pub(in crate::bayfile::decode) const fn place() -> Quantity<Length> {
    size().within(-LONGEST, LONGEST)
}

/// An angle between two bounds, in degrees.
pub(in crate::bayfile::decode) const fn angle(low: f64, high: f64) -> Quantity<Angle> {
    const RAD: f64 = std::f64::consts::PI / 180.0;
    // A hair more than the bound, as "90 deg" typed and 90 degrees worked out may differ by noise.
    Quantity::above_zero(Kind::Angle, Angle::radians, 0.0, "\"3 deg\"")
        .within(low * RAD - 1e-12, high * RAD + 1e-12)
}

/// A mass above zero.
pub(in crate::bayfile::decode) const fn mass() -> Quantity<Mass> {
    Quantity::above_zero(Kind::Mass, Mass::kilograms, 100_000.0, "\"5000 lb\"")
}

/// A mass that may be negative.
pub(in crate::bayfile::decode) const fn mass_change() -> Quantity<Mass> {
    mass().within(-100_000.0, 100_000.0)
}

/// A pressure above zero.
pub(in crate::bayfile::decode) const fn pressure() -> Quantity<Pressure> {
    Quantity::above_zero(Kind::Pressure, Pressure::pascals, 1e9, "\"3000 psi\"")
}

/// A compressive strength of concrete: from 5 MPa, which no floor falls short of, to 100 MPa, which
/// none reaches; beyond it is a slip of unit or digit. The project's own bounds.
pub(in crate::bayfile::decode) const fn strength() -> Quantity<Pressure> {
    pressure().within(5e6, 100e6)
}

/// A thickness of a floor slab: none is thicker than 1.5 m, and one that seems so is a slip of unit
/// or digit. The project's own bound.
pub(in crate::bayfile::decode) const fn slab_thickness() -> Quantity<Length> {
    size().at_most(1.5)
}

/// A power above zero.
pub(in crate::bayfile::decode) const fn power() -> Quantity<Power> {
    Quantity::above_zero(Kind::Power, Power::watts, 1e6, "\"2 hp\"")
}

/// A voltage above zero.
pub(in crate::bayfile::decode) const fn voltage() -> Quantity<Voltage> {
    Quantity::above_zero(Kind::Voltage, Voltage::volts, 1e5, "\"230 V\"")
}

/// A current above zero.
pub(in crate::bayfile::decode) const fn current() -> Quantity<Current> {
    Quantity::above_zero(Kind::Current, Current::amperes, 1e5, "\"20 A\"")
}

/// A torque above zero.
pub(in crate::bayfile::decode) const fn torque() -> Quantity<Torque> {
    Quantity::above_zero(Kind::Torque, Torque::newton_metres, 1e5, "\"80 ft lbf\"")
}

/// A force above zero.
pub(in crate::bayfile::decode) const fn force() -> Quantity<Force> {
    Quantity::above_zero(Kind::Force, Force::newtons, 1e7, "\"5000 lbf\"")
}

/// An area above zero.
pub(in crate::bayfile::decode) const fn area() -> Quantity<Area> {
    Quantity::above_zero(Kind::Area, Area::square_metres, 1.0, "\"0.33 sq in\"")
}

/// A modulus of subgrade reaction above zero; no ground under floors is stiffer than 150 MPa/m
/// (about 550 psi/in; from memory).
pub(in crate::bayfile::decode) const fn subgrade() -> Quantity<Subgrade> {
    Quantity::above_zero(
        Kind::Subgrade,
        Subgrade::pascals_per_metre,
        150e6,
        "\"100 psi/in\"",
    )
}

/// A volume above zero.
pub(in crate::bayfile::decode) const fn volume() -> Quantity<Volume> {
    Quantity::above_zero(Kind::Volume, Volume::cubic_metres, 100.0, "\"3 gal\"")
}

impl<T> Read for Quantity<T> {
    type Out = T;

    fn read(&self, cx: &Context, node: &Node) -> Option<T> {
        // A bare number goes the same way as a text without a unit, for the same message.
        let (Written::Str(typed) | Written::Number(typed)) = &node.kind else {
            return wrong_kind(cx, node, self.kind.with_article(), self.example);
        };
        let value = match parse(self.kind, typed) {
            Ok(value) => value,
            Err(fault) => {
                let fit = format!("expected {} in quotes", self.kind.with_article());
                let message = fault.message(self.kind);
                cx.error(node.span, &message, &fit, &fault.help(self.kind));
                return None;
            }
        };
        let low = if self.low_fits {
            value >= self.low
        } else {
            value > self.low
        };
        if low && value <= self.high {
            return Some((self.make)(value));
        }
        let shown = |si: f64| match self.kind {
            Kind::Length => both(Length::metres(si)),
            kind => show_quantity(kind, si),
        };
        let (message, label) = if low {
            (
                format!("this is more than {} can be here", self.kind.with_article()),
                format!("expected at most {}", shown(self.high)),
            )
        } else if self.low_fits && self.low.abs() > 0.0 {
            (
                format!("this is less than {} can be here", self.kind.with_article()),
                format!("expected at least {}", shown(self.low)),
            )
        } else if self.low_fits {
            (
                format!("{} can't be negative here", self.kind.with_article()),
                "expected zero or more".into(),
            )
        } else {
            (
                format!("{} must be more than zero here", self.kind.with_article()),
                "expected more than zero".into(),
            )
        };
        let help = format!(
            "check the sign, the digits and the unit; for example {}",
            self.example
        );
        cx.error(node.span, &message, &label, &help);
        None
    }

    fn example(&self) -> String {
        self.example.into()
    }
}

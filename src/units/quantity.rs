//! The typed quantities: a length can't be passed for a mass.
//!
//! Each type holds one `f64` in its SI unit. The conversion factors are the exact definitions of
//! NIST SP 811 (2008 edition), appendix B.8, except where a factor is derived: the derivation is
//! written beside it.

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// Metres in an inch, exact (NIST SP 811, B.8).
pub const M_PER_INCH: f64 = 0.0254;
/// Metres in a foot, exact: twelve inches.
pub const M_PER_FOOT: f64 = 0.3048;
/// Kilograms in an avoirdupois pound, exact (NIST SP 811, B.8).
pub const KG_PER_POUND: f64 = 0.453_592_37;
/// Standard acceleration of free fall, m/s², exact by convention (NIST SP 811, B.8).
pub const STANDARD_GRAVITY: f64 = 9.806_65;
/// Newtons in a pound-force: one pound under standard gravity.
pub const N_PER_POUND_FORCE: f64 = KG_PER_POUND * STANDARD_GRAVITY;
/// Pascals in a pound-force per square inch.
pub const PA_PER_PSI: f64 = N_PER_POUND_FORCE / (M_PER_INCH * M_PER_INCH);
/// Watts in an electric horsepower, exact (NIST SP 811, B.8).
pub const W_PER_ELECTRIC_HORSEPOWER: f64 = 746.0;

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $si:ident, $symbol:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("Nothing: 0 ", $symbol, ".")]
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("From a value in ", $symbol, ".")]
            #[must_use]
            pub const fn $si(value: f64) -> Self {
                Self(value)
            }

            #[doc = concat!("The value in ", $symbol, ".")]
            #[must_use]
            pub const fn si(self) -> f64 {
                self.0
            }

            /// The larger of two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The value without its sign.
            #[must_use]
            pub fn abs(self) -> Self {
                Self(self.0.abs())
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                self.0 -= other.0;
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
    };
}

quantity!(
    /// A length, held in metres.
    Length, metres, "m"
);
quantity!(
    /// A mass, held in kilograms.
    Mass, kilograms, "kg"
);
quantity!(
    /// A force, held in newtons.
    Force, newtons, "N"
);
quantity!(
    /// A pressure or a strength, held in pascals.
    Pressure, pascals, "Pa"
);
quantity!(
    /// An angle, held in radians.
    Angle, radians, "rad"
);
quantity!(
    /// A torque, held in newton metres.
    Torque, newton_metres, "N m"
);
quantity!(
    /// A power, held in watts.
    Power, watts, "W"
);
quantity!(
    /// An electric potential, held in volts.
    Voltage, volts, "V"
);
quantity!(
    /// An electric current, held in amperes.
    Current, amperes, "A"
);
quantity!(
    /// A volume, held in cubic metres.
    Volume, cubic_metres, "m3"
);
quantity!(
    /// An area, held in square metres.
    Area, square_metres, "m2"
);
quantity!(
    /// A modulus of subgrade reaction, held in pascals per metre.
    Subgrade, pascals_per_metre, "Pa/m"
);

impl Length {
    /// From millimetres.
    #[must_use]
    pub const fn mm(value: f64) -> Self {
        Self::metres(value / 1000.0)
    }

    /// From inches.
    #[must_use]
    pub const fn inches(value: f64) -> Self {
        Self::metres(value * M_PER_INCH)
    }

    /// From feet.
    #[must_use]
    pub const fn feet(value: f64) -> Self {
        Self::metres(value * M_PER_FOOT)
    }

    /// The value in metres.
    #[must_use]
    pub const fn m(self) -> f64 {
        self.si()
    }

    /// The value in millimetres.
    #[must_use]
    pub const fn in_mm(self) -> f64 {
        self.si() * 1000.0
    }

    /// The value in inches.
    #[must_use]
    pub const fn in_inches(self) -> f64 {
        self.si() / M_PER_INCH
    }
}

impl Mass {
    /// From avoirdupois pounds.
    #[must_use]
    pub const fn pounds(value: f64) -> Self {
        Self::kilograms(value * KG_PER_POUND)
    }

    /// The value in kilograms.
    #[must_use]
    pub const fn kg(self) -> f64 {
        self.si()
    }
}

impl Angle {
    /// From degrees.
    #[must_use]
    pub const fn degrees(value: f64) -> Self {
        Self::radians(value * (std::f64::consts::PI / 180.0))
    }

    /// The value in radians.
    #[must_use]
    pub const fn rad(self) -> f64 {
        self.si()
    }

    /// The value in degrees.
    #[must_use]
    pub const fn in_degrees(self) -> f64 {
        self.si() * (180.0 / std::f64::consts::PI)
    }
}

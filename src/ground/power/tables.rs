//! What do the code's tables say of motors and copper conductors?

use crate::bay::Conductor;

/// A thousand feet, metres.
pub(super) const METRES_PER_KILOFOOT: f64 = 304.8;

/// NFPA 70 Table 430.248 (430-148 of the 1999 edition, the same values): horsepower, and amperes
/// at rated motor voltages of 115, 200, 208 and 230 V. Of the last row only 40 A at 230 V was
/// looked up; its other values are from memory.
pub(super) const FULL_LOAD: [(f64, [f64; 4]); 6] = [
    (1.0, [16.0, 9.2, 8.8, 8.0]),
    (1.5, [20.0, 11.5, 11.0, 10.0]),
    (2.0, [24.0, 13.8, 13.2, 12.0]),
    (3.0, [34.0, 19.6, 18.7, 17.0]),
    (5.0, [56.0, 32.2, 30.8, 28.0]),
    (7.5, [80.0, 46.0, 44.0, 40.0]),
];

/// The column for a voltage: the table serves systems of 110 to 120 and 220 to 240 V, and motors
/// for 200 and 208 V. Somewhat more on a meter is still that system; less than a system's least
/// falls to the column of the next lower voltage, which asks for more current.
pub(super) fn column(volts: f64) -> Option<usize> {
    [
        (109.5, 127.0, 0),
        (199.5, 207.5, 1),
        (207.5, 219.5, 2),
        (219.5, 250.5, 3),
    ]
    .into_iter()
    .find(|&(from, to, _)| from <= volts && volts < to)
    .map(|(_, _, column)| column)
}

/// Thinnest first. Ohms in a thousand feet: NFPA 70 chapter 9 Table 8, uncoated copper, stranded,
/// 75 degrees C, direct current. Amperes: Table 310.16 (310.15(B)(16) in older editions), copper,
/// 60 degrees C, from memory; the column that terminals up to 100 A are used by unless they are
/// marked for more (110.14(C)(1), from memory).
#[expect(clippy::approx_constant, reason = "3.14 ohms as printed, not pi")]
pub(super) const CONDUCTORS: [(Conductor, f64, f64); 5] = [
    (Conductor::Awg14, 3.14, 15.0),
    (Conductor::Awg12, 1.98, 20.0),
    (Conductor::Awg10, 1.24, 30.0),
    (Conductor::Awg8, 0.778, 40.0),
    (Conductor::Awg6, 0.491, 55.0),
];

const fn row(conductor: Conductor) -> (Conductor, f64, f64) {
    CONDUCTORS[match conductor {
        Conductor::Awg14 => 0,
        Conductor::Awg12 => 1,
        Conductor::Awg10 => 2,
        Conductor::Awg8 => 3,
        Conductor::Awg6 => 4,
    }]
}

/// Resistance of a conductor.
pub(super) const fn ohm_per_kilofoot(conductor: Conductor) -> f64 {
    row(conductor).1
}

/// What a conductor carries.
pub(super) const fn ampacity_a(conductor: Conductor) -> f64 {
    row(conductor).2
}

/// What is printed on its jacket.
pub(super) const fn gauge(conductor: Conductor) -> &'static str {
    match conductor {
        Conductor::Awg14 => "14 AWG",
        Conductor::Awg12 => "12 AWG",
        Conductor::Awg10 => "10 AWG",
        Conductor::Awg8 => "8 AWG",
        Conductor::Awg6 => "6 AWG",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_conductor_finds_its_own_row() {
        for (conductor, ohms, amperes) in CONDUCTORS {
            assert_eq!(row(conductor), (conductor, ohms, amperes));
        }
    }
}

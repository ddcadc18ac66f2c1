//! Which current, conductor, breaker and voltage drop does the motor's circuit come to?
//!
//! Screening by the United States code for single-phase motors on alternating current. Where the
//! file leaves a choice, each figure takes the side that asks more.

mod circuit;
mod section;
#[cfg(test)]
mod section_tests;
mod tables;
mod voltage;

pub(super) use section::section;
use tables::{FULL_LOAD, METRES_PER_KILOFOOT, column, ohm_per_kilofoot};

use crate::bay::Conductor;
use crate::units::W_PER_ELECTRIC_HORSEPOWER;

const ASK: &str = "ask a licensed electrician before the motor is connected";

/// Nearer to a row of the table than this share of it is that row: nameplates are rounded.
const ON_ROW: f64 = 0.005;

/// Full-load current by the code's table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FullLoad {
    /// What conductors and disconnect are sized by: of the row at or above the motor's power.
    pub most_a: f64,
    /// What the breaker's ceiling is counted from: of the row at or below it.
    pub least_a: f64,
}

/// Full-load current of a motor by its power, watts, and a voltage; none where the table has
/// neither row nor column for it. Between two rows both neighbours count.
#[must_use]
pub fn full_load(watts: f64, volts: f64) -> Option<FullLoad> {
    let column = column(volts)?;
    let horsepower = watts / W_PER_ELECTRIC_HORSEPOWER;
    let above = FULL_LOAD
        .iter()
        .find(|(row, _)| *row >= horsepower * (1.0 - ON_ROW))?;
    let below = FULL_LOAD
        .iter()
        .rfind(|(row, _)| *row <= horsepower * (1.0 + ON_ROW))?;
    Some(FullLoad {
        most_a: above.1[column],
        least_a: below.1[column],
    })
}

/// What conductors must carry: 1.25 times the full-load current (430.22).
#[must_use]
pub fn conductor_needs_a(full_load_a: f64) -> f64 {
    1.25 * full_load_a
}

/// The most an inverse-time breaker may be rated: 2.5 times the full-load current (430.52).
#[must_use]
pub fn breaker_most_a(full_load_a: f64) -> f64 {
    2.5 * full_load_a
}

/// The least the disconnecting means must be rated: 1.15 times the full-load current (430.110).
#[must_use]
pub fn disconnect_least_a(full_load_a: f64) -> f64 {
    1.15 * full_load_a
}

/// What is lost on the way out and back, volts: 2 L R I.
#[must_use]
pub fn drop_v(run_m: f64, conductor: Conductor, amperes: f64) -> f64 {
    2.0 * run_m / METRES_PER_KILOFOOT * ohm_per_kilofoot(conductor) * amperes
}

/// The thinnest conductor that carries `needs_a` and loses at most `most_v` over the run, where a
/// run is known.
#[must_use]
pub fn thinnest(
    needs_a: f64,
    run_m: Option<f64>,
    amperes: f64,
    most_v: Option<f64>,
) -> Option<Conductor> {
    tables::CONDUCTORS
        .iter()
        .map(|(conductor, ..)| *conductor)
        .find(|&conductor| {
            tables::ampacity_a(conductor) >= needs_a
                && match (run_m, most_v) {
                    (Some(run), Some(most)) => drop_v(run, conductor, amperes) <= most,
                    _ => true,
                }
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hp(value: f64) -> f64 {
        value * W_PER_ELECTRIC_HORSEPOWER
    }

    #[track_caller]
    fn close(found: f64, expected: f64, within: f64) {
        assert!(
            (found - expected).abs() < within,
            "{found} is not {expected}"
        );
    }

    #[test]
    fn full_load_by_the_table() {
        // NFPA 70 Table 430.248 (430-148 of the 1999 edition), 115, 200, 208 and 230 V.
        for (horsepower, row) in [
            (1.0, [16.0, 9.2, 8.8, 8.0]),
            (1.5, [20.0, 11.5, 11.0, 10.0]),
            (2.0, [24.0, 13.8, 13.2, 12.0]),
            (3.0, [34.0, 19.6, 18.7, 17.0]),
            (5.0, [56.0, 32.2, 30.8, 28.0]),
        ] {
            for (volts, expected) in [115.0, 200.0, 208.0, 230.0].into_iter().zip(row) {
                let found = full_load(hp(horsepower), volts).unwrap();
                assert_eq!((found.most_a, found.least_a), (expected, expected));
            }
        }
        // The table serves systems of 110 to 120 and 220 to 240 V.
        for (volts, expected) in [(110.0, 34.0), (120.0, 34.0), (220.0, 17.0), (240.0, 17.0)] {
            close(full_load(hp(3.0), volts).unwrap().most_a, expected, 1e-12);
        }
    }

    #[test]
    fn between_two_rows_each_side_takes_the_one_that_asks_more() {
        // 1.5 kW is 2.011 hp: beyond the 2 hp row by more than rounding.
        let found = full_load(1500.0, 230.0).unwrap();
        assert_eq!((found.least_a, found.most_a), (12.0, 17.0));
        // 2.2 kW is 2.949 hp.
        let found = full_load(2200.0, 230.0).unwrap();
        assert_eq!((found.least_a, found.most_a), (12.0, 17.0));
    }

    #[test]
    fn what_the_table_does_not_hold_is_not_known() {
        for (watts, volts) in [
            (hp(3.0), 400.0),
            (hp(3.0), 277.0),
            (hp(3.0), 160.0),
            (hp(20.0), 230.0),
            (f64::NAN, 230.0),
            (hp(3.0), f64::NAN),
        ] {
            assert_eq!(full_load(watts, volts), None, "{watts} W, {volts} V");
        }
    }

    #[test]
    fn factors_of_the_code() {
        // 430.22 at 230 V: 2 hp 15.0, 3 hp 21.25, 5 hp 35.0 A.
        for (horsepower, expected) in [(2.0, 15.0), (3.0, 21.25), (5.0, 35.0)] {
            let amperes = full_load(hp(horsepower), 230.0).unwrap().most_a;
            close(conductor_needs_a(amperes), expected, 1e-9);
        }
        // 430.52, inverse-time breaker, 3 hp: 42.5 A.
        close(breaker_most_a(17.0), 42.5, 1e-9);
        // Disconnect at 115 %: 7 1/2 hp at 230 V, 40 A, to 46 A.
        let amperes = full_load(hp(7.5), 230.0).unwrap().most_a;
        close(amperes, 40.0, 1e-9);
        close(disconnect_least_a(amperes), 46.0, 1e-9);
    }

    #[test]
    fn voltage_drop_as_worked() {
        // 2 L R I / 1000, chapter 9 Table 8, stranded uncoated copper at 75 degrees C:
        // 240 V, 44 A, 160 ft, 6 AWG: 6.9 V, 2.9 %. By hand 2 * 160 * 0.491 * 44 / 1000 = 6.91328,
        // 2.88053 %.
        let feet = |value: f64| value * 0.3048;
        let lost = drop_v(feet(160.0), Conductor::Awg6, 44.0);
        close(lost, 6.9, 0.05);
        close(lost, 6.913_28, 1e-9);
        close(lost / 240.0 * 100.0, 2.9, 0.05);
        close(lost / 240.0 * 100.0, 2.880_53, 5e-6);
        // 230 V, 17 A, 50 ft, 10 AWG: 2.108 V, 0.917 %.
        let lost = drop_v(feet(50.0), Conductor::Awg10, 17.0);
        close(lost, 2.108, 5e-4);
        close(lost / 230.0 * 100.0, 0.917, 5e-4);
    }

    #[test]
    fn the_thinnest_conductor_carries_and_loses_little() {
        // 17 A at 230 V needs 21.25 A: 10 AWG at 60 degrees C carries 30 A.
        assert_eq!(thinnest(21.25, None, 17.0, None), Some(Conductor::Awg10));
        // 200 ft of it loses 8.4 V, over 3 % of 230 V (6.9 V); 8 AWG loses 5.3 V.
        let found = thinnest(21.25, Some(200.0 * 0.3048), 17.0, Some(6.9));
        assert_eq!(found, Some(Conductor::Awg8));
        assert_eq!(thinnest(60.0, None, 48.0, None), None);
        assert_eq!(thinnest(f64::NAN, None, 17.0, None), None);
    }
}

//! Does every spelling give the value meant, and does what is shown read back as it was?

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use bayrise::bay::UnitSystem;
use bayrise::units::{
    Kind, Length, Rounding, UnitError, both, decimal_inches, feet_inches, length, millimetres,
    parse, parse_angle, parse_length, parse_mass,
};
use proptest::prelude::*;

fn inches(text: &str) -> f64 {
    match parse_length(text) {
        Ok(length) => length.in_inches(),
        Err(fault) => panic!("{text}: {}", fault.message(Kind::Length)),
    }
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * b.abs().max(1e-6)
}

#[test]
fn every_spelling_of_a_length() {
    for (text, expected) in [
        ("10' 2-1/2\"", 122.5),
        ("10'2-1/2\"", 122.5),
        ("10'-2 1/2\"", 122.5),
        ("10' - 2 1/2\"", 122.5),
        ("10 ft 2 1/2 in", 122.5),
        ("10 ft. 2 1/2 in.", 122.5),
        ("10ft2.5in", 122.5),
        ("10 feet 2 1/2 inches", 122.5),
        ("10\u{2032} 2\u{bd}\u{2033}", 122.5),
        ("10\u{2019} 2\u{bd}\u{201d}", 122.5),
        ("10' 2''", 122.0),
        ("10 FT 2 IN", 122.0),
        ("104.33 in", 104.33),
        ("8 ft", 96.0),
        ("8.5 ft", 102.0),
        ("3 1/2 in", 3.5),
        ("3-1/2 in", 3.5),
        ("2-1/2\"", 2.5),
        ("\u{bd} in", 0.5),
        ("2 \u{215c} in", 2.375),
        ("2\u{215c}\"", 2.375),
        ("3\u{2044}4 in", 0.75),
        ("5/4 in", 1.25),
        ("1/3 ft", 4.0),
        (".5 in", 0.5),
        ("+3 in", 3.0),
        ("-3 1/2 in", -3.5),
        ("\u{2212}10 ft 2 in", -122.0),
        ("-10' 2\"", -122.0),
        ("  8\u{a0}ft  ", 96.0),
        ("2540 mm", 100.0),
        ("254 cm", 100.0),
        ("2.54 m", 100.0),
        ("2 m 54 cm", 100.0),
        ("1e3 in", 1000.0),
        ("0 in", 0.0),
    ] {
        assert!(close(inches(text), expected), "{text}: {}", inches(text));
    }
}

#[test]
fn what_is_no_length_says_why() {
    let unknown = |unit: &str| UnitError::UnknownUnit { unit: unit.into() };
    let wrong = |unit: &str, measures| UnitError::WrongKind {
        unit: unit.into(),
        measures,
    };
    for (text, expected) in [
        ("", UnitError::Empty),
        ("   ", UnitError::Empty),
        ("tall", UnitError::NotANumber),
        ("ft", UnitError::NotANumber),
        ("NaN m", UnitError::NotANumber),
        ("inf", UnitError::NotANumber),
        ("- - 3 in", UnitError::NotANumber),
        (
            "104",
            UnitError::NoUnit {
                number: "104".into(),
            },
        ),
        (
            "8 ft 2",
            UnitError::NoUnit {
                number: "8 ft 2".into(),
            },
        ),
        ("7 lb", wrong("lb", Kind::Mass)),
        ("3 deg", wrong("deg", Kind::Angle)),
        ("3 cubits", unknown("cubits")),
        (
            "3 ft2",
            UnitError::NoUnit {
                number: "3 ft2".into(),
            },
        ),
        ("1,234 mm", UnitError::Comma),
        ("1,5 m", UnitError::Comma),
        ("8 ft, 2 in", UnitError::Comma),
        ("1e400 mm", UnitError::TooLarge),
        ("1e308 ft", UnitError::TooLarge),
        ("1e308 ft 2 in", UnitError::FractionOfFeet),
        ("2 3/2 in", UnitError::ImproperFraction),
        ("1/0 in", UnitError::BadFraction),
        ("1/ in", UnitError::BadFraction),
        ("1.5/2 in", UnitError::BadFraction),
        ("10 ft 14 in", UnitError::InchesBesideFeet),
        ("10.5 ft 3 in", UnitError::FractionOfFeet),
        ("10 1/2 ft 3 in", UnitError::FractionOfFeet),
        ("10 ft -2 in", UnitError::MinusInside),
        ("2 in 10 ft", UnitError::NotUnderstood),
        ("2 m 3 in", UnitError::NotUnderstood),
        ("50 cm 2 m", UnitError::NotUnderstood),
        ("1 m 200 cm", UnitError::NotUnderstood),
        ("1 ft 2 ft", UnitError::NotUnderstood),
        ("1 ft 2 in 3 mm 4 m", UnitError::NotUnderstood),
    ] {
        let found = parse_length(text);
        let fault = match found {
            Ok(length) => panic!("{text:?} was read as {} in", length.in_inches()),
            Err(fault) => fault,
        };
        assert_eq!(fault, expected, "{text:?}");
        assert!(!fault.message(Kind::Length).is_empty());
        assert!(!fault.help(Kind::Length).is_empty());
    }
}

#[test]
fn a_bare_number_is_told_which_units_fit() {
    let fault = parse_length("104").unwrap_err();
    assert_eq!(fault.message(Kind::Length), "a length needs a unit");
    assert_eq!(
        fault.help(Kind::Length),
        "units that fit: in, ft, mm, cm or m; write \"104 in\", \"104 ft\" or \"104 mm\", \
         whichever was meant"
    );
    let fault = parse_length("7 lb").unwrap_err();
    assert_eq!(
        fault.message(Kind::Length),
        "`lb` measures a mass, but a length belongs here"
    );
    assert_eq!(parse_mass("2 tons").unwrap_err(), UnitError::Ton);
}

/// Factors as printed in NIST SP 811, 2008 edition, appendix B.8, to the digits given there; exact
/// ones stand in bold face there and are compared to the last bit of a double here.
#[test]
fn factors_of_nist_sp_811() {
    for (kind, text, expected, digits) in [
        (Kind::Length, "1 in", 2.54e-2, 15),
        (Kind::Length, "1 ft", 3.048e-1, 15),
        (Kind::Mass, "1 lb", 4.535_923_7e-1, 15),
        (Kind::Mass, "1 oz", 2.834_952e-2, 7),
        (Kind::Force, "1 lbf", 4.448_222, 7),
        (Kind::Force, "1 kip", 4.448_222e3, 7),
        (Kind::Pressure, "1 psi", 6.894_757e3, 7),
        (Kind::Pressure, "1 ksi", 6.894_757e6, 7),
        (Kind::Pressure, "1 bar", 1e5, 15),
        (Kind::Torque, "1 ft lbf", 1.355_818, 7),
        (Kind::Torque, "1 in lbf", 1.129_848e-1, 7),
        (Kind::Power, "1 hp", 7.46e2, 15),
        (Kind::Angle, "1 deg", 1.745_329e-2, 7),
        (Kind::Volume, "1 gal", 3.785_412e-3, 7),
        (Kind::Volume, "1 L", 1e-3, 15),
        (Kind::Area, "1 sq in", 6.4516e-4, 15),
        // 6.894 757 E+03 over 2.54 E-02.
        (Kind::Subgrade, "1 psi/in", 2.714_471e5, 7),
    ] {
        let value = parse(kind, text).unwrap();
        let tolerance = expected * 0.5 * 10_f64.powi(1 - digits);
        assert!((value - expected).abs() <= tolerance, "{text}: {value:e}");
    }
}

#[test]
fn other_quantities_in_their_spellings() {
    for (kind, text, expected) in [
        (Kind::Mass, "3270 kg", 3270.0),
        (Kind::Mass, "3.27 t", 3270.0),
        (Kind::Mass, "-10 lbs", -4.535_923_7),
        (Kind::Force, "2 kN", 2000.0),
        (Kind::Pressure, "28 MPa", 28e6),
        (Kind::Pressure, "28 N/mm2", 28e6),
        (Kind::Pressure, "28 N/mm\u{b2}", 28e6),
        (Kind::Torque, "100 N m", 100.0),
        (Kind::Torque, "100 N\u{b7}m", 100.0),
        (Kind::Torque, "100 Nm", 100.0),
        (Kind::Torque, "10 lbf ft", 13.558_179_483_314_004),
        (Kind::Torque, "10 ft-lbf", 13.558_179_483_314_004),
        (Kind::Power, "1 1/2 hp", 1119.0),
        (Kind::Power, "2.2 kW", 2200.0),
        (Kind::Voltage, "230 V", 230.0),
        (Kind::Current, "12 A", 12.0),
        (Kind::Current, "12 amps", 12.0),
        (Kind::Volume, "10 litres", 0.01),
        (Kind::Volume, "2 m3", 2.0),
        (Kind::Area, "0.334 in2", 2.154_834_4e-4),
        (Kind::Area, "0.334 in\u{b2}", 2.154_834_4e-4),
        (Kind::Area, "0.334 in^2", 2.154_834_4e-4),
        (Kind::Area, "157 mm2", 157e-6),
        (Kind::Subgrade, "100 pci", 27_144_713.752_631_344),
        (Kind::Subgrade, "100 lbf/in\u{b3}", 27_144_713.752_631_344),
        (Kind::Subgrade, "27 MPa/m", 27e6),
        (Kind::Subgrade, "27 MN/m3", 27e6),
        (Kind::Subgrade, "27 kN/m^3", 27e3),
        (Kind::Volume, "2 m\u{b3}", 2.0),
    ] {
        let value = parse(kind, text).unwrap();
        assert!(close(value, expected), "{text}: {value}");
    }
    assert!(close(parse_angle("1.5 deg").unwrap().in_degrees(), 1.5));
    assert!(close(parse_angle("1.5\u{b0}").unwrap().in_degrees(), 1.5));
    assert!(close(parse_angle("0.5 rad").unwrap().rad(), 0.5));
}

/// Common practice, no source.
#[test]
fn a_tape_beside_a_drawing() {
    let drawn = Length::mm(2650.0);
    assert_eq!(decimal_inches(drawn, 2, Rounding::Nearest), "104.33 in");
    assert_eq!(feet_inches(drawn, 16, Rounding::Nearest), "8 ft 8 5/16 in");
    let taped = parse_length("104.25 in").unwrap();
    let short = drawn - taped;
    assert_eq!(millimetres(short, 2, Rounding::Up), "2.05 mm");
    assert!(
        short < Length::inches(0.125),
        "inside a setting-out tolerance of 1/8 in"
    );
}

#[test]
fn rounding_goes_the_way_asked() {
    let show = |inches: f64, rounding| feet_inches(Length::inches(inches), 16, rounding);
    for (value, down, nearest, up) in [
        (1.0, "1 in", "1 in", "1 in"),
        (1.01, "1 in", "1 in", "1 1/16 in"),
        (1.05, "1 in", "1 1/16 in", "1 1/16 in"),
        // 1/32 in is a tie: away from zero on both sides.
        (0.03125, "0 in", "1/16 in", "1/16 in"),
        (-0.03125, "-1/16 in", "-1/16 in", "0 in"),
        (-1.01, "-1 1/16 in", "-1 in", "-1 in"),
        (12.0, "1 ft", "1 ft", "1 ft"),
        (11.999, "11 15/16 in", "1 ft", "1 ft"),
        (
            96.3125,
            "8 ft 0 5/16 in",
            "8 ft 0 5/16 in",
            "8 ft 0 5/16 in",
        ),
    ] {
        assert_eq!(show(value, Rounding::Down), down, "{value} down");
        assert_eq!(show(value, Rounding::Nearest), nearest, "{value} nearest");
        assert_eq!(show(value, Rounding::Up), up, "{value} up");
    }
    let mm = |value: f64, rounding| millimetres(Length::mm(value), 0, rounding);
    assert_eq!(mm(2.5, Rounding::Nearest), "3 mm");
    assert_eq!(mm(-2.5, Rounding::Nearest), "-3 mm");
    assert_eq!(mm(2.999, Rounding::Down), "2 mm");
    assert_eq!(mm(-2.001, Rounding::Down), "-3 mm");
    assert_eq!(mm(2.001, Rounding::Up), "3 mm");
    // A sum that should be 300 mm and is a hair less is 300 mm.
    let sum = (0..3).fold(Length::ZERO, |s, _| s + Length::metres(0.1)) - Length::metres(1e-13);
    assert_eq!(millimetres(sum, 0, Rounding::Down), "300 mm");
    assert_eq!(
        millimetres(sum - Length::mm(0.01), 0, Rounding::Down),
        "299 mm"
    );
}

#[test]
fn no_number_is_shown_as_a_length() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300] {
        assert_eq!(
            feet_inches(Length::metres(value), 16, Rounding::Down),
            "no number"
        );
        assert_eq!(
            millimetres(Length::metres(value), 0, Rounding::Down),
            "no number"
        );
    }
}

#[test]
fn both_systems_with_the_files_own_first() {
    let value = Length::mm(2650.0);
    assert_eq!(
        both(value, UnitSystem::Imperial, Rounding::Nearest),
        "8 ft 8 5/16 in (2650 mm)"
    );
    assert_eq!(
        both(value, UnitSystem::Metric, Rounding::Nearest),
        "2650 mm (8 ft 8 5/16 in)"
    );
    assert_eq!(
        length(value, UnitSystem::Metric, Rounding::Nearest),
        "2650 mm"
    );
}

#[test]
fn every_sixty_fourth_of_an_inch_comes_back_exactly() {
    for n in -50 * 12 * 64..=50 * 12 * 64_i32 {
        let exact = Length::inches(f64::from(n) / 64.0);
        for rounding in [Rounding::Down, Rounding::Nearest, Rounding::Up] {
            let shown = feet_inches(exact, 64, rounding);
            assert_eq!(parse_length(&shown), Ok(exact), "{n}/64 in as {shown}");
        }
    }
}

#[test]
fn every_tenth_of_a_millimetre_comes_back_exactly() {
    for n in -200_000..=200_000_i32 {
        let exact = Length::mm(f64::from(n) / 10.0);
        let shown = millimetres(exact, 1, Rounding::Down);
        assert_eq!(parse_length(&shown), Ok(exact), "{n}/10 mm as {shown}");
    }
}

proptest! {
    #[test]
    fn shown_values_lie_on_the_side_asked(metres in -60.0..60.0_f64) {
        let value = Length::metres(metres);
        for show in [
            |v, r| feet_inches(v, 16, r),
            |v, r| millimetres(v, 0, r),
            |v, r| decimal_inches(v, 2, r),
        ] {
            let read = |rounding| parse_length(&show(value, rounding)).unwrap().m();
            prop_assert!(read(Rounding::Down) <= metres + 1.1e-9);
            prop_assert!(read(Rounding::Up) >= metres - 1.1e-9);
            prop_assert!((read(Rounding::Nearest) - metres).abs() <= 0.0254 / 32.0 + 1e-9);
        }
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,40}") {
        for kind in Kind::ALL {
            match parse(kind, &text) {
                Ok(value) => prop_assert!(value.is_finite()),
                Err(fault) => {
                    prop_assert!(!fault.message(kind).is_empty());
                    prop_assert!(!fault.help(kind).is_empty());
                }
            }
        }
    }

    #[test]
    fn any_text_of_the_trade_is_read_or_refused(text in "[0-9 ./'\"a-zA-Z,eE+\u{bd}\u{2033}-]{0,24}") {
        if let Ok(length) = parse_length(&text) {
            prop_assert!(length.m().is_finite());
        }
    }
}

#[test]
fn a_sign_alone_once_overflowed() {
    for text in ["+", "-", " - ", "+ "] {
        assert!(parse(Kind::Length, text).is_err(), "{text:?}");
        assert!(parse(Kind::Mass, text).is_err(), "{text:?}");
    }
}

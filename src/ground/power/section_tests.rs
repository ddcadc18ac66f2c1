//! What is said of circuits that are known.

use super::section::section;
use crate::bay::Conductor;
use crate::bay::{Bay, Motor, Phases, PowerSupply};
use crate::ground::{Bound, Figure, Quantity, Standing};
use crate::solids::test_bay::test_bay;
use crate::units::{Current, Length, Power, Voltage};

fn bay(horsepower: f64, rated: f64, supplied: f64) -> Bay {
    let mut bay = test_bay();
    bay.lift.motor = Some(Motor {
        power: Some(Power::watts(746.0 * horsepower)),
        voltage: Some(Voltage::volts(rated)),
        current: None,
        phases: Some(Phases::One),
        protected: Some(true),
    });
    bay.power = Some(PowerSupply {
        voltage: Some(Voltage::volts(supplied)),
        breaker: Some(Current::amperes(30.0)),
        run: Some(Length::feet(50.0)),
        conductor: Some(Conductor::Awg10),
        overload: None,
    });
    bay
}

#[track_caller]
fn figure(bay: &Bay, id: &str) -> Figure {
    let section = section(bay);
    let found = section.figures.iter().find(|figure| figure.id == id);
    found.cloned().unwrap()
}

#[track_caller]
fn number(figure: &Figure) -> f64 {
    figure.found.as_ref().and_then(Quantity::number).unwrap()
}

/// Asserts the full-load current taken, amperes.
#[track_caller]
fn takes(bay: &Bay, expected: f64) {
    let found = figure(bay, "full_load").found;
    assert_eq!(found, Some(Quantity::Current(expected)));
}

#[test]
fn a_circuit_that_holds_everywhere() {
    let bay = bay(3.0, 230.0, 230.0);
    for figure in section(&bay).figures {
        assert!(
            matches!(figure.standing, Standing::Passes | Standing::Noted),
            "{figure:?}"
        );
    }
    takes(&bay, 17.0);
    assert!((number(&figure(&bay, "voltage_drop")) - 2.108).abs() < 5e-4);
}

#[test]
fn what_fails_is_not_known_and_a_plain_contradiction_stops() {
    let mut bad = bay(5.0, 230.0, 160.0);
    let supply = bad.power.as_mut().unwrap();
    supply.conductor = Some(Conductor::Awg14);
    supply.run = Some(Length::feet(300.0));
    supply.breaker = Some(Current::amperes(200.0));
    assert_eq!(figure(&bad, "motor_voltage").standing, Standing::Unknown);
    bad.power.as_mut().unwrap().voltage = Some(Voltage::volts(230.0));
    for id in ["conductor", "breaker", "voltage_drop", "motor_voltage"] {
        assert_eq!(figure(&bad, id).standing, Standing::Unknown, "{id}");
    }
    assert_eq!(section(&bad).standing(), Standing::Unknown);
    bad.power.as_mut().unwrap().breaker = Some(Current::amperes(20.0));
    assert_eq!(figure(&bad, "breaker_carries").standing, Standing::Unknown);
    // A motor for 115 V on 230 V, and the other way round.
    for (rated, supplied) in [(115.0, 230.0), (230.0, 115.0), (230.0, f64::NAN)] {
        let figure = figure(&bay(2.0, rated, supplied), "motor_voltage");
        assert_eq!(figure.standing, Standing::Stops, "{rated} {supplied}");
    }
}

#[test]
fn a_motor_of_unknown_voltage_or_of_three_phases_passes_nothing() {
    let mut bay = bay(3.0, 230.0, 230.0);
    let motor = bay.lift.motor.as_mut().unwrap();
    (motor.power, motor.voltage) = (None, None);
    motor.current = Some(Current::amperes(10.0));
    assert_eq!(figure(&bay, "motor_voltage").standing, Standing::Unknown);
    let motor = bay.lift.motor.as_mut().unwrap();
    motor.phases = Some(Phases::Three);
    assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
    // Nobody said how many: 208 and 230 V are voltages of three phases too.
    for volts in [208.0, 230.0, 480.0] {
        let mut bay = self::bay(3.0, volts, volts);
        bay.lift.motor.as_mut().unwrap().phases = None;
        assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
        let passes = |id: &str| {
            let section = section(&bay);
            let mut of = section.figures.iter().filter(|one| one.id == id);
            of.any(|one| one.standing == Standing::Passes)
        };
        assert!(!passes("breaker") && !passes("conductor"));
    }
}

#[test]
fn the_voltage_at_the_motor_is_judged_after_what_the_run_takes() {
    let mut bay = bay(3.0, 230.0, 240.0);
    assert_eq!(figure(&bay, "motor_voltage").standing, Standing::Passes);
    let supply = bay.power.as_mut().unwrap();
    supply.conductor = Some(Conductor::Awg14);
    supply.run = Some(Length::feet(325.0));
    let found = figure(&bay, "motor_voltage");
    assert_eq!(found.standing, Standing::Unknown);
    assert!(number(&found) < 207.0);
    // What is lost on an unknown run is not nothing.
    bay.power.as_mut().unwrap().run = None;
    assert_eq!(figure(&bay, "motor_voltage").standing, Standing::Unknown);
}

#[test]
fn a_breaker_of_the_motors_own_current_is_not_enough() {
    let mut bay = bay(3.0, 230.0, 230.0);
    let carries = |bay: &mut Bay, amperes| {
        bay.power.as_mut().unwrap().breaker = Some(Current::amperes(amperes));
        figure(bay, "breaker_carries").standing
    };
    assert_eq!(carries(&mut bay, 17.0), Standing::Unknown);
    assert_eq!(carries(&mut bay, 21.2), Standing::Unknown);
    assert_eq!(carries(&mut bay, 25.0), Standing::Passes);
}

#[test]
fn a_supply_of_208_volts_on_a_motor_for_230_is_told_and_asks_more() {
    let bay = bay(3.0, 230.0, 208.0);
    // The 208 V column's 18.7 A governs the conductors, the 230 V column's 17 A the breaker.
    takes(&bay, 18.7);
    let breaker = figure(&bay, "breaker");
    assert_eq!(
        breaker.limit,
        Some((Bound::AtMost, Quantity::Current(42.5)))
    );
    let voltage = figure(&bay, "motor_voltage");
    assert!(voltage.note.is_some());
    // 208 V less 2.3 V on the way is under 207 V.
    assert_eq!(voltage.standing, Standing::Unknown);
}

#[test]
fn the_larger_of_table_and_nameplate_counts() {
    let mut bay = bay(3.0, 230.0, 230.0);
    let plate = |bay: &mut Bay, amperes| {
        bay.lift.motor.as_mut().unwrap().current = Some(Current::amperes(amperes));
    };
    plate(&mut bay, 15.0);
    takes(&bay, 17.0);
    plate(&mut bay, 19.0);
    takes(&bay, 19.0);
    let full = figure(&bay, "full_load");
    assert!(full.source.unwrap().contains("nameplate"));
    // The breaker's ceiling stays with the table.
    let breaker = figure(&bay, "breaker");
    assert_eq!(
        breaker.limit,
        Some((Bound::AtMost, Quantity::Current(42.5)))
    );
}

#[test]
fn what_is_not_given_is_not_known() {
    let mut bay = bay(3.0, 230.0, 230.0);
    bay.power = None;
    for id in ["conductor", "breaker", "motor_voltage"] {
        assert_eq!(figure(&bay, id).standing, Standing::Unknown, "{id}");
    }
    bay.lift.motor = None;
    assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
    // Motors for three phases and 400 V are not in the table.
    let bay = self::bay(3.0, 400.0, 400.0);
    assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
}

#[test]
fn a_nameplate_that_contradicts_the_table_is_not_known() {
    let mut bay = bay(3.0, 208.0, 208.0);
    // What a motor of three phases has on its plate (NFPA 70 Table 430.250, from memory).
    bay.lift.motor.as_mut().unwrap().current = Some(Current::amperes(10.6));
    assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
    bay.lift.motor.as_mut().unwrap().current = Some(Current::amperes(28.0));
    assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
}

#[test]
fn a_breaker_is_no_overload_protection() {
    let mut bay = bay(3.0, 230.0, 230.0);
    let motor = bay.lift.motor.as_mut().unwrap();
    (motor.protected, motor.current) = (None, Some(Current::amperes(17.0)));
    assert_eq!(figure(&bay, "overload").standing, Standing::Unknown);
    // 115 percent of 17 A is 19.55 A, 125 percent 21.25 A.
    for (set, standing) in [
        (19.5, Standing::Passes),
        (19.6, Standing::Unknown),
        (21.2, Standing::Unknown),
        (30.0, Standing::Unknown),
    ] {
        bay.power.as_mut().unwrap().overload = Some(Current::amperes(set));
        assert_eq!(figure(&bay, "overload").standing, standing, "{set}");
    }
    bay.power.as_mut().unwrap().overload = None;
    bay.lift.motor.as_mut().unwrap().protected = Some(true);
    assert_eq!(figure(&bay, "overload").standing, Standing::Passes);
}

#[test]
fn the_worked_example_of_an_overload_setting_is_met() {
    // Service factor of 1.15 or more: 125 percent of the nameplate's 31.5 A is 39.375 A, a published
    // worked example of 430.32(A)(1).
    let share = super::circuit::OVERLOAD_SHARES[1];
    assert!((share * 31.5 - 39.375).abs() < 1e-9);
}

#[test]
fn a_wrong_supply_is_told_first() {
    let section = section(&bay(2.0, 230.0, 115.0));
    assert!(format!("{:?}", section.lead).contains("Do not connect it"));
}

//! What is said of the motor's circuit?

use super::tables::{CONDUCTORS, ampacity_a, gauge};
use super::{
    FullLoad, breaker_most_a, conductor_needs_a, disconnect_least_a, drop_v, full_load, thinnest,
};
use crate::bay::{Bay, Motor, Phases, PowerSupply};
use crate::ground::{Bound, Figure, Quantity, Said, Section, Standing, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the local electrical code, the maker's manual and a licensed electrician \
                       govern; the figures are by the code of the United States for one motor of \
                       one phase on a circuit of its own";
const ASK: &str = "ask a licensed electrician before the motor is connected";
/// The share of the supply's voltage that the run may lose: what the code recommends of a branch
/// circuit (210.19, informational note; from memory).
const DROP_SHARE: f64 = 0.03;
/// How far the voltage at the motor may be from its nameplate (NEMA MG 1, 12.44: 10 percent at
/// the rated frequency; from memory).
const MOTOR_SHARE: f64 = 0.10;
/// A supply beyond this many times the nameplate, or under that part of it, is another system's:
/// a plain contradiction. Common practice, no source.
const OTHER_SYSTEM: f64 = 1.5;
/// A supply farther from the nameplate than this is told of even where it passes.
const TOLD_SHARE: f64 = 0.05;

/// The section on the motor's circuit.
pub(in crate::ground) fn section(bay: &Bay) -> Section {
    let motor = bay.lift.motor.unwrap_or(Motor {
        power: None,
        voltage: None,
        current: None,
        phases: None,
    });
    let supply = bay.power.unwrap_or(PowerSupply {
        voltage: None,
        breaker: None,
        run: None,
        conductor: None,
    });
    let mut figures = Vec::with_capacity(8);
    // Everything here is for one phase; a motor of which that is not known is taken as one only
    // where its voltage is one of the single-phase table.
    let load = taken(&motor, &supply).filter(|_| is_single_phase(&motor));
    match load {
        Some(load) => with_load(&motor, &supply, load, &mut figures),
        None => figures.push(Figure::unknown(
            "full_load",
            "full-load current",
            "read power, voltage and current off the motor's nameplate into lift.motor; the \
             table used is for motors of one phase from 1 to 7 1/2 hp at 110 to 240 V, others are \
             for a licensed electrician; write lift.motor.phases",
        )),
    }
    figures.extend(voltage(&motor, &supply, load));
    Section {
        topic: Topic::Power,
        lead: lead(load),
        figures,
        notes: Vec::new(),
        governs: Some(GOVERNS),
    }
}

fn is_single_phase(motor: &Motor) -> bool {
    match motor.phases {
        Some(Phases::One) => true,
        Some(Phases::Three) => false,
        None => motor
            .voltage
            .is_none_or(|volts| super::tables::column(volts.si()).is_some()),
    }
}

fn lead(load: Option<FullLoad>) -> Said {
    match load {
        Some(load) => Said::new("The motor takes ")
            .up(Quantity::Current(load.most_a))
            .and(" at full load: by this screening its conductors must carry ")
            .up(Quantity::Current(conductor_needs_a(load.most_a)))
            .and(" and its breaker may be rated at most ")
            .down(Quantity::Current(breaker_most_a(load.least_a)))
            .and("."),
        None => Said::new("What the motor's circuit needs is not known."),
    }
}

/// The full-load current that counts: by the table (430.6(A)(1)), at the motor's and at the
/// supply's voltage, whichever is worse; the nameplate where it says more, or says it alone.
fn taken(motor: &Motor, supply: &PowerSupply) -> Option<FullLoad> {
    let plate = motor.current.map(|current| current.si());
    let volts = [motor.voltage, supply.voltage];
    let Some(power) = motor.power else {
        return plate.map(|plate| FullLoad {
            most_a: plate,
            least_a: plate,
        });
    };
    let mut found: Option<FullLoad> = None;
    for volts in volts.into_iter().flatten() {
        let one = full_load(power.si(), volts.si())?;
        let so_far = found.unwrap_or(one);
        found = Some(FullLoad {
            most_a: so_far.most_a.max(one.most_a),
            least_a: so_far.least_a.min(one.least_a),
        });
    }
    found.map(|found| FullLoad {
        most_a: found.most_a.max(plate.unwrap_or(0.0)),
        ..found
    })
}

fn with_load(motor: &Motor, supply: &PowerSupply, load: FullLoad, figures: &mut Vec<Figure>) {
    let by_table = motor.power.is_some();
    let mut full = Figure::noted(
        "full_load",
        "full-load current taken",
        Quantity::Current(load.most_a),
    )
    .rounded(Rounding::Up);
    full = if by_table {
        full.source("NFPA 70 Table 430.248, as 430-148 of the 1999 edition; 430.6(A)(1)")
    } else {
        full.source("the motor's nameplate")
    };
    full = match (by_table, motor.current) {
        (true, Some(plate)) => full.note(
            Said::new("the table's, not the nameplate's ")
                .near(Quantity::Current(plate.si()))
                .and(", is what the code takes; the larger of the two is taken here"),
        ),
        (true, None) => full,
        (false, _) => full.note("the code takes its table's, by horsepower, which is not given"),
    };
    figures.push(full);
    conductor(supply, load, figures);
    breaker(supply, load, figures);
    figures.push(
        Figure::noted(
            "disconnect",
            "disconnecting means, at least",
            Quantity::Current(disconnect_least_a(load.most_a)),
        )
        .rounded(Rounding::Up)
        .source("NFPA 70 430.110(A)"),
    );
}

fn conductor(supply: &PowerSupply, load: FullLoad, figures: &mut Vec<Figure>) {
    let needs = conductor_needs_a(load.most_a);
    let run_m = supply.run.map(|run| run.m());
    let most_v = supply.voltage.map(|volts| volts.si() * DROP_SHARE);
    let thinnest = thinnest(needs, run_m, load.most_a, most_v);
    let would_do = match thinnest {
        Some(found) => format!(
            "{} copper is the thinnest that would do by this screening{}",
            gauge(found),
            if run_m.is_some() && most_v.is_some() {
                ""
            } else {
                ", before what is lost on the run is counted"
            }
        ),
        None => format!(
            "none of the copper conductors known here, up to {}, would do",
            gauge(CONDUCTORS[CONDUCTORS.len() - 1].0)
        ),
    };
    let source = "NFPA 70 430.22; Table 310.16, copper at 60 degrees C, from memory";
    let Some(has) = supply.conductor else {
        figures.push(
            Figure {
                limit: Some((Bound::AtLeast, Quantity::Current(needs))),
                ..Figure::unknown(
                    "conductor",
                    "what the conductors carry",
                    "read the size off the cable's jacket into power.conductor",
                )
            }
            .source(source)
            .note(would_do),
        );
        return;
    };
    let carries = Figure::judged(
        "conductor",
        format!("what {} copper carries", gauge(has)),
        Quantity::Current(ampacity_a(has)),
        Bound::AtLeast,
        Quantity::Current(needs),
    )
    .undecided_unless_it_passes(format!(
        "these conductors are too thin for the motor by this screening; {ASK}"
    ))
    .source(source);
    figures.push(if carries.standing == Standing::Passes {
        carries
    } else {
        carries.note(would_do)
    });
    let (Some(run_m), Some(volts)) = (run_m, supply.voltage.map(|volts| volts.si())) else {
        figures.push(Figure::unknown(
            "voltage_drop",
            "voltage lost on the run",
            "write power.run, from panel to motor as the cable goes, and power.voltage",
        ));
        return;
    };
    let lost = drop_v(run_m, has, load.most_a);
    figures.push(
        Figure::judged(
            "voltage_drop",
            "voltage lost on the run",
            Quantity::Voltage(lost),
            Bound::AtMost,
            Quantity::Voltage(volts * DROP_SHARE),
        )
        .undecided_unless_it_passes(format!(
            "too much is lost on the way for the motor to start well; {ASK}"
        ))
        .source(
            "2 L R I, NFPA 70 chapter 9 Table 8, stranded copper at 75 degrees C; 3 percent \
             recommended for a branch circuit, 210.19, from memory",
        )
        .note(
            Said::new("")
                .and(percent(lost / volts))
                .and(" percent over ")
                .near(Quantity::Length(run_m))
                .and(" at full load; a motor draws several times that while it starts"),
        ),
    );
}

/// One decimal, up.
fn percent(share: f64) -> String {
    format!("{:.1}", (share * 1000.0 - 1e-9).ceil() / 10.0)
}

fn breaker(supply: &PowerSupply, load: FullLoad, figures: &mut Vec<Figure>) {
    let most = breaker_most_a(load.least_a);
    let source = "NFPA 70 430.52, inverse-time breaker, 250 percent of the full-load current";
    let Some(breaker) = supply.breaker.map(|breaker| breaker.si()) else {
        figures.push(
            Figure {
                limit: Some((Bound::AtMost, Quantity::Current(most))),
                ..Figure::unknown(
                    "breaker",
                    "breaker",
                    "read its rating off its handle into power.breaker",
                )
            }
            .source(source),
        );
        return;
    };
    figures.push(
        Figure::judged(
            "breaker",
            "breaker",
            Quantity::Current(breaker),
            Bound::AtMost,
            Quantity::Current(most),
        )
        .undecided_unless_it_passes(format!(
            "this breaker may not open on a fault in the motor's circuit as it should; {ASK}"
        ))
        .source(source),
    );
    figures.push(
        Figure::judged(
            "breaker_carries",
            "breaker against what its conductors must carry",
            Quantity::Current(breaker),
            Bound::AtLeast,
            Quantity::Current(conductor_needs_a(load.most_a)),
        )
        .undecided_unless_it_passes(format!(
            "this breaker may open while the motor starts or works; {ASK}"
        ))
        .source(
            "NFPA 70 430.52(B): it must carry the motor's starting current; 125 percent of the \
             full-load current as the least is common practice, no source",
        ),
    );
}

/// The voltage that reaches the motor against its nameplate.
fn voltage(motor: &Motor, supply: &PowerSupply, load: Option<FullLoad>) -> Option<Figure> {
    let Some(rated) = motor.voltage.map(|volts| volts.si()) else {
        return Some(Figure::unknown(
            "motor_voltage",
            "voltage at the motor",
            "read the voltage off the motor's nameplate into lift.motor.voltage",
        ));
    };
    let Some(supplied) = supply.voltage.map(|volts| volts.si()) else {
        return Some(Figure::unknown(
            "motor_voltage",
            "voltage at the motor",
            "have the supply measured between the two wires that the motor gets, into \
             power.voltage",
        ));
    };
    let lost = match (load, supply.run, supply.conductor) {
        (Some(load), Some(run), Some(has)) => Some(drop_v(run.m(), has, load.most_a)),
        _ => None,
    };
    // With nothing drawn the motor gets the whole of it, at full load what the run leaves.
    let most = rated * (1.0 + MOTOR_SHARE);
    let (found, bound, limit) = if supplied > most {
        (supplied, Bound::AtMost, most)
    } else {
        let at_motor = supplied - lost.unwrap_or(0.0);
        (at_motor, Bound::AtLeast, rated * (1.0 - MOTOR_SHARE))
    };
    let what = "voltage at the motor";
    let figure = Figure::judged(
        "motor_voltage",
        what,
        Quantity::Voltage(found),
        bound,
        Quantity::Voltage(limit),
    );
    let not_made = format!("this motor is not made for this supply: do not connect it; {ASK}");
    let figure = if !(rated / OTHER_SYSTEM..=rated * OTHER_SYSTEM).contains(&supplied) {
        figure.stopping(not_made)
    } else if figure.standing == Standing::Passes && lost.is_none() {
        figure.undecided(
            "what is lost on the way to it is not known: write power.run and power.conductor, and \
             the motor's power or current",
        )
    } else if supplied >= limit && bound == Bound::AtLeast {
        figure.undecided_unless_it_passes(format!(
            "too much is lost on the way: a thicker conductor or a shorter run; {ASK}"
        ))
    } else {
        figure.undecided_unless_it_passes(not_made)
    }
    .source("NEMA MG 1, 12.44: within 10 percent of the nameplate, from memory");
    let far = (supplied - rated).abs() > TOLD_SHARE * rated;
    Some(if far {
        figure.note(
            Said::new("the supply has ")
                .near(Quantity::Voltage(supplied))
                .and(" and the motor is for ")
                .near(Quantity::Voltage(rated))
                .and(
                    ": it draws more than its nameplate says and runs hotter, or lifts less; the \
                     lift's maker says whether it may run on this supply or sells one that may",
                ),
        )
    } else {
        figure
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Conductor;
    use crate::solids::test_bay::test_bay;
    use crate::units::{Current, Length, Power, Voltage};

    fn bay(horsepower: f64, rated: f64, supplied: f64) -> Bay {
        let mut bay = test_bay();
        bay.lift.motor = Some(Motor {
            power: Some(Power::watts(746.0 * horsepower)),
            voltage: Some(Voltage::volts(rated)),
            current: None,
            phases: Some(Phases::One),
        });
        bay.power = Some(PowerSupply {
            voltage: Some(Voltage::volts(supplied)),
            breaker: Some(Current::amperes(30.0)),
            run: Some(Length::feet(50.0)),
            conductor: Some(Conductor::Awg10),
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
        // Nobody said how many phases, and no single-phase motor has this voltage.
        let motor = bay.lift.motor.as_mut().unwrap();
        (motor.phases, motor.voltage) = (None, Some(Voltage::volts(480.0)));
        bay.power.as_mut().unwrap().voltage = Some(Voltage::volts(480.0));
        assert_eq!(figure(&bay, "full_load").standing, Standing::Unknown);
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
}

//! Which voltage reaches the motor?

use super::{ASK, FullLoad, drop_v};
use crate::bay::{Motor, PowerSupply};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};

/// How far the voltage at the motor may be from its nameplate (NEMA MG 1, 12.44: 10 percent at
/// the rated frequency; from memory).
const MOTOR_SHARE: f64 = 0.10;
/// A supply beyond this many times the nameplate, or under that part of it, is another system's:
/// a plain contradiction. Common practice, no source.
const OTHER_SYSTEM: f64 = 1.5;
/// A supply farther from the nameplate than this is told of even where it passes.
const TOLD_SHARE: f64 = 0.05;

/// The voltage that reaches the motor against its nameplate.
pub(super) fn voltage(
    motor: &Motor,
    supply: &PowerSupply,
    load: Option<FullLoad>,
) -> Option<Figure> {
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
        figure.stopping(not_made).reason(
            Said::new("the motor is for ")
                .near(Quantity::Voltage(rated))
                .and(" and the supply has ")
                .near(Quantity::Voltage(supplied)),
        )
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

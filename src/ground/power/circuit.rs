//! Do conductors, breaker and overload protection fit the motor?

use super::tables::{CONDUCTORS, ampacity_a, gauge};
use super::{ASK, FullLoad, breaker_most_a, conductor_needs_a, drop_v, thinnest};
use crate::bay::{Motor, PowerSupply};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};

/// The share of the supply's voltage that the run may lose: what the code recommends of a branch
/// circuit (210.19, informational note; from memory).
const DROP_SHARE: f64 = 0.03;
/// What overload protection may be set to of the nameplate's current: 125 percent for a motor with a
/// service factor of 1.15 or more or a temperature rise of 40 degrees C or less, 115 percent for all
/// others (430.32(A)(1); the first by a published worked example, 31.5 A to 39.375 A).
pub(super) const OVERLOAD_SHARES: [f64; 2] = [1.15, 1.25];

pub(super) fn conductor(supply: &PowerSupply, load: FullLoad, figures: &mut Vec<Figure>) {
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

pub(super) fn breaker(supply: &PowerSupply, load: FullLoad, figures: &mut Vec<Figure>) {
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

/// What opens when the motor is overloaded; the breaker does not.
pub(super) fn overload(motor: &Motor, supply: &PowerSupply) -> Figure {
    let what = "overload protection of the motor";
    let source = "NFPA 70 430.32(A), from memory; 125 percent of 31.5 A is 39.375 A in a published \
                  worked example";
    let plate = motor.current.map(|current| current.si());
    let set = supply.overload.map(|overload| overload.si());
    let ask = "see whether the nameplate says \"thermally protected\" (then write \
               lift.motor.protected: true); else write what the motor's starter is set to into \
               power.overload, and the nameplate's current into lift.motor.current";
    let (Some(set), Some(plate)) = (set, plate) else {
        if motor.protected == Some(true) {
            return Figure {
                standing: Standing::Passes,
                ..Figure::noted(
                    "overload",
                    what,
                    Quantity::Words("in the motor, as its nameplate says".into()),
                )
            }
            .source("NFPA 70 430.32(A)(2), from memory");
        }
        return Figure::unknown("overload", what, ask)
            .source(source)
            .note("a breaker that lets the motor start does not open when it is overloaded");
    };
    let [others, tougher] = OVERLOAD_SHARES.map(|share| share * plate);
    let figure = Figure::judged(
        "overload",
        what,
        Quantity::Current(set),
        Bound::AtMost,
        Quantity::Current(others),
    )
    .undecided_unless_it_passes(format!(
        "it may open too late: set it lower, or have it seen that the motor may take more; {ASK}"
    ))
    .source(source);
    if set > others && set <= tougher {
        figure.note(
            "up to 125 percent is for a motor with a service factor of 1.15 or more, or a rise of \
             40 degrees C or less: see its nameplate",
        )
    } else {
        figure
    }
}

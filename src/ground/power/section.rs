//! What is said of the motor's circuit?

use super::circuit::{breaker, conductor, overload};
use super::voltage::voltage;
use super::{ASK, FullLoad, breaker_most_a, conductor_needs_a, disconnect_least_a, full_load};
use crate::bay::{Bay, Motor, Phases, PowerSupply};
use crate::ground::{Figure, Quantity, Said, Section, Standing, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the local electrical code, the maker's manual and a licensed electrician \
                       govern; the figures are by the code of the United States for one motor of \
                       one phase on a circuit of its own";
/// Nameplate and table farther apart than this, either way: one of them is not this motor's. A
/// motor of three phases draws little more than half as much; common practice, no source.
const CONTRADICTS: f64 = 1.25;

/// The section on the motor's circuit.
pub(in crate::ground) fn section(bay: &Bay) -> Section {
    let motor = bay.lift.motor.unwrap_or(Motor {
        power: None,
        voltage: None,
        current: None,
        phases: None,
        protected: None,
    });
    let supply = bay.power.unwrap_or(PowerSupply {
        voltage: None,
        breaker: None,
        run: None,
        conductor: None,
        overload: None,
    });
    let mut figures = Vec::with_capacity(8);
    // Everything here is for one phase. A motor of three has the same voltages and about half the
    // current, so that what fits the one is no pass for the other.
    let is_single_phase = motor.phases == Some(Phases::One);
    let load = taken(&motor, &supply).filter(|_| is_single_phase);
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
    figures.push(overload(&motor, &supply));
    figures.extend(voltage(&motor, &supply, load));
    Section {
        topic: Topic::Power,
        lead: lead(&motor, &supply, load, &figures),
        figures,
        notes: Vec::new(),
        governs: Some(GOVERNS),
    }
}

fn lead(motor: &Motor, supply: &PowerSupply, load: Option<FullLoad>, figures: &[Figure]) -> Said {
    let stops = figures.iter().any(|one| one.standing == Standing::Stops);
    let volts = [motor.voltage, supply.voltage].map(|volts| volts.map(|volts| volts.si()));
    let stop = match volts {
        [Some(rated), Some(supplied)] if stops => Some(
            Said::new("Do not connect it: the motor is for ")
                .near(Quantity::Voltage(rated))
                .and(" and the supply has ")
                .near(Quantity::Voltage(supplied))
                .and("."),
        ),
        _ => None,
    };
    match (stop, load) {
        (Some(stop), _) => stop,
        (None, Some(load)) => Said::new("The motor takes ")
            .up(Quantity::Current(load.most_a))
            .and(" at full load: by this screening its conductors must carry ")
            .up(Quantity::Current(conductor_needs_a(load.most_a)))
            .and(" and its breaker may be rated at most ")
            .down(Quantity::Current(breaker_most_a(load.least_a)))
            .and(", with overload protection for the motor beside it."),
        (None, None) => Said::new("What the motor's circuit needs is not known."),
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
    let table_a = motor.power.and_then(|power| {
        let volts = [motor.voltage, supply.voltage].into_iter().flatten();
        volts
            .filter_map(|volts| full_load(power.si(), volts.si()))
            .map(|load| load.most_a)
            .reduce(f64::max)
    });
    let plate_a = motor.current.map(|current| current.si());
    let mut full = Figure::noted(
        "full_load",
        "full-load current taken",
        Quantity::Current(load.most_a),
    )
    .rounded(Rounding::Up);
    let table = "NFPA 70 Table 430.248, as 430-148 of the 1999 edition; 430.6(A)(1)";
    full = match (table_a, plate_a) {
        (Some(by_table), Some(plate)) if plate > by_table => full
            .source("the motor's nameplate, which says more than NFPA 70 Table 430.248")
            .note(
                Said::new("the table has ")
                    .near(Quantity::Current(by_table))
                    .and("; the larger of the two is taken here"),
            ),
        (Some(_), Some(plate)) => full.source(table).note(
            Said::new("the table's, not the nameplate's ")
                .near(Quantity::Current(plate))
                .and(", is what the code takes; the larger of the two is taken here"),
        ),
        (Some(_), None) => full.source(table),
        (None, _) => full
            .source("the motor's nameplate")
            .note("the code takes its table's, by horsepower, which is not given"),
    };
    // A nameplate's current is at its own voltage.
    let at_rated = motor.power.zip(motor.voltage);
    let at_rated = at_rated.and_then(|(power, volts)| full_load(power.si(), volts.si()));
    if let (Some(by_table), Some(plate)) = (at_rated.map(|load| load.most_a), plate_a)
        && !(by_table / CONTRADICTS..=by_table * CONTRADICTS).contains(&plate)
    {
        full = full.undecided(format!(
            "nameplate and table are too far apart for one motor: read power, voltage, current and \
             phases off the nameplate again; {ASK}"
        ));
    }
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

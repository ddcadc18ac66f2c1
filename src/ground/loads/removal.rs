//! What is said of balance before and after parts are taken out?

use super::figures::{Limits, inside, total, weight, window};
use super::{State, States};
use crate::bay::{Bay, Facing};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};

/// The vehicle before its parts came out may never stand on the lift: what it fails then is for
/// the person to decide.
const BEFORE: &str = "take the parts out before the vehicle is raised, or mend this too";
const BETWEEN: &str = "take the parts out in an order that keeps the balance, with tall stands \
                       under the ends";

fn undecided(figure: Figure, how: &'static str) -> Figure {
    if figure.standing == Standing::Stops {
        figure.undecided(how)
    } else {
        figure
    }
}

/// The figures before the parts came out, and with some of them out.
pub(super) fn figures(bay: &Bay, before: &State, states: &States, limits: &Limits) -> Vec<Figure> {
    let _ = bay;
    let what = "before parts come out, centre of gravity";
    let mut all = vec![total(
        "before.total",
        "before parts come out, vehicle on the lift",
        before,
        limits,
    )];
    all.extend(window("before.window", what, before, limits));
    all.push(inside("before.inside_pads", what, before, limits));
    let heaviest = before.pads.map(|pads| {
        let shared = pads.pads.map(|pad| pad.shared_n);
        shared.into_iter().fold(0.0, f64::max)
    });
    all.push(match heaviest {
        Some(heaviest) => Figure::judged(
            "before.pad_load",
            "before parts come out, most on one pad",
            weight(heaviest),
            Bound::AtMost,
            Quantity::Mass(limits.arm_kg),
        ),
        None => Figure::unknown(
            "before.pad_load",
            "before parts come out, pad loads",
            "first bring the weight inside the pads' span",
        ),
    });
    let mut all: Vec<Figure> = all.into_iter().map(|f| undecided(f, BEFORE)).collect();
    if let Some(worst) = worst_between(states) {
        let what = "with some of the parts out, centre of gravity";
        let mut between = window("between.window", what, &worst, limits);
        between.push(inside("between.inside_pads", what, &worst, limits));
        all.extend(between.into_iter().map(|f| undecided(f, BETWEEN)));
    }
    all
}

/// The worst of the states in between, each of its figures on its own.
fn worst_between(states: &States) -> Option<State> {
    let mut all = states.between.iter();
    let mut worst = all.next()?.clone();
    for state in all {
        worst.inside_m = worst.inside_m.min(state.inside_m);
        worst.along_m.0 = worst.along_m.0.min(state.along_m.0);
        worst.along_m.1 = worst.along_m.1.max(state.along_m.1);
    }
    Some(worst)
}

/// What taking the parts out does, and what to do before.
pub(super) fn notes(bay: &Bay, before: &State, after: &State) -> Vec<Said> {
    let names: Vec<&str> = bay
        .vehicle
        .masses
        .iter()
        .filter(|part| part.mass.kg() < 0.0)
        .map(|part| part.name.as_str())
        .collect();
    let into_bay = after.geometry.cg_m.y - before.geometry.cg_m.y;
    let to_tail = match bay.parking.facing {
        Facing::NoseIn => -into_bay,
        Facing::TailIn => into_bay,
    };
    let (end, other) = if to_tail >= 0.0 {
        ("tail", "nose")
    } else {
        ("nose", "tail")
    };
    vec![
        Said::new(format!("Without {} the weight acts ", names.join(", ")))
            .up(Quantity::Length(to_tail.abs()))
            .and(format!(
                " farther toward the {end}: the {end} gets heavy, the {other} light."
            )),
        format!(
            "Before a heavy part comes out: lower onto the locks, set a tall stand under the \
             {end}, tie the vehicle to the arms, and never pull or pry hard at a vehicle that \
             balances on less."
        )
        .into(),
    ]
}

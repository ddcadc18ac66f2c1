//! What is said of loads and balance?

use super::figures::{self, limits};
use super::{States, estimate, lead, removal, unload};
use crate::bay::Bay;
use crate::ground::{Figure, Quantity, Said, Section, Topic};
use crate::solids::attitude::StanceError;

/// Who governs where this is no more than statics of a rigid body.
const GOVERNS: &str = "the lift maker's manual says what each arm carries and where the weight \
                       may lie, and outranks it";

/// The section on loads.
#[must_use]
pub fn section(bay: &Bay, states: &Result<States, StanceError>) -> Section {
    match states {
        Ok(states) => known(bay, states),
        Err(fault) => not_known(bay, *fault),
    }
}

fn known(bay: &Bay, states: &States) -> Section {
    let given = &states.as_given;
    let limits = limits(bay);
    let mut all = figures::of(bay, given, &limits);
    let mut notes = Vec::new();
    if let Some(before) = &states.before {
        all.extend(removal::figures(before, states, &limits));
        notes.extend(removal::notes(bay, before, given));
    }
    let unloaded = unload::figures(bay, states, &limits, &all);
    all.extend(unloaded);
    notes.push(
        "Loads are those of a rigid body on four pads; what four equal springs leave open is \
         bounded by the body standing on any three. The scale's own error is not in them."
            .into(),
    );
    Section {
        topic: Topic::Loads,
        lead: lead::lead(states, &limits, &all),
        figures: all,
        notes,
        governs: Some(GOVERNS),
    }
}

fn not_known(bay: &Bay, fault: StanceError) -> Section {
    let how = match fault {
        StanceError::NoAxleLoads => {
            "weigh the vehicle axle by axle, as it will be lifted, and give `axle_loads`"
        }
        StanceError::NoMass => "check the signs and units of `masses` and `axle_loads`",
        StanceError::LiftPointsInLine | StanceError::PadsTooUneven | StanceError::NotANumber => {
            "check the lift points and the pads' heights"
        }
    };
    let mut notes = Vec::new();
    if fault == StanceError::NoAxleLoads {
        let [ahead, behind] = estimate::stations_m(&bay.vehicle).map(Quantity::Length);
        notes.push(
            Said::new(
                "An estimate and no pass: with 55 to 60 % of its weight on the front axle, as is \
                 common with the engine in front, its centre of gravity would lie ",
            )
            .near(ahead)
            .and(" to ")
            .near(behind)
            .and(" behind the front bumper."),
        );
    }
    Section {
        topic: Topic::Loads,
        lead: match fault {
            StanceError::NoAxleLoads => {
                "Without axle loads neither pad loads nor balance are known.".into()
            }
            _ => Said::new(format!("Loads and balance are not known: {fault}.")),
        },
        figures: vec![Figure::unknown("balance", "pad loads and balance", how)],
        notes,
        governs: Some(GOVERNS),
    }
}

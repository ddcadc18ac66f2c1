//! What is said of cargo that may be taken off while the vehicle is up?
//!
//! Nobody is made to unload there, so that a state without the cargo that fails is no stop: it is
//! not known whether it comes to that, and what keeps it from coming to that is said.

use super::States;
use super::figures::Limits;
use super::removal::{keep_worst, of};
use crate::bay::{Bay, NamedMass};
use crate::ground::{Figure, Quantity, Standing};

/// When such a state stands, in words.
const WHEN: &str = "with cargo taken off while it is up";

/// The figures of the worst of these states that do not pass; that all pass in one. `told` are the
/// section's figures so far: what is open there already is not told again.
pub(super) fn figures(bay: &Bay, states: &States, limits: &Limits, told: &[Figure]) -> Vec<Figure> {
    if states.unloaded.is_empty() {
        return Vec::new();
    }
    let mut worst = Vec::new();
    for state in &states.unloaded {
        keep_worst(&mut worst, of("unloaded", WHEN, state, limits));
    }
    let is_open = |id: &str| {
        let alike = told.iter().filter(|one| one.id.starts_with(id));
        alike
            .into_iter()
            .any(|one| one.standing >= Standing::Unknown)
    };
    worst.retain(|one| match &*one.id {
        // It falls with whatever is taken off.
        "unloaded.total" => false,
        "unloaded.three_pads" => one.standing != Standing::Passes && !is_open("three_pads"),
        "unloaded.post_load" if one.standing == Standing::Unknown => !is_open("post_load"),
        _ => one.standing != Standing::Passes,
    });
    let names: Vec<&str> = bay
        .vehicle
        .masses
        .iter()
        .filter(|part| is_loose(part))
        .map(|part| part.name.as_str())
        .collect();
    let names = names.join(", ");
    for figure in &mut worst {
        figure.standing = Standing::Unknown;
        figure.cure = Some(
            format!(
                "unload before raising, or do not unload while it is up ({names}): say so with \
                 `stays: true` for what stays on"
            )
            .into(),
        );
    }
    if !states.all_unloaded {
        worst.push(Figure::unknown(
            "unloaded.sets",
            "cargo taken off while it is up, in any order",
            "there is so much cargo that not every order was looked at: say `stays: true` for what \
             stays on while the vehicle is up",
        ));
    }
    if worst.is_empty() {
        let words = Quantity::Words(format!("hold without {names} too"));
        worst.push(Figure {
            standing: Standing::Passes,
            ..Figure::noted("unloaded", "balance and loads, cargo taken off", words)
        });
    }
    worst
}

/// Whether a mass is cargo that may be taken off while the vehicle is up.
fn is_loose(part: &NamedMass) -> bool {
    part.mass.kg() > 0.0 && !part.stays
}

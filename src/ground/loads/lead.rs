//! Which sentence comes first on loads and balance?
//!
//! It tells what stops, and of every state that the vehicle goes through on the pads the worst.

use super::figures::{Limits, weight};
use super::removal::{BEFORE_WHEN, BETWEEN_WHEN};
use super::{GRAVITY, Pads, State, States};
use crate::bay::Corner;
use crate::ground::{Figure, Quantity, Said, Standing};

/// The sentence, for the section's figures.
pub(super) fn lead(states: &States, limits: &Limits, figures: &[Figure]) -> Said {
    let mut all = vec![(without_parts(states), &states.as_given)];
    all.extend(states.before.iter().map(|state| (BEFORE_WHEN, state)));
    all.extend(states.between.iter().map(|state| (BETWEEN_WHEN, state)));
    let said = stops(figures);
    let carried: Vec<(&str, &State, &Pads)> = all
        .iter()
        .filter_map(|(when, state)| Some((*when, *state, state.pads.as_ref()?)))
        .collect();
    let greater = |a: &f64, b: &f64| a.total_cmp(b);
    let heaviest = carried
        .iter()
        .flat_map(|one| Corner::ALL.map(|corner| (one, corner)))
        .max_by(|a, b| {
            let shared = |(one, corner): &(&(&str, &State, &Pads), Corner)| {
                one.2.pads[corner.index()].shared_n
            };
            greater(&shared(a), &shared(b))
        });
    let least = all
        .iter()
        .min_by(|a, b| greater(&a.1.inside_m, &b.1.inside_m));
    let (Some((&(when, state, pads), corner)), Some((least_when, least))) = (heaviest, least)
    else {
        return said
            .and("The weight of ")
            .up(Quantity::Mass(states.as_given.mass_kg))
            .and(" acts outside the pads: the vehicle would tip off them.");
    };
    let mut said = said
        .and("Of ")
        .up(Quantity::Mass(state.mass_kg))
        .and(format!(" the {} pad carries the most, ", corner.name()))
        .up(weight(pads.pads[corner.index()].shared_n))
        .and(" of the ")
        .down(Quantity::Mass(limits.arm_kg))
        .and(format!(" an arm may carry{}", spaced(when)));
    let three = carried
        .iter()
        .flat_map(|one| one.2.pads)
        .map(|pad| pad.most_n)
        .fold(0.0, f64::max);
    if three > limits.arm_kg * GRAVITY {
        said = said
            .and(" (on three pads up to ")
            .up(weight(three))
            .and(")");
    }
    said = said.and("; the weight acts ");
    said = if least.inside_m < 0.0 {
        said.up(Quantity::Length(-least.inside_m))
            .and(" outside the pads' span at worst")
    } else {
        said.down(Quantity::Length(least.inside_m))
            .and(" inside the pads' span at worst")
    };
    said = said.and(format!("{}.", spaced(least_when)));
    let falls = |figure: &Figure| {
        figure.id.starts_with("unloaded.") && figure.standing == Standing::Unknown
    };
    if figures.iter().any(falls) {
        said = said.and(
            " With cargo taken off while it is up that is not so: unload before raising, or not \
             before it is down.",
        );
    }
    said
}

/// When the state that the file gives stands: nothing to say where no parts come out.
const fn without_parts(states: &States) -> &'static str {
    if states.before.is_some() {
        "with the parts out"
    } else {
        ""
    }
}

fn spaced(when: &str) -> String {
    if when.is_empty() {
        String::new()
    } else {
        format!(" {when}")
    }
}

/// What stops, before anything that sounds well.
fn stops(figures: &[Figure]) -> Said {
    let mut stops = figures
        .iter()
        .filter(|figure| figure.standing == Standing::Stops);
    let Some(first) = stops.next() else {
        return Said::default();
    };
    let said = Said::new("Stop: ").and_said(first.why());
    match stops.count() {
        0 => said.and(". "),
        1 => said.and(", and one more stop below. "),
        more => said.and(format!(", and {more} more stops below. ")),
    }
}

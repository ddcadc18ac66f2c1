//! Which prices of a file of options count in no bill, and what else is not taken as it stands?

use super::{Choice, Prices, Work, lay};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Node, Span, value_at};

/// Warns of every price that can't be used: what nothing in the file asks for, and what another
/// option's price stands in the place of.
pub(super) fn remarks(cx: &Context, at: Span, general: &Prices, lists: [&Vec<Choice>; 4]) {
    let all = || lists.iter().flat_map(|list| list.iter());
    for work in [Work::Door, Work::Other] {
        let is_asked = all().any(|choice| {
            let touches = if work == Work::Door {
                choice.touches.door
            } else {
                choice.touches.room
            };
            touches || choice.prices.of(work).is_some()
        });
        if general.of(work).is_some() && !is_asked {
            cx.warning(
                at,
                &format!("the price of {} is counted nowhere", work.words()),
                "no option of this file changes anything of that kind",
                "write the price with the option that it is asked for",
            );
        }
    }
    for work in Work::ALL.into_iter().filter(|work| !work.adds_up()) {
        let giving: Vec<&Choice> = lists
            .iter()
            .filter_map(|list| list.iter().find(|one| one.prices.of(work).is_some()))
            .collect();
        if let [hidden @ .., last] = giving.as_slice()
            && !hidden.is_empty()
        {
            let names: Vec<String> = hidden
                .iter()
                .map(|one| format!("\"{}\"", one.name))
                .collect();
            cx.warning(
                at,
                &format!(
                    "the price of {} given with {} is not counted where \"{}\" gives another",
                    work.words(),
                    names.join(", "),
                    last.name
                ),
                "one price of that kind counts: a change's before a vehicle's, a lift's, a garage's",
                "write the whole price in one place",
            );
        }
    }
}

/// Warns of every option that describes other concrete and not its age, where a bay file has one that
/// is then not taken.
pub(super) fn ages_not_taken(cx: &Context, base: Option<&Node>, lists: [&Vec<Choice>; 4]) {
    let all = || lists.iter().flat_map(|list| list.iter());
    let has_age = |bay: &Node| {
        let says = |path| value_at(bay, path).is_some();
        says("slab.age_days") || says("slab.poured")
    };
    let mut bays = base
        .into_iter()
        .chain(all().filter_map(|one| one.bay.as_ref()));
    if !bays.any(has_age) {
        return;
    }
    for field in all().flat_map(|choice| &choice.over) {
        if let Some(span) = lay::forgets_age(field) {
            cx.warning(
                span,
                "other concrete is described here, and not how old it is",
                "the age of the bay file's slab is not taken for it",
                "say its age here with `poured` or `age_days`, of the same slab as well",
            );
        }
    }
}

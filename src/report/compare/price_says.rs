//! What does the choice cost, and what would be cheaper, in plain sentences?

use super::says::{cell, show_of};
use super::words::candidate;
use crate::bayfile::options::{Money, Options, Work};
use crate::choose::bill::{Bill, Line};
use crate::choose::choice::{AS_HIGH_M, Candidate, candidates};
use crate::choose::{Cell, Matrix};
use crate::report::words::{list, sentence};

/// What a candidate costs, as far as it is known: "$4,145", "$4,145 and what is not priced".
fn costs(options: &Options, of: &Candidate) -> String {
    let known = of.at_least.show(&options.currency);
    if of.total.is_some() {
        known
    } else {
        format!("{known} and what is not priced")
    }
}

pub(super) fn cheaper(
    options: &Options,
    matrix: &Matrix,
    best: &Candidate,
    next: &Candidate,
    text: &mut String,
) {
    let saved = Money(next.at_least.0 - best.at_least.0);
    let (at_least, as_known) = match (best.total, next.total) {
        (Some(_), Some(_)) => ("", ""),
        (Some(_), None) => ("at least ", ""),
        (None, _) => ("", " as far as prices are known"),
    };
    let as_high = show_of(matrix, best).map_or_else(String::new, |show| show.need(AS_HIGH_M));
    if saved == Money(0) {
        let open: Vec<&str> = next.open_work().map(Work::words).collect();
        text.push_str(&format!(
            " {} goes as high (within {as_high}) and costs as much without what it needs and has no \
             price for: {}.",
            sentence(&candidate(options, next.pick)),
            list(&open)
        ));
        return;
    }
    text.push_str(&format!(
        " {} goes as high (within {as_high}) and costs {at_least}{} more{as_known}.",
        sentence(&candidate(options, next.pick)),
        saved.show(&options.currency)
    ));
}

/// The cheapest that serves as many vehicles, with what is lost and saved: who is told of the
/// highest alone overlooks it. `told` was named already.
pub(super) fn cheapest(
    options: &Options,
    matrix: &Matrix,
    best: &Candidate,
    told: Option<&Candidate>,
) -> String {
    let all = candidates(matrix);
    let cheapest = all
        .iter()
        .filter(|one| one.served == best.served && one.at_least < best.at_least)
        .min_by_key(|one| (one.at_least, one.pick));
    let (Some(one), Some(high), Some(show)) = (cheapest, best.underbody_m, show_of(matrix, best))
    else {
        return String::new();
    };
    let Some(low) = one
        .underbody_m
        .filter(|_| told.is_none_or(|told| told.pick != one.pick))
    else {
        return String::new();
    };
    let saved = Money(best.at_least.0 - one.at_least.0).show(&options.currency);
    let saved = match (best.total, one.total) {
        (Some(_), Some(_)) => format!("{saved} less"),
        (None, Some(_)) => format!("at least {saved} less"),
        (_, None) => format!("{saved} less as far as prices are known"),
    };
    // The chosen may itself be a little lower than the highest.
    let highest = all
        .iter()
        .filter(|one| one.served == best.served)
        .filter_map(|one| one.underbody_m)
        .fold(high, f64::max);
    let height = if highest - low < AS_HIGH_M {
        "as high".into()
    } else if highest > high {
        format!("{} lower than the highest", show.need(highest - low))
    } else {
        format!("{} lower", show.need(high - low))
    };
    format!(
        " The cheapest that serves as many is {}: {saved} ({}), and {height}, with {} under the body.",
        candidate(options, one.pick),
        costs(options, one),
        show.room(low)
    )
}

/// A lift whose own price is lower, but that costs more in all.
pub(super) fn dearer_than_it_looks(options: &Options, matrix: &Matrix, best: &Candidate) -> String {
    let bill = |of: &Candidate| Some(cell(matrix, of)?.found()?.bill);
    let price = |of: &Candidate| match bill(of)?.of(Work::Lift) {
        Line::Priced(amount) => Some(amount),
        _ => None,
    };
    let Some(own) = price(best) else {
        return String::new();
    };
    let looks_cheaper = candidates(matrix)
        .into_iter()
        .filter(|one| one.served == best.served && one.at_least > best.at_least)
        .find(|one| price(one).is_some_and(|price| price < own));
    let Some(one) = looks_cheaper else {
        return String::new();
    };
    let (Some(price), Some(its), Some(ours)) = (price(&one), bill(&one), bill(best)) else {
        return String::new();
    };
    let currency = &options.currency;
    let as_known = if best.total.is_some() {
        ""
    } else {
        " as far as prices are known"
    };
    let mut text = format!(
        " {} is the cheaper lift ({} against {}) but the dearer whole{as_known} ({} against {})",
        sentence(&candidate(options, one.pick)),
        price.show(currency),
        own.show(currency),
        costs(options, &one),
        costs(options, best),
    );
    let reasons = dearer_lines(options, &its, &ours);
    if !reasons.is_empty() {
        text.push_str(&format!(": {}", list(&reasons)));
    }
    text.push('.');
    text
}

/// The lines of a bill, the lift's left out, that are more than another's: "pad $1,750 against
/// none".
fn dearer_lines(options: &Options, its: &Bill, ours: &Bill) -> Vec<String> {
    Work::ALL
        .into_iter()
        .filter(|work| *work != Work::Lift)
        .filter_map(|work| {
            let Line::Priced(amount) = its.of(work) else {
                return None;
            };
            let against = match ours.of(work) {
                Line::Priced(other) if other < amount => other.show(&options.currency),
                Line::Priced(_) => return None,
                Line::NotNeeded => "none".into(),
                Line::Missing => "what has no price".into(),
                Line::NotKnown => "what is not known to be needed".into(),
            };
            let amount = amount.show(&options.currency);
            Some(format!("{} {amount} against {against}", work.words()))
        })
        .collect()
}

pub(super) fn unasked(matrix: &Matrix) -> bool {
    let mut found = matrix.cells.iter().filter_map(Cell::found);
    found.all(|found| found.bill.is_unasked)
}

/// What the price of a choice lacks.
pub(super) fn price_open(options: &Options, matrix: &Matrix, best: &Candidate) -> String {
    if unasked(matrix) || best.total.is_some() {
        return String::new();
    }
    let open: Vec<&str> = best.open_work().map(Work::words).collect();
    if open.is_empty() {
        return String::new();
    }
    format!(
        " Of its cost {} is known; without a price, or not known to be needed: {}.",
        best.at_least.show(&options.currency),
        list(&open)
    )
}

//! Which combination is chosen, and why, in plain sentences?

use super::price_says::{cheaper, cheapest, dearer_than_it_looks, price_open, unasked};
use super::words::{candidate, named, show, vehicle, why_not_safe};
use crate::bayfile::options::{Choice as Change, List, Options, Work};
use crate::choose::choice::{AS_HIGH_M, Because, Candidate, Choice, among, candidates, choice};
use crate::choose::{Cell, Matrix};
use crate::ground::{Standing, Topic};
use crate::report::Show;
use crate::report::words::{count, list, sentence};

/// The sentences on top.
#[must_use]
pub fn says(options: &Options, matrix: &Matrix) -> String {
    match choice(matrix) {
        Choice::None => none(options, matrix),
        Choice::Equal {
            best,
            price_is_missing,
        } => equal(options, matrix, &best, price_is_missing),
        Choice::One {
            best,
            next,
            because,
        } => one(options, matrix, &best, next.as_ref(), because),
    }
}

pub(super) fn cell<'a>(matrix: &'a Matrix, of: &Candidate) -> Option<&'a Cell> {
    let pick = crate::bayfile::options::Pick {
        vehicle: of.lowest,
        ..of.pick
    };
    matrix.cells.iter().find(|cell| cell.pick == pick)
}

pub(super) fn show_of(matrix: &Matrix, of: &Candidate) -> Option<Show> {
    Some(show(cell(matrix, of)?.found()?))
}

fn none(options: &Options, matrix: &Matrix) -> String {
    let mut text = match matrix.cells.len() {
        1 => "The one combination gives no safe lock.".into(),
        all => format!("None of {} gives a safe lock.", count(all, "combination")),
    };
    // Nearest is what the fewest things stand in the way of; among those what goes highest.
    let nearest = matrix
        .cells
        .iter()
        .filter_map(|cell| Some((cell, cell.found()?)))
        .max_by_key(|(cell, found)| {
            (
                found.verdict.highest_clear_lock.is_some(),
                std::cmp::Reverse(found.verdict.withheld.len()),
                found.verdict.highest_clear_lock,
                std::cmp::Reverse(cell.pick),
            )
        });
    if let Some((cell, found)) = nearest
        && let Some(why) = why_not_safe(&found.bay, &found.verdict)
    {
        text.push_str(&format!(
            " The nearest to one is {}, {}: {why}.",
            candidate(options, cell.pick),
            vehicle(options, cell.pick)
        ));
    }
    text
}

/// "every vehicle gets a safe lock", "2 of 3 vehicles get a safe lock".
fn serves(of: &Candidate) -> String {
    match (of.served, of.of) {
        (1, 1) => "it gets a safe lock".into(),
        (2, 2) => "both vehicles get a safe lock".into(),
        (served, all) if served == all => format!("all {all} vehicles get a safe lock"),
        (1, all) => format!("1 of {all} vehicles gets a safe lock"),
        (served, all) => format!("{served} of {all} vehicles get a safe lock"),
    }
}

/// "lock 9 of 17 with 4 ft 10 in under the body".
fn height(options: &Options, matrix: &Matrix, of: &Candidate) -> Option<String> {
    let cell = cell(matrix, of)?;
    let found = cell.found()?;
    let lock = found.verdict.highest_safe_lock?;
    let who = if of.of > 1 {
        format!("{} the lowest, ", vehicle(options, cell.pick))
    } else {
        String::new()
    };
    Some(format!(
        "{who}lock {lock} of {} with {} under the body{}",
        found.verdict.locks.len(),
        show(found).room(of.underbody_m?),
        if found.verdict.full_rise {
            ", the full rise"
        } else {
            ""
        }
    ))
}

fn one(
    options: &Options,
    matrix: &Matrix,
    best: &Candidate,
    next: Option<&Candidate>,
    because: Because,
) -> String {
    let name = candidate(options, best.pick);
    let mut text = format!("Take {name}: {}", serves(best));
    if let Some(height) = height(options, matrix, best) {
        text.push_str(&format!(" ({height})"));
    }
    if let Some(total) = best.total.filter(|_| !unasked(matrix)) {
        text.push_str(&format!(", for {} in all", total.show(&options.currency)));
    }
    text.push('.');
    match (because, next) {
        (Because::Only, _) | (_, None) => {}
        (Because::Served, Some(next)) => {
            let next_name = candidate(options, next.pick);
            if next.served == 0 {
                text.push_str(&format!(" With {next_name} none does"));
                if let Some(why) = why_none(matrix, next) {
                    text.push_str(&format!(": {why}"));
                }
                text.push('.');
            } else {
                text.push_str(&format!(
                    " With the next, {next_name}, only {} of {} do.",
                    next.served, next.of
                ));
            }
        }
        (Because::Higher, Some(next)) => {
            if let (Some(high), Some(low), Some(show)) =
                (best.underbody_m, next.underbody_m, show_of(matrix, best))
            {
                text.push_str(&format!(
                    " It leaves {} more under the body than the next, {}.",
                    show.room(high - low),
                    candidate(options, next.pick)
                ));
            }
        }
        (Because::Cheaper, Some(next)) => cheaper(options, matrix, best, next, &mut text),
    }
    text.push_str(&without_change(options, matrix, best));
    text.push_str(&cheapest(
        options,
        matrix,
        best,
        next.filter(|_| because == Because::Cheaper),
    ));
    text.push_str(&dearer_than_it_looks(options, matrix, best));
    text.push_str(&price_open(options, matrix, best));
    text.push_str(&left_open(options, matrix, &[*best]));
    text
}

/// Which vehicles get no safe lock with a choice, and what is not known of it: neither must be
/// overlooked where a lift is named.
fn left_open(options: &Options, matrix: &Matrix, best: &[Candidate]) -> String {
    let of: Vec<(Vec<String>, Vec<String>, Vec<&str>)> = best
        .iter()
        .map(|one| {
            let cells = || {
                matrix.cells.iter().filter(|cell| {
                    let pick = cell.pick;
                    (pick.garage, pick.change, pick.lift)
                        == (one.pick.garage, one.pick.change, one.pick.lift)
                })
            };
            let is_safe = |cell: &Cell| {
                let found = cell.found();
                found.is_some_and(|found| found.verdict.highest_safe_lock.is_some())
            };
            let no_answer = cells().filter(|cell| cell.found().is_none());
            let without = cells().filter(|cell| cell.found().is_some() && !is_safe(cell));
            let unknown = Topic::ALL.into_iter().filter(|topic| {
                topic.withholds()
                    && cells()
                        .filter(|cell| is_safe(cell))
                        .filter_map(Cell::found)
                        .any(|found| found.standing(*topic) == Standing::Unknown)
            });
            let name = |cell: &Cell| vehicle(options, cell.pick);
            (
                no_answer.map(name).collect(),
                without.map(name).collect(),
                unknown.map(Topic::not_known).collect(),
            )
        })
        .collect();
    let mut text = String::new();
    for (index, (no_answer, without, unknown)) in of.iter().enumerate() {
        let is_told = of[..index].contains(&of[index]);
        if is_told {
            continue;
        }
        let is_one = of.iter().all(|other| other == &of[0]);
        let with = if is_one {
            String::new()
        } else {
            format!(" with {}", candidate(options, best[index].pick))
        };
        if !no_answer.is_empty() {
            text.push_str(&format!(
                " Could not be studied{with}, and counts for nothing here: {}.",
                list(no_answer)
            ));
        }
        if !without.is_empty() {
            text.push_str(&format!(" No safe lock{with}: {}.", list(without)));
        }
        if !unknown.is_empty() {
            text.push_str(&format!(
                " Not known{with}, and no pass: {}.",
                list(unknown)
            ));
        }
    }
    text
}

/// The best without a change, where the choice takes one.
fn without_change(options: &Options, matrix: &Matrix, best: &Candidate) -> String {
    let Some(nothing) = options.changes.iter().position(Change::is_as_it_is) else {
        return String::new();
    };
    if best.pick.change == nothing {
        return String::new();
    }
    let all = candidates(matrix).into_iter();
    let as_it_is = all.filter(|one| one.pick.change == nothing).collect();
    let first = match among(as_it_is) {
        Choice::None => {
            let name = named(
                options,
                crate::bayfile::options::Pick {
                    change: nothing,
                    ..best.pick
                },
                List::Changes,
            );
            return name.map_or_else(String::new, |name| format!(" With {name} no lock is safe."));
        }
        Choice::One { best, .. } => Some((best, "the best is")),
        Choice::Equal { best, .. } => best.first().map(|best| (*best, "one of the best is")),
    };
    let Some((first, is)) = first else {
        return String::new();
    };
    let Some(height) = height(options, matrix, &first) else {
        return String::new();
    };
    format!(
        " Without that {is} {}: {} ({height}).",
        candidate(options, first.pick),
        serves(&first)
    )
}

/// Why the first vehicle gets no safe lock.
fn why_none(matrix: &Matrix, of: &Candidate) -> Option<String> {
    let found = cell(matrix, of)?.found()?;
    why_not_safe(&found.bay, &found.verdict)
}

/// A candidate in a list of several: of one lift that is listed nowhere only what differs.
fn listed(options: &Options, of: &Candidate) -> String {
    let name = candidate(options, of.pick);
    let bare = name
        .strip_prefix("the lift (")
        .and_then(|rest| rest.strip_suffix(')'))
        .filter(|_| named(options, of.pick, List::Lifts).is_none());
    bare.map_or_else(|| name.clone(), Into::into)
}

fn equal(options: &Options, matrix: &Matrix, best: &[Candidate], price_is_missing: bool) -> String {
    let names: Vec<String> = best.iter().map(|one| listed(options, one)).collect();
    let Some(first) = best.first() else {
        return String::new();
    };
    let is_unasked = unasked(matrix);
    let pair = if names.len() == 2 { "two" } else { "best" };
    let parted = if price_is_missing && !is_unasked {
        "can't be parted"
    } else {
        "are equal"
    };
    let mut text = format!(
        "The {pair} {parted}: {}. {}",
        list(&names),
        sentence(&if names.len() > 1 {
            format!("with each {}", serves(first))
        } else {
            serves(first)
        })
    );
    if let Some(height) = height(options, matrix, first) {
        text.push_str(&format!(" ({height}"));
        if let Some(show) = show_of(matrix, first) {
            text.push_str(&format!(
                "; heights that differ by less than {} count as equal",
                show.need(AS_HIGH_M)
            ));
        }
        text.push(')');
    }
    text.push('.');
    if is_unasked {
        text.push_str(" No price is given.");
    } else if price_is_missing {
        text.push_str(" The price does not part them while prices are missing:");
        for (index, one) in best.iter().enumerate() {
            let end = if index + 1 == best.len() { "." } else { ";" };
            let open: Vec<&str> = one.open_work().map(Work::words).collect();
            let open = if open.is_empty() {
                String::new()
            } else {
                format!(" (open: {})", list(&open))
            };
            let known = one.at_least.show(&options.currency);
            text.push_str(&format!(" {} {known}{open}{end}", listed(options, one)));
        }
        text.push_str(&dearer_than_it_looks(options, matrix, first));
        text.push_str(&cheapest(options, matrix, first, best.get(1)));
    } else if let Some(total) = first.total {
        text.push_str(&format!(
            " Each costs {} in all.",
            total.show(&options.currency)
        ));
        text.push_str(&cheapest(options, matrix, first, None));
    }
    text.push_str(&left_open(options, matrix, best));
    text
}

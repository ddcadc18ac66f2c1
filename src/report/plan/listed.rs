//! Which lines does the page before buying have, whatever it is written on?

use super::items::NO_FIGURE;
use super::space::STUDY;
use super::{Item, Plan, State, Step};
use crate::report::words::sentence;

/// The heading of everything around the lift.
const AROUND: &str = "Permission, power, heaters, delivery, hands, tools, inspection";

/// Lines under one heading, or going on under the one before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Block {
    /// None where it goes on under the heading before.
    pub heading: Option<&'static str>,
    /// How each line stands, and what it says.
    pub lines: Vec<(State, String)>,
    /// Where its figures come from, each source once; those of space and rise, which are the study's
    /// own, are left out.
    pub sources: Vec<String>,
}

/// The lines of the page, in the order a person meets them. Of what is not known of one section at
/// most `most_named` are named, and the rest counted.
#[must_use]
pub fn blocks(plan: &Plan, most_named: usize) -> Vec<Block> {
    let steps = plan.items.chunk_by(|a, b| a.step == b.step);
    steps
        .map(|step| Block {
            // The steps from permission on name themselves in their items.
            heading: if step[0].step < Step::Permission {
                Some(step[0].step.heading())
            } else {
                (step[0].step == Step::Permission).then_some(AROUND)
            },
            lines: rows(step, most_named),
            sources: sources(&step.iter().collect::<Vec<_>>())
                .into_iter()
                .filter(|source| *source != STUDY)
                .map(str::to_owned)
                .collect(),
        })
        .collect()
}

/// The items of a step. What is not known or a plain go is named on one row for each state, a
/// section on a row with what is not known of it; each stop and what has a figure has its own.
fn rows(items: &[Item], most_named: usize) -> Vec<(State, String)> {
    let mut rows = Vec::with_capacity(items.len());
    let mut folded: [Vec<&Item>; 2] = [Vec::new(), Vec::new()];
    for of_one in items.chunk_by(|a, b| a.section.is_some() && a.section == b.section) {
        let [head, rest @ ..] = of_one else {
            continue;
        };
        if head.section.is_some() {
            rows.push((head.state, of_section(head, rest, most_named)));
            let stops = rest.iter().filter(|item| item.state == State::Stop);
            rows.extend(stops.map(row));
            continue;
        }
        match (head.state, head.figure == NO_FIGURE) {
            (State::Unknown, true) => folded[0].push(head),
            (State::Go, _) if head.step != Step::Rise => folded[1].push(head),
            _ => rows.push(row(head)),
        }
    }
    for items in folded {
        let (Some(first), n) = (items.first(), items.len()) else {
            continue;
        };
        rows.push(if n == 1 {
            row(first)
        } else {
            several(first, &items)
        });
    }
    rows
}

/// A section: its first sentence, and what is not known of it.
fn of_section(head: &Item, rest: &[Item], most_named: usize) -> String {
    let unknown: Vec<&str> = rest
        .iter()
        .filter(|item| item.state == State::Unknown)
        .map(|item| item.what.as_str())
        .collect();
    let says = format!("{}: {}", head.what, first_sentence(&head.figure));
    match unknown.len() {
        0 => says,
        n if n <= most_named => format!("{says} Not known: {}.", unknown.join("; ")),
        n => format!(
            "{says} Not known: {}; and {} more.",
            unknown[..most_named].join("; "),
            n - most_named
        ),
    }
}

/// Up to the first full stop that a capital follows.
fn first_sentence(text: &str) -> &str {
    let ends = text.match_indices(". ").map(|(at, _)| at + 1);
    let mut ends = ends.filter(|&at| text[at + 1..].starts_with(char::is_uppercase));
    ends.next().map_or(text, |at| &text[..at])
}

/// Several that stand alike, and what to do where it is the same for all of them.
fn several(first: &Item, items: &[&Item]) -> (State, String) {
    let names: Vec<String> = items
        .iter()
        .map(|item| match item.figure.as_str() {
            NO_FIGURE | "at hand" => item.what.clone(),
            figure => format!("{} ({figure})", item.what),
        })
        .collect();
    let mut text = names.join("; ");
    if !first.to_do.is_empty() && items.iter().all(|item| item.to_do == first.to_do) {
        text = format!("{text}. {}", first.to_do);
    }
    let mut sources = sources(items);
    sources.retain(|source| *source != STUDY);
    if first.state != State::Unknown && !sources.is_empty() {
        text = format!("{text} [{}]", sources.join("; "));
    }
    (first.state, text)
}

/// Each source once.
fn sources<'a>(items: &[&'a Item]) -> Vec<&'a str> {
    let mut sources: Vec<&str> = Vec::new();
    for item in items {
        if !item.source.is_empty() && !sources.contains(&item.source.as_str()) {
            sources.push(&item.source);
        }
    }
    sources
}

fn row(item: &Item) -> (State, String) {
    let mut text = item.what.clone();
    if !item.figure.is_empty() && item.figure != NO_FIGURE {
        text = format!("{text}: {}", item.figure.trim_end_matches('.'));
    }
    if !item.to_do.is_empty() {
        text = format!("{text}. {}", sentence(item.to_do.trim_end_matches('.')));
    }
    if !item.source.is_empty() && item.source != STUDY && item.state != State::Unknown {
        text = format!("{text} [{}]", item.source);
    }
    (item.state, text)
}

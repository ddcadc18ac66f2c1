//! How is the page before buying set?

use super::space::STUDY;
use super::{Item, Plan, State, Step};
use crate::report::text::Look;
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::words::{count, plain, sentence};
use crate::report::{CAUTIONS, Report};

/// So many of what is not known of a section are named.
const MOST_NAMED: usize = 4;

/// The heading of everything around the lift.
const AROUND: &str = "Permission, power, heaters, delivery, hands, tools, inspection";

/// The whole page, ending with a line break.
#[must_use]
pub fn render(report: &Report<'_>, plan: &Plan, look: Look) -> String {
    let mut page = Page::new(look);
    let bay = report.bay;
    page.para_toned("Before you buy", Tone::Strong);
    page.para_toned(
        &format!(
            "{}: {} on {}",
            plain(&bay.title),
            plain(&bay.vehicle.name),
            plain(&bay.lift.name)
        ),
        Tone::Quiet,
    );
    page.gap();
    page.para_toned(&summary(plan), tone_of_all(plan));
    for step in plan.items.chunk_by(|a, b| a.step == b.step) {
        // The steps from permission on name themselves in their items.
        if step[0].step < Step::Permission {
            page.para_toned(step[0].step.heading(), Tone::Strong);
        } else if step[0].step == Step::Permission {
            page.para_toned(AROUND, Tone::Strong);
        }
        page.rows(&rows(step));
    }
    page.gap();
    page.para_toned(
        &format!(
            "Space and rise are by {STUDY}. What is not known of a section, and the source of each \
             of its figures: `bayrise check`.",
        ),
        Tone::Quiet,
    );
    page.heading("Caution");
    page.para(&CAUTIONS.join(" "));
    page.gap();
    page.para_toned(
        &format!(
            "Bayrise {}, input {}",
            env!("CARGO_PKG_VERSION"),
            report.fingerprint
        ),
        Tone::Quiet,
    );
    page.finish()
}

/// The items of a step. What is not known or a plain go is named on one row for each state, a
/// section on a row with what is not known of it; each stop and what has a figure has its own.
fn rows(items: &[Item]) -> Vec<[Cell; 2]> {
    let mut rows = Vec::with_capacity(items.len());
    let mut folded: [Vec<&Item>; 2] = [Vec::new(), Vec::new()];
    for of_one in items.chunk_by(|a, b| a.section.is_some() && a.section == b.section) {
        let [head, rest @ ..] = of_one else {
            continue;
        };
        if head.section.is_some() {
            rows.push([state(head.state), of_section(head, rest).into()]);
            let stops = rest.iter().filter(|item| item.state == State::Stop);
            rows.extend(stops.map(row));
            continue;
        }
        match (head.state, head.figure.is_empty()) {
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
fn of_section(head: &Item, rest: &[Item]) -> String {
    let unknown: Vec<&str> = rest
        .iter()
        .filter(|item| item.state == State::Unknown)
        .map(|item| item.what.as_str())
        .collect();
    let says = format!("{}: {}", head.what, first_sentence(&head.figure));
    match unknown.len() {
        0 => says,
        n if n <= MOST_NAMED => format!("{says} Not known: {}.", unknown.join("; ")),
        n => format!(
            "{says} Not known: {}; and {} more.",
            unknown[..MOST_NAMED].join("; "),
            n - MOST_NAMED
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
fn several(first: &Item, items: &[&Item]) -> [Cell; 2] {
    let names: Vec<String> = items
        .iter()
        .map(|item| match item.figure.as_str() {
            "" | "at hand" => item.what.clone(),
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
    [state(first.state), text.into()]
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

/// The sentence on top.
pub(super) fn summary(plan: &Plan) -> String {
    let (stops, unknown, go) = (
        plan.count(State::Stop),
        plan.count(State::Unknown),
        plan.count(State::Go),
    );
    let counts = format!(
        "{} to cure, {} not known yet, {go} go",
        count(stops, "stop"),
        count(unknown, "item")
    );
    match (stops, unknown) {
        (0, 0) => format!("Everything that this page asks is a go ({go} items)."),
        (0, _) => format!("Not yet: {counts}."),
        _ => format!("Don't buy yet: {counts}."),
    }
}

fn tone_of_all(plan: &Plan) -> Tone {
    if plan.count(State::Stop) > 0 {
        Tone::Bad
    } else if plan.is_go() {
        Tone::Good
    } else {
        Tone::Poor
    }
}

fn state(state: State) -> Cell {
    let tone = match state {
        State::Go => Tone::Good,
        State::Stop => Tone::Bad,
        State::Unknown => Tone::Poor,
        State::Noted => Tone::Plain,
    };
    Cell::toned(state.word(), tone)
}

fn row(item: &Item) -> [Cell; 2] {
    let mut text = item.what.clone();
    if !item.figure.is_empty() {
        text = format!("{text}: {}", item.figure.trim_end_matches('.'));
    }
    if !item.to_do.is_empty() {
        text = format!("{text}. {}", sentence(item.to_do.trim_end_matches('.')));
    }
    if !item.source.is_empty() && item.source != STUDY && item.state != State::Unknown {
        text = format!("{text} [{}]", item.source);
    }
    [state(item.state), text.into()]
}

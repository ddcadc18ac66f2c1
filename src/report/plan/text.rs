//! How is the page before buying set?

use super::{Item, Plan, State, Step};
use crate::report::text::Look;
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::words::{count, plain};
use crate::report::{CAUTIONS, Report};

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
    let mut last = None::<Step>;
    let mut rows: Vec<[Cell; 3]> = Vec::new();
    for item in &plan.items {
        if last != Some(item.step) {
            flush(&mut page, &mut rows);
            page.heading(item.step.heading());
            last = Some(item.step);
        }
        rows.push(row(item));
    }
    flush(&mut page, &mut rows);
    page.heading("Caution");
    for caution in CAUTIONS {
        page.item(caution);
    }
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

fn flush(page: &mut Page, rows: &mut Vec<[Cell; 3]>) {
    if !rows.is_empty() {
        page.rows(rows);
        rows.clear();
    }
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

fn row(item: &Item) -> [Cell; 3] {
    let tone = match item.state {
        State::Go => Tone::Good,
        State::Stop => Tone::Bad,
        State::Unknown => Tone::Poor,
        State::Noted => Tone::Plain,
    };
    let mut parts = Vec::new();
    if !item.figure.is_empty() {
        parts.push(item.figure.trim_end_matches('.').to_owned());
    }
    if !item.to_do.is_empty() {
        parts.push(item.to_do.trim_end_matches('.').to_owned());
    }
    let mut text = parts.join(". ");
    if !item.source.is_empty() {
        text = format!("{text} [{}]", item.source).trim_start().into();
    }
    [
        Cell::toned(item.state.word(), tone),
        item.what.as_str().into(),
        text.into(),
    ]
}

//! How is the page before buying set?

use super::space::STUDY;
use super::{Plan, State, blocks};
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::text::{Look, day};
use crate::report::words::{count, plain};
use crate::report::{AS_FILED, CAUTIONS, Report};

/// So many of what is not known of a section are named.
const MOST_NAMED: usize = 4;

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
    day::write(report, &mut page);
    page.gap();
    page.para_toned(&summary(plan), tone_of_all(plan));
    if !plan.not_measured.is_empty() {
        page.heading("Not measured");
        page.para_toned(AS_FILED, Tone::Bad);
        for name in &plan.not_measured {
            page.item(name);
        }
        page.gap();
    }
    for block in blocks(plan, MOST_NAMED) {
        if let Some(heading) = block.heading {
            page.para_toned(heading, Tone::Strong);
        }
        let rows = block.lines.into_iter();
        let rows: Vec<[Cell; 2]> = rows.map(|(how, says)| [state(how), says.into()]).collect();
        page.rows(&rows);
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

/// The sentence on top.
pub(crate) fn summary(plan: &Plan) -> String {
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

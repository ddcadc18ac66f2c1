//! The report a person reads: the verdict first, in sentences, then what it stands on.

pub(super) mod day;
mod doors;
mod estimate;
mod locks;
mod margins;
mod marks;
mod needs;
pub(super) mod not_measured;
mod opening;
pub(in crate::report) mod page;
mod room;
mod sections;
mod verdict;
mod why;

pub use page::{Block, Look, Tone};

pub(super) use page::Page;

pub(super) use marks::shut_off_bar;
pub(super) use verdict::{headline, lead, lead_with, limits, nominal, unknown};
pub(super) use why::{why_not_clear, why_not_safe, why_not_safe_among};

use super::words::plain;
use super::{CAUTIONS, Report, Show};

/// The whole report, ending with a line break.
#[must_use]
pub fn render(report: &Report<'_>, look: Look) -> String {
    let mut page = Page::new(look);
    let bay = report.bay;
    page.para_toned(&plain(&bay.title), Tone::Strong);
    page.para_toned(
        &format!("{} on {}", plain(&bay.vehicle.name), plain(&bay.lift.name)),
        Tone::Quiet,
    );
    day::write(report, &mut page);
    page.gap();
    body(report, &mut page);
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

/// The same piece by piece, without title and version: the verdict up to the first heading, then a
/// heading and what belongs to it, again and again.
#[must_use]
pub fn blocks(report: &Report<'_>) -> Vec<Block> {
    let mut page = Page::of_blocks();
    body(report, &mut page);
    page.into_blocks()
}

fn body(report: &Report<'_>, page: &mut Page) {
    verdict::write(report, page);
    needs::write(report, page);
    not_measured::write(report, page);
    cautions(page);
    marks::write(report, page);
    locks::write(report, page);
    estimate::write(report, page);
    doors::write(report, page);
    room::write(report, page);
    opening::write(report, page);
    sections::write(report, page);
    margins::write(report, page);
    warnings(report, page);
}

fn cautions(page: &mut Page) {
    page.heading("Caution");
    for caution in CAUTIONS {
        page.item(caution);
    }
}

fn warnings(report: &Report<'_>, page: &mut Page) {
    if report.warnings.is_empty() {
        return;
    }
    page.heading("Noticed in the file");
    for warning in report.warnings {
        let mut text = plain(&warning.message);
        if let Some(place) = &warning.place {
            text = format!("{}: {text}", plain(place));
        }
        if let Some(help) = &warning.help {
            text = format!("{text}; {}", plain(help));
        }
        page.item(&text);
    }
}

/// How lengths of this report are shown.
const fn show(report: &Report<'_>) -> Show {
    Show {
        units: report.bay.units,
    }
}

#[cfg(test)]
mod tests;

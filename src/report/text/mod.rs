//! The report a person reads: the verdict first, in sentences, then what it stands on.

mod doors;
mod estimate;
mod locks;
mod margins;
mod marks;
mod needs;
mod opening;
pub(in crate::report) mod page;
mod room;
mod sections;
mod verdict;
mod why;

pub use page::Look;

pub(super) use page::Page;

pub(super) use marks::shut_off_bar;
pub(super) use verdict::{headline, lead, limits, nominal, unknown};
pub(super) use why::{why_not_clear, why_not_safe};

use page::Tone;

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
    page.gap();
    verdict::write(report, &mut page);
    needs::write(report, &mut page);
    cautions(&mut page);
    marks::write(report, &mut page);
    locks::write(report, &mut page);
    estimate::write(report, &mut page);
    doors::write(report, &mut page);
    room::write(report, &mut page);
    opening::write(report, &mut page);
    sections::write(report, &mut page);
    margins::write(report, &mut page);
    warnings(report, &mut page);
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

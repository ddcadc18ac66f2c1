//! Was what the caller asked met, and if not, by how much is it missed?

use super::page::{Page, Tone};
use super::{Report, Show, show};
use crate::report::words::count;
use crate::report::{Need, NeedFinding, Short};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    for finding in report.needs {
        let tone = if finding.is_met() {
            Tone::Good
        } else {
            Tone::Bad
        };
        page.para_toned(&words(finding, show(report)), tone);
    }
}

fn words(finding: &NeedFinding, show: Show) -> String {
    let asked = match finding.need {
        Need::Lock(lock) => format!("lock {lock}"),
        Need::Underbody(height) => format!("{} under the body", show.need(height.m())),
    };
    match finding.short {
        None => format!("Asked for {asked}: met."),
        Some(Short::NoSafeLock) => format!("Asked for {asked}: not met, no lock is safe."),
        Some(Short::Locks(n)) => format!("Asked for {asked}: not met, {} short.", count(n, "lock")),
        Some(Short::OnlySoMany(n)) => format!(
            "Asked for {asked}: not met, this lift has only {}.",
            count(n, "lock")
        ),
        Some(Short::Height(by)) => {
            format!("Asked for {asked}: not met, {} short.", show.need(by.m()))
        }
    }
}

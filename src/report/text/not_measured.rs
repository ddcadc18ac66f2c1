//! What of the file is not measured, all of it?

use super::Report;
use super::page::{Page, Tone};
use crate::report::not_measured::{AS_FILED, names};

pub(in crate::report) fn write(report: &Report<'_>, page: &mut Page) {
    let what = report.study.not_measured();
    if what.is_empty() {
        return;
    }
    page.heading("Not measured");
    page.para_toned(AS_FILED, Tone::Bad);
    for name in names(what) {
        page.item(&name);
    }
}

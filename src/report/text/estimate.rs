//! How often is each lock clear in sampled worlds?

use super::page::{Cell, Page};
use super::{Report, show};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let Some(estimate) = &report.study.estimate else {
        return;
    };
    let show = show(report);
    page.heading("How often a lock is clear: an estimate beside the worst case, not the verdict");
    let mut rows: Vec<[Cell; 3]> = Vec::new();
    for (share, lock) in estimate.locks.iter().zip(&report.study.locks).rev() {
        // The ends of the interval are rounded outward, and no sample shows a certainty.
        let low = (share.low * 1000.0).floor() / 10.0;
        let high = ((share.high * 1000.0).ceil() / 10.0).min(99.9);
        rows.push([
            lock.lock.to_string().into(),
            show.room(lock.pad_height_m).into(),
            format!(
                "{} of {}: {low:.1} % to {high:.1} %",
                share.clear, estimate.samples
            )
            .into(),
        ]);
    }
    page.table(["lock", "pads at", "clear, with its 95 % interval"], &rows);
    page.para(&format!(
        "{} worlds drawn evenly inside the uncertainty, each error on its own, seed {}.",
        estimate.samples, estimate.seed
    ));
}

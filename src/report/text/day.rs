//! Which day is the answer for?

use super::Report;
use super::page::{Page, Tone};
use crate::ground::ForDay;
use crate::report::{counted_to, holds_only_from};

/// Under the title; nothing where no day counts.
pub(in crate::report) fn write(report: &Report<'_>, page: &mut Page) {
    of(report.day, page);
}

/// The same of any answer.
pub(in crate::report) fn of(day: Option<ForDay>, page: &mut Page) {
    let Some(day) = day else { return };
    if let Some(words) = holds_only_from(day) {
        page.para_toned(&format!("{words}."), Tone::Strong);
    } else if let Some(words) = counted_to(day) {
        let mut letters = words.chars();
        let first = letters.next().map(|one| one.to_ascii_uppercase());
        let words: String = first.into_iter().chain(letters).collect();
        page.para_toned(&format!("{words}."), Tone::Quiet);
    }
}

//! Which day does an answer hold for, in words?

use crate::ground::ForDay;

/// "ages counted to 2026-11-29"; none where nothing that is said hangs on a day.
#[must_use]
pub fn counted_to(day: ForDay) -> Option<String> {
    day.counts.then(|| format!("ages counted to {}", day.on))
}

/// The same for a line with other things on it: with a dot before it, or nothing.
#[must_use]
pub fn counted_to_in_line(day: ForDay) -> String {
    counted_to(day).map_or_else(String::new, |words| format!(" \u{b7} {words}"))
}

/// What must stand on top of an answer for a day that someone asked for: it is none for an earlier one.
#[must_use]
pub fn holds_only_from(day: ForDay) -> Option<String> {
    (day.asked && day.counts).then(|| format!("Holds from {} only; not before", day.on))
}

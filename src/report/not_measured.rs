//! What does every output say of a file in which something is not measured?
//!
//! The reason to withhold names the first few things only, since it stands in sentences; each output
//! names all of them once.

use super::words::plain;

/// What is to be known of every figure then.
pub const AS_FILED: &str = "Every figure here is that of the file as it is: as filed, not measured. None \
     of them allows anything: raise nothing, set no mark, drill nothing and run no door by them.";

/// Everything that is not measured, each in the words of the file on one line; empty where nothing
/// is listed.
pub(super) fn names(what: &[String]) -> Vec<String> {
    what.iter().map(|one| plain(one)).collect()
}

/// The same in one sentence that starts in capitals; none where nothing is listed.
#[must_use]
pub fn not_measured(what: &[String]) -> Option<String> {
    (!what.is_empty()).then(|| format!("NOT MEASURED: {}.", names(what).join("; ")))
}

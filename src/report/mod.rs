//! What does a person, or a program, get to read of a finished study?
//!
//! Presenters see finished findings only: nothing here works out a clearance, a load or a verdict.
//! What they do choose is wording, order and the direction in which a shown number is rounded, and
//! that is always against the vehicle.

pub mod asbuilt;
pub mod catalogue;
mod cautions;
pub mod compare;
mod day;
mod fingerprint;
pub mod json;
mod lengths;
mod names;
mod needs;
mod not_measured;
pub mod plan;
mod reasons;
#[cfg(test)]
mod sample;
mod sayings;
mod section;
pub mod text;
mod words;

pub use cautions::{CAUTIONS, GOING_UNDER, IN_A_PICTURE};
pub use day::{counted_to, counted_to_in_line, holds_only_from};
pub use fingerprint::fingerprint;
pub use lengths::Show;
pub use needs::{Need, NeedFinding, Short, judge};
pub use not_measured::{AS_FILED, not_measured};
pub use sayings::{Sayings, are_alike, called, counted, on_one_line, short_name};
pub(crate) use words::{met_before_the_bar, relation};

use crate::bay::Bay;
use crate::clearance::Study;
use crate::ground::ForDay;

/// Why no lock is called safe, in one sentence that starts in lower case and has no full stop;
/// none when one is safe.
#[must_use]
pub fn why_not_safe(bay: &Bay, study: &Study) -> Option<String> {
    text::why_not_safe(&Report {
        bay,
        study,
        warnings: &[],
        needs: &[],
        fingerprint: "",
        day: None,
    })
}

/// Everything a presenter is given.
#[derive(Debug, Clone, Copy)]
pub struct Report<'a> {
    /// The bay that was studied.
    pub bay: &'a Bay,
    /// What was found.
    pub study: &'a Study,
    /// What was noticed while the file was read.
    pub warnings: &'a [Warning],
    /// What the caller asked of the bay, and whether it is met.
    pub needs: &'a [NeedFinding],
    /// Sixteen hex digits that stand for what went in, see [`fingerprint`].
    pub fingerprint: &'a str,
    /// The day that the answer is for; none where none is told.
    pub day: Option<ForDay>,
}

impl Report<'_> {
    /// The day that ages are counted to, for a program; none where nothing hangs on a day.
    fn counted_to(&self) -> Option<String> {
        let day = self.day.filter(|day| day.counts)?;
        Some(day.on.to_string())
    }
}

/// Something noticed while the file was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Warning {
    /// Where, as `file:line:column`; none when the whole file is meant.
    pub place: Option<String>,
    /// What.
    pub message: String,
    /// What to write instead.
    pub help: Option<String>,
}

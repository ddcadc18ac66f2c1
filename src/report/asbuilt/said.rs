//! What stands against a safe lock, in words: what it is, and its cure.

use super::AsBuiltReport;
use super::moves::post;
use crate::asbuilt::{Finding, Planned};

impl AsBuiltReport<'_> {
    /// A tape reading by its place in the list, in words.
    pub(super) fn tape(&self, at: usize) -> String {
        self.measured
            .tape
            .get(at)
            .map(|taken| Planned::says(taken.over))
            .unwrap_or_default()
    }

    /// What it is, and what to do about it; both start in lower case and have no full stop.
    pub(super) fn says(&self, finding: Finding) -> (String, String) {
        let read = |at: usize| self.built.readings.get(at);
        match finding {
            Finding::Misfit(at) => {
                let values = read(at).map_or_else(String::new, |one| {
                    format!(
                        ": read as {}, by the others {}",
                        self.length(one.reading_m),
                        self.length(one.fitted_m)
                    )
                });
                (
                    format!(
                        "the reading {} does not fit the others{values}",
                        self.tape(at)
                    ),
                    "take this reading again; the places here are without it".into(),
                )
            }
            Finding::Suspect(at) => (
                format!(
                    "the reading {} is as likely to be the wrong one",
                    self.tape(at)
                ),
                "take it again too".into(),
            ),
            Finding::Unchecked(at) => (
                format!(
                    "no other reading checks {}: a slip in it would not show",
                    self.tape(at)
                ),
                "add a diagonal, or the same distance at another corner".into(),
            ),
            Finding::PlumbNotRead(side, across) => (
                format!(
                    "the {}'s plumb {} was not read",
                    post(side),
                    if across {
                        "across the bay"
                    } else {
                        "along the bay"
                    }
                ),
                "plumb it on that face and add it to `plumb`".into(),
            ),
            Finding::NoPlumbLimit => (
                "how far out of plumb the manual lets a column be is not given".into(),
                "write it from the manual as `plumb_limit` of the lift, over the column's height"
                    .into(),
            ),
            Finding::OutOfPlumb(side, out, limit) => (
                format!(
                    "the {} leans {} over its height, and the manual lets it lean {}",
                    post(side),
                    self.at_most(out),
                    self.length(limit)
                ),
                "shim it plumb as below, and plumb it again".into(),
            ),
            Finding::MaybeOutOfPlumb(side, out, limit) => (
                format!(
                    "the {} may lean as much as {} over its height, for the \u{b1} of its readings, \
                     and the manual lets it lean {}",
                    post(side),
                    self.at_most(out),
                    self.length(limit)
                ),
                "plumb it over more of its height or with a finer level, or shim it".into(),
            ),
            Finding::NoShimLimit => (
                "how high the manual lets shims be is not given".into(),
                "write it from the manual as `shim_limit` of the lift".into(),
            ),
            Finding::ShimsTooHigh(at, high, limit) => (
                format!(
                    "the shims at {} would be {} high, and the manual lets them be {}",
                    at.letters(),
                    self.at_most(high),
                    self.length(limit)
                ),
                "ask the lift's maker: the floor or the place has to change".into(),
            ),
            Finding::NotLevelled => (
                "how much higher one post stands than the other is not known".into(),
                "level the floor at all eight corners and add it to `levels`".into(),
            ),
        }
    }
}

//! What was found, what is asked of it, and how does it stand?

use std::borrow::Cow;

use glam::DVec3;

use super::{Quantity, Said};
use crate::units::Rounding;

/// How a figure stands. What is not known is no pass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// For information; nothing is asked of it.
    Noted,
    /// What is asked of it holds.
    Passes,
    /// It could not be worked out, or what is asked is not known.
    Unknown,
    /// It does not hold: no lock is called safe before it is cured.
    Stops,
}

impl Standing {
    /// The words shown for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Noted => "",
            Self::Passes => "holds",
            Self::Unknown => "not known",
            Self::Stops => "stop",
        }
    }
}

/// Which side of its limit a figure must lie on; lying on the limit passes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// The figure may be at most the limit: a load.
    AtMost,
    /// The figure must be at least the limit: room, a thickness.
    AtLeast,
}

/// One figure of a section.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// A stable name for programs, unique in its section: `pad_load.front_left`.
    pub id: Cow<'static, str>,
    /// What it is, in a few words that start in lower case.
    pub what: Cow<'static, str>,
    /// What was found; none when it could not be worked out.
    pub found: Option<Quantity>,
    /// What is asked of it.
    pub limit: Option<(Bound, Quantity)>,
    /// How it stands.
    pub standing: Standing,
    /// Which way a figure without a limit is rounded when shown; one with a limit is always
    /// rounded against itself.
    pub rounding: Rounding,
    /// Document, edition and section, or whose word it is.
    pub source: Option<Cow<'static, str>>,
    /// What else must be known of it.
    pub note: Option<Said>,
    /// What would cure a stop, or how to get what is not known; starts in lower case, no full
    /// stop.
    pub cure: Option<Cow<'static, str>>,
    /// Its place in the bay, metres, where it has one: for marks in the window and on drawings.
    pub at_m: Option<DVec3>,
    /// A stop in a sentence of its own; none: made from what, found and limit. Starts in lower
    /// case, no full stop.
    pub reason: Option<Said>,
    /// True where another reason to withhold already tells this stop: it gives no second one.
    pub told: bool,
}

impl Figure {
    /// A figure that nothing is asked of.
    #[must_use]
    pub fn noted(
        id: impl Into<Cow<'static, str>>,
        what: impl Into<Cow<'static, str>>,
        found: Quantity,
    ) -> Self {
        Self {
            id: id.into(),
            what: what.into(),
            found: Some(found),
            limit: None,
            standing: Standing::Noted,
            rounding: Rounding::Nearest,
            source: None,
            note: None,
            cure: None,
            at_m: None,
            reason: None,
            told: false,
        }
    }

    /// A figure that must keep a limit. What is no number does not keep it.
    #[must_use]
    pub fn judged(
        id: impl Into<Cow<'static, str>>,
        what: impl Into<Cow<'static, str>>,
        found: Quantity,
        bound: Bound,
        limit: Quantity,
    ) -> Self {
        let holds = match (found.number(), limit.number(), bound) {
            (Some(found), Some(limit), Bound::AtMost) => found <= limit,
            (Some(found), Some(limit), Bound::AtLeast) => found >= limit,
            _ => match (&found, &limit, bound) {
                (Quantity::Day(found), Quantity::Day(limit), Bound::AtMost) => found <= limit,
                (Quantity::Day(found), Quantity::Day(limit), Bound::AtLeast) => found >= limit,
                _ => false,
            },
        };
        Self {
            limit: Some((bound, limit)),
            standing: if holds {
                Standing::Passes
            } else {
                Standing::Stops
            },
            ..Self::noted(id, what, found)
        }
    }

    /// Something that could not be worked out; `how` says how to get it.
    #[must_use]
    pub fn unknown(
        id: impl Into<Cow<'static, str>>,
        what: impl Into<Cow<'static, str>>,
        how: impl Into<Cow<'static, str>>,
    ) -> Self {
        Self {
            id: id.into(),
            what: what.into(),
            found: None,
            limit: None,
            standing: Standing::Unknown,
            rounding: Rounding::Nearest,
            source: None,
            note: None,
            cure: Some(how.into()),
            at_m: None,
            reason: None,
            told: false,
        }
    }

    /// The same figure, not known: a limit that it fails or passes decides nothing. A screening
    /// that fails does so where the maker's manual may allow it.
    #[must_use]
    pub fn undecided(mut self, how: impl Into<Cow<'static, str>>) -> Self {
        self.standing = Standing::Unknown;
        self.cure = Some(how.into());
        self
    }

    /// The same figure, not known where it does not pass.
    #[must_use]
    pub fn undecided_unless_it_passes(self, how: impl Into<Cow<'static, str>>) -> Self {
        if self.standing == Standing::Passes {
            self
        } else {
            self.undecided(how)
        }
    }

    /// Why it stops, as a part of a sentence: starts in lower case, no full stop.
    #[must_use]
    pub fn why(&self) -> Said {
        if let Some(reason) = &self.reason {
            return reason.clone();
        }
        let said = Said::new(self.what.as_ref());
        match (self.found.clone(), self.limit.clone()) {
            (Some(found), Some((Bound::AtMost, limit))) => said
                .and(" is ")
                .up(found)
                .and(" where at most ")
                .down(limit)
                .and(" is asked"),
            (Some(found), Some((Bound::AtLeast, limit))) => said
                .and(" is ")
                .down(found)
                .and(" where at least ")
                .up(limit)
                .and(" is asked"),
            (Some(found), None) => {
                let mut said = said.and(": ");
                said.0.push(super::Part::Quantity(found, self.rounding));
                said
            }
            _ => said,
        }
    }

    /// The same figure, which stops.
    #[must_use]
    pub fn stopping(mut self, cure: impl Into<Cow<'static, str>>) -> Self {
        self.standing = Standing::Stops;
        self.cure = Some(cure.into());
        self
    }

    /// Where it comes from.
    #[must_use]
    pub fn source(mut self, source: impl Into<Cow<'static, str>>) -> Self {
        self.source = Some(source.into());
        self
    }

    /// What else must be known of it.
    #[must_use]
    pub fn note(mut self, note: impl Into<Said>) -> Self {
        self.note = Some(note.into());
        self
    }

    /// What would cure a stop.
    #[must_use]
    pub fn cure(mut self, cure: impl Into<Cow<'static, str>>) -> Self {
        self.cure = Some(cure.into());
        self
    }

    /// A stop in a sentence of its own.
    #[must_use]
    pub fn reason(mut self, reason: impl Into<Said>) -> Self {
        self.reason = Some(reason.into());
        self
    }

    /// A stop that another reason to withhold already tells.
    #[must_use]
    pub const fn told(mut self) -> Self {
        self.told = true;
        self
    }

    /// Its place in the bay, metres.
    #[must_use]
    pub const fn at(mut self, place_m: DVec3) -> Self {
        self.at_m = Some(place_m);
        self
    }

    /// Shown rounded down (room) or up (a load), where it has no limit.
    #[must_use]
    pub const fn rounded(mut self, rounding: Rounding) -> Self {
        self.rounding = rounding;
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_number_holds_nothing() {
        let judged = |found, bound, limit| {
            let (found, limit) = (Quantity::Force(found), Quantity::Force(limit));
            Figure::judged("a", "a", found, bound, limit).standing
        };
        assert_eq!(judged(1.0, Bound::AtMost, 1.0), Standing::Passes);
        assert_eq!(judged(1.1, Bound::AtMost, 1.0), Standing::Stops);
        assert_eq!(judged(0.9, Bound::AtLeast, 1.0), Standing::Stops);
        for bound in [Bound::AtMost, Bound::AtLeast] {
            assert_eq!(judged(f64::NAN, bound, 1.0), Standing::Stops);
            assert_eq!(judged(1.0, bound, f64::NAN), Standing::Stops);
        }
    }
}

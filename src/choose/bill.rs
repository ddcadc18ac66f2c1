//! What does it cost in all, and which prices are missing?
//!
//! What nobody has priced is missing, never nothing.

use crate::bayfile::options::{Money, Options, Pick, Prices, Work};
use crate::clearance::Verdict;
use crate::ground::{Standing, Topic};

/// How it stands with one kind of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Line {
    /// It is paid for.
    Priced(Money),
    /// It is needed, and nobody has said what it costs.
    Missing,
    /// Whether it is needed is not known.
    NotKnown,
    /// It is not needed.
    NotNeeded,
}

/// The whole cost of one combination.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bill {
    lines: [Line; 7],
    /// True where the file gives no price at all.
    pub is_unasked: bool,
}

impl Bill {
    /// How it stands with one kind of work.
    #[must_use]
    pub const fn of(&self, work: Work) -> Line {
        self.lines[work as usize]
    }

    /// The sum of what is priced.
    #[must_use]
    pub fn known(&self) -> Money {
        let priced = |line: &Line| match line {
            Line::Priced(amount) => Some(*amount),
            _ => None,
        };
        self.lines.iter().filter_map(priced).sum()
    }

    /// The sum where nothing is missing.
    #[must_use]
    pub fn total(&self) -> Option<Money> {
        (self.open().next().is_none()).then(|| self.known())
    }

    /// What has no price, or is not known to be needed.
    pub fn open(&self) -> impl Iterator<Item = (Work, Line)> + '_ {
        Work::ALL
            .into_iter()
            .map(|work| (work, self.of(work)))
            .filter(|(_, line)| matches!(line, Line::Missing | Line::NotKnown))
    }
}

/// What the slab needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Pad {
    Needed,
    NotNeeded,
    NotKnown,
}

/// What a pad cures: what stands under these names in the section on the slab.
const CURED_BY_A_PAD: [&str; 4] = ["thickness", "strength", "joint", "crack"];

/// Whether the slab as it is does what is asked of it.
fn pad(verdict: &Verdict) -> Pad {
    let Some(slab) = verdict.section(Topic::Slab) else {
        return Pad::NotKnown;
    };
    let worst = slab
        .figures
        .iter()
        .filter(|figure| CURED_BY_A_PAD.iter().any(|id| figure.id.starts_with(id)))
        .map(|figure| figure.standing)
        .max();
    match worst {
        Some(Standing::Stops) => Pad::Needed,
        Some(Standing::Passes) => Pad::NotNeeded,
        Some(Standing::Unknown | Standing::Noted) | None => Pad::NotKnown,
    }
}

/// What a combination costs.
#[must_use]
pub fn bill(options: &Options, pick: Pick, verdict: &Verdict) -> Bill {
    let chosen = options.chosen(pick);
    let prices = chosen
        .iter()
        .fold(options.prices, |under, choice| under.under(&choice.prices));
    // What a change says is done: its work is needed, whatever the slab is like. A garage is there
    // already.
    let change = chosen[3];
    let needed = |work: Work| change.prices.of(work).is_some();
    let line = |work: Work| prices.of(work).map_or(Line::Missing, Line::Priced);
    let if_needed = |work: Work, is_needed: bool| {
        if is_needed {
            line(work)
        } else {
            Line::NotNeeded
        }
    };
    let lines = Work::ALL.map(|work| match work {
        Work::Lift | Work::Freight | Work::Anchors | Work::Electrics => line(work),
        Work::Pad if needed(work) || change.touches.slab => line(work),
        Work::Pad => match pad(verdict) {
            Pad::Needed => line(work),
            Pad::NotNeeded => Line::NotNeeded,
            Pad::NotKnown => Line::NotKnown,
        },
        Work::Door => if_needed(work, needed(work) || change.touches.door),
        Work::Other => if_needed(work, needed(work) || change.touches.room),
    });
    Bill {
        lines,
        is_unasked: options.prices.is_empty()
            && crate::bayfile::options::List::ALL.into_iter().all(|list| {
                let all: &[_] = options.list(list);
                all.iter().all(|choice| Prices::is_empty(&choice.prices))
            }),
    }
}

//! What does it cost in all, and which prices are missing?
//!
//! What nobody has priced is missing, never nothing.

use crate::bay::Bay;
use crate::bayfile::options::{Choice, Money, Options, Pick, Prices, Touches, Work};
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

/// What pads cure: what stands under these names in the section on the slab.
const CURED_BY_A_PAD: [&str; 4] = ["thickness", "strength", "joint", "crack"];

/// What pads may cure, in the section on the slab: what lies in or under it, where it ends.
const MAYBE_IN_SLAB: [&str; 3] = ["inside", "drilling", "distance"];

/// What pads may cure, in the section on the anchors: they go as deep as the concrete lets them.
const MAYBE_AT_ANCHORS: [&str; 7] = [
    "embedment",
    "edge",
    "cone",
    "pull_out",
    "shear.edge",
    "shear.pry",
    "together",
];

/// Whether the slab as it is does what is asked of it. Where something stops, or is not shown, that
/// thicker concrete might cure, it is not known: an installer may ask for pads yet.
fn pad(verdict: &Verdict) -> Pad {
    // Of a figure's name any part may be the one: how far a joint is off goes by post and by what it is.
    let is_one_of = |id: &str, names: &[&str]| {
        names.contains(&"")
            || id.split('.').any(|part| names.contains(&part))
            || names.contains(&id)
    };
    let worst = |topic: Topic, names: &[&str]| {
        verdict
            .section(topic)?
            .figures
            .iter()
            .filter(|figure| is_one_of(&figure.id, names))
            .map(|figure| figure.standing)
            .filter(|standing| *standing != Standing::Noted)
            .max()
    };
    let slab = worst(Topic::Slab, &CURED_BY_A_PAD);
    if slab == Some(Standing::Stops) {
        return Pad::Needed;
    }
    // Everything in this section is about the concrete under a plate.
    let bearing = worst(Topic::Bearing, &[""]);
    let holds = |standing: Option<Standing>| standing == Some(Standing::Passes);
    let holds_or_is_not_asked =
        |standing: Option<Standing>| standing.is_none_or(|one| one == Standing::Passes);
    let is_enough = holds(slab)
        && holds(bearing)
        && holds(worst(Topic::Anchors, &MAYBE_AT_ANCHORS))
        && holds_or_is_not_asked(worst(Topic::Slab, &MAYBE_IN_SLAB));
    if is_enough {
        Pad::NotNeeded
    } else {
        Pad::NotKnown
    }
}

/// What a combination costs.
///
/// What one of the chosen options lays over the bay, or asks a price for, is work that is done, and
/// its price counts. What garages, lifts, vehicles and changes ask for door work and other work is
/// added up: those are different pieces of work, and one of them without a price leaves the line open.
/// Of everything else the price of the last of them stands; a slab that an option lays asks for that
/// option's own.
#[must_use]
pub fn bill(options: &Options, pick: Pick, bay: &Bay, verdict: &Verdict) -> Bill {
    let chosen = options.chosen(pick);
    let own = chosen
        .iter()
        .fold(Prices::default(), |under, choice| under.and(&choice.prices));
    let prices = options.prices.under(&own);
    let written = written_price(bay.lift.price.as_deref(), &options.currency);
    let line = |work: Work| {
        let price = prices.of(work);
        let price = price.or_else(|| match work {
            Work::Lift => written,
            Work::Other => taken_away(options, pick),
            _ => None,
        });
        price.map_or(Line::Missing, Line::Priced)
    };
    // A garage that is only described is there already: whether work is meant is not known.
    let [garage, others @ ..] = chosen;
    let is_done = |touches: fn(&Touches) -> bool| others.iter().any(|one| touches(&one.touches));
    // Of work that is added up each option that does some asks a price of its own: another's stands
    // for another piece of work. Likewise a slab that an option lays.
    let lacks_its_own = |work: Work, touches: fn(&Touches) -> bool| {
        let lacks = |one: &Choice| touches(&one.touches) && one.prices.of(work).is_none();
        own.of(work).is_some() && others.iter().any(|one| lacks(one))
    };
    let of = |work: Work, touches: fn(&Touches) -> bool| {
        if lacks_its_own(work, touches) {
            match (own.of(work), taken_away(options, pick)) {
                (Some(price), Some(more)) if work == Work::Other => {
                    Line::Priced([price, more].into_iter().sum())
                }
                _ => Line::Missing,
            }
        } else if own.of(work).is_some()
            && touches(&garage.touches)
            && garage.prices.of(work).is_none()
        {
            Line::NotKnown
        } else if own.of(work).is_some() || is_done(touches) {
            line(work)
        } else if touches(&garage.touches) {
            Line::NotKnown
        } else {
            Line::NotNeeded
        }
    };
    let lines = Work::ALL.map(|work| match work {
        Work::Lift | Work::Freight | Work::Anchors | Work::Electrics => line(work),
        Work::Pad if lacks_its_own(work, |touches| touches.slab) => Line::Missing,
        Work::Pad if own.of(work).is_some() || is_done(|touches| touches.slab) => line(work),
        Work::Pad => match pad(verdict) {
            Pad::Needed => line(work),
            Pad::NotNeeded => Line::NotNeeded,
            Pad::NotKnown => Line::NotKnown,
        },
        Work::Door => of(work, |touches| touches.door),
        Work::Other => of(work, |touches| touches.room),
    });
    Bill {
        lines,
        is_unasked: written.is_none()
            && options.prices.is_empty()
            && crate::bayfile::options::List::ALL.into_iter().all(|list| {
                let all: &[_] = options.list(list);
                all.iter().all(|choice| Prices::is_empty(&choice.prices))
            }),
    }
}

/// What it costs to take away all that the options take away, where the bay file gives it.
fn taken_away(options: &Options, pick: Pick) -> Option<Money> {
    let costs = options.taken_away(pick)?;
    costs
        .iter()
        .map(|cost| written_price(Some(cost), &options.currency))
        .sum()
}

/// An amount in a bay file's own words: only where it is nothing but a number with the currency of
/// the comparison.
fn written_price(text: Option<&str>, currency: &str) -> Option<Money> {
    let text = text?.trim();
    let text = text.strip_prefix(currency).unwrap_or(text);
    let text = text.strip_suffix(currency).unwrap_or(text).trim();
    let is_grouped = text
        .split(',')
        .skip(1)
        .all(|group| group.len() >= 3 && group.as_bytes()[..3].iter().all(u8::is_ascii_digit));
    let amount: f64 = text.replace(',', "").parse().ok().filter(|_| is_grouped)?;
    (0.0..=1e8)
        .contains(&amount)
        .then(|| Money::of_number(amount))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_plain_amount_is_a_price() {
        let read = |text| written_price(Some(text), "$");
        assert_eq!(read("$3,250"), Some(Money(325_000)));
        assert_eq!(read("3250.50"), Some(Money(325_050)));
        for text in ["EUR 3250", "about $3000", "3,25", "$3000 and up", "", "-5"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}

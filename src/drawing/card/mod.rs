//! What hangs on the post: how high may each vehicle go, where to stop, and what must be minded?
//!
//! A page for each vehicle in type to be read at arm's length, one with all of them where there are
//! several, and a tape in full size to be cut out. Everything is taken from the studies; where no
//! lock is safe there is no mark, no place on the tape and no setting of the pads.

mod care;
mod come_down;
mod differs;
mod door;
mod edge;
mod meets;
mod overview;
mod pads;
mod parking;
mod same;
mod tape;
mod tape_marks;
#[cfg(test)]
mod tests;
mod usable;
mod vehicle;

use crate::bay::Bay;
use crate::clearance::Study;
use crate::ground::ForDay;
use crate::report::{CAUTIONS, counted_to_in_line, on_one_line};

use super::ahead;
use super::flow::{self, Piece};
use super::sheet::{Frame, Paper, Sheet};

pub(super) use edge::{Edge, joined, written};
pub use same::Difference;
pub(super) use vehicle::why_not;

/// The letters of the alphabet: one for each vehicle.
pub const MOST_VEHICLES: usize = 26;

/// One bay of a card.
#[derive(Debug, Clone, Copy)]
pub struct Entry<'a> {
    /// What it is called where it differs from another: its file.
    pub file: &'a str,
    /// The bay.
    pub bay: &'a Bay,
    /// What was found.
    pub study: &'a Study,
    /// Sixteen hex digits that stand for the texts that went in.
    pub fingerprint: &'a str,
}

/// Why there is no card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CardError {
    /// No bay was given, or more than [`MOST_VEHICLES`].
    Count(usize),
    /// Two of the bays are not of one garage and one lift.
    Differs(Difference),
    /// These two were made of the same texts.
    Twice(String, String),
    /// This page has more to say than the paper has room for.
    TooSmall(&'static str),
}

/// The card: its pages in order, for this day.
///
/// # Errors
/// See [`CardError`].
pub fn card(entries: &[Entry<'_>], day: ForDay, paper: Paper) -> Result<Vec<Sheet>, CardError> {
    let [first, others @ ..] = entries else {
        return Err(CardError::Count(0));
    };
    if entries.len() > MOST_VEHICLES {
        return Err(CardError::Count(entries.len()));
    }
    for (index, other) in others.iter().enumerate() {
        if let Some(difference) = same::difference(first, other) {
            return Err(CardError::Differs(difference));
        }
        let twin = entries[..=index]
            .iter()
            .find(|one| one.fingerprint == other.fingerprint);
        if let Some(twin) = twin {
            return Err(CardError::Twice(twin.file.into(), other.file.into()));
        }
    }
    let card = Card {
        entries,
        day,
        paper,
    };
    // How many pages there are is written on each.
    let count = card.pages(0)?.len();
    card.pages(count)
}

/// What all pages are made of.
struct Card<'a> {
    entries: &'a [Entry<'a>],
    day: ForDay,
    paper: Paper,
}

impl Card<'_> {
    fn pages(&self, of: usize) -> Result<Vec<Sheet>, CardError> {
        let mut pages = Vec::new();
        if self.entries.len() > 1 {
            let mut frame = self.frame("Lock card, all vehicles", "CARD", self.entries);
            frame.page = [1, of];
            let made = flow::pages(
                &frame,
                self.paper,
                &ahead::on_top(self.day, overview::pieces(self)),
            );
            pages.extend(made.ok_or(CardError::TooSmall("Lock card, all vehicles"))?);
        }
        for (index, entry) in self.entries.iter().enumerate() {
            let mut frame = self.frame("Lock card", "CARD", std::slice::from_ref(entry));
            frame.page = [pages.len() + 1, of];
            if entry.study.highest_safe_lock.is_none() {
                frame.warnings.push("NO LOCK IS SAFE: DO NOT RAISE.".into());
            }
            let pieces = vehicle::pieces(entry, self.letter(index));
            let pieces = ahead::on_top(self.day, pieces);
            let made = flow::pages(&frame, self.paper, &pieces);
            pages.extend(made.ok_or(CardError::TooSmall("Lock card"))?);
        }
        if self.entries.iter().any(|one| is_safe(one)) {
            let mut frame = self.frame("Tape for the column", "TAPE", self.entries);
            frame.page = [pages.len() + 1, of];
            let made = tape::pages(self, &frame);
            pages.extend(made.ok_or(CardError::TooSmall("Tape for the column"))?);
        }
        Ok(pages)
    }

    /// The letter of a vehicle; none where there is only one.
    fn letter(&self, index: usize) -> Option<char> {
        (self.entries.len() > 1).then(|| letter(index))
    }

    fn frame(&self, name: &str, tag: &'static str, of: &[Entry<'_>]) -> Frame {
        let title = self.entries.first().map_or_else(String::new, |one| {
            if self.entries.len() > 1 && of.len() > 1 {
                on_one_line(&one.bay.lift.name)
            } else {
                let one = of.first().unwrap_or(one);
                on_one_line(&one.bay.title)
            }
        });
        Frame {
            title,
            name: name.into(),
            tag,
            page: [1, 1],
            warnings: ahead::warning(self.day).into_iter().collect(),
            notes: Vec::new(),
            made_by: format!(
                "Bayrise {} \u{b7} {}{} \u{b7} paper {}",
                env!("CARGO_PKG_VERSION"),
                self.inputs(of),
                counted_to_in_line(self.day),
                self.paper.name()
            ),
            cautions: CAUTIONS.join(" "),
        }
    }

    /// What stands for the texts that went in: "input 0123456789abcdef", or each with its letter.
    fn inputs(&self, of: &[Entry<'_>]) -> String {
        let each = |entry: &Entry<'_>| {
            let index = self
                .entries
                .iter()
                .position(|one| one.fingerprint == entry.fingerprint);
            match index.and_then(|index| self.letter(index)) {
                Some(letter) => format!("input {letter} {}", entry.fingerprint),
                None => format!("input {}", entry.fingerprint),
            }
        };
        let all: Vec<String> = of.iter().map(each).collect();
        all.join(" \u{b7} ")
    }
}

fn is_safe(entry: &Entry<'_>) -> bool {
    entry.study.highest_safe_lock.is_some() && entry.study.marks.is_some()
}

fn letter(index: usize) -> char {
    let index = u8::try_from(index).unwrap_or(u8::MAX);
    char::from(b'A'.saturating_add(index))
}

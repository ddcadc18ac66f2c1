//! Which lines does the tape have, and what does each say?

use super::edge::{Written, release_m, written};
use super::usable::{self, Use};
use super::{Card, is_safe, letter, vehicle};
use crate::bay::UnitSystem;
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{INK, SET_OUT, WARN};
use crate::units::{Length, Rounding, length};

/// A line of the tape.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Mark {
    /// Above the top of the base plate, metres.
    pub(super) at_m: f64,
    /// What it is.
    pub(super) says: String,
    /// Its height in the file's system, then in the other: never broken, since a reading that is
    /// broken in two is read as its first half.
    pub(super) reads: Vec<String>,
    pub(super) kind: Kind,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// Where the marked edge rests on a lock that every vehicle with a safe lock may use.
    Lock,
    /// The same on one that some of them must not use, or all.
    NotToUse,
    Stop,
    /// Where the latches can be pulled.
    Release,
    Never,
}

impl Kind {
    pub(super) const fn colour(self) -> Colour {
        match self {
            Self::Lock => INK,
            Self::Stop | Self::Release => SET_OUT,
            Self::NotToUse | Self::Never => WARN,
        }
    }

    pub(super) const fn is_lock(self) -> bool {
        matches!(self, Self::Lock | Self::NotToUse)
    }
}

/// A line of the vehicles that share it.
struct Shared {
    at_m: f64,
    kind: Kind,
    lock: usize,
    reads: Vec<String>,
    whose: Vec<usize>,
}

/// Every line of the tape, the lowest first.
pub(super) fn marks(card: &Card<'_>) -> Vec<Mark> {
    let Some(first) = card.entries.first() else {
        return Vec::new();
    };
    let lift = &first.bay.lift;
    let edge = lift.carriage.marked_edge.m();
    let mut marks: Vec<Mark> = Vec::new();
    for (index, lock) in lift.locks.iter().enumerate() {
        let at_m = edge + lock.m();
        let (says, kind) = lock_says(card, index + 1);
        let other = match first.bay.units {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        };
        let reads = [first.bay.units, other]
            .map(|units| length(Length::metres(at_m), units, Rounding::Nearest));
        marks.push(Mark {
            at_m,
            says,
            reads: reads.into(),
            kind,
        });
    }
    for one in shared(card) {
        let who = whose_mark(card, &one.whose);
        let says = match one.kind {
            Kind::Never => format!("NEVER ABOVE{who}"),
            Kind::Release => format!("RELEASE{who}, off lock {}", one.lock),
            _ => format!("STOP{who}, lock {}", one.lock),
        };
        marks.push(Mark {
            at_m: one.at_m,
            says,
            reads: one.reads,
            kind: one.kind,
        });
    }
    marks.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    marks
}

/// The marks of all vehicles that have a safe lock.
fn shared(card: &Card<'_>) -> Vec<Shared> {
    let mut all: Vec<Shared> = Vec::new();
    for (index, entry) in card.entries.iter().enumerate() {
        let (true, Some(found), Some(as_written)) = (
            is_safe(entry),
            entry.study.marks,
            written(entry.bay, entry.study),
        ) else {
            continue;
        };
        let Written {
            stop,
            release,
            never,
        } = as_written;
        let lines = [
            (Some(found.stop_m), Kind::Stop, Some(stop)),
            (release_m(entry.bay, &found), Kind::Release, release),
            (found.never_above_m, Kind::Never, never),
        ];
        for (at_m, kind, reads) in lines {
            let (Some(at_m), Some(reads)) = (at_m, reads) else {
                continue;
            };
            let same = all
                .iter_mut()
                .find(|one| one.kind == kind && (one.at_m - at_m).abs() < 1e-9);
            match same {
                Some(one) => one.whose.push(index),
                None => all.push(Shared {
                    at_m,
                    kind,
                    lock: found.lock,
                    reads: reads.into(),
                    whose: vec![index],
                }),
            }
        }
    }
    all
}

/// "lock 4", and who must not use it.
fn lock_says(card: &Card<'_>, lock: usize) -> (String, Kind) {
    let safe = card.entries.iter().enumerate();
    let (may, must_not): (Vec<usize>, Vec<usize>) = safe
        .filter(|(_, entry)| is_safe(entry))
        .map(|(index, _)| index)
        .partition(|index| {
            let entry = card.entries.get(*index);
            entry.is_some_and(|entry| usable::of(entry.study, lock) == Use::Safe)
        });
    if must_not.is_empty() {
        return (format!("lock {lock}"), Kind::Lock);
    }
    if may.is_empty() {
        return (format!("lock {lock}: NOT TO BE USED"), Kind::NotToUse);
    }
    let says = format!(
        "lock {lock}: NOT TO BE USED by {}; only {}",
        letters(&must_not),
        letters(&may)
    );
    (says, Kind::NotToUse)
}

fn letters(which: &[usize]) -> String {
    let letters: Vec<String> = which.iter().map(|one| letter(*one).to_string()).collect();
    letters.join(", ")
}

/// " A (Estate)", or only the letters where several vehicles share a line; nothing where there is
/// but one on the card.
fn whose_mark(card: &Card<'_>, whose: &[usize]) -> String {
    match whose {
        [one] => match (card.letter(*one), card.entries.get(*one)) {
            (Some(letter), Some(entry)) => format!(" {letter} ({})", vehicle::name(entry)),
            _ => String::new(),
        },
        several => format!(" {}", letters(several)),
    }
}

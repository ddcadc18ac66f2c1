//! What does the page of all vehicles say: which is which, how high, and where is the rest?
//!
//! Nothing here is kinder than the vehicle's own page: what a row has no room for is named on it.

use super::edge::{joined, written};
use super::{Card, Entry, Piece};
use super::{care, door, letter, meets, pads, parking, vehicle};
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{INK, WARN};
use crate::report::counted;

const SHARES: [f64; 7] = [0.4, 2.5, 1.0, 1.9, 1.9, 1.9, 2.4];
const SIZE: f64 = 2.9;

fn row(cells: [String; 7], colour: Colour, is_head: bool) -> Piece {
    Piece::Row {
        cells: cells.into_iter().zip(SHARES).collect(),
        least_mm: 0.0,
        size: SIZE,
        colour,
        is_head,
    }
}

/// A line over all columns but the letter's.
fn line(text: String, colour: Colour) -> Piece {
    let [first, others @ ..] = SHARES;
    Piece::Row {
        cells: vec![(String::new(), first), (text, others.iter().sum())],
        least_mm: 0.0,
        size: SIZE,
        colour,
        is_head: false,
    }
}

pub(super) fn pieces(card: &Card<'_>) -> Vec<Piece> {
    let titles = [
        "",
        "Vehicle",
        "Safe lock",
        "STOP",
        "RELEASE",
        "NEVER ABOVE",
        "Door",
    ];
    let mut pieces = vec![
        Piece::says(
            "Find your vehicle by its name and its load, then read its own page before the raise \
             and take it along: parking lines, what may be opened, how it comes down and what is \
             NOT KNOWN stand there. One vehicle's mark is wrong for any other.",
        ),
        Piece::Gap(2.0),
        row(titles.map(str::to_owned), INK, true),
    ];
    for (index, entry) in card.entries.iter().enumerate() {
        pieces.extend(of(entry, letter(index)));
    }
    pieces.push(Piece::Gap(2.0));
    pieces.push(Piece::says(
        "All marks are for the LOWER carriage's marked edge. STOP is for the way up; RELEASE only \
         for the climb off the highest safe lock to come down again.",
    ));
    pieces.push(Piece::says(vehicle::HOW_MEASURED));
    pieces.extend(care::pieces(care::Never::OfEach));
    pieces
}

fn of(entry: &Entry<'_>, letter: char) -> Vec<Piece> {
    let (bay, study) = (entry.bay, entry.study);
    let (letter, name) = (letter.to_string(), vehicle::name(entry));
    let no = || "\u{2013}".to_owned();
    let mut pieces = Vec::new();
    let with = parking::with(bay);
    match (study.highest_safe_lock, written(bay, study)) {
        (Some(lock), Some(marks)) => {
            let unknown = study.unknown.len();
            let safe = format!("{lock} of {}", study.locks.len());
            let release = marks
                .release
                .as_ref()
                .map_or_else(|| format!("DO NOT USE lock {lock}"), joined);
            let never = marks.never.as_ref().map_or_else(no, joined);
            let door = door::in_short(bay, study, lock);
            let stop = joined(&marks.stop);
            pieces.push(row(
                [letter, name, safe, stop, release, never, door],
                INK,
                false,
            ));
            let (set, settled) = pads::in_short(bay, study);
            let colour = if settled { INK } else { WARN };
            pieces.push(line(format!("{with}; {set}"), colour));
            if let Some((_, true)) = meets::shut_off_bar(bay, study) {
                let text =
                    "Do NOT count on the shut-off bar: what may be met before it is on its page";
                pieces.push(line(text.into(), WARN));
            }
            if unknown > 0 {
                let text = format!(
                    "NOT KNOWN, and no pass: {}, named on its page. Settle them before the first \
                     raise",
                    counted(unknown, "matter")
                );
                pieces.push(line(text, WARN));
            }
        }
        _ => {
            pieces.push(row(
                [
                    letter,
                    name,
                    "NONE".into(),
                    "DO NOT RAISE".into(),
                    no(),
                    no(),
                    no(),
                ],
                WARN,
                false,
            ));
            pieces.push(line(format!("{with}. Why: see its page"), WARN));
        }
    }
    pieces
}

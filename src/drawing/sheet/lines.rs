//! How is a text broken into lines without tearing a reading apart?
//!
//! "5 ft 10" at the end of a line is read as a height of its own: a figure keeps its fraction, its
//! unit, and the inches after its feet.

use super::font::{lettered, width_em};

/// What stands after a number on the same line.
const UNITS: [&str; 15] = [
    "ft", "in", "mm", "m", "deg", "lb", "kg", "N", "kN", "kPa", "MPa", "psi", "%", "days", "day",
];
/// What keeps the number after it.
const BEFORE: [&str; 5] = ["ft", "lock", "Lock", "page", "\u{b1}"];

/// Whether a word is a figure, be it with a bracket or a sign before it.
fn is_number(word: &str) -> bool {
    let word = word.trim_start_matches(['(', '\u{201c}', '-', '\u{b1}']);
    word.starts_with(|c: char| c.is_ascii_digit())
        && word
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '.' | '/'))
}

/// Whether a line must not end between these two words.
fn belong_together(word: &str, next: &str) -> bool {
    let bare = next.trim_end_matches([')', ',', '.', ';', ':', '\u{201d}']);
    if is_number(word) {
        // Its unit, or the sixteenths that go with its inches.
        return UNITS.contains(&bare) || (bare.contains('/') && is_number(bare));
    }
    BEFORE.contains(&word) && is_number(bare)
}

/// The words of a text, those that belong together as one.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    let mut before = "";
    for word in text.split_whitespace() {
        match words.last_mut() {
            Some(last) if belong_together(before, word) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
        before = word;
    }
    words
}

/// A text in lines no wider than this, as it is lettered; what belongs together and is wider than a
/// line is broken where it must be.
#[must_use]
pub fn wrapped(text: &str, size_mm: f64, width_mm: f64) -> Vec<String> {
    let text = lettered(text);
    let fits = |line: &str| width_em(line) * size_mm <= width_mm;
    let mut pieces: Vec<String> = Vec::new();
    for piece in words(&text) {
        if fits(&piece) {
            pieces.push(piece);
        } else {
            pieces.extend(piece.split(' ').map(str::to_owned));
        }
    }
    let mut lines = Vec::new();
    let mut line = String::new();
    for piece in &pieces {
        let longer = if line.is_empty() {
            piece.clone()
        } else {
            format!("{line} {piece}")
        };
        if fits(&longer) {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in piece.chars() {
            line.push(letter);
            if !fits(&line) && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(letter);
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_stays_on_its_line() {
        let text = "Stop the raise with the marked edge at 14 ft 9 3/16 in (4501 mm), not above.";
        for width in 30..120 {
            let lines = wrapped(text, 2.0, f64::from(width));
            for reading in ["14 ft 9 3/16 in", "(4501 mm),"] {
                assert!(lines.iter().any(|line| line.contains(reading)), "{lines:?}");
            }
        }
    }

    #[test]
    fn a_reading_stands_on_one_line() {
        let text = "Climb to 5 ft 10 3/16 in (1782.8 mm), never above lock 12; weighs 5200 lb.";
        for width in 30..120 {
            let lines = wrapped(text, 2.4, f64::from(width));
            assert_eq!(lines.join(" "), text);
            for whole in ["5 ft 10 3/16 in", "(1782.8 mm),", "lock 12;", "5200 lb."] {
                let found = lines.iter().any(|line| line.contains(whole));
                assert!(found, "{width}: {lines:?}");
            }
        }
    }

    #[test]
    fn no_line_is_too_wide_and_no_letter_is_lost() {
        let text = "at 5 ft 10 3/16 in withoutanyendwithoutanyend at all";
        for width in [6.0, 14.0, 40.0] {
            let lines = wrapped(text, 2.4, width);
            let wide = |line: &String| width_em(line) * 2.4 > width && line.chars().count() > 1;
            assert!(!lines.iter().any(wide), "{lines:?}");
            assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
        }
        assert!(wrapped("", 2.4, 10.0).is_empty());
    }

    #[test]
    fn lines_are_never_too_wide() {
        let text = "Lower onto the locks before anyone goes under averyverylongwordwithoutanend.";
        for width in [8.0, 20.0, 60.0] {
            let lines = wrapped(text, 2.0, width);
            assert!(lines.iter().all(|line| width_em(line) * 2.0 <= width));
            let said: String = lines.concat().replace(' ', "");
            assert_eq!(said, text.replace(' ', ""));
        }
        assert!(wrapped("", 2.0, 10.0).is_empty());
    }
}

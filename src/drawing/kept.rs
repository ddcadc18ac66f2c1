//! How is a text broken into lines without tearing a reading apart?
//!
//! "5 ft 10" at the end of a line is read as a height of its own: a figure keeps its fraction, its
//! unit, and the inches after its feet.

use super::sheet::font::{self, width_em};

const UNITS: [&str; 9] = ["ft", "in", "mm", "m", "lb", "kg", "deg", "%", "days"];

fn is_number(word: &str) -> bool {
    let word = word.trim_start_matches(['(', '\u{201c}', '-']);
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
    matches!(word, "ft" | "lock" | "Lock" | "page") && is_number(bare)
}

/// The words, those that belong together as one.
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

/// A text in lines no wider than this; what is wider than a line is broken where it must be.
pub(super) fn wrapped(text: &str, size_mm: f64, width_mm: f64) -> Vec<String> {
    let fits = |line: &str| width_em(line) * size_mm <= width_mm;
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in words(text) {
        let longer = if line.is_empty() {
            word.clone()
        } else {
            format!("{line} {word}")
        };
        if fits(&longer) {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        if fits(&word) {
            line = word;
            continue;
        }
        let mut broken = font::wrapped(&word, size_mm, width_mm);
        line = broken.pop().unwrap_or_default();
        lines.extend(broken);
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
}

//! Which letters would a terminal or a page act on instead of showing them?
//!
//! Names come from files and from paths, and may hold anything. A control character starts commands to
//! a terminal; marks of direction turn the words around them, or hide that they were turned; ends of
//! line that are no `\n` break a line that was checked as one.

use std::fmt::Write as _;

/// True for a letter that is not shown but acts on what is: control characters, marks of direction
/// (Unicode's bidirectional formatting characters), separators of lines and paragraphs, blanks of no
/// width.
#[must_use]
pub fn acts(letter: char) -> bool {
    letter.is_control() || turns(letter)
}

/// The same without control characters.
#[must_use]
pub const fn turns(letter: char) -> bool {
    matches!(
        letter,
        '\u{61c}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2060}' | '\u{feff}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
    )
}

/// True for a letter of a script that runs from right to left (the blocks that Unicode keeps for those).
#[must_use]
pub const fn runs_from_the_right(letter: char) -> bool {
    matches!(
        letter,
        '\u{590}'..='\u{8ff}'
            | '\u{fb1d}'..='\u{fdff}'
            | '\u{fe70}'..='\u{fefc}'
            | '\u{10800}'..='\u{10fff}'
            | '\u{1e800}'..='\u{1efff}'
    )
}

/// A letter as its code point, `U+202E`.
#[must_use]
pub fn code_point(letter: char) -> String {
    format!("U+{:04X}", u32::from(letter))
}

/// The same text, fit to be shown: a control character becomes a blank, what turns text its code point in
/// brackets.
#[must_use]
pub fn shown(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        if turns(letter) {
            // Writing to a string cannot fail.
            let _ = write!(out, "[{}]", code_point(letter));
        } else if letter.is_control() {
            out.push(' ');
        } else {
            out.push(letter);
        }
    }
    out
}

/// The same text with every such letter but `\n` and tabs replaced by one that is shown and has as many
/// bytes, so that places in the text stay what they are.
#[must_use]
pub fn in_place(text: &str) -> String {
    text.chars()
        .map(|letter| match letter {
            '\n' | '\t' => letter,
            '\r' => ' ',
            _ if !acts(letter) => letter,
            _ => match letter.len_utf8() {
                1 => '?',
                2 => '\u{bf}',
                _ => '\u{fffd}',
            },
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_acts_is_shown_and_never_done() {
        let bad = "a\u{202e}b\u{2066}c\u{200f}\u{1b}[2J\u{9b}1m\u{61c}\u{2028}\u{7}";
        let good = shown(bad);
        assert!(!good.chars().any(acts), "{good}");
        assert!(
            good.starts_with("a[U+202E]b[U+2066]c[U+200F] [2J"),
            "{good}"
        );
        let kept = in_place(bad);
        assert!(!kept.chars().any(acts), "{kept}");
        assert_eq!(kept.len(), bad.len());
        assert_eq!(in_place("one\n\ttwo"), "one\n\ttwo");
    }

    #[test]
    fn letters_of_every_script_are_left_alone() {
        // Words that run from right to left need no marks.
        for text in [
            "Werkstatt \u{b0}",
            "\u{5de}\u{5d5}\u{5e1}\u{5da}",
            "\u{65e5}\u{672c}",
        ] {
            assert_eq!(shown(text), text);
            assert_eq!(in_place(text), text);
        }
    }
}

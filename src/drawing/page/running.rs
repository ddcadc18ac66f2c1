//! What stands at the foot of every printed page: what it is of, and what it is not.

use std::fmt::Write as _;

use super::PageOrder;
use crate::letters;
use crate::report::{CAUTIONS, Sayings, counted_to_in_line};

/// The style of printed pages, with title, fingerprint and the first caution at their foot.
pub(super) fn style(order: &PageOrder<'_>, said: &Sayings<'_>) -> String {
    let of = format!(
        "{} \u{b7} Bayrise {}, input {}{}",
        said.title(),
        env!("CARGO_PKG_VERSION"),
        order.report.fingerprint,
        counted_to_in_line(order.day)
    );
    format!(
        "@page{{@bottom-left{{content:{};white-space:pre-line}}\
         @bottom-right{{content:\"page \" counter(page) \" of \" counter(pages)}}}}\n",
        quoted(&[&of, CAUTIONS[0]])
    )
}

/// Lines as a string of a style sheet: what is no plain letter is written by its number, so that no
/// text can end the string.
fn quoted(lines: &[&str]) -> String {
    let mut out = String::from("\"");
    for (number, line) in lines.iter().enumerate() {
        if number > 0 {
            out.push_str("\\a ");
        }
        for letter in line.chars() {
            match letter {
                c if letters::acts(c) => out.push(' '),
                ' ' | '.' | ',' | ':' | '-' => out.push(letter),
                c if c.is_ascii_alphanumeric() => out.push(c),
                // Writing to a string cannot fail.
                c => drop(write!(out, "\\{:x} ", u32::from(c))),
            }
        }
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_ends_the_string() {
        let bad = "a\"} </style><script> \\ ' \u{202e}\n\u{e9}";
        let good = quoted(&[bad, "two"]);
        assert!(good.starts_with('"') && good.ends_with('"'));
        let inner = &good[1..good.len() - 1];
        for letter in ['"', '<', '>', '\'', '}', '\n', '\u{202e}'] {
            assert!(!inner.contains(letter), "{good}");
        }
        assert!(
            inner.contains("\\e9 ") && inner.contains("\\a two"),
            "{good}"
        );
    }
}

//! Is what was typed into a field what the file takes, and how is it written there?

use super::table::Entry;
use crate::bayfile::edit::quoted;
use crate::letters;
use crate::units::{self, Kind, UnitError};

/// Why a typed text is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Refused {
    /// What is wrong.
    pub(super) message: String,
    /// What to type instead.
    pub(super) cure: String,
}

fn refused<T>(message: impl Into<String>, cure: impl Into<String>) -> Result<T, Refused> {
    Err(Refused {
        message: message.into(),
        cure: cure.into(),
    })
}

/// The RON source of what was typed.
///
/// # Errors
/// Why the file would not take it.
pub(super) fn source(entry: Entry, typed: &str) -> Result<String, Refused> {
    let typed = typed.trim();
    match entry {
        Entry::Quantity(kind) => quantity(kind, typed),
        Entry::Quantities(kind) => {
            let items = typed.split(',').filter(|_| !typed.is_empty());
            let items: Result<Vec<String>, Refused> =
                items.map(|item| quantity(kind, item.trim())).collect();
            Ok(format!("[{}]", items?.join(", ")))
        }
        Entry::Texts => {
            let items = typed
                .split(';')
                .map(str::trim)
                .filter(|item| !item.is_empty());
            let items: Result<Vec<String>, Refused> = items.map(words).collect();
            Ok(format!("[{}]", items?.join(", ")))
        }
        Entry::Number => match typed.parse::<f64>() {
            Ok(value) if value.is_finite() && is_plain(typed) => Ok(typed.into()),
            _ => refused("this is not a number", "type digits, for example 0.02"),
        },
        Entry::Count => match typed.parse::<u32>() {
            Ok(count) if count > 0 && is_plain(typed) => Ok(count.to_string()),
            _ => refused(
                "this is not a whole number from 1",
                "count them, and type for example 12",
            ),
        },
        Entry::Text => words(typed),
        Entry::Name if typed.contains('/') => refused(
            "a name can't hold a `/`",
            "write the name without `/`: names are joined with it in reports",
        ),
        Entry::Name => words(typed),
        Entry::Flag | Entry::Words(_) => Ok(typed.into()),
    }
}

fn quantity(kind: Kind, typed: &str) -> Result<String, Refused> {
    match units::parse(kind, typed) {
        Ok(_) => Ok(quoted(typed)),
        Err(UnitError::Empty) => refused(
            format!("{} is missing", kind.with_article()),
            format!("type for example {}", kind.example()),
        ),
        Err(fault) => refused(fault.message(kind), fault.help(kind)),
    }
}

/// Digits, a point and a sign: what every reader of numbers takes alike.
fn is_plain(typed: &str) -> bool {
    let digits = typed.strip_prefix('-').unwrap_or(typed);
    digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.ends_with(|c: char| c.is_ascii_digit())
        && digits.chars().all(|c| c.is_ascii_digit() || c == '.')
}

fn words(typed: &str) -> Result<String, Refused> {
    if typed.is_empty() {
        refused("this text is empty", "write what it is called")
    } else if typed.chars().count() > 200 || typed.len() > 800 {
        refused("this text is too long", "shorten it to 200 characters")
    } else if typed.chars().any(char::is_control) {
        refused(
            "this text holds a control character",
            "remove line breaks, tabs and other control characters",
        )
    } else if let Some(letter) = typed.chars().find(|letter| letters::turns(*letter)) {
        refused(
            format!(
                "this text holds {}, which turns text and is not shown",
                letters::code_point(letter)
            ),
            "remove it: type the words anew",
        )
    } else {
        Ok(quoted(typed))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_take_what_the_file_takes() {
        let length = Entry::Quantity(Kind::Length);
        for good in [
            "10 ft 2 1/2 in",
            "104.33 in",
            "10' 2-1/2\"",
            "2650 mm",
            "2.65 m",
        ] {
            assert_eq!(source(length, good).unwrap(), quoted(good), "{good}");
        }
        assert_eq!(source(length, " 2 m ").unwrap(), "\"2 m\"");
        for bad in ["12", "12 fot", "12 kg", "", "1,200 mm", "-"] {
            let refused = source(length, bad).unwrap_err();
            assert!(
                !refused.message.is_empty() && !refused.cure.is_empty(),
                "{bad}"
            );
        }
        let lengths = Entry::Quantities(Kind::Length);
        assert_eq!(
            source(lengths, "3 in,5 1/2 in").unwrap(),
            "[\"3 in\", \"5 1/2 in\"]"
        );
        assert_eq!(source(lengths, "").unwrap(), "[]");
        assert!(source(lengths, "3 in, 5").is_err());
        assert_eq!(
            source(Entry::Texts, "the beam; 3.1 Width;").unwrap(),
            "[\"the beam\", \"3.1 Width\"]"
        );
        assert_eq!(source(Entry::Texts, "").unwrap(), "[]");
        assert_eq!(source(Entry::Number, "0.02").unwrap(), "0.02");
        for bad in ["1e999", "nan", "inf", ".5", "5.", "+1", "1_0", "0x1"] {
            assert!(source(Entry::Number, bad).is_err(), "{bad}");
        }
        assert_eq!(source(Entry::Count, "15").unwrap(), "15");
        assert!(source(Entry::Count, "0").is_err());
        assert!(source(Entry::Count, "1.5").is_err());
        assert!(source(Entry::Name, "a/b").is_err());
        assert_eq!(
            source(Entry::Text, "1/2 price \"new\"").unwrap(),
            "\"1/2 price \\\"new\\\"\""
        );
    }
}

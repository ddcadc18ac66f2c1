//! Is this an answer to the question, and how does a bay file write it?

use super::question::{Form, Kind};
use crate::bayfile::edit::quoted;
use crate::bayfile::presets::{Embedded, lifts, vehicles};
use crate::ground::Date;
use crate::letters;
use crate::units;

/// Why an answer is not taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// What is wrong with it.
    pub message: String,
    /// What would be taken.
    pub help: String,
    /// What is asked next, where the answers of a section don't go together; else empty.
    pub then: String,
}

impl Refused {
    /// A line that is not taken: what is wrong with it, and what would be taken.
    pub fn new(message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            help: help.into(),
            then: String::new(),
        }
    }
}

/// The most letters that words may have.
const MOST_LETTERS: usize = 120;

/// Reads an answer; what comes back is how a bay file writes it.
///
/// # Errors
/// [`Refused`] says what is wrong and what would be taken.
pub fn read_answer(kind: Kind, typed: &str) -> Result<String, Refused> {
    let typed = typed.trim();
    match kind {
        Kind::Words => words(typed),
        Kind::Size(of) => quantity(of, typed, |value| value > 0.0, "more than zero"),
        Kind::NotNegative(of) => quantity(of, typed, |value| value >= 0.0, "zero or more"),
        Kind::Place(of) => quantity(of, typed, |_| true, "a length"),
        Kind::Count => match typed.parse::<u32>() {
            Ok(count @ 1..=200) => Ok(count.to_string()),
            _ => Err(Refused::new(
                format!("{typed:?} is no such number"),
                "write a whole number from 1 to 200",
            )),
        },
        Kind::Day => match typed.parse::<Date>() {
            Ok(day) => Ok(quoted(&day.to_string())),
            Err(_) => Err(Refused::new(
                format!("{typed:?} is no day"),
                "write year-month-day, such as 1998-06-01",
            )),
        },
        Kind::YesNo => chosen(typed, &[("yes", "true"), ("no", "false")]),
        Kind::Choice(words) => chosen(typed, words),
        Kind::Preset(form) => preset(form, typed),
    }
}

fn words(typed: &str) -> Result<String, Refused> {
    if let Some(bad) = typed.chars().find(|letter| letters::acts(*letter)) {
        return Err(Refused::new(
            format!("there is a letter in it that can't be printed ({bad:?})"),
            "type it again",
        ));
    }
    if typed.chars().count() > MOST_LETTERS {
        return Err(Refused::new(
            format!("these are more than {MOST_LETTERS} letters"),
            "say it in fewer",
        ));
    }
    Ok(quoted(typed))
}

fn quantity(
    of: units::Kind,
    typed: &str,
    fits: fn(f64) -> bool,
    expected: &str,
) -> Result<String, Refused> {
    match units::parse(of, typed) {
        Ok(value) if fits(value) => Ok(quoted(typed)),
        Ok(_) => Err(Refused::new(
            format!("{typed:?} can't be"),
            format!(
                "expected {expected}, such as {}",
                of.example().trim_matches('"')
            ),
        )),
        Err(error) => Err(Refused::new(error.message(of), error.help(of))),
    }
}

/// One of some words, or enough of its beginning.
fn chosen(typed: &str, words: &[(&'static str, &'static str)]) -> Result<String, Refused> {
    let plain = |text: &str| text.to_lowercase().replace(['-', ' '], "");
    let wanted = plain(typed);
    let pick = |(word, ron): &(&str, &str)| {
        if ron.is_empty() {
            (*word).to_owned()
        } else {
            (*ron).to_owned()
        }
    };
    if let Some(exact) = words.iter().find(|(word, _)| plain(word) == wanted) {
        return Ok(pick(exact));
    }
    // "no" is no short form of "not needed", nor of anything but "none".
    if matches!(wanted.as_str(), "n" | "no")
        && let Some(none) = words.iter().find(|(word, _)| *word == "none")
    {
        return Ok(pick(none));
    }
    if matches!(wanted.as_str(), "n" | "no") && !words.iter().any(|(word, _)| *word == "no") {
        return Err(none_of(typed, words));
    }
    let mut starts = words
        .iter()
        .filter(|(word, _)| !wanted.is_empty() && plain(word).starts_with(&wanted));
    match (starts.next(), starts.next()) {
        (Some(one), None) => Ok(pick(one)),
        _ => Err(none_of(typed, words)),
    }
}

fn none_of(typed: &str, words: &[(&'static str, &'static str)]) -> Refused {
    let all: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
    Refused::new(
        format!("{typed:?} is none of the answers"),
        format!("write one of: {}", all.join(", ")),
    )
}

/// The shipped presets of a form.
pub(super) const fn presets(form: Form) -> &'static [Embedded] {
    match form {
        Form::Lift => lifts(),
        Form::Vehicle => vehicles(),
    }
}

fn preset(form: Form, typed: &str) -> Result<String, Refused> {
    if presets(form).iter().any(|one| one.name == typed) {
        return Ok(quoted(typed));
    }
    let names: Vec<&str> = presets(form).iter().map(|one| one.name).collect();
    Err(Refused::new(
        format!("there is no preset {typed:?}"),
        format!("write one of: {}", names.join(", ")),
    ))
}

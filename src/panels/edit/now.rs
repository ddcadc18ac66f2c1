//! What does the bay file say now, for a new value that goes with it?
//!
//! A whole new value (another kind of ceiling, one more light) keeps what carries over and takes
//! plain placeholder figures for the rest, in the file's units.

use std::borrow::Cow;

use super::paths::join;
use crate::bayfile::edit::{self, Written};
use crate::units::{self, Length, Rounding};

/// The bay file as it stands, looked at from one value.
pub(super) struct Now<'a> {
    written: &'a Written,
    path: Cow<'a, str>,
}

impl<'a> Now<'a> {
    /// Looked at from the value at `path`.
    pub(super) const fn at(written: &'a Written, path: &'a str) -> Self {
        let path = Cow::Borrowed(path);
        Self { written, path }
    }

    /// True when the value is this variant.
    pub(super) fn is(&self, variant: &str) -> bool {
        self.written.variant(&self.path).as_deref() == Some(variant)
    }

    /// The value's source; nothing when there is none.
    pub(super) fn source(&self) -> String {
        self.text_in("").unwrap_or_default()
    }

    /// How many items it has, when it is a list.
    pub(super) fn count(&self) -> usize {
        self.written.len(&self.path)
    }

    /// Looked at from one of its items, when it is a list.
    pub(super) fn item(&self, index: usize) -> Now<'a> {
        Now {
            written: self.written,
            path: Cow::Owned(format!("{}[{index}]", self.path)),
        }
    }

    /// The text of a value in it.
    pub(super) fn text_in(&self, name: &str) -> Option<String> {
        self.text_of(&join(&self.path, name))
    }

    /// The text of a value anywhere in the file.
    pub(super) fn text_of(&self, path: &str) -> Option<String> {
        self.written.value(path).map(|value| value.text)
    }

    /// True when it has such a value.
    pub(super) fn has(&self, name: &str) -> bool {
        self.text_in(name).is_some()
    }

    /// A length in it.
    pub(super) fn length_in(&self, name: &str) -> Option<Length> {
        units::parse_length(&self.text_in(name)?).ok()
    }

    /// A length anywhere in the file.
    pub(super) fn length_of(&self, path: &str) -> Option<Length> {
        units::parse_length(&self.text_of(path)?).ok()
    }

    /// A length of it, when it is a list of lengths.
    pub(super) fn listed(&self, index: usize) -> Option<Length> {
        self.length_in(&format!("[{index}]"))
    }

    /// Of these values in it that are lengths, the least one as written.
    pub(super) fn text_at_lowest(&self, names: &[&str]) -> Option<String> {
        names
            .iter()
            .filter_map(|name| Some((self.length_in(name)?, self.text_in(name)?)))
            .min_by(|a, b| a.0.m().total_cmp(&b.0.m()))
            .map(|(_, text)| text)
    }

    /// True when the file shows millimetres.
    pub(super) fn is_metric(&self) -> bool {
        self.written.variant("units").as_deref() == Some("Metric")
    }

    /// The figure of the file's units.
    pub(super) fn pick(&self, inches: f64, millimetres: f64) -> Length {
        if self.is_metric() {
            Length::mm(millimetres)
        } else {
            Length::inches(inches)
        }
    }

    /// The figure of the file's units, in quotes.
    pub(super) fn say(&self, inches: f64, millimetres: f64) -> String {
        self.length(self.pick(inches, millimetres))
    }

    /// Nothing, as a length in quotes.
    pub(super) fn zero(&self) -> String {
        self.say(0.0, 0.0)
    }

    /// The first of these values in it that is a length, as written, or else the figure; in quotes.
    pub(super) fn keep(&self, names: &[&str], inches: f64, millimetres: f64) -> String {
        let kept = names
            .iter()
            .filter_map(|name| self.text_in(name))
            .find(|text| units::parse_length(text).is_ok());
        kept.map_or_else(|| self.say(inches, millimetres), |text| self.quoted(&text))
    }

    /// A length to the nearest sixteenth or millimetre, in quotes.
    pub(super) fn length(&self, length: Length) -> String {
        self.rounded(length, Rounding::Nearest)
    }

    /// A length to the next sixteenth or millimetre, in quotes.
    pub(super) fn length_up(&self, length: Length) -> String {
        self.rounded(length, Rounding::Up)
    }

    fn rounded(&self, length: Length, rounding: Rounding) -> String {
        self.quoted(&if self.is_metric() {
            units::millimetres(length, 0, rounding)
        } else {
            units::feet_inches(length, 16, rounding)
        })
    }

    /// A length without rounding that anyone could measure, in quotes.
    pub(super) fn exactly(&self, length: Length) -> String {
        self.quoted(&exact_text(length, self.is_metric()))
    }

    /// A text in quotes.
    pub(super) fn quoted(&self, text: &str) -> String {
        edit::quoted(text)
    }

    /// A name that nothing in this list has, in quotes: the plain word, or with a number.
    pub(super) fn new_name(&self, word: &str) -> String {
        let taken: Vec<String> = (0..self.count())
            .filter_map(|item| self.text_in(&format!("[{item}].name")))
            .collect();
        let free = |name: &String| !taken.iter().any(|t| t.trim() == *name);
        let name = std::iter::once(word.to_string())
            .chain((2..).map(|number| format!("{word} {number}")))
            .find(free);
        self.quoted(&name.unwrap_or_default())
    }
}

/// How far a text may be from the length it stands for, metres: noise of floating point.
const SAME_M: f64 = 1e-9;

/// The shortest usual text that says exactly this length: feet, inches and 64ths, else inches with
/// decimals; or millimetres.
pub(super) fn exact_text(length: Length, metric: bool) -> String {
    let says = |text: &String| {
        units::parse_length(text).is_ok_and(|read| (read - length).abs().m() <= SAME_M)
    };
    let nearest = Rounding::Nearest;
    let imperial = std::iter::once(units::feet_inches(length, 64, nearest))
        .chain((1..=6).map(|digits| units::decimal_inches(length, digits, nearest)));
    let in_mm = (0..=6).map(|digits| units::millimetres(length, digits, nearest));
    let found = if metric {
        in_mm.chain(imperial).find(says)
    } else {
        imperial.chain(in_mm).find(says)
    };
    // Six decimals of a millimetre are a millionth of what a tape shows.
    found.unwrap_or_else(|| units::millimetres(length, 6, nearest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn exact_texts_say_what_they_stand_for() {
        let text = |text: &str, step: Length, metric| {
            exact_text(units::parse_length(text).unwrap() + step, metric)
        };
        let inch = Length::inches(1.0);
        assert_eq!(text("-8 ft 6 in", inch, false), "-8 ft 5 in");
        assert_eq!(text("11 3/64 in", inch, false), "1 ft 0 3/64 in");
        assert_eq!(text("104.33 in", inch, false), "105.33 in");
        assert_eq!(text("2650 mm", Length::mm(25.0), true), "2675 mm");
        // A length of the other system is not rounded to this one's tape.
        assert_eq!(text("12.5 mm", Length::mm(25.0), false), "37.5 mm");
        assert_eq!(text("1 in", Length::mm(25.0), true), "50.4 mm");
    }
}

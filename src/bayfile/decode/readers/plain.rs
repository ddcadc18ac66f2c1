//! How is a text, a number, a count or a flag read?

use jiff::civil::Date;

use super::{Read, wrong_kind};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Kind as Written, Node};
use crate::letters;

/// A text, or a name when `is_name`.
pub(in crate::bayfile::decode) struct Text {
    is_name: bool,
}

/// A text: not empty, one line, of reasonable length.
pub(in crate::bayfile::decode) const fn text() -> Text {
    Text { is_name: false }
}

/// A name: a text without `/`, as names are joined with it.
pub(in crate::bayfile::decode) const fn name() -> Text {
    Text { is_name: true }
}

impl Read for Text {
    type Out = String;

    fn read(&self, cx: &Context, node: &Node) -> Option<String> {
        let Written::Str(text) = &node.kind else {
            return wrong_kind(cx, node, "a text in quotes", &self.example());
        };
        let fault = |message: &str, label: &str, help: &str| {
            cx.error(node.head(), message, label, help);
            None
        };
        if text.len() > 800 || text.chars().count() > 200 {
            return fault(
                "this text is too long",
                "expected at most 200 characters",
                "shorten it",
            );
        }
        if text.trim().is_empty() {
            return fault(
                "this text is empty",
                "expected a few words",
                "write what it is called",
            );
        }
        if text.chars().any(char::is_control) {
            return fault(
                "this text holds a control character",
                "expected plain words on one line",
                "remove line breaks, tabs and other control characters",
            );
        }
        if let Some(letter) = text.chars().find(|letter| letters::turns(*letter)) {
            let code = letters::code_point(letter);
            return fault(
                &format!("this text holds {code}, which turns text and is not shown"),
                "expected letters that can be seen",
                "remove it: type the words anew",
            );
        }
        if self.is_name && text.contains('/') {
            return fault(
                "a name can't hold a `/`",
                "names are joined with `/` in reports",
                "write the name without `/`",
            );
        }
        Some(text.trim().into())
    }

    fn example(&self) -> String {
        "\"..\"".into()
    }
}

/// A plain number without a unit, between two bounds.
pub(in crate::bayfile::decode) struct Number {
    low: f64,
    high: f64,
    what: &'static str,
}

/// A plain number without a unit, between two bounds.
pub(in crate::bayfile::decode) const fn number(what: &'static str, low: f64, high: f64) -> Number {
    Number { low, high, what }
}

impl Read for Number {
    type Out = f64;

    fn read(&self, cx: &Context, node: &Node) -> Option<f64> {
        let Written::Number(typed) = &node.kind else {
            return wrong_kind(cx, node, self.what, &self.example());
        };
        match typed.replace('_', "").parse::<f64>() {
            Ok(value) if (self.low..=self.high).contains(&value) => Some(value),
            _ => {
                cx.error(
                    node.span,
                    &format!("{} can't be {typed}", self.what),
                    &format!("expected a number from {} to {}", self.low, self.high),
                    &format!("write for example {}", self.example()),
                );
                None
            }
        }
    }

    fn example(&self) -> String {
        format!("{}", self.low.max(self.high.min(1.0)))
    }
}

/// A count of things.
pub(in crate::bayfile::decode) struct Count {
    pub(in crate::bayfile::decode) what: &'static str,
    pub(in crate::bayfile::decode) least: usize,
    pub(in crate::bayfile::decode) most: usize,
}

impl Read for Count {
    type Out = usize;

    fn read(&self, cx: &Context, node: &Node) -> Option<usize> {
        let Written::Number(typed) = &node.kind else {
            return wrong_kind(cx, node, "a plain whole number", "12");
        };
        match typed.replace('_', "").parse::<usize>() {
            Ok(count) if (self.least..=self.most).contains(&count) => Some(count),
            _ => {
                cx.error(
                    node.span,
                    &format!("{typed} {} are not possible", self.what),
                    &format!(
                        "expected a whole number from {} to {}",
                        self.least, self.most
                    ),
                    "count them on the real thing",
                );
                None
            }
        }
    }

    fn example(&self) -> String {
        "12".into()
    }
}

/// `true` or `false`.
pub(in crate::bayfile::decode) struct Flag;

impl Read for Flag {
    type Out = bool;

    fn read(&self, cx: &Context, node: &Node) -> Option<bool> {
        match &node.kind {
            Written::Bool(value) => Some(*value),
            _ => wrong_kind(cx, node, "`true` or `false`", "true"),
        }
    }

    fn example(&self) -> String {
        "true".into()
    }
}

/// A day of the calendar, written year-month-day.
pub(in crate::bayfile::decode) struct Day;

/// The years that a slab's days can lie in: outside of them a digit has slipped.
const YEARS: std::ops::RangeInclusive<i16> = 1850..=2199;

impl Read for Day {
    type Out = Date;

    fn read(&self, cx: &Context, node: &Node) -> Option<Date> {
        let Written::Str(typed) = &node.kind else {
            return wrong_kind(cx, node, "a day in quotes", &self.example());
        };
        // Other ways that ISO 8601 has of writing a day are read by people in two ways.
        let is_plain = typed.len() == 10 && typed.bytes().filter(|b| *b == b'-').count() == 2;
        let day = typed.parse::<Date>().ok().filter(|_| is_plain);
        if let Some(day) = day
            && YEARS.contains(&day.year())
        {
            return Some(day);
        }
        let typed: String = typed.chars().take(40).collect();
        let (message, help) = if day.is_some() {
            (
                format!("the year of \"{typed}\" can't be meant"),
                "check the digits of the year",
            )
        } else {
            (
                format!("\"{typed}\" is no day of the calendar"),
                "write the year with four digits, the month and the day with two: \"2026-05-14\"",
            )
        };
        cx.error(
            node.span,
            &message,
            "expected a day as year-month-day",
            help,
        );
        None
    }

    fn example(&self) -> String {
        "\"2026-05-14\"".into()
    }
}

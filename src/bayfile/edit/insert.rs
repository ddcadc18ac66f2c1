//! How is a new field or item put in, laid out like its neighbours?

use super::bracket::{Bracket, indentation};
use super::gap::{Part, Piece};
use super::value::laid_out;
use crate::bayfile::syntax::Node;
use crate::bayfile::syntax::path::Step;

/// How a text is laid out.
#[derive(Debug)]
pub(super) struct Layout<'a> {
    line_end: &'static str,
    /// What a level is indented by.
    unit: &'a str,
}

impl<'a> Layout<'a> {
    /// As the text itself is: its first line's end, and the indentation of the whole value's
    /// fields, which is one level.
    pub(super) fn of(text: &'a str, root: &Node) -> Self {
        let ends_with_return = text
            .split_once('\n')
            .is_some_and(|(line, _)| line.ends_with('\r'));
        let unit = Bracket::of(text, root).and_then(|b| b.indentation(text));
        Self {
            line_end: if ends_with_return { "\r\n" } else { "\n" },
            unit: unit.filter(|unit| !unit.is_empty()).unwrap_or("    "),
        }
    }

    /// A list of one item, with a line of its own or not.
    pub(super) fn new_list(&self, item: &str, spread: bool) -> String {
        if !spread {
            return format!("[{item}]");
        }
        let Self { line_end, unit } = self;
        let item = laid_out(item, unit, line_end);
        format!("[{line_end}{unit}{item},{line_end}]")
    }
}

/// A field or item to put in.
#[derive(Debug)]
pub(super) struct Entry<'a> {
    before: String,
    value: &'a str,
    after: String,
}

impl<'a> Entry<'a> {
    /// `a: (b: value)` for the steps `a.b`; none for steps that no record's fields can be.
    pub(super) fn fields(steps: &[Step<'_>], value: &'a str) -> Option<Self> {
        let names: Option<Vec<&str>> = steps.iter().map(name).collect();
        Some(Self {
            before: format!("{}: ", names?.join(": (")),
            value,
            after: ")".repeat(steps.len().saturating_sub(1)),
        })
    }

    pub(super) const fn item(value: &'a str) -> Self {
        Self {
            before: String::new(),
            value,
            after: String::new(),
        }
    }

    /// The source as it was given.
    pub(super) fn source(&self) -> String {
        format!("{}{}{}", self.before, self.value, self.after)
    }

    fn laid_out(&self, indent: &str, layout: &Layout<'_>) -> String {
        let value = laid_out(self.value, indent, layout.line_end);
        format!("{}{value}{}", self.before, self.after)
    }
}

fn name<'a>(step: &Step<'a>) -> Option<&'a str> {
    match step {
        Step::Field(name) => {
            let mut chars = name.chars();
            let starts = chars
                .next()
                .is_some_and(|c| c == '_' || c.is_ascii_alphabetic());
            (starts && chars.all(|c| c == '_' || c.is_ascii_alphanumeric())).then_some(*name)
        }
        Step::Item(_) => None,
    }
}

/// The text with an entry put in behind the last one. `spread` gives the entry of an empty bracket
/// that is written in one line a line of its own.
pub(super) fn insert(
    text: &str,
    bracket: &Bracket,
    layout: &Layout<'_>,
    entry: &Entry<'_>,
    spread: bool,
) -> String {
    let tail = bracket.gap(text, bracket.entries.len());
    let deeper = || format!("{}{}", indentation(text, bracket.inside.start), layout.unit);
    let end = layout.line_end;
    let Some(last) = bracket.entries.last() else {
        return into_empty(text, bracket, layout, entry, spread);
    };
    let comma = tail.iter().position(|p| p.piece == Piece::Comma);
    let trailing = if comma.is_some() { "," } else { "" };
    let behind_comma = comma.map_or(last.end, |i| tail[i].range.end);
    let mut out = text.to_string();
    if bracket.has_lines(text) {
        let rest = &tail[comma.map_or(0, |i| i + 1)..];
        let indent = bracket.indentation(text).map_or_else(deeper, String::from);
        let line = format!("{end}{indent}{}{trailing}", entry.laid_out(&indent, layout));
        out.insert_str(end_of_line(rest).unwrap_or(behind_comma), &line);
        if comma.is_none() {
            // Directly behind the value, as a comment may follow.
            out.insert(last.end, ',');
        }
    } else {
        let indent = indentation(text, last.end);
        let entry = entry.laid_out(indent, layout);
        let parting = if comma.is_some() { " " } else { ", " };
        let at = tail.iter().rfind(|p| p.piece != Piece::Blank);
        let at = at.map_or(last.end, |p| p.range.end);
        out.insert_str(at, &format!("{parting}{entry}{trailing}"));
    }
    out
}

fn into_empty(
    text: &str,
    bracket: &Bracket,
    layout: &Layout<'_>,
    entry: &Entry<'_>,
    spread: bool,
) -> String {
    let inside = bracket.inside.clone();
    let parts = bracket.gap(text, 0);
    let base = indentation(text, inside.start);
    let indent = format!("{base}{}", layout.unit);
    let end = layout.line_end;
    let mut out = text.to_string();
    if parts.iter().any(|p| p.piece == Piece::LineEnd) {
        let at = end_of_line(&parts).unwrap_or(inside.start);
        out.insert_str(
            at,
            &format!("{end}{indent}{},", entry.laid_out(&indent, layout)),
        );
        return out;
    }
    let comment = parts.iter().rfind(|p| p.is_comment());
    let at = comment.map_or(inside.start, |p| p.range.end);
    if spread {
        let entry = entry.laid_out(&indent, layout);
        out.replace_range(at..inside.end, &format!("{end}{indent}{entry},{end}{base}"));
    } else {
        let blank = if parts.is_empty() { "" } else { " " };
        out.insert_str(at, &format!("{blank}{}", entry.laid_out(base, layout)));
    }
    out
}

/// Where the last comment of the first line ends; none when none starts there.
fn end_of_line(parts: &[Part]) -> Option<usize> {
    let line = parts.iter().take_while(|p| p.piece != Piece::LineEnd);
    line.filter(|p| p.is_comment()).last().map(|p| p.range.end)
}

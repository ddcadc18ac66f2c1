//! Where in the text do the fields or items of one value stand?

use std::ops::Range;

use super::gap::{Part, Piece, parts};
use crate::bayfile::syntax::{Field, Kind, Node};

/// The inside of a record's or a list's brackets.
#[derive(Debug)]
pub(super) struct Bracket {
    /// From behind the opening bracket to before the closing one.
    pub(super) inside: Range<usize>,
    /// Each field from its name's start to its value's end, or each item.
    pub(super) entries: Vec<Range<usize>>,
}

impl Bracket {
    /// The bracket of a record or list; none for a value that has none.
    pub(super) fn of(text: &str, node: &Node) -> Option<Self> {
        let range = node.span.range();
        let (name, entries) = match &node.kind {
            Kind::Struct { name, fields } => {
                let whole = |f: &Field| f.name.span.range().start..f.value.span.range().end;
                (name.as_ref(), fields.iter().map(whole).collect())
            }
            Kind::Tuple { name, items } => (name.as_ref(), ranges(items)),
            Kind::List(items) => (None, ranges(items)),
            _ => return None,
        };
        let open = match name {
            // Between a name and its bracket there may be blanks and comments.
            Some(name) => {
                parts(text, name.span.range().end..range.end)
                    .into_iter()
                    .find(|p| p.piece == Piece::Other)?
                    .range
                    .start
            }
            None => range.start,
        };
        Some(Self {
            inside: open + 1..range.end.checked_sub(1)?,
            entries,
        })
    }

    /// The bracket of a record, or of an empty `()` or `Name()`, which a record may grow from.
    pub(super) fn of_record(text: &str, node: &Node) -> Option<Self> {
        match &node.kind {
            Kind::Struct { .. } => Self::of(text, node),
            Kind::Tuple { items, .. } if items.is_empty() => Self::of(text, node),
            _ => None,
        }
    }

    /// What stands before an entry, back to the one before it or the opening bracket; behind the
    /// last entry for a number one past it.
    pub(super) fn gap(&self, text: &str, before: usize) -> Vec<Part> {
        let start = match before.checked_sub(1) {
            Some(last) => self.entries.get(last).map_or(self.inside.end, |e| e.end),
            None => self.inside.start,
        };
        let end = self
            .entries
            .get(before)
            .map_or(self.inside.end, |e| e.start);
        parts(text, start..end)
    }

    /// True when a line ends between the entries or beside them.
    pub(super) fn has_lines(&self, text: &str) -> bool {
        (0..=self.entries.len())
            .any(|i| self.gap(text, i).iter().any(|p| p.piece == Piece::LineEnd))
    }

    /// The indentation of the last entry that starts a line.
    pub(super) fn indentation<'a>(&self, text: &'a str) -> Option<&'a str> {
        let starts_line = |i: &usize| self.gap(text, *i).iter().any(|p| p.piece == Piece::LineEnd);
        let last = (0..self.entries.len()).rev().find(starts_line)?;
        Some(indentation(text, self.entries[last].start))
    }
}

fn ranges(items: &[Node]) -> Vec<Range<usize>> {
    items.iter().map(|n| n.span.range()).collect()
}

/// The blanks that the line of a place starts with.
pub(super) fn indentation(text: &str, at: usize) -> &str {
    let before = text.get(..at).unwrap_or("");
    let line = before.rfind('\n').map_or(0, |i| i + 1);
    let line = text.get(line..).unwrap_or("");
    let len = line.find(|c| c != ' ' && c != '\t').unwrap_or(line.len());
    &line[..len]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::syntax::{parse, value_at};

    #[test]
    fn entries_and_gaps() {
        let text = "(\n  a: Flat /* ( */ (h: 1, /* x */ w: 2),\n  b: [],\n)";
        let root = parse(0, text).root.unwrap();
        let whole = Bracket::of(text, &root).unwrap();
        assert_eq!(&text[whole.entries[1].clone()], "b: []");
        assert!(whole.has_lines(text));
        assert_eq!(whole.indentation(text), Some("  "));
        let flat = Bracket::of(text, value_at(&root, "a").unwrap()).unwrap();
        assert_eq!(&text[flat.inside.clone()], "h: 1, /* x */ w: 2");
        assert!(!flat.has_lines(text));
        assert_eq!(flat.indentation(text), None);
        assert_eq!(flat.gap(text, 0), []);
        assert_eq!(flat.gap(text, 1).len(), 4);
        let list = value_at(&root, "b").unwrap();
        assert!(Bracket::of(text, list).is_some() && Bracket::of_record(text, list).is_none());
    }
}

//! What stands between two values: blanks, line ends, comments, a comma?

use std::ops::Range;

/// What a part of a gap is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Piece {
    /// Blanks within a line.
    Blank,
    /// The end of a line, `\n` or `\r\n`.
    LineEnd,
    /// `// ..`, without the end of its line.
    LineComment,
    /// `/* .. */`, which may run over lines.
    BlockComment,
    /// The comma.
    Comma,
    /// The first sign that belongs to no gap; nothing behind it is looked at.
    Other,
}

/// A part of a gap.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Part {
    pub(super) piece: Piece,
    pub(super) range: Range<usize>,
}

impl Part {
    /// True for both kinds of comment.
    pub(super) fn is_comment(&self) -> bool {
        matches!(self.piece, Piece::LineComment | Piece::BlockComment)
    }
}

/// The parts of a gap, which must start between two tokens.
pub(super) fn parts(text: &str, range: Range<usize>) -> Vec<Part> {
    let mut parts = Vec::new();
    let mut at = range.start;
    while let Some(rest) = text.get(at..range.end).filter(|rest| !rest.is_empty()) {
        let (piece, len) = first(rest);
        parts.push(Part {
            piece,
            range: at..at + len,
        });
        if piece == Piece::Other {
            break;
        }
        at += len;
    }
    parts
}

/// The first part of a text that is not empty, and its length.
fn first(rest: &str) -> (Piece, usize) {
    if rest.starts_with("\r\n") {
        (Piece::LineEnd, 2)
    } else if rest.starts_with('\n') {
        (Piece::LineEnd, 1)
    } else if rest.starts_with(',') {
        (Piece::Comma, 1)
    } else if rest.starts_with("//") {
        let line = rest.split('\n').next().unwrap_or(rest);
        let ended = line.len() < rest.len();
        let line = if ended {
            line.strip_suffix('\r').unwrap_or(line)
        } else {
            line
        };
        (Piece::LineComment, line.len())
    } else if rest.starts_with("/*") {
        (Piece::BlockComment, block_comment(rest))
    } else {
        // Blanks beyond ASCII are few; none of them is a sign of the grammar.
        let blank = |c: char| c.is_whitespace() || matches!(c, '\u{200e}' | '\u{200f}');
        let mut chars = rest.char_indices().peekable();
        while let Some((at, c)) = chars.next() {
            let next = chars.peek().map(|(_, c)| *c);
            if !blank(c) || c == '\n' || (c == '\r' && next == Some('\n')) {
                return match at {
                    0 => (Piece::Other, c.len_utf8()),
                    _ => (Piece::Blank, at),
                };
            }
        }
        (Piece::Blank, rest.len())
    }
}

/// The length of the block comment at the start; they nest.
fn block_comment(rest: &str) -> usize {
    let mut level = 0_usize;
    let mut at = 0;
    while let Some(here) = rest.get(at..).filter(|here| !here.is_empty()) {
        if here.starts_with("/*") {
            level += 1;
            at += 2;
        } else if here.starts_with("*/") {
            level = level.saturating_sub(1);
            at += 2;
            if level == 0 {
                return at;
            }
        } else {
            at += here.chars().next().map_or(1, char::len_utf8);
        }
    }
    rest.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_parts() {
        let text = " \t/* a /* b */ , */ , // c, /*\r\n\r\n\u{2003}(x";
        let found: Vec<(Piece, &str)> = parts(text, 0..text.len())
            .into_iter()
            .map(|p| (p.piece, &text[p.range]))
            .collect();
        assert_eq!(
            found,
            [
                (Piece::Blank, " \t"),
                (Piece::BlockComment, "/* a /* b */ , */"),
                (Piece::Blank, " "),
                (Piece::Comma, ","),
                (Piece::Blank, " "),
                (Piece::LineComment, "// c, /*"),
                (Piece::LineEnd, "\r\n"),
                (Piece::LineEnd, "\r\n"),
                (Piece::Blank, "\u{2003}"),
                (Piece::Other, "("),
            ]
        );
        assert_eq!(parts("ab", 1..1), []);
    }
}

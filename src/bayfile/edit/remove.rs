//! What goes with a field or item that is removed, and what stays?

use std::ops::Range;

use super::bracket::Bracket;
use super::gap::{Part, Piece};

/// The text without the entry of a number; none when there is no such entry.
pub(super) fn remove(text: &str, bracket: &Bracket, which: usize) -> Option<String> {
    let entry = bracket.entries.get(which)?;
    let before = Before::of(bracket.gap(text, which), which == 0, entry.start);
    let after = After::of(
        bracket.gap(text, which + 1),
        which + 1 == bracket.entries.len(),
        before.is_first_on_line,
        entry.end,
    );
    let (lines, own) = pieces(bracket, which, &before, &after);
    let mut out: Vec<Range<usize>> = lines.into_iter().chain([own]).collect();
    // A last item without a comma of its own shares the one before it.
    if after.is_last
        && !after.has_comma
        && let Some(comma) = &before.comma
    {
        out.push(comma.clone());
    }
    out.sort_by_key(|range| range.start);
    if bracket.entries.len() == 1 && only_blank(text, &bracket.inside, &out) {
        out.clear();
        out.push(bracket.inside.clone());
    }
    let mut edited = text.to_string();
    for range in out.into_iter().rev() {
        edited.replace_range(range, "");
    }
    Some(edited)
}

/// What to cut out, the comma before apart: in one piece, or with the lines above apart.
fn pieces(
    bracket: &Bracket,
    which: usize,
    before: &Before,
    after: &After,
) -> (Option<Range<usize>>, Range<usize>) {
    let start = which.checked_sub(1).and_then(|i| bracket.entries.get(i));
    let start = start.map_or(bracket.inside.start, |e| e.end);
    let kept_before = before.kept_end.unwrap_or(start);
    match (&before.lines, &after.then) {
        (Some(lines), Then::LineEnd(end)) => (None, lines.start..end.end),
        // The bracket closes on this line: it moves up, unless it would end up in a comment.
        (Some(_), Then::Close(close)) if !before.kept_is_line_comment => {
            (None, kept_before..*close)
        }
        // The line's indentation is kept for what follows on it.
        (Some(lines), Then::Close(next) | Then::More(next)) => {
            (Some(lines.clone()), before.own_start..*next)
        }
        (None, Then::LineEnd(end)) => (None, kept_before..end.start),
        (None, Then::Close(_)) => (None, kept_before..after.own_end),
        (None, Then::More(next)) => (None, before.own_start..*next),
    }
}

/// What stands before the entry.
struct Before {
    /// The comma behind the entry before it.
    comma: Option<Range<usize>>,
    /// No other entry stands before it on its line.
    is_first_on_line: bool,
    /// Where it is the first thing on its line: from the start of the first comment line that goes
    /// with it to the start of its own line.
    lines: Option<Range<usize>>,
    /// The start of the first comment on its own line, or of the entry.
    own_start: usize,
    /// The end of the last comma or comment that stays.
    kept_end: Option<usize>,
    kept_is_line_comment: bool,
}

impl Before {
    fn of(parts: Vec<Part>, is_first: bool, start: usize) -> Self {
        let comma = parts.iter().position(|p| p.piece == Piece::Comma);
        // What stands up to the comma belongs to the entry before.
        let own = comma.map_or(0, |i| i + 1);
        let ends: Vec<usize> = (own..parts.len())
            .filter(|i| parts[*i].piece == Piece::LineEnd)
            .collect();
        // Comment lines go with the entry as far as they stand directly above it.
        let has_comment = |pair: &&[usize]| parts[pair[0]..pair[1]].iter().any(Part::is_comment);
        let with_it = ends.windows(2).rev().take_while(has_comment).count();
        let first = (ends.len() - with_it).checked_sub(1).map(|i| ends[i]);
        let line = ends.last().copied();
        let lines = first
            .zip(line)
            .map(|(first, line)| parts[first].range.end..parts[line].range.end);
        let own_start = match line {
            Some(line) => {
                let comment = parts[line..].iter().find(|p| p.is_comment());
                comment.map_or(start, |p| p.range.start)
            }
            None => start,
        };
        let kept = parts[..first.unwrap_or(parts.len())]
            .iter()
            .rfind(|p| p.is_comment() || p.piece == Piece::Comma);
        Self {
            is_first_on_line: is_first || line.is_some(),
            lines,
            own_start,
            kept_end: kept.map(|p| p.range.end),
            kept_is_line_comment: kept.is_some_and(|p| p.piece == Piece::LineComment),
            comma: comma.map(|i| parts[i].range.clone()),
        }
    }
}

/// What follows on the line once the entry is cut out.
enum Then {
    /// Nothing: the line's end, here.
    LineEnd(Range<usize>),
    /// The closing bracket, here.
    Close(usize),
    /// A comment that stays or another entry, here.
    More(usize),
}

/// What stands behind the entry.
struct After {
    is_last: bool,
    has_comma: bool,
    /// The end of what goes with the entry.
    own_end: usize,
    then: Then,
}

impl After {
    fn of(parts: Vec<Part>, is_last: bool, is_first_on_line: bool, end: usize) -> Self {
        let comma = parts.iter().position(|p| p.piece == Piece::Comma);
        let mut next = comma.map_or(0, |i| i + 1);
        let stop = |from: usize, piece: fn(&Part) -> bool| {
            let found = parts[from..].iter().position(piece);
            found.map_or(parts.len(), |i| from + i)
        };
        if comma.is_none() {
            // Up to the bracket or the line's end, and not a comment that the line shares.
            next = stop(next, |p| {
                matches!(p.piece, Piece::LineEnd | Piece::LineComment)
            });
        }
        let line_end = stop(next, |p| p.piece == Piece::LineEnd);
        if is_first_on_line && (line_end < parts.len() || is_last) {
            next = line_end;
        }
        let gap_end = parts.last().map_or(end, |p| p.range.end);
        let own = parts[..next].iter().rfind(|p| p.piece != Piece::Blank);
        let then = match parts[next..].iter().find(|p| p.piece != Piece::Blank) {
            Some(p) if p.piece == Piece::LineEnd => Then::LineEnd(p.range.clone()),
            Some(p) => Then::More(p.range.start),
            None if is_last => Then::Close(gap_end),
            None => Then::More(gap_end),
        };
        Self {
            is_last,
            has_comma: comma.is_some(),
            own_end: own.map_or(end, |p| p.range.end),
            then,
        }
    }
}

/// True when nothing but blanks is left inside once the ranges are cut out.
fn only_blank(text: &str, inside: &Range<usize>, cut: &[Range<usize>]) -> bool {
    let kept = |(at, _): &(usize, char)| !cut.iter().any(|range| range.contains(at));
    text[inside.clone()]
        .char_indices()
        .map(|(at, c)| (inside.start + at, c))
        .filter(kept)
        .all(|(_, c)| c.is_whitespace())
}

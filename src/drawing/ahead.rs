//! What stands on top of a sheet for a day that someone asked for?

use super::flow::Piece;
use super::palette::paper::WARN;
use crate::ground::ForDay;
use crate::report::holds_only_from;

/// In the frame of every page.
pub(super) fn warning(day: ForDay) -> Option<String> {
    holds_only_from(day).map(|words| format!("{}.", words.to_uppercase()))
}

/// Large, above everything else of a page.
pub(super) fn on_top(day: ForDay, pieces: Vec<Piece>) -> Vec<Piece> {
    let Some(words) = holds_only_from(day) else {
        return pieces;
    };
    let mut all = vec![Piece::Band(words, 7.0, WARN), Piece::Gap(1.5)];
    all.extend(pieces);
    all
}

//! How does it come down again: how far may it climb off its lock?
//!
//! The latches hold until both carriages have climbed off them. That is past the STOP mark, which
//! is only for the way up, and must stay below NEVER ABOVE.

use super::Piece;
use super::edge::{Written, joined};
use crate::bay::Bay;
use crate::drawing::palette::paper::{INK, WARN};
use crate::units::{Rounding, both};

/// What is said of the climb off the lock, the label first.
pub(super) fn piece(bay: &Bay, lock: usize, marks: &Written) -> Piece {
    let label = "To come down".to_owned();
    let above = both(bay.lift.release_overtravel, bay.units, Rounding::Up);
    let Some(release) = &marks.release else {
        let text = format!(
            "DO NOT USE LOCK {lock}: its latches let go {above} above it, and between that and \
             NEVER ABOVE lies no graduation of the tape. Take a lower lock: from there climb \
             {above} off it, pull both latches and hold them out on both sides, then lower"
        );
        return Piece::Labelled(label, text, WARN);
    };
    let most = match &marks.never {
        Some(never) if never == release => "which is NEVER ABOVE itself, no higher".to_owned(),
        Some(never) => format!("at most to NEVER ABOVE, {}", joined(never)),
        None => "no farther than that needs".to_owned(),
    };
    let text = format!(
        "from lock {lock} climb until the lower carriage's marked edge is at RELEASE, {}, {most}. \
         Pull both latches and hold them out on both sides, then lower to the floor. Where one does \
         not let go, set it back on the lock and get help. From a lower lock climb {above} off it. \
         Nothing else ever takes it past STOP",
        joined(release)
    );
    Piece::Labelled(label, text, INK)
}

/// Which carriage the marks are for.
pub(super) fn which_carriage(bay: &Bay, marks: &Written) -> String {
    let lift = &bay.lift;
    let apart = both(lift.side_mismatch, bay.units, Rounding::Down);
    let (which, them) = if marks.never.is_some() {
        ("All marks are", "them")
    } else {
        ("The mark is", "it")
    };
    let coast = if marks.never.is_some() {
        format!(
            " The button is let go at NEVER ABOVE at the latest; a slow hand and coasting may carry \
             it at most {} past.",
            both(lift.overshoot, bay.units, Rounding::Down)
        )
    } else {
        String::new()
    };
    format!(
        "{which} for the LOWER carriage. The other may stand up to {apart} higher, even above \
         {them}: that is counted in. Farther apart than that: stop, and level them as the manual says.{coast}"
    )
}

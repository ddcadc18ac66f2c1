//! What must be minded at every raise?

use super::Piece;

/// Whether the marks have one never to be passed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Never {
    /// They have.
    Marked,
    /// Nothing is met within the travel.
    NoMark,
    /// Each vehicle has its own, or none.
    OfEach,
}

/// One sentence or two each. Common practice, no source, but for what the study stands on; the
/// lift maker's manual goes before all of it.
fn care(never: Never) -> [String; 7] {
    let never = match never {
        Never::Marked => "On the way up it climbs no farther, and it never passes NEVER ABOVE.",
        Never::NoMark => "On the way up it climbs no farther.",
        Never::OfEach => {
            "On the way up it climbs no farther, and it never passes this vehicle's NEVER ABOVE."
        }
    };
    [
        "No power means no release upward: the carriages must climb off their locks before the \
         latches can be pulled. Without power nobody works the latches by force or goes under; \
         follow the lift maker's manual, and call for help."
            .into(),
        "Before the raise: this vehicle with this load, parked on its lines; pads set as its card \
         says, under their lift points; arm restraints engaged; hood, hatch, tailgate and doors \
         shut; nobody in it, under it or beside it."
            .into(),
        "Stop when the tyres are just off the floor. All four pads must bear, each restraint hold \
         and the vehicle sit steady and level: if not, lower it and set it again."
            .into(),
        format!(
            "Stop when the lower carriage is at the STOP mark. {never} The shut-off bar, where \
             there is one, is no brake to rely on."
        ),
        "Then lower onto the lock: both carriages on the same lock, both latches in, seen on both \
         sides. Nobody goes under before that."
            .into(),
        "To come down: climb off the lock only as far as the vehicle's page says (to RELEASE, off \
         its highest safe lock), pull both latches, see both out, then lower with nobody under or \
         beside it."
            .into(),
        "This card is for the bay as its file says. Another load, tyre size, pad, adapter, light, \
         door, opener or shim needs a new card: the input number below must be that of the newest \
         report."
            .into(),
    ]
}

pub(super) fn pieces(never: Never) -> Vec<Piece> {
    let heading = "At every raise (common practice; the lift maker's manual goes before it)";
    let mut pieces = vec![Piece::Heading(heading.into())];
    pieces.extend(care(never).map(Piece::item));
    pieces
}

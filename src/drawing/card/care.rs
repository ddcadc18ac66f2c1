//! What must be minded at every raise?

use super::Piece;

/// One sentence or two each. Common practice, no source, but for what the study stands on; the
/// lift maker's manual goes before all of it.
pub(super) const CARE: [&str; 6] = [
    "No power means no release upward: the carriages must climb off their locks before the latches \
     can be pulled. Without power nobody works the latches by force or goes under; follow the lift \
     maker's manual, and call for help.",
    "Before the raise: this vehicle with this load, parked on its lines; pads set as its \
     card says, under their lift points; arm restraints engaged; hood, hatch, tailgate and doors shut; nobody \
     in it, under it or beside it.",
    "Stop when the tyres are just off the floor. All four pads must bear, each restraint hold and \
     the vehicle sit steady and level: if not, lower it and set it again.",
    "Stop when the lower carriage is at the STOP mark. No carriage passes NEVER ABOVE. The shut-off \
     bar, where there is one, is no brake to rely on.",
    "Then lower onto the lock: both carriages on the same lock, both latches in, seen on both \
     sides. Nobody goes under before that.",
    "This card is for the bay as its file says. Another load, tyre size, pad, adapter, light, door, \
     opener or shim needs a new card: the input number below must be that of the newest report.",
];

pub(super) fn pieces() -> Vec<Piece> {
    let heading = "At every raise (common practice; the lift maker's manual goes before it)";
    let mut pieces = vec![Piece::Heading(heading.into())];
    pieces.extend(CARE.map(Piece::item));
    pieces
}

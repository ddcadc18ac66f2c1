//! A page of the log that is kept with the lift.

use super::{Piece, row};
use crate::drawing::palette::paper::INK;

/// Inspections that a page holds.
const YEARS: usize = 4;

/// What is looked at each time. Common practice, no source; the manual goes before.
const LOOKED_AT: [&str; 12] = [
    "Anchors at the manual's torque; slab around the plates",
    "Posts plumb, plates and shims tight",
    "Latches in and out on both sides, at every lock used",
    "Carriages level with each other over the whole rise",
    "Cables, chains, pulleys, slide blocks: wear, tension",
    "Arms, pins, restraint teeth: wear, play, engagement",
    "Pads and adapters: cuts, rubber, threads",
    "Cylinders, hoses, fittings, oil: leaks, level",
    "Shut-off, button, disconnect, wiring",
    "Cracks, bent parts, missing bolts, labels readable",
    "STOP and NEVER ABOVE on both columns, by a steel tape",
    "Lock card: same input number as the newest report",
];

pub(super) fn pieces() -> Vec<Piece> {
    let mut pieces = vec![Piece::says(
        "At least once a year by a qualified lift inspector (ANSI/ALI ALOIM:2020, from a public \
         summary of it; some places ask for it every six months), and after a knock, a flood, a \
         quake, a repair or a move. Each day before use the manual's own checks. A lift with a \
         fault is locked out until it is cured. Write \u{201c}good\u{201d}, or what was found.",
    )];
    let mut cells = vec![(
        "looked at (common practice; the manual goes before it)",
        3.0,
    )];
    cells.extend([("date:", 1.0); YEARS]);
    pieces.push(row(&cells, 7.5, INK));
    let mut cells = vec![("", 3.0)];
    cells.extend([("", 1.0); YEARS]);
    for what in LOOKED_AT {
        cells[0].0 = what;
        pieces.push(row(&cells, 9.6, INK));
    }
    for what in [
        "Fault cured, by whom, when",
        "Inspector, qualification",
        "Signature",
    ] {
        cells[0].0 = what;
        pieces.push(row(&cells, 14.0, INK));
    }
    pieces
}

//! Which values of a thing change when it is moved?

use super::super::now::{Now, exact_text};
use super::super::paths::join;
use super::super::table::CYLINDER;
use crate::bayfile::edit::quoted;
use crate::panels::Change;
use crate::units::{self, Length};

/// A way to move: along an axis of the bay, forward or back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Direction {
    /// 0 to the right, 1 into the bay, 2 up.
    axis: usize,
    forward: bool,
}

impl Direction {
    /// All, in the order of the buttons.
    pub(super) const ALL: [Self; 6] = [
        Self::new(0, false),
        Self::new(0, true),
        Self::new(1, false),
        Self::new(1, true),
        Self::new(2, false),
        Self::new(2, true),
    ];

    const fn new(axis: usize, forward: bool) -> Self {
        Self { axis, forward }
    }

    /// The button's word.
    pub(super) const fn word(self) -> &'static str {
        match (self.axis, self.forward) {
            (0, false) => "Left",
            (0, true) => "Right",
            (1, false) => "To the door",
            (1, true) => "To the back",
            (_, false) => "Down",
            (_, true) => "Up",
        }
    }
}

/// How far one press moves.
pub(super) fn step(now: &Now<'_>, far: bool) -> Length {
    if far {
        now.pick(12.0, 300.0)
    } else {
        now.pick(1.0, 25.0)
    }
}

/// The changes that move the thing at a path; none when it can't be moved so: a beam along itself
/// from wall to wall, or anything down through the floor.
pub(super) fn changes(
    now: &Now<'_>,
    path: &str,
    direction: Direction,
    step: Length,
) -> Option<Vec<Change>> {
    let step = if direction.forward {
        step
    } else {
        Length::ZERO - step
    };
    let mut changes = Vec::new();
    for name in moved(now, direction.axis)? {
        let old = now.text_in(name)?;
        let new = units::parse_length(&old).ok()? + step;
        if direction.axis == 2 && new < Length::ZERO {
            return None;
        }
        let metric = if old.contains('m') {
            true
        } else {
            now.is_metric() && !old.contains(['i', 'f', '"', '\''])
        };
        changes.push(Change::Set {
            path: join(path, name),
            value: quoted(&exact_text(new, metric)),
        });
    }
    Some(changes)
}

/// The values that a move along an axis changes.
fn moved(now: &Now<'_>, axis: usize) -> Option<Vec<&'static str>> {
    if now.is(CYLINDER) {
        let ends = [
            ["from[0]", "to[0]"],
            ["from[1]", "to[1]"],
            ["from[2]", "to[2]"],
        ];
        return ends.get(axis).map(|ends| ends.to_vec());
    }
    if now.is("Box") {
        return Some(vec![*["x", "y", "bottom"].get(axis)?]);
    }
    if axis == 2 {
        return Some(vec!["underside"]);
    }
    // Across the way it runs its middle line moves, along it its ends.
    let runs_along = match now.text_in("along")?.as_str() {
        "DoorToBack" => 1,
        "SideToSide" => 0,
        _ => return None,
    };
    if axis == runs_along {
        return (now.has("from") && now.has("to")).then(|| vec!["from", "to"]);
    }
    Some(vec![if now.is("Ties") { "first" } else { "at" }])
}

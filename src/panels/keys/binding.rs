//! What is said of a key: what it is about, what it does, and when it is obeyed?

use super::stroke::Stroke;
use crate::panels::{Action, Desk};

/// What a key is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Group {
    /// The carriage.
    Rise,
    /// The door.
    Door,
    /// The view.
    View,
    /// What is shown, and how large.
    Show,
    /// The bay file.
    File,
}

impl Group {
    /// All, in the order of the help sheet.
    pub const ALL: [Self; 5] = [Self::Rise, Self::Door, Self::View, Self::Show, Self::File];

    /// Its heading.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Rise => "Rise",
            Self::Door => "Door",
            Self::View => "View",
            Self::Show => "Show",
            Self::File => "File",
        }
    }
}

/// What some keys ask for.
#[derive(Debug)]
pub struct Binding {
    /// What it is about.
    pub group: Group,
    /// Any of these.
    pub strokes: &'static [Stroke],
    /// What it does, in words.
    pub does: &'static str,
    /// Obeyed even while text is typed into a field, by those of its keys that type nothing.
    pub in_fields: bool,
    /// What it asks for; none when it means nothing at this time.
    pub action: fn(&Desk) -> Option<Action>,
}

/// A binding that leaves fields alone.
pub(super) const fn key(
    group: Group,
    strokes: &'static [Stroke],
    does: &'static str,
    action: fn(&Desk) -> Option<Action>,
) -> Binding {
    Binding {
        group,
        strokes,
        does,
        in_fields: false,
        action,
    }
}

/// A binding that is obeyed in fields too.
pub(super) const fn anywhere(
    group: Group,
    strokes: &'static [Stroke],
    does: &'static str,
    action: fn(&Desk) -> Option<Action>,
) -> Binding {
    Binding {
        in_fields: true,
        ..key(group, strokes, does, action)
    }
}

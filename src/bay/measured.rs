//! What was read off the tape, the plumb line and the level after the posts were set out.

use super::Side;
use crate::diagnostics::Place;
use crate::units::Length;

/// A corner of a base plate, numbered as on the floor sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlateCorner {
    /// Which post.
    pub side: Side,
    /// 1 rear outer, 2 rear inner, 3 front inner, 4 front outer.
    pub number: u8,
}

impl PlateCorner {
    /// All eight, left plate first.
    pub const ALL: [Self; 8] = {
        let mut all = [Self {
            side: Side::Left,
            number: 1,
        }; 8];
        let mut index = 0;
        while index < 8 {
            all[index] = Self {
                side: if index < 4 { Side::Left } else { Side::Right },
                number: (index % 4) as u8 + 1,
            };
            index += 1;
        }
        all
    };

    /// Its letters on the floor sheet.
    #[must_use]
    pub const fn letters(self) -> &'static str {
        match (self.side, self.number) {
            (Side::Left, 1) => "LP1",
            (Side::Left, 2) => "LP2",
            (Side::Left, 3) => "LP3",
            (Side::Left, _) => "LP4",
            (Side::Right, 1) => "RP1",
            (Side::Right, 2) => "RP2",
            (Side::Right, 3) => "RP3",
            (Side::Right, _) => "RP4",
        }
    }

    /// Which corner of its plate it is.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self.number {
            1 => "rear outer",
            2 => "rear inner",
            3 => "front inner",
            _ => "front outer",
        }
    }
}

/// A point that a tape is held to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// Corner of door wall and left wall.
    A,
    /// Corner of door wall and right wall.
    B,
    /// Middle of the door opening, at the inner face of the door wall.
    C,
    /// Middle of a column's inner face, at its foot, on the column itself: K on the left, L on the
    /// right. It moves and turns with the post.
    Face(Side),
    /// A corner of a plate.
    Corner(PlateCorner),
}

impl Mark {
    /// Its letters on the floor sheet.
    #[must_use]
    pub const fn letters(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
            Self::Face(Side::Left) => "K",
            Self::Face(Side::Right) => "L",
            Self::Corner(corner) => corner.letters(),
        }
    }

    /// The post that it moves with; none for a mark of the room.
    #[must_use]
    pub const fn post(self) -> Option<Side> {
        match self {
            Self::A | Self::B | Self::C => None,
            Self::Face(side) => Some(side),
            Self::Corner(corner) => Some(corner.side),
        }
    }
}

/// A wall that a tape is pulled from, square to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FromWall {
    /// The door wall: the base line.
    Door,
    /// The left wall.
    Left,
    /// The right wall.
    Right,
    /// The wall across from the door.
    Back,
}

impl FromWall {
    /// The words a person uses.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Door => "door wall",
            Self::Left => "left wall",
            Self::Right => "right wall",
            Self::Back => "back wall",
        }
    }
}

/// What a tape was pulled over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// From mark to mark.
    Between(Mark, Mark),
    /// From a wall, square to it.
    Wall(FromWall, Mark),
}

/// One reading of the tape.
#[derive(Debug, Clone, PartialEq)]
pub struct Taken {
    /// What was measured.
    pub over: Over,
    /// What the tape showed.
    pub reading: Length,
    /// How far that may be off, either way.
    pub tolerance: Length,
    /// Where the file says it.
    pub place: Option<Place>,
}

/// A direction on the floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Toward {
    /// -x.
    Left,
    /// +x.
    Right,
    /// +y.
    Front,
    /// -y.
    Rear,
}

impl Toward {
    /// True across the bay.
    #[must_use]
    pub const fn is_across(self) -> bool {
        matches!(self, Self::Left | Self::Right)
    }

    /// +1 toward +x or +y.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Self::Left | Self::Rear => -1.0,
            Self::Right | Self::Front => 1.0,
        }
    }
}

/// How far a post leans, in one direction.
#[derive(Debug, Clone, PartialEq)]
pub struct Plumb {
    /// Which post.
    pub side: Side,
    /// Where its top leans to.
    pub toward: Toward,
    /// By how much.
    pub out: Length,
    /// Over which height.
    pub over: Length,
    /// How far `out` may be off.
    pub tolerance: Length,
    /// Where the file says it.
    pub place: Option<Place>,
    /// Where the file says over which height.
    pub over_place: Option<Place>,
}

/// A height at a plate's corner: of a stack of shims, or of the floor.
#[derive(Debug, Clone, PartialEq)]
pub struct CornerHeight {
    /// Which corner.
    pub at: PlateCorner,
    /// How high.
    pub height: Length,
}

/// What a feeler gauge found under a post's plate, with its anchors snug.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Feeler {
    /// Which post.
    pub side: Side,
    /// No leaf thicker than this goes in under any of its corners or shims.
    pub gap: Length,
}

/// Everything that was read after setting out.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// The person's title.
    pub title: String,
    /// Tape readings.
    pub tape: Vec<Taken>,
    /// Readings of the plumb line; more than one across or along a post check each other.
    pub plumb: Vec<Plumb>,
    /// Shims that lie under the plates now.
    pub shims: Vec<CornerHeight>,
    /// What was felt under the plates, at most once for each.
    pub feeler: Vec<Feeler>,
    /// The floor under the corners, from any one level line, up positive.
    pub levels: Vec<CornerHeight>,
    /// How far a level may be off.
    pub level_tolerance: Length,
}

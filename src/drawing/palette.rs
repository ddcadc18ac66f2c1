//! Which colour does each thing have? Every colour of the program, once.
//!
//! The states of locks and pairs are told apart by text and shape first; their colours are chosen
//! so that people with a red-green or blue-yellow weakness tell every two of them apart too, which
//! a test computes.

pub mod paper;
pub mod screen;
pub mod things;

use crate::clearance::LockState;

/// A colour: red, green, blue in sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Colour(pub u8, pub u8, pub u8);

impl Colour {
    /// The channels from 0 to 1, still in sRGB.
    #[must_use]
    pub fn srgb(self) -> [f32; 3] {
        [self.0, self.1, self.2].map(|channel| f32::from(channel) / 255.0)
    }
}

/// Every margin holds.
pub const CLEAR: Colour = Colour(0x17, 0x8a, 0xa6);
/// A margin is short.
pub const TIGHT: Colour = Colour(0xe6, 0xa5, 0x1f);
/// Something touches.
pub const STRIKES: Colour = Colour(0xc6, 0x30, 0x3c);
/// The way there is barred below.
pub const BARRED: Colour = Colour(0x6b, 0x45, 0xb8);
/// Not decided, or not known.
pub const UNDECIDED: Colour = Colour(0x3a, 0x3a, 0x42);
/// The pads do not carry, or the latches can't let go.
pub const IDLE: Colour = Colour(0xab, 0xb0, 0xb4);

/// The colour of a lock's state; a word and a shape always stand beside it.
#[must_use]
pub const fn lock(state: LockState) -> Colour {
    match state {
        LockState::Clear => CLEAR,
        LockState::Tight => TIGHT,
        LockState::Strikes => STRIKES,
        LockState::Barred => BARRED,
        LockState::NotShown => UNDECIDED,
        LockState::NotLifting | LockState::NoRelease => IDLE,
    }
}

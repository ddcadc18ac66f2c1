//! Which inks does a drawing on paper have? Few, and each readable when printed in grey.

use super::Colour;

/// Outlines, text.
pub const INK: Colour = Colour(0x1a, 0x1c, 0x20);
/// Dimension lines and leaders.
pub const FINE: Colour = Colour(0x6a, 0x70, 0x78);
/// Building: walls, ceiling, beams.
pub const WALL: Colour = Colour(0xd4, 0xd1, 0xc8);
/// The lift's steel.
pub const STEEL: Colour = Colour(0xb4, 0xc3, 0xd0);
/// The vehicle's body.
pub const BODY: Colour = Colour(0xee, 0xe6, 0xd2);
/// Tyres.
pub const TYRE: Colour = Colour(0x9a, 0x9a, 0x96);
/// The door and what moves it.
pub const DOOR: Colour = Colour(0xdd, 0xe3, 0xd8);
/// What is set out: points, lines to pull, holes.
pub const SET_OUT: Colour = Colour(0x0b, 0x5f, 0x8a);
/// Joints, cracks, edges, drains.
pub const SLAB_LINE: Colour = Colour(0x8a, 0x4b, 0x12);
/// What forbids.
pub const WARN: Colour = Colour(0xa8, 0x1c, 0x28);
/// The page.
pub const PAPER: Colour = Colour(0xff, 0xff, 0xff);

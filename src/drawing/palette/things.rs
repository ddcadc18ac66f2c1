//! Which colour does each thing in the room have?
//!
//! Quiet colours, so that the colours of the states stand out; none of them is near one of those.

use super::Colour;

/// Behind the bay, light.
pub const BEHIND_LIGHT: Colour = Colour(0xf4, 0xf5, 0xf6);
/// Behind the bay, dark.
pub const BEHIND_DARK: Colour = Colour(0x1a, 0x1e, 0x24);
/// The floor.
pub const FLOOR: Colour = Colour(0xca, 0xcd, 0xcf);
/// Saw cuts, cracks and drains in the floor.
pub const FLOOR_LINE: Colour = Colour(0x84, 0x8a, 0x90);
/// Walls.
pub const WALL: Colour = Colour(0xe8, 0xe8, 0xe4);
/// The ceiling.
pub const CEILING: Colour = Colour(0xe9, 0xea, 0xe8);
/// What a section cuts through.
pub const CUT: Colour = Colour(0x6c, 0x73, 0x7c);
/// Lines along edges on a light ground.
pub const EDGE_LIGHT: Colour = Colour(0x54, 0x5c, 0x66);
/// Lines along edges on a dark ground.
pub const EDGE_DARK: Colour = Colour(0x8b, 0x95, 0xa1);

/// Columns, base plates and what ties them.
pub const COLUMN: Colour = Colour(0x4b, 0x52, 0x5c);
/// Carriages and arms.
pub const ARM: Colour = Colour(0x8e, 0x97, 0xa1);
/// Rubber: pads and tyres.
pub const RUBBER: Colour = Colour(0x2c, 0x2e, 0x32);
/// Motor, pump and tank.
pub const POWER_UNIT: Colour = Colour(0x66, 0x70, 0x7c);
/// The padded bar.
pub const BAR: Colour = Colour(0x3a, 0x40, 0x49);

/// Door panels.
pub const DOOR: Colour = Colour(0xf0, 0xed, 0xe6);
/// Grooves in door panels.
pub const DOOR_GROOVE: Colour = Colour(0xcb, 0xc8, 0xc0);
/// Galvanised steel: tracks, springs, rails, ducts and pipes.
pub const GALVANISED: Colour = Colour(0xa4, 0xad, 0xb5);
/// The opener's housing.
pub const OPENER: Colour = Colour(0x5a, 0x60, 0x68);
/// A lamp that is on.
pub const LAMP_ON: Colour = Colour(0xff, 0xf6, 0xdc);
/// Timber: beams, ties, shelves, benches.
pub const TIMBER: Colour = Colour(0xb8, 0xa0, 0x80);
/// Anything else in the room.
pub const OTHER: Colour = Colour(0xa9, 0xa6, 0xa0);

/// The vehicle's paint.
pub const BODY: Colour = Colour(0x5e, 0x86, 0xad);
/// The paint of a camper: lighter.
pub const BODY_PALE: Colour = Colour(0xdd, 0xdc, 0xd4);
/// The stripe of a camper.
pub const STRIPE: Colour = Colour(0x5e, 0x86, 0xad);
/// The underside and everything under the body.
pub const UNDERBODY: Colour = Colour(0x4a, 0x4d, 0x52);
/// Windows.
pub const GLASS: Colour = Colour(0x24, 0x2f, 0x3a);
/// Bumpers, sills, wheel wells, grilles: dark plastic.
pub const TRIM: Colour = Colour(0x33, 0x37, 0x3d);
/// Gaps beside doors and lids.
pub const GAP: Colour = Colour(0x30, 0x44, 0x58);
/// Gaps on pale paint.
pub const GAP_PALE: Colour = Colour(0x8e, 0x8d, 0x86);
/// Rims.
pub const RIM: Colour = Colour(0xc3, 0xc9, 0xcf);
/// Between the spokes of a rim.
pub const RIM_SHADE: Colour = Colour(0x55, 0x5b, 0x62);
/// Head lamps.
pub const HEAD_LAMP: Colour = Colour(0xf2, 0xf4, 0xee);
/// Tail lamps.
pub const TAIL_LAMP: Colour = Colour(0x9c, 0x3b, 0x36);
/// The floor of an open bed.
pub const BED: Colour = Colour(0x3b, 0x40, 0x46);
/// Racks, boxes and loads fixed to the body.
pub const LOAD: Colour = Colour(0xa6, 0x8e, 0x72);
/// A mirror's shell.
pub const MIRROR: Colour = Colour(0x3d, 0x43, 0x4b);
/// The figure of a person.
pub const PERSON: Colour = Colour(0xd8, 0xc7, 0xae);

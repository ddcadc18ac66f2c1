//! What is put into the room when something is added, how large, and where?
//!
//! Under the lowest part of the ceiling or on the floor, where such things commonly are. Size and
//! place are placeholders: the person measures their own.

use super::super::now::Now;
use super::super::table::Fresh;
use super::taken::{Block, clear_of, taken};
use crate::units::Length;

/// What can be added: its word and its maker.
pub(in crate::panels::edit) const ALL: &[(&str, Fresh)] = &[
    ("Light", light),
    ("Beam", beam),
    ("Collar ties", ties),
    ("Duct", duct),
    ("Pipe", pipe),
    ("Heater", heater),
    ("Fan", fan),
    ("Shelf", shelf),
    ("Bench", bench),
    ("Post", post),
    ("Second vehicle", second_vehicle),
    ("Something else", other),
];

/// Under the ceiling over the lift.
pub(in crate::panels::edit) fn light(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (6.0, 150.0), (48.0, 1200.0), (4.0, 100.0));
    room.over_lift("light", "Light", size)
}

fn duct(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (12.0, 300.0), (96.0, 2400.0), (12.0, 300.0));
    let x = room.left + now.pick(24.0, 600.0);
    room.hung("duct", "Duct", size, [x, room.depth * 0.5])
}

fn heater(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (24.0, 600.0), (24.0, 600.0), (20.0, 500.0));
    let place = [
        room.left + now.pick(24.0, 600.0),
        room.depth - now.pick(24.0, 600.0),
    ];
    room.hung("heater", "Heater", size, place)
}

fn fan(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (48.0, 1200.0), (48.0, 1200.0), (12.0, 300.0));
    room.over_lift("fan", "Fan", size)
}

fn shelf(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (18.0, 450.0), (96.0, 2400.0), (18.0, 450.0));
    let place = [room.left + size.width * 0.5, room.depth * 0.5];
    room.placed("shelf", "Shelf", size, place, now.pick(72.0, 1800.0))
}

fn bench(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (72.0, 1800.0), (30.0, 750.0), (36.0, 900.0));
    let place = [room.middle(), room.depth - size.depth * 0.5];
    room.placed("bench", "Bench", size, place, Length::ZERO)
}

fn post(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let mut size = Size::of(now, (6.0, 150.0), (6.0, 150.0), (96.0, 2400.0));
    size.height = room.ceiling;
    let place = [room.left + room.width * 0.25, room.depth * 0.5];
    room.placed("post", "Post", size, place, Length::ZERO)
}

fn second_vehicle(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (72.0, 1830.0), (180.0, 4600.0), (60.0, 1500.0));
    let place = [
        room.left + size.width * 0.5 + now.pick(12.0, 300.0),
        room.depth * 0.5,
    ];
    room.placed("second vehicle", "SecondVehicle", size, place, Length::ZERO)
}

fn other(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let size = Size::of(now, (24.0, 600.0), (24.0, 600.0), (24.0, 600.0));
    let place = [room.left + size.width * 0.5, room.lift[1]];
    room.placed("thing", "Other", size, place, Length::ZERO)
}

/// From wall to wall, under the ceiling toward the back.
pub(in crate::panels::edit) fn pipe(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let y = now.length(room.depth - now.pick(48.0, 1200.0));
    let z = now.length(room.ceiling - now.pick(4.0, 100.0));
    format!(
        "Cylinder(\n    name: {},\n    kind: Pipe,\n    from: ({}, {y}, {z}),\n    to: ({}, {y}, {z}),\n    diameter: {},\n)",
        now.new_name("pipe"),
        now.length(room.left),
        now.length(room.left + room.width),
        now.say(2.0, 50.0)
    )
}

/// Across the room over the post line.
pub(in crate::panels::edit) fn beam(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let height = now.pick(12.0, 300.0);
    format!(
        "Beam(\n    name: {},\n    along: SideToSide,\n    at: {},\n    underside: {},\n    height: {},\n    width: {},\n)",
        now.new_name("beam"),
        now.length(room.lift[1]),
        now.length(room.ceiling - height),
        now.length(height),
        now.say(6.0, 150.0)
    )
}

/// A row across the room.
pub(in crate::panels::edit) fn ties(now: &Now<'_>) -> String {
    let room = Room::of(now);
    let height = now.pick(6.0, 150.0);
    let pitch = now.say(48.0, 1200.0);
    format!(
        "Ties(\n    name: {},\n    along: SideToSide,\n    first: {pitch},\n    pitch: {pitch},\n    count: 3,\n    underside: {},\n    height: {},\n    width: {},\n)",
        now.new_name("collar tie"),
        now.length(room.ceiling - height),
        now.length(height),
        now.say(2.0, 50.0)
    )
}

/// Across, into the bay, upright.
#[derive(Debug, Clone, Copy)]
struct Size {
    width: Length,
    depth: Length,
    height: Length,
}

impl Size {
    fn of(now: &Now<'_>, width: (f64, f64), depth: (f64, f64), height: (f64, f64)) -> Self {
        Self {
            width: now.pick(width.0, width.1),
            depth: now.pick(depth.0, depth.1),
            height: now.pick(height.0, height.1),
        }
    }
}

/// The room as far as the file says it; a common garage's figures where it does not.
struct Room<'a> {
    now: &'a Now<'a>,
    width: Length,
    depth: Length,
    /// The left wall.
    left: Length,
    /// The lowest part of the ceiling.
    ceiling: Length,
    /// The middle between the columns.
    lift: [Length; 2],
}

impl<'a> Room<'a> {
    fn of(now: &'a Now<'a>) -> Self {
        let of = |path: &str| now.length_of(path);
        let width = of("garage.width").unwrap_or_else(|| now.pick(288.0, 7300.0));
        let depth = of("garage.depth").unwrap_or_else(|| now.pick(360.0, 9100.0));
        let offset = of("garage.opening.offset").unwrap_or(Length::ZERO);
        let heights = ["height", "first", "last", "eaves"];
        let steps = (0..200).map_while(|step| of(&format!("garage.ceiling.steps[{step}].height")));
        let ceiling = heights
            .iter()
            .filter_map(|name| of(&format!("garage.ceiling.{name}")))
            .chain(steps)
            .reduce(Length::min);
        Self {
            now,
            width,
            depth,
            left: Length::ZERO - width * 0.5 - offset,
            ceiling: ceiling.unwrap_or_else(|| now.pick(120.0, 3000.0)),
            lift: [
                of("lift.across").unwrap_or(Length::ZERO),
                of("lift.post_line").unwrap_or(depth * 0.5),
            ],
        }
    }

    /// A box under the ceiling over the lift, there beside or under what hangs there already.
    fn over_lift(&self, word: &str, kind: &str, size: Size) -> String {
        let ([x, y], bottom) = (self.lift, self.under_ceiling(size));
        let sizes = [size.width, size.depth, size.height].map(Length::m);
        let new = Block::about([x.m(), y.m()], bottom.m(), sizes);
        let [along, up] = clear_of(&taken(self.now), &new, self.depth.m()).map(Length::metres);
        self.placed(word, kind, size, [x, y + along], bottom + up)
    }

    fn middle(&self) -> Length {
        self.left + self.width * 0.5
    }

    /// A box a hand's breadth under the ceiling.
    fn hung(&self, word: &str, kind: &str, size: Size, place: [Length; 2]) -> String {
        self.placed(word, kind, size, place, self.under_ceiling(size))
    }

    fn under_ceiling(&self, size: Size) -> Length {
        let bottom = self.ceiling - size.height - self.now.pick(2.0, 50.0);
        bottom.max(Length::ZERO)
    }

    fn placed(
        &self,
        word: &str,
        kind: &str,
        size: Size,
        [x, y]: [Length; 2],
        bottom: Length,
    ) -> String {
        let say = |length: Length| self.now.length(length);
        format!(
            "Box(\n    name: {},\n    kind: {kind},\n    x: {}, y: {},\n    bottom: {},\n    \
             width: {}, depth: {}, height: {},\n)",
            self.now.new_name(word),
            say(x),
            say(y),
            say(bottom),
            say(size.width),
            say(size.depth),
            say(size.height)
        )
    }
}

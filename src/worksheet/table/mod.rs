//! The questions, in the order of a walk: from outside through the door, along the room, over the
//! floor, to the panel; then the papers of the lift, and the vehicle.

mod door;
mod lift;
mod more;
mod room;
mod slab;
mod vehicle;

use super::question::{Kind, Section};
pub(super) use more::more;

const WORDS: Kind = Kind::Words;
const SIZE: Kind = Kind::Size(crate::units::Kind::Length);
const FROM_ZERO: Kind = Kind::NotNegative(crate::units::Kind::Length);
const PLACE: Kind = Kind::Place(crate::units::Kind::Length);

const ALL: &[Section] = &[
    room::START,
    door::DOOR,
    room::ROOM,
    door::OPENER,
    room::THINGS,
    lift::PLACE_OF_LIFT,
    slab::READINGS,
    slab::LINES,
    slab::SLAB,
    slab::SUPPLY,
    lift::LIFT,
    vehicle::VEHICLE,
    vehicle::ROOF,
    vehicle::UNDER,
    vehicle::FIXED,
    vehicle::PARKING,
    room::PEOPLE,
    room::TRUST,
];

/// Every section, in order.
#[must_use]
pub const fn sections() -> &'static [Section] {
    ALL
}

/// The number of a question on the form, such as `3.2`; none for a key that is not asked.
#[must_use]
pub fn number(section_id: &str, key: &str) -> Option<String> {
    let (at, section) = ALL
        .iter()
        .enumerate()
        .find(|(_, section)| section.id == section_id)?;
    let index = section.questions.iter().position(|one| one.key == key)?;
    Some(format!("{}.{}", at + 1, index + 1))
}

/// What is asked by a key outside the repeated sections, with its number on the form: how a person
/// who has the form finds it again.
#[must_use]
pub fn label(key: &str) -> String {
    let found = ALL
        .iter()
        .filter(|one| one.repeat.is_none())
        .find_map(|section| {
            let question = section.questions.iter().find(|one| one.key == key)?;
            Some((section.id, question.what))
        });
    found.map_or_else(String::new, |(section, what)| {
        format!("{} {what}", number(section, key).unwrap_or_default())
    })
}

/// A repeated section's number and title.
#[must_use]
pub fn section_label(id: &str) -> String {
    let at = ALL.iter().position(|section| section.id == id);
    at.and_then(|at| Some(format!("{} {}", at + 1, ALL.get(at)?.title)))
        .unwrap_or_default()
}

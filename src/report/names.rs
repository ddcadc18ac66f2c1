//! How is a solid, or several of one kind, called in a sentence?
//!
//! Names of solids are paths (`vehicle/roof 3`, `door/track left curve 2`); a table shows them as
//! they are (see [`super::words::thing`]), a sentence calls the thing by what it is: "the vehicle's
//! roof (piece 3)", "the door's left track".

use super::words::{list, plain};

/// A name in a sentence, and whether its verb stands in the plural.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Called {
    pub(super) text: String,
    pub(super) many: bool,
}

impl Called {
    /// The word for one, or the word for several.
    pub(super) const fn verb(&self, one: &'static str, several: &'static str) -> &'static str {
        if self.many { several } else { one }
    }
}

/// A solid's name taken apart.
#[derive(Debug, PartialEq, Eq)]
struct Parts {
    owner: Owner,
    /// What it is, without side and number.
    noun: String,
    /// "left", "front left"; empty without.
    side: String,
    /// Which of several pieces that make up one thing.
    piece: Option<String>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Owner {
    Vehicle,
    Lift,
    Door,
    /// What the door takes up on its whole way.
    RunningDoor,
    Opener,
    Room,
    Obstacle,
}

/// The vehicle's outline is built of pieces like these; whatever else the vehicle carries is named
/// in the file and left as it is.
const OUTLINE: [&str; 2] = ["roof", "side"];
const SIDED_ON_VEHICLE: [&str; 3] = ["mirror", "wheel", "lift point"];
const SIDES: [&str; 5] = ["front", "rear", "left", "right", "back"];

impl Parts {
    fn of(name: &str) -> Self {
        let name = plain(name);
        let (owner, rest) = name.split_once('/').unwrap_or(("", &name));
        let whole = |owner| Self {
            owner,
            noun: rest.into(),
            side: String::new(),
            piece: None,
        };
        match owner {
            "vehicle" => {
                let parts = whole(Owner::Vehicle);
                if let Some((noun, number)) = rest.rsplit_once(' ')
                    && OUTLINE.contains(&noun)
                    && is_number(number)
                {
                    return Self {
                        noun: noun.into(),
                        piece: Some(number.into()),
                        ..parts
                    };
                }
                let sided = parts.without_side();
                if SIDED_ON_VEHICLE.contains(&sided.noun.as_str()) {
                    return sided;
                }
                match rest.strip_prefix("underbody ") {
                    Some(part) => Self {
                        noun: part.into(),
                        ..whole(Owner::Vehicle)
                    },
                    None => whole(Owner::Vehicle),
                }
            }
            "lift" => whole(Owner::Lift).without_side(),
            "door" => match rest.strip_prefix("track ") {
                Some(track) => {
                    let (side, piece) = track.split_once(' ').unwrap_or((track, ""));
                    Self {
                        owner: Owner::Door,
                        noun: "track".into(),
                        side: side.into(),
                        piece: (!piece.is_empty()).then(|| piece.into()),
                    }
                }
                // A roll-up door's curtain, which only runs in its own plane.
                None if rest == "running" => Self {
                    noun: "curtain".into(),
                    ..whole(Owner::RunningDoor)
                },
                None => match rest.strip_prefix("running ") {
                    Some(noun) => Self {
                        noun: noun.into(),
                        ..whole(Owner::RunningDoor)
                    }
                    .without_number()
                    .without_side(),
                    None => whole(Owner::Door).without_number().without_side(),
                },
            },
            "opener" => whole(Owner::Opener).without_number(),
            "shell" => whole(Owner::Room).without_side(),
            _ => whole(Owner::Obstacle),
        }
    }

    /// Takes the words for a side off the end of the noun.
    fn without_side(mut self) -> Self {
        let words: Vec<&str> = self.noun.split(' ').collect();
        let from = words
            .iter()
            .rposition(|word| !SIDES.contains(word))
            .map_or(0, |last| last + 1);
        let (noun, side) = words.split_at(from);
        if !noun.is_empty() {
            (self.side, self.noun) = (side.join(" "), noun.join(" "));
        }
        self
    }

    /// Takes a number off the end of the noun.
    fn without_number(mut self) -> Self {
        if let Some((noun, number)) = self.noun.rsplit_once(' ')
            && is_number(number)
        {
            self.piece = Some(number.into());
            self.noun = noun.into();
        }
        self
    }

    /// Whether both are told of in one breath.
    fn is_like(&self, other: &Self) -> bool {
        (self.owner, &self.noun) == (other.owner, &other.noun)
    }

    /// "the vehicle's roof", without the pieces.
    fn with_article(&self) -> String {
        let noun = if self.side.is_empty() {
            self.noun.clone()
        } else {
            format!("{} {}", self.side, self.noun)
        };
        match (self.owner, self.noun.as_str()) {
            (Owner::Vehicle, _) => format!("the vehicle's {noun}"),
            (Owner::Lift, "arm" | "pad" | "carriage" | "shut-off bar" | "overhead beam") => {
                format!("the {noun}")
            }
            (Owner::Lift, _) => format!("the lift's {noun}"),
            (Owner::Door, _) => format!("the door's {noun}"),
            (Owner::RunningDoor, _) => format!("the running door's {noun}"),
            (Owner::Opener, _) => format!("the opener's {noun}"),
            (Owner::Room, "door header") => "the header over the door".into(),
            (Owner::Room, "ceiling") if !self.side.is_empty() => {
                format!("the {} side of the ceiling", self.side)
            }
            (Owner::Room, _) => format!("the {noun}"),
            // Whatever has a number or a proper name needs no article.
            (Owner::Obstacle, _) => {
                let named = self.noun.starts_with(char::is_uppercase)
                    || self.noun.ends_with(|c: char| c.is_ascii_digit())
                    || self.noun.starts_with("the ");
                if named { noun } else { format!("the {noun}") }
            }
        }
    }
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit())
}

/// A solid in a sentence.
pub(super) fn the(name: &str) -> String {
    let parts = Parts::of(name);
    match (&parts.piece, parts.owner) {
        (Some(piece), Owner::Vehicle) => format!("{} (piece {piece})", parts.with_article()),
        (Some(piece), Owner::Door) if parts.noun == "panel" => format!("door panel {piece}"),
        _ => parts.with_article(),
    }
}

/// Whether two solids are told of in one breath: pieces of one thing, or the same on another side.
pub(super) fn alike(a: &str, b: &str) -> bool {
    a == b || Parts::of(a).is_like(&Parts::of(b))
}

/// Solids that are [`alike`], in one breath.
pub(super) fn together(names: &[&str]) -> Called {
    let mut distinct: Vec<&str> = Vec::new();
    for name in names {
        if !distinct.contains(name) {
            distinct.push(name);
        }
    }
    let parts: Vec<Parts> = distinct.iter().map(|name| Parts::of(name)).collect();
    let one = |text| Called { text, many: false };
    let many = |text| Called { text, many: true };
    let (Some(first), Some(name)) = (parts.first(), distinct.first()) else {
        return one(String::new());
    };
    if parts.len() == 1 {
        return one(the(name));
    }
    if parts.iter().any(|p| p.side != first.side) {
        let owner = Parts {
            side: String::new(),
            noun: format!("{}s", first.noun),
            owner: first.owner,
            piece: None,
        };
        return many(owner.with_article());
    }
    let mut pieces: Vec<&str> = parts.iter().filter_map(|p| p.piece.as_deref()).collect();
    pieces.sort_by_key(|piece| (piece.parse::<u64>().unwrap_or(0), *piece));
    match first.owner {
        Owner::Vehicle if !pieces.is_empty() => one(format!(
            "{} (pieces {})",
            first.with_article(),
            list(&pieces)
        )),
        Owner::Door if first.noun == "panel" => many(format!("door panels {}", list(&pieces))),
        _ => one(first.with_article()),
    }
}

#[cfg(test)]
mod tests;

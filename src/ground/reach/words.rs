//! How are moves, ways and pad settings said to an installer?

use glam::DVec2;

use super::pads::{Level, PadSet};
use super::swing::{WAYS, Way};
use crate::bay::{Bay, Corner, UnitSystem};
use crate::ground::{Part, Quantity, Said};
use crate::units::{self, Length, Rounding};

/// Less than this is no move, metres.
pub(super) const NO_MOVE_M: f64 = 1e-6;

/// "3 in into the bay and 1 in to the left"; each way is whole steps of a tape or rounded to the
/// nearest.
pub(super) fn by(by_m: DVec2, units: UnitSystem) -> String {
    let shown = |metres: f64| units::length(Length::metres(metres.abs()), units, Rounding::Nearest);
    let part = |metres: f64, more: &str, less: &str| {
        (metres.abs() > NO_MOVE_M).then(|| {
            let way = if metres > 0.0 { more } else { less };
            format!("{} {way}", shown(metres))
        })
    };
    let parts: Vec<String> = [
        part(by_m.y, "into the bay", "toward the door"),
        part(by_m.x, "to the right", "to the left"),
    ]
    .into_iter()
    .flatten()
    .collect();
    if parts.is_empty() {
        "not at all".into()
    } else {
        parts.join(" and ")
    }
}

/// A sentence whose quantities are lengths, in the bay's units.
pub(super) fn in_units(said: &Said, units: UnitSystem) -> String {
    said.0
        .iter()
        .map(|part| match part {
            Part::Words(words) => words.clone(),
            Part::Quantity(quantity, rounding) => {
                quantity.number().map_or_else(String::new, |metres| {
                    units::length(Length::metres(metres), units, *rounding)
                })
            }
        })
        .collect()
}

/// The last part of a solid's name: "wheel front left".
pub(super) fn short_name(name: &str) -> &str {
    name.rsplit('/').next().unwrap_or(name)
}

/// The ways in of all four.
pub(super) fn ways(ways: &[Way; 4], order: Option<&[Corner; 4]>, is_everywhere: bool) -> Said {
    let way = |way: &Way| match way {
        Way::InThenOut => "swung in at its shortest, then drawn out",
        Way::OutThenIn => "drawn out where it is parked, then swung in",
        Way::HalfOut => "drawn out half of the way, swung in, then drawn out the rest",
        Way::Past(_) => "swung past its place at its shortest, drawn out, then swung back",
    };
    let mut text = if ways.iter().all(|one| one == &ways[0]) {
        format!("each arm {}", way(&ways[0]))
    } else {
        let each: Vec<String> = Corner::ALL
            .iter()
            .map(|corner| format!("{}: {}", corner.name(), way(&ways[corner.index()])))
            .collect();
        each.join("; ")
    };
    match order {
        None => text.push_str("; in any order"),
        Some(order) => {
            let names: Vec<&str> = order.iter().map(|corner| corner.name()).collect();
            text.push_str("; in this order: ");
            text.push_str(&names.join(", "));
        }
    }
    if !is_everywhere {
        text.push_str(
            "; so with the vehicle as parked, at the edges of where the driver may stop another \
             of the ways tried may be needed",
        );
    }
    text.push_str("; pads screwed down and bare until the arms are in place");
    Said::new(text)
}

/// What was tried where no way was found.
pub(super) fn no_way(corner: Corner, meets: &str, as_parked: bool) -> Said {
    let place = if as_parked {
        "with the vehicle at the edge of where the driver may stop"
    } else {
        "with the vehicle as parked"
    };
    Said::new(format!(
        "{place} none of the ways tried brings the {} arm in: at its shortest it meets {}. Tried: \
         {WAYS}; pads screwed down and bare",
        corner.name(),
        short_name(meets)
    ))
}

/// One pad's setting: "3 in adapter, screw out 1/2 in".
pub(super) fn setting(set: &PadSet) -> Said {
    let mut said = Said::new("");
    for (index, &height) in set.adapters_m.iter().enumerate() {
        if index > 0 {
            said = said.and(" on a ");
        }
        said = said.near(Quantity::Length(height)).and(" adapter");
    }
    let bare = set.adapters_m.is_empty();
    if set.screw_m <= NO_MOVE_M {
        return said.and(if bare {
            "no adapter, screwed down"
        } else {
            ", screwed down"
        });
    }
    said.and(if bare { "screw out " } else { ", screw out " })
        .near(Quantity::Length(set.screw_m))
}

/// The settings of all four, alike ones taken together.
fn settings(sets: &[PadSet; 4]) -> Said {
    let alike = |a: usize, b: usize| {
        sets[a].adapters_m == sets[b].adapters_m
            && (sets[a].screw_m - sets[b].screw_m).abs() < NO_MOVE_M
    };
    let groups: Vec<(&str, usize)> = if alike(0, 1) && alike(2, 3) {
        if alike(0, 2) {
            vec![("all four", 0)]
        } else {
            vec![("front", 0), ("rear", 2)]
        }
    } else {
        Corner::ALL
            .iter()
            .map(|corner| (corner.name(), corner.index()))
            .collect()
    };
    let mut said = Said::new("");
    for (position, (name, index)) in groups.into_iter().enumerate() {
        let lead = if position > 0 { "; " } else { "" };
        said = said.and(format!("{lead}{name}: "));
        said.0.extend(setting(&sets[index]).0);
    }
    said
}

/// How the body would stand level, or what is missing for it.
pub(super) fn level(level: &Level, bay: &Bay) -> Said {
    match level {
        Level::Sets(sets) => {
            let mut said = Said::new("level with ");
            said.0.extend(settings(sets).0);
            if sets.iter().any(|set| set.adapters_m.len() > 1) {
                said = said.and(" (where the manual lets adapters be stacked)");
            }
            said
        }
        Level::Lacks { corner, raise_m } => {
            let screw_m = bay.lift.pad.screw_travel.m();
            Said::new(format!("level would take the {} pad up by ", corner.name()))
                .up(Quantity::Length(*raise_m))
                .and(", which no screw and adapter of this lift makes: an adapter from ")
                .up(Quantity::Length((raise_m - screw_m).max(0.0)))
                .and(" to ")
                .down(Quantity::Length(*raise_m))
                .and(" would")
        }
        Level::NoRoom { corner, excess_m } => {
            Said::new(format!("set level, the {} pad would start ", corner.name()))
                .up(Quantity::Length(*excess_m))
                .and(" too high to go under its lift point")
        }
    }
}

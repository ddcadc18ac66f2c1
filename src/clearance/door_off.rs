//! How far may parts of a door, and what the opener hangs on it, be off for what was measured of it?
//!
//! Every panel's height adds up along a track that bends, and where the top edge of a shut door already
//! stands on the curve a little of height is much of depth. So the door is built again with each measure
//! taken off by its ±, either way, and what that moves is added up over the measures.

use std::cell::RefCell;

use glam::DVec3;

use super::findings::DoorState;
use crate::bay::{Bay, Door, Floor, Garage, Opener, Opening, TrackLayout};
use crate::solids::{DoorTravel, Solid, door, opener};
use crate::units::Length;

/// Points of travel at which a door that runs is looked at, beside shut and open.
const BETWEEN: [f64; 3] = [0.25, 0.5, 0.75];

/// What of the opener adds up in height by itself: the rail's height and what hangs under it.
const OPENER_UP: f64 = 2.0;
/// Across: half the opening, its offset or the track's, half a section.
const ACROSS: f64 = 2.0;

/// Of a door, by the names of its parts.
#[derive(Debug, Clone, Default)]
pub(super) struct DoorOff {
    shut: Vec<(String, DVec3)>,
    open: Vec<(String, DVec3)>,
    /// The most of any part at any point of travel, for what the door takes up while it runs.
    running: DVec3,
}

/// What it hangs on.
#[derive(Clone, PartialEq)]
struct Of {
    opening: Opening,
    door: Door,
    opener: Opener,
    floor: Floor,
    width: Length,
    garage_m: f64,
}

thread_local! {
    /// The last that was worked out: many bays have one door.
    static LAST: RefCell<Option<(Of, DoorOff)>> = const { RefCell::new(None) };
}

impl DoorOff {
    pub(super) fn of(bay: &Bay, garage_m: f64) -> Self {
        let Garage {
            opening,
            door,
            opener,
            floor,
            width,
            ..
        } = &bay.garage;
        if garage_m <= 0.0 || *door == Door::None {
            return Self::default();
        }
        let of = Of {
            opening: *opening,
            door: door.clone(),
            opener: opener.clone(),
            floor: floor.clone(),
            width: *width,
            garage_m,
        };
        LAST.with_borrow_mut(|last| match last {
            Some((known, off)) if *known == of => off.clone(),
            _ => {
                let off = Self::worked_out(bay, garage_m);
                *last = Some((of, off.clone()));
                off
            }
        })
    }

    fn worked_out(bay: &Bay, garage_m: f64) -> Self {
        let worlds: Vec<[Bay; 2]> = MEASURES
            .iter()
            .filter_map(|measure| {
                let off = |by: f64| {
                    let mut off = bay.clone();
                    let length = measure(&mut off.garage)?;
                    // No measure is less than nothing.
                    *length = Length::metres((length.m() + by).max(0.0));
                    Some(off)
                };
                Some([off(garage_m)?, off(-garage_m)?])
            })
            .collect();
        // Where a panel comes to bend over the curve only by several of them together.
        let together: Vec<Bay> = (0..8_usize)
            .map(|signs| {
                let mut off = bay.clone();
                for (number, measure) in MEASURES.iter().enumerate() {
                    let is_more = signs >> number.min(2) & 1 == 1;
                    let by = if is_more { garage_m } else { -garage_m };
                    if let Some(length) = measure(&mut off.garage) {
                        *length = Length::metres((length.m() + by).max(0.0));
                    }
                }
                off
            })
            .collect();
        let at = |travel: DoorTravel| moved(bay, (&worlds, &together), travel, garage_m);
        let (shut, open) = (at(DoorTravel::Shut), at(DoorTravel::Open));
        let between = BETWEEN
            .into_iter()
            .flat_map(|share| at(DoorTravel::At(share)));
        let running = shut
            .iter()
            .chain(&open)
            .cloned()
            .chain(between)
            .fold(DVec3::ZERO, |most, (_, off)| most.max(off));
        Self {
            shut,
            open,
            running,
        }
    }

    /// How far a solid of door or opener may be off with the door shut, open, or anywhere on its way; nothing
    /// of what is not of them.
    pub(super) fn of_solid(&self, solid: &Solid, state: DoorState) -> DVec3 {
        let in_state = match state {
            DoorState::Open => &self.open,
            DoorState::Shut | DoorState::Running => &self.shut,
        };
        // What is not there by that name is a piece of what the door takes up while it runs.
        let part = in_state.iter().find(|(name, _)| *name == solid.name);
        let of_door = ["door/", "opener/"];
        match part {
            Some((_, off)) if state != DoorState::Running => *off,
            Some((_, off)) => off.max(self.open_too(solid)),
            None if of_door.iter().any(|name| solid.name.starts_with(name)) => self.running,
            None => DVec3::ZERO,
        }
    }

    fn open_too(&self, solid: &Solid) -> DVec3 {
        let part = self.open.iter().find(|(name, _)| *name == solid.name);
        part.map_or(self.running, |(_, off)| *off)
    }
}

/// On the sums of what each measure moves by itself: tight curves bend with them.
fn not_straight(bay: &Bay) -> f64 {
    match &bay.garage.door {
        Door::Sectional(door) if door.layout == TrackLayout::LowHeadroom => 1.3,
        _ => 1.05,
    }
}

type Measure = fn(&mut Garage) -> Option<&mut Length>;

/// What places of a door's parts along and up hang on; the opening's height and the panel's first.
const MEASURES: [Measure; 9] = [
    |garage| Some(&mut garage.opening.height),
    |garage| match &mut garage.door {
        Door::Sectional(door) => Some(&mut door.panel_height),
        Door::SwingUp(door) => Some(&mut door.panel_height),
        Door::RollUp(door) => Some(&mut door.coil_diameter),
        Door::SideHinged(_) | Door::None => None,
    },
    |garage| match &mut garage.door {
        Door::Sectional(door) => Some(&mut door.panel_thickness),
        Door::SwingUp(door) => Some(&mut door.panel_thickness),
        Door::RollUp(door) => Some(&mut door.curtain_thickness),
        Door::SideHinged(door) => Some(&mut door.leaf_thickness),
        Door::None => None,
    },
    |garage| match &mut garage.door {
        Door::Sectional(door) => Some(&mut door.track_radius),
        Door::SwingUp(door) => Some(&mut door.track_height),
        Door::RollUp(door) => Some(&mut door.coil_height),
        Door::SideHinged(_) | Door::None => None,
    },
    |garage| match &mut garage.door {
        Door::Sectional(door) => Some(&mut door.track_section),
        Door::SwingUp(door) => Some(&mut door.track_section),
        Door::RollUp(door) => Some(&mut door.coil_out),
        Door::SideHinged(_) | Door::None => None,
    },
    |garage| match &mut garage.door {
        Door::Sectional(door) => Some(&mut door.track_length),
        _ => None,
    },
    |garage| match &mut garage.door {
        Door::Sectional(door) => Some(&mut door.top_bracket),
        _ => None,
    },
    |garage| match &mut garage.door {
        Door::Sectional(door) => match &mut door.layout {
            TrackLayout::HighLift { extra } => Some(extra),
            _ => None,
        },
        _ => None,
    },
    // Leaves turn on their jambs.
    |garage| match &garage.door {
        Door::SideHinged(_) => Some(&mut garage.opening.width),
        _ => None,
    },
];

fn solids(bay: &Bay, travel: DoorTravel) -> Vec<Solid> {
    let mut all = door::door(bay, travel);
    all.extend(opener::opener(bay, travel));
    all
}

/// How far each part's faces go with its measures.
fn moved(
    bay: &Bay,
    (worlds, together): (&[[Bay; 2]], &[Bay]),
    travel: DoorTravel,
    garage_m: f64,
) -> Vec<(String, DVec3)> {
    let as_filed = solids(bay, travel);
    // What it moves each face by; nothing of a world with one panel more, which is another door, of which the
    // file is warned (see the checks of the bay file).
    let moves = |off: &Bay, most: &mut [DVec3]| {
        let off = solids(off, travel);
        if off.len() == as_filed.len() {
            for ((one, other), most) in as_filed.iter().zip(&off).zip(most) {
                let ((low, high), (off_low, off_high)) = (one.bounds(), other.bounds());
                *most = most.max((low - off_low).abs().max((high - off_high).abs()));
            }
        }
    };
    let nothing = vec![DVec3::ZERO; as_filed.len()];
    let mut sums = nothing.clone();
    for both in worlds {
        let mut most = nothing.clone();
        for off in both {
            moves(off, &mut most);
        }
        for (sum, most) in sums.iter_mut().zip(most) {
            *sum += most;
        }
    }
    let mut most = nothing;
    for off in together {
        moves(off, &mut most);
    }
    for (sum, most) in sums.iter_mut().zip(most) {
        // What turns does not go quite straight.
        *sum = sum.max(most) * not_straight(bay);
    }
    let each = as_filed.into_iter().zip(sums);
    each.map(|(solid, sum)| {
        let own = if solid.name.starts_with("opener/") {
            OPENER_UP
        } else {
            0.0
        };
        let across = f64::max(sum.x, ACROSS * garage_m);
        (
            solid.name,
            DVec3::new(across, sum.y, sum.z + own * garage_m),
        )
    })
    .collect()
}

#[cfg(test)]
mod tests;

//! From the side and from the door: how high does the vehicle hang, and what is over it?
//!
//! Drawn at the highest safe lock; where none is safe at the highest clear one, which is then
//! marked as not safe; where none is clear, on the floor.

use glam::DVec3;

use super::draw::over;
use super::elevation_heights::heights;
use super::elevation_labels::{callouts, widths};
use super::elevation_picture::picture;
use super::elevation_room::{room_lines, rooms};
use super::plan::Telling;
use super::{LayoutError, Made};
use crate::clearance::{DoorState, LockFinding};
use crate::drawing::outline::Look;
use crate::drawing::sheet::View;
use crate::report::{Sayings, on_one_line};
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Layer as SolidLayer, Role, Solid};

pub(super) const LOOKS: [(Look, &str, &str); 2] = [
    (Look::Side, "Side elevation", "SIDE"),
    (Look::Front, "Front elevation", "FRONT"),
];

/// The lock that is drawn, and whether it is safe.
fn drawn<'a>(made: &Made<'a>) -> Option<(&'a LockFinding, bool)> {
    let study = made.order.study;
    let lock = study.highest_safe_lock.or(study.highest_clear_lock)?;
    let found = study.locks.iter().find(|one| one.lock == lock)?;
    Some((found, study.highest_safe_lock == Some(lock)))
}

fn door(state: DoorState) -> DoorTravel {
    match state {
        DoorState::Open => DoorTravel::Open,
        DoorState::Shut | DoorState::Running => DoorTravel::Shut,
    }
}

/// The view, what must not be overlooked, and what else is to be known.
pub(super) fn view(
    made: &Made<'_>,
    look: Look,
    telling: Telling,
) -> Result<(View, Vec<String>, Vec<String>), LayoutError> {
    view_with(made, look, telling, true)
}

/// The same, with the heights of what the lettered rooms end on or, where there is no room for
/// them, without.
pub(super) fn view_with(
    made: &Made<'_>,
    look: Look,
    telling: Telling,
    has_ends: bool,
) -> Result<(View, Vec<String>, Vec<String>), LayoutError> {
    let (bay, study) = (made.order.bay, made.order.study);
    let lock = drawn(made);
    let travel_m = lock.map_or(0.0, |(lock, _)| lock.travel_m);
    let state = study.headline_door;
    let all = solids(bay, door(state), travel_m).map_err(LayoutError::Stance)?;
    let mut view = View::default();
    let painted = picture(&mut view, look, &bay.garage, &all);
    let said = Sayings::of(bay, study);
    let door_words = said.door(door(state).fraction());
    let door_words = door_words.map_or_else(String::new, |words| format!(", {words}"));
    let mut warnings = Vec::new();
    let shown = match lock {
        Some((found, true)) => format!(
            "Drawn at lock {} of {}, the highest safe lock{door_words}.",
            found.lock,
            study.locks.len()
        ),
        Some((found, false)) => {
            warnings.push(format!(
                "NOT SAFE: drawn at lock {}, which is clear but withheld. The report tells why.",
                found.lock
            ));
            format!(
                "Drawn at lock {} of {}, the highest clear lock, NOT SAFE{door_words}.",
                found.lock,
                study.locks.len()
            )
        }
        None => {
            format!("Drawn with the vehicle on the floor: no lock is clear{door_words}.")
        }
    };
    let from = match look {
        Look::Front => "Seen from the door; its panels are broken outlines.",
        Look::Side | Look::Plan => {
            "Seen from the right wall, the door at the left; what of the lift stands before the \
             vehicle is a broken outline."
        }
    };
    let heights_are = if lock.is_some() {
        "Heights from the floor at the post line as the file has them; those marked \"at worst\" are \
         with everything off by all that the study counts with: of the vehicle's lowest points \
         over the highest floor under it, and of its top. Undersides are rounded down, tops up. \
         How much room is left is what is said at the right, pair by pair with both off: never one \
         height taken from another."
    } else {
        "Heights from the floor at the post line as the file has them; undersides are rounded down, \
         tops up."
    };
    let mut notes = vec![format!("{shown} {from} {heights_are}")];
    if study.highest_safe_lock.is_some() {
        notes.push(said.lead());
        if let Some(mark) = said.stop_mark() {
            notes.push(format!(
                "Stop the raise with the carriage's marked edge at {}.",
                on_one_line(&mark)
            ));
        }
    }
    let lock = lock.map(|(lock, _)| lock);
    let rooms = lock
        .map(|found| rooms(made, look, found))
        .unwrap_or_default();
    let ends: Vec<String> = rooms.iter().map(|room| room.pair.fixed.clone()).collect();
    // What a room ends on is seen, whatever stands before it.
    let shell = |one: &&Solid| one.layer() == SolidLayer::Shell;
    for one in all
        .iter()
        .filter(|one| ends.contains(&one.name) && !shell(one))
    {
        over(&mut view.items, look, one);
    }
    let told: &[String] = if has_ends { &ends } else { &[] };
    heights(&mut view, bay, look, &all, lock, told);
    widths(&mut view, made, look, &all);
    room_lines(&mut view, look, &rooms);
    // The least room is told once: at its line where one is drawn, or else in words.
    let is_told = rooms.iter().any(|room| room.is_least);
    let least = lock.filter(|_| !is_told);
    callouts(&mut view, made, &painted, (look, &all), least, telling);
    if telling == Telling::ByNumber {
        notes.push(
            "Numbers are those of the list of fixed things on the last pages, which has all of them: \
             here stand those that there is room for."
                .into(),
        );
    }
    Ok((view, warnings, notes))
}

/// Lowest and highest corner about everything of some roles; none without any.
pub(super) fn around(all: &[Solid], wanted: impl Fn(Role) -> bool) -> Option<(DVec3, DVec3)> {
    let boxes = all.iter().filter(|one| wanted(one.role)).map(Solid::bounds);
    boxes.reduce(|(low, high), (a, b)| (low.min(a), high.max(b)))
}

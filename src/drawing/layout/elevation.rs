//! From the side and from the door: how high does the vehicle hang, and what is over it?
//!
//! Drawn at the highest safe lock; where none is safe at the highest clear one, which is then
//! marked as not safe; where none is clear, on the floor.

use glam::DVec3;

use super::draw::{Running, over, solid, together};
use super::elevation_labels::{callouts, widths};
use super::elevation_room::room_lines;
use super::plan::Telling;
use super::{LayoutError, Made};
use crate::bay::{Bay, Opener};
use crate::clearance::{DoorState, LockFinding};
use crate::drawing::outline::Look;
use crate::drawing::sheet::View;
use crate::report::{Sayings, on_one_line};
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Role, Solid};
use crate::units::{Length, Rounding, both};

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
    let (bay, study) = (made.order.bay, made.order.study);
    let lock = drawn(made);
    let travel_m = lock.map_or(0.0, |(lock, _)| lock.travel_m);
    let state = study.headline_door;
    let all = solids(bay, door(state), travel_m).map_err(LayoutError::Stance)?;
    let mut view = View::default();
    picture(&mut view, look, &all);
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
        Look::Front => "Seen from the door into the bay.",
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
    heights(&mut view, bay, look, &all, lock.map(|(lock, _)| lock));
    widths(&mut view, made, look, &all);
    let lock = lock.map(|(lock, _)| lock);
    // The least room is told once: at its line where one is drawn, or else in words.
    let is_told = lock.is_some_and(|found| room_lines(&mut view, made, look, found));
    let least = lock.filter(|_| !is_told);
    callouts(&mut view, made, look, &all, least, telling);
    if telling == Telling::ByNumber {
        notes.push(
            "Numbers are those of the list of fixed things on the last pages, which has all of them: \
             here stand those that there is room for."
                .into(),
        );
    }
    Ok((view, warnings, notes))
}

fn picture(view: &mut View, look: Look, all: &[Solid]) {
    let hidden = |one: &Solid| {
        let name = one.name.as_str();
        match (look, one.role) {
            // Between the eye and the bay.
            (Look::Side, Role::Wall) => name != "shell/wall back",
            (Look::Side, Role::DoorWall) => !name.ends_with("header"),
            (_, Role::Wall) => name == "shell/wall back",
            (_, Role::DoorWall | Role::DoorPanel) => true,
            _ => false,
        }
    };
    let mut seen: Vec<&Solid> = all.iter().filter(|one| !hidden(one)).collect();
    seen.sort_by(|a, b| look.nearness(a).total_cmp(&look.nearness(b)));
    let shell = |one: &&&Solid| {
        matches!(
            one.role,
            Role::Floor | Role::Wall | Role::DoorWall | Role::Ceiling
        )
    };
    for one in seen.iter().filter(shell) {
        solid(&mut view.items, look, one);
    }
    if look == Look::Front {
        // The opening, as the door wall leaves it.
        for one in all.iter().filter(|one| one.name == "shell/door header") {
            over(&mut view.items, look, one);
        }
    }
    let vehicle = |one: &&&Solid| matches!(one.role, Role::Body | Role::Mirror | Role::Wheel(_));
    let eye = look.toward_eye();
    let nearest = seen.iter().filter(vehicle).map(|one| look.nearness(one));
    let nearest = nearest.fold(f64::NEG_INFINITY, f64::max);
    // Parts of the lift that stand before the vehicle don't hide it, and are not painted behind it.
    let before = |one: &&&Solid| {
        let part = matches!(
            one.role,
            Role::Post(_) | Role::PowerUnit(_) | Role::Carriage(_)
        );
        part && one.support(-eye).dot(eye) > nearest
    };
    for one in seen.iter() {
        if !shell(&one) && !vehicle(&one) && !before(&one) {
            solid(&mut view.items, look, one);
        }
    }
    let of = |wheel: bool| {
        let seen = seen.iter().filter(vehicle).copied();
        seen.filter(move |one| matches!(one.role, Role::Wheel(_)) == wheel)
    };
    together(&mut view.items, look, of(true));
    together(&mut view.items, look, of(false));
    // Posts and arms once more, over or behind the vehicle as they may be.
    let lift = |one: &&&Solid| matches!(one.role, Role::Post(_) | Role::Arm(_) | Role::Pad(_));
    for one in seen.iter().filter(|one| lift(one) || before(one)) {
        over(&mut view.items, look, one);
    }
}

/// Lowest and highest corner about everything of some roles; none without any.
pub(super) fn around(all: &[Solid], wanted: impl Fn(Role) -> bool) -> Option<(DVec3, DVec3)> {
    let boxes = all.iter().filter(|one| wanted(one.role)).map(Solid::bounds);
    boxes.reduce(|(low, high), (a, b)| (low.min(a), high.max(b)))
}

fn heights(view: &mut View, bay: &Bay, look: Look, all: &[Solid], lock: Option<&LockFinding>) {
    let mut z = Running::from(0.0, bay.units);
    let mut put = |what: &str, at: Option<DVec3>, rounding: Rounding| {
        if let Some(at) = at {
            let reads = both(Length::metres(at.z), bay.units, rounding);
            let flat = look.flat(at);
            z.put_as(what, flat.y, flat.x, reads);
        }
    };
    let low = |wanted: fn(Role) -> bool| around(all, wanted).map(|(low, _)| low);
    let high = |wanted: fn(Role) -> bool| around(all, wanted).map(|(_, high)| high);
    let body = |role| matches!(role, Role::Body | Role::Mirror);
    put(
        "floor at the post line",
        Some(DVec3::ZERO.with_y(bay.lift.post_line.m())),
        Rounding::Nearest,
    );
    // Where it is in the picture, at the height that the study found for the worst case.
    let at_worst = |wanted: fn(Role) -> bool, highest: bool, height_m: f64| {
        with_place(all, wanted, highest).map(|at| at.with_z(height_m))
    };
    if let Some(lock) = lock {
        let tyres = |role| matches!(role, Role::Wheel(_));
        put(
            "top of the vehicle, at worst",
            at_worst(body, true, lock.top_m),
            Rounding::Up,
        );
        put(
            "lowest tyre, at worst",
            at_worst(tyres, false, lock.tyre_m),
            Rounding::Down,
        );
        put(
            "lowest of the body, at worst",
            at_worst(body, false, lock.underbody_m),
            Rounding::Down,
        );
    } else {
        put(
            "top of the vehicle, as written",
            with_place(all, body, true),
            Rounding::Up,
        );
    }
    let pads = all.iter().filter(|one| matches!(one.role, Role::Pad(_)));
    let pad = pads
        .map(|one| one.bounds().1)
        .min_by(|a, b| a.z.total_cmp(&b.z));
    put("lowest pad's top", pad, Rounding::Down);
    put(
        "top of the posts",
        high(|role| matches!(role, Role::Post(_))),
        Rounding::Up,
    );
    put(
        "underside of the lift's beam",
        low(|role| role == Role::TieBeam),
        Rounding::Down,
    );
    put(
        "shut-off bar",
        low(|role| role == Role::ShutOffBar),
        Rounding::Down,
    );
    put("ceiling, lowest", ceiling(all), Rounding::Down);
    let header = all.iter().find(|one| one.name == "shell/door header");
    put(
        "door opening",
        header.map(|one| one.bounds().0),
        Rounding::Down,
    );
    if !matches!(bay.garage.opener, Opener::None) {
        put(
            "opener, lowest",
            low(|role| role == Role::Opener),
            Rounding::Down,
        );
    }
    view.left = z.done();
}

/// The highest or lowest corner of the solids of some roles.
fn with_place(all: &[Solid], wanted: fn(Role) -> bool, highest: bool) -> Option<DVec3> {
    let way = if highest { DVec3::Z } else { DVec3::NEG_Z };
    let all = all.iter().filter(|one| wanted(one.role));
    let corners = all.map(|one| one.support(way));
    corners.max_by(|a, b| a.dot(way).total_cmp(&b.dot(way)))
}

/// The lowest point of the ceiling's underside.
fn ceiling(all: &[Solid]) -> Option<DVec3> {
    with_place(all, |role| role == Role::Ceiling, false)
}

//! From the side and from the door: how high does the vehicle hang, and what is over it?
//!
//! Drawn at the highest safe lock; where none is safe at the highest clear one, which is then
//! marked as not safe; where none is clear, on the floor.

use glam::{DVec2, DVec3};

use super::draw::{Running, over, solid, together};
use super::{LayoutError, Made};
use crate::bay::{Bay, Opener};
use crate::clearance::{DoorState, LockFinding};
use crate::drawing::outline::Look;
use crate::drawing::sheet::{Callout, View};
use crate::report::{Sayings, called, on_one_line, short_name};
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
                "NOT SAFE: drawn at lock {}, which is clear but withheld. See the verdict.",
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
        Look::Side | Look::Plan => "Seen from the right wall, the door at the left.",
    };
    let mut notes = vec![format!(
        "{shown} {from} Heights from the floor at the post line; undersides are rounded down, tops up."
    )];
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
    callouts(&mut view, made, look, &all, lock.map(|(lock, _)| lock));
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
    for one in seen.iter().filter(|one| !shell(one) && !vehicle(one)) {
        solid(&mut view.items, look, one);
    }
    let of = |wheel: bool| {
        let seen = seen.iter().filter(vehicle).copied();
        seen.filter(move |one| matches!(one.role, Role::Wheel(_)) == wheel)
    };
    together(&mut view.items, look, of(true));
    together(&mut view.items, look, of(false));
    // Posts and arms once more, over or behind the vehicle as they may be.
    let lift = |one: &&&Solid| matches!(one.role, Role::Post(_) | Role::Arm(_) | Role::Pad(_));
    for one in seen.iter().filter(lift) {
        over(&mut view.items, look, one);
    }
}

/// Lowest and highest corner about everything of some roles; none without any.
fn around(all: &[Solid], wanted: impl Fn(Role) -> bool) -> Option<(DVec3, DVec3)> {
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
    put(
        "top of the vehicle",
        with_place(all, body, true),
        Rounding::Up,
    );
    if lock.is_some() {
        let tyres = |role| matches!(role, Role::Wheel(_));
        put("lowest tyre", with_place(all, tyres, false), Rounding::Down);
        put(
            "lowest of the body",
            with_place(all, body, false),
            Rounding::Down,
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

fn widths(view: &mut View, made: &Made<'_>, look: Look, all: &[Solid]) {
    let bay = made.order.bay;
    let at = |letter: &str| made.out.point(letter).map(|point| point.at_m);
    let (Some(a), Some(b), Some(g)) = (at("A"), at("B"), at("G")) else {
        return;
    };
    let vehicle = around(all, |role| matches!(role, Role::Body | Role::Mirror));
    match look {
        Look::Front => {
            let mut x = Running::from(a.x, bay.units);
            x.put("left wall", a.x, 0.0);
            x.put("right wall", b.x, 0.0);
            x.put("lift's middle", g.x, 0.0);
            for (letter, what) in [("K", "left post's face"), ("L", "right post's face")] {
                if let Some(point) = at(letter) {
                    x.put(what, point.x, 0.0);
                }
            }
            if let Some((low, high)) = vehicle {
                x.put("vehicle, left", low.x, low.z);
                x.put("vehicle, right", high.x, low.z);
            }
            view.bottom = x.done();
        }
        Look::Side | Look::Plan => {
            let mut y = Running::from(0.0, bay.units);
            y.put("door wall", 0.0, 0.0);
            y.put("post line", g.y, 0.0);
            y.put("back wall", bay.garage.depth.m(), 0.0);
            if let Some((low, high)) = vehicle {
                y.put("vehicle, door end", low.y, low.z);
                y.put("vehicle, far end", high.y, low.z);
            }
            if let Some((low, high)) = around(all, |role| role == Role::DoorFitting)
                && high.y > 0.3
            {
                y.put("door's fittings, far end", high.y, low.z);
            }
            view.bottom = y.done();
        }
    }
}

fn callouts(
    view: &mut View,
    made: &Made<'_>,
    look: Look,
    all: &[Solid],
    lock: Option<&LockFinding>,
) {
    let (bay, study) = (made.order.bay, made.order.study);
    let units = bay.units;
    let named = |name: &str| all.iter().find(|one| one.name == name);
    let room = |metres: f64| both(Length::metres(metres), units, Rounding::Down);
    let near = lock.and_then(|lock| lock.near.as_ref());
    if let Some(near) = near {
        let says = format!(
            "least room at this lock, at worst: {} from {} to {} ({} asked)",
            room(near.clearance_m),
            called(&near.moving),
            called(&near.fixed),
            both(Length::metres(near.margin_m), units, Rounding::Up)
        );
        let at = named(&near.fixed).or_else(|| named(&near.moving));
        if let Some(at) = at {
            let moving = named(&near.moving).map_or(DVec3::ZERO, middle);
            let (low, high) = at.bounds();
            view.callouts.push(Callout {
                at_m: look.flat(moving.clamp(low, high)),
                says,
            });
        }
    }
    let standing = study.standing.iter();
    if let Some(least) = standing.min_by(|a, b| a.worst_m.total_cmp(&b.worst_m))
        && let Some(part) = named(&least.part)
    {
        view.callouts.push(Callout {
            at_m: look.flat(part.support(DVec3::Z)),
            says: format!(
                "least room of the standing lift, at worst: {} from {} to {}",
                room(least.worst_m),
                called(&least.part),
                called(&least.other)
            ),
        });
    }
    for one in all {
        let is_named = match one.role {
            Role::Obstacle(_) | Role::TieBeam | Role::ShutOffBar | Role::PowerUnit(_) => true,
            Role::Opener => one.name == "opener/head" || one.name.ends_with("rail"),
            _ => false,
        };
        if is_named {
            view.callouts.push(Callout {
                at_m: look.flat(middle(one)),
                says: on_one_line(&short_name(&one.name)),
            });
        }
    }
}

fn middle(one: &Solid) -> DVec3 {
    let (low, high) = one.bounds();
    let flat: DVec2 = ((low + high) * 0.5).truncate();
    flat.extend((low.z + high.z) * 0.5)
}

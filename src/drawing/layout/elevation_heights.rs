//! How high is what: running dimensions up the left side of an elevation?

use glam::DVec3;

use super::draw::Running;
use super::elevation::around;
use crate::bay::{Bay, Opener};
use crate::clearance::LockFinding;
use crate::drawing::outline::Look;
use crate::drawing::sheet::View;
use crate::report::called;
use crate::solids::{Role, Solid};
use crate::units::{Length, Rounding, both};

/// Heights of lift, vehicle and room, and of the things whose names are given: what the lettered
/// rooms end on.
pub(super) fn heights(
    view: &mut View,
    bay: &Bay,
    look: Look,
    all: &[Solid],
    lock: Option<&LockFinding>,
    ends: &[String],
) {
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
        // Where one may still stand there is no height of it.
        if lock.tyre_m > 0.0 {
            put(
                "lowest tyre, at worst",
                at_worst(tyres, false, lock.tyre_m),
                Rounding::Down,
            );
        }
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
    undersides(&mut z, bay, look, all, ends);
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

/// What reaches lower than this stands on the floor: its underside limits nothing. Metres.
const STANDS_M: f64 = 0.3;
/// Nearer than this to the opener's lowest, a part of it is the lowest, metres.
const SAME_M: f64 = 0.000_4;
/// A longer name is cut short here: it stands whole beside its letter.
const LETTERS: usize = 30;

/// The undersides of hanging things that rooms end on, as far as no other height tells of them;
/// numbered ones of one height together.
fn undersides(z: &mut Running, bay: &Bay, look: Look, all: &[Solid], ends: &[String]) {
    let opener = around(all, |role| role == Role::Opener).map(|(low, _)| low.z);
    let floor_m = around(all, |role| role == Role::Floor).map_or(0.0, |(_, high)| high.z);
    let mut told: Vec<Underside> = Vec::new();
    for one in all.iter().filter(|one| ends.contains(&one.name)) {
        let (low, _) = one.bounds();
        let is_meant = match one.role {
            Role::Obstacle(_) | Role::DoorPanel | Role::DoorFitting => true,
            Role::Opener => opener.is_none_or(|lowest| low.z > lowest + SAME_M),
            _ => false,
        };
        if !is_meant || low.z <= floor_m + STANDS_M {
            continue;
        }
        let name = called(&one.name);
        let name = name.strip_prefix("the ").unwrap_or(&name);
        let (kind, number) = numbered(name);
        let reads = both(Length::metres(low.z), bay.units, Rounding::Down);
        let same = |other: &&mut Underside| {
            !number.is_empty() && other.kind == kind && other.reads == reads
        };
        if let Some(other) = told.iter_mut().find(same) {
            other.numbers.push(number.into());
            continue;
        }
        told.push(Underside {
            kind: kind.into(),
            numbers: vec![number.into()],
            low,
            reads,
        });
    }
    for one in told {
        let name = format!("{} {}", one.kind, one.numbers.join(", "));
        let flat = look.flat(one.low);
        let what = format!("{}, lowest", shortened(name.trim_end()));
        z.put_apart(what, flat.y, flat.x, one.reads);
    }
}

/// A height that is told: of what, with which numbers, its lower left end in the bay, metres, and
/// what the tape reads.
struct Underside {
    kind: String,
    numbers: Vec<String>,
    low: DVec3,
    reads: String,
}

/// A name without the number at its end, and that number; empty without one.
fn numbered(name: &str) -> (&str, &str) {
    match name.rsplit_once(' ') {
        Some((kind, number)) if number.bytes().all(|b| b.is_ascii_digit()) => (kind, number),
        _ => (name, ""),
    }
}

/// A name with no more letters than a label beside the drawing has room for.
fn shortened(name: &str) -> String {
    if name.chars().count() <= LETTERS {
        return name.into();
    }
    let kept: String = name.chars().take(LETTERS - 1).collect();
    format!("{}\u{2026}", kept.trim_end())
}

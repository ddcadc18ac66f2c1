//! What stands on the floor where marks lie and tapes are pulled?
//!
//! Lines of sight are not asked for: a tape is pulled over the floor, so that only what reaches down to
//! it is in the way.

use glam::{DVec2, DVec3};

use crate::bay::Bay;
use crate::solids::door::door;
use crate::solids::obstacles::obstacles;
use crate::solids::shell::floor_level_range_m;
use crate::solids::{DoorTravel, Role, Solid};

/// What hangs no lower over the floor than this leaves a tape room under it, metres.
const LOW_M: f64 = 0.1;
/// A tape runs no nearer past anything, metres.
pub(super) const BESIDE_M: f64 = 0.005;
/// A mark is made and a tape's hook held no nearer to anything, metres.
pub(super) const HOOK_M: f64 = 0.025;
/// Marks this near to the door wall lie on the base line, metres.
const ON_BASE_LINE_M: f64 = 1e-9;

/// Something that stands on the floor.
#[derive(Debug, Clone)]
pub(super) struct Standing {
    /// As in the bay's list of solids.
    pub(super) solid: Solid,
    name: String,
    is_track: bool,
}

/// Everything that does: things in the room, and tracks of the open door.
pub(super) fn standing(bay: &Bay) -> Vec<Standing> {
    let things = obstacles(bay).into_iter().map(|solid| Standing {
        name: match solid.role {
            Role::Obstacle(index) => bay.garage.obstacles[index].name.clone(),
            _ => solid.name.clone(),
        },
        solid,
        is_track: false,
    });
    let fittings = door(bay, DoorTravel::Open).into_iter();
    let tracks = fittings
        .filter(|solid| solid.role == Role::DoorFitting)
        .map(|solid| Standing {
            solid,
            name: "the door's tracks".into(),
            is_track: true,
        });
    let all = things.chain(tracks);
    all.filter(|one| is_low(bay, &one.solid)).collect()
}

/// Whether a solid comes down to where a tape is pulled.
fn is_low(bay: &Bay, solid: &Solid) -> bool {
    let (low, high) = solid.bounds();
    let floor = floor_level_range_m(bay, [low.x, low.y], [high.x, high.y]).1;
    low.z < floor + LOW_M
}

/// Ways in which a solid and a tape are looked at, through half a turn.
const WAYS: u32 = 36;

/// Whether a straight tape comes as near as this to a solid, in plan; a mark where both ends are one. It
/// does where no way is found, of many, in which one lies beside the other: rather once too often.
pub(super) fn meets(solid: &Solid, tape: [DVec2; 2], within_m: f64) -> bool {
    let along = (tape[1] - tape[0]).normalize_or_zero();
    let own = [DVec3::X, DVec3::Y, DVec3::Z].map(|axis| {
        let turned = solid.bay_from_solid.rotation * axis;
        turned.truncate().normalize_or_zero()
    });
    let around = (0..WAYS)
        .map(|step| DVec2::from_angle(std::f64::consts::PI * f64::from(step) / f64::from(WAYS)));
    let ways = own.into_iter().chain([along, along.perp()]).chain(around);
    let mut ways = ways.filter(|way| *way != DVec2::ZERO);
    !ways.any(|way| {
        let flat = way.extend(0.0);
        let high = solid.support(flat).dot(flat);
        let low = solid.support(-flat).dot(flat);
        let ends = tape.map(|end| end.dot(way));
        ends[0].min(ends[1]) > high + within_m || ends[0].max(ends[1]) < low - within_m
    })
}

/// A tape that is pulled, by the number of its pull.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tape {
    pub(super) number: usize,
    pub(super) ends: [DVec2; 2],
}

impl Tape {
    fn is_on_base_line(&self) -> bool {
        self.ends.iter().all(|end| end.y.abs() < ON_BASE_LINE_M)
    }
}

/// What is in the way of these tapes and on these marks, and what is done; none where nothing is.
pub(super) fn in_the_way(
    things: &[Standing],
    tapes: &[Tape],
    marks: &[(&str, DVec2)],
) -> Option<String> {
    let is_past_tracks = |thing: &Standing, tape: &Tape| thing.is_track && tape.is_on_base_line();
    let general = listed(things, marks, tapes, |thing, tape| {
        !is_past_tracks(thing, tape)
    });
    let past_tracks = listed(things, &[], tapes, is_past_tracks);
    let mut said = Vec::new();
    if !past_tracks.is_empty() {
        said.push(format!(
            "In the way: {past_tracks}. Open the door, and pull in front of the tracks with both ends as \
             far off the wall."
        ));
    }
    if !general.is_empty() {
        said.push(format!(
            "In the way: {general}. Move it first; what can't be moved is measured round, and the posts \
             are then measured as built."
        ));
    }
    (!said.is_empty()).then(|| said.join(" "))
}

/// Each thing once, with the pulls that it is in the way of and the marks that it stands on.
fn listed(
    things: &[Standing],
    marks: &[(&str, DVec2)],
    tapes: &[Tape],
    counts: impl Fn(&Standing, &Tape) -> bool,
) -> String {
    let mut found: Vec<(&str, Vec<usize>, Vec<&str>)> = Vec::new();
    for thing in things {
        let crossed = tapes
            .iter()
            .filter(|tape| counts(thing, tape) && meets(&thing.solid, tape.ends, BESIDE_M))
            .map(|tape| tape.number);
        let under = marks
            .iter()
            .filter(|(_, at)| meets(&thing.solid, [*at; 2], BESIDE_M))
            .map(|(letter, _)| *letter);
        let (crossed, under): (Vec<usize>, Vec<&str>) = (crossed.collect(), under.collect());
        if crossed.is_empty() && under.is_empty() {
            continue;
        }
        // Both tracks, or two things of one name, are told of once.
        match found.iter_mut().find(|(name, ..)| *name == thing.name) {
            Some((_, numbers, letters)) => {
                numbers.extend(crossed);
                letters.extend(under);
            }
            None => found.push((&thing.name, crossed, under)),
        }
    }
    let each = found.into_iter().map(|(name, mut numbers, mut letters)| {
        numbers.sort_unstable();
        numbers.dedup();
        letters.sort_unstable();
        letters.dedup();
        let word = if numbers.len() == 1 { "pull" } else { "pulls" };
        let numbers: Vec<String> = numbers.iter().map(usize::to_string).collect();
        let mut told = Vec::new();
        if !numbers.is_empty() {
            told.push(format!("{word} {}", numbers.join(", ")));
        }
        if !letters.is_empty() {
            told.push(format!("over {}", letters.join(", ")));
        }
        format!("{name} ({})", told.join("; "))
    });
    let each: Vec<String> = each.collect();
    each.join("; ")
}

//! How much room is there about the raised vehicle: a line between the nearest points, and at worst
//! how long it may be?

use glam::DVec2;

use super::Made;
use super::draw::line;
use crate::clearance::{HerePair, LockFinding};
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::{FINE, WARN};
use crate::drawing::sheet::{Callout, Layer, Mark, Pen, View};
use crate::report::{are_alike, called};
use crate::units::{Length, Rounding, both};

/// Lines that look shorter than this share of their length are left to the other elevation.
const SEEN: f64 = 0.7;
/// Lines drawn on a page at most: those with the least room.
const MOST: usize = 5;
/// Each elevation has its own: they lie side by side.
const LETTERS: [[&str; MOST]; 2] = [["a", "b", "c", "d", "e"], ["f", "g", "h", "i", "j"]];
/// Half of the stroke across each end of a line, metres.
const END_M: f64 = 0.03;
/// Lines that would lie on each other are drawn so far apart, of the drawing's width: a letter has
/// room between them.
const APART: f64 = 0.024;
/// How many times as far a line is moved aside, in the order in which that is tried.
const ASIDE: [f64; 7] = [0.0, 1.0, -1.0, 2.0, -2.0, 3.0, -3.0];

/// A room that gets a line and a letter.
pub(super) struct Room<'a> {
    /// What is near what.
    pub(super) pair: &'a HerePair,
    /// The nearest points, the moving one first, on the page, metres.
    ends: [DVec2; 2],
    /// Whether this is the pair with the least room on this lock: it is then told here, once.
    pub(super) is_least: bool,
    says: String,
}

/// A room for each thing that is near the raised vehicle or what moves with it, on this lock.
pub(super) fn rooms<'a>(made: &'a Made<'_>, look: Look, lock: &LockFinding) -> Vec<Room<'a>> {
    let units = made.order.bay.units;
    let mut rooms: Vec<Room<'a>> = Vec::new();
    for pair in made.near(lock) {
        let Some((moving, fixed)) = pair.points_m else {
            continue;
        };
        let ends = [moving, fixed].map(|point| look.flat(point));
        let long = ends[0].distance(ends[1]);
        // One line for all pieces of a thing: the pairs come with the least room first.
        let again = rooms
            .iter()
            .any(|one| are_alike(&one.pair.fixed, &pair.fixed));
        if again || long < SEEN * moving.distance(fixed) || long < 1e-6 {
            continue;
        }
        let least = lock.near.as_ref();
        let least = least.filter(|one| one.moving == pair.moving && one.fixed == pair.fixed);
        let room_m = least.map_or(pair.worst_m, |one| pair.worst_m.min(one.clearance_m));
        let asked = least.map_or_else(String::new, |one| {
            let margin = both(Length::metres(one.margin_m), units, Rounding::Up);
            format!(", the nearest to what is asked of it, {margin}")
        });
        rooms.push(Room {
            pair,
            ends,
            is_least: least.is_some(),
            says: format!(
                "{} to {}: {} of room at worst, on the way onto this lock{asked}",
                called(&pair.moving),
                called(&pair.fixed),
                both(Length::metres(room_m), units, Rounding::Down)
            ),
        });
        if rooms.len() == MOST {
            break;
        }
    }
    rooms
}

/// A line for each room, its letter and what it says.
pub(super) fn room_lines(view: &mut View, look: Look, rooms: &[Room<'_>]) {
    let (low, high) = view.bounds_m();
    let step = (high - low).max_element() * APART;
    let mut drawn: Vec<[DVec2; 2]> = Vec::new();
    for room in rooms {
        let way = (room.ends[1] - room.ends[0]).normalize_or_zero();
        let aside = |times: f64| room.ends.map(|end| end + way.perp() * (step * times));
        let off = |ends: [DVec2; 2]| {
            let off = drawn.iter().map(|other| distance(ends, *other));
            off.fold(f64::INFINITY, f64::min)
        };
        let places = ASIDE.map(aside);
        let free = places.into_iter().find(|ends| off(*ends) > step * 0.7);
        let ends = free.unwrap_or(room.ends);
        let across = way.perp() * END_M;
        let mut put = |ends: [DVec2; 2], pen| line(&mut view.items, Layer::Dimensions, ends, pen);
        put(ends, Pen::solid(0.25, WARN));
        for (end, own) in ends.into_iter().zip(room.ends) {
            put([end - across, end + across], Pen::solid(0.25, WARN));
            if end.distance(own) > 1e-9 {
                // From the point itself to where its line was moved.
                put([own, end], Pen::solid(0.12, FINE));
            }
        }
        drawn.push(ends);
    }
    // By letter, for leaders would run through the vehicle; from the top down, as they are told.
    let middles = drawn.iter().map(|ends| ends[0].lerp(ends[1], 0.5));
    let mut lines: Vec<(DVec2, &Room<'_>)> = middles.zip(rooms).collect();
    lines.sort_by(|(a, _), (b, _)| b.y.total_cmp(&a.y).then(a.x.total_cmp(&b.x)));
    let letters = LETTERS[usize::from(look == Look::Front)];
    for ((at_m, room), letter) in lines.into_iter().zip(letters) {
        view.marks.push(Mark {
            at_m,
            letter: letter.into(),
            clear_m: 0.0,
            may_be_left: false,
        });
        view.callouts.push(Callout {
            at_m,
            letter: Some(letter.into()),
            says: room.says.clone(),
        });
    }
}

/// How near two lines come.
fn distance(one: [DVec2; 2], other: [DVec2; 2]) -> f64 {
    let off = |at: DVec2, [a, b]: [DVec2; 2]| {
        let share = (at - a).dot(b - a) / (b - a).length_squared().max(1e-18);
        a.lerp(b, share.clamp(0.0, 1.0)).distance(at)
    };
    // On which side of a line both ends of the other lie: on different ones both ways they cross.
    let parted = |[a, b]: [DVec2; 2], [c, d]: [DVec2; 2]| {
        (b - a).perp_dot(c - a) * (b - a).perp_dot(d - a) < 0.0
    };
    if parted(one, other) && parted(other, one) {
        return 0.0;
    }
    let [a, b] = one.map(|end| off(end, other));
    let [c, d] = other.map(|end| off(end, one));
    a.min(b).min(c).min(d)
}

//! How much room is there about the raised vehicle: a line between the nearest points, and at worst
//! how long it may be?

use glam::DVec2;

use super::Made;
use super::draw::line;
use crate::clearance::{HerePair, LockFinding};
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::WARN;
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

/// A line for each thing that is near the raised vehicle or what moves with it, on this lock.
/// Whether the pair with the least room is among them comes back: it is then told here, once.
pub(super) fn room_lines(view: &mut View, made: &Made<'_>, look: Look, lock: &LockFinding) -> bool {
    let mut has_least = false;
    let units = made.order.bay.units;
    let mut told: Vec<&HerePair> = Vec::new();
    let mut lines: Vec<(DVec2, String)> = Vec::new();
    for pair in made.near(lock) {
        let Some((moving, fixed)) = pair.points_m else {
            continue;
        };
        let ends = [moving, fixed].map(|point| look.flat(point));
        let long = ends[0].distance(ends[1]);
        // One line for all pieces of a thing: the pairs come with the least room first.
        let again = told.iter().any(|one| are_alike(&one.fixed, &pair.fixed));
        if again || long < SEEN * moving.distance(fixed) || long < 1e-6 {
            continue;
        }
        told.push(pair);
        let pen = Pen::solid(0.25, WARN);
        let across = (ends[1] - ends[0]).normalize_or_zero().perp() * END_M;
        let mut put = |ends: [DVec2; 2]| line(&mut view.items, Layer::Dimensions, ends, pen);
        put(ends);
        for end in ends {
            put([end - across, end + across]);
        }
        let least = lock.near.as_ref();
        let least = least.filter(|one| one.moving == pair.moving && one.fixed == pair.fixed);
        has_least |= least.is_some();
        let room_m = least.map_or(pair.worst_m, |one| pair.worst_m.min(one.clearance_m));
        let asked = least.map_or_else(String::new, |one| {
            let margin = both(Length::metres(one.margin_m), units, Rounding::Up);
            format!(", the nearest to what is asked of it, {margin}")
        });
        let says = format!(
            "{} to {}: {} of room at worst, on the way onto this lock{asked}",
            called(&pair.moving),
            called(&pair.fixed),
            both(Length::metres(room_m), units, Rounding::Down)
        );
        lines.push((ends[0].lerp(ends[1], 0.5), says));
        if told.len() == MOST {
            break;
        }
    }
    // By letter, for leaders would run through the vehicle; from the top down, as they are told.
    lines.sort_by(|(a, _), (b, _)| b.y.total_cmp(&a.y).then(a.x.total_cmp(&b.x)));
    let letters = LETTERS[usize::from(look == Look::Front)];
    for ((at_m, says), letter) in lines.into_iter().zip(letters) {
        view.marks.push(Mark {
            at_m,
            letter: letter.into(),
            clear_m: 0.0,
            may_be_left: false,
        });
        view.callouts.push(Callout {
            at_m,
            letter: Some(letter.into()),
            says,
        });
    }
    has_least
}

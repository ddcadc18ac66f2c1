//! How are the lines set out on which the tyres stand?
//!
//! A middle alone leaves its line free to lie askew, which at the tyres is more than the middle is off
//! by: so both ends of each line are pulled, as far from their own mark, and alike from the other
//! axle's. What has two legs alike is square.

use glam::DVec2;

use super::drift::{Drift, On};
use super::points::axles;
use super::puller::Puller;
use super::stop_marks::StopMarks;
use crate::bay::Bay;

/// What the step is called in which these are set.
pub const STOP_LINES: &str = "Stop lines for parking";

/// How far a line goes on beside the tyres, metres: it is seen while they stand on it.
pub const BESIDE_M: f64 = 0.2;
/// Nearer to the centre line than this, a mark lies on it, metres.
const ON_LINE_M: f64 = 0.000_2;
/// The other end of a line is pulled by the same rows of the list, and off by itself: what is added to
/// their numbers for it.
pub(super) const OTHER_END: usize = 1_000_000;

/// One stop line.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct StopLine {
    /// Half its length, metres.
    pub(super) half_m: f64,
    /// What moves its ends.
    pub(super) ends: [Drift; 2],
}

/// M and N, on the centre line where they lie on it, where two tapes cross where they don't; and the
/// ends of their lines.
pub(super) fn stop_lines(
    pull: &mut Puller<'_>,
    bay: &Bay,
    middle: &str,
    bases: &[&str],
    [sets, lift]: [f64; 2],
) -> Option<StopMarks> {
    let marks = ["M", "N"].map(|letter| pull.at(letter));
    let [Some(m), Some(n)] = marks else {
        return None;
    };
    let (across, line) = (bay.lift.across.m(), bay.lift.post_line.m());
    let on_line = [m, n].iter().all(|at| (at.x - across).abs() < ON_LINE_M);
    let whys = [("M", m, "front"), ("N", n, "rear")];
    let whys =
        whys.map(|(letter, at, word)| (letter, at, format!("middle between the {word} tyres")));
    if on_line && line > 0.0 {
        for (letter, at, why) in whys {
            let why = format!("{why}, on the centre line");
            let share = (line - at.y) / line;
            pull.on_line(["G", letter], Some((middle, share)), why, sets);
        }
        for (letter, word) in [("M", "front"), ("N", "rear")] {
            for base in ["K", "L"] {
                let why = format!("check, {word}: alike from K and from L");
                pull.check(base, letter, why, lift.max(sets));
            }
        }
    } else {
        let letters = ["M".to_owned(), "N".to_owned()];
        let bases = pull.best_pair(bases, &letters, sets);
        for (letter, _, why) in whys {
            let bases = bases.map_or(["H", "J"], |(pair, _)| pair);
            pull.cross(bases, letter, [why, "the same".into()], sets);
        }
    }
    pull.check("M", "N", "check: from axle to axle", lift.max(sets));
    let wheels = axles(bay)?;
    let lines = [
        ends(pull, bay, (["M", "N"], [m, n], "front"), wheels[0], sets),
        ends(pull, bay, (["N", "M"], [n, m], "rear"), wheels[1], sets),
    ];
    Some(StopMarks::of(pull, [m, n], &lines))
}

/// Both ends of the line through a mark, pulled from it and from the other axle's.
fn ends(
    pull: &mut Puller<'_>,
    bay: &Bay,
    ([own, other], at, word): ([&str; 2], [DVec2; 2], &str),
    wheels: [DVec2; 2],
    sets: f64,
) -> StopLine {
    let half_m = 0.5 * (wheels[0].distance(wheels[1]) + bay.vehicle.tyre_width.m()) + BESIDE_M;
    let aside = (at[0] - at[1]).perp().normalize_or_zero() * half_m;
    let places = [at[0] + aside, at[0] - aside];
    let why = format!("{word} stop line, half of it");
    let legs = [(own, at[0]), (other, at[1])];
    let near = pull.line_ends([own, "each end of its line"], at[0], places, why, sets);
    let far = format!("each end of {own}'s line");
    let why = "alike to both ends, or the line is not square".to_owned();
    let far = pull.line_ends([other, &far], at[1], places, why, sets);
    let drifts = legs.map(|(letter, _)| pull.drift(letter));
    let froms = [[(&drifts[0], 1.0)], [(&drifts[1], 1.0)]];
    let ends = [0, 1].map(|end| {
        let lines = [near, far].into_iter().zip(legs).zip(&froms);
        let lines: Vec<On<'_>> = lines
            .map(|(((number, off), (_, from)), drift)| On {
                normal: (places[end] - from).normalize_or_zero(),
                from: drift,
                pull: Some((number + end * OTHER_END, off)),
            })
            .collect();
        let found = <[On<'_>; 2]>::try_from(lines).ok();
        let found = found.and_then(Drift::crossing);
        found.unwrap_or_else(Drift::lost)
    });
    StopLine { half_m, ends }
}

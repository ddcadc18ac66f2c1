//! What stands against a safe lock, in words: what it is, and its cure.

use glam::DVec2;

use super::AsBuiltReport;
use super::moves::{FINEST_M, post};
use crate::asbuilt::{Finding, Planned, index};
use crate::bay::Side;

/// A wall that is off by less is not told to be off, metres.
const SHOWN_M: f64 = 0.000_5;

impl AsBuiltReport<'_> {
    /// A tape reading by its place in the list, in words.
    pub(super) fn tape(&self, at: usize) -> String {
        self.measured
            .tape
            .get(at)
            .map(|taken| Planned::says(taken.over))
            .unwrap_or_default()
    }

    /// A lean over the whole height, toward +x and +y as slopes.
    pub(super) fn lean(&self, slope: DVec2) -> String {
        let high = self.planned.lift.column.height.m();
        let one = |off: f64, to: [&str; 2], way: &str| {
            if (off * high).abs() < 0.000_05 {
                return format!("none {way}");
            }
            let to = if off > 0.0 { to[0] } else { to[1] };
            format!("{} to the {to}", self.fine(off * high))
        };
        format!(
            "{}, {}",
            one(slope.x, ["right", "left"], "across"),
            one(slope.y, ["front", "rear"], "along")
        )
    }

    /// How far a post's column goes over its height by what counts for the rocking of its plate.
    fn rocks_by_m(&self, side: Side) -> f64 {
        let lift = &self.planned.lift;
        let shims = &self.built.shims[index(side)];
        shims.rocking(lift).length() * lift.column.height.m()
    }

    /// True where the plumb of a post was read but once, across or along.
    fn is_plumbed_once(&self, side: Side) -> bool {
        let leans = self.built.leans[index(side)].iter().flatten();
        leans.into_iter().any(|lean| lean.reads < 2)
    }

    /// What it is, and what to do about it; both start in lower case and have no full stop.
    pub(super) fn says(&self, finding: Finding) -> (String, String) {
        let read = |at: usize| self.built.readings.get(at);
        match finding {
            Finding::Misfit(at) => {
                let left_out = read(at).is_some_and(|one| one.left_out);
                let by = if left_out { "by the others" } else { "fitted" };
                let values = read(at).map_or_else(String::new, |one| {
                    format!(
                        ": read as {}, {by} {}",
                        self.length(one.reading_m),
                        self.length(one.fitted_m)
                    )
                });
                let places = if left_out {
                    "the places here are without it"
                } else {
                    "the places here still count on it, since the others do not fix the posts without \
                     it"
                };
                (
                    format!(
                        "the reading {} does not fit the others{values}",
                        self.tape(at)
                    ),
                    format!("take this reading again; {places}"),
                )
            }
            Finding::Differs(at) => (
                format!(
                    "{} was read more than once, and the readings differ by more than their \u{b1}",
                    self.tape(at)
                ),
                "take it once more, and leave out the one that was wrong; their mean counts here".into(),
            ),
            Finding::Wall(at) => {
                let (wall, size) = [
                    ("left wall", "`width` of the garage and `offset` of its opening"),
                    ("right wall", "`width` of the garage and `offset` of its opening"),
                    ("back wall", "`depth` of the garage"),
                ][at.min(2)];
                let off = self.built.walls.get(at).map_or(0.0, |wall| wall.off_m);
                let toward = match (at, off > 0.0) {
                    (0 | 1, true) => "to the right of",
                    (0 | 1, false) => "to the left of",
                    (_, true) => "farther in than",
                    (_, false) => "nearer than",
                };
                // With what contradicted it left out nothing is left to tell where it stands.
                let is_told = off.abs() >= SHOWN_M;
                (
                    if is_told {
                        format!(
                            "by these readings the {wall} stands {} {toward} where the bay file has it, \
                             and that is more than the room's \u{b1}",
                            self.length(off)
                        )
                    } else {
                        format!(
                            "the {wall}'s place in the bay file fits what was read no better than the \
                             reading that does not fit: either may be wrong"
                        )
                    },
                    format!("measure {size} again and correct the bay file, or take the readings to it again"),
                )
            }
            Finding::WallUnchecked(at) => {
                let (wall, size, cure) = [
                    ("left wall", "width", "distances from C, or from the right wall too"),
                    ("right wall", "width", "distances from C, or from the left wall too"),
                    ("back wall", "depth", "distances from the door wall"),
                ][at.min(2)];
                (
                    format!(
                        "no other reading checks where the {wall} stands: a wrong {size} of the garage in \
                         the bay file would not show"
                    ),
                    format!("add {cure}"),
                )
            }
            Finding::Scatters => (
                format!(
                    "together the readings scatter more than their \u{b1} lets them: less than once in {} \
                     by chance",
                    (1.0 / self.built.by_chance.max(1e-6)).floor()
                ),
                "find the reading that was misread or hooked wrong, or state the \u{b1} that the tape has"
                    .into(),
            ),
            Finding::Weak(side) => (
                format!("these readings do not hold the {} well enough", post(side)),
                "add a diagonal and distances from two walls, or take finer readings".into(),
            ),
            Finding::Suspect(at) => (
                format!(
                    "the reading {} is as likely to be the wrong one",
                    self.tape(at)
                ),
                "take it again too".into(),
            ),
            Finding::Unchecked(at) => (
                format!(
                    "no other reading checks {}: a slip in it would not show",
                    self.tape(at)
                ),
                "add a diagonal, or the same distance at another corner".into(),
            ),
            Finding::PlumbNotRead(side, across) => (
                format!(
                    "the {}'s plumb {} was not read",
                    post(side),
                    if across {
                        "across the bay"
                    } else {
                        "along the bay"
                    }
                ),
                "plumb it on that face and add it to `plumb`".into(),
            ),
            Finding::PlumbDiffers(side, across) => (
                format!(
                    "the {}'s plumb {} was read more than once, and the readings differ by more than \
                     their \u{b1}",
                    post(side),
                    if across {
                        "across the bay"
                    } else {
                        "along the bay"
                    }
                ),
                "plumb it once more, and leave out the one that was wrong; their mean counts here".into(),
            ),
            Finding::PlumbAgainstLevels(side) => {
                let clash = self.built.shims.iter().find(|one| one.side == side);
                let values = clash.and_then(|one| one.clash).map_or_else(String::new, |clash| {
                    format!(
                        ": by the plumb {}, by levels and shims {}",
                        self.lean(clash.plumb),
                        self.lean(clash.plate)
                    )
                });
                (
                    format!(
                        "the {} does not lean as its plate lies, over its whole height{values}",
                        post(side)
                    ),
                    "plumb it and level its four corners again; a column that is not square on its plate \
                     is for the lift's maker. Until then no shims are told"
                        .into(),
                )
            }
            Finding::Rocks(side, gap) => (
                format!(
                    "the plate of the {} rocks on two corners, with a gap of {} at the others: under a \
                     load its post may lean otherwise than it was plumbed",
                    post(side),
                    self.fine(gap)
                ),
                "fill the gaps as below and snug the anchors; feel under every corner with a feeler gauge, \
                 write what it finds as `feeler`, and plumb the column again"
                    .into(),
            ),
            Finding::MayRock(side, by) => {
                let what = match by {
                    Some((gap, tips)) => format!(
                        "whether the plate of the {} rocks: the levels leave room for a gap of {} under a \
                         corner, and on that its column could go {} over its height",
                        post(side),
                        self.fine(gap),
                        self.at_most(tips)
                    ),
                    None => format!(
                        "whether the plate of the {} rocks: the floor under it was not levelled, and \
                         nobody felt for gaps",
                        post(side)
                    ),
                };
                (
                    what,
                    "with the anchors snug, try under every corner with a feeler gauge, fill what is open, \
                     and write the thickest leaf that goes in anywhere, or the thinnest that you have where \
                     none does, as `gap` in `feeler`"
                        .into(),
                )
            }
            Finding::FeltAgainstLevels(side, levelled, felt) => (
                format!(
                    "by levels and shims the plate of the {} rocks by a gap of {} or more, and no leaf of \
                     {} went in under it",
                    post(side),
                    self.fine(levelled),
                    self.leaf(felt)
                ),
                "level its corners again, see that every stack of shims is listed, and feel under each \
                 corner once more. Until then no shims are told"
                    .into(),
            ),
            Finding::PlateOutOfPlumb(side, out, limit) => (
                format!(
                    "by levels and shims the {} leans {} over its height, and the manual lets it lean \
                     {}; the plumb that says otherwise was read once",
                    post(side),
                    self.at_most(out),
                    self.limit(limit)
                ),
                "plumb it again, turned end for end, and add that reading to `plumb`; or level its \
                 corners again"
                    .into(),
            ),
            Finding::NoPlumbLimit => (
                "how far out of plumb the manual lets a column be is not given".into(),
                "write it from the manual as `plumb_limit` of the lift, over the column's height"
                    .into(),
            ),
            Finding::OutOfPlumb(side, out, limit) => (
                format!(
                    "the {} leans {} over its height, and the manual lets it lean {}",
                    post(side),
                    self.at_most(out),
                    self.limit(limit)
                ),
                "shim it plumb as below, and plumb it again".into(),
            ),
            Finding::MaybeOutOfPlumb(side, out, limit) => (
                format!(
                    "the {} may lean as much as {} over its height, for the \u{b1} of its \
                     readings{}, and the manual lets it lean {}",
                    post(side),
                    self.at_most(out),
                    if self.rocks_by_m(side) > FINEST_M
                    {
                        " and for what its plate can rock"
                    } else {
                        ""
                    },
                    self.limit(limit)
                ),
                {
                    let again = if self.is_plumbed_once(side) {
                        "plumb it once more with the level turned end for end and add that to `plumb`, or else "
                    } else {
                        ""
                    };
                    let cure = if self.rocks_by_m(side) > FINEST_M {
                        "plumb it over more of its height or with a finer level, shim it plumb on all four \
                         corners, or fill what is open under them until only a thinner leaf goes in, and \
                         write that as `feeler`"
                    } else {
                        "plumb it over more of its height or with a finer level, or shim it plumb on all \
                         four corners"
                    };
                    format!("{again}{cure}")
                },
            ),
            Finding::NoShimLimit => (
                "how high the manual lets shims be is not given".into(),
                "write it from the manual as `shim_limit` of the lift".into(),
            ),
            Finding::ShimsTooHigh(at, high, limit) => (
                format!(
                    "the shims that lie at {} are {} high, and the manual lets them be {}",
                    at.letters(),
                    self.fine(high),
                    self.limit(limit)
                ),
                "set them as below, where that is lower; else ask the lift's maker".into(),
            ),
            Finding::ShimsWantedTooHigh(at, high, limit) => (
                format!(
                    "a plumb post needs shims of {} at {}, and the manual lets them be {}",
                    self.fine(high),
                    at.letters(),
                    self.limit(limit)
                ),
                "ask the lift's maker: the floor or the place has to change".into(),
            ),
            Finding::ShimsMaybeTooHigh(at, high, limit) => (
                format!(
                    "a plumb post may need shims of as much as {} at {}, for the \u{b1} of plumb and \
                     levels, and the manual lets them be {}",
                    self.fine(high),
                    at.letters(),
                    self.limit(limit)
                ),
                "plumb and level it finer, or ask the lift's maker".into(),
            ),
            Finding::NotLevelled => (
                "how much higher one post stands than the other is not known".into(),
                "level the floor at all eight corners and add it to `levels`".into(),
            ),
            Finding::FloorFallsOtherwise(fall) => (
                format!(
                    "over the two plates the floor as levelled falls {} otherwise than the bay file's \
                     floor",
                    self.at_most(fall)
                ),
                "level it again, or write the floor as it is as `floor` of the garage".into(),
            ),
        }
    }
}

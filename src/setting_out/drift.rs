//! How far may a mark be off where every reading lies at an end of what is accepted?
//!
//! Each mark is the crossing of two lines: of two tapes, or of a tape and a line that is there
//! already. Where tapes cross at a flat angle a small error of a reading is a large one of the
//! mark, and marks from which others are pulled hand their errors on. Both are kept, to the first
//! order of the errors (millimetres over metres: what is left out is thousandths of a millimetre),
//! and each pull by itself, so that errors that cancel do so and others add up.

use std::collections::BTreeMap;

use glam::DVec2;

/// Where a mark goes when a pull reads a whole tolerance too long, by the pull's number, metres.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Drift(BTreeMap<usize, DVec2>);

/// A line that a mark is set on: square to `normal`.
#[derive(Debug, Clone, Copy)]
pub(super) struct On<'a> {
    pub(super) normal: DVec2,
    /// What moves the line, and the share of it that it moves by where the mark is.
    pub(super) from: &'a [(&'a Drift, f64)],
    /// The pull that sets its distance and how far that may be off, metres; none for a line.
    pub(super) pull: Option<(usize, f64)>,
}

impl Drift {
    /// Of the mark where two lines cross; none where they hardly do.
    pub(super) fn crossing(lines: [On<'_>; 2]) -> Option<Self> {
        let [a, b] = lines.map(|line| line.normal);
        let turn = a.perp_dot(b);
        if turn.abs() < FLATTEST {
            return None;
        }
        // How the crossing goes when one of the lines goes by 1 along its normal.
        let ways = [-b.perp() / turn, a.perp() / turn];
        let mut all = BTreeMap::new();
        for (line, way) in lines.into_iter().zip(ways) {
            let mut add = |pull: usize, far: f64| {
                *all.entry(pull).or_insert(DVec2::ZERO) += way * far;
            };
            for (from, share) in line.from {
                for (&pull, moved) in &from.0 {
                    add(pull, moved.dot(line.normal) * share);
                }
            }
            if let Some((pull, tolerance)) = line.pull {
                add(pull, tolerance);
            }
        }
        Some(Self(all))
    }

    /// Of a mark that its pulls don't set: it may be anywhere, which no study counts with.
    pub(super) fn lost() -> Self {
        Self(BTreeMap::from([(usize::MAX, DVec2::ONE)]))
    }

    /// The most that it may be off this way, or the other, metres.
    pub(super) fn most(&self, way: DVec2) -> f64 {
        self.0.values().map(|moved| moved.dot(way).abs()).sum()
    }

    /// The same of how far it goes more than another.
    pub(super) fn most_beside(&self, other: &Self, way: DVec2) -> f64 {
        let pulls = self.0.keys().chain(other.0.keys());
        let pulls: std::collections::BTreeSet<&usize> = pulls.collect();
        let of = |drift: &Self, pull: &usize| drift.0.get(pull).copied().unwrap_or_default();
        let apart = pulls
            .into_iter()
            .map(|pull| (of(self, pull) - of(other, pull)).dot(way).abs());
        apart.sum()
    }

    /// How far across and along the bay.
    pub(super) fn box_m(&self) -> DVec2 {
        DVec2::new(self.most(DVec2::X), self.most(DVec2::Y))
    }
}

/// Lines that cross at less than this, the angle's sine, set no mark.
const FLATTEST: f64 = 0.3;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn flat_crossings_magnify() {
        // Two tapes from 1 m left and right of the middle, the mark 4 m ahead, 1 mm each: a tape
        // more and one less move it sideways by 1 mm over the sine of the half angle.
        let mark = DVec2::new(0.0, 4.0);
        let bases = [DVec2::new(-1.0, 0.0), DVec2::new(1.0, 0.0)];
        let lines = [0, 1].map(|index| On {
            normal: (mark - bases[index]).normalize(),
            from: &[],
            pull: Some((index, 0.001)),
        });
        let found = Drift::crossing(lines).unwrap();
        let half = (1.0_f64 / 17.0_f64.sqrt()).asin();
        let off = found.box_m();
        assert!((off.x - 0.001 / half.sin()).abs() < 1e-12);
        assert!((off.y - 0.001 / half.cos()).abs() < 1e-12);
        // Of itself it goes nowhere.
        assert!(found.most_beside(&found, DVec2::X) < 1e-15);
    }

    #[test]
    fn a_crossing_that_is_too_flat_is_none() {
        let line = |normal: DVec2| On {
            normal: normal.normalize(),
            from: &[],
            pull: None,
        };
        let flat = [line(DVec2::Y), line(DVec2::new(0.2, 1.0))];
        assert_eq!(Drift::crossing(flat), None);
    }
}

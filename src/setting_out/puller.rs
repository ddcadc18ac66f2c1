//! Pulls as they are put down one after another, and how far off the marks are that they set.

use std::collections::BTreeMap;

use glam::DVec2;

use super::drift::{Drift, On};
use super::points::FloorPoint;
use super::pulls::{Pull, Step};
use super::reading::{Reading, readable_m};
use super::way::{Standing, Tape, in_the_way};
use crate::bay::UnitSystem;

pub(super) struct Puller<'a> {
    points: &'a [FloorPoint],
    units: UnitSystem,
    things: &'a [Standing],
    next: usize,
    pulls: Vec<Pull>,
    /// The same, each as often as the tape is laid out for it.
    tapes: Vec<Tape>,
    drifts: BTreeMap<String, Drift>,
}

impl<'a> Puller<'a> {
    pub(super) const fn new(
        points: &'a [FloorPoint],
        units: UnitSystem,
        things: &'a [Standing],
    ) -> Self {
        Self {
            points,
            units,
            things,
            next: 1,
            pulls: Vec::new(),
            tapes: Vec::new(),
            drifts: BTreeMap::new(),
        }
    }

    pub(super) fn at(&self, letter: &str) -> Option<DVec2> {
        let mut points = self.points.iter();
        Some(points.find(|p| p.letter == letter)?.at_m)
    }

    /// A pull that checks what is marked already.
    pub(super) fn check(&mut self, from: &str, to: &str, why: impl Into<String>, tolerance: f64) {
        self.put([from, to], why.into(), tolerance, false);
    }

    /// What a tape of this length shows, no closer than it can be read.
    fn reading(&self, expected_m: f64, tolerance_m: f64) -> Reading {
        Reading {
            expected_m,
            tolerance_m: tolerance_m.max(readable_m(self.units)),
        }
    }

    /// How far off a mark this far away may be set, metres.
    pub(super) fn most_off_m(&self, expected_m: f64, tolerance_m: f64) -> f64 {
        let reading = self.reading(expected_m, tolerance_m);
        reading.most_off_m(self.units)
    }

    fn put(&mut self, [from, to]: [&str; 2], why: String, tolerance_m: f64, sets: bool) {
        let (Some(a), Some(b)) = (self.at(from), self.at(to)) else {
            return;
        };
        self.tapes.push(Tape {
            number: self.next,
            ends: [a, b],
        });
        self.pulls.push(Pull {
            number: self.next,
            ends: [from.into(), to.into()],
            why,
            sets,
            reading: self.reading(a.distance(b), tolerance_m),
        });
        self.next += 1;
    }

    /// A pull from a mark to both ends of a line through another, which have no letters of their own: its
    /// number, and how far off it may set either. Nothing is pulled from such an end.
    pub(super) fn line_ends(
        &mut self,
        ends: [&str; 2],
        from: DVec2,
        places: [DVec2; 2],
        why: String,
        tolerance: f64,
    ) -> (usize, f64) {
        let number = self.next;
        let reading = self.reading(from.distance(places[0]), tolerance);
        self.tapes.extend(places.map(|place| Tape {
            number,
            ends: [from, place],
        }));
        self.pulls.push(Pull {
            number,
            ends: ends.map(str::to_owned),
            why,
            sets: false,
            reading,
        });
        self.next += 1;
        (number, reading.most_off_m(self.units))
    }

    /// A mark at a distance from another, on a line of this direction that goes through the other
    /// and through a third, `share` of the way to the third. The base line goes through no third:
    /// it stays where it is.
    pub(super) fn on_line(
        &mut self,
        [from, to]: [&str; 2],
        through: Option<(&str, f64)>,
        why: impl Into<String>,
        tolerance: f64,
    ) {
        let (Some(a), Some(b)) = (self.at(from), self.at(to)) else {
            return;
        };
        let number = self.next;
        self.put([from, to], why.into(), tolerance, true);
        let along = (b - a).normalize_or_zero();
        let start = self.drift(from);
        let moved = match through {
            None => vec![],
            Some((third, share)) => vec![(start.clone(), 1.0 - share), (self.drift(third), share)],
        };
        let line: Vec<(&Drift, f64)> = moved.iter().map(|(drift, share)| (drift, *share)).collect();
        let ends = [(&start, 1.0)];
        let found = Drift::crossing([
            On {
                normal: along,
                from: &ends,
                pull: Some((number, self.most_off_m(a.distance(b), tolerance))),
            },
            On {
                normal: along.perp(),
                from: &line,
                pull: None,
            },
        ]);
        self.drifts
            .insert(to.into(), found.unwrap_or_else(Drift::lost));
    }

    /// A mark where two tapes cross.
    pub(super) fn cross(&mut self, from: [&str; 2], to: &str, whys: [String; 2], tolerance: f64) {
        if self.at(to).is_none() || from.iter().any(|base| self.at(base).is_none()) {
            return;
        }
        let first = self.next;
        for (base, why) in from.iter().zip(whys) {
            self.put([base, to], why, tolerance, true);
        }
        let found = self.crossing(from, to, first, tolerance);
        self.drifts
            .insert(to.into(), found.unwrap_or_else(Drift::lost));
    }

    /// How far a mark of two crossing tapes is off; none where they cross too flatly.
    fn crossing(&self, from: [&str; 2], to: &str, first: usize, tolerance: f64) -> Option<Drift> {
        let mark = self.at(to)?;
        let [a, b] = from.map(|base| (self.at(base), self.drift(base)));
        let (starts, normals) = ([&a.1, &b.1], [a.0? - mark, b.0? - mark]);
        let from = starts.map(|start| [(start, 1.0)]);
        Drift::crossing([0, 1].map(|index| On {
            normal: -normals[index].normalize_or_zero(),
            from: &from[index],
            pull: Some((
                first + index,
                self.most_off_m(normals[index].length(), tolerance),
            )),
        }))
    }

    /// Of some bases the two from which marks are least off, and by how much, metres.
    pub(super) fn best_pair<'b>(
        &self,
        bases: &[&'b str],
        marks: &[String],
        tolerance: f64,
    ) -> Option<([&'b str; 2], f64)> {
        let mut best: Option<([&str; 2], f64)> = None;
        for (index, &one) in bases.iter().enumerate() {
            for &other in &bases[index + 1..] {
                let off = marks.iter().try_fold(0.0_f64, |most, mark| {
                    let found = self.crossing([one, other], mark, usize::MAX - 1, tolerance)?;
                    Some(most.max(found.box_m().max_element()))
                });
                if let Some(off) = off
                    && best.is_none_or(|(_, least)| off < least - 1e-9)
                {
                    best = Some(([one, other], off));
                }
            }
        }
        best
    }

    /// A mark as far from two edges of a plate that lies to its corner marks, square to each.
    pub(super) fn off_edges(
        &mut self,
        edges: [[&str; 2]; 2],
        to: &str,
        whys: [String; 2],
        tolerance: f64,
    ) {
        let corners = edges.map(|edge| edge.map(|corner| self.at(corner)));
        let (Some(mark), [[Some(a), Some(b)], [Some(c), Some(d)]]) = (self.at(to), corners) else {
            return;
        };
        let first = self.next;
        let mut feet = Vec::new();
        for ((edge, ends), why) in edges.into_iter().zip([[a, b], [c, d]]).zip(whys) {
            let (foot, share) = foot(ends, mark);
            self.lay(foot, [edge_named(edge), to.into()], mark, (why, tolerance));
            feet.push((mark - foot, share));
        }
        let drifts = edges.map(|edge| edge.map(|corner| self.drift(corner)));
        let froms: Vec<[(&Drift, f64); 2]> = drifts
            .iter()
            .zip(&feet)
            .map(|([one, other], (_, share))| [(one, 1.0 - share), (other, *share)])
            .collect();
        let lines = [0, 1].map(|index| On {
            normal: feet[index].0.normalize_or_zero(),
            from: &froms[index],
            pull: Some((
                first + index,
                self.most_off_m(feet[index].0.length(), tolerance),
            )),
        });
        let found = Drift::crossing(lines).unwrap_or_else(Drift::lost);
        self.drifts.insert(to.into(), found);
    }

    /// A pull that sets a mark, from a place that has no letter.
    fn lay(&mut self, from: DVec2, ends: [String; 2], to: DVec2, (why, tolerance): (String, f64)) {
        let number = self.next;
        self.tapes.push(Tape {
            number,
            ends: [from, to],
        });
        self.pulls.push(Pull {
            number,
            ends,
            why,
            sets: true,
            reading: self.reading(from.distance(to), tolerance),
        });
        self.next += 1;
    }

    /// What moves a mark; nothing for one that is where it is.
    pub(super) fn drift(&self, letter: &str) -> Drift {
        self.drifts.get(letter).cloned().unwrap_or_default()
    }

    /// The most that any of some marks may be off, across and along the bay.
    pub(super) fn box_m<'b>(&self, letters: impl IntoIterator<Item = &'b str>) -> DVec2 {
        let off = letters.into_iter().map(|letter| self.drift(letter).box_m());
        off.fold(DVec2::ZERO, DVec2::max)
    }

    pub(super) const fn is_empty(&self) -> bool {
        self.pulls.is_empty()
    }

    /// A step of the pulls since the last; what stands in their way is said after this.
    pub(super) fn step(&mut self, title: &'static str, says: impl Into<String>) -> Step {
        let pulls = std::mem::take(&mut self.pulls);
        let tapes = std::mem::take(&mut self.tapes);
        let is_used = |letter: &String| pulls.iter().any(|pull| pull.ends.contains(letter));
        let used = self.points.iter().filter(|point| is_used(&point.letter));
        let marks: Vec<(&str, DVec2)> = used
            .map(|point| (point.letter.as_str(), point.at_m))
            .collect();
        let mut says: String = says.into();
        if let Some(way) = in_the_way(self.things, &tapes, &marks) {
            says = format!("{says} {way}");
        }
        Step { title, says, pulls }
    }
}

/// What an edge of a plate is called, by its corners.
pub(super) fn edge_named([from, to]: [&str; 2]) -> String {
    format!("edge {from}\u{2013}{to}")
}

/// Where a tape from an edge meets a mark square to it: the place on the edge, and the share of the way
/// from its one end to the other.
pub(super) fn foot([from, to]: [DVec2; 2], mark: DVec2) -> (DVec2, f64) {
    let edge = to - from;
    let share = (mark - from).dot(edge) / edge.length_squared();
    (from + edge * share, share)
}

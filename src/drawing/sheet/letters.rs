//! Where does the letter of a point go, so that it is read as that point's?

use glam::DVec2;

use super::crossing::crosses;
use super::labels::{LEADER, line};
use super::{Layer, Mark, Shape, Sheet, Text, View};
use crate::drawing::palette::paper::{PAPER, SET_OUT, WARN};

const LETTER: f64 = 2.8;
/// White about a letter: what lies under it must not be read with it.
const PLATE: f64 = 0.35;
/// The dot of a point, its radius.
const DOT: f64 = 0.5;
/// White about a room's line.
const ROOM: f64 = 0.2;
/// No farther off than this a letter needs no leader.
const NEAR: f64 = 2.0;
/// Without a leader another point is so many times as far from a letter as its own.
const NEARER: f64 = 1.5;
/// Farther off than this a letter is not sent to be told apart.
const FAR: f64 = 10.0;
/// How far from its point a letter may stand, from the nearest on.
const OFF: [f64; 12] = [
    1.1, 2.2, 3.5, 5.0, 7.0, 10.0, 14.0, 18.0, 23.0, 29.0, 36.0, 44.0,
];

/// Letters, each beside its point where no other text and no leader lies. One that may be left out
/// is where there is no room for it.
pub(in crate::drawing) fn marks(
    sheet: &mut Sheet,
    view: &View,
    place: &dyn Fn(DVec2) -> DVec2,
    (low, high): (DVec2, DVec2),
) -> Option<()> {
    let around = |mark: &Mark| DVec2::splat(DOT.max(mark.clear_m * 1000.0 / sheet.scale));
    let cleared: Vec<f64> = view.marks.iter().map(|mark| around(mark).x).collect();
    let mut taken = Taken {
        texts: sheet.texts().map(Text::bounds).collect(),
        rooms: rooms(sheet),
        points: view
            .marks
            .iter()
            .map(|mark| {
                (
                    place(mark.at_m) - around(mark),
                    place(mark.at_m) + around(mark),
                )
            })
            .collect(),
        leaders: leaders(sheet),
        within: (low, high),
    };
    for (mark, clear) in view.marks.iter().zip(cleared) {
        let at = place(mark.at_m);
        let mut letter = Text {
            at,
            size: LETTER,
            upward: false,
            colour: SET_OUT,
            says: mark.letter.clone(),
        };
        let (a, b) = letter.bounds();
        let half = (b - a) * 0.5;
        let middle_of_text = (a + b) * 0.5 - at;
        let Some((middle, leader)) = taken.beside(at, half, clear - DOT) else {
            if mark.may_be_left {
                continue;
            }
            return None;
        };
        if mark.clear_m <= 0.0 {
            sheet.push(
                Layer::Points,
                Shape::Circle {
                    middle: at,
                    radius: DOT,
                    pen: None,
                    fill: Some(SET_OUT),
                },
            );
        }
        letter.at = middle - middle_of_text;
        taken
            .texts
            .push((middle - half - PLATE, middle + half + PLATE));
        if let Some(ends) = leader {
            line(sheet, &ends, LEADER);
            taken.leaders.push(ends);
        }
        let (a, b) = letter.bounds();
        let (a, b) = (a - PLATE, b + PLATE);
        sheet.push(
            Layer::Shade,
            Shape::Polygon {
                points: vec![a, DVec2::new(b.x, a.y), b, DVec2::new(a.x, b.y)],
                pen: None,
                fill: Some(PAPER),
            },
        );
        sheet.push(Layer::Points, Shape::Text(letter));
    }
    Some(())
}

/// The leaders that lie on a sheet.
fn leaders(sheet: &Sheet) -> Vec<[DVec2; 2]> {
    let of = |item: &super::Item| match item.shape {
        Shape::Line { ends, pen } if pen == LEADER => Some(ends),
        _ => None,
    };
    sheet.items.iter().filter_map(of).collect()
}

/// The boxes about the lines of rooms: a letter there would hide where they end.
fn rooms(sheet: &Sheet) -> Vec<(DVec2, DVec2)> {
    let of = |item: &super::Item| match item.shape {
        Shape::Line { ends: [a, b], pen } if pen.colour == WARN => {
            Some((a.min(b) - ROOM, a.max(b) + ROOM))
        }
        _ => None,
    };
    sheet.items.iter().filter_map(of).collect()
}

/// Where no further letter may lie.
struct Taken {
    texts: Vec<(DVec2, DVec2)>,
    /// Where none should.
    rooms: Vec<(DVec2, DVec2)>,
    points: Vec<(DVec2, DVec2)>,
    leaders: Vec<[DVec2; 2]>,
    within: (DVec2, DVec2),
}

impl Taken {
    /// The middle of a free box beside a point, and a leader to it where it stands far off. Where
    /// there is a place not far off at which nobody takes it for another point's, it is that.
    fn beside(&self, at: DVec2, half: DVec2, clear: f64) -> Option<(DVec2, Option<[DVec2; 2]>)> {
        let own = |off: &&f64| **off <= FAR;
        let own = OFF.iter().filter(own);
        own.flat_map(|off| self.around(at, half, clear, *off))
            .find(|(middle, leader)| self.is_own(at, half, *middle, *leader))
            .or_else(|| {
                let all = OFF.iter();
                all.flat_map(|off| self.around(at, half, clear, *off))
                    .next()
            })
    }

    /// The free boxes so far off a point.
    fn around(
        &self,
        at: DVec2,
        half: DVec2,
        clear: f64,
        off: f64,
    ) -> impl Iterator<Item = (DVec2, Option<[DVec2; 2]>)> {
        WAYS.into_iter().filter_map(move |(x, y)| {
            let away = off + clear;
            let middle = at + DVec2::new(x * (half.x + away), y * (half.y + away));
            let (from, to) = (middle - half - PLATE, middle + half + PLATE);
            let inside = from.cmpge(self.within.0).all() && to.cmple(self.within.1).all();
            let mut boxes = self.texts.iter().chain(&self.points);
            if !inside
                || boxes.any(|other| overlap(*other, (from, to)))
                || self.leaders.iter().any(|ends| crosses(*ends, (from, to)))
            {
                return None;
            }
            if off <= NEAR {
                return Some((middle, None));
            }
            // To the box's edge: a leader must not run into its own letter.
            let ends = [at, at.clamp(from, to)];
            let runs = self.texts.iter().any(|other| crosses(ends, *other));
            (!runs).then_some((middle, Some(ends)))
        })
    }

    /// Whether a letter there hides no room, and is taken for its own point's: by a leader that runs
    /// over no other point, or by being much nearer to it.
    fn is_own(&self, at: DVec2, half: DVec2, middle: DVec2, leader: Option<[DVec2; 2]>) -> bool {
        let own = (middle - half - PLATE, middle + half + PLATE);
        if self.rooms.iter().any(|room| overlap(*room, own)) {
            return false;
        }
        let mut others = self.points.iter().filter(|(low, high)| {
            let point = (*low + *high) * 0.5;
            point.distance(at) > 1e-6
        });
        let off = |point: DVec2| point.clamp(own.0, own.1).distance(point);
        match leader {
            Some(ends) => !others.any(|point| crosses(ends, *point)),
            None => others.all(|(low, high)| off((*low + *high) * 0.5) > off(at) * NEARER),
        }
    }
}

const WAYS: [(f64, f64); 16] = [
    (1.0, 1.0),
    (-1.0, 1.0),
    (1.0, -1.0),
    (-1.0, -1.0),
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.0, 1.0),
    (0.0, -1.0),
    (1.0, 0.5),
    (-1.0, 0.5),
    (1.0, -0.5),
    (-1.0, -0.5),
    (0.5, 1.0),
    (-0.5, 1.0),
    (0.5, -1.0),
    (-0.5, -1.0),
];

fn overlap(a: (DVec2, DVec2), b: (DVec2, DVec2)) -> bool {
    a.0.cmplt(b.1).all() && b.0.cmplt(a.1).all()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lettered(points: &[(&str, [f64; 2])]) -> Vec<(DVec2, DVec2)> {
        let wanted = points
            .iter()
            .map(|(letter, at)| Mark {
                at_m: DVec2::from(*at),
                letter: (*letter).into(),
                clear_m: 0.0,
                may_be_left: false,
            })
            .collect();
        let view = View {
            marks: wanted,
            ..View::default()
        };
        let mut sheet = Sheet {
            name: String::new(),
            tag: "TEST",
            page_mm: DVec2::splat(100.0),
            scale: 1.0,
            origin_mm: DVec2::ZERO,
            items: Vec::new(),
        };
        marks(
            &mut sheet,
            &view,
            &|at| at,
            (DVec2::ZERO, DVec2::splat(100.0)),
        )
        .unwrap();
        sheet.texts().map(Text::bounds).collect()
    }

    #[test]
    fn a_letter_without_a_leader_is_nearest_to_its_own_point() {
        for apart in [2.0, 3.0, 4.0, 5.0, 6.0] {
            for way in [DVec2::X, DVec2::Y, DVec2::ONE] {
                let one = DVec2::splat(50.0);
                let other = one + way * apart;
                let boxes = lettered(&[("G", one.into()), ("F", other.into())]);
                for ((low, high), (own, not)) in boxes.into_iter().zip([(one, other), (other, one)])
                {
                    let off = |point: DVec2| point.clamp(low, high).distance(point);
                    assert!(
                        off(own) > NEAR * 1.5 || off(own) < off(not),
                        "{apart} {way}"
                    );
                }
            }
        }
    }
}

//! What is written about a view: running dimensions in rails, callouts in a column, letters beside
//! their points. No text lies on another.

use glam::DVec2;

use super::compose::{APART, CALLOUT, Label, TURN};
use super::crossing::crosses;
use super::font::width_em;
use super::lines::wrapped;
use super::{Layer, Mark, Pen, Shape, Sheet, Text, Tick, View, spread};
use crate::drawing::palette::paper::{FINE, INK, PAPER, SET_OUT};

const LETTER: f64 = 2.8;
/// White about a letter: what lies under it must not be read with it.
const PLATE: f64 = 0.35;
/// The dot of a point, its radius.
const DOT: f64 = 0.5;
/// How far from its point a letter may stand, from the nearest on.
const OFF: [f64; 12] = [
    1.1, 2.2, 3.5, 5.0, 7.0, 10.0, 14.0, 18.0, 23.0, 29.0, 36.0, 44.0,
];

/// How leaders are drawn.
pub(in crate::drawing) const LEADER: Pen = Pen::solid(0.12, FINE);

fn line(sheet: &mut Sheet, points: &[DVec2], pen: Pen) {
    for ends in points.windows(2) {
        if let &[a, b] = ends
            && a.distance(b) > 1e-6
        {
            sheet.push(Layer::Dimensions, Shape::Line { ends: [a, b], pen });
        }
    }
}

fn text(sheet: &mut Sheet, layer: Layer, at: DVec2, upward: bool, says: &str, size: f64) {
    sheet.push(
        layer,
        Shape::Text(Text {
            at,
            size,
            upward,
            colour: INK,
            says: says.into(),
        }),
    );
}

/// The places of a rail's labels along it, in the ticks' own order.
fn along(
    ticks: &[Tick],
    line: f64,
    place: impl Fn(&Tick) -> f64,
    low: f64,
    high: f64,
) -> Option<Vec<f64>> {
    let mut order: Vec<usize> = (0..ticks.len()).collect();
    order.sort_by(|&a, &b| ticks[a].at_m.total_cmp(&ticks[b].at_m));
    let wanted: Vec<(f64, f64)> = order
        .iter()
        .map(|&index| (place(&ticks[index]), 2.0 * line + APART))
        .collect();
    let spread = spread(&wanted, low, high)?;
    let mut found = vec![0.0; ticks.len()];
    for (&index, at) in order.iter().zip(spread) {
        found[index] = at;
    }
    Some(found)
}

pub(super) fn left_rail(
    sheet: &mut Sheet,
    view: &View,
    label: Label,
    place: &dyn Fn(DVec2) -> DVec2,
    inner: (DVec2, DVec2),
    (low, high): (f64, f64),
) -> Option<()> {
    let at = |tick: &Tick| place(DVec2::new(tick.across_m, tick.at_m));
    let places = along(&view.left, label.line, |tick| at(tick).y, low, high)?;
    for (tick, y) in view.left.iter().zip(places) {
        let from = at(tick);
        let end = inner.0.x - TURN + 1.0;
        line(
            sheet,
            &[
                from,
                DVec2::new(inner.0.x - 1.0, from.y),
                DVec2::new(end, y),
            ],
            LEADER,
        );
        let right = end - 1.0;
        for (says, up) in [(&tick.what, 0.25), (&tick.reads, -label.line + 0.25)] {
            let start = DVec2::new(right - width_em(says) * label.size, y + up + 0.4);
            text(sheet, Layer::Dimensions, start, false, says, label.size);
        }
    }
    Some(())
}

pub(super) fn bottom_rail(
    sheet: &mut Sheet,
    view: &View,
    label: Label,
    place: &dyn Fn(DVec2) -> DVec2,
    inner: (DVec2, DVec2),
    (low, high): (f64, f64),
) -> Option<()> {
    let at = |tick: &Tick| place(DVec2::new(tick.at_m, tick.across_m));
    // Nothing of it under the left rail or the callouts: they have their own height.
    let places = along(&view.bottom, label.line, |tick| at(tick).x, low, high)?;
    for (tick, x) in view.bottom.iter().zip(places) {
        let from = at(tick);
        let end = inner.0.y - TURN + 1.0;
        line(
            sheet,
            &[
                from,
                DVec2::new(from.x, inner.0.y - 1.0),
                DVec2::new(x, end),
            ],
            LEADER,
        );
        let top = end - 1.0;
        for (says, right) in [(&tick.what, -0.65), (&tick.reads, label.line - 0.65)] {
            let start = DVec2::new(x + right, top - width_em(says) * label.size);
            text(sheet, Layer::Dimensions, start, true, says, label.size);
        }
    }
    Some(())
}

/// A leader from a callout to its thing, which gets a dot.
fn lead(sheet: &mut Sheet, at: DVec2, end: DVec2, inner: (DVec2, DVec2)) {
    if end.y < inner.0.y - 1.0 {
        // Straight it would run through the dimensions below.
        let turn = DVec2::new(inner.1.x + 1.0, at.y);
        line(sheet, &[at, turn, end], LEADER);
    } else {
        line(sheet, &[at, end], LEADER);
    }
    sheet.push(
        Layer::Dimensions,
        Shape::Circle {
            middle: at,
            radius: 0.35,
            pen: None,
            fill: Some(FINE),
        },
    );
}

pub(super) fn callouts(
    sheet: &mut Sheet,
    view: &View,
    label: Label,
    place: &dyn Fn(DVec2) -> DVec2,
    inner: (DVec2, DVec2),
    right: f64,
    (low, high): (f64, f64),
) -> Option<()> {
    let left = inner.1.x + TURN;
    let width = (right - left).min(CALLOUT * 2.0);
    let mut all: Vec<(DVec2, Vec<String>, bool)> = view
        .callouts
        .iter()
        .map(|callout| {
            let lines = wrapped(&callout.text(), label.size, width);
            (place(callout.at_m), lines, callout.letter.is_none())
        })
        .collect();
    // Those without a leader stand in the order of their letters.
    let mut heights: Vec<f64> = all.iter().filter(|one| !one.2).map(|one| one.0.y).collect();
    heights.sort_by(|a, b| b.total_cmp(a));
    for (number, (one, y)) in all.iter_mut().filter(|one| !one.2).zip(heights).enumerate() {
        #[allow(clippy::cast_precision_loss)] // some letters
        let lower = number as f64 * 1e-6;
        one.0.y = y - lower;
    }
    all.sort_by(|a, b| a.0.y.total_cmp(&b.0.y).then(b.0.x.total_cmp(&a.0.x)));
    #[allow(clippy::cast_precision_loss)] // some lines
    let height = |lines: &[String]| lines.len() as f64 * label.line + APART;
    let wanted: Vec<(f64, f64)> = all
        .iter()
        .map(|(at, lines, _)| (at.y, height(lines)))
        .collect();
    let places = spread(&wanted, low, high)?;
    for ((at, lines, leads), middle) in all.iter().zip(places) {
        let mut y = middle + (height(lines) - APART) * 0.5;
        if *leads {
            lead(
                sheet,
                *at,
                DVec2::new(left - 1.2, y - label.line * 0.5),
                inner,
            );
        }
        for says in lines {
            y -= label.line;
            text(
                sheet,
                Layer::Labels,
                DVec2::new(left, y + 0.65),
                false,
                says,
                label.size,
            );
        }
    }
    Some(())
}

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

/// Where no further letter may lie.
struct Taken {
    texts: Vec<(DVec2, DVec2)>,
    points: Vec<(DVec2, DVec2)>,
    leaders: Vec<[DVec2; 2]>,
    within: (DVec2, DVec2),
}

impl Taken {
    /// The middle of a free box beside a point, and a leader to it where it stands far off.
    fn beside(&self, at: DVec2, half: DVec2, clear: f64) -> Option<(DVec2, Option<[DVec2; 2]>)> {
        for off in OFF.map(|off| off + clear) {
            for (x, y) in WAYS {
                let middle = at + DVec2::new(x * (half.x + off), y * (half.y + off));
                let (from, to) = (middle - half - PLATE, middle + half + PLATE);
                let inside = from.cmpge(self.within.0).all() && to.cmple(self.within.1).all();
                let mut boxes = self.texts.iter().chain(&self.points);
                if !inside
                    || boxes.any(|other| overlap(*other, (from, to)))
                    || self.leaders.iter().any(|ends| crosses(*ends, (from, to)))
                {
                    continue;
                }
                if off <= clear + 2.0 {
                    return Some((middle, None));
                }
                // To the box's edge: a leader must not run into its own letter.
                let ends = [at, at.clamp(from, to)];
                if !self.texts.iter().any(|other| crosses(ends, *other)) {
                    return Some((middle, Some(ends)));
                }
            }
        }
        None
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

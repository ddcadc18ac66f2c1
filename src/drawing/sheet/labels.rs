//! What is written about a view: running dimensions in rails, callouts in a column. No text lies on
//! another.

use glam::DVec2;

use super::compose::{APART, CALLOUT, Label, TURN};
use super::font::width_em;
use super::leads::Leads;
use super::lines::wrapped;
use super::{Layer, Pen, Shape, Sheet, Text, Tick, View, spread};
use crate::drawing::palette::paper::{FINE, INK};

/// How leaders are drawn.
pub(in crate::drawing) const LEADER: Pen = Pen::solid(0.12, FINE);

pub(super) fn line(sheet: &mut Sheet, points: &[DVec2], pen: Pen) {
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
    let mut leads = Leads::about(view, place, inner);
    for ((at, lines, has_lead), middle) in all.iter().zip(places) {
        let mut y = middle + (height(lines) - APART) * 0.5;
        if *has_lead {
            let end = DVec2::new(left - 1.2, y - label.line * 0.5);
            line(sheet, &leads.lead(*at, end), LEADER);
            sheet.push(
                Layer::Dimensions,
                Shape::Circle {
                    middle: *at,
                    radius: 0.35,
                    pen: None,
                    fill: Some(FINE),
                },
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

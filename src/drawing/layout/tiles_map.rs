//! The map of the pages in full size.

use glam::DVec2;

use super::draw::{clipped, line};
use super::tiles::{Grid, OVERLAP_MM, edges, pen_of};
use super::{LayoutError, Made};
use crate::drawing::palette::paper::{INK, SET_OUT};
use crate::drawing::sheet::{Item, Layer, Pen, Shape, Sheet, Text, View, compose};
use crate::setting_out::Reading;

/// The map: which page lies where.
pub(super) fn map(
    made: &Made<'_>,
    view: &View,
    grid: &Grid,
    used: &[[usize; 2]],
    of: usize,
) -> Result<Sheet, LayoutError> {
    let order = made.order;
    let mut shown = View::default();
    let overlap = OVERLAP_MM / 1000.0;
    let cell = |[column, row]: [usize; 2]| {
        let low = grid.window(column, row).0 + overlap * 0.5;
        (low, low + grid.step_m)
    };
    for &at in used {
        let (low, high) = cell(at);
        shown.items.push(Item {
            layer: Layer::Frame,
            shape: Shape::Polygon {
                points: vec![
                    low,
                    DVec2::new(high.x, low.y),
                    high,
                    DVec2::new(low.x, high.y),
                ],
                pen: Some(Pen::solid(0.2, SET_OUT)),
                fill: None,
            },
        });
    }
    let (low, high) = (
        cell([0, 0]).0,
        cell([grid.count[0] - 1, grid.count[1] - 1]).1,
    );
    for item in &view.items {
        let Some(pen) = pen_of(&item.shape) else {
            continue;
        };
        for ends in edges(&item.shape) {
            if let Some(ends) = clipped(ends, low, high) {
                line(&mut shown.items, item.layer, ends, pen);
            }
        }
    }
    // Numbers of rows and columns at the sides; where they would run into each other, every second or
    // third one, of each its own count: a map of three rows names all three.
    const MOST: usize = 36;
    let most = grid.count[0].max(grid.count[1]);
    #[allow(clippy::cast_precision_loss)]
    let size = grid.step_m.min_element() * 0.5 * most.div_ceil(MOST) as f64;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some at most
    let [every_column, every_row] = [size * 2.0 / grid.step_m.x, size * 1.3 / grid.step_m.y]
        .map(|steps| (steps - 1e-9).ceil().max(1.0) as usize);
    let mut number = |at: DVec2, index: usize, every: usize| {
        if index.is_multiple_of(every) {
            shown.items.push(Item {
                layer: Layer::Labels,
                shape: Shape::Text(Text {
                    at,
                    size,
                    upward: false,
                    colour: INK,
                    says: (index + 1).to_string(),
                }),
            });
        }
    };
    for column in 0..grid.count[0] {
        let (from, to) = cell([column, 0]);
        let at = DVec2::new((from.x + to.x) * 0.5 - size * 0.5, low.y - size * 1.3);
        number(at, column, every_column);
    }
    for row in 0..grid.count[1] {
        let (from, to) = cell([0, row]);
        let at = DVec2::new(low.x - size * 1.8, (from.y + to.y) * 0.5 - size * 0.4);
        number(at, row, every_row);
    }
    let across = Reading {
        expected_m: high.x - low.x,
        tolerance_m: 0.0,
    };
    let up = Reading {
        expected_m: high.y - low.y,
        tolerance_m: 0.0,
    };
    let diagonal = Reading {
        expected_m: high.distance(low),
        tolerance_m: 0.0,
    };
    let units = order.bay.units;
    let mut frame = made.frame(
        "Full size, map of the pages",
        "TILE",
        vec![
            format!(
                "{} pages; each names its row, counted from the door, and its column, counted from \
                 the left. Pages on which nothing would be drawn are left out. Print at 100 % and \
                 check the bar on each page.",
                used.len()
            ),
            format!(
                "Laid together, from outermost cross to outermost cross: {} across, {} up, {} corner \
                 to corner where those pages are there. Paper stretches: set out by the pulls of the \
                 tape, and lay these pages to check holes and plates.",
                across.both(units),
                up.both(units),
                diagonal.both(units)
            ),
        ],
    );
    frame.page = [1, of];
    compose(&shown, &frame, order.paper, units, None).ok_or(LayoutError::TooSmall(frame.name))
}

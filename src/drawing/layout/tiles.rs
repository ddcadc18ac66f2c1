//! The floor in full size, over as many pages as it takes: a map first, then each page.
//!
//! Pages overlap; crosses in the overlap lie on the crosses of the neighbours. Pages on which
//! nothing is drawn are left out, and the map shows which. Paper stretches with the weather: the
//! pulls of the tape govern, and the pages say so.

use glam::DVec2;

use super::draw::{clipped, line};
use super::parking::cg;
use super::tiles_map::map;
use super::{LayoutError, Made, Order, plan, plates};
use crate::drawing::palette::paper::{FINE, INK};
use crate::drawing::sheet::{
    Dash, Frame, Item, Layer, Mark, Pen, Shape, Sheet, View, marks, put_frame,
};
use crate::ground::slab::{SlabMap, plate_rect};
use crate::setting_out::PointKind;

/// How far neighbouring pages lie over each other, millimetres.
pub const OVERLAP_MM: f64 = 10.0;
/// How far around the plates the floor is drawn, metres.
const AROUND_M: f64 = 0.06;
/// Corners that stand for a circle: nowhere off by more than a thousandth of a millimetre for any
/// hole.
const CORNERS: u32 = 360;

/// How much of the floor is drawn in full size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// Both base plates and what lies between them.
    Lift,
    /// The whole floor plan.
    Plan,
}

/// Rows and columns of pages over a part of the floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Lower left corner of the first page's window, metres of the bay.
    pub low_m: DVec2,
    /// What a page shows, metres.
    pub window_m: DVec2,
    /// From page to page, metres: less than a window by the overlap.
    pub step_m: DVec2,
    /// How many pages side by side, and how many one above the other.
    pub count: [usize; 2],
}

impl Grid {
    /// The fewest windows of this size that cover an area, about its middle.
    pub(super) fn over((low, high): (DVec2, DVec2), window_m: DVec2) -> Self {
        let overlap = OVERLAP_MM / 1000.0;
        let step_m = window_m - overlap;
        let size = high - low;
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some hundred at most
        let count =
            [0, 1].map(|axis| (((size[axis] - overlap) / step_m[axis]).ceil().max(1.0)) as usize);
        #[allow(clippy::cast_precision_loss)]
        let covered = DVec2::new(count[0] as f64, count[1] as f64) * step_m + overlap;
        Self {
            low_m: low - (covered - size) * 0.5,
            window_m,
            step_m,
            count,
        }
    }

    /// Lower left and upper right corner of a page's window, metres.
    #[must_use]
    #[allow(clippy::cast_precision_loss)] // some hundred at most
    pub fn window(&self, column: usize, row: usize) -> (DVec2, DVec2) {
        let low = self.low_m + DVec2::new(column as f64, row as f64) * self.step_m;
        (low, low + self.window_m)
    }
}

/// The floor in full size.
///
/// # Errors
/// See [`LayoutError`].
pub fn full_size(order: &Order<'_>, part: Part) -> Result<Vec<Sheet>, LayoutError> {
    let made = Made::new(order);
    let view = floor(&made)?;
    let area = match part {
        Part::Plan => view.bounds_m(),
        Part::Lift => {
            let plates = [crate::bay::Side::Left, crate::bay::Side::Right]
                .map(|side| plate_rect(order.bay, side));
            let low = plates[0].low.min(plates[1].low) - AROUND_M;
            let high = plates[0].high.max(plates[1].high) + AROUND_M;
            (low, high)
        }
    };
    let mut blank = page(order, "");
    // As large as the page with the longest name leaves it.
    let (low, high) = put_frame(&mut blank, &tile_frame(&made, [99, 99], [999, 999]), SCALE);
    let grid = Grid::over(area, (high - low) / 1000.0);
    let used = used(&view, &grid, area);
    let of = used.len() + 1;
    let mut pages = vec![map(&made, &view, &grid, &used, of)?];
    for (index, &at) in used.iter().enumerate() {
        pages.push(tile(&made, &view, &grid, at, [index + 2, of])?);
    }
    Ok(pages)
}

const SCALE: &str = "Full size (1:1)";

/// What is set out on the floor, without the vehicle and what hangs overhead.
fn floor(made: &Made<'_>) -> Result<View, LayoutError> {
    let mut view = plan::view(made, plan::Telling::InWords)?;
    view.items.retain(|item| {
        matches!(
            item.layer,
            Layer::Walls
                | Layer::Posts
                | Layer::Plates
                | Layer::SlabLines
                | Layer::Readings
                | Layer::Holes
                | Layer::Points
                | Layer::Parking
        )
    });
    // Where a tape is pulled is no line on the floor.
    view.items.retain(|item| {
        let dashed = pen_of(&item.shape).is_some_and(|pen| pen.dash == Dash::Dashed);
        item.layer != Layer::Points || !dashed
    });
    let hole = made.order.bay.lift.base_plate.anchor_diameter;
    let radius = hole.map_or(plan::HOLE_M, |d| d.m()) * 0.5;
    for point in &made.out.points {
        if matches!(point.kind, PointKind::Hole(_)) {
            plates::middle(&mut view.items, point.at_m, radius);
        }
    }
    view.marks = made
        .out
        .points
        .iter()
        .map(|point| Mark {
            at_m: point.at_m,
            letter: point.letter.clone(),
            may_be_left: false,
            clear_m: match point.kind {
                PointKind::Hole(_) => radius * plates::BEYOND,
                _ => 0.0,
            },
        })
        .collect();
    // No hole to be drilled: it is told apart beside those that are.
    let readings = SlabMap::of(made.order.bay).readings;
    view.marks.extend(readings.iter().map(|reading| Mark {
        at_m: reading.at_m,
        letter: "slab read here".into(),
        may_be_left: true,
        clear_m: plates::READ_M,
    }));
    view.marks.extend(cg(made).map(|at_m| Mark {
        at_m,
        letter: "centre of gravity".into(),
        may_be_left: true,
        clear_m: plates::READ_M,
    }));
    Ok(view)
}

/// The edges of a shape, as lines.
pub(super) fn edges(shape: &Shape) -> Vec<[DVec2; 2]> {
    let closed = |points: &[DVec2]| {
        let next = points.iter().cycle().skip(1);
        points.iter().zip(next).map(|(&a, &b)| [a, b]).collect()
    };
    match shape {
        Shape::Line { ends, .. } => vec![*ends],
        Shape::Polygon { points, .. } => closed(points),
        Shape::Circle { middle, radius, .. } => {
            let corner = |step: u32| {
                let angle = std::f64::consts::TAU * f64::from(step) / f64::from(CORNERS);
                *middle + DVec2::from_angle(angle) * *radius
            };
            closed(&(0..CORNERS).map(corner).collect::<Vec<_>>())
        }
        Shape::Text(_) => Vec::new(),
    }
}

pub(super) const fn pen_of(shape: &Shape) -> Option<Pen> {
    match shape {
        Shape::Line { pen, .. } => Some(*pen),
        Shape::Polygon { pen, .. } | Shape::Circle { pen, .. } => *pen,
        Shape::Text(_) => None,
    }
}

/// The pages on which something of the part is drawn, row by row from the door: column and row.
fn used(view: &View, grid: &Grid, (low, high): (DVec2, DVec2)) -> Vec<[usize; 2]> {
    let mut used = Vec::new();
    for row in 0..grid.count[1] {
        for column in 0..grid.count[0] {
            let window = grid.window(column, row);
            let (from, to) = (window.0.max(low), window.1.min(high));
            let shows = |item: &Item| {
                edges(&item.shape)
                    .into_iter()
                    .any(|ends| clipped(ends, from, to).is_some())
            };
            if view.items.iter().any(shows) {
                used.push([column, row]);
            }
        }
    }
    used
}

fn page(order: &Order<'_>, name: &str) -> Sheet {
    Sheet {
        name: name.into(),
        tag: "TILE",
        page_mm: order.paper.page_mm(false),
        scale: 1.0,
        origin_mm: DVec2::ZERO,
        items: Vec::new(),
    }
}

fn name([column, row]: [usize; 2]) -> String {
    format!("row {}, column {}", row + 1, column + 1)
}

fn tile_frame(made: &Made<'_>, at: [usize; 2], page: [usize; 2]) -> Frame {
    let mut frame = made.frame(
        &format!("Full size, {}", name(at)),
        "TILE",
        vec![
            "Trim to the dashed lines, lay crosses on crosses. Paper stretches: check with the tape, \
             whose pulls govern."
                .into(),
        ],
    );
    frame.page = page;
    frame
}

/// One page in full size.
fn tile(
    made: &Made<'_>,
    view: &View,
    grid: &Grid,
    at: [usize; 2],
    number: [usize; 2],
) -> Result<Sheet, LayoutError> {
    let frame = tile_frame(made, at, number);
    let mut sheet = page(made.order, &frame.name);
    let (corner, _) = put_frame(&mut sheet, &frame, SCALE);
    let (low, high) = grid.window(at[0], at[1]);
    sheet.origin_mm = corner - low * 1000.0;
    let origin = sheet.origin_mm;
    let place = move |point: DVec2| origin + point * 1000.0;
    for item in &view.items {
        let Some(pen) = pen_of(&item.shape) else {
            continue;
        };
        for ends in edges(&item.shape) {
            if let Some(ends) = clipped(ends, low, high) {
                line(&mut sheet.items, item.layer, ends.map(place), pen);
            }
        }
    }
    crosses(&mut sheet, corner, grid);
    let size = grid.window_m * 1000.0;
    let mut lettered = View::default();
    let inset = 0.001;
    lettered.marks = view
        .marks
        .iter()
        .filter(|mark| mark.at_m.cmpge(low + inset).all() && mark.at_m.cmple(high - inset).all())
        .cloned()
        .collect();
    marks(&mut sheet, &lettered, &place, (corner, corner + size))
        .ok_or(LayoutError::TooSmall(frame.name))?;
    Ok(sheet)
}

/// Crosses on the corners that neighbours share, and the line to trim to.
fn crosses(sheet: &mut Sheet, corner: DVec2, grid: &Grid) {
    const ARM: f64 = 4.0;
    let low = corner + OVERLAP_MM * 0.5;
    let high = low + grid.step_m * 1000.0;
    let corners = [
        low,
        DVec2::new(high.x, low.y),
        high,
        DVec2::new(low.x, high.y),
    ];
    for (index, &at) in corners.iter().enumerate() {
        for way in [DVec2::X, DVec2::Y] {
            let ends = [at - way * ARM, at + way * ARM];
            line(&mut sheet.items, Layer::Frame, ends, Pen::solid(0.15, INK));
        }
        sheet.items.push(Item {
            layer: Layer::Frame,
            shape: Shape::Circle {
                middle: at,
                radius: 1.5,
                pen: Some(Pen::solid(0.15, INK)),
                fill: None,
            },
        });
        let ends = [at, corners[(index + 1) % 4]];
        line(
            &mut sheet.items,
            Layer::Frame,
            ends,
            Pen::broken(0.1, FINE, Dash::Dashed),
        );
    }
}

//! How do paragraphs, fields and tables flow down pages?
//!
//! Each piece becomes strips that are never broken; a page is filled with them from the top down.
//! What is to be read at arm's length comes in as large a type as fits on one page.

use glam::DVec2;

use super::palette::Colour;
use super::palette::paper::{FINE, INK, PAPER, WARN};
use super::sheet::font::width_em;
use super::sheet::lines::wrapped;
use super::sheet::{Frame, LEADING, Layer, Paper, Pen, Shape, Sheet, Text, put_frame};

/// Something that stands on a page below what comes before it. Sizes are of the type, in
/// millimetres, before the whole is fitted to its page.
#[derive(Debug, Clone)]
pub(super) enum Piece {
    /// A paragraph.
    Says(String, f64, Colour),
    /// A heading; not last on a page.
    Heading(String),
    /// A band of a colour with light letters on it: what must not be overlooked.
    Band(String, f64, Colour),
    /// A label, and what is said beside it.
    Labelled(String, String, Colour),
    /// An item of a list.
    Item(String, Colour),
    /// A row of a table: its cells with their shares of the width, and how high it is at least;
    /// an empty cell is written into.
    Row {
        cells: Vec<(String, f64)>,
        least_mm: f64,
        size: f64,
        colour: Colour,
        /// Whether it is the head of its table, to stand again over what goes on overleaf.
        is_head: bool,
    },
    /// Fields to write into, side by side, with their shares of the width.
    Fields(Vec<(String, f64)>),
    /// Nothing.
    Gap(f64),
    /// What follows stands on a page of its own.
    NextPage,
}

impl Piece {
    pub(super) fn says(text: impl Into<String>) -> Self {
        Self::Says(text.into(), BODY, INK)
    }

    pub(super) fn warns(text: impl Into<String>) -> Self {
        Self::Says(text.into(), BODY, WARN)
    }

    pub(super) fn item(text: impl Into<String>) -> Self {
        Self::Item(text.into(), INK)
    }

    pub(super) fn labelled(label: &str, text: impl Into<String>) -> Self {
        Self::Labelled(label.into(), text.into(), INK)
    }

    pub(super) fn fields(fields: &[(&str, f64)]) -> Self {
        let fields = fields
            .iter()
            .map(|(label, share)| ((*label).into(), *share));
        Self::Fields(fields.collect())
    }
}

/// The usual type.
pub(super) const BODY: f64 = 3.3;
const HEADING: f64 = 3.9;
/// Type that is filled in or looked up, not read at a distance.
pub(super) const TABLE: f64 = 2.6;
/// The width of the labels' column.
const LABELS: f64 = 33.0;
/// The least type that is set.
const LEAST: f64 = 2.1;
/// Height of capitals, in ems.
const CAPITALS: f64 = 0.69;
/// What a band keeps above and below its letters, in ems.
const BAND_PAD: f64 = 0.38;
/// A line to write on.
const FIELD: f64 = 9.0;
const LINE: Pen = Pen::solid(0.2, FINE);

/// A strip over the whole width: shapes from its upper left corner, `y` up.
struct Strip {
    height: f64,
    /// How much of what follows is to stand on the same page.
    with_next: f64,
    shapes: Vec<Shape>,
    next_page: bool,
    of_table: OfTable,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum OfTable {
    No,
    Head,
    Row,
}

impl Strip {
    const fn new(height: f64, shapes: Vec<Shape>) -> Self {
        Self {
            height,
            with_next: 0.0,
            shapes,
            next_page: false,
            of_table: OfTable::No,
        }
    }
}

fn text(x: f64, baseline: f64, says: String, size: f64, colour: Colour) -> Shape {
    Shape::Text(Text {
        at: DVec2::new(x, baseline),
        size,
        upward: false,
        colour,
        says,
    })
}

/// Where the baseline of a line lies below the line's top, in ems.
const BASELINE: f64 = LEADING - 0.3;

fn strips(piece: &Piece, width: f64, times: f64) -> Vec<Strip> {
    let sized = |size: f64| (size * times).max(LEAST);
    match piece {
        Piece::Says(says, size, colour) => lines(0.0, says, width, sized(*size), *colour),
        Piece::Heading(says) => {
            let size = sized(HEADING);
            let mut strips = vec![Strip::new(size * 0.5, Vec::new())];
            strips.extend(lines(0.0, says, width, size, INK));
            strips.iter_mut().for_each(|one| one.with_next = size * 4.0);
            strips
        }
        Piece::Item(says, colour) => {
            let size = sized(BODY);
            let mut strips = lines(size * 1.1, says, width, size, *colour);
            if let Some(first) = strips.first_mut() {
                let dash = text(0.0, -size * BASELINE, "\u{2013}".into(), size, *colour);
                first.shapes.insert(0, dash);
            }
            strips
        }
        Piece::Labelled(label, says, colour) => {
            let (size, column) = (sized(BODY), LABELS * times.max(0.8));
            let left = wrapped(label, size, column - 2.0);
            let mut strips = lines(column, says, width, size, *colour);
            for (index, label) in left.into_iter().enumerate() {
                if strips.len() <= index {
                    strips.push(Strip::new(size * LEADING, Vec::new()));
                }
                let colour = if *colour == WARN { WARN } else { FINE };
                let label = text(0.0, -size * BASELINE, label, size, colour);
                strips[index].shapes.insert(0, label);
            }
            strips.push(Strip::new(size * 0.25, Vec::new()));
            strips
        }
        Piece::Band(says, size, fill) => vec![band(says, width, sized(*size), *fill)],
        Piece::Row {
            cells,
            least_mm,
            size,
            colour,
            is_head,
        } => {
            let mut strip = row(cells, width, sized(*size), *least_mm, *colour);
            strip.of_table = if *is_head {
                OfTable::Head
            } else {
                OfTable::Row
            };
            if *is_head {
                strip.with_next = strip.height;
                return vec![Strip::new(1.0, Vec::new()), strip];
            }
            vec![strip]
        }
        Piece::Fields(fields) => vec![line_of_fields(fields, width, sized(TABLE))],
        Piece::Gap(height) => vec![Strip::new(height * times, Vec::new())],
        Piece::NextPage => vec![Strip {
            next_page: true,
            ..Strip::new(0.0, Vec::new())
        }],
    }
}

fn lines(left: f64, says: &str, width: f64, size: f64, colour: Colour) -> Vec<Strip> {
    wrapped(says, size, width - left)
        .into_iter()
        .map(|line| {
            let shape = text(left, -size * BASELINE, line, size, colour);
            Strip::new(size * LEADING, vec![shape])
        })
        .collect()
}

fn rectangle(left: f64, right: f64, top: f64, bottom: f64) -> Vec<DVec2> {
    vec![
        DVec2::new(left, bottom),
        DVec2::new(right, bottom),
        DVec2::new(right, top),
        DVec2::new(left, top),
    ]
}

#[allow(clippy::cast_precision_loss)] // some lines
fn band(says: &str, width: f64, size: f64, fill: Colour) -> Strip {
    let inner = size * 0.45;
    let lines = wrapped(says, size, width - 2.0 * inner);
    // As much above the capitals of the first line as below the last line's feet.
    let more = lines.len().saturating_sub(1) as f64 * size * LEADING;
    let height = size * (2.0 * BAND_PAD + CAPITALS) + more;
    let mut shapes = vec![Shape::Polygon {
        points: rectangle(0.0, width, -0.4, -height - 0.4),
        pen: None,
        fill: Some(fill),
    }];
    for (index, line) in lines.into_iter().enumerate() {
        let down = 0.4 + size * (BAND_PAD + CAPITALS + index as f64 * LEADING);
        shapes.push(text(inner, -down, line, size, PAPER));
    }
    Strip::new(height + 1.6, shapes)
}

#[allow(clippy::cast_precision_loss)] // some lines
fn row(cells: &[(String, f64)], width: f64, size: f64, least: f64, colour: Colour) -> Strip {
    let whole: f64 = cells.iter().map(|(_, share)| share).sum();
    let inner = 0.9;
    let mut left = 0.0;
    let mut placed = Vec::with_capacity(cells.len());
    for (says, share) in cells {
        let right = left + width * share / whole;
        placed.push((left, right, wrapped(says, size, right - left - 2.0 * inner)));
        left = right;
    }
    let most = placed.iter().map(|(_, _, lines)| lines.len()).max();
    let height = (most.unwrap_or(1) as f64 * size * LEADING + 0.6).max(least);
    let mut shapes = Vec::new();
    for (left, right, lines) in placed {
        shapes.push(Shape::Polygon {
            points: rectangle(left, right, 0.0, -height),
            pen: Some(LINE),
            fill: None,
        });
        let above = (height - lines.len() as f64 * size * LEADING) * 0.5;
        for (index, line) in lines.into_iter().enumerate() {
            let down = size * (index as f64 * LEADING + BASELINE) + above;
            shapes.push(text(left + inner, -down, line, size, colour));
        }
    }
    Strip::new(height, shapes)
}

fn line_of_fields(fields: &[(String, f64)], width: f64, size: f64) -> Strip {
    let whole: f64 = fields.iter().map(|(_, share)| share).sum();
    let mut left = 0.0;
    let mut shapes = Vec::new();
    for (label, share) in fields {
        let right = left + width * share / whole;
        let from = (left + width_em(label) * size + 1.5).min(right);
        shapes.push(text(left, -FIELD + 2.2, label.clone(), size, INK));
        shapes.push(Shape::Line {
            ends: [
                DVec2::new(from, -FIELD + 1.6),
                DVec2::new((right - 3.0).max(from), -FIELD + 1.6),
            ],
            pen: LINE,
        });
        left = right;
    }
    Strip::new(FIELD, shapes)
}

/// Pages of these pieces, numbered on from the frame's page; in the largest type with which they
/// fit on one page, and on several where they must. None where the frame leaves too
/// little room.
pub(super) fn pages(frame: &Frame, paper: Paper, pieces: &[Piece]) -> Option<Vec<Sheet>> {
    const SIZES: [f64; 11] = [1.5, 1.4, 1.3, 1.2, 1.1, 1.0, 0.93, 0.87, 0.82, 0.77, 0.72];
    let one = SIZES.iter().find_map(|times| {
        let pages = at(frame, paper, pieces, *times)?;
        (pages.len() == 1).then_some(pages)
    });
    one.or_else(|| at(frame, paper, pieces, 0.8))
}

/// The same in one size of type.
pub(super) fn at(frame: &Frame, paper: Paper, pieces: &[Piece], times: f64) -> Option<Vec<Sheet>> {
    let mut pages: Vec<Sheet> = Vec::new();
    let open = |number: usize| {
        let mut sheet = Sheet {
            name: frame.name.clone(),
            tag: frame.tag,
            page_mm: paper.page_mm(false),
            scale: 1.0,
            origin_mm: DVec2::ZERO,
            items: Vec::new(),
        };
        let mut frame = frame.clone();
        frame.page[0] += number;
        let area = put_frame(&mut sheet, &frame, "Not to scale");
        (sheet, area)
    };
    let (mut sheet, mut area) = open(0);
    let mut at = area.1.y;
    let mut is_fresh = true;
    let mut head: Option<Strip> = None;
    // Every page of a frame leaves the same width.
    let width = area.1.x - area.0.x;
    for strip in pieces.iter().flat_map(|piece| strips(piece, width, times)) {
        let fits = at - strip.height - strip.with_next >= area.0.y;
        if !is_fresh && (strip.next_page || !fits) {
            pages.push(sheet);
            (sheet, area) = open(pages.len());
            at = area.1.y;
            is_fresh = true;
            if let (OfTable::Row, Some(head)) = (strip.of_table, &head) {
                lay(&mut sheet, head, DVec2::new(area.0.x, at));
                at -= head.height;
            }
        }
        if strip.next_page {
            continue;
        }
        if at - strip.height < area.0.y {
            return None;
        }
        lay(&mut sheet, &strip, DVec2::new(area.0.x, at));
        at -= strip.height;
        is_fresh = false;
        match strip.of_table {
            OfTable::No => head = None,
            OfTable::Head => head = Some(strip),
            OfTable::Row => {}
        }
    }
    pages.push(sheet);
    Some(pages)
}

fn lay(sheet: &mut Sheet, strip: &Strip, corner: DVec2) {
    for shape in &strip.shapes {
        let layer = match shape {
            Shape::Polygon { fill: Some(_), .. } => Layer::Shade,
            _ => Layer::Labels,
        };
        sheet.push(layer, shape.mapped(&|point| corner + point, 1.0));
    }
}

//! A list in columns, over as many pages as it takes.

use glam::DVec2;

use super::font::width_em;
use super::frame::{Frame, LEADING, Writer, put};
use super::lines::wrapped;
use super::{Paper, Sheet};
use crate::drawing::palette::paper::{FINE, INK};

/// A line of a listing.
#[derive(Debug, Clone)]
pub enum Row {
    /// A heading.
    Heading(String),
    /// A paragraph.
    Says(String),
    /// One cell a column; the second is as wide as the page lets it be, and wraps.
    Cells([String; 5]),
}

/// Type that is tried, millimetres: the largest that takes no page more than the least. Eight points
/// are 2.82 mm.
const CELLS: [f64; 5] = [2.83, 2.95, 3.1, 3.3, 3.6];

/// Pages of a listing, as many as it takes, numbered on from the frame's page.
#[must_use]
pub fn listing(frame: &Frame, paper: Paper, titles: [&str; 5], rows: &[Row]) -> Vec<Sheet> {
    let mut pages = set(frame, paper, titles, rows, CELLS[0]);
    for cell in &CELLS[1..] {
        let larger = set(frame, paper, titles, rows, *cell);
        if larger.len() > pages.len() {
            break;
        }
        pages = larger;
    }
    pages
}

fn set(frame: &Frame, paper: Paper, titles: [&str; 5], rows: &[Row], cell: f64) -> Vec<Sheet> {
    let blank = |name: &str| Sheet {
        name: name.into(),
        tag: frame.tag,
        page_mm: paper.page_mm(false),
        scale: 1.0,
        origin_mm: DVec2::ZERO,
        items: Vec::new(),
    };
    let gap = 3.0;
    let mut widths = titles.map(|title| width_em(title) * cell);
    for row in rows {
        if let Row::Cells(cells) = row {
            for (width, says) in widths.iter_mut().zip(cells) {
                *width = width.max(width_em(says) * cell);
            }
        }
    }
    let mut pages = Vec::new();
    let mut rest = rows;
    loop {
        let mut sheet = blank(&frame.name);
        let mut frame = frame.clone();
        frame.page[0] += pages.len();
        let (low, high) = put(&mut sheet, &frame, "Not to scale");
        let fixed: f64 = widths.iter().sum::<f64>() - widths[1] + 4.0 * gap;
        let flexible = (high.x - low.x - fixed).max(20.0);
        let mut lefts = [low.x; 5];
        for column in 1..5 {
            let width = if column == 2 {
                flexible
            } else {
                widths[column - 1]
            };
            lefts[column] = lefts[column - 1] + width + gap;
        }
        let mut pen = Writer {
            sheet: &mut sheet,
            left: low.x,
            width: high.x - low.x,
            at: high.y,
        };
        // Without any row in columns there is nothing to head.
        if rows.iter().any(|row| matches!(row, Row::Cells(_))) {
            pen.at -= cell * LEADING;
            for (left, title) in lefts.iter().zip(titles) {
                pen.put(*left, title, cell, FINE);
            }
        }
        let mut taken = 0;
        for (index, row) in rest.iter().enumerate() {
            let lines = match row {
                Row::Heading(says) => wrapped(says, cell * 1.2, pen.width),
                Row::Says(says) => wrapped(says, cell, pen.width),
                Row::Cells(cells) => wrapped(&cells[1], cell, flexible),
            };
            #[allow(clippy::cast_precision_loss)] // some lines
            let mut height = lines.len().max(1) as f64 * cell * LEADING;
            if matches!(row, Row::Heading(_)) {
                // Not alone at the foot of a page.
                height += cell * 8.0;
            }
            if pen.at - height < low.y && index > 0 {
                break;
            }
            match row {
                Row::Heading(_) => {
                    pen.at -= cell * 0.7;
                    for line in &lines {
                        pen.line(line, cell * 1.2, INK);
                    }
                }
                Row::Says(_) => {
                    for line in &lines {
                        pen.line(line, cell, INK);
                    }
                }
                Row::Cells(cells) => {
                    pen.at -= cell * LEADING;
                    for column in [0, 2, 3, 4] {
                        pen.put(lefts[column], &cells[column], cell, INK);
                    }
                    for (number, line) in lines.iter().enumerate() {
                        if number > 0 {
                            pen.at -= cell * LEADING;
                        }
                        pen.put(lefts[1], line, cell, INK);
                    }
                }
            }
            taken = index + 1;
        }
        pages.push(sheet);
        rest = rest.get(taken..).unwrap_or_default();
        if rest.is_empty() || taken == 0 {
            return pages;
        }
    }
}

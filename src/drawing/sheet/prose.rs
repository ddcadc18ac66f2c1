//! How are marked paragraphs set on one page, as large as fits?

use glam::DVec2;

use super::font::width_em;
use super::frame::{LEADING, Writer, put};
use super::lines::wrapped;
use super::{Frame, Paper, Sheet};
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::INK;

/// A line of a page of prose.
#[derive(Debug, Clone, PartialEq)]
pub enum Line {
    /// A heading.
    Heading(String),
    /// A paragraph with a word before it.
    Marked {
        /// The word, and its colour.
        mark: (String, Colour),
        /// What it says.
        says: String,
    },
}

/// Type is tried from the larger of these down to the smaller, millimetres.
const TYPE_MM: [f64; 2] = [3.0, 2.0];
const STEP_MM: f64 = 0.05;
/// A heading over its paragraphs.
const HEADING: f64 = 1.15;
/// Room above a heading, and below a paragraph, in ems.
const ABOVE: f64 = 0.55;
const BELOW: f64 = 0.16;
/// Room after the words before the paragraphs, in ems.
const GAP: f64 = 0.9;

/// One upright page of these lines; none where they don't fit in a type that can be read.
#[must_use]
pub fn prose(frame: &Frame, paper: Paper, lines: &[Line]) -> Option<Sheet> {
    let steps = ((TYPE_MM[0] - TYPE_MM[1]) / STEP_MM).round();
    #[allow(clippy::cast_possible_truncation)] // some steps
    let sizes = (0..=steps as i32).map(|step| TYPE_MM[0] - f64::from(step) * STEP_MM);
    sizes
        .into_iter()
        .find_map(|size| set(frame, paper, lines, size))
}

fn set(frame: &Frame, paper: Paper, lines: &[Line], size: f64) -> Option<Sheet> {
    let mut sheet = Sheet {
        name: frame.name.clone(),
        tag: frame.tag,
        page_mm: paper.page_mm(false),
        scale: 1.0,
        origin_mm: DVec2::ZERO,
        items: Vec::new(),
    };
    let (low, high) = put(&mut sheet, frame, "Not to scale");
    let marks = lines.iter().map(|line| match line {
        Line::Heading(_) => 0.0,
        Line::Marked { mark, .. } => width_em(&mark.0),
    });
    let indent = (marks.fold(0.0, f64::max) + GAP) * size;
    let mut pen = Writer {
        sheet: &mut sheet,
        left: low.x,
        width: high.x - low.x,
        at: high.y,
    };
    for line in lines {
        match line {
            Line::Heading(says) => {
                pen.at -= ABOVE * size;
                for line in wrapped(says, size * HEADING, pen.width) {
                    pen.line(&line, size * HEADING, INK);
                }
            }
            Line::Marked { mark, says } => {
                for (number, line) in wrapped(says, size, pen.width - indent).iter().enumerate() {
                    pen.at -= size * LEADING;
                    if number == 0 {
                        pen.put(low.x, &mark.0, size, mark.1);
                    }
                    pen.put(low.x + indent, line, size, INK);
                }
                pen.at -= BELOW * size;
            }
        }
    }
    (pen.at >= low.y).then_some(sheet)
}

//! What stands around every page: title, warnings, scale, cautions, version and fingerprint?

use glam::DVec2;

use super::font::width_em;
use super::lines::wrapped;
use super::{Layer, Pen, Shape, Sheet, Text};
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{FINE, INK, WARN};

/// What stands around a page.
#[derive(Debug, Clone, Default)]
pub struct Frame {
    /// Whose bay it is.
    pub title: String,
    /// What the page shows.
    pub name: String,
    /// A short word for its layers.
    pub tag: &'static str,
    /// Which page of how many.
    pub page: [usize; 2],
    /// What must not be overlooked, in red at the top.
    pub warnings: Vec<String>,
    /// What else is to be known, at the top.
    pub notes: Vec<String>,
    /// Version and fingerprint, and what was drawn.
    pub made_by: String,
    /// The cautions, as one paragraph.
    pub cautions: String,
}

/// Between the paper's edge and the frame: what a printer can't reach.
const MARGIN: f64 = 8.0;
const PAD: f64 = 2.5;
const TITLE: f64 = 4.2;
pub(super) const NOTE: f64 = 2.5;
const SMALL: f64 = 2.3;
/// From line to line, in ems.
pub(in crate::drawing) const LEADING: f64 = 1.28;
/// The bar that shows whether a page was printed in its size, millimetres.
const BAR: f64 = 100.0;

/// Where the drawing may lie: lower left and upper right corner.
pub(in crate::drawing) type Area = (DVec2, DVec2);

/// Puts frame and texts onto a page; where it leaves room comes back.
pub(in crate::drawing) fn put(sheet: &mut Sheet, frame: &Frame, scale: &str) -> Area {
    let page = sheet.page_mm;
    let (low, high) = (DVec2::splat(MARGIN), page - MARGIN);
    outline(sheet, low, high);
    let width = high.x - low.x - 2.0 * PAD;
    let mut pen = Writer {
        sheet,
        left: low.x + PAD,
        width,
        at: high.y - PAD,
    };
    let number = format!("page {} of {}", frame.page[0], frame.page[1]);
    let number_width = width_em(&number) * NOTE;
    pen.right(&number, NOTE, high.x - PAD);
    let heading = format!("{}: {}", frame.name, frame.title);
    pen.paragraph(&heading, TITLE, INK, width - number_width - 4.0);
    for warning in &frame.warnings {
        pen.paragraph(warning, NOTE * 1.1, WARN, width);
    }
    for note in &frame.notes {
        pen.paragraph(note, NOTE, INK, width);
    }
    let top = pen.at - PAD * 0.5;

    // The foot is written from its top down, once its height is known.
    let cautions = wrapped(&frame.cautions, NOTE, width);
    let bar_width = BAR + 4.0;
    let made_by = wrapped(&frame.made_by, SMALL, width - bar_width);
    let scale = wrapped(scale, NOTE, width - bar_width);
    let lines = |count: usize, size: f64| {
        #[allow(clippy::cast_precision_loss)] // some lines
        let count = count as f64;
        count * size * LEADING
    };
    let beside_bar = lines(made_by.len(), SMALL) + lines(scale.len(), NOTE);
    let foot = lines(cautions.len(), NOTE) + beside_bar.max(9.0) + 2.0 * PAD;
    let bottom = low.y + foot;
    rule(sheet, [low.x, high.x], bottom);
    bar(sheet, DVec2::new(high.x - PAD - BAR, bottom - PAD - 2.5));
    let mut pen = Writer {
        sheet,
        left: low.x + PAD,
        width,
        at: bottom - PAD,
    };
    for line in &scale {
        pen.line(line, NOTE, INK);
    }
    for line in &made_by {
        pen.line(line, SMALL, INK);
    }
    pen.at = bottom - PAD - beside_bar.max(9.0);
    for line in &cautions {
        pen.line(line, NOTE, WARN);
    }
    (
        DVec2::new(low.x + PAD, bottom + PAD),
        DVec2::new(high.x - PAD, top),
    )
}

fn outline(sheet: &mut Sheet, low: DVec2, high: DVec2) {
    sheet.push(
        Layer::Frame,
        Shape::Polygon {
            points: vec![
                low,
                DVec2::new(high.x, low.y),
                high,
                DVec2::new(low.x, high.y),
            ],
            pen: Some(Pen::solid(0.35, INK)),
            fill: None,
        },
    );
}

fn rule(sheet: &mut Sheet, [left, right]: [f64; 2], y: f64) {
    sheet.push(
        Layer::Frame,
        Shape::Line {
            ends: [DVec2::new(left, y), DVec2::new(right, y)],
            pen: Pen::solid(0.25, INK),
        },
    );
}

/// A bar of a known length: whoever printed the page can see whether the scale holds.
/// What the statement of a page's scale starts with.
pub(in crate::drawing) const SCALE: &str = "Scale ";

/// What stands under the bar.
pub(in crate::drawing) const BAR_SAYS: &str =
    "100 mm (3 15/16 in) when printed at 100 %: if it is not, don't scale from the page";

fn bar(sheet: &mut Sheet, at: DVec2) {
    let end = at + DVec2::new(BAR, 0.0);
    let pen = Pen::solid(0.3, INK);
    let mut line = |a: DVec2, b: DVec2| {
        sheet.push(Layer::Frame, Shape::Line { ends: [a, b], pen });
    };
    line(at, end);
    for step in 0..=10 {
        let x = at.x + BAR * f64::from(step) / 10.0;
        let tall = if step % 5 == 0 { 2.0 } else { 1.0 };
        line(DVec2::new(x, at.y), DVec2::new(x, at.y + tall));
    }
    sheet.push(
        Layer::Frame,
        Shape::Text(Text {
            at: at - DVec2::new(0.0, SMALL * 1.1),
            size: SMALL,
            upward: false,
            colour: FINE,
            says: BAR_SAYS.into(),
        }),
    );
}

/// Writes lines from the top down.
pub(super) struct Writer<'a> {
    pub(super) sheet: &'a mut Sheet,
    pub(super) left: f64,
    pub(super) width: f64,
    /// The top of the next line.
    pub(super) at: f64,
}

impl Writer<'_> {
    pub(super) fn line(&mut self, says: &str, size: f64, colour: Colour) {
        self.at -= size * LEADING;
        self.put(self.left, says, size, colour);
    }

    pub(super) fn put(&mut self, x: f64, says: &str, size: f64, colour: Colour) {
        let at = DVec2::new(x, self.at + size * 0.3);
        self.sheet.push(
            Layer::Frame,
            Shape::Text(Text {
                at,
                size,
                upward: false,
                colour,
                says: says.into(),
            }),
        );
    }

    fn paragraph(&mut self, says: &str, size: f64, colour: Colour, width: f64) {
        for line in wrapped(says, size, width.min(self.width)) {
            self.line(&line, size, colour);
        }
    }

    fn right(&mut self, says: &str, size: f64, right: f64) {
        let before = self.at;
        self.at -= size * LEADING;
        self.put(right - width_em(says) * size, says, size, INK);
        self.at = before;
    }
}

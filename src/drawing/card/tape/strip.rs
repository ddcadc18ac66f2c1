//! One strip of the tape: its outline, its scale, its marks with their labels.

use glam::DVec2;

use super::super::tape_marks::{Kind, Mark};
use super::{APART, CUT, LABEL, LABELS, NUMBER, NUMBERS, Ruler, SMALL, line, steps, text};
use crate::bay::UnitSystem;
use crate::clearance::marks::graduation_m;
use crate::drawing::palette::paper::{FINE, INK, WARN};
use crate::drawing::sheet::font::width_em;
use crate::drawing::sheet::lines::wrapped;
use crate::drawing::sheet::{Dash, LEADING, Layer, Pen, Shape, Sheet, spread};
use crate::units::{Length, Rounding, both, length};

pub(super) struct Strip<'a> {
    pub(super) ruler: &'a Ruler,
    pub(super) number: usize,
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) left: f64,
    pub(super) bottom: f64,
    pub(super) width: f64,
}

impl Strip<'_> {
    /// Where a height lies on the page.
    fn y(&self, at_m: f64) -> f64 {
        self.bottom + (at_m - self.from) * 1000.0
    }

    pub(super) fn put(
        &self,
        sheet: &mut Sheet,
        marks: &[Mark],
        by: &(String, String),
    ) -> Option<()> {
        self.outline(sheet);
        self.scale(sheet);
        let right = self.made_by(sheet, by)?;
        self.marks(sheet, marks, right)
    }

    fn outline(&self, sheet: &mut Sheet) {
        let (left, right) = (self.left, self.left + self.width);
        let (low, high) = (self.bottom, self.y(self.to));
        sheet.push(
            Layer::Frame,
            Shape::Polygon {
                points: vec![
                    DVec2::new(left, low),
                    DVec2::new(right, low),
                    DVec2::new(right, high),
                    DVec2::new(left, high),
                ],
                pen: Some(CUT),
                fill: None,
            },
        );
    }

    fn scale(&self, sheet: &mut Sheet) {
        let grid = graduation_m(self.ruler.units);
        let count = steps(self.to - self.from, grid);
        let (parts, tall): (u32, fn(u32) -> f64) = match self.ruler.units {
            UnitSystem::Imperial => (16, |part| match part {
                0 => 8.0,
                8 => 5.5,
                4 | 12 => 4.2,
                2 | 6 | 10 | 14 => 3.0,
                _ => 2.0,
            }),
            UnitSystem::Metric => (10, |part| match part {
                0 => 8.0,
                5 => 4.5,
                _ => 2.5,
            }),
        };
        let mut index = 0_u32;
        while f64::from(index) < count + 0.5 {
            let part = index % parts;
            let at = self.from + f64::from(index) * grid;
            let y = self.y(at);
            let width = if part == 0 { 0.22 } else { 0.12 };
            let ends = [
                DVec2::new(self.left, y),
                DVec2::new(self.left + tall(part), y),
            ];
            line(sheet, Layer::Dimensions, ends, Pen::solid(width, INK));
            // The numbers of the two edges stand in their labels.
            if part == 0 && index > 0 && f64::from(index) < count - 0.5 {
                let says = length(Length::metres(at), self.ruler.units, Rounding::Nearest);
                let place = DVec2::new(self.left + NUMBERS[0], y - NUMBER * 0.28);
                text(sheet, place, false, &says, NUMBER, INK);
            }
            index += 1;
        }
    }

    /// Upward along the right edge; where that leaves room to comes back.
    fn made_by(&self, sheet: &mut Sheet, (by, warns): &(String, String)) -> Option<f64> {
        let room = (self.to - self.from) * 1000.0 - 4.0;
        let mut right = self.left + self.width - 1.0;
        let columns = [
            (format!("strip {} \u{b7} {by}", self.number), FINE),
            (warns.clone(), WARN),
        ];
        for (says, colour) in columns {
            // The last strip may be short: what it has room for is enough, the rest is on the others.
            let size = SMALL;
            for (index, line) in wrapped(&says, size, room).into_iter().enumerate() {
                if index > 2 && self.number > 1 {
                    break;
                }
                right -= size * LEADING;
                let at = DVec2::new(right + size * 0.9, self.bottom + 2.0);
                text(sheet, at, true, &line, size, colour);
            }
        }
        (right > self.left + LABELS + 10.0).then_some(right)
    }

    fn marks(&self, sheet: &mut Sheet, marks: &[Mark], right: f64) -> Option<()> {
        let is_last = self.to >= self.ruler.end_m - 1e-9;
        let here = |at: f64| {
            at >= self.from - 1e-9 && (at < self.to - 1e-9 || (is_last && at <= self.to + 1e-9))
        };
        let show = |at: f64| both(Length::metres(at), self.ruler.units, Rounding::Nearest);
        let width = right - self.left - LABELS - 1.0;
        let mut labels: Vec<(f64, Vec<String>, Option<Kind>)> = Vec::new();
        let edge = |at: f64, what: &str| {
            let says = format!("{what} edge: {}", show(at));
            (at, wrapped(&says, LABEL, width), None)
        };
        labels.push(edge(self.from, "lower"));
        for mark in marks.iter().filter(|mark| here(mark.at_m)) {
            let mut lines = wrapped(&mark.says, LABEL, width);
            lines.extend(reads(&mark.reads, width));
            labels.push((mark.at_m, lines, Some(mark.kind)));
        }
        labels.push(edge(self.to, "upper"));
        #[allow(clippy::cast_precision_loss)] // some lines
        let height = |lines: &[String]| lines.len() as f64 * LABEL * LEADING + APART;
        let wanted: Vec<(f64, f64)> = labels
            .iter()
            .map(|(at, lines, _)| (self.y(*at), height(lines)))
            .collect();
        let places = spread(&wanted, self.bottom + 0.8, self.y(self.to) - 0.8)?;
        for ((at, lines, kind), middle) in labels.iter().zip(places) {
            let colour = kind.map_or(INK, Kind::colour);
            let mut top = middle + (height(lines) - APART) * 0.5;
            if let Some(kind) = kind {
                self.mark(sheet, *at, *kind, top - LABEL * LEADING * 0.5);
            }
            for says in lines {
                top -= LABEL * LEADING;
                let place = DVec2::new(self.left + LABELS, top + LABEL * 0.3);
                debug_assert!(width_em(says) * LABEL <= width + 1e-6);
                text(sheet, place, false, says, LABEL, colour);
            }
        }
        Some(())
    }

    /// The line itself over the scale, and on from behind the numbers to its label.
    fn mark(&self, sheet: &mut Sheet, at_m: f64, kind: Kind, label_y: f64) {
        let (y, colour) = (self.y(at_m), kind.colour());
        let at = |x: f64, y: f64| DVec2::new(self.left + x, y);
        let (width, layer) = if kind.is_lock() {
            (0.35, Layer::Lift)
        } else {
            (0.5, Layer::Points)
        };
        let pen = match kind {
            Kind::Never | Kind::NotToUse => Pen::broken(width, colour, Dash::Dashed),
            Kind::Lock | Kind::Stop | Kind::Release => Pen::solid(width, colour),
        };
        line(sheet, layer, [at(0.0, y), at(NUMBERS[0] - 0.5, y)], pen);
        let fine = Pen::solid(0.2, colour);
        line(
            sheet,
            Layer::Dimensions,
            [at(NUMBERS[1], y), at(LABELS - 3.0, y)],
            fine,
        );
        self.sign(sheet, y, kind);
        line(
            sheet,
            Layer::Dimensions,
            [at(LABELS - 3.0, y), at(LABELS - 0.6, label_y)],
            fine,
        );
    }

    /// What tells the kinds apart in grey too: a full triangle for a mark to keep to, a hollow one
    /// for the climb off the lock, a cross for a lock that must not be used.
    fn sign(&self, sheet: &mut Sheet, y: f64, kind: Kind) {
        let colour = kind.colour();
        let at = |x: f64, y: f64| DVec2::new(self.left + NUMBERS[1] + x, y);
        let heavy = Pen::solid(0.45, colour);
        match kind {
            Kind::Lock => {}
            Kind::NotToUse => {
                for ends in [
                    [at(-1.3, y - 1.3), at(1.3, y + 1.3)],
                    [at(-1.3, y + 1.3), at(1.3, y - 1.3)],
                ] {
                    line(sheet, Layer::Points, ends, heavy);
                }
            }
            Kind::Stop | Kind::Never | Kind::Release => {
                let hollow = kind == Kind::Release;
                sheet.push(
                    Layer::Shade,
                    Shape::Polygon {
                        points: vec![at(-1.2, y), at(1.2, y + 1.0), at(1.2, y - 1.0)],
                        pen: hollow.then_some(Pen::solid(0.25, colour)),
                        fill: (!hollow).then_some(colour),
                    },
                );
            }
        }
    }
}

/// Its height in both systems: on one line where that has room, else on a line each.
fn reads(reads: &[String], width: f64) -> Vec<String> {
    match reads {
        [own, other] => {
            let both = format!("{own} ({other})");
            if width_em(&both) * LABEL <= width {
                vec![both]
            } else {
                vec![own.clone(), format!("({other})")]
            }
        }
        other => other.to_vec(),
    }
}

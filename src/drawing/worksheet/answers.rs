//! Room for an answer: a line to write on, or boxes to tick.

use glam::DVec2;

use super::rows::{HOW, Pencil, SMALL, line};
use crate::drawing::palette::paper::{FINE, INK};
use crate::drawing::sheet::font::width_em;
use crate::drawing::sheet::{Layer, Pen, Shape, Sheet};
use crate::worksheet::Kind;

/// A box to tick.
const BOX: f64 = 3.0;

/// A line to write on, its units at the end.
pub(super) fn writing(sheet: &mut Sheet, [left, right]: [f64; 2], y: f64, kind: Kind) {
    let units = kind.units();
    let end = right - width_em(units) * SMALL - 1.0;
    line(
        sheet,
        [DVec2::new(left, y), DVec2::new(end, y)],
        Pen::solid(0.2, INK),
    );
    if !units.is_empty() {
        Pencil {
            sheet,
            at: DVec2::new(end + 1.0, y),
        }
        .word(0.0, 0.0, units, SMALL, FINE);
    }
}

/// Boxes to tick, in rows.
pub(super) struct Ticks(Vec<Vec<&'static str>>);

/// What is to be ticked, in rows of this width.
pub(super) fn ticks(kind: Kind, room: f64) -> Option<Ticks> {
    let words: Vec<&'static str> = match kind {
        Kind::YesNo => vec!["yes", "no", "not known"],
        Kind::Choice(words) => words.iter().map(|(word, _)| *word).collect(),
        _ => return None,
    };
    let mut rows: Vec<Vec<&'static str>> = vec![Vec::new()];
    let mut used = 0.0;
    for word in words {
        let wide = wide(word);
        if used + wide > room && used > 0.0 {
            rows.push(Vec::new());
            used = 0.0;
        }
        if let Some(row) = rows.last_mut() {
            row.push(word);
        }
        used += wide;
    }
    Some(Ticks(rows))
}

fn wide(word: &str) -> f64 {
    BOX + 1.2 + width_em(word) * HOW + 3.0
}

impl Ticks {
    #[allow(clippy::cast_precision_loss)] // some rows
    pub(super) fn height(&self) -> f64 {
        self.0.len() as f64 * (BOX + 2.0)
    }

    pub(super) fn draw(&self, sheet: &mut Sheet, at: DVec2) {
        let mut y = at.y - BOX - 0.8;
        for row in &self.0 {
            let mut x = at.x;
            for word in row {
                let low = DVec2::new(x, y);
                sheet.push(
                    Layer::Frame,
                    Shape::Polygon {
                        points: [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]
                            .map(|(right, up)| low + DVec2::new(right, up) * BOX)
                            .into(),
                        pen: Some(Pen::solid(0.2, INK)),
                        fill: None,
                    },
                );
                let at = DVec2::new(x + BOX + 1.2, y + 0.6);
                Pencil { sheet, at }.word(0.0, 0.0, word, HOW, INK);
                x += wide(word);
            }
            y -= BOX + 2.0;
        }
    }
}

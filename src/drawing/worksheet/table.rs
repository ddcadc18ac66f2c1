//! A table to fill in, a line for each of several things.

use glam::DVec2;

use super::rows::{LINE, Pencil, SMALL, line, lines};
use crate::drawing::palette::paper::{FINE, INK};
use crate::drawing::sheet::{Pen, Sheet};
use crate::worksheet::{Kind, Question};

/// How high the headings of the columns are.
pub(super) fn heads(columns: &[(String, &'static Question)], width: f64) -> f64 {
    let widths = widths(columns, width);
    let heads = columns.iter().zip(widths);
    heads
        .map(|((number, question), width)| {
            lines(&format!("{number} {}", question.what), SMALL, width - 1.5)
        })
        .fold(0.0, f64::max)
}

/// How wide the columns of a table are: words get more room than numbers.
fn widths(columns: &[(String, &'static Question)], width: f64) -> Vec<f64> {
    let share = |question: &Question| match question.kind {
        Kind::Words => 2.0,
        Kind::YesNo => 0.8,
        _ => 1.0,
    };
    let all: f64 = columns.iter().map(|(_, question)| share(question)).sum();
    let columns = columns.iter();
    columns
        .map(|(_, question)| width * share(question) / all)
        .collect()
}

pub(super) fn table(
    sheet: &mut Sheet,
    at: DVec2,
    width: f64,
    columns: &[(String, &'static Question)],
    count: usize,
) {
    let heads = heads(columns, width) + 1.5;
    #[allow(clippy::cast_precision_loss)] // some lines
    let bottom = at.y - heads - count as f64 * LINE;
    let mut x = at.x;
    for ((number, question), width) in columns.iter().zip(widths(columns, width)) {
        line(
            sheet,
            [DVec2::new(x, at.y), DVec2::new(x, bottom)],
            Pen::solid(0.15, INK),
        );
        let mut pen = Pencil {
            sheet,
            at: DVec2::new(x, at.y - 0.4),
        };
        pen.paragraph(
            0.8,
            &format!("{number} {}", question.what),
            SMALL,
            FINE,
            width - 1.5,
        );
        x += width;
    }
    line(
        sheet,
        [DVec2::new(x, at.y), DVec2::new(x, bottom)],
        Pen::solid(0.15, INK),
    );
    let mut y = at.y;
    let across = |y: f64| [DVec2::new(at.x, y), DVec2::new(x, y)];
    line(sheet, across(y), Pen::solid(0.15, INK));
    y -= heads;
    for _ in 0..=count {
        line(sheet, across(y), Pen::solid(0.15, INK));
        y -= LINE;
    }
}

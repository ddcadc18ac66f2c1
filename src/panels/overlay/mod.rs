//! What is written over the picture: dimension lines, the caption, the cautions?
//!
//! A caption is a title block as on a drawing: it stands below the picture and covers nothing of
//! it. [`view_rect`] says what is left for the picture; the camera's picture belongs into exactly
//! that rectangle.

mod block;
mod caption;
mod halves;
mod labels;
mod lines;
mod marks;
mod strokes;

use egui::{Align2, Color32, FontId, Painter, Rect, pos2, vec2};

pub use caption::{Content, content};
pub use halves::{HeadLine, halves, head_lines, paint_all, views_rect};
pub use lines::{DimensionLine, lines, text_size};
pub use marks::{Mark, marks};

use super::style::{self, egui_colour};
use super::{Desk, limits, shown, status};
use crate::clearance::LockState;
use crate::clearance::probe::{HereState, PairState};
use crate::report::{self, GOING_UNDER, Sayings};

/// What of `rect` is left for the picture: all of it, or what is above the title block.
#[must_use]
pub fn view_rect(rect: Rect, desk: &Desk, caption: bool) -> Rect {
    if !caption {
        return rect;
    }
    let block = block::height(rect, &desk.settings);
    Rect::from_min_max(rect.min, pos2(rect.right(), rect.bottom() - block))
}

/// Paints over the view; with a caption, the title block is painted below it, inside `rect`.
pub fn paint(painter: &Painter, rect: Rect, desk: &Desk, caption: bool) {
    let view = view_rect(rect, desk, caption);
    let inside = painter.with_clip_rect(painter.clip_rect().intersect(view));
    let size = text_size(view, &desk.settings);
    let mut words = Vec::new();
    if !caption {
        words.extend(warning(desk));
        if shown::may_anyone_be_under(desk) {
            words.push(GOING_UNDER.into());
        }
    }
    if desk.settings.dimensions {
        let lines = lines(desk, view);
        for line in &lines {
            strokes::paint(&inside, line, size, desk);
        }
        // No stroke runs through a figure.
        for line in &lines {
            strokes::plate(&inside, line, size, desk);
        }
        words.extend(corner_words(desk));
    }
    if desk.settings.marks {
        for mark in marks(desk, view, size * 0.9) {
            marks::paint(&inside, &mark, size * 0.9, desk);
        }
    }
    corner(&inside, view, size, desk, &words);
    if caption {
        let block = Rect::from_min_max(pos2(rect.left(), view.bottom()), rect.max);
        block::paint(painter, block, desk);
    }
}

/// The letters of the cautions in a picture with a caption, points; none where the title block does
/// not hold all of its words.
#[must_use]
pub fn caution_letters(painter: &Painter, rect: Rect, desk: &Desk) -> Option<f32> {
    let view = view_rect(rect, desk, true);
    let block = Rect::from_min_max(pos2(rect.left(), view.bottom()), rect.max);
    block::caution_letters(painter, block, desk)
}

/// Writes into the lower left corner of the view, on plates.
fn corner(painter: &Painter, view: Rect, size: f32, desk: &Desk, words: &[String]) {
    let screen = style::screen(&desk.settings);
    let ink = egui_colour(if desk.is_current() {
        screen.ink
    } else {
        screen.stale
    });
    let mut bottom = view.bottom() - size * 0.5;
    for words in words.iter().rev() {
        let font = FontId::proportional(size * 0.9);
        let text = painter.layout(words.clone(), font, ink, view.width() * 0.9);
        let corner = pos2(view.left() + size * 0.7, bottom - text.size().y);
        let plate = Rect::from_min_size(corner, text.size()).expand2(vec2(4.0, 2.0));
        painter.rect_filled(plate, 2.0, plate_colour(egui_colour(screen.panel)));
        painter.galley(corner, text, ink);
        bottom = plate.top() - 2.0;
    }
}

/// What a picture without a title block must say all the same: that no lock is safe, and that it is
/// not clear where the carriage stands.
#[must_use]
pub fn warning(desk: &Desk) -> Vec<String> {
    let Some(verdict) = &desk.verdict else {
        return Vec::new();
    };
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let mut words = Vec::new();
    if verdict.study.highest_safe_lock.is_none() {
        let why = said.reasons().into_iter().next();
        let why = why.map_or_else(|| said.lead(), |(says, _)| says);
        words.push(format!("\u{d7} No lock is safe. {why}"));
    }
    if let Some(here) = shown::state(desk) {
        let is_good = [HereState::Clear, HereState::Parked, HereState::Meeting]
            .into_iter()
            .any(|good| here == good.into())
            || here == LockState::NotLifting.into();
        if !is_good {
            words.push(format!("Shown here: {}", here.word));
        }
    }
    words
}

/// What is said of the dimension lines in the lower left corner of the view, from the top to the
/// bottom. What strikes has no nearest points and so no line: it is told here.
#[must_use]
pub fn corner_words(desk: &Desk) -> Vec<String> {
    let Some(here) = &desk.here else {
        return status::stale_words(desk).into_iter().collect();
    };
    let touching: Vec<_> = limits::distinct(&here.pairs)
        .into_iter()
        .filter(|pair| pair.state == PairState::Strikes && pair.points_m.is_none())
        .collect();
    let mut words: Vec<String> = touching
        .iter()
        .take(3)
        .map(|pair| {
            format!(
                "\u{d7} {} strikes {}",
                report::called(&pair.moving),
                report::called(&pair.fixed)
            )
        })
        .collect();
    if touching.len() > 3 {
        words.push(format!("\u{d7} and {} more", touching.len() - 3));
    }
    words.extend(status::stale_words(desk));
    if !here.pairs.is_empty() {
        let study = desk.verdict.as_ref().map(|found| &found.study);
        let is_as_filed = study.is_some_and(|study| !study.not_measured().is_empty());
        let at_lock = desk.rise.at_lock(&desk.locks_m()).is_some();
        if is_as_filed {
            words.push("Lengths: as filed, NOT MEASURED".into());
        }
        words.push(if at_lock {
            "Lengths: worst case while the lock is set and left, rounded down".into()
        } else {
            "Lengths: worst case, rounded down".into()
        });
    }
    words
}

/// The ground under what is written over the picture.
fn plate_colour(panel: Color32) -> Color32 {
    panel.gamma_multiply(0.93)
}

/// Words over the middle of a plate.
fn centred(painter: &Painter, rect: Rect, words: &str, size: f32, ink: Color32) {
    let font = FontId::proportional(size);
    painter.text(rect.center(), Align2::CENTER_CENTER, words, font, ink);
}

//! Where does everything in the title block stand, whatever the picture's size?

use std::sync::Arc;

use egui::{Color32, FontId, Galley, Painter, Pos2, Rect, Stroke, pos2, vec2};

use super::caption::{Content, content};
use crate::panels::settings::Settings;
use crate::panels::style::{self, egui_colour};
use crate::panels::{Desk, signs};

/// Height of the title block under a picture: wide pictures need a smaller share of it.
#[must_use]
pub(super) fn height(rect: Rect, settings: &Settings) -> f32 {
    let aspect = rect.width() / rect.height().max(1.0);
    let share = (0.40 / aspect.max(0.1)).clamp(0.2, 0.36);
    let larger = if settings.show_mode { 1.15 } else { 1.0 };
    let share = (share * larger * style::scale(settings).clamp(1.0, 1.5)).min(0.42);
    (rect.height() * share).round()
}

/// Letters are never set smaller than this, points.
const SMALLEST: f32 = 7.0;

/// The first caution over the text, and the others.
const CAUTIONS: [f32; 2] = [0.9, 0.8];

/// Blocks less wide than this many times their height have one cell under the other.
const WIDE: f32 = 2.4;

/// The letters of the cautions, points; none where the block does not hold all of its words.
#[must_use]
pub(super) fn caution_letters(painter: &Painter, rect: Rect, desk: &Desk) -> Option<f32> {
    let (set, fits) = set(painter, rect, desk, &content(desk));
    fits.then_some(set.size * CAUTIONS[1])
}

/// Paints the block into `rect`, in letters as large as fit.
pub(super) fn paint(painter: &Painter, rect: Rect, desk: &Desk) {
    let screen = style::screen(&desk.settings);
    let rule = egui_colour(screen.rule);
    let content = content(desk);
    let (set, _) = set(painter, rect, desk, &content);
    painter.rect_filled(rect, 0.0, egui_colour(screen.panel));
    painter.hline(rect.x_range(), rect.top(), Stroke::new(1.5, rule));
    for line in &set.rules {
        painter.line_segment(*line, Stroke::new(1.0, rule));
    }
    let is_stale = !desk.is_current();
    let ink = egui_colour(if is_stale { screen.stale } else { screen.ink });
    for (at, radius, state) in set.signs {
        let fill = state.fill(screen, is_stale);
        signs::paint(painter, at, radius, state.sign, fill, ink);
    }
    for (at, text) in set.texts {
        painter.galley(at, text, ink);
    }
}

/// Everything set.
struct Set {
    size: f32,
    texts: Vec<(Pos2, Arc<Galley>)>,
    signs: Vec<(Pos2, f32, signs::State)>,
    rules: Vec<[Pos2; 2]>,
}

/// The block in letters as large as fit, and whether any do.
fn set(painter: &Painter, rect: Rect, desk: &Desk, content: &Content) -> (Set, bool) {
    let best = try_set(painter, rect, desk, content, SMALLEST);
    let (mut best, fits) = best;
    let (mut low, mut high) = (SMALLEST, rect.height() * 0.16);
    while fits && high - low > 0.25 {
        let size = (low + high) * 0.5;
        match try_set(painter, rect, desk, content, size) {
            (set, true) => (best, low) = (set, size),
            (_, false) => high = size,
        }
    }
    (best, fits)
}

/// Three cells: the lock; title and verdict; the shown position and the cautions. Side by side in a
/// wide block, else one under the other.
fn try_set(
    painter: &Painter,
    rect: Rect,
    desk: &Desk,
    content: &Content,
    size: f32,
) -> (Set, bool) {
    let inks = Inks::of(desk, content);
    let pad = size * 0.6;
    let inner = rect.shrink2(vec2(pad, pad * 0.7));
    let mut set = Set {
        size,
        texts: Vec::new(),
        signs: Vec::new(),
        rules: Vec::new(),
    };
    let (first, first_end) = lock_cell(&mut set, painter, inner.min, content, &inks);
    if rect.width() < rect.height() * WIDE {
        let mut y = first_end;
        let mut widest = first;
        for cell in [verdict_cell, position_cell] {
            y += pad;
            set.rules
                .push([pos2(inner.left(), y), pos2(inner.right(), y)]);
            let mut column = Column::new(painter, inner.left(), y + pad * 0.6, inner.width());
            cell(&mut column, &mut set.signs, content, size, &inks);
            y = column.y;
            widest = widest.max(column.widest);
            set.texts.append(&mut column.texts);
        }
        let fits = widest <= inner.width() + 1.0 && y <= inner.bottom();
        return (set, fits);
    }

    let rest = inner.width() - first - pad * 4.0;
    let second_x = inner.left() + first + pad * 2.0;
    let second = rest * 0.58;
    let third_x = second_x + second + pad * 2.0;
    let upright = rect.shrink(size * 0.5).y_range();
    for x in [second_x - pad, third_x - pad] {
        set.rules.push([pos2(x, upright.min), pos2(x, upright.max)]);
    }
    let mut fits = rest > first;
    let cells: [(f32, f32, Cell); 2] = [
        (second_x, second, verdict_cell),
        (third_x, rest - second, position_cell),
    ];
    for (x, width, cell) in cells {
        let mut column = Column::new(painter, x, inner.top(), width);
        cell(&mut column, &mut set.signs, content, size, &inks);
        fits &= column.y <= inner.bottom() && column.widest <= width + 1.0;
        set.texts.append(&mut column.texts);
    }
    (set, fits)
}

/// Fills a column.
type Cell = fn(&mut Column<'_>, &mut Vec<(Pos2, f32, signs::State)>, &Content, f32, &Inks);

/// What the words are written with.
struct Inks {
    ink: Color32,
    faint: Color32,
    error: Color32,
    caution: Color32,
}

impl Inks {
    fn of(desk: &Desk, content: &Content) -> Self {
        let screen = style::screen(&desk.settings);
        let ink = if content.stale.is_some() {
            screen.stale
        } else {
            screen.ink
        };
        Self {
            ink: egui_colour(ink),
            faint: egui_colour(screen.faint),
            error: egui_colour(screen.error),
            caution: egui_colour(screen.ink),
        }
    }
}

/// The highest safe lock; its width and where it ends.
fn lock_cell(
    set: &mut Set,
    painter: &Painter,
    at: Pos2,
    content: &Content,
    inks: &Inks,
) -> (f32, f32) {
    let (size, big) = (set.size, set.size * 1.7);
    let lock = FontId::proportional(big);
    let lock = painter.layout_no_wrap(content.safe_lock.clone(), lock, inks.ink);
    let small = FontId::proportional(size * 0.85);
    let small = painter.layout_no_wrap("highest safe lock".into(), small, inks.faint);
    let width = lock.size().x.max(small.size().x) + big * 1.2;
    let x = at.x + big * 1.2;
    let lock_height = lock.size().y;
    if let Some(state) = content.verdict {
        let at = pos2(at.x + big * 0.5, at.y + lock_height * 0.5);
        set.signs.push((at, big * 0.42, state));
    }
    let mut end = at.y + lock_height;
    set.texts.push((pos2(x, at.y), lock));
    if content.is_safe {
        let height = small.size().y;
        set.texts.push((pos2(x, end), small));
        end += height;
    }
    (width, end)
}

/// Title and verdict.
fn verdict_cell(
    column: &mut Column<'_>,
    _: &mut Vec<(Pos2, f32, signs::State)>,
    content: &Content,
    size: f32,
    inks: &Inks,
) {
    column.add(&content.title, size * 1.05, inks.ink);
    column.add(&content.subtitle, size * 0.85, inks.faint);
    if let Some(stale) = &content.stale {
        column.add(stale, size, inks.error);
    }
    column.gap(size * 0.25);
    column.add(&content.headline, size, inks.ink);
    for reason in &content.reasons {
        column.add(&format!("\u{2022} {reason}"), size * 0.9, inks.ink);
    }
    column.gap(size * 0.2);
    column.add(&content.not_checked, size * 0.8, inks.ink);
}

/// The shown position and the cautions.
fn position_cell(
    column: &mut Column<'_>,
    signs: &mut Vec<(Pos2, f32, signs::State)>,
    content: &Content,
    size: f32,
    inks: &Inks,
) {
    if let Some(here) = content.here {
        let at = pos2(column.x + size * 0.5, column.y + size * 0.62);
        signs.push((at, size * 0.42, here));
        column.indent = size * 1.3;
        let word = if content.stale.is_some() {
            format!("{} (stale)", here.word)
        } else {
            here.word.into()
        };
        column.add(&word, size * 1.05, inks.ink);
        column.indent = 0.0;
    }
    column.add(&content.position, size * 0.9, inks.ink);
    column.gap(size * 0.3);
    let [first, others] = CAUTIONS;
    for (index, caution) in content.cautions.iter().enumerate() {
        let share = if index == 0 { first } else { others };
        column.add(caution, size * share, inks.caution);
    }
    column.gap(size * 0.2);
    column.add(&content.origin, size * 0.65, inks.faint);
}

/// Text under text.
struct Column<'a> {
    painter: &'a Painter,
    x: f32,
    y: f32,
    width: f32,
    indent: f32,
    widest: f32,
    texts: Vec<(Pos2, Arc<Galley>)>,
}

impl<'a> Column<'a> {
    const fn new(painter: &'a Painter, x: f32, y: f32, width: f32) -> Self {
        Self {
            painter,
            x,
            y,
            width,
            indent: 0.0,
            widest: 0.0,
            texts: Vec::new(),
        }
    }

    fn add(&mut self, text: &str, size: f32, ink: Color32) {
        if text.is_empty() {
            return;
        }
        let width = (self.width - self.indent).max(1.0);
        let text = self
            .painter
            .layout(text.into(), FontId::proportional(size), ink, width);
        let height = text.size().y;
        self.widest = self.widest.max(self.indent + text.size().x);
        self.texts.push((pos2(self.x + self.indent, self.y), text));
        self.y += height;
    }

    const fn gap(&mut self, height: f32) {
        self.y += height;
    }
}

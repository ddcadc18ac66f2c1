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
    let share = (0.40 / aspect.max(0.1)).clamp(0.2, 0.34);
    let larger = if settings.show_mode { 1.15 } else { 1.0 };
    let share = (share * larger * style::scale(settings).clamp(1.0, 1.5)).min(0.42);
    (rect.height() * share).round()
}

/// Letters are never set smaller than this, points.
const SMALLEST: f32 = 7.0;

/// Paints the block into `rect`, in letters as large as fit.
pub(super) fn paint(painter: &Painter, rect: Rect, desk: &Desk) {
    let screen = style::screen(&desk.settings);
    let rule = egui_colour(screen.rule);
    let content = content(desk);
    let set = set(painter, rect, desk, &content);
    painter.rect_filled(rect, 0.0, egui_colour(screen.panel));
    painter.hline(rect.x_range(), rect.top(), Stroke::new(1.5, rule));
    for x in &set.rules {
        let y = rect.shrink(set.size * 0.5).y_range();
        painter.vline(*x, y, Stroke::new(1.0, rule));
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
    rules: Vec<f32>,
}

fn set(painter: &Painter, rect: Rect, desk: &Desk, content: &Content) -> Set {
    let (mut best, _) = try_set(painter, rect, desk, content, SMALLEST);
    let (mut low, mut high) = (SMALLEST, rect.height() * 0.16);
    while high - low > 0.25 {
        let size = (low + high) * 0.5;
        match try_set(painter, rect, desk, content, size) {
            (set, true) => (best, low) = (set, size),
            (_, false) => high = size,
        }
    }
    best
}

/// Three cells: the lock; title and verdict; the shown position and the cautions.
fn try_set(
    painter: &Painter,
    rect: Rect,
    desk: &Desk,
    content: &Content,
    size: f32,
) -> (Set, bool) {
    let screen = style::screen(&desk.settings);
    let is_stale = content.stale.is_some();
    let [ink, faint, error] = [
        if is_stale { screen.stale } else { screen.ink },
        screen.faint,
        screen.error,
    ]
    .map(egui_colour);
    let caution = egui_colour(screen.ink);
    let pad = size * 0.6;
    let inner = rect.shrink2(vec2(pad, pad * 0.7));
    let mut set = Set {
        size,
        texts: Vec::new(),
        signs: Vec::new(),
        rules: Vec::new(),
    };

    let big = size * 1.7;
    let lock = painter.layout_no_wrap(content.safe_lock.clone(), FontId::proportional(big), ink);
    let small = painter.layout_no_wrap(
        "highest safe lock".into(),
        FontId::proportional(size * 0.85),
        faint,
    );
    let first = lock.size().x.max(small.size().x) + big * 1.2;
    let lock_x = inner.left() + big * 1.2;
    let lock_height = lock.size().y;
    if let Some(state) = content.verdict {
        let at = pos2(inner.left() + big * 0.5, inner.top() + lock_height * 0.5);
        set.signs.push((at, big * 0.42, state));
    }
    if content.is_safe {
        set.texts
            .push((pos2(lock_x, inner.top() + lock_height), small));
    }
    set.texts.push((pos2(lock_x, inner.top()), lock));

    let rest = inner.width() - first - pad * 4.0;
    let second_x = inner.left() + first + pad * 2.0;
    let second = rest * 0.58;
    let third_x = second_x + second + pad * 2.0;
    set.rules = vec![second_x - pad, third_x - pad];

    let mut column = Column::new(painter, second_x, inner.top(), second);
    column.add(&content.title, size * 1.05, ink);
    column.add(&content.subtitle, size * 0.85, faint);
    if let Some(stale) = &content.stale {
        column.add(stale, size, error);
    }
    column.gap(size * 0.25);
    column.add(&content.headline, size, ink);
    for reason in &content.reasons {
        column.add(&format!("\u{2022} {reason}"), size * 0.9, ink);
    }
    let second_end = column.y;
    set.texts.append(&mut column.texts);

    let mut column = Column::new(painter, third_x, inner.top(), rest - second);
    if let Some(here) = content.here {
        let sign_y = column.y + size * 0.62;
        set.signs
            .push((pos2(third_x + size * 0.5, sign_y), size * 0.42, here));
        column.indent = size * 1.3;
        let word = if is_stale {
            format!("{} (stale)", here.word)
        } else {
            here.word.into()
        };
        column.add(&word, size * 1.05, ink);
        column.indent = 0.0;
    }
    column.add(&content.position, size * 0.9, ink);
    column.gap(size * 0.3);
    column.add(content.cautions[0], size * 0.9, caution);
    column.add(content.cautions[1], size * 0.8, caution);
    column.gap(size * 0.2);
    column.add(&content.origin, size * 0.65, faint);
    let third_end = column.y;
    let widest = column.widest;
    set.texts.append(&mut column.texts);

    let fits = rest > first
        && second_end.max(third_end) <= inner.bottom()
        && third_x + widest <= inner.right() + 1.0;
    (set, fits)
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

//! Two bays side by side: which half of the view is whose, and what stands over each?

use egui::{FontId, Painter, Rect, Stroke, pos2, vec2};

use super::{paint, plate_colour, text_size, view_rect};
use crate::panels::signs::{self, State};
use crate::panels::style::{self, egui_colour};
use crate::panels::{Desk, shown, verdict};
use crate::report::{self, Sayings};

/// Points between the halves.
const GAP: f32 = 2.0;

/// What of `rect` shows the open bay, and what the one beside it; all of it without one.
#[must_use]
pub fn halves(rect: Rect, desk: &Desk) -> (Rect, Option<Rect>) {
    if desk.beside.is_none() {
        return (rect, None);
    }
    // On a whole point, so that both halves have as many pixels.
    let half = ((rect.width() - GAP) * 0.5).floor().max(0.0);
    let left = Rect::from_min_max(rect.min, pos2(rect.left() + half, rect.bottom()));
    (left, Some(left.translate(vec2(half + GAP, 0.0))))
}

/// What of `rect` is left for both pictures together: see [`view_rect`].
#[must_use]
pub fn views_rect(rect: Rect, desk: &Desk, caption: bool) -> Rect {
    let (left, right) = halves(rect, desk);
    let view = view_rect(left, desk, caption);
    Rect::from_min_max(rect.min, pos2(right.unwrap_or(left).right(), view.bottom()))
}

/// Paints over the view, or over both of its halves; with a caption each gets its own title block.
pub fn paint_all(painter: &Painter, rect: Rect, desk: &Desk, caption: bool) {
    let (left, right) = halves(rect, desk);
    let (Some(right), Some(beside)) = (right, &desk.beside) else {
        return paint(painter, rect, desk, caption);
    };
    for (half, desk) in [(left, desk), (right, &beside.desk)] {
        let inside = painter.with_clip_rect(painter.clip_rect().intersect(half));
        paint(&inside, half, desk, caption);
        if !caption {
            head(&inside, half, desk);
        }
    }
    let rule = egui_colour(style::screen(&desk.settings).rule);
    let between = Rect::from_x_y_ranges(left.right()..=right.left(), rect.y_range());
    painter.rect_filled(between, 0.0, rule);
}

/// One line of what stands over a half.
#[derive(Debug, Clone, PartialEq)]
pub struct HeadLine {
    /// The sign before the words.
    pub state: Option<State>,
    /// The words.
    pub words: String,
}

/// What stands over a half: which bay, which lock is safe, and what holds where its carriage stands.
#[must_use]
pub fn head_lines(desk: &Desk) -> Vec<HeadLine> {
    let plain = |words| HeadLine { state: None, words };
    let Some(found) = &desk.verdict else {
        return vec![
            plain(report::on_one_line(&desk.document.name())),
            plain("No verdict".into()),
        ];
    };
    let said = Sayings::of(&found.bay, &found.study);
    let at_lock = desk.rise.at_lock(&desk.locks_m());
    let here = shown::state(desk);
    let stands = said.carriage(desk.rise.travel_m, at_lock);
    let words = match here {
        Some(here) => format!("{stands}: {}", here.word),
        None => stands,
    };
    let safe = match found.study.highest_safe_lock {
        Some(_) => format!("Highest safe: {}", said.safe_lock()),
        None => said.safe_lock(),
    };
    let mut lines = vec![
        plain(desk.label.clone().unwrap_or_else(|| said.title())),
        plain(said.vehicle_on_lift()),
        HeadLine {
            state: Some(verdict::state(found)),
            words: safe,
        },
        HeadLine { state: here, words },
    ];
    lines.extend(said.not_checked_short().map(plain));
    lines
}

fn head(painter: &Painter, half: Rect, desk: &Desk) {
    let screen = style::screen(&desk.settings);
    let is_stale = !desk.is_current();
    let ink = egui_colour(if is_stale { screen.stale } else { screen.ink });
    let size = text_size(half, &desk.settings);
    let pad = size * 0.45;
    let most = half.width() - size * 2.0;
    let lines: Vec<_> = head_lines(desk)
        .into_iter()
        .enumerate()
        .map(|(index, line)| {
            let larger = if index == 2 { 1.2 } else { 0.95 };
            let font = FontId::proportional(size * larger);
            let room = line.state.map_or(0.0, |_| size * larger * 1.3);
            let text = painter.layout(line.words, font, ink, most - room);
            (line.state, room, text)
        })
        .collect();
    let width = lines
        .iter()
        .map(|(_, room, text)| room + text.size().x)
        .fold(0.0, f32::max);
    let height: f32 = lines.iter().map(|(_, _, text)| text.size().y).sum();
    let corner = half.min + vec2(size * 0.5, size * 0.5);
    let plate = Rect::from_min_size(corner, vec2(width, height) + vec2(pad, pad) * 2.0);
    painter.rect(
        plate,
        2.0,
        plate_colour(egui_colour(screen.panel)),
        Stroke::new(1.0, egui_colour(screen.rule)),
        egui::StrokeKind::Inside,
    );
    let mut at = corner + vec2(pad, pad);
    for (state, room, text) in lines {
        let high = text.size().y;
        if let Some(state) = state {
            let middle = pos2(at.x + room * 0.4, at.y + high * 0.5);
            let fill = state.fill(screen, is_stale);
            signs::paint(painter, middle, room * 0.27, state.sign, fill, ink);
        }
        painter.galley(pos2(at.x + room, at.y), text, ink);
        at.y += high;
    }
}

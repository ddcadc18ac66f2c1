//! Where in the bay are the figures of the sections: readings, pads, the centre of gravity?

use egui::{Align2, FontId, Painter, Pos2, Rect, Stroke, pos2, vec2};

use super::labels::Labels;
use super::lines::on_screen;
use super::plate_colour;
use crate::ground::{Figure, Standing};
use crate::panels::signs::{self, Sign, State};
use crate::panels::style::{self, egui_colour};
use crate::panels::{Desk, sections};
use crate::report::Sayings;

/// A figure at its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Where its place appears.
    pub at: Pos2,
    /// What was found there.
    pub label: String,
    /// Where the label stands.
    pub label_rect: Rect,
    /// How it stands.
    pub standing: Standing,
}

/// The marks in the picture that fills `rect`: of every figure that has a place, the worst first.
#[must_use]
pub fn marks(desk: &Desk, rect: Rect, size: f32) -> Vec<Mark> {
    let Some(verdict) = &desk.verdict else {
        return Vec::new();
    };
    let said = Sayings::of(&verdict.bay, &verdict.study);
    let mut placed: Vec<(&Figure, Pos2)> = verdict
        .study
        .sections
        .iter()
        .flat_map(|section| &section.figures)
        .filter_map(|figure| {
            let at = on_screen(desk, rect, figure.at_m?)?;
            rect.contains(at).then_some((figure, at))
        })
        .collect();
    placed.sort_by_key(|(figure, _)| std::cmp::Reverse(figure.standing));
    let points = placed.iter().map(|(_, at)| [*at, *at]).collect();
    let mut labels = Labels::new(rect.shrink(4.0), points);
    placed
        .into_iter()
        .filter_map(|(figure, at)| {
            let label = said.mark(figure);
            #[allow(clippy::cast_precision_loss)] // a few dozen letters
            let letters = label.chars().count() as f32;
            let label_size = vec2(letters * size * 0.5 + size * 0.8, size * 1.4);
            let label_rect = labels.place(at, at, label_size)?;
            Some(Mark {
                at,
                label,
                label_rect,
                standing: figure.standing,
            })
        })
        .collect()
}

/// Paints one mark: its sign at the place, and its words on a plate.
pub(super) fn paint(painter: &Painter, mark: &Mark, size: f32, desk: &Desk) {
    let screen = style::screen(&desk.settings);
    let is_stale = !desk.is_current();
    let ink = egui_colour(if is_stale { screen.stale } else { screen.ink });
    let paper = egui_colour(screen.panel);
    let (sign, colour) = match sections::state(mark.standing) {
        Some(State { sign, .. }) if is_stale => (sign, egui_colour(screen.stale)),
        Some(state) => (state.sign, state.fill(screen, false)),
        None => (Sign::Ring, ink),
    };
    let target = mark.label_rect.clamp(mark.at);
    for (width, colour) in [(3.0, paper), (1.0, ink)] {
        painter.line_segment([mark.at, target], Stroke::new(width, colour));
    }
    signs::paint(painter, mark.at, size * 0.36, sign, colour, ink);
    painter.rect(
        mark.label_rect,
        2.0,
        plate_colour(paper),
        Stroke::new(1.0, colour),
        egui::StrokeKind::Inside,
    );
    let font = FontId::proportional(size * 0.85);
    let at = pos2(mark.label_rect.center().x, mark.label_rect.center().y);
    painter.text(at, Align2::CENTER_CENTER, &mark.label, font, ink);
}

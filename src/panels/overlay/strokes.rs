//! How is a dimension line drawn?
//!
//! As in a drawing office: a thin line with an oblique stroke at each end, the length on a plate
//! beside it. A line too short for that gets arrows from outside. Everything has a halo of the
//! paper's colour, so that it shows over anything.

use egui::{Color32, Painter, Pos2, Stroke, Vec2, vec2};

use super::lines::{DimensionLine, middle};
use super::{centred, plate_colour};
use crate::drawing::palette::screen::Screen;
use crate::panels::signs::State;
use crate::panels::style::{self, egui_colour};
use crate::panels::{Desk, signs};

/// Shorter than this many text heights, arrows come from outside.
const SHORT: f32 = 1.6;

pub(super) fn paint(painter: &Painter, line: &DimensionLine, size: f32, desk: &Desk) {
    let screen = style::screen(&desk.settings);
    let is_stale = !desk.is_current();
    let paper = egui_colour(screen.panel);
    let colour = colour_of(line, screen, is_stale);
    let way = line.to - line.from;
    let along = if way.length() > 0.5 {
        way.normalized()
    } else {
        vec2(0.0, 1.0)
    };
    // All halos first, so that none cuts into a line.
    for (width, colour) in [(4.5, paper), (1.8, colour)] {
        let pen = Pen {
            painter,
            stroke: Stroke::new(width * (size / 16.0).max(0.8), colour),
        };
        pen.leader(line, size);
        pen.line(line.from, line.to);
        if way.length() < size * SHORT {
            pen.arrow(line.from, -along, size);
            pen.arrow(line.to, along, size);
        } else {
            pen.tick(line.from, along, size);
            pen.tick(line.to, along, size);
        }
    }
}

/// The colour of its state, as light or dark as a thin line needs it.
fn colour_of(line: &DimensionLine, screen: &Screen, is_stale: bool) -> Color32 {
    egui_colour(if is_stale {
        screen.stale
    } else {
        screen.line(State::from(line.state).colour)
    })
}

/// The length on its plate.
pub(super) fn plate(painter: &Painter, line: &DimensionLine, size: f32, desk: &Desk) {
    let screen = style::screen(&desk.settings);
    let is_stale = !desk.is_current();
    let paper = egui_colour(screen.panel);
    let ink = egui_colour(if is_stale { screen.stale } else { screen.ink });
    let state = State::from(line.state);
    let colour = colour_of(line, screen, is_stale);
    let edge = Stroke::new(1.0, colour);
    let rect = line.label_rect;
    painter.rect(
        rect,
        2.0,
        plate_colour(paper),
        edge,
        egui::StrokeKind::Inside,
    );
    centred(painter, rect, &line.label, size, ink);
    // The state's shape on the corner of the plate: colour never tells alone.
    let corner = rect.left_top() + vec2(1.0, 1.0);
    signs::paint(painter, corner, size * 0.34, state.sign, colour, ink);
}

struct Pen<'a> {
    painter: &'a Painter,
    stroke: Stroke,
}

impl Pen<'_> {
    fn line(&self, from: Pos2, to: Pos2) {
        self.painter.line_segment([from, to], self.stroke);
    }

    /// From the line to a label that stands away from it.
    fn leader(&self, line: &DimensionLine, size: f32) {
        let middle = middle(line);
        if line.label_rect.distance_to_pos(middle) > size * 0.9 {
            let thin = Stroke::new(self.stroke.width * 0.6, self.stroke.color);
            self.painter
                .line_segment([middle, line.label_rect.clamp(middle)], thin);
        }
    }

    /// The oblique stroke of a drawing, and the short line it crosses.
    fn tick(&self, at: Pos2, along: Vec2, size: f32) {
        let across = along.rot90();
        let oblique = (along + across).normalized() * size * 0.38;
        self.line(at - oblique, at + oblique);
        self.line(at - across * size * 0.45, at + across * size * 0.45);
    }

    /// An arrow that comes from outside and ends at a point of the line; `out` leads away.
    fn arrow(&self, at: Pos2, out: Vec2, size: f32) {
        let across = out.rot90();
        self.line(at, at + out * size * 1.3);
        for side in [-0.22, 0.22] {
            self.line(at, at + (out * 0.5 + across * side) * size);
        }
    }
}

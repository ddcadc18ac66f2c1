//! Where do the carriage and the flag of the safe lock stand at the column?

use egui::{Painter, Shape, Stroke, pos2};

use super::{Ladder, Row, Thing};
use crate::panels::signs::State;
use crate::panels::style::egui_colour;

impl Ladder<'_> {
    /// Where the carriage is now.
    pub(super) fn carriage(&self, painter: &Painter, travel_m: f64) {
        let (x, y, size) = (self.axis_x, self.y(travel_m), self.row * 0.5);
        let accent = egui_colour(self.screen.accent);
        painter.line_segment(
            [pos2(x - size, y), pos2(x + size, y)],
            Stroke::new(2.0, accent),
        );
        let arrow = vec![
            pos2(x - 2.0, y),
            pos2(x - size * 1.6, y - size * 0.7),
            pos2(x - size * 1.6, y + size * 0.7),
        ];
        let edge = Stroke::new(1.0, egui_colour(self.screen.ink));
        painter.add(Shape::convex_polygon(arrow, accent, edge));
    }

    /// The flag, over the carriage's arrow where that stands at it.
    pub(super) fn safe(&self, painter: &Painter) {
        let is_safe = |row: &&Row| matches!(&row.thing, Thing::Lock(lock) if lock.is_safe);
        if let Some(row) = self.rows.iter().find(is_safe) {
            self.flag(painter, self.y(row.travel_m));
        }
    }

    /// The flag at the highest safe lock, on the left of the column.
    fn flag(&self, painter: &Painter, y: f32) {
        let (x, size) = (self.axis_x - self.row * 0.85, self.row * 0.5);
        let pole = Stroke::new(1.5, self.ink());
        let top = y - self.row * 0.55;
        let halo = Stroke::new(4.0, egui_colour(self.screen.panel));
        painter.line_segment([pos2(x, y + 2.0), pos2(x, top)], halo);
        painter.line_segment([pos2(x, y + 2.0), pos2(x, top)], pole);
        let fill = State::from(crate::clearance::LockState::Clear).fill(self.screen, self.is_stale);
        let cloth = vec![
            pos2(x, top),
            pos2(x + size, top + size * 0.4),
            pos2(x, top + size * 0.8),
        ];
        painter.add(Shape::convex_polygon(cloth.clone(), fill, halo));
        let edge = Stroke::new(1.0, self.ink());
        painter.add(Shape::convex_polygon(cloth, fill, edge));
    }
}

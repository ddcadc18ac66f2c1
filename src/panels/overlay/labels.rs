//! Where is there room for a label?

use egui::{Pos2, Rect, Vec2, pos2, vec2};

/// The labels placed so far in a picture.
pub(super) struct Labels {
    room: Rect,
    /// Lines that a label had better not cover.
    lines: Vec<[Pos2; 2]>,
    placed: Vec<Rect>,
}

/// Free room between two labels.
const GAP: f32 = 3.0;

impl Labels {
    pub(super) const fn new(room: Rect, lines: Vec<[Pos2; 2]>) -> Self {
        Self {
            room,
            lines,
            placed: Vec::new(),
        }
    }

    /// A place for a label of this size near the middle of a line: beside it where possible, and
    /// then farther and farther out; never over another label or out of the picture. None where
    /// the picture is full.
    pub(super) fn place(&mut self, from: Pos2, to: Pos2, size: Vec2) -> Option<Rect> {
        let middle = self.room.clamp(from + (to - from) * 0.5);
        let best = candidates(middle, to - from, size)
            .map(|at| self.held(Rect::from_center_size(at, size)))
            .filter(|rect| self.is_free(*rect))
            .map(|rect| (self.cost(rect, middle), rect))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, rect)| rect)
            .or_else(|| self.anywhere(size))?;
        self.placed.push(best);
        Some(best)
    }

    /// Moved into the picture, as far as it fits there.
    fn held(&self, rect: Rect) -> Rect {
        let x = self
            .room
            .left()
            .max(rect.left().min(self.room.right() - rect.width()));
        let y = self
            .room
            .top()
            .max(rect.top().min(self.room.bottom() - rect.height()));
        Rect::from_min_size(pos2(x, y), rect.size())
    }

    fn is_free(&self, rect: Rect) -> bool {
        self.room.contains_rect(rect)
            && !self
                .placed
                .iter()
                .any(|other| other.expand(GAP).intersects(rect))
    }

    /// Distance from the line's middle, and a price for every line under the label.
    fn cost(&self, rect: Rect, middle: Pos2) -> f32 {
        let covered = self
            .lines
            .iter()
            .filter(|line| crosses(rect.expand(5.0), **line))
            .count();
        #[allow(clippy::cast_precision_loss)] // a handful
        let covered = covered as f32;
        rect.distance_to_pos(middle) + covered * rect.height() * 8.0
    }

    /// The first free place in rows from the top.
    fn anywhere(&self, size: Vec2) -> Option<Rect> {
        let mut y = self.room.top();
        while y + size.y <= self.room.bottom() {
            let mut x = self.room.left();
            while x + size.x <= self.room.right() {
                let rect = Rect::from_min_size(pos2(x, y), size);
                if self.is_free(rect) {
                    return Some(rect);
                }
                x += size.x * 0.25;
            }
            y += size.y * 0.5;
        }
        None
    }
}

/// Middles to try: on rings about the line's middle, the nearest ring beside the line.
fn candidates(middle: Pos2, along: Vec2, size: Vec2) -> impl Iterator<Item = Pos2> {
    let across = along.rot90().normalized();
    let across = if across.length() > 0.5 {
        across
    } else {
        vec2(1.0, 0.0)
    };
    (0_u8..9).flat_map(move |ring| {
        (0_u8..16).map(move |step| {
            let turn = f32::from(step) * std::f32::consts::TAU / 16.0;
            let (sin, cos) = turn.sin_cos();
            let way = vec2(
                across.x * cos - across.y * sin,
                across.x * sin + across.y * cos,
            );
            let out = 1.0 + f32::from(ring) * 0.7;
            let reach = vec2(size.x * 0.5 + 9.0, size.y * 0.5 + 7.0) * out;
            middle + vec2(way.x * reach.x, way.y * reach.y)
        })
    })
}

/// Whether a line runs through a rectangle, by points along it.
fn crosses(rect: Rect, [from, to]: [Pos2; 2]) -> bool {
    (0_u8..=12).any(|i| rect.contains(from + (to - from) * (f32::from(i) / 12.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_in_a_crowd_stay_apart_and_inside() {
        let room = Rect::from_min_size(pos2(10.0, 20.0), vec2(600.0, 300.0));
        let mut labels = Labels::new(room, Vec::new());
        let mut rects: Vec<Rect> = Vec::new();
        for i in 0_u8..12 {
            let at = pos2(590.0 + f32::from(i % 3), 310.0);
            let rect = labels
                .place(at, at + vec2(5.0, 3.0), vec2(140.0, 22.0))
                .unwrap();
            assert!(room.contains_rect(rect), "{rect:?}");
            assert!(
                rects.iter().all(|other| !other.intersects(rect)),
                "{rect:?}"
            );
            rects.push(rect);
        }
    }

    #[test]
    fn a_full_picture_takes_no_more() {
        let room = Rect::from_min_size(Pos2::ZERO, vec2(100.0, 30.0));
        let mut labels = Labels::new(room, Vec::new());
        let at = room.center();
        assert!(labels.place(at, at, vec2(90.0, 25.0)).is_some());
        assert!(labels.place(at, at, vec2(90.0, 25.0)).is_none());
        assert!(labels.place(at, at, vec2(190.0, 25.0)).is_none());
    }

    #[test]
    fn a_label_stands_near_its_line() {
        let room = Rect::from_min_size(Pos2::ZERO, vec2(800.0, 600.0));
        let (from, to) = (pos2(400.0, 280.0), pos2(400.0, 320.0));
        let mut labels = Labels::new(room, vec![[from, to]]);
        let rect = labels.place(from, to, vec2(60.0, 20.0)).unwrap();
        assert!(!crosses(rect, [from, to]));
        assert!(rect.distance_to_pos(pos2(400.0, 300.0)) < 20.0, "{rect:?}");
    }
}

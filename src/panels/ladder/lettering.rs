//! What is written beside a lock, and what goes first where there is little room?

use egui::{Align2, FontId, Painter, Rect, pos2};

use super::{Ladder, Lock, Row, Thing};
use crate::panels::style::egui_colour;

/// Before a word of a lock is left out, letters get as much smaller as this.
const SMALLER: f32 = 0.84;

impl Ladder<'_> {
    pub(super) fn lock_text(&self, painter: &Painter, lock: &Lock, y: f32) {
        let ink = if lock.is_here {
            let here = Rect::from_x_y_ranges(
                self.text_x..=self.area.right(),
                y - self.row * 0.5..=y + self.row * 0.5,
            );
            let [fill, ink] = if self.is_stale {
                [self.screen.stale, self.screen.panel]
            } else {
                [self.screen.accent, self.screen.on_accent]
            };
            painter.rect_filled(here, 2.0, egui_colour(fill));
            egui_colour(ink)
        } else {
            self.ink()
        };
        let write = |x: f32, align: Align2, text: &str| {
            painter.text(pos2(x, y), align, text, self.font.clone(), ink)
        };
        let unit = self.font.size;
        let number_x = self.text_x + unit * 1.5;
        write(number_x, Align2::RIGHT_CENTER, &lock.number.to_string());
        let width_of = |words: &str| {
            let words = painter.layout_no_wrap(words.into(), self.font.clone(), ink);
            words.size().x
        };
        let word = lock.state_words();
        let pads_x = number_x + unit * 0.6;
        let word_x = pads_x + unit * 6.6;
        if word_x + width_of(&word) <= self.area.right() {
            write(pads_x, Align2::LEFT_CENTER, &lock.pads);
            write(word_x, Align2::LEFT_CENTER, &word);
            return;
        }
        // What is safe is never left out: the other word goes first, and the letters get smaller.
        let room = self.area.right() - pads_x;
        let short = match lock.safe_with {
            _ if lock.is_safe => "SAFE".into(),
            Some(door) => format!("safe {door}"),
            // What it is with the door as shown; of other doors the card tells.
            None => lock.shown.word.into(),
        };
        let fits = |word: &str, smallest: f32| width_of(word) * smallest <= room;
        let word = if fits(&word, SMALLER) { word } else { short };
        let size = unit * (room / width_of(&word)).clamp(0.5, 1.0);
        painter.text(
            pos2(pads_x, y),
            Align2::LEFT_CENTER,
            word,
            FontId::new(size, self.font.family.clone()),
            ink,
        );
    }
}

/// How much each label matters where there is room for `most` labels: of those that matter the most,
/// marks give way first, then every lock but the highest safe one.
pub(super) fn ranks(rows: &[Row], most: f32) -> Vec<u32> {
    let is_mark = |row: &Row| matches!(row.thing, Thing::Mark(..));
    let is_safe = |row: &Row| matches!(&row.thing, Thing::Lock(lock) if lock.is_safe || lock.safe_with.is_some());
    let fits = |stays: &dyn Fn(&Row) -> bool| {
        let first = rows.iter().filter(|row| row.rank == 0 && stays(row));
        #[allow(clippy::cast_precision_loss)] // a few dozen labels
        let count = first.count() as f32;
        count <= most
    };
    let all = fits(&|_| true);
    let locks = fits(&|row| !is_mark(row));
    rows.iter()
        .map(|row| {
            let stays = all || is_safe(row) || locks && !is_mark(row);
            if stays { row.rank } else { row.rank.max(1) }
        })
        .collect()
}

//! How does each lock stand, to scale of the carriage's travel?

mod lettering;
mod place;
mod pointers;
mod rows;

use egui::{
    Color32, CursorIcon, FontId, Painter, Pos2, Rect, Sense, Stroke, TextStyle, Ui, WidgetInfo,
    WidgetType, pos2, vec2,
};

pub use rows::{Lock, Row, Thing, rows};

use super::shown::door_state;
use super::signs;
use super::style::egui_colour;
use super::{Action, Desk, status, style};
use crate::drawing::palette::screen::Screen;
use crate::report::Sayings;
use place::{Wish, place};

/// How wide the ladder wants to be, points at text of the usual size.
pub const WIDTH: f32 = 272.0;

/// Within so many points of a lock the dragged carriage takes the lock.
const SNAP: f32 = 4.0;

/// A ladder of so many rows has room for more than its locks.
const ROOMY_ROWS: f32 = 20.0;

/// A ladder of fewer rows has room for nothing but its locks, which look stale when they are.
const FEWEST_ROWS: f32 = 8.0;

/// The ladder, filling what is left of the panel.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let screen = style::screen(&desk.settings);
    // Where it is low, the locks come before the words: the card beside it says them all.
    let rows = ui.available_height() / ui.text_style_height(&TextStyle::Body);
    if rows >= ROOMY_ROWS {
        ui.heading("Locks");
    }
    let stale = if rows >= ROOMY_ROWS {
        status::stale_words(desk)
    } else if rows >= FEWEST_ROWS {
        status::stale_word(desk).map(Into::into)
    } else {
        None
    };
    if let Some(words) = stale {
        ui.colored_label(egui_colour(screen.stale), words);
    }
    let Some(verdict) = &desk.verdict else { return };
    let said = Sayings::of(&verdict.bay, &verdict.study);
    if let (Some(door), Some(counted)) = (
        said.door(desk.door),
        said.door_counted(door_state(desk, verdict)),
    ) && rows >= FEWEST_ROWS
    {
        ui.small(format!("{door}: {counted}"));
    }
    let area = ui.available_rect_before_wrap();
    ui.allocate_rect(area, Sense::empty());
    let ladder = Ladder::new(ui, desk, screen, area);
    ladder.strip(ui, desk, out);
    ladder.locks(ui, desk, out);
    ladder.carriage(ui.painter(), desk.rise.travel_m);
    ladder.safe(ui.painter());
}

/// What is needed to draw it.
struct Ladder<'a> {
    screen: &'a Screen,
    is_stale: bool,
    area: Rect,
    /// Where the column's axis is.
    axis_x: f32,
    /// Where text begins.
    text_x: f32,
    full_m: f64,
    font: FontId,
    row: f32,
    rows: Vec<Row>,
    /// Where each row's text is; none where there is no room.
    text_y: Vec<Option<f32>>,
}

impl<'a> Ladder<'a> {
    fn new(ui: &Ui, desk: &Desk, screen: &'a Screen, area: Rect) -> Self {
        let font = TextStyle::Body.resolve(ui.style());
        let row = ui.text_style_height(&TextStyle::Body) + 2.0;
        let mut ladder = Self {
            screen,
            is_stale: !desk.is_current(),
            area: area.shrink2(vec2(0.0, row * 0.6)),
            axis_x: area.left() + row,
            text_x: area.left() + row * 2.1,
            full_m: desk.full_travel_m(),
            font,
            row,
            rows: rows(desk),
            text_y: Vec::new(),
        };
        let most = (ladder.area.height() / row).max(0.0) + 1.0;
        let ranks = lettering::ranks(&ladder.rows, most);
        let wishes: Vec<Wish> = ladder
            .rows
            .iter()
            .zip(ranks)
            .map(|(row, rank)| Wish {
                at: ladder.y(row.travel_m),
                rank,
            })
            .collect();
        ladder.text_y = place(&wishes, row, ladder.area.top(), ladder.area.bottom());
        ladder
    }

    /// Height on the screen of a travel.
    #[allow(clippy::cast_possible_truncation)] // a share of the screen
    fn y(&self, travel_m: f64) -> f32 {
        let share = (travel_m / self.full_m.max(1e-3)).clamp(0.0, 1.0);
        self.area.bottom() - self.area.height() * share as f32
    }

    /// The travel at a height on the screen; a lock's where one is near.
    fn travel_m(&self, y: f32) -> f64 {
        let near = self
            .rows
            .iter()
            .filter(|row| matches!(row.thing, Thing::Lock(_)))
            .map(|row| ((self.y(row.travel_m) - y).abs(), row.travel_m))
            .filter(|(away, _)| *away < SNAP)
            .min_by(|a, b| a.0.total_cmp(&b.0));
        if let Some((_, travel_m)) = near {
            return travel_m;
        }
        let share = (self.area.bottom() - y) / self.area.height().max(1.0);
        f64::from(share.clamp(0.0, 1.0)) * self.full_m
    }

    fn ink(&self) -> Color32 {
        egui_colour(if self.is_stale {
            self.screen.stale
        } else {
            self.screen.ink
        })
    }

    /// The column itself: pressed or dragged, it sends the carriage there.
    fn strip(&self, ui: &Ui, desk: &Desk, out: &mut Vec<Action>) {
        let strip = Rect::from_x_y_ranges(
            self.area.left()..=self.axis_x + self.row * 0.5,
            self.area.top() - self.row * 0.5..=self.area.bottom() + self.row * 0.5,
        );
        let response = ui
            .interact(strip, ui.id().with("strip"), Sense::CLICK | Sense::DRAG)
            .on_hover_cursor(CursorIcon::ResizeVertical);
        response
            .widget_info(|| WidgetInfo::slider(true, desk.rise.travel_m, "carriage on the ladder"));
        if (response.dragged() || response.clicked())
            && let Some(at) = response.interact_pointer_pos()
        {
            // A pointer that is held still asks for nothing more.
            let travel_m = self.travel_m(at.y);
            if (travel_m - desk.rise.travel_m).abs() > 1e-6 {
                out.push(Action::Travel(travel_m));
            }
        }
        let rule = Stroke::new(1.0, egui_colour(self.screen.rule));
        let painter = ui.painter();
        let rail = Rect::from_x_y_ranges(
            self.axis_x - 2.0..=self.axis_x + 2.0,
            self.area.top()..=self.area.bottom(),
        );
        painter.rect(
            rail,
            0.0,
            egui_colour(self.screen.button),
            rule,
            egui::StrokeKind::Middle,
        );
    }

    fn locks(&self, ui: &Ui, desk: &Desk, out: &mut Vec<Action>) {
        let heights: Vec<f32> = self.rows.iter().map(|row| self.y(row.travel_m)).collect();
        let closest = heights
            .windows(2)
            .map(|pair| (pair[0] - pair[1]).abs())
            .fold(f32::INFINITY, f32::min);
        let radius = (self.row * 0.36).min(closest * 0.6).max(2.5);
        let text = ui.painter().with_clip_rect(ui.clip_rect());
        for ((row, y), text_y) in self.rows.iter().zip(&heights).zip(&self.text_y) {
            match &row.thing {
                Thing::Lock(lock) => {
                    let rect = self.lock_rect(*y, *text_y, radius);
                    // Not in the order of the Tab key: sixty stops would hide everything else, and
                    // every lock has its keys.
                    let id = ui.id().with(("lock", lock.number));
                    let response = ui.interact(rect, id, Sense::CLICK);
                    response.widget_info(|| {
                        WidgetInfo::selected(
                            WidgetType::SelectableLabel,
                            true,
                            lock.is_here,
                            lock.words(),
                        )
                    });
                    if response.clicked() {
                        out.push(Action::ToLock(lock.number));
                    }
                    if response.hovered() {
                        text.rect_filled(rect, 2.0, egui_colour(self.screen.button_over));
                    }
                    self.lock(&text, lock, *y, *text_y, radius);
                    if let Some(why) = because(desk, lock) {
                        response.on_hover_text(why);
                    }
                }
                Thing::Mark(words, short) => self.mark(&text, [words, short], *y, *text_y),
            }
        }
    }

    /// Where a lock is pressed: its text, or its shape where it has none.
    fn lock_rect(&self, y: f32, text_y: Option<f32>, radius: f32) -> Rect {
        match text_y {
            Some(text_y) => Rect::from_x_y_ranges(
                self.text_x..=self.area.right(),
                text_y - self.row * 0.5..=text_y + self.row * 0.5,
            ),
            None => Rect::from_center_size(
                pos2(self.axis_x + self.row * 0.62, y),
                vec2(self.row * 0.9, radius * 2.0),
            ),
        }
    }

    fn lock(&self, painter: &Painter, lock: &Lock, y: f32, text_y: Option<f32>, radius: f32) {
        let state = lock.shown;
        let ink = self.ink();
        let shape = pos2(self.axis_x + self.row * 0.62, y);
        painter.line_segment([pos2(self.axis_x, y), shape], Stroke::new(1.0, ink));
        if let Some(text_y) = text_y {
            let from = shape + vec2(radius, 0.0);
            self.leader(painter, from, text_y);
            self.lock_text(painter, lock, text_y);
        }
        let fill = state.fill(self.screen, self.is_stale);
        signs::paint(painter, shape, radius, state.sign, fill, ink);
    }

    fn mark(&self, painter: &Painter, words: [&str; 2], y: f32, text_y: Option<f32>) {
        let ink = self.ink();
        let line = Stroke::new(2.0, ink);
        let from = pos2(self.axis_x + self.row * 0.9, y);
        painter.line_segment([pos2(self.axis_x - self.row * 0.5, y), from], line);
        if let Some(text_y) = text_y {
            self.leader(painter, from, text_y);
            let at = pos2(self.text_x + self.font.size * 0.5, text_y);
            let [words, short] =
                words.map(|words| painter.layout_no_wrap(words.into(), self.font.clone(), ink));
            let fits = at.x + words.size().x <= self.area.right();
            let words = if fits { words } else { short };
            painter.galley(at - vec2(0.0, words.size().y * 0.5), words, ink);
        }
    }

    /// From a place on the column to its text.
    fn leader(&self, painter: &Painter, from: Pos2, text_y: f32) {
        let to = pos2(self.text_x + 1.0, text_y);
        let stroke = Stroke::new(1.0, egui_colour(self.screen.rule));
        painter.line_segment([from, to], stroke);
    }
}

/// Why a lock is not clear, where the verdict says it of the door as shown.
fn because(desk: &Desk, lock: &Lock) -> Option<String> {
    let verdict = desk.verdict.as_ref()?;
    if door_state(desk, verdict) != verdict.study.headline_door {
        return None;
    }
    let found = verdict.study.locks.iter().find(|l| l.lock == lock.number)?;
    let (moving, fixed) = found.because.as_ref()?;
    let (moving, fixed) = (crate::report::called(moving), crate::report::called(fixed));
    Some(format!("{moving} and {fixed}"))
}

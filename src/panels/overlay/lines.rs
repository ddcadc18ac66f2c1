//! Which distances are written into the picture, and where on it are they?

use egui::{Pos2, Rect, Vec2, pos2, vec2};
use glam::DVec3;

use super::labels::Labels;
use crate::clearance::probe::{HerePair, PairState};
use crate::panels::Desk;
use crate::panels::limits::{FLOOR, distinct, room_words};
use crate::panels::settings::Settings;
use crate::report::Sayings;

/// A distance in the picture, in points of the screen.
#[derive(Debug, Clone, PartialEq)]
pub struct DimensionLine {
    /// Where the nearest point of the moving solid appears.
    pub from: Pos2,
    /// Where the nearest point of the fixed solid appears.
    pub to: Pos2,
    /// The length, worst case, rounded down, and what is asked where it is short.
    pub label: String,
    /// Where the label stands; inside the picture, and over no other label.
    pub label_rect: Rect,
    /// The state of the pair.
    pub state: PairState,
    /// Name of the moving solid.
    pub moving: String,
    /// Name of the fixed solid.
    pub fixed: String,
}

/// With nothing short so many of the tightest are shown.
const FEWEST: usize = 3;
/// More lines than this say less.
const MOST: usize = 7;

/// Size of the text at the lines, points: grows with the picture and with the text's scale.
#[must_use]
pub fn text_size(rect: Rect, settings: &Settings) -> f32 {
    // A narrow view between panels has room for small letters only.
    let most = (rect.width() * 0.023).clamp(11.0, 26.0);
    (rect.height() * 0.026).clamp(11.0, most) * crate::panels::style::scale(settings)
}

/// A view narrower than this has room for the tightest pair alone, points.
const NARROW: f32 = 440.0;

/// The dimension lines in the picture that fills `rect`: every kind of pair that is short, else
/// the tightest three that the rise can run into; and the one that is kept lit.
#[must_use]
pub fn lines(desk: &Desk, rect: Rect) -> Vec<DimensionLine> {
    let (Some(verdict), Some(here)) = (&desk.verdict, &desk.here) else {
        return Vec::new();
    };
    let show = Sayings::of(&verdict.bay, &verdict.study).show();
    let size = text_size(rect, &desk.settings);
    let fewest = if rect.width() < NARROW { 1 } else { FEWEST };
    let drawn: Vec<(&HerePair, Pos2, Pos2)> = chosen(desk, &here.pairs, fewest)
        .into_iter()
        .filter_map(|pair| {
            let (a, b) = pair.points_m?;
            let (from, to) = (on_screen(desk, rect, a)?, on_screen(desk, rect, b)?);
            let seen = Rect::from_two_pos(from, to).expand(0.5).intersects(rect);
            seen.then_some((pair, from, to))
        })
        .collect();
    let segments: Vec<[Pos2; 2]> = drawn.iter().map(|(_, from, to)| [*from, *to]).collect();
    let mut labels = Labels::new(rect.shrink(4.0), segments);
    drawn
        .into_iter()
        .filter_map(|(pair, from, to)| {
            let label = room_words(pair, show);
            let label_rect = labels.place(from, to, label_size(&label, size))?;
            Some(DimensionLine {
                from,
                to,
                label,
                label_rect,
                state: pair.state,
                moving: pair.moving.clone(),
                fixed: pair.fixed.clone(),
            })
        })
        .collect()
}

/// The pairs that get a line, the lit one first.
fn chosen<'a>(desk: &Desk, pairs: &'a [HerePair], fewest: usize) -> Vec<&'a HerePair> {
    let picked = desk.picked.as_ref().and_then(|(moving, fixed)| {
        pairs
            .iter()
            .find(|pair| pair.moving == *moving && pair.fixed == *fixed)
    });
    let told: Vec<&HerePair> = distinct(pairs)
        .into_iter()
        .filter(|pair| pair.points_m.is_some() && tells_of_the_rise(pair))
        .collect();
    let short = told.iter().filter(|pair| is_short(pair)).count();
    let mut out: Vec<&HerePair> = picked.into_iter().collect();
    for pair in told.into_iter().take(short.clamp(fewest, MOST)) {
        if !out.iter().any(|known| std::ptr::eq(*known, pair)) {
            out.push(pair);
        }
    }
    out
}

/// Its margin is short, or it touches.
const fn is_short(pair: &HerePair) -> bool {
    matches!(pair.state, PairState::Tight | PairState::Strikes)
}

/// Whether a pair says anything of the rise: what only falls behind, and what may lie as near as it
/// likes, would but cover the vehicle with figures.
fn tells_of_the_rise(pair: &HerePair) -> bool {
    is_short(pair) || (pair.margin_m > 0.0 && pair.fixed != FLOOR)
}

/// Where a point of the bay appears in the picture that fills `rect`.
#[allow(clippy::cast_possible_truncation)] // onto a screen
pub(super) fn on_screen(desk: &Desk, rect: Rect, point: DVec3) -> Option<Pos2> {
    let aspect = f64::from(rect.width()) / f64::from(rect.height().max(1.0));
    let at = desk.camera.project(point, aspect)?;
    let half = rect.size() * 0.5;
    Some(rect.center() + vec2(at.x as f32 * half.x, -(at.y as f32) * half.y))
}

/// Room that a label of this many letters takes, with its plate. A letter of the proportional font
/// is narrower than this on average.
fn label_size(label: &str, size: f32) -> Vec2 {
    #[allow(clippy::cast_precision_loss)] // a few dozen letters
    let letters = label.chars().count() as f32;
    vec2(letters * size * 0.56 + size * 0.8, size * 1.55)
}

/// Where a line leaves its middle for its label.
pub(super) fn middle(line: &DimensionLine) -> Pos2 {
    pos2(
        (line.from.x + line.to.x) * 0.5,
        (line.from.y + line.to.y) * 0.5,
    )
}

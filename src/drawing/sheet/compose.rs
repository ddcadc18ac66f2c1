//! How does a view lie on a page, to the largest scale at which everything about it can be read?
//!
//! Running dimensions stand in rails at the left and below, what is said of things in a column at
//! the right, letters beside their points: so no text can lie on another, whatever is drawn.

use glam::DVec2;

use super::font::width_em;
use super::frame::{self, Frame, LEADING};
use super::labels::{bottom_rail, callouts, left_rail};
use super::letters::marks;
use super::lines::wrapped;
use super::paper::{scales, stated};
use super::{Paper, Sheet, Tick, View};
use crate::bay::UnitSystem;

/// Type of labels, millimetres: the largest of these that costs the drawing no scale.
const LABELS: [f64; 4] = [2.2, 2.5, 2.83, 3.1];
/// Room between a drawing and its labels, in which their leaders turn.
pub(super) const TURN: f64 = 8.0;
/// Room that a label keeps from the next.
pub(super) const APART: f64 = 0.9;
/// The width that a callout is given where room is short; it takes up to twice that.
pub(super) const CALLOUT: f64 = 44.0;

/// How much room the labels of a view take.
struct Room {
    left: f64,
    bottom: f64,
    right: f64,
}

/// The type of labels.
#[derive(Debug, Clone, Copy)]
pub(super) struct Label {
    /// Its em.
    pub(super) size: f64,
    /// From line to line.
    pub(super) line: f64,
}

impl Label {
    const fn of(size: f64) -> Self {
        Self {
            size,
            line: size * LEADING,
        }
    }
}

/// The page of a view, to this scale or else to the largest that fits; none where the paper is too
/// small for what is written about it.
#[must_use]
pub fn compose(
    view: &View,
    frame: &Frame,
    paper: Paper,
    units: UnitSystem,
    scale: Option<f64>,
) -> Option<Sheet> {
    let least = Label::of(LABELS[0]);
    let room = room(view, least);
    let wanted = scale.map_or_else(|| scales(units), |scale| vec![scale]);
    let found = [true, false].into_iter().filter_map(|lying| {
        let page_mm = paper.page_mm(lying);
        // How much room the frame leaves hardly hangs on the scale it states.
        let (low, high) = frame::put(&mut blank(frame, page_mm, 1.0), frame, "");
        let (from, to) = view.bounds_m();
        let fits = |scale: f64| {
            let size = (to - from) * (1000.0 / scale);
            let left = high - low - size - DVec2::new(room.left + room.right, room.bottom);
            left.cmpge(DVec2::ZERO).all()
        };
        let scales = wanted.iter().copied().filter(|scale| fits(*scale));
        let mut pages =
            scales.filter_map(|scale| try_at(view, frame, page_mm, (scale, units), least, &room));
        pages.next()
    });
    // A lying page where both would do.
    let found = found.min_by(|a, b| a.scale.total_cmp(&b.scale))?;
    let larger = LABELS[1..].iter().rev().find_map(|&size| {
        let label = Label::of(size);
        let room = self::room(view, label);
        try_at(
            view,
            frame,
            found.page_mm,
            (found.scale, units),
            label,
            &room,
        )
    });
    Some(larger.unwrap_or(found))
}

/// Whose the lower corners of a page are: the left one the rail's at the left, or else that of the
/// dimensions below; the right one the callouts', or else theirs. So none lies on another.
const CORNERS: [(bool, bool); 4] = [(false, false), (false, true), (true, false), (true, true)];

fn blank(frame: &Frame, page_mm: DVec2, scale: f64) -> Sheet {
    Sheet {
        name: frame.name.clone(),
        tag: frame.tag,
        page_mm,
        scale,
        origin_mm: DVec2::ZERO,
        items: Vec::new(),
    }
}

fn try_at(
    view: &View,
    frame: &Frame,
    page_mm: DVec2,
    scale: (f64, UnitSystem),
    label: Label,
    room: &Room,
) -> Option<Sheet> {
    let mut ways = CORNERS.into_iter();
    ways.find_map(|corners| try_with(view, frame, page_mm, scale, (label, room), corners))
}

fn try_with(
    view: &View,
    frame: &Frame,
    page_mm: DVec2,
    (scale, units): (f64, UnitSystem),
    (label, room): (Label, &Room),
    (is_rails, is_callouts): (bool, bool),
) -> Option<Sheet> {
    let mut sheet = blank(frame, page_mm, scale);
    let stated = format!("{}{}", frame::SCALE, stated(scale, units));
    let (low, high) = frame::put(&mut sheet, frame, &stated);
    let per_metre = 1000.0 / scale;
    let (from, to) = view.bounds_m();
    let size = (to - from) * per_metre;
    let slack = high - low - size - DVec2::new(room.left + room.right, room.bottom);
    if slack.x < 0.0 || slack.y < 0.0 {
        return None;
    }
    let corner = low + DVec2::new(room.left, room.bottom) + slack * 0.5;
    sheet.origin_mm = corner - from * per_metre;
    let origin = sheet.origin_mm;
    let place = move |point: DVec2| origin + point * per_metre;
    let inner = (corner, corner + size);
    let above = inner.0.y - 1.0;
    let lowest = |is_theirs: bool| if is_theirs { low.y } else { above };
    // Beyond this the leaders of the rail and of the callouts turn.
    let across = (
        if is_rails { inner.0.x - 1.0 } else { low.x },
        if is_callouts { inner.1.x + 1.0 } else { high.x },
    );
    let has_below = !view.bottom.is_empty();
    let left = lowest(is_rails || !has_below);
    // Whether they find room is known before the drawing, which is far more, is put there.
    let mut labels = blank(frame, page_mm, scale);
    left_rail(&mut labels, view, label, &place, inner, (left, high.y))?;
    bottom_rail(&mut labels, view, label, &place, inner, across)?;
    let right = lowest(is_callouts || !has_below);
    callouts(
        &mut labels,
        view,
        label,
        &place,
        inner,
        high.x,
        (right, high.y),
    )?;
    for item in &view.items {
        sheet.push(item.layer, item.shape.mapped(&place, per_metre));
    }
    sheet.items.append(&mut labels.items);
    marks(&mut sheet, view, &place, (low, high))?;
    Some(sheet)
}

fn room(view: &View, label: Label) -> Room {
    let widest = |ticks: &[Tick]| {
        let both = ticks.iter().flat_map(|tick| [&tick.what, &tick.reads]);
        both.map(|text| width_em(text) * label.size)
            .fold(0.0, f64::max)
    };
    let rail = |ticks: &[Tick]| {
        if ticks.is_empty() {
            0.0
        } else {
            widest(ticks) + TURN
        }
    };
    let callouts = view.callouts.iter();
    let lines = callouts.flat_map(|callout| wrapped(&callout.text(), label.size, CALLOUT));
    let right = lines
        .map(|line| width_em(&line) * label.size)
        .fold(0.0, f64::max);
    Room {
        left: rail(&view.left),
        bottom: rail(&view.bottom),
        right: if right > 0.0 { right + TURN + 0.5 } else { 0.0 },
    }
}

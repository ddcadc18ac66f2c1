//! A tape in full size for the column, cut out in strips: where are its lines?
//!
//! Each strip is put up by its own lower edge, measured from the top of the base plate: strips set
//! one on another would add up what a printer is off.

mod strip;

use glam::DVec2;

use self::strip::Strip;
use super::tape_marks::{Mark, marks};
use super::{Card, is_safe, letter, vehicle};
use crate::bay::UnitSystem;
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{FINE, INK};
use crate::drawing::sheet::{Dash, Frame, Layer, Pen, Shape, Sheet, Text, put_frame};
use crate::report::on_one_line;
use crate::units::{Length, Rounding, both};

/// Least width of a strip.
const STRIP: f64 = 57.0;
/// From strip to strip.
const BETWEEN: f64 = 3.0;
/// Room for the bar that the scale is checked by.
const CHECK: f64 = 13.0;
/// Where the numbers of the scale begin and end, from the reading edge.
const NUMBERS: [f64; 2] = [9.0, 21.0];
/// Where the labels begin.
const LABELS: f64 = 25.0;
const NUMBER: f64 = 2.2;
const LABEL: f64 = 2.4;
const SMALL: f64 = 2.0;
/// Room between two labels.
const APART: f64 = 0.7;
/// Thinner than this, a line is lost in cutting.
const CUT: Pen = Pen::broken(0.2, FINE, Dash::Dashed);

/// A strip's height and step, metres.
struct Ruler {
    units: UnitSystem,
    /// What has a number: an inch or ten millimetres.
    step_m: f64,
    start_m: f64,
    end_m: f64,
    strip_m: f64,
}

/// The pages of the tape; none where the paper is too small. Where marks lie too close for labels
/// in both systems, the file's alone is shown.
pub(super) fn pages(card: &Card<'_>, frame: &Frame) -> Option<Vec<Sheet>> {
    let mut marks = marks(card);
    cut(card, frame, &marks).or_else(|| {
        marks.iter_mut().for_each(|mark| mark.reads.truncate(1));
        cut(card, frame, &marks)
    })
}

/// Cut where the labels leave room: in as few strips as can be.
fn cut(card: &Card<'_>, frame: &Frame, marks: &[Mark]) -> Option<Vec<Sheet>> {
    (0..=3).find_map(|more| laid(card, frame.clone(), marks, f64::from(more)))
}

/// In as few strips as the paper allows and some more.
fn laid(card: &Card<'_>, frame: Frame, marks: &[Mark], more: f64) -> Option<Vec<Sheet>> {
    let first = card.entries.first()?;
    let (units, lift) = (first.bay.units, &first.bay.lift);
    let frame = told(card, frame, units);
    let blank = |number: usize| {
        let mut sheet = Sheet {
            name: frame.name.clone(),
            tag: frame.tag,
            page_mm: card.paper.page_mm(false),
            scale: 1.0,
            origin_mm: DVec2::ZERO,
            items: Vec::new(),
        };
        let mut frame = frame.clone();
        frame.page[0] += number;
        let area = put_frame(&mut sheet, &frame, "Scale 1:1, full size");
        (sheet, area)
    };
    let (_, (low, high)) = blank(0);
    let step_m = match units {
        UnitSystem::Imperial => Length::inches(1.0).m(),
        UnitSystem::Metric => 0.01,
    };
    let edge = lift.carriage.marked_edge.m();
    let counted = marks.iter().filter(|mark| !mark.kind.is_lock());
    let top_m = counted.map(|mark| mark.at_m).fold(edge, f64::max);
    let top_m = top_m.min(edge + lift.travel.m());
    let strip_m = steps((high.y - low.y - 1.0) / 1000.0, step_m).floor() * step_m;
    if strip_m < 5.0 * step_m {
        return None;
    }
    // Nothing above the highest line that somebody may climb to, and little under the lowest: a strip
    // without a line would be put up for nothing.
    let lowest_m = marks.first().map_or(edge, |mark| mark.at_m);
    let first_step = steps(edge, step_m)
        .floor()
        .max(steps(lowest_m, step_m).floor() - 2.0);
    let count = steps(top_m, step_m).floor() + 1.0 - first_step;
    // Strips of much the same length: none is too short for its labels.
    let strips = (count * step_m / strip_m - 1e-9).ceil() + more;
    let ruler = Ruler {
        units,
        step_m,
        start_m: first_step * step_m,
        end_m: (first_step + count) * step_m,
        strip_m: (count / strips).ceil() * step_m,
    };
    let width = high.x - low.x - CHECK;
    let most = ((width + BETWEEN) / (STRIP + BETWEEN)).floor();
    if most < 1.0 {
        return None;
    }
    let strip_width = (width + BETWEEN) / most - BETWEEN;
    let made_by = made_by(card);
    let mut sheets: Vec<Sheet> = Vec::new();
    let (mut sheet, mut column) = (blank(0).0, 0.0);
    check_bar(&mut sheet, units, (low, high));
    let mut from = ruler.start_m;
    let mut number = 0;
    while from < ruler.end_m - ruler.step_m * 0.5 {
        if column + 0.5 > most {
            sheets.push(sheet);
            (sheet, column) = (blank(sheets.len()).0, 0.0);
            check_bar(&mut sheet, units, (low, high));
        }
        number += 1;
        let to = (from + ruler.strip_m).min(ruler.end_m);
        let left = low.x + column * (strip_width + BETWEEN);
        Strip {
            ruler: &ruler,
            number,
            from,
            to,
            left,
            bottom: low.y + 0.5,
            width: strip_width,
        }
        .put(&mut sheet, marks, &made_by)?;
        column += 1.0;
        from = to;
    }
    sheets.push(sheet);
    Some(sheets)
}

/// How many steps a length has, freed from the noise of its arithmetic.
fn steps(metres: f64, step_m: f64) -> f64 {
    let count = metres / step_m;
    let near = count.round();
    if (count - near).abs() < 1e-6 {
        near
    } else {
        count
    }
}

/// The frame with what must be known before a tape is cut out.
fn told(card: &Card<'_>, mut frame: Frame, units: UnitSystem) -> Frame {
    let grid = match units {
        UnitSystem::Imperial => "1/16 in",
        UnitSystem::Metric => "1 mm",
    };
    frame.warnings.push(format!(
        "Measure both check bars before cutting: where one is off by more than {grid}, throw this \
         page away and mark the column with a steel tape."
    ));
    for (index, entry) in card.entries.iter().enumerate() {
        if !is_safe(entry) {
            frame.warnings.push(format!(
                "{} ({}): NO LOCK IS SAFE, it has no mark on this tape. DO NOT RAISE.",
                letter(index),
                vehicle::name(entry)
            ));
        }
    }
    if card.entries.len() > 1 {
        let named = card.entries.iter().enumerate();
        let names: Vec<String> = named
            .map(|(index, entry)| format!("{}: {}", letter(index), vehicle::name(entry)))
            .collect();
        frame.notes.push(format!("{}.", names.join("; ")));
    }
    frame.notes.push(
        "All lines are for the LOWER carriage's marked edge. STOP is for the way up; RELEASE is only \
         for the climb off the highest safe lock to come down again. A lock with a cross is NOT TO \
         BE USED by the vehicles that it names, or by any."
            .into(),
    );
    frame.notes.push(
        "One set for each column. Put each strip up by its own lower edge, measured with a steel \
         tape from the top of the base plate, never by the strip below; its left edge runs along \
         the way of the carriage's marked edge. Then measure every STOP, RELEASE and NEVER ABOVE \
         line with the steel tape: that governs."
            .into(),
    );
    frame
}

/// What each strip carries, so that an outdated one is seen, and what must not be overlooked.
fn made_by(card: &Card<'_>) -> (String, String) {
    let lift = card.entries.first();
    let lift = lift.map_or_else(String::new, |one| on_one_line(&one.bay.lift.name));
    let by = format!(
        "{lift} \u{b7} Bayrise {} \u{b7} {}",
        env!("CARGO_PKG_VERSION"),
        card.inputs(card.entries)
    );
    let unsafe_ones: Vec<String> = card
        .entries
        .iter()
        .enumerate()
        .filter(|(_, entry)| !is_safe(entry))
        .map(|(index, _)| letter(index).to_string())
        .collect();
    let warns = if unsafe_ones.is_empty() {
        String::new()
    } else {
        format!("DO NOT RAISE {}: NO SAFE LOCK", unsafe_ones.join(", "))
    };
    (by, warns)
}

fn line(sheet: &mut Sheet, layer: Layer, ends: [DVec2; 2], pen: Pen) {
    sheet.push(layer, Shape::Line { ends, pen });
}

fn text(sheet: &mut Sheet, at: DVec2, upward: bool, says: &str, size: f64, colour: Colour) {
    sheet.push(
        Layer::Labels,
        Shape::Text(Text {
            at,
            size,
            upward,
            colour,
            says: says.into(),
        }),
    );
}

/// A bar of a known length up the page: a printer may be right across it and wrong along it.
fn check_bar(sheet: &mut Sheet, units: UnitSystem, (low, high): (DVec2, DVec2)) {
    let room = (high.y - low.y - 1.0) / 1000.0;
    let unit = match units {
        UnitSystem::Imperial => Length::inches(1.0).m(),
        UnitSystem::Metric => 0.01,
    };
    let whole = match units {
        UnitSystem::Imperial => 8.0,
        UnitSystem::Metric => 20.0,
    };
    let count = (room / unit).floor().min(whole);
    let long = count * unit;
    let x = high.x - 2.5;
    let bottom = low.y + 0.5;
    let pen = Pen::solid(0.3, INK);
    let top = bottom + long * 1000.0;
    line(
        sheet,
        Layer::Frame,
        [DVec2::new(x, bottom), DVec2::new(x, top)],
        pen,
    );
    for y in [bottom, top] {
        line(
            sheet,
            Layer::Frame,
            [DVec2::new(x - 2.5, y), DVec2::new(x + 2.0, y)],
            pen,
        );
    }
    let says = format!(
        "check bar: {} from end to end",
        both(Length::metres(long), units, Rounding::Nearest)
    );
    text(
        sheet,
        DVec2::new(x - 1.0, bottom + 4.0),
        true,
        &says,
        SMALL * 1.2,
        INK,
    );
}

//! A tape in full size for the column, cut out in strips: where are its lines?
//!
//! Each strip is put up by its own lower edge, measured from the top of the base plate: strips set
//! one on another would add up what a printer is off.

use glam::DVec2;

use super::tape_marks::{Kind, Mark, marks};
use super::{Card, is_safe, letter, vehicle};
use crate::bay::UnitSystem;
use crate::clearance::marks::graduation_m;
use crate::drawing::kept::wrapped;
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{FINE, INK, WARN};
use crate::drawing::sheet::font::width_em;
use crate::drawing::sheet::{
    Dash, Frame, LEADING, Layer, Pen, Shape, Sheet, Text, put_frame, spread,
};
use crate::report::on_one_line;
use crate::units::{Length, Rounding, both, length};

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
    // Nothing above the highest line that somebody may climb to.
    let first_step = steps(edge, step_m).floor();
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

struct Strip<'a> {
    ruler: &'a Ruler,
    number: usize,
    from: f64,
    to: f64,
    left: f64,
    bottom: f64,
    width: f64,
}

impl Strip<'_> {
    /// Where a height lies on the page.
    fn y(&self, at_m: f64) -> f64 {
        self.bottom + (at_m - self.from) * 1000.0
    }

    fn put(&self, sheet: &mut Sheet, marks: &[Mark], by: &(String, String)) -> Option<()> {
        self.outline(sheet);
        self.scale(sheet);
        let right = self.made_by(sheet, by)?;
        self.marks(sheet, marks, right)
    }

    fn outline(&self, sheet: &mut Sheet) {
        let (left, right) = (self.left, self.left + self.width);
        let (low, high) = (self.bottom, self.y(self.to));
        sheet.push(
            Layer::Frame,
            Shape::Polygon {
                points: vec![
                    DVec2::new(left, low),
                    DVec2::new(right, low),
                    DVec2::new(right, high),
                    DVec2::new(left, high),
                ],
                pen: Some(CUT),
                fill: None,
            },
        );
    }

    fn scale(&self, sheet: &mut Sheet) {
        let grid = graduation_m(self.ruler.units);
        let count = steps(self.to - self.from, grid);
        let (parts, tall): (u32, fn(u32) -> f64) = match self.ruler.units {
            UnitSystem::Imperial => (16, |part| match part {
                0 => 8.0,
                8 => 5.5,
                4 | 12 => 4.2,
                2 | 6 | 10 | 14 => 3.0,
                _ => 2.0,
            }),
            UnitSystem::Metric => (10, |part| match part {
                0 => 8.0,
                5 => 4.5,
                _ => 2.5,
            }),
        };
        let mut index = 0_u32;
        while f64::from(index) < count + 0.5 {
            let part = index % parts;
            let at = self.from + f64::from(index) * grid;
            let y = self.y(at);
            let width = if part == 0 { 0.22 } else { 0.12 };
            let ends = [
                DVec2::new(self.left, y),
                DVec2::new(self.left + tall(part), y),
            ];
            line(sheet, Layer::Dimensions, ends, Pen::solid(width, INK));
            // The numbers of the two edges stand in their labels.
            if part == 0 && index > 0 && f64::from(index) < count - 0.5 {
                let says = length(Length::metres(at), self.ruler.units, Rounding::Nearest);
                let place = DVec2::new(self.left + NUMBERS[0], y - NUMBER * 0.28);
                text(sheet, place, false, &says, NUMBER, INK);
            }
            index += 1;
        }
    }

    /// Upward along the right edge; where that leaves room to comes back.
    fn made_by(&self, sheet: &mut Sheet, (by, warns): &(String, String)) -> Option<f64> {
        let room = (self.to - self.from) * 1000.0 - 4.0;
        let mut right = self.left + self.width - 1.0;
        let columns = [
            (format!("strip {} \u{b7} {by}", self.number), FINE),
            (warns.clone(), WARN),
        ];
        for (says, colour) in columns {
            // The last strip may be short: what it has room for is enough, the rest is on the others.
            let size = SMALL;
            for (index, line) in wrapped(&says, size, room).into_iter().enumerate() {
                if index > 2 && self.number > 1 {
                    break;
                }
                right -= size * LEADING;
                let at = DVec2::new(right + size * 0.9, self.bottom + 2.0);
                text(sheet, at, true, &line, size, colour);
            }
        }
        (right > self.left + LABELS + 10.0).then_some(right)
    }

    fn marks(&self, sheet: &mut Sheet, marks: &[Mark], right: f64) -> Option<()> {
        let is_last = self.to >= self.ruler.end_m - 1e-9;
        let here = |at: f64| {
            at >= self.from - 1e-9 && (at < self.to - 1e-9 || (is_last && at <= self.to + 1e-9))
        };
        let show = |at: f64| both(Length::metres(at), self.ruler.units, Rounding::Nearest);
        let width = right - self.left - LABELS - 1.0;
        let mut labels: Vec<(f64, Vec<String>, Option<Kind>)> = Vec::new();
        let edge = |at: f64, what: &str| {
            let says = format!("{what} edge: {}", show(at));
            (at, wrapped(&says, LABEL, width), None)
        };
        labels.push(edge(self.from, "lower"));
        for mark in marks.iter().filter(|mark| here(mark.at_m)) {
            let mut lines = wrapped(&mark.says, LABEL, width);
            lines.extend(reads(&mark.reads, width));
            labels.push((mark.at_m, lines, Some(mark.kind)));
        }
        labels.push(edge(self.to, "upper"));
        #[allow(clippy::cast_precision_loss)] // some lines
        let height = |lines: &[String]| lines.len() as f64 * LABEL * LEADING + APART;
        let wanted: Vec<(f64, f64)> = labels
            .iter()
            .map(|(at, lines, _)| (self.y(*at), height(lines)))
            .collect();
        let places = spread(&wanted, self.bottom + 0.8, self.y(self.to) - 0.8)?;
        for ((at, lines, kind), middle) in labels.iter().zip(places) {
            let colour = kind.map_or(INK, Kind::colour);
            let mut top = middle + (height(lines) - APART) * 0.5;
            if let Some(kind) = kind {
                self.mark(sheet, *at, *kind, top - LABEL * LEADING * 0.5);
            }
            for says in lines {
                top -= LABEL * LEADING;
                let place = DVec2::new(self.left + LABELS, top + LABEL * 0.3);
                debug_assert!(width_em(says) * LABEL <= width + 1e-6);
                text(sheet, place, false, says, LABEL, colour);
            }
        }
        Some(())
    }

    /// The line itself over the scale, and on from behind the numbers to its label.
    fn mark(&self, sheet: &mut Sheet, at_m: f64, kind: Kind, label_y: f64) {
        let (y, colour) = (self.y(at_m), kind.colour());
        let at = |x: f64, y: f64| DVec2::new(self.left + x, y);
        let (width, layer) = if kind.is_lock() {
            (0.35, Layer::Lift)
        } else {
            (0.5, Layer::Points)
        };
        let pen = match kind {
            Kind::Never | Kind::NotToUse => Pen::broken(width, colour, Dash::Dashed),
            Kind::Lock | Kind::Stop | Kind::Release => Pen::solid(width, colour),
        };
        line(sheet, layer, [at(0.0, y), at(NUMBERS[0] - 0.5, y)], pen);
        let fine = Pen::solid(0.2, colour);
        line(
            sheet,
            Layer::Dimensions,
            [at(NUMBERS[1], y), at(LABELS - 3.0, y)],
            fine,
        );
        self.sign(sheet, y, kind);
        line(
            sheet,
            Layer::Dimensions,
            [at(LABELS - 3.0, y), at(LABELS - 0.6, label_y)],
            fine,
        );
    }

    /// What tells the kinds apart in grey too: a full triangle for a mark to keep to, a hollow one
    /// for the climb off the lock, a cross for a lock that must not be used.
    fn sign(&self, sheet: &mut Sheet, y: f64, kind: Kind) {
        let colour = kind.colour();
        let at = |x: f64, y: f64| DVec2::new(self.left + NUMBERS[1] + x, y);
        let heavy = Pen::solid(0.45, colour);
        match kind {
            Kind::Lock => {}
            Kind::NotToUse => {
                for ends in [
                    [at(-1.3, y - 1.3), at(1.3, y + 1.3)],
                    [at(-1.3, y + 1.3), at(1.3, y - 1.3)],
                ] {
                    line(sheet, Layer::Points, ends, heavy);
                }
            }
            Kind::Stop | Kind::Never | Kind::Release => {
                let hollow = kind == Kind::Release;
                sheet.push(
                    Layer::Shade,
                    Shape::Polygon {
                        points: vec![at(-1.2, y), at(1.2, y + 1.0), at(1.2, y - 1.0)],
                        pen: hollow.then_some(Pen::solid(0.25, colour)),
                        fill: (!hollow).then_some(colour),
                    },
                );
            }
        }
    }
}

/// Its height in both systems: on one line where that has room, else on a line each.
fn reads(reads: &[String], width: f64) -> Vec<String> {
    match reads {
        [own, other] => {
            let both = format!("{own} ({other})");
            if width_em(&both) * LABEL <= width {
                vec![both]
            } else {
                vec![own.clone(), format!("({other})")]
            }
        }
        other => other.to_vec(),
    }
}

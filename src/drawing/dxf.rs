//! Pages as DXF: which entities, on which layers, in which millimetres?
//!
//! The plain text form of release 12, which every reader knows. Everything is drawn in its own
//! size: the floor plan's origin is the bay's, so that its coordinates are those of the solids in
//! millimetres. The other pages stand beside it, each moved along `x` by a whole number of
//! millimetres ([`shifts_mm`]). Layers are called after page and thing: `PLAN-HOLES`.

use std::borrow::Cow;
use std::fmt::Write as _;

use glam::DVec2;

use super::sheet::{BAR_SAYS, Dash, Layer, Pen, SCALE, Shape, Sheet, Text};
use crate::letters;

/// Between pages, millimetres of the bay.
const APART_MM: f64 = 1_000.0;

/// Millimetres of the bay in one of the page. A page without a scale takes the first page's.
fn size(pages: &[Sheet], page: &Sheet) -> f64 {
    if page.scale > 1.0 {
        page.scale
    } else {
        pages.first().map_or(1.0, |first| first.scale)
    }
}

/// How far to the right of its own place each page is drawn, millimetres.
#[must_use]
pub fn shifts_mm(pages: &[Sheet]) -> Vec<f64> {
    let mut shifts = Vec::with_capacity(pages.len());
    let mut end = None;
    for page in pages {
        let size = size(pages, page);
        let left = -page.origin_mm.x * size;
        let shift = end.map_or(0.0, |end: f64| (end - left).ceil());
        shifts.push(shift);
        end = Some(left + shift + page.page_mm.x * size + APART_MM);
    }
    shifts
}

/// The pages in one file.
#[must_use]
pub fn dxf(pages: &[Sheet]) -> String {
    let mut out = String::with_capacity(256 * 1024);
    header(&mut out);
    tables(&mut out, pages);
    group(&mut out, 0, "SECTION");
    group(&mut out, 2, "ENTITIES");
    for (page, shift) in pages.iter().zip(shifts_mm(pages)) {
        let size = size(pages, page);
        let mut writer = Writer {
            out: &mut out,
            layer: String::new(),
            size,
            origin: page.origin_mm,
            shift,
        };
        for item in &page.items {
            writer.layer = layer_name(page, item.layer);
            // What only fills is no outline of anything.
            if item.layer != Layer::Shade {
                writer.shape(&item.shape);
            }
        }
    }
    group(&mut out, 0, "ENDSEC");
    group(&mut out, 0, "EOF");
    out
}

fn layer_name(page: &Sheet, layer: Layer) -> String {
    format!("{}-{}", page.tag, layer.name())
}

/// A group: its code and its value, a line each.
fn group(out: &mut String, code: u16, value: &str) {
    // Writing to a string cannot fail.
    let _ = write!(out, "{code}\r\n{value}\r\n");
}

fn real(out: &mut String, code: u16, value: f64) {
    // A millionth of a millimetre; no minus before a nought.
    let text = format!("{:.6}", if value.abs() < 5e-7 { 0.0 } else { value });
    group(out, code, &text);
}

fn whole(out: &mut String, code: u16, value: usize) {
    group(out, code, &value.to_string());
}

fn header(out: &mut String) {
    group(out, 0, "SECTION");
    group(out, 2, "HEADER");
    for (name, code, value) in [
        ("$ACADVER", 1, "AC1009"),
        // Millimetres, metric.
        ("$INSUNITS", 70, "4"),
        ("$MEASUREMENT", 70, "1"),
    ] {
        group(out, 9, name);
        group(out, code, value);
    }
    group(out, 0, "ENDSEC");
}

const CONTINUOUS: &str = "CONTINUOUS";

const fn line_type(dash: Dash) -> &'static str {
    match dash {
        Dash::Solid => CONTINUOUS,
        Dash::Dashed => "DASHED",
        Dash::Centre => "CENTER",
    }
}

fn tables(out: &mut String, pages: &[Sheet]) {
    group(out, 0, "SECTION");
    group(out, 2, "TABLES");
    let size = pages.first().map_or(1.0, |page| page.scale);
    table(out, "LTYPE", 3);
    for dash in [Dash::Solid, Dash::Dashed, Dash::Centre] {
        let pattern = dash.pattern_mm();
        group(out, 0, "LTYPE");
        group(out, 2, line_type(dash));
        whole(out, 70, 0);
        group(out, 3, line_type(dash));
        whole(out, 72, 65);
        whole(out, 73, pattern.len());
        real(out, 40, pattern.iter().sum::<f64>() * size);
        for (index, part) in pattern.iter().enumerate() {
            let sign = if index % 2 == 0 { 1.0 } else { -1.0 };
            real(out, 49, sign * part * size);
        }
    }
    group(out, 0, "ENDTAB");

    let mut layers: Vec<(String, Layer)> = Vec::new();
    for page in pages {
        for layer in Layer::ALL {
            let used = page.items.iter().any(|item| item.layer == layer);
            let name = layer_name(page, layer);
            let known = layers.iter().any(|(other, _)| *other == name);
            if used && !known && layer != Layer::Shade {
                layers.push((name, layer));
            }
        }
    }
    table(out, "LAYER", layers.len());
    for (name, layer) in layers {
        group(out, 0, "LAYER");
        group(out, 2, &name);
        whole(out, 70, 0);
        whole(out, 62, colour_index(layer));
        group(out, 6, CONTINUOUS);
    }
    group(out, 0, "ENDTAB");

    table(out, "STYLE", 1);
    group(out, 0, "STYLE");
    group(out, 2, "STANDARD");
    whole(out, 70, 0);
    real(out, 40, 0.0);
    real(out, 41, 1.0);
    real(out, 50, 0.0);
    whole(out, 71, 0);
    real(out, 42, 100.0);
    group(out, 3, "txt");
    group(out, 4, "");
    group(out, 0, "ENDTAB");
    group(out, 0, "ENDSEC");
}

fn table(out: &mut String, name: &str, count: usize) {
    group(out, 0, "TABLE");
    group(out, 2, name);
    whole(out, 70, count);
}

/// The format's own colours: 1 red, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black or white, 8 grey,
/// 30 orange.
const fn colour_index(layer: Layer) -> usize {
    match layer {
        Layer::Walls | Layer::Frame | Layer::Labels | Layer::Shade => 7,
        Layer::Overhead | Layer::Dimensions => 8,
        Layer::Door => 3,
        Layer::Posts | Layer::Plates | Layer::Lift => 5,
        Layer::Vehicle => 30,
        Layer::SlabLines | Layer::Readings => 6,
        Layer::Holes => 1,
        Layer::Points | Layer::Parking => 4,
    }
}

struct Writer<'a> {
    out: &'a mut String,
    layer: String,
    size: f64,
    origin: DVec2,
    shift: f64,
}

impl Writer<'_> {
    /// From the page into the bay, millimetres.
    fn place(&self, point: DVec2) -> DVec2 {
        (point - self.origin) * self.size + DVec2::new(self.shift, 0.0)
    }

    fn start(&mut self, entity: &str, dash: Dash) {
        group(self.out, 0, entity);
        group(self.out, 8, &self.layer);
        if dash != Dash::Solid {
            group(self.out, 6, line_type(dash));
        }
    }

    fn point(&mut self, first: u16, point: DVec2) {
        let at = self.place(point);
        real(self.out, first, at.x);
        real(self.out, first + 10, at.y);
        real(self.out, first + 20, 0.0);
    }

    fn shape(&mut self, shape: &Shape) {
        match shape {
            Shape::Line { ends: [a, b], pen } => {
                self.start("LINE", pen.dash);
                self.point(10, *a);
                self.point(11, *b);
            }
            Shape::Polygon {
                points,
                pen: Some(Pen { dash, .. }),
                ..
            } => {
                self.start("POLYLINE", *dash);
                whole(self.out, 66, 1);
                for code in [10, 20, 30] {
                    real(self.out, code, 0.0);
                }
                // Closed.
                whole(self.out, 70, 1);
                for point in points {
                    self.start("VERTEX", Dash::Solid);
                    self.point(10, *point);
                }
                self.start("SEQEND", Dash::Solid);
            }
            Shape::Circle {
                middle,
                radius,
                pen,
                ..
            } => {
                self.start("CIRCLE", pen.map_or(Dash::Solid, |pen| pen.dash));
                self.point(10, *middle);
                real(self.out, 40, radius * self.size);
            }
            Shape::Text(text) => self.text(text),
            Shape::Polygon { pen: None, .. } => {}
        }
    }

    /// What a text says where everything is drawn in its own size.
    fn says<'t>(&self, says: &'t str) -> Cow<'t, str> {
        if says == BAR_SAYS {
            let long = 100.0 * self.size;
            format!("{long:.0} mm of the bay: all is drawn in its own size, in millimetres").into()
        } else if says.starts_with(SCALE) {
            format!(
                "In its own size, in millimetres; on paper 1:{:.0}",
                self.size
            )
            .into()
        } else {
            says.into()
        }
    }

    fn text(&mut self, text: &Text) {
        self.start("TEXT", Dash::Solid);
        self.point(10, text.at);
        // Heights of capitals, which are about seven tenths of the em.
        real(self.out, 40, text.size * self.size * 0.7);
        group(self.out, 1, &encoded(&self.says(&text.says)));
        if text.upward {
            real(self.out, 50, 90.0);
        }
    }
}

/// Letters beyond ASCII in the format's own spelling, control characters and what starts one of its
/// codes taken out.
fn encoded(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\\' => out.push('/'),
            // Two of them start a code.
            '%' if out.ends_with('%') => out.push_str(" %"),
            c if letters::acts(c) => out.push(' '),
            // Plain letters where there are any: not every reader knows the codes.
            '\u{b7}' => out.push('|'),
            '\u{2013}' => out.push('-'),
            '\u{d7}' => out.push('x'),
            '\u{2192}' => out.push_str("->"),
            '\u{b0}' => out.push_str("%%d"),
            '\u{b1}' => out.push_str("%%p"),
            c if c.is_ascii() => out.push(c),
            c if u32::from(c) <= 0xffff => {
                let _ = write!(out, "\\U+{:04X}", u32::from(c));
            }
            _ => out.push('?'),
        }
    }
    out
}

//! A page as SVG: how do its bytes read?
//!
//! Letters are outlines of the page's own font, so that it looks the same everywhere and needs no
//! font; over them lies the same text, not painted, to select, search and read aloud.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use glam::DVec2;
use ttf_parser::{GlyphId, OutlineBuilder};

use super::palette::Colour;
use super::sheet::{Pen, Shape, Sheet, Text, font};
use crate::letters;

/// The page, sizes in millimetres: printed at 100 % it keeps its scale.
#[must_use]
pub fn svg(sheet: &Sheet) -> String {
    let mut out = String::with_capacity(64 * 1024);
    let page = sheet.page_mm;
    let [w, h] = [page.x, page.y].map(number);
    // Writing to a string cannot fail.
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" role=\"img\">"
    );
    let _ = writeln!(out, "<title>{}</title>", escaped(&sheet.name));
    glyphs(&mut out, sheet);
    let _ = writeln!(out, "<rect width=\"{w}\" height=\"{h}\" fill=\"#ffffff\"/>");
    out.push_str("<g stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
    let down = |p: DVec2| DVec2::new(p.x, page.y - p.y);
    for item in &sheet.items {
        match &item.shape {
            Shape::Line { ends: [a, b], pen } => {
                let (a, b) = (down(*a), down(*b));
                let _ = writeln!(
                    out,
                    "<path d=\"M{} {}L{} {}\"{}/>",
                    number(a.x),
                    number(a.y),
                    number(b.x),
                    number(b.y),
                    painted(Some(*pen), None)
                );
            }
            Shape::Polygon { points, pen, fill } => {
                let mut path = String::new();
                for (index, point) in points.iter().enumerate() {
                    let p = down(*point);
                    let verb = if index == 0 { 'M' } else { 'L' };
                    let _ = write!(path, "{verb}{} {}", number(p.x), number(p.y));
                }
                let _ = writeln!(out, "<path d=\"{path}Z\"{}/>", painted(*pen, *fill));
            }
            Shape::Circle {
                middle,
                radius,
                pen,
                fill,
            } => {
                let p = down(*middle);
                let _ = writeln!(
                    out,
                    "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>",
                    number(p.x),
                    number(p.y),
                    number(*radius),
                    painted(*pen, *fill)
                );
            }
            Shape::Text(text) => letters(&mut out, text, down(text.at)),
        }
    }
    out.push_str("</g>\n</svg>\n");
    out
}

/// A number with at most four decimals, and none that say nothing.
fn number(value: f64) -> String {
    let text = format!("{value:.4}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" {
        "0".into()
    } else {
        short.into()
    }
}

fn colour(colour: Colour) -> String {
    format!("#{:02x}{:02x}{:02x}", colour.0, colour.1, colour.2)
}

fn painted(pen: Option<Pen>, fill: Option<Colour>) -> String {
    let mut out = match fill {
        Some(fill) => format!(" fill=\"{}\"", colour(fill)),
        None => " fill=\"none\"".into(),
    };
    if let Some(pen) = pen {
        let _ = write!(
            out,
            " stroke=\"{}\" stroke-width=\"{}\"",
            colour(pen.colour),
            number(pen.width)
        );
        let pattern = pen.dash.pattern_mm();
        if !pattern.is_empty() {
            let pattern: Vec<String> = pattern.iter().map(|part| number(*part)).collect();
            let _ = write!(out, " stroke-dasharray=\"{}\"", pattern.join(" "));
        }
    }
    out
}

/// Text from a file, fit for an attribute or between tags.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            c if letters::acts(c) || matches!(c, '\u{fffe}' | '\u{ffff}') => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

/// The outlines of every letter that is used, once.
fn glyphs(out: &mut String, sheet: &Sheet) {
    let Some(face) = font::face() else { return };
    let used: BTreeSet<u16> = sheet
        .texts()
        .flat_map(|text| text.says.chars())
        .map(|letter| font::glyph(face, letter).0)
        .collect();
    out.push_str("<defs>\n");
    for id in used {
        let mut path = Outline(String::new());
        if face.outline_glyph(GlyphId(id), &mut path).is_some() {
            let _ = writeln!(out, "<path id=\"g{id}\" d=\"{}\"/>", path.0);
        }
    }
    out.push_str("</defs>\n");
}

fn letters(out: &mut String, text: &Text, at: DVec2) {
    let turn = if text.upward { " rotate(-90)" } else { "" };
    let place = format!("translate({} {}){turn}", number(at.x), number(at.y));
    if let Some(face) = font::face() {
        let em = f64::from(face.units_per_em());
        let scale = text.size / em;
        let _ = write!(
            out,
            "<g transform=\"{place} scale({:.6} {:.6})\" fill=\"{}\">",
            scale,
            -scale,
            colour(text.colour)
        );
        let mut x = 0.0;
        for letter in text.says.chars() {
            let id = font::glyph(face, letter);
            if face.glyph_bounding_box(id).is_some() {
                let _ = write!(out, "<use href=\"#g{}\" x=\"{}\"/>", id.0, number(x));
            }
            x += font::advance_em(letter) * em;
        }
        out.push_str("</g>\n");
    }
    let _ = writeln!(
        out,
        "<text transform=\"{place}\" font-size=\"{}\" font-family=\"sans-serif\" textLength=\"{}\" fill=\"none\" xml:space=\"preserve\">{}</text>",
        number(text.size),
        number(text.width_mm()),
        escaped(&text.says)
    );
}

/// A letter's outline as the data of a path, in units of the font.
struct Outline(String);

impl OutlineBuilder for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        let _ = write!(self.0, "M{x} {y}");
    }
    fn line_to(&mut self, x: f32, y: f32) {
        let _ = write!(self.0, "L{x} {y}");
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let _ = write!(self.0, "Q{x1} {y1} {x} {y}");
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let _ = write!(self.0, "C{x1} {y1} {x2} {y2} {x} {y}");
    }
    fn close(&mut self) {
        self.0.push('Z');
    }
}

//! A page as PNG: which pixels does it have?
//!
//! The file says how many pixels a metre has, so that printed at 100 % it keeps its scale. Letters
//! are filled outlines of the page's own font, as in every other format.

use glam::DVec2;
use png::{BitDepth, ColorType, Compression, Encoder, PixelDimensions, Unit};
use tiny_skia::{
    Color, FillRule, LineCap, LineJoin, Paint, Path, PathBuilder, Pixmap, Stroke, StrokeDash,
    Transform,
};
use ttf_parser::OutlineBuilder;

use super::palette::Colour;
use super::sheet::{Pen, Shape, Sheet, Text, font};

/// Pixels in a metre: 300 in an inch, as near as a whole number comes.
pub const PER_METRE: u32 = 11_811;

/// The page; none where its font can't be read or it is too large.
#[must_use]
pub fn png(sheet: &Sheet) -> Option<Vec<u8>> {
    let per_mm = f64::from(PER_METRE) / 1000.0;
    let [width, height] = [sheet.page_mm.x, sheet.page_mm.y].map(|mm| pixels(mm * per_mm));
    let mut map = Pixmap::new(width?, height?)?;
    map.fill(Color::WHITE);
    let canvas = Canvas {
        per_mm,
        height_mm: sheet.page_mm.y,
    };
    for item in &sheet.items {
        canvas.put(&mut map, &item.shape)?;
    }
    // White lies under everything, so every pixel is opaque.
    let bytes: Vec<u8> = map
        .data()
        .chunks_exact(4)
        .flat_map(|pixel| [pixel[0], pixel[1], pixel[2]])
        .collect();
    encoded(&bytes, [width?, height?], &sheet.name)
}

fn encoded(bytes: &[u8], [width, height]: [u32; 2], name: &str) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    let mut encoder = Encoder::new(&mut out, width, height);
    encoder.set_color(ColorType::Rgb);
    encoder.set_depth(BitDepth::Eight);
    // White paper with thin lines packs well at any level; at the usual one it takes seconds a page.
    encoder.set_compression(Compression::Fast);
    encoder.set_pixel_dims(Some(PixelDimensions {
        xppu: PER_METRE,
        yppu: PER_METRE,
        unit: Unit::Meter,
    }));
    let made_by = format!("Bayrise {}", env!("CARGO_PKG_VERSION"));
    encoder
        .add_itxt_chunk("Software".into(), made_by)
        .and_then(|()| encoder.add_itxt_chunk("Title".into(), name.into()))
        .ok()?;
    let mut writer = encoder.write_header().ok()?;
    writer.write_image_data(bytes).ok()?;
    writer.finish().ok()?;
    Some(out)
}

/// A side in whole pixels, the last one begun.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // checked
fn pixels(side: f64) -> Option<u32> {
    let side = (side - 0.5).ceil();
    (1.0..=30_000.0).contains(&side).then_some(side as u32)
}

/// A page's millimetres hold in single precision to a ten-thousandth of a pixel.
#[allow(clippy::cast_possible_truncation)]
const fn single(value: f64) -> f32 {
    value as f32
}

struct Canvas {
    per_mm: f64,
    height_mm: f64,
}

impl Canvas {
    fn at(&self, point: DVec2) -> (f32, f32) {
        (
            single(point.x * self.per_mm),
            single((self.height_mm - point.y) * self.per_mm),
        )
    }

    fn put(&self, map: &mut Pixmap, shape: &Shape) -> Option<()> {
        match shape {
            Shape::Line { ends, pen } => {
                let mut path = PathBuilder::new();
                let [(a, b), (c, d)] = ends.map(|end| self.at(end));
                path.move_to(a, b);
                path.line_to(c, d);
                if let Some(path) = path.finish() {
                    self.stroke(map, &path, *pen);
                }
            }
            Shape::Polygon { points, pen, fill } => {
                let mut path = PathBuilder::new();
                for (index, point) in points.iter().enumerate() {
                    let (x, y) = self.at(*point);
                    if index == 0 {
                        path.move_to(x, y);
                    } else {
                        path.line_to(x, y);
                    }
                }
                path.close();
                self.area(map, path.finish(), *pen, *fill);
            }
            Shape::Circle {
                middle,
                radius,
                pen,
                fill,
            } => {
                let (x, y) = self.at(*middle);
                let path = PathBuilder::from_circle(x, y, single(radius * self.per_mm));
                self.area(map, path, *pen, *fill);
            }
            Shape::Text(text) => self.letters(map, text)?,
        }
        Some(())
    }

    /// An area without any extent has no path, and nothing to paint.
    fn area(&self, map: &mut Pixmap, path: Option<Path>, pen: Option<Pen>, fill: Option<Colour>) {
        let Some(path) = path else { return };
        if let Some(fill) = fill {
            filled(map, &path, fill, Transform::identity());
        }
        if let Some(pen) = pen {
            self.stroke(map, &path, pen);
        }
    }

    fn stroke(&self, map: &mut Pixmap, path: &Path, pen: Pen) {
        let dashes = pen.dash.pattern_mm().iter();
        let dashes = dashes.map(|part| single(part * self.per_mm)).collect();
        let stroke = Stroke {
            width: single(pen.width * self.per_mm),
            line_cap: LineCap::Round,
            line_join: LineJoin::Round,
            dash: StrokeDash::new(dashes, 0.0),
            ..Stroke::default()
        };
        let paint = paint(pen.colour);
        map.stroke_path(path, &paint, &stroke, Transform::identity(), None);
    }

    fn letters(&self, map: &mut Pixmap, text: &Text) -> Option<()> {
        let face = font::face()?;
        let em = f64::from(face.units_per_em());
        let scale = single(text.size * self.per_mm / em);
        let mut line = Outline(PathBuilder::new(), 0.0);
        for letter in text.says.chars() {
            let id = font::glyph(face, letter);
            // A space has no outline.
            let _ = face.outline_glyph(id, &mut line);
            line.1 += single(font::advance_em(letter) * em);
        }
        let Some(path) = line.0.finish() else {
            return Some(());
        };
        let (x, y) = self.at(text.at);
        // Letters grow upward in the font and downward on the map.
        let place = if text.upward {
            Transform::from_row(0.0, -scale, -scale, 0.0, x, y)
        } else {
            Transform::from_row(scale, 0.0, 0.0, -scale, x, y)
        };
        filled(map, &path, text.colour, place);
        Some(())
    }
}

fn paint(colour: Colour) -> Paint<'static> {
    let mut paint = Paint::default();
    paint.set_color_rgba8(colour.0, colour.1, colour.2, 255);
    paint
}

fn filled(map: &mut Pixmap, path: &Path, fill: Colour, place: Transform) {
    map.fill_path(path, &paint(fill), FillRule::Winding, place, None);
}

/// Letters one after another as one path, in units of the font; how far the line has come.
struct Outline(PathBuilder, f32);

impl OutlineBuilder for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(x + self.1, y);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(x + self.1, y);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.0.quad_to(x1 + self.1, y1, x + self.1, y);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.0
            .cubic_to(x1 + self.1, y1, x2 + self.1, y2, x + self.1, y);
    }
    fn close(&mut self) {
        self.0.close();
    }
}

//! Pages as PDF: how do they print at the size they say?
//!
//! One file, a page a sheet, its font embedded as the part that is used. The file asks its reader
//! not to scale it. There is no date in it, so that the same bay gives the same bytes.

use std::collections::BTreeMap;

use glam::DVec2;
use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::{
    CidFontType, FontFlags, LineCapStyle, LineJoinStyle, SystemInfo, UnicodeCmap,
};
use pdf_writer::{Content, Filter, Finish as _, Name, Pdf, Rect, Ref, Str, TextStr};
use subsetter::GlyphRemapper;

use super::palette::Colour;
use super::sheet::{Pen, Shape, Sheet, Text, font};

/// Points in a millimetre.
const POINTS: f64 = 72.0 / 25.4;
const FONT: Name<'_> = Name(b"F1");
/// Six letters before the font's name say that it is a part of it.
const FONT_NAME: Name<'_> = Name(b"BAYRIS+Ubuntu-Light");
const SYSTEM: SystemInfo<'_> = SystemInfo {
    registry: Str(b"Adobe"),
    ordering: Str(b"Identity"),
    supplement: 0,
};
const LEVEL: u8 = 6;

/// The letters that are used, and their numbers in the part of the font that is embedded.
struct Used {
    remapper: GlyphRemapper,
    /// By the new number: a letter that it stands for, and its advance in thousandths of an em.
    letters: BTreeMap<u16, (char, f32)>,
}

impl Used {
    fn of(pages: &[Sheet]) -> Self {
        let mut used = Self {
            remapper: GlyphRemapper::new(),
            letters: BTreeMap::new(),
        };
        let Some(face) = font::face() else {
            return used;
        };
        let texts = pages.iter().flat_map(Sheet::texts);
        for letter in texts.flat_map(|text| text.says.chars()) {
            let number = used.remapper.remap(font::glyph(face, letter).0);
            let advance = single(font::advance_em(letter) * 1000.0);
            used.letters.entry(number).or_insert((letter, advance));
        }
        used
    }

    /// A text as numbers of its letters, two bytes each.
    fn encoded(&self, text: &str) -> Vec<u8> {
        let Some(face) = font::face() else {
            return Vec::new();
        };
        text.chars()
            .filter_map(|letter| self.remapper.get(font::glyph(face, letter).0))
            .flat_map(u16::to_be_bytes)
            .collect()
    }
}

/// The format's numbers are single: good for a hundredth of a millimetre on any page.
#[allow(clippy::cast_possible_truncation)]
const fn single(value: f64) -> f32 {
    value as f32
}

fn points(mm: f64) -> f32 {
    single(mm * POINTS)
}

/// The pages in one file; none where the font can't be taken apart.
#[must_use]
pub fn pdf(title: &str, pages: &[Sheet]) -> Option<Vec<u8>> {
    let used = Used::of(pages);
    let mut next = Ref::new(1);
    let [catalog, tree, info, type0, cid, descriptor, file, cmap] = [(); 8].map(|()| next.bump());
    let ids: Vec<[Ref; 2]> = pages.iter().map(|_| [next.bump(), next.bump()]).collect();

    let mut pdf = Pdf::new();
    let mut root = pdf.catalog(catalog);
    root.pages(tree);
    root.viewer_preferences()
        .insert(Name(b"PrintScaling"))
        .primitive(Name(b"None"));
    root.finish();
    let count = i32::try_from(pages.len()).ok()?;
    pdf.pages(tree)
        .kids(ids.iter().map(|[page, _]| *page))
        .count(count);
    let creator = format!("Bayrise {}", env!("CARGO_PKG_VERSION"));
    pdf.document_info(info)
        .title(TextStr(title))
        .creator(TextStr(&creator));

    for (sheet, [page, content]) in pages.iter().zip(&ids) {
        let size = sheet.page_mm;
        let mut entry = pdf.page(*page);
        entry
            .parent(tree)
            .media_box(Rect::new(0.0, 0.0, points(size.x), points(size.y)))
            .contents(*content);
        entry.resources().fonts().pair(FONT, type0);
        entry.finish();
        let drawn = compress_to_vec_zlib(&drawn(sheet, &used), LEVEL);
        pdf.stream(*content, &drawn).filter(Filter::FlateDecode);
    }
    embed(&mut pdf, &used, [type0, cid, descriptor, file, cmap])?;
    Some(pdf.finish())
}

fn embed(pdf: &mut Pdf, used: &Used, [type0, cid, descriptor, file, cmap]: [Ref; 5]) -> Option<()> {
    let face = font::face()?;
    let part = subsetter::subset(font::BYTES, 0, &used.remapper).ok()?;
    let part = compress_to_vec_zlib(&part, LEVEL);
    pdf.type0_font(type0)
        .base_font(FONT_NAME)
        .encoding_predefined(Name(b"Identity-H"))
        .descendant_font(cid)
        .to_unicode(cmap);
    let mut font = pdf.cid_font(cid);
    font.subtype(CidFontType::Type2)
        .base_font(FONT_NAME)
        .system_info(SYSTEM)
        .font_descriptor(descriptor)
        .default_width(0.0)
        .cid_to_gid_map_predefined(Name(b"Identity"));
    let mut widths = font.widths();
    for (number, (_, advance)) in &used.letters {
        widths.consecutive(*number, [*advance]);
    }
    widths.finish();
    font.finish();
    let per_em = |units: i16| single(f64::from(units) * 1000.0 / f64::from(face.units_per_em()));
    let b = face.global_bounding_box();
    pdf.font_descriptor(descriptor)
        .name(FONT_NAME)
        .flags(FontFlags::NON_SYMBOLIC)
        .bbox(Rect::new(
            per_em(b.x_min),
            per_em(b.y_min),
            per_em(b.x_max),
            per_em(b.y_max),
        ))
        .italic_angle(0.0)
        .ascent(per_em(face.ascender()))
        .descent(per_em(face.descender()))
        .cap_height(per_em(face.capital_height().unwrap_or(700)))
        .stem_v(60.0)
        .font_file2(file);
    pdf.stream(file, &part).filter(Filter::FlateDecode);
    let mut map = UnicodeCmap::new(Name(b"Bayrise"), SYSTEM);
    for (number, (letter, _)) in &used.letters {
        map.pair(*number, *letter);
    }
    let map = map.finish();
    pdf.stream(cmap, map.as_slice());
    Some(())
}

fn drawn(sheet: &Sheet, used: &Used) -> Vec<u8> {
    let mut content = Content::new();
    content
        .set_line_cap(LineCapStyle::RoundCap)
        .set_line_join(LineJoinStyle::RoundJoin);
    for item in &sheet.items {
        match &item.shape {
            Shape::Line { ends: [a, b], pen } => {
                paints(&mut content, Some(*pen), None);
                content
                    .move_to(points(a.x), points(a.y))
                    .line_to(points(b.x), points(b.y))
                    .stroke();
            }
            Shape::Polygon {
                points: corners,
                pen,
                fill,
            } => {
                paints(&mut content, *pen, *fill);
                for (index, corner) in corners.iter().enumerate() {
                    let (x, y) = (points(corner.x), points(corner.y));
                    if index == 0 {
                        content.move_to(x, y);
                    } else {
                        content.line_to(x, y);
                    }
                }
                content.close_path();
                finish(&mut content, pen.is_some(), fill.is_some());
            }
            Shape::Circle {
                middle,
                radius,
                pen,
                fill,
            } => {
                paints(&mut content, *pen, *fill);
                circle(&mut content, *middle, *radius);
                finish(&mut content, pen.is_some(), fill.is_some());
            }
            Shape::Text(text) => letters(&mut content, text, used),
        }
    }
    content.finish().into_vec()
}

fn channels(colour: Colour) -> [f32; 3] {
    colour.srgb()
}

fn paints(content: &mut Content, pen: Option<Pen>, fill: Option<Colour>) {
    if let Some(pen) = pen {
        let [r, g, b] = channels(pen.colour);
        let dashes = pen.dash.pattern_mm().iter().map(|part| points(*part));
        content
            .set_stroke_rgb(r, g, b)
            .set_line_width(points(pen.width))
            .set_dash_pattern(dashes, 0.0);
    }
    if let Some(fill) = fill {
        let [r, g, b] = channels(fill);
        content.set_fill_rgb(r, g, b);
    }
}

fn finish(content: &mut Content, stroked: bool, filled: bool) {
    match (stroked, filled) {
        (true, true) => content.fill_nonzero_and_stroke(),
        (true, false) => content.stroke(),
        (false, true) => content.fill_nonzero(),
        (false, false) => content.end_path(),
    };
}

/// Four curves that leave the circle nowhere by more than 0.03 % of its radius.
fn circle(content: &mut Content, middle: DVec2, radius: f64) {
    const REACH: f64 = 0.552_284_749_8;
    let at = |x: f64, y: f64| {
        let point = middle + DVec2::new(x, y) * radius;
        (points(point.x), points(point.y))
    };
    let (x, y) = at(1.0, 0.0);
    content.move_to(x, y);
    let mut way = DVec2::X;
    for _ in 0..4 {
        let next = way.perp();
        let (a, b) = (way + next * REACH, next + way * REACH);
        let ((x1, y1), (x2, y2), (x3, y3)) = (at(a.x, a.y), at(b.x, b.y), at(next.x, next.y));
        content.cubic_to(x1, y1, x2, y2, x3, y3);
        way = next;
    }
    content.close_path();
}

fn letters(content: &mut Content, text: &Text, used: &Used) {
    let [r, g, b] = channels(text.colour);
    let (x, y) = (points(text.at.x), points(text.at.y));
    let matrix = if text.upward {
        [0.0, 1.0, -1.0, 0.0, x, y]
    } else {
        [1.0, 0.0, 0.0, 1.0, x, y]
    };
    content
        .set_fill_rgb(r, g, b)
        .begin_text()
        .set_font(FONT, points(text.size))
        .set_text_matrix(matrix)
        .show(Str(&used.encoded(&text.says)))
        .end_text();
}

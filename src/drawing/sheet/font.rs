//! How wide is a text, and what do its letters look like?
//!
//! One font, Ubuntu Light (Ubuntu Font Licence 1.0, which lets it be embedded), from the bytes of
//! `epaint_default_fonts`. Letters stand side by side by their advances, without kerning, in every
//! format alike.

use std::sync::OnceLock;

use ttf_parser::{Face, GlyphId};

/// The font file.
pub const BYTES: &[u8] = epaint_default_fonts::UBUNTU_LIGHT;
/// Its name.
pub const NAME: &str = "Ubuntu Light";
/// What stands for a letter that the font lacks.
const LACKING: char = '?';
/// The width of a letter where the font can't be read, in ems.
const FALLBACK_EM: f64 = 0.6;

/// The font, read once.
#[must_use]
pub fn face() -> Option<&'static Face<'static>> {
    static FACE: OnceLock<Option<Face<'static>>> = OnceLock::new();
    FACE.get_or_init(|| Face::parse(BYTES, 0).ok()).as_ref()
}

/// The glyph of a letter, or of the one that stands for what the font lacks.
#[must_use]
pub fn glyph(face: &Face<'_>, letter: char) -> GlyphId {
    let known = face.glyph_index(letter);
    known
        .or_else(|| face.glyph_index(LACKING))
        .unwrap_or(GlyphId(0))
}

/// The advance of a letter, in ems.
#[must_use]
pub fn advance_em(letter: char) -> f64 {
    // Pages are tried at many scales: the usual letters are looked up once.
    static USUAL: OnceLock<[f64; 256]> = OnceLock::new();
    let usual = USUAL.get_or_init(|| std::array::from_fn(|code| looked_up(code_letter(code))));
    match usual.get(letter as usize) {
        Some(advance) => *advance,
        None => looked_up(letter),
    }
}

fn code_letter(code: usize) -> char {
    u8::try_from(code).map_or(LACKING, char::from)
}

fn looked_up(letter: char) -> f64 {
    let Some(face) = face() else {
        return FALLBACK_EM;
    };
    let advance = face.glyph_hor_advance(glyph(face, letter)).unwrap_or(0);
    f64::from(advance) / f64::from(face.units_per_em())
}

/// The width of a text, in ems.
#[must_use]
pub fn width_em(text: &str) -> f64 {
    text.chars().map(advance_em).sum()
}

/// A text in lines no wider than this; a word that is wider is broken where it must be.
#[must_use]
pub fn wrapped(text: &str, size_mm: f64, width_mm: f64) -> Vec<String> {
    let fits = |line: &str| width_em(line) * size_mm <= width_mm;
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let longer = if line.is_empty() {
            word.to_owned()
        } else {
            format!("{line} {word}")
        };
        if fits(&longer) {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if !fits(&line) && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(letter);
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_font_has_what_the_sheets_say() {
        let face = face().unwrap();
        for letter in "AZaz09 .,:;()/\u{b1}\u{d7}\u{b7}\u{2013}\u{b0}\u{2192}-+=\"'".chars() {
            assert!(
                face.glyph_index(letter).is_some() || letter == '\u{2192}',
                "{letter}"
            );
        }
    }

    #[test]
    fn lines_are_never_too_wide() {
        let text = "Lower onto the locks before anyone goes under averyverylongwordwithoutanend.";
        for width in [8.0, 20.0, 60.0] {
            let lines = wrapped(text, 2.0, width);
            assert!(lines.iter().all(|line| width_em(line) * 2.0 <= width));
            let said: String = lines.concat().replace(' ', "");
            assert_eq!(said, text.replace(' ', ""));
        }
        assert!(wrapped("", 2.0, 10.0).is_empty());
    }
}

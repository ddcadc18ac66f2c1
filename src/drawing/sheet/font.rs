//! How wide is a text, and what do its letters look like?
//!
//! One font, Ubuntu Light (Ubuntu Font Licence 1.0, which lets it be embedded), from the bytes of
//! `epaint_default_fonts`. Letters stand side by side by their advances, without kerning, in every
//! format alike.

use std::borrow::Cow;
use std::fmt::Write as _;
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

/// A text as it is lettered: where the font lacks letters their code points stand for them, so that
/// two names that differ are never lettered alike. Spaces and control characters stay.
#[must_use]
pub fn lettered(text: &str) -> Cow<'_, str> {
    if text.is_ascii() {
        return Cow::Borrowed(text);
    }
    let Some(face) = face() else {
        return Cow::Borrowed(text);
    };
    let lacks = |letter: char| {
        let blank = letter.is_whitespace() || letter.is_control();
        !blank && face.glyph_index(letter).is_none()
    };
    if !text.chars().any(lacks) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len() * 3);
    let mut is_open = false;
    for letter in text.chars() {
        if lacks(letter) {
            out.push_str(if is_open { " " } else { "[" });
            // Writing to a string cannot fail.
            let _ = write!(out, "U+{:04X}", u32::from(letter));
        } else {
            if is_open {
                out.push(']');
            }
            out.push(letter);
        }
        is_open = lacks(letter);
    }
    if is_open {
        out.push(']');
    }
    Cow::Owned(out)
}

/// The letters that stand as code points in these texts, each once, in their order.
pub fn unlettered<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    let mut found = String::new();
    for word in texts.into_iter().flat_map(str::split_whitespace) {
        let codes = word.split("U+").skip(1);
        for code in codes {
            let hex: String = code.chars().take_while(char::is_ascii_hexdigit).collect();
            let letter = u32::from_str_radix(&hex, 16).ok().and_then(char::from_u32);
            // A code point that the font has was written by the reader's own hand.
            let lacking = letter
                .filter(|letter| face().is_some_and(|face| face.glyph_index(*letter).is_none()));
            if let Some(letter) = lacking
                && !found.contains(letter)
            {
                found.push(letter);
            }
        }
    }
    found
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

/// The width of a text, in ems, as it is lettered.
#[must_use]
pub fn width_em(text: &str) -> f64 {
    lettered(text).chars().map(advance_em).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_that_the_font_lacks_stay_apart_and_are_told() {
        let (one, other) = ("\u{65e5}\u{672c} 2", "\u{97d3}\u{56fd} 2");
        assert_eq!(lettered(one), "[U+65E5 U+672C] 2");
        assert_ne!(lettered(one), lettered(other));
        assert!(matches!(lettered("plain \u{b1} 2"), Cow::Borrowed(_)));
        let told = unlettered(["a [U+65E5", "U+672C] b", "U+65E5"]);
        assert_eq!(told, "\u{65e5}\u{672c}");
    }

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
}

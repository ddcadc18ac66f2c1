//! Which numbers and units does a typed value consist of?

use super::UnitError;

/// A number with the unit that follows it; the unit may be empty.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Part {
    pub(super) number: f64,
    /// True for a plain run of digits.
    pub(super) whole: bool,
    pub(super) unit: String,
}

/// Brings the many ways to write one sign to one: primes, fractions, dashes, odd blanks.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    for c in text.chars() {
        match c {
            '\u{2032}' | '\u{2019}' | '\u{2018}' => out.push('\''),
            '\u{2033}' | '\u{201d}' | '\u{201c}' => out.push('"'),
            '\u{2212}' => out.push('-'),
            '\u{2044}' => out.push('/'),
            '\u{b7}' | '\u{22c5}' => out.push(' '),
            '\u{b3}' => out.push('3'),
            '\u{b2}' => out.push('2'),
            c if c.is_whitespace() => out.push(' '),
            c => match vulgar(c) {
                Some(fraction) => {
                    out.push(' ');
                    out.push_str(fraction);
                }
                None => out.push(c),
            },
        }
    }
    out.replace("''", "\"")
        .replace("m^", "m")
        .replace("in^", "in")
        .trim()
        .into()
}

const fn vulgar(c: char) -> Option<&'static str> {
    Some(match c {
        '\u{bd}' => "1/2",
        '\u{bc}' => "1/4",
        '\u{be}' => "3/4",
        '\u{2153}' => "1/3",
        '\u{2154}' => "2/3",
        '\u{215b}' => "1/8",
        '\u{215c}' => "3/8",
        '\u{215d}' => "5/8",
        '\u{215e}' => "7/8",
        _ => return None,
    })
}

/// The sign (true: negative) and the parts of a typed value.
pub(super) fn split(text: &str) -> Result<(bool, Vec<Part>), UnitError> {
    let text = plain(text);
    if text.is_empty() {
        return Err(UnitError::Empty);
    }
    let (negative, mut rest) = match text.as_bytes()[0] {
        b'-' => (true, text[1..].trim_start()),
        b'+' => (false, text[1..].trim_start()),
        _ => (false, text.as_str()),
    };
    let mut parts = Vec::new();
    while !rest.is_empty() {
        if parts.len() == 3 {
            return Err(UnitError::NotUnderstood);
        }
        let ((number, whole), after) = mixed_number(rest)?;
        let (unit, after) = unit(after)?;
        parts.push(Part {
            number,
            whole,
            unit,
        });
        rest = after;
    }
    Ok((negative, parts))
}

/// `2`, `2.5`, `1e3`, `1/2`, `2 1/2` or `2-1/2`.
fn mixed_number(text: &str) -> Result<((f64, bool), &str), UnitError> {
    let (first, after) = digits(text);
    if first.is_empty() {
        return Err(UnitError::NotANumber);
    }
    if after.starts_with(',') {
        return Err(UnitError::Comma);
    }
    if first.bytes().all(|b| b.is_ascii_digit()) {
        if after.starts_with('/') {
            let (value, after) = fraction(first, after)?;
            return Ok(((value, false), after));
        }
        let joined = after.strip_prefix('-').unwrap_or(after).trim_start();
        let (second, tail) = digits(joined);
        if after.starts_with([' ', '-']) && tail.starts_with('/') && !second.is_empty() {
            let (value, tail) = fraction(second, tail)?;
            if value >= 1.0 {
                return Err(UnitError::ImproperFraction);
            }
            return Ok(((number(first)? + value, false), tail));
        }
    }
    if after.starts_with('/') {
        return Err(UnitError::BadFraction);
    }
    let whole = first.bytes().all(|b| b.is_ascii_digit());
    Ok(((number(first)?, whole), after))
}

/// The longest number at the start: digits, a point, an exponent.
fn digits(text: &str) -> (&str, &str) {
    let bytes = text.as_bytes();
    let run = |mut i: usize| {
        while bytes.get(i).is_some_and(u8::is_ascii_digit) {
            i += 1;
        }
        i
    };
    let mut end = run(0);
    if bytes.get(end) == Some(&b'.') && (end > 0 || run(1) > 1) {
        end = run(end + 1);
    }
    if end > 0 && matches!(bytes.get(end), Some(b'e' | b'E')) {
        let sign = usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        let exponent = run(end + 1 + sign);
        if exponent > end + 1 + sign {
            end = exponent;
        }
    }
    text.split_at(end)
}

fn number(text: &str) -> Result<f64, UnitError> {
    match text.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(value),
        Ok(_) => Err(UnitError::TooLarge),
        Err(_) => Err(UnitError::NotANumber),
    }
}

/// `top` and what follows it, starting at the stroke.
fn fraction<'a>(top: &str, after: &'a str) -> Result<(f64, &'a str), UnitError> {
    let (bottom, rest) = digits(&after[1..]);
    let whole = |t: &str| !t.is_empty() && t.len() <= 4 && t.bytes().all(|b| b.is_ascii_digit());
    if !whole(top) || !whole(bottom) {
        return Err(UnitError::BadFraction);
    }
    let (top, bottom) = (number(top)?, number(bottom)?);
    if bottom <= 0.0 {
        return Err(UnitError::BadFraction);
    }
    Ok((top / bottom, rest))
}

/// The unit up to the next number, and what follows it (a joining dash is stepped over).
fn unit(text: &str) -> Result<(String, &str), UnitError> {
    // The only units with a figure in them stand at the end: they would else look like a number.
    for whole in [
        "m3", "N/mm2", "in2", "mm2", "cm2", "lbf/in3", "MN/m3", "kN/m3",
    ] {
        if text.trim().trim_end_matches('.') == whole {
            return Ok((whole.into(), ""));
        }
    }
    let end = text
        .find(|c: char| c.is_ascii_digit())
        .unwrap_or(text.len());
    let (unit, mut rest) = text.split_at(end);
    let mut unit = unit.to_string();
    if !rest.is_empty() {
        if unit.ends_with('.') && !unit.trim_end_matches('.').ends_with(char::is_alphanumeric) {
            // ".5" after a unit: the point belongs to the number.
            unit.pop();
            rest = &text[end - 1..];
        }
        if let Some(stem) = unit.trim_end().strip_suffix('-') {
            let spaced_before = stem.ends_with(' ');
            let spaced_after = unit.ends_with(' ');
            if spaced_before && !spaced_after {
                return Err(UnitError::MinusInside);
            }
            unit = stem.to_string();
        }
    }
    if unit.contains(',') {
        return Err(UnitError::Comma);
    }
    let words: Vec<&str> = unit
        .split([' ', '-', '*'])
        .map(|w| w.trim_end_matches('.'))
        .filter(|w| !w.is_empty())
        .collect();
    Ok((words.join(" "), rest))
}

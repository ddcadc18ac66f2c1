//! Is this run of characters a number, and which?

/// What a run of number characters turned out to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Verdict {
    /// A number.
    Good,
    /// A range or a number with a type suffix: good RON that bay files have no use for.
    NotUsed,
    /// No number.
    Bad,
}

/// True for the numbers that are written as words.
pub(super) fn is_word_for_number(word: &str) -> bool {
    matches!(
        word,
        "inf" | "NaN" | "inff32" | "inff64" | "NaNf32" | "NaNf64"
    )
}

/// Judges a run of number characters as the `ron` crate does.
pub(super) fn judge(text: &str) -> Verdict {
    if is_word_for_number(text.strip_prefix(['+', '-']).unwrap_or(text)) {
        return Verdict::Good;
    }
    if text.contains("..") {
        return Verdict::NotUsed;
    }
    if integer(text) || float(text) {
        return Verdict::Good;
    }
    let suffixes = [
        "i8", "i16", "i32", "i64", "u8", "u16", "u32", "u64", "i128", "u128", "f32", "f64",
    ];
    let stem = suffixes.iter().find_map(|s| text.strip_suffix(s));
    match stem {
        Some(stem) if integer(stem) || float(stem) => Verdict::NotUsed,
        _ => Verdict::Bad,
    }
}

fn integer(text: &str) -> bool {
    let (negative, digits) = match text.as_bytes().first() {
        Some(b'-') => (true, &text[1..]),
        Some(b'+') => (false, &text[1..]),
        _ => (false, text),
    };
    let (base, digits) = match digits.get(..2) {
        Some("0x") => (16, &digits[2..]),
        Some("0o") => (8, &digits[2..]),
        Some("0b") => (2, &digits[2..]),
        _ => (10, digits),
    };
    if digits.is_empty() || digits.starts_with('_') {
        return false;
    }
    let plain: String = digits.chars().filter(|c| *c != '_').collect();
    // `from_str_radix` takes a sign of its own; a second sign is no number.
    if !plain.starts_with(|c: char| c.is_ascii_hexdigit()) {
        return false;
    }
    if base == 10 {
        // Past the integers' range `ron` reads a float.
        return plain.bytes().all(|b| b.is_ascii_digit());
    }
    if negative {
        i64::from_str_radix(&format!("-{plain}"), base).is_ok()
    } else {
        u64::from_str_radix(&plain, base).is_ok()
    }
}

fn float(text: &str) -> bool {
    let mut plain = String::with_capacity(text.len());
    let mut underscore_may_follow = false;
    for c in text.chars() {
        match c {
            '_' if underscore_may_follow => continue,
            '0'..='9' | 'e' | 'E' => underscore_may_follow = true,
            '.' => underscore_may_follow = false,
            '+' | '-' => {}
            _ => return false,
        }
        plain.push(c);
    }
    let is_float = plain.contains(['.', 'e', 'E']);
    is_float && plain.parse::<f64>().is_ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_and_no_numbers() {
        for good in [
            "0",
            "-12",
            "+3",
            "1_000",
            "0x1F",
            "0b101",
            "1.5",
            ".5",
            "5.",
            "1e3",
            "-inf",
            "99999999999999999999",
        ] {
            assert_eq!(judge(good), Verdict::Good, "{good}");
        }
        for bad in ["", "-", "1.2.3", "12ft", "_1", "0x", "1-2", "--1"] {
            assert_eq!(judge(bad), Verdict::Bad, "{bad}");
        }
        for unused in ["1..2", "3u8", "1.5f32"] {
            assert_eq!(judge(unused), Verdict::NotUsed, "{unused}");
        }
    }
}

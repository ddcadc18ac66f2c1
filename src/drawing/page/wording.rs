//! What is a field of a bay file called, for a reader who has never seen one?

/// Fields whose name in the file is short or of the trade, and what they are called.
const CALLED: [(&str, &str); 14] = [
    ("cg", "centre of gravity"),
    ("cg_height", "height of the centre of gravity"),
    ("cg_window", "where the centre of gravity may lie"),
    ("x", "across (x)"),
    ("y", "along (y)"),
    ("z", "up (z)"),
    ("opening_parts", "things that open"),
    ("set_overtravel", "climb past a lock to set down"),
    ("release_overtravel", "climb past a lock to let go"),
    ("overshoot", "overshoot of the operator"),
    ("pad_raise", "pads raised by"),
    ("at", "place"),
    ("parking", "parked"),
    ("policy", "margins and policy"),
];

/// A field's or a kind's name in words: `set_down` and `SetDown` are both "set down".
pub(super) fn name(written: &str) -> String {
    if let Some((_, called)) = CALLED.iter().find(|(field, _)| *field == written) {
        return (*called).to_owned();
    }
    let mut out = String::with_capacity(written.len() + 4);
    let mut was_small = false;
    for letter in written.chars() {
        if letter == '_' {
            out.push(' ');
            was_small = false;
        } else {
            if letter.is_uppercase() && was_small {
                out.push(' ');
            }
            was_small = letter.is_lowercase() || letter.is_ascii_digit();
            out.extend(letter.to_lowercase());
        }
    }
    out
}

/// The name of one of several.
pub(super) fn number(number: usize) -> String {
    format!("no. {number}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_words() {
        for (written, called) in [
            ("wall_thickness", "wall thickness"),
            ("OverheadBeam", "overhead beam"),
            ("cg_height", "height of the centre of gravity"),
            ("", ""),
        ] {
            assert_eq!(name(written), called);
        }
    }
}

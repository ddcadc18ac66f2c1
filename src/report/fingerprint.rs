//! Which input texts does a report stand on?

use std::fmt::Write as _;

use sha2::{Digest, Sha256};

use crate::ground::Date;

/// What is hashed first, so that a later way of hashing can't be taken for this one.
const TAG: &[u8] = b"bayrise input 1\n";

/// Sixteen hex digits that stand for the input: SHA-256 over a tag and then every text with its
/// length before it, the bay file first and the presets in the order in which they were read; last
/// the day, where the answer hangs on it ([`crate::ground::ForDay::decides`]). An answer that stays
/// what it is from one day to the next keeps its digits, so that an outdated sheet is known by them.
#[must_use]
pub fn fingerprint<'a>(texts: impl IntoIterator<Item = &'a [u8]>, day: Option<Date>) -> String {
    let mut hash = Sha256::new();
    hash.update(TAG);
    for text in texts {
        // A text is far shorter than 2^64 bytes.
        hash.update((text.len() as u64).to_le_bytes());
        hash.update(text);
    }
    if let Some(day) = day {
        // No text is so long.
        hash.update(u64::MAX.to_le_bytes());
        hash.update(day.to_string().as_bytes());
    }
    let mut digits = String::with_capacity(16);
    for byte in hash.finalize().iter().take(8) {
        // Writing to a string cannot fail.
        let _ = write!(digits, "{byte:02x}");
    }
    digits
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_keep_texts_apart() {
        let one = fingerprint([b"ab".as_slice(), b"c"], None);
        let other = fingerprint([b"a".as_slice(), b"bc"], None);
        assert_ne!(one, other);
        assert_eq!(one.len(), 16);
        assert_eq!(one, fingerprint([b"ab".as_slice(), b"c"], None));
    }

    #[test]
    fn a_changed_byte_changes_it() {
        assert_ne!(
            fingerprint([b"12 ft".as_slice()], None),
            fingerprint([b"13 ft".as_slice()], None)
        );
    }

    #[test]
    fn known_answer() {
        // printf 'bayrise input 1\n\x01\0\0\0\0\0\0\0x' | sha256sum
        assert_eq!(fingerprint([b"x".as_slice()], None), "ae41b365b0aac72c");
    }

    #[test]
    fn a_day_that_decides_changes_it() {
        let of =
            |day: Option<&str>| fingerprint([b"x".as_slice()], day.map(|day| day.parse().unwrap()));
        let days = [of(None), of(Some("2026-11-28")), of(Some("2026-11-29"))];
        assert!(days[0] != days[1] && days[1] != days[2] && days[0] != days[2]);
        // No text can stand for a day.
        let text = fingerprint([b"x".as_slice(), b"2026-11-28"], None);
        assert_ne!(text, days[1]);
    }
}

//! Which input texts does a report stand on?

use std::fmt::Write as _;

use sha2::{Digest, Sha256};

/// What is hashed first, so that a later way of hashing can't be taken for this one.
const TAG: &[u8] = b"bayrise input 1\n";

/// Sixteen hex digits that stand for the input: SHA-256 over a tag and then every text with its
/// length before it, the bay file first and the presets in the order in which they were read.
#[must_use]
pub fn fingerprint<'a>(texts: impl IntoIterator<Item = &'a [u8]>) -> String {
    let mut hash = Sha256::new();
    hash.update(TAG);
    for text in texts {
        // A text is far shorter than 2^64 bytes.
        hash.update((text.len() as u64).to_le_bytes());
        hash.update(text);
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
        let one = fingerprint([b"ab".as_slice(), b"c"]);
        let other = fingerprint([b"a".as_slice(), b"bc"]);
        assert_ne!(one, other);
        assert_eq!(one.len(), 16);
        assert_eq!(one, fingerprint([b"ab".as_slice(), b"c"]));
    }

    #[test]
    fn a_changed_byte_changes_it() {
        assert_ne!(
            fingerprint([b"12 ft".as_slice()]),
            fingerprint([b"13 ft".as_slice()])
        );
    }

    #[test]
    fn known_answer() {
        // printf 'bayrise input 1\n\x01\0\0\0\0\0\0\0x' | sha256sum
        assert_eq!(fingerprint([b"x".as_slice()]), "ae41b365b0aac72c");
    }
}

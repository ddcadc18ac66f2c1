//! Which text or character stands between quotes?

use super::{Lexer, Token};

impl Lexer<'_> {
    /// A text that never ends, or not where it should: what is left of its line is the fault, less
    /// the commas and brackets at its end, which were meant as such.
    fn not_closed(&mut self, start: usize, what: &str, close: &str) {
        let line = self.text[start..].lines().next().unwrap_or("");
        let line = line.trim_end_matches([',', ')', ']', '}', ' ', '\r']);
        self.at = start + line.len().max(1);
        self.fault(
            start,
            &format!("{what} is not closed"),
            "starts here and does not end on its line",
            &format!("close it with {close}"),
            false,
        );
        self.push(Token::Broken, start);
    }

    pub(super) fn string(&mut self, start: usize) {
        self.bump();
        let mut out = String::new();
        loop {
            // Both ends are ASCII, so bytes will do.
            let rest = self.rest();
            let len = rest.bytes().position(|b| b == b'"' || b == b'\\');
            let run = &rest[..len.unwrap_or(rest.len())];
            self.at += run.len();
            if run.contains('\n') {
                self.text_over_lines = true;
                if self.texts_end_with_their_line {
                    return self.not_closed(start, "a text", "`\"`");
                }
            }
            out.push_str(run);
            match self.bump() {
                Some('"') => break,
                Some('\\') => self.escape_into(&mut out),
                _ => return self.not_closed(start, "a text", "`\"`"),
            }
        }
        self.push(Token::Str(out), start);
    }

    fn escape_into(&mut self, out: &mut String) {
        let start = self.at - 1;
        if self.rest().starts_with("\r\n") || self.rest().starts_with('\n') {
            self.take_while(|c| matches!(c, ' ' | '\t' | '\n' | '\r'));
            return;
        }
        match self.escape(false) {
            Some(c) => out.push(c),
            None => self.fault(
                start,
                "this escape is not understood",
                "after `\\` come n, r, t, 0, \\, ', \", x with two hex digits, or u{..}",
                "write `\\\\` for a backslash and `\\\"` for an inch mark inside a text",
                false,
            ),
        }
    }

    /// The character that the escape after a backslash stands for.
    fn escape(&mut self, in_char: bool) -> Option<char> {
        let start = self.at;
        let found = match self.bump()? {
            c @ ('\'' | '"' | '\\') => Some(c),
            'n' => Some('\n'),
            'r' => Some('\r'),
            't' => Some('\t'),
            '0' => Some('\0'),
            'x' => self.hex_escape(in_char),
            'u' => self.unicode_escape(),
            _ => None,
        };
        if found.is_none() {
            // Step over one character only: what follows may be the closing quote.
            self.at = start + self.text[start..].chars().next().map_or(0, char::len_utf8);
        }
        found
    }

    fn two_hex(&mut self) -> Option<u8> {
        let digits = self.rest().get(..2)?;
        if !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return None;
        }
        self.at += 2;
        u8::from_str_radix(digits, 16).ok()
    }

    /// One to four `\x..` that make one UTF-8 character.
    fn hex_escape(&mut self, in_char: bool) -> Option<char> {
        let mut bytes = vec![self.two_hex()?];
        loop {
            if let Ok(text) = std::str::from_utf8(&bytes) {
                return text.chars().next();
            }
            if in_char || bytes.len() == 4 || !self.rest().starts_with("\\x") {
                return None;
            }
            self.at += 2;
            bytes.push(self.two_hex()?);
        }
    }

    fn unicode_escape(&mut self) -> Option<char> {
        let rest = self.rest().strip_prefix('{')?;
        let digits = &rest[..rest.find('}')?];
        if digits.is_empty() || digits.len() > 6 || !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return None;
        }
        self.at += digits.len() + 2;
        char::from_u32(u32::from_str_radix(digits, 16).ok()?)
    }

    pub(super) fn character(&mut self, start: usize) {
        self.bump();
        let value = match self.bump() {
            Some('\\') => self.escape(true),
            other => other,
        };
        let closed = self.peek() == Some('\'');
        if closed {
            self.bump();
        }
        match value {
            Some(c) if closed => self.push(Token::Char(c), start),
            _ => {
                self.take_while(|c| !matches!(c, '\'' | '"' | ',' | '\n' | ')' | ']' | '}'));
                if self.peek() == Some('\'') {
                    self.bump();
                }
                self.fault(
                    start,
                    "single quotes hold one character only",
                    "expected a text in double quotes",
                    "write texts and values in double quotes, as in \"10 ft 2 in\"",
                    false,
                );
                self.push(Token::Broken, start);
            }
        }
    }

    pub(super) fn raw_string(&mut self, start: usize) {
        let hashes = raw_string_hashes(self.rest()).unwrap_or(0);
        self.at += hashes + 2;
        let ending = format!("\"{}", "#".repeat(hashes));
        let rest = self.rest();
        let Some(len) = rest.find(&ending) else {
            return self.not_closed(start, "a raw text", &format!("`{ending}`"));
        };
        self.at += len + ending.len();
        self.push(Token::Str(rest[..len].into()), start);
    }

    pub(super) fn byte_string(&mut self, start: usize) {
        self.bump();
        match self.peek() {
            Some('"') => self.string(start),
            Some('\'') => self.character(start),
            _ => self.raw_string(start),
        }
        if let Some(last) = self.tokens.last_mut() {
            last.0 = Token::Broken;
        }
        self.fault(
            start,
            "byte texts are not used in bay files",
            "expected a plain text",
            "remove the `b` before the quote",
            true,
        );
    }
}

/// How many `#` stand between the `r` and the quote of a raw text; none if it is no raw text.
pub(super) fn raw_string_hashes(rest: &str) -> Option<usize> {
    let after = rest.strip_prefix('r')?;
    let hashes = after.bytes().take_while(|b| *b == b'#').count();
    after[hashes..].starts_with('"').then_some(hashes)
}

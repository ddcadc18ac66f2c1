//! Which tokens is the text made of?

mod attributes;
mod strings;

use unicode_ident::is_xid_start;

use super::{Fault, Span, limits, number};
use strings::raw_string_hashes;

/// A token.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Token {
    /// `(`, `[` or `{`.
    Open(char),
    /// `)`, `]` or `}`.
    Close(char),
    /// `,`
    Comma,
    /// `:`
    Colon,
    /// A name or bare word.
    Word(String),
    /// A text.
    Str(String),
    /// A character.
    Char(char),
    /// A number, as written.
    Number(String),
    /// Something that was already reported; stands where a value may stand.
    Broken,
}

pub(super) struct Lexer<'a> {
    text: &'a str,
    pub(super) source: u16,
    at: usize,
    pub(super) tokens: Vec<(Token, Span)>,
    pub(super) faults: Vec<Fault>,
    /// True when the rest of the text was not looked at: that brackets seem open says nothing.
    pub(super) cut_short: bool,
    /// True when some text in quotes runs over the end of its line.
    pub(super) text_over_lines: bool,
    texts_end_with_their_line: bool,
}

/// Makes tokens of a whole text. Goes on after faults.
///
/// A text in quotes may run over several lines, yet in a bay file a forgotten quote is what makes
/// it do so. `texts_end_with_their_line` tells such texts as faults and goes on behind them.
pub(super) fn lex(source: u16, text: &str, texts_end_with_their_line: bool) -> Lexer<'_> {
    let mut lexer = Lexer {
        text,
        source,
        at: 0,
        tokens: Vec::new(),
        faults: Vec::new(),
        cut_short: false,
        text_over_lines: false,
        texts_end_with_their_line,
    };
    lexer.attributes();
    while lexer.faults.len() < limits::FAULTS && lexer.one_token() {}
    lexer
}

impl<'a> Lexer<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn bump(&mut self) -> Option<char> {
        let c = self.peek()?;
        self.at += c.len_utf8();
        Some(c)
    }

    fn take_while(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let rest = self.rest();
        let len = rest.find(|c| !wanted(c)).unwrap_or(rest.len());
        self.at += len;
        &rest[..len]
    }

    #[allow(clippy::cast_possible_truncation)] // a text is at most 4 MiB
    fn span_from(&self, start: usize) -> Span {
        Span {
            source: self.source,
            start: start as u32,
            end: self.at as u32,
        }
    }

    fn fault(&mut self, start: usize, message: &str, label: &str, help: &str, by_choice: bool) {
        self.faults.push(Fault {
            span: self.span_from(start),
            message: message.into(),
            label: label.into(),
            help: help.into(),
            refused_by_choice: by_choice,
        });
    }

    fn push(&mut self, token: Token, start: usize) {
        let span = self.span_from(start);
        self.tokens.push((token, span));
    }

    fn skip_blank(&mut self) {
        loop {
            // Most blanks are plain spaces.
            let rest = self.rest();
            self.at += rest.bytes().position(|b| b != b' ').unwrap_or(rest.len());
            self.take_while(is_blank);
            let start = self.at;
            if self.peek() != Some('/') {
                return;
            }
            if self.rest().starts_with("//") {
                self.take_while(|c| c != '\n');
            } else if self.rest().starts_with("/*") {
                self.block_comment(start);
            } else {
                return;
            }
        }
    }

    fn block_comment(&mut self, start: usize) {
        self.at += 2;
        let mut level = 1;
        while level > 0 {
            self.take_while(|c| c != '/' && c != '*');
            if self.rest().starts_with("/*") {
                self.at += 2;
                level += 1;
            } else if self.rest().starts_with("*/") {
                self.at += 2;
                level -= 1;
            } else if self.bump().is_none() {
                self.at = start + 2;
                self.fault(
                    start,
                    "a comment is not closed",
                    "this comment runs to the end of the file",
                    "close it with `*/`, or use `//` for a comment of one line",
                    false,
                );
                self.at = self.text.len();
                self.cut_short = true;
                return;
            }
        }
    }

    /// Adds one token; false at the end of the text.
    fn one_token(&mut self) -> bool {
        self.skip_blank();
        let start = self.at;
        if self.tokens.len() >= limits::TOKENS {
            self.at = self.text.len();
            self.cut_short = true;
            self.fault(
                start,
                "the file holds too much",
                "reading stopped here",
                &format!(
                    "a bay file holds at most {} words and signs",
                    limits::TOKENS
                ),
                true,
            );
            return false;
        }
        let Some(c) = self.peek() else { return false };
        let rest = self.rest();
        match c {
            '(' | '[' | '{' => {
                self.bump();
                self.push(Token::Open(c), start);
            }
            ')' | ']' | '}' => {
                self.bump();
                self.push(Token::Close(c), start);
            }
            ',' => {
                self.bump();
                self.push(Token::Comma, start);
            }
            ':' => {
                self.bump();
                self.push(Token::Colon, start);
            }
            '"' => self.string(start),
            '\'' => self.character(start),
            '0'..='9' | '+' | '-' | '.' => self.number(start),
            'r' if raw_string_hashes(rest).is_some() => self.raw_string(start),
            'b' if rest.starts_with("b\"")
                || rest.starts_with("b'")
                || rest
                    .strip_prefix('b')
                    .is_some_and(|r| raw_string_hashes(r).is_some()) =>
            {
                self.byte_string(start);
            }
            'r' if rest.starts_with("r#") => {
                self.at += 2;
                let name = self.take_while(|c| matches!(c, '.' | '+' | '-') || is_xid_continue(c));
                if name.is_empty() {
                    self.fault(
                        start,
                        "a name is missing",
                        "expected a name after `r#`",
                        "remove the `r#`",
                        false,
                    );
                    self.push(Token::Broken, start);
                } else {
                    self.push(Token::Word(name.into()), start);
                }
            }
            c if c == '_' || is_xid_start(c) => {
                let word = self.take_while(is_xid_continue);
                let token = if number::is_word_for_number(word) {
                    Token::Number(word.into())
                } else {
                    Token::Word(word.into())
                };
                self.push(token, start);
            }
            _ => self.stray(start),
        }
        true
    }

    fn stray(&mut self, start: usize) {
        let first = self.bump().unwrap_or(' ');
        let help = match first {
            // Curly quotes come with copied text; what they enclose belongs to the fault.
            '\u{201c}' | '\u{201d}' | '\u{201e}' | '\u{2018}' | '\u{2019}' | '\u{b4}' | '`' => {
                self.take_while(|c| {
                    !matches!(c, '\u{201c}' | '\u{201d}' | '\u{2019}' | ',' | '\n')
                });
                if matches!(self.peek(), Some('\u{201c}' | '\u{201d}' | '\u{2019}')) {
                    self.bump();
                }
                "write straight double quotes: \"10 ft 2 in\""
            }
            '\u{2032}' | '\u{2033}' | '\u{bd}' | '\u{bc}' | '\u{be}' => {
                "put lengths in double quotes, as in \"10 ft 2 1/2 in\""
            }
            _ => "remove it, or put the text in double quotes",
        };
        // One message for a run of strays is enough.
        self.take_while(|c| {
            !is_blank(c) && !"()[]{},:\"'/".contains(c) && c != '_' && !is_xid_continue(c)
        });
        self.fault(
            start,
            "this sign has no meaning here",
            "not understood",
            help,
            false,
        );
        self.push(Token::Broken, start);
    }

    fn number(&mut self, start: usize) {
        let run = self
            .take_while(|c| matches!(c, '+' | '-' | '.' | '=') || c == '_' || is_xid_continue(c));
        match number::judge(run) {
            number::Verdict::Good => self.push(Token::Number(run.into()), start),
            number::Verdict::NotUsed => {
                self.fault(
                    start,
                    "ranges and typed numbers are not used in bay files",
                    "expected a plain number",
                    "write a plain number such as 15, or a value with its unit in quotes",
                    true,
                );
                self.push(Token::Broken, start);
            }
            number::Verdict::Bad => {
                self.fault(
                    start,
                    &format!("`{}` is not a number", shorten(run)),
                    "expected a plain number, or a value with its unit in quotes",
                    &format!(
                        "put values with units in double quotes, as in \"{}\"",
                        shorten(run)
                    ),
                    false,
                );
                self.push(Token::Broken, start);
            }
        }
    }
}

/// True where a word goes on. ASCII first: the tables are for the rest.
fn is_xid_continue(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || (!c.is_ascii() && unicode_ident::is_xid_continue(c))
}

const fn is_blank(c: char) -> bool {
    matches!(
        c,
        ' ' | '\t'
            | '\n'
            | '\r'
            | '\x0B'
            | '\x0C'
            | '\u{85}'
            | '\u{200E}'
            | '\u{200F}'
            | '\u{2028}'
            | '\u{2029}'
    )
}

/// At most 24 characters of a text, for a message.
fn shorten(text: &str) -> String {
    match text.char_indices().nth(24) {
        None => text.into(),
        Some((end, _)) => format!("{}...", &text[..end]),
    }
}

//! Which `#![..]` lines stand before the value?

use super::{Lexer, Token};

impl Lexer<'_> {
    /// `#![enable(..)]`, `#![type = ".."]` and `#![schema = ".."]` before the value.
    pub(super) fn attributes(&mut self) {
        const EXTENSIONS: [&str; 4] = [
            "unwrap_newtypes",
            "implicit_some",
            "unwrap_variant_newtypes",
            "explicit_struct_names",
        ];
        loop {
            self.skip_blank();
            let start = self.at;
            if self.peek() != Some('#') {
                return;
            }
            let before = self.tokens.len();
            self.bump();
            self.skip_blank();
            while self.peek().is_some_and(|c| c != ']') && self.tokens.len() < before + 20 {
                if self.rest().starts_with('!') || self.rest().starts_with('=') {
                    self.push(Token::Broken, self.at);
                    self.bump();
                } else if !self.one_token() {
                    break;
                }
                self.skip_blank();
            }
            self.one_token();
            let tokens: Vec<Token> = self.tokens.drain(before..).map(|(t, _)| t).collect();
            let word = |t: &Token, names: &[&str]| matches!(t, Token::Word(w) if names.contains(&w.as_str()));
            let good = match tokens.as_slice() {
                [
                    Token::Broken,
                    Token::Open('['),
                    key,
                    Token::Broken,
                    Token::Str(_),
                    Token::Close(']'),
                ] => word(key, &["type", "schema"]),
                [
                    Token::Broken,
                    Token::Open('['),
                    key,
                    Token::Open('('),
                    list @ ..,
                    Token::Close(')'),
                    Token::Close(']'),
                ] => {
                    word(key, &["enable"])
                        && !list.is_empty()
                        && list.iter().enumerate().all(|(i, t)| {
                            if i % 2 == 0 {
                                word(t, &EXTENSIONS)
                            } else {
                                *t == Token::Comma
                            }
                        })
                }
                _ => false,
            };
            if !good {
                self.fault(
                    start,
                    "this `#` line is not understood",
                    "expected `#![enable(..)]`",
                    "remove the line: a bay file needs none",
                    false,
                );
                return;
            }
        }
    }
}

//! Which value do the tokens make, and which faults of grammar stand in the way?

use super::lexer::{Lexer, Token, lex};
use super::{Fault, Field, Kind, Name, Node, Parsed, Span, limits};

/// Reads a text. `source` is copied into every [`Span`].
#[must_use]
pub fn parse(source: u16, text: &str) -> Parsed {
    let lexer = lex(source, text, false);
    let over_lines = lexer.text_over_lines;
    let parsed = parse_tokens(text, lexer);
    if parsed.faults.is_empty() || !over_lines {
        return parsed;
    }
    // Something is wrong, and a text runs over several lines: the quote that was forgotten is the
    // fault to tell, not what followed from it.
    parse_tokens(text, lex(source, text, true))
}

fn parse_tokens(text: &str, lexer: Lexer<'_>) -> Parsed {
    #[allow(clippy::cast_possible_truncation)] // a text is at most 4 MiB
    let end = text.trim_end().len() as u32;
    let mut parser = Parser {
        text,
        end: Span {
            source: lexer.source,
            start: end,
            end,
        },
        tokens: lexer.tokens,
        at: 0,
        faults: lexer.faults,
        open: Vec::new(),
        gave_up: lexer.cut_short,
    };
    let root = parser.value();
    if root.is_some() && !parser.gave_up {
        parser.expect_end();
    }
    parser.faults.sort_by_key(|f| f.span.start);
    parser.faults.truncate(limits::FAULTS);
    Parsed {
        root,
        faults: parser.faults,
    }
}

struct Parser<'a> {
    text: &'a str,
    tokens: Vec<(Token, Span)>,
    at: usize,
    end: Span,
    faults: Vec<Fault>,
    /// The brackets now open.
    open: Vec<(char, Span)>,
    /// Set when going on would only repeat one fault.
    gave_up: bool,
}

impl Parser<'_> {
    fn peek(&self) -> Option<&Token> {
        self.tokens.get(self.at).map(|t| &t.0)
    }

    fn span(&self) -> Span {
        self.tokens.get(self.at).map_or(self.end, |t| t.1)
    }

    fn last_span(&self) -> Span {
        self.at
            .checked_sub(1)
            .and_then(|i| self.tokens.get(i))
            .map_or(self.end, |t| t.1)
    }

    fn fault(&mut self, span: Span, message: String, label: &str, help: String) {
        if self.faults.len() < limits::FAULTS * 2 {
            self.faults.push(Fault {
                span,
                message,
                label: label.into(),
                help,
                refused_by_choice: false,
            });
        }
    }

    fn expect_end(&mut self) {
        if self.at < self.tokens.len() {
            let span = self.span();
            self.fault(
                span,
                "the file goes on after its value is closed".into(),
                "expected the end of the file",
                "check for a `)` too many further up, or remove what follows".into(),
            );
        }
    }

    fn value(&mut self) -> Option<Node> {
        let span = self.span();
        let next = self.tokens.get_mut(self.at);
        let Some(token) = next.map(|(token, _)| match token {
            // These may have to be looked at again.
            Token::Close(_) | Token::Comma | Token::Colon => token.clone(),
            // The others are used up.
            _ => std::mem::replace(token, Token::Broken),
        }) else {
            if !self.gave_up {
                self.fault(
                    span,
                    "the file ends where a value was expected".into(),
                    "expected a value",
                    "write the value, as in \"8 ft\"".into(),
                );
            }
            return None;
        };
        self.at += 1;
        let kind = match token {
            Token::Str(s) => Kind::Str(s),
            Token::Char(c) => Kind::Char(c),
            Token::Number(n) => Kind::Number(n),
            Token::Word(w) => return self.word(w, span),
            Token::Open('(') => return self.parens(None, span),
            Token::Open('[') => return self.list(span),
            Token::Open(_) => return self.map(span),
            Token::Broken => return None,
            Token::Close(_) | Token::Comma | Token::Colon => {
                self.at -= 1;
                let written = &self.text[span.range()];
                self.fault(
                    span,
                    format!("`{written}` stands where a value was expected"),
                    "expected a value",
                    "write the value before it, as in \"8 ft\"".into(),
                );
                return None;
            }
        };
        Some(Node { span, kind })
    }

    fn word(&mut self, word: String, span: Span) -> Option<Node> {
        let has_bracket = self.peek() == Some(&Token::Open('('));
        let kind = match word.as_str() {
            "true" => Kind::Bool(true),
            "false" => Kind::Bool(false),
            "Some" => return self.some(span, has_bracket),
            "None" => Kind::Word(word),
            _ if has_bracket => {
                self.at += 1;
                return self.parens(Some(Name { text: word, span }), span);
            }
            _ => Kind::Word(word),
        };
        Some(Node { span, kind })
    }

    fn some(&mut self, span: Span, has_bracket: bool) -> Option<Node> {
        let name = Name {
            text: "Some".into(),
            span,
        };
        let node = if has_bracket {
            self.at += 1;
            self.parens(Some(name), span)?
        } else {
            Node {
                span,
                kind: Kind::Word("Some".into()),
            }
        };
        if !matches!(&node.kind, Kind::Tuple { items, .. } if items.len() == 1) {
            self.fault(
                node.head(),
                "`Some` holds exactly one value".into(),
                "expected `Some(value)`",
                "write the value alone, without `Some`".into(),
            );
        }
        Some(node)
    }

    /// Opens a bracket; none when it nests too deep (then the whole bracket is skipped).
    fn enter(&mut self, bracket: char, span: Span) -> Option<()> {
        if self.open.len() >= limits::DEPTH {
            self.faults.push(Fault {
                span,
                message: format!("brackets nest deeper than {}", limits::DEPTH),
                label: "this one is too deep".into(),
                help: "a bay file needs about six levels; remove brackets".into(),
                refused_by_choice: true,
            });
            self.gave_up = true;
            self.at = self.tokens.len();
            return None;
        }
        self.open.push((bracket, span));
        Some(())
    }

    /// After an item: true when another may follow, false when the bracket is closed or given up.
    fn more(&mut self, close: char) -> bool {
        match self.peek() {
            Some(Token::Comma) => {
                self.at += 1;
                true
            }
            None => false,
            Some(Token::Close(_)) => false,
            Some(_) => {
                let span = self.span();
                // A fault already told at this very place needs no second message.
                if !matches!(self.peek(), Some(Token::Broken)) {
                    self.fault(
                        span,
                        format!("a `,` or `{close}` is missing before this"),
                        "expected `,` or the closing bracket before this",
                        "put a `,` between two items".into(),
                    );
                }
                if matches!(self.peek(), Some(Token::Broken | Token::Colon)) {
                    self.skip_item();
                    return self.more(close);
                }
                true
            }
        }
    }

    /// Skips to the next `,` or closing bracket of the innermost open bracket.
    fn skip_item(&mut self) {
        let mut depth = 0_usize;
        while let Some(token) = self.peek() {
            match token {
                Token::Open(_) => depth += 1,
                Token::Close(_) if depth == 0 => return,
                Token::Close(_) => depth -= 1,
                Token::Comma if depth == 0 => return,
                _ => {}
            }
            self.at += 1;
        }
    }

    /// Closes the innermost bracket and returns the place of its end.
    fn leave(&mut self, close: char) -> Span {
        let Some((bracket, opened)) = self.open.pop() else {
            return self.last_span();
        };
        let span = self.span();
        match self.peek() {
            Some(Token::Close(c)) if *c == close => {
                self.at += 1;
                span
            }
            Some(Token::Close(c)) => {
                let wrong = *c;
                let message = format!("`{wrong}` closes what `{bracket}` opened");
                self.fault(
                    span,
                    message,
                    "expected another bracket",
                    format!("write `{close}` here"),
                );
                // When an outer bracket waits for this sign, it is the inner one that was forgotten.
                if !self.open.iter().any(|(b, _)| closing(*b) == wrong) {
                    self.at += 1;
                }
                span
            }
            _ => {
                if !self.gave_up {
                    self.fault(
                        opened,
                        format!("`{bracket}` is not closed"),
                        "opened here",
                        format!("add the missing `{close}`"),
                    );
                    self.gave_up = true;
                }
                self.last_span()
            }
        }
    }

    fn parens(&mut self, name: Option<Name>, start: Span) -> Option<Node> {
        let opened = self.last_span();
        self.enter('(', opened)?;
        let named = matches!(
            (self.peek(), self.tokens.get(self.at + 1)),
            (Some(Token::Word(_)), Some((Token::Colon, _)))
        );
        let kind = if named {
            Kind::Struct {
                name,
                fields: self.fields(),
            }
        } else {
            Kind::Tuple {
                name,
                items: self.items(')'),
            }
        };
        let span = start.to(self.leave(')'));
        Some(Node { span, kind })
    }

    fn list(&mut self, start: Span) -> Option<Node> {
        self.enter('[', start)?;
        let items = self.items(']');
        let span = start.to(self.leave(']'));
        Some(Node {
            span,
            kind: Kind::List(items),
        })
    }

    fn items(&mut self, close: char) -> Vec<Node> {
        let mut items = Vec::new();
        while !matches!(self.peek(), None | Some(Token::Close(_))) {
            match self.value() {
                Some(item) => items.push(item),
                None => self.skip_item(),
            }
            if !self.more(close) {
                break;
            }
        }
        items
    }

    fn fields(&mut self) -> Vec<Field> {
        let mut fields = Vec::new();
        while !matches!(self.peek(), None | Some(Token::Close(_))) {
            match self.field() {
                Some(field) => fields.push(field),
                None => self.skip_item(),
            }
            if fields.len() > limits::FIELDS {
                self.too_many_fields();
                break;
            }
            if !self.more(')') {
                break;
            }
        }
        fields
    }

    fn too_many_fields(&mut self) {
        self.faults.push(Fault {
            span: self.span(),
            message: format!("a record holds more than {} fields", limits::FIELDS),
            label: "reading stopped here".into(),
            help: "no record of a bay file has so many: check that this is the right file".into(),
            refused_by_choice: true,
        });
        self.gave_up = true;
        self.at = self.tokens.len();
    }

    fn field(&mut self) -> Option<Field> {
        let span = self.span();
        let Some(Token::Word(word)) = self.peek().cloned() else {
            if self.peek() != Some(&Token::Broken) {
                self.fault(
                    span,
                    "a field needs a name".into(),
                    "expected `name: value`",
                    "write the field's name and a `:` before the value".into(),
                );
            }
            return None;
        };
        let name = Name { text: word, span };
        self.at += 1;
        if self.peek() != Some(&Token::Colon) {
            self.fault(
                span,
                format!("the field `{}` has no `:` after its name", name.text),
                "expected `:` and a value after this",
                format!("write `{}: ` and the value", name.text),
            );
            return None;
        }
        self.at += 1;
        let value = self.value()?;
        Some(Field { name, value })
    }

    fn map(&mut self, start: Span) -> Option<Node> {
        self.enter('{', start)?;
        let mut entries = Vec::new();
        while !matches!(self.peek(), None | Some(Token::Close(_))) {
            match self.entry() {
                Some(entry) => entries.push(entry),
                None => self.skip_item(),
            }
            if !self.more('}') {
                break;
            }
        }
        let span = start.to(self.leave('}'));
        Some(Node {
            span,
            kind: Kind::Map(entries),
        })
    }

    fn entry(&mut self) -> Option<(Node, Node)> {
        let key = self.value()?;
        if self.peek() != Some(&Token::Colon) {
            let span = self.span();
            self.fault(
                span,
                "an entry of a map needs a `:`".into(),
                "expected `:`",
                "write `key: value`".into(),
            );
            return None;
        }
        self.at += 1;
        Some((key, self.value()?))
    }
}

const fn closing(open: char) -> char {
    match open {
        '(' => ')',
        '[' => ']',
        _ => '}',
    }
}

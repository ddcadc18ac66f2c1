//! What is a value in a RON text, and where does it stand?

/// A place: bytes `start..end` of one source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Span {
    /// Number of the source in the caller's list of sources.
    pub source: u16,
    /// First byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

impl Span {
    /// From this place's start to another's end, both in the same source.
    #[must_use]
    pub const fn to(self, last: Self) -> Self {
        Self {
            source: self.source,
            start: self.start,
            end: last.end,
        }
    }

    /// The bytes as a range, to slice the text with.
    #[must_use]
    pub const fn range(self) -> std::ops::Range<usize> {
        self.start as usize..self.end as usize
    }
}

/// A name with its place: of a field, a record or a variant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Name {
    /// The name itself.
    pub text: String,
    /// Where it stands.
    pub span: Span,
}

/// `name: value` in a record.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// The field's name.
    pub name: Name,
    /// Its value.
    pub value: Node,
}

/// A value with its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// From the value's first byte to its last, its name and brackets included.
    pub span: Span,
    /// What it is.
    pub kind: Kind,
}

/// What a value is.
#[derive(Debug, Clone, PartialEq)]
pub enum Kind {
    /// `(a: 1, b: 2)` or `Name(a: 1)`.
    Struct {
        /// The name before the bracket.
        name: Option<Name>,
        /// The fields as written, in order; duplicates are kept.
        fields: Vec<Field>,
    },
    /// `(1, 2)`, `Name(1)` or `()`.
    Tuple {
        /// The name before the bracket.
        name: Option<Name>,
        /// The items.
        items: Vec<Node>,
    },
    /// `[1, 2]`.
    List(Vec<Node>),
    /// `{"a": 1}`.
    Map(Vec<(Node, Node)>),
    /// A bare word: `NoseIn`, `None`.
    Word(String),
    /// Text, with its escapes resolved.
    Str(String),
    /// One character.
    Char(char),
    /// A number as written.
    Number(String),
    /// `true` or `false`.
    Bool(bool),
}

impl Node {
    /// What the value is, in words for a message: "a number", "a list".
    #[must_use]
    pub fn what(&self) -> String {
        match &self.kind {
            Kind::Struct { name: None, .. } => "a record `(..)`".into(),
            Kind::Struct { name: Some(n), .. } | Kind::Tuple { name: Some(n), .. } => {
                format!("`{}(..)`", n.text)
            }
            Kind::Tuple { items, .. } if items.is_empty() => "an empty `()`".into(),
            Kind::Tuple { .. } => "a tuple `(.., ..)`".into(),
            Kind::List(_) => "a list `[..]`".into(),
            Kind::Map(_) => "a map `{..}`".into(),
            Kind::Word(w) => format!("the word `{w}`"),
            Kind::Str(_) => "a text in quotes".into(),
            Kind::Char(_) => "a character in single quotes".into(),
            Kind::Number(_) => "a bare number".into(),
            Kind::Bool(b) => format!("`{b}`"),
        }
    }

    /// The value's first word or bracket: the place to point at when the whole is too long.
    #[must_use]
    pub fn head(&self) -> Span {
        match &self.kind {
            Kind::Struct { name: Some(n), .. } | Kind::Tuple { name: Some(n), .. } => n.span,
            Kind::Struct { .. } | Kind::Tuple { .. } | Kind::List(_) | Kind::Map(_) => Span {
                end: self.span.start + 1,
                ..self.span
            },
            _ => self.span,
        }
    }
}

//! What does a RON text say, where does each value stand, and what is wrong with its grammar?
//!
//! A small reader of our own: it goes on after a fault, so that every fault is told at once; each
//! value keeps its place, so that a text can be changed with every comment and blank kept
//! ([`edit`](super::edit)). It reads what the `ron` crate reads, less what a bay file has no use
//! for (type suffixes on numbers, ranges, byte strings) and within the limits of [`limits`]. The
//! tests compare the two.

mod lexer;
mod number;
mod parser;
pub(super) mod path;
mod tree;

pub use parser::parse;
pub use path::value_at;
pub use tree::{Field, Kind, Name, Node, Span};

/// How much a file may hold; past these it is refused, not read slowly.
pub mod limits {
    /// Largest file, in bytes.
    pub const FILE_BYTES: usize = 4 * 1024 * 1024;
    /// Deepest nesting of brackets.
    pub const DEPTH: usize = 64;
    /// Most tokens in one file: some more than the most obstacles take with every field given.
    pub const TOKENS: usize = 120_000;
    /// Most fields in one record.
    pub const FIELDS: usize = 1000;
    /// Grammar faults told before the reader gives up.
    pub const FAULTS: usize = 50;
}

/// One fault of grammar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Where.
    pub span: Span,
    /// What is wrong, as a sentence without a full stop.
    pub message: String,
    /// What was expected there.
    pub label: String,
    /// What to write instead.
    pub help: String,
    /// True when the text is good RON that is refused by choice: past a limit, or a form that bay
    /// files have no use for.
    pub refused_by_choice: bool,
}

/// What was read: a tree as far as it goes, and every fault met.
#[derive(Debug, Clone, PartialEq)]
pub struct Parsed {
    /// The value; none when nothing could be made of the text.
    pub root: Option<Node>,
    /// The faults, in the order of the text.
    pub faults: Vec<Fault>,
}

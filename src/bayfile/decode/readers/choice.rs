//! How is one of a few words or variants read?

use super::{Read, wrong_kind};
use crate::bayfile::context::Context;
use crate::bayfile::decode::fields::nearest;
use crate::bayfile::syntax::{Kind as Written, Name, Node};

/// One of a few words.
pub(in crate::bayfile::decode) struct Words<'a, T> {
    what: &'static str,
    table: &'a [(&'static str, T)],
}

/// One of a few words.
pub(in crate::bayfile::decode) const fn words<'a, T>(
    what: &'static str,
    table: &'a [(&'static str, T)],
) -> Words<'a, T> {
    Words { what, table }
}

impl<T: Copy> Read for Words<'_, T> {
    type Out = T;

    fn read(&self, cx: &Context, node: &Node) -> Option<T> {
        let Written::Word(word) = &node.kind else {
            return wrong_kind(cx, node, self.what, &self.example());
        };
        let found = self.table.iter().find(|(w, _)| w == word);
        if found.is_none() {
            let known: Vec<&str> = self.table.iter().map(|(w, _)| *w).collect();
            unknown_word(cx, node, self.what, word, &known);
        }
        found.map(|(_, value)| *value)
    }

    fn example(&self) -> String {
        self.table.first().map_or("..", |(w, _)| w).into()
    }
}

fn unknown_word(cx: &Context, node: &Node, what: &str, word: &str, known: &[&str]) {
    let list = known.join(", ");
    let help = match nearest(word, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`? Known: {list}"),
        None => format!("known: {list}"),
    };
    let word: String = word.chars().take(40).collect();
    cx.error(
        node.head(),
        &format!("`{word}` is not {what}"),
        &format!("expected {what}"),
        &help,
    );
}

/// The name of a variant, `Name`, `Name(..)`; none after a fault.
pub(in crate::bayfile::decode) fn variant(
    cx: &Context,
    node: &Node,
    what: &str,
    known: &[&'static str],
) -> Option<&'static str> {
    let name = match &node.kind {
        Written::Word(word) => word,
        Written::Struct {
            name: Some(Name { text, .. }),
            ..
        }
        | Written::Tuple {
            name: Some(Name { text, .. }),
            ..
        } => text,
        _ => {
            return wrong_kind(
                cx,
                node,
                what,
                &format!("{}(..)", known.first().unwrap_or(&"")),
            );
        }
    };
    let found = known.iter().copied().find(|k| k == name);
    if found.is_none() {
        unknown_word(cx, node, what, name, known);
    }
    found
}

/// The one value in `Name(value)`.
pub(in crate::bayfile::decode) fn one_item<R: Read>(
    cx: &Context,
    node: &Node,
    reader: &R,
) -> Option<R::Out> {
    match &node.kind {
        Written::Tuple { items, .. } if items.len() == 1 => reader.read(cx, &items[0]),
        _ => wrong_kind(
            cx,
            node,
            "a word with one value in brackets",
            &format!("{}({})", word_of(node), reader.example()),
        ),
    }
}

fn word_of(node: &Node) -> &str {
    match &node.kind {
        Written::Word(word) => word,
        Written::Struct { name: Some(n), .. } | Written::Tuple { name: Some(n), .. } => &n.text,
        _ => "Name",
    }
}

//! What is one value in RON source, and how is a text written as one?

use super::EditError;
use crate::bayfile::syntax::{Field, Kind, Name, Node, parse};
use crate::letters;

/// A text in quotes, as bay files write it: quotes, backslashes and control characters escaped.
#[must_use]
pub fn quoted(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            c if letters::acts(c) => out.push_str(&format!("\\u{{{:x}}}", u32::from(c))),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// The source without the blanks around it, when it is one value and nothing beside it: a comment
/// at its end could swallow what follows.
pub(super) fn one_value(source: &str) -> Result<&str, EditError> {
    let value = source.trim();
    let parsed = parse(0, value);
    let whole = |root: &Node| root.span.range() == (0..value.len());
    if parsed.faults.is_empty() && parsed.root.as_ref().is_some_and(whole) && !value.contains('\0')
    {
        Ok(value)
    } else {
        Err(EditError::NotAValue(source.into()))
    }
}

/// True for a record, a tuple, a list or a variant with a bracket.
pub(super) fn has_brackets(value: &str) -> bool {
    parse(0, value).root.is_some_and(|root| {
        matches!(
            root.kind,
            Kind::Struct { .. } | Kind::Tuple { .. } | Kind::List(_) | Kind::Map(_)
        )
    })
}

/// A value with the lines after its first one indented by `indent` and more, as deep among one
/// another as before, and each ended as the file's lines are. Texts in quotes are left alone.
pub(super) fn laid_out(value: &str, indent: &str, line_end: &str) -> String {
    let mut texts = Vec::new();
    if let Some(root) = parse(0, value).root {
        texts_over_lines(&root, &mut texts);
    }
    let breaks: Vec<usize> = value
        .match_indices('\n')
        .map(|(at, _)| at)
        .filter(|at| !texts.iter().any(|text| text.contains(at)))
        .collect();
    let Some(first) = breaks.first() else {
        return value.into();
    };
    let ends = breaks.iter().skip(1).copied().chain([value.len()]);
    let lines: Vec<&str> = breaks
        .iter()
        .zip(ends)
        .map(|(start, end)| without_return(&value[start + 1..end]))
        .collect();
    let depth = |line: &&&str| line.len() - line.trim_start_matches([' ', '\t']).len();
    let shared = lines
        .iter()
        .filter(|l| !l.trim().is_empty())
        .map(|l| depth(&l))
        .min();
    let mut out = without_return(&value[..*first]).to_string();
    for line in &lines {
        out.push_str(line_end);
        if !line.trim().is_empty() {
            out.push_str(indent);
            out.push_str(&line[shared.unwrap_or(0)..]);
        }
    }
    out
}

fn without_return(line: &str) -> &str {
    line.strip_suffix('\r').unwrap_or(line)
}

/// Every text and character, as each may hold line ends of its own.
fn texts_over_lines(node: &Node, out: &mut Vec<std::ops::Range<usize>>) {
    match &node.kind {
        Kind::Struct { fields, .. } => {
            fields.iter().for_each(|f| texts_over_lines(&f.value, out));
        }
        Kind::Tuple { items, .. } | Kind::List(items) => {
            items.iter().for_each(|n| texts_over_lines(n, out));
        }
        Kind::Map(entries) => entries.iter().for_each(|(key, value)| {
            texts_over_lines(key, out);
            texts_over_lines(value, out);
        }),
        Kind::Str(_) | Kind::Char(_) => out.push(node.span.range()),
        Kind::Word(_) | Kind::Number(_) | Kind::Bool(_) => {}
    }
}

/// True when two trees say the same, wherever they stand.
pub(super) fn same(a: &Node, b: &Node) -> bool {
    let named = |a: &Option<Name>, b: &Option<Name>| {
        a.as_ref().map(|n| &n.text) == b.as_ref().map(|n| &n.text)
    };
    let all =
        |a: &[Node], b: &[Node]| a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b));
    match (&a.kind, &b.kind) {
        (Kind::Struct { name: m, fields: a }, Kind::Struct { name: n, fields: b }) => {
            let alike = |(a, b): (&Field, _)| field(a, b);
            named(m, n) && a.len() == b.len() && a.iter().zip(b).all(alike)
        }
        (Kind::Tuple { name: m, items: a }, Kind::Tuple { name: n, items: b }) => {
            named(m, n) && all(a, b)
        }
        (Kind::List(a), Kind::List(b)) => all(a, b),
        (Kind::Map(a), Kind::Map(b)) => {
            let alike = |((k, v), (l, w)): (&(Node, Node), &(Node, Node))| same(k, l) && same(v, w);
            a.len() == b.len() && a.iter().zip(b).all(alike)
        }
        (a, b) => a == b,
    }
}

fn field(a: &Field, b: &Field) -> bool {
    a.name.text == b.name.text && same(&a.value, &b.value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quoted_texts_are_read_back() {
        for text in [
            "",
            "12 ft",
            "10' 2\"",
            "a\\b",
            "l1\nl2\r\n\tx",
            "\u{0}\u{7}\u{85}",
            "Grüße \u{200e}",
        ] {
            let source = quoted(text);
            assert!(!source.contains(|c: char| c.is_control()), "{source}");
            assert_eq!(
                parse(0, &source).root.unwrap().kind,
                Kind::Str(text.into()),
                "{source}"
            );
        }
    }

    #[test]
    fn one_value_and_nothing_beside_it() {
        for good in [
            "1",
            " \"12 ft\" ",
            "Flat(h: 1)",
            "(a: /* in */ 1, // in\n)",
            "None",
            "[]",
        ] {
            assert_eq!(one_value(good), Ok(good.trim()));
        }
        for bad in [
            "",
            "1, b: 2",
            "1 // end",
            "/* a */ 1",
            "(",
            "1)",
            "a: 1",
            "12 ft",
            "\"\0\"",
        ] {
            assert_eq!(
                one_value(bad),
                Err(EditError::NotAValue(bad.into())),
                "{bad}"
            );
        }
    }

    #[test]
    fn lines_are_moved_as_one() {
        let value = "Box(\n      a: 1,\n\n        b: \"x\n y\",\r\n    )";
        assert_eq!(
            laid_out(value, "\t", "\r\n"),
            "Box(\r\n\t  a: 1,\r\n\r\n\t    b: \"x\n y\",\r\n\t)"
        );
        assert_eq!(laid_out("(a: 1)", "    ", "\n"), "(a: 1)");
    }

    #[test]
    fn trees_alike() {
        let alike = |a, b| same(&parse(0, a).root.unwrap(), &parse(0, b).root.unwrap());
        assert!(alike(
            "(a: [1, X(2)], b: {1: 2})",
            "( a: [ 1, X( 2, ) ], b: {1:2,} )"
        ));
        for other in [
            "(a: [1, Y(2)], b: {1: 2})",
            "(a: [1], b: {1: 2})",
            "(a: [1, X(2)], c: {1: 2})",
            "(a: [1, X(2)], b: {1: 3})",
            "X(a: [1, X(2)], b: {1: 2})",
        ] {
            assert!(!alike("(a: [1, X(2)], b: {1: 2})", other), "{other}");
        }
    }
}

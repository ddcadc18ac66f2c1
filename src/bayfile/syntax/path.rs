//! Which value does a path such as `lift.pad.lowest` or `vehicle.attached[0].name` lead to?

use super::{Kind, Name, Node};

/// One step of a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::bayfile) enum Step<'a> {
    /// Into the field of this name.
    Field(&'a str),
    /// Into the item of this number, from 0.
    Item(usize),
}

/// The steps of a path; none when it is not written as paths are. The empty path has no step and
/// leads to the whole value.
pub(in crate::bayfile) fn steps(path: &str) -> Option<Vec<Step<'_>>> {
    let mut steps = Vec::new();
    if path.is_empty() {
        return Some(steps);
    }
    for (at, part) in path.split('.').enumerate() {
        let mut pieces = part.split('[');
        match pieces.next() {
            Some("") | None if at > 0 || part.is_empty() => return None,
            Some("") | None => {}
            Some(name) => steps.push(Step::Field(name)),
        }
        for index in pieces {
            let digits = index.strip_suffix(']')?;
            if !digits.bytes().all(|b| b.is_ascii_digit()) {
                return None;
            }
            steps.push(Step::Item(digits.parse().ok()?));
        }
    }
    Some(steps)
}

/// Steps written as a path.
pub(in crate::bayfile) fn written(steps: &[Step<'_>]) -> String {
    let mut path = String::new();
    for step in steps {
        match step {
            Step::Field(name) => {
                if !path.is_empty() {
                    path.push('.');
                }
                path.push_str(name);
            }
            Step::Item(index) => path.push_str(&format!("[{index}]")),
        }
    }
    path
}

/// What `Some(..)` holds, else the value itself: both are read alike.
pub(in crate::bayfile) fn peel(node: &Node) -> &Node {
    match &node.kind {
        Kind::Tuple {
            name: Some(name),
            items,
        } if name.text == "Some" => match items.as_slice() {
            [item] => peel(item),
            _ => node,
        },
        _ => node,
    }
}

/// The value one step on, with its name where the step leads into a field.
pub(in crate::bayfile) fn child<'a>(
    node: &'a Node,
    step: Step<'_>,
) -> Option<(Option<&'a Name>, &'a Node)> {
    match (step, &peel(node).kind) {
        (Step::Field(name), Kind::Struct { fields, .. }) => {
            let field = fields.iter().find(|f| f.name.text == name)?;
            Some((Some(&field.name), &field.value))
        }
        (Step::Item(index), Kind::List(items) | Kind::Tuple { items, .. }) => {
            Some((None, items.get(index)?))
        }
        _ => None,
    }
}

/// The value at a path such as `lift.pad.lowest` or `vehicle.attached[0].name`. The name before a
/// bracket is no step: `ceiling.height` leads into `ceiling: Flat(height: ..)`. Nor is `Some`.
#[must_use]
pub fn value_at<'a>(root: &'a Node, path: &str) -> Option<&'a Node> {
    steps(path)?
        .into_iter()
        .try_fold(root, |node, step| Some(child(node, step)?.1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::syntax::parse;

    #[test]
    fn paths() {
        let text = "(a: (b: [1, (c: 2)]), d: Flat(h: 3), e: Some((f: 4)), g: At(5))";
        let root = parse(0, text).root.unwrap();
        let at = |path| value_at(&root, path).map(|n| &text[n.span.range()]);
        assert_eq!(at(""), Some(text));
        assert_eq!(at("a.b[0]"), Some("1"));
        assert_eq!(at("a.b[1].c"), Some("2"));
        assert_eq!(at("d.h"), Some("3"));
        assert_eq!(at("e"), Some("Some((f: 4))"));
        assert_eq!(at("e.f"), Some("4"));
        assert_eq!(at("g[0]"), Some("5"));
        for wrong in [
            "x", "a.x", "a.b[2]", "a..b", ".a", "a.", "a.b[", "a.b[+1]", "a.b[1]c", "a.[0]",
        ] {
            assert_eq!(at(wrong), None, "{wrong}");
        }
        let list = parse(0, "[1, [2]]").root.unwrap();
        assert!(value_at(&list, "[1][0]").is_some());
    }

    #[test]
    fn steps_and_paths_go_together() {
        for path in ["", "a", "a.b[0].c", "[1][2].x"] {
            assert_eq!(written(&steps(path).unwrap()), path);
        }
    }
}

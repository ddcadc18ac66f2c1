//! How is one value of a text replaced, with everything else kept as the person wrote it?

use super::{Kind, Node, parse};

/// Why a value could not be replaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EditError {
    /// The text itself has faults of grammar.
    Unreadable,
    /// The path leads to no value.
    NoSuchValue,
    /// The new text is not exactly one value.
    NotAValue,
}

/// The value at a path such as `lift.pad.lowest` or `vehicle.attached[0].name`.
#[must_use]
pub fn value_at<'a>(root: &'a Node, path: &str) -> Option<&'a Node> {
    let mut node = root;
    for step in path.split('.') {
        let mut parts = step.split('[');
        let name = parts.next().unwrap_or("");
        if !name.is_empty() {
            let Kind::Struct { fields, .. } = &node.kind else {
                return None;
            };
            node = &fields.iter().find(|f| f.name.text == name)?.value;
        }
        for index in parts {
            let index: usize = index.strip_suffix(']')?.parse().ok()?;
            node = match &node.kind {
                Kind::List(items) | Kind::Tuple { items, .. } => items.get(index)?,
                _ => return None,
            };
        }
    }
    Some(node)
}

/// The text with the value at `path` replaced by `value`; comments and blanks are kept.
///
/// # Errors
/// See [`EditError`]; the text is never half changed.
pub fn replace(text: &str, path: &str, value: &str) -> Result<String, EditError> {
    let parsed = parse(0, text);
    let root = parsed
        .root
        .filter(|_| parsed.faults.is_empty())
        .ok_or(EditError::Unreadable)?;
    let new = parse(0, value);
    if new.root.is_none() || !new.faults.is_empty() {
        return Err(EditError::NotAValue);
    }
    let range = value_at(&root, path)
        .ok_or(EditError::NoSuchValue)?
        .span
        .range();
    let edited = format!("{}{value}{}", &text[..range.start], &text[range.end..]);
    // A comment at the end of the new value would swallow what follows.
    if parse(0, &edited).faults.is_empty() {
        Ok(edited)
    } else {
        Err(EditError::NotAValue)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str =
        "// top\n( a: \"1 ft\", /* b */ b: [ (c: 1), (c: 2,), ], d: Flat(h: \"3 in\") ) // end\n";

    #[test]
    fn only_the_value_changes() {
        assert_eq!(
            replace(TEXT, "b[1].c", "7").unwrap(),
            TEXT.replace("c: 2", "c: 7")
        );
        assert_eq!(
            replace(TEXT, "d.h", "\"4 in\"").unwrap(),
            TEXT.replace("3 in", "4 in")
        );
        assert_eq!(
            replace(TEXT, "a", "\"1 ft\"").unwrap(),
            TEXT,
            "same value, same text"
        );
    }

    #[test]
    fn bad_edits_are_refused() {
        assert_eq!(replace(TEXT, "x", "1"), Err(EditError::NoSuchValue));
        assert_eq!(replace(TEXT, "b[9]", "1"), Err(EditError::NoSuchValue));
        assert_eq!(replace(TEXT, "a", "1, e: 2"), Err(EditError::NotAValue));
        assert_eq!(replace(TEXT, "a", "1 // note"), Err(EditError::NotAValue));
        assert_eq!(replace("(a: ", "a", "1"), Err(EditError::Unreadable));
    }
}

//! Every input as it is written, value by value, with the file that it stands in.

use std::fmt::Write as _;

use super::html::{escaped, table};
use crate::bayfile::syntax::{Kind, Node, parse};
use crate::report::text::Tone;

/// The tables, one for each text that went in.
pub(super) fn tables(sources: &[(String, String)]) -> String {
    let mut out = String::from(
        "<section id=\"inputs\"><h2>All inputs, as written</h2><p>What the bay file says goes before \
         what a preset says. What neither says is a default; the margins and the \u{b1} that were \
         counted, defaults or not, stand above.</p>\n",
    );
    for (name, text) in sources {
        let mut rows = Vec::new();
        match parse(0, text.trim_start_matches('\u{feff}')).root {
            Some(root) => walk(text.trim_start_matches('\u{feff}'), &root, "", &mut rows),
            // A text that was read has a root; were it lacking, the text itself stands for it.
            None => rows.push(row("", text)),
        }
        let _ = write!(out, "<h3>{}</h3>", escaped(file_name(name)));
        table(
            &mut out,
            &["value".to_owned(), "as written".to_owned()],
            &rows,
        );
    }
    out.push_str("</section>\n");
    out
}

/// A file without its folders: those are nobody's business.
fn file_name(name: &str) -> &str {
    name.rsplit(['/', '\\']).next().unwrap_or(name)
}

fn row(path: &str, text: &str) -> Vec<(String, Tone)> {
    vec![
        (path.to_owned(), Tone::Plain),
        (text.to_owned(), Tone::Plain),
    ]
}

fn below(path: &str, name: &str) -> String {
    let name = name.replace('_', " ");
    if path.is_empty() {
        name
    } else {
        format!("{path} \u{203a} {name}")
    }
}

fn walk(text: &str, node: &Node, path: &str, rows: &mut Vec<Vec<(String, Tone)>>) {
    if let Some(written) = value(text, node) {
        rows.push(row(path, &written));
        return;
    }
    match &node.kind {
        Kind::Struct { name, fields } => {
            if let Some(name) = name {
                rows.push(row(path, &name.text));
            }
            for field in fields {
                walk(text, &field.value, &below(path, &field.name.text), rows);
            }
        }
        Kind::Tuple { name, items } => {
            if let Some(name) = name {
                rows.push(row(path, &name.text));
            }
            numbered(text, items, path, rows);
        }
        Kind::List(items) => numbered(text, items, path, rows),
        Kind::Map(pairs) => {
            for (key, value) in pairs {
                let name = self::value(text, key).unwrap_or_default();
                walk(text, value, &below(path, &name), rows);
            }
        }
        Kind::Word(_) | Kind::Str(_) | Kind::Char(_) | Kind::Number(_) | Kind::Bool(_) => {}
    }
}

fn numbered(text: &str, items: &[Node], path: &str, rows: &mut Vec<Vec<(String, Tone)>>) {
    for (index, item) in items.iter().enumerate() {
        walk(text, item, &below(path, &(index + 1).to_string()), rows);
    }
}

/// A value that stands on one row: a plain one, or several plain ones in a list or a tuple.
fn value(text: &str, node: &Node) -> Option<String> {
    match &node.kind {
        Kind::Str(says) => Some(says.clone()),
        Kind::Word(_) | Kind::Char(_) | Kind::Number(_) | Kind::Bool(_) => {
            text.get(node.span.range()).map(str::to_owned)
        }
        Kind::Tuple { name: None, items } | Kind::List(items) => {
            if items.is_empty() {
                return Some("none".into());
            }
            let all: Option<Vec<String>> = items.iter().map(|item| value(text, item)).collect();
            all.map(|all| all.join(", "))
        }
        Kind::Struct { .. } | Kind::Tuple { .. } | Kind::Map(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_value_has_a_row_and_its_path() {
        let text = "(title: \"a <b>\", garage: (width: \"12 ft\", ceiling: Flat(height: 10' 1\"), \
                    spots: [(at: 1), (at: 2)], two: (\"1 in\", \"2 in\")))";
        let text = text.replace("10' 1\"", "\"10 ft 1 in\"");
        let all = tables(&[("folder/my.ron".into(), text)]);
        for part in [
            "<h3>my.ron</h3>",
            "a &lt;b&gt;",
            "garage \u{203a} width",
            "garage \u{203a} ceiling \u{203a} height",
            "10 ft 1 in",
            "garage \u{203a} spots \u{203a} 2 \u{203a} at",
            "1 in, 2 in",
            ">Flat<",
        ] {
            assert!(all.contains(part), "{part}: {all}");
        }
        assert!(!all.contains("folder"));
    }
}

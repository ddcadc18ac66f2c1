//! What would a combination be as a bay file of its own?

use super::{Options, Pick};
use crate::bayfile;
use crate::bayfile::edit::quoted;
use crate::bayfile::presets::PresetSource;
use crate::bayfile::syntax::{Kind, Node};
use crate::diagnostics::Diagnostic;
use crate::letters;

/// Why a combination can't be written as a bay file.
#[derive(Debug, Clone)]
pub enum TextError {
    /// It makes no valid bay.
    Faults(Vec<Diagnostic>),
    /// What would be written does not mean the same bay.
    NotTheSame,
}

impl Options {
    /// A combination as the text of a bay file: the base with the options' values laid over it.
    /// Presets that it names must lie beside the file as they lie beside this one. Comments of the
    /// files that it is made from are not in it.
    ///
    /// The text is read back, and given only where it means the very bay that was compared.
    ///
    /// # Errors
    /// See [`TextError`].
    pub fn text(&self, pick: Pick, presets: &dyn PresetSource) -> Result<String, TextError> {
        let compared = self.bay(pick, presets).map_err(TextError::Faults)?;
        let root = self.laid_over(pick);
        let mut text = String::new();
        let named: Vec<String> = self
            .chosen(pick)
            .iter()
            .filter(|choice| !choice.name.is_empty())
            .map(|choice| one_line(&choice.name))
            .collect();
        if !named.is_empty() {
            text.push_str(&format!("// Compared: {}.\n", named.join(", ")));
        }
        text.push_str("(\n    format: 1,\n");
        if let Kind::Struct { fields, .. } = &root.kind {
            for field in fields {
                text.push_str(&format!("    {}: ", field.name.text));
                write(&mut text, &field.value, 1);
                text.push_str(",\n");
            }
        }
        text.push_str(")\n");
        let read =
            bayfile::read("compared", text.as_bytes(), presets).map_err(TextError::Faults)?;
        if read.bay == compared.bay {
            Ok(text)
        } else {
            Err(TextError::NotTheSame)
        }
    }
}

/// A comment must not end before its line does.
fn one_line(text: &str) -> String {
    letters::shown(text)
}

/// A value as text, wherever it stands.
pub(super) fn written(node: &Node) -> String {
    let mut text = String::new();
    write(&mut text, node, 0);
    text
}

/// Writes a value; records and lists of records get a line for each of their fields.
fn write(out: &mut String, node: &Node, depth: usize) {
    let line = |out: &mut String, depth: usize| {
        out.push('\n');
        out.push_str(&"    ".repeat(depth));
    };
    match &node.kind {
        Kind::Struct { name, fields } => {
            if let Some(name) = name {
                out.push_str(&name.text);
            }
            out.push('(');
            let is_plain = fields.len() < 4 && fields.iter().all(|field| is_leaf(&field.value));
            for (index, field) in fields.iter().enumerate() {
                if is_plain {
                    out.push_str(if index > 0 { ", " } else { "" });
                } else {
                    line(out, depth + 1);
                }
                out.push_str(&format!("{}: ", field.name.text));
                write(out, &field.value, depth + 1);
                if !is_plain {
                    out.push(',');
                }
            }
            if !is_plain {
                line(out, depth);
            }
            out.push(')');
        }
        Kind::Tuple { name, items } => {
            if let Some(name) = name {
                out.push_str(&name.text);
            }
            out.push('(');
            for (index, item) in items.iter().enumerate() {
                out.push_str(if index > 0 { ", " } else { "" });
                write(out, item, depth);
            }
            out.push(')');
        }
        Kind::List(items) => {
            out.push('[');
            let is_plain = items.iter().all(is_leaf);
            for (index, item) in items.iter().enumerate() {
                if is_plain {
                    out.push_str(if index > 0 { ", " } else { "" });
                } else {
                    line(out, depth + 1);
                }
                write(out, item, depth + 1);
                if !is_plain {
                    out.push(',');
                }
            }
            if !is_plain {
                line(out, depth);
            }
            out.push(']');
        }
        Kind::Map(entries) => {
            out.push('{');
            for (index, (key, value)) in entries.iter().enumerate() {
                out.push_str(if index > 0 { ", " } else { "" });
                write(out, key, depth);
                out.push_str(": ");
                write(out, value, depth);
            }
            out.push('}');
        }
        Kind::Word(text) | Kind::Number(text) => out.push_str(text),
        Kind::Str(text) => out.push_str(&quoted(text)),
        Kind::Char(one) => out.push_str(&format!("{one:?}")),
        Kind::Bool(value) => out.push_str(if *value { "true" } else { "false" }),
    }
}

const fn is_leaf(node: &Node) -> bool {
    matches!(
        node.kind,
        Kind::Word(_) | Kind::Number(_) | Kind::Str(_) | Kind::Char(_) | Kind::Bool(_)
    )
}

//! Which fields does a record have, which are missing, which are unknown?

use std::cell::RefCell;

use super::readers::Read;
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Field, Kind, Node, Span, value_at};

/// A record being read. Asking for a field makes its name known; what was never asked for is
/// unknown and told at the end.
pub(super) struct Fields<'a> {
    pub(super) cx: &'a Context,
    what: &'a str,
    fields: &'a [Field],
    node: &'a Node,
    known: RefCell<Vec<&'static str>>,
    missing: RefCell<Vec<(&'static str, String)>>,
}

/// Reads the record at `node`: `(..)` or `Name(..)` alike. `what` is its name in messages: "the
/// pad".
pub(super) fn record<T>(
    cx: &Context,
    node: &Node,
    what: &str,
    read: impl FnOnce(&Fields<'_>) -> Option<T>,
) -> Option<T> {
    let fields: &[Field] = match &node.kind {
        Kind::Struct { fields, .. } => fields,
        Kind::Tuple { items, .. } if items.is_empty() => &[],
        _ => {
            cx.error(
                node.head(),
                &format!("{what} is a record, this is {}", node.what()),
                "expected `(name: value, ..)`",
                "write the fields in round brackets, each with its name and a `:`",
            );
            return None;
        }
    };
    let fields = Fields {
        cx,
        what,
        fields,
        node,
        known: RefCell::default(),
        missing: RefCell::default(),
    };
    let value = read(&fields);
    fields.finish();
    value
}

impl Fields<'_> {
    fn get(&self, name: &'static str) -> Option<&Field> {
        self.known.borrow_mut().push(name);
        self.fields.iter().find(|f| f.name.text == name)
    }

    /// True when the record gives this field. Does not make the name known.
    pub(super) fn has(&self, name: &str) -> bool {
        self.fields.iter().any(|f| f.name.text == name)
    }

    /// Of two paths the one whose value was laid over the other: a preset's value is older than
    /// the override that does not go with it. The first when both stand in one file.
    pub(super) fn newer<'p>(&self, first: &'p str, second: &'p str) -> &'p str {
        let source = |path| value_at(self.node, path).map(|n| n.span.source);
        match (source(first), source(second)) {
            // The bay file is source 0, and a preset is read after what names it.
            (Some(a), Some(b)) if b < a => second,
            _ => first,
        }
    }

    /// True when the record gives a value at a path as in [`value_at`].
    pub(super) fn gives(&self, path: &str) -> bool {
        value_at(self.node, path).is_some()
    }

    /// The value of a field as written. Makes the name known.
    pub(super) fn node(&self, name: &'static str) -> Option<&Node> {
        self.get(name).map(|f| &f.value)
    }

    /// A field that must be there.
    pub(super) fn need<R: Read>(&self, name: &'static str, reader: &R) -> Option<R::Out> {
        match self.get(name) {
            Some(field) => reader.read(self.cx, &field.value),
            None => {
                self.missing.borrow_mut().push((name, reader.example()));
                None
            }
        }
    }

    /// A field that may be left out or be `None`; `Some(x)` is read as `x`.
    pub(super) fn maybe<R: Read>(&self, name: &'static str, reader: &R) -> Option<Option<R::Out>> {
        match self.get(name).map(|f| &f.value) {
            None => Some(None),
            Some(node) => match &node.kind {
                Kind::Word(w) if w == "None" => Some(None),
                Kind::Tuple {
                    name: Some(n),
                    items,
                } if n.text == "Some" && items.len() == 1 => {
                    reader.read(self.cx, &items[0]).map(Some)
                }
                _ => reader.read(self.cx, node).map(Some),
            },
        }
    }

    /// A field that has a stated default when left out.
    pub(super) fn or<R: Read>(
        &self,
        name: &'static str,
        default: R::Out,
        reader: &R,
    ) -> Option<R::Out> {
        match self.get(name) {
            Some(field) => reader.read(self.cx, &field.value),
            None => Some(default),
        }
    }

    /// Where a value stands, shortened to its head; the record's head when it is left out. The
    /// path is as in [`value_at`]: `opening.width`, `attached[0].top`.
    pub(super) fn span(&self, path: &str) -> Span {
        value_at(self.node, path).map_or(self.node.head(), Node::head)
    }

    /// Where a field's name stands; the record's head when it is left out.
    pub(super) fn name_span(&self, name: &str) -> Span {
        let field = self.fields.iter().find(|f| f.name.text == name);
        field.map_or(self.node.head(), |f| f.name.span)
    }

    /// Notes an error at the value that a path leads to.
    pub(super) fn error(&self, path: &str, message: &str, label: &str, help: &str) {
        self.cx.error(self.span(path), message, label, help);
    }

    fn finish(self) {
        let known = self.known.into_inner();
        let mut missing = self.missing.into_inner();
        for field in self.fields {
            let name = field.name.text.as_str();
            if known.contains(&name) {
                continue;
            }
            let near = nearest(name, known.iter().copied());
            // One slip of the pen is one fault: the field meant is not missing too.
            missing.retain(|(m, _)| Some(*m) != near);
            let help = match near {
                Some(near) => format!("did you mean `{near}`?"),
                None if known.len() <= 16 => format!("known here: {}", known.join(", ")),
                None => "remove it, or check which record it belongs to".into(),
            };
            self.cx.error(
                field.name.span,
                &format!("{} has no field `{name}`", self.what),
                "not known here",
                &help,
            );
        }
        if missing.is_empty() {
            return;
        }
        missing.dedup_by(|a, b| a.0 == b.0);
        let names: Vec<String> = missing.iter().map(|(n, _)| format!("`{n}`")).collect();
        let examples: Vec<String> = missing.iter().map(|(n, e)| format!("{n}: {e}")).collect();
        let label = match self.cx.preset_of(self.node.span) {
            Some(preset) => format!("given neither here nor in the preset `{preset}`"),
            None => "missing in this record".into(),
        };
        self.cx.error(
            self.node.head(),
            &format!("{} lacks {}", self.what, names.join(", ")),
            &label,
            &format!("add `{}`", examples.join(", ")),
        );
    }
}

/// The known name that a mistyped one is nearest to, if any is near.
pub(in crate::bayfile) fn nearest<'a>(
    typed: &str,
    known: impl Iterator<Item = &'a str>,
) -> Option<&'a str> {
    // A longer name than any of ours is no slip of the pen, and comparing it would take long.
    if typed.len() > 64 {
        return None;
    }
    let lower = typed.to_lowercase();
    let allowed = (typed.len() / 3).clamp(1, 4);
    known
        .map(|k| (strsim::damerau_levenshtein(&lower, &k.to_lowercase()), k))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, k)| k)
}

//! What is each value of a bay file written as, and does it stand in the file or in a preset?

use std::sync::Arc;

use super::super::context::Context;
use super::super::format::{self, Whose};
use super::super::presets::{PresetKind, PresetSource, Resolver, called};
use super::super::syntax::path::peel;
use super::super::syntax::{Field, Kind, Node, value_at};
use crate::diagnostics::Source;

/// What every value of a bay file is written as, the file's own or its preset's: the file's record
/// with its presets laid under it and brought to the present format, as reading it sees it, and
/// besides the fields `format`, `lift.preset` and `vehicle.preset`.
///
/// Values need not be good ones: only the grammar must be. Where a preset can't be had, `lift` or
/// `vehicle` is what the file itself gives.
#[derive(Debug, Clone)]
pub struct Written {
    /// The bay file as it is, with its byte-order mark if it has one.
    pub(super) file: String,
    pub(super) root: Node,
    /// The bay file, then the presets, as far as they could be had.
    pub(super) sources: Vec<Arc<Source>>,
    /// For each source the field of the bay file that names it; empty for the file itself.
    pub(super) named_by: Vec<String>,
}

/// One value as written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Value {
    /// For a text in quotes the text inside, else the value's source. For a record that is what the
    /// file itself gives of it where it gives any, not what its preset adds.
    pub text: String,
    /// True for a text in quotes: `text` is to be [`quoted`](super::quoted) before it is set.
    pub in_quotes: bool,
    /// Where it stands.
    pub origin: Origin,
}

/// Where a value stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// In the bay file itself.
    File,
    /// In the preset of this name, as bay files write it.
    Preset(String),
}

impl Written {
    /// Reads the bay file's text and the presets it names, without making a bay of them; none when
    /// the bay file's grammar is broken or it is no text.
    ///
    /// `name` is what messages call the file, as in [`read`](crate::bayfile::read): places of its
    /// diagnostics are found by it.
    #[must_use]
    pub fn read(name: &str, text: &[u8], presets: &dyn PresetSource) -> Option<Self> {
        let cx = Context::default();
        let raw = cx.parse(name, text, None)?;
        let file = std::str::from_utf8(text).ok()?.to_string();
        let mut root =
            format::migrate(&cx, raw.clone(), Whose::BayFile).unwrap_or_else(|| raw.clone());
        put_back(&mut root, &raw, "format");
        let mut named_by = vec![String::new()];
        if let Kind::Struct { fields, .. } = &mut root.kind {
            let resolver = Resolver::new(presets);
            for field in fields {
                let Some(kind) = PresetKind::of_field(&field.name.text) else {
                    continue;
                };
                let own = field.value.clone();
                if let Some(mut whole) = resolver.resolve(&cx, kind, own.clone()) {
                    put_back(&mut whole, &own, "preset");
                    field.value = whole;
                }
                named_by.resize(cx.sources().len(), field.name.text.clone());
            }
        }
        Some(Self {
            file,
            root,
            sources: cx.sources(),
            named_by,
        })
    }

    /// The value at a path; none where there is none. `Some(x)` is shown as `x`; `None` is a value
    /// that takes the preset's away.
    #[must_use]
    pub fn value(&self, path: &str) -> Option<Value> {
        let node = self.node(path)?;
        let (text, in_quotes) = match &node.kind {
            Kind::Str(text) => (text.clone(), true),
            _ => (self.source(node)?.into(), false),
        };
        Some(Value {
            text,
            in_quotes,
            origin: self.origin(node),
        })
    }

    /// The name of the variant at a path: `Flat` for `Flat(height: ..)`, `Level` for `Level`; none
    /// for values without a name, and where there is none.
    #[must_use]
    pub fn variant(&self, path: &str) -> Option<String> {
        match &self.node(path)?.kind {
            Kind::Struct { name, .. } | Kind::Tuple { name, .. } => {
                name.as_ref().map(|name| name.text.clone())
            }
            Kind::Word(word) => Some(word.clone()),
            _ => None,
        }
    }

    /// How many items the list at a path has; 0 when there is no list.
    #[must_use]
    pub fn len(&self, list_path: &str) -> usize {
        match self.node(list_path).map(|node| &node.kind) {
            Some(Kind::List(items)) => items.len(),
            _ => 0,
        }
    }

    /// The paths, from the record at `path`, of its values that stand in a preset: those of records
    /// within it one by one, lists and variants whole.
    #[must_use]
    pub fn of_preset(&self, path: &str) -> Vec<String> {
        let mut found = Vec::new();
        if let Some(node) = self.node(path) {
            self.collect(node, "", &mut found);
        }
        found
    }

    fn collect(&self, node: &Node, at: &str, found: &mut Vec<String>) {
        let Kind::Struct { name: None, fields } = &node.kind else {
            if matches!(self.origin(node), Origin::Preset(_)) {
                found.push(at.into());
            }
            return;
        };
        for field in fields {
            let name = &field.name.text;
            let path = if at.is_empty() {
                name.clone()
            } else {
                format!("{at}.{name}")
            };
            self.collect(peel(&field.value), &path, found);
        }
    }

    fn node(&self, path: &str) -> Option<&Node> {
        value_at(&self.root, path).map(peel)
    }

    /// The source text of a value.
    pub(super) fn source(&self, node: &Node) -> Option<&str> {
        let source = self.sources.get(usize::from(node.span.source))?;
        source.text.get(node.span.range())
    }

    /// Where a value stands.
    pub(super) fn origin(&self, node: &Node) -> Origin {
        match self.sources.get(usize::from(node.span.source)) {
            Some(source) if node.span.source > 0 => Origin::Preset(called(source).into()),
            _ => Origin::File,
        }
    }
}

/// Gives a record back a field that reading took off it.
fn put_back(record: &mut Node, from: &Node, name: &str) {
    if let (Kind::Struct { fields, .. }, Kind::Struct { fields: all, .. }) =
        (&mut record.kind, &from.kind)
    {
        let named = |f: &&Field| f.name.text == name;
        if let Some(field) = all.iter().find(named)
            && !fields.iter().any(|f| f.name.text == name)
        {
            fields.insert(0, field.clone());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::edit::tests::{FilePresets, NAME, written_over};
    use crate::bayfile::presets::EmbeddedOnly;

    fn shown(written: &Written, path: &str) -> (String, Origin) {
        let value = written.value(path).unwrap();
        (value.text, value.origin)
    }

    #[test]
    fn the_files_own_and_its_presets() {
        let text = "\u{feff}(format: 1, garage: (ceiling: Flat(height: \"9 ft\"), floor: Level, width: wrong),
            lift: (preset: \"tall-columns-11-10\", pad: (lowest: \"1 in\"), motor: None),
            policy: (people: Some([(name: \"A\"), (name: \"B\")])))";
        let written = Written::read(NAME, text.as_bytes(), &EmbeddedOnly).unwrap();
        let file = |text: &str| (text.to_string(), Origin::File);
        let preset = |text: &str| {
            (
                text.to_string(),
                Origin::Preset("tall-columns-11-10".into()),
            )
        };
        assert_eq!(shown(&written, "garage.ceiling.height"), file("9 ft"));
        assert_eq!(shown(&written, "garage.width"), file("wrong"));
        assert_eq!(shown(&written, "format"), file("1"));
        assert_eq!(shown(&written, "lift.preset"), file("tall-columns-11-10"));
        assert_eq!(shown(&written, "lift.pad.lowest"), file("1 in"));
        assert_eq!(shown(&written, "lift.pad"), file("(lowest: \"1 in\")"));
        assert_eq!(shown(&written, "lift.motor"), file("None"));
        let (diameter, origin) = shown(&written, "lift.pad.diameter");
        assert_eq!((&origin, diameter.ends_with(" in")), (&preset("").1, true));
        assert_eq!(written.value("lift.motor.power"), None);
        assert_eq!(written.value("nothing"), None);
        assert!(written.value("lift.preset").unwrap().in_quotes);
        assert!(!written.value("format").unwrap().in_quotes);
        assert_eq!(written.variant("garage.ceiling").as_deref(), Some("Flat"));
        assert_eq!(written.variant("garage.floor").as_deref(), Some("Level"));
        assert_eq!(written.variant("lift.tie").as_deref(), Some("OverheadBeam"));
        assert_eq!(written.variant("garage"), None);
        assert_eq!(written.len("policy.people"), 2);
        assert_eq!(written.len("lift.pad.adapters"), 2);
        assert_eq!(
            (written.len("garage"), written.len("garage.obstacles")),
            (0, 0)
        );
        assert_eq!(shown(&written, "policy.people[1].name"), file("B"));
        // The mark at the file's start stays.
        assert!(written.set("format", "1").is_ok_and(|same| same == text));
    }

    #[test]
    fn presets_on_presets() {
        let presets = FilePresets(&[
            ("a.ron", "(preset: \"b.ron\", x: 1)"),
            ("b.ron", "(x: 2, y: 3)"),
        ]);
        let written = written_over("(format: 1, vehicle: (preset: \"a.ron\"))", &presets);
        let from = |name: &str| Origin::Preset(name.into());
        assert_eq!(shown(&written, "vehicle.x"), ("1".into(), from("a.ron")));
        assert_eq!(shown(&written, "vehicle.y"), ("3".into(), from("b.ron")));
        assert_eq!(
            shown(&written, "vehicle.preset"),
            ("a.ron".into(), Origin::File)
        );
    }

    #[test]
    fn faults_beside_the_grammar_do_not_hide_the_values() {
        for text in [
            "(lift: (preset: \"none-such\", x: 1))",
            "(format: 99, lift: (preset: 5, x: 1))",
            "(format: what, lift: (x: 1, x: 2))",
        ] {
            let written = written_over(text, &FilePresets(&[]));
            assert_eq!(
                shown(&written, "lift.x"),
                ("1".into(), Origin::File),
                "{text}"
            );
        }
        for text in ["", "(a: 1", "(a: 1))", "\0"] {
            let read = Written::read(NAME, text.as_bytes(), &EmbeddedOnly);
            assert!(read.is_none(), "{text}");
        }
        assert!(Written::read(NAME, b"\xff", &EmbeddedOnly).is_none());
        // One value that is no record is no bay, but its grammar is good.
        assert!(Written::read(NAME, b"[1]", &EmbeddedOnly).is_some_and(|w| w.value("a").is_none()));
    }
}

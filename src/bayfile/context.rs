//! Where do the faults of one reading gather, and which text does each place belong to?

use std::cell::RefCell;
use std::collections::HashSet;
use std::sync::Arc;

use super::Read;
use super::syntax::{self, Kind, Node, Span, limits};
use crate::bay::Bay;
use crate::diagnostics::{Diagnostic, Place, Severity, Source};

/// The texts read so far and the faults found in them.
#[derive(Default)]
pub(super) struct Context {
    sources: RefCell<Vec<Arc<Source>>>,
    found: RefCell<Vec<(Option<Span>, Diagnostic)>>,
    /// Records that were laid over a preset, by place, with the preset's name.
    over_presets: RefCell<Vec<(Span, String)>>,
}

impl Context {
    /// A reading that goes on from texts read before it: places in them keep their meaning.
    pub(super) fn after(sources: &[Arc<Source>]) -> Self {
        Self {
            sources: RefCell::new(sources.to_vec()),
            ..Self::default()
        }
    }

    /// Takes out what was found at places within `span`.
    pub(super) fn take_within(&self, span: Span) -> Vec<Diagnostic> {
        let is_within = |one: &Option<Span>| {
            one.is_some_and(|one| {
                one.source == span.source && one.start >= span.start && one.end <= span.end
            })
        };
        let mut found = self.found.borrow_mut();
        let all = std::mem::take(&mut *found);
        let (taken, left) = all.into_iter().partition(|(at, _)| is_within(at));
        *found = left;
        sorted(taken)
    }

    /// Takes over the texts of a reading that went on from this one.
    pub(super) fn go_on_after(&self, sources: Vec<Arc<Source>>) {
        *self.sources.borrow_mut() = sources;
    }

    /// Everything found, in the order of the text, and the texts.
    pub(super) fn into_found(self) -> (Vec<Diagnostic>, Vec<Arc<Source>>) {
        (sorted(self.found.into_inner()), self.sources.into_inner())
    }

    /// Reads one text into a tree; none when its grammar has faults, which are then noted.
    ///
    /// `named_at` is the place that names the text, where another text does: bytes that are no
    /// text have no place of their own.
    pub(super) fn parse(&self, name: &str, bytes: &[u8], named_at: Option<Span>) -> Option<Node> {
        let text = match readable(bytes) {
            Ok(text) => text,
            Err((message, help)) => {
                let message = format!("{name}: {message}");
                self.note(Severity::Error, named_at, message, "named here", help);
                return None;
            }
        };
        let source = u16::try_from(self.sources.borrow().len()).ok()?;
        self.sources.borrow_mut().push(Arc::new(Source {
            name: name.into(),
            text: text.into(),
        }));
        let whole = Span {
            source,
            start: 0,
            end: 0,
        };
        if text.trim().is_empty() {
            self.error(
                whole,
                "the file is empty",
                "expected `( format: 1, .. )`",
                "start from a shipped file of its kind and change its values",
            );
            return None;
        }
        let parsed = syntax::parse(source, text);
        for fault in &parsed.faults {
            self.error(fault.span, &fault.message, &fault.label, &fault.help);
        }
        let root = parsed.root.filter(|_| parsed.faults.is_empty())?;
        self.duplicates(&root);
        Some(root)
    }

    /// Notes every field that a record gives twice.
    fn duplicates(&self, node: &Node) {
        match &node.kind {
            Kind::Struct { fields, .. } => {
                let mut seen = HashSet::new();
                for field in fields {
                    if !seen.insert(field.name.text.as_str()) {
                        self.error(
                            field.name.span,
                            &format!("`{}` is given twice", field.name.text),
                            "already given further up in this record",
                            "keep one of the two and remove the other",
                        );
                    }
                    self.duplicates(&field.value);
                }
            }
            Kind::Tuple { items, .. } | Kind::List(items) => {
                items.iter().for_each(|n| self.duplicates(n));
            }
            Kind::Map(entries) => entries.iter().for_each(|(_, v)| self.duplicates(v)),
            _ => {}
        }
    }

    /// Notes an error.
    pub(super) fn error(&self, span: Span, message: &str, label: &str, help: &str) {
        self.note(Severity::Error, Some(span), message.into(), label, help);
    }

    /// Notes a warning.
    pub(super) fn warning(&self, span: Span, message: &str, label: &str, help: &str) {
        self.note(Severity::Warning, Some(span), message.into(), label, help);
    }

    fn note(
        &self,
        severity: Severity,
        span: Option<Span>,
        message: String,
        label: &str,
        help: &str,
    ) {
        let place = span.and_then(|span| self.place(span, label));
        self.found.borrow_mut().push((
            span,
            Diagnostic {
                severity,
                message,
                place,
                help: Some(help.into()),
            },
        ));
    }

    /// A place in a text, to be pointed at later.
    pub(super) fn place(&self, span: Span, label: &str) -> Option<Place> {
        let source = self.sources.borrow().get(usize::from(span.source))?.clone();
        let end = span.range().end.min(source.text.len());
        Some(Place {
            span: span.range().start.min(end)..end,
            label: label.into(),
            source,
        })
    }

    /// The texts read so far; a place's source number counts in them.
    pub(super) fn sources(&self) -> Vec<Arc<Source>> {
        self.sources.borrow().clone()
    }

    /// Remembers that the record at `span` was laid over a preset.
    pub(super) fn laid_over(&self, span: Span, preset: &str) {
        self.over_presets.borrow_mut().push((span, preset.into()));
    }

    /// The preset that the record at `span` was laid over.
    pub(super) fn preset_of(&self, span: Span) -> Option<String> {
        let over = self.over_presets.borrow();
        over.iter()
            .find(|(s, _)| *s == span)
            .map(|(_, n)| n.clone())
    }

    /// The outcome: the bay only when no error was noted.
    pub(super) fn finish(self, bay: Option<Bay>) -> Result<Read, Vec<Diagnostic>> {
        let (found, sources) = self.into_found();
        match bay {
            Some(bay) if !found.iter().any(Diagnostic::is_error) => Ok(Read {
                bay,
                warnings: found,
                sources,
            }),
            _ => Err(told(found)),
        }
    }
}

/// In the order of the text.
fn sorted(mut found: Vec<(Option<Span>, Diagnostic)>) -> Vec<Diagnostic> {
    found.sort_by_key(|(span, _)| span.map(|s| (s.source, s.start)));
    found.into_iter().map(|(_, d)| d).collect()
}

/// A refusal always says something, even where a step failed to say why.
pub(super) fn told(mut found: Vec<Diagnostic>) -> Vec<Diagnostic> {
    if !found.iter().any(Diagnostic::is_error) {
        found.push(Diagnostic {
            severity: Severity::Error,
            message: "the file could not be read, and the reader failed to say why".into(),
            place: None,
            help: Some("please report this with the file".into()),
        });
    }
    found
}

/// The bytes as text, or why they are none and what to do.
fn readable(bytes: &[u8]) -> Result<&str, (String, &'static str)> {
    if bytes.len() > limits::FILE_BYTES {
        return Err((
            "the file holds more than 4 MiB, which is refused".into(),
            "such a file holds a few kilobytes of text: check that this is the right one",
        ));
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) if !text.contains('\0') => Ok(text),
        _ => Err((
            "this is not a text file".into(),
            "such a file is plain text in UTF-8: save it so, or check that this is the right one",
        )),
    }
}

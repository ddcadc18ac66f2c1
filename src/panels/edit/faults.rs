//! Which fault belongs beside which field?
//!
//! A fault goes to the innermost shown value that its place lies in. What lies in no shown value
//! is told at the panel's top: with its line when it belongs to this section or to none, counted
//! when another section shows it.

use std::collections::BTreeMap;

use super::paths::{self, is_at_or_under};
use super::table::{Root, section_of};
use crate::bayfile::edit::Written;
use crate::diagnostics::Diagnostic;
use crate::panels::Desk;
use crate::panels::settings::Section;

/// One fault or warning in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Fault {
    /// False for a warning.
    pub(super) is_error: bool,
    /// What is wrong.
    pub(super) message: String,
    /// What to write instead.
    pub(super) cure: Option<String>,
    /// Where it stands: "line 12", or with the file that it stands in when that is another.
    pub(super) place: Option<String>,
}

/// The faults of the document, as a section shows them.
#[derive(Debug, Default)]
pub(super) struct Faults {
    at: BTreeMap<String, Vec<Fault>>,
    /// Those without a field.
    pub(super) loose: Vec<Fault>,
    /// How many errors other sections have.
    pub(super) elsewhere: Vec<(Section, usize)>,
}

impl Faults {
    /// The document's faults beside the rows of a section.
    pub(super) fn of(desk: &Desk, section: Section, roots: &[Root]) -> Self {
        let found: &[Diagnostic] = match desk.document.read() {
            Ok(read) => &read.warnings,
            Err(faults) => faults,
        };
        let mut faults = Self::default();
        if found.is_empty() {
            return faults;
        }
        let written = desk.document.written();
        let mut shown = Vec::new();
        if let Some(written) = written {
            for root in roots {
                paths::shown(written, root.path, root.rows, &mut shown);
            }
        }
        for diagnostic in found {
            let path = path_of(written, diagnostic);
            faults.put(section, &shown, path, told(desk, diagnostic));
        }
        faults
    }

    fn put(&mut self, section: Section, shown: &[String], path: Option<String>, fault: Fault) {
        let Some(path) = path else {
            self.loose.push(fault);
            return;
        };
        let innermost = shown
            .iter()
            .filter(|row| is_at_or_under(&path, row))
            .max_by_key(|row| row.len());
        match (innermost, section_of(&path)) {
            (Some(row), _) => self.at.entry(row.clone()).or_default().push(fault),
            (None, Some(other)) if other != section => {
                if fault.is_error {
                    match self.elsewhere.iter_mut().find(|(s, _)| *s == other) {
                        Some((_, count)) => *count += 1,
                        None => self.elsewhere.push((other, 1)),
                    }
                }
            }
            (None, _) => self.loose.push(fault),
        }
    }

    /// Those that belong to the value at a path itself.
    pub(super) fn at(&self, path: &str) -> &[Fault] {
        self.at.get(path).map_or(&[], Vec::as_slice)
    }

    /// How many errors the value at a path and those within it have.
    pub(super) fn within(&self, path: &str) -> usize {
        self.at
            .iter()
            .filter(|(at, _)| is_at_or_under(at, path))
            .flat_map(|(_, faults)| faults)
            .filter(|fault| fault.is_error)
            .count()
    }
}

fn path_of(written: Option<&Written>, diagnostic: &Diagnostic) -> Option<String> {
    written?
        .path_of(diagnostic.place.as_ref()?)
        .filter(|path| !path.is_empty())
}

fn told(desk: &Desk, diagnostic: &Diagnostic) -> Fault {
    let place = diagnostic.place.as_ref().map(|place| {
        let (line, _) = place.line_column();
        if place.source.name == desk.document.name() {
            format!("line {line}")
        } else {
            format!("line {line} of {}", place.source.name)
        }
    });
    Fault {
        is_error: diagnostic.is_error(),
        message: diagnostic.message.clone(),
        cure: diagnostic.help.clone(),
        place,
    }
}

//! From a path to a valid bay and a fingerprint of what it was read from.

use std::path::Path;
use std::sync::Arc;

use super::Failure;
use super::files::{Once, bay_file};
use super::inputs::Input;
use crate::bay::Bay;
use crate::bayfile;
use crate::diagnostics::Diagnostic;
use crate::ground::ForDay;
use crate::report::{Warning, fingerprint};

/// A bay that was read, and what it was read from.
pub(super) struct Loaded {
    pub(super) bay: Bay,
    pub(super) bytes: Vec<u8>,
    pub(super) presets: Arc<Once>,
    /// Every file that was read: the bay file first.
    pub(super) inputs: Vec<Input>,
    pub(super) warnings: Vec<Warning>,
    /// Every text that went in, each with its name: the bay file first.
    pub(super) sources: Vec<(String, String)>,
}

/// Reads a bay file and the presets it names.
pub(super) fn load(path: &Path) -> Result<Loaded, Failure> {
    of_bytes(path, bay_file(path)?)
}

/// The same of a text that may not be saved yet, as if it stood in the file.
pub(super) fn of_bytes(path: &Path, bytes: Vec<u8>) -> Result<Loaded, Failure> {
    let name = path.to_string_lossy();
    let presets = Arc::new(Once::of(path));
    let read = bayfile::read(&name, &bytes, &*presets).map_err(Failure::Faults)?;
    let sources = read.sources.iter();
    let sources = sources.map(|source| (source.name.clone(), source.text.clone()));
    let mut inputs = vec![Input::bay(path)];
    inputs.extend(presets.inputs());
    Ok(Loaded {
        bay: read.bay,
        inputs,
        warnings: read.warnings.iter().map(warning).collect(),
        sources: sources.collect(),
        bytes,
        presets,
    })
}

impl Loaded {
    /// Sixteen hex digits that stand for what went in, and for the day where the answer hangs on it.
    pub(super) fn fingerprint(&self, day: Option<ForDay>) -> String {
        // The first source is the bay file itself: its bytes stand for it, mark and all.
        let texts = self.sources.iter().skip(1);
        let texts = texts.map(|(_, text)| text.as_bytes());
        let texts = std::iter::once(self.bytes.as_slice()).chain(texts);
        fingerprint(texts, day.and_then(ForDay::decides))
    }
}

fn warning(diagnostic: &Diagnostic) -> Warning {
    Warning {
        place: diagnostic.place.as_ref().map(|place| {
            let (line, column) = place.line_column();
            format!("{}:{line}:{column}", place.source.name)
        }),
        message: diagnostic.message.clone(),
        help: diagnostic.help.clone(),
    }
}

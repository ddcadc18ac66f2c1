//! Which bay file is open, what was changed in it, and what is wrong with it?

use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::bayfile::edit::{self, EditError, Written};
use crate::bayfile::presets::PresetSource;
use crate::bayfile::{self, Read};
use crate::diagnostics::Diagnostic;

/// Presets beside the file, readable from any thread.
pub type Presets = Arc<dyn PresetSource + Send + Sync>;

/// An open bay file: its text, what it means, and every change made to it.
pub struct Document {
    path: Option<PathBuf>,
    presets: Presets,
    text: String,
    saved: Option<String>,
    past: Vec<String>,
    future: Vec<String>,
    generation: u64,
    read: Result<Read, Vec<Diagnostic>>,
    written: Option<Written>,
}

impl std::fmt::Debug for Document {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Document")
            .field("path", &self.path)
            .field("generation", &self.generation)
            .finish_non_exhaustive()
    }
}

impl Document {
    /// Opens a text. `saved` is what lies on disk; none for a text that was never saved.
    #[must_use]
    pub fn new(
        path: Option<PathBuf>,
        text: String,
        saved: Option<String>,
        presets: Presets,
    ) -> Self {
        let mut document = Self {
            path,
            presets,
            text,
            saved,
            past: Vec::new(),
            future: Vec::new(),
            generation: 0,
            read: Err(Vec::new()),
            written: None,
        };
        document.read_again();
        document
    }

    /// The same document with its changes counted from here.
    #[must_use]
    pub fn counted_from(mut self, generation: u64) -> Self {
        self.generation = generation;
        self
    }

    /// The name that messages and the title use.
    #[must_use]
    pub fn name(&self) -> String {
        self.path
            .as_deref()
            .and_then(Path::file_name)
            .map_or_else(|| "new bay".into(), |name| name.to_string_lossy().into())
    }

    /// The file it came from or was saved to.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// The text as it stands.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// True when the text is not what lies on disk.
    #[must_use]
    pub fn is_unsaved(&self) -> bool {
        self.saved.as_deref() != Some(self.text.as_str())
    }

    /// Counts up with every change of the text.
    #[must_use]
    pub const fn generation(&self) -> u64 {
        self.generation
    }

    /// The bay that the text means, or every fault in it.
    ///
    /// # Errors
    /// The faults, in the order of the text.
    pub fn read(&self) -> Result<&Read, &[Diagnostic]> {
        self.read.as_ref().map_err(Vec::as_slice)
    }

    /// What every value is written as; none when the grammar is broken.
    #[must_use]
    pub const fn written(&self) -> Option<&Written> {
        self.written.as_ref()
    }

    /// Sets a value, as one step to undo.
    ///
    /// # Errors
    /// When the text can't be changed so; it is then as before.
    pub fn set(&mut self, path: &str, value: &str) -> Result<(), EditError> {
        let text = edit::set(&self.text, path, value)?;
        self.change(text);
        Ok(())
    }

    /// Takes a field or list item out, as one step to undo.
    ///
    /// # Errors
    /// When the text can't be changed so; it is then as before.
    pub fn remove(&mut self, path: &str) -> Result<(), EditError> {
        let text = edit::remove(&self.text, path)?;
        self.change(text);
        Ok(())
    }

    /// Adds an item to a list, as one step to undo.
    ///
    /// # Errors
    /// When the text can't be changed so; it is then as before.
    pub fn append(&mut self, list: &str, item: &str) -> Result<(), EditError> {
        let text = edit::append(&self.text, list, item)?;
        self.change(text);
        Ok(())
    }

    /// True when there is a change to take back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// True when a change was taken back.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    /// Takes back the last change.
    pub fn undo(&mut self) {
        if let Some(text) = self.past.pop() {
            self.future.push(std::mem::replace(&mut self.text, text));
            self.changed();
        }
    }

    /// Makes it again.
    pub fn redo(&mut self) {
        if let Some(text) = self.future.pop() {
            self.past.push(std::mem::replace(&mut self.text, text));
            self.changed();
        }
    }

    /// The text lies on disk now, at this path.
    pub fn mark_saved(&mut self, path: PathBuf, text: String, presets: Presets) {
        self.path = Some(path);
        self.presets = presets;
        self.saved = Some(text);
    }

    /// The file on disk is another one now. Taken over, as a step that can be undone, when nothing
    /// was unsaved; returns whether it was.
    pub fn changed_on_disk(&mut self, text: String) -> bool {
        let take = !self.is_unsaved();
        self.saved = Some(text.clone());
        if take && text != self.text {
            self.change(text);
        }
        take
    }

    /// Another text, as one step to undo.
    pub fn change(&mut self, text: String) {
        if text == self.text {
            return;
        }
        self.past.push(std::mem::replace(&mut self.text, text));
        self.future.clear();
        self.changed();
    }

    fn changed(&mut self) {
        self.generation += 1;
        self.read_again();
    }

    fn read_again(&mut self) {
        let name = self.name();
        let bytes = self.text.as_bytes();
        self.read = bayfile::read(&name, bytes, &*self.presets);
        self.written = Written::read(&name, bytes, &*self.presets);
    }
}

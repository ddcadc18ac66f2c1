//! Which bay file is open, what was changed in it, and what is wrong with it?

mod asked;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use self::asked::Asked;
use super::action::Change;
use crate::bayfile::edit::{EditError, Written};
use crate::bayfile::presets::PresetSource;
use crate::bayfile::{self, Read};
use crate::diagnostics::Diagnostic;

/// Presets beside the file, readable from any thread.
pub type Presets = Arc<dyn PresetSource + Send + Sync>;

/// An open bay file: its text, what it means, and every change made to it.
///
/// Every text that it ever was is kept, each once: what lies on disk, what can be undone and the
/// text that stands share their memory.
pub struct Document {
    path: Option<PathBuf>,
    presets: Presets,
    text: Arc<str>,
    saved: Option<Arc<str>>,
    /// Nothing lies on disk any more; `saved` is what lay there last.
    is_gone: bool,
    past: Vec<Arc<str>>,
    future: Vec<Arc<str>>,
    generation: u64,
    read: Result<Read, Vec<Diagnostic>>,
    written: Option<Written>,
    /// The presets beside the file that the reading asked for, and what it got.
    asked: Asked,
}

impl std::fmt::Debug for Document {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Document")
            .field("path", &self.path)
            .field("generation", &self.generation)
            .finish_non_exhaustive()
    }
}

/// Where the autosave of a bay file lies: beside it, hidden, under a name of the program's own.
#[must_use]
pub fn autosave_path(path: &Path) -> PathBuf {
    let mut name = std::ffi::OsString::from(".");
    name.push(path.file_name().unwrap_or_default());
    name.push(".bayrise-autosave");
    path.with_file_name(name)
}

/// True when an autosave that was found holds something that the file does not.
#[must_use]
pub fn is_worth_offering(autosave: &str, on_disk: &str) -> bool {
    !autosave.trim().is_empty() && autosave != on_disk
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
        let text: Arc<str> = text.into();
        let saved = saved.map(|saved| shared(saved, &text));
        let mut document = Self {
            path,
            presets,
            text,
            saved,
            is_gone: false,
            past: Vec::new(),
            future: Vec::new(),
            generation: 0,
            read: Err(Vec::new()),
            written: None,
            asked: Asked::default(),
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
        self.is_gone || self.has_own_changes()
    }

    /// True when the text is not what was read from disk or written there last.
    fn has_own_changes(&self) -> bool {
        self.saved.as_ref() != Some(&self.text)
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
        self.change_all(&[Change::Set {
            path: path.into(),
            value: value.into(),
        }])
    }

    /// Takes a field or list item out, as one step to undo.
    ///
    /// # Errors
    /// When the text can't be changed so; it is then as before.
    pub fn remove(&mut self, path: &str) -> Result<(), EditError> {
        self.change_all(&[Change::Remove { path: path.into() }])
    }

    /// Adds an item to a list, as one step to undo.
    ///
    /// # Errors
    /// When the text can't be changed so; it is then as before.
    pub fn append(&mut self, list: &str, item: &str) -> Result<(), EditError> {
        self.change_all(&[Change::Append {
            list: list.into(),
            item: item.into(),
        }])
    }

    /// Makes several changes one after another, as one step to undo.
    ///
    /// # Errors
    /// When one of them can't be made; the text is then as before all of them.
    pub fn change_all(&mut self, changes: &[Change]) -> Result<(), EditError> {
        let mut text = self.text.to_string();
        for change in changes {
            text = self.changed_text(&text, change)?;
        }
        self.change(text);
        Ok(())
    }

    fn changed_text(&self, text: &str, change: &Change) -> Result<String, EditError> {
        let read = Written::read(&self.name(), text.as_bytes(), &*self.presets);
        let Some(written) = read else {
            return Err(EditError::Unreadable("its grammar has faults".into()));
        };
        match change {
            Change::Set { path, value } => written.set(path, value),
            Change::Remove { path } => written.remove(path),
            Change::Append { list, item } => written.append(list, item),
        }
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
        let moved = self.path.as_ref() != Some(&path);
        self.path = Some(path);
        self.presets = presets;
        self.saved = Some(shared(text, &self.text));
        self.is_gone = false;
        if moved {
            // Presets beside the file may be others there.
            self.changed();
        }
    }

    /// The file on disk is another one now. Taken over, as a step that can be undone, when nothing
    /// was changed here since it was last read or written, though it may have been gone in between,
    /// or when it says the same; returns whether it was. Else the text stays as it is, unsaved.
    pub fn changed_on_disk(&mut self, text: String) -> bool {
        let take = !self.has_own_changes() || *text == *self.text;
        self.is_gone = false;
        self.saved = Some(shared(text, &self.text));
        if take && let Some(saved) = self.saved.clone() {
            self.change_to(saved);
        }
        take
    }

    /// The file is gone from the disk: its text is unsaved from here on.
    pub fn gone_from_disk(&mut self) {
        self.is_gone = true;
    }

    /// The presets beside the file that the text asks for, there or not: as in
    /// [`PresetSource::load`].
    pub fn presets_asked(&self) -> impl Iterator<Item = &str> {
        self.asked.names()
    }

    /// False when one of them is not what was read any more: the same text may mean another bay.
    #[must_use]
    pub fn presets_are_as_read(&self) -> bool {
        self.asked.is_what(&*self.presets)
    }

    /// Reads the text again, with the presets beside the file as they are now.
    pub fn presets_changed(&mut self) {
        self.changed();
    }

    /// Starts over with a text that was never saved. The text before it can still be had back by
    /// undoing; its file is left alone.
    pub fn start_over(&mut self, text: String, presets: Presets) {
        self.path = None;
        self.saved = None;
        self.is_gone = false;
        self.presets = presets;
        self.past
            .push(std::mem::replace(&mut self.text, text.into()));
        self.future.clear();
        self.changed();
    }

    /// Another text, as one step to undo.
    pub fn change(&mut self, text: String) {
        self.change_to(shared(text, &self.text));
    }

    fn change_to(&mut self, text: Arc<str>) {
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
        // Bay and fields of the same presets, though another program may write them meanwhile.
        let presets = asked::Once::of(&*self.presets);
        self.read = bayfile::read(&name, bytes, &presets);
        self.written = Written::read(&name, bytes, &presets);
        self.asked = presets.asked();
    }
}

/// The text, in the memory of `known` when it says the same.
fn shared(text: String, known: &Arc<str>) -> Arc<str> {
    if *text == **known {
        Arc::clone(known)
    } else {
        text.into()
    }
}

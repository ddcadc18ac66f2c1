//! How is a bay file changed with everything else in it kept as the person wrote it?

use super::presets::PresetSource;
use super::syntax;
pub use super::syntax::EditError;
use crate::diagnostics::Place;

/// The text with the value at `path` set to `value`, RON source.
///
/// # Errors
/// See [`EditError`].
pub fn set(text: &str, path: &str, value: &str) -> Result<String, EditError> {
    syntax::replace(text, path, value)
}

/// The text without the field or list item at `path`.
///
/// # Errors
/// See [`EditError`].
pub fn remove(_text: &str, _path: &str) -> Result<String, EditError> {
    Err(EditError::NoSuchValue)
}

/// The text with an item added to the list at `list_path`.
///
/// # Errors
/// See [`EditError`].
pub fn append(_text: &str, _list_path: &str, _item: &str) -> Result<String, EditError> {
    Err(EditError::NoSuchValue)
}

/// A text in quotes, escaped for RON.
#[must_use]
pub fn quoted(text: &str) -> String {
    format!("{text:?}")
}

/// Where a value is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// In the bay file itself.
    File,
    /// In the preset of this name.
    Preset(String),
}

/// A value as written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Value {
    /// The text inside the quotes, or the value's source.
    pub text: String,
    /// Where it is written.
    pub origin: Origin,
}

/// What every value of a bay file is written as, the file's own or its preset's.
#[derive(Debug)]
pub struct Written {}

impl Written {
    /// Reads text and presets as far as the grammar allows.
    #[must_use]
    pub fn read(_name: &str, _text: &[u8], _presets: &dyn PresetSource) -> Option<Self> {
        Some(Self {})
    }

    /// The value at a path.
    #[must_use]
    pub fn value(&self, _path: &str) -> Option<Value> {
        None
    }

    /// The variant's name of the value at a path.
    #[must_use]
    pub fn variant(&self, _path: &str) -> Option<String> {
        None
    }

    /// Items of the list at a path.
    #[must_use]
    pub fn len(&self, _list_path: &str) -> usize {
        0
    }

    /// Path of the innermost value that holds a place.
    #[must_use]
    pub fn path_of(&self, _place: &Place) -> Option<String> {
        None
    }
}

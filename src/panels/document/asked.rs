//! Which presets beside the file did a reading ask for, and are they still what it got?

use std::cell::RefCell;
use std::collections::BTreeMap;

use crate::bayfile::presets::{PresetError, PresetSource};

/// What was asked for by which name, and what came of it.
#[derive(Debug, Default)]
pub(super) struct Asked(BTreeMap<String, Result<Vec<u8>, PresetError>>);

impl Asked {
    /// The names.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }

    /// True when each of them is now what it was; what could not be had counts as well.
    pub(super) fn is_what(&self, presets: &dyn PresetSource) -> bool {
        self.0.iter().all(|(name, was)| presets.load(name) == *was)
    }
}

/// Presets for one reading: asked for twice, the same is had twice.
pub(super) struct Once<'a> {
    presets: &'a dyn PresetSource,
    asked: RefCell<Asked>,
}

impl<'a> Once<'a> {
    pub(super) fn of(presets: &'a dyn PresetSource) -> Self {
        Self {
            presets,
            asked: RefCell::default(),
        }
    }

    /// What the reading asked for.
    pub(super) fn asked(self) -> Asked {
        self.asked.into_inner()
    }
}

impl PresetSource for Once<'_> {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let mut asked = self.asked.borrow_mut();
        asked
            .0
            .entry(path.into())
            .or_insert_with(|| self.presets.load(path))
            .clone()
    }
}

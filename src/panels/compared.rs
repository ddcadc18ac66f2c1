//! Which combinations were compared, and how are they listed?

use super::document::Presets;
use crate::bayfile::options::{Options, Pick, TextError};
use crate::choose::Matrix;
use crate::report::compare::{Row, Sort, says, shown};

/// A finished comparison on the desk.
pub struct Compared {
    /// What was compared.
    pub options: Options,
    /// What came of it.
    pub matrix: Matrix,
    /// The choice and why, in words; counts all combinations, whatever is listed.
    pub says: String,
    /// True while the table is shown.
    pub is_open: bool,
    /// The order of the rows.
    pub sort: Sort,
    /// What a row must have in its names, or in what limits it, to be listed.
    pub filter: String,
    presets: Presets,
}

impl std::fmt::Debug for Compared {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Compared")
            .field("title", &self.options.title)
            .field("sort", &self.sort)
            .field("filter", &self.filter)
            .finish_non_exhaustive()
    }
}

impl Compared {
    /// A finished comparison; `presets` are the files beside the file of options.
    #[must_use]
    pub fn new(options: Options, matrix: Matrix, presets: Presets) -> Self {
        Self {
            says: says(&options, &matrix),
            options,
            matrix,
            is_open: true,
            sort: Sort::default(),
            filter: String::new(),
            presets,
        }
    }

    /// The rows that are listed, in their order, each with what it stands for.
    #[must_use]
    pub fn rows(&self) -> Vec<(Pick, Row)> {
        shown(&self.options, &self.matrix, self.sort, &[])
            .into_iter()
            .map(|cell| (cell.pick, Row::of(&self.options, cell)))
            .filter(|(_, row)| row.has(&self.filter))
            .collect()
    }

    /// How many combinations there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.matrix.cells.len()
    }

    /// A combination as the text of a bay file.
    ///
    /// # Errors
    /// See [`TextError`].
    pub fn text(&self, pick: Pick) -> Result<String, TextError> {
        self.options.text(pick, &*self.presets)
    }

    /// The files beside the file of options.
    #[must_use]
    pub fn presets(&self) -> Presets {
        self.presets.clone()
    }
}

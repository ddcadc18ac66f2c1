//! Which combinations were compared, and how are they listed?

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

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
    /// The file of options; none where it lies in none.
    pub path: Option<PathBuf>,
    /// The files that went in, as far as they lie on disk.
    pub files: BTreeSet<PathBuf>,
    /// A file that went in is another by now: what is listed is old.
    pub is_stale: bool,
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
            path: None,
            files: BTreeSet::new(),
            is_stale: false,
            is_open: true,
            sort: Sort::default(),
            filter: String::new(),
            presets,
        }
    }

    /// The same, of a file of options and the files beside it; `lies` says whether a file is on disk:
    /// presets of the program's own are not.
    #[must_use]
    pub fn of_file(mut self, path: &Path, lies: impl Fn(&Path) -> bool) -> Self {
        let names = self.matrix.texts.iter().map(|source| source.name.as_str());
        let beside = names.map(|name| path.with_file_name(name));
        self.files = std::iter::once(path.to_path_buf())
            .chain(beside)
            .filter(|file| lies(file))
            .collect();
        self.path = Some(path.into());
        self
    }

    /// What a combination is called: where, which lift, which vehicle.
    #[must_use]
    pub fn name(&self, pick: Pick) -> Option<String> {
        let cell = self.matrix.cells.iter().find(|cell| cell.pick == pick)?;
        let row = Row::of(&self.options, cell);
        let names = [row.room, row.lift, row.vehicle];
        let named: Vec<String> = names.into_iter().filter(|name| !name.is_empty()).collect();
        Some(named.join(", "))
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

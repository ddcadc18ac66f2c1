//! Which combinations were compared, and how are they listed?

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::document::Presets;
use crate::bay::Bay;
use crate::bayfile::options::{Options, Pick, TextError};
use crate::choose::inverse::{Inverse, inverse};
use crate::choose::{Matrix, Outcome};
use crate::clearance::Verdict;
use crate::report::compare::{Detail, Row, Sort, says, shown};

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
    /// The combination that is told in full below the rows.
    pub detail: Option<Pick>,
    /// The combination whose answers the other way round are being worked out.
    turning: Option<Pick>,
    presets: Presets,
}

/// A bay whose answers the other way round are wanted.
#[derive(Debug)]
pub struct ToTurn {
    pick: Pick,
    bay: Bay,
    verdict: Verdict,
}

/// The same with the answers.
#[derive(Debug)]
pub struct TurnedBay {
    asked: ToTurn,
    inverse: Inverse,
}

impl ToTurn {
    /// Works them out: some hundred short studies.
    #[must_use]
    pub fn run(self) -> TurnedBay {
        TurnedBay {
            inverse: inverse(&self.bay, &self.verdict),
            asked: self,
        }
    }
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
            detail: None,
            turning: None,
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

    /// The combination that is told in full.
    #[must_use]
    pub fn detailed(&self) -> Option<Detail> {
        let pick = self.detail?;
        let cell = self.matrix.cells.iter().find(|cell| cell.pick == pick)?;
        Some(Detail::of(&self.options, cell))
    }

    /// The answers the other way round that are still to be worked out for the combination told in
    /// full; given out once.
    pub fn to_turn(&mut self) -> Option<ToTurn> {
        let pick = self.detail.filter(|pick| self.turning != Some(*pick))?;
        let cell = self.matrix.cells.iter().find(|cell| cell.pick == pick)?;
        let found = cell.found().filter(|found| found.inverse.is_none())?;
        if !found.verdict.not_measured().is_empty() {
            return None;
        }
        if self.is_stale {
            return None;
        }
        self.turning = Some(pick);
        Some(ToTurn {
            pick,
            bay: found.bay.clone(),
            verdict: found.verdict.clone(),
        })
    }

    /// Takes answers that were worked out; those for a bay that is not in the table any more are
    /// dropped.
    pub fn turned(&mut self, done: TurnedBay) {
        if self.turning == Some(done.asked.pick) {
            self.turning = None;
        }
        let cells = &mut self.matrix.cells;
        let cell = cells.iter_mut().find(|cell| cell.pick == done.asked.pick);
        if let Some(Outcome::Found(found)) = cell.map(|cell| &mut cell.outcome)
            && found.bay == done.asked.bay
        {
            found.inverse = Some(done.inverse);
        }
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

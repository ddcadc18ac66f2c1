//! Many bays side by side: is each cell what its bay gives alone, and does nothing spoil another?
#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

mod cells;
mod faults;
mod inverse;
mod prices;
mod program;
mod reading;

use std::collections::HashMap;
use std::fs;
use std::path::Path;

use bayrise::bayfile::options::{self, Options};
use bayrise::bayfile::presets::{PresetError, PresetSource};
use bayrise::choose::{Asked, Matrix, matrix};
use bayrise::diagnostics::{Diagnostic, Style, render};

/// Files that lie beside a file of options, in memory.
#[derive(Default)]
struct Files(HashMap<String, String>);

impl Files {
    /// The bay files of the shipped comparisons.
    fn shipped() -> Self {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/compare");
        let names = ["south-bay.ron", "creamery.ron"];
        Self(
            names
                .into_iter()
                .map(|name| (name.into(), fs::read_to_string(folder.join(name)).unwrap()))
                .collect(),
        )
    }

    fn with(mut self, name: &str, text: &str) -> Self {
        self.0.insert(name.into(), text.into());
        self
    }
}

impl PresetSource for Files {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let text = self.0.get(path).ok_or(PresetError::Missing)?;
        Ok(text.as_bytes().to_vec())
    }
}

fn shipped(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/compare");
    fs::read_to_string(folder.join(name)).unwrap()
}

#[track_caller]
fn read(text: &str, files: &Files) -> Options {
    options::read("options.ron", text.as_bytes(), files)
        .unwrap_or_else(|faults| panic!("{}", said(&faults)))
}

fn said(faults: &[Diagnostic]) -> String {
    render(faults, Style::default())
}

/// Everything but the answers the other way round.
fn quick(options: &Options, files: &Files) -> Matrix {
    matrix(options, files, Asked::default(), &|| ())
}

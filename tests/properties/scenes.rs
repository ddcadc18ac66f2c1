//! The shipped scenes as bays.

use std::fs;
use std::path::Path;

use bayrise::bay::Bay;
use bayrise::bayfile::{self, presets};
use bayrise::diagnostics::{Style, render};

/// Every shipped scene with its name, in order of the alphabet.
pub(crate) fn scenes() -> Vec<(String, Bay)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.ends_with(".ron"))
        .collect();
    names.sort();
    names
        .into_iter()
        .map(|name| (name.clone(), scene(&name)))
        .collect()
}

/// One scene by its file's name.
pub(crate) fn scene(name: &str) -> Bay {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("scenes")
        .join(name);
    read(name, &fs::read_to_string(path).unwrap())
}

/// A bay from a file's text.
pub(crate) fn read(name: &str, text: &str) -> Bay {
    match bayfile::read(name, text.as_bytes(), &presets::EmbeddedOnly) {
        Ok(read) => read.bay,
        Err(faults) => panic!("{}", render(&faults, Style::default())),
    }
}

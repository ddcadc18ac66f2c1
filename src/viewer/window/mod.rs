//! How is a bay shown in a window, where it can be turned, raised, changed and saved?
//!
//! The engine runs the window; the desk says what is in it. Each frame goes: news from threads,
//! what moves by itself, the panels and what they ask for, files, and when to draw again.

mod app;
mod ask_path;
mod autosave;
mod dialogs;
mod display;
mod drawer;
mod failure;
mod files;
mod frame;
mod kept;
mod keyboard;
mod mail;
mod office;
mod pace;
mod pass;
mod pointer;
mod recent;
mod studies;
mod trace;
mod watch;
mod ways;

use std::path::{Path, PathBuf};
use std::time::Instant;

pub use trace::trace;

use super::{Fault, probe, today};
use crate::panels::{Compared, Desk, Document};

/// Why no window can be opened here, as far as that is known without trying.
#[must_use]
pub fn no_window() -> Option<Fault> {
    display::fault(|name| std::env::var_os(name))
}

/// Opens the window on a bay file with this text and returns when it is closed.
///
/// # Errors
/// When there is no display or driver for it.
pub fn open(file: &Path, text: String) -> Result<(), Fault> {
    open_with(file, text, |_| ())
}

/// The same with the bay of another file and text beside it.
///
/// # Errors
/// When there is no display or driver for it.
pub fn open_beside(
    file: &Path,
    text: String,
    (other, other_text): (PathBuf, String),
) -> Result<(), Fault> {
    let other = std::path::absolute(&other).unwrap_or(other);
    open_with(file, text, |desk| {
        desk.put_beside(office::beside(other, other_text));
    })
}

/// The same with the table of what was compared over it.
///
/// # Errors
/// When there is no display or driver for it.
pub fn open_compared(file: &Path, text: String, compared: Compared) -> Result<(), Fault> {
    open_with(file, text, |desk| desk.compared = Some(Box::new(compared)))
}

fn open_with(file: &Path, text: String, with: impl FnOnce(&mut Desk)) -> Result<(), Fault> {
    let adapter = probe::adapter()?;
    trace("a driver is there");
    let file = std::path::absolute(file).unwrap_or_else(|_| file.into());
    let presets = files::presets(&file);
    let mut desk = Desk::new(Document::new(Some(file), text.clone(), Some(text), presets));
    desk.on = Some(today());
    // Before the engine starts: the first picture has its verdict.
    let start = Instant::now();
    desk.study_now();
    let studied_in = start.elapsed();
    with(&mut desk);
    trace(&trace::state(&desk));
    app::run(desk, studied_in, &adapter)
}

//! What goes to standard output and standard error, with colour or without?

use std::io::{self, IsTerminal as _, Write as _};

use anstream::ColorChoice;

use super::Failure;
use crate::diagnostics::{Diagnostic, Style, render};
use crate::letters;
use crate::report::text::Look;

/// Columns where there is no terminal to ask.
const COLUMNS: usize = 100;

/// How a report is to look on standard output: colour only on a terminal, and never where
/// `NO_COLOR` asks for none.
pub(super) fn look() -> Look {
    Look {
        colour: anstream::AutoStream::choice(&io::stdout()) != ColorChoice::Never,
        width: terminal_size::terminal_size_of(io::stdout())
            .map_or(COLUMNS, |(width, _)| usize::from(width.0)),
    }
}

/// Prints a finished text. A reader that went away is no error; any other fault is.
pub(super) fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(Failure::new(
            format!("standard output can't be written: {error}"),
            "",
        )),
        _ => Ok(()),
    }
}

/// The program itself, started anew, once, so that the system's graphics libraries keep quiet:
/// where no session of a desktop runs, one of them complains on standard error about what it does
/// not need. Returns where there is nothing to keep quiet.
#[cfg(target_os = "linux")]
pub(super) fn hush_drivers(arguments: &[std::ffi::OsString]) {
    use std::os::unix::process::CommandExt as _;
    const CHOOSES_NO_DEVICE: &str = "NODEVICE_SELECT";
    let is_set = |name| std::env::var_os(name).is_some();
    let is_this_program = std::env::args_os().eq(arguments.iter().cloned());
    if is_set("XDG_RUNTIME_DIR") || is_set(CHOOSES_NO_DEVICE) || !is_this_program {
        return;
    }
    if let Ok(program) = std::env::current_exe() {
        // Comes back only where it can't be started; then there is a complaint more.
        let _ = std::process::Command::new(program)
            .args(arguments.iter().skip(1))
            .env(CHOOSES_NO_DEVICE, "1")
            .exec();
    }
}

/// The program itself, started anew where that keeps the graphics libraries quiet.
#[cfg(not(target_os = "linux"))]
pub(super) fn hush_drivers(_arguments: &[std::ffi::OsString]) {}

/// One line on standard error.
pub(super) fn note(text: &str) {
    // So that it shows only with a test that fails.
    #[cfg(test)]
    eprintln!("{text}");
    // Where standard error is gone there is nobody to tell.
    #[cfg(not(test))]
    let _ = writeln!(io::stderr(), "{text}");
}

/// Says why a command could not be carried out.
pub(super) fn complain(failure: &Failure) {
    match failure {
        Failure::Said(what, help) => {
            note(&format!("error: {}", printable(what)));
            if !help.is_empty() {
                note(&format!("  help: {}", printable(help)));
            }
        }
        Failure::Faults(faults) => show_faults(faults),
    }
}

/// Draws faults and warnings on standard error, each with its line.
pub(super) fn show_faults(faults: &[Diagnostic]) {
    let style = Style {
        colour: anstream::AutoStream::choice(&io::stderr()) != ColorChoice::Never,
        unicode: io::stderr().is_terminal(),
        width: terminal_size::terminal_size_of(io::stderr())
            .map_or(COLUMNS, |(width, _)| usize::from(width.0)),
    };
    note(render(faults, style).trim_end());
}

/// Names of files may hold anything; a terminal gets nothing from them that it would act on.
fn printable(text: &str) -> String {
    letters::in_place(&text.replace(['\n', '\t'], " "))
}

//! Is what is shown true of the file as it stands, and if not, why not?

use super::Desk;
use crate::diagnostics::Diagnostic;
use crate::report;

/// Why the verdict shown is not that of the file as it stands, in words; none when it is.
#[must_use]
pub fn stale_words(desk: &Desk) -> Option<String> {
    if desk.is_current() {
        return None;
    }
    let why = if let Err(faults) = desk.document.read() {
        let faults = errors(faults).count();
        format!("{} in the file", report::counted(faults, "fault"))
    } else if let Some(why) = &desk.study_failed {
        format!("this bay can't be studied: {}", report::on_one_line(why))
    } else {
        "studying\u{2026}".into()
    };
    Some(if desk.verdict.is_some() {
        format!("{why}; the verdict shown is of the last good state")
    } else {
        format!("{why}; there is no verdict yet")
    })
}

/// The same where there is no room to say why: beside it the card says it all.
#[must_use]
pub fn stale_word(desk: &Desk) -> Option<&'static str> {
    if desk.is_current() {
        None
    } else if desk.verdict.is_some() {
        Some("stale")
    } else {
        Some("no verdict yet")
    }
}

/// The faults that keep the text from being read.
pub fn errors(faults: &[Diagnostic]) -> impl Iterator<Item = &Diagnostic> {
    faults.iter().filter(|fault| fault.is_error())
}

/// A fault on one line: where, what, and what to write instead.
#[must_use]
pub fn fault_words(fault: &Diagnostic) -> String {
    let message = report::on_one_line(&fault.message);
    let mut words = match &fault.place {
        Some(place) => {
            let (line, column) = place.line_column();
            format!("line {line}, column {column}: {message}")
        }
        None => message,
    };
    if let Some(help) = &fault.help {
        words.push_str("; ");
        words.push_str(&report::on_one_line(help));
    }
    words
}

//! The lines that answer questions, from a terminal or from a file.
//!
//! On a terminal a line that is not taken is told, and the next one answers the same question. In a
//! file the next line is the answer to the next question: read on, each answer would slip by one, so
//! the first line that is not taken ends it.

use std::io::{BufRead, Read as _};

use super::Failure;
use super::ask::complain;
use crate::letters;
use crate::worksheet::Refused;

/// The longest line that is read, in bytes.
const LONGEST: u64 = 4096;

/// How much of a line is told again, in letters.
const MOST_TOLD: usize = 60;

/// Lines, and how many were read.
#[derive(Debug)]
pub(super) struct Lines<R> {
    from: R,
    read: usize,
    /// Whether somebody is there to type a line again.
    pub(super) from_terminal: bool,
}

impl<R: BufRead> Lines<R> {
    pub(super) const fn new(from: R, from_terminal: bool) -> Self {
        Self {
            from,
            read: 0,
            from_terminal,
        }
    }

    /// The next line; none where it is no text, which was told. `asked` is what it answers.
    pub(super) fn next(&mut self, asked: &str) -> Result<Option<String>, Failure> {
        let mut line = Vec::new();
        let mut limited = self.from.by_ref().take(LONGEST);
        let read = limited.read_until(b'\n', &mut line).map_err(|error| {
            Failure::new(
                format!("the answers can't be read: {error}"),
                "nothing is written",
            )
        })?;
        if read == 0 {
            return Err(Failure::new(
                format!(
                    "the answers end before {asked}: after {}",
                    counted(self.read)
                ),
                "nothing is written; answer every question, with Enter alone where something is not \
                 known, and then say write",
            ));
        }
        self.read += 1;
        if line.len() as u64 == LONGEST && !line.ends_with(b"\n") {
            // What comes after it on the line is no answer to anything.
            self.drop_line();
            let long = format!("a line of more than {LONGEST} bytes is no answer");
            self.no_text(&line, asked, &Refused::new(long, "type it again, shorter"))?;
            return Ok(None);
        }
        match String::from_utf8(line) {
            Ok(text) => Ok(Some(text)),
            Err(error) => {
                let refused = Refused::new("this is no text in UTF-8", "type it again");
                self.no_text(error.as_bytes(), asked, &refused)?;
                Ok(None)
            }
        }
    }

    fn no_text(&self, line: &[u8], asked: &str, refused: &Refused) -> Result<(), Failure> {
        self.refuse(&String::from_utf8_lossy(line), asked, refused, 80)
    }

    /// Tells that a line is not taken.
    ///
    /// # Errors
    /// Where nobody is there to type another.
    pub(super) fn refuse(
        &self,
        line: &str,
        asked: &str,
        refused: &Refused,
        width: usize,
    ) -> Result<(), Failure> {
        if self.from_terminal {
            complain(refused, width);
            return Ok(());
        }
        let typed = letters::shown(line.trim());
        let mut told: String = typed.chars().take(MOST_TOLD).collect();
        if told.len() < typed.len() {
            told.push_str("..");
        }
        let told = if told.is_empty() {
            String::from("(empty)")
        } else {
            format!("({told})")
        };
        let number = self.read;
        let what = if refused.then.is_empty() {
            format!(
                "line {number} of the answers {told} is not taken for {asked}: {}",
                refused.message
            )
        } else {
            format!(
                "line {number} of the answers {told}, for {asked}, ends its section, and the answers \
                 don't go together: {}",
                refused.message
            )
        };
        let help = match refused.help.as_str() {
            "" => String::from("nothing is written"),
            help => format!("{help}. Nothing is written"),
        };
        Err(Failure::new(what, help))
    }

    /// Reads to the end of the line and forgets it.
    fn drop_line(&mut self) {
        let mut rest = Vec::new();
        loop {
            let mut limited = self.from.by_ref().take(LONGEST);
            let read = limited.read_until(b'\n', &mut rest);
            if !matches!(read, Ok(1..)) || rest.ends_with(b"\n") {
                return;
            }
            rest.clear();
        }
    }
}

fn counted(lines: usize) -> String {
    match lines {
        1 => "1 line".into(),
        _ => format!("{lines} lines"),
    }
}

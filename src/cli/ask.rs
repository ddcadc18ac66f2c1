//! `bayrise new --ask`: the questions of the worksheet on the terminal.
//!
//! Questions go to standard error, so that standard output has what it has after any command.
//! Nothing is written before all answers were shown together and somebody said so.

use std::io::{BufRead, Read as _};

use super::files::{can_be_made, write};
use super::options::AskOptions;
use super::terminal::{look, note, print};
use super::{Exit, Failure};
use crate::letters;
use crate::worksheet::{Decision, Dialogue, Made, Prompt, Refused, Review, in_ranges};

/// The longest line that is read, in bytes.
const LONGEST: u64 = 4096;

pub(super) fn run(options: &AskOptions) -> Result<Exit, Failure> {
    can_be_made(&options.out, options.replace)?;
    let Some(made) = ask(&mut std::io::stdin().lock(), look().width.min(80))? else {
        note("stopped: nothing is written");
        return Ok(Exit::Unmet);
    };
    write(&options.out, &made.text, options.replace)?;
    let out: String = options.out.display().to_string();
    let out = letters::shown(&out);
    print(&said(&out, &made))?;
    Ok(Exit::Met)
}

/// Asks until there is nothing more to ask and it was said what is to become of the answers; none
/// where nothing is to be written.
fn ask(lines: &mut impl BufRead, width: usize) -> Result<Option<Made>, Failure> {
    note(&textwrap::fill(
        "The questions of `bayrise worksheet`, in the same order. Every length with its unit. Enter \
         alone: not known. ? says more of a question, < goes back to the one before. After the last \
         all answers are shown and can be changed; nothing is written before you say write. Ctrl-C \
         stops.",
        width,
    ));
    let mut dialogue = Dialogue::default();
    loop {
        while let Some(prompt) = dialogue.prompt() {
            show(&prompt, width);
            let Some(text) = line(lines, &format!("question {}", prompt.number))? else {
                continue;
            };
            match dialogue.answer(&text) {
                Ok(None) => {}
                Ok(Some(said)) => indented(&said, width),
                Err(refused) => {
                    complain(&refused);
                    if dialogue.is_asked_again() && !text.trim().is_empty() {
                        note("");
                    }
                }
            }
        }
        show_all(&dialogue.review(), width);
        loop {
            let Some(text) = line(lines, "the word write")? else {
                continue;
            };
            match dialogue.decide(&text) {
                Ok(Decision::Write(made)) => return Ok(Some(*made)),
                Ok(Decision::Stop) => return Ok(None),
                Ok(Decision::Ask) => break,
                Err(refused) => complain(&refused),
            }
        }
    }
}

/// The next line; none where it is no text, which is told.
fn line(lines: &mut impl BufRead, before: &str) -> Result<Option<String>, Failure> {
    let mut line = Vec::new();
    let read = lines.by_ref().take(LONGEST).read_until(b'\n', &mut line);
    let read = read.map_err(|error| {
        Failure::new(
            format!("the answers can't be read: {error}"),
            "nothing is written",
        )
    })?;
    if read == 0 {
        return Err(Failure::new(
            format!("the answers end before {before}"),
            "nothing is written; answer every question, with Enter alone where something is not \
             known, and then say write",
        ));
    }
    if line.len() as u64 == LONGEST && !line.ends_with(b"\n") {
        // What comes after it on the line is no answer to anything.
        drop_line(lines);
        complain(&Refused {
            message: format!("a line of more than {LONGEST} bytes is no answer"),
            help: "type it again, shorter".into(),
        });
        return Ok(None);
    }
    let Ok(text) = String::from_utf8(line) else {
        complain(&Refused {
            message: "this is no text in UTF-8".into(),
            help: "type it again".into(),
        });
        return Ok(None);
    };
    Ok(Some(text))
}

/// Reads to the end of the line and forgets it.
fn drop_line(lines: &mut impl BufRead) {
    let mut rest = Vec::new();
    while let Ok(read) = lines.by_ref().take(LONGEST).read_until(b'\n', &mut rest) {
        if read == 0 || rest.ends_with(b"\n") {
            return;
        }
        rest.clear();
    }
}

/// All answers, as few lines as they take, and what is not measured.
fn show_all(review: &Review, width: usize) {
    note("\nWHAT YOU ANSWERED, each with the number of its question");
    let indent = textwrap::Options::new(width).subsequent_indent("      ");
    for line in review.lines(width) {
        note(&line);
    }
    note("");
    match &review.made {
        Ok(made) if made.not_measured.is_empty() => note(&textwrap::fill(
            "NOT MEASURED: nothing of what decides clearance, a load or a mark on the column.",
            &indent,
        )),
        Ok(made) => note(&textwrap::fill(
            &format!(
                "NOT MEASURED, and no lock is called safe for want of it: {}.",
                in_short(&made.not_measured)
            ),
            &indent,
        )),
        Err(refused) => complain(refused),
    }
    note(&textwrap::fill(
        "\nwrite: the bay file is written. change 2.1: that question is asked again, and what hangs on \
         it; change 5: the whole list of 5, change 5.3 of 2: that of its second. stop: nothing is \
         written.",
        width,
    ));
}

/// So many are told in words; of more, the numbers of their questions are.
const IN_WORDS: usize = 6;

/// What is not measured, so that it finds room on a screen.
fn in_short(not_measured: &[String]) -> String {
    if not_measured.len() <= IN_WORDS {
        return not_measured.join("; ");
    }
    let short = |what: &'_ str| what.len() - what.trim_start_matches(NUMBER).len();
    let all = not_measured.iter().map(String::as_str);
    // The number of a question, of a list with what it is, and words where there is none.
    let (numbers, words): (Vec<&str>, Vec<&str>) = all
        .map(|what| match short(what) {
            0 => what,
            number if what[..number].contains('.') => &what[..number],
            _ => what,
        })
        .partition(|what| what.starts_with(NUMBER) && !what.contains(' '));
    let mut said = words;
    let ranges = in_ranges(&numbers);
    if !ranges.is_empty() {
        said.push(&ranges);
    }
    said.join("; ")
}

/// What a question's number is written with.
const NUMBER: fn(char) -> bool = |letter| letter.is_ascii_digit() || letter == '.';

fn show(prompt: &Prompt, width: usize) {
    if let Some((title, says)) = &prompt.heading {
        note(&format!("\n{title}\n{}", textwrap::fill(says, width)));
    }
    note(&format!("\n{:<4} {}", prompt.number, prompt.what));
    indented(prompt.how, width);
    indented(&format!("({})", prompt.takes), width);
    if let Some(kept) = &prompt.kept {
        indented(&format!("(Enter keeps {kept}; - takes it back)"), width);
    }
}

fn indented(words: &str, width: usize) {
    let indent = textwrap::Options::new(width)
        .initial_indent("     ")
        .subsequent_indent("     ");
    note(&textwrap::fill(words, indent));
}

fn complain(refused: &Refused) {
    note(&format!("     not taken: {}", refused.message));
    if !refused.help.is_empty() {
        note(&format!("     help: {}", refused.help));
    }
}

/// What is said of a file that was written.
fn said(out: &str, made: &Made) -> String {
    let width = look().width;
    let named = if out.contains(' ') {
        format!("\"{out}\"")
    } else {
        out.into()
    };
    let mut text = String::new();
    let mut paragraph = |words: String| {
        text += &textwrap::fill(&words, width);
        text.push('\n');
    };
    if made.not_measured.is_empty() {
        paragraph(format!(
            "{out} is written. Every figure asked for that decides clearance, a load or a mark on the \
             column is as you gave it, but for margins and \u{b1} that were left empty: these are \
             Bayrise's own, and `check` prints them."
        ));
    } else {
        paragraph(format!(
            "{out} is written. {} NOT MEASURED. While any of them stands in the file's list \
             not_measured, where the field it goes into is written beside it, no lock is called \
             safe:",
            match made.not_measured.len() {
                1 => String::from("One thing is"),
                count => format!("{count} things are"),
            }
        ));
        paragraph(format!("  {}.", in_short(&made.not_measured)));
    }
    if !made.not_known.is_empty() {
        paragraph(format!(
            "Not known, not in the file, and told as not known: {}.",
            in_short(&made.not_known)
        ));
    }
    if !made.of_presets.is_empty() {
        let own = made
            .of_presets
            .iter()
            .map(|path| path.replace(['.', '_'], " "));
        paragraph(format!(
            "From the presets, and no lock hangs on it: {}.",
            own.collect::<Vec<_>>().join(", ")
        ));
    }
    for note in &made.notes {
        paragraph(note.clone());
    }
    text += &format!("Then run:\n\n    bayrise check {named}\n");
    text
}

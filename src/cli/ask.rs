//! `bayrise new --ask`: the questions of the worksheet on the terminal.
//!
//! Questions go to standard error, so that standard output has what it has after any command.
//! Nothing is written before all answers were shown together and somebody said so.

use std::io::{BufRead, IsTerminal as _};

use super::files::{can_be_made, write};
use super::lines::Lines;
use super::options::AskOptions;
use super::terminal::{look, note, print};
use super::{Exit, Failure};
use crate::letters;
use crate::worksheet::{Decision, Dialogue, Made, Prompt, Refused, Review, in_ranges};

pub(super) fn run(options: &AskOptions) -> Result<Exit, Failure> {
    can_be_made(&options.out, options.replace)?;
    let stdin = std::io::stdin();
    let mut lines = Lines::new(stdin.lock(), stdin.is_terminal());
    let Some(made) = ask(&mut lines, look().width.min(80))? else {
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
fn ask(lines: &mut Lines<impl BufRead>, width: usize) -> Result<Option<Made>, Failure> {
    note(&textwrap::fill(
        "The questions of `bayrise worksheet`, in the same order. Every length with its unit. Enter \
         alone: not known. ? says more of a question where there is more, < goes back to the one \
         before. After the last all answers are shown and can be changed; nothing is written before \
         you say write. Ctrl-C stops.",
        width,
    ));
    let mut dialogue = Dialogue::default();
    loop {
        while let Some(prompt) = dialogue.prompt() {
            show(&prompt, width);
            let asked = format!("question {}, {}", prompt.number, prompt.what);
            let Some(text) = lines.next(&asked)? else {
                continue;
            };
            match dialogue.answer(&text) {
                Ok(None) => {}
                Ok(Some(said)) => indented(&said, width),
                Err(refused) => lines.refuse(&text, &asked, &refused, width)?,
            }
        }
        show_all(&dialogue.review(), width);
        loop {
            let Some(text) = lines.next(THE_WORD)? else {
                continue;
            };
            if text.trim().is_empty() && !lines.from_terminal {
                // Behind the last question an empty line answers nothing.
                continue;
            }
            match dialogue.decide(&text) {
                Ok(Decision::Write(made)) => return Ok(Some(*made)),
                Ok(Decision::Stop) => return Ok(None),
                Ok(Decision::Ask) => break,
                Err(refused) => lines.refuse(&text, THE_WORD, &refused, width)?,
            }
        }
    }
}

/// What is read once all is answered.
const THE_WORD: &str = "the word write";

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
        Err(refused) => complain(refused, width),
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

pub(super) fn complain(refused: &Refused, width: usize) {
    let indent = textwrap::Options::new(width)
        .initial_indent("     ")
        .subsequent_indent("       ");
    let fill = |words: &str| note(&textwrap::fill(words, &indent));
    let lead = match refused.then.as_str() {
        "" => "not taken",
        _ => "the answers don't go together",
    };
    fill(&format!("{lead}: {}", refused.message));
    if !refused.help.is_empty() {
        fill(&format!("help: {}", refused.help));
    }
    if !refused.then.is_empty() {
        fill(&refused.then);
        note("");
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

#[cfg(test)]
mod tests {
    use super::*;

    /// What is made of lines that somebody types.
    fn typed(lines: &[u8]) -> Made {
        let mut lines = Lines::new(lines, true);
        match ask(&mut lines, 80) {
            Ok(Some(made)) => made,
            other => panic!("{other:?}"),
        }
    }

    fn with_the_rest(lines: &[u8]) -> Vec<u8> {
        [lines, "\n".repeat(400).as_bytes(), b"write\n"].concat()
    }

    #[test]
    fn on_a_terminal_a_bad_line_is_asked_again() {
        let lines = with_the_rest(b"The shed\nmetric\n\n10\nten feet\n3005 mm\n");
        let text = typed(&lines).text;
        assert!(text.contains("width: \"3005 mm\",\n"), "{text}");
        assert!(text.contains("title: \"The shed (") && text.contains("units: Metric"));
    }

    #[test]
    fn on_a_terminal_what_comes_after_an_overlong_line_is_no_answer() {
        // Filled up so that what is read first ends before the last word.
        for filler in [4096, 4095, 8192] {
            let long = format!("The shed\nmetric\n\n{}3 m\n3005 mm\n", "x".repeat(filler));
            let text = typed(&with_the_rest(long.as_bytes())).text;
            assert!(text.contains("width: \"3005 mm\",\n"), "{filler}");
        }
    }

    #[test]
    fn on_a_terminal_an_earlier_answer_at_odds_is_gone_to() {
        let start = format!("\n\n\n30 ft\n{}24 ft\n\n\n\n2.1\n10 ft\n", "\n".repeat(4));
        let text = typed(&with_the_rest(start.as_bytes())).text;
        assert!(
            text.contains("width: \"10 ft\",") && text.contains("width: \"24 ft\","),
            "{text}"
        );
    }

    #[test]
    fn the_same_lines_from_a_file_end_at_the_first_that_is_not_taken() {
        let lines = with_the_rest(b"The shed\nmetric\n\n10\n3005 mm\n");
        let ended = ask(&mut Lines::new(lines.as_slice(), false), 80);
        assert!(matches!(ended, Err(Failure::Said(..))), "{ended:?}");
    }
}

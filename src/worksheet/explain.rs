//! What is said of a question beyond its words: what may be answered, and, where somebody asks, what
//! a kind means and what becomes of it when it is left empty?

use super::answer::presets;
use super::answers::Answers;
use super::file::whether_all;
use super::label;
use super::question::{Kind, Question, Section};
use super::table::more;

/// What is said where somebody asks for more: nothing that is shown with the question anyway.
pub(super) fn explained(answers: &Answers, section: &Section, question: &Question) -> String {
    let more = more(section.id, question.key);
    let said = more.unwrap_or("There is nothing more to say of it.");
    match left_empty(answers, section, question) {
        Some(empty) => format!("{said} {empty}"),
        None => said.into(),
    }
}

/// What becomes of the bay while the question has no answer, where that is more than that it is not
/// known.
fn left_empty(answers: &Answers, section: &Section, question: &Question) -> Option<&'static str> {
    const WITHHELD: &str = "Left empty, no lock is called safe for want of it.";
    let mut without = answers.clone();
    if section.repeat.is_none() {
        without.clear(section.id, 0, question.key);
        // While something contradicts, what becomes of it where nothing else is answered.
        let made = without.bay_file(false);
        let made = made.or_else(|_| Answers::default().bay_file(false)).ok()?;
        let label = label(question.key);
        if made.not_measured.iter().any(|one| one.starts_with(&label)) {
            return Some(WITHHELD);
        }
        return (made.not_known.contains(&label))
            .then_some("Left empty, what hangs on it is told as not known.");
    }
    if is_first(section, question) {
        without.close(section.id, false);
        let made = without.bay_file(false).ok()?;
        if section.id == "roof" {
            return Some(
                "Enter alone: the outline does not count, and the body is as high and wide as it is \
                 anywhere over its whole length.",
            );
        }
        let all = whether_all(section.id);
        let withheld = made.not_measured.contains(&all);
        return Some(if withheld {
            "Enter alone: whether there is more is not known, and no lock is called safe for want of it."
        } else {
            "Enter alone: whether there is more is not known."
        });
    }
    // Of a thing that is there: see `lists`.
    let is_met = matches!(section.id, "things" | "fixed" | "under" | "lines");
    (is_met && !question.key.starts_with('#')).then_some(
        "Left empty, this one can't stand in the file, and no lock is called safe for want of it.",
    )
}

fn is_first(section: &Section, question: &Question) -> bool {
    section
        .questions
        .first()
        .is_some_and(|one| one.key == question.key)
}

/// What may be answered, in a few words.
pub(super) fn takes(section: &Section, question: &Question) -> String {
    let more = if section.repeat.is_some() && is_first(section, question) {
        "; none: nothing more"
    } else {
        ""
    };
    let words = match question.kind {
        Kind::Words => String::from("in your words"),
        Kind::Preset(form) => {
            let names: Vec<&str> = presets(form).iter().map(|one| one.name).collect();
            names.join(", ")
        }
        Kind::YesNo | Kind::Choice(_) | Kind::Count => question.kind.example(),
        _ => format!("such as {}", question.kind.example().trim_matches('"')),
    };
    format!("{words}{more}")
}

//! Which question comes next, and what becomes of what was typed?
//!
//! Plain state without a terminal: whoever shows a [`Prompt`] gives back the line that was typed.

use super::answer::{Refused, presets, read_answer};
use super::file::{Answers, Made};
use super::question::{Kind, Question, Section};
use super::{number, sections};

/// What says that there is nothing more.
const NONE: &str = "none";
/// What takes an earlier answer back.
const TAKEN_BACK: &str = "-";

/// The questions one after another.
#[derive(Debug, Clone, Default)]
pub struct Dialogue {
    pub(super) answers: Answers,
    section: usize,
    item: usize,
    question: usize,
    /// True while a section is asked again because its answers don't go together.
    again: bool,
    /// A section whose heading was not shown yet.
    shown: usize,
}

/// What to show before a line is read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prompt {
    /// Title and words of the section, at its first question.
    pub heading: Option<(String, &'static str)>,
    /// The question's number on the form.
    pub number: String,
    /// What is asked.
    pub what: String,
    /// Where the tape goes.
    pub how: &'static str,
    /// What may be answered.
    pub takes: String,
    /// An earlier answer that Enter keeps.
    pub kept: Option<String>,
}

impl Dialogue {
    fn here(&self) -> Option<(&'static Section, &'static Question)> {
        let section = sections().get(self.section)?;
        Some((section, section.questions.get(self.question)?))
    }

    /// The next question; none when all are answered.
    pub fn prompt(&mut self) -> Option<Prompt> {
        let (section, question) = self.here()?;
        let heading = (self.shown <= self.section).then(|| {
            let title = format!("{}. {}", self.section + 1, section.title);
            (title, section.says)
        });
        self.shown = self.section + 1;
        let what = match section.repeat {
            Some(repeat) => format!("{} {}: {}", repeat.thing, self.item + 1, question.what),
            None => question.what.into(),
        };
        let kept = self.answers.get(section.id, self.item, question.key);
        Some(Prompt {
            heading,
            number: number(section.id, question.key).unwrap_or_default(),
            what,
            how: question.how,
            takes: takes(section, question),
            kept: kept
                .filter(|_| self.again)
                .map(|ron| ron.trim_matches('"').to_owned()),
        })
    }

    /// Takes one line.
    ///
    /// # Errors
    /// [`Refused`] when it is no answer: the question stays. At the end of a section also when its
    /// answers don't go together: then the section is asked again, and Enter keeps what was said.
    pub fn answer(&mut self, line: &str) -> Result<(), Refused> {
        let Some((section, question)) = self.here() else {
            return Ok(());
        };
        let typed = line.trim();
        let gate = section.repeat.is_some() && self.question == 0;
        if gate && (typed.is_empty() || typed.eq_ignore_ascii_case(NONE)) {
            self.answers.close(section.id, !typed.is_empty());
            return self.end_of_section();
        }
        if typed == TAKEN_BACK {
            self.answers.clear(section.id, self.item, question.key);
        } else if typed.is_empty() {
            if !self.again {
                self.answers.clear(section.id, self.item, question.key);
            }
        } else {
            let ron = read_answer(question.kind, typed)?;
            if gate {
                self.answers.more(section.id);
            }
            self.answers.put(section.id, self.item, question.key, ron);
        }
        if gate && self.answers.count(section.id) <= self.item {
            // Taken back before it was given.
            return Ok(());
        }
        self.step()
    }

    /// On to the next question that is to be asked.
    fn step(&mut self) -> Result<(), Refused> {
        loop {
            self.question += 1;
            let Some(section) = sections().get(self.section) else {
                return Ok(());
            };
            match section.questions.get(self.question) {
                Some(question) if self.answers.asks(question) => return Ok(()),
                Some(_) => {}
                None if section.repeat.is_some() => {
                    self.item += 1;
                    self.question = 0;
                    return Ok(());
                }
                None => return self.end_of_section(),
            }
        }
    }

    fn end_of_section(&mut self) -> Result<(), Refused> {
        self.question = 0;
        self.item = 0;
        if let Err(refused) = self.answers.bay_file(false) {
            // Things are described anew, everything else is kept until it is changed.
            if let Some(section) = sections().get(self.section)
                && section.repeat.is_some()
            {
                self.answers.forget(section.id);
            }
            self.again = true;
            return Err(refused);
        }
        self.again = false;
        self.section += 1;
        Ok(())
    }

    /// True while a section is asked again.
    #[must_use]
    pub const fn is_asked_again(&self) -> bool {
        self.again
    }

    /// The bay file of the answers.
    ///
    /// # Errors
    /// What does not go together.
    pub fn made(&self) -> Result<Made, Refused> {
        self.answers.bay_file(true)
    }
}

/// What may be answered, in a few words.
fn takes(section: &Section, question: &Question) -> String {
    let first = section
        .questions
        .first()
        .is_some_and(|one| one.key == question.key);
    let more = if section.repeat.is_some() && first {
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

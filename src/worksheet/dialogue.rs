//! Which question comes next, and what becomes of what was typed?
//!
//! Plain state without a terminal: whoever shows a [`Prompt`] gives back the line that was typed.

use super::answer::{Refused, read_answer};
use super::answers::{Answers, unquoted};
use super::change::Changing;
use super::contradiction::Contradicts;
use super::explain::{explained, takes};
use super::file::Made;
use super::question::{Kind, Question, Section};
use super::{number, sections};

/// What says that there is nothing more.
const NONE: &[&str] = &["none", "no", "nothing", "no more", "nothing more"];
/// What says, in words, that a thing is not known, as the form has it to tick.
const NOT_KNOWN: &[&str] = &["not known", "unknown", "don't know", "not measured"];
/// What takes an earlier answer back.
const TAKEN_BACK: &str = "-";
/// What goes back to the question before.
const BACK: &str = "<";
/// What asks for more words.
const EXPLAIN: &[&str] = &["?", "help"];

/// The questions one after another.
#[derive(Debug, Clone, Default)]
pub struct Dialogue {
    pub(super) answers: Answers,
    pub(super) section: usize,
    pub(super) item: usize,
    pub(super) question: usize,
    /// True while answers that were given are asked again, and Enter keeps them.
    pub(super) again: bool,
    /// What is being changed, after all was answered.
    pub(super) changing: Option<Changing>,
    /// Answers of earlier sections that don't go with this one's: by its number each can be gone to.
    pub(super) offered: Vec<Contradicts>,
    /// A section whose heading was not shown yet.
    shown: usize,
    /// What was said of questions that were gone back over, outside of lists: Enter keeps it.
    gone_over: Answers,
    /// The way here: what was known, and at which question, before each answer.
    pub(super) before: Vec<Before>,
}

#[derive(Debug, Clone)]
pub(super) struct Before {
    answers: Answers,
    at: [usize; 3],
    again: bool,
    changing: Option<Changing>,
    offered: Vec<Contradicts>,
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
        let kept = match self.again {
            true => self.answers.get(section.id, self.item, question.key),
            false => self.gone_over.get(section.id, self.item, question.key),
        };
        Some(Prompt {
            heading,
            number: number(section.id, question.key).unwrap_or_default(),
            what,
            how: question.how,
            takes: takes(section, question),
            kept: kept.map(|ron| said(question.kind, ron)),
        })
    }

    /// Takes one line; what comes back is to be told: how a choice was understood, or what was asked
    /// for with `?`.
    ///
    /// # Errors
    /// [`Refused`] when it is no answer: the question stays. At the end of a section also when its
    /// answers don't go together: then the section is asked again, and Enter keeps what was said.
    /// The number of an earlier answer that does not go with it leads to that question, and on from
    /// there.
    pub fn answer(&mut self, line: &str) -> Result<Option<String>, Refused> {
        let Some((section, question)) = self.here() else {
            return Ok(None);
        };
        let typed = line.trim();
        let is_one_of = |words: &[&str]| words.iter().any(|word| typed.eq_ignore_ascii_case(word));
        if is_one_of(EXPLAIN) {
            return Ok(Some(explained(&self.answers, section, question)));
        }
        if typed == BACK {
            return self.back();
        }
        if let Some(number) = self.offers(typed) {
            self.go_to(&number)?;
            return Ok(Some(format!(
                "back to question {number}; after it the questions go on"
            )));
        }
        let before = self.now();
        let item = self.item;
        let gone_over = self.gone_over.get(section.id, item, question.key);
        let said = match gone_over.map(str::to_owned) {
            Some(ron) if typed.is_empty() && !self.again => {
                self.answers.put(section.id, item, question.key, ron);
                self.step()?;
                None
            }
            _ => self.take(section, question, typed)?,
        };
        self.gone_over.forget(section.id, item, question.key);
        self.before.push(before);
        Ok(said)
    }

    /// Where it stands, to come back to.
    pub(super) fn now(&self) -> Before {
        Before {
            answers: self.answers.clone(),
            at: [self.section, self.item, self.question],
            again: self.again,
            changing: self.changing.clone(),
            offered: self.offered.clone(),
        }
    }

    fn take(
        &mut self,
        section: &'static Section,
        question: &'static Question,
        typed: &str,
    ) -> Result<Option<String>, Refused> {
        let is_one_of = |words: &[&str]| words.iter().any(|word| typed.eq_ignore_ascii_case(word));
        // Words may be a name; of everything else it is said that it is not known.
        let unknown = is_one_of(NOT_KNOWN) && !matches!(question.kind, Kind::Words);
        let typed = if unknown { TAKEN_BACK } else { typed };
        let gate = section.repeat.is_some() && self.question == 0;
        // Where a list is asked again its things are gone through once more.
        let described = gate && self.item < self.answers.count(section.id);
        if described && is_one_of(NONE) {
            return Err(Refused::new(
                "this one is described already",
                "Enter keeps it, - takes it out; none is said after the last",
            ));
        }
        if described && unknown {
            return Err(Refused::new(
                "a thing that is described is there",
                "Enter keeps what was said of it, - takes it out",
            ));
        }
        if described && typed == TAKEN_BACK {
            self.answers.take_out(section.id, self.item);
            if self.changing.as_ref().is_some_and(|one| !one.is_list) {
                self.end_of_section()?;
            }
            return Ok(Some("taken out".into()));
        }
        if gate && !described && (unknown || typed.is_empty() || is_one_of(NONE)) {
            let as_before = self.again && typed.is_empty() && self.answers.is_closed(section.id);
            let known = is_one_of(NONE) || as_before;
            self.answers.close(section.id, known);
            self.end_of_section()?;
            return Ok(known.then(|| {
                if self.answers.count(section.id) == 0 {
                    "taken: none".into()
                } else {
                    "taken: nothing more".into()
                }
            }));
        }
        let mut said = None;
        if typed == TAKEN_BACK {
            self.answers.clear(section.id, self.item, question.key);
        } else if typed.is_empty() {
            if !self.again {
                self.answers.clear(section.id, self.item, question.key);
            }
        } else {
            let ron = read_answer(question.kind, typed)?;
            if question.key == "name" {
                self.is_new_name(section, typed)?;
            }
            if let Some(word) = word_of(question.kind, &ron).filter(|word| *word != typed) {
                said = Some(format!("taken: {word}"));
            }
            if gate && !described {
                self.answers.more(section.id);
            }
            self.answers.put(section.id, self.item, question.key, ron);
        }
        if gate && self.answers.count(section.id) <= self.item {
            // Taken back before it was given.
            return Ok(None);
        }
        self.step()?;
        Ok(said)
    }

    /// A name that the bay file would refuse is refused while it can still be typed again.
    fn is_new_name(&self, section: &Section, typed: &str) -> Result<(), Refused> {
        if typed.contains('/') {
            return Err(Refused::new(
                "a name can't hold a /: reports join names with it",
                "write it otherwise: \"half-inch pipe\" instead of \"1/2 in pipe\"",
            ));
        }
        if ["yes", "y", "n"]
            .iter()
            .any(|word| typed.eq_ignore_ascii_case(word))
        {
            return Err(Refused::new(
                format!("{typed:?} is taken for no name"),
                "write what it is called; none where there is nothing more",
            ));
        }
        let ron = crate::bayfile::edit::quoted(typed);
        let known = (0..self.answers.count(section.id))
            .filter(|item| *item != self.item)
            .any(|item| self.answers.get(section.id, item, "name") == Some(ron.as_str()));
        if known {
            return Err(Refused::new(
                format!("there is a {typed:?} already"),
                "each has a name of its own: say which side it is on, or number them",
            ));
        }
        Ok(())
    }

    /// Back to the question before, with what was known then.
    pub(super) fn back(&mut self) -> Result<Option<String>, Refused> {
        let Some(before) = self.before.pop() else {
            return Err(Refused::new(
                "this is the first question",
                "answer it, or press Enter",
            ));
        };
        self.gone_over.keep_plain(&self.answers);
        self.answers = before.answers;
        [self.section, self.item, self.question] = before.at;
        self.again = before.again;
        self.changing = before.changing;
        self.offered = before.offered;
        self.shown = self.shown.max(self.section + 1);
        Ok(Some("back to the question before".into()))
    }

    /// On to the next question that is to be asked.
    fn step(&mut self) -> Result<(), Refused> {
        loop {
            self.question += 1;
            let Some(section) = sections().get(self.section) else {
                return Ok(());
            };
            if self.changes_no_more() {
                return self.end_of_section();
            }
            match section.questions.get(self.question) {
                Some(question)
                    if self.answers.asks(question) && self.is_to_be_changed(question) =>
                {
                    return Ok(());
                }
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

    pub(super) fn end_of_section(&mut self) -> Result<(), Refused> {
        self.question = 0;
        self.item = 0;
        if let Some(changing) = self.changing.take() {
            return self.changed(changing);
        }
        if let Err(refused) = self.answers.bay_file(false) {
            return Err(self.not_together(refused));
        }
        self.again = false;
        self.offered.clear();
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

/// The word of a choice that an answer was understood as.
pub(super) fn word_of(kind: Kind, ron: &str) -> Option<&'static str> {
    match kind {
        Kind::YesNo => Some(if ron == "true" { "yes" } else { "no" }),
        Kind::Choice(words) => words
            .iter()
            .find(|(word, says)| *says == ron || (says.is_empty() && *word == ron))
            .map(|(word, _)| *word),
        _ => None,
    }
}

/// An answer as it was typed or understood.
pub(super) fn said(kind: Kind, ron: &str) -> String {
    word_of(kind, ron).map_or_else(|| unquoted(ron), str::to_owned)
}

//! What was answered, all of it at once, before anything is written?

use super::dialogue::{Dialogue, said};
use super::file::Made;
use super::question::Section;
use super::{Refused, number, sections};

/// All answers, in the order of the walk, and what they make.
#[derive(Debug, Clone)]
pub struct Review {
    /// Section by section.
    pub parts: Vec<Part>,
    /// The file that they make, or why they make none.
    pub made: Result<Made, Refused>,
}

/// One section of it.
#[derive(Debug, Clone)]
pub struct Part {
    /// Its number and title.
    pub title: String,
    /// Each answer with its number and words; in a list each thing with all of its answers.
    pub answers: Vec<String>,
    /// The numbers of what was asked and not answered.
    pub not_known: Vec<String>,
}

impl Dialogue {
    /// All answers and what they make.
    #[must_use]
    pub fn review(&self) -> Review {
        let parts = sections().iter().enumerate().map(|(at, section)| {
            let (answers, not_known) = match section.repeat {
                Some(repeat) => (self.things(section, repeat.thing), Vec::new()),
                None => self.plain_answers(section),
            };
            Part {
                title: format!("{}. {}", at + 1, section.title),
                answers,
                not_known,
            }
        });
        Review {
            parts: parts.collect(),
            made: self.made(),
        }
    }

    fn plain_answers(&self, section: &Section) -> (Vec<String>, Vec<String>) {
        let (mut answers, mut not_known) = (Vec::new(), Vec::new());
        for question in section.questions {
            let number = number(section.id, question.key).unwrap_or_default();
            match self.answers.get(section.id, 0, question.key) {
                Some(ron) => {
                    let end = if question.what.ends_with('?') {
                        ""
                    } else {
                        ":"
                    };
                    let said = said(question.kind, ron);
                    answers.push(format!("{number} {}{end} {said}", question.what));
                }
                None if self.answers.asks(question) => not_known.push(number),
                None => {}
            }
        }
        (answers, not_known)
    }

    /// Each thing of a list, and whether there are more.
    fn things(&self, section: &Section, thing: &str) -> Vec<String> {
        let count = self.answers.count(section.id);
        let one = |item: usize| {
            let said = section.questions.iter().map(|question| {
                let number = number(section.id, question.key).unwrap_or_default();
                let ron = self.answers.get(section.id, item, question.key);
                let said = ron.map_or_else(|| "NOT KNOWN".into(), |ron| said(question.kind, ron));
                format!("{number} {said}")
            });
            let said: Vec<String> = said.collect();
            format!("{thing} {}: {}", item + 1, said.join(", "))
        };
        let mut things: Vec<String> = (0..count).map(one).collect();
        things.push(
            match (count, self.answers.is_closed(section.id)) {
                (0, true) => "none",
                (0, false) => "whether there is any: NOT KNOWN",
                (_, true) => "nothing more",
                (_, false) => "whether these are all: NOT KNOWN",
            }
            .into(),
        );
        things
    }
}

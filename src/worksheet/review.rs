//! What was answered, all of it at once, before anything is written?

use super::dialogue::{Dialogue, said};
use super::file::Made;
use super::groups::{PARTS, at, group, in_ranges};
use super::question::Section;
use super::{Refused, number, sections};

/// All answers, by what they are of, and what they make.
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
    /// What of the bay it belongs to, in capitals: the sections of one follow one another.
    pub of: &'static str,
    /// Its number and title.
    pub title: String,
    /// What belongs together, each answer with its number; in a list each thing with all of its
    /// answers.
    pub answers: Vec<String>,
    /// The numbers of what was asked and not answered.
    pub not_known: Vec<String>,
}

impl Review {
    /// All of it but what it makes, in lines of at most so many letters: on a screen or two. What
    /// belongs together stands together, no answer is torn from its number, and short groups of a
    /// section share a line.
    #[must_use]
    pub fn lines(&self, width: usize) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        let mut of = "";
        for part in &self.parts {
            if part.of != of {
                lines.push(part.of.into());
                of = part.of;
            }
            let (number, title) = part.title.split_once(". ").unwrap_or_default();
            let numbers: Vec<&str> = part.not_known.iter().map(String::as_str).collect();
            let not_known = format!("NOT KNOWN: {}", in_ranges(&numbers));
            let mut groups = part.answers.clone();
            if let [only] = &mut groups[..]
                && (only == "none" || only.starts_with("whether "))
            {
                *only = format!("{title}: {only}");
            }
            groups.extend((!numbers.is_empty()).then_some(not_known));
            let mut line = format!("  {number:>2}");
            let is_begun = |line: &str| line.len() > 4;
            for group in &groups {
                if is_begun(&line) {
                    if letters(&line) + letters(group) + 3 <= width {
                        line += &format!(" | {group}");
                        continue;
                    }
                    lines.push(std::mem::replace(&mut line, format!("  {number:>2}")));
                }
                // Between answers only.
                for piece in group.split_inclusive(AFTER_AN_ANSWER) {
                    let piece = piece.trim();
                    if is_begun(&line) && letters(&line) + letters(piece) + 1 > width {
                        lines.push(std::mem::replace(&mut line, "     ".into()));
                    }
                    line += &format!(" {piece}");
                }
            }
            if is_begun(&line) {
                lines.push(line);
            }
        }
        // Words of a person's own may be longer than a line.
        let indent = textwrap::Options::new(width).subsequent_indent("      ");
        let wrapped = lines.iter().flat_map(|line| textwrap::wrap(line, &indent));
        wrapped.map(std::borrow::Cow::into_owned).collect()
    }
}

/// What an answer ends with where another follows.
const AFTER_AN_ANSWER: [char; 2] = [';', ','];

fn letters(text: &str) -> usize {
    text.chars().count()
}

impl Dialogue {
    /// All answers and what they make.
    #[must_use]
    pub fn review(&self) -> Review {
        let all = PARTS
            .iter()
            .flat_map(|(of, ids)| ids.iter().map(move |id| (*of, *id)));
        let parts = all.filter_map(|(of, id)| {
            let number = at(id)?;
            let section = sections().get(number - 1)?;
            let (answers, not_known) = match section.repeat {
                Some(repeat) => (self.things(section, repeat.thing), Vec::new()),
                None => self.plain_answers(section),
            };
            Some(Part {
                of,
                title: format!("{number}. {}", section.title),
                answers,
                not_known,
            })
        });
        Review {
            parts: parts.collect(),
            made: self.made(),
        }
    }

    /// What belongs together on a line, and what was asked and not answered.
    fn plain_answers(&self, section: &Section) -> (Vec<String>, Vec<String>) {
        let mut groups: Vec<(&str, Vec<String>)> = Vec::new();
        let mut not_known = Vec::new();
        for question in section.questions {
            if let Some(words) = group(section.id, question.key) {
                groups.push((words, Vec::new()));
            }
            let number = number(section.id, question.key).unwrap_or_default();
            match self.answers.get(section.id, 0, question.key) {
                Some(ron) => {
                    let said = format!("{number} {}", said(question.kind, ron));
                    if let Some((_, group)) = groups.last_mut() {
                        group.push(said);
                    }
                }
                None if self.answers.asks(question) => not_known.push(number),
                None => {}
            }
        }
        let said = groups.iter().filter(|(_, said)| !said.is_empty());
        let said = said.map(|(words, said)| format!("{words} \u{2014} {}", said.join("; ")));
        (said.collect(), not_known)
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

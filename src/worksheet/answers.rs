//! What was answered so far, and which question is asked after it?

use std::collections::BTreeMap;

use super::question::{Kind, Question, When};
use super::sections;
use crate::bay::UnitSystem;
use crate::units::{Length, parse_length};

/// What was answered: the question's section and key, the number of the thing, and how a bay file
/// writes the answer.
#[derive(Debug, Clone, Default)]
pub struct Answers {
    given: BTreeMap<(&'static str, usize, &'static str), String>,
    /// How many things of a repeated section are described.
    counts: BTreeMap<&'static str, usize>,
    /// Repeated sections that were looked at and have nothing more.
    pub(super) closed: BTreeMap<&'static str, bool>,
}

impl Answers {
    /// Keeps an answer as a bay file writes it.
    pub fn put(&mut self, section: &'static str, item: usize, key: &'static str, ron: String) {
        self.given.insert((section, item, key), ron);
        self.prune();
    }

    /// Takes an answer back.
    pub fn clear(&mut self, section: &'static str, item: usize, key: &'static str) {
        self.given.remove(&(section, item, key));
        self.prune();
    }

    /// Forgets an answer, whatever hangs on it.
    pub(super) fn forget(&mut self, section: &'static str, item: usize, key: &'static str) {
        self.given.remove(&(section, item, key));
    }

    /// Keeps the answers of others outside the repeated sections beside its own.
    pub(super) fn keep_plain(&mut self, others: &Self) {
        for section in sections().iter().filter(|section| section.repeat.is_none()) {
            let of = |at: &&(&str, usize, &str)| at.0 == section.id;
            for at in others.given.keys().filter(of) {
                self.given.insert(*at, others.given[at].clone());
            }
        }
    }

    /// An answer as a bay file writes it.
    #[must_use]
    pub fn get(&self, section: &str, item: usize, key: &str) -> Option<&str> {
        let found = self
            .given
            .iter()
            .find(|((s, i, k), _)| (*s, *i, *k) == (section, item, key));
        found.map(|(_, ron)| ron.as_str())
    }

    /// How many things of a repeated section are described.
    #[must_use]
    pub fn count(&self, section: &str) -> usize {
        self.counts.get(section).copied().unwrap_or(0)
    }

    /// A further thing of a repeated section is being described.
    pub fn more(&mut self, section: &'static str) {
        *self.counts.entry(section).or_default() += 1;
    }

    /// A repeated section has nothing more; `known` when that was said, not merely left empty.
    pub fn close(&mut self, section: &'static str, known: bool) {
        self.closed.insert(section, known);
    }

    /// The answer to a question outside the repeated sections.
    pub(super) fn plain(&self, key: &str) -> Option<&str> {
        let found = self
            .given
            .iter()
            .find(|((_, item, k), _)| *item == 0 && *k == key);
        found.map(|(_, ron)| ron.as_str())
    }

    /// True when a question is to be asked after what was answered so far.
    #[must_use]
    pub fn asks(&self, question: &Question) -> bool {
        match question.when {
            When::Always => true,
            When::If(key, words) => {
                // What it hangs on may hang on something itself.
                let asked = sections().iter().flat_map(|section| section.questions);
                let mut leads = asked.filter(|one| one.key == key);
                leads.all(|one| self.asks(one))
                    && self
                        .word(key)
                        .is_some_and(|said| words.contains(&said.as_str()))
            }
        }
    }

    /// Takes back what is no longer asked after an answer that was changed.
    fn prune(&mut self) {
        for section in sections().iter().filter(|section| section.repeat.is_none()) {
            for question in section.questions {
                if !self.asks(question) {
                    self.given.remove(&(section.id, 0, question.key));
                }
            }
        }
    }

    /// Takes one thing of a repeated section out; those after it move up.
    pub fn take_out(&mut self, section: &'static str, item: usize) {
        let Some(count) = self.counts.get_mut(section).filter(|count| item < **count) else {
            return;
        };
        *count -= 1;
        let given = std::mem::take(&mut self.given);
        let kept = given
            .into_iter()
            .filter(|((of, at, _), _)| (*of, *at) != (section, item));
        self.given = kept
            .map(|((of, at, key), ron)| {
                let moves_up = of == section && at > item;
                ((of, at - usize::from(moves_up), key), ron)
            })
            .collect();
    }

    /// Whether a repeated section was called complete.
    #[must_use]
    pub fn is_closed(&self, section: &str) -> bool {
        self.closed.get(section).copied().unwrap_or(false)
    }

    /// The word of a choice that was answered, as it is asked.
    pub(super) fn word(&self, key: &str) -> Option<String> {
        let ron = self.plain(key)?;
        let asked = sections().iter().flat_map(|section| section.questions);
        for question in asked.filter(|question| question.key == key) {
            if matches!(question.kind, Kind::YesNo) {
                return Some(if ron == "true" { "yes" } else { "no" }.to_owned());
            }
            if let Kind::Choice(words) = question.kind {
                let same = |(word, says): &&(&str, &str)| *word == ron || *says == ron;
                return words.iter().find(same).map(|(word, _)| (*word).to_owned());
            }
        }
        None
    }

    pub(super) fn text(&self, key: &str) -> Option<String> {
        self.plain(key).map(unquoted)
    }

    pub(super) fn length(&self, key: &str) -> Option<Length> {
        parse_length(&self.text(key)?).ok()
    }

    /// The units that the file shows lengths in.
    #[must_use]
    pub fn units(&self) -> UnitSystem {
        match self.plain("units") {
            Some("Metric") => UnitSystem::Metric,
            _ => UnitSystem::Imperial,
        }
    }
}

/// What was typed, of how a bay file writes it.
pub(super) fn unquoted(ron: &str) -> String {
    let inner = ron
        .strip_prefix('"')
        .and_then(|rest| rest.strip_suffix('"'));
    inner.map_or_else(
        || ron.to_owned(),
        |text| text.replace("\\\"", "\"").replace("\\\\", "\\"),
    )
}

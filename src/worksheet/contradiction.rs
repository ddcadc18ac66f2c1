//! Answers don't go together: which of them, and where was each given?
//!
//! Found by taking one back at a time: what goes together without it is what it contradicts.

use super::Refused;
use super::answers::Answers;
use super::change::hangs_on;
use super::dialogue::{Dialogue, said};
use super::question::{Kind, Section};
use super::{number, sections};

/// An answer without which the others go together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Contradicts {
    /// The place of its section in the walk, from 0.
    section: usize,
    /// How it is named where it is to be changed: `2.1`, `5.1 of 2`, `5`.
    pub(super) number: String,
    /// What was asked, and what was answered.
    words: String,
}

/// How many are named at most.
const MOST: usize = 6;

impl Refused {
    /// Names the answers that don't go together.
    pub(super) fn name(&mut self, contradict: &[Contradicts]) {
        let named = contradict.iter().take(MOST);
        let named: Vec<String> = named
            .map(|one| format!("{} {}", one.number, one.words))
            .collect();
        if named.is_empty() {
            return;
        }
        if !self.help.is_empty() {
            self.help.push_str(". ");
        }
        let lead = match named.len() {
            1 => "What does not go with the rest: ",
            _ => "What does not go together: ",
        };
        self.help.push_str(lead);
        self.help.push_str(&named.join("; "));
    }
}

impl Dialogue {
    /// The section that was answered last is asked again, and what contradicts it from earlier
    /// sections can be gone to.
    pub(super) fn not_together(&mut self, mut refused: Refused) -> Refused {
        self.again = true;
        let contradict = self.answers.contradict(&refused);
        refused.name(&contradict);
        let earlier = contradict.into_iter().take(MOST);
        self.offered = earlier.filter(|one| one.section < self.section).collect();
        let again = format!(
            "section {} is asked again: Enter keeps each answer, - takes it back",
            self.section + 1
        );
        let numbers: Vec<&str> = self.offered.iter().map(|one| one.number.as_str()).collect();
        refused.then = match numbers.as_slice() {
            [] => format!("{again}."),
            _ => format!(
                "To change an earlier answer write its number: {}. Else {again}.",
                numbers.join(" or ")
            ),
        };
        refused
    }
}

impl Answers {
    /// The answers that are at odds, each without which the others go together. Those on which other
    /// questions hang, and whole lists, are named only where nothing smaller is at fault.
    pub(super) fn contradict(&self, refused: &Refused) -> Vec<Contradicts> {
        for of in [Self::one_by_one, Self::in_the_large] {
            let mut found = Vec::new();
            let mut nearly = Vec::new();
            for (contradicts, without) in of(self) {
                match without.bay_file(false) {
                    Ok(_) => found.push(contradicts),
                    Err(other) if !is_alike(&other, refused) => nearly.push(contradicts),
                    Err(_) => {}
                }
            }
            // Where more than one thing is wrong, what mends the first of them.
            let found = if found.is_empty() { nearly } else { found };
            if !found.is_empty() {
                return found;
            }
        }
        Vec::new()
    }

    /// Each answer, and each thing of a list, with the answers that are left without it.
    fn one_by_one(&self) -> Vec<(Contradicts, Self)> {
        let mut all = self.plain_ones(false);
        for (at, section) in sections().iter().enumerate() {
            let Some(repeat) = section.repeat else {
                continue;
            };
            let count = self.count(section.id);
            for item in 0..count {
                let mut without = self.clone();
                without.take_out(section.id, item);
                let first = section.questions.first();
                let first = first.and_then(|one| {
                    let ron = self.get(section.id, item, one.key)?;
                    Some((number(section.id, one.key)?, said(one.kind, ron)))
                });
                let Some((number, said)) = first else {
                    continue;
                };
                let number = match count {
                    1 => number,
                    _ => format!("{number} of {}", item + 1),
                };
                let words = format!("{} {}, {said}", repeat.thing, item + 1);
                let one = Contradicts {
                    section: at,
                    number,
                    words,
                };
                all.push((one, without));
            }
        }
        all.sort_by_key(|(one, _)| one.section);
        all
    }

    /// Each answer on which other questions hang, and each list as a whole, likewise.
    fn in_the_large(&self) -> Vec<(Contradicts, Self)> {
        let mut all = self.plain_ones(true);
        for (at, section) in sections().iter().enumerate() {
            let count = self.count(section.id);
            if section.repeat.is_none() || count == 0 {
                continue;
            }
            let mut without = self.clone();
            for item in (0..count).rev() {
                without.take_out(section.id, item);
            }
            let one = Contradicts {
                section: at,
                number: (at + 1).to_string(),
                words: section.title.into(),
            };
            all.push((one, without));
        }
        all.sort_by_key(|(one, _)| one.section);
        all
    }

    /// The answers outside of lists, of those on which others hang or of the rest.
    fn plain_ones(&self, leading: bool) -> Vec<(Contradicts, Self)> {
        let mut all = Vec::new();
        for (at, section) in sections().iter().enumerate() {
            // Its words and units contradict nothing.
            if section.repeat.is_some() || section.id == "start" {
                continue;
            }
            for question in section.questions {
                let leads =
                    leads(section, question.key) || matches!(question.kind, Kind::Preset(_));
                let Some(ron) = self.get(section.id, 0, question.key) else {
                    continue;
                };
                if leads != leading {
                    continue;
                }
                let mut without = self.clone();
                without.clear(section.id, 0, question.key);
                let one = Contradicts {
                    section: at,
                    number: number(section.id, question.key).unwrap_or_default(),
                    words: format!("({}): {}", question.what, said(question.kind, ron)),
                };
                all.push((one, without));
            }
        }
        all
    }
}

/// Whether other questions of its section are asked after its answer.
fn leads(section: &Section, key: &str) -> bool {
    let mut others = section.questions.iter();
    others.any(|one| hangs_on(one, key))
}

/// Whether the same is wrong, whatever the figures.
fn is_alike(one: &Refused, other: &Refused) -> bool {
    let plain = |refused: &Refused| -> String {
        let letters = refused.message.chars();
        letters.filter(|letter| !letter.is_ascii_digit()).collect()
    };
    plain(one) == plain(other)
}

//! All is answered: is the file written, is an answer changed, or is it left at that?

use super::answers::Answers;
use super::dialogue::Dialogue;
use super::file::Made;
use super::question::{Question, Section, When};
use super::{Refused, sections};

/// What is said to be done with the answers.
#[derive(Debug, Clone)]
pub enum Decision {
    /// The bay file is to be written.
    Write(Box<Made>),
    /// A question is asked again.
    Ask,
    /// Nothing is to be written.
    Stop,
}

/// What is being changed.
#[derive(Debug, Clone)]
pub(super) struct Changing {
    /// What was known before it.
    answers: Answers,
    /// The question that was named.
    key: &'static str,
    index: usize,
    /// True where a list is gone through as a whole.
    pub(super) is_list: bool,
    /// The section that is asked again, where the change was made because of its answers: after it
    /// the questions go on.
    back_to: Option<usize>,
}

/// What may be said once all is answered.
const CHOICES: &str = "write; change and a question's number, as in change 2.1; or stop";

impl Dialogue {
    /// Takes a line once there is nothing more to ask.
    ///
    /// # Errors
    /// [`Refused`] when it is none of the choices, names no question that is asked, or the answers
    /// don't go together.
    pub fn decide(&mut self, line: &str) -> Result<Decision, Refused> {
        let typed = line.trim().to_lowercase();
        match typed.as_str() {
            "write" | "w" => return self.made().map(|made| Decision::Write(Box::new(made))),
            "stop" | "s" | "quit" | "q" => return Ok(Decision::Stop),
            "<" => return self.back().map(|_| Decision::Ask),
            _ => {}
        }
        let named = ["change", "c"]
            .iter()
            .find_map(|word| typed.strip_prefix(word))
            .map_or(typed.as_str(), str::trim);
        if named.starts_with(|letter: char| letter.is_ascii_digit()) {
            self.change(named, None)?;
            return Ok(Decision::Ask);
        }
        let wrong = if typed.is_empty() {
            String::from("nothing is written yet")
        } else {
            format!("{:?} is none of the choices", line.trim())
        };
        Err(Refused::new(wrong, format!("write one of: {CHOICES}")))
    }

    /// Asks a question again: `2.1`, `5.3 of 2` for the second thing of a list, `5` for the whole
    /// list.
    fn change(&mut self, named: &str, back_to: Option<usize>) -> Result<(), Refused> {
        let none = || {
            Refused::new(
                format!("there is no question {named:?}"),
                "the numbers are those before each answer, such as 2.1",
            )
        };
        let (number, item) = match named.split_once("of") {
            Some((number, item)) => {
                let item: usize = item.trim().parse().map_err(|_| none())?;
                (number.trim(), Some(item))
            }
            None => (named, None),
        };
        let (section, question) = match number.split_once('.') {
            Some((section, question)) => {
                let question: usize = question.parse().map_err(|_| none())?;
                (section, Some(question))
            }
            None => (number, None),
        };
        let at: usize = section.parse().map_err(|_| none())?;
        let at = at.checked_sub(1).ok_or_else(none)?;
        let section = sections().get(at).ok_or_else(none)?;
        let index = question.map_or(Some(0), |one| one.checked_sub(1));
        let index = index.ok_or_else(none)?;
        let asked = section.questions.get(index).ok_or_else(none)?;
        let (item, is_list) = self.thing(section, question, item)?;
        if !self.answers.asks(asked) {
            return Err(Refused::new(
                format!("{named} is not asked after what was answered"),
                "change the question that it hangs on",
            ));
        }
        self.before.push(self.now());
        self.changing = Some(Changing {
            answers: self.answers.clone(),
            key: asked.key,
            index,
            is_list,
            back_to,
        });
        self.again = true;
        // A list is gone into at its first question.
        let index = if is_list { 0 } else { index };
        (self.section, self.item, self.question) = (at, item, index);
        Ok(())
    }

    /// The number of an earlier answer that was offered to be gone to, where a line names one.
    pub(super) fn offers(&self, typed: &str) -> Option<String> {
        if !self.again || self.changing.is_some() {
            return None;
        }
        let typed = typed.to_lowercase();
        let named = typed.strip_prefix("change").unwrap_or(&typed).trim();
        let offered = self.offered.iter().find(|one| one.number == named);
        offered.map(|one| one.number.clone())
    }

    /// To an earlier question, because its answer does not go with those of this section.
    pub(super) fn go_to(&mut self, number: &str) -> Result<(), Refused> {
        self.change(number, Some(self.section))
    }

    /// Which thing of a section is meant, and whether all of them are.
    fn thing(
        &self,
        section: &Section,
        question: Option<usize>,
        item: Option<usize>,
    ) -> Result<(usize, bool), Refused> {
        let count = self.answers.count(section.id);
        let Some(repeat) = section.repeat else {
            return match (question, item) {
                (Some(_), None) => Ok((0, false)),
                _ => Err(Refused::new(
                    format!("{} has questions, no list of things", section.title),
                    "name a question by its number, such as 2.1",
                )),
            };
        };
        match (question, item) {
            (None, None) => Ok((0, true)),
            (Some(_), None) if count == 0 => Ok((0, true)),
            (Some(_), None) if count == 1 => Ok((0, false)),
            (Some(_), Some(item)) if (1..=count).contains(&item) => Ok((item - 1, false)),
            _ => Err(Refused::new(
                format!(
                    "{} no. 1 to {count} are described: say of which",
                    repeat.thing
                ),
                "the second one's is written so: change 5.3 of 2",
            )),
        }
    }

    /// True where nothing hangs on what is changed, or it stayed as it was.
    pub(super) fn changes_no_more(&self) -> bool {
        let Some(changing) = self.changing.as_ref().filter(|one| !one.is_list) else {
            return false;
        };
        let Some(section) = sections().get(self.section) else {
            return true;
        };
        let of = |answers: &Answers| {
            let ron = answers.get(section.id, self.item, changing.key);
            ron.map(str::to_owned)
        };
        // Only the first is compared: what hangs on it is asked because it was changed.
        section.repeat.is_some()
            || (self.question == changing.index + 1 && of(&self.answers) == of(&changing.answers))
    }

    /// Whether a question comes up: while one is changed only what hangs on it does.
    pub(super) fn is_to_be_changed(&self, question: &Question) -> bool {
        match &self.changing {
            Some(changing) if !changing.is_list => hangs_on(question, changing.key),
            _ => true,
        }
    }

    /// The change is made where the answers still go together; else the earlier ones stand. Where it
    /// was made because of a section's answers, these are looked at again.
    pub(super) fn changed(&mut self, changing: Changing) -> Result<(), Refused> {
        if let Some(section) = changing.back_to {
            self.section = section;
            return self.end_of_section();
        }
        self.section = sections().len();
        self.again = false;
        let Err(mut refused) = self.answers.bay_file(false) else {
            return Ok(());
        };
        refused.name(&self.answers.contradict(&refused));
        refused.message += "; the answers before this change stand";
        self.answers = changing.answers;
        Err(refused)
    }
}

/// Whether a question is asked after the answer to another, itself or by what it is asked after.
pub(super) fn hangs_on(question: &Question, key: &str) -> bool {
    let When::If(on, _) = question.when else {
        return false;
    };
    let leads = sections().iter().flat_map(|section| section.questions);
    on == key
        || leads
            .filter(|one| one.key == on)
            .any(|one| hangs_on(one, key))
}

//! What is one question made of?

use crate::units;

/// A part of the walk.
#[derive(Debug, Clone, Copy)]
pub struct Section {
    /// A short word for it.
    pub id: &'static str,
    /// What it is called.
    pub title: &'static str,
    /// What is to be known before its questions.
    pub says: &'static str,
    /// Its questions, in order.
    pub questions: &'static [Question],
    /// Set where the questions are asked again for each of several things.
    pub repeat: Option<Repeat>,
}

/// Questions that are asked for each of several things.
#[derive(Debug, Clone, Copy)]
pub struct Repeat {
    /// One of them.
    pub thing: &'static str,
    /// How many lines the form has for them.
    pub lines: usize,
}

/// One question.
#[derive(Debug, Clone, Copy)]
pub struct Question {
    /// Where its answer goes: a path of the bay file, or a word with `#` that
    /// `file` makes something of. In a repeated section: the field.
    pub key: &'static str,
    /// What is asked.
    pub what: &'static str,
    /// Where the tape goes, and how one comes to a reading that is safe.
    pub how: &'static str,
    /// What an answer is.
    pub kind: Kind,
    /// When it is asked.
    pub when: When,
}

/// What an answer is.
#[derive(Debug, Clone, Copy)]
pub enum Kind {
    /// Any words.
    Words,
    /// A quantity above zero.
    Size(units::Kind),
    /// A quantity of zero or more.
    NotNegative(units::Kind),
    /// A quantity to either side of zero.
    Place(units::Kind),
    /// A whole number from 1.
    Count,
    /// A day.
    Day,
    /// Yes or no.
    YesNo,
    /// One of some words; the second of each is what the bay file says.
    Choice(&'static [(&'static str, &'static str)]),
    /// A lift or a vehicle to start from.
    Preset(Form),
}

/// What a preset is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A lift.
    Lift,
    /// A vehicle.
    Vehicle,
}

/// When a question is asked.
#[derive(Debug, Clone, Copy)]
pub enum When {
    /// Always.
    Always,
    /// Where the question with this key was answered with one of these words.
    If(&'static str, &'static [&'static str]),
}

impl Question {
    /// A question that is always asked.
    pub(super) const fn new(
        key: &'static str,
        what: &'static str,
        how: &'static str,
        kind: Kind,
    ) -> Self {
        Self {
            key,
            what,
            how,
            kind,
            when: When::Always,
        }
    }

    /// The same, asked only where an earlier answer was one of these words.
    pub(super) const fn only_if(
        mut self,
        key: &'static str,
        words: &'static [&'static str],
    ) -> Self {
        self.when = When::If(key, words);
        self
    }
}

impl Kind {
    /// Which units an answer takes, in a few words; empty where it takes none.
    #[must_use]
    pub fn units(self) -> &'static str {
        use units::Kind as Of;
        match self {
            Self::Size(of) | Self::NotNegative(of) | Self::Place(of) => match of {
                Of::Length => "ft in / mm",
                Of::Mass => "lb / kg",
                Of::Pressure => "psi / MPa",
                Of::Angle => "deg",
                Of::Voltage => "V",
                Of::Current => "A",
                _ => "with its unit",
            },
            Self::Count => "number",
            Self::Day => "year-month-day",
            Self::YesNo | Self::Choice(_) | Self::Words | Self::Preset(_) => "",
        }
    }

    /// An answer as an example.
    #[must_use]
    pub fn example(self) -> String {
        match self {
            Self::Words => "any words".into(),
            Self::Size(of) | Self::NotNegative(of) | Self::Place(of) => of.example().into(),
            Self::Count => "12".into(),
            Self::Day => "1998-06-01".into(),
            Self::YesNo => "yes, no".into(),
            Self::Choice(words) => words
                .iter()
                .map(|(word, _)| *word)
                .collect::<Vec<_>>()
                .join(", "),
            Self::Preset(_) => "a name that `bayrise presets` lists".into(),
        }
    }
}

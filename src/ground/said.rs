//! How are sentences with figures in them kept until it is known in which units they are shown?

use super::Quantity;
use crate::units::Rounding;

/// A sentence of words and quantities; the presenter shows the quantities in the bay's units.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Said(pub Vec<Part>);

/// A piece of a sentence.
#[derive(Debug, Clone, PartialEq)]
pub enum Part {
    /// Words as they are; what a person wrote in the file is taken as text, never as markup.
    Words(String),
    /// A quantity and which way it is rounded when shown.
    Quantity(Quantity, Rounding),
}

impl Said {
    /// A sentence that starts with these words.
    #[must_use]
    pub fn new(words: impl Into<String>) -> Self {
        Self(vec![Part::Words(words.into())])
    }

    /// More words.
    #[must_use]
    pub fn and(mut self, words: impl Into<String>) -> Self {
        self.0.push(Part::Words(words.into()));
        self
    }

    /// Another sentence, or the rest of this one.
    #[must_use]
    pub fn and_said(mut self, more: Self) -> Self {
        self.0.extend(more.0);
        self
    }

    /// A quantity that must not look smaller than it is: a load, a need, a shortfall.
    #[must_use]
    pub fn up(mut self, quantity: Quantity) -> Self {
        self.0.push(Part::Quantity(quantity, Rounding::Up));
        self
    }

    /// A quantity that must not look larger than it is: room, strength, what may be carried.
    #[must_use]
    pub fn down(mut self, quantity: Quantity) -> Self {
        self.0.push(Part::Quantity(quantity, Rounding::Down));
        self
    }

    /// A quantity for information: a place, a size as written.
    #[must_use]
    pub fn near(mut self, quantity: Quantity) -> Self {
        self.0.push(Part::Quantity(quantity, Rounding::Nearest));
        self
    }
}

impl<S: Into<String>> From<S> for Said {
    fn from(words: S) -> Self {
        Self::new(words)
    }
}

//! How tall are people?

use crate::units::Length;

/// A stature of ANSUR II: percentile computed from the public data of 4082 men and 1986 women,
/// service members, unweighted: no sample of everybody.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Percentile {
    /// The word that a bay file has for it.
    pub word: &'static str,
    /// So many of a hundred are no taller.
    pub of_hundred: u32,
    /// "men" or "women".
    pub who: &'static str,
    /// Stature without shoes, metres.
    pub stature_m: f64,
}

/// What shoes add to a stature: EN 547-1, from memory.
pub const SHOES: Length = Length::mm(40.0);

const fn row(word: &'static str, of_hundred: u32, who: &'static str, mm: f64) -> Percentile {
    Percentile {
        word,
        of_hundred,
        who,
        stature_m: mm * 1e-3,
    }
}

/// Shortest first.
pub const PERCENTILES: [Percentile; 8] = [
    row("Women5", 5, "women", 1525.0),
    row("Women50", 50, "women", 1626.0),
    row("Men5", 5, "men", 1648.0),
    row("Women95", 95, "women", 1740.0),
    row("Men50", 50, "men", 1755.0),
    row("Women99", 99, "women", 1777.6),
    row("Men95", 95, "men", 1870.0),
    row("Men99", 99, "men", 1927.0),
];

impl Percentile {
    /// With shoes, and nothing on the head.
    #[must_use]
    pub fn with_shoes(&self) -> Length {
        Length::metres(self.stature_m) + SHOES
    }
}

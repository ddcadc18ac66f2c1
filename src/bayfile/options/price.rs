//! What is paid for, and how much is asked for it?

/// What a lift costs beside itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Work {
    /// The lift.
    Lift,
    /// Bringing it.
    Freight,
    /// Cutting out the slab and pouring a pad under each post.
    Pad,
    /// The anchors.
    Anchors,
    /// The circuit.
    Electrics,
    /// Work on the overhead door and its opener.
    Door,
    /// Any other work on the garage.
    Other,
}

impl Work {
    /// All of it, in order.
    pub const ALL: [Self; 7] = [
        Self::Lift,
        Self::Freight,
        Self::Pad,
        Self::Anchors,
        Self::Electrics,
        Self::Door,
        Self::Other,
    ];

    /// Its field in a record of prices, and its name for programs.
    #[must_use]
    pub const fn field(self) -> &'static str {
        match self {
            Self::Lift => "lift",
            Self::Freight => "freight",
            Self::Pad => "pad",
            Self::Anchors => "anchors",
            Self::Electrics => "electrics",
            Self::Door => "door",
            Self::Other => "other",
        }
    }

    /// Whether the prices of several options are for several pieces of work.
    #[must_use]
    pub const fn adds_up(self) -> bool {
        matches!(self, Self::Door | Self::Other)
    }

    /// The words a person uses.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Lift => "lift",
            Self::Freight => "freight",
            Self::Pad => "pad",
            Self::Anchors => "anchors",
            Self::Electrics => "electrics",
            Self::Door => "door work",
            Self::Other => "other work",
        }
    }
}

/// An amount of money, in hundredths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Money(pub i64);

impl Money {
    /// From a number as written, to the nearest hundredth.
    #[must_use]
    #[allow(clippy::cast_possible_truncation)] // the reader takes at most 1e8
    pub fn of_number(amount: f64) -> Self {
        Self((amount * 100.0).round() as i64)
    }

    /// As a number of whole units.
    #[must_use]
    #[allow(clippy::cast_precision_loss)] // far below 2^53
    pub const fn number(self) -> f64 {
        self.0 as f64 / 100.0
    }

    /// "$1,250" or "EUR 1,250.50".
    #[must_use]
    pub fn show(self, currency: &str) -> String {
        let (whole, hundredths) = (self.0.unsigned_abs() / 100, self.0.unsigned_abs() % 100);
        let digits = whole.to_string();
        let mut grouped = String::new();
        for (index, digit) in digits.chars().enumerate() {
            if index > 0 && (digits.len() - index).is_multiple_of(3) {
                grouped.push(',');
            }
            grouped.push(digit);
        }
        let gap = if currency.ends_with(char::is_alphanumeric) {
            " "
        } else {
            ""
        };
        let sign = if self.0 < 0 { "-" } else { "" };
        if hundredths == 0 {
            format!("{sign}{currency}{gap}{grouped}")
        } else {
            format!("{sign}{currency}{gap}{grouped}.{hundredths:02}")
        }
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        Self(amounts.map(|amount| amount.0).sum())
    }
}

/// What is asked for each kind of work; none where nobody has said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Prices([Option<Money>; 7]);

impl Prices {
    /// What is asked for it.
    #[must_use]
    pub const fn of(&self, work: Work) -> Option<Money> {
        self.0[work as usize]
    }

    pub(in crate::bayfile) const fn set(&mut self, work: Work, price: Option<Money>) {
        self.0[work as usize] = price;
    }

    /// These prices with others laid over them.
    #[must_use]
    pub fn under(&self, over: &Self) -> Self {
        let mut prices = *self;
        for (price, over) in prices.0.iter_mut().zip(over.0) {
            *price = over.or(*price);
        }
        prices
    }

    /// What is asked with one option and another: door work and other work of both, and of the rest
    /// the later one's.
    #[must_use]
    pub fn and(&self, later: &Self) -> Self {
        let mut both = self.under(later);
        for work in Work::ALL.into_iter().filter(|work| work.adds_up()) {
            if let (Some(one), Some(other)) = (self.of(work), later.of(work)) {
                both.set(work, Some(Money(one.0 + other.0)));
            }
        }
        both
    }

    /// True where nobody has said anything.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(Option::is_none)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_read_like_amounts() {
        assert_eq!(Money::of_number(1250.0).show("$"), "$1,250");
        assert_eq!(
            Money::of_number(1_234_567.5).show("EUR"),
            "EUR 1,234,567.50"
        );
        assert_eq!(Money::of_number(0.0).show("$"), "$0");
        assert_eq!(Money::of_number(99.995).show(""), "100");
    }

    #[test]
    fn the_upper_price_counts_and_none_hides_nothing() {
        let mut under = Prices::default();
        under.set(Work::Lift, Some(Money(100)));
        under.set(Work::Freight, Some(Money(5)));
        let mut over = Prices::default();
        over.set(Work::Lift, Some(Money(0)));
        let both = under.under(&over);
        assert_eq!(both.of(Work::Lift), Some(Money(0)));
        assert_eq!(both.of(Work::Freight), Some(Money(5)));
        assert_eq!(both.of(Work::Pad), None);
    }
}

//! How does a figure stand where the code or the maker may allow what a screening does not?

use std::borrow::Cow;

use super::{Figure, Standing};

/// A figure that fails a screening is not decided, never a stop; `how` says what to get.
pub(super) fn screened(figure: Figure, how: impl Into<Cow<'static, str>>) -> Figure {
    if figure.standing == Standing::Stops {
        figure.undecided(how)
    } else {
        figure
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ground::{Bound, Quantity};

    #[test]
    fn a_failing_screening_is_not_known_and_a_passing_one_stays() {
        let judged = |found| {
            let (found, limit) = (Quantity::Current(found), Quantity::Current(30.0));
            screened(
                Figure::judged("a", "a", found, Bound::AtMost, limit),
                "ask the electrician",
            )
        };
        assert_eq!(judged(20.0).standing, Standing::Passes);
        for failing in [31.0, f64::NAN] {
            let figure = judged(failing);
            assert_eq!(figure.standing, Standing::Unknown);
            assert_eq!(figure.cure.as_deref(), Some("ask the electrician"));
        }
    }
}

//! How strong is concrete at an age, and from which age is it strong enough?
//!
//! ACI 209R-92, section 2.2.1: f(t) / f28 = t / (a + b t), t in days. It is a mean for a cement and
//! a cure, not a test of this concrete; more than the strength at 28 days is never counted.

use crate::bay::Curing;

/// The age that a stated strength belongs to, days.
pub const FULL_AGE_DAYS: f64 = 28.0;

/// The constants a and b of ACI 209R-92, Table 2.2.1, for type I cement.
const fn constants(curing: Curing) -> (f64, f64) {
    match curing {
        Curing::Moist => (4.0, 0.85),
        Curing::Steam => (1.0, 0.95),
    }
}

/// Strength at an age as a share of that at 28 days, by the formula: above 1 after some four
/// weeks. 0 before it is poured and where the age is no number.
#[must_use]
pub fn ratio(curing: Curing, age_days: f64) -> f64 {
    if age_days > 0.0 && age_days.is_finite() {
        let (a, b) = constants(curing);
        age_days / (a + b * age_days)
    } else {
        0.0
    }
}

/// The share that is counted: never more than 1. Before 28 days it rests on the cure and is not
/// known without it.
#[must_use]
pub fn counted(curing: Option<Curing>, age_days: f64) -> Option<f64> {
    if age_days >= FULL_AGE_DAYS {
        return Some(1.0);
    }
    curing.map(|curing| ratio(curing, age_days).min(1.0))
}

/// The first whole day at which a share of the 28-day strength is counted; none for more than 1,
/// which no age gives. All of it is not promised before day 28, though the formula gives it a day
/// earlier; nor is anything where the cure is not known.
#[must_use]
pub fn days_to(curing: Option<Curing>, share: f64) -> Option<f64> {
    if share.is_nan() || share > 1.0 {
        return None;
    }
    let (Some(curing), true) = (curing, share < 1.0) else {
        return Some(FULL_AGE_DAYS);
    };
    // t = a r / (1 - b r), the formula turned round.
    let (a, b) = constants(curing);
    let days = a * share.max(0.0) / (1.0 - b * share.max(0.0));
    // A millionth of a day is noise of the turning round.
    Some((days - 1e-6).ceil().clamp(0.0, FULL_AGE_DAYS))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_curve() {
        // ACI 209R-92, section 2.2.1, a 4.0, b 0.85, worked out: 7 / (4 + 0.85 * 7) = 0.7035.
        for (days, expect) in [
            (3.0, 0.4580),
            (7.0, 0.7035),
            (14.0, 0.8805),
            (28.0, 1.0072),
            (56.0, 1.0853),
            (90.0, 1.1180),
        ] {
            let found = ratio(Curing::Moist, days);
            assert!((found - expect).abs() < 5e-5, "{days}: {found}");
        }
        // Its printed table, from memory, rounds to two decimals; the last is for 91 days.
        for (days, expect) in [
            (3.0, 0.46),
            (7.0, 0.70),
            (14.0, 0.88),
            (28.0, 1.0),
            (56.0, 1.08),
            (91.0, 1.12),
        ] {
            let found = ratio(Curing::Moist, days);
            assert!((found - expect).abs() < 0.0076, "{days}: {found}");
        }
        // Steam, a 1.0, b 0.95: 1 / 1.95 after a day, 7 / 7.65 after a week.
        assert!((ratio(Curing::Steam, 1.0) - 1.0 / 1.95).abs() < 1e-12);
        assert!((ratio(Curing::Steam, 7.0) - 7.0 / 7.65).abs() < 1e-12);
    }

    #[test]
    fn more_than_the_strength_at_28_days_is_never_counted() {
        for curing in [None, Some(Curing::Moist), Some(Curing::Steam)] {
            for age in [28.0, 56.0, 10_000.0] {
                assert_eq!(counted(curing, age), Some(1.0));
            }
        }
        assert_eq!(counted(None, 27.0), None, "the cure is not known");
        assert_eq!(counted(Some(Curing::Moist), 27.5), Some(1.0));
        for age in [-3.0, 0.0, f64::NAN, f64::NEG_INFINITY] {
            assert_eq!(counted(Some(Curing::Moist), age), Some(0.0), "{age}");
        }
    }

    #[test]
    fn the_first_day_is_the_first() {
        for curing in [Curing::Moist, Curing::Steam] {
            for step in 1..1000 {
                let share = f64::from(step) / 1000.0;
                let days = days_to(Some(curing), share).unwrap();
                let counted = |days| counted(Some(curing), days).unwrap();
                assert!(counted(days) >= share - 1e-6, "{share}");
                assert!(counted(days - 1.0) < share || days >= 28.0, "{share}");
                assert_eq!(days_to(None, share), Some(28.0));
            }
            assert_eq!(days_to(Some(curing), 1.0), Some(28.0));
            assert_eq!(days_to(Some(curing), 1.001), None);
            assert_eq!(days_to(Some(curing), f64::NAN), None);
        }
        // 3000 psi asked of 4000 psi: 4 * 0.75 / (1 - 0.85 * 0.75) = 8.28 days.
        assert_eq!(days_to(Some(Curing::Moist), 0.75), Some(9.0));
    }
}

//! How old is the slab on the day that counts, and from which day may it be drilled and loaded?

use jiff::ToSpan as _;

use super::demand::Demands;
use super::strength::{counted, days_to};
use crate::bay::{AnchorKind, BasePlate, Slab};
use crate::ground::Date;

/// The least age of concrete that an adhesive anchor is set in, days (ACI 318-19, 17.2.2; from
/// memory).
pub const ADHESIVE_AGE_DAYS: f64 = 21.0;

/// True where a plate's anchors are adhesive ones.
pub(super) fn is_adhesive(plate: &BasePlate) -> bool {
    plate.anchor.and_then(|anchor| anchor.kind) == Some(AnchorKind::Adhesive)
}

/// The slab's age against what is asked of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ages {
    /// The day that counts: that of the first raise where the file names it, else the day that
    /// ages are counted to.
    pub day: Option<Date>,
    /// Age on that day, days; none when not known. Negative before it is poured.
    pub age_days: Option<f64>,
    /// The slab is poured after the day that ages are counted to: there is none yet.
    pub not_yet_poured: bool,
    /// Compressive strength on that day, pascals; never more than that at 28 days.
    pub strength_pa: Option<f64>,
    /// Age on the day that ages are counted to, days; none when not known.
    pub age_today_days: Option<f64>,
    /// The age from which it may be drilled and loaded; none when nothing is known of it. No more
    /// than a lower bound where [`Ages::need_is_known`] does not hold.
    pub need_days: Option<f64>,
    /// True when all that is asked is in [`Ages::need_days`]: no strength is asked that is not
    /// known, or that it never gets.
    pub need_is_known: bool,
    /// The first day for drilling; not before it where [`Ages::need_is_known`] does not hold.
    pub first_drill: Option<Date>,
    /// The first day for loading; not before the day named for drilling.
    pub first_load: Option<Date>,
}

impl Ages {
    /// Of a slab, against what is asked and what the anchors' maker asks.
    #[must_use]
    pub fn of(slab: &Slab, demands: &Demands, plate: &BasePlate, on: Option<Date>) -> Self {
        let day = slab.load_on.or(on);
        let age_days = match (slab.poured, slab.age_days) {
            (Some(poured), _) => day.map(|day| days_between(poured, day)),
            (None, Some(age)) => Some(match (on, slab.load_on) {
                (Some(on), Some(load)) => age + days_between(on, load),
                // Without a day nothing ages beyond what is written.
                _ => age,
            }),
            (None, None) => None,
        };
        let share = age_days.and_then(|age| counted(slab.curing, age));
        let strength_pa = slab.strength.zip(share).map(|(f, share)| f.si() * share);
        let (need_days, need_is_known) = need_days(slab, demands, plate);
        let age_today_days = match slab.poured {
            Some(poured) => on.map(|on| days_between(poured, on)),
            None => slab.age_days,
        };
        let first_drill = need_days.and_then(|need| first_day(slab, need, on));
        Self {
            day,
            age_days,
            not_yet_poured: slab.poured.zip(on).is_some_and(|(poured, on)| poured > on),
            strength_pa,
            age_today_days,
            need_days,
            need_is_known,
            first_drill,
            first_load: first_drill.map(|first| slab.drill_on.map_or(first, |day| day.max(first))),
        }
    }
}

/// The age at which everything asked of it holds, as far as that is known, and whether it is known
/// in full: not where a strength is asked and none is known or high enough. An age that is asked
/// counts whatever is known of the strength.
fn need_days(slab: &Slab, demands: &Demands, plate: &BasePlate) -> (Option<f64>, bool) {
    let (strength, known) = match (&demands.strength, slab.strength) {
        (Some(asked), Some(has)) => {
            let days = days_to(slab.curing, asked.value / has.si());
            (days, days.is_some())
        }
        (Some(_), None) => (None, false),
        (None, _) => (None, true),
    };
    let asked = demands.age.map(|age| age.value);
    let adhesive = is_adhesive(plate).then_some(ADHESIVE_AGE_DAYS);
    let need = [strength, asked, plate.anchor_age_days, adhesive]
        .into_iter()
        .flatten()
        .reduce(f64::max);
    (need, known)
}

/// The first day at which the slab is so old.
fn first_day(slab: &Slab, need_days: f64, on: Option<Date>) -> Option<Date> {
    match (slab.poured, slab.age_days, on) {
        (Some(poured), _, _) => later(poured, need_days),
        (None, Some(age), Some(on)) => later(on, (need_days - age).max(0.0)),
        _ => None,
    }
}

/// So many days later, a part of a day counting whole; none beyond the calendar.
fn later(day: Date, days: f64) -> Option<Date> {
    #[allow(clippy::cast_possible_truncation)] // at most some ten years, as the file's bounds are
    let whole = days.ceil().clamp(0.0, 1e6) as i64;
    day.checked_add(whole.days()).ok()
}

/// Days from one day to another.
#[allow(clippy::cast_precision_loss)] // a few thousand
fn days_between(from: Date, to: Date) -> f64 {
    (to.duration_since(from).as_hours() / 24) as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Curing;
    use crate::solids::test_bay::test_bay;
    use crate::units::{PA_PER_PSI, Pressure};
    use jiff::civil::date;

    fn psi(value: f64) -> Pressure {
        Pressure::pascals(value * PA_PER_PSI)
    }

    fn ages(slab: &Slab, asked_psi: Option<f64>, on: Option<Date>) -> Ages {
        let mut lift = test_bay().lift;
        lift.manual.strength = asked_psi.map(psi);
        Ages::of(slab, &Demands::of(&lift), &lift.base_plate, on)
    }

    fn poured() -> Slab {
        Slab {
            poured: Some(date(2026, 5, 14)),
            strength: Some(psi(4000.0)),
            curing: Some(Curing::Moist),
            ..Slab::default()
        }
    }

    #[test]
    fn a_week_old_slab_has_the_strength_of_a_week() {
        // ACI 209R-92, a 4.0, b 0.85: 7 days give 0.7035 of 4000 psi, 2814 psi. 3000 psi, three
        // quarters, take 8.28 days, so nine.
        let week = ages(&poured(), Some(3000.0), Some(date(2026, 5, 21)));
        assert_eq!(week.age_days, Some(7.0));
        assert!((week.strength_pa.unwrap() / psi(1.0).si() - 2814.0).abs() < 0.1);
        assert_eq!(week.need_days, Some(9.0));
        assert_eq!(week.first_drill, Some(date(2026, 5, 23)));
        assert_eq!(week.first_load, week.first_drill);
        // The cure not said: nothing is known before day 28.
        let mut slab = poured();
        slab.curing = None;
        let week = ages(&slab, Some(3000.0), Some(date(2026, 5, 21)));
        assert_eq!(week.strength_pa, None);
        assert_eq!(week.first_drill, Some(date(2026, 6, 11)));
        // More is asked than it ever has.
        let never = ages(&poured(), Some(4001.0), Some(date(2030, 1, 1)));
        assert_eq!((never.need_days, never.first_drill), (None, None));
        assert_eq!(never.strength_pa, Some(psi(4000.0).si()));
    }

    #[test]
    fn what_manual_and_anchors_ask_of_the_age_counts() {
        let mut lift = test_bay().lift;
        lift.manual.strength = Some(psi(3000.0));
        lift.manual.age_days = Some(14.0);
        let of = |lift: &crate::bay::Lift, slab: &Slab| {
            Ages::of(slab, &Demands::of(lift), &lift.base_plate, None)
        };
        assert_eq!(of(&lift, &poured()).need_days, Some(14.0));
        lift.base_plate.anchor_age_days = Some(21.0);
        assert_eq!(of(&lift, &poured()).need_days, Some(21.0));
        // Also while the strength is not known, or never enough.
        for strength in [None, Some(psi(2000.0))] {
            let slab = Slab {
                strength,
                ..poured()
            };
            let least = of(&lift, &slab);
            assert_eq!((least.need_days, least.need_is_known), (Some(21.0), false));
        }
        let mut slab = poured();
        slab.drill_on = Some(date(2026, 6, 20));
        let late = of(&lift, &slab);
        assert_eq!(late.first_drill, Some(date(2026, 6, 4)));
        assert_eq!(
            late.first_load, slab.drill_on,
            "no load before it is drilled"
        );
        lift = test_bay().lift;
        assert_eq!(of(&lift, &slab).need_days, None, "nothing is asked");
    }

    #[test]
    fn an_adhesive_anchor_is_set_in_concrete_of_three_weeks() {
        // ACI 318-19, 17.2.2, from memory: 21 days, whatever the strength is by then.
        let mut lift = test_bay().lift;
        lift.manual.strength = Some(psi(3000.0));
        let of = |lift: &crate::bay::Lift| {
            Ages::of(&poured(), &Demands::of(lift), &lift.base_plate, None)
        };
        for (kind, days) in [(AnchorKind::Wedge, 9.0), (AnchorKind::Adhesive, 21.0)] {
            lift.base_plate.anchor = Some(crate::bay::Anchor {
                kind: Some(kind),
                ..crate::bay::Anchor::default()
            });
            assert_eq!(of(&lift).need_days, Some(days), "{kind:?}");
        }
        assert_eq!(of(&lift).first_drill, Some(date(2026, 6, 4)));
        // An anchor maker who asks more is heard, one who asks less is not.
        for (asked, days) in [(28.0, 28.0), (7.0, 21.0)] {
            lift.base_plate.anchor_age_days = Some(asked);
            assert_eq!(of(&lift).need_days, Some(days));
        }
    }

    #[test]
    fn without_a_day_nothing_ages() {
        let none = ages(&poured(), Some(3000.0), None);
        assert_eq!((none.age_days, none.strength_pa), (None, None));
        // The day of loading is a day.
        let mut slab = poured();
        slab.load_on = Some(date(2026, 6, 14));
        assert_eq!(ages(&slab, None, None).age_days, Some(31.0));
        // A written age stands for itself, and grows up to the day of loading.
        let mut slab = Slab {
            age_days: Some(10.0),
            ..poured()
        };
        slab.poured = None;
        assert_eq!(ages(&slab, None, None).age_days, Some(10.0));
        let on = Some(date(2026, 6, 1));
        slab.load_on = Some(date(2026, 6, 14));
        assert_eq!(ages(&slab, Some(3000.0), on).age_days, Some(23.0));
        assert_eq!(
            ages(&slab, Some(4000.0), on).first_load,
            Some(date(2026, 6, 19))
        );
    }

    #[test]
    fn a_slab_of_tomorrow_has_no_strength() {
        let early = ages(&poured(), Some(3000.0), Some(date(2026, 5, 13)));
        assert!(early.not_yet_poured);
        assert_eq!(early.age_days, Some(-1.0));
        assert_eq!(early.strength_pa, Some(0.0));
    }
}

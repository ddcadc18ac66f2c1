//! What has the day to do with an answer?
//!
//! Ages of concrete are counted to a day. Of a slab whose age nobody knows nothing hangs on it. Of an
//! old one only the age itself does: what stands, stands on every later day. Of a young one the answer
//! itself may be another tomorrow, and is an answer for that day alone.

use std::borrow::Cow;

use super::{Date, Quantity, Section, Standing, Topic};
use super::{anchors, bearing, loads, post_base, slab};
use crate::bay::{Bay, Side};

/// The day that an answer is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ForDay {
    /// The day that ages are counted to.
    pub on: Date,
    /// True where anything that is said hangs on the day, be it an age.
    pub counts: bool,
    /// True where on some later day the answer is another: what stands, or a figure that is no age.
    pub decides: bool,
    /// True where someone asked for that day, which may lie ahead.
    pub asked: bool,
}

/// A day so late that every slab is as good as it gets.
const LATE: Date = jiff::civil::date(9000, 1, 1);

impl ForDay {
    /// Of a bay.
    #[must_use]
    pub fn of(bay: &Bay, on: Date, asked: bool) -> Self {
        let slab = bay.slab.as_ref();
        // An age in days is taken as it stands, whatever the day; counted is it to a day that is named.
        let counts = slab.is_some_and(|slab| {
            slab.poured.is_some()
                || slab.age_days.is_some() && stands(bay, on, true) != stands(bay, LATE, true)
        });
        Self {
            on,
            counts,
            decides: counts && stands(bay, on, false) != stands(bay, LATE, false),
            asked,
        }
    }

    /// A day that decides nothing, and that nobody asked for.
    #[must_use]
    pub const fn settled(on: Date) -> Self {
        Self {
            on,
            counts: true,
            decides: false,
            asked: false,
        }
    }

    /// The day where the answer hangs on it: part of what went in, as the file is.
    #[must_use]
    pub fn decides(self) -> Option<Date> {
        self.decides.then_some(self.on)
    }
}

type Stands = (Topic, Cow<'static, str>, Standing, Option<Quantity>);

/// How everything stands that ages go into; the ages and days themselves where they are asked for.
fn stands(bay: &Bay, on: Date, with_ages: bool) -> Vec<Stands> {
    let on = Some(on);
    let states = loads::states(bay);
    let pad_loads = states.as_ref().ok().and_then(loads::PadLoads::of);
    let bases = pad_loads
        .as_ref()
        .and_then(|loads| post_base::post_bases(bay, loads));
    let map = slab::SlabMap::of(bay);
    let under = [Side::Left, Side::Right].map(|side| slab::under_plate(bay, side, on));
    let sections: [Section; 3] = [
        slab::section(bay, on),
        anchors::section(bay, &map, &under, bases.as_ref()),
        bearing::section(bay, &map, &under, bases.as_ref()),
    ];
    let is_age = |one: &Quantity| matches!(one, Quantity::Days(_) | Quantity::Day(_));
    sections
        .into_iter()
        .flat_map(|section| {
            let topic = section.topic;
            let figures = section.figures.into_iter();
            figures.map(move |one| {
                let found = one.found.filter(|found| with_ages || !is_age(found));
                (topic, one.id, one.standing, found)
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use jiff::civil::date;

    use super::*;
    use crate::bay::{Curing, Slab};
    use crate::solids::test_bay::test_bay;
    use crate::units::{PA_PER_PSI, Pressure};

    fn bay(slab: Slab) -> Bay {
        let mut bay = test_bay();
        bay.lift.manual.strength = Some(Pressure::pascals(3000.0 * PA_PER_PSI));
        bay.slab = Some(Slab {
            strength: Some(Pressure::pascals(4000.0 * PA_PER_PSI)),
            curing: Some(Curing::Moist),
            ..slab
        });
        bay
    }

    #[test]
    fn a_day_decides_only_while_the_concrete_is_young() {
        let poured = bay(Slab {
            poured: Some(date(2026, 5, 14)),
            ..Slab::default()
        });
        let of = |on| ForDay::of(&poured, on, false);
        // Not there; too young; strong enough, but not yet of full strength; settled.
        for (day, decides) in [(10, true), (20, true), (30, true)] {
            assert_eq!(of(date(2026, 5, day)).decides, decides, "{day}");
        }
        for on in [date(2026, 6, 11), date(2030, 1, 1)] {
            assert!(of(on).counts);
            assert_eq!(of(on).decides(), None, "{on}");
        }
        assert_eq!(of(date(2026, 5, 20)).decides(), Some(date(2026, 5, 20)));
    }

    #[test]
    fn without_an_age_no_day_counts() {
        let none = ForDay::of(&bay(Slab::default()), date(2026, 5, 14), true);
        assert!(!none.counts && !none.decides && none.asked);
        let mut no_slab = test_bay();
        no_slab.slab = None;
        assert!(!ForDay::of(&no_slab, date(2026, 5, 14), false).counts);
    }

    #[test]
    fn an_age_in_days_is_the_same_on_every_day() {
        let of = |age| {
            let bay = bay(Slab {
                age_days: Some(age),
                ..Slab::default()
            });
            ForDay::of(&bay, date(2026, 5, 14), true)
        };
        assert!(!of(14_600.0).counts);
        // What is still to be waited is told in days.
        assert!(!of(10.0).counts);
    }

    #[test]
    fn a_first_raise_that_lies_ahead_decides_until_it_is_there() {
        let ahead = bay(Slab {
            poured: Some(date(2026, 5, 14)),
            load_on: Some(date(2026, 6, 14)),
            ..Slab::default()
        });
        assert!(ForDay::of(&ahead, date(2026, 5, 20), false).decides);
        assert!(!ForDay::of(&ahead, date(2026, 6, 14), false).decides);
        // An age in days is that of the day on which the file is read: with a day of loading named, each
        // day gives another answer.
        let age = bay(Slab {
            age_days: Some(10.0),
            load_on: Some(date(2026, 6, 14)),
            ..Slab::default()
        });
        assert!(ForDay::of(&age, date(2026, 6, 1), false).decides);
    }
}

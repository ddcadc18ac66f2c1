//! Does what is said of the slab hold on a later day only?
//!
//! Where the file names the day of the first raise, age and strength are those on that day. While it
//! lies ahead and the slab has not got them yet, nothing may be taken for safe now: that stops, with
//! the day from which it holds.

use super::Known;
use crate::ground::slab::strength::FULL_AGE_DAYS;
use crate::ground::slab::{HOLDS_ON, LOAD_DAY};
use crate::ground::{Date, Figure, Quantity, Said, Standing};

/// True where the slab is today as old as is asked of it.
pub(super) fn is_old_today(known: &Known<'_>) -> bool {
    let ages = &known.ages;
    let both = ages.age_today_days.zip(ages.need_days);
    both.is_some_and(|(age, need)| age >= need)
}

/// The stop of a slab that is counted as of a later day. None where today has all that is counted,
/// and where that day itself stops.
pub(super) fn figure(known: &Known<'_>, figures: &[Figure]) -> Option<Figure> {
    let (load, ages) = (known.slab.load_on?, &known.ages);
    // Without an age nothing is counted on any day.
    ages.age_days?;
    // From day 28 on it gets no stronger, as it is counted.
    let need = ages.need_days.unwrap_or(0.0).max(FULL_AGE_DAYS);
    let is_here = known.on.is_some_and(|on| on >= load);
    let has_all = ages.age_today_days.is_some_and(|age| age >= need);
    let fails = |one: &Figure| {
        one.standing == Standing::Stops
            && ["age", "strength", "poured", LOAD_DAY].contains(&one.id.as_ref())
    };
    if is_here || has_all || figures.iter().any(fails) {
        return None;
    }
    let cure = if known.slab.poured.is_some() {
        format!("wait, and check again on that day; `--on {load}` looks ahead to it")
    } else {
        format!(
            "wait, and check again on that day. To look ahead to it with `--on {load}`, write down \
             the day when it was poured (`poured`) in place of `age_days`"
        )
    };
    Some(
        Figure::noted(
            HOLDS_ON,
            "age and strength are those on the day of the first raise",
            Quantity::Day(load),
        )
        .stopping(cure)
        .reason(Said::new("the slab is not ready yet: ").and_said(holds_on(known, load))),
    )
}

/// From which day all holds, and before which day nothing is done.
fn holds_on(known: &Known<'_>, load: Date) -> Said {
    Said::new("its age and strength are counted as of ")
        .near(Quantity::Day(load))
        .and(", the day of the first raise, and nothing is called safe before; ")
        .and_said(not_before(known))
}

/// "nothing is drilled before 2026-12-07 and nothing raised before 2026-12-07".
fn not_before(known: &Known<'_>) -> Said {
    match (known.ages.first_drill, known.ages.first_load) {
        _ if is_old_today(known) => Said::new("it still gains strength until then"),
        (Some(drill), Some(first)) => Said::new("nothing is drilled before ")
            .near(Quantity::Day(drill))
            .and(" and nothing raised before ")
            .near(Quantity::Day(first))
            .and(if super::by_curve(known, known.ages.need_days) {
                ", by a mean curve and no test of this concrete"
            } else {
                ""
            }),
        _ => Said::new("it is not shown to be old enough now"),
    }
}

/// The plain sentence of a slab that nothing but the day stops.
pub(super) fn lead(known: &Known<'_>, stop: &Figure) -> Said {
    match known.slab.load_on {
        Some(load) => Said::new("Not yet: ").and_said(holds_on(known, load)),
        None => Said::new("Not yet: ").and_said(stop.why()),
    }
    .and(".")
}

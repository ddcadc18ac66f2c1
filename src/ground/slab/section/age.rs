//! Is it old and strong enough, and from which day?

use super::{Known, both, by_manual, joined, source};
use crate::ground::slab::ages::{ADHESIVE_AGE_DAYS, is_adhesive};
use crate::ground::slab::strength::FULL_AGE_DAYS;
use crate::ground::slab::{DRILL_FROM, LOAD_DAY};
use crate::ground::{Bound, Date, Figure, Quantity, Said, Standing};
use crate::units::Rounding;

const CURVE: &str = "ACI 209R-92, section 2.2.1";
const ADHESIVE: &str = "ACI 318-19, 17.2.2, adhesive anchors, from memory";
const NOT_ALL: &str = "give its age, its strength and what is asked";
const WAIT: &str = "wait until it is";
const AGE_HOW: &str = "say when it was poured (`poured`) or how old it is (`age_days`); ask whoever \
                       poured it";

/// Age, strength, and the first days for drilling and loading.
pub(super) fn figures(known: &Known<'_>, figures: &mut Vec<Figure>) {
    if known.ages.not_yet_poured {
        figures.push(not_poured(known));
    }
    figures.push(age(known));
    figures.push(strength(known));
    days(known, figures);
}

fn not_poured(known: &Known<'_>) -> Figure {
    let mut reason = Said::new("the slab is not poured yet: it is to be on ");
    if let Some(day) = known.slab.poured {
        reason = reason.near(Quantity::Day(day));
    }
    if let Some(on) = known.on {
        reason = reason
            .and(", and ages are counted to ")
            .near(Quantity::Day(on));
    }
    Figure::noted(
        "poured",
        "the slab",
        Quantity::Words("not poured yet".into()),
    )
    .stopping("pour it, let it age, and check again on a later day; or correct `poured`")
    .reason(reason)
}

/// "on 2026-06-14, the day of the first raise".
fn on_day(known: &Known<'_>) -> Option<Said> {
    let day = known.ages.day?;
    let said = Said::new("on ").near(Quantity::Day(day));
    Some(if known.slab.load_on.is_some() {
        said.and(", the day of the first raise")
    } else {
        said
    })
}

fn age(known: &Known<'_>) -> Figure {
    let (id, what) = ("age", "age of the concrete");
    let Some(age) = known.ages.age_days else {
        return Figure::unknown(id, what, AGE_HOW);
    };
    if age < 0.0 {
        return before_it_is_poured(known);
    }
    let found = Quantity::Days(age);
    let note = on_day(known);
    let Some(need) = known.ages.need_days else {
        let figure = Figure::noted(id, what, found).rounded(Rounding::Down);
        let figure = Figure { note, ..figure };
        // Nothing is asked of the age by anyone, or the strength can't tell it.
        return if age >= FULL_AGE_DAYS {
            figure
        } else {
            figure.undecided("take from the lift's manual how old and how strong it must be")
        };
    };
    let asked = joined(
        note,
        known.demands.age.and_then(|age| both(&age, Quantity::Days)),
    );
    let figure = Figure::judged(
        id,
        what,
        found.clone(),
        Bound::AtLeast,
        Quantity::Days(need),
    )
    .source(why(known, need));
    let figure = Figure {
        note: asked,
        ..figure
    };
    if figure.standing != Standing::Stops {
        return match known.demands.age {
            Some(age) => by_manual(figure, &age),
            None => figure,
        };
    }
    let reason = Said::new("the concrete is ")
        .down(found)
        .and(" old where it must be at least ")
        .up(Quantity::Days(need));
    figure.reason(reason).cure(match known.ages.first_load {
        Some(day) => format!("{WAIT}: not before {day}"),
        None => WAIT.into(),
    })
}

/// A day before the concrete is there.
fn before_it_is_poured(known: &Known<'_>) -> Figure {
    let (id, what) = ("age", "age of the concrete");
    if known.ages.not_yet_poured {
        // That stops, and is told.
        return Figure::unknown(id, what, "first pour the slab");
    }
    let mut reason = Said::new("the concrete is not there yet");
    if let Some(on) = on_day(known) {
        reason = Said([reason.and(" ").0, on.0].concat());
    }
    Figure::noted(id, what, Quantity::Words("not poured yet".into()))
        .stopping("check `age_days` and the days")
        .reason(reason)
}

/// Whose word or which formula the needed age rests on.
fn why(known: &Known<'_>, need: f64) -> &'static str {
    let is = |days: Option<f64>| days.is_some_and(|days| days >= need);
    if is(known.demands.age.map(|age| age.value)) {
        known.demands.age.as_ref().map_or("", source)
    } else if is(known.bay.lift.base_plate.anchor_age_days) {
        "the anchors' maker"
    } else if is_adhesive(&known.bay.lift.base_plate) && ADHESIVE_AGE_DAYS >= need {
        ADHESIVE
    } else if need >= FULL_AGE_DAYS {
        "the age that a stated strength belongs to"
    } else {
        CURVE
    }
}

fn strength(known: &Known<'_>) -> Figure {
    let (id, what) = ("strength", "strength of the concrete");
    let Some(full) = known.slab.strength.map(|s| s.si()) else {
        return Figure::unknown(
            id,
            what,
            "take it from the delivery note, or have cores or a rebound hammer say it",
        );
    };
    let aged = known.ages.strength_pa;
    let Some(asked) = known.demands.strength else {
        let figure = Figure::noted(id, what, Quantity::Pressure(aged.unwrap_or(full)));
        return figure
            .rounded(Rounding::Down)
            .undecided("take from the lift's manual how strong the concrete must be");
    };
    let limit = Quantity::Pressure(asked.value);
    // Not strong enough at any age, whatever the age is.
    let counted = if full < asked.value {
        Some(full.min(aged.unwrap_or(full)))
    } else {
        aged
    };
    let Some(counted) = counted else {
        let figure = Figure::noted(id, what, Quantity::Pressure(full));
        let figure = Figure {
            limit: Some((Bound::AtLeast, limit)),
            ..figure
        };
        let how = if known.ages.age_days.is_none() {
            AGE_HOW
        } else {
            "say how it was cured (`curing`), or wait until it is 28 days old"
        };
        return figure
            .source(source(&asked))
            .undecided(how)
            .note("at 28 days; nothing is counted before its age is known");
    };
    let young = known.ages.age_days.is_some_and(|age| age < FULL_AGE_DAYS);
    let aged_note = young.then(|| {
        Said::new("of ").down(Quantity::Pressure(full)).and(format!(
            " at 28 days, by {CURVE}, a mean and no test of this concrete"
        ))
    });
    let note = joined(aged_note, both(&asked, Quantity::Pressure));
    let figure = Figure::judged(id, what, Quantity::Pressure(counted), Bound::AtLeast, limit)
        .source(source(&asked));
    let figure = Figure { note, ..figure };
    match figure.standing {
        Standing::Stops if full >= asked.value => figure.cure(match known.ages.first_load {
            Some(day) => format!("{WAIT}: not before {day}"),
            None => WAIT.into(),
        }),
        Standing::Stops => figure.cure(
            "pour pads of concrete as strong as is asked, or choose a lift whose manual asks less",
        ),
        _ => by_manual(figure, &asked),
    }
}

/// The first days, where they are not long past, and the days wanted.
fn days(known: &Known<'_>, figures: &mut Vec<Figure>) {
    // Today's age, not that on the day of the first raise: it may be drilled before that.
    let is_old = super::later::is_old_today(known);
    let is_known = known.ages.need_is_known;
    let ages = &known.ages;
    let wanted = [
        ("drill_day", "drill", known.slab.drill_on, ages.first_drill),
        (LOAD_DAY, "load", known.slab.load_on, ages.first_load),
    ];
    for (id, what, day, first) in wanted {
        // The day wanted for drilling hides the first one no more than the age on a later day does.
        if let Some(first) = first.filter(|_| !is_old && (what == "drill" || day.is_none())) {
            let id = if what == "drill" {
                DRILL_FROM
            } else {
                "load_from"
            };
            let what = format!("first day to {what} the slab");
            let figure = Figure::noted(id, what, Quantity::Day(first));
            figures.push(if is_known {
                figure.note("by the age asked above")
            } else {
                figure
                    .note("no day before it; from which day it holds is not known")
                    .undecided(NOT_ALL)
            });
        }
        let Some(day) = day else {
            continue;
        };
        let judged = first.map(|first| judged_day(id, what, day, first));
        figures.push(match judged {
            Some(figure) if is_known || figure.standing == Standing::Stops => figure,
            Some(figure) => figure.undecided(NOT_ALL),
            None => Figure::noted(id, format!("day to {what} the slab"), Quantity::Day(day))
                .undecided(NOT_ALL),
        });
    }
}

fn judged_day(id: &'static str, what: &str, day: Date, first: Date) -> Figure {
    let figure = Figure::judged(
        id,
        format!("day to {what} the slab"),
        Quantity::Day(day),
        Bound::AtLeast,
        Quantity::Day(first),
    );
    if figure.standing == Standing::Stops {
        let reason = Said::new(format!("the slab is to be {what}ed on "))
            .near(Quantity::Day(day))
            .and(", before the concrete is ready on ")
            .near(Quantity::Day(first));
        return figure.reason(reason).cure("choose a later day");
    }
    figure
}

//! Why is no lock safe, or none clear, and what would help?

use super::verdict::meets;
use super::{Report, show};
use crate::clearance::{DoorState, Limit, LockState, Study, Verdict, Withheld};
use crate::report::Show;
use crate::report::names::the;
use crate::report::reasons::reasons;
use crate::report::words::count;

/// Why no lock is called safe; none when one is.
pub(in crate::report) fn why_not_safe(report: &Report<'_>) -> Option<String> {
    why(&Unsafe::of(report.study), show(report))
}

/// The same of the verdict on a bay among many.
pub(in crate::report) fn why_not_safe_among(verdict: &Verdict, show: Show) -> Option<String> {
    let of = Unsafe {
        highest_safe_lock: verdict.highest_safe_lock,
        never_lifts: verdict.never_lifts,
        limit: &verdict.limit,
        withheld: &verdict.withheld,
    };
    why(&of, show)
}

/// What tells why no lock is safe.
struct Unsafe<'a> {
    highest_safe_lock: Option<usize>,
    never_lifts: bool,
    limit: &'a Limit,
    withheld: &'a [Withheld],
}

impl<'a> Unsafe<'a> {
    fn of(study: &'a Study) -> Self {
        Self {
            highest_safe_lock: study.highest_safe_lock,
            never_lifts: study.locks.iter().all(|l| l.state == LockState::NotLifting),
            limit: &study.limit,
            withheld: &study.withheld,
        }
    }
}

fn why(of: &Unsafe<'_>, show: Show) -> Option<String> {
    if of.highest_safe_lock.is_some() {
        return None;
    }
    // What withholds every lock comes first: without curing it no room helps.
    let said: Vec<String> = reasons(of.withheld, show)
        .into_iter()
        .map(|reason| reason.says)
        .collect();
    if said.is_empty() {
        return Some(why_nothing(of, show, BELOW));
    }
    Some(said.join("; "))
}

/// Why no lock is clear; none where one is.
pub(in crate::report) fn why_not_clear(report: &Report<'_>) -> Option<String> {
    report
        .study
        .highest_clear_lock
        .is_none()
        .then(|| why_none(report, BELOW))
}

/// Why nothing is clear; further reasons are listed at this place.
pub(super) fn why_none(report: &Report<'_>, place: &str) -> String {
    why_nothing(&Unsafe::of(report.study), show(report), place)
}

fn why_nothing(of: &Unsafe<'_>, show: Show, place: &str) -> String {
    if of.never_lifts {
        return "at no lock do all four pads carry the vehicle".into();
    }
    match of.limit {
        Limit::Pair(pair) => meets(pair, show).trim_end_matches('.').into(),
        Limit::Bar(pair) => format!("{} meets the shut-off bar first", the(&pair.moving)),
        Limit::Undecided(pair) => format!(
            "the study could not decide between {} and {}",
            the(&pair.moving),
            the(&pair.fixed)
        ),
        Limit::Travel { .. } => {
            "the carriage runs out of travel before a lock that lifts can be set and released"
                .into()
        }
        Limit::Withheld => {
            first_of(of.withheld, show, place).unwrap_or_else(|| "see the table of locks".into())
        }
    }
}

/// Where more reasons are listed, in a report.
pub(super) const BELOW: &str = "below";

/// The first reason to withhold, and how many more are listed, and where.
pub(super) fn first_reason(report: &Report<'_>, place: &str) -> Option<String> {
    first_of(&report.study.withheld, show(report), place)
}

fn first_of(withheld: &[Withheld], show: Show, place: &str) -> Option<String> {
    let all = reasons(withheld, show);
    let (first, more) = all.split_first()?;
    let first = &first.says;
    Some(match more.len() {
        0 => first.clone(),
        n => format!("{first} ({}, {place})", count(n, "more reason")),
    })
}

/// What would help when nothing is clear, as far as the findings say it.
pub(super) fn what_would_help(report: &Report<'_>) -> Option<String> {
    let study = report.study;
    let other = match study.headline_door {
        DoorState::Open => &study.doors.shut,
        _ => &study.doors.open,
    };
    if let Some(lock) = other.highest_clear_lock {
        return Some(format!(
            "With the door {} lock {lock} would be clear.",
            other.state.word()
        ));
    }
    let first = study
        .locks
        .iter()
        .find(|l| l.state != LockState::NotLifting)?;
    let near = first.near.as_ref()?;
    let short = near.overlap_m.unwrap_or(0.0).max(0.0) + near.margin_m - near.clearance_m;
    (short > 0.0).then(|| {
        format!(
            "Lock {}, the lowest that lifts, needs {} more between {} and {}.",
            first.lock,
            show(report).need(short),
            the(&near.moving),
            the(&near.fixed)
        )
    })
}

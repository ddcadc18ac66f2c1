//! How is one combination told in a few words?

use crate::bay::Bay;
use crate::bayfile::options::{Choice, List, Options, Pick, Work};
use crate::choose::bill::{Bill, Line};
use crate::choose::{Arms, Found};
use crate::clearance::{Limit, Verdict};
use crate::diagnostics::Diagnostic;
use crate::ground::Standing;
use crate::report::words::{plain, short_thing};
use crate::report::{Show, text};

/// How lengths of a cell are shown.
pub(super) const fn show(found: &Found) -> Show {
    Show {
        units: found.bay.units,
    }
}

/// The option of a list that a combination takes; none where the file has no such list.
pub(super) fn named(options: &Options, pick: Pick, list: List) -> Option<String> {
    let index = match list {
        List::Lifts => pick.lift,
        List::Vehicles => pick.vehicle,
        List::Changes => pick.change,
        List::Garages => pick.garage,
    };
    let choice: &Choice = options.list(list).get(index)?;
    (!choice.name.is_empty()).then(|| plain(&choice.name))
}

/// The lift with the change and the garage, where there are several: "tall columns (wall opener,
/// north bay)".
pub(super) fn candidate(options: &Options, pick: Pick) -> String {
    let lift = named(options, pick, List::Lifts).unwrap_or_else(|| "the lift".into());
    let more: Vec<String> = [List::Changes, List::Garages]
        .into_iter()
        .filter_map(|list| named(options, pick, list))
        .collect();
    if more.is_empty() {
        lift
    } else {
        format!("{lift} ({})", more.join(", "))
    }
}

/// The vehicle.
pub(super) fn vehicle(options: &Options, pick: Pick) -> String {
    named(options, pick, List::Vehicles).unwrap_or_else(|| "the vehicle".into())
}

/// "9 of 17", "none (9 clear)", "none".
pub(super) fn lock(found: &Found) -> String {
    let verdict = &found.verdict;
    match (verdict.highest_safe_lock, verdict.highest_clear_lock) {
        (Some(lock), _) => format!("{lock} of {}", verdict.locks.len()),
        (None, Some(lock)) => format!("none ({lock} clear)"),
        (None, None) => "none".into(),
    }
}

pub(super) fn underbody(found: &Found) -> String {
    let height = found.underbody_m();
    height.map_or_else(|| "-".into(), |height| show(found).room(height))
}

pub(super) fn arms(found: &Found) -> String {
    match found.arms() {
        Arms::Reach => "reach".into(),
        Arms::Short(short) => format!("{} short", show(found).need(short)),
        Arms::Stopped => "STOP".into(),
        Arms::NotKnown => "not known".into(),
    }
}

/// The largest share of a rating in whole percent, up.
pub(super) fn load(found: &Found) -> String {
    found.load_use().map_or_else(
        || "not known".into(),
        |share| format!("{:.0}%", percent_up(share)),
    )
}

/// A share in percent, never less than it is.
pub(super) fn percent_up(share: f64) -> f64 {
    // What lies this near to a whole percent is noise of the conversion.
    (share * 100.0 - 1e-9).ceil()
}

pub(super) const fn slab(found: &Standing) -> &'static str {
    match found {
        Standing::Passes => "holds",
        // Where nothing was asked nothing is shown.
        Standing::Noted | Standing::Unknown => "not known",
        Standing::Stops => "STOP",
    }
}

pub(super) fn walking(found: &Found) -> String {
    let walking = found.walking();
    walking.map_or_else(|| "not known".into(), |way| show(found).room(way.width_m))
}

/// "$4,120", "$2,200 + ?" where something has no price; empty where the file gives no price.
pub(super) fn cost(bill: &Bill, currency: &str) -> String {
    if bill.is_unasked {
        return String::new();
    }
    let known = bill.known().show(currency);
    match bill.total() {
        Some(_) => known,
        None => format!("{known} + ?"),
    }
}

/// One line of a bill.
pub(super) fn line(bill: &Bill, work: Work, currency: &str) -> String {
    match bill.of(work) {
        Line::Priced(amount) => amount.show(currency),
        Line::Missing => "missing".into(),
        Line::NotKnown => "not known".into(),
        Line::NotNeeded => "-".into(),
    }
}

/// What is wrong in a combination that makes no bay.
pub(super) fn broken(faults: &[Diagnostic]) -> String {
    let told: Vec<String> = faults
        .iter()
        .filter(|fault| fault.is_error())
        .map(|fault| plain(&fault.to_string()))
        .collect();
    told.join("; ")
}

/// Why no lock is called safe; none where one is.
pub(super) fn why_not_safe(bay: &Bay, verdict: &Verdict) -> Option<String> {
    text::why_not_safe_among(verdict, Show { units: bay.units })
}

/// What limits the rise, short; where no lock is safe, why.
pub(super) fn limited_by(found: &Found) -> String {
    let (bay, verdict) = (&found.bay, &found.verdict);
    if let Some(why) = why_not_safe(bay, verdict) {
        return why;
    }
    match &verdict.limit {
        Limit::Pair(pair) | Limit::Bar(pair) | Limit::Undecided(pair) => format!(
            "{} near {}",
            short_thing(&pair.moving),
            short_thing(&pair.fixed)
        ),
        Limit::Travel { .. } => "the carriage's travel".into(),
        Limit::Withheld => "see the report of `bayrise check`".into(),
    }
}

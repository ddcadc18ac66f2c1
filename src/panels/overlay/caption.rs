//! What does the title block say?

use crate::panels::signs::State;
use crate::panels::{Desk, shown, status, verdict};
use crate::report::{self, GOING_UNDER, IN_A_PICTURE, Sayings};

/// Everything in the title block.
#[derive(Debug, Clone, PartialEq)]
pub struct Content {
    /// The bay's title.
    pub title: String,
    /// Which vehicle on which lift.
    pub subtitle: String,
    /// "Lock 4 of 15", or that there is no verdict.
    pub safe_lock: String,
    /// True when the verdict has a safe lock.
    pub is_safe: bool,
    /// The shape of the verdict; none while there is none.
    pub verdict: Option<State>,
    /// The verdict in sentences.
    pub headline: String,
    /// Why no lock is called safe, one sentence each: the first few.
    pub reasons: Vec<String>,
    /// How much was not checked; empty when everything was.
    pub not_checked: String,
    /// Why the verdict is not that of the file as it stands; none when it is.
    pub stale: Option<String>,
    /// Where carriage and door are shown.
    pub position: String,
    /// What holds there.
    pub here: Option<State>,
    /// What every picture of a verdict carries, and what this one carries besides.
    pub cautions: Vec<&'static str>,
    /// Version and input.
    pub origin: String,
}

/// What the title block of a desk says.
#[must_use]
pub fn content(desk: &Desk) -> Content {
    let stale = status::stale_words(desk);
    let origin = origin(desk);
    let mut cautions = IN_A_PICTURE.to_vec();
    if shown::may_anyone_be_under(desk) {
        cautions.push(GOING_UNDER);
    }
    let Some(found) = &desk.verdict else {
        return Content {
            title: report::on_one_line(&desk.document.name()),
            subtitle: String::new(),
            safe_lock: "No verdict".into(),
            is_safe: false,
            verdict: None,
            headline: String::new(),
            reasons: Vec::new(),
            not_checked: String::new(),
            stale,
            position: String::new(),
            here: None,
            cautions,
            origin,
        };
    };
    let said = Sayings::of(&found.bay, &found.study);
    let at_lock = desk.rise.at_lock(&desk.locks_m());
    let mut position = said.carriage(desk.rise.travel_m, at_lock);
    if let Some(door) = said.door(desk.door) {
        position.push_str("; ");
        position.push_str(&door);
    }
    if let Some(other) = said.verdict_is_for_another(shown::door_state(desk, found)) {
        position.push_str("; ");
        position.push_str(&other);
    }
    Content {
        title: said.title(),
        subtitle: said.vehicle_on_lift(),
        safe_lock: said.safe_lock(),
        is_safe: found.study.highest_safe_lock.is_some(),
        verdict: Some(verdict::state(found)),
        headline: said.headline(),
        reasons: first_reasons(&said),
        not_checked: said.not_checked_short().unwrap_or_default(),
        stale,
        position,
        here: shown::state(desk),
        cautions,
        origin,
    }
}

/// More reasons than these say less: the report has them all.
const MOST_REASONS: usize = 3;

fn first_reasons(said: &Sayings<'_>) -> Vec<String> {
    let mut reasons: Vec<String> = said.reasons().into_iter().map(|(says, _)| says).collect();
    if reasons.len() == 1 {
        // The verdict's own sentence has it already.
        reasons.clear();
    }
    if reasons.len() > MOST_REASONS {
        let more = reasons.len() - MOST_REASONS;
        reasons.truncate(MOST_REASONS);
        reasons.push(format!(
            "And {}: see the report.",
            report::counted(more, "more reason")
        ));
    }
    reasons
}

/// Version, and the input that the verdict stands on while it is that of the text.
fn origin(desk: &Desk) -> String {
    let version = format!("Bayrise {}", env!("CARGO_PKG_VERSION"));
    match desk.document.read() {
        Ok(read) if desk.is_current() => {
            let texts = read.sources.iter().map(|source| source.text.as_bytes());
            let decides = desk.verdict.as_ref().and_then(|found| found.decides);
            format!("{version}, input {}", report::fingerprint(texts, decides))
        }
        _ => version,
    }
}

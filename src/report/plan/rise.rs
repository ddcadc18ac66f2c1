//! How high does the vehicle go, and who stands under it?

use super::items::NO_FIGURE;
use super::space::STUDY;
use super::{Item, State, Step};
use crate::clearance::Limit;
use crate::ground::access::{posture, tall};
use crate::report::section::said;
use crate::report::text::{limits, why_not_clear, why_not_safe};
use crate::report::{Report, Show};

pub(super) fn items(report: &Report<'_>) -> Vec<Item> {
    let study = report.study;
    let show = Show {
        units: report.bay.units,
    };
    let item = |state, what: &str, figure: String, to_do: String| Item {
        step: Step::Rise,
        section: None,
        state,
        what: what.into(),
        figure,
        source: STUDY.into(),
        to_do,
    };
    let lock = |lock: usize| {
        let pads = study.locks.iter().find(|one| one.lock == lock);
        let pads = pads.map_or_else(String::new, |one| {
            format!(", pads at {}", show.room(one.pad_height_m))
        });
        format!("lock {lock} of {}{pads}", study.locks.len())
    };
    let door = study.headline_door.word();
    let mut items = vec![match study.highest_clear_lock {
        Some(clear) => item(
            State::Go,
            "a lock is clear",
            format!("{} (door {door})", lock(clear)),
            String::new(),
        ),
        // As filed one is, but not by measuring.
        None if !study.not_measured().is_empty() && matches!(study.limit, Limit::Withheld) => item(
            State::Unknown,
            "a lock is clear",
            NO_FIGURE.into(),
            "measure first what the file lists as not measured".into(),
        ),
        None => item(
            State::Stop,
            "a lock is clear",
            match why_not_clear(report) {
                Some(why) => format!("none (door {door}): {why}"),
                None => format!("none (door {door})"),
            },
            limits(report).unwrap_or_else(|| "see the report of `bayrise check`".into()),
        ),
    }];
    items.push(match study.highest_safe_lock {
        Some(safe) => item(State::Go, "a lock is safe", lock(safe), String::new()),
        None => item(
            State::Stop,
            "a lock is safe",
            "none".into(),
            why_not_safe(report).unwrap_or_default(),
        ),
    });
    if let Some(safe) = study.highest_safe_lock {
        let full = if study.full_rise {
            "yes".to_owned()
        } else {
            limits(report).unwrap_or_else(|| "no".into())
        };
        items.push(item(State::Noted, "full rise", full, String::new()));
        if let Some(found) = study.locks.iter().find(|one| one.lock == safe) {
            for person in &report.bay.policy.people {
                items.push(item(
                    State::Noted,
                    &format!("{} under it", person.name),
                    format!(
                        "{}{} under the body, {}",
                        said(&tall(person), show),
                        show.room(found.underbody_m),
                        said(&posture(found.underbody_m, person.height.m()), show)
                    ),
                    String::new(),
                ));
            }
        }
    }
    items
}

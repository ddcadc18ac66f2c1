//! Does the rest hold: arms, loads, posts, slab, anchors, doors, power?
//!
//! What decides beside clearance whether a lift may go in. Each topic has its own folder, works out
//! plain numbers, and ends in one [`Section`]: a sentence, figures with what is asked of them, and
//! who governs. [`complete`] puts the sections into a study: a figure that stops withholds every
//! safe lock and leaves the clear ones standing; what lacks data is named as unknown and never
//! shown as a pass.

pub mod arrangements;
mod figure;
mod quantity;
pub mod reach;
mod said;
mod section;
pub mod slab;

pub use figure::{Bound, Figure, Standing};
pub use quantity::Quantity;
pub use said::{Part, Said};
pub use section::{Section, Topic};

use crate::bay::Bay;
use crate::clearance::{Limit, Study, Unknown, Withheld};

/// A calendar day; the day that ages are counted to.
pub type Date = jiff::civil::Date;

/// Every section of a bay, in the order a person meets them.
///
/// `study` is what clearance found; `on` the day that ages are counted to, none when no day is
/// known (then nothing is taken to have aged).
#[must_use]
pub fn sections(bay: &Bay, study: &Study, on: Option<Date>) -> Vec<Section> {
    vec![reach::section(bay, study), slab::section(bay, on)]
}

/// Puts the sections into a study whose clearances are finished, and withholds what they stop.
pub(crate) fn complete(bay: &Bay, on: Option<Date>, study: &mut Study) {
    study.sections = sections(bay, study, on);
    // A topic that nobody looked at is not known.
    for topic in Topic::ALL {
        if topic.decides() && !study.sections.iter().any(|one| one.topic == topic) {
            study.unknown.push(Unknown::Section(topic));
        }
    }
    for section in &study.sections {
        for figure in &section.figures {
            if figure.standing == Standing::Stops && !figure.told {
                study.withheld.push(Withheld::Ground {
                    topic: section.topic,
                    figure: Box::new(figure.clone()),
                });
            }
        }
        if section
            .figures
            .iter()
            .any(|figure| figure.standing == Standing::Unknown)
        {
            study.unknown.push(Unknown::Section(section.topic));
        }
    }
    if study.withheld.is_empty() {
        return;
    }
    study.highest_safe_lock = None;
    study.full_rise = false;
    for door in [
        &mut study.doors.shut,
        &mut study.doors.open,
        &mut study.doors.running,
    ] {
        door.highest_safe_lock = None;
    }
    if study.highest_clear_lock.is_some() {
        study.limit = Limit::Withheld;
    }
}

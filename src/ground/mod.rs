//! Does the rest hold: arms, loads, posts, slab, anchors, doors, power?
//!
//! What decides beside clearance whether a lift may go in. Each topic has its own folder, works out
//! plain numbers, and ends in one [`Section`]: a sentence, figures with what is asked of them, and
//! who governs. `complete` puts the sections into a study: a figure that stops withholds every
//! safe lock and leaves the clear ones standing; what lacks data is named as unknown and never
//! shown as a pass.

pub mod access;
pub mod anchors;
pub mod arrangements;
pub mod bearing;
mod day;
pub mod delivery;
mod figure;
pub mod loads;
pub mod post_base;
pub mod power;
mod quantity;
pub mod reach;
mod said;
mod section;
pub mod slab;
mod unmeasured;

pub use day::ForDay;
pub use figure::{Bound, Figure, Standing};
pub use quantity::Quantity;
pub use said::{Part, Said};
pub use section::{Section, Topic};

use crate::bay::{Bay, Side};
use crate::clearance::uncertainty::Uncertainty;
use crate::clearance::{ArmFinding, ContactFinding, Limit, StandUp, Study, Unknown, Withheld};

/// A calendar day; the day that ages are counted to.
pub type Date = jiff::civil::Date;

/// What the sections that withhold need of what clearance found.
#[derive(Debug, Clone, Copy)]
pub struct Clearances<'a> {
    /// Whether each arm reaches.
    pub arms: &'a [ArmFinding; 4],
    /// What lift parts touch of the vehicle.
    pub carried: &'a [ContactFinding],
    /// Reasons to withhold so far.
    pub withheld: &'a [Withheld],
    /// The highest clear lock.
    pub highest_clear_lock: Option<usize>,
    /// The uncertainty used.
    pub uncertainty: Uncertainty,
    /// Whether the columns can be tipped up.
    pub stand_up: StandUp,
    /// True where only how the figures stand is read, and why locks are withheld: a cure that costs
    /// much to find and that nobody reads is not looked for.
    pub verdict_only: bool,
}

impl<'a> Clearances<'a> {
    /// Of a study whose clearances are finished.
    #[must_use]
    pub fn of(study: &'a Study) -> Self {
        Self {
            arms: &study.arms,
            carried: &study.carried,
            withheld: &study.withheld,
            highest_clear_lock: study.highest_clear_lock,
            uncertainty: study.uncertainty,
            stand_up: study.stand_up,
            verdict_only: false,
        }
    }
}

/// The sections that may withhold a lock, see [`Topic::withholds`].
#[must_use]
pub fn withholding(bay: &Bay, found: &Clearances<'_>, on: Option<Date>) -> Vec<Section> {
    let states = loads::states(bay);
    let pad_loads = states.as_ref().ok().and_then(loads::PadLoads::of);
    let bases = pad_loads
        .as_ref()
        .and_then(|loads| post_base::post_bases(bay, loads));
    let map = slab::SlabMap::of(bay);
    let under = [Side::Left, Side::Right].map(|side| slab::under_plate(bay, side, on));
    vec![
        reach::section_of(bay, found),
        loads::section(bay, &states),
        post_base::section(bay, bases.as_ref()),
        slab::section(bay, on),
        anchors::section(bay, &map, &under, bases.as_ref()),
        bearing::section(bay, &map, &under, bases.as_ref()),
        power::section(bay),
        delivery::section(bay, found.uncertainty.garage_m, found.stand_up),
    ]
}

/// Every section of a bay, in the order a person meets them.
///
/// `study` is what clearance found; `on` the day that ages are counted to, none when no day is
/// known (then nothing is taken to have aged).
#[must_use]
pub fn sections(bay: &Bay, study: &Study, on: Option<Date>) -> Vec<Section> {
    let mut sections = withholding(bay, &Clearances::of(study), on);
    sections.push(access::section(bay, study));
    sections.sort_by_key(|section| Topic::ALL.iter().position(|one| *one == section.topic));
    sections
}

/// Adds what the sections stop to the reasons to withhold. Where something of the file is not
/// measured, what is left of the sections holds no pass.
pub(crate) fn withhold(sections: &mut [Section], withheld: &mut Vec<Withheld>) {
    for section in sections.iter() {
        for figure in &section.figures {
            if figure.standing == Standing::Stops
                && !figure.told
                && !told(withheld, section.topic, figure)
            {
                withheld.push(Withheld::Ground {
                    topic: section.topic,
                    figure: Box::new(figure.clone()),
                });
            }
        }
    }
    unmeasured::nothing_passes(withheld, sections);
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
    withhold(&mut study.sections, &mut study.withheld);
    for section in &study.sections {
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

/// Whether clearance has already withheld for what a figure says: the total against the rating.
fn told(withheld: &[Withheld], topic: Topic, figure: &Figure) -> bool {
    topic == Topic::Loads
        && figure.id == "total"
        && withheld
            .iter()
            .any(|one| matches!(one, Withheld::OverRating { .. }))
}

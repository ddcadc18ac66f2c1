//! May a sheet show where to drill?

use crate::bay::Bay;
use crate::clearance::{Study, Unknown, Withheld};
use crate::ground::slab::{Drilling, HOLDS_ON, Hazard, LOAD_DAY, drill_from, drilling_allowed};
use crate::ground::{Date, Topic};
use crate::report::called;

/// Whether holes are shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Drill {
    /// They are: everything that forbids drilling is said not to be there, all of the slab is known,
    /// it is old enough, and nothing of what was studied stops slab, anchors or posts.
    Shown,
    /// They are not, since these are in or under the slab.
    Forbidden(Vec<Hazard>),
    /// They are not, since whether these are there is not known.
    NotKnown(Vec<Hazard>),
    /// They are not, since something stops the lift here, or slab, anchors or posts under the load of
    /// this vehicle: what that is, in a few words each.
    Stopped(Vec<String>),
    /// They are not, since the slab is not old enough before this day.
    NotBefore(Date),
    /// They are not, since not all of the slab is known: its thickness, its age, its joints.
    SlabNotKnown,
    /// They are not, since no pattern is given.
    NoPattern,
}

impl Drill {
    /// Of a bay and its study.
    #[must_use]
    pub fn of(bay: &Bay, study: &Study) -> Self {
        match drilling_allowed(bay) {
            Drilling::No(there) => Self::Forbidden(there),
            Drilling::Unknown(open) => Self::NotKnown(open),
            Drilling::Yes => {
                let stops = named(study, |one| stops_the_lift(one) && !is_young(one));
                if stops.is_empty() {
                    Self::of_age(bay, study)
                } else {
                    Self::Stopped(stops)
                }
            }
        }
    }

    /// Where nothing but its age stops: a day of the first raise that lies ahead hides neither
    /// today nor what is not known.
    fn of_age(bay: &Bay, study: &Study) -> Self {
        if let Some(day) = drill_from(&study.sections) {
            return Self::NotBefore(day);
        }
        // Too weak at any age, or no day is known from which it is old enough.
        let only_later = |one: &Withheld| matches!(one, Withheld::Ground { figure, .. } if figure.id == HOLDS_ON);
        let mut young = study.withheld.iter().filter(|one| is_young(one));
        if young.any(|one| !only_later(one)) {
            Self::Stopped(named(study, |one| is_young(one) && !only_later(one)))
        } else if study.unknown.contains(&Unknown::Section(Topic::Slab)) {
            Self::SlabNotKnown
        } else if bay.lift.base_plate.anchors.is_empty() {
            Self::NoPattern
        } else {
            Self::Shown
        }
    }

    /// Why no hole is shown; none where they are.
    #[must_use]
    pub fn why_not(&self) -> Option<String> {
        let listed = |hazards: &[Hazard]| {
            let words: Vec<&str> = hazards.iter().map(|hazard| hazard.words()).collect();
            words.join(", ")
        };
        let why = match self {
            Self::Shown => return None,
            Self::Forbidden(there) => format!("the slab has {}", listed(there)),
            Self::NotKnown(open) => format!(
                "it is not known whether the slab has: {}. Find out and write it down first",
                listed(open)
            ),
            Self::Stopped(what) => {
                format!("what stops is {}; the report tells more", what.join("; "))
            }
            Self::NotBefore(day) => format!(
                "the slab is not old enough. DRILL NOTHING BEFORE {day}, and print these sheets anew then"
            ),
            Self::SlabNotKnown => {
                "not all of the slab is known, see its section of the report: nothing \
                                   is drilled before that"
                    .into()
            }
            Self::NoPattern => "the file gives no anchor pattern".into(),
        };
        Some(format!("NO DRILLING POSITIONS ARE SHOWN: {why}."))
    }
}

/// What of slab, anchors and posts is not known yet, in words: to be settled before a hole that is
/// shown is drilled.
#[must_use]
pub fn not_known_yet(study: &Study) -> Vec<&'static str> {
    let decides = |unknown: &&Unknown| matches!(unknown, Unknown::Section(topic) if under(*topic));
    study
        .unknown
        .iter()
        .filter(decides)
        .map(|one| one.words())
        .collect()
}

/// True for the topics of what carries the posts.
const fn under(topic: Topic) -> bool {
    matches!(
        topic,
        Topic::PostBase | Topic::Slab | Topic::Anchors | Topic::Bearing
    )
}

/// What withholds and is meant, in a few words each, told once.
fn named(study: &Study, is_meant: impl Fn(&Withheld) -> bool) -> Vec<String> {
    let mut named: Vec<String> = Vec::new();
    for one in study.withheld.iter().filter(|one| is_meant(one)) {
        let words = words(one);
        if !named.contains(&words) {
            named.push(words);
        }
    }
    named
}

/// What stops, as far as it bears on where the lift stands.
fn words(reason: &Withheld) -> String {
    match reason {
        Withheld::Ground { figure, .. } if is_of_the_load(reason) => {
            format!("{} (as this vehicle loads it)", figure.what)
        }
        Withheld::Ground { figure, .. } => figure.what.to_string(),
        Withheld::NotMeasured { .. } => "that not all of it is measured".into(),
        Withheld::DoesNotStand { part, meets, .. } => {
            format!("that {} meets {}", called(part), called(meets))
        }
        Withheld::CannotBeStoodUp { .. } => {
            "that a column can't be tipped up under the ceiling".into()
        }
        _ => "something of the vehicle".into(),
    }
}

/// True for a reason that hangs on what the vehicle weighs and where it stands: of anchors their pull,
/// not how deep or how near to an edge they go.
#[must_use]
pub fn is_of_the_load(reason: &Withheld) -> bool {
    let Withheld::Ground { topic, figure } = reason else {
        return false;
    };
    match topic {
        Topic::PostBase | Topic::Bearing => true,
        Topic::Anchors => {
            ["pull", "pull_out", "cone", "shear", "steel", "together"].contains(&figure.id.as_ref())
        }
        _ => false,
    }
}

/// True where the slab's age stops it, or its strength, which grows with age.
#[must_use]
pub fn is_young(reason: &Withheld) -> bool {
    let Withheld::Ground { topic, figure } = reason else {
        return false;
    };
    *topic == Topic::Slab
        && ["age", "strength", "poured", "drill_day", LOAD_DAY, HOLDS_ON]
            .contains(&figure.id.as_ref())
}

/// True for a reason not to drill: of the lift in its place, or of what carries the posts under this
/// vehicle's load.
fn stops_the_lift(reason: &Withheld) -> bool {
    match reason {
        Withheld::Ground { topic, .. } => under(*topic),
        // Which of it is not measured, the place of the posts among it, only a person could say.
        Withheld::NotMeasured { .. }
        | Withheld::DoesNotStand { .. }
        | Withheld::CannotBeStoodUp { .. } => true,
        _ => false,
    }
}

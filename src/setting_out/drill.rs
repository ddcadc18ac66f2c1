//! May a sheet show where to drill?

use crate::bay::Bay;
use crate::clearance::{Study, Unknown, Withheld};
use crate::ground::Topic;
use crate::ground::slab::{Drilling, Hazard, drilling_allowed};

/// Whether holes are shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Drill {
    /// They are: everything that forbids drilling is said not to be there, and nothing of what was
    /// studied stops slab, anchors or posts.
    Shown,
    /// They are not, since these are in or under the slab.
    Forbidden(Vec<Hazard>),
    /// They are not, since whether these are there is not known.
    NotKnown(Vec<Hazard>),
    /// They are not, since the study stops the lift here, whatever stands on it.
    Stopped,
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
            Drilling::Yes if study.withheld.iter().any(stops_the_lift) => Self::Stopped,
            Drilling::Yes if bay.lift.base_plate.anchors.is_empty() => Self::NoPattern,
            Drilling::Yes => Self::Shown,
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
            Self::Stopped => "the study stops this lift in this place, see the verdict".into(),
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

/// True for a reason that holds for the lift in its place, whatever vehicle stands on it.
fn stops_the_lift(reason: &Withheld) -> bool {
    match reason {
        Withheld::Ground { topic, .. } => under(*topic),
        Withheld::DoesNotStand { .. } | Withheld::CannotBeStoodUp { .. } => true,
        _ => false,
    }
}

//! Go, stop, or still not known: everything before buying, in the order a person meets it?
//!
//! One page drawn from the study, its sections and what the file says is arranged. It decides
//! nothing of its own: an item is go only where what it stands on passes.

mod items;
pub mod json;
mod listed;
mod rise;
mod space;
mod text;

pub use listed::{Block, blocks};
pub use text::render;
pub(crate) use text::summary;

use self::items::NO_FIGURE;
use super::Report;
use super::not_measured::names;
use crate::ground::{Standing, Topic};

/// What a person meets, in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step {
    /// Does the lift stand, and the vehicle get in and out.
    Space,
    /// How high, with which arms and loads.
    Rise,
    /// What it stands on and is anchored in.
    Slab,
    /// Permit, landlord, insurer.
    Permission,
    /// The circuit and the space before the panel.
    Power,
    /// What burns near it.
    Heaters,
    /// Delivery and unloading.
    Delivery,
    /// Hands and gear to stand a column up and hold it.
    Helpers,
    /// Tools.
    Tools,
    /// Inspection.
    Inspection,
}

impl Step {
    /// Its heading.
    #[must_use]
    pub const fn heading(self) -> &'static str {
        match self {
            Self::Space => "Space",
            Self::Rise => "Rise",
            Self::Slab => "Slab and anchors",
            Self::Permission => "Permit, landlord, insurer",
            Self::Power => "Power",
            Self::Heaters => "Heaters and flues",
            Self::Delivery => "Delivery and unloading",
            Self::Helpers => "Hands and gear",
            Self::Tools => "Tools",
            Self::Inspection => "Inspection",
        }
    }
}

/// How an item stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// It holds.
    Go,
    /// It does not: don't buy before it is cured.
    Stop,
    /// Nobody knows yet; no go.
    Unknown,
    /// For information; nothing is asked of it.
    Noted,
}

impl State {
    /// The word shown for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Go => "go",
            Self::Stop => "STOP",
            Self::Unknown => "not known",
            Self::Noted => "-",
        }
    }
}

impl From<Standing> for State {
    fn from(standing: Standing) -> Self {
        match standing {
            Standing::Noted => Self::Noted,
            Standing::Passes => Self::Go,
            Standing::Unknown => Self::Unknown,
            Standing::Stops => Self::Stop,
        }
    }
}

/// One line of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Where it belongs.
    pub step: Step,
    /// The section that it or its figure comes from; none where it comes from elsewhere.
    pub section: Option<Topic>,
    /// How it stands.
    pub state: State,
    /// What it is.
    pub what: String,
    /// Its figure, in the bay's units, or that there is none yet; empty where it has none.
    pub figure: String,
    /// Where it comes from.
    pub source: String,
    /// What to do about a stop or what is not known; empty for a go.
    pub to_do: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// In the order a person meets them.
    pub items: Vec<Item>,
    /// What of the file is not measured, each on one line. While anything is, no item is a go.
    pub not_measured: Vec<String>,
}

impl Plan {
    /// From a finished study.
    #[must_use]
    pub fn new(report: &Report<'_>) -> Self {
        let mut items = space::items(report);
        items.extend(rise::items(report));
        items.extend(items::items(report));
        // Stable: what is of one step keeps its order.
        items.sort_by_key(|item| item.step);
        if !report.study.not_measured().is_empty() {
            items.iter_mut().for_each(as_filed);
        }
        Self {
            items,
            not_measured: names(report.study.not_measured()),
        }
    }

    /// How many items stand so.
    #[must_use]
    pub fn count(&self, state: State) -> usize {
        self.items.iter().filter(|item| item.state == state).count()
    }

    /// True when nothing stops and nothing is unknown.
    #[must_use]
    pub fn is_go(&self) -> bool {
        self.count(State::Stop) == 0 && self.count(State::Unknown) == 0
    }
}

/// While something of the file is not measured, what would be a go is not known, and what would hold
/// is not said.
fn as_filed(item: &mut Item) {
    if item.state == State::Go {
        item.state = State::Unknown;
        item.figure = NO_FIGURE.into();
        item.to_do = "measure first what the file lists as not measured".into();
    }
}

#[cfg(test)]
mod tests;

//! One row of a table on a screen.

use super::words::{arms, cost, limited_by, load, lock, named, slab, underbody, vehicle, walking};
use crate::bayfile::options::{List, Options};
use crate::choose::{Cell, Outcome};
use crate::report::words::plain;

/// How a combination stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    /// A lock is safe.
    Safe,
    /// A lock is clear, but something withholds it.
    Withheld,
    /// No lock is clear.
    NoLock,
    /// It could not be studied.
    NoAnswer,
}

/// A combination in the words of a row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// Garage and change; empty where there are none.
    pub room: String,
    /// The lift.
    pub lift: String,
    /// The vehicle.
    pub vehicle: String,
    /// How it stands.
    pub stands: Stands,
    /// The highest safe lock.
    pub lock: String,
    /// Height under the body on it.
    pub underbody: String,
    /// Whether the arms reach.
    pub arms: String,
    /// The largest share of a rating used.
    pub load: String,
    /// The slab.
    pub slab: String,
    /// The way along the vehicle.
    pub walking: String,
    /// The cost; empty where the file gives no price.
    pub cost: String,
    /// What limits it, or why there is no answer.
    pub limited_by: String,
}

impl Row {
    /// Of a combination.
    #[must_use]
    pub fn of(options: &Options, cell: &Cell) -> Self {
        let room: Vec<String> = [List::Garages, List::Changes]
            .into_iter()
            .filter_map(|list| named(options, cell.pick, list))
            .collect();
        let lift = named(options, cell.pick, List::Lifts);
        let mut row = Self {
            room: room.join(", "),
            lift: lift.unwrap_or_else(|| {
                cell.found()
                    .map_or_else(|| "the lift".into(), |found| plain(&found.bay.lift.name))
            }),
            vehicle: vehicle(options, cell.pick),
            stands: Stands::NoAnswer,
            lock: "no answer".into(),
            underbody: String::new(),
            arms: String::new(),
            load: String::new(),
            slab: String::new(),
            walking: String::new(),
            cost: String::new(),
            limited_by: match &cell.outcome {
                Outcome::Found(_) => String::new(),
                Outcome::NotStudied(why) => plain(why),
                Outcome::Broken(faults) => faults.first().map_or_else(
                    || "its options have faults".into(),
                    |fault| plain(&fault.to_string()),
                ),
            },
        };
        if let Some(found) = cell.found() {
            let verdict = &found.verdict;
            row.stands = match (verdict.highest_safe_lock, verdict.highest_clear_lock) {
                (Some(_), _) => Stands::Safe,
                (None, Some(_)) => Stands::Withheld,
                (None, None) => Stands::NoLock,
            };
            row.lock = lock(found);
            if verdict.full_rise {
                row.lock.push_str(", full rise");
            }
            row.underbody = underbody(found);
            row.arms = arms(found);
            row.load = load(found);
            row.slab = slab(&found.slab()).into();
            row.walking = walking(found);
            row.cost = cost(&found.bill, &options.currency);
            row.limited_by = limited_by(found);
        }
        row
    }

    /// Whether a text stands in one of its names, or in what limits it; case is no matter.
    #[must_use]
    pub fn has(&self, text: &str) -> bool {
        let text = text.trim().to_lowercase();
        [&self.room, &self.lift, &self.vehicle, &self.limited_by]
            .iter()
            .any(|words| words.to_lowercase().contains(&text))
    }
}

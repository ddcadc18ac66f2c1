//! What do a window and a picture say of a study, sentence by sentence?
//!
//! The same sentences as the report's, taken apart: a window sets them where they belong.

use super::reasons::reasons;
use super::words::{count, plain, sentence};
use super::{Report, Show, names, section, text, words};
use crate::bay::{Bay, Door};
use crate::clearance::{DoorState, Limit, LockFinding, PairFinding, Study};
use crate::ground::{Figure, Said};
use crate::units::{self, Length, Rounding};

/// A studied bay, asked for its sentences.
#[derive(Debug, Clone, Copy)]
pub struct Sayings<'a> {
    bay: &'a Bay,
    study: &'a Study,
}

impl<'a> Sayings<'a> {
    /// Of a bay and its study.
    #[must_use]
    pub const fn of(bay: &'a Bay, study: &'a Study) -> Self {
        Self { bay, study }
    }

    const fn report(&self) -> Report<'a> {
        Report {
            bay: self.bay,
            study: self.study,
            warnings: &[],
            needs: &[],
            fingerprint: "",
            day: None,
        }
    }

    /// How lengths are shown.
    #[must_use]
    pub const fn show(&self) -> Show {
        Show {
            units: self.bay.units,
        }
    }

    /// The person's title of the bay.
    #[must_use]
    pub fn title(&self) -> String {
        plain(&self.bay.title)
    }

    /// Which vehicle on which lift.
    #[must_use]
    pub fn vehicle_on_lift(&self) -> String {
        format!(
            "{} on {}",
            plain(&self.bay.vehicle.name),
            plain(&self.bay.lift.name)
        )
    }

    /// "Lock 4 of 15" or "No safe lock".
    #[must_use]
    pub fn safe_lock(&self) -> String {
        self.study.highest_safe_lock.map_or_else(
            || "No safe lock".into(),
            |lock| format!("Lock {lock} of {}", self.study.locks.len()),
        )
    }

    /// The verdict in one paragraph.
    #[must_use]
    pub fn headline(&self) -> String {
        text::headline(&self.report())
    }

    /// Its first sentence: which lock is safe, or why none is.
    #[must_use]
    pub fn lead(&self) -> String {
        text::lead(&self.report())
    }

    /// The same for a sheet that lists no further reasons.
    #[must_use]
    pub fn lead_on_a_sheet(&self) -> String {
        text::lead_with(&self.report(), "see `bayrise check`")
    }

    /// What limits the rise; where no lock is clear, what would help.
    #[must_use]
    pub fn limits(&self) -> Option<String> {
        text::limits(&self.report())
    }

    /// The pair that limits the rise, as far as one does.
    #[must_use]
    pub const fn limiting_pair(&self) -> Option<&'a PairFinding> {
        match &self.study.limit {
            Limit::Pair(pair) | Limit::Bar(pair) | Limit::Undecided(pair) => Some(pair),
            Limit::Travel { .. } => None,
            Limit::Withheld => match self.study.headline_door {
                DoorState::Shut => self.study.doors.shut.first_short.as_ref(),
                DoorState::Open => self.study.doors.open.first_short.as_ref(),
                DoorState::Running => self.study.doors.running.first_short.as_ref(),
            },
        }
    }

    /// Why no lock is called safe, each with what would cure it, as two sentences.
    #[must_use]
    pub fn reasons(&self) -> Vec<(String, String)> {
        reasons(&self.study.withheld, self.show())
            .into_iter()
            .map(|reason| {
                (
                    format!("{}.", sentence(&reason.says)),
                    format!("To cure it: {}.", reason.cure),
                )
            })
            .collect()
    }

    /// A sentence of a section.
    #[must_use]
    pub fn of_section(&self, said: &Said) -> String {
        section::said(said, self.show())
    }

    /// A figure of a section: what it is, what was found and what is asked.
    #[must_use]
    pub fn figure(&self, figure: &Figure) -> String {
        let show = self.show();
        let what = sentence(&figure.what);
        let (found, asked) = (section::found(figure, show), section::asked(figure, show));
        match (found.is_empty(), asked.is_empty()) {
            (true, true) => what,
            (true, false) => format!("{what}: {asked} asked"),
            (false, true) => format!("{what}: {found}"),
            (false, false) => format!("{what}: {found}, {asked} asked"),
        }
    }

    /// A figure in a few letters, for a mark at its place: what was found, or that it is not known.
    #[must_use]
    pub fn mark(&self, figure: &Figure) -> String {
        let found = section::found(figure, self.show());
        if found.is_empty() {
            "not known".into()
        } else {
            found
        }
    }

    /// What stands below a figure: what else must be minded, and its source.
    #[must_use]
    pub fn below_figure(&self, figure: &Figure) -> String {
        let remark = section::remark(figure, self.show());
        let source = figure.source.as_deref().unwrap_or_default();
        match (remark.is_empty(), source.is_empty()) {
            (true, _) => source.into(),
            (false, true) => format!("{remark}."),
            (false, false) => format!("{remark}. {source}"),
        }
    }

    /// What was not checked, as a sentence.
    #[must_use]
    pub fn not_checked(&self) -> Option<String> {
        Some(text::unknown(&self.study.unknown)).filter(|said| !said.is_empty())
    }

    /// The same where the sections of the report do not follow.
    #[must_use]
    pub fn not_checked_elsewhere(&self) -> Option<String> {
        Some(self.not_checked()?.replace(
            "each has a section below",
            "each has a section in what `bayrise check` writes",
        ))
    }

    /// How much was not checked, in a few words for a picture.
    #[must_use]
    pub fn not_checked_short(&self) -> Option<String> {
        let unknown = self.study.unknown.len();
        (unknown > 0).then(|| {
            format!(
                "{} not made, or lacking data: see the report.",
                count(unknown, "check")
            )
        })
    }

    /// What exact measuring and parking would gain.
    #[must_use]
    pub fn if_exact(&self) -> Option<String> {
        text::nominal(&self.report())
    }

    /// The stop mark on the column, in both systems; only while a lock is safe.
    #[must_use]
    pub fn stop_mark(&self) -> Option<String> {
        self.study.highest_safe_lock?;
        let marks = self.study.marks?;
        Some(self.show().stop_mark(marks.stop_m, marks.never_above_m))
    }

    /// The mark never to climb above, in both systems; only while a lock is safe.
    #[must_use]
    pub fn never_above(&self) -> Option<String> {
        self.study.highest_safe_lock?;
        Some(self.study.marks?.never_above_m.map_or_else(
            || "nothing is met within the carriage's travel".into(),
            |mark| self.show().ceiling_mark(mark),
        ))
    }

    /// The same in the file's system alone, for a drawing.
    #[must_use]
    pub fn stop_mark_short(&self) -> Option<String> {
        self.study.highest_safe_lock?;
        Some(self.show().place(self.study.marks?.stop_m))
    }

    /// Likewise: the mark never to climb above.
    #[must_use]
    pub fn never_above_short(&self) -> Option<String> {
        self.study.highest_safe_lock?;
        Some(self.show().room(self.study.marks?.never_above_m?))
    }

    /// Where the vehicle trips the shut-off bar, and what it meets before; none without a bar.
    #[must_use]
    pub fn shut_off_bar(&self) -> Option<String> {
        text::shut_off_bar(&self.report())
    }

    /// A place or travel in both systems, the file's first.
    #[must_use]
    pub fn in_both(&self, metres: f64) -> String {
        units::both(Length::metres(metres), self.bay.units, Rounding::Nearest)
    }

    /// Where the carriage stands: "Carriage at lock 4, pads at 2 ft 7 in".
    #[must_use]
    pub fn carriage(&self, travel_m: f64, at_lock: Option<usize>) -> String {
        let at_lock = at_lock.and_then(|lock| self.study.locks.iter().find(|l| l.lock == lock));
        match at_lock {
            Some(lock) => format!("Carriage at lock {}, {}", lock.lock, self.pads(lock)),
            None if travel_m <= 0.0 => "Carriage on the floor".into(),
            None => format!("Carriage at {} of travel", self.show().place(travel_m)),
        }
    }

    fn pads(&self, lock: &LockFinding) -> String {
        format!("pads at {}", self.show().room(lock.pad_height_m))
    }

    /// Where the door stands, by the share of its way that it is open; none without a door.
    #[must_use]
    pub fn door(&self, share: f64) -> Option<String> {
        if self.bay.garage.door == Door::None {
            return None;
        }
        Some(if share <= 0.0 {
            "door shut".into()
        } else if share >= 1.0 {
            "door open".into()
        } else {
            "door on its way".into()
        })
    }

    /// That the verdict is for a door in another state than this; none where it is for this one.
    #[must_use]
    pub fn verdict_is_for_another(&self, shown: DoorState) -> Option<String> {
        let governs = self.study.headline_door;
        let is_other = self.bay.garage.door != Door::None && shown != governs;
        is_other.then(|| format!("the verdict is for the door {}", governs.word()))
    }

    /// What was counted for a door in this state, and whether the verdict is for it; none without
    /// a door.
    #[must_use]
    pub fn door_counted(&self, shown: DoorState) -> Option<String> {
        if self.bay.garage.door == Door::None {
            return None;
        }
        let counted = match shown {
            DoorState::Running => "counted wherever it may be on its way",
            DoorState::Shut | DoorState::Open => "counted as it stands",
        };
        let governs = self.study.headline_door;
        let word = governs.word();
        Some(match (shown == governs, self.study.door_is_held) {
            (true, false) => format!("{counted}; the verdict is for this state, the worse one"),
            (true, true) => format!("{counted}; the verdict is for the door held {word}"),
            (false, false) => format!("{counted}; the verdict is for the door {word}"),
            (false, true) => {
                format!("{counted}; the verdict holds only with the door held {word}")
            }
        })
    }

    /// How high it may go in a state of the door: "lock 4 of 15", "no safe lock".
    #[must_use]
    pub fn safe_lock_with_door(&self, state: DoorState) -> String {
        let found = match state {
            DoorState::Shut => &self.study.doors.shut,
            DoorState::Open => &self.study.doors.open,
            DoorState::Running => &self.study.doors.running,
        };
        match (found.highest_safe_lock, found.highest_clear_lock) {
            (Some(lock), _) => format!("lock {lock} of {}", self.study.locks.len()),
            (None, Some(lock)) => format!("no safe lock (lock {lock} is clear)"),
            (None, None) => "no safe lock".into(),
        }
    }
}

/// A solid in a sentence: "the door's left track".
#[must_use]
pub fn called(name: &str) -> String {
    names::the(name)
}

/// A solid in a list, short: the vehicle's parts without "vehicle".
#[must_use]
pub fn short_name(name: &str) -> String {
    words::short_thing(name)
}

/// Whether two solids are told of in one breath: pieces of one thing, or the same on another side.
#[must_use]
pub fn are_alike(a: &str, b: &str) -> bool {
    names::alike(a, b)
}

/// Text from a file on one line, without control characters.
#[must_use]
pub fn on_one_line(text: &str) -> String {
    plain(text)
}

/// "1 fault", "3 faults".
#[must_use]
pub fn counted(n: usize, what: &str) -> String {
    count(n, what)
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn the_parts_make_up_the_headline() {
        let bay = test_bay();
        for study in [sample::study(), sample::withheld(), sample::none_clear()] {
            let said = Sayings::of(&bay, &study);
            let headline = said.headline();
            assert!(headline.starts_with(&said.lead()), "{headline}");
            for part in [said.limits(), said.stop_mark()].into_iter().flatten() {
                assert!(headline.contains(&part), "{headline}: {part}");
            }
        }
    }

    #[test]
    fn marks_are_told_only_of_a_safe_lock() {
        let bay = test_bay();
        let (safe, withheld) = (sample::study(), sample::withheld());
        assert!(Sayings::of(&bay, &safe).stop_mark().is_some());
        let said = Sayings::of(&bay, &withheld);
        assert_eq!(said.stop_mark(), None);
        assert_eq!(said.never_above(), None);
        assert_eq!(said.safe_lock(), "No safe lock");
        assert!(!said.reasons().is_empty());
    }

    #[test]
    fn a_position_names_its_lock_and_pads() {
        let (bay, study) = (test_bay(), sample::study());
        let said = Sayings::of(&bay, &study);
        let lock = &study.locks[2];
        let words = said.carriage(lock.travel_m, Some(3));
        assert!(words.starts_with("Carriage at lock 3, pads at "), "{words}");
        assert_eq!(said.carriage(0.0, None), "Carriage on the floor");
        assert!(said.carriage(0.4, None).ends_with("of travel"));
    }
}

//! What may be said of a bay of which something is not measured?
//!
//! Whatever was worked out is then about another garage, lift or vehicle. Numbers may be shown as
//! those of the file as it is; what fails is told, since it would have to be cured anyway; but
//! nothing passes. That is seen to here, where findings are finished, so that no presenter has a
//! pass to show: no clear lock, no mark, no door that may run, nothing that may be opened.

use super::findings::{Limit, LockState, Study, Withheld};

impl Study {
    /// What of the file is not measured, in the words of the file; empty when nothing is listed.
    ///
    /// While anything is, nothing in the study passes, and every number is as filed, not measured.
    #[must_use]
    pub fn not_measured(&self) -> &[String] {
        listed(&self.withheld)
    }
}

/// What the reasons to withhold name as not measured.
pub(super) fn listed(withheld: &[Withheld]) -> &[String] {
    withheld
        .iter()
        .find_map(|one| match one {
            Withheld::NotMeasured { what } => Some(what.as_slice()),
            _ => None,
        })
        .unwrap_or_default()
}

/// Takes every pass out of a finished study while something is not measured. Its sections are seen
/// to by `ground`.
pub(super) fn nothing_passes(study: &mut Study) {
    if study.not_measured().is_empty() {
        return;
    }
    if study.highest_clear_lock.is_some() {
        study.limit = Limit::Withheld;
    }
    study.highest_clear_lock = None;
    study.highest_safe_lock = None;
    study.nominal_clear_lock = None;
    study.highest_releasable_lock = None;
    study.full_rise = false;
    study.marks = None;
    study.estimate = None;
    for lock in &mut study.locks {
        not_clear(&mut lock.state);
        lock.door_may_run = false;
    }
    let doors = &mut study.doors;
    doors.may_run_when_down = false;
    for door in [&mut doors.shut, &mut doors.open, &mut doors.running] {
        door.highest_clear_lock = None;
        door.highest_safe_lock = None;
        door.locks.iter_mut().for_each(not_clear);
    }
    // A bar is told of only for what it would not stop.
    if study
        .bar
        .as_ref()
        .is_some_and(|bar| bar.met_before.is_none())
    {
        study.bar = None;
    }
    study.opening_parts.clear();
}

/// A clear lock is one that the study could not decide about.
fn not_clear(state: &mut LockState) {
    if *state == LockState::Clear {
        *state = LockState::NotShown;
    }
}

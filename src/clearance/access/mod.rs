//! What does the room leave to the people who leave the vehicle, walk round it and shut the door?

mod found;
mod leaving;
mod shift;
mod ways;

pub use found::{Access, DoorRoom, ShiftFound, Shut, Swing, Turned, Way, WayKind};
pub use shift::LEAVE_M;
pub(super) use ways::ways;

use leaving::OnLock;

use super::findings::{DoorState, LockFinding, LockState};
use super::opening::PlaceDoubt;
use super::pair_table::PairTable;
use super::prepare::{FixedSet, Prepared};
use super::study::group_of;
use super::sweep::Workspace;
use crate::bay::{Bay, Door};
use crate::solids::Pose;

/// Pads about this high bring doors and wheels to the waist. Common practice, no source.
const WAIST_M: f64 = 0.9;

/// What the study has found before people are looked at.
pub(super) struct Before<'a> {
    pub(super) bay: &'a Bay,
    pub(super) prepared: &'a Prepared,
    pub(super) table: &'a PairTable<'a>,
    /// The governing door state's group.
    pub(super) door_group: usize,
    pub(super) highest_clear_lock: Option<usize>,
    pub(super) locks: &'a [LockFinding],
    /// `bay_from_vehicle` on each lock, for every attitude on the pads.
    pub(super) at_locks: &'a [Vec<Pose>],
    /// How far the body on the pads may be off.
    pub(super) place: PlaceDoubt,
}

/// Everything found about doors, ways and the garage door.
pub(super) fn access(before: &Before<'_>, space: &mut Workspace) -> Access {
    let leaving = leaving::Leaving::new(before);
    let doors = leaving.doors(waist(before), space.solver());
    let shift = shift::shift(before, &leaving, &doors, space);
    Access {
        shift,
        doors,
        ways: ways::ways(before.bay, before.prepared),
        shut: shut(before, space),
        turned: ways::turned_round(before),
        tallest_m: ways::tallest_m(before.bay),
    }
}

/// The lock with the pads nearest to waist height among those that are clear.
fn waist<'a>(before: &Before<'a>) -> Option<OnLock<'a>> {
    let highest = before.highest_clear_lock?;
    let off = |lock: &LockFinding| (lock.pad_height_m - WAIST_M).abs();
    let lock = before
        .locks
        .iter()
        .filter(|lock| lock.lock <= highest && lock.state == LockState::Clear)
        .min_by(|a, b| off(a).total_cmp(&off(b)))?;
    Some(OnLock {
        lock: lock.lock,
        travel_m: lock.travel_m,
        poses: before.at_locks.get(lock.lock - 1)?,
        place: before.place,
    })
}

/// Whether the garage door runs shut with the vehicle on its tyres.
fn shut(before: &Before<'_>, space: &mut Workspace) -> Option<Shut> {
    if before.bay.garage.door == Door::None {
        return None;
    }
    let groups = &before.prepared.groups;
    let mut short = |state: DoorState, set: &FixedSet| {
        let (moving, fixed) = before.table.short_when_down(group_of(state), space)?;
        Some((
            before.prepared.movers.solids[moving].name.clone(),
            set.solids[fixed].name.clone(),
        ))
    };
    let shut = short(DoorState::Shut, &groups.shut);
    let while_running = shut.is_none();
    let meets = shut.or_else(|| short(DoorState::Running, &groups.running));
    Some(Shut {
        while_running: while_running && meets.is_some(),
        meets,
    })
}

#[cfg(test)]
mod tests;

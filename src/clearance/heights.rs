//! How high, and does the room allow it: the study's own answer without what stands beside it?
//!
//! For whoever asks many times over with one thing changed (a ceiling, a roof). The lists, the
//! sweeps and the rules are those of the study; arms, loads, ground and people are left out.

use std::sync::Arc;

use super::driving_in::met_driving_in;
use super::findings::{StandUp, StandingFinding, Withheld};
use super::locks::{Together, highest_clear};
use super::parked::parked_short;
use super::prepare::{GroupSolids, Groups, Nominal, Prepared};
use super::standing::{stand_up, standing};
use super::study::{StudyError, counted_states, group_list, group_of, sweep_group_first};
use super::sweep::{Swept, Workspace};
use super::uncertainty::Uncertainty;
use super::verdict::Fixtures;
use super::withhold::{Room, of_the_room};
use crate::bay::Bay;

/// How high, and whether the room allows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Heights {
    /// The highest clear lock, the same as the study's.
    pub highest_clear_lock: Option<usize>,
    /// How many of the study's reasons to withhold have to do with the room: parts of the lift that
    /// don't stand, columns that can't be tipped up, a vehicle that can't be driven in or is tight
    /// as parked.
    pub reasons: usize,
    /// Whether one of them is that something is tight as parked. Such pairs are left out of the
    /// rise, so that the highest clear lock says nothing of them.
    pub is_tight_as_parked: bool,
    /// Whether the lift can be stood up here and stands: none of the reasons is about that.
    pub stands: bool,
}

/// How high, and whether the room allows it.
///
/// # Errors
/// When the vehicle can't be set on the pads at all (see [`StudyError`]).
pub fn heights(bay: &Bay) -> Result<Heights, StudyError> {
    Fixtures::new(bay).heights(bay)
}

impl Fixtures {
    /// How high, and whether the room allows it, for a bay with this lift in this room; for another
    /// one the fixtures are made anew.
    ///
    /// # Errors
    /// When the vehicle can't be set on the pads at all (see [`StudyError`]).
    pub fn heights(&self, bay: &Bay) -> Result<Heights, StudyError> {
        if !self.fit(bay) {
            return Self::new(bay).heights(bay);
        }
        let prepared = self.prepared(bay)?;
        let as_written = || self.as_written(bay);
        let nominal = Nominal::when_asked(bay, &as_written);
        Ok(look(
            bay,
            &prepared,
            &nominal,
            self.standing(),
            self.stand_up(),
        ))
    }
}

/// A bay made ready to be asked again and again under other ceilings.
#[derive(Debug)]
pub struct HeightSearch {
    prepared: Prepared,
}

impl HeightSearch {
    /// Makes a bay ready.
    ///
    /// # Errors
    /// When the vehicle can't be set on the pads at all (see [`StudyError`]).
    pub fn new(bay: &Bay) -> Result<Self, StudyError> {
        let uncertainty = Uncertainty::worst(bay);
        let prepared = Prepared::from_solids(bay, GroupSolids::new(bay), uncertainty)?;
        Ok(Self { prepared })
    }

    /// The same under another ceiling. `bay` must differ from the bay that was made ready in its
    /// ceiling alone: nothing that moves is built anew.
    pub fn under_ceiling(&mut self, bay: &Bay) -> Heights {
        let groups = |uncertainty| Arc::new(Groups::of(bay, GroupSolids::new(bay), uncertainty));
        let prepared = &mut self.prepared;
        prepared.groups = groups(&prepared.uncertainty);
        let as_written = || groups(&Uncertainty::NONE);
        let nominal = Nominal::when_asked(bay, &as_written);
        let mut space = Workspace::new();
        let standing = standing(&group_list(prepared), &prepared.uncertainty, space.solver());
        let stand_up = stand_up(bay, &prepared.uncertainty);
        look(bay, prepared, &nominal, &standing, stand_up)
    }
}

fn look(
    bay: &Bay,
    prepared: &Prepared,
    nominal: &Nominal<'_>,
    standing: &[StandingFinding],
    stand_up: StandUp,
) -> Heights {
    let mut space = Workspace::new();
    let counted = counted_states(bay);
    let groups: Vec<usize> = std::iter::once(0)
        .chain(counted.iter().map(|&state| group_of(state)))
        .collect();
    let parked = parked_short(bay, prepared, nominal, &groups, &mut space);
    let mut sweep = |group: usize| {
        sweep_group_first(prepared, &bay.policy, group, &parked.left_out, &mut space)
    };
    let common = sweep(0);
    let clear = |door: &Swept| {
        let swept = [&common, door];
        let states = Together { swept: &swept }.states(
            &prepared.locks,
            prepared.movers.phases.carry_m,
            bay.lift.travel.m(),
        );
        highest_clear(states.into_iter().map(|(state, _)| state))
    };
    // The worse of the states that count governs, and none is worse than any lock.
    let highest_clear_lock = counted
        .iter()
        .map(|&state| clear(&sweep(group_of(state))))
        .min()
        .flatten();
    let reasons = of_the_room(&Room {
        standing,
        stand_up,
        driving_in: &met_driving_in(
            bay,
            &prepared.movers,
            &prepared.groups,
            &prepared.uncertainty,
            space.solver(),
        ),
        tight_as_parked: &parked.findings,
    });
    Heights {
        highest_clear_lock,
        reasons: reasons.len(),
        is_tight_as_parked: !parked.findings.is_empty(),
        stands: !reasons.iter().any(|reason| {
            matches!(
                reason,
                Withheld::DoesNotStand { .. } | Withheld::CannotBeStoodUp { .. }
            )
        }),
    }
}

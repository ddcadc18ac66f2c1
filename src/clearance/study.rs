//! The whole study of one bay: from solids to findings.

use glam::DVec3;

use super::access::{Before, access};
use super::carried::carried;
use super::driving_in::driving_in;
use super::findings::{
    ArmFinding, ContactFinding, DoorFinding, DoorState, Doors, Limit, LockState, PairFinding,
    PhasesFound, StandUp, StandingFinding, Study,
};
use super::lock_table::{
    bar_finding, highest_releasable, lock_findings, only_below_what_bars_the_door,
};
use super::locks::{Together, highest_clear};
use super::marks::marks;
use super::movers::{MoverError, Moving, most_turn};
use super::opening::{PlaceDoubt, opening_parts};
use super::pair_table::PairTable;
use super::pairs::{Family, Rule, rule, widest_margin_m};
use super::parked::parked_short;
use super::prepare::{FixedSet, GroupSolids, Nominal, Prepared};
use super::reach::arm_findings;
use super::standing::{door_in_ceiling, stand_up, standing};
use super::sweep::{Breach, Fixed, Swept, Workspace};
use super::uncertainty::Uncertainty;
use super::unmeasured;
use super::withhold::{Evidence, Room, rating, reasons, unknowns};
use crate::bay::{Bay, DoorHeld, Policy};
use crate::ground::{self, Date};
use crate::solids::{ParkingError, attitude};

/// Why a bay could not be studied.
pub type StudyError = MoverError;

/// Pairs of (moving solid, group, fixed solid) that are reported as parked and left out of the
/// rise.
pub(super) type LeftOut = Vec<(usize, usize, usize)>;

/// Studies one bay: the worst case over every uncertainty in it, and everything reported beside
/// it.
///
/// # Errors
/// When the vehicle can't be set on the pads at all (see [`StudyError`]).
pub fn study(bay: &Bay) -> Result<Study, StudyError> {
    study_on(bay, None)
}

/// The same on a day that ages (of concrete) are counted to; with none, nothing is known to have
/// aged.
///
/// # Errors
/// As [`study`].
pub fn study_on(bay: &Bay, on: Option<Date>) -> Result<Study, StudyError> {
    Ok(whole(bay, on)?.study)
}

/// A study with what it was made from.
pub(super) struct Whole {
    pub(super) study: Study,
    pub(super) prepared: Prepared,
    pub(super) nominal: Prepared,
    pub(super) left_out: LeftOut,
}

/// The study, and what it was made from for whoever asks on.
///
/// # Errors
/// When the vehicle can't be set on the pads at all (see [`StudyError`]).
pub(super) fn whole(bay: &Bay, on: Option<Date>) -> Result<Whole, StudyError> {
    let solids = GroupSolids::new(bay);
    let (prepared, nominal) = both(
        || Prepared::from_solids(bay, solids.clone(), Uncertainty::worst(bay)),
        || Prepared::from_solids(bay, solids.clone(), Uncertainty::NONE),
    );
    let (prepared, nominal) = (prepared?, nominal?);
    let mut space = Workspace::new();
    let groups = group_list(&prepared);
    let counted = counted_states(bay);
    let counted_groups: Vec<usize> = std::iter::once(0)
        .chain(counted.iter().map(|&state| group_of(state)))
        .collect();
    let as_written = Nominal::Made(&nominal);
    let parked = parked_short(bay, &prepared, &as_written, &counted_groups, &mut space);
    // What doesn't wait for the sweeps is found beside them.
    let (sweeps, beside) = both(
        || Sweeps::new(bay, &prepared, &parked.left_out, &mut space),
        || Beside::new(bay, &prepared, &groups),
    );
    let beside = beside?;
    let carry_m = prepared.movers.phases.carry_m;
    let travel_m = bay.lift.travel.m();

    let headline_door = governing_door(bay, |state| {
        let swept = [&sweeps.common, sweeps.of(state)];
        how_high(&Together { swept: &swept }, &prepared, travel_m)
    });
    let door_group = group_of(headline_door);
    let swept = [&sweeps.common, sweeps.of(headline_door)];
    let together = Together { swept: &swept };
    let states = together.states(&prepared.locks, carry_m, travel_m);
    let highest_clear_lock = highest_clear(states.iter().map(|(state, _)| *state));
    let releasable = highest_releasable(bay);

    let table = PairTable {
        bay,
        prepared: &prepared,
        nominal: &as_written,
        groups: &groups,
        left_out: &parked.left_out,
    };
    // `together` counts groups 0 (common) and 1 (the door); the tables know the door's own index.
    let real_group = |group: usize| if group == 0 { 0 } else { door_group };
    let first = together
        .first()
        .map(|(group, breach)| (real_group(group), breach));
    let undecided = together
        .undecided()
        .map(|(group, breach)| (real_group(group), breach));

    let Beside {
        driving,
        carried,
        standing,
        door_in_ceiling,
        stand_up,
        arms,
    } = beside;
    let rating = rating(bay);
    // Nothing above the first breach or the first undecided travel is shown clear, in any door
    // state that counts.
    let shown_until = counted
        .iter()
        .flat_map(|&state| {
            let swept = [&sweeps.common, sweeps.of(state)];
            let together = Together { swept: &swept };
            [together.first(), together.undecided()]
        })
        .flatten()
        .map(|(_, breach)| breach.travel_m)
        .min_by(f64::total_cmp);
    let marks = highest_clear_lock.and_then(|lock| marks(bay, lock, shown_until));

    let loose_pad = nominal.movers.loose;
    let withheld = reasons(
        bay,
        &Evidence {
            arms: &arms,
            too_high: &prepared.movers.too_high,
            rating,
            room: Room {
                standing: &standing,
                stand_up,
                driving_in: &driving,
                tight_as_parked: &parked.findings,
            },
            loose_pad,
            carried: &carried,
            no_mark_fits: highest_clear_lock.is_some() && marks.is_none(),
        },
    );

    let safe = |clear: Option<usize>| if withheld.is_empty() { clear } else { None };
    let highest_safe_lock = safe(highest_clear_lock);
    let limit = limit(
        bay,
        &table,
        &mut space,
        first,
        undecided,
        highest_clear_lock,
        releasable,
        !withheld.is_empty(),
    );
    let door_finding = |state: DoorState, space: &mut Workspace| -> DoorFinding {
        let swept = [&sweeps.common, sweeps.of(state)];
        let together = Together { swept: &swept };
        let states: Vec<LockState> = together
            .states(&prepared.locks, carry_m, travel_m)
            .into_iter()
            .map(|(state, _)| state)
            .collect();
        let clear = highest_clear(states.iter().copied());
        let group = group_of(state);
        DoorFinding {
            state,
            highest_clear_lock: clear,
            highest_safe_lock: safe(clear),
            locks: states,
            first_breach_m: together.first().map(|(_, breach)| breach.travel_m),
            undecided_m: together.undecided().map(|(_, breach)| breach.travel_m),
            first_short: together.first().map(|(which, breach)| {
                table.finding(if which == 0 { 0 } else { group }, &breach, space)
            }),
        }
    };
    let doors = Doors {
        shut: door_finding(DoorState::Shut, &mut space),
        open: door_finding(DoorState::Open, &mut space),
        running: door_finding(DoorState::Running, &mut space),
        may_run_when_down: table.may_run_when_down(&mut space),
    };
    let nominal_clear_lock =
        nominal_clear(bay, &nominal, &parked.left_out, headline_door, &mut space);
    let mut locks = lock_findings(
        bay,
        &table,
        &states,
        &together,
        sweeps.of(DoorState::Running),
        door_group,
        &mut space,
    );
    only_below_what_bars_the_door(&mut locks, doors.running.highest_clear_lock);
    let attitudes = attitude::attitudes(bay, ParkingError::default(), [0.0; 4])?;
    let at_locks: Vec<Vec<_>> = bay
        .lift
        .locks
        .iter()
        .map(|lock| {
            attitudes
                .iter()
                .map(|one| one.bay_from_vehicle_at_zero.moved(DVec3::Z * lock.m()))
                .collect()
        })
        .collect();
    let place = PlaceDoubt {
        spread: table.body_spread(),
        turn: most_turn(bay, &prepared.uncertainty),
    };
    let ((opening_parts, access), beside_them) = both(
        || {
            let mut space = Workspace::new();
            let fixed: Vec<_> = [&prepared.groups.common, groups[door_group]]
                .into_iter()
                .flat_map(|group| group.bodies.iter())
                .collect();
            let moving = &prepared.movers.moving;
            let opening_parts =
                opening_parts(bay, &at_locks, place, &fixed, moving, space.solver());
            let before = Before {
                bay,
                prepared: &prepared,
                table: &table,
                door_group,
                highest_clear_lock,
                locks: &locks,
                at_locks: &at_locks,
                place,
            };
            let access = access(&before, &mut space);
            (opening_parts, access)
        },
        || -> Result<_, StudyError> {
            let bar = bar_finding(bay, &table, &counted_groups, &mut space)?;
            Ok((bar, table.near_pairs(&[0, door_group], &mut space)))
        },
    );
    let (bar, pairs) = beside_them?;
    let contact = attitude::contact(bay, ParkingError::default())?;
    let mut study = Study {
        headline_door,
        door_is_held: bay.policy.door_held.is_some(),
        full_rise: highest_safe_lock.is_some() && highest_safe_lock == releasable,
        highest_releasable_lock: releasable,
        locks,
        highest_clear_lock,
        highest_safe_lock,
        nominal_clear_lock,
        limit,
        withheld,
        sections: Vec::new(),
        unknown: unknowns(bay, stand_up),
        marks,
        doors,
        pairs,
        tight_as_parked: parked.findings,
        standing,
        door_in_ceiling,
        stand_up,
        carried,
        driving_in: driving,
        arms,
        bar,
        opening_parts,
        access,
        phases: PhasesFound {
            touch_m: contact.touch_m,
            carry_m: contact.carry_m,
            carry_worst_m: carry_m,
            lift_off_m: nominal.movers.phases.lift_off_m,
        },
        rating,
        loose_pad,
        estimate: None,
        policy: bay.policy.clone(),
        uncertainty: prepared.uncertainty,
    };
    ground::complete(bay, on, &mut study);
    unmeasured::nothing_passes(&mut study);
    Ok(Whole {
        study,
        left_out: parked.left_out,
        prepared,
        nominal,
    })
}

/// The groups of fixed solids, in the order that group indices mean.
pub(super) fn group_list(prepared: &Prepared) -> [&FixedSet; 4] {
    let groups = &prepared.groups;
    [&groups.common, &groups.shut, &groups.open, &groups.running]
}

/// The index of a door state's group.
pub(super) const fn group_of(state: DoorState) -> usize {
    match state {
        DoorState::Shut => 1,
        DoorState::Open => 2,
        DoorState::Running => 3,
    }
}

/// The door state of a group; none for what is always there.
pub(super) const fn state_of(group: usize) -> Option<DoorState> {
    match group {
        1 => Some(DoorState::Shut),
        2 => Some(DoorState::Open),
        3 => Some(DoorState::Running),
        _ => None,
    }
}

/// Two pieces of work at once where the machine has room for both; what comes back is the same.
fn both<A: Send, B: Send>(
    one: impl FnOnce() -> A + Send,
    other: impl FnOnce() -> B + Send,
) -> (A, B) {
    rayon::join(one, other)
}

/// What is found without the sweeps.
struct Beside {
    driving: Vec<PairFinding>,
    carried: Vec<ContactFinding>,
    standing: Vec<StandingFinding>,
    door_in_ceiling: Vec<StandingFinding>,
    stand_up: StandUp,
    arms: [ArmFinding; 4],
}

impl Beside {
    fn new(bay: &Bay, prepared: &Prepared, groups: &[&FixedSet; 4]) -> Result<Self, StudyError> {
        let mut space = Workspace::new();
        Ok(Self {
            driving: driving_in(
                bay,
                &prepared.movers,
                &prepared.groups,
                &prepared.uncertainty,
                space.solver(),
            ),
            carried: carried(bay, &prepared.uncertainty, space.solver())?,
            standing: standing(groups, &prepared.uncertainty, space.solver()),
            door_in_ceiling: door_in_ceiling(&groups[..3], space.solver()),
            stand_up: stand_up(bay, &prepared.uncertainty),
            arms: arm_findings(bay, &prepared.uncertainty)?,
        })
    }
}

/// One sweep of every group.
struct Sweeps {
    common: Swept,
    doors: [Swept; 3],
}

impl Sweeps {
    fn new(bay: &Bay, prepared: &Prepared, left_out: &LeftOut, space: &mut Workspace) -> Self {
        let mut run = |group: usize| sweep_group(prepared, &bay.policy, group, left_out, space);
        Self {
            common: run(0),
            doors: [run(1), run(2), run(3)],
        }
    }

    fn of(&self, state: DoorState) -> &Swept {
        &self.doors[group_of(state) - 1]
    }
}

/// Sweeps one group of fixed bodies.
pub(super) fn sweep_group(
    prepared: &Prepared,
    policy: &Policy,
    group: usize,
    left_out: &LeftOut,
    space: &mut Workspace,
) -> Swept {
    let set = group_list(prepared)[group];
    let asked = asked(policy, group, left_out);
    let moving = &prepared.movers.moving;
    space.sweep(moving, &set.bodies, &prepared.locks, DVec3::Z, &asked);
    space.swept.clone()
}

/// The same, only as far as which locks are clear depends on it.
pub(super) fn sweep_group_first(
    prepared: &Prepared,
    policy: &Policy,
    group: usize,
    left_out: &LeftOut,
    space: &mut Workspace,
) -> Swept {
    let set = group_list(prepared)[group];
    let asked = asked(policy, group, left_out);
    let moving = &prepared.movers.moving;
    let widest_m = widest_margin_m(policy);
    space.sweep_first(
        moving,
        &set.bodies,
        &prepared.locks,
        DVec3::Z,
        widest_m,
        &asked,
    );
    space.swept.clone()
}

/// What is asked of each pair of a group.
fn asked<'a>(
    policy: &'a Policy,
    group: usize,
    left_out: &'a LeftOut,
) -> impl Fn(&Moving, &Fixed) -> Option<Rule> + 'a {
    move |mover, fixed| {
        if !left_out.is_empty() && left_out.contains(&(mover.solid, group, fixed.solid)) {
            return None;
        }
        rule(mover.role, fixed.role, policy)
    }
}

/// The door states that count: the one the policy holds, else shut and open.
pub(super) const fn counted_states(bay: &Bay) -> &'static [DoorState] {
    match bay.policy.door_held {
        Some(DoorHeld::Shut) => &[DoorState::Shut],
        Some(DoorHeld::Open) => &[DoorState::Open],
        None => &[DoorState::Shut, DoorState::Open],
    }
}

/// The highest clear lock, and the travel of the first breach.
pub(super) fn how_high(
    together: &Together<'_>,
    prepared: &Prepared,
    travel_m: f64,
) -> (Option<usize>, f64) {
    let carry_m = prepared.movers.phases.carry_m;
    let clear = highest_clear(
        together
            .states(&prepared.locks, carry_m, travel_m)
            .into_iter()
            .map(|(state, _)| state),
    );
    let breach = together
        .first()
        .map_or(f64::INFINITY, |(_, breach)| breach.travel_m);
    (clear, breach)
}

/// The governing door state: the worse of those that count. `result` says how high one allows.
pub(super) fn governing_door(
    bay: &Bay,
    result: impl Fn(DoorState) -> (Option<usize>, f64),
) -> DoorState {
    if let [held] = counted_states(bay) {
        return *held;
    }
    let (shut, open) = (result(DoorState::Shut), result(DoorState::Open));
    // The lower lock governs; with the same lock, the earlier breach.
    let shut_is_worse = shut.0 < open.0 || (shut.0 == open.0 && shut.1 < open.1);
    if shut_is_worse {
        DoorState::Shut
    } else {
        DoorState::Open
    }
}

fn nominal_clear(
    bay: &Bay,
    nominal: &Prepared,
    left_out: &LeftOut,
    door: DoorState,
    space: &mut Workspace,
) -> Option<usize> {
    let common = sweep_group_first(nominal, &bay.policy, 0, left_out, space);
    let door = sweep_group_first(nominal, &bay.policy, group_of(door), left_out, space);
    let swept = [&common, &door];
    let states = Together { swept: &swept }.states(
        &nominal.locks,
        nominal.movers.phases.carry_m,
        bay.lift.travel.m(),
    );
    highest_clear(states.into_iter().map(|(state, _)| state))
}

#[expect(
    clippy::too_many_arguments,
    reason = "everything that can limit a rise meets here"
)]
pub(super) fn limit(
    bay: &Bay,
    table: &PairTable<'_>,
    space: &mut Workspace,
    first: Option<(usize, Breach)>,
    undecided: Option<(usize, Breach)>,
    highest_clear_lock: Option<usize>,
    releasable: Option<usize>,
    is_withheld: bool,
) -> Limit {
    if is_withheld && highest_clear_lock.is_some() {
        return Limit::Withheld;
    }
    if highest_clear_lock.is_some() && highest_clear_lock == releasable {
        return Limit::Travel {
            travel_m: bay.lift.travel.m(),
        };
    }
    if let Some((group, pair)) = undecided
        && first.is_none_or(|(_, breach)| pair.travel_m <= breach.travel_m)
    {
        return Limit::Undecided(table.finding(group, &pair, space));
    }
    match first {
        Some((group, breach)) => {
            let finding = table.finding(group, &breach, space);
            if breach.family == Family::Bar {
                Limit::Bar(finding)
            } else {
                Limit::Pair(finding)
            }
        }
        None => Limit::Travel {
            travel_m: bay.lift.travel.m(),
        },
    }
}

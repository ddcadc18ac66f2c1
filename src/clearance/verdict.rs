//! How high, and is a lock safe: the study's own answer without what nobody asks of one bay among
//! many.
//!
//! For comparisons. Every list, every reason to withhold and every figure that can stop is the
//! study's, made by the same functions; what is left out only tells more of an answer: pairs that
//! are near, the bay as written, nearest points, the running door, doors that open, the sections
//! that withhold nothing. What does not hang on the vehicle is made once for a lift in a room, see
//! [`Fixtures`].

use std::sync::{Arc, OnceLock};

use super::access::{Way, ways};
use super::carried::carried;
use super::driving_in::driving_in;
use super::findings::{
    ArmFinding, DoorState, Limit, LockFinding, LockState, StandUp, StandingFinding, Study, Withheld,
};
use super::lock_table::highest_releasable;
use super::locks::Together;
use super::marks::marks;
use super::movers::movers;
use super::pair_table::PairTable;
use super::parked::parked_short;
use super::prepare::{GroupSolids, Groups, Nominal, Prepared, lock_windows};
use super::reach::arm_findings;
use super::standing::{stand_up, standing};
use super::study::{
    StudyError, counted_states, governing_door, group_list, group_of, how_high, limit,
    sweep_group_first,
};
use super::sweep::{Swept, Workspace};
use super::uncertainty::Uncertainty;
use super::unmeasured::listed;
use super::withhold::{Evidence, Room, rating, reasons};
use crate::bay::{Bay, Garage, Lift};
use crate::ground::{self, Clearances, Date, Section, Standing, Topic};

/// One lock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LockHeight {
    /// The lock, counted from 1.
    pub lock: usize,
    /// Its travel, metres.
    pub travel_m: f64,
    /// Height under the body there, metres.
    pub underbody_m: f64,
}

/// The verdict on one bay: what a study says of these things, and no more.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// Every lock, lowest first.
    pub locks: Vec<LockHeight>,
    /// The highest lock that is clear: geometry alone, worst case.
    pub highest_clear_lock: Option<usize>,
    /// The same lock, or none when there is a reason to withhold it.
    pub highest_safe_lock: Option<usize>,
    /// True when the highest lock the carriage can release is safe.
    pub full_rise: bool,
    /// The highest lock the carriage can release from.
    pub highest_releasable_lock: Option<usize>,
    /// True where at no lock all four pads carry the vehicle.
    pub never_lifts: bool,
    /// What limits the rise; without the nearest points.
    pub limit: Limit,
    /// Reasons why no lock is called safe.
    pub withheld: Vec<Withheld>,
    /// Whether each arm reaches its lift point, by [`crate::bay::Corner::index`].
    pub arms: [ArmFinding; 4],
    /// Widths to walk through with the vehicle on its tyres.
    pub ways: Vec<Way>,
    /// The sections that may withhold a lock. Their figures stand as the study's do; a cure may be
    /// told more shortly.
    sections: Vec<Section>,
}

impl Verdict {
    /// What a whole study says of these things.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        let lock = |lock: &LockFinding| LockHeight {
            lock: lock.lock,
            travel_m: lock.travel_m,
            underbody_m: lock.underbody_m,
        };
        let mut limit = study.limit.clone();
        if let Limit::Pair(pair) | Limit::Bar(pair) | Limit::Undecided(pair) = &mut limit {
            pair.points_m = None;
        }
        Self {
            locks: study.locks.iter().map(lock).collect(),
            highest_clear_lock: study.highest_clear_lock,
            highest_safe_lock: study.highest_safe_lock,
            full_rise: study.full_rise,
            highest_releasable_lock: study.highest_releasable_lock,
            never_lifts: study
                .locks
                .iter()
                .all(|lock| lock.state == LockState::NotLifting),
            limit,
            withheld: study.withheld.clone(),
            arms: study.arms.clone(),
            ways: study.access.ways.clone(),
            sections: study
                .sections
                .iter()
                .filter(|section| section.topic.withholds())
                .cloned()
                .collect(),
        }
    }

    /// What of the file is not measured, as in [`Study::not_measured`].
    #[must_use]
    pub fn not_measured(&self) -> &[String] {
        listed(&self.withheld)
    }

    /// How every figure of the sections that may withhold a lock stands, of which something is
    /// asked: topic, name, standing.
    pub fn standings(&self) -> impl Iterator<Item = (Topic, &str, Standing)> {
        self.sections.iter().flat_map(|section| {
            let of = |figure| (section.topic, figure);
            let figures = section.figures.iter().map(of);
            figures
                .map(|(topic, figure)| (topic, figure.id.as_ref(), figure.standing))
                .filter(|(_, _, standing)| *standing != Standing::Noted)
        })
    }

    /// The section on a topic; none for topics that withhold nothing.
    pub(crate) fn section(&self, topic: Topic) -> Option<&Section> {
        self.sections.iter().find(|one| one.topic == topic)
    }
}

/// The verdict on one bay; ages are counted to `on`, as in [`super::study_on`].
///
/// # Errors
/// When the vehicle can't be set on the pads at all (see [`StudyError`]).
pub fn verdict_on(bay: &Bay, on: Option<Date>) -> Result<Verdict, StudyError> {
    Fixtures::new(bay).verdict(bay, on)
}

/// A lift in a room, made ready for any number of vehicles.
#[derive(Debug)]
pub struct Fixtures {
    garage: Garage,
    lift: Lift,
    /// What of the policy the fixed bodies hang on: the ± of room and lift, metres.
    measured_m: [f64; 2],
    groups: Arc<Groups>,
    as_written: OnceLock<Arc<Groups>>,
    standing: Vec<StandingFinding>,
    stand_up: StandUp,
}

impl Fixtures {
    /// Of the bay's own lift in its own room.
    #[must_use]
    pub fn new(bay: &Bay) -> Self {
        let uncertainty = Uncertainty::worst(bay);
        let groups = Arc::new(Groups::of(bay, GroupSolids::new(bay), &uncertainty));
        let listed = [&groups.common, &groups.shut, &groups.open, &groups.running];
        let standing = standing(&listed, &uncertainty, Workspace::new().solver());
        Self {
            garage: bay.garage.clone(),
            lift: bay.lift.clone(),
            measured_m: measured_m(&uncertainty),
            as_written: OnceLock::new(),
            standing,
            stand_up: stand_up(bay, &uncertainty),
            groups,
        }
    }

    /// Whether a bay has this lift in this room.
    #[must_use]
    pub fn fit(&self, bay: &Bay) -> bool {
        let measured_m = measured_m(&Uncertainty::worst(bay));
        self.measured_m.map(f64::to_bits) == measured_m.map(f64::to_bits)
            && self.lift == bay.lift
            && self.garage == bay.garage
    }

    /// The verdict on a bay. For one with another lift or room the fixtures are made anew.
    ///
    /// # Errors
    /// When the vehicle can't be set on the pads at all (see [`StudyError`]).
    pub fn verdict(&self, bay: &Bay, on: Option<Date>) -> Result<Verdict, StudyError> {
        if self.fit(bay) {
            self.found(bay, on)
        } else {
            Self::new(bay).found(bay, on)
        }
    }

    /// The parts of the lift against the room.
    pub(super) fn standing(&self) -> &[StandingFinding] {
        &self.standing
    }

    /// Whether its columns can be tipped up.
    pub(super) const fn stand_up(&self) -> StandUp {
        self.stand_up
    }

    /// A bay with this lift in this room, every uncertainty added.
    pub(super) fn prepared(&self, bay: &Bay) -> Result<Prepared, StudyError> {
        let uncertainty = Uncertainty::worst(bay);
        Ok(Prepared {
            movers: movers(bay, &uncertainty)?,
            groups: self.groups.clone(),
            locks: lock_windows(bay),
            uncertainty,
        })
    }

    /// The fixed bodies exactly as written.
    pub(super) fn as_written(&self, bay: &Bay) -> Arc<Groups> {
        let made = || Arc::new(Groups::of(bay, GroupSolids::new(bay), &Uncertainty::NONE));
        self.as_written.get_or_init(made).clone()
    }

    fn found(&self, bay: &Bay, on: Option<Date>) -> Result<Verdict, StudyError> {
        let prepared = self.prepared(bay)?;
        let uncertainty = prepared.uncertainty;
        let mut space = Workspace::new();
        let as_written = || self.as_written(bay);
        let nominal = Nominal::when_asked(bay, &as_written);
        let counted = counted_states(bay);
        let counted_groups: Vec<usize> = std::iter::once(0)
            .chain(counted.iter().map(|&state| group_of(state)))
            .collect();
        let parked = parked_short(bay, &prepared, &nominal, &counted_groups, &mut space);
        let mut sweep = |group: usize| {
            sweep_group_first(&prepared, &bay.policy, group, &parked.left_out, &mut space)
        };
        let common = sweep(0);
        let doors: Vec<(DoorState, Swept)> = counted
            .iter()
            .map(|&state| (state, sweep(group_of(state))))
            .collect();
        let travel_m = bay.lift.travel.m();
        // A state that nobody counts is never asked for; were it, nothing would be shown clear.
        let high = |asked: DoorState| {
            let door = doors.iter().find(|(state, _)| *state == asked);
            door.map_or((None, 0.0), |(_, door)| {
                let swept = [&common, door];
                how_high(&Together { swept: &swept }, &prepared, travel_m)
            })
        };
        let headline_door = governing_door(bay, high);
        let (highest_clear_lock, _) = high(headline_door);
        let shown_until = doors
            .iter()
            .flat_map(|(_, door)| {
                let swept = [&common, door];
                let together = Together { swept: &swept };
                [together.first(), together.undecided()]
            })
            .flatten()
            .map(|(_, breach)| breach.travel_m)
            .min_by(f64::total_cmp);
        let marks = highest_clear_lock.and_then(|lock| marks(bay, lock, shown_until));

        let arms = arm_findings(bay, &uncertainty)?;
        let touching = carried(bay, &uncertainty, space.solver())?;
        let driving_in = driving_in(
            bay,
            &prepared.movers,
            &prepared.groups,
            &uncertainty,
            space.solver(),
        );
        let mut withheld = reasons(
            bay,
            &Evidence {
                arms: &arms,
                too_high: &prepared.movers.too_high,
                rating: rating(bay),
                room: Room {
                    standing: &self.standing,
                    stand_up: self.stand_up,
                    driving_in: &driving_in,
                    tight_as_parked: &parked.findings,
                },
                // Judged level and as written: the same in every uncertainty.
                loose_pad: prepared.movers.loose,
                carried: &touching,
                no_mark_fits: highest_clear_lock.is_some() && marks.is_none(),
            },
        );
        let mut sections = ground::withholding(
            bay,
            &Clearances {
                arms: &arms,
                carried: &touching,
                withheld: &withheld,
                highest_clear_lock,
                uncertainty,
                stand_up: self.stand_up,
                verdict_only: true,
            },
            on,
        );
        ground::withhold(&mut sections, &mut withheld);

        let groups = group_list(&prepared);
        let table = PairTable {
            bay,
            prepared: &prepared,
            nominal: &Nominal::Never,
            groups: &groups,
            left_out: &parked.left_out,
        };
        let swept: Vec<&Swept> = std::iter::once(&common)
            .chain(
                doors
                    .iter()
                    .filter(|(state, _)| *state == headline_door)
                    .map(|(_, door)| door),
            )
            .collect();
        let together = Together { swept: &swept };
        let real_group = |(group, breach): (usize, super::sweep::Breach)| {
            let door = group_of(headline_door);
            (if group == 0 { 0 } else { door }, breach)
        };
        let releasable = highest_releasable(bay);
        let limit = limit(
            bay,
            &table,
            &mut space,
            together.first().map(real_group),
            together.undecided().map(real_group),
            highest_clear_lock,
            releasable,
            !withheld.is_empty(),
        );
        let highest_safe_lock = if withheld.is_empty() {
            highest_clear_lock
        } else {
            None
        };
        // While something is not measured nothing is clear (see `unmeasured`).
        let highest_clear_lock = highest_clear_lock.filter(|_| listed(&withheld).is_empty());
        let travels: Vec<f64> = bay.lift.locks.iter().map(|travel| travel.m()).collect();
        let locks: Vec<LockHeight> = table
            .lows(&travels)
            .into_iter()
            .zip(&travels)
            .enumerate()
            .map(|(index, (lows, &travel_m))| LockHeight {
                lock: index + 1,
                travel_m,
                underbody_m: lows.body_m + travel_m,
            })
            .collect();
        let states = together.states(&prepared.locks, prepared.movers.phases.carry_m, travel_m);
        Ok(Verdict {
            locks,
            highest_clear_lock,
            highest_safe_lock,
            full_rise: highest_safe_lock.is_some() && highest_safe_lock == releasable,
            highest_releasable_lock: releasable,
            never_lifts: states
                .iter()
                .all(|(state, _)| *state == LockState::NotLifting),
            limit,
            withheld,
            arms,
            ways: ways(bay, &prepared),
            sections,
        })
    }
}

const fn measured_m(uncertainty: &Uncertainty) -> [f64; 2] {
    [uncertainty.garage_m, uncertainty.lift_m]
}

//! What is the state at this travel and this door position, and what is tightest here?
//!
//! For one position at a time, as fast as a person drags the carriage. The travels at which a
//! margin is short are known beforehand from the study's own searches (`ways`), so the state is
//! looked up; only the distances of the tightest pairs are measured.

mod drawn;
mod here;
mod tightest;
mod ways;

use glam::DVec3;

pub use here::{Here, HerePair, HereState, MOST_PAIRS, PairState, Stretch};

use self::drawn::{Drawn, DrawnDoor};
use self::ways::{Interval, Way, Ways};
use super::boxes::box_gap;
use super::findings::{DoorFinding, DoorState, Study};
use super::gap::Solver;
use super::prepare::{FixedSet, Prepared};
use super::study::{StudyError, Whole, group_list, group_of, state_of, whole};
use super::sweep::NEAR_M;
use crate::bay::Bay;
use crate::ground::Date;
use crate::solids::DoorTravel;

/// What one bay's solids say at any shown position: made once per bay, asked often.
pub struct Probe {
    bay: Bay,
    prepared: Prepared,
    /// The fixed solids with nothing added.
    nominal: [FixedSet; 4],
    /// By group, as the study counts them.
    ways: [Ways; 4],
    /// By door state: the first breach and the first undecided travel of the study.
    known: [Known; 3],
    drawn: Drawn,
    door: Option<DrawnDoor>,
    solver: Solver,
    short_list: Vec<Listed>,
    in_order: Vec<(f64, usize)>,
}

impl std::fmt::Debug for Probe {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Probe").finish_non_exhaustive()
    }
}

/// What the study found in one door state.
#[derive(Debug, Clone, Copy)]
struct Known {
    first_breach_m: Option<f64>,
    undecided_m: Option<f64>,
}

/// A pair near here.
#[derive(Debug, Clone, Copy)]
struct Listed {
    group: usize,
    pair: usize,
    state: PairState,
    /// Lower bound on its distance here; measured once it is chosen.
    apart_m: f64,
    /// That less its margin.
    room_m: f64,
}

impl Probe {
    /// The study of the bay, exactly as [`super::study()`] gives it, and the probe that goes with
    /// it.
    ///
    /// # Errors
    /// When the vehicle can't be set on the pads at all (see [`StudyError`]).
    pub fn with_study(bay: &Bay) -> Result<(Study, Self), StudyError> {
        Self::with_study_on(bay, None)
    }

    /// The same on a day, see [`super::study_on`].
    ///
    /// # Errors
    /// As [`Self::with_study`].
    pub fn with_study_on(bay: &Bay, on: Option<Date>) -> Result<(Study, Self), StudyError> {
        let Whole {
            study,
            prepared,
            nominal,
            left_out,
            ..
        } = whole(bay, on)?;
        let mut solver = Solver::new();
        let drawn = Drawn::new(bay, &prepared.movers)?;
        let shut = &prepared.groups.shut.solids;
        let ways = [0, 1, 2, 3].map(|group| {
            let set = group_list(&prepared)[group];
            // What stands as it stands with the door shut does not move.
            let moves = |solid: usize| {
                state_of(group) == Some(DoorState::Running) && !shut.contains(&set.solids[solid])
            };
            Ways::new(
                &prepared.movers.moving,
                group,
                set,
                &moves,
                &bay.policy,
                &left_out,
                &mut solver,
            )
        });
        let known = |door: &DoorFinding| Known {
            first_breach_m: door.first_breach_m,
            undecided_m: door.undecided_m,
        };
        let known = [
            known(&study.doors.shut),
            known(&study.doors.open),
            known(&study.doors.running),
        ];
        let groups = std::sync::Arc::unwrap_or_clone(nominal.groups);
        let probe = Self {
            bay: bay.clone(),
            prepared,
            nominal: [groups.common, groups.shut, groups.open, groups.running],
            ways,
            known,
            drawn,
            door: None,
            solver,
            short_list: Vec::new(),
            in_order: Vec::new(),
        };
        Ok((study, probe))
    }

    /// The first travel at which anything touches in a door state, metres, without what is tight
    /// as parked; none when nothing does.
    #[must_use]
    pub fn first_touch_m(&self, door: DoorState) -> Option<f64> {
        [0, group_of(door)]
            .into_iter()
            .flat_map(|group| &self.ways[group].pairs)
            .filter(|pair| !pair.as_parked)
            .filter_map(|pair| pair.first_touch_m)
            .min_by(f64::total_cmp)
    }

    /// Every stretch of the way up on which a pair touches or is short of its margin in a door
    /// state, at worst, with what is tight as parked. Outside them nothing is short.
    #[must_use]
    pub fn stretches(&self, door: DoorState) -> Vec<Stretch> {
        [0, group_of(door)]
            .into_iter()
            .flat_map(|group| &self.ways[group].ways)
            .flat_map(|way| {
                [
                    (way.short, PairState::Tight),
                    (way.touch, PairState::Strikes),
                ]
            })
            .filter_map(|(interval, state)| {
                let [from_m, to_m] = interval?;
                Some(Stretch {
                    from_m,
                    to_m,
                    state,
                })
            })
            .collect()
    }

    /// What is the case at this travel of the carriage (metres, held to the lift's travel) and
    /// this position of the door.
    ///
    /// A travel or a door position that is not a number is not shown, and lists no pairs.
    pub fn at(&mut self, door: DoorTravel, travel_m: f64) -> Here {
        let fraction = door.fraction();
        let door = match door {
            DoorTravel::At(_) if fraction <= 0.0 => DoorState::Shut,
            DoorTravel::At(_) if fraction >= 1.0 => DoorState::Open,
            DoorTravel::At(_) => DoorState::Running,
            DoorTravel::Shut => DoorState::Shut,
            DoorTravel::Open => DoorState::Open,
        };
        if travel_m.is_nan() || fraction.is_nan() {
            return Here {
                travel_m,
                door,
                state: HereState::NotShown,
                pairs: Vec::new(),
            };
        }
        let travel_m = travel_m.min(self.bay.lift.travel.m()).max(0.0);
        let worst = self.list_near(door, travel_m);
        if door == DoorState::Running && !self.door.as_ref().is_some_and(|d| d.is_at(fraction)) {
            let standing = &self.prepared.groups.running.solids;
            self.door = Some(DrawnDoor::at(&self.bay, fraction, standing));
        }
        let mut pairs = self.tightest(travel_m);
        if !self.bay.not_measured.is_empty() {
            let clear = |pair: &&mut HerePair| pair.state == PairState::Clear;
            for pair in pairs.iter_mut().filter(clear) {
                pair.state = PairState::NotShown;
            }
        }
        Here {
            travel_m,
            door,
            state: self.state(door, travel_m, worst),
            pairs,
        }
    }

    /// Lists the pairs whose boxes are near each other here, and says the worst state of any.
    fn list_near(&mut self, door: DoorState, travel_m: f64) -> PairState {
        self.short_list.clear();
        let mut worst = PairState::Clear;
        for group in [0, group_of(door)] {
            let set = group_list(&self.prepared)[group];
            for (index, pair) in self.ways[group].pairs.iter().enumerate() {
                let mut state = PairState::Clear;
                let mut apart_m = f64::INFINITY;
                for way in &self.ways[group].ways[pair.ways.clone()] {
                    if let Some(gap) = self.box_gap(set, way, travel_m) {
                        state = state.min(state_at(way, travel_m));
                        apart_m = apart_m.min(gap);
                    }
                }
                worst = worst.min(state);
                if state == PairState::Strikes {
                    apart_m = 0.0;
                }
                let room_m = apart_m - pair.margin_m;
                if room_m <= NEAR_M || state != PairState::Clear {
                    self.short_list.push(Listed {
                        group,
                        pair: index,
                        state,
                        apart_m,
                        room_m,
                    });
                }
            }
        }
        worst
    }

    /// What the boxes about a pair leave between them here; none where the mover is in another
    /// phase.
    fn box_gap(&self, set: &FixedSet, way: &Way, travel_m: f64) -> Option<f64> {
        let mover = &self.prepared.movers.moving[way.moving];
        let here = mover.from <= travel_m && travel_m <= mover.to;
        here.then(|| {
            let thing = &set.bodies[way.fixed];
            box_gap(mover, thing, way.plan_m, travel_m, travel_m, DVec3::Z)
        })
    }

    fn state(&self, door: DoorState, travel_m: f64, worst: PairState) -> HereState {
        let known = self.known[group_of(door) - 1];
        let reached = |travel: Option<f64>| travel.is_some_and(|travel| travel <= travel_m);
        let phases = &self.prepared.movers.phases;
        match worst {
            PairState::Strikes => HereState::Strikes,
            _ if reached(known.undecided_m) => HereState::NotShown,
            PairState::Tight => HereState::Tight,
            _ if reached(known.first_breach_m) => HereState::Barred,
            _ if travel_m < phases.first_touch_m => HereState::Parked,
            _ if travel_m < phases.carry_m => HereState::Meeting,
            PairState::Clear if self.bay.not_measured.is_empty() => HereState::Clear,
            // Of a file that is not measured through nothing is shown clear (see `unmeasured`).
            PairState::Clear | PairState::NotShown => HereState::NotShown,
        }
    }
}

fn state_at(way: &Way, travel_m: f64) -> PairState {
    let within = |interval: Option<Interval>| {
        interval.is_some_and(|[from, to]| from <= travel_m && travel_m <= to)
    };
    if within(way.touch) {
        PairState::Strikes
    } else if within(way.short) {
        PairState::Tight
    } else {
        PairState::Clear
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::Role;
    use crate::solids::test_bay::test_bay;

    fn is_send<T: Send + 'static>(_: &T) {}

    #[test]
    fn what_is_met_overhead_comes_as_much_nearer_as_the_vehicle_is_raised() {
        let (_, mut probe) = Probe::with_study(&test_bay()).unwrap();
        is_send(&probe);
        let breach_m = probe.known[0].first_breach_m.unwrap();
        let mut first_short = |travel_m: f64| {
            let pairs = probe.at(DoorTravel::Shut, travel_m).pairs;
            let is_first = |pair: &HerePair| pair.first_breach_m == Some(breach_m);
            pairs.into_iter().find(is_first).unwrap()
        };
        let at_breach = first_short(breach_m);
        assert!((at_breach.worst_m - at_breach.margin_m).abs() < 1e-6);
        assert_eq!(at_breach.state, PairState::Tight);
        let low = breach_m - 0.05;
        let (below, above) = (first_short(low), first_short(low + 0.01));
        assert!((below.nominal_m - above.nominal_m - 0.01).abs() < 1e-6);
        assert!((below.worst_m - above.worst_m - 0.01).abs() < 1e-6);
        assert!(below.worst_m < below.nominal_m && below.state == PairState::Clear);
    }

    #[test]
    fn the_running_door_is_one_line_for_each_moving_solid() {
        let (_, mut probe) = Probe::with_study(&test_bay()).unwrap();
        for step in 0..20 {
            let here = probe.at(DoorTravel::At(0.4), 0.1 * f64::from(step));
            let moving_parts = |pair: &&HerePair| pair.fixed.starts_with("door/panel");
            let mut names: Vec<&str> = (here.pairs.iter())
                .filter(moving_parts)
                .map(|pair| pair.moving.as_str())
                .collect();
            let all = names.len();
            names.sort_unstable();
            names.dedup();
            assert_eq!(names.len(), all);
        }
    }

    #[test]
    fn every_moving_solid_is_somewhere_at_every_travel() {
        let bay = test_bay();
        let (_, probe) = Probe::with_study(&bay).unwrap();
        let movers = &probe.prepared.movers;
        for step in 0..=200 {
            let travel_m = bay.lift.travel.m() * f64::from(step) / 200.0;
            for solid in 0..movers.solids.len() {
                let there = |mover: &&super::super::movers::Moving| {
                    mover.solid == solid && mover.from <= travel_m && travel_m <= mover.to
                };
                assert!(
                    movers.moving.iter().any(|mover| there(&mover)),
                    "{solid} at {travel_m}"
                );
            }
        }
        assert!(movers.moving.iter().any(|mover| mover.role == Role::Mirror));
    }
}

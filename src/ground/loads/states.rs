//! Which weights come to rest on the pads: before parts are taken out, after, and in between?

use super::geometry::Geometry;
use super::pads::{Pads, pads};
use super::place::Place;
use crate::bay::{Bay, Vehicle};
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::attitude::{StanceError, centre_of_gravity_with};

/// One weight on the pads.
#[derive(Debug, Clone)]
pub struct State {
    /// Mass of the vehicle, kilograms.
    pub mass_kg: f64,
    /// Pads and weight in plan, and how far each may be off.
    pub geometry: Geometry,
    /// How far the weight acts inside the pads' span at worst, metres; negative outside.
    pub inside_m: f64,
    /// How far into the bay from the post line it acts, least and most over the parking box.
    pub along_m: (f64, f64),
    /// How far to the right of the middle between the posts it acts, least and most.
    pub across_m: (f64, f64),
    /// The loads; none when the weight acts outside the pads' span.
    pub pads: Option<Pads>,
}

/// Every state that is looked at.
#[derive(Debug, Clone)]
pub struct States {
    /// As the file says: with cargo and without the parts taken out.
    pub as_given: State,
    /// With the parts that are taken out still in; none when there are none.
    pub before: Option<State>,
    /// With some of them out and some in.
    pub between: Vec<State>,
    /// True when every set of parts that may be out is in [`States::between`]: the set whose parts
    /// are the bits of `n` then comes `n - 1`th.
    pub all_between: bool,
}

/// Every state of a bay.
///
/// # Errors
/// Without axle loads, or when the vehicle can't be set on the pads.
pub fn states(bay: &Bay) -> Result<States, StanceError> {
    states_within(bay, &Uncertainty::worst(bay))
}

/// The same with everything off as `uncertainty` has it.
///
/// # Errors
/// See [`states`].
pub(super) fn states_within(bay: &Bay, uncertainty: &Uncertainty) -> Result<States, StanceError> {
    let place = Place::new(bay, uncertainty)?;
    let vehicle = &bay.vehicle;
    let state = |counts: &dyn Fn(usize) -> bool| state(bay, &place, counts);
    let as_given = state(&|_| true)?;
    let removed: Vec<usize> = (0..vehicle.masses.len())
        .filter(|&i| vehicle.masses[i].mass.kg() < 0.0)
        .collect();
    if removed.is_empty() {
        return Ok(States {
            as_given,
            before: None,
            between: Vec::new(),
            all_between: true,
        });
    }
    let before = state(&|index| !removed.contains(&index))?;
    let sets = if removed.len() <= ALL_SETS {
        subsets(&removed)
    } else {
        orders(vehicle, &removed)
    };
    let between = sets
        .iter()
        .map(|out| state(&|index| !removed.contains(&index) || out.contains(&index)))
        .collect::<Result<_, _>>()?;
    Ok(States {
        as_given,
        before: Some(before),
        between,
        all_between: removed.len() <= ALL_SETS,
    })
}

/// So many parts at most are looked at in every order: the sets double with each more.
const ALL_SETS: usize = 5;

/// Every set of parts but none and all, by the bits of a number that counts up.
fn subsets(removed: &[usize]) -> Vec<Vec<usize>> {
    let count = removed.len();
    (1..(1_usize << count) - 1)
        .map(|set| {
            let is_out = |k: &usize| set >> k & 1 == 1;
            (0..count).filter(is_out).map(|k| removed[k]).collect()
        })
        .collect()
}

/// Of many parts the sets with one out and with one in, and those that move the centre of gravity
/// farthest to each side: it lies farthest back when all parts ahead of some station are out and
/// none behind it.
fn orders(vehicle: &Vehicle, removed: &[usize]) -> Vec<Vec<usize>> {
    let mut sets: Vec<Vec<usize>> = Vec::new();
    let along = |i: usize| vehicle.masses[i].station.m();
    let across = |i: usize| vehicle.masses[i].across.m();
    let mut by_station = removed.to_vec();
    by_station.sort_by(|&a, &b| along(a).total_cmp(&along(b)));
    let mut by_side = removed.to_vec();
    by_side.sort_by(|&a, &b| across(a).total_cmp(&across(b)));
    for one in removed {
        sets.push(vec![*one]);
        sets.push(removed.iter().copied().filter(|k| k != one).collect());
    }
    for row in [by_station, by_side] {
        for count in 1..row.len() {
            for part in [&row[..count], &row[count..]] {
                let mut set = part.to_vec();
                set.sort_unstable();
                if !sets.contains(&set) {
                    sets.push(set);
                }
            }
        }
    }
    sets
}

fn state(bay: &Bay, place: &Place, counts: &dyn Fn(usize) -> bool) -> Result<State, StanceError> {
    let balance = centre_of_gravity_with(&bay.vehicle, counts)?;
    let geometry = place.with(bay, balance, counts);
    let [across, along] = geometry.weight_range().ok_or(StanceError::NotANumber)?;
    let (post_line, middle) = (bay.lift.post_line.m(), bay.lift.across.m());
    Ok(State {
        mass_kg: balance.mass_kg,
        inside_m: geometry.inside_m(),
        along_m: (along.0 - post_line, along.1 - post_line),
        across_m: (across.0 - middle, across.1 - middle),
        pads: pads(&geometry),
        geometry,
    })
}

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
    /// With some or all of the cargo taken off that may be unloaded while the vehicle is up, and
    /// with any of the parts out; empty when there is no such cargo.
    pub unloaded: Vec<State>,
    /// True when every set of cargo and parts is in [`States::unloaded`].
    pub all_unloaded: bool,
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
    let may_change = |index: &usize| !vehicle.masses[*index].stays;
    let (removed, cargo): (Vec<usize>, Vec<usize>) = (0..vehicle.masses.len())
        .filter(may_change)
        .partition(|&index| vehicle.masses[index].mass.kg() < 0.0);
    // What has changed: of the parts those that are out, of the cargo what is taken off.
    let state = |changed: &[usize]| {
        state(bay, &place, &|index| {
            changed.contains(&index) != cargo.contains(&index)
                || !(removed.contains(&index) || cargo.contains(&index))
        })
    };
    let all_of = |sets: Vec<Vec<usize>>| -> Result<Vec<State>, StanceError> {
        sets.iter().map(|set| state(set)).collect()
    };
    let mut both = [removed.clone(), cargo.clone()].concat();
    both.sort_unstable();
    let taken_off = if cargo.is_empty() {
        Vec::new()
    } else {
        let mut sets = sets(vehicle, &both);
        sets.push(both.clone());
        if !sets.contains(&cargo) {
            sets.push(cargo.clone());
        }
        sets.retain(|set| set.iter().any(|index| cargo.contains(index)));
        sets
    };
    let has_parts = !removed.is_empty();
    Ok(States {
        as_given: state(&removed)?,
        before: if has_parts { Some(state(&[])?) } else { None },
        between: if has_parts {
            all_of(sets(vehicle, &removed))?
        } else {
            Vec::new()
        },
        all_between: removed.len() <= ALL_SETS,
        unloaded: all_of(taken_off)?,
        all_unloaded: cargo.is_empty() || both.len() <= ALL_SETS,
    })
}

/// Sets of some of these masses: every one but none and all while they are few, else those that
/// move the centre of gravity farthest.
fn sets(vehicle: &Vehicle, masses: &[usize]) -> Vec<Vec<usize>> {
    if masses.len() <= ALL_SETS {
        subsets(masses)
    } else {
        orders(vehicle, masses)
    }
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

//! The lock table, the shut-off bar, and the highest lock the carriage can release.

use glam::DVec3;

use super::body::Body;
use super::climb::{Climb, First, first_below};
use super::findings::{BarFinding, LockFinding, LockState, NearFinding};
use super::locks::Together;
use super::movers::MoverError;
use super::pair_table::{PairTable, Touch};
use super::prepare::overtravel_m;
use super::sweep::{Breach, Swept, Workspace};
use crate::bay::{Bay, Tie};
use crate::solids::{ParkingError, Role, attitude, vehicle};

/// The highest lock that the carriage can climb past far enough to release.
pub(super) fn highest_releasable(bay: &Bay) -> Option<usize> {
    let over = overtravel_m(bay);
    bay.lift
        .locks
        .iter()
        .enumerate()
        .rfind(|(_, lock)| lock.m() + over <= bay.lift.travel.m() + 1e-9)
        .map(|(index, _)| index + 1)
}

/// The shut-off bar: when it trips at the earliest, and what may be met before it trips.
///
/// The bar protects only from what is met later than its latest trip.
///
/// # Errors
/// When the vehicle can't be set on the pads.
pub(super) fn bar_finding(
    bay: &Bay,
    table: &PairTable<'_>,
    groups: &[usize],
    space: &mut Workspace,
) -> Result<Option<BarFinding>, MoverError> {
    if !matches!(bay.lift.tie, Tie::OverheadBeam { bar: Some(_), .. }) {
        return Ok(None);
    }
    let (bar, others): (Vec<_>, Vec<_>) = table
        .first_touches(groups, space)
        .into_iter()
        .partition(|touch| touch.fixed_role == Role::ShutOffBar);
    let trip = earliest(bar);
    let latest = match &trip {
        Some(trip) => latest_trip_m(bay, table, trip.travel_m, space)?,
        None => f64::INFINITY,
    };
    let before = earliest(others).filter(|touch| touch.travel_m <= latest);
    let trips_m = trip.as_ref().map_or(f64::INFINITY, |trip| trip.travel_m);
    Ok(Some(BarFinding {
        trips_at_m: trip.as_ref().map(|trip| trip.travel_m),
        by: trip.map(|trip| trip.moving),
        is_surely_before: before
            .as_ref()
            .is_some_and(|touch| touch.travel_m <= trips_m),
        met_before: before.map(|touch| (touch.moving, touch.fixed)),
    }))
}

/// The travel by which the bar has tripped wherever in the parking box the vehicle stands;
/// infinite when it may be missed.
///
/// Of one convex part and a convex bar, the travel of the first touch is a convex function of
/// where the part stands, so over the box it is the greatest at a corner. What the measured ± can
/// delay is as much as they can hasten: the nominal trip less the earliest.
fn latest_trip_m(
    bay: &Bay,
    table: &PairTable<'_>,
    earliest_m: f64,
    space: &mut Workspace,
) -> Result<f64, MoverError> {
    let Some(nominal) = table.nominal.get() else {
        return Ok(f64::INFINITY);
    };
    let bars: Vec<&Body> = nominal
        .groups
        .common
        .bodies
        .iter()
        .filter(|fixed| fixed.role == Role::ShutOffBar)
        .map(|fixed| &fixed.body)
        .collect();
    let parts = vehicle::parts(bay);
    let nominal = bar_trips(bay, &parts, &bars, ParkingError::default(), space)?
        .into_iter()
        .fold(f64::INFINITY, f64::min);
    let mut latest = vec![f64::NEG_INFINITY; parts.len()];
    for error in table.prepared.uncertainty.parking_corners() {
        let trips = bar_trips(bay, &parts, &bars, error, space)?;
        for (latest, trip) in latest.iter_mut().zip(trips) {
            *latest = latest.max(trip);
        }
    }
    let latest = latest.into_iter().fold(f64::INFINITY, f64::min);
    Ok(latest + (nominal - earliest_m).max(0.0))
}

/// For each part of the vehicle, the travel at which it trips the bar if everything but the
/// parking place is as written, in the attitude in which it does so last; infinite when it does
/// not.
fn bar_trips(
    bay: &Bay,
    parts: &[vehicle::VehiclePart],
    bars: &[&Body],
    error: ParkingError,
    space: &mut Workspace,
) -> Result<Vec<f64>, MoverError> {
    let climb = Climb {
        up: DVec3::Z,
        from: attitude::contact(bay, error)?.carry_m.max(0.0),
        to: bay.lift.travel.m(),
    };
    let attitudes = attitude::attitudes(bay, error, [0.0; 4])?;
    Ok(parts
        .iter()
        .map(|part| {
            let trip = |attitude: &attitude::Attitude| {
                let pose = attitude
                    .bay_from_vehicle_at_zero
                    .after(part.solid.bay_from_solid);
                let body = Body::of(&part.solid.shape, &[pose], DVec3::ZERO);
                let over = |bar: &&&Body| {
                    body.low().x <= bar.high().x
                        && body.high().x >= bar.low().x
                        && body.low().y <= bar.high().y
                        && body.high().y >= bar.low().y
                };
                bars.iter()
                    .filter(over)
                    .filter_map(
                        |bar| match first_below(space.solver(), &body, bar, 0.0, climb) {
                            First::At(travel) => Some(travel),
                            First::Never | First::Undecided(_) => None,
                        },
                    )
                    .fold(f64::INFINITY, f64::min)
            };
            attitudes.iter().map(trip).fold(f64::NEG_INFINITY, f64::max)
        })
        .collect())
}

fn earliest(touches: Vec<Touch>) -> Option<Touch> {
    touches
        .into_iter()
        .min_by(|a, b| a.travel_m.total_cmp(&b.travel_m))
}

/// Every lock with its state, the pair it is owed to, and what is near there.
pub(super) fn lock_findings(
    bay: &Bay,
    table: &PairTable<'_>,
    states: &[(LockState, Option<(usize, Breach)>)],
    together: &Together<'_>,
    running: &Swept,
    door_group: usize,
    space: &mut Workspace,
) -> Vec<LockFinding> {
    let pad_low = bay.lift.pad.lowest.m()
        + bay
            .parking
            .pad_raise
            .iter()
            .map(|raise| raise.m())
            .fold(f64::INFINITY, f64::min);
    let travels: Vec<f64> = bay.lift.locks.iter().map(|lock| lock.m()).collect();
    states
        .iter()
        .zip(table.lows(&travels))
        .enumerate()
        .map(|(index, ((state, owed), lows))| {
            let travel_m = bay.lift.locks[index].m();
            let real = |group: usize| if group == 0 { 0 } else { door_group };
            let near = together
                .swept
                .iter()
                .enumerate()
                .filter_map(|(group, swept)| {
                    swept.near.get(index).copied().flatten().map(|n| (group, n))
                })
                .min_by(|a, b| {
                    (a.1.distance_m - a.1.margin_m).total_cmp(&(b.1.distance_m - b.1.margin_m))
                })
                .map(|(group, near)| {
                    let (moving, fixed) = table.names(real(group), near.moving, near.fixed);
                    NearFinding {
                        moving,
                        fixed,
                        clearance_m: near.distance_m,
                        margin_m: near.margin_m,
                        overlap_m: (near.distance_m <= 0.0)
                            .then(|| {
                                let top = travel_m + overtravel_m(bay);
                                table.climb_past_touch(real(group), &near, top, space)
                            })
                            .flatten(),
                    }
                });
            LockFinding {
                lock: index + 1,
                travel_m,
                pad_height_m: pad_low + travel_m,
                state: *state,
                because: owed
                    .map(|(group, breach)| table.names(real(group), breach.moving, breach.fixed)),
                near,
                underbody_m: lows.body_m + travel_m,
                tyre_m: lows.tyre_m + travel_m,
                top_m: lows.top_m + travel_m,
                door_may_run: *state != LockState::NotLifting
                    && running
                        .near
                        .get(index)
                        .copied()
                        .flatten()
                        .is_none_or(|near| near.distance_m > near.margin_m),
            }
        })
        .collect()
}

/// A door may be run on a lock only where it may on every lock below that lifts, and on the way up to it:
/// nobody keeps in mind that it may be run again higher up.
pub(super) fn only_below_what_bars_the_door(locks: &mut [LockFinding], highest: Option<usize>) {
    let mut may = true;
    for lock in locks {
        if lock.state != LockState::NotLifting {
            may &= lock.door_may_run && highest.is_some_and(|highest| lock.lock <= highest);
        }
        lock.door_may_run &= may;
    }
}

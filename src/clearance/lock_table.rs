//! The lock table, the shut-off bar, and the highest lock the carriage can release.

use super::findings::{BarFinding, LockFinding, LockState, NearFinding};
use super::locks::Together;
use super::pair_table::{PairTable, Touch};
use super::prepare::overtravel_m;
use super::sweep::{Breach, Swept, Workspace};
use crate::bay::{Bay, Tie};
use crate::solids::Role;

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
/// The bar protects from what is met later than its latest trip; the earliest and the latest trip
/// stand evenly about the nominal one.
pub(super) fn bar_finding(
    bay: &Bay,
    table: &PairTable<'_>,
    groups: &[usize],
    space: &mut Workspace,
) -> Option<BarFinding> {
    if !matches!(bay.lift.tie, Tie::OverheadBeam { bar: Some(_), .. }) {
        return None;
    }
    let (bar, others): (Vec<_>, Vec<_>) = table
        .first_touches(groups, space)
        .into_iter()
        .partition(|touch| touch.fixed_role == Role::ShutOffBar);
    let trip = earliest(bar);
    let latest = trip.as_ref().map_or(f64::INFINITY, |trip| {
        table
            .nominal_bar_trip_m(space)
            .map_or(f64::INFINITY, |nominal| 2.0 * nominal - trip.travel_m)
    });
    let before = earliest(others).filter(|touch| touch.travel_m <= latest);
    Some(BarFinding {
        trips_at_m: trip.as_ref().map(|trip| trip.travel_m),
        by: trip.map(|trip| trip.moving),
        met_before: before.map(|touch| (touch.moving, touch.fixed)),
    })
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
    let lows = table.lows();
    states
        .iter()
        .enumerate()
        .map(|(index, (state, owed))| {
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

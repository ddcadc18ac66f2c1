//! The lock table, the shut-off bar, and the highest lock the carriage can release.

use super::findings::{BarFinding, LockFinding, LockState, NearFinding};
use super::locks::Together;
use super::pair_table::PairTable;
use super::prepare::overtravel_m;
use super::sweep::{Breach, Swept, Workspace};
use crate::bay::Bay;
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

/// The shut-off bar: when it trips, and what is met before.
pub(super) fn bar_finding(
    bay: &Bay,
    table: &PairTable<'_>,
    door_group: usize,
    space: &mut Workspace,
) -> Option<BarFinding> {
    let has_bar = matches!(
        bay.lift.tie,
        crate::bay::Tie::OverheadBeam { bar: Some(_), .. }
    );
    if !has_bar {
        return None;
    }
    let mut trips: Option<(f64, String)> = None;
    let mut before: Option<(f64, String, String)> = None;
    for touch in table.first_touches(&[0, door_group], space) {
        let slot_is_bar = touch.fixed_role == Role::ShutOffBar;
        if slot_is_bar {
            if trips.as_ref().is_none_or(|(at, _)| touch.travel_m < *at) {
                trips = Some((touch.travel_m, touch.moving));
            }
        } else if before
            .as_ref()
            .is_none_or(|(at, _, _)| touch.travel_m < *at)
        {
            before = Some((touch.travel_m, touch.moving, touch.fixed));
        }
    }
    let trips_at = trips.as_ref().map_or(f64::INFINITY, |(at, _)| *at);
    Some(BarFinding {
        met_before: before
            .filter(|(at, _, _)| *at <= trips_at)
            .map(|(_, moving, fixed)| (moving, fixed)),
        trips_at_m: trips.as_ref().map(|(at, _)| *at),
        by: trips.map(|(_, name)| name),
    })
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

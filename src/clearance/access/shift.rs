//! Where the driver can't get out: would parking farther in or out do it, within what the arms
//! reach, what the balance bears and what the room allows?

use super::leaving::Leaving;
use super::{Before, DoorRoom, ShiftFound, waist};
use crate::bay::{Aim, Bay, Side, UnitSystem};
use crate::clearance::heights;
use crate::clearance::reach::arm_findings;
use crate::clearance::sweep::Workspace;
use crate::ground::loads::balance_holds;
use crate::units::Length;

/// Gap between body and door that a person needs to get out. Common practice, no source.
pub const LEAVE_M: f64 = 0.35;
/// Farthest shift looked at, either way.
const FARTHEST_M: f64 = 0.6;

/// The doors that the driver may be behind: his own where his side is known, else both.
pub(super) fn asked(bay: &Bay, doors: &[DoorRoom]) -> Vec<usize> {
    let is_asked = |side: Side| bay.vehicle.driver.is_none_or(|driver| driver == side);
    doors
        .iter()
        .filter(|door| is_asked(door.side))
        .map(|door| door.part)
        .collect()
}

/// The shift that lets the driver out, or the best there is; none where it is not needed or
/// nothing is better. What is told is a graduation of the tape.
pub(super) fn shift(
    before: &Before<'_>,
    leaving: &Leaving<'_>,
    doors: &[DoorRoom],
    space: &mut Workspace,
) -> Option<ShiftFound> {
    let parts = asked(before.bay, doors);
    let now = doors
        .iter()
        .filter(|door| parts.contains(&door.part))
        .map(|door| door.down.gap_m)
        .reduce(f64::min)?;
    if now >= LEAVE_M {
        return None;
    }
    // Fine steps would cost what a whole study does; a step is half the width of a hand.
    let step = match before.bay.units {
        UnitSystem::Imperial => Length::inches(2.0).m(),
        UnitSystem::Metric => 0.05,
    };
    let mut best: Option<ShiftFound> = None;
    let mut here = None;
    // Either way: whether the last place was within reach, and whether to look on.
    let mut reached = [allowed(before, 0.0); 2];
    let mut looking = [true; 2];
    let mut count = 1.0;
    while count * step <= FARTHEST_M && looking.iter().any(|way| *way) {
        for (way, sign) in [1.0, -1.0].into_iter().enumerate() {
            let along_m = sign * count * step;
            if !looking[way] {
                continue;
            }
            if !allowed(before, along_m) {
                // Once out of reach it stays so.
                looking[way] = !reached[way];
                continue;
            }
            reached[way] = true;
            let swing = leaving.least(&parts, along_m, space.solver())?;
            if swing.gap_m <= best.as_ref().map_or(now, |best| best.swing.gap_m) {
                continue;
            }
            let enough = swing.gap_m >= LEAVE_M;
            let mut found = ShiftFound {
                along_m,
                swing,
                at_waist: None,
                enough,
                highest_clear_lock: None,
                without_loss: false,
            };
            if enough {
                // A place that the room is against is no cure.
                let Some(there) = heights(&parked_at(before.bay, along_m))
                    .ok()
                    .filter(|there| {
                        let here = *here.get_or_insert_with(|| heights(before.bay).ok());
                        // Columns that can't be tipped up are a reason wherever it is parked.
                        let no_more = here.is_some_and(|here| there.reasons <= here.reasons);
                        no_more && !there.is_tight_as_parked
                    })
                else {
                    continue;
                };
                found.highest_clear_lock = there.highest_clear_lock;
                found.without_loss = there.highest_clear_lock >= before.highest_clear_lock;
                found.at_waist = waist(before)
                    .filter(|on| Some(on.lock) <= there.highest_clear_lock)
                    .and_then(|on| {
                        let swing = leaving.least_raised(&parts, along_m, on, space.solver())?;
                        Some((on.lock, swing))
                    });
            }
            best = Some(found);
        }
        if best.as_ref().is_some_and(|best| best.enough) {
            break;
        }
        count += 1.0;
    }
    best
}

/// The bay with the vehicle parked farther in.
fn parked_at(bay: &Bay, along_m: f64) -> Bay {
    let mut moved = bay.clone();
    let farther = Length::metres(along_m);
    moved.parking.aim = match bay.parking.aim {
        Aim::CentreOfGravity(offset) => Aim::CentreOfGravity(offset + farther),
        Aim::LiftPoints(offset) => Aim::LiftPoints(offset + farther),
    };
    moved
}

/// Whether every arm reaches there over the whole parking box, and the balance holds.
fn allowed(before: &Before<'_>, along_m: f64) -> bool {
    let bay = parked_at(before.bay, along_m);
    let reaches = arm_findings(&bay, &before.prepared.uncertainty)
        .is_ok_and(|arms| arms.iter().all(|arm| arm.worst_shortfall_m <= 0.0));
    reaches && balance_holds(&bay, &before.prepared.uncertainty)
}

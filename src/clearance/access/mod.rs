//! What does the room leave to the people who leave the vehicle, walk round it and shut the door?

mod found;
mod leaving;
mod shift;
mod ways;

pub use found::{Access, DoorRoom, ShiftFound, Shut, Turned, Way, WayKind};
pub use leaving::gap_m;
pub use shift::LEAVE_M;

use glam::DVec3;

use super::findings::DoorState;
use super::opening::PlaceDoubt;
use super::pair_table::PairTable;
use super::prepare::Prepared;
use super::study::{LeftOut, group_of};
use super::sweep::Workspace;
use crate::bay::{Bay, Door};
use crate::solids::Role;

/// What the study has found before people are looked at.
pub(super) struct Before<'a> {
    pub(super) bay: &'a Bay,
    pub(super) prepared: &'a Prepared,
    pub(super) nominal: &'a Prepared,
    pub(super) table: &'a PairTable<'a>,
    pub(super) left_out: &'a LeftOut,
    /// The governing door state's group.
    pub(super) door_group: usize,
    pub(super) highest_clear_lock: Option<usize>,
}

/// Everything found about doors, ways and the overhead door.
pub(super) fn access(before: &Before<'_>, space: &mut Workspace) -> Access {
    let leaving = leaving::Leaving::new(before);
    let doors = leaving.doors(space.solver());
    let shift = shift::shift(before, &leaving, &doors, space);
    Access {
        shift,
        doors,
        ways: ways::ways(before),
        shut: shut(before, space),
        turned: ways::turned_round(before),
        tallest_m: ways::tallest_m(before.bay),
    }
}

/// Whether the overhead door shuts with the vehicle on its tyres.
fn shut(before: &Before<'_>, space: &mut Workspace) -> Option<Shut> {
    if before.bay.garage.door == Door::None {
        return None;
    }
    let group = group_of(DoorState::Shut);
    let meets = before
        .table
        .short_when_down(group, space)
        .map(|(moving, fixed)| {
            (
                before.prepared.movers.solids[moving].name.clone(),
                before.prepared.groups.shut.solids[fixed].name.clone(),
            )
        });
    Some(Shut { meets })
}

/// How far any point of the standing body may be from where it is drawn: what the worst case adds
/// to it, the parking box included.
fn standing_doubt(before: &Before<'_>) -> PlaceDoubt {
    let (worst, nominal) = (
        &before.prepared.movers.standing,
        &before.nominal.movers.standing,
    );
    let mut spread = DVec3::ZERO;
    for (wide, tight) in worst.iter().zip(nominal) {
        if wide.role == Role::Body {
            spread = spread
                .max(tight.body.low() - wide.body.low())
                .max(wide.body.high() - tight.body.high());
        }
    }
    PlaceDoubt {
        spread,
        turn: before.prepared.uncertainty.parking.yaw_rad,
    }
}

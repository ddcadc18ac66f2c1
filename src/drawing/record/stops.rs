//! What keeps the lift itself from being drilled for, raised or accepted in its place?
//!
//! A lift that does not stand has no empty rise either, whatever is or is not known of the slab:
//! where something withholds every lock for the lift's own sake, nothing of this sheet is open.

use super::Order;
use crate::bay::Bay;
use crate::clearance::{Study, Withheld};
use crate::ground::Topic;
use crate::report::Sayings;
use crate::setting_out::{Drill, is_of_the_load, is_young};

/// True for a reason that holds for the empty lift in its place. Those left are of this vehicle on
/// it: another may do.
fn is_of_the_lift(reason: &Withheld) -> bool {
    match reason {
        // What is not measured may be anything of the lift or of its place.
        Withheld::DoesNotStand { .. }
        | Withheld::CannotBeStoodUp { .. }
        | Withheld::NotMeasured { .. } => true,
        Withheld::Ground { topic, .. } => match topic {
            Topic::PostBase
            | Topic::Slab
            | Topic::Anchors
            | Topic::Bearing
            | Topic::Power
            | Topic::Delivery => true,
            Topic::Reach | Topic::Loads | Topic::Access => false,
        },
        Withheld::TightAsParked { moving, .. } => moving.starts_with("lift/"),
        Withheld::ArmDoesNotReach { .. }
        | Withheld::PadStartsTooHigh { .. }
        | Withheld::OverRating { .. }
        | Withheld::CannotDriveIn { .. }
        | Withheld::LoosePad { .. }
        | Withheld::CarriedPartsTouch { .. }
        | Withheld::NoMarkFits => false,
    }
}

/// Whether something of what stops hangs on how this vehicle loads the lift.
pub(super) fn some_of_the_load(order: &Order<'_>) -> bool {
    order.study.withheld.iter().any(is_of_the_load)
}

/// True for a reason why the lift is not to be set out where it is: none of what can be waited for, or
/// supplied there, or is of one vehicle's load.
fn is_of_its_place(bay: &Bay, study: &Study, reason: &Withheld) -> bool {
    match reason {
        // That is said by itself.
        Withheld::NotMeasured { .. } => false,
        Withheld::Ground {
            topic: Topic::Power | Topic::Delivery,
            ..
        } => false,
        _ if is_young(reason) => matches!(Drill::of(bay, study), Drill::Stopped(_)),
        _ => is_of_the_lift(reason) && !is_of_the_load(reason),
    }
}

/// True for a reason that another place of the vehicle may cure: arms that don't reach, its balance.
const fn is_of_parking(reason: &Withheld) -> bool {
    matches!(
        reason,
        Withheld::ArmDoesNotReach { .. }
            | Withheld::Ground {
                topic: Topic::Reach | Topic::Loads,
                ..
            }
    )
}

/// What stops the lift in its place, each with its cure; empty where nothing does.
pub(super) fn of_the_lift(bay: &Bay, study: &Study) -> Vec<String> {
    with_cures(said(bay, study, is_of_the_lift))
}

/// Why the lift is not to be set out as it is; empty where nothing of its place stops it.
pub(in crate::drawing) fn of_its_place(bay: &Bay, study: &Study) -> Vec<String> {
    let found = said(bay, study, |one| is_of_its_place(bay, study, one));
    found.into_iter().map(|(says, _)| says).collect()
}

/// Why the vehicle is not to be parked as it is, each with its cure; empty where nothing is known
/// against it.
pub(in crate::drawing) fn of_parking(bay: &Bay, study: &Study) -> Vec<String> {
    with_cures(said(bay, study, is_of_parking))
}

fn with_cures(found: Vec<(String, String)>) -> Vec<String> {
    let both = found.into_iter();
    both.map(|(says, cure)| format!("{says} {cure}")).collect()
}

/// The reasons that are meant among those that withhold every lock, and their cures.
fn said(bay: &Bay, study: &Study, is_meant: impl Fn(&Withheld) -> bool) -> Vec<(String, String)> {
    let withheld: Vec<Withheld> = study
        .withheld
        .iter()
        .filter(|one| is_meant(one))
        .cloned()
        .collect();
    if withheld.is_empty() {
        return Vec::new();
    }
    let only = Study {
        withheld,
        ..study.clone()
    };
    Sayings::of(bay, &only).reasons()
}

/// Why the slab is not to be drilled; none where nothing keeps it from that.
pub(super) fn of_drilling(order: &Order<'_>) -> Option<String> {
    let drill = Drill::of(order.bay, order.study);
    let why = drill.why_not()?;
    let why = why.split_once(": ").map_or(why.as_str(), |(_, why)| why);
    match drill {
        // Of what stops the lift more is said than this.
        Drill::Shown | Drill::NoPattern | Drill::Stopped(_) => None,
        Drill::Forbidden(_) | Drill::NotKnown(_) | Drill::NotBefore(_) | Drill::SlabNotKnown => {
            Some(format!("NOT TO BE DRILLED: {why}"))
        }
    }
}

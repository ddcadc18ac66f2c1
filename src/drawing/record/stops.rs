//! What keeps the lift itself from being drilled for, raised or accepted in its place?
//!
//! A lift that does not stand has no empty rise either, whatever is or is not known of the slab:
//! where something withholds every lock for the lift's own sake, nothing of this sheet is open.

use super::Order;
use crate::clearance::{Study, Withheld};
use crate::ground::Topic;
use crate::report::Sayings;
use crate::setting_out::{Drill, is_of_the_load};

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

/// What stops the lift in its place, each with its cure; empty where nothing does.
pub(super) fn of_the_lift(order: &Order<'_>) -> Vec<String> {
    let withheld: Vec<Withheld> = order
        .study
        .withheld
        .iter()
        .filter(|one| is_of_the_lift(one))
        .cloned()
        .collect();
    if withheld.is_empty() {
        return Vec::new();
    }
    let only = Study {
        withheld,
        ..order.study.clone()
    };
    let reasons = Sayings::of(order.bay, &only).reasons();
    reasons
        .into_iter()
        .map(|(says, cure)| format!("{says} {cure}"))
        .collect()
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

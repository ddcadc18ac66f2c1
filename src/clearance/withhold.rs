//! Reasons why no lock is called safe, and what was not checked.

use super::findings::{
    ArmFinding, ContactFinding, PairFinding, RatingFinding, StandUp, StandingFinding, Unknown,
    Withheld,
};
use crate::bay::{Bay, Corner};
use crate::solids::attitude;

/// Everything that can be a reason.
pub(super) struct Evidence<'a> {
    pub(super) arms: &'a [ArmFinding; 4],
    pub(super) too_high: &'a [(Corner, f64)],
    pub(super) rating: RatingFinding,
    pub(super) room: Room<'a>,
    pub(super) loose_pad: Option<(Corner, f64)>,
    pub(super) carried: &'a [ContactFinding],
    pub(super) no_mark_fits: bool,
}

/// What the room has to do with.
#[derive(Clone, Copy)]
pub(super) struct Room<'a> {
    pub(super) standing: &'a [StandingFinding],
    pub(super) stand_up: StandUp,
    pub(super) driving_in: &'a [PairFinding],
    pub(super) tight_as_parked: &'a [PairFinding],
}

/// True unless the value is certainly at most the limit: what is not a number is no pass.
fn exceeds(value: f64, limit: f64) -> bool {
    value.is_nan() || value > limit
}

/// How much of a pair's margin is short.
fn short_m(pair: &PairFinding) -> f64 {
    pair.margin_m - pair.clearance_m + pair.overlap_m.unwrap_or(0.0)
}

/// Every reason to withhold.
pub(super) fn reasons(bay: &Bay, evidence: &Evidence<'_>) -> Vec<Withheld> {
    let mut withheld = Vec::new();
    // First: what is said of a garage that is not the person's own is no answer.
    if !bay.not_measured.is_empty() {
        withheld.push(Withheld::NotMeasured {
            what: bay.not_measured.clone(),
        });
    }
    for arm in evidence.arms {
        if exceeds(arm.worst_shortfall_m, 0.0) {
            withheld.push(Withheld::ArmDoesNotReach {
                corner: arm.corner,
                shortfall_m: arm.worst_shortfall_m,
            });
        }
    }
    for &(corner, excess_m) in evidence.too_high {
        withheld.push(Withheld::PadStartsTooHigh { corner, excess_m });
    }
    let rating = evidence.rating;
    if let Some(mass_kg) = rating.mass_kg
        && exceeds(mass_kg, rating.capacity_kg)
    {
        withheld.push(Withheld::OverRating {
            mass_kg,
            capacity_kg: rating.capacity_kg,
        });
    }
    withheld.extend(standing_and_driving(&evidence.room));
    if let Some((corner, gap_m)) = evidence.loose_pad
        && exceeds(gap_m, bay.policy.loose_pad.m())
    {
        withheld.push(Withheld::LoosePad { corner, gap_m });
    }
    withheld.extend(parked(&evidence.room));
    for contact in evidence.carried {
        withheld.push(Withheld::CarriedPartsTouch {
            part: contact.part.clone(),
            vehicle: contact.vehicle.clone(),
        });
    }
    if evidence.no_mark_fits {
        withheld.push(Withheld::NoMarkFits);
    }
    withheld
}

/// Every reason that the room has to do with.
pub(super) fn of_the_room(room: &Room<'_>) -> Vec<Withheld> {
    let mut withheld = standing_and_driving(room);
    withheld.extend(parked(room));
    withheld
}

fn standing_and_driving(room: &Room<'_>) -> Vec<Withheld> {
    let mut withheld = Vec::new();
    for stands in room.standing {
        if stands.worst_m.is_nan() || stands.worst_m <= 0.0 {
            withheld.push(Withheld::DoesNotStand {
                part: stands.part.clone(),
                meets: stands.other.clone(),
                shortfall_m: -stands.worst_m,
            });
        }
    }
    let stand_up = room.stand_up;
    // Where the ceiling over the posts is too low, a higher part of the room may do: that is told
    // as unknown.
    if exceeds(stand_up.needs_m, stand_up.highest_ceiling_m) {
        withheld.push(Withheld::CannotBeStoodUp {
            shortfall_m: stand_up.needs_m - stand_up.highest_ceiling_m,
        });
    }
    for pair in room.driving_in {
        withheld.push(Withheld::CannotDriveIn {
            moving: pair.moving.clone(),
            fixed: pair.fixed.clone(),
            shortfall_m: short_m(pair),
        });
    }
    withheld
}

fn parked(room: &Room<'_>) -> Vec<Withheld> {
    let mut withheld = Vec::new();
    for pair in room.tight_as_parked {
        withheld.push(Withheld::TightAsParked {
            moving: pair.moving.clone(),
            fixed: pair.fixed.clone(),
            shortfall_m: short_m(pair),
        });
    }
    withheld
}

/// The vehicle's mass against the rating.
pub(super) fn rating(bay: &Bay) -> RatingFinding {
    RatingFinding {
        mass_kg: attitude::centre_of_gravity(&bay.vehicle)
            .ok()
            .map(|balance| balance.mass_kg),
        capacity_kg: bay.lift.capacity.kg(),
    }
}

/// What was not checked for want of data, or is not checked here; the sections add their own.
pub(super) fn unknowns(bay: &Bay, stand_up: StandUp) -> Vec<Unknown> {
    let mut unknown = Vec::new();
    let walked = bay.arrangements.as_ref().and_then(|a| a.stand_up_way);
    if walked != Some(true) {
        unknown.push(Unknown::StandUpPath);
    }
    if exceeds(stand_up.needs_m, stand_up.ceiling_at_posts_m) {
        unknown.push(Unknown::StandUpElsewhere);
    }
    if bay.vehicle.axle_loads.is_none() {
        unknown.push(Unknown::VehicleMass);
    }
    unknown
}

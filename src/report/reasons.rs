//! Why is no lock called safe, in plain words, and what would cure it?

use super::Show;
use super::words::thing;
use crate::clearance::Withheld;

/// A reason in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Reason {
    /// What is wrong; starts in lower case, no full stop.
    pub(super) says: String,
    /// What would cure it; likewise.
    pub(super) cure: &'static str,
}

/// The words for a reason to withhold.
pub(super) fn reason(withheld: &Withheld, show: Show) -> Reason {
    let (says, cure) = match withheld {
        Withheld::ArmDoesNotReach {
            corner,
            shortfall_m,
        } => (
            format!(
                "the {} arm falls {} short of its lift point",
                corner.name(),
                show.need(*shortfall_m)
            ),
            "move the parking place, park more repeatably, or use an arm that reaches",
        ),
        Withheld::PadStartsTooHigh { corner, excess_m } => (
            format!(
                "the {} pad starts {} above its lift point, so the arm can't go under",
                corner.name(),
                show.need(*excess_m)
            ),
            "screw the pad down, take off its adapters, or use a lower pad",
        ),
        Withheld::OverRating {
            mass_kg,
            capacity_kg,
        } => (
            format!(
                "the vehicle weighs {} and the lift is rated for {}",
                show.load(*mass_kg),
                show.capacity(*capacity_kg)
            ),
            "take load off the vehicle, or use a lift that is rated for it",
        ),
        Withheld::DoesNotStand {
            part,
            meets,
            shortfall_m,
        } => (
            format!(
                "the lift does not stand here: {} and {} are {} short of clearing each other",
                thing(part),
                thing(meets),
                show.need(*shortfall_m)
            ),
            "move the lift, move what is in its way, or take lower columns",
        ),
        Withheld::CannotBeStoodUp { shortfall_m } => (
            format!(
                "a column can't be tipped up under this ceiling: {} short",
                show.need(*shortfall_m)
            ),
            "ask the installer how it can be stood up, or take lower columns",
        ),
        Withheld::CannotDriveIn {
            moving,
            fixed,
            shortfall_m,
        } => (
            format!(
                "driving in, {} comes too near {}: {} short of the margin",
                thing(moving),
                thing(fixed),
                show.need(*shortfall_m)
            ),
            "fold or take off what stands out, park more repeatably, or move the lift",
        ),
        Withheld::LoosePad { corner, gap_m } => (
            format!(
                "the {} pad hangs {} below its lift point while the other three carry",
                corner.name(),
                show.need(*gap_m)
            ),
            "set screws and adapters until all four pads touch together",
        ),
        Withheld::TightAsParked {
            moving,
            fixed,
            shortfall_m,
        } => (
            format!(
                "as parked, {} already stands too near {}: {} short of the margin",
                thing(moving),
                thing(fixed),
                show.need(*shortfall_m)
            ),
            "move the parking place or the lift, or move what is in the way",
        ),
        Withheld::CarriedPartsTouch { part, vehicle } => (
            format!("{} touches {} on the way up", thing(part), thing(vehicle)),
            "set the arm or the pad otherwise, or raise the pads",
        ),
        Withheld::NoMarkFits => (
            "no graduation of the tape lies between the lock's latch and the breach above it"
                .into(),
            "make room above, or use the lock below",
        ),
        Withheld::BarTrips { travel_m } => (
            format!(
                "the shut-off bar trips at {} of travel, at or below the lock",
                show.room(*travel_m)
            ),
            "use a lower lock, or take the bar's height up with the lift's maker",
        ),
    };
    Reason { says, cure }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::{Corner, UnitSystem};

    #[test]
    fn shortfalls_round_up() {
        let show = Show {
            units: UnitSystem::Metric,
        };
        let said = reason(
            &Withheld::ArmDoesNotReach {
                corner: Corner::RearLeft,
                shortfall_m: 0.0201,
            },
            show,
        );
        assert_eq!(
            said.says,
            "the rear left arm falls 21 mm short of its lift point"
        );
    }
}

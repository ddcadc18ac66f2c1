//! Does the balance hold at this place of the vehicle?

use super::State;
use super::figures::limits;
use super::states::states_within;
use crate::bay::Bay;
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::attitude::StanceError;

/// Whether nothing that hangs on where the vehicle stands is against it there, with everything off
/// as `uncertainty` has it: as the file gives it, before parts come out and with any of them out,
/// the weight lies in the lift's window and far enough inside the pads' span, all four pads carry,
/// none carries more than its arm may, and no two more than their post may.
///
/// True where the vehicle's balance is not known, and for a window that the lift does not name:
/// both are told as not known in the section on loads. To be asked before a place to park is
/// proposed.
#[must_use]
pub(crate) fn balance_holds(bay: &Bay, uncertainty: &Uncertainty) -> bool {
    match states_within(bay, uncertainty) {
        Ok(states) => {
            let others = states.before.iter().chain(&states.between);
            std::iter::once(&states.as_given)
                .chain(others)
                .all(|state| holds(bay, state))
        }
        Err(StanceError::NoAxleLoads) => true,
        Err(_) => false,
    }
}

fn holds(bay: &Bay, state: &State) -> bool {
    let in_window = bay.lift.cg_window.is_none_or(|window| {
        let (least, most) = state.along_m;
        least >= -window.rear.m() && most <= window.front.m()
    });
    let Some(pads) = &state.pads else {
        return false;
    };
    in_window
        && state.inside_m >= bay.policy.inside_pads.m()
        && pads.lifts.is_none()
        && limits(bay).carry(pads)
}

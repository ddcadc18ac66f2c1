//! When the pads meet the lift points.

use super::{StanceError, at_rest, on_pads::Stand};
use crate::bay::Bay;
use crate::solids::{ParkingError, Pose};

/// When the pads meet the lift points of the vehicle at rest, carriage travels in metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    /// Travel at which each pad comes to the height of its lift point, by
    /// [`crate::bay::Corner::index`]; negative when it starts above.
    pub touch_m: [f64; 4],
    /// The least of them: from here on the body may turn.
    pub first_touch_m: f64,
    /// The greatest of them: the geometry's measure of when all pads carry. It is exact when all
    /// meet at once; when they do not, springs that still push may leave a pad idle until the
    /// wheels hang free (see [`super::Attitude::lift_off_last_m`]).
    pub carry_m: f64,
}

/// When the pads meet the lift points, with the vehicle at rest on its tyres.
///
/// # Errors
/// When the vehicle's place is not known, see [`at_rest`].
pub fn contact(bay: &Bay, error: ParkingError) -> Result<Contact, StanceError> {
    contact_from(bay, at_rest(bay, error)?)
}

/// The same for a vehicle whose pose at rest is known.
///
/// # Errors
/// [`StanceError::NotANumber`].
pub(crate) fn contact_from(bay: &Bay, rest: Pose) -> Result<Contact, StanceError> {
    let stand = Stand::new(bay, [0.0; 4]);
    let touch_m: [f64; 4] = std::array::from_fn(|i| rest.point(stand.points[i]).z - stand.tops[i]);
    if !touch_m.iter().all(|touch| touch.is_finite()) {
        return Err(StanceError::NotANumber);
    }
    Ok(Contact {
        touch_m,
        first_touch_m: touch_m.into_iter().fold(f64::INFINITY, f64::min),
        carry_m: touch_m.into_iter().fold(f64::NEG_INFINITY, f64::max),
    })
}

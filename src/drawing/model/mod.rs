//! The bay as a model in glTF 2.0: how do its bytes read?
//!
//! Every solid is a node of its own name, painted as in the pictures; curved ones are prisms about
//! them, at most 0.05 mm larger. The node `bay` turns the bay's axes (x to the right seen from the
//! door, y into the bay, z up) to those of glTF (y up, the door toward the viewer); everything below
//! it is in the bay's own axes and in metres. At rest the vehicle stands on the floor. The raise is
//! an animation, a second to 100 mm of travel, from the floor to the highest safe lock; where no lock
//! is safe there is none.

mod buffer;
mod write;

use crate::bay::Bay;
use crate::clearance::{DoorState, Study};
use crate::ground::ForDay;
use crate::report::{CAUTIONS, Sayings, holds_only_from, why_not_safe};
use crate::solids::DoorTravel;
use crate::solids::attitude::StanceError;

/// What a model is made of.
#[derive(Debug, Clone, Copy)]
pub struct ModelOrder<'a> {
    /// The bay.
    pub bay: &'a Bay,
    /// What was found.
    pub study: &'a Study,
    /// Sixteen hex digits that stand for the texts that went in.
    pub fingerprint: &'a str,
    /// The day that it is for.
    pub day: ForDay,
}

/// Why there is no model.
#[derive(Debug)]
pub enum ModelError {
    /// It can't be said how the vehicle stands.
    Stance(StanceError),
    /// It can't be written.
    Json(serde_json::Error),
}

impl From<StanceError> for ModelError {
    fn from(error: StanceError) -> Self {
        Self::Stance(error)
    }
}

impl From<serde_json::Error> for ModelError {
    fn from(error: serde_json::Error) -> Self {
        Self::Json(error)
    }
}

impl std::fmt::Display for ModelError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Stance(error) => error.fmt(f),
            Self::Json(error) => write!(f, "the model can't be written: {error}"),
        }
    }
}

impl std::error::Error for ModelError {}

/// Travel that one second of the animation stands for, metres.
pub const METRES_A_SECOND: f64 = 0.1;
/// How far corners of a curved solid may stand outside it, metres.
const OFF_M: f64 = 5e-5;

/// The model, as one binary file (`.glb`).
///
/// # Errors
/// See [`ModelError`].
pub fn glb(order: &ModelOrder<'_>) -> Result<Vec<u8>, ModelError> {
    write::glb(order)
}

/// The travel that the raise goes up to: that of the highest safe lock; none where none is safe.
fn top_m(study: &Study) -> Option<f64> {
    let safe = study.highest_safe_lock?;
    let mut locks = study.locks.iter();
    Some(locks.find(|lock| lock.lock == safe)?.travel_m)
}

/// Where the door stands: as it governs the verdict.
const fn door(study: &Study) -> DoorTravel {
    match study.headline_door {
        DoorState::Open => DoorTravel::Open,
        DoorState::Shut | DoorState::Running => DoorTravel::Shut,
    }
}

/// What goes with the model in words.
fn said(order: &ModelOrder<'_>) -> serde_json::Value {
    let (bay, study) = (order.bay, order.study);
    let said = Sayings::of(bay, study);
    let raise = match (study.highest_safe_lock, why_not_safe(bay, study)) {
        (Some(lock), _) => format!(
            "The animation goes from the floor to lock {lock}, the highest safe lock, at 100 mm of \
             carriage travel a second, as parked and level; the climb past the lock to set it is not \
             shown. Every uncertainty is in the verdict, none in the picture."
        ),
        (None, why) => format!(
            "No lock is called safe, so that the model has no raise: {}.",
            why.unwrap_or_else(|| "see the verdict".into())
        ),
    };
    serde_json::json!({
        "program": "bayrise",
        "version": env!("CARGO_PKG_VERSION"),
        "input_fingerprint": order.fingerprint,
        "ages_counted_to": order.day.counts.then(|| order.day.on.to_string()),
        "holds": holds_only_from(order.day),
        "title": said.title(),
        "vehicle_on_lift": said.vehicle_on_lift(),
        "verdict": said.headline(),
        "reasons": said.reasons().into_iter().map(|(why, cure)| format!("{why} {cure}")).collect::<Vec<_>>(),
        "not_measured": study.not_measured(),
        "not_checked": said.not_checked_elsewhere(),
        "highest_safe_lock": study.highest_safe_lock,
        "door": study.headline_door.word(),
        "raise": raise,
        "cautions": CAUTIONS,
        "frame": "metres; below the node `bay`: x to the right seen from the door, y into the bay, z up, \
                  origin on the floor at mid-width of the door opening, in the plane of the door wall's \
                  inner face. Nodes carry the names that the solids have in the report.",
    })
}

#[cfg(test)]
mod tests;

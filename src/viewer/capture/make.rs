//! From an order to the bytes of a picture.

use super::{Animation, Pixels, Studio, encode};
use crate::panels::camera::Sight;
use crate::panels::{Action, Desk, Document};
use crate::viewer::order::{Made, PictureError, PictureKind, PictureOrder, Stop, ViewFrom};

/// Pictures a second of an animation: the format counts in hundredths of a second.
pub(super) const FRAME_HUNDREDTHS: u16 = 8;
/// How long the vehicle stands on the floor before it is raised, hundredths of a second.
pub(super) const HOLD_DOWN_HUNDREDTHS: u16 = 80;
/// How long it stays up, hundredths of a second.
pub(super) const HOLD_UP_HUNDREDTHS: u16 = 300;
/// Travel between two pictures of an animation, metres; quicker than a lift, so that nobody waits.
pub(super) const STEP_M: f64 = 0.03;

/// Makes the picture; `progress` is told how many of how many frames are done.
///
/// # Errors
/// When the bay can't be studied, or nothing can draw here.
pub fn make(
    order: PictureOrder,
    progress: &mut dyn FnMut(usize, usize),
) -> Result<Made, PictureError> {
    let (desk, note) = posed(&order)?;
    let top = desk.rise.travel_m;
    let mut studio = Studio::open(desk, order.size, order.captions)?;
    let bytes = match order.kind {
        PictureKind::Png => encode::png(&legible(&mut studio)?)?,
        PictureKind::Gif => raise(&mut studio, top, order.size, progress)?,
    };
    Ok(Made { bytes, note })
}

/// The desk as it stands, unless the verdict can't be read on it.
pub(super) fn legible(studio: &mut Studio) -> Result<Pixels, PictureError> {
    let picture = studio.shoot()?;
    if studio.is_legible() {
        Ok(picture)
    } else {
        Err(PictureError::TooSmall)
    }
}

/// The desk as ordered, and what to say about it.
pub(super) fn posed(order: &PictureOrder) -> Result<(Desk, Option<String>), PictureError> {
    let document = Document::new(
        Some(order.file.clone()),
        order.text.clone(),
        Some(order.text.clone()),
        order.presets.clone(),
    );
    let mut desk = Desk::new(document);
    desk.on = Some(order.on);
    desk.study_now();
    let Some(verdict) = &desk.verdict else {
        let why = desk.study_failed.take();
        return Err(PictureError::NotStudied(
            why.unwrap_or_else(|| "the bay file has faults".into()),
        ));
    };
    let (safe, clear) = (
        verdict.study.highest_safe_lock,
        verdict.study.highest_clear_lock,
    );
    let (stop, note) = match (order.stop, safe, clear) {
        (Stop::Lock(lock), ..) => (Action::ToLock(lock), None),
        (Stop::Floor, ..) => (Action::ToFloor, None),
        (Stop::Top, ..) => (Action::ToTop, None),
        (Stop::Safe, Some(lock), _) => (Action::ToLock(lock), None),
        // A raise that ends where nobody should stop is not shown unasked.
        (Stop::Safe, None, _) if order.kind == PictureKind::Gif => {
            return Err(PictureError::NoRaise);
        }
        (Stop::Safe, None, Some(lock)) => (
            Action::ToLock(lock),
            Some(format!(
                "No lock is safe; the picture shows lock {lock}, the highest that is clear."
            )),
        ),
        (Stop::Safe, None, None) => (
            Action::ToFloor,
            Some("No lock is safe and none is clear; the picture shows the floor.".into()),
        ),
    };
    desk.apply(stop);
    if let Some(door) = order.door {
        desk.apply(Action::Door(door.fraction()));
    }
    desk.apply(Action::People(order.people));
    desk.apply(Action::Look(match order.from {
        ViewFrom::Corner => Sight::Corner,
        ViewFrom::Front => Sight::Front,
        ViewFrom::Side => Sight::Side,
        ViewFrom::Plan => Sight::Plan,
        ViewFrom::Door => Sight::Door,
    }));
    Ok((desk, note))
}

/// From the floor up, and a while there.
fn raise(
    studio: &mut Studio,
    top_m: f64,
    size: [u32; 2],
    progress: &mut dyn FnMut(usize, usize),
) -> Result<Vec<u8>, PictureError> {
    let steps = (top_m / STEP_M).ceil().clamp(0.0, 10_000.0) as usize;
    let mut animation = Animation::new(size)?;
    for step in 0..=steps {
        let share = if steps == 0 {
            0.0
        } else {
            step as f64 / steps as f64
        };
        let desk = studio.desk();
        desk.apply(Action::Travel(top_m * share));
        // Nobody stands under what moves.
        desk.rise.playing = step < steps;
        let picture = legible(studio)?;
        let hundredths = if step == steps {
            HOLD_UP_HUNDREDTHS
        } else if step == 0 {
            HOLD_DOWN_HUNDREDTHS
        } else {
            FRAME_HUNDREDTHS
        };
        animation.add(&picture, hundredths)?;
        progress(step + 1, steps + 1);
    }
    Ok(animation.finish()?)
}
